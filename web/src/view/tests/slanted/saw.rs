//! How the saw is set up for dovetails, and every stop of theirs.

use notchwright_core::problem::Severity;
use notchwright_core::stop::{Board, Set};
use notchwright_core::units::Unit;

use super::super::{page, show, typed};
use super::{alone, assert_says, dovetails, escaped, length, own, plan};
use crate::model::Model;
use crate::msg::{Edit, Msg, SawMove};
use crate::state::{DovetailField, Field, Id, JointField, Place, Step, ZeroKind};

/// Every page of a set: the words of its set-up as they stand in the page.
fn set_ups(model: &mut Model) -> Vec<(Set, String)> {
    let sets = model.answer.cut().unwrap().sets.to_vec();
    model.update(Msg::Saw(SawMove::Open));
    let pages = sets.into_iter().enumerate().map(|(index, set)| {
        model.update(Msg::Saw(SawMove::Jump(index, Step::SetUp)));
        (set, page(model))
    });
    pages.collect()
}

#[test]
fn each_set_up_says_lean_turn_face_and_edge() {
    let mut model = dovetails([]);
    let wanted: [&[&str]; 5] = [
        &[
            "Lean it 7.125° towards the reference edge",
            "Tail board, 12 mm thick, on end, outer face to the carriage, reference edge against the stop.",
            "end arris at the reference edge just touches",
        ],
        &[
            "Leave its lean and its height as they are.",
            "turned face for face: inner face to the carriage, the other edge against the stop",
            "end arris at the edge now against the stop just touches",
        ],
        &[
            "Upright: check it with a square.",
            "Tail board, 12 mm thick, on end, outer face to the carriage, reference edge against the stop.",
        ],
        &[
            "Pin board, 18 mm thick, on end, outer face to the carriage, reference edge against the stop at your left, \
             turned 7.125° clockwise",
            "The outer arris leads.",
            "leading arris of the reference edge",
        ],
        &["turned 7.125° anticlockwise", "The inner arris leads."],
    ];
    let set_ups = set_ups(&mut model);
    assert_eq!(set_ups.len(), wanted.len());
    for ((set, page), wanted) in set_ups.iter().zip(wanted) {
        for words in wanted {
            assert_says(page, words);
        }
        assert_says(page, "Unplug the saw first.");
        assert_says(page, &show::bare(set.height, Unit::Mm));
        assert_says(page, "Turn back past");
    }
}

/// Each of sixteen ends of the tail board comes three times, and of the pin board twice: they are 32 all the same.
#[test]
fn ends_are_counted_once_however_many_set_ups_they_come_to() {
    let mut model = dovetails([Msg::Go(Place::Jobs)]);
    let listed = |model: &Model| page(model);
    assert_says(&listed(&model), "Not begun: 32 ends to cut.");
    let end = model.answer.pieces.ends(Board::A).next().unwrap();
    model.update(Msg::Saw(SawMove::Open));
    model.update(Msg::Saw(SawMove::Mark(end, true)));
    assert_says(
        &page(&model),
        "1 end is marked as cut, each counted in every set-up.",
    );
    model.update(Msg::Saw(SawMove::Leave));
    let counted = "1 of 80 ends cut, each counted in every set-up.";
    assert_says(&listed(&model), counted);
    model.update(Msg::Saw(SawMove::Open));
    let sets = model.answer.cut().unwrap().sets.to_vec();
    for (index, set) in sets.iter().enumerate() {
        model.update(Msg::Saw(SawMove::Jump(index, Step::SetUp)));
        for end in model.answer.pieces.ends(set.board).collect::<Vec<_>>() {
            model.update(Msg::Saw(SawMove::Mark(end, true)));
        }
    }
    model.update(Msg::Saw(SawMove::Jump(4, Step::Done)));
    let passes = |board| -> usize {
        let own = sets.iter().filter(|set| set.board == board);
        own.map(|set| set.stops.len()).sum()
    };
    let (a, b) = (passes(Board::A), passes(Board::B));
    let says = format!(
        "{a} passes at each end of the tail board and {b} of the pin board, 32 ends in all."
    );
    assert_says(&page(&model), &says);
    model.update(Msg::Saw(SawMove::Leave));
    assert_says(&listed(&model), "All ends are cut.");
}

#[test]
fn every_caution_stands_before_the_first_pass_of_every_set() {
    let mut model = dovetails([]);
    let notes = model.answer.cut().unwrap().notes.to_vec();
    let is_caution = |note: &&notchwright_core::problem::Note| note.severity == Severity::Caution;
    let cautions: Vec<_> = notes.iter().filter(is_caution).collect();
    assert!(cautions.iter().any(|note| note.code == "tilt-clamp"));
    for (set, page) in set_ups(&mut model) {
        let (before, _) = page.split_once("All is set").unwrap();
        for caution in &cautions {
            let said = escaped(&show::message(&caution.message, Unit::Mm));
            assert!(before.contains(&said), "{}: {said}", set.name);
        }
    }
}

#[test]
fn upright_cuts_are_made_with_their_own_cutter() {
    let mut model = dovetails([Msg::Edit(Edit::PinCutter(Id(3)))]);
    for (set, page) in set_ups(&mut model) {
        let name = if set.tilt_degrees == 0.0 {
            "Straight bit. "
        } else {
            "Rip blade, "
        };
        assert_says(&page, name);
        assert_says(&page, &format!("a kerf of {}", length(&model, set.kerf)));
    }
}

#[test]
fn a_zero_by_another_way_is_said_in_every_set_up() {
    for (kind, words) in [
        (ZeroKind::Flush, "would take one kerf off it"),
        (ZeroKind::TestKerf, "at 30 mm, and 20 mm from the "),
    ] {
        let mut model = dovetails([
            Msg::Edit(Edit::Zero(kind)),
            typed(Field::Joint(JointField::ZeroReading), "30"),
            typed(Field::Joint(JointField::ZeroMeasured), "20"),
        ]);
        for (_, page) in set_ups(&mut model) {
            assert_says(&page, words);
        }
    }
}

#[test]
fn every_stop_is_shown_to_the_end() {
    let mut model = alone([Msg::Saw(SawMove::Open)]);
    for set in plan(&model).sets.clone() {
        let name = set
            .name
            .replacen(char::is_uppercase, &set.name[..1].to_lowercase(), 1);
        assert_says(
            &page(&model),
            &format!("Set up for {name}</h1>").replace("</h1>", ""),
        );
        for stop in &set.stops {
            model.update(Msg::Saw(SawMove::Next));
            let shown = page(&model);
            let (turns, division) = (
                show::whole(stop.dial.turns),
                show::number(stop.dial.division),
            );
            assert!(shown.contains(&format!("<strong>{turns}</strong>")));
            assert!(shown.contains(&format!("<strong>{division}</strong>")));
            assert_says(
                &shown,
                &format!("pass {} of {}", stop.number, set.stops.len()),
            );
        }
        model.update(Msg::Saw(SawMove::Next));
    }
    assert!(page(&model).contains("Both boards are cut</h1>"));
}

#[test]
fn a_half_blind_joint_ends_with_its_tail_board() {
    let mut model = dovetails([own(DovetailField::Lap, "6"), Msg::Saw(SawMove::Open)]);
    let sets = plan(&model).sets.clone();
    assert!(sets.iter().all(|set| set.board == Board::A));
    let shown = page(&dovetails([own(DovetailField::Lap, "6")]));
    assert!(!shown.contains("Pin board, turned"));
    assert!(!shown.contains("The closed joint"));
    assert_says(&shown, "half-blind, lap 6");
    model.update(Msg::Saw(SawMove::Jump(sets.len() - 1, Step::Done)));
    let done = page(&model);
    assert!(done.contains("The tail board is cut</h1>"));
    assert!(!done.contains("board B"));
}

#[test]
fn the_saw_waits_for_the_part_and_can_be_left() {
    let mut model = dovetails([Msg::Saw(SawMove::Open)]);
    model.parts = crate::model::Parts::default();
    let waiting = page(&model);
    assert_says(&waiting, "One moment…");
    assert!(waiting.contains(">Leave</button>"));
    assert!(!waiting.contains("Unplug the saw first."));
}
