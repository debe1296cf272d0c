//! Where the page meets the browser. Nothing beyond this module knows that there is one.

mod address;
mod gadgets;
mod listen;
mod outside;
mod searcher;
mod store;
mod tabs;
mod trouble;
mod wake;

pub(crate) use outside::today;
pub(crate) use searcher::write as write_reached;
pub(crate) use trouble::report_panic;

use yew::Callback;

use crate::effect::Effect;
use crate::keep::{link, saved};
use crate::model::{Chunk, Model, Part};
use crate::msg::{Edit, Msg};
use crate::notice::Notice;
use crate::state::State;
use crate::update::Found;
use address::Address;
use gadgets::Voice;
use listen::Listeners;
use searcher::Searcher;
use store::{Store, Trouble};
use wake::WakeLock;

/// The browser, as far as the page uses it.
pub(crate) struct Edge {
    emit: Callback<Msg>,
    store: Store,
    address: Address,
    wake: WakeLock,
    voice: Voice,
    searcher: Searcher,
    has_complained: bool,
    focus_next: Option<String>,
    _listeners: Listeners,
}

impl Edge {
    /// Takes up the browser; what happens in it is sent to `emit`.
    pub(crate) fn new(emit: Callback<Msg>) -> Self {
        let address = Address::default();
        let wake = WakeLock::new(emit.clone());
        tabs::say_hello();
        Self {
            store: Store::open(&saved::save(&State::demo())),
            _listeners: Listeners::new(&emit, &address, &wake),
            address,
            wake,
            voice: Voice::new(emit.clone()),
            searcher: Searcher::default(),
            emit,
            has_complained: false,
            focus_next: None,
        }
    }

    /// What the page finds when it starts.
    pub(crate) fn found(&self) -> Found {
        Found {
            stored: self.store.state(),
            fragment: address::fragment(),
            is_own: address::is_own(),
            asides: self.store.asides(),
            home: address::home(),
        }
    }

    /// Does what is left to be done, then saves, and lets the browser follow the state.
    pub(crate) fn follow(&mut self, model: &Model, effects: Vec<Effect>) {
        for effect in effects {
            self.run(effect, &model.state);
        }
        let text = saved::save(&model.state);
        if let Some(theirs) = self.store.overtaken_by(&text) {
            self.emit.emit(Msg::Overtaken(theirs));
        }
        let saved = self.store.save(&text);
        self.complain(saved);
        self.show(model);
    }

    /// Does what is left to be done, and lets the browser follow a state that another tab has saved already.
    pub(crate) fn catch_up(&mut self, model: &Model, effects: Vec<Effect>) {
        for effect in effects {
            self.run(effect, &model.state);
        }
        self.store.catch_up();
        self.show(model);
    }

    fn show(&mut self, model: &Model) {
        let state = &model.state;
        let at_saw = &state.at_saw;
        self.wake.keep(at_saw.open && !at_saw.paused);
        if model.parts.of(Chunk::Jobs) == Part::Here {
            self.address.write_soon(state);
            gadgets::listen(&self.voice, at_saw.open && at_saw.listens);
        }
        outside::set_theme(state.theme);
        outside::set_title(state);
    }

    /// Does what had to wait until the page showed the state.
    pub(crate) fn rendered(&mut self) {
        if let Some(id) = self.focus_next.take() {
            outside::focus(&id);
        }
    }

    fn run(&mut self, effect: Effect, state: &State) {
        match effect {
            Effect::Focus(id) => self.focus_next = Some(id),
            Effect::ScrollToTop => outside::scroll_to_top(),
            Effect::Copy(text) => outside::copy(text, Notice::Copied, self.emit.clone()),
            Effect::CopyLink => {
                self.address.write_now(state);
                let whole = address::whole();
                let copied = if whole.len() > link::USUAL_LONGEST {
                    Notice::LinkLong
                } else {
                    Notice::Copied
                };
                outside::copy(whole, copied, self.emit.clone());
            }
            Effect::Download { name, text } => outside::download(&name, &text),
            Effect::KeepAside { key, text } => {
                let kept = self.store.keep_aside(&key, &text);
                self.complain(kept);
            }
            Effect::DropAside { key } => self.store.drop_aside(&key),
            Effect::Fetch(chunk) => outside::tell(match chunk {
                Chunk::Sled => "notchwright:need-sled",
                Chunk::Dovetail => "notchwright:need-dovetail",
                Chunk::Shop => "notchwright:need-shop",
                Chunk::Parts => "notchwright:need-parts",
                Chunk::Jobs => "notchwright:need-jobs",
            }),
            Effect::DateTest => {
                let today = outside::today();
                self.emit.emit(Msg::Edit(Edit::KeepTest(today)));
            }
            Effect::AskWhatCan => self.emit.emit(Msg::Can(gadgets::can())),
            Effect::Speak(words) => gadgets::speak(&words),
            Effect::Hush => gadgets::hush(),
            Effect::Share { name, text } => {
                self.address.write_now(state);
                gadgets::share(&name, &text);
            }
            Effect::Persist => gadgets::persist(self.emit.clone()),
            Effect::Search(asked) => searcher::ask(&mut self.searcher, &self.emit, state, &asked),
            Effect::Print => outside::print(),
            Effect::ReadFile(file) => outside::read_file(&file, self.emit.clone()),
            Effect::UseUpdate => outside::tell("notchwright:use-update"),
        }
    }

    /// Says once that nothing is stored; the page works on.
    fn complain(&mut self, stored: Result<(), Trouble>) {
        let Err(trouble) = stored else { return };
        if !std::mem::replace(&mut self.has_complained, true) {
            self.emit.emit(Msg::Say(match trouble {
                Trouble::Blocked => Notice::StoreBlocked,
                Trouble::Full => Notice::StoreFull,
            }));
        }
    }
}
