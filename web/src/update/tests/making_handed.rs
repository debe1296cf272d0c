//! Parts that come from the drawers and the sled, again and again.

use notchwright_core::units::Unit;

use super::making_drawer::{choose, hand_over, open, type_in};
use crate::effect::Effect;
use crate::model::{Chunk, Model};
use crate::msg::{Edit, HandOver, Look, MakingEdit, Msg};
use crate::notice::Notice;
use crate::state::fields::{Known, drawer, measure, part, stock};
use crate::state::{Field, Group, Id, PartsTool, Place, Row, SledField, Tool};
use crate::testing::started;

fn rows(model: &Model, group: Group) -> &[Row] {
    model.state.work.job.making.rows(group)
}

fn text(row: &Row, field: Known) -> &str {
    row.form.text(field.name())
}

/// Names and what one of the fields holds, of the rows after the demo's.
fn since(model: &Model, group: Group, field: Known) -> Vec<(&str, &str)> {
    let rows = rows(model, group)
        .iter()
        .skip(if group == Group::Parts { 4 } else { 3 });
    rows.map(|row| (text(row, part::NAME), text(row, field)))
        .collect()
}

fn enter(model: &mut Model, field: Field, text: &str) {
    model.update(Msg::Edit(Edit::Type(field, text.into())));
}

/// The part of this name that the drawers gave.
fn id_of(model: &Model, name: &str) -> Id {
    let mut rows = rows(model, Group::Parts).iter().rev();
    rows.find(|row| text(row, part::NAME) == name).unwrap().id
}

fn said(says: &str, warns: bool) -> [Notice; 1] {
    [Notice::HandedOver(says.to_owned(), warns)]
}

fn to_parts(model: &mut Model) {
    model.notices.clear();
    assert_eq!(hand_over(model, HandOver::Parts), [Effect::ScrollToTop]);
    assert_eq!(model.state.parts_tool, PartsTool::Parts);
    model.update(Msg::Look(Look::PartsTool(PartsTool::Drawer)));
}

#[test]
fn the_same_drawers_add_nothing_again() {
    let mut model = open();
    to_parts(&mut model);
    assert_eq!(model.notices, said("Parts added: 4.", false));
    let before = model.state.work.clone();
    // Nor do they in another unit.
    model.update(Msg::Units(Unit::Inch));
    to_parts(&mut model);
    assert_eq!(model.state.work, before);
    let [Notice::Unchanged(_)] = model.notices.as_slice() else {
        panic!("{:?}", model.notices)
    };
    assert!(
        model
            .notices
            .iter()
            .all(|notice| !notice.can_undo() && !notice.is_warning())
    );
}

/// 920 wide less twice 10 at the sides is 900; the bottom is as much longer.
#[test]
fn changed_drawers_bring_their_parts_up_to_date() {
    let mut model = open();
    to_parts(&mut model);
    let before = model.state.work.clone();
    type_in(&mut model, drawer::WIDTH, "920");
    to_parts(&mut model);
    assert_eq!(model.notices, said("Brought up to date: 3.", false));
    assert_eq!(
        since(&model, Group::Parts, part::LENGTH),
        [
            ("Drawer side", "590"),
            ("Drawer front", "900"),
            ("Drawer back", "900"),
            ("Drawer bottom", "887")
        ]
    );
    model.update(Msg::Undo);
    model.update(Msg::Undo);
    assert_eq!(model.state.work, before);
}

/// Name, trim and what is cut later stay; so does a length, and that is said once, when another would have come.
#[test]
fn what_was_typed_stays_and_is_said() {
    let mut model = open();
    to_parts(&mut model);
    let front = id_of(&model, "Drawer front");
    enter(&mut model, part::NAME.of(front), "Show front");
    enter(&mut model, part::TRIM.of(front), "3");
    let back = id_of(&model, "Drawer back");
    enter(&mut model, part::LENGTH.of(back), "chest - 20");
    to_parts(&mut model);
    assert!(matches!(model.notices.as_slice(), [Notice::Unchanged(_)]));
    type_in(&mut model, drawer::WIDTH, "920");
    to_parts(&mut model);
    let says = "Brought up to date: 2. What you typed stays: Drawer back, length.";
    assert_eq!(model.notices, said(says, true));
    assert_eq!(
        since(&model, Group::Parts, part::LENGTH)[1..3],
        [("Show front", "900"), ("Drawer back", "chest - 20")]
    );
    assert_eq!(
        since(&model, Group::Parts, part::TRIM)[1],
        ("Show front", "3")
    );
    type_in(&mut model, drawer::FRONT, "15");
    to_parts(&mut model);
    // The bottom is shorter, and the stock thicker.
    assert_eq!(model.notices, said("Brought up to date: 2.", false));
}

/// Drawers that differ have parts each; those of drawers that are alike go, but for one that is somebody's own now.
#[test]
fn what_is_no_longer_made_goes_unless_it_was_changed() {
    let mut model = open();
    to_parts(&mut model);
    let side = id_of(&model, "Drawer side");
    enter(&mut model, part::LATER.of(side), "later");
    choose(&mut model, drawer::HEIGHTS, "graduated");
    type_in(&mut model, drawer::STEP, "5");
    to_parts(&mut model);
    let says = "Parts added: 32. Taken out, being no longer needed: 3. \
                No longer needed, but left because you changed it: Drawer side.";
    assert_eq!(model.notices, said(says, true));
    assert_eq!(since(&model, Group::Parts, part::COUNT).len(), 33);
    // Now it is one of the list like any other.
    choose(&mut model, drawer::HEIGHTS, "");
    to_parts(&mut model);
    let parts = since(&model, Group::Parts, part::LATER);
    let names: Vec<_> = parts.iter().map(|(name, _)| *name).collect();
    assert_eq!(
        names,
        [
            "Drawer side",
            "Drawer side",
            "Drawer front",
            "Drawer back",
            "Drawer bottom"
        ]
    );
    assert_eq!((parts[0].1, parts[1].1), ("later", ""));
}

/// The stock that came with the drawers is measured anew with them, and no second one of its name comes.
#[test]
fn a_stock_that_came_is_measured_anew() {
    let mut model = open();
    to_parts(&mut model);
    let stocks = |model: &Model| -> Vec<(String, String, String)> {
        let fields = [stock::NAME, stock::THICKNESS, stock::FORMER];
        let of = |row: &Row| fields.map(|field| text(row, field).to_owned()).into();
        rows(model, Group::Stocks)[3..].iter().map(of).collect()
    };
    assert_eq!(
        stocks(&model),
        [("Fronts".into(), "14".into(), String::new())]
    );
    type_in(&mut model, drawer::FRONT, "15");
    to_parts(&mut model);
    assert_eq!(
        stocks(&model),
        [("Fronts".into(), "15".into(), "14".into())]
    );
    // Measured by hand it stays.
    enter(&mut model, stock::THICKNESS.of(Id(4)), "15.2");
    type_in(&mut model, drawer::FRONT, "16");
    to_parts(&mut model);
    assert_eq!(
        stocks(&model),
        [("Fronts".into(), "15.2".into(), "14".into())]
    );
    let [Notice::HandedOver(says, true)] = model.notices.as_slice() else {
        panic!("{:?}", model.notices)
    };
    assert!(
        says.contains("What you typed stays: Fronts, measured."),
        "{says}"
    );
}

#[test]
fn a_stock_of_somebody_elses_name_gets_a_number() {
    let mut model = open();
    enter(&mut model, stock::NAME.of(Id(2)), "fronts");
    to_parts(&mut model);
    assert_eq!(
        text(&rows(&model, Group::Stocks)[3], stock::NAME),
        "Fronts 2"
    );
    assert_eq!(model.answer.shown_problems().count(), 0);
    type_in(&mut model, drawer::FRONT, "15");
    to_parts(&mut model);
    assert_eq!(
        text(&rows(&model, Group::Stocks)[3], stock::NAME),
        "Fronts 2"
    );
}

/// A copy is nobody's but its maker's, and what is removed comes again when it is asked for again.
#[test]
fn copies_stay_and_what_was_removed_comes_again() {
    let mut model = open();
    to_parts(&mut model);
    let side = id_of(&model, "Drawer side");
    for edit in [
        MakingEdit::Duplicate(Group::Parts, side),
        MakingEdit::Remove(Group::Parts, side),
    ] {
        model.update(Msg::Edit(Edit::Making(edit)));
    }
    type_in(&mut model, drawer::DEPTH, "620");
    to_parts(&mut model);
    let sides: Vec<_> = since(&model, Group::Parts, part::LENGTH)
        .into_iter()
        .filter(|(name, _)| *name == "Drawer side")
        .collect();
    assert_eq!(sides, [("Drawer side", "590"), ("Drawer side", "610")]);
}

fn at_the_sled() -> Model {
    let mut model = started();
    model.update(Msg::Go(Place::Sled));
    model.update(Msg::Came(Chunk::Sled));
    model.update(Msg::Look(Look::Tool(Tool::Base)));
    model
}

#[test]
fn the_sled_waits_for_the_parts_of_the_program() {
    let mut model = started();
    assert_eq!(
        model.update(Msg::Go(Place::Sled)),
        [Effect::ScrollToTop, Effect::Fetch(Chunk::Sled)]
    );
    let fetched = model.update(Msg::Look(Look::Tool(Tool::Base)));
    assert_eq!(fetched, [Effect::Fetch(Chunk::Parts)]);
    let before = model.state.work.clone();
    for chunk in [Chunk::Sled, Chunk::Parts] {
        model.update(Msg::Edit(Edit::SledParts));
        assert_eq!(model.state.work, before);
        model.update(Msg::Came(chunk));
    }
    model.update(Msg::Edit(Edit::SledParts));
    assert_ne!(model.state.work, before);
}

/// Tapped twice they are there once.
#[test]
fn the_sled_becomes_parts_for_this_saw() {
    let mut model = at_the_sled();
    model.update(Msg::Came(Chunk::Parts));
    let tap = |model: &mut Model| {
        model.notices.clear();
        model.update(Msg::Edit(Edit::SledParts));
    };
    tap(&mut model);
    assert_eq!(model.notices, said("Parts added: 3.", false));
    let lengths = [
        ("Base", "base_length"),
        ("Front rail", "base_width"),
        ("Runner", "runner_length"),
    ];
    assert_eq!(since(&model, Group::Parts, part::LENGTH), lengths);
    assert_eq!(
        since(&model, Group::Measures, measure::VALUE)[..2],
        [("base_length", "560"), ("base_width", "520")]
    );
    let before = model.state.work.clone();
    tap(&mut model);
    assert_eq!(model.state.work, before);
    let base = Field::Sled(Id(1), SledField::Length);
    enter(&mut model, base, "580");
    tap(&mut model);
    assert_eq!(model.notices, said("Brought up to date: 1.", false));
    assert_eq!(
        since(&model, Group::Measures, measure::VALUE)[0],
        ("base_length", "580")
    );
    // What somebody has found out of the rail stays, and their own measure too.
    let rail = id_of(&model, "Front rail");
    enter(&mut model, part::WIDTH.of(rail), "90");
    let length = rows(&model, Group::Measures)[3].id;
    enter(&mut model, measure::VALUE.of(length), "585");
    enter(&mut model, base, "590");
    tap(&mut model);
    assert_eq!(
        model.notices,
        said("What you typed stays: base_length, length.", true)
    );
    assert_eq!(
        since(&model, Group::Parts, part::WIDTH)[1],
        ("Front rail", "90")
    );
    model.update(Msg::Go(Place::Parts));
    let found = &model.answer.making.as_ref().unwrap().parts.rows[4];
    assert_eq!(found.length.unwrap().finished.mm(), 585.0);
    assert_eq!(found.width.unwrap().finished.mm(), 520.0);
}

/// A stock and a measurement of the sled's names that were here before are meant.
#[test]
fn what_has_the_name_already_stays() {
    let mut model = at_the_sled();
    model.update(Msg::Came(Chunk::Parts));
    enter(&mut model, stock::NAME.of(Id(2)), "Base");
    enter(&mut model, measure::NAME.of(Id(1)), "base_width");
    model.notices.clear();
    model.update(Msg::Edit(Edit::SledParts));
    let says = "Parts added: 3. What you typed stays: Base, measured; base_width, length.";
    assert_eq!(model.notices, said(says, true));
    assert_eq!(rows(&model, Group::Stocks).len(), 3);
    assert_eq!(since(&model, Group::Parts, part::STOCK)[0], ("Base", "2"));
    let names = since(&model, Group::Measures, measure::VALUE);
    let names: Vec<_> = names.iter().map(|(name, _)| *name).collect();
    assert_eq!(names, ["base_length", "runner_length", "runner_width"]);
    // A second tap changes nothing, and says so.
    model.notices.clear();
    let before = model.state.work.clone();
    model.update(Msg::Edit(Edit::SledParts));
    assert_eq!(model.state.work, before);
    let says = "What you typed stays: Base, measured; base_width, length.";
    assert_eq!(model.notices, [Notice::Unchanged(says.to_owned())]);
}
