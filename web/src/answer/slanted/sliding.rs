//! The sliding dovetail.

use notchwright_core::given::Given;
use notchwright_core::joint::box_joint::BoardRequest;
use notchwright_core::joint::sliding::{
    BitRequest, SlidingDovetailRequest, TaperRequest, sliding_dovetail,
};

use super::{Draft, SlantedAnswer, finish};
use crate::state::{Field, JointField, SlidingField, Work};

pub(super) fn add(work: &Work, answer: &mut SlantedAnswer) {
    let mut draft = Draft::new(work);
    let request = request(&mut draft);
    let checked = sliding_dovetail(&request);
    answer.sliding = finish(draft, checked, &answer.sliding, &mut answer.problems);
}

fn request(draft: &mut Draft<'_>) -> SlidingDovetailRequest {
    let glue_gap = draft.length("glueGap", Field::Joint(JointField::GlueGap));
    let by = draft.length("taper.by", Field::Sliding(SlidingField::Taper));
    let length = draft.length("taper.length", Field::Sliding(SlidingField::Length));
    // A length alone is no taper yet.
    let taper = if by.is_missing() {
        Given::Missing
    } else {
        TaperRequest { by, length }.into()
    };
    let flank = draft.number("bit.flankDegrees", Field::Sliding(SlidingField::Flank));
    let mut length = |path, field| draft.length(path, Field::Sliding(field));
    SlidingDovetailRequest {
        bit: BitRequest {
            tip_diameter: length("bit.tipDiameter", SlidingField::Tip),
            flank_degrees: flank,
            cutting_length: length("bit.cuttingLength", SlidingField::CuttingLength),
        }
        .into(),
        depth: length("depth", SlidingField::Depth),
        socket_floor: length("socketFloor", SlidingField::Floor),
        board: BoardRequest {
            thickness: length("board.thickness", SlidingField::Thickness),
        }
        .into(),
        glue_gap,
        taper,
    }
}
