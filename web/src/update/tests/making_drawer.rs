//! Drawers: what their form comes to, and where it goes on.

use notchwright_core::drawer::DrawerBoxPlan;

use crate::effect::Effect;
use crate::model::{Chunk, Model};
use crate::msg::{Edit, HandOver, Leaf, MakingEdit, Msg};
use crate::notice::Notice;
use crate::state::fields::{Known, drawer, part, stock};
use crate::state::{Field, Group, Id, PartsTool, Place, Row};
use crate::testing::started;

pub(super) fn open() -> Model {
    let mut model = started();
    model.update(Msg::Go(Place::Parts));
    model.update(Msg::Came(Chunk::Parts));
    model
}

pub(super) fn type_in(model: &mut Model, field: Known, text: &str) {
    model.update(Msg::Edit(Edit::Type(field.alone(), text.into())));
}

pub(super) fn choose(model: &mut Model, field: Known, word: &'static str) {
    let edit = MakingEdit::Choose(field.spot(Id::default()), word);
    model.update(Msg::Edit(Edit::Making(edit)));
}

pub(super) fn hand_over(model: &mut Model, to: HandOver) -> Vec<Effect> {
    model.update(Msg::Edit(Edit::HandOver(to)))
}

pub(super) fn plan(model: &Model) -> &DrawerBoxPlan {
    let drawer = &model.answer.making.as_ref().unwrap().drawer;
    &drawer
        .current()
        .unwrap_or_else(|| panic!("{drawer:?}"))
        .plan
}

pub(super) fn problems(model: &Model) -> Vec<(Option<Field>, String)> {
    let shown = model.answer.shown_problems();
    let text = |message: &notchwright_core::message::Message| message.show(|mm| format!("{mm:?}"));
    shown
        .map(|problem| (problem.field, text(&problem.message)))
        .collect()
}

/// Derived as in the core's own example of the chest: 640 less seven dividers of 10 and eight gaps of 2 is
/// 69.25 for each at the dampest, which flat-sawn ash reaches from 69.25 / (1 + 4·0.00274).
#[test]
fn the_chart_chest_is_planned() {
    let model = open();
    let plan = plan(&model);
    assert_eq!((plan.drawers.len(), plan.places.len()), (1, 8));
    let drawer = &plan.drawers[0];
    assert!((drawer.height.mm() - 69.25 / 1.010_96).abs() < 1e-6);
    assert_eq!((drawer.width.mm(), drawer.depth.mm()), (880.0, 590.0));
    assert_eq!(problems(&model), []);
}

/// Everything else has what is usual.
#[test]
fn few_numbers_are_enough() {
    let mut model = open();
    model.update(Msg::Came(Chunk::Jobs));
    model.update(Msg::Edit(Edit::Job(Leaf::Add)));
    let needed = |model: &Model| model.answer.making.as_ref().unwrap().drawer.needed.clone();
    let all = [
        (drawer::WIDTH, "400"),
        (drawer::HEIGHT, "120"),
        (drawer::DEPTH, "350"),
        (drawer::ROOM, "1"),
        (drawer::SIDE, "10"),
        (drawer::FRONT, "14"),
        (drawer::BOTTOM, "4"),
    ];
    let mut left: Vec<_> = all.iter().map(|(field, _)| field.alone()).collect();
    for (field, text) in all {
        let mut found = needed(&model);
        let place = |field: &Field| left.iter().position(|other| other == field);
        found.sort_by_key(place);
        assert_eq!(found, left);
        assert!(model.answer.needs(field.alone()));
        type_in(&mut model, field, text);
        left.remove(0);
    }
    let drawer = &plan(&model).drawers[0];
    // Half of the thinner board is less than 6.
    assert_eq!(drawer.groove.depth.mm(), 5.0);
    assert_eq!(drawer.width.mm(), 398.0);
}

#[test]
fn what_is_wrong_is_said_beside_its_field() {
    let model = open();
    for (field, typed, says) in [
        (drawer::WIDTH, "wide", "begins with a number"),
        (drawer::WIDTH, "30", "at least"),
        (drawer::HEIGHT, "90", "at least"),
        (drawer::COUNT, "2.5", "whole"),
        (drawer::FINGERS, "8", "odd"),
        (drawer::FINGERS, "41", "at most"),
        (drawer::GROOVE_DEPTH, "7", "half"),
        (drawer::BOTTOM_ROOM, "6", "at most"),
        (drawer::MOISTURE, "400", "moisture"),
        (drawer::WETTEST, "5", "damp"),
        (drawer::APPLIED, "-1", "must be"),
    ] {
        let mut model = model.clone();
        let before = plan(&model).clone();
        type_in(&mut model, field, typed);
        let found = problems(&model);
        assert!(
            found
                .iter()
                .any(|(at, text)| *at == Some(field.alone()) && text.contains(says)),
            "{typed}: {found:?}"
        );
        // What was last found stays, as what is out of date.
        let drawer = &model.answer.making.as_ref().unwrap().drawer;
        assert!(drawer.current().is_none());
        assert_eq!(drawer.plan.as_ref().unwrap().plan, before);
        assert_eq!(hand_over(&mut model, HandOver::Parts), []);
    }
}

/// What was typed for another kind stays in the form, and out of the request.
#[test]
fn only_what_is_asked_is_planned_with() {
    let mut model = open();
    choose(&mut model, drawer::SIZE, "outside");
    type_in(&mut model, drawer::HEIGHT, "120");
    let outside = &plan(&model).drawers[0];
    assert_eq!((outside.width.mm(), outside.height.mm()), (900.0, 120.0));
    type_in(&mut model, drawer::HEIGHT, "640");
    choose(&mut model, drawer::SIZE, "");
    for (slides, height) in [("under", 69.25), ("", 69.25)] {
        choose(&mut model, drawer::SLIDES, slides);
        let found = plan(&model).drawers[0].height.mm();
        assert!((found - height / 1.010_96).abs() < 1e-6);
    }
    choose(&mut model, drawer::WOOD, "");
    assert!((plan(&model).drawers[0].height.mm() - 69.25).abs() < 1e-9);
    for (rule, field, text) in [
        ("graduated", drawer::STEP, "5"),
        ("ratio", drawer::RATIO, "1.1"),
    ] {
        choose(&mut model, drawer::HEIGHTS, rule);
        type_in(&mut model, field, text);
        assert_eq!(plan(&model).drawers.len(), 8);
    }
}

#[test]
fn boards_and_bottoms_go_straight_to_the_sheets() {
    let (mut model, mut other) = (open(), open());
    hand_over(&mut model, HandOver::Sheet);
    assert_eq!(model.state.parts_tool, PartsTool::Sheet);
    hand_over(&mut other, HandOver::Parts);
    assert_eq!(model.state.work, other.state.work);
    assert!(model.answer.making.as_ref().unwrap().sheet.can_search);
}

/// Every row is a part that the list can work out, of a stock as thick as it.
#[test]
fn boards_and_bottoms_go_on_as_parts() {
    let mut model = open();
    let before = model.state.work.clone();
    let parts = plan(&model).parts.clone();
    assert_eq!(
        hand_over(&mut model, HandOver::Parts),
        [Effect::ScrollToTop]
    );
    assert_eq!(model.state.parts_tool, PartsTool::Parts);
    assert_eq!(problems(&model), []);
    let found = &model.answer.making.as_ref().unwrap().parts.rows;
    let added = &found[before.job.making.rows(Group::Parts).len()..];
    assert_eq!(added.len(), parts.len());
    for (row, part) in added.iter().zip(&parts) {
        let found = row.part.as_ref().unwrap();
        assert_eq!(found.count, part.count);
        assert!((found.length.finished - part.length).mm().abs() <= 0.005);
        assert!((found.width.finished - part.width).mm().abs() <= 0.005);
    }
    let making = &model.state.work.job.making;
    let name = |row: &Row| row.form.text(part::NAME.name()).to_owned();
    let of = |row: &Row| row.form.text(part::STOCK.name()).to_owned();
    let rows: Vec<_> = making.rows(Group::Parts).iter().skip(4).collect();
    let named: Vec<_> = rows.iter().map(|row| (name(row), of(row))).collect();
    assert_eq!(
        named,
        [
            ("Drawer side", "1"),
            ("Drawer front", "4"),
            ("Drawer back", "4"),
            ("Drawer bottom", "3")
        ]
        .map(|(name, stock)| (name.to_owned(), stock.to_owned()))
    );
    let new = &making.rows(Group::Stocks)[3].form;
    assert_eq!(
        (
            new.text(stock::NAME.name()),
            new.text(stock::THICKNESS.name())
        ),
        ("Fronts", "14")
    );
    model.update(Msg::Undo);
    assert_eq!(model.state.work, before);
}

#[test]
fn a_bottom_is_not_cut_from_a_board_as_thick() {
    let mut model = open();
    type_in(&mut model, drawer::BOTTOM, "12");
    hand_over(&mut model, HandOver::Parts);
    let stocks = model.state.work.job.making.rows(Group::Stocks);
    let names: Vec<_> = stocks[3..]
        .iter()
        .map(|row| row.form.text(stock::NAME.name()))
        .collect();
    assert_eq!(names, ["Fronts", "Bottoms"]);
}

/// All of the boards, or none.
#[test]
fn a_full_list_takes_none() {
    let mut model = open();
    let free = 500 - model.state.work.job.making.rows(Group::Parts).len();
    let table = "Slat\t2\t600\t40\n".repeat(free - 1);
    model.update(Msg::Edit(Edit::Making(MakingEdit::Paste(table))));
    let before = model.state.work.clone();
    hand_over(&mut model, HandOver::Parts);
    assert_eq!(model.state.work, before);
    assert!(model.notices.contains(&Notice::Full));
    assert_eq!(model.state.parts_tool, PartsTool::default());
}

/// A shop's field that is wrong is named there, and the drawers wait for it.
#[test]
fn the_shop_has_its_say() {
    let mut model = open();
    let cutter = model.state.work.shop.cutters.chosen().unwrap().id;
    let kerf = Field::Cutter(cutter, crate::state::CutterField::Kerf);
    model.update(Msg::Edit(Edit::Type(kerf, String::new())));
    let drawer = &model.answer.making.as_ref().unwrap().drawer;
    assert!(drawer.current().is_none());
    assert!(drawer.needed.contains(&kerf), "{drawer:?}");
    model.update(Msg::Edit(Edit::Type(kerf, "500".into())));
    let drawer = &model.answer.making.as_ref().unwrap().drawer;
    assert!(!drawer.is_current && !drawer.refused.is_empty());
}

/// As in the core's own example: flat-sawn ash, 573 from front to back at the dampest, is cut 573 / 1.01096.
#[test]
fn a_solid_bottom_swells_in_its_groove() {
    let mut model = open();
    choose(&mut model, drawer::BOTTOM_WOOD, "white-ash");
    let moisture = drawer::BOTTOM_MOISTURE.alone();
    assert!(model.answer.needs(moisture));
    type_in(&mut model, drawer::BOTTOM_MOISTURE, "8");
    let bottom = plan(&model).drawers[0].bottom;
    assert!((bottom.width.mm() - 573.0 / 1.010_96).abs() < 1e-6);
    assert!((bottom.movement.unwrap().driest.mm() - 563.682).abs() < 1e-3);
    // It alone needs the air, too.
    choose(&mut model, drawer::WOOD, "");
    assert!(plan(&model).drawers[0].bottom.movement.is_some());
    type_in(&mut model, drawer::BOTTOM_MOISTURE, "400");
    assert!(
        problems(&model)
            .iter()
            .any(|(field, _)| *field == Some(moisture))
    );
    type_in(&mut model, drawer::BOTTOM_MOISTURE, "8");
    choose(&mut model, drawer::BOTTOM_SAWN, "quarter");
    assert!(
        (plan(&model).drawers[0].bottom.width.mm() - 573.0 / (1.0 + 4.0 * 0.00169)).abs() < 1e-6
    );
    hand_over(&mut model, HandOver::Parts);
    let bottom = model
        .state
        .work
        .job
        .making
        .rows(Group::Parts)
        .last()
        .unwrap();
    assert_eq!(bottom.form.text(part::MAY_TURN.name()), "");
}

/// A form holds all that its fields can hold.
#[test]
fn nothing_typed_into_a_full_form_is_lost() {
    let mut model = open();
    for field in drawer::ALL {
        type_in(&mut model, *field, "7");
    }
    let form = &model.state.work.job.making.drawer;
    assert!(
        drawer::ALL
            .iter()
            .all(|field| form.text(field.name()) == "7")
    );
}
