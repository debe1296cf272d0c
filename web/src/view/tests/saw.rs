//! At the saw, with several ends that are cut alike.

use super::{assert_all, page, started, typed};
use crate::model::{Can, Model};
use crate::msg::{Edit, Leaf, Msg, SawMove, Way};
use crate::state::{End, Ends, Field, Hand, Order, ScrewField, Step};
use crate::testing::{opened_with, single};
use notchwright_core::stop::Board;

/// The worked job, with its joints of eight drawers, at the saw.
fn open(joint: usize, then: impl IntoIterator<Item = SawMove>) -> Model {
    let opened = [
        Msg::Edit(Edit::JointOf(Leaf::Open(joint))),
        Msg::Saw(SawMove::Open),
    ];
    started(opened.into_iter().chain(then.into_iter().map(Msg::Saw)))
}

fn go(model: &mut Model, movement: SawMove) -> String {
    model.update(Msg::Saw(movement));
    page(model)
}

#[test]
fn the_next_end_is_named_before_it_is_clamped() {
    let mut model = open(0, []);
    assert_all(
        &page(&model),
        &["16 ends are cut in this set-up, one after the other."],
    );
    let shown = go(&mut model, SawMove::Next);
    assert_all(
        &shown,
        &[
            "Next end</h1>",
            "end 1 of 16",
            "<p class=\"end-name\">Drawer 1, left side</p>",
            "its reference edge against the stop, and clamp it.",
            "0 of 16 cut with this set-up.",
            ">It is clamped</button>",
        ],
    );
    assert!(!shown.contains("This end is marked as cut."));
    let shown = go(&mut model, SawMove::Next);
    assert_all(
        &shown,
        &[
            "<p class=\"on-carriage\">Drawer 1, left side</p>",
            ">Cut, next</button>",
        ],
    );

    let stops = model.answer.cut().unwrap().sets[0].stops.len();
    go(&mut model, SawMove::Jump(0, Step::Stop(stops - 1)));
    let shown = go(&mut model, SawMove::Next);
    assert_all(
        &shown,
        &[
            "end 2 of 16",
            "Drawer 1, right side",
            "1 of 16 cut with this set-up.",
        ],
    );
    // The list has a tick at what is cut.
    let (_, ends) = shown.split_once("<ol class=\"ends\">").unwrap();
    let (ends, _) = ends.split_once("</ol>").unwrap();
    let ticked: Vec<_> = ends
        .split("<li")
        .skip(1)
        .map(|end| end.contains(", cut<"))
        .collect();
    assert_eq!(ticked.len(), 16);
    assert_eq!(ticked.iter().filter(|cut| **cut).count(), 1);
    assert!(ticked[0]);
}

#[test]
fn an_end_that_counts_as_cut_can_be_taken_back() {
    let mut model = open(0, [SawMove::Next]);
    let end = model.state.progress().end;
    let shown = go(&mut model, SawMove::Mark(end, true));
    assert_all(
        &shown,
        &["This end is marked as cut.", ">It is not cut yet</button>"],
    );
    let shown = go(&mut model, SawMove::Mark(end, false));
    assert!(!shown.contains("This end is marked as cut."));
}

#[test]
fn a_pause_says_where_one_is() {
    let mut model = open(0, [SawMove::Next, SawMove::Next, SawMove::Next]);
    let shown = go(&mut model, SawMove::Pause(true));
    assert_all(
        &shown,
        &[
            "Paused</h1>",
            "Drawer 1, left side: pass 2 of",
            "is due, at",
            ">Go on</button>",
            ">Leave</button>",
        ],
    );
    assert!(!shown.contains("Cut, next"));
    assert!(go(&mut model, SawMove::Pause(false)).contains("Cut, next"));
    let mut before = open(0, []);
    let shown = go(&mut before, SawMove::Pause(true));
    assert_all(&shown, &["Before the first pass of board A"]);
}

/// After it the socket should measure what it is to be.
#[test]
fn the_last_pass_of_a_socket_is_marked() {
    let mut model = open(0, [SawMove::Next, SawMove::Next]);
    let stops = model.answer.cut().unwrap().sets[0].stops.clone();
    assert!(stops.iter().any(|stop| stop.passes > 1));
    for (index, stop) in stops.iter().enumerate() {
        let shown = go(&mut model, SawMove::Jump(0, Step::Stop(index)));
        let is_last = stop.passes > 1 && stop.pass == stop.passes;
        assert_eq!(
            shown.contains("Last of this socket."),
            is_last,
            "stop {index}"
        );
        let goes_on = stop.passes > 1 && stop.pass < stop.passes;
        assert_eq!(
            shown.contains("Keep turning the same way."),
            goes_on,
            "stop {index}"
        );
    }
}

#[test]
fn what_is_left_goes_down_with_every_pass() {
    let mut model = open(0, [SawMove::Next, SawMove::Next]);
    let sets = model.answer.cut().unwrap().sets;
    // Derived: sixteen ends of either board.
    let all: usize = sets.iter().map(|set| 16 * set.stops.len()).sum();
    assert_all(&page(&model), &[&format!("Left: {all} passes, ")]);
    assert!(!page(&model).contains(" min."));
    let shown = go(&mut model, SawMove::Next);
    assert_all(&shown, &[&format!("Left: {} passes, ", all - 1)]);
    // Derived: so many passes of half a minute.
    model.state.at_saw.pace = 30_000;
    let minutes = (all - 1).div_ceil(2);
    assert_all(&page(&model), &[&format!(" turns, about {minutes} min.")]);
}

/// The last pass of all is no turn away from itself, the one before it hardly one.
#[test]
fn one_turn_is_no_turns() {
    let (mut model, _) = opened_with(&single());
    let screw = model.state.work.shop.screws.chosen().unwrap().id;
    model.update(typed(Field::Screw(screw, ScrewField::Threads), "8"));
    model.update(Msg::Saw(SawMove::Open));
    let sets = model.answer.cut().unwrap().sets.to_vec();
    let mut seen = Vec::new();
    for index in 0..sets[1].stops.len() {
        model.update(Msg::Saw(SawMove::Mark(End::default(), true)));
        let shown = go(&mut model, SawMove::Jump(1, Step::Stop(index)));
        let (_, left) = shown.split_once("Left: ").unwrap();
        let (left, _) = left.split_once('.').unwrap();
        seen.push(left.to_owned());
    }
    assert_eq!(seen.last().unwrap(), "1 pass, 0 turns");
    assert!(
        seen.iter().any(|left| left.ends_with(", 1 turn")),
        "{seen:?}"
    );
    assert!(
        !seen.iter().any(|left| left.ends_with(", 1 turns")),
        "{seen:?}"
    );
}

/// Where one board has more ends than the other, some come alone.
#[test]
fn ends_without_another_are_no_pair() {
    let mut model = open(1, []);
    model.update(Msg::Way(Way::Order(Order::Stops)));
    model.update(Msg::Edit(Edit::Ends(Board::B, Ends::One)));
    let words = "16 pairs of ends, some of one end alone, are cut in this set-up";
    assert_all(&page(&model), &[words]);
}

#[test]
fn the_free_hand_has_the_button_to_go_on() {
    let mut model = open(0, []);
    assert!(!page(&model).contains("left-handed"));
    model.update(Msg::Way(Way::Hand(Hand::Left)));
    assert_all(&page(&model), &["class=\"way left-handed\""]);
}

#[test]
fn both_boards_at_each_stop_are_offered_where_one_height_does_for_both() {
    let two = page(&open(0, []));
    assert_all(&two, &["These boards need two blade heights"]);
    assert!(!two.contains("name=\"saw-order\""));
    let mut model = open(1, []);
    assert_all(&page(&model), &["name=\"saw-order\""]);
    model.update(Msg::Way(Way::Order(Order::Stops)));
    let shown = page(&model);
    assert_all(
        &shown,
        &[
            "Set up for both boards</h1>",
            "set 1 of 1",
            "16 pairs of ends",
        ],
    );
    let shown = go(&mut model, SawMove::Next);
    assert_all(
        &shown,
        &[
            "Drawer 1, left side with drawer 1, back, first end",
            "Have both boards at hand",
        ],
    );
    // Each pass says, and reads out, which board comes to the stop.
    go(&mut model, SawMove::Next);
    let course = model.answer.course(Order::Stops).unwrap();
    let load = &course.loads(0)[0];
    let passes: Vec<_> = course
        .passes(0, load)
        .iter()
        .map(|(set, _)| set.name.clone())
        .collect();
    for (index, name) in passes.iter().enumerate() {
        let shown = go(&mut model, SawMove::Jump(0, Step::Stop(index)));
        let (pass, all) = (index + 1, passes.len());
        let aloud = format!(">{name}, pass {pass} of {all}. Dial:");
        assert_all(&shown, &[&format!(">{name}</h1>"), &aloud]);
    }
}

#[test]
fn what_the_browser_cannot_do_is_said_and_not_offered() {
    let mut model = open(0, []);
    let without = page(&model);
    assert_all(
        &without,
        &["This browser cannot speak.", "so the page does not listen."],
    );
    assert!(!without.contains("name=\"saw-speaks\"") && !without.contains("name=\"saw-listens\""));
    model.update(Msg::Can(Can {
        speak: true,
        listen: true,
        share: false,
    }));
    let with = page(&model);
    assert_all(&with, &["name=\"saw-speaks\"", "name=\"saw-listens\""]);
    assert!(!with.contains("with the saw off"));
    model.update(Msg::Way(Way::Listens(true)));
    assert_all(&page(&model), &["with the saw off"]);
}

#[test]
fn at_the_end_all_ends_are_counted() {
    let mut model = open(0, []);
    let shown = go(&mut model, SawMove::Jump(1, Step::Done));
    let sets = model.answer.cut().unwrap().sets;
    let [a, b] = [sets[0].stops.len(), sets[1].stops.len()];
    assert_all(
        &shown,
        &[
            "Both boards are cut</h1>",
            &format!("{a} passes at each end of board A and {b} of board B, 32 ends in all."),
            ">Begin anew, with nothing cut</button>",
        ],
    );
}
