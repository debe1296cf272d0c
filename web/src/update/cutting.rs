//! What happens at the saw: moves, the time they take, what is spoken and heard.

use super::saw;
use crate::effect::Effect;
use crate::model::Model;
use crate::msg::{Msg, SawMove, Way};
use crate::notice::Notice;
use crate::state::{Progress, Step};

/// Whoever takes longer over a pass was away.
const LONGEST_PASS_MS: f64 = 300_000.0;
/// Whoever takes less only leafs through.
const SHORTEST_PASS_MS: f64 = 3000.0;
/// How much of the pace the last pass says.
const NEWEST_SHARE: f64 = 0.25;

/// Does what `msg` says, which is about the saw. It and [`follow_plan`] may only be called once this part of
/// the program has come.
#[inline(never)]
pub(super) fn act(model: &mut Model, msg: &Msg) -> Vec<Effect> {
    match msg {
        Msg::Saw(movement) => model.move_at_saw(*movement),
        Msg::Way(way) => model.work_otherwise(*way),
        Msg::Heard(words) => model.heard(words),
        _ => model.speak().into_iter().collect(),
    }
}

/// Takes the cutting of the open joint along when its plan has become another.
#[inline(never)]
pub(super) fn follow_plan(model: &mut Model) {
    let Some(course) = model.answer.course(model.state.at_saw.order) else {
        return;
    };
    let mut at = model.state.progress().clone();
    at.joint = model.state.work.joint.id;
    let is_another = saw::follow(&mut at, &course);
    model.state.progress.set(at);
    if is_another {
        model.say(Notice::PlanChanged);
    }
}

impl Model {
    fn move_at_saw(&mut self, movement: SawMove) -> Vec<Effect> {
        // Whoever goes on has read it; it must not push what is pressed next off a small screen.
        self.notices
            .retain(|notice| *notice != Notice::ScreenMaySleep);
        let is_leaving = match movement {
            SawMove::Leave => true,
            SawMove::Next => self.state.progress().step == Step::Done,
            _ => false,
        };
        let before = self.state.progress().clone();
        let Some(after) = self.moved(movement) else {
            // Nothing can be cut, but one can always leave.
            return if is_leaving { self.leave() } else { Vec::new() };
        };
        self.note_pace(&before, &after, movement);
        self.state.progress.set(after);
        if is_leaving {
            return self.leave();
        }
        match movement {
            SawMove::Open => {
                self.state.at_saw.open = true;
                self.refresh();
            }
            SawMove::Pause(is_paused) => self.state.at_saw.paused = is_paused,
            // A mark in a list leaves one where one is.
            SawMove::Mark(..) => return Vec::new(),
            _ => {}
        }
        let mut effects = vec![Effect::ScrollToTop];
        if self.state.at_saw.speaks {
            effects.extend(self.speak());
        }
        effects
    }

    /// How far the cutting has come after a move; none where there is nothing to cut.
    fn moved(&self, movement: SawMove) -> Option<Progress> {
        let course = self.answer.course(self.state.at_saw.order)?;
        if course.legs() == 0 {
            return None;
        }
        let mut at = self.state.progress().clone();
        at.joint = self.state.work.joint.id;
        saw::make(&mut at, movement, &course);
        Some(at)
    }

    fn leave(&mut self) -> Vec<Effect> {
        let at_saw = &mut self.state.at_saw;
        if !at_saw.open {
            return Vec::new();
        }
        (at_saw.open, at_saw.paused) = (false, false);
        // The place that is shown again may need what the saw did not.
        self.refresh();
        vec![Effect::ScrollToTop, Effect::Hush]
    }

    /// A pass took from the move before it to this one, unless one was away between.
    fn note_pace(&mut self, before: &Progress, after: &Progress, movement: SawMove) {
        let was_pass = matches!(before.step, Step::Stop(_)) && movement == SawMove::Next;
        let took = self.passed_at.map(|then| self.now - then);
        let took = took.filter(|took| (SHORTEST_PASS_MS..=LONGEST_PASS_MS).contains(took));
        if let Some(took) = took.filter(|_| was_pass) {
            let pace = &mut self.state.at_saw.pace;
            let known = f64::from(*pace);
            let newest = if *pace == 0 { 1.0 } else { NEWEST_SHARE };
            *pace = (known + (took - known) * newest) as u32;
        }
        let goes_on = matches!(after.step, Step::Stop(_)) && movement == SawMove::Next;
        self.passed_at = goes_on.then_some(self.now);
    }

    fn work_otherwise(&mut self, way: Way) -> Vec<Effect> {
        let at_saw = &mut self.state.at_saw;
        match way {
            Way::Hand(hand) => at_saw.hand = hand,
            Way::Listens(listens) => at_saw.listens = listens,
            Way::Order(order) => {
                at_saw.order = order;
                self.begin_set_again();
            }
            Way::Speaks(speaks) => {
                at_saw.speaks = speaks;
                let spoken = if speaks {
                    self.speak()
                } else {
                    Some(Effect::Hush)
                };
                return spoken.into_iter().collect();
            }
        }
        Vec::new()
    }

    /// In another order, a stop has another number: the set-up is gone through again.
    fn begin_set_again(&mut self) {
        if let Some(mut at) = self.moved(SawMove::Jump(0, Step::SetUp)) {
            at.end = Default::default();
            self.state.progress.set(at);
        }
    }

    /// The setting that is due, as it is spoken.
    fn speak(&self) -> Option<Effect> {
        let at = self.state.progress();
        let Step::Stop(stop) = at.step else {
            return Some(Effect::Hush);
        };
        let course = self.answer.course(self.state.at_saw.order)?;
        let passes = course.passes(at.set, &course.load(at.set, at.end)?);
        let (set, due) = passes.get(stop)?;
        let board = course.is_merged().then_some(set.name.as_str());
        Some(Effect::Speak(crate::answer::spoken::setting(board, due)))
    }

    /// Moves as a spoken word says; of others nothing is kept.
    fn heard(&mut self, words: &str) -> Vec<Effect> {
        let at_saw = &self.state.at_saw;
        if !(at_saw.open && at_saw.listens) {
            return Vec::new();
        }
        let word = words.split_whitespace().next_back().unwrap_or_default();
        let word = word.trim_matches(|letter: char| !letter.is_ascii_alphabetic());
        match word.to_ascii_lowercase().as_str() {
            "resume" if at_saw.paused => self.move_at_saw(SawMove::Pause(false)),
            _ if at_saw.paused => Vec::new(),
            "next" => self.move_at_saw(SawMove::Next),
            "back" => self.move_at_saw(SawMove::Back),
            "again" | "repeat" => self.speak().into_iter().collect(),
            "pause" => self.move_at_saw(SawMove::Pause(true)),
            _ => Vec::new(),
        }
    }
}
