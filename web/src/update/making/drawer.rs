//! Drawers gone on with elsewhere: their joint as one of the job's, their boards as parts.

use notchwright_core::drawer::{DrawerBoxPlan, DrawerPlan, Nudged, PartRow};
use notchwright_core::units::{Mm, Unit, parse_length};

use crate::answer::making::drawer::plan;
use crate::msg::HandOver;
use crate::notice::Notice;
use crate::state::fields::{drawer, part, stock};
use crate::state::{
    Edge, Ends, Entry, First, Form, GrooveForm, Id, Item, JointForm, JointKind, LayoutKind,
    Leftover, Making, PiecesForm, Row, Work,
};
use crate::update::edit::{Outcome, said};

/// Adds what follows from the drawers; nothing happens while their fields do not say what.
#[inline(never)]
pub(crate) fn hand_over(work: &mut Work, to: HandOver) -> Outcome {
    let Some(plan) = plan(work) else {
        return Outcome::default();
    };
    let is_added = match to {
        HandOver::Joint(place) => plan
            .drawers
            .get(place)
            .is_some_and(|drawer| add_joint(work, &plan, place, drawer)),
        HandOver::Parts => add_parts(&mut work.job.making, &plan.parts),
    };
    if is_added {
        Outcome::default()
    } else {
        said(Notice::Full)
    }
}

fn length(length: Mm) -> Entry {
    Entry::of(length, Unit::Mm)
}

fn add_joint(work: &mut Work, plan: &DrawerBoxPlan, place: usize, drawer: &DrawerPlan) -> bool {
    if !work.job.joints.has_room() {
        return false;
    }
    let joint = joint(work, plan, place, drawer);
    work.add_joint(joint);
    true
}

fn joint(work: &Work, plan: &DrawerBoxPlan, place: usize, drawer: &DrawerPlan) -> JointForm {
    let form = &work.job.making.drawer;
    let thickness = |name: &str| {
        let board = drawer.boards.iter().find(|board| board.name == name);
        board.map_or_else(Entry::default, |board| length(board.thickness))
    };
    let layout = match form.text(drawer::LAYOUT.name()) {
        "count" | "finger" => LayoutKind::Count,
        _ => LayoutKind::OnePass,
    };
    let first = match form.text(drawer::FIRST.name()) {
        "socket" => First::Socket,
        _ => First::Pin,
    };
    let what = match plan.drawers.len() {
        1 => "Drawer".to_owned(),
        _ => format!("Drawer {}", place + 1),
    };
    JointForm {
        kind: JointKind::Box,
        name: Entry::mm(&format!("{what}, sides to front and back")),
        width: length(drawer.height),
        thickness_a: thickness("side"),
        thickness_b: thickness("front"),
        layout,
        count: Entry::mm(&drawer.joint.count.to_string()),
        leftover: Leftover::Ends,
        first,
        glue_gap: Entry::mm("0.05"),
        proud: Entry::default(),
        groove: groove(drawer),
        pieces: PiecesForm {
            what: Entry::mm("drawer"),
            count: Entry::mm(&drawer.count.to_string()),
            names_a: Entry::mm("left side; right side"),
            names_b: Entry::mm("front; back"),
            ends_a: Ends::Both,
            ends_b: Ends::Both,
        },
        ..work.blank_joint()
    }
}

/// A groove that was moved touches the edge of its finger: it is rounded to where it stays behind it.
fn groove(drawer: &DrawerPlan) -> GrooveForm {
    let groove = &drawer.groove;
    let hundredths = groove.from_edge.mm() * 100.0;
    let moved = drawer.nudges.iter().find(|it| it.what == Nudged::Groove);
    let from_edge = match moved {
        Some(nudge) if nudge.to < nudge.from => Mm::new(hundredths.floor() / 100.0),
        Some(_) => Mm::new(hundredths.ceil() / 100.0),
        None => Some(groove.from_edge),
    };
    GrooveForm {
        on: true,
        edge: Edge::Reference,
        from_edge: length(from_edge.unwrap_or(groove.from_edge)),
        width: length(groove.width),
        depth: length(groove.depth),
    }
}

/// Adds all of them, or none where there is no room for all.
fn add_parts(making: &mut Making, rows: &[PartRow]) -> bool {
    let before = making.clone();
    let mut of_boards = Vec::new();
    for row in rows {
        let is_bottom = row.stock == "bottoms";
        // A board and a bottom of the same thickness are not cut from the same.
        let others: &[Id] = if is_bottom { &of_boards } else { &[] };
        let stock = stock_of(making, row, others);
        let added = stock.and_then(|stock| making.parts.push(part_of(row, stock)));
        if added.is_none() {
            *making = before;
            return false;
        }
        of_boards.extend(stock.filter(|_| !is_bottom));
    }
    true
}

/// A stock of this thickness, which is added where there is none.
fn stock_of(making: &mut Making, row: &PartRow, others: &[Id]) -> Option<Id> {
    let is_as_thick = |stock: &&Row| {
        let entry = stock.form.get(stock::THICKNESS.name());
        let read = entry.and_then(|entry| parse_length(&entry.text, entry.unit).ok());
        read.is_some_and(|thickness| thickness.is_same(row.thickness))
    };
    let mut stocks = making.stocks.items().iter();
    let known = stocks.find(|stock| is_as_thick(stock) && !others.contains(&stock.id()));
    let known = known.map(Item::id);
    known.or_else(|| {
        let form = Form::default()
            .with(stock::NAME.name(), Entry::mm(&capital(row.stock)))
            .with(stock::THICKNESS.name(), length(row.thickness));
        making.stocks.push(Row {
            form,
            ..Row::default()
        })
    })
}

fn part_of(row: &PartRow, stock: Id) -> Row {
    let may_turn = if row.may_turn { "yes" } else { "" };
    let form = Form::default()
        .with(part::NAME.name(), Entry::mm(&capital(&row.name)))
        .with(part::COUNT.name(), Entry::mm(&row.count.to_string()))
        .with(part::LENGTH.name(), length(row.length))
        .with(part::WIDTH.name(), length(row.width))
        .with(part::STOCK.name(), Entry::mm(&stock.to_string()))
        .with(part::MAY_TURN.name(), Entry::mm(may_turn));
    Row {
        form,
        ..Row::default()
    }
}

/// The same with a capital letter.
fn capital(text: &str) -> String {
    let mut letters = text.chars();
    let first = letters.next().map(|first| first.to_ascii_uppercase());
    first.into_iter().chain(letters).collect()
}
