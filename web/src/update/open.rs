//! Opening: at the start, from a link, from another tab, and from what was set aside.

use std::rc::Rc;

use notchwright_core::order::in_order;

use crate::effect::Effect;
use crate::keep::{Extent, Restored, Unreadable, link, saved};
use crate::model::{Aside, Model};
use crate::notice::Notice;
use crate::state::{Brought, Place, Progress, State};

/// What the page finds when it starts.
#[derive(Clone, Debug, Default)]
pub struct Found {
    /// The stored state, if there is one.
    pub stored: Option<String>,
    /// The fragment of the address.
    pub fragment: String,
    /// Whether the page itself wrote that fragment: then what is stored is at least as new.
    pub is_own: bool,
    /// Texts that were set aside, by key.
    pub asides: Vec<(String, String)>,
    /// The address of the page, without the job.
    pub home: String,
}

/// More texts than anybody will come back to; beyond, the oldest makes room.
const MOST_ASIDES: usize = 20;

impl Model {
    /// The model to begin with.
    #[must_use]
    pub fn start(found: Found) -> (Self, Vec<Effect>) {
        let asides = found
            .asides
            .into_iter()
            .map(|(key, text)| Aside::new(key, &text));
        let mut model = Self {
            state: State::demo(),
            home: found.home,
            asides: in_order(asides, |one, other| one.number().cmp(&other.number())),
            ..Self::default()
        };
        let mut effects = Vec::new();
        let stored = found
            .stored
            .map(|text| model.open_stored(&text, &mut effects));
        model.refresh();
        if !(found.is_own && stored == Some(true)) {
            effects.extend(model.open_link(&found.fragment));
        }
        effects.extend(model.fetch_parts());
        (model, effects)
    }

    /// Returns whether anything of it could be read.
    fn open_stored(&mut self, text: &str, effects: &mut Vec<Effect>) -> bool {
        let notice = match saved::restore(text) {
            Ok(Restored {
                state, is_whole, ..
            }) => {
                self.state = state;
                (!is_whole).then_some(Notice::StorePartly)
            }
            Err(_) => Some(Notice::StoreBroken),
        };
        let is_read = notice != Some(Notice::StoreBroken);
        if let Some(notice) = notice {
            self.set_aside(text, effects);
            self.say(notice);
        }
        is_read
    }

    /// Opens the job that a fragment carries, if it carries one.
    pub(super) fn open_link(&mut self, fragment: &str) -> Vec<Effect> {
        let mut effects = Vec::new();
        match link::read(fragment) {
            None => {}
            Some(Ok(restored)) => self.open_restored(restored, fragment, &mut effects),
            Some(Err(fault)) => {
                if fault != Unreadable::TooLarge {
                    self.set_aside(fragment, &mut effects);
                }
                self.say(Notice::LinkBroken(fault));
            }
        }
        effects
    }

    /// Everything that was typed, as a file: the form that is stored, which every later version reads.
    pub(super) fn save_all(&self) -> Effect {
        Effect::Download {
            name: "notchwright.json".to_owned(),
            text: saved::save(&self.state),
        }
    }

    /// The open job alone, as a file that can be opened beside other jobs.
    pub(super) fn save_job(&self) -> Effect {
        Effect::Download {
            name: self.file_name("job.json"),
            text: saved::save_job(&self.state),
        }
    }

    /// The same, handed to another program.
    pub(super) fn share_job(&self) -> Effect {
        Effect::Share {
            name: self.file_name("job.json"),
            text: saved::save_job(&self.state),
        }
    }

    /// A name for a file of the open job: letters that every system takes.
    pub(crate) fn file_name(&self, rest: &str) -> String {
        let name = self.state.work.job.name.text.to_ascii_lowercase();
        let words = name.split(|letter: char| !letter.is_ascii_alphanumeric());
        let words: Vec<_> = words.filter(|word| !word.is_empty()).take(6).collect();
        let name = if words.is_empty() {
            "notchwright".to_owned()
        } else {
            words.join("-")
        };
        format!("{name}-{rest}")
    }

    /// Opens what is in a file; where that is everything, what was here is kept aside.
    pub(super) fn open_file(&mut self, text: &str) -> Vec<Effect> {
        let mut effects = Vec::new();
        match saved::restore(text) {
            Err(fault) => self.say(Notice::FileBroken(fault)),
            Ok(Restored {
                state,
                is_whole,
                extent: Extent::Job,
            }) => {
                let notice = self.open_job_file(&state);
                self.say(if is_whole { notice } else { Notice::FilePartly });
            }
            Ok(Restored {
                state, is_whole, ..
            }) => {
                let is_new = state.work != self.state.work || state.progress != self.state.progress;
                if is_new {
                    let before = saved::save(&self.state);
                    self.replace(state);
                    self.set_aside(&before, &mut effects);
                }
                self.say(match (is_whole, is_new) {
                    (false, _) => Notice::FilePartly,
                    (true, true) => Notice::FileReplaced,
                    (true, false) => Notice::FileSame,
                });
            }
        }
        effects
    }

    /// Opens the job of a file; where that is here already it may have been cut further there.
    fn open_job_file(&mut self, file: &State) -> Notice {
        let notice = self.open_job(file.clone());
        let mut is_further = false;
        for (there, here) in file.work.joints().zip(self.state.work.joints()) {
            let there = file.progress.of(there.id);
            if there
                .done
                .is_more_than(&self.state.progress.of(here.id).done)
            {
                is_further = true;
                self.state.progress.set(Progress {
                    joint: here.id,
                    ..there.clone()
                });
            }
        }
        match notice {
            _ if is_further => Notice::FileFurther,
            Some(notice) => notice,
            None => Notice::FileSame,
        }
    }

    /// Opens the job that a link carries. In the place of the worked one it needs no word.
    fn open_restored(&mut self, restored: Restored, fragment: &str, effects: &mut Vec<Effect>) {
        let notice = self.open_job(restored.state);
        if let Some(notice) = notice.filter(|notice| *notice != Notice::FileReplaced) {
            self.say(notice);
        }
        if !restored.is_whole {
            self.set_aside(fragment, effects);
            self.say(Notice::LinkPartly);
        }
    }

    /// Opens a job beside those that are here; over nothing but the worked one it takes its place. Nothing is to be
    /// said where it is open already.
    fn open_job(&mut self, state: State) -> Option<Notice> {
        if self.state.work == State::demo().work {
            // A bookmark of the same work is older than what is here.
            let is_new = state.work != self.state.work;
            return is_new.then(|| {
                self.replace(state);
                Notice::FileReplaced
            });
        }
        let mut next = self.state.clone();
        let brought = next
            .work
            .bring(&state.work, &state.progress, &mut next.progress);
        match brought {
            Brought::Open => return None,
            Brought::NoRoom => return Some(Notice::NoRoom),
            Brought::Known | Brought::New => {}
        }
        next.at_saw.open = false;
        next.place = Place::Joint;
        let before = std::mem::replace(&mut self.state, next);
        self.history.added(&before);
        self.travelled();
        Some(match brought {
            Brought::New => Notice::JobAdded,
            _ => Notice::JobKnown,
        })
    }

    /// Opens what was set aside; what was here takes its place there.
    pub(super) fn open_aside(&mut self, key: &str) -> Vec<Effect> {
        let mut effects = Vec::new();
        let text = self.aside(key).map(|aside| Rc::clone(&aside.text));
        let restored = text.and_then(|text| saved::restore(&text).ok());
        if let Some(Restored { state, .. }) = restored {
            let before = saved::save(&self.state);
            self.replace(state);
            self.set_aside(&before, &mut effects);
            effects.extend(self.drop_aside(key));
        }
        effects
    }

    pub(super) fn save_aside(&self, key: &str) -> Vec<Effect> {
        let download = |aside: &Aside| Effect::Download {
            name: format!("notchwright-{}.txt", aside.number()),
            text: aside.text.to_string(),
        };
        self.aside(key).map(download).into_iter().collect()
    }

    pub(super) fn copy_aside(&self, key: &str) -> Vec<Effect> {
        let copy = |aside: &Aside| Effect::Copy(aside.text.to_string());
        self.aside(key).map(copy).into_iter().collect()
    }

    pub(super) fn drop_aside(&mut self, key: &str) -> Vec<Effect> {
        self.asides.retain(|aside| aside.key != key);
        let key = key.to_owned();
        vec![Effect::DropAside { key }]
    }

    fn aside(&self, key: &str) -> Option<&Aside> {
        self.asides.iter().find(|aside| aside.key == key)
    }

    /// Keeps a text under a key of its own, unless it is kept already.
    pub(super) fn set_aside(&mut self, text: &str, effects: &mut Vec<Effect>) {
        if self.asides.iter().any(|aside| &*aside.text == text) {
            return;
        }
        if let [oldest, ..] = self.asides.as_slice()
            && self.asides.len() >= MOST_ASIDES
        {
            let key = oldest.key.clone();
            effects.extend(self.drop_aside(&key));
        }
        let last = self.asides.iter().map(Aside::number).max().unwrap_or(0);
        let key = format!("{}{}", saved::ASIDE, last.saturating_add(1));
        self.asides.push(Aside::new(key.clone(), text));
        let text = text.to_owned();
        effects.push(Effect::KeepAside { key, text });
    }

    /// Earlier work that is here again need not be kept aside.
    pub(super) fn drop_what_is_here(&mut self) -> Vec<Effect> {
        let here = saved::save(&self.state);
        let known = self.asides.iter().find(|aside| *aside.text == here);
        match known.map(|aside| aside.key.clone()) {
            Some(key) => self.drop_aside(&key),
            None => Vec::new(),
        }
    }
}
