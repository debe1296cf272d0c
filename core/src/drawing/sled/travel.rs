//! Where a sled is between pulled back and pushed through.

use crate::sled::SledFitPlan;
use crate::sled::checked::Job;
use crate::units::Mm;

/// A sled somewhere on its stroke; places along the feed count from the arbor's axis, away from the operator.
#[derive(Clone, Copy, Debug)]
pub(super) struct Travel<'a> {
    pub(super) plan: &'a SledFitPlan,
    pub(super) job: &'a Job,
    /// 0 pulled fully back, 1 pushed through.
    pushed: f64,
    /// The carriage face.
    pub(super) face: Mm,
}

impl<'a> Travel<'a> {
    /// What is not a number counts as pulled back.
    pub(super) fn new(plan: &'a SledFitPlan, pushed: f64) -> Self {
        let pushed = if pushed > 0.0 { pushed.min(1.0) } else { 0.0 };
        let (start, end) = (plan.travel.start, plan.travel.end);
        Self {
            plan,
            job: &plan.job,
            pushed,
            face: start * (1.0 - pushed) + end * pushed,
        }
    }

    /// A place on the sled, given from the base's near edge.
    pub(super) fn on_sled(&self, from_near_edge: Mm) -> Mm {
        self.face - self.job.carriage_face + from_near_edge
    }

    /// The table's front edge.
    pub(super) fn front(&self) -> Mm {
        -self.job.front_to_arbor
    }

    /// The table's rear edge.
    pub(super) fn rear(&self) -> Mm {
        self.job.arbor_to_rear
    }

    /// Near and far contact.
    pub(super) fn contacts(&self) -> [Contact; 2] {
        let (front, rear) = (self.front(), self.rear());
        let near = self.on_sled(self.job.contact_near);
        let far = self.on_sled(self.job.contact_far);
        [
            Contact::new(
                near,
                (near - front, front),
                (rear - near, rear),
                self.pushed == 0.0,
            ),
            Contact::new(
                far,
                (rear - far, rear),
                (far - front, front),
                self.pushed == 1.0,
            ),
        ]
    }

    /// Nearest and farthest place along the feed that the table, or the sled anywhere on its stroke, takes up.
    pub(super) fn extent(&self) -> (Mm, Mm) {
        let (near, far) = runner_ends(self.job);
        let back = Self::new(self.plan, 0.0);
        let through = Self::new(self.plan, 1.0);
        let low = back.on_sled(near.min(Mm::ZERO));
        let high = through.on_sled(far.max(self.job.base_length));
        (low.min(self.front()), high.max(self.rear()))
    }
}

/// The least that a runner can be: from contact to contact, and half its width past a hole beyond them.
/// From the base's near edge, before it is moved.
pub(super) fn runner_ends(job: &Job) -> (Mm, Mm) {
    let half = job.runner_width / 2.0;
    let first = job.holes.first().map(|hole| *hole - half);
    let last = job.holes.last().map(|hole| *hole + half);
    (
        first.map_or(job.contact_near, |first| first.min(job.contact_near)),
        last.map_or(job.contact_far, |last| last.max(job.contact_far)),
    )
}

/// Middles of the runners from the base's left edge, the one that is always there first.
pub(super) fn runners(plan: &SledFitPlan) -> Vec<Mm> {
    let second = plan.second_runner.map(|second| second.from_base_left);
    [Some(plan.runner.from_base_left), second]
        .into_iter()
        .flatten()
        .collect()
}

/// One of the runner's outermost contacts with the slot.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Contact {
    /// Along the feed.
    pub(super) at: Mm,
    /// Table left beyond it; negative off the table.
    pub(super) left: Mm,
    /// The edge of the table that is measured from.
    pub(super) edge: Mm,
    /// Whether the sled is at the end of its stroke that takes it nearest to that edge.
    pub(super) at_end: bool,
}

impl Contact {
    /// Each end of the runner is measured from its own edge of the table, unless it lies past the other.
    fn new(at: Mm, own: (Mm, Mm), other: (Mm, Mm), at_end: bool) -> Self {
        let (left, edge) = if other.0.is_below(Mm::ZERO) {
            other
        } else {
            own
        };
        Self {
            at,
            left,
            edge,
            at_end,
        }
    }

    /// Whether it hangs in the air.
    pub(super) fn is_off(&self) -> bool {
        self.left.is_below(Mm::ZERO)
    }
}
