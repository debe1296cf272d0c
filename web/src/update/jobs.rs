//! Jobs and joints: adding, opening, copying, removing.

use super::edit::{Outcome, copied, said};
use crate::effect::Effect;
use crate::msg::Leaf;
use crate::notice::Notice;
use crate::state::{Entry, Field, JointField, JointForm, Work, fields};

/// What is done with the jobs, or with the joints of the open one. It may only be called once the jobs' part of
/// the program has come.
#[inline(never)]
pub(super) fn turn(work: &mut Work, leaf: Leaf, is_job: bool) -> Outcome {
    if is_job {
        turn_job(work, leaf)
    } else {
        turn_joint(work, leaf)
    }
}

fn turn_job(work: &mut Work, leaf: Leaf) -> Outcome {
    match leaf {
        Leaf::Add | Leaf::Duplicate(_) if !work.jobs.has_room() => return said(Notice::NoRoom),
        Leaf::Add => {
            let blank = work.blank_job();
            work.add_job(blank);
        }
        Leaf::Open(place) => {
            let lacks = work
                .jobs
                .get(place)
                .is_some_and(|job| work.lacks_tools_of(job));
            work.open_job(place);
            return opened(lacks);
        }
        Leaf::Duplicate(place) => {
            let resting = work.jobs.get(place).cloned();
            let mut copy = resting.unwrap_or_else(|| work.job_at_rest());
            copy.job.name = copied(&copy.job.name);
            // Nothing of it has been cut, neither joints nor sheets.
            let cut = fields::cutting::CUT.name();
            copy.job.making.cutting.set(cut, Entry::default());
            work.add_job(copy);
        }
        Leaf::Remove(place) => {
            let removed = work.remove_job(place);
            return removed.map_or_else(Outcome::default, |job| gone(&job.name));
        }
    }
    Some(Effect::Focus(Field::Job.id())).into()
}

fn turn_joint(work: &mut Work, leaf: Leaf) -> Outcome {
    match leaf {
        Leaf::Add | Leaf::Duplicate(_) if !work.job.joints.has_room() => return said(Notice::Full),
        Leaf::Add => {
            let blank = work.blank_joint();
            work.add_joint(blank);
        }
        Leaf::Open(place) => {
            let lacks = work
                .job
                .joints
                .get(place)
                .is_some_and(|joint| work.lacks_cutter_of(joint));
            work.open_joint(place);
            return opened(lacks);
        }
        Leaf::Duplicate(place) => {
            // A copy keeps the cutter of what it is a copy of.
            work.open_joint(place);
            let copy = JointForm {
                name: copied(&work.joint.name),
                from: Entry::default(),
                ..work.joint.clone()
            };
            work.add_joint(copy);
        }
        Leaf::Remove(place) => {
            let removed = work.remove_joint(place);
            return removed.map_or_else(Outcome::default, |joint| gone(&joint.name));
        }
    }
    Some(Effect::Focus(Field::Joint(JointField::Name).id())).into()
}

/// Another tool would be taken for one that is gone.
fn opened(lacks_tool: bool) -> Outcome {
    if lacks_tool {
        said(Notice::ToolGone)
    } else {
        Outcome::default()
    }
}

fn gone(name: &Entry) -> Outcome {
    said(Notice::Removed(name.text.clone()))
}
