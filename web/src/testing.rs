//! States, edits and messages made up for tests.

use notchwright_core::stop::Board;
use notchwright_core::units::{Mm, Unit};
use proptest::prelude::*;
use proptest::sample::select;
use proptest::test_runner::TestCaseError;

use crate::effect::Effect;
use crate::keep::saved;
use crate::model::{Can, Chunk, Model, Part};
use crate::msg::{Edit, Export, Leaf, Look, MakingEdit, Msg, SawMove, Search, Shelf, Tick, Way};
use crate::state::{
    Approach, Around, CutField, CutterField, DovetailField, Edge, End, Ends, Field, First,
    GrindKind, Group, Hand, Id, JointField, JointKind, LayoutKind, LeadBy, Leftover, Mark,
    MeasuredFrom, Order, PaperSize, PartsTool, PiecesField, PiecesForm, PinsBy, Place, PointField,
    Prints, Rises, Rounding, RoutField, SawField, ScrewField, Section, Side, SledField,
    SlidingField, SlopeBy, SlotField, Spot, SquareField, StackField, State, Step, Theme, Tool,
    WidthBy, ZeroKind, fields,
};
use crate::update::Found;

/// The page on its first visit, with the part for jobs and for the saw, which is fetched right after the start.
pub(crate) fn started() -> Model {
    opened(Found::default()).0
}

/// The page with that part, and what else it asks for at the start.
pub(crate) fn opened(found: Found) -> (Model, Vec<Effect>) {
    let (mut model, mut effects) = Model::start(found);
    let asked = effects
        .iter()
        .position(|effect| *effect == Effect::Fetch(Chunk::Jobs));
    effects.remove(asked.unwrap());
    assert_eq!(model.update(Msg::Came(Chunk::Jobs)), [Effect::AskWhatCan]);
    (model, effects)
}

/// The page that finds this state in the store.
pub(crate) fn opened_with(state: &State) -> (Model, Vec<Effect>) {
    opened(Found {
        stored: Some(saved::save(state)),
        ..Found::default()
    })
}

/// The step that is shown at the saw is one of the plan.
pub(crate) fn assert_within_plan(model: &Model) -> Result<(), TestCaseError> {
    let course = model.answer.course(model.state.at_saw.order);
    let is_shown = model.state.at_saw.open && model.parts.of(Chunk::Jobs) == Part::Here;
    let (true, Some(course)) = (is_shown, course) else {
        return Ok(());
    };
    let at = model.state.progress();
    prop_assert!(at.set < course.legs());
    let load = course
        .loads(at.set)
        .into_iter()
        .find(|load| load.end == at.end);
    prop_assert!(load.is_some(), "{:?}", at);
    if let (Step::Stop(stop), Some(load)) = (at.step, load) {
        prop_assert!(stop < course.passes(at.set, &load).len(), "{:?}", at);
    }
    Ok(())
}

/// The worked joint alone, cut on one end of one board each.
pub(crate) fn single() -> State {
    let mut state = State::demo();
    state.work.job.joints = Around::default();
    state.work.joint.pieces = PiecesForm::default();
    state
}

fn id() -> impl Strategy<Value = Id> {
    (0_u16..6).prop_map(Id)
}

fn field() -> impl Strategy<Value = Field> {
    prop_oneof![
        Just(Field::Job),
        select(JointField::ALL).prop_map(Field::Joint),
        select(PiecesField::ALL).prop_map(Field::Pieces),
        (id(), select(SawField::ALL)).prop_map(|(id, field)| Field::Saw(id, field)),
        (id(), select(CutterField::ALL)).prop_map(|(id, field)| Field::Cutter(id, field)),
        (id(), select(ScrewField::ALL)).prop_map(|(id, field)| Field::Screw(id, field)),
        select(StackField::ALL).prop_map(Field::Stack),
        select(SlotField::ALL).prop_map(Field::Slot),
        select(DovetailField::ALL).prop_map(Field::Dovetail),
        select(SlidingField::ALL).prop_map(Field::Sliding),
        (id(), select(SledField::ALL)).prop_map(|(id, field)| Field::Sled(id, field)),
        select(CutField::ALL).prop_map(Field::Cut),
        select(SquareField::ALL).prop_map(Field::Square),
        (id(), select(PointField::ALL)).prop_map(|(id, field)| Field::Point(id, field)),
        select(RoutField::ALL).prop_map(Field::Rout),
        making_spot().prop_map(Field::Making),
    ]
}

/// A field of what is made, of a row that may be there.
fn making_spot() -> impl Strategy<Value = Spot> {
    let all = [
        fields::part::ALL,
        fields::stock::ALL,
        fields::sheet::ALL,
        fields::cutting::ALL,
        fields::measure::ALL,
    ]
    .concat();
    (select(all), id()).prop_map(|(field, id)| field.spot(id))
}

fn making() -> impl Strategy<Value = MakingEdit> {
    let group = || {
        select(
            &[
                Group::Stocks,
                Group::Sheets,
                Group::Measures,
                Group::Parts,
                Group::Drawer,
            ][..],
        )
    };
    let table = "([A-Za-z]{0,5}\t[0-9]{0,2}\t[0-9a-z*+ -]{0,9}\t[0-9]{1,3}\t[A-C]?\n){0,3}";
    prop_oneof![
        (making_spot(), select(&["", "yes", "later"][..]))
            .prop_map(|(spot, word)| MakingEdit::Choose(spot, word)),
        (making_spot(), id()).prop_map(|(spot, id)| MakingEdit::Refer(spot, id)),
        group().prop_map(MakingEdit::Add),
        (group(), id()).prop_map(|(group, id)| MakingEdit::Duplicate(group, id)),
        (group(), id()).prop_map(|(group, id)| MakingEdit::Remove(group, id)),
        table.prop_map(MakingEdit::Paste),
        tick().prop_map(MakingEdit::Tick),
    ]
}

/// A cut of a layout that hardly is the one that is shown.
fn tick() -> impl Strategy<Value = Tick> {
    (any::<u32>(), 0_u32..200, 0_u32..99, any::<bool>()).prop_map(
        |(layout, rounds, cut, is_made)| Tick {
            of: Mark { layout, rounds },
            cut,
            is_made,
        },
    )
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
    select(&[Shelf::Saws, Shelf::Sleds, Shelf::Cutters, Shelf::Screws][..])
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
                Edit::Joint(JointKind::Box),
                Edit::Joint(JointKind::Dovetail),
                Edit::Joint(JointKind::Sliding),
                Edit::Pins(PinsBy::Widths),
                Edit::Pins(PinsBy::Ratio),
                Edit::Pins(PinsBy::Equal),
                Edit::Pins(PinsBy::Narrowest),
                Edit::Slope(SlopeBy::Run),
                Edit::Slope(SlopeBy::Degrees),
            ][..]
        ),
        (0_usize..40).prop_map(Edit::Count),
        (0_usize..20).prop_map(Edit::Tails),
        id().prop_map(Edit::PinCutter),
        (
            select(&[Board::A, Board::B][..]),
            select(&[Ends::One, Ends::Both][..])
        )
            .prop_map(|(board, ends)| Edit::Ends(board, ends)),
    ];
    let item = prop_oneof![
        shelf().prop_map(Edit::Add),
        (shelf(), id()).prop_map(|(shelf, id)| Edit::Duplicate(shelf, id)),
        (shelf(), id()).prop_map(|(shelf, id)| Edit::Remove(shelf, id)),
        (shelf(), id()).prop_map(|(shelf, id)| Edit::Choose(shelf, id)),
        (
            id(),
            select(&[GrindKind::Flat, GrindKind::Alternate, GrindKind::Slope][..])
        )
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
    let on_sled = prop_oneof![
        (id(), select(&[Side::Left, Side::Right][..])).prop_map(|(id, side)| Edit::Side(id, side)),
        (
            id(),
            select(&[MeasuredFrom::NearTooth, MeasuredFrom::Centre][..])
        )
            .prop_map(|(id, from)| Edit::MeasuredFrom(id, from)),
        (id(), select(&[Section::Plain, Section::T][..]))
            .prop_map(|(id, section)| Edit::Section(id, section)),
        (id(), length.clone()).prop_map(|(id, lead)| Edit::TakeLead(id, lead)),
        Just(Edit::AddPoint),
        id().prop_map(Edit::RemovePoint),
        Just(Edit::ClearPoints),
        (id(), select(&[Approach::Up, Approach::Down][..]))
            .prop_map(|(id, approach)| Edit::Approach(id, approach)),
        "20[0-9]{2}-[01][0-9]-[0-3][0-9]".prop_map(Edit::KeepTest),
        id().prop_map(Edit::RemoveTest),
        select(&[WidthBy::Sheet, WidthBy::Width][..]).prop_map(Edit::WidthBy),
    ];
    prop_oneof![
        2 => on_sled,
        4 => (field(), text()).prop_map(|(field, text)| Edit::Type(field, text)),
        1 => (field(), length.clone()).prop_map(|(field, length)| Edit::Set(field, length)),
        1 => length.prop_map(Edit::AddStack),
        2 => pick,
        2 => item,
        2 => making().prop_map(Edit::Making),
        2 => leaf().prop_map(Edit::Job),
        2 => leaf().prop_map(Edit::JointOf),
    ]
}

/// One of a few, and sometimes beyond them.
pub(crate) fn leaf() -> impl Strategy<Value = Leaf> {
    let place = || 0_usize..6;
    prop_oneof![
        Just(Leaf::Add),
        place().prop_map(Leaf::Open),
        place().prop_map(Leaf::Duplicate),
        place().prop_map(Leaf::Remove),
    ]
}

fn end() -> impl Strategy<Value = End> {
    (0_usize..9, 0_usize..3, 0_usize..2).prop_map(|(piece, board, end)| End::new(piece, board, end))
}

pub(crate) fn saw_move() -> impl Strategy<Value = SawMove> {
    let step = prop_oneof![
        Just(Step::SetUp),
        Just(Step::Board),
        Just(Step::Done),
        (0_usize..200).prop_map(Step::Stop),
    ];
    prop_oneof![
        2 => Just(SawMove::Open),
        6 => Just(SawMove::Next),
        2 => Just(SawMove::Back),
        1 => Just(SawMove::Leave),
        1 => Just(SawMove::Anew),
        1 => any::<bool>().prop_map(SawMove::Pause),
        1 => end().prop_map(SawMove::Take),
        2 => (end(), any::<bool>()).prop_map(|(end, is_done)| SawMove::Mark(end, is_done)),
        2 => (0_usize..4, step).prop_map(|(set, step)| SawMove::Jump(set, step)),
    ]
}

fn way() -> impl Strategy<Value = Way> {
    prop_oneof![
        any::<bool>().prop_map(Way::Speaks),
        any::<bool>().prop_map(Way::Listens),
        select(&[Hand::Left, Hand::Right][..]).prop_map(Way::Hand),
        select(&[Order::Boards, Order::Stops][..]).prop_map(Way::Order),
    ]
}

fn heard() -> impl Strategy<Value = String> {
    prop_oneof![
        3 => select(&["next", "Back!", "go on, again", "pause", "resume"][..]).prop_map(str::to_owned),
        1 => "\\PC{0,12}",
    ]
}

fn can() -> impl Strategy<Value = Can> {
    any::<[bool; 3]>().prop_map(|[speak, listen, share]| Can {
        speak,
        listen,
        share,
    })
}

fn look() -> impl Strategy<Value = Look> {
    prop_oneof![
        select(
            &[
                Tool::Fit,
                Tool::Base,
                Tool::Square,
                Tool::Screw,
                Tool::Groove
            ][..]
        )
        .prop_map(Look::Tool),
        (0_u32..1200).prop_map(Look::Pushed),
        (0_u32..7).prop_map(Look::Cut),
        select(&[Prints::Drawing, Prints::HoleLine][..]).prop_map(Look::Prints),
        select(&[PaperSize::A4, PaperSize::Letter][..]).prop_map(Look::Paper),
        any::<bool>().prop_map(Look::Templates),
        select(&[PartsTool::Drawer, PartsTool::Parts, PartsTool::Sheet][..])
            .prop_map(Look::PartsTool),
    ]
}

/// What leads to something outside, and changes nothing here.
fn out() -> impl Strategy<Value = Msg> {
    prop_oneof![
        Just(Msg::Export(Export::Csv)),
        (0_usize..6).prop_map(|set| Msg::Export(Export::Svg(set))),
        (0_usize..6).prop_map(|set| Msg::Export(Export::Dxf(set))),
        select(
            &[
                Msg::SaveJob,
                Msg::SaveAll,
                Msg::ShareJob,
                Msg::CopyLink,
                Msg::CopyParts,
                Msg::Print
            ][..]
        ),
    ]
}

/// Everything that can happen within one tab.
pub(crate) fn msg() -> impl Strategy<Value = Msg> {
    prop_oneof![
        6 => edit().prop_map(Msg::Edit),
        3 => saw_move().prop_map(Msg::Saw),
        1 => way().prop_map(Msg::Way),
        1 => heard().prop_map(Msg::Heard),
        1 => Just(Msg::Speak),
        1 => select(vec![Search::Slice(None), Search::Stop, Search::GoOn]).prop_map(Msg::Search),
        1 => can().prop_map(Msg::Can),
        1 => out(),
        1 => Just(Msg::Undo),
        1 => Just(Msg::Redo),
        1 => select(&[Place::Joint, Place::Sled, Place::Parts, Place::Jobs, Place::Shop][..]).prop_map(Msg::Go),
        1 => (
            select(&[Chunk::Sled, Chunk::Dovetail, Chunk::Shop, Chunk::Parts, Chunk::Jobs][..]),
            select(&[Msg::Came, Msg::DidNotCome, Msg::AskAgain][..])
        )
            .prop_map(|(chunk, what)| what(chunk)),
        1 => look().prop_map(Msg::Look),
        1 => select(&[Unit::Mm, Unit::Inch][..]).prop_map(Msg::Units),
        1 => select(&[Theme::Device, Theme::Light, Theme::Dark][..]).prop_map(Msg::Theme),
    ]
}
