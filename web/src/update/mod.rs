//! What each message does to the model. It knows no framework and no browser.

mod edit;
pub(crate) mod history;
mod open;
mod saw;
#[cfg(test)]
mod tests;

pub use open::Found;

use crate::answer::Answer;
use crate::effect::Effect;
use crate::keep::{Unreadable, saved};
use crate::model::{Chunk, Model, Part};
use crate::msg::{Edit, Look, Msg, SawMove};
use crate::notice::Notice;
use crate::state::{JointKind, Place, State};
use history::Scope;

impl Model {
    /// Makes the change that `msg` asks for, works out what follows from it, and says what is left
    /// to be done outside.
    pub fn update(&mut self, msg: Msg) -> Vec<Effect> {
        let mut effects = self.handle(msg);
        effects.extend(self.fetch_part());
        effects
    }

    fn handle(&mut self, msg: Msg) -> Vec<Effect> {
        match msg {
            Msg::Edit(edit) => self.edit(&edit),
            Msg::Saw(movement) => self.move_at_saw(movement),
            Msg::Undo => self.undo(),
            Msg::Redo => self.redo(),
            Msg::Go(place) => self.go(place),
            Msg::Look(look) => {
                self.look(look);
                Vec::new()
            }
            Msg::Came(chunk) => {
                self.parts.set(chunk, Part::Here);
                self.refresh();
                Vec::new()
            }
            Msg::DidNotCome(chunk) => {
                self.parts.set(chunk, Part::Failed);
                Vec::new()
            }
            Msg::AskAgain(chunk) => {
                if self.parts.of(chunk) == Part::Failed {
                    self.parts.set(chunk, Part::Away);
                }
                Vec::new()
            }
            Msg::KeepTest => vec![Effect::DateTest],
            Msg::SaveFile { name, text } => {
                let name = name.to_owned();
                vec![Effect::Download { name, text }]
            }
            Msg::Print => vec![Effect::Print],
            Msg::SaveAll => vec![self.save_all()],
            Msg::ReadFile(file) => vec![Effect::ReadFile(file)],
            Msg::OpenFile(text) => self.open_file(&text),
            Msg::FileTooLarge => {
                self.say(Notice::FileBroken(Unreadable::TooLarge));
                Vec::new()
            }
            Msg::Units(units) => {
                self.state.units = units;
                Vec::new()
            }
            Msg::Theme(theme) => {
                self.state.theme = theme;
                Vec::new()
            }
            Msg::OpenLink(hash) => self.open_link(&hash),
            Msg::OtherTab(text) => self.follow_other_tab(&text),
            Msg::CopyLink => vec![Effect::CopyLink],
            Msg::OpenAside(key) => self.open_aside(&key),
            Msg::SaveAside(key) => self.save_aside(&key),
            Msg::CopyAside(key) => self.copy_aside(&key),
            Msg::DropAside(key) => self.drop_aside(&key),
            Msg::Paper(on_paper) => {
                self.on_paper = on_paper;
                Vec::new()
            }
            Msg::Say(notice) => {
                self.say(notice);
                Vec::new()
            }
            Msg::Dismiss(notice) => {
                self.notices.retain(|other| *other != notice);
                Vec::new()
            }
            Msg::UseUpdate => vec![Effect::UseUpdate],
        }
    }

    fn edit(&mut self, edit: &Edit) -> Vec<Effect> {
        let before = self.state.clone();
        let outcome = edit::apply(&mut self.state.work, edit, self.state.units);
        if self.state.work == before.work {
            return Vec::new();
        }
        // Their undo would now undo something else than they say.
        self.notices.retain(|notice| !notice.can_undo());
        self.history.edited(&before, edit);
        self.refresh();
        outcome
            .notice
            .into_iter()
            .for_each(|notice| self.say(notice));
        outcome.effect.into_iter().collect()
    }

    fn undo(&mut self) -> Vec<Effect> {
        let scope = self.history.undo(&mut self.state);
        self.travelled();
        match scope {
            Some(Scope::All) => self.drop_what_is_here(),
            _ => Vec::new(),
        }
    }

    fn redo(&mut self) -> Vec<Effect> {
        let before = self.state.clone();
        let mut effects = Vec::new();
        let scope = self.history.redo(&mut self.state);
        self.travelled();
        if scope == Some(Scope::All) {
            self.set_aside(&saved::save(&before), &mut effects);
        }
        effects
    }

    fn travelled(&mut self) {
        self.notices.retain(|notice| !notice.can_undo());
        self.refresh();
    }

    fn go(&mut self, place: Place) -> Vec<Effect> {
        if self.state.place == place {
            return Vec::new();
        }
        self.state.place = place;
        self.refresh();
        vec![Effect::ScrollToTop]
    }

    fn look(&mut self, look: Look) {
        let sled = &mut self.state.sled;
        match look {
            Look::Tool(tool) => sled.tool = tool,
            Look::Pushed(pushed) => sled.pushed = pushed,
            Look::Cut(step) => sled.step = step,
            Look::Prints(prints) => sled.prints = prints,
            Look::Paper(paper) => sled.paper = paper,
        }
    }

    /// The part of the program that what is shown needs beyond what a first visit waits for.
    #[must_use]
    pub fn needed(&self) -> Option<Chunk> {
        match self.state.place {
            Place::Sled if !self.state.at_saw.open => Some(Chunk::Sled),
            Place::Shop if !self.state.at_saw.open => Some(Chunk::Shop),
            _ => (self.state.work.joint.kind != JointKind::Box).then_some(Chunk::Dovetail),
        }
    }

    pub(crate) fn fetch_part(&mut self) -> Option<Effect> {
        let chunk = self.needed()?;
        (self.parts.of(chunk) == Part::Away).then(|| {
            self.parts.set(chunk, Part::Asked);
            Effect::Fetch(chunk)
        })
    }

    fn move_at_saw(&mut self, movement: SawMove) -> Vec<Effect> {
        let sets = match self.answer.cut() {
            Some(cut) => cut.sets,
            // Nothing can be cut, but one can always leave.
            None if movement == SawMove::Leave => &[],
            None => return Vec::new(),
        };
        let was_open = self.state.at_saw.open;
        saw::make(&mut self.state.at_saw, movement, sets);
        // What is shown now may need what the place before did not.
        if self.state.at_saw.open != was_open {
            self.refresh();
        }
        vec![Effect::ScrollToTop]
    }

    /// Puts `state` in the place of the present one, which undo brings back.
    pub(crate) fn replace(&mut self, state: State) {
        let before = std::mem::replace(&mut self.state, state);
        self.history.replaced(&before);
        self.notices.retain(|notice| !notice.can_undo());
        self.refresh();
    }

    /// Works out what follows from the state.
    pub(crate) fn refresh(&mut self) {
        self.answer = Answer::new(&self.state.work, &self.answer);
        if let Some(chunk) = self.needed()
            && self.parts.of(chunk) == Part::Here
        {
            self.answer.add(chunk, &self.state.work);
        }
        self.can_undo = self.history.can_undo();
        self.can_redo = self.history.can_redo();
        let sets = self.answer.cut().map(|cut| cut.sets);
        if sets.is_some_and(|sets| saw::follow(&mut self.state.at_saw, sets)) {
            self.say(Notice::PlanChanged);
        }
    }

    pub(crate) fn say(&mut self, notice: Notice) {
        if !self.notices.contains(&notice) {
            self.notices.push(notice);
        }
    }
}
