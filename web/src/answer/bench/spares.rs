//! What is wrong with the things in the shop that no box joint tells of.

use notchwright_core::check::Checker;
use notchwright_core::cutter::Cutter;
use notchwright_core::dial::Screw;
use notchwright_core::limits;
use notchwright_core::problem::{Code, Problem};

use super::joint::{cutter_request, screw_request};
use super::{Draft, FieldProblem};
use crate::state::{Field, Item, JointKind, List, Saw, SawField, Sled, SledField, Work};

/// The problems of saws, sleds, cutters and screws that are not chosen, or that another joint is cut with: its
/// part of the program may not have come, and is not asked in the shop.
///
/// A thing that is not in use may still be half filled in: what is missing is no problem yet.
pub(super) fn problems(work: &Work) -> Vec<FieldProblem> {
    let shop = &work.shop;
    let is_told = work.joint.kind == JointKind::Box;
    let saws = spares(&shop.saws, is_told).flat_map(|saw| {
        checked(work, |draft, check| {
            check_saw(saw, draft, check);
        })
    });
    let sleds = spares(&shop.sleds, is_told).flat_map(|sled| {
        checked(work, |draft, check| {
            check_sled(sled, draft, check);
        })
    });
    let cutters = spares(&shop.cutters, is_told).flat_map(|cutter| {
        checked(work, |draft, check| {
            Cutter::check(&cutter_request(draft, cutter), &mut check.at("cutter"));
        })
    });
    let screws = spares(&shop.screws, is_told).flat_map(|screw| {
        checked(work, |draft, check| {
            Screw::check(&screw_request(draft, screw), &mut check.at("screw"));
        })
    });
    let sleds = sleds.chain(cutters);
    saws.chain(sleds).chain(screws).collect()
}

/// All but the chosen one, of which the joint tells.
fn spares<T: Item>(list: &List<T>, is_told: bool) -> impl Iterator<Item = &T> {
    list.items()
        .iter()
        .filter(move |item| !is_told || !list.is_chosen(item.id()))
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
        ("toSlot", SawField::ToSlot, &limits::SLOT_PLACE),
        ("secondSlot", SawField::SecondSlot, &limits::SLOT_PLACE),
        ("front", SawField::Front, &limits::TABLE),
        ("rear", SawField::Rear, &limits::TABLE),
    ] {
        let length = draft.length(path, Field::Saw(saw.id, field));
        check.optional_length(path, &length, limit);
    }
}

fn check_sled(sled: &Sled, draft: &mut Draft<'_>, check: &mut Checker<'_>) {
    for (path, field, limit) in [
        ("base", SledField::Base, &limits::SLED_BASE),
        ("travel", SledField::Travel, &limits::TRAVEL),
        ("width", SledField::Width, &limits::SLED),
        ("length", SledField::Length, &limits::SLED),
        ("bladeLine", SledField::BladeLine, &limits::ON_SLED),
        ("carriageFace", SledField::CarriageFace, &limits::ON_SLED),
        ("frontRail", SledField::FrontRail, &limits::ON_SLED),
        ("runnerWidth", SledField::RunnerWidth, &limits::RUNNER_WIDTH),
        ("contactNear", SledField::ContactNear, &limits::ON_RUNNER),
        ("contactFar", SledField::ContactFar, &limits::ON_RUNNER),
        ("margin", SledField::Margin, &limits::MARGIN),
        ("holeClearance", SledField::HoleClearance, &limits::PLAY),
    ] {
        let length = draft.length(path, Field::Sled(sled.id, field));
        check.optional_length(path, &length, limit);
    }
    let holes = draft.lengths("holes", Field::Sled(sled.id, SledField::Holes));
    check.optional_lengths("holes", &holes, &limits::ON_RUNNER);
}
