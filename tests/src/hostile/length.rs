//! Lengths as people type them.

use anyhow::ensure;
use arbitrary::Unstructured;
use notchwright_core::units::{
    Denominator, LengthFault, Mm, Style, Unit, format_length, parse_length,
};

use super::{Held, build};

/// Reads what the bytes say as a length, in both units.
///
/// # Errors
/// The rule that is broken.
pub fn length(bytes: &[u8]) -> Held {
    let mut unstructured = Unstructured::new(bytes);
    let text = match bytes.first() {
        // Most bytes are a text as they stand; of some it is put together.
        Some(0..=31) => build::typed(&mut unstructured).unwrap_or_default(),
        _ => String::from_utf8_lossy(bytes).into_owned(),
    };
    Unit::ALL.into_iter().try_for_each(|unit| read(&text, unit))
}

fn read(text: &str, unit: Unit) -> Held {
    let read = parse_length(text, unit);
    // Spaces round it say nothing.
    let spaced = parse_length(&format!("\u{a0}{text} "), unit);
    match (&read, &spaced) {
        (Ok(one), Ok(other)) => ensure!(one == other, "{text:?}: {one} and {other} with spaces"),
        (Err(one), Err(other)) => ensure!(
            one.fault == other.fault,
            "{text:?}: {one} and {other} with spaces"
        ),
        _ => anyhow::bail!("{text:?}: {read:?} and {spaced:?} with spaces"),
    }
    match read {
        Ok(length) => reads_back(length),
        Err(error) => {
            ensure!(error.at <= text.chars().count(), "{text:?}: {error:?}");
            ensure!(
                error.to_string().ends_with(['.', '?', '!']),
                "{text:?}: {error}"
            );
            proposals(&error.fault)
                .into_iter()
                .try_for_each(|proposal| {
                    let read = parse_length(&proposal, unit);
                    ensure!(
                        read.is_ok() || is_too_long(&read),
                        "{text:?}: {error} {read:?}"
                    );
                    Ok(())
                })
        }
    }
}

fn is_too_long<T>(read: &Result<T, notchwright_core::units::LengthError>) -> bool {
    matches!(read, Err(error) if error.fault == LengthFault::TooLong)
}

/// What a refusal says one may write instead.
fn proposals(fault: &LengthFault) -> Vec<String> {
    match fault {
        LengthFault::CommaOrThousands { decimal, thousands } => {
            vec![decimal.clone(), thousands.clone()]
        }
        LengthFault::SpacedDigits { joined } => vec![joined.clone()],
        LengthFault::FractionPastOne { better } => vec![better.clone()],
        _ => Vec::new(),
    }
}

/// However a length is written, it is read again as what it says.
pub(super) fn reads_back(length: Mm) -> Held {
    ensure!(
        length.mm().abs() <= 1e6,
        "{length} is longer than a kilometre"
    );
    let fractions = [1, 7, 64, 1024].into_iter().filter_map(Denominator::new);
    let decimals = [0, 1, 3, 6];
    let styles = decimals
        .map(|decimals| Style::Millimetres { decimals })
        .into_iter();
    let styles = styles.chain(decimals.map(|decimals| Style::InchDecimals { decimals }));
    let styles = styles.chain(fractions.map(|finest| Style::InchFraction { finest }));
    for style in styles {
        let written = format_length(length, style);
        for unit in Unit::ALL {
            let read = parse_length(&written.text, unit);
            if is_too_long(&read) && length.mm().abs() > 999_900.0 {
                continue;
            }
            let read = read.map_err(|error| anyhow::anyhow!("{error}: {written:?}"))?;
            let off = (read + written.leftover - length).abs();
            let allowed = if written.exact { 1e-3 } else { 0.0 } + 1e-8;
            ensure!(
                off.mm() <= allowed,
                "{length} written {written:?} is off by {off}"
            );
        }
    }
    Ok(())
}
