//! Whether the page is open in another tab of this browser: the later one asks, the earlier ones answer.
//!
//! Both by way of the store, whose changes every other tab is told of; nothing else works in a page opened
//! from a file.

use std::cell::RefCell;

use web_sys::{Storage, StorageEvent};

use crate::notice::Notice;

const HELLO: &str = "notchwright.hello";
const HERE: &str = "notchwright.here";

thread_local! {
    static OWN: RefCell<String> = const { RefCell::new(String::new()) };
}

fn storage() -> Option<Storage> {
    web_sys::window()?.local_storage().ok()?
}

/// A name that no other tab has.
pub(super) fn own_name() -> String {
    OWN.with_borrow_mut(|own| {
        if own.is_empty() {
            let number = (js_sys::Math::random() * 4_294_967_296.0) as u32;
            *own = number.to_string();
        }
        own.clone()
    })
}

/// Asks whether there is another tab.
pub(super) fn say_hello() {
    if let Some(storage) = storage() {
        // Where nothing is stored, tabs do not meet.
        let _ = storage.set_item(HELLO, &own_name());
    }
}

/// Answers a later tab; or says that an earlier one has answered.
pub(super) fn answer(key: &str, event: &StorageEvent) -> Option<Notice> {
    let name = event.new_value()?;
    match key {
        HELLO => {
            let _ = storage()?.set_item(HERE, &name);
            None
        }
        HERE if name == own_name() => Some(Notice::AnotherTab),
        _ => None,
    }
}
