//! Small things asked of the browser. Where it refuses, the page works on.

use gloo_timers::callback::Timeout;
use js_sys::{Array, Date, Reflect};
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::{JsFuture, spawn_local};
use web_sys::{Blob, Document, Element, Event, File, HtmlAnchorElement, HtmlElement, Url};
use yew::Callback;

use crate::msg::Msg;
use crate::notice::Notice;
use crate::state::{State, Theme};

fn document() -> Option<Document> {
    web_sys::window()?.document()
}

/// Sends an event without details to whoever listens on the window.
pub(super) fn tell(name: &str) {
    if let (Some(window), Ok(event)) = (web_sys::window(), Event::new(name)) {
        let _ = window.dispatch_event(&event);
    }
}

/// Sends a message once the page has been shown and whoever touches it has been heard.
pub(super) fn soon(emit: Callback<Msg>, msg: Msg) {
    Timeout::new(0, move || emit.emit(msg)).forget();
}

/// Where the program for another thread is in a page that is one file.
pub(super) fn own_searcher() -> Option<String> {
    document()?
        .document_element()?
        .get_attribute("data-searcher")
}

/// The day it is here, as year-month-day.
pub(crate) fn today() -> String {
    let now = Date::new_0();
    let (month, day) = (now.get_month() + 1, now.get_date());
    format!("{}-{month:02}-{day:02}", now.get_full_year())
}

/// Asks the browser to print the page.
pub(super) fn print() {
    if let Some(window) = web_sys::window() {
        // Where there is no printer the browser says so itself.
        let _ = window.print();
    }
}

/// Moves the keyboard's focus.
pub(super) fn focus(id: &str) {
    let element = document().and_then(|document| document.get_element_by_id(id));
    unfold(element.as_ref());
    if let Some(element) = element.and_then(|element| element.dyn_into::<HtmlElement>().ok()) {
        let _ = element.focus();
    }
}

/// Opens what the element is folded away in: it could not take the focus there.
fn unfold(element: Option<&Element>) {
    let folded = element.and_then(|element| element.closest("details:not([open])").ok()?);
    if let Some(folded) = folded {
        let _ = folded.set_attribute("open", "");
    }
}

/// Shows the page from its top.
pub(super) fn scroll_to_top() {
    if let Some(window) = web_sys::window() {
        window.scroll_to_with_x_and_y(0.0, 0.0);
    }
}

/// Sets the theme that the style sheets follow.
pub(super) fn set_theme(theme: Theme) {
    let Some(root) = document().and_then(|document| document.document_element()) else {
        return;
    };
    let _ = match theme {
        Theme::Device => root.remove_attribute("data-theme"),
        Theme::Light => root.set_attribute("data-theme", "light"),
        Theme::Dark => root.set_attribute("data-theme", "dark"),
    };
}

/// Names the page after its job, so that a bookmark has that name too.
pub(super) fn set_title(state: &State) {
    let names = [&state.work.job.name, &state.work.joint.name].map(|name| name.text.trim());
    let names = names.into_iter().filter(|name| !name.is_empty());
    let title = names.chain(["Notchwright"]).collect::<Vec<_>>().join(" · ");
    if let Some(document) = document().filter(|document| document.title() != title) {
        document.set_title(&title);
    }
}

/// Puts a text on the clipboard, and says whether the browser let it.
pub(super) fn copy(text: String, copied: Notice, emit: Callback<Msg>) {
    spawn_local(async move {
        let notice = match put_on_clipboard(&text).await {
            Ok(_) => copied,
            Err(_) => Notice::NotCopied,
        };
        emit.emit(Msg::Say(notice));
    });
}

async fn put_on_clipboard(text: &str) -> Result<JsValue, JsValue> {
    let navigator = web_sys::window().ok_or(JsValue::NULL)?.navigator();
    // Without https there is none, which the bindings do not know.
    if Reflect::get(&navigator, &"clipboard".into())?.is_undefined() {
        return Err(JsValue::UNDEFINED);
    }
    JsFuture::from(navigator.clipboard().write_text(text)).await
}

/// Reads a file that somebody chose.
pub(super) fn read_file(file: &File, emit: Callback<Msg>) {
    if file.size() > LARGEST_FILE {
        emit.emit(Msg::FileTooLarge);
        return;
    }
    let text = file.text();
    spawn_local(async move {
        // What cannot be read as text is no job either.
        let text = JsFuture::from(text).await.ok();
        let text = text.and_then(|text| text.as_string()).unwrap_or_default();
        emit.emit(Msg::OpenFile(text));
    });
}

/// Bytes: what is larger is not even read.
const LARGEST_FILE: f64 = 4_194_304.0;

/// Offers a text as a file.
pub(super) fn download(name: &str, text: &str) {
    // What the browser refuses here it tells the person itself.
    let _ = offer(name, text);
}

fn offer(name: &str, text: &str) -> Result<(), JsValue> {
    let document = document().ok_or(JsValue::NULL)?;
    let blob = Blob::new_with_str_sequence(&Array::of1(&text.into()))?;
    let url = Url::create_object_url_with_blob(&blob)?;
    let anchor: HtmlAnchorElement = document.create_element("a")?.unchecked_into();
    anchor.set_href(&url);
    anchor.set_download(name);
    anchor.click();
    Url::revoke_object_url(&url)
}
