//! Handing the work to others: the share sheet of the device, and the promise to keep what is stored.

use js_sys::{Array, Function, Object, Promise, Reflect};
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::{JsFuture, spawn_local};
use web_sys::{Blob, Navigator};
use yew::Callback;

use crate::edge::address;
use crate::msg::Msg;
use crate::notice::Notice;

fn navigator() -> Option<Navigator> {
    Some(web_sys::window()?.navigator())
}

fn method(object: &JsValue, name: &str) -> Option<Function> {
    Reflect::get(object, &name.into()).ok()?.dyn_into().ok()
}

/// Whether the device has a share sheet that the page may open.
pub(super) fn can_share() -> bool {
    navigator().is_some_and(|navigator| method(&navigator, "share").is_some())
}

/// Opens the share sheet with a file where it takes one, and otherwise with the address.
pub(super) fn share(name: &str, text: &str) {
    if let Some(promise) = try_share(name, text) {
        spawn_local(async move {
            // Whoever closes the sheet again has shared nothing: that is no trouble.
            let _ = JsFuture::from(promise).await;
        });
    }
}

fn try_share(name: &str, text: &str) -> Option<Promise> {
    let navigator = navigator()?;
    let share = method(&navigator, "share")?;
    let what = file(name, text)
        .ok()
        .filter(|what| takes(&navigator, what))
        .or_else(|| link(name).ok())?;
    share.call1(&navigator, &what).ok()?.dyn_into().ok()
}

fn takes(navigator: &Navigator, what: &Object) -> bool {
    let can = method(navigator, "canShare").and_then(|can| can.call1(navigator, what).ok());
    can.is_some_and(|can| can.is_truthy())
}

fn file(name: &str, text: &str) -> Result<Object, JsValue> {
    let blob = Blob::new_with_str_sequence(&Array::of1(&text.into()))?;
    let file = web_sys::File::new_with_blob_sequence(&Array::of1(&blob), name)?;
    object(&[("files", Array::of1(&file).into())])
}

fn link(name: &str) -> Result<Object, JsValue> {
    object(&[("title", name.into()), ("url", address::whole().into())])
}

fn object(fields: &[(&str, JsValue)]) -> Result<Object, JsValue> {
    let object = Object::new();
    for (name, value) in fields {
        Reflect::set(&object, &(*name).into(), value)?;
    }
    Ok(object)
}

/// Asks the browser to keep what is stored, and says what it answered.
pub(super) fn persist(emit: Callback<Msg>) {
    spawn_local(async move {
        let is_kept = ask().await.is_some_and(|answer| answer.is_truthy());
        emit.emit(Msg::Say(if is_kept {
            Notice::WillKeep
        } else {
            Notice::MayWipe
        }));
    });
}

async fn ask() -> Option<JsValue> {
    let navigator = navigator()?;
    let storage = Reflect::get(&navigator, &"storage".into()).ok()?;
    let promise = method(&storage, "persist")?.call0(&storage).ok()?;
    JsFuture::from(promise.dyn_into::<Promise>().ok()?)
        .await
        .ok()
}
