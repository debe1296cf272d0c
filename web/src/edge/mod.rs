//! Where the page meets the browser. Nothing beyond this module knows that there is one.

mod address;
mod listen;
mod outside;
mod store;
mod trouble;
mod wake;

pub(crate) use trouble::report_panic;

use yew::Callback;

use crate::effect::Effect;
use crate::keep::saved;
use crate::model::{Chunk, Model};
use crate::msg::{Edit, Msg};
use crate::notice::Notice;
use crate::state::State;
use crate::update::Found;
use address::Address;
use listen::Listeners;
use store::{Store, Trouble};
use wake::WakeLock;

/// The browser, as far as the page uses it.
pub(crate) struct Edge {
    emit: Callback<Msg>,
    store: Store,
    address: Address,
    wake: WakeLock,
    has_complained: bool,
    focus_next: Option<String>,
    _listeners: Listeners,
}

impl Edge {
    /// Takes up the browser; what happens in it is sent to `emit`.
    pub(crate) fn new(emit: Callback<Msg>) -> Self {
        let address = Address::default();
        let wake = WakeLock::new(emit.clone());
        Self {
            store: Store::open(&saved::save(&State::demo())),
            _listeners: Listeners::new(&emit, &address, &wake),
            address,
            wake,
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
        }
    }

    /// Does what is left to be done, then saves, and lets the browser follow the state.
    pub(crate) fn follow(&mut self, model: &Model, effects: Vec<Effect>) {
        for effect in effects {
            self.run(effect, &model.state);
        }
        let saved = self.store.save(&saved::save(&model.state));
        self.complain(saved);
        self.show(model);
    }

    /// Lets the browser follow a state that another tab has saved already.
    pub(crate) fn show(&mut self, model: &Model) {
        let state = &model.state;
        self.address.write_soon(state);
        self.wake.keep(state.at_saw.open);
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
            Effect::Copy(text) => outside::copy(text, self.emit.clone()),
            Effect::CopyLink => {
                self.address.write_now(state);
                outside::copy(address::whole(), self.emit.clone());
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
            }),
            Effect::DateTest => {
                let today = outside::today();
                self.emit.emit(Msg::Edit(Edit::KeepTest(today)));
            }
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
