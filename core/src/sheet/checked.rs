//! From a request to sheets and parts that can be cut.

use super::job::{Budget, Grain, Job, Kind, Part, Rough, Sides, Size, Um, ceil, floor};
use super::reach;
use super::request::{
    PartRequest, RoughRequest, SearchRequest, SheetLayoutRequest, SheetRequest, SidesRequest,
};
use crate::check::{Checker, optional_part, part};
use crate::given::{Given, Shape};
use crate::limits;
use crate::message;
use crate::problem::{Code, Problem};
use crate::units::Mm;

/// Checks a whole request; the problems come all at once.
pub(super) fn check(request: &SheetLayoutRequest) -> Result<Job, Vec<Problem>> {
    let mut problems = Vec::new();
    let job = read(request, &mut Checker::new(&mut problems));
    match job {
        Some(job) if problems.is_empty() => Ok(job),
        _ => Err(problems),
    }
}

const ROUNDS: f64 = 200.0;
const ALLOWANCE: Mm = Mm::constant(5.0);
const KEPT: (Mm, Mm) = (Mm::constant(300.0), Mm::constant(100.0));

fn read(request: &SheetLayoutRequest, check: &mut Checker<'_>) -> Option<Job> {
    let kinds = list(
        "sheets",
        &request.sheets,
        &limits::SHEET_KINDS,
        check,
        sheet,
    );
    let parts = list("parts", &request.parts, &limits::PARTS, check, piece);
    let kerf = check.length("kerf", &request.kerf, &limits::SAW_KERF);
    let rough = optional_part("rough", &request.rough, check, |rough, check| {
        rough_cuts(rough, kerf, check)
    });
    let least = optional_part(
        "leastOffcut",
        &request.least_offcut,
        check,
        |size, check| {
            let length = check.length("length", &size.length, &limits::OFFCUT);
            let width = check.length("width", &size.width, &limits::OFFCUT);
            Some((length?, width?))
        },
    );
    let budget = optional_part("search", &request.search, check, budget);
    let (kinds, parts, rough) = (kinds?, parts?, rough?);
    let least = least?.unwrap_or(KEPT);
    let (mut kinds, parts) = reach::by_stock(kinds, parts, check)?;
    if rough.as_ref().is_some_and(|rough| rough.heaviest.is_some()) {
        kinds = weighed(&kinds, check)?;
    }
    let job = Job {
        kinds,
        parts,
        kerf: floor(kerf?),
        rough,
        least_offcut: (ceil(least.0.max(least.1)), ceil(least.0.min(least.1))),
        budget: budget?.unwrap_or(Budget {
            steps: rounds(ROUNDS),
            ..Budget::default()
        }),
    };
    reach::can_be_cut(&job, check);
    Some(job)
}

/// Every sheet with its mass: one that does not say it is as heavy by its area as another of its stock.
fn weighed(kinds: &[Kind], check: &mut Checker<'_>) -> Option<Vec<Kind>> {
    let mut check = check.at("sheets");
    let weighed: Vec<_> = kinds
        .iter()
        .enumerate()
        .map(|(index, kind)| {
            let mass = kind.mass.or_else(|| by_another(kind, kinds));
            if mass.is_none() {
                let message = message![
                    "The heaviest that a person lifts needs this sheet's mass, in kg, or that of another of its stock."
                ];
                check
                    .at(&index.to_string())
                    .refuse("mass", Code::Missing, message, None);
            }
            mass.map(|_| Kind {
                mass,
                ..kind.clone()
            })
        })
        .collect();
    weighed.into_iter().collect()
}

fn by_another(kind: &Kind, kinds: &[Kind]) -> Option<f64> {
    let is_as_thick = |other: &Kind| {
        let both = kind.thickness.zip(other.thickness);
        both.is_none_or(|(one, other)| one.is_same(other))
    };
    let alike = kinds
        .iter()
        .filter(|other| other.group == kind.group && is_as_thick(other));
    let area = |kind: &Kind| kind.size.area() as f64;
    alike
        .filter_map(|other| Some(other.mass? * area(kind) / area(other)))
        .next()
}

/// A list that has something in it, and no more than its limit.
fn list<R: Shape, T>(
    field: &str,
    given: &Given<Vec<Given<R>>>,
    limit: &limits::Limit,
    check: &mut Checker<'_>,
    read: impl Fn(&R, usize, &mut Checker<'_>) -> Option<T>,
) -> Option<Vec<T>> {
    let items = check.required(field, given)?;
    check.count(field, &Given::Value(items.len() as f64), limit)?;
    let mut check = check.at(field);
    let items: Vec<_> = items
        .iter()
        .enumerate()
        .map(|(index, item)| {
            part(&index.to_string(), item, &mut check, |item, check| {
                read(item, index, check)
            })
        })
        .collect();
    items.into_iter().collect()
}

/// A sheet as it was read, before its stock has a number.
fn sheet(request: &SheetRequest, _: usize, check: &mut Checker<'_>) -> Option<Kind> {
    let name = text("name", &request.name, check);
    let stock = text("stock", &request.stock, check);
    let length = check.length("length", &request.length, &limits::SHEET_SIDE);
    let width = check.length("width", &request.width, &limits::SHEET_SIDE);
    let thickness =
        check.optional_length("thickness", &request.thickness, &limits::BOARD_THICKNESS);
    let words = [
        ("length", Grain::Length),
        ("width", Grain::Width),
        ("none", Grain::None),
    ];
    let grain = check.word_or("grain", &request.grain, &words, Grain::Length);
    let trim = sides("edgeTrim", &request.edge_trim, check);
    let quantity = match &request.quantity {
        Given::Missing => Some(None),
        given => check.count("quantity", given, &limits::SHEETS).map(Some),
    };
    let price = number("price", &request.price, &limits::PRICE, check);
    let mass = number("mass", &request.mass, &limits::SHEET_MASS, check);
    let offcut = check.optional("offcut", &request.offcut);
    let size = Size {
        x: ceil(length?),
        y: ceil(width?),
    };
    Some(Kind {
        name: name?,
        stock: stock?,
        group: 0,
        thickness: thickness?,
        size,
        grain: grain?,
        trim: trim?.0,
        quantity: quantity?,
        price: price?,
        mass: mass?,
        offcut: offcut?.copied().unwrap_or_default(),
    })
}

/// A part as it was read, with the name of its stock.
fn piece(
    request: &PartRequest,
    index: usize,
    check: &mut Checker<'_>,
) -> Option<(Part, Option<String>)> {
    let name = text("name", &request.name, check);
    let place = index as f64 + 1.0;
    let number = match &request.number {
        Given::Missing => check.count("number", &place.into(), &limits::LAID_NUMBER),
        given => check.count("number", given, &limits::LAID_NUMBER),
    };
    let count = match &request.count {
        Given::Missing => Some(1),
        given => check.count("count", given, &limits::PIECES_LAID),
    };
    let length = check.length("length", &request.length, &limits::PART_SIDE);
    let width = check.length("width", &request.width, &limits::PART_SIDE);
    let trim = sides("trim", &request.trim, check);
    let stock = text("stock", &request.stock, check);
    let may_turn = check.optional("mayTurn", &request.may_turn);
    let later = check.optional("later", &request.later);
    let (_, [start, end, near, far]) = trim?;
    let finished = (length?, width?);
    let part = Part {
        name: name?,
        number: number?,
        count: count?,
        size: Size {
            x: floor(finished.0 + start + end),
            y: floor(finished.1 + near + far),
        },
        finished,
        may_turn: may_turn?.copied().unwrap_or_default(),
        group: 0,
        later: later?.copied().unwrap_or_default(),
    };
    Some((part, stock?))
}

fn text(field: &str, given: &Given<String>, check: &mut Checker<'_>) -> Option<Option<String>> {
    Some(check.optional(field, given)?.cloned())
}

fn number(
    field: &str,
    given: &Given<f64>,
    limit: &limits::Limit,
    check: &mut Checker<'_>,
) -> Option<Option<f64>> {
    match given {
        Given::Missing => Some(None),
        given => check.number(field, given, limit).map(Some),
    }
}

/// A length for each edge: start, end, near, far.
fn sides(
    field: &str,
    given: &Given<SidesRequest>,
    check: &mut Checker<'_>,
) -> Option<(Sides, [Mm; 4])> {
    let limit = &limits::MARGIN;
    let lengths = match check.optional(field, given)? {
        None => [Mm::ZERO; 4],
        Some(SidesRequest::All(all)) => [check.length(field, &(*all).into(), limit)?; 4],
        Some(SidesRequest::Each(each)) => {
            let mut check = check.at(field);
            let edges = [
                ("start", &each.start),
                ("end", &each.end),
                ("near", &each.near),
                ("far", &each.far),
            ];
            let [start, end, near, far] =
                edges.map(|(edge, given)| check.length_or(edge, given, limit, Mm::ZERO));
            [start?, end?, near?, far?]
        }
    };
    let [start, end, near, far] = lengths.map(ceil);
    let sides = Sides {
        start,
        end,
        near,
        far,
    };
    Some((sides, lengths))
}

fn rough_cuts(request: &RoughRequest, kerf: Option<Mm>, check: &mut Checker<'_>) -> Option<Rough> {
    let longest = check.optional_length("longest", &request.longest, &limits::SHEET_SIDE);
    let widest = check.optional_length("widest", &request.widest, &limits::SHEET_SIDE);
    let heaviest = number("heaviest", &request.heaviest, &limits::SHEET_MASS, check);
    let allowance = check.length_or("allowance", &request.allowance, &limits::MARGIN, ALLOWANCE);
    let usual = kerf.unwrap_or_default();
    let kerf = check.length_or("kerf", &request.kerf, &limits::SAW_KERF, usual);
    let (longest, widest) = (longest?, widest?);
    let (one, other) = match (longest.map(floor), widest.map(floor)) {
        (Some(longest), widest) => (longest, widest.unwrap_or(longest)),
        (None, widest) => (Um::MAX, widest.unwrap_or(Um::MAX)),
    };
    let mut fields = ["longest", "widest"];
    if one < other {
        fields.reverse();
    }
    if longest.is_none() && widest.is_none() && heaviest?.is_none() {
        let message = message![
            "Say what a person lifts: longest and widest in mm, or heaviest in kg with each sheet's mass."
        ];
        check.refuse("", Code::Missing, message, None);
        return None;
    }
    Some(Rough {
        fields,
        longest: one.max(other),
        widest: one.min(other),
        heaviest: heaviest?,
        allowance: ceil(allowance?),
        kerf: floor(kerf?),
    })
}

fn budget(request: &SearchRequest, check: &mut Checker<'_>) -> Option<Budget> {
    let from = check.number_or("from", &request.from, &limits::ROUNDS, 0.0);
    let steps = check.number_or("steps", &request.steps, &limits::ROUNDS, ROUNDS);
    let best = text("best", &request.best, check);
    Some(Budget {
        from: rounds(from?),
        steps: rounds(steps?),
        best: best?,
    })
}

/// Rounds within their limit; a part of a round is none.
#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "within its limit, and a float cast saturates"
)]
fn rounds(number: f64) -> u32 {
    number as u32
}
