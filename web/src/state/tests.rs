//! What is typed comes back as it was typed.

mod bring;

use notchwright_core::units::{Mm, Unit, parse_length};
use proptest::prelude::*;

use super::{Cutter, Entry, Field, Id, Item, JointField, Kind, LONGEST, List, Named, State};

fn length(text: &str, unit: Unit) -> Entry {
    Entry::new(text, unit)
}

#[test]
fn lengths_are_shown_in_the_unit_in_use() {
    for (typed, typed_in, shown_in, shown) in [
        ("140", Unit::Mm, Unit::Mm, "140"),
        ("140", Unit::Mm, Unit::Inch, "5.5118"),
        ("12.7", Unit::Mm, Unit::Inch, "1/2"),
        ("3/4", Unit::Inch, Unit::Mm, "19.05"),
        ("1 1/2", Unit::Inch, Unit::Inch, "1 1/2"),
        // A text with a unit of its own means the same in both.
        ("12 mm", Unit::Inch, Unit::Mm, "12"),
        // What cannot be read is kept for the person to mend.
        ("1 1/", Unit::Inch, Unit::Mm, "1 1/"),
        ("", Unit::Mm, Unit::Inch, ""),
    ] {
        let entry = length(typed, typed_in);
        assert_eq!(entry.shown(Kind::Length, shown_in), shown, "{typed:?}");
    }
}

#[test]
fn a_list_is_converted_length_by_length() {
    let list = length("1/8; 1/8\n1/4", Unit::Inch);
    assert_eq!(list.shown(Kind::Lengths, Unit::Mm), "3.175; 3.175; 6.35");
    let unclear = length("1/8; x", Unit::Inch);
    assert_eq!(unclear.shown(Kind::Lengths, Unit::Mm), "1/8; x");
}

#[test]
fn names_and_numbers_are_the_same_in_every_unit() {
    for kind in [Kind::Name, Kind::Number, Kind::Numbers] {
        assert_eq!(length("25.4", Unit::Mm).shown(kind, Unit::Inch), "25.4");
    }
}

#[test]
fn a_length_worked_out_is_typed_to_a_tenth_of_a_micrometre() {
    let third = Mm::new(10.0 / 3.0).unwrap();
    assert_eq!(Entry::of(third, Unit::Mm), Entry::mm("3.3333"));
    assert_eq!(Entry::of(Mm::INCH, Unit::Inch).text, "1");
}

#[test]
fn no_field_is_without_an_end() {
    let endless = "½".repeat(LONGEST + 7);
    assert_eq!(Entry::mm(&endless).text.chars().count(), LONGEST);
}

#[test]
fn a_list_always_has_one_chosen_until_it_is_empty() {
    let named = |name: &str| Cutter {
        name: Entry::mm(name),
        ..Cutter::default()
    };
    let mut list = List::new(["blade", "stack", "bit"].map(named));
    let name = |list: &List<Cutter>| list.chosen().map(|item| item.name().text.clone());
    assert_eq!(name(&list).as_deref(), Some("blade"));
    list.choose(Id(2));
    list.choose(Id(77));
    assert_eq!(name(&list).as_deref(), Some("stack"));
    list.remove(Id(2));
    assert_eq!(name(&list).as_deref(), Some("bit"));
    list.remove(Id(1));
    assert_eq!(name(&list).as_deref(), Some("bit"));
    list.remove(Id(3));
    assert_eq!(name(&list), None);
    // The ids of what is gone are not given to something else: what rests elsewhere still asks for them.
    assert_eq!(list.push(named("new")), Some(Id(4)));
}

#[test]
fn a_list_grows_to_its_bound_and_no_further() {
    let mut list = List::<Cutter>::default();
    let pushed = (0..60).filter_map(|_| list.push(Cutter::default())).count();
    assert_eq!(pushed, Cutter::MOST);
}

#[test]
fn the_ids_of_inputs_name_one_field_each() {
    let demo = State::demo();
    let cutters = demo.work.shop.cutters.items().iter();
    let fields: Vec<Field> = JointField::ALL
        .iter()
        .map(|field| Field::Joint(*field))
        .chain(cutters.flat_map(|cutter| {
            let fields = super::CutterField::ALL.iter();
            fields.map(|field| Field::Cutter(cutter.id, *field))
        }))
        .chain(
            super::StackField::ALL
                .iter()
                .map(|field| Field::Stack(*field)),
        )
        .chain(
            super::SlotField::ALL
                .iter()
                .map(|field| Field::Slot(*field)),
        )
        .collect();
    let mut ids: Vec<String> = fields.iter().map(|field| field.id()).collect();
    ids.sort();
    ids.dedup();
    assert_eq!(ids.len(), fields.len());
    for field in fields {
        assert!(demo.work.entry(field).is_some(), "{field:?}");
    }
}

proptest! {
    /// Derived: both conversions are to a micrometre or finer, and one inch is 25.4 mm.
    #[test]
    fn what_is_shown_in_the_other_unit_is_the_same_length(mm in 0.0..3000.0_f64) {
        let typed = Entry::of(Mm::new(mm).unwrap(), Unit::Mm);
        let shown = typed.shown(Kind::Length, Unit::Inch);
        let back = parse_length(&shown, Unit::Inch).unwrap();
        prop_assert!((back.mm() - mm).abs() <= 0.0013 + 0.0001, "{mm} as {shown}");
    }

    #[test]
    fn showing_a_text_never_changes_it(text in ".{0,40}") {
        let typed = Entry::mm(&text);
        for kind in [Kind::Name, Kind::Length, Kind::Lengths, Kind::Number, Kind::Numbers] {
            let _ = typed.shown(kind, Unit::Inch);
            prop_assert_eq!(typed.shown(kind, Unit::Mm), text.as_str());
        }
    }
}
