//! Changing plain data somewhere, as a slip or an attacker would.

use std::collections::BTreeMap;

use arbitrary::{Error, Result, Unstructured};
use notchwright_core::plain::Plain;

use super::build::{outside, typed};

/// No deeper than a page hands anything on.
const DEEPEST: usize = 8;

/// Changes something inside `plain`; `names` are fields and words that mean something somewhere.
pub(super) fn spoil(plain: &mut Plain, names: &[&str], bytes: &mut Unstructured<'_>) -> Result<()> {
    let other = place(plain, bytes)?.clone();
    let place = place(plain, bytes)?;
    match (bytes.int_in_range(0..=7_u8)?, place) {
        (0 | 1, Plain::Object(fields)) => {
            let name = *bytes.choose(names)?;
            let at = bytes.int_in_range(0..=fields.len())?;
            if fields.iter().all(|(field, _)| field != name) {
                fields.insert(at, (name.to_owned(), other));
            }
        }
        (2, Plain::Object(fields)) if !fields.is_empty() => {
            let at = bytes.choose_index(fields.len())?;
            fields.remove(at);
        }
        (0..=2, Plain::List(items)) => {
            let count = bytes.int_in_range(0..=40_usize)?;
            items.extend(std::iter::repeat_n(other, count));
        }
        (3, Plain::List(items)) if !items.is_empty() => {
            let at = bytes.choose_index(items.len())?;
            items.remove(at);
        }
        (0..=3, Plain::Number(number)) => *number = outside(bytes, *number)?,
        (0..=2, Plain::Text(text)) => *text = typed(bytes)?,
        (3 | 4, Plain::Text(text)) => *text = (*bytes.choose(names)?).to_owned(),
        (5, place) => *place = other,
        (_, place) => *place = anything(names, bytes, DEEPEST)?,
    }
    Ok(())
}

/// A place somewhere inside.
fn place<'p>(mut plain: &'p mut Plain, bytes: &mut Unstructured<'_>) -> Result<&'p mut Plain> {
    for _ in 0..DEEPEST {
        let inside = match plain {
            Plain::List(items) => items.len(),
            Plain::Object(fields) => fields.len(),
            _ => 0,
        };
        // Zero stays here.
        let turn = bytes.int_in_range(0..=inside * 4)?;
        if turn == 0 {
            break;
        }
        let at = (turn - 1) % inside;
        let next = match plain {
            Plain::List(items) => items.get_mut(at),
            Plain::Object(fields) => fields.get_mut(at).map(|(_, value)| value),
            _ => None,
        };
        plain = next.ok_or(Error::IncorrectFormat)?;
    }
    Ok(plain)
}

/// Any plain data.
pub(super) fn anything(
    names: &[&str],
    bytes: &mut Unstructured<'_>,
    deepest: usize,
) -> Result<Plain> {
    let most = if deepest == 0 { 5 } else { 8 };
    Ok(match bytes.int_in_range(0..=most)? {
        0 => Plain::Nothing,
        1 => Plain::Truth(bytes.arbitrary()?),
        2 => Plain::Number(outside(bytes, 1.0)?),
        3 => Plain::Text(typed(bytes)?),
        4 => Plain::Text((*bytes.choose(names)?).to_owned()),
        5 => Plain::Foreign("a function"),
        6 => {
            let count = bytes.int_in_range(0..=12_u8)?;
            let items = (0..count).map(|_| anything(names, bytes, deepest - 1));
            Plain::List(items.collect::<Result<_>>()?)
        }
        _ => {
            let count = bytes.int_in_range(0..=12_u8)?;
            let mut fields = BTreeMap::new();
            for _ in 0..count {
                let name = (*bytes.choose(names)?).to_owned();
                fields.insert(name, anything(names, bytes, deepest - 1)?);
            }
            Plain::Object(fields.into_iter().collect())
        }
    })
}

/// The names of fields and the words in plain data, to be put where they do not belong.
pub(super) fn names(plain: &Plain) -> Vec<&str> {
    match plain {
        Plain::Text(text) => vec![text],
        Plain::List(items) => items.iter().flat_map(names).collect(),
        Plain::Object(fields) => fields
            .iter()
            .flat_map(|(name, value)| std::iter::once(name.as_str()).chain(names(value)))
            .collect(),
        _ => Vec::new(),
    }
}
