//! What each message does to the model. It knows no framework and no browser.

mod cutting;
mod edit;
pub(crate) mod history;
mod jobs;
mod making;
mod open;
mod saw;
mod tabs;
#[cfg(test)]
mod tests;

pub use open::Found;

use crate::answer::Answer;
use crate::effect::Effect;
use crate::export;
use crate::keep::{Unreadable, saved};
use crate::model::{Chunk, Model, Part};
use crate::msg::{Edit, HandOver, Look, Msg, SawMove};
use crate::notice::Notice;
use crate::state::{Field, JointKind, PartsTool, Place, State, Tool};
use history::Scope;

impl Model {
    /// Makes the change that `msg` asks for, works out what follows from it, and says what is left
    /// to be done outside.
    pub fn update(&mut self, msg: Msg) -> Vec<Effect> {
        let mut effects = self.handle(msg);
        effects.extend(self.fetch_parts());
        effects.extend(self.search_on());
        effects
    }

    fn handle(&mut self, msg: Msg) -> Vec<Effect> {
        match msg {
            Msg::Edit(edit) => self.edit(&edit),
            Msg::Saw(_) | Msg::Way(_) | Msg::Heard(_) | Msg::Speak => self.at_saw(&msg),
            Msg::Can(can) => {
                self.can = can;
                Vec::new()
            }
            Msg::Undo => self.undo(),
            Msg::Redo => self.redo(),
            Msg::Go(place) => self.go(place),
            Msg::Look(look) => {
                self.look(look);
                Vec::new()
            }
            Msg::Came(chunk) => self.came(chunk),
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
            Msg::Export(what) if self.parts.of(Chunk::Jobs) == Part::Here => {
                export::file(self, what).into_iter().collect()
            }
            Msg::Export(_) => Vec::new(),
            Msg::Search(search) => {
                if self.shows_sheets() {
                    making::sheet::act(self, search);
                } else {
                    self.searching.due = None;
                }
                Vec::new()
            }
            Msg::Print => vec![Effect::Print],
            Msg::SaveAll => vec![self.save_all()],
            Msg::SaveJob => vec![self.save_job()],
            Msg::Persist => vec![Effect::Persist],
            Msg::ShareJob => vec![self.share_job()],
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
            Msg::Overtaken(text) => self.keep_overtaken(&text),
            Msg::CopyLink => vec![Effect::CopyLink],
            Msg::CopyParts if self.parts.of(Chunk::Parts) == Part::Here => {
                vec![Effect::Copy(making::table(
                    &self.state.work.job.making,
                    self.state.units,
                ))]
            }
            Msg::CopyParts => Vec::new(),
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

    /// Whether the layout of sheets is open, and can be worked out.
    fn shows_sheets(&self) -> bool {
        let State {
            place, parts_tool, ..
        } = self.state;
        let is_open = place == Place::Parts && parts_tool == PartsTool::Sheet;
        is_open && !self.state.at_saw.open && self.parts.of(Chunk::Parts) == Part::Here
    }

    /// Lets the search for a layout go on while it is shown and not done.
    fn search_on(&mut self) -> Option<Effect> {
        let asked = self
            .shows_sheets()
            .then(|| making::sheet::goes_on(self))
            .flatten()?;
        Some(Effect::Search(asked))
    }

    fn came(&mut self, chunk: Chunk) -> Vec<Effect> {
        self.parts.set(chunk, Part::Here);
        self.refresh();
        if chunk != Chunk::Jobs {
            return Vec::new();
        }
        let mut effects = vec![Effect::AskWhatCan];
        if std::mem::take(&mut self.is_opening) {
            effects.extend(self.at_saw(&Msg::Saw(SawMove::Open)));
        }
        effects
    }

    /// Most of what is done at the saw is in a part that may not have come: until then one can only wait for
    /// it there, or leave.
    fn at_saw(&mut self, msg: &Msg) -> Vec<Effect> {
        if self.parts.of(Chunk::Jobs) == Part::Here {
            return cutting::act(self, msg);
        }
        match msg {
            Msg::Saw(SawMove::Open) if self.answer.cut().is_some() => {
                (self.state.at_saw.open, self.is_opening) = (true, true);
                self.refresh();
            }
            Msg::Saw(SawMove::Leave) => {
                (self.state.at_saw.open, self.is_opening) = (false, false);
                self.refresh();
            }
            _ => {}
        }
        Vec::new()
    }

    fn edit(&mut self, edit: &Edit) -> Vec<Effect> {
        // What turns over jobs is in a part that may not have come; only there can it be asked for.
        let is_turned = matches!(edit, Edit::Job(_) | Edit::JointOf(_));
        if is_turned && self.parts.of(Chunk::Jobs) != Part::Here {
            return Vec::new();
        }
        let needed: &[Chunk] = match edit {
            Edit::Making(_) | Edit::HandOver(_) => &[Chunk::Parts],
            Edit::SledParts => &[Chunk::Sled, Chunk::Parts],
            _ => &[],
        };
        if needed
            .iter()
            .any(|chunk| self.parts.of(*chunk) != Part::Here)
        {
            return Vec::new();
        }
        let before = self.state.clone();
        let outcome = edit::apply(&mut self.state.work, edit, self.state.units);
        if let Edit::Type(Field::Making(spot), _) = edit
            && let Some(began) = self.history.began(edit)
        {
            let making = &mut self.state.work.job.making;
            making.settle_first(*spot, &began.work.job.making);
        }
        if self.state.work == before.work {
            let refusal = outcome.notice.filter(Notice::is_refusal);
            let is_there = matches!(refusal, Some(Notice::Unchanged(_)));
            refusal.into_iter().for_each(|notice| self.say(notice));
            return match edit {
                Edit::HandOver(to) if is_there => self.go_on(*to),
                _ => Vec::new(),
            };
        }
        if is_turned || matches!(edit, Edit::HandOver(HandOver::Joint(_))) {
            // A new joint may have the number of one that was removed.
            for joint in self.state.work.joints_beside(&before.work) {
                self.state.progress.forget(joint);
            }
        }
        // Their undo would now undo something else than they say.
        self.notices.retain(|notice| !notice.can_undo());
        self.history.edited(&before, edit);
        self.refresh();
        outcome
            .notice
            .into_iter()
            .for_each(|notice| self.say(notice));
        let shown = match edit {
            Edit::HandOver(to) => self.go_on(*to),
            _ => Vec::new(),
        };
        outcome.effect.into_iter().chain(shown).collect()
    }

    /// Shows where the drawers went.
    fn go_on(&mut self, to: HandOver) -> Vec<Effect> {
        match to {
            HandOver::Joint(_) => return self.go(Place::Joint),
            HandOver::Parts => self.look(Look::PartsTool(PartsTool::Parts)),
            HandOver::Sheet => self.look(Look::PartsTool(PartsTool::Sheet)),
        }
        vec![Effect::ScrollToTop]
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
            Look::PartsTool(tool) => self.state.parts_tool = tool,
            Look::Pushed(pushed) => sled.pushed = pushed,
            Look::Cut(step) => sled.step = step,
            Look::Prints(prints) => sled.prints = prints,
            Look::Paper(paper) => sled.paper = paper,
            Look::Templates(templates) => self.state.templates = templates,
        }
    }

    /// The parts of the program that what is shown needs beyond what a first visit waits for.
    pub fn needed(&self) -> impl Iterator<Item = Chunk> + use<> {
        let is_slanted = self.state.work.joint.kind != JointKind::Box;
        let place = match self.state.place {
            _ if self.state.at_saw.open => Some(Chunk::Jobs),
            Place::Joint => None,
            Place::Sled => Some(Chunk::Sled),
            Place::Parts => Some(Chunk::Parts),
            Place::Jobs => Some(Chunk::Jobs),
            Place::Shop => Some(Chunk::Shop),
        };
        // These say nothing of the joint's cutting.
        let asks_joint = !matches!(place, Some(Chunk::Sled | Chunk::Parts | Chunk::Shop));
        let joint = (is_slanted && asks_joint).then_some(Chunk::Dovetail);
        place.into_iter().chain(joint)
    }

    /// Fetches what is needed, and once that is under way what paper needs: nobody announces a print.
    pub(crate) fn fetch_parts(&mut self) -> Vec<Effect> {
        let mut effects = Vec::new();
        // The sled's own parts go there.
        let is_base = self.state.place == Place::Sled && self.state.sled.tool == Tool::Base;
        let beside = is_base.then_some(Chunk::Parts);
        for chunk in self.needed().chain(beside).chain([Chunk::Jobs]) {
            if self.parts.of(chunk) == Part::Away {
                self.parts.set(chunk, Part::Asked);
                effects.push(Effect::Fetch(chunk));
            }
        }
        effects
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
        for chunk in self.needed() {
            if self.parts.of(chunk) == Part::Here {
                self.answer.add(chunk, &self.state.work);
            }
        }
        self.can_undo = self.history.can_undo();
        self.can_redo = self.history.can_redo();
        if self.state.at_saw.open && self.parts.of(Chunk::Jobs) == Part::Here && !self.is_opening {
            cutting::follow_plan(self);
        }
    }

    pub(crate) fn say(&mut self, notice: Notice) {
        if !self.notices.contains(&notice) {
            self.notices.push(notice);
        }
    }
}
