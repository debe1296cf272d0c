//! States, edits and messages made up for tests.

use notchwright_core::units::{Mm, Unit};
use proptest::prelude::*;
use proptest::sample::select;

use crate::msg::{Edit, Msg, SawMove, Shelf};
use crate::state::{
    CutterField, Edge, Field, First, GrindKind, Id, JointField, LayoutKind, LeadBy, Leftover,
    Place, Rises, Rounding, SawField, ScrewField, SlotField, StackField, Step, Theme, ZeroKind,
};

fn id() -> impl Strategy<Value = Id> {
    (0_u16..6).prop_map(Id)
}

fn field() -> impl Strategy<Value = Field> {
    prop_oneof![
        select(JointField::ALL).prop_map(Field::Joint),
        (id(), select(SawField::ALL)).prop_map(|(id, field)| Field::Saw(id, field)),
        (id(), select(CutterField::ALL)).prop_map(|(id, field)| Field::Cutter(id, field)),
        (id(), select(ScrewField::ALL)).prop_map(|(id, field)| Field::Screw(id, field)),
        select(StackField::ALL).prop_map(Field::Stack),
        select(SlotField::ALL).prop_map(Field::Slot),
    ]
}

/// What people type, and what they do not.
fn text() -> impl Strategy<Value = String> {
    prop_oneof![
        3 => "[0-9]{1,3}([.,][0-9]{1,2})?",
        1 => "[0-9] [0-9]/[0-9]{1,2}\"?",
        1 => "[0-9]{1,2}(; ?[0-9]{1,2}){0,4}",
        1 => "\\PC{0,12}",
        1 => Just(String::new()),
    ]
}

fn shelf() -> impl Strategy<Value = Shelf> {
    select(&[Shelf::Saws, Shelf::Cutters, Shelf::Screws][..])
}

pub(crate) fn edit() -> impl Strategy<Value = Edit> {
    let length = (-1.0..400.0_f64).prop_map(|mm| Mm::new(mm).unwrap());
    let pick = prop_oneof![
        select(
            &[
                Edit::Layout(LayoutKind::Count),
                Edit::Layout(LayoutKind::Finger),
                Edit::Layout(LayoutKind::OnePass),
                Edit::Layout(LayoutKind::Pattern),
                Edit::Leftover(Leftover::Ends),
                Edit::Leftover(Leftover::Far),
                Edit::Leftover(Leftover::Rip),
                Edit::Mirrored(true),
                Edit::Mirrored(false),
                Edit::First(First::Pin),
                Edit::First(First::Socket),
                Edit::Zero(ZeroKind::Touch),
                Edit::Zero(ZeroKind::Flush),
                Edit::Zero(ZeroKind::TestKerf),
                Edit::Groove(true),
                Edit::Groove(false),
                Edit::GrooveEdge(Edge::Reference),
                Edit::GrooveEdge(Edge::Far),
            ][..]
        ),
        (0_usize..40).prop_map(Edit::Count),
    ];
    let item = prop_oneof![
        shelf().prop_map(Edit::Add),
        (shelf(), id()).prop_map(|(shelf, id)| Edit::Duplicate(shelf, id)),
        (shelf(), id()).prop_map(|(shelf, id)| Edit::Remove(shelf, id)),
        (shelf(), id()).prop_map(|(shelf, id)| Edit::Choose(shelf, id)),
        (id(), select(&[GrindKind::Flat, GrindKind::Alternate][..]))
            .prop_map(|(id, grind)| Edit::Grind(id, grind)),
        (id(), select(&[LeadBy::Lead, LeadBy::Threads][..]))
            .prop_map(|(id, by)| Edit::LeadBy(id, by)),
        (
            id(),
            select(&[Rounding::Division, Rounding::Half, Rounding::None][..])
        )
            .prop_map(|(id, rounding)| Edit::Rounding(id, rounding)),
        (id(), select(&[Rises::Away, Rises::Towards][..]))
            .prop_map(|(id, rises)| Edit::Rises(id, rises)),
    ];
    prop_oneof![
        4 => (field(), text()).prop_map(|(field, text)| Edit::Type(field, text)),
        1 => (field(), length.clone()).prop_map(|(field, length)| Edit::Set(field, length)),
        1 => length.prop_map(Edit::AddStack),
        2 => pick,
        2 => item,
    ]
}

fn saw_move() -> impl Strategy<Value = SawMove> {
    let step = prop_oneof![
        Just(Step::SetUp),
        Just(Step::Done),
        (0_usize..200).prop_map(Step::Stop),
    ];
    prop_oneof![
        Just(SawMove::Open),
        Just(SawMove::Next),
        Just(SawMove::Back),
        Just(SawMove::Leave),
        (0_usize..4, step).prop_map(|(set, step)| SawMove::Jump(set, step)),
    ]
}

/// Everything that can happen within one tab.
pub(crate) fn msg() -> impl Strategy<Value = Msg> {
    prop_oneof![
        6 => edit().prop_map(Msg::Edit),
        3 => saw_move().prop_map(Msg::Saw),
        1 => Just(Msg::Undo),
        1 => Just(Msg::Redo),
        1 => select(&[Place::Joint, Place::Shop][..]).prop_map(Msg::Go),
        1 => select(&[Unit::Mm, Unit::Inch][..]).prop_map(Msg::Units),
        1 => select(&[Theme::Device, Theme::Light, Theme::Dark][..]).prop_map(Msg::Theme),
    ]
}
