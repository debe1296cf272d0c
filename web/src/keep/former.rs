//! What earlier versions wrote, as this one writes it.

use notchwright_core::plain::Plain;

use crate::state::field;

/// The version before sleds had entries of their own.
const SAWS_WITH_SLEDS: u32 = 1;
/// What then stood with the saw.
const OF_THE_SLED: [&str; 2] = ["base", "travel"];

/// Brings what `version` wrote up to date; whatever it does not know stays as it is.
pub(super) fn update(version: u32, mut plain: Plain) -> Plain {
    if version <= SAWS_WITH_SLEDS
        && let Some(Plain::Object(shop)) = inside(&mut plain, &["work", "shop"])
    {
        part_sleds(shop);
    }
    plain
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
