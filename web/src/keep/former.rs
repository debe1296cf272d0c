//! What earlier versions wrote, as this one writes it.

use notchwright_core::plain::Plain;

use crate::state::field;

/// The version before sleds had entries of their own.
const SAWS_WITH_SLEDS: u32 = 1;
/// What then stood with the saw.
const OF_THE_SLED: [&str; 2] = ["base", "travel"];

/// The version before there were jobs.
const ONE_JOINT: u32 = 2;
/// What then stood with the saw's own settings, and belongs to the joint that is cut.
const OF_THE_CUTTING: [&str; 3] = ["set", "step", "plan"];

/// Brings what `version` wrote up to date; whatever it does not know stays as it is.
pub(super) fn update(version: u32, mut plain: Plain) -> Plain {
    if version <= SAWS_WITH_SLEDS
        && let Some(Plain::Object(shop)) = inside(&mut plain, &["work", "shop"])
    {
        part_sleds(shop);
    }
    if version <= ONE_JOINT
        && let Plain::Object(state) = &mut plain
    {
        name_job(state);
        part_progress(state);
    }
    plain
}

/// The job's name stood with its only joint.
fn name_job(state: &mut [(String, Plain)]) {
    let Some(Plain::Object(work)) = value(state, "work") else {
        return;
    };
    let Some(Plain::Object(joint)) = value(work, "joint") else {
        return;
    };
    if let Some(name) = take(joint, "job") {
        drop_if_empty(work, "joint");
        let job = vec![("name".to_owned(), name)];
        work.push(("job".to_owned(), Plain::Object(job)));
    }
}

/// There was one place at the saw, of the only joint.
fn part_progress(state: &mut Vec<(String, Plain)>) {
    let Some(Plain::Object(at_saw)) = value(state, "atSaw") else {
        return;
    };
    let of_the_cutting = OF_THE_CUTTING
        .into_iter()
        .filter_map(|name| Some((name.to_owned(), take(at_saw, name)?)));
    let progress: Vec<_> = of_the_cutting.collect();
    if !progress.is_empty() {
        drop_if_empty(state, "atSaw");
        let progress = Plain::List(vec![Plain::Object(progress)]);
        state.push(("progress".to_owned(), progress));
    }
}

fn take(fields: &mut Vec<(String, Plain)>, name: &str) -> Option<Plain> {
    let place = fields.iter().position(|(other, _)| other == name)?;
    Some(fields.remove(place).1)
}

/// What says nothing any more is not written either.
fn drop_if_empty(fields: &mut Vec<(String, Plain)>, name: &str) {
    if matches!(field(fields, name), Some(Plain::Object(inside)) if inside.is_empty()) {
        take(fields, name);
    }
}

fn inside<'a>(plain: &'a mut Plain, path: &[&str]) -> Option<&'a mut Plain> {
    path.iter().try_fold(plain, |plain, name| match plain {
        Plain::Object(fields) => value(fields, name),
        _ => None,
    })
}

fn value<'a>(fields: &'a mut [(String, Plain)], name: &str) -> Option<&'a mut Plain> {
    let mut fields = fields.iter_mut();
    fields
        .find(|(other, _)| other == name)
        .map(|(_, value)| value)
}

/// Every saw that had one gets a sled of the same number, and the same one is chosen: the first where the
/// chosen saw had none.
fn part_sleds(shop: &mut Vec<(String, Plain)>) {
    let Some(Plain::Object(saws)) = value(shop, "saws") else {
        return;
    };
    let Some(Plain::List(items)) = value(saws, "items") else {
        return;
    };
    let sleds: Vec<_> = items.iter_mut().filter_map(part_sled).collect();
    let Some(first) = sleds.first() else { return };
    let saw = field(saws, "chosen");
    let has_one = saw.filter(|saw| sleds.iter().any(|sled| number(sled) == Some(saw)));
    let chosen = has_one.or_else(|| number(first)).cloned();
    let mut list = vec![("items".to_owned(), Plain::List(sleds))];
    list.extend(chosen.map(|chosen| ("chosen".to_owned(), chosen)));
    shop.push(("sleds".to_owned(), Plain::Object(list)));
}

fn number(thing: &Plain) -> Option<&Plain> {
    match thing {
        Plain::Object(fields) => field(fields, "id"),
        _ => None,
    }
}

fn part_sled(saw: &mut Plain) -> Option<Plain> {
    let Plain::Object(fields) = saw else {
        return None;
    };
    let is_of_the_sled = |(name, _): &(String, Plain)| OF_THE_SLED.contains(&name.as_str());
    if !fields.iter().any(is_of_the_sled) {
        return None;
    }
    let (mut sled, saw): (Vec<_>, Vec<_>) =
        std::mem::take(fields).into_iter().partition(is_of_the_sled);
    sled.extend(saw.iter().filter(|(name, _)| name == "id").cloned());
    sled.push(("name".to_owned(), Plain::Text("Sled".to_owned())));
    *fields = saw;
    Some(Plain::Object(sled))
}
