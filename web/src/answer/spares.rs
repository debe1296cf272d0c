//! What is wrong with the things in the shop that are not in use.

use notchwright_core::check::Checker;
use notchwright_core::cutter::Cutter;
use notchwright_core::dial::Screw;
use notchwright_core::limits;
use notchwright_core::problem::{Code, Problem};

use super::FieldProblem;
use super::draft::Draft;
use super::joint::{cutter_request, screw_request};
use crate::state::{Field, Item, List, Saw, SawField, Work};

/// The problems of saws, cutters and screws that are not chosen.
///
/// A thing that is not in use may still be half filled in: what is missing is no problem yet.
pub(super) fn problems(work: &Work) -> Vec<FieldProblem> {
    let shop = &work.shop;
    let saws = spares(&shop.saws).flat_map(|saw| {
        checked(work, |draft, check| {
            check_saw(saw, draft, check);
        })
    });
    let cutters = spares(&shop.cutters).flat_map(|cutter| {
        checked(work, |draft, check| {
            Cutter::check(&cutter_request(draft, cutter), &mut check.at("cutter"));
        })
    });
    let screws = spares(&shop.screws).flat_map(|screw| {
        checked(work, |draft, check| {
            Screw::check(&screw_request(draft, screw), &mut check.at("screw"));
        })
    });
    saws.chain(cutters).chain(screws).collect()
}

fn spares<T: Item>(list: &List<T>) -> impl Iterator<Item = &T> {
    list.items()
        .iter()
        .filter(|item| !list.is_chosen(item.id()))
}

fn checked(work: &Work, check: impl FnOnce(&mut Draft<'_>, &mut Checker<'_>)) -> Vec<FieldProblem> {
    let mut draft = Draft::new(work);
    let mut problems = Vec::<Problem>::new();
    check(&mut draft, &mut Checker::new(&mut problems));
    problems.retain(|problem| problem.code != Code::Missing);
    draft.finish(problems)
}

fn check_saw(saw: &Saw, draft: &mut Draft<'_>, check: &mut Checker<'_>) {
    for (path, field, limit) in [
        (
            "greatestHeight",
            SawField::GreatestHeight,
            &limits::SAW_HEIGHT,
        ),
        ("base", SawField::Base, &limits::SLED_BASE),
        ("travel", SawField::Travel, &limits::TRAVEL),
    ] {
        let length = draft.length(path, Field::Saw(saw.id, field));
        check.optional_length(path, &length, limit);
    }
}
