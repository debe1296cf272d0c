//! Named measures: read once, in an order that each follows from those before it, and worked out for each stock.

use super::dimension::{self, Typed};
use super::expression::{FUNCTIONS, Trouble, Value, is_name};
use super::names;
use super::request::MeasureRequest;
use crate::check::Checker;
use crate::given::Given;
use crate::message;
use crate::problem::Code;
use crate::units::{Mm, Unit, parse_length};

/// The name of the stock's thickness.
const THICKNESS: &str = "t";

#[derive(Debug, Default)]
pub(super) struct Measures<'a> {
    /// What bare numbers are in, if that is known.
    unit: Option<Unit>,
    names: Vec<&'a str>,
    typed: Vec<Option<Typed>>,
    /// Each after all that it uses; those that lead back to themselves are not in it.
    order: Vec<usize>,
    /// By way of which name each leads back to itself, where it does.
    circular: Vec<Option<&'a str>>,
}

/// Every measure as it is for one stock.
#[derive(Debug)]
pub(super) struct Known<'a> {
    measures: &'a Measures<'a>,
    thickness: Option<Mm>,
    values: Vec<Result<Value, Trouble>>,
}

impl<'a> Measures<'a> {
    pub(super) fn read(
        unit: Option<Unit>,
        given: &'a [Given<MeasureRequest>],
        check: &mut Checker<'_>,
    ) -> Self {
        let mut read = Self {
            unit,
            ..Self::default()
        };
        for (i, measure) in given.iter().enumerate() {
            let i = i.to_string();
            let (mut name, mut typed) = ("", None);
            if let Some(measure) = check.required(&i, measure) {
                let mut check = check.at(&i);
                name = read.name(&measure.name, &mut check).unwrap_or_default();
                typed = Typed::read("value", &measure.value, &mut check);
            }
            read.names.push(name);
            read.typed.push(typed);
        }
        read.put_in_order();
        read
    }

    fn name(&self, given: &'a Given<String>, check: &mut Checker<'_>) -> Option<&'a str> {
        let name = check.required("name", given)?.trim();
        let is_taken = self.place(name).is_some()
            || names::is_same(name, THICKNESS)
            || FUNCTIONS
                .iter()
                .any(|(known, _)| names::is_same(name, known))
            || parse_length(&format!("1 {name}"), Unit::Mm).is_ok();
        if !is_name(name) {
            let message = message!["A name is one word of letters, digits and _, like front_rail."];
            check.refuse("name", Code::NotReadable, message, None);
        } else if is_taken {
            let message = message![
                "«",
                name,
                "» means something else already: choose another name."
            ];
            check.refuse("name", Code::Conflict, message, None);
        } else {
            return Some(name);
        }
        None
    }

    fn place(&self, name: &str) -> Option<usize> {
        self.names
            .iter()
            .position(|known| names::is_same(known, name))
    }

    fn put_in_order(&mut self) {
        let uses: Vec<Vec<usize>> = self
            .typed
            .iter()
            .map(|typed| self.uses(typed.as_ref()))
            .collect();
        let mut done = vec![false; uses.len()];
        let is_done = |done: &[bool], i: &usize| done.get(*i).copied().unwrap_or_default();
        loop {
            let before = self.order.len();
            for (i, uses) in uses.iter().enumerate() {
                if !is_done(&done, &i) && uses.iter().all(|used| is_done(&done, used)) {
                    self.order.push(i);
                    if let Some(done) = done.get_mut(i) {
                        *done = true;
                    }
                }
            }
            if self.order.len() == before {
                break;
            }
        }
        let back = |i: usize| {
            let first = uses
                .get(i)?
                .iter()
                .find(|used| leads_to(&uses, **used, i))?;
            self.names.get(*first).copied()
        };
        self.circular = (0..uses.len())
            .map(|i| if is_done(&done, &i) { None } else { back(i) })
            .collect();
        // What only uses a circle comes last, to say so.
        let behind = |i: &usize| !is_done(&done, i) && matches!(self.circular.get(*i), Some(None));
        self.order.extend((0..uses.len()).filter(behind));
    }

    fn uses(&self, typed: Option<&Typed>) -> Vec<usize> {
        let names = typed.map(Typed::names).unwrap_or_default();
        names
            .into_iter()
            .filter_map(|name| self.place(name))
            .collect()
    }

    /// All of them for a stock of this thickness, if that is known.
    pub(super) fn of(&'a self, thickness: Option<Mm>) -> Known<'a> {
        let unresolved = |name: &&str| Err(Trouble::Unresolved((*name).to_owned()));
        let mut known = Known {
            measures: self,
            thickness,
            values: self.names.iter().map(unresolved).collect(),
        };
        for (i, back) in self.circular.iter().enumerate() {
            if let (Some(back), Some(value)) = (back, known.values.get_mut(i)) {
                *value = Err(Trouble::Circular((*back).to_owned()));
            }
        }
        for i in &self.order {
            if let Some(Some(typed)) = self.typed.get(*i) {
                let worked_out = self
                    .unit
                    .ok_or(Trouble::NotKnown)
                    .and_then(|unit| typed.value(unit, &|name| known.value(name)));
                if let Some(value) = known.values.get_mut(*i) {
                    *value = worked_out;
                }
            }
        }
        known
    }

    /// Names that a dimension may use.
    pub(super) fn names(&self) -> Vec<&'a str> {
        let measures = self.names.iter().copied().filter(|name| !name.is_empty());
        [THICKNESS].into_iter().chain(measures).collect()
    }
}

impl Known<'_> {
    /// What a name stands for.
    pub(super) fn value(&self, name: &str) -> Result<Value, Trouble> {
        if names::is_same(name, THICKNESS) {
            return self.thickness.map(Value::length).ok_or(Trouble::NotKnown);
        }
        let place = self.measures.place(name);
        match place.and_then(|place| self.values.get(place)) {
            Some(Ok(value)) => Ok(*value),
            Some(Err(Trouble::NotKnown)) => Err(Trouble::NotKnown),
            Some(Err(_)) => Err(Trouble::Unresolved(name.to_owned())),
            None => Err(Trouble::UnknownName(name.to_owned())),
        }
    }

    /// The length that a dimension comes to.
    pub(super) fn length(&self, typed: &Typed) -> Result<Mm, Trouble> {
        let unit = self.measures.unit.ok_or(Trouble::NotKnown)?;
        typed.length(unit, &|name| self.value(name))
    }

    /// Says of each measure that comes to nothing why, unless it is among `said`.
    pub(super) fn refuse(&self, said: &mut Vec<usize>, check: &mut Checker<'_>) {
        for (i, value) in self.values.iter().enumerate() {
            let is_read = matches!(self.measures.typed.get(i), Some(Some(_)));
            if let Err(trouble) = value
                && is_read
                && !said.contains(&i)
                && *trouble != Trouble::NotKnown
            {
                said.push(i);
                let known = self.measures.names();
                dimension::refuse("value", trouble, &known, &mut check.at(&i.to_string()));
            }
        }
    }
}

fn leads_to(uses: &[Vec<usize>], from: usize, to: usize) -> bool {
    let (mut seen, mut next) = (vec![false; uses.len()], vec![from]);
    while let Some(i) = next.pop() {
        if i == to {
            return true;
        }
        if let (Some(seen), Some(uses)) = (seen.get_mut(i), uses.get(i))
            && !*seen
        {
            *seen = true;
            next.extend(uses);
        }
    }
    false
}
