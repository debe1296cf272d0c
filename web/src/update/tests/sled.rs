//! The sled's place: a part of the program that comes later, and what is kept there.

use notchwright_core::units::{Mm, Unit};
use proptest::collection::vec;
use proptest::prelude::*;

use super::{WIDTH, started, type_in};
use crate::effect::Effect;
use crate::keep::{link, saved};
use crate::model::{Chunk, Model, Part};
use crate::msg::{Edit, Look, Msg, Shelf};
use crate::notice::Notice;
use crate::state::{
    Approach, Entry, Field, Id, LeadBy, Place, Point, PointField, ScrewField, State, Tool,
};
use crate::testing::{msg, opened, opened_with};
use crate::update::Found;

fn open() -> Model {
    let mut model = started();
    model.update(Msg::Go(Place::Sled));
    model.update(Msg::Came(Chunk::Sled));
    model
}

fn edit(model: &mut Model, edit: Edit) -> Vec<Effect> {
    model.update(Msg::Edit(edit))
}

fn points(model: &Model) -> &[Point] {
    model.state.work.sled.points.items()
}

fn focus(id: u16, field: PointField) -> [Effect; 1] {
    [Effect::Focus(Field::Point(Id(id), field).id())]
}

fn is_fitted(model: &Model) -> bool {
    let sled = model.answer.sled.as_ref();
    sled.is_some_and(|sled| sled.fit.is_current)
}

/// The worked joint, left in the sled's place.
fn left_at_the_sled() -> State {
    State {
        place: Place::Sled,
        ..State::demo()
    }
}

#[test]
fn the_part_is_asked_for_once_when_its_place_is_opened() {
    let mut model = started();
    assert_eq!(model.parts.of(Chunk::Sled), Part::Away);
    let effects = model.update(Msg::Go(Place::Sled));
    assert_eq!(effects, [Effect::ScrollToTop, Effect::Fetch(Chunk::Sled)]);
    assert_eq!(model.parts.of(Chunk::Sled), Part::Asked);
    model.update(Msg::Go(Place::Shop));
    assert_eq!(model.update(Msg::Go(Place::Sled)), [Effect::ScrollToTop]);
    assert_eq!(model.update(Msg::Look(Look::Tool(Tool::Screw))), []);
    assert_eq!(model.answer.sled, None);

    assert_eq!(model.update(Msg::Came(Chunk::Sled)), []);
    assert_eq!(model.parts.of(Chunk::Sled), Part::Here);
    assert!(is_fitted(&model));
    model.update(Msg::Go(Place::Joint));
    assert_eq!(model.update(Msg::Go(Place::Sled)), [Effect::ScrollToTop]);
}

#[test]
fn nothing_is_fetched_for_another_place() {
    let mut model = started();
    let effects = model.update(Msg::Go(Place::Shop));
    assert_eq!(effects, [Effect::ScrollToTop, Effect::Fetch(Chunk::Shop)]);
    type_in(&mut model, WIDTH, "150");
    assert_eq!(model.parts.of(Chunk::Sled), Part::Away);
}

#[test]
fn what_comes_after_its_place_was_left_is_used_when_it_is_opened_again() {
    let mut model = started();
    model.update(Msg::Go(Place::Sled));
    model.update(Msg::Go(Place::Joint));
    model.update(Msg::Came(Chunk::Sled));
    assert_eq!(model.answer.sled, None);
    model.update(Msg::Go(Place::Sled));
    assert!(is_fitted(&model));
}

#[test]
fn what_could_not_be_had_is_asked_for_again_only_when_told() {
    let mut model = started();
    model.update(Msg::Go(Place::Sled));
    assert_eq!(model.update(Msg::DidNotCome(Chunk::Sled)), []);
    assert_eq!(model.parts.of(Chunk::Sled), Part::Failed);
    model.update(Msg::Go(Place::Joint));
    assert_eq!(model.update(Msg::Go(Place::Sled)), [Effect::ScrollToTop]);
    assert_eq!(
        model.update(Msg::AskAgain(Chunk::Sled)),
        [Effect::Fetch(Chunk::Sled)]
    );
    assert_eq!(model.parts.of(Chunk::Sled), Part::Asked);
    model.update(Msg::Came(Chunk::Sled));
    assert!(is_fitted(&model));
}

#[test]
fn a_page_that_was_left_at_the_sled_asks_at_once() {
    let (model, effects) = opened_with(&left_at_the_sled());
    assert_eq!(effects, [Effect::Fetch(Chunk::Sled)]);
    assert_eq!(model.parts.of(Chunk::Sled), Part::Asked);
    assert_eq!(model.state.place, Place::Sled);
}

#[test]
fn a_link_to_the_sled_asks_at_once() {
    let mut there = left_at_the_sled();
    there.work.joint.width = Entry::mm("160");
    let fragment = link::write(&there);
    let (_, effects) = opened(Found {
        fragment: fragment.clone(),
        ..Found::default()
    });
    assert_eq!(effects, [Effect::Fetch(Chunk::Sled)]);

    let mut model = started();
    let effects = model.update(Msg::OpenLink(fragment));
    assert_eq!(effects, [Effect::Fetch(Chunk::Sled)]);
}

#[test]
fn the_answer_follows_every_change_while_the_place_is_open() {
    let mut model = open();
    let before = model.answer.sled.clone().unwrap();
    type_in(&mut model, WIDTH, "150");
    let after = model.answer.sled.clone().unwrap();
    assert_ne!(before.fit.plan, after.fit.plan);
    model.update(Msg::Go(Place::Joint));
    type_in(&mut model, WIDTH, "160");
    assert_eq!(model.answer.sled.as_ref(), Some(&after));
    model.update(Msg::Go(Place::Sled));
    assert_ne!(model.answer.sled.as_ref(), Some(&after));
}

#[test]
fn a_test_is_kept_with_its_day_and_its_sled() {
    let mut model = open();
    edit(&mut model, Edit::Duplicate(Shelf::Sleds, Id(1)));
    edit(&mut model, Edit::Choose(Shelf::Sleds, Id(2)));
    let before = model.state.clone();
    assert_eq!(model.update(Msg::KeepTest), [Effect::DateTest]);
    assert_eq!(model.state, before);

    edit(&mut model, Edit::KeepTest("2026-04-30".into()));
    let [test] = model.state.work.sled.tests.items() else {
        panic!("{:?}", model.state.work.sled.tests)
    };
    assert_eq!((test.date.text.as_str(), test.sled), ("2026-04-30", Id(2)));
    assert_eq!(test.strip, model.state.work.sled.square);
    assert_eq!(model.answer.sled.as_ref().unwrap().tests.len(), 1);
    model.update(Msg::Undo);
    assert_eq!(model.state, before);
    assert_eq!(model.answer.sled.as_ref().unwrap().tests, []);
}

#[test]
fn a_kept_test_is_as_it_was_when_the_strip_is_measured_anew() {
    let mut model = open();
    edit(&mut model, Edit::KeepTest("2026-04-30".into()));
    let strip = model.state.work.sled.square.clone();
    let free_end = Field::Square(crate::state::SquareField::FreeEnd);
    type_in(&mut model, free_end, "24.3");
    assert_eq!(model.state.work.sled.tests.items()[0].strip, strip);
}

#[test]
fn a_removed_test_comes_back() {
    let mut model = open();
    edit(&mut model, Edit::KeepTest("2026-04-30".into()));
    let before = model.state.clone();
    edit(&mut model, Edit::RemoveTest(Id(1)));
    assert_eq!(model.state.work.sled.tests.items(), []);
    assert_eq!(model.notices, [Notice::Removed("The test".into())]);
    model.update(Msg::Undo);
    assert_eq!(model.state, before);
}

#[test]
fn the_next_position_is_as_far_on_as_the_last() {
    let mut model = open();
    edit(&mut model, Edit::Approach(Id(8), Approach::Down));
    for (id, commanded) in [(9, "160"), (10, "180")] {
        let effects = edit(&mut model, Edit::AddPoint);
        assert_eq!(effects, focus(id, PointField::Measured));
        let added = points(&model).last().unwrap();
        assert_eq!(added.commanded, Entry::mm(commanded));
        assert!(added.measured.is_blank());
        assert_eq!(added.approach, Approach::Down);
    }
}

#[test]
fn the_next_position_is_in_the_unit_of_the_last() {
    let mut model = open();
    edit(&mut model, Edit::ClearPoints);
    model.update(Msg::Units(Unit::Inch));
    for (id, text) in [(1, "1/2"), (2, "1")] {
        edit(&mut model, Edit::AddPoint);
        let field = Field::Point(Id(id), PointField::Commanded);
        type_in(&mut model, field, text);
    }
    model.update(Msg::Units(Unit::Mm));
    edit(&mut model, Edit::AddPoint);
    let added = points(&model).last().unwrap();
    assert_eq!(added.commanded, Entry::new("1.5", Unit::Inch));
}

#[test]
fn a_position_without_a_last_step_is_blank() {
    let mut model = open();
    edit(&mut model, Edit::ClearPoints);
    for id in 1..=2 {
        let effects = edit(&mut model, Edit::AddPoint);
        assert_eq!(effects, focus(id, PointField::Commanded));
        assert!(points(&model).last().unwrap().commanded.is_blank());
        let field = Field::Point(Id(id), PointField::Commanded);
        type_in(&mut model, field, "20 or so");
    }
    let effects = edit(&mut model, Edit::AddPoint);
    assert_eq!(effects, focus(3, PointField::Commanded));
}

#[test]
fn the_table_is_full_at_two_hundred_positions() {
    let mut model = open();
    while points(&model).len() < 200 {
        edit(&mut model, Edit::AddPoint);
    }
    let full = model.clone();
    assert_eq!(edit(&mut model, Edit::AddPoint), []);
    assert_eq!(model.notices, [Notice::Full]);
    model.update(Msg::Dismiss(Notice::Full));
    assert!(model == full);
}

#[test]
fn removed_positions_are_told_of_and_come_back() {
    for (removal, notice) in [
        (Edit::RemovePoint(Id(3)), "The position"),
        (Edit::ClearPoints, "The table"),
    ] {
        let mut model = open();
        let before = model.clone();
        edit(&mut model, removal);
        assert!(points(&model).iter().all(|point| point.id != Id(3)));
        assert_eq!(model.notices, [Notice::Removed(notice.into())]);
        assert!(model.notices[0].can_undo());
        model.update(Msg::Undo);
        assert_eq!(model.state, before.state);
        assert_eq!((model.notices, model.answer), (vec![], before.answer));
    }
}

#[test]
fn an_empty_table_is_not_cleared_again() {
    let mut model = open();
    edit(&mut model, Edit::ClearPoints);
    model.update(Msg::Dismiss(Notice::Removed("The table".into())));
    edit(&mut model, Edit::ClearPoints);
    assert_eq!(model.notices, []);
}

#[test]
fn a_lead_that_was_found_is_the_screws() {
    let mut model = open();
    let before = model.state.clone();
    let planned = model.answer.sled.as_ref().unwrap().screw.plan.clone();
    let found = planned.unwrap().plan.lead;
    edit(&mut model, Edit::TakeLead(Id(1), found));
    let screw = model.state.work.shop.screws.get(Id(1)).unwrap();
    assert_eq!(screw.by, LeadBy::Lead);
    let lead_field = Field::Screw(Id(1), ScrewField::Lead);
    let shown = model.state.shown(lead_field).into_owned();
    let lead: f64 = shown.parse().unwrap();
    // Written to a tenth of a micrometre.
    assert!((lead - found.mm()).abs() <= 0.000_05, "{shown}");
    // The positions were commanded with the lead before: what they say does not change.
    let again = model.answer.sled.as_ref().unwrap().screw.plan.clone();
    let again = again.unwrap().plan.lead;
    assert!((again - found).abs() < Mm::constant(1e-4), "{again}");
    edit(&mut model, Edit::TakeLead(Id(1), again));
    assert_eq!(model.state.shown(lead_field), shown);
    model.update(Msg::Undo);
    assert_eq!(model.state, before);
    let other = edit(&mut model, Edit::TakeLead(Id(9), Mm::constant(2.0)));
    assert_eq!((other, model.can_undo), (vec![], false));
}

#[test]
fn sleds_have_a_shelf_of_their_own() {
    let mut model = open();
    let before = model.state.clone();
    let name = |id: u16| [Effect::Focus(format!("sled-{id}-name"))];
    assert_eq!(edit(&mut model, Edit::Add(Shelf::Sleds)), name(2));
    let copied = edit(&mut model, Edit::Duplicate(Shelf::Sleds, Id(1)));
    assert_eq!(copied, name(3));
    let sleds = &model.state.work.shop.sleds;
    let copy = crate::state::Sled {
        name: Entry::mm("Joint sled copy"),
        id: Id(3),
        ..sleds.get(Id(1)).unwrap().clone()
    };
    assert_eq!(sleds.get(Id(3)), Some(&copy));
    assert!(is_fitted(&model));

    edit(&mut model, Edit::Choose(Shelf::Sleds, Id(2)));
    assert!(!is_fitted(&model));
    edit(&mut model, Edit::Remove(Shelf::Sleds, Id(2)));
    assert_eq!(model.notices, [Notice::Removed(String::new())]);
    // The one that then stands in its place is in use.
    assert!(model.state.work.shop.sleds.is_chosen(Id(3)));
    assert!(is_fitted(&model));
    for _ in 0..4 {
        model.update(Msg::Undo);
    }
    assert_eq!(model.state, before);
}

#[test]
fn what_only_the_browser_can_do_is_asked_of_it() {
    let mut model = open();
    let file = Msg::SaveFile {
        name: "sled-base.svg",
        text: "<svg/>".into(),
    };
    let download = Effect::Download {
        name: "sled-base.svg".into(),
        text: "<svg/>".into(),
    };
    assert_eq!(model.update(file), [download]);
    assert_eq!(model.update(Msg::Print), [Effect::Print]);
    assert!(!model.can_undo);
}

#[test]
fn how_it_is_looked_at_is_remembered_and_no_step_back() {
    let mut model = open();
    for look in [Look::Tool(Tool::Square), Look::Pushed(400), Look::Cut(3)] {
        model.update(Msg::Look(look));
    }
    let view = &model.state.sled;
    assert_eq!((view.tool, view.pushed, view.step), (Tool::Square, 400, 3));
    assert!(!model.can_undo);
    let back = saved::restore(&saved::save(&model.state)).unwrap();
    assert_eq!(back.state, model.state);
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(48))]
    /// While the place is open, its answer is that of the state; and whatever happened can be undone.
    #[test]
    fn the_sleds_answer_is_the_states_whatever_happens(messages in vec(msg(), 0..24)) {
        let mut model = open();
        for msg in messages {
            model.update(msg);
            let is_open = model.needed().any(|chunk| chunk == Chunk::Sled) && model.parts.of(Chunk::Sled) == Part::Here;
            if let (true, Some(sled)) = (is_open, model.answer.sled.clone()) {
                model.refresh();
                prop_assert_eq!(model.answer.sled.as_ref(), Some(&sled));
            } else {
                prop_assert!(!is_open);
            }
        }
        while model.can_undo {
            model.update(Msg::Undo);
        }
        prop_assert_eq!(&model.state.work, &State::demo().work);
    }
}
