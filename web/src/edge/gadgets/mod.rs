//! What only some devices can do: speak, listen, share. It comes with the jobs' part of the program, and only
//! the functions here may be called, once it has come.

mod share;
mod voice;

use yew::Callback;

use crate::model::Can;
use crate::msg::Msg;
pub(super) use voice::Voice;

/// What this device can do.
#[inline(never)]
pub(super) fn can() -> Can {
    Can {
        speak: voice::can_speak(),
        listen: voice::can_listen(),
        share: share::can_share(),
    }
}

/// Says this in place of whatever is being said.
#[inline(never)]
pub(super) fn speak(words: &str) {
    voice::speak(words);
}

/// Says nothing more.
#[inline(never)]
pub(super) fn hush() {
    voice::hush();
}

/// Listens from now on, or no longer.
#[inline(never)]
pub(super) fn listen(voice: &Voice, is_wanted: bool) {
    voice.listen(is_wanted);
}

/// Opens the share sheet with a file where it takes one, and otherwise with the address.
#[inline(never)]
pub(super) fn share(name: &str, text: &str) {
    share::share(name, text);
}

/// Asks the browser to keep what is stored, and says what it answered.
#[inline(never)]
pub(super) fn persist(emit: Callback<Msg>) {
    share::persist(emit);
}
