//! What the core answers to what is typed: the page must show the same.

use anyhow::{Context, Result, bail};
use notchwright_core::cutter::CutterRequest;
use notchwright_core::dial::ScrewRequest;
use notchwright_core::given::Given;
use notchwright_core::joint::box_joint::{
    BoardRequest, BoxJointPlan, BoxJointRequest, LayoutRequest, SawRequest, box_joint,
};
use notchwright_core::message::Message;
use notchwright_core::stop::{Reading, Set};
use notchwright_core::units::{Mm, Unit, write_number, write_padded};
use serde_json::{Value, json};

/// The joint that the page opens on, of boards `width` mm wide.
pub(crate) fn worked(width: f64) -> BoxJointRequest {
    let board = |thickness: f64| BoardRequest {
        thickness: thickness.into(),
    };
    BoxJointRequest {
        width: width.into(),
        a: board(12.0).into(),
        b: board(18.0).into(),
        cutter: CutterRequest {
            kerf: 3.07.into(),
            diameter: 254.0.into(),
            ..CutterRequest::default()
        }
        .into(),
        screw: ScrewRequest {
            threads_per_inch: 16.0.into(),
            divisions: 80.0.into(),
            travel: 320.0.into(),
            ..ScrewRequest::default()
        }
        .into(),
        layout: LayoutRequest::count(9.0).into(),
        saw: SawRequest {
            greatest_height: 80.0.into(),
            base: 15.0.into(),
            // Its front rail at 370, its carriage's face at 170.
            window: 200.0.into(),
        }
        .into(),
        ..BoxJointRequest::default()
    }
}

/// A cutter with flat teeth.
pub(crate) fn cutter(kerf: f64) -> Given<CutterRequest> {
    CutterRequest {
        kerf: kerf.into(),
        ..CutterRequest::default()
    }
    .into()
}

/// The core's answer, which must not be a refusal.
pub(crate) fn plan(request: &BoxJointRequest) -> Result<BoxJointPlan> {
    match box_joint(request) {
        Ok(planned) => Ok(planned.plan),
        Err(problems) => bail!("this joint cannot be cut: {problems:?}"),
    }
}

/// A set of a plan, counted from 1.
pub(crate) fn set(plan: &BoxJointPlan, number: usize) -> Result<&Set> {
    let set = plan.sets.get(number.wrapping_sub(1));
    set.with_context(|| format!("there is no set {number}"))
}

/// The setting of a stop: turns and divisions.
pub(crate) fn setting(dial: Reading) -> [String; 2] {
    let turns = dial.turns.to_string().replace('-', "−");
    [turns, write_number(dial.division, 2)]
}

/// Each table of stops, and in each row the pass, the setting and where it is cut.
pub(crate) fn tables(plan: &BoxJointPlan, unit: Unit) -> Value {
    tables_of(&plan.sets, unit)
}

/// The same of any sets.
pub(crate) fn tables_of(sets: &[Set], unit: Unit) -> Value {
    let table = |set: &Set| {
        let rows = set.stops.iter().map(|stop| {
            let [turns, division] = setting(stop.dial);
            json!([
                stop.number.to_string(),
                turns,
                division,
                column(stop.at, unit)
            ])
        });
        rows.collect::<Value>()
    };
    sets.iter().map(table).collect()
}

/// A length as it is read off the page: finer where it is small.
pub(crate) fn length(length: Mm, unit: Unit) -> String {
    let gap = if unit == Unit::Mm { " " } else { "" };
    format!("{}{gap}{}", bare(length, unit), unit.symbol())
}

/// The same without its unit.
pub(crate) fn bare(length: Mm, unit: Unit) -> String {
    let value = length / unit.length();
    let (fine_below, decimals) = match unit {
        Unit::Mm => (1.0, 2),
        Unit::Inch => (0.25, 3),
    };
    write_number(value, decimals + u8::from(value.abs() < fine_below)).replace('-', "−")
}

/// A sentence of the core's as the page writes it, in millimetres.
pub(crate) fn sentence(message: &Message) -> String {
    message.show(|mm| length(mm, Unit::Mm))
}

fn column(length: Mm, unit: Unit) -> String {
    let decimals = if unit == Unit::Mm { 2 } else { 3 };
    write_padded(length / unit.length(), decimals).replace('-', "−")
}
