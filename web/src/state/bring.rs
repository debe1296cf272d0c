//! Bringing a job from elsewhere in beside those that are here.

use super::id::Id;
use super::job::JobAtRest;
use super::joint::JointForm;
use super::list::{Item, List};
use super::progress::{Progress, Progresses};
use super::stored::Stored;
use super::{Shop, SledForm, Work};

/// What came of it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Brought {
    /// It was open already.
    Open,
    /// It was among the jobs here.
    Known,
    /// It is new here.
    New,
    /// There is no room for it.
    NoRoom,
}

impl Work {
    /// Opens the open job of `other` here, with whatever of its shop is not here yet; `progress` is how far it
    /// had come there, and is added to `here`.
    pub(crate) fn bring(
        &mut self,
        other: &Self,
        progress: &Progresses,
        here: &mut Progresses,
    ) -> Brought {
        let before = self.shop.clone();
        let open = self.job_at_rest();
        let Some(job) = self.adopt(other) else {
            self.shop = before;
            return Brought::NoRoom;
        };
        if is_alike(&job, &open, &self.shop) {
            self.shop = before;
            return Brought::Open;
        }
        let mut known = (0..self.jobs.count()).filter(|place| {
            let resting = self.jobs.get(*place);
            resting.is_some_and(|resting| is_alike(&job, resting, &self.shop))
        });
        if let Some(place) = known.next() {
            self.shop = before;
            self.open_job(place);
            return Brought::Known;
        }
        if !self.jobs.has_room() {
            self.shop = before;
            return Brought::NoRoom;
        }
        self.add_job(job);
        let pairs = other.joints().zip(self.joints());
        for (there, joint) in pairs {
            here.set(Progress {
                joint: joint.id,
                ..progress.of(there.id).clone()
            });
        }
        Brought::New
    }

    /// The open job of `other` with the ids that its tools have here; none where there is no room for one.
    fn adopt(&mut self, other: &Self) -> Option<JobAtRest> {
        let mut job = other.job_at_rest();
        let (here, there) = (&mut self.shop, &other.shop);
        job.saw = same(&mut here.saws, &there.saws, job.saw)?;
        job.sled = same(&mut here.sleds, &there.sleds, job.sled)?;
        job.screw = same(&mut here.screws, &there.screws, job.screw)?;
        let mut cutter = |id: Id| same(&mut here.cutters, &there.cutters, id);
        for resting in job.job.joints.iter_mut().chain([&mut job.open]) {
            resting.cutter = cutter(resting.cutter)?;
            let pins = &mut resting.joint.dovetail.pin_cutter;
            *pins = cutter(*pins)?;
        }
        Some(job)
    }

    /// Leaves in the shop only what the open job was planned with.
    pub(crate) fn keep_own_tools(&mut self) {
        let job = self.job_at_rest();
        let mut cutters = Vec::new();
        for resting in job.job.joints.iter().chain([&job.open]) {
            cutters.extend([resting.cutter, resting.joint.dovetail.pin_cutter]);
        }
        self.shop.saws.keep(&[job.saw]);
        self.shop.sleds.keep(&[job.sled]);
        self.shop.screws.keep(&[job.screw]);
        self.shop.cutters.keep(&cutters);
        self.shop.stack = Default::default();
        self.shop.slot = Default::default();
        self.sled = SledForm::default();
    }
}

/// The id here of what is `id` there, no id where that is nothing. It is added where there is none like it;
/// the answer is none where there is no room for it.
fn same<T: Item + Stored>(here: &mut List<T>, there: &List<T>, id: Id) -> Option<Id> {
    let Some(thing) = there.get(id) else {
        return Some(Id::default());
    };
    let alike = |other: &&T| (*other).clone().with_id(id) == *thing;
    // Of several that are alike, rather the one with the same number.
    let same = here.get(id).filter(alike);
    let known = same.or_else(|| here.items().iter().find(alike));
    let known = known.map(Item::id);
    known.or_else(|| here.push(thing.clone()))
}

/// Whether a job from elsewhere is one from here, but for which joint is open and for the ids of joints. What
/// it came without, it was given here.
fn is_alike(brought: &JobAtRest, here: &JobAtRest, shop: &Shop) -> bool {
    let tools = |job: &JobAtRest| {
        let place = |place| job.job.joints.get(place).unwrap_or(&job.open).cutter;
        let cutters = (0..job.job.joints.count()).map(place);
        let others = [job.saw, job.sled, job.screw];
        others.into_iter().chain(cutters).collect::<Vec<_>>()
    };
    let (tools, own) = (tools(brought), tools(here));
    let mut pairs = tools.iter().zip(&own);
    let bare = |joint: &JointForm| {
        let mut joint = joint.clone();
        joint.id = Id::default();
        let pins = &mut joint.dovetail.pin_cutter;
        *pins = shop.cutters.get(*pins).map(Item::id).unwrap_or_default();
        joint
    };
    brought.job.name == here.job.name
        && brought.job.making == here.job.making
        && tools.len() == own.len()
        && pairs.all(|(brought, own)| *brought == Id::default() || brought == own)
        && brought.joints().map(bare).eq(here.joints().map(bare))
}
