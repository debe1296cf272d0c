//! Changes of what was typed and chosen.

use notchwright_core::stop::Board;
use notchwright_core::units::{Mm, Unit, parse_length, read_number};

use super::{jobs, making};
use crate::answer::sled;
use crate::effect::Effect;
use crate::msg::{Edit, Shelf};
use crate::notice::Notice;
use crate::state::{
    Cutter, CutterField, Entry, Field, Id, Item, LayoutKind, LeadBy, List, Named, Point,
    PointField, SawField, Screw, ScrewField, Shop, SledField, SledForm, SquareTest, Work,
};

/// Does the same to whichever list is meant.
macro_rules! on_shelf {
    ($shop:expr, $shelf:expr, $list:ident => $what:expr) => {
        match $shelf {
            Shelf::Saws => {
                let $list = &mut $shop.saws;
                $what
            }
            Shelf::Sleds => {
                let $list = &mut $shop.sleds;
                $what
            }
            Shelf::Cutters => {
                let $list = &mut $shop.cutters;
                $what
            }
            Shelf::Screws => {
                let $list = &mut $shop.screws;
                $what
            }
        }
    };
}

/// What comes of an edit besides the change itself.
#[derive(Debug, Default)]
pub(super) struct Outcome {
    pub(super) effect: Option<Effect>,
    pub(super) notice: Option<Notice>,
}

impl From<Option<Effect>> for Outcome {
    fn from(effect: Option<Effect>) -> Self {
        Self {
            effect,
            notice: None,
        }
    }
}

/// Makes the change; `unit` is what lengths are typed in.
pub(super) fn apply(work: &mut Work, edit: &Edit, unit: Unit) -> Outcome {
    let Work {
        joint, shop, sled, ..
    } = work;
    match edit {
        Edit::Type(field, text) => enter(work, *field, Entry::new(text, unit)),
        Edit::Set(field, length) => enter(work, *field, Entry::of(*length, unit)),
        Edit::Joint(kind) => joint.kind = *kind,
        Edit::Pins(by) => joint.dovetail.by = *by,
        Edit::Slope(by) => joint.dovetail.slope_by = *by,
        Edit::Tails(tails) => joint.dovetail.tails = Entry::mm(&tails.to_string()),
        Edit::PinCutter(id) => joint.dovetail.pin_cutter = *id,
        Edit::Layout(layout) => joint.layout = *layout,
        Edit::Count(count) => {
            joint.layout = LayoutKind::Count;
            joint.count = Entry::mm(&count.to_string());
        }
        Edit::Leftover(leftover) => joint.leftover = *leftover,
        Edit::Mirrored(mirrored) => joint.mirrored = *mirrored,
        Edit::First(first) => joint.first = *first,
        Edit::Zero(kind) => joint.zero.kind = *kind,
        Edit::Groove(on) => joint.groove.on = *on,
        Edit::GrooveEdge(edge) => joint.groove.edge = *edge,
        Edit::Add(shelf) => return placed(add(shop, *shelf)),
        Edit::AddStack(width) => return placed(add_stack(shop, *width, unit)),
        Edit::Duplicate(shelf, id) => return placed(duplicate(shop, *shelf, *id)),
        Edit::Remove(shelf, id) => return remove(shop, *shelf, *id),
        Edit::Choose(shelf, id) => on_shelf!(shop, shelf, list => list.choose(*id)),
        Edit::Grind(id, grind) => shop.cutters.change(*id, |cutter| cutter.grind = *grind),
        Edit::LeadBy(id, by) => shop.screws.change(*id, |screw| screw.by = *by),
        Edit::Rounding(id, rounding) => shop.screws.change(*id, |screw| screw.rounding = *rounding),
        Edit::Rises(id, rises) => shop.screws.change(*id, |screw| screw.rises = *rises),
        Edit::TakeLead(id, lead) => shop.screws.change(*id, |screw| {
            if sled.commanded_with.is_blank() || sled.commanded_screw != *id {
                sled.commanded_with = stated_lead(screw);
                sled.commanded_screw = *id;
            }
            screw.by = LeadBy::Lead;
            screw.lead = Entry::of(*lead, unit);
        }),
        Edit::Side(id, side) => shop.saws.change(*id, |saw| saw.side = *side),
        Edit::MeasuredFrom(id, from) => shop.saws.change(*id, |saw| saw.measured_from = *from),
        Edit::Section(id, section) => shop.saws.change(*id, |saw| saw.section = *section),
        Edit::AddPoint => return placed(add_point(&mut sled.points)),
        Edit::RemovePoint(id) => return forget(&mut sled.points, *id, "The position"),
        Edit::ClearPoints => {
            sled.points = List::default();
            sled.commanded_with = Entry::default();
            sled.commanded_screw = Id::default();
            return said(Notice::Removed("The table".to_owned()));
        }
        Edit::Approach(id, approach) => sled.points.change(*id, |point| point.approach = *approach),
        Edit::KeepTest(date) => keep_test(sled, shop, date),
        Edit::RemoveTest(id) => return forget(&mut sled.tests, *id, "The test"),
        Edit::WidthBy(by) => sled.rout.by = *by,
        Edit::Ends(Board::A, ends) => joint.pieces.ends_a = *ends,
        Edit::Ends(Board::B, ends) => joint.pieces.ends_b = *ends,
        Edit::SledParts => {
            let parts = sled::parts(work);
            let making = &mut work.job.making;
            return parts.map_or_else(Outcome::default, |parts| making::sled::add(making, &parts));
        }
        Edit::Making(edit) => return making::apply(&mut work.job.making, edit, unit),
        Edit::HandOver(to) => return making::drawer::hand_over(work, *to),
        Edit::Job(leaf) => return jobs::turn(work, *leaf, true),
        Edit::JointOf(leaf) => return jobs::turn(work, *leaf, false),
    }
    Outcome::default()
}

/// A new one is shown; where there was no room for it, that is said.
pub(super) fn placed(effect: Option<Effect>) -> Outcome {
    effect.map_or_else(|| said(Notice::Full), |effect| Some(effect).into())
}

pub(super) fn said(notice: Notice) -> Outcome {
    Outcome {
        effect: None,
        notice: Some(notice),
    }
}

fn forget<T: Item>(list: &mut List<T>, id: Id, what: &str) -> Outcome {
    match list.remove(id) {
        Some(_) => said(Notice::Removed(what.to_owned())),
        None => Outcome::default(),
    }
}

/// The lead that a screw is known by.
fn stated_lead(screw: &Screw) -> Entry {
    match screw.by {
        LeadBy::Lead => screw.lead.clone(),
        LeadBy::Threads => read_number(&screw.threads.text)
            .filter(|threads| *threads > 0.0)
            .map(|threads| Entry::of(Mm::INCH / threads, Unit::Mm))
            .unwrap_or_default(),
    }
}

/// The next position is usually as far on as the last was, reached the same way.
fn add_point(points: &mut List<Point>) -> Option<Effect> {
    let places = points.items().iter().rev().map(|point| &point.commanded);
    let read = |entry: &Entry| parse_length(&entry.text, entry.unit).ok();
    let last: Vec<_> = places.take(2).map(read).collect();
    let unit = points.items().last().map(|point| point.commanded.unit);
    let commanded = match last.as_slice() {
        [Some(last), Some(before)] => Entry::of(*last * 2.0 - *before, unit.unwrap_or_default()),
        _ => Entry::default(),
    };
    let field = if commanded.is_blank() {
        PointField::Commanded
    } else {
        PointField::Measured
    };
    let approach = points.items().last().map(|point| point.approach);
    let id = points.push(Point {
        commanded,
        approach: approach.unwrap_or_default(),
        ..Point::default()
    })?;
    Some(Effect::Focus(Field::Point(id, field).id()))
}

fn keep_test(form: &mut SledForm, shop: &Shop, date: &str) {
    form.tests.push(SquareTest {
        date: Entry::mm(date),
        sled: shop.sleds.chosen().map(Item::id).unwrap_or_default(),
        strip: form.square.clone(),
        ..SquareTest::default()
    });
}

fn enter(work: &mut Work, field: Field, entry: Entry) {
    if let Field::Making(spot) = field {
        let making = &mut work.job.making;
        let shown = making
            .entry(spot)
            .map(|now| now.shown(spot.kind, entry.unit));
        if shown.unwrap_or_default() != entry.text {
            making.enter(spot, entry);
        }
        return;
    }
    if let Some(place) = work.entry_mut(field)
        // What is shown converted and typed again unchanged is no change.
        && place.shown(field.kind(), entry.unit) != entry.text
    {
        *place = entry;
    }
}

fn add(shop: &mut Shop, shelf: Shelf) -> Option<Effect> {
    let id = on_shelf!(shop, shelf, list => list.push(Default::default()));
    Some(focus_name(shelf, id?))
}

fn add_stack(shop: &mut Shop, width: Mm, unit: Unit) -> Option<Effect> {
    let id = shop.cutters.push(Cutter {
        name: Entry::mm("Stack"),
        kerf: Entry::of(width, unit),
        ..Cutter::default()
    });
    Some(focus_name(Shelf::Cutters, id?))
}

fn duplicate(shop: &mut Shop, shelf: Shelf, id: Id) -> Option<Effect> {
    let copy = on_shelf!(shop, shelf, list => copy_in(list, id));
    Some(focus_name(shelf, copy?))
}

fn copy_in<T: Named>(list: &mut List<T>, id: Id) -> Option<Id> {
    let mut copy = list.get(id)?.clone();
    let name = copied(copy.name());
    *copy.name_mut() = name;
    list.push(copy)
}

/// A copy of what has no name has none either.
pub(super) fn copied(name: &Entry) -> Entry {
    if name.is_blank() {
        return Entry::default();
    }
    Entry::new(&format!("{} copy", name.text.trim()), name.unit)
}

fn remove(shop: &mut Shop, shelf: Shelf, id: Id) -> Outcome {
    let name = on_shelf!(shop, shelf, list => list.remove(id).map(|item| item.name().text.clone()));
    Outcome {
        effect: None,
        notice: name.map(Notice::Removed),
    }
}

fn focus_name(shelf: Shelf, id: Id) -> Effect {
    let name = match shelf {
        Shelf::Saws => Field::Saw(id, SawField::Name),
        Shelf::Sleds => Field::Sled(id, SledField::Name),
        Shelf::Cutters => Field::Cutter(id, CutterField::Name),
        Shelf::Screws => Field::Screw(id, ScrewField::Name),
    };
    Effect::Focus(name.id())
}
