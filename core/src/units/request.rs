//! Lengths read and written on request, for a script that has no reader of its own.

use serde::Serialize;

use super::{Denominator, LengthError, LengthFault, Mm, Style, Unit, format_length, parse_length};
use crate::check::Checker;
use crate::given::{Given, request};
use crate::limits;
use crate::message;
use crate::problem::{Checked, Code, Planned};

request! {
    /// A text to be read as a length.
    pub struct ParseLengthRequest {
        /// The text: `1 1/2"`, `19,05`, `12 mm`.
        pub text: Given<String> = "text",
        /// What a bare number is in: `mm` or `in`.
        pub unit: Given<String> = "unit",
    }

    /// A length to be written.
    pub struct FormatLengthRequest {
        /// The length, mm.
        pub mm: Given<f64> = "mm",
        /// What to write it in: `mm` or `in`.
        pub unit: Given<String> = "unit",
        /// In inches: the finest part, 1 to 1024; 64 when left out. Means nothing in mm.
        pub fraction: Given<f64> = "fraction",
    }
}

/// The length that was read.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[serde(rename_all = "camelCase")]
pub struct LengthPlan {
    /// The length, mm.
    pub mm: Mm,
}

/// The length as written.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "camelCase")]
pub struct TextPlan {
    /// The text, with its unit; `≈` comes first when a fraction is not exact.
    pub text: String,
    /// Whether the text says the length to the micrometre.
    pub exact: bool,
    /// What to add to the length as written to have the length itself, mm.
    pub leftover: Mm,
}

/// The units' words in requests.
pub(crate) const UNITS: [(&str, Unit); 2] =
    [(Unit::Mm.word(), Unit::Mm), (Unit::Inch.word(), Unit::Inch)];

/// Reads a text as [`parse_length`] does.
///
/// # Errors
/// Every problem of the request at once; a text that is not one clear length is one with `text`.
pub fn read_length(request: &ParseLengthRequest) -> Checked<LengthPlan> {
    let mut problems = Vec::new();
    let mut check = Checker::new(&mut problems);
    let unit = check.word("unit", &request.unit, &UNITS);
    // A text that is no length in either unit is a problem beside a wrong unit as well.
    let text = check.required("text", &request.text);
    let read = text.map(|text| parse_length(text, unit.unwrap_or_default()));
    if let Some(Err(error)) = &read {
        check.refuse("text", code(error), message![error.to_string()], None);
    }
    match read {
        Some(Ok(mm)) if problems.is_empty() => Ok(Planned::plain(LengthPlan { mm })),
        _ => Err(problems),
    }
}

fn code(error: &LengthError) -> Code {
    match error.fault {
        LengthFault::Empty => Code::Missing,
        LengthFault::TooLong => Code::TooLarge,
        _ => Code::WrongKind,
    }
}

/// Writes a length as [`format_length`] does: in mm to three decimals, in inches as a fraction.
///
/// # Errors
/// Every problem of the request at once.
pub fn write_length(request: &FormatLengthRequest) -> Checked<TextPlan> {
    let mut problems = Vec::new();
    let asked = asked(request, &mut Checker::new(&mut problems));
    let (length, style) = asked.filter(|_| problems.is_empty()).ok_or(problems)?;
    let written = format_length(length, style);
    Ok(Planned::plain(TextPlan {
        text: written.text,
        exact: written.exact,
        leftover: written.leftover,
    }))
}

fn asked(request: &FormatLengthRequest, check: &mut Checker<'_>) -> Option<(Mm, Style)> {
    let length = check.length("mm", &request.mm, &limits::WRITTEN);
    let unit = check.word("unit", &request.unit, &UNITS);
    let finest = finest(&request.fraction, check);
    let (length, unit, finest) = (length?, unit?, finest?);
    let style = match unit {
        Unit::Mm => Style::usual(unit),
        Unit::Inch => Style::InchFraction { finest },
    };
    Some((length, style))
}

fn finest(given: &Given<f64>, check: &mut Checker<'_>) -> Option<Denominator> {
    if given.is_missing() {
        return Some(Denominator::SIXTY_FOUR);
    }
    let parts = check.count("fraction", given, &limits::INCH_PARTS)?;
    u16::try_from(parts).ok().and_then(Denominator::new)
}

#[cfg(test)]
mod tests {
    use serde_json::{Value, json};

    use super::{FormatLengthRequest, ParseLengthRequest, read_length, write_length};
    use crate::given::{self, Given, Shape};
    use crate::problem::Reply;

    fn taken<T: Shape>(request: Value) -> T {
        match given::read(&serde_json::from_value(request).unwrap()).0 {
            Given::Value(request) => request,
            other => panic!("{}", other.is_missing()),
        }
    }

    fn parse(request: Value) -> Value {
        let request: ParseLengthRequest = taken(request);
        serde_json::to_value(Reply(read_length(&request))).unwrap()
    }

    fn format(request: Value) -> Value {
        let request: FormatLengthRequest = taken(request);
        serde_json::to_value(Reply(write_length(&request))).unwrap()
    }

    fn problems(reply: &Value) -> Vec<(&str, &str)> {
        let problems = reply["problems"].as_array().unwrap();
        assert!(
            problems
                .iter()
                .all(|problem| problem["message"].as_str() > Some(""))
        );
        problems
            .iter()
            .map(|problem| {
                (
                    problem["field"].as_str().unwrap(),
                    problem["code"].as_str().unwrap(),
                )
            })
            .collect()
    }

    #[test]
    fn a_text_is_read_in_its_unit() {
        for (text, unit, mm) in [
            ("3/4", "in", 19.05),
            ("19,05", "mm", 19.05),
            ("2' 3-1/8\"", "mm", 688.975),
        ] {
            let reply = parse(json!({ "text": text, "unit": unit }));
            assert_eq!(reply["plan"], json!({ "mm": mm }));
        }
    }

    #[test]
    fn a_text_that_is_no_length_is_a_problem_of_its_field() {
        for (request, expected) in [
            (
                json!({ "text": "1,234", "unit": "mm" }),
                vec![("text", "wrong-kind")],
            ),
            (
                json!({ "text": " ", "unit": "mm" }),
                vec![("text", "missing")],
            ),
            (
                json!({ "text": "2000 m", "unit": "mm" }),
                vec![("text", "too-large")],
            ),
            (
                json!({ "text": 12, "unit": "mm" }),
                vec![("text", "wrong-kind")],
            ),
            (
                json!({ "text": "abc", "unit": "ell" }),
                vec![("unit", "unknown-word"), ("text", "wrong-kind")],
            ),
            (json!({}), vec![("unit", "missing"), ("text", "missing")]),
        ] {
            assert_eq!(problems(&parse(request)), expected);
        }
    }

    #[test]
    fn a_length_is_written_in_its_unit() {
        for (request, text, exact) in [
            (json!({ "mm": 19.05, "unit": "mm" }), "19.05 mm", true),
            (
                json!({ "mm": 19.05, "unit": "mm", "fraction": 8 }),
                "19.05 mm",
                true,
            ),
            (json!({ "mm": 19.05, "unit": "in" }), "3/4\"", true),
            (
                json!({ "mm": 19.05, "unit": "in", "fraction": 2 }),
                "≈ 1\"",
                false,
            ),
        ] {
            let plan = &format(request)["plan"];
            assert_eq!(
                (plan["text"].as_str(), plan["exact"].as_bool()),
                (Some(text), Some(exact))
            );
        }
    }

    #[test]
    fn what_cannot_be_written_is_refused_in_one_go() {
        let reply = format(json!({ "mm": 2e6, "unit": "ft", "fraction": 2.5 }));
        assert_eq!(
            problems(&reply),
            [
                ("mm", "too-large"),
                ("unit", "unknown-word"),
                ("fraction", "not-whole")
            ]
        );
        let reply = format(json!({ "mm": "19", "unit": "in", "fraction": 2048 }));
        assert_eq!(
            problems(&reply),
            [("mm", "wrong-kind"), ("fraction", "too-large")]
        );
    }
}
