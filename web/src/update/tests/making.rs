//! What is made: rows that come and go, tables that are pasted, and stock that is measured anew.

use notchwright_core::units::Unit;

use crate::effect::Effect;
use crate::model::{Chunk, Model};
use crate::msg::{Edit, MakingEdit, Msg};
use crate::notice::Notice;
use crate::state::fields::{Known, measure, part, stock};
use crate::state::{Entry, Field, Group, Id, Place, Row};
use crate::testing::{opened_with, started};

fn open() -> Model {
    let mut model = started();
    assert_eq!(
        model.update(Msg::Go(Place::Parts)),
        [Effect::ScrollToTop, Effect::Fetch(Chunk::Parts)]
    );
    model.update(Msg::Came(Chunk::Parts));
    model
}

fn edit(model: &mut Model, edit: MakingEdit) -> Vec<Effect> {
    model.update(Msg::Edit(Edit::Making(edit)))
}

fn type_in(model: &mut Model, field: Field, text: &str) {
    model.update(Msg::Edit(Edit::Type(field, text.into())));
}

fn added(parts: usize) -> Notice {
    Notice::HandedOver(format!("Parts added: {parts}."), false)
}

fn rows(model: &Model, group: Group) -> &[Row] {
    model.state.work.job.making.rows(group)
}

fn text(row: &Row, field: Known) -> &str {
    row.form.text(field.name())
}

#[test]
fn nothing_is_changed_before_the_part_has_come() {
    let mut model = started();
    let before = model.clone();
    assert_eq!(edit(&mut model, MakingEdit::Add(Group::Parts)), []);
    assert!(model == before);
}

#[test]
fn rows_are_added_copied_removed_and_come_back() {
    let mut model = open();
    let before = rows(&model, Group::Parts).to_vec();
    let effects = edit(&mut model, MakingEdit::Add(Group::Parts));
    assert_eq!(effects, [Effect::Focus("part-5-name".into())]);
    edit(&mut model, MakingEdit::Duplicate(Group::Parts, Id(1)));
    let added = &rows(&model, Group::Parts)[before.len()..];
    assert_eq!(
        added[0],
        Row {
            id: Id(5),
            ..Row::default()
        }
    );
    assert_eq!(added[1].form, before[0].form);
    edit(&mut model, MakingEdit::Remove(Group::Parts, Id(2)));
    assert_eq!(model.notices, [Notice::Removed("The part".into())]);
    for _ in 0..3 {
        model.update(Msg::Undo);
    }
    assert_eq!(rows(&model, Group::Parts), before);
}

#[test]
fn a_list_is_full_at_five_hundred() {
    let mut model = open();
    let free = 500 - rows(&model, Group::Parts).len();
    edit(
        &mut model,
        MakingEdit::Paste("Slat\t2\t600\t40\n".repeat(free)),
    );
    assert_eq!(model.notices, [added(free)]);
    edit(&mut model, MakingEdit::Add(Group::Parts));
    assert_eq!(model.notices, [added(free), Notice::Full]);
    edit(&mut model, MakingEdit::Paste("Slat\t2\t600\t40\n".into()));
    assert_eq!(rows(&model, Group::Parts).len(), 500);
    let (again, _) = opened_with(&model.state);
    assert!(again.state == model.state);
}

/// From sheets of 12 to 12.4 mm and back: what it was is known until somebody settles it.
#[test]
fn stock_that_is_measured_anew_knows_what_it_was() {
    let mut model = open();
    let thickness = stock::THICKNESS.of(Id(1));
    let was = |model: &Model| text(&rows(model, Group::Stocks)[0], stock::FORMER).to_owned();
    for (typed, former) in [
        ("12.", "12"),
        ("12.4", "12"),
        ("12", ""),
        ("13", "12"),
        ("", "12"),
    ] {
        type_in(&mut model, thickness, typed);
        assert_eq!(was(&model), former, "{typed}");
    }
    type_in(&mut model, thickness, "13");
    edit(
        &mut model,
        MakingEdit::Choose(stock::FORMER.spot(Id(1)), ""),
    );
    assert_eq!(was(&model), "");
    assert_eq!(
        text(&rows(&model, Group::Stocks)[0], stock::THICKNESS),
        "13"
    );
}

/// Key by key: a stock that was never measured before has not been another thickness.
#[test]
fn a_first_measurement_is_none_anew() {
    let mut model = open();
    edit(&mut model, MakingEdit::Add(Group::Stocks));
    let row = rows(&model, Group::Stocks).last().unwrap().id;
    for (field, typed, former) in [
        (stock::THICKNESS, "1", ""),
        (stock::THICKNESS, "18", ""),
        (stock::THICKNESS, "18.2", ""),
        (stock::NAME, "Oak", ""),
        (stock::THICKNESS, "18.", "18.2"),
        (stock::THICKNESS, "18.2", ""),
        (stock::THICKNESS, "18.3", "18.2"),
        (stock::THICKNESS, "", "18.2"),
        (stock::NAME, "Oak, dry", "18.2"),
        (stock::THICKNESS, "1", "18.2"),
        (stock::THICKNESS, "17", "18.2"),
    ] {
        type_in(&mut model, field.of(row), typed);
        let stock = rows(&model, Group::Stocks).last().unwrap().form.clone();
        assert_eq!(stock.text(stock::FORMER.name()), former, "{typed}");
    }
}

/// The dimensions follow, and say by how much.
#[test]
fn dimensions_follow_the_stock() {
    let mut model = open();
    type_in(&mut model, part::WIDTH.of(Id(1)), "high - 2*t");
    type_in(&mut model, part::TRIM.of(Id(1)), "t/4");
    let width = |model: &Model| {
        model.answer.making.as_ref().unwrap().parts.rows[0]
            .width
            .unwrap()
    };
    assert_eq!(width(&model).finished.mm(), 116.0);
    assert_eq!(width(&model).change, None);
    type_in(&mut model, stock::THICKNESS.of(Id(1)), "13");
    assert_eq!(width(&model).finished.mm(), 114.0);
    let change = width(&model).change.unwrap();
    assert_eq!((change.was.mm(), change.by.mm()), (116.0, -2.0));
    let trim = model.answer.making.as_ref().unwrap().parts.rows[0]
        .trim_change
        .unwrap();
    assert_eq!((trim.was.mm(), trim.by.mm()), (3.0, 0.25));
}

#[test]
fn what_is_wrong_is_said_beside_its_cell() {
    let mut model = open();
    for (field, typed, says) in [
        (part::WIDTH.of(Id(1)), "hihg", "high"),
        (part::LENGTH.of(Id(2)), "10 - chest", "must be from"),
        (part::COUNT.of(Id(3)), "half", "number"),
        (measure::VALUE.of(Id(2)), "deep + 1", "deep"),
        (stock::THICKNESS.of(Id(3)), "thin", "begins with a number"),
    ] {
        let mut model = model.clone();
        type_in(&mut model, field, typed);
        let found: Vec<_> = model
            .answer
            .problems_of(field)
            .map(|text| text.show(|mm| format!("{mm:?}")))
            .collect();
        assert!(
            found.iter().any(|text| text.contains(says)),
            "{typed}: {found:?}"
        );
    }
    // The other cells are still worked out.
    type_in(&mut model, part::WIDTH.of(Id(1)), "hihg");
    let rows = &model.answer.making.as_ref().unwrap().parts.rows;
    assert!(rows[0].length.is_some() && rows[0].width.is_none() && rows[1].part.is_some());
}

/// A sum keeps the unit that it was typed in.
#[test]
fn each_cell_has_the_unit_it_was_typed_in() {
    let mut model = open();
    model.update(Msg::Units(Unit::Inch));
    type_in(&mut model, part::LENGTH.of(Id(1)), "11 1/2 - 2*t");
    type_in(&mut model, part::WIDTH.of(Id(1)), "5 1/2");
    model.update(Msg::Units(Unit::Mm));
    assert_eq!(model.state.shown(part::LENGTH.of(Id(1))), "11 1/2 - 2*t");
    assert_eq!(model.state.shown(part::WIDTH.of(Id(1))), "139.7");
    let row = &model.answer.making.as_ref().unwrap().parts.rows[0];
    // 292.1 less twice 12.
    assert!((row.length.unwrap().finished.mm() - 268.1).abs() < 1e-9);
    assert!((row.width.unwrap().finished.mm() - 139.7).abs() < 1e-9);
}

#[test]
fn a_table_becomes_parts_and_parts_a_table() {
    let mut model = open();
    let before = rows(&model, Group::Parts).len();
    let table = "Shelf\t3\t300 - 2*t\t200\tAsh, 18\r\nBack\t1\t600\t400\tHardboard\tyes\r\n";
    edit(&mut model, MakingEdit::Paste(table.into()));
    assert_eq!(model.notices, [added(2)]);
    let added = &rows(&model, Group::Parts)[before..];
    let stocks = rows(&model, Group::Stocks);
    assert_eq!(text(&added[0], part::LENGTH), "300 - 2*t");
    assert_eq!(text(&added[0], part::STOCK), "2");
    assert_eq!(text(&added[1], part::MAY_TURN), "yes");
    assert_eq!(
        (stocks.len(), text(&stocks[3], stock::NAME)),
        (4, "Hardboard")
    );
    let effects = model.update(Msg::CopyParts);
    let [Effect::Copy(copied)] = effects.as_slice() else {
        panic!("{effects:?}")
    };
    let all = rows(&model, Group::Parts).to_vec();
    for id in 1..=6 {
        edit(&mut model, MakingEdit::Remove(Group::Parts, Id(id)));
    }
    edit(&mut model, MakingEdit::Paste(copied.clone()));
    let forms = |rows: &[Row]| rows.iter().map(|row| row.form.clone()).collect::<Vec<_>>();
    assert_eq!(forms(rows(&model, Group::Parts)), forms(&all));
}

/// A sum that was typed in millimetres is copied in inches as what it is.
#[test]
fn a_copied_table_comes_to_the_same_whatever_the_unit() {
    let mut model = open();
    type_in(&mut model, part::LENGTH.of(Id(1)), "deep - 2*t + 3");
    let sizes = |model: &Model| -> Vec<f64> {
        let rows = &model.answer.making.as_ref().unwrap().parts.rows;
        let both = rows.iter().flat_map(|row| [row.length, row.width]);
        both.map(|it| it.unwrap().finished.mm()).collect()
    };
    let before = sizes(&model);
    model.update(Msg::Units(Unit::Inch));
    let effects = model.update(Msg::CopyParts);
    let [Effect::Copy(copied)] = effects.as_slice() else {
        panic!("{effects:?}")
    };
    assert!(copied.contains("\tdeep - 2*t + 3 mm\t"), "{copied}");
    for id in 1..=4 {
        edit(&mut model, MakingEdit::Remove(Group::Parts, Id(id)));
    }
    edit(&mut model, MakingEdit::Paste(copied.clone()));
    for (before, after) in before.iter().zip(sizes(&model)) {
        assert!((before - after).abs() < 1e-6, "{before} {after}");
    }
}

/// Upper and lower case are alike, and a stock without a name goes by its place, in tables as everywhere.
#[test]
fn a_table_finds_the_stocks_that_are_there() {
    let mut model = open();
    type_in(&mut model, stock::NAME.of(Id(2)), "");
    let stocks = rows(&model, Group::Stocks).len();
    let table = "Shelf\t1\t300\t200\tbirch PLY, 6\nLid\t1\t300\t200\tStock 2\n";
    edit(&mut model, MakingEdit::Paste(table.into()));
    assert_eq!(rows(&model, Group::Stocks).len(), stocks);
    let added: Vec<_> = rows(&model, Group::Parts)[4..].to_vec();
    let of: Vec<_> = added.iter().map(|row| text(row, part::STOCK)).collect();
    assert_eq!(of, ["3", "2"]);
    let effects = model.update(Msg::CopyParts);
    let [Effect::Copy(copied)] = effects.as_slice() else {
        panic!("{effects:?}")
    };
    assert!(copied.contains("\nLid\t1\t300\t200\tStock 2\t"), "{copied}");
}

#[test]
fn a_job_carries_what_it_is_made_of() {
    let mut model = open();
    let making = model.state.work.job.making.clone();
    model.update(Msg::Came(Chunk::Jobs));
    model.update(Msg::Edit(Edit::Job(crate::msg::Leaf::Add)));
    assert!(rows(&model, Group::Parts).is_empty());
    model.update(Msg::Edit(Edit::Job(crate::msg::Leaf::Open(0))));
    assert_eq!(model.state.work.job.making, making);
    assert_eq!(
        making.entry(stock::NAME.spot(Id(1))),
        Some(&Entry::mm("Ash, 12"))
    );
}
