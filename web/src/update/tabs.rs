//! Several tabs of one browser with the same store.

use crate::effect::Effect;
use crate::keep::{Restored, saved};
use crate::model::Model;
use crate::notice::Notice;
use crate::state::Progress;

impl Model {
    /// Takes over what another tab stored, so that neither overwrites the other's work unseen. Each tab goes
    /// on showing its own joint, if it is still there.
    pub(super) fn follow_other_tab(&mut self, text: &str) -> Vec<Effect> {
        // What is not all understood would lose something: it is kept aside before it is overwritten.
        let Ok(Restored {
            state: theirs,
            is_whole: true,
            ..
        }) = saved::restore(text)
        else {
            return Vec::new();
        };
        let own = self.state.progress().clone();
        let joint = self.state.work.joint.id;
        let before = self.state.clone();
        self.state.progress = theirs.progress;
        self.state.work = theirs.work;
        self.state.work.open_joint_with(joint);
        if before.at_saw.open && own.joint == joint {
            // One's own place, but whatever is cut in either.
            let done = self.state.progress.of(joint).done.clone();
            self.state.progress.set(Progress { done, ..own });
        }
        if self.state.work != before.work {
            self.history.followed(&before);
            self.refresh();
        }
        Vec::new()
    }

    /// Keeps what another tab had stored while this one was not told.
    pub(super) fn keep_overtaken(&mut self, text: &str) -> Vec<Effect> {
        let mut effects = Vec::new();
        self.set_aside(text, &mut effects);
        self.say(Notice::Overtaken);
        effects
    }
}
