//! The fit of a sled to one saw: sideways, blade, travel, fore and aft, play.

use super::checked::{Job, Side, Sideways};
use super::plan::{BaseSlot, Centring, RunnerPlan, SidePlan, SledFitPlan, Stroke, Turning, Yaw};
use crate::units::Mm;

/// Works out a checked fit.
pub(super) fn plan(job: &Job) -> SledFitPlan {
    let height = job.height();
    let base = job.base_thickness;
    let blade = job.blade;
    let (table_chord, base_chord) = (blade.half_chord(Mm::ZERO), blade.half_chord(base));
    let stroke = stroke(job, base_chord);
    SledFitPlan {
        height,
        half_chord_table: table_chord,
        half_chord_base: base_chord,
        deepest_cut: job.deepest_cut(),
        smallest_window: smallest_window(job, base_chord),
        smallest_travel: base_chord + job.board_thickness + job.clearance + job.over,
        travel: stroke,
        slot: slot(job, stroke, table_chord, base_chord),
        runner: runner(job, stroke),
        second_runner: job
            .second
            .map(|second| side(job, second))
            .filter(|place| job.is_on_base(place.from_base_left)),
        from_measured: job.measured.map(|(near, far)| centring(near, far)),
        yaw: job.play.map(|play| yaw(job, play)),
        holes: job
            .hole_clearance
            .zip(job.hole_span())
            .map(|(clearance, span)| turning(clearance / span)),
        widest_board: job
            .carriage_travel
            .map(|travel| (travel - job.kerf).max(Mm::ZERO)),
        job: job.clone(),
    }
}

/// The board must stand clear of the blade before the cut, and the blade clear of the rail.
pub(super) fn smallest_window(job: &Job, base_chord: Mm) -> Mm {
    base_chord * 2.0 + job.board_thickness + job.clearance
}

/// Pulled back, the rail's near face just clears the blade; pushed through, the carriage face is past the blade's top.
fn stroke(job: &Job, base_chord: Mm) -> Stroke {
    let start = base_chord - job.window();
    Stroke {
        start,
        end: job.over,
        length: job.over - start,
    }
}

/// What the blade sweeps of the base over the whole stroke.
fn slot(job: &Job, stroke: Stroke, table_chord: Mm, base_chord: Mm) -> BaseSlot {
    let near = |chord: Mm| job.carriage_face - stroke.end - chord;
    let far = |chord: Mm| job.carriage_face - stroke.start + chord;
    BaseSlot {
        top_near: near(base_chord),
        top_far: far(base_chord),
        under_near: near(table_chord),
        under_far: far(table_chord),
    }
}

fn runner(job: &Job, stroke: Stroke) -> RunnerPlan {
    let place = side(job, job.first);
    // The base's near edge is the carriage face's distance behind the face.
    let near_left = job.front_to_arbor + stroke.start - job.carriage_face + job.contact_near;
    let far_left = job.arbor_to_rear - (stroke.end - job.carriage_face + job.contact_far);
    let Centring {
        forward,
        left_after,
    } = centring(near_left, far_left);
    RunnerPlan {
        from_blade: place.from_blade,
        from_base_left: place.from_base_left,
        forward,
        near_left,
        far_left,
        left_after,
        longest_span: (job.table() - stroke.length).max(Mm::ZERO),
    }
}

pub(super) fn side(job: &Job, at: Sideways) -> SidePlan {
    let from_base_left = match at.side {
        Side::Left => job.blade_line - at.from_blade,
        Side::Right => job.blade_line + at.from_blade,
    };
    SidePlan {
        from_blade: at.from_blade,
        from_base_left,
    }
}

/// Both ends get the mean of what is left over at the two.
fn centring(near: Mm, far: Mm) -> Centring {
    Centring {
        forward: (far - near) / 2.0,
        left_after: (near + far) / 2.0,
    }
}

fn yaw(job: &Job, play: Mm) -> Yaw {
    let radians = play / job.span();
    Yaw {
        degrees: radians.to_degrees(),
        over_thickness: job.board_thickness * radians,
        over_width: job.board_width.map(|width| width * radians),
    }
}

fn turning(radians: f64) -> Turning {
    Turning {
        degrees: radians.to_degrees(),
        per500: Mm::constant(500.0) * radians,
    }
}
