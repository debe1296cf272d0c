//! What is known of a sled's own parts, as rows of a parts list.

use super::tsv::PartText;
use crate::message;
use crate::problem::{Checked, Note, Planned, Severity};
use crate::sled::{SledFitRequest, sled_fit};
use crate::units::Mm;

/// A sled's parts as far as a fit knows them.
#[derive(Clone, Debug, PartialEq)]
pub struct SledParts {
    /// What parts are cut from, each with its thickness, mm.
    pub stocks: Vec<(&'static str, Mm)>,
    /// Measures that the parts use, mm.
    pub measures: Vec<(&'static str, Mm)>,
    /// The parts; what is not known is blank.
    pub parts: Vec<PartText>,
}

/// The parts of a sled for one saw: its base, and of front rail and runner what the fit needs of them.
///
/// None of these dimensions holds a sheet's thickness, so none is a sum over `t`; all follow the sled's own measures.
///
/// # Errors
/// Every problem of the sled's fit: what does not go onto the saw is not built.
pub fn sled_parts(request: &SledFitRequest) -> Checked<SledParts> {
    let fit = sled_fit(request)?.plan;
    let (job, runners) = (
        &fit.job,
        if fit.second_runner.is_some() {
            "2"
        } else {
            "1"
        },
    );
    let part = |name: &str, count: &str, length: &str, width: &str| PartText {
        name: name.to_owned(),
        count: count.to_owned(),
        length: length.to_owned(),
        width: width.to_owned(),
        ..PartText::default()
    };
    let plan = SledParts {
        stocks: vec![("Base", job.base_thickness)],
        measures: vec![
            ("base_length", job.base_length),
            ("base_width", job.base_width),
            ("runner_length", job.span()),
            ("runner_width", job.runner_width),
        ],
        parts: vec![
            PartText {
                stock: "Base".to_owned(),
                ..part("Base", "1", "base_length", "base_width")
            },
            part("Front rail", "1", "base_width", ""),
            part("Runner", runners, "runner_length", "runner_width"),
        ],
    };
    let rail = message![
        "Ahead of the front rail's near face the base has ",
        job.base_length - job.front_rail,
        ", and behind the carriage's face ",
        job.carriage_face,
        ". The runner is at least as long as from contact to contact."
    ];
    let unknown = message![
        "Not known here: carriage and fence, the rail's height, and what rail and runner are made of."
    ];
    Ok(Planned {
        plan,
        notes: vec![
            Note::new("sled-room", Severity::Info, rail),
            Note::new("sled-unknown", Severity::Info, unknown),
        ],
    })
}
