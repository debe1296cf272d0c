//! What a link or a file carries.

use std::sync::LazyLock;

use anyhow::ensure;
use arbitrary::Unstructured;
use base64::Engine;
use base64::engine::general_purpose::URL_SAFE_NO_PAD;
use miniz_oxide::deflate::compress_to_vec_zlib;
use notchwright_core::plain::Plain;
use notchwright_web::keep::{Extent, link, saved};
use notchwright_web::state::State;
use serde_json::{Map, Number, Value};

use super::{Held, page, spoil};

/// Words and fields that the worked joint has no use for.
const NAMES: [&str; 82] = [
    "dovetail",
    "sliding",
    "box",
    "count",
    "finger",
    "onePass",
    "pattern",
    "ends",
    "far",
    "rip",
    "touch",
    "flush",
    "testKerf",
    "groove",
    "reference",
    "kind",
    "layout",
    "weights",
    "mirrored",
    "tails",
    "slope",
    "slopeBy",
    "run",
    "degrees",
    "narrowPin",
    "halfPin",
    "by",
    "ratio",
    "equal",
    "narrowest",
    "tailToPin",
    "pinCutter",
    "lap",
    "bit",
    "tip",
    "flank",
    "taper",
    "units",
    "mm",
    "in",
    "theme",
    "dark",
    "light",
    "place",
    "joint",
    "sled",
    "jobs",
    "shop",
    "before",
    "after",
    "items",
    "chosen",
    "id",
    "name",
    "progress",
    "done",
    "step",
    "stop",
    "set",
    "end",
    "of",
    "plan",
    "atSaw",
    "open",
    "pieces",
    "namesA",
    "namesB",
    "tests",
    "points",
    "rounding",
    "none",
    "travel",
    "parts",
    "drawer",
    "opening",
    "outside",
    "runners",
    "under",
    "graduated",
    "humidity",
    "shrinkage",
    "quarter",
];

/// Opens the bytes as a link.
///
/// # Errors
/// The rule that is broken.
pub fn link(bytes: &[u8]) -> Held {
    let fragment = match bytes.split_first() {
        Some((0..=31, rest)) => format!("#j=3.{}", String::from_utf8_lossy(rest)),
        Some((32..=63, rest)) => pack(3, rest),
        Some((64..=71, rest)) => String::from_utf8_lossy(rest).into_owned(),
        Some((first, rest)) => {
            let Ok((version, state)) = state(*first, rest) else {
                return Ok(());
            };
            pack(version, json(&state).to_string().as_bytes())
        }
        None => return Ok(()),
    };
    if let Some(Ok(restored)) = link::read(&fragment) {
        ensure!(restored.extent == Extent::Job, "a link carries a job");
        is_carried(&restored.state)?;
    }
    match picked(bytes) {
        Some(picture) => page::open_link(&fragment, picture),
        None => Ok(()),
    }
}

/// Opens the bytes as a file.
///
/// # Errors
/// The rule that is broken.
pub fn file(bytes: &[u8]) -> Held {
    let text = match bytes.split_first() {
        Some((0..=31, rest)) => String::from_utf8_lossy(rest).into_owned(),
        Some((32..=63, rest)) => {
            let text = String::from_utf8_lossy(rest);
            format!("{{\"version\":3,\"state\":{text}}}")
        }
        Some((first, rest)) => {
            let Ok((version, state)) = state(*first, rest) else {
                return Ok(());
            };
            let what = if first % 2 == 0 { "state" } else { "job" };
            serde_json::json!({ "version": version, what: json(&state) }).to_string()
        }
        None => return Ok(()),
    };
    if let Ok(restored) = saved::restore(&text) {
        is_saved(&restored.state)?;
    }
    match picked(bytes) {
        Some(picture) => page::open_file(&text, picture),
        None => Ok(()),
    }
}

/// Which picture is drawn of what was opened: of most none, since one takes longer than all the rest.
fn picked(bytes: &[u8]) -> Option<usize> {
    let last = usize::from(*bytes.last()?);
    (last < 16).then_some(last % 4)
}

/// A state that somebody has changed here and there, with the version it claims.
fn state(first: u8, bytes: &[u8]) -> arbitrary::Result<(u32, Plain)> {
    let mut bytes = Unstructured::new(bytes);
    let (version, own) = seed(first);
    let mut state = own.clone();
    let names: Vec<_> = spoil::names(own).into_iter().chain(NAMES).collect();
    for _ in 0..bytes.int_in_range(0..=12_u8)? {
        spoil::spoil(&mut state, &names, &mut bytes)?;
    }
    let version = if bytes.ratio(1_u8, 16)? {
        bytes.int_in_range(0..=5)?
    } else {
        version
    };
    Ok((version, state))
}

/// What this version writes, and what the earlier ones wrote.
static SEEDS: LazyLock<[(u32, Plain); 3]> = LazyLock::new(|| {
    let first = include_str!("../../../web/src/keep/tests/version-1.json");
    let second = include_str!("../../../web/src/keep/tests/version-2.json");
    let now = saved::save(&State::demo());
    [
        (3, written(&now)),
        (1, written(first)),
        (2, written(second)),
    ]
});

fn written(text: &str) -> Plain {
    let saved = serde_json::from_str::<Value>(text).ok();
    let state =
        saved.and_then(|mut saved| serde_json::from_value(saved.get_mut("state")?.take()).ok());
    state.unwrap_or(Plain::Nothing)
}

fn seed(first: u8) -> (u32, &'static Plain) {
    let [now, one, two] = &*SEEDS;
    let (version, state) = match first % 3 {
        0 => now,
        1 => one,
        _ => two,
    };
    (*version, state)
}

fn pack(version: u32, json: &[u8]) -> String {
    let packed = compress_to_vec_zlib(json, 1);
    format!("#j={version}.{}", URL_SAFE_NO_PAD.encode(packed))
}

fn json(plain: &Plain) -> Value {
    match plain {
        Plain::Nothing | Plain::Foreign(_) => Value::Null,
        Plain::Truth(truth) => Value::Bool(*truth),
        Plain::Number(number) if number.fract() == 0.0 && number.abs() < 1e15 => {
            Value::from(*number as i64)
        }
        Plain::Number(number) => Number::from_f64(*number).map_or(Value::Null, Value::Number),
        Plain::Text(text) => Value::String(text.clone()),
        Plain::List(items) => items.iter().map(json).collect(),
        Plain::Object(fields) => {
            let fields = fields
                .iter()
                .map(|(name, value)| (name.clone(), json(value)));
            Value::Object(fields.collect::<Map<_, _>>())
        }
    }
}

/// What was opened is written as a link that opens the same job, with nothing lost.
fn is_carried(state: &State) -> Held {
    let written = link::write(state);
    let Some(Ok(job)) = link::read(&written) else {
        anyhow::bail!("a link that cannot be read: {written}");
    };
    let is_same = job.state.work.joint == state.work.joint && job.state.work.job == state.work.job;
    ensure!(job.is_whole && is_same, "carried: {:#?}", job.state);
    ensure!(link::write(&job.state) == written, "another link");
    Ok(())
}

/// What was opened is saved so that it opens as the same, with nothing lost.
pub(super) fn is_saved(state: &State) -> Held {
    let again = saved::restore(&saved::save(state)).map_err(|fault| anyhow::anyhow!("{fault}"))?;
    ensure!(
        again.state == *state,
        "saved: {state:#?}\nread: {:#?}",
        again.state
    );
    let is_all = again.is_whole && again.extent == Extent::All;
    ensure!(is_all, "not whole: {}", saved::save(state));
    let written = saved::save_job(state);
    let job = saved::restore(&written).map_err(|fault| anyhow::anyhow!("{fault}"))?;
    let is_job = job.is_whole && job.extent == Extent::Job;
    ensure!(is_job, "not whole: {written}");
    ensure!(saved::save_job(&job.state) == written, "another file");
    Ok(())
}
