//! From a request to stocks, measures and parts that are read but not worked out.

use super::dimension::{self, Typed};
use super::measures::Measures;
use super::names;
use super::request::{DimensionRequest, PartRequest, PartsListRequest, StockRequest};
use crate::check::Checker;
use crate::given::{Given, Shape};
use crate::limits;
use crate::message;
use crate::problem::Code;
use crate::units::{Mm, UNITS, Unit};

/// Parts of a list, at most.
pub(super) const MOST_PARTS: usize = 500;
const MOST_MEASURES: usize = 100;
const MOST_STOCKS: usize = 50;

/// What parts are cut from, measured.
#[derive(Debug)]
pub(super) struct Stock<'a> {
    pub(super) name: &'a str,
    pub(super) thickness: Mm,
    pub(super) former: Option<Mm>,
}

/// A part whose dimensions are not worked out.
#[derive(Debug, Default)]
pub(super) struct Part<'a> {
    pub(super) name: Option<&'a str>,
    pub(super) number: u32,
    pub(super) count: Option<u32>,
    pub(super) length: Option<Typed>,
    pub(super) width: Option<Typed>,
    /// Its place among the stocks.
    pub(super) stock: Option<usize>,
    pub(super) trim: Option<Option<Typed>>,
    pub(super) may_turn: Option<bool>,
    pub(super) later: Option<bool>,
}

#[derive(Debug)]
pub(super) struct List<'a> {
    /// One that has a problem is `None`.
    pub(super) stocks: Vec<Option<Stock<'a>>>,
    pub(super) measures: Measures<'a>,
    pub(super) parts: Vec<Part<'a>>,
}

pub(super) fn list<'a>(request: &'a PartsListRequest, check: &mut Checker<'_>) -> List<'a> {
    let unit = check.word_or("unit", &request.unit, &UNITS, Unit::Mm);
    let given = items("stocks", &request.stocks, MOST_STOCKS, check);
    let names: Vec<&str> = given.iter().map(name_of).collect();
    let stocks = each(given, &mut check.at("stocks"), |i, stock, check| {
        self::stock(stock, names.get(..i).unwrap_or_default(), check)
    });
    let measures = match &request.measures {
        Given::Missing => &[],
        given => items("measures", given, MOST_MEASURES, check),
    };
    let measures = Measures::read(unit, measures, &mut check.at("measures"));
    let given = items("parts", &request.parts, MOST_PARTS, check);
    let mut check = check.at("parts");
    let numbers = numbers(given, &mut check);
    let parts = each(given, &mut check, |_, part, check| {
        Some(self::part(part, &names, check))
    });
    let part = |(part, number): (Option<Part<'a>>, u32)| Part {
        number,
        ..part.unwrap_or_default()
    };
    List {
        stocks,
        measures,
        parts: parts.into_iter().zip(numbers).map(part).collect(),
    }
}

/// The items of a list that must be there; those beyond the bound are left out.
fn items<'a, T: Shape>(
    field: &str,
    given: &'a Given<Vec<Given<T>>>,
    most: usize,
    check: &mut Checker<'_>,
) -> &'a [Given<T>] {
    let Some(list) = check.required(field, given) else {
        return &[];
    };
    if list.len() > most {
        let message = message![
            "At most ",
            most,
            " belong here; ",
            list.len(),
            " were given."
        ];
        check.refuse(field, Code::TooLarge, message, Some(most as f64));
    }
    list.get(..most).unwrap_or(list)
}

/// Reads each item of a list; one with a problem is `None`.
fn each<'a, T: Shape, R>(
    list: &'a [Given<T>],
    check: &mut Checker<'_>,
    read: impl Fn(usize, &'a T, &mut Checker<'_>) -> Option<R>,
) -> Vec<Option<R>> {
    let item = |(i, given): (usize, &'a Given<T>)| {
        let place = i.to_string();
        read(i, check.required(&place, given)?, &mut check.at(&place))
    };
    list.iter().enumerate().map(item).collect()
}

fn name_of(stock: &Given<StockRequest>) -> &str {
    match stock {
        Given::Value(StockRequest {
            name: Given::Value(name),
            ..
        }) => name.trim(),
        _ => "",
    }
}

fn stock<'a>(
    request: &'a StockRequest,
    before: &[&str],
    check: &mut Checker<'_>,
) -> Option<Stock<'a>> {
    let name = check.required("name", &request.name);
    let thickness = check.length("thickness", &request.thickness, &limits::STOCK);
    let former = check.optional_length("former", &request.former, &limits::STOCK);
    let name = name?.trim();
    if before.iter().any(|other| names::is_same(other, name)) {
        let message = message![
            "There is a stock «",
            name,
            "» already: choose another name."
        ];
        check.refuse("name", Code::Conflict, message, None);
    }
    Some(Stock {
        name,
        thickness: thickness?,
        former: former?,
    })
}

/// A number for each part: the given ones, and for the others the least that are free, in their order.
fn numbers(given: &[Given<PartRequest>], check: &mut Checker<'_>) -> Vec<u32> {
    let mut taken: Vec<u32> = Vec::new();
    let mut number = |(i, part): (usize, &Given<PartRequest>)| match part {
        Given::Value(part) if !part.number.is_missing() => {
            let mut check = check.at(&i.to_string());
            let number = check.count("number", &part.number, &limits::PART_NUMBER)?;
            if taken.contains(&number) {
                let message = message!["Another part has the number ", number, " already."];
                check.refuse("number", Code::Conflict, message, None);
            }
            taken.push(number);
            Some(number)
        }
        _ => None,
    };
    let given: Vec<_> = given.iter().enumerate().map(&mut number).collect();
    let mut free = (1..).filter(|number| !taken.contains(number));
    given
        .into_iter()
        .map(|number| number.or_else(|| free.next()).unwrap_or_default())
        .collect()
}

fn part<'a>(request: &'a PartRequest, stocks: &[&str], check: &mut Checker<'_>) -> Part<'a> {
    let truth = |field: &str, given: &Given<bool>, check: &mut Checker<'_>| {
        let truth = check.optional(field, given)?;
        Some(truth.copied().unwrap_or_default())
    };
    Part {
        number: 0,
        name: check
            .required("name", &request.name)
            .map(|name| name.trim()),
        count: check.count("count", &request.count, &limits::PIECES),
        length: Typed::read("length", &request.length, check),
        width: Typed::read("width", &request.width, check),
        stock: place(&request.stock, stocks, check),
        trim: trim(&request.trim, check),
        may_turn: truth("mayTurn", &request.may_turn, check),
        later: truth("later", &request.later, check),
    }
}

/// Where the part's stock is among all.
fn place(given: &Given<String>, stocks: &[&str], check: &mut Checker<'_>) -> Option<usize> {
    if let (true, [_]) = (given.is_missing(), stocks) {
        return Some(0);
    }
    let name = check.required("stock", given)?.trim();
    let place = stocks.iter().position(|known| names::is_same(known, name));
    if place.is_none() {
        let message = dimension::unknown("stock", name, stocks);
        check.refuse("stock", Code::UnknownName, message, None);
    }
    place
}

/// A blank text is none, as in a table.
fn trim(given: &Given<DimensionRequest>, check: &mut Checker<'_>) -> Option<Option<Typed>> {
    match given {
        Given::Missing => Some(None),
        Given::Value(DimensionRequest::Text(text) | DimensionRequest::TextIn(text, _))
            if text.trim().is_empty() =>
        {
            Some(None)
        }
        given => Typed::read("trim", given, check).map(Some),
    }
}
