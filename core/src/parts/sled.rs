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

#[cfg(test)]
mod tests {
    use super::sled_parts;
    use crate::given::Given;
    use crate::parts::tests::{list, measure, stock};
    use crate::parts::tsv::PartText;
    use crate::parts::{PartRequest, draft};
    use crate::sled::SledFitRequest;
    use crate::sled::tests::saw;

    fn sled() -> SledFitRequest {
        saw(|saw| saw.second_slot = 120.0.into())
    }

    #[test]
    fn a_sled_knows_its_base_and_says_what_it_does_not_know() {
        let known = sled_parts(&sled()).unwrap();
        let stocks = known
            .plan
            .stocks
            .iter()
            .map(|(name, thickness)| stock(name, thickness.mm()));
        let mut measures = Vec::new();
        for (name, length) in &known.plan.measures {
            measures.push(measure(name, &format!("{} mm", length.mm())));
        }
        let rows: Vec<PartRequest> = known.plan.parts.iter().map(PartText::request).collect();
        let runners = &known.plan.parts[2];
        assert_eq!((runners.count.as_str(), runners.stock.as_str()), ("2", ""));
        let mut request = list(stocks.collect(), measures, rows);
        request.unit = "in".into();
        let draft = draft(&request);
        let base = draft.rows[0].part.as_ref().unwrap();
        assert_eq!(
            (base.length.finished.mm(), base.width.finished.mm()),
            (600.0, 500.0)
        );
        let rest: Vec<_> = draft.rows[1..]
            .iter()
            .map(|row| (row.length, row.width))
            .collect();
        assert_eq!(rest[0].0.map(|length| length.finished.mm()), Some(500.0));
        assert_eq!(rest[0].1, None);
        assert_eq!(rest[1].0.map(|length| length.finished.mm()), Some(400.0));
        assert_eq!(known.notes.len(), 2);
        let mut off = sled();
        off.blade = Given::Missing;
        assert_eq!(sled_parts(&off).unwrap_err()[0].field, "blade");
    }
}
