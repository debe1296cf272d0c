//! The page, and the functions the compiled module answers.
//!
//! One [`state::State`] is shown, saved, undone and carried in the link. A [`msg::Msg`] goes through
//! [`model::Model::update`], which knows neither the framework nor the browser; [`answer`] works out
//! what follows; [`view`] shows it; `edge` does what is left to be done outside.

pub mod answer;
#[cfg(feature = "scripts")]
pub mod api;
mod app;
mod edge;
pub mod effect;
mod export;
pub mod keep;
pub mod model;
pub mod msg;
pub mod notice;
pub mod state;
#[cfg(test)]
mod testing;
pub mod update;
pub mod view;

use wasm_bindgen::prelude::wasm_bindgen;

/// Goes on with the search for a layout of sheets by so many rounds, for the page's own worker: from what
/// `from` rounds had found, `best`, in the state that was saved as `state`. Gives the rounds made, whether it is
/// done, whether that is proven, and the best; nothing where it cannot go on.
#[wasm_bindgen(js_name = searchSheets, skip_typescript)]
#[must_use]
pub fn search_sheets(state: &str, from: u32, best: &str, rounds: u32) -> Option<js_sys::Array> {
    let best = best.to_owned();
    let asked = effect::Asked { from, best, rounds };
    answer::making::sheet::search_beside(state, &asked).map(|reached| edge::write_reached(&reached))
}

/// Starts the page in the element `app`.
///
/// Called by the page's own script: loading the module alone starts nothing, so that a script without
/// a page can load it too.
#[wasm_bindgen(js_name = startPage)]
pub fn start_page() {
    let document = web_sys::window().and_then(|window| window.document());
    if let Some(root) = document.and_then(|document| document.get_element_by_id("app")) {
        yew::set_custom_panic_hook(Box::new(edge::report_panic));
        yew::Renderer::<app::App>::with_root(root).render();
    }
}
