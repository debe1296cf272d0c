//! What holds for every reply, whichever function gave it.

use anyhow::{Context, bail, ensure};
use notchwright_core::limits;
use notchwright_core::plain::Plain;
use notchwright_core::problem::{Checked, Code, Problem, Reply};
use serde::Serialize;
use serde_json::Value;

use super::Held;

/// Lengths stop growing here: one that is as great was no length any more.
const SATURATED: f64 = 1e9;

/// A reply is text that says the same when it is read, and has a number wherever one belongs.
pub(super) fn reads_back<P: Serialize>(answer: Checked<P>) -> Held {
    let is_planned = answer.is_ok();
    let reply = Reply(answer);
    let value = serde_json::to_value(&reply)?;
    let field = |name| {
        value
            .get(name)
            .with_context(|| format!("{name} is missing"))
    };
    ensure!(*field("ok")? == Value::Bool(is_planned), "{value}");
    let text = serde_json::to_string(&reply)?;
    let read: Value = serde_json::from_str(&text)?;
    ensure!(is_same(&read, &value), "{text} reads back as {read}");
    if is_planned {
        numbers(field("plan")?, "plan")?;
        let notes = field("notes")?.as_array().context("notes are no list")?;
        let mut messages = notes.iter().map(|note| note.get("message"));
        messages.try_for_each(says_something)?;
    } else {
        nothing_missing(&value, "reply")?;
    }
    Ok(())
}

/// Whether two say the same; a reader may take a number's last bit otherwise.
fn is_same(one: &Value, other: &Value) -> bool {
    match (one, other) {
        (Value::Number(one), Value::Number(other)) => {
            let pair = one.as_f64().zip(other.as_f64());
            pair.is_some_and(|(one, other)| (one - other).abs() <= one.abs() * 1e-15)
        }
        (Value::Array(one), Value::Array(other)) => {
            one.len() == other.len()
                && one
                    .iter()
                    .zip(other)
                    .all(|(one, other)| is_same(one, other))
        }
        (Value::Object(one), Value::Object(other)) => {
            let has = |(name, value)| other.get(name).is_some_and(|theirs| is_same(value, theirs));
            one.len() == other.len() && one.iter().all(has)
        }
        (one, other) => one == other,
    }
}

/// JSON has no word for what is not a number: it would be `null`.
fn nothing_missing(value: &Value, path: &str) -> Held {
    match value {
        Value::Null => bail!("{path} is no number"),
        Value::Array(items) => items
            .iter()
            .try_for_each(|item| nothing_missing(item, path)),
        Value::Object(fields) => fields
            .iter()
            .try_for_each(|(name, value)| nothing_missing(value, name)),
        _ => Ok(()),
    }
}

fn numbers(value: &Value, path: &str) -> Held {
    match value {
        Value::Null => bail!("{path} is no number"),
        Value::Number(number) => {
            let number = number.as_f64().context("a number")?;
            let is_area = path.to_lowercase().contains("area");
            let most = if is_area {
                SATURATED * SATURATED
            } else {
                SATURATED
            };
            ensure!(number.abs() < most, "{path} is {number}");
            ensure!(number != 0.0 || number.is_sign_positive(), "{path} is −0");
            Ok(())
        }
        Value::Array(items) => items.iter().try_for_each(|item| numbers(item, path)),
        Value::Object(fields) => fields
            .iter()
            .try_for_each(|(name, value)| numbers(value, &format!("{path}.{name}"))),
        Value::Bool(_) | Value::String(_) => Ok(()),
    }
}

fn says_something(message: Option<&Value>) -> Held {
    let text = message.and_then(Value::as_str).context("no message")?;
    ensure!(
        text.ends_with(['.', '!', '?', ')']) && !text.contains("NaN"),
        "«{text}»"
    );
    Ok(())
}

/// A refusal says what is wrong, each thing once, and whoever does as it says gets on.
pub(super) fn refused(
    request: &Plain,
    problems: &[Problem],
    ask: impl Fn(&Plain) -> Option<Vec<Problem>>,
) -> Held {
    ensure!(!problems.is_empty(), "refused for nothing");
    for (index, problem) in problems.iter().enumerate() {
        let mut others = problems.iter().skip(index + 1);
        ensure!(
            others.all(|other| other != problem),
            "said twice: {problem:?}"
        );
        is_somewhere(request, problem)?;
        follow(request.clone(), problem, &ask)?;
    }
    Ok(())
}

/// The field is there, or what it belongs into.
fn is_somewhere(request: &Plain, problem: &Problem) -> Held {
    let into = problem.field.rsplit_once('.').map(|(into, _)| into);
    let is_there = into.is_none_or(|into| find(request, into).is_some());
    // A name that nobody knows may have points in it.
    let is_there = is_there || problem.code == Code::UnknownField;
    ensure!(is_there, "nobody has such a field: {problem:?}");
    Ok(())
}

/// More than this is not lost when a bound is read off the page.
const SHOWN: f64 = 0.02;

/// Puts the bound in the field's place, or what lies just inside of it where the bound itself is outside:
/// the same is not said of it again. A bound of every request may hide a narrower one of this request.
fn follow(
    mut request: Plain,
    problem: &Problem,
    ask: impl Fn(&Plain) -> Option<Vec<Problem>>,
) -> Held {
    let Some(limit) = problem.limit else {
        return Ok(());
    };
    let inside = match problem.code {
        Code::TooSmall => SHOWN,
        _ => -SHOWN,
    };
    let mut same = None;
    for value in [limit, limit + inside] {
        match at(&mut request, &problem.field) {
            Some(Plain::Number(number)) => *number = value,
            _ => return Ok(()),
        }
        let mut again = ask(&request).into_iter().flatten();
        same = again.find(|again| again.field == problem.field && again.code == problem.code);
        if same.is_none() {
            return Ok(());
        }
    }
    let is_general = limits::ALL
        .iter()
        .any(|bounds| [bounds.least, bounds.most].contains(&limit));
    ensure!(is_general, "{problem:?} and then {same:?}");
    Ok(())
}

/// What stands at a problem's field. Of a field that is there twice the last one counts.
fn at<'p>(plain: &'p mut Plain, path: &str) -> Option<&'p mut Plain> {
    path.split('.').try_fold(plain, |plain, name| match plain {
        Plain::Object(fields) => fields
            .iter_mut()
            .rev()
            .find_map(|(other, value)| (other == name).then_some(value)),
        Plain::List(items) => items.get_mut(name.parse::<usize>().ok()?),
        _ => None,
    })
}

/// What stands somewhere in a request.
pub(super) fn find<'p>(request: &'p Plain, path: &str) -> Option<&'p Plain> {
    path.split('.')
        .try_fold(request, |plain, name| match plain {
            Plain::Object(fields) => fields
                .iter()
                .rev()
                .find_map(|(other, value)| (other == name).then_some(value)),
            Plain::List(items) => items.get(name.parse::<usize>().ok()?),
            _ => None,
        })
}

/// The number that stands somewhere in a request.
pub(super) fn number(request: &Plain, path: &str) -> Option<f64> {
    match find(request, path) {
        Some(Plain::Number(number)) => Some(*number),
        _ => None,
    }
}

/// The text that stands somewhere in a request.
pub(super) fn text(request: &Plain, path: &str) -> Option<String> {
    match find(request, path) {
        Some(Plain::Text(text)) => Some(text.clone()),
        _ => None,
    }
}

/// Whether `true` stands somewhere in a request.
pub(super) fn truth(request: &Plain, path: &str) -> bool {
    matches!(find(request, path), Some(Plain::Truth(true)))
}

/// A request with something else in a field.
pub(super) fn with(request: &Plain, name: &str, value: Plain) -> Plain {
    let Plain::Object(fields) = request else {
        return request.clone();
    };
    let others = fields.iter().filter(|(other, _)| other != name).cloned();
    Plain::Object(others.chain([(name.to_owned(), value)]).collect())
}
