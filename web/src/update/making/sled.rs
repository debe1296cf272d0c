//! A sled's own parts among those of the job.

use notchwright_core::parts::SledParts;
use notchwright_core::parts::tsv::PartText;
use notchwright_core::units::{Mm, Unit};

use super::handed::{Became, Handed, bring, bring_called, take_out};
use super::said;
use super::table::part_of;
use crate::notice::Notice;
use crate::state::fields::{Known, measure, stock};
use crate::state::{Entry, Form, Group, Id, Making};
use crate::update::edit::Outcome;

const SOURCE: &str = "sled";

/// Adds the parts, with the stock and the measurements that they need, or brings them up to date.
#[inline(never)]
pub(in crate::update) fn add(making: &mut Making, sled: &SledParts) -> Outcome {
    let before = making.clone();
    let mut became = Became::default();
    if bring_all(making, sled, &mut became).is_some() {
        return became.outcome(*making != before);
    }
    *making = before;
    said(Notice::Full)
}

/// Nothing where there is no room for all.
fn bring_all(making: &mut Making, sled: &SledParts, became: &mut Became) -> Option<()> {
    let mut stocks: Vec<(&str, Id)> = Vec::new();
    for (name, thickness) in &sled.stocks {
        let row = called(name, [stock::NAME, stock::THICKNESS], *thickness);
        stocks.push((name, bring_called(making, Group::Stocks, &row, became)?));
    }
    for (name, length) in &sled.measures {
        let row = called(name, [measure::NAME, measure::VALUE], *length);
        bring_called(making, Group::Measures, &row, became)?;
    }
    let part = |text: &PartText| {
        let stock = stocks.iter().find(|(name, _)| *name == text.stock);
        handed(
            &text.name,
            part_of(text, stock.map(|(_, id)| *id), Unit::Mm),
        )
    };
    let parts: Vec<_> = sled.parts.iter().map(part).collect();
    for row in &parts {
        bring(making, Group::Parts, row, became)?;
    }
    take_out(making, SOURCE, &parts, became);
    Some(())
}

/// A length that goes by its name.
fn called(name: &str, [called, value]: [Known; 2], length: Mm) -> Handed {
    let form = Form::default()
        .with(called.name(), Entry::mm(name))
        .with(value.name(), Entry::of(length, Unit::Mm));
    handed(name, form)
}

fn handed(key: &str, form: Form) -> Handed {
    Handed {
        source: SOURCE,
        key: key.to_owned(),
        form,
    }
}
