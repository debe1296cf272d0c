//! How many tails, how wide: each number checked by itself.

use super::layout::Rule;
use super::request::{ByRequest, DovetailRequest};
use crate::check::{Checker, optional_part};
use crate::given::Given;
use crate::limits;
use crate::message;
use crate::problem::Code;

/// How the width is divided, not yet against the board.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Division {
    pub(super) rule: Rule,
    pub(super) tails: u32,
    /// One for each tail, or none where they are equal.
    pub(super) weights: Vec<f64>,
}

#[derive(Clone, Copy)]
enum Kind {
    Widths,
    Ratio(f64),
    Narrowest,
}

pub(super) fn check(request: &DovetailRequest, check: &mut Checker<'_>) -> Option<Division> {
    let tails = check.count("tails", &request.tails, &limits::TAILS);
    let weights = weights(&request.weights, tails, check);
    let kind = optional_part("by", &request.by, check, kind).map(|kind| match kind {
        Some(kind) => kind,
        None => Kind::Widths,
    });
    let rule = rule(kind?, request, check);
    Some(Division {
        rule: rule?,
        tails: tails?,
        weights: weights?,
    })
}

fn kind(request: &ByRequest, check: &mut Checker<'_>) -> Option<Kind> {
    let words = ["widths", "ratio", "equal", "narrowest"];
    let kind = check.word("kind", &request.kind, &words.map(|word| (word, word)))?;
    if kind == "ratio" {
        let ratio = check.number("tailToPin", &request.tail_to_pin, &limits::TAIL_TO_PIN)?;
        return Some(Kind::Ratio(ratio));
    }
    check.unused(
        "this rule",
        &[("tailToPin", request.tail_to_pin.is_missing())],
    );
    Some(match kind {
        "equal" => Kind::Ratio(1.0),
        "narrowest" => Kind::Narrowest,
        _ => Kind::Widths,
    })
}

fn rule(kind: Kind, request: &DovetailRequest, check: &mut Checker<'_>) -> Option<Rule> {
    let (pin, half_pin) = (&request.narrow_pin, &request.half_pin);
    match kind {
        Kind::Widths => {
            let half_pin = check.length("halfPin", half_pin, &limits::PIN);
            let pin = check.length("narrowPin", pin, &limits::PIN);
            Some(Rule::Widths {
                pin: pin?,
                half_pin: half_pin?,
            })
        }
        Kind::Ratio(ratio) => {
            let given = [
                ("halfPin", half_pin.is_missing()),
                ("narrowPin", pin.is_missing()),
            ];
            check.unused("widths by proportion", &given);
            Some(Rule::Ratio(ratio))
        }
        Kind::Narrowest => {
            check.unused("the narrowest pins", &[("narrowPin", pin.is_missing())]);
            let half_pin = check.optional_length("halfPin", half_pin, &limits::PIN)?;
            Some(Rule::Narrowest { half_pin })
        }
    }
}

fn weights(
    given: &Given<Vec<Given<f64>>>,
    tails: Option<u32>,
    check: &mut Checker<'_>,
) -> Option<Vec<f64>> {
    let Some(list) = check.optional("weights", given)? else {
        return Some(Vec::new());
    };
    if let Some(tails) = tails
        && tails as usize != list.len()
    {
        let code = if list.len() < tails as usize {
            Code::TooSmall
        } else {
            Code::TooLarge
        };
        let message = message![
            "Each tail needs one weight: ",
            tails,
            " of them; these are ",
            list.len(),
            "."
        ];
        check.refuse("weights", code, message, Some(f64::from(tails)));
        return None;
    }
    let mut check = check.at("weights");
    let weights: Vec<_> = list
        .iter()
        .enumerate()
        .map(|(i, weight)| check.number(&i.to_string(), weight, &limits::WEIGHT))
        .collect();
    weights.into_iter().collect()
}
