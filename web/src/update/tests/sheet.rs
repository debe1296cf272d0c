//! Sheets laid out: the search goes on slice after slice, begins anew when anything changes, and finds again the
//! layout that is being cut.

use crate::answer::making::sheet::search_beside;
use crate::effect::{Asked, Effect};
use crate::keep::saved;
use crate::model::{Chunk, Model};
use crate::msg::{Edit, Look, MakingEdit, Msg, Search, Tick};
use crate::state::fields::{cutting, part, sheet};
use crate::state::{CutterField, Field, Group, Id, PartsTool, Place, State, Ticks};
use crate::testing::{opened_with, started};

/// The place with another tool open.
fn opened_elsewhere(mut model: Model) -> Model {
    model.update(Msg::Look(Look::PartsTool(PartsTool::Parts)));
    model.update(Msg::Go(Place::Parts));
    model.update(Msg::Came(Chunk::Parts));
    model
}

/// The tool, with its search begun.
fn open(model: Model) -> Model {
    let mut model = opened_elsewhere(model);
    model.update(Msg::Look(Look::PartsTool(PartsTool::Sheet)));
    assert!(model.searching.due.is_some());
    model
}

fn slice(model: &mut Model) -> Vec<Effect> {
    model.update(Msg::Search(Search::Slice(None)))
}

/// Makes the slice that was asked for as another thread does, from what is sent there.
fn slice_beside(model: &mut Model, effects: &[Effect]) -> Vec<Effect> {
    let [Effect::Search(asked)] = effects else {
        panic!("no slice is asked for: {effects:?}");
    };
    let found = search_beside(&saved::save(&model.state), asked);
    assert!(found.is_some());
    model.update(Msg::Search(Search::Slice(found)))
}

/// Whether a slice is asked for, and nothing else.
fn asks(effects: &[Effect]) -> bool {
    matches!(effects, [Effect::Search(_)])
}

fn type_in(model: &mut Model, field: Field, text: &str) -> Vec<Effect> {
    model.update(Msg::Edit(Edit::Type(field, text.into())))
}

fn steps(model: &Model) -> Option<u32> {
    let sheet = &model.answer.making.as_ref().unwrap().sheet;
    sheet.reached.as_ref().map(|reached| reached.steps)
}

fn best(model: &Model) -> String {
    let sheet = &model.answer.making.as_ref().unwrap().sheet;
    sheet.reached.as_ref().unwrap().best.clone()
}

fn tick(model: &mut Model, cut: u32, is_made: bool) {
    let of = model.answer.making.as_ref().unwrap().sheet.mark;
    let tick = Tick { of, cut, is_made };
    model.update(Msg::Edit(Edit::Making(MakingEdit::Tick(tick))));
}

fn made(model: &Model) -> Option<Ticks> {
    Ticks::read(
        model
            .state
            .work
            .job
            .making
            .cutting
            .text(cutting::CUT.name()),
    )
}

fn problem(model: &Model, field: Field) -> String {
    let mut texts = model.answer.problems_of(field);
    let text = texts.next().map(|text| text.show(|mm| format!("{mm:?}")));
    text.unwrap_or_default()
}

/// A few slices at the pace of the page.
fn searched(mut model: Model, slices: usize) -> Model {
    for _ in 0..slices {
        slice(&mut model);
    }
    model
}

#[test]
fn the_worked_job_is_laid_out_and_every_part_is_there() {
    let mut model = open(started());
    assert!(asks(&slice(&mut model)));
    let sheet = &model.answer.making.as_ref().unwrap().sheet;
    let planned = sheet.layout.current().unwrap();
    let laid: usize = planned
        .plan
        .sheets
        .iter()
        .map(|sheet| sheet.parts.len())
        .sum();
    assert_eq!(laid, 16 + 8 + 8 + 8);
    assert!(sheet.without_sheets.is_empty());
    // Each sheet has its price.
    assert!(planned.plan.cost.unwrap() > 0.0);
}

/// The kerf is the chosen cutter's, whose field is in the shop: nothing here is marked, so that it is said.
#[test]
fn a_kerf_that_cannot_be_read_in_the_shop_is_said_here() {
    let mut model = open(started());
    let cutter = model.state.work.shop.cutters.chosen().unwrap().id;
    let kerf = Field::Cutter(cutter, CutterField::Kerf);
    type_in(&mut model, kerf, "wide");
    let layout = &model.answer.making.as_ref().unwrap().sheet.layout;
    let says: Vec<_> = layout
        .refused
        .iter()
        .map(|text| text.show(|mm| format!("{mm:?}")))
        .collect();
    assert!(!layout.is_current);
    let is_said = says
        .iter()
        .any(|text| text.starts_with("In the shop, the chosen cutter's kerf: A length"));
    assert!(is_said, "{says:?}");
    type_in(&mut model, cutting::KERF.alone(), "wider");
    assert!(!problem(&model, cutting::KERF.alone()).is_empty());
    let layout = &model.answer.making.as_ref().unwrap().sheet.layout;
    assert_eq!(layout.refused, []);
}

/// What is too heavy cannot be told without the mass of a sheet.
#[test]
fn the_heaviest_to_lift_asks_for_the_mass_of_a_sheet_of_each_stock() {
    let mut model = open(started());
    let on = MakingEdit::Choose(cutting::ROUGH.spot(Id::default()), "on");
    model.update(Msg::Edit(Edit::Making(on)));
    type_in(&mut model, cutting::HEAVIEST.alone(), "12");
    slice(&mut model);
    let needed = |model: &Model| model.answer.making.as_ref().unwrap().needed.clone();
    let sheets: Vec<_> = (1..=3).map(|row| sheet::MASS.of(Id(row))).collect();
    assert_eq!(needed(&model), sheets);
    for field in sheets {
        type_in(&mut model, field, "20");
    }
    slice(&mut model);
    assert_eq!(needed(&model), []);
    let layout = &model.answer.making.as_ref().unwrap().sheet.layout;
    assert!(layout.is_current, "{:?}", layout.refused);
}

/// However it is sliced, the same rounds find the same.
#[test]
fn slices_do_not_change_what_is_found() {
    let quick = searched(open(started()), 5);
    let mut slow = open(started());
    while steps(&slow) < steps(&quick) {
        // A slice that lasted long makes the next one short.
        slow.now += 1000.0;
        slice(&mut slow);
        assert_eq!(slow.searching.pace, 1);
    }
    assert_eq!(steps(&slow), steps(&quick));
    assert_eq!(best(&slow), best(&quick));
}

#[test]
fn beside_the_page_the_same_is_found() {
    let mut beside = opened_elsewhere(started());
    let mut effects = beside.update(Msg::Look(Look::PartsTool(PartsTool::Sheet)));
    for _ in 0..5 {
        effects = slice_beside(&mut beside, &effects);
        // A slice that takes no time makes the next one longer.
        assert!(beside.searching.is_beside && asks(&effects));
    }
    let mut here = open(started());
    here.searching.limit = steps(&beside).unwrap();
    while here.searching.due.is_some() {
        slice(&mut here);
    }
    assert_eq!(steps(&here), steps(&beside));
    assert_eq!(best(&here), best(&beside));
    assert!(!here.searching.is_beside);
    // Where another thread no longer answers, the page goes on from what that found.
    let before = steps(&beside);
    assert!(asks(&slice(&mut beside)));
    assert_eq!(steps(&beside), before.map(|steps| steps + 1));
}

#[test]
fn what_was_found_for_another_request_is_of_no_use() {
    let mut model = opened_elsewhere(started());
    let effects = model.update(Msg::Look(Look::PartsTool(PartsTool::Sheet)));
    let [Effect::Search(asked)] = effects.as_slice() else {
        panic!("no slice is asked for");
    };
    let found = search_beside(&saved::save(&model.state), asked);
    assert_eq!(type_in(&mut model, cutting::KERF.alone(), "4"), []);
    let effects = model.update(Msg::Search(Search::Slice(found)));
    assert_eq!(steps(&model), None);
    // It is asked for anew.
    slice_beside(&mut model, &effects);
    assert!(steps(&model).is_some());
}

#[test]
fn beside_the_page_nothing_is_found_where_nothing_can_be() {
    let mut model = started();
    let asked = Asked {
        rounds: 1,
        ..Asked::default()
    };
    assert_eq!(search_beside("", &asked), None);
    type_in(&mut model, part::LENGTH.of(Id(2)), "2600");
    assert_eq!(search_beside(&saved::save(&model.state), &asked), None);
}

#[test]
fn it_rests_when_told_and_when_it_has_searched_long_enough() {
    let mut model = searched(open(started()), 2);
    assert_eq!(model.update(Msg::Search(Search::Stop)), []);
    let before = steps(&model);
    assert_eq!(slice(&mut model), []);
    assert_eq!(steps(&model), before);
    model.searching.limit = 1;
    assert!(asks(&model.update(Msg::Search(Search::GoOn))));
    for _ in 0..200 {
        slice(&mut model);
    }
    let limit = model.searching.limit;
    assert!(steps(&model).unwrap() <= limit);
    assert_eq!(model.searching.due, None);
}

#[test]
fn an_edit_begins_anew_and_what_stood_is_shown_as_what_it_was() {
    let mut model = searched(open(started()), 3);
    model.update(Msg::Search(Search::Stop));
    slice(&mut model);
    let before = best(&model);
    for (field, text) in [
        (cutting::KERF.alone(), "3.5"),
        (sheet::LENGTH.of(Id(1)), "3000"),
        (part::COUNT.of(Id(1)), "20"),
    ] {
        let mut model = model.clone();
        assert!(asks(&type_in(&mut model, field, text)), "{text}");
        let layout = &model.answer.making.as_ref().unwrap().sheet.layout;
        assert!(!layout.is_current && layout.plan.is_some(), "{text}");
        assert_eq!(steps(&model), None);
        slice(&mut model);
        let sheet = &model.answer.making.as_ref().unwrap().sheet;
        assert!(sheet.layout.is_current, "{text}");
        model.update(Msg::Undo);
        assert_eq!(steps(&model), None);
    }
    // What has no part in it changes nothing.
    assert_eq!(type_in(&mut model, Field::Job, "Another name"), []);
    assert_eq!(best(&model), before);
}

#[test]
fn no_slice_is_made_while_another_tool_is_open() {
    let mut model = searched(open(started()), 1);
    let before = steps(&model);
    model.update(Msg::Look(Look::PartsTool(PartsTool::Parts)));
    assert_eq!(slice(&mut model), []);
    assert_eq!(steps(&model), before);
    let effects = model.update(Msg::Look(Look::PartsTool(PartsTool::Sheet)));
    assert!(asks(&effects));
}

#[test]
fn a_part_that_is_too_large_is_named_with_the_least_sheet() {
    let mut model = searched(open(started()), 1);
    type_in(&mut model, part::LENGTH.of(Id(2)), "2600");
    slice(&mut model);
    // 2600 and 2 to trim at each end, and 5 at each edge of the board.
    assert!(problem(&model, part::LENGTH.of(Id(2))).contains("2614"));
    assert_eq!(model.searching.due, None);
    type_in(&mut model, sheet::LENGTH.of(Id(2)), "2614");
    slice(&mut model);
    assert_eq!(problem(&model, part::LENGTH.of(Id(2))), "");
    assert!(
        model
            .answer
            .making
            .as_ref()
            .unwrap()
            .sheet
            .layout
            .is_current
    );
}

#[test]
fn parts_without_a_sheet_are_left_out_and_named() {
    let mut model = open(started());
    model.update(Msg::Edit(Edit::Making(MakingEdit::Remove(
        Group::Sheets,
        Id(3),
    ))));
    slice(&mut model);
    let sheet = &model.answer.making.as_ref().unwrap().sheet;
    assert_eq!(sheet.without_sheets, ["Birch ply, 6"]);
    let sheets = &sheet.layout.current().unwrap().plan.sheets;
    assert_eq!(
        sheets.iter().map(|sheet| sheet.parts.len()).sum::<usize>(),
        32
    );
}

#[test]
fn too_few_sheets_are_said_beside_their_number() {
    let mut model = open(started());
    type_in(&mut model, sheet::QUANTITY.of(Id(3)), "1");
    slice(&mut model);
    assert!(problem(&model, sheet::QUANTITY.of(Id(3))).contains("needed"));
    // A longer search may still find room.
    assert!(model.searching.due.is_some());
}

#[test]
fn what_was_cut_is_known_after_a_reload_and_forgotten_with_its_layout() {
    let mut model = searched(open(started()), 6);
    for cut in [1, 2, 3, 7] {
        tick(&mut model, cut, true);
    }
    tick(&mut model, 2, false);
    let (found, at) = (best(&model), steps(&model));
    let ticks = made(&model).unwrap();
    assert_eq!(
        [1, 2, 3, 7].map(|cut| ticks.has(cut)),
        [true, false, true, true]
    );
    // It rests once something was cut.
    assert_eq!(slice(&mut model), []);
    let mut again = open(opened_with(&without_tool(&model.state)).0);
    while again.searching.due.is_some() {
        slice(&mut again);
    }
    assert_eq!(best(&again), found);
    assert_eq!(made(&again), Some(ticks));
    assert!(steps(&again) <= at);
    // Another layout has its own.
    type_in(&mut again, cutting::KERF.alone(), "4");
    slice(&mut again);
    tick(&mut again, 5, true);
    let ticks = made(&again).unwrap();
    assert!(ticks.has(5) && !ticks.has(1));
}

/// So that opening the tool is what begins the search.
fn without_tool(state: &State) -> State {
    State {
        parts_tool: PartsTool::Parts,
        place: Place::Joint,
        ..state.clone()
    }
}
