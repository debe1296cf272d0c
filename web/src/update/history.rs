//! What undo goes back to, and redo forward again.

use crate::msg::Edit;
use crate::state::{Field, Progress, Progresses, State, Work};

/// States before and after the present one.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct History {
    past: Vec<Moment>,
    future: Vec<Moment>,
    run: Option<Run>,
}

/// Changes that follow one another and are one step.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Run {
    Typing(Field),
    OtherTab,
}

/// A state to come back to.
#[derive(Clone, Debug, PartialEq)]
struct Moment {
    state: State,
    scope: Scope,
}

/// How much of a state undo brings back.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Scope {
    /// What was typed and chosen; whoever looks at the shop goes on looking at it.
    Work,
    /// Everything: all of it was replaced.
    All,
}

/// More steps back than anybody remembers.
const MOST_MOMENTS: usize = 200;

impl History {
    /// Remembers `before`, the state that `edit` has just changed. A run of typing into one field is
    /// one step.
    pub(crate) fn edited(&mut self, before: &State, edit: &Edit) {
        let run = match edit {
            Edit::Type(field, _) => Some(Run::Typing(*field)),
            _ => None,
        };
        self.changed(before, Scope::Work, run);
    }

    /// The state before the run of typing that `edit` goes on with.
    pub(crate) fn began(&self, edit: &Edit) -> Option<&State> {
        let goes_on = matches!(edit, Edit::Type(field, _) if self.run == Some(Run::Typing(*field)));
        self.past
            .last()
            .filter(|_| goes_on)
            .map(|moment| &moment.state)
    }

    /// Remembers `before`, the state that another tab has just changed.
    pub(crate) fn followed(&mut self, before: &State) {
        self.changed(before, Scope::Work, Some(Run::OtherTab));
    }

    /// Remembers `before`, the state to which a job from elsewhere has just been added.
    pub(crate) fn added(&mut self, before: &State) {
        self.changed(before, Scope::Work, None);
    }

    /// Remembers `before`, the state that another one has just taken the place of.
    pub(crate) fn replaced(&mut self, before: &State) {
        self.changed(before, Scope::All, None);
    }

    fn changed(&mut self, before: &State, scope: Scope, run: Option<Run>) {
        if run.is_none() || run != self.run {
            self.remember(before, scope);
        }
        self.future.clear();
        self.run = run;
    }

    fn remember(&mut self, state: &State, scope: Scope) {
        if self.past.len() >= MOST_MOMENTS {
            self.past.remove(0);
        }
        let state = state.clone();
        self.past.push(Moment { state, scope });
    }

    /// Goes one step back from `now`.
    pub(crate) fn undo(&mut self, now: &mut State) -> Option<Scope> {
        self.run = None;
        step(&mut self.past, &mut self.future, now)
    }

    /// Goes one step forward from `now`.
    pub(crate) fn redo(&mut self, now: &mut State) -> Option<Scope> {
        self.run = None;
        step(&mut self.future, &mut self.past, now)
    }

    pub(crate) fn can_undo(&self) -> bool {
        !self.past.is_empty()
    }

    pub(crate) fn can_redo(&self) -> bool {
        !self.future.is_empty()
    }
}

fn step(from: &mut Vec<Moment>, to: &mut Vec<Moment>, now: &mut State) -> Option<Scope> {
    let Moment { state, scope } = from.pop()?;
    let left = match scope {
        Scope::All => std::mem::replace(now, state),
        Scope::Work => {
            let left = now.clone();
            now.work = state.work;
            come_back(now, &left.work, &state.progress);
            left
        }
    };
    to.push(Moment { state: left, scope });
    Some(scope)
}

/// A joint that is here again has been cut as far as when it went: another may have had its number meanwhile.
fn come_back(now: &mut State, left: &Work, then: &Progresses) {
    for joint in now.work.joints_beside(left) {
        now.progress.set(Progress {
            joint,
            ..then.of(joint).clone()
        });
    }
}
