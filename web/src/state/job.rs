//! Jobs: several joints that belong together, and the saw, sled and screw they were planned for.

use super::around::{Around, AtRest};
use super::entry::Entry;
use super::id::Id;
use super::joint::JointForm;
use super::list::Item;
use super::making::Making;
use super::stored::stored;
use super::{Shop, Work};

stored! {
    /// The open job, but for its open joint.
    pub struct JobForm {
        /// What the piece is called.
        pub name: Entry = "name",
        /// Its other joints.
        pub joints: Around<JointAtRest> = "joints",
        /// What it is made of.
        pub making: Making = "making",
    }
}

stored! {
    /// A joint that is not open, and the cutter it was planned with.
    pub struct JointAtRest {
        /// The joint.
        pub joint: JointForm = "joint",
        /// Its cutter.
        pub cutter: Id = "cutter",
    }
}

stored! {
    /// A job that is not open, and what it was planned for.
    pub struct JobAtRest {
        /// The job.
        pub job: JobForm = "job",
        /// Its open joint.
        pub open: JointAtRest = "open",
        /// Its saw.
        pub saw: Id = "saw",
        /// Its sled.
        pub sled: Id = "sled",
        /// Its screw.
        pub screw: Id = "screw",
    }
}

impl AtRest for JointAtRest {
    const MOST: usize = 24;
}

impl AtRest for JobAtRest {
    const MOST: usize = 60;
}

impl JobAtRest {
    /// Its joints in order, the open one among them.
    pub fn joints(&self) -> impl Iterator<Item = &JointForm> {
        in_order(&self.job, &self.open.joint)
    }

    fn joints_mut(&mut self) -> impl Iterator<Item = &mut JointForm> {
        self.job.rest_mut().chain([&mut self.open.joint])
    }
}

impl JobForm {
    fn rest_mut(&mut self) -> impl Iterator<Item = &mut JointForm> {
        self.joints.iter_mut().map(|resting| &mut resting.joint)
    }
}

fn in_order<'a>(job: &'a JobForm, open: &'a JointForm) -> impl Iterator<Item = &'a JointForm> {
    let joint = move |place| match job.joints.get(place) {
        Some(resting) => &resting.joint,
        None => open,
    };
    (0..job.joints.count()).map(joint)
}

fn chosen<T: Item>(list: &super::List<T>) -> Id {
    list.chosen().map(Item::id).unwrap_or_default()
}

impl Shop {
    fn take_up(&mut self, job: &JobAtRest) {
        self.saws.choose(job.saw);
        self.sleds.choose(job.sled);
        self.screws.choose(job.screw);
    }
}

impl Work {
    /// The joints of the open job in order, the open one among them.
    pub fn joints(&self) -> impl Iterator<Item = &JointForm> {
        in_order(&self.job, &self.joint)
    }

    /// All joints of all jobs.
    pub fn all_joints(&self) -> impl Iterator<Item = &JointForm> {
        self.joints()
            .chain(self.jobs.iter().flat_map(JobAtRest::joints))
    }

    /// The ids of joints that are not in `other`.
    pub(crate) fn joints_beside(&self, other: &Self) -> Vec<Id> {
        let there: Vec<Id> = other.all_joints().map(|joint| joint.id).collect();
        let here = self.all_joints().map(|joint| joint.id);
        here.filter(|id| !there.contains(id)).collect()
    }

    /// The open joint as it would rest.
    #[must_use]
    pub fn joint_at_rest(&self) -> JointAtRest {
        JointAtRest {
            joint: self.joint.clone(),
            cutter: chosen(&self.shop.cutters),
        }
    }

    /// The open job as it would rest.
    #[must_use]
    pub fn job_at_rest(&self) -> JobAtRest {
        JobAtRest {
            job: self.job.clone(),
            open: self.joint_at_rest(),
            saw: chosen(&self.shop.saws),
            sled: chosen(&self.shop.sleds),
            screw: chosen(&self.shop.screws),
        }
    }

    /// Whether the cutter that a joint was planned with is gone.
    #[must_use]
    pub fn lacks_cutter_of(&self, joint: &JointAtRest) -> bool {
        let gone = |id: Id| id != Id::default() && self.shop.cutters.get(id).is_none();
        gone(joint.cutter) || gone(joint.joint.dovetail.pin_cutter)
    }

    /// Whether a tool that a job's open joint was planned with is gone.
    #[must_use]
    pub fn lacks_tools_of(&self, job: &JobAtRest) -> bool {
        fn gone<T: Item>(list: &super::List<T>, id: Id) -> bool {
            id != Id::default() && list.get(id).is_none()
        }
        gone(&self.shop.saws, job.saw)
            || gone(&self.shop.sleds, job.sled)
            || gone(&self.shop.screws, job.screw)
            || self.lacks_cutter_of(&job.open)
    }

    /// Opens the joint at `place` of the open job.
    pub fn open_joint(&mut self, place: usize) {
        let leaving = self.joint_at_rest();
        if let Some(taken) = self.job.joints.exchange(place, leaving) {
            self.take_up_joint(taken);
        }
    }

    /// Opens the job at `place`.
    pub fn open_job(&mut self, place: usize) {
        let leaving = self.job_at_rest();
        if let Some(taken) = self.jobs.exchange(place, leaving) {
            self.take_up_job(taken);
        }
    }

    /// Opens the joint with this id, in whichever job it is.
    pub(crate) fn open_joint_with(&mut self, id: Id) {
        let is_here = |job: &JobAtRest| job.joints().any(|joint| joint.id == id);
        let job = (0..self.jobs.count()).find(|place| self.jobs.get(*place).is_some_and(is_here));
        if let Some(job) = job {
            self.open_job(job);
        }
        let joint = self.joints().position(|joint| joint.id == id);
        if let Some(joint) = joint {
            self.open_joint(joint);
        }
    }

    /// Opens a joint that stands right after the open one; nothing happens when the job is full.
    pub fn add_joint(&mut self, joint: JointForm) {
        if self.job.joints.has_room() {
            let id = self.free_joint_id();
            let leaving = self.joint_at_rest();
            self.job.joints.lay_before(leaving);
            self.joint = JointForm { id, ..joint };
        }
    }

    /// Opens a job that stands right after the open one; nothing happens when there is no room.
    pub fn add_job(&mut self, mut job: JobAtRest) {
        if self.jobs.has_room() {
            self.number_anew(&mut job);
            let leaving = self.job_at_rest();
            self.jobs.lay_before(leaving);
            self.take_up_job(job);
        }
    }

    /// Removes the joint at `place` of the open job; a blank one takes the place of the last.
    pub fn remove_joint(&mut self, place: usize) -> Option<JointForm> {
        if place != self.job.joints.place() {
            return self.job.joints.remove(place).map(|resting| resting.joint);
        }
        let heir = self.job.joints.heir().unwrap_or_else(|| JointAtRest {
            joint: self.blank_joint(),
            cutter: chosen(&self.shop.cutters),
        });
        let removed = self.joint.clone();
        self.take_up_joint(heir);
        Some(removed)
    }

    /// Removes the job at `place`; a blank one takes the place of the last.
    pub fn remove_job(&mut self, place: usize) -> Option<JobForm> {
        if place != self.jobs.place() {
            return self.jobs.remove(place).map(|resting| resting.job);
        }
        let heir = self.jobs.heir().unwrap_or_else(|| self.blank_job());
        let removed = self.job.clone();
        self.take_up_job(heir);
        Some(removed)
    }

    /// A joint with the open one's numbers, which is for nothing yet.
    #[must_use]
    pub fn blank_joint(&self) -> JointForm {
        JointForm {
            id: self.free_joint_id(),
            name: Entry::default(),
            pieces: Default::default(),
            from: Entry::default(),
            ..self.joint.clone()
        }
    }

    /// A job with one such joint, for the tools in use.
    #[must_use]
    pub fn blank_job(&self) -> JobAtRest {
        let open = JointAtRest {
            joint: self.blank_joint(),
            ..self.joint_at_rest()
        };
        JobAtRest {
            job: JobForm::default(),
            open,
            ..self.job_at_rest()
        }
    }

    fn take_up_joint(&mut self, taken: JointAtRest) {
        self.joint = taken.joint;
        self.shop.cutters.choose(taken.cutter);
    }

    fn take_up_job(&mut self, taken: JobAtRest) {
        self.shop.take_up(&taken);
        self.job = taken.job;
        self.take_up_joint(taken.open);
    }

    /// A joint's id stays its own, so that nothing is ever counted as cut that another joint was.
    fn free_joint_id(&self) -> Id {
        free_id(&self.joint_ids())
    }

    fn joint_ids(&self) -> Vec<Id> {
        self.all_joints().map(|joint| joint.id).collect()
    }

    fn number_anew(&self, job: &mut JobAtRest) {
        let mut used = self.joint_ids();
        for joint in job.joints_mut() {
            joint.id = free_id(&used);
            used.push(joint.id);
        }
    }

    /// Of several joints with one number all but the first get others: what is cut of one is not cut of another.
    pub(crate) fn tell_joints_apart(&mut self) {
        let mut used = self.joint_ids();
        let mut seen = Vec::new();
        let resting = self.jobs.iter_mut().flat_map(JobAtRest::joints_mut);
        let here = [&mut self.joint].into_iter().chain(self.job.rest_mut());
        for joint in here.chain(resting) {
            if seen.contains(&joint.id) {
                joint.id = free_id(&used);
                used.push(joint.id);
            }
            seen.push(joint.id);
        }
    }
}

/// The number after the last one, or any unused one once those are exhausted.
fn free_id(used: &[Id]) -> Id {
    let next = used.iter().max().and_then(|last| last.0.checked_add(1));
    let free = || (0..u16::MAX).find(|id| !used.contains(&Id(*id)));
    Id(next.or_else(free).unwrap_or_default())
}
