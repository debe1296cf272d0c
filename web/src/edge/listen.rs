//! What the browser tells the page.

use gloo_events::EventListener;
use wasm_bindgen::JsCast;
use web_sys::{Event, EventTarget, StorageEvent, VisibilityState};
use yew::Callback;

use super::address::{self, Address};
use super::tabs;
use super::wake::WakeLock;
use crate::keep::saved;
use crate::model::Chunk;
use crate::msg::Msg;
use crate::notice::Notice;

/// Listeners on the window and the document; they stop listening when this is dropped.
pub(super) struct Listeners {
    _kept: Vec<EventListener>,
}

impl Listeners {
    pub(super) fn new(emit: &Callback<Msg>, address: &Address, wake: &WakeLock) -> Self {
        let Some(window) = web_sys::window() else {
            return Self { _kept: Vec::new() };
        };
        let mut kept = vec![
            say(&window, "notchwright:update", Notice::UpdateWaiting, emit),
            say(
                &window,
                "notchwright:offline-ready",
                Notice::OfflineReady,
                emit,
            ),
            on(&window, "hashchange", emit, |_| {
                Some(Msg::OpenLink(address::fragment()))
            }),
            on(&window, "storage", emit, other_tab),
            on(&window, "beforeprint", emit, |_| Some(Msg::Paper(true))),
            on(&window, "afterprint", emit, |_| Some(Msg::Paper(false))),
            hold(&window, "pagehide", address, true),
            hold(&window, "pageshow", address, false),
        ];
        for (came, failed, chunk) in PARTS {
            kept.push(on(&window, came, emit, move |_| Some(Msg::Came(chunk))));
            kept.push(on(&window, failed, emit, move |_| {
                Some(Msg::DidNotCome(chunk))
            }));
        }
        if let Some(document) = window.document() {
            kept.push(flush(&document, "visibilitychange", address));
            let (wake, seen) = (wake.clone(), document.clone());
            kept.push(EventListener::new(
                &document,
                "visibilitychange",
                move |_| {
                    if seen.visibility_state() == VisibilityState::Visible {
                        wake.renew();
                    }
                },
            ));
        }
        Self { _kept: kept }
    }
}

/// What the page is told of parts of the program that come later.
const PARTS: [(&str, &str, Chunk); 5] = [
    (
        "notchwright:jobs-came",
        "notchwright:jobs-failed",
        Chunk::Jobs,
    ),
    (
        "notchwright:sled-came",
        "notchwright:sled-failed",
        Chunk::Sled,
    ),
    (
        "notchwright:dovetail-came",
        "notchwright:dovetail-failed",
        Chunk::Dovetail,
    ),
    (
        "notchwright:shop-came",
        "notchwright:shop-failed",
        Chunk::Shop,
    ),
    (
        "notchwright:parts-came",
        "notchwright:parts-failed",
        Chunk::Parts,
    ),
];

fn on(
    target: &EventTarget,
    name: &'static str,
    emit: &Callback<Msg>,
    read: impl Fn(&Event) -> Option<Msg> + 'static,
) -> EventListener {
    let emit = emit.clone();
    EventListener::new(target, name, move |event| {
        if let Some(msg) = read(event) {
            emit.emit(msg);
        }
    })
}

fn say(
    target: &EventTarget,
    name: &'static str,
    notice: Notice,
    emit: &Callback<Msg>,
) -> EventListener {
    on(target, name, emit, move |_| Some(Msg::Say(notice.clone())))
}

fn flush(target: &EventTarget, name: &'static str, address: &Address) -> EventListener {
    let address = address.clone();
    EventListener::new(target, name, move |_| address.flush())
}

fn hold(
    target: &EventTarget,
    name: &'static str,
    address: &Address,
    is_held: bool,
) -> EventListener {
    let address = address.clone();
    EventListener::new(target, name, move |_| address.hold(is_held))
}

/// The browser tells of changes that other tabs made, never of one's own.
fn other_tab(event: &Event) -> Option<Msg> {
    let event = event.dyn_ref::<StorageEvent>()?;
    if let Some(notice) = event.key().and_then(|key| tabs::answer(&key, event)) {
        return Some(Msg::Say(notice));
    }
    let is_state = event.key().is_some_and(|key| key == saved::KEY);
    let text = event.new_value().filter(|_| is_state)?;
    Some(Msg::OtherTab(text))
}
