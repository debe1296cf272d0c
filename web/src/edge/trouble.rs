//! What is left to do when the program itself has failed.

use std::panic::PanicHookInfo;

/// Says why in the console. The trap that follows is seen by the page's script, which shows that the program
/// has stopped and offers what is stored.
pub(crate) fn report_panic(panic: &PanicHookInfo<'_>) {
    web_sys::console::error_1(&panic.to_string().into());
}
