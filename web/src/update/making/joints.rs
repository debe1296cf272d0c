//! Joints that come from the drawers, and come again when those have changed.
//!
//! Each bears a mark: whose it is, and numbers made of its name and of what it was given. One that still is what it was
//! given is brought up to date; one that somebody has changed stays as it is, as their own, and another comes beside it.

use super::said;
use crate::keep::json;
use crate::notice::Notice;
use crate::state::{DovetailForm, Entry, Id, Item, JointForm, JointKind, Stored, Work};
use crate::update::edit::Outcome;

/// A joint that comes, and which one of the drawers' it is.
pub(super) struct Coming {
    pub(super) key: String,
    pub(super) joint: JointForm,
}

/// What became of them, by their names.
#[derive(Default)]
struct Became {
    added: usize,
    changed: Vec<String>,
    removed: Vec<String>,
    left: Vec<String>,
}

/// Brings up to date what has come before, adds the rest, and opens the first; takes out what comes no longer. Nothing
/// happens where there is no room.
pub(super) fn bring(work: &mut Work, coming: Vec<Coming>, gone: Option<&str>) -> Outcome {
    let is_new = |coming: &&Coming| unchanged(work, &coming.key).is_none();
    if !work
        .job
        .joints
        .has_room_for(coming.iter().filter(is_new).count())
    {
        return said(Notice::Full);
    }
    let cutter = work.shop.cutters.chosen().map(Item::id);
    let mut became = Became::default();
    if let Some(key) = gone {
        take_out(work, key, &mut became);
    }
    let mut first = None;
    for coming in coming {
        bring_one(work, coming, &mut became);
        // All of them were planned with the chosen one.
        work.shop.cutters.choose(cutter.unwrap_or_default());
        first = first.or(Some(work.joint.id));
    }
    if let Some(first) = first {
        work.open_joint_with(first);
    }
    became.outcome()
}

fn bring_one(work: &mut Work, coming: Coming, became: &mut Became) {
    let Coming { key, joint } = coming;
    let from = Entry::mm(&mark(&key, &joint));
    if let Some(id) = unchanged(work, &key) {
        work.open_joint_with(id);
        let before = work.joint.clone();
        let is_named = is_marked(&before, number_of(&before.name.text));
        work.joint = JointForm {
            name: if is_named {
                joint.name.clone()
            } else {
                before.name.clone()
            },
            from,
            ..with_given(before.clone(), &joint)
        };
        if work.joint != before {
            became.changed.push(work.joint.name.text.clone());
        }
        return;
    }
    let own = disown(work, &key);
    became.left.extend(own);
    became.added += 1;
    work.add_joint(JointForm { from, ..joint });
}

/// The joint that came under this key and is what it was given.
fn unchanged(work: &Work, key: &str) -> Option<Id> {
    let mut joints = work.joints();
    let found = joints.find(|joint| is_of(joint, key))?;
    is_marked(found, given_number(found)).then_some(found.id)
}

/// Makes a joint that somebody has changed their own; the answer is its name.
fn disown(work: &mut Work, key: &str) -> Option<String> {
    let id = work.joints().find(|joint| is_of(joint, key))?.id;
    work.open_joint_with(id);
    work.joint.from = Entry::default();
    Some(work.joint.name.text.trim().to_owned())
}

fn take_out(work: &mut Work, key: &str, became: &mut Became) {
    let Some(id) = unchanged(work, key) else {
        became.left.extend(disown(work, key));
        return;
    };
    let place = work.joints().position(|joint| joint.id == id);
    let removed = place.and_then(|place| work.remove_joint(place));
    became.removed.extend(removed.map(|joint| joint.name.text));
}

/// Parts the texts of a mark.
const BETWEEN: char = ';';

fn mark(key: &str, joint: &JointForm) -> String {
    let (name, given) = (number_of(&joint.name.text), given_number(joint));
    format!("{key}{BETWEEN}{name}{BETWEEN}{given}")
}

fn is_of(joint: &JointForm, key: &str) -> bool {
    let rest = joint.from.text.strip_prefix(key);
    rest.is_some_and(|rest| rest.starts_with(BETWEEN))
}

/// Whether one of the numbers of its mark is this.
fn is_marked(joint: &JointForm, number: u32) -> bool {
    let mut texts = joint.from.text.rsplit(BETWEEN).take(2);
    texts.any(|text| text == number.to_string())
}

fn given_number(joint: &JointForm) -> u32 {
    let given = with_given(JointForm::default(), joint);
    number_of(&json::write(&given.write()))
}

/// A number that another text hardly has: the FNV-1a hash, 32 bits.
fn number_of(text: &str) -> u32 {
    text.bytes().fold(0x811c_9dc5, |hash, byte| {
        (hash ^ u32::from(byte)).wrapping_mul(0x0100_0193)
    })
}

/// A joint with everything that comes from drawers as it is `given`: glue gap, zero and what was measured stay.
fn with_given(joint: JointForm, given: &JointForm) -> JointForm {
    let given = given.clone();
    let joint = JointForm {
        kind: given.kind,
        width: given.width,
        thickness_a: given.thickness_a,
        thickness_b: given.thickness_b,
        groove: given.groove,
        pieces: given.pieces,
        ..joint
    };
    if given.kind == JointKind::Dovetail {
        let of = given.dovetail;
        let dovetail = DovetailForm {
            tails: of.tails,
            by: of.by,
            narrow_pin: of.narrow_pin,
            half_pin: of.half_pin,
            ratio: of.ratio,
            slope_by: of.slope_by,
            run: of.run,
            degrees: of.degrees,
            lap: of.lap,
            pin_cutter: of.pin_cutter,
            weights: of.weights,
            ..joint.dovetail
        };
        return JointForm { dovetail, ..joint };
    }
    JointForm {
        layout: given.layout,
        count: given.count,
        leftover: given.leftover,
        first: given.first,
        ..joint
    }
}

impl Became {
    fn outcome(self) -> Outcome {
        let listed = [
            ("Brought up to date: ", &self.changed),
            ("Taken out, being no longer needed: ", &self.removed),
            ("Left beside it, because you changed it: ", &self.left),
        ];
        let listed = listed.into_iter().filter(|(_, names)| !names.is_empty());
        let all: Vec<_> = listed
            .map(|(says, names)| format!("{says}{}.", names.join("; ")))
            .collect();
        match (all.is_empty(), self.added) {
            (true, 0) => said(Notice::Unchanged(
                "This joint is there, and up to date.".to_owned(),
            )),
            (true, _) => Outcome::default(),
            _ => said(Notice::HandedOver(all.join(" "), !self.left.is_empty())),
        }
    }
}
