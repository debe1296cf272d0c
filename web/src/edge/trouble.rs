//! What is left to do when the program itself has failed.

use std::panic::PanicHookInfo;

const STOPPED: &str = "Notchwright has stopped. Please load the page again: \
                       whatever you had typed is still stored on this device.";

/// Says so on the page and in the console. A dead page must not look alive.
pub(crate) fn report_panic(panic: &PanicHookInfo<'_>) {
    web_sys::console::error_1(&panic.to_string().into());
    let document = web_sys::window().and_then(|window| window.document());
    if let Some(app) = document.and_then(|document| document.get_element_by_id("app")) {
        app.set_text_content(Some(STOPPED));
    }
}
