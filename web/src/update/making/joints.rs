//! Joints that come from the drawers, and come again when those have changed.
//!
//! Each bears a mark: whose it is, and numbers made of its name and of what it was given. One that still is what it was
//! given is brought up to date; one that somebody has changed stays as it is, as their own, and another comes beside it.

use notchwright_core::plain::Plain;

use super::said;
use crate::keep::json;
use crate::notice::Notice;
use crate::state::{Entry, Id, Item, JointForm, JointKind, Stored as _, Work};
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
    let mut first = None;
    for coming in coming {
        bring_one(work, coming, &mut became);
        // All of them were planned with the chosen one.
        work.shop.cutters.choose(cutter.unwrap_or_default());
        first = first.or(Some(work.joint.id));
    }
    // Not before: what was cut of it would count as cut of one that came under its number.
    if let Some(key) = gone {
        take_out(work, key, &mut became);
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
        let is_named = is_marked(&work.joint, number_of(&work.joint.name.text));
        let mut after = with_given(&work.joint, &joint);
        if is_named {
            after.name = joint.name;
        }
        after.from = from;
        if work.joint != after {
            became.changed.push(after.name.text.clone());
            work.joint = after;
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
    let [given, of_dovetail] = Fields::of(joint).given.map(Plain::Object);
    number_of(&json::write(&Plain::List(vec![given, of_dovetail])))
}

/// A number that another text hardly has: the FNV-1a hash, 32 bits.
fn number_of(text: &str) -> u32 {
    text.bytes().fold(0x811c_9dc5, |hash, byte| {
        (hash ^ u32::from(byte)).wrapping_mul(0x0100_0193)
    })
}

/// What comes from drawers, by the names that it is stored under; everything else is the joint's own: its glue gap, its
/// zero, what was measured of it.
const OF_EVERY_KIND: [&str; 6] = [
    "kind",
    "width",
    "thicknessA",
    "thicknessB",
    "groove",
    "pieces",
];
const OF_BOX_JOINTS: [&str; 4] = ["layout", "count", "leftover", "first"];
const DOVETAIL: &str = "dovetail";
const OF_DOVETAILS: [&str; 11] = [
    "tails",
    "by",
    "narrowPin",
    "halfPin",
    "ratio",
    "slopeBy",
    "run",
    "degrees",
    "weights",
    "lap",
    "pinCutter",
];

type Stored = Vec<(String, Plain)>;

/// A joint's fields as they are stored, and those of its dovetails.
struct Fields {
    given: [Stored; 2],
    own: [Stored; 2],
}

impl Fields {
    fn of(joint: &JointForm) -> Self {
        let is_dovetailed = joint.kind == JointKind::Dovetail;
        let of_kind: &[&str] = if is_dovetailed { &[] } else { &OF_BOX_JOINTS };
        let of_dovetail: &[&str] = if is_dovetailed { &OF_DOVETAILS } else { &[] };
        let mut all = fields(joint.write());
        let place = all.iter().position(|(name, _)| name == DOVETAIL);
        let dovetail = place.map(|place| fields(all.remove(place).1));
        let is_given = |name: &str| OF_EVERY_KIND.contains(&name) || of_kind.contains(&name);
        let (given, own) = all.into_iter().partition(|(name, _)| is_given(name));
        let (given_dovetail, own_dovetail) = dovetail
            .unwrap_or_default()
            .into_iter()
            .partition(|(name, _)| of_dovetail.contains(&name.as_str()));
        Self {
            given: [given, given_dovetail],
            own: [own, own_dovetail],
        }
    }
}

fn fields(plain: Plain) -> Stored {
    match plain {
        Plain::Object(fields) => fields,
        _ => Vec::new(),
    }
}

/// A joint with everything that comes from drawers as it is `given`.
fn with_given(joint: &JointForm, given: &JointForm) -> JointForm {
    let joint = JointForm {
        kind: given.kind,
        ..joint.clone()
    };
    let ([mut all, mut dovetail], [own, own_dovetail]) =
        (Fields::of(given).given, Fields::of(&joint).own);
    dovetail.extend(own_dovetail);
    all.extend(own);
    all.push((DOVETAIL.to_owned(), Plain::Object(dovetail)));
    let mut merged = JointForm::default();
    merged.read(&Plain::Object(all));
    merged
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
