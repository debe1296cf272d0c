//! Speaking and hearing, where the browser can do it on the device.
//!
//! Reached by name, since the bindings do not know all of it. Most browsers that hear words send them to
//! somebody's computer; this page sends nothing anywhere, so it listens only where hearing is promised to
//! stay on the device.

use std::cell::{Cell, RefCell};
use std::rc::Rc;

use js_sys::{Array, Function, Reflect};
use wasm_bindgen::closure::Closure;
use wasm_bindgen::{JsCast, JsValue};
use yew::Callback;

use crate::msg::Msg;

fn global(name: &str) -> Option<JsValue> {
    let window = web_sys::window()?;
    let found = Reflect::get(&window, &name.into()).ok()?;
    (!found.is_undefined()).then_some(found)
}

fn call(object: &JsValue, method: &str, arguments: &[&JsValue]) -> Result<JsValue, JsValue> {
    let method: Function = Reflect::get(object, &method.into())?.dyn_into()?;
    let arguments: Array = arguments.iter().copied().collect();
    method.apply(object, &arguments)
}

fn make(class: &JsValue, arguments: &[&JsValue]) -> Result<JsValue, JsValue> {
    let class: &Function = class.dyn_ref().ok_or(JsValue::UNDEFINED)?;
    let arguments: Array = arguments.iter().copied().collect();
    Reflect::construct(class, &arguments)
}

/// Whether the browser speaks.
pub(super) fn can_speak() -> bool {
    global("speechSynthesis").is_some() && global("SpeechSynthesisUtterance").is_some()
}

/// Says this in place of whatever is being said.
pub(super) fn speak(words: &str) {
    // A browser that speaks no more is no reason to stop: the setting is on the screen.
    let _ = try_speak(words);
}

fn try_speak(words: &str) -> Result<(), JsValue> {
    let synthesis = global("speechSynthesis").ok_or(JsValue::UNDEFINED)?;
    let class = global("SpeechSynthesisUtterance").ok_or(JsValue::UNDEFINED)?;
    let utterance = make(&class, &[&words.into()])?;
    Reflect::set(&utterance, &"lang".into(), &"en".into())?;
    call(&synthesis, "cancel", &[])?;
    call(&synthesis, "speak", &[&utterance])?;
    Ok(())
}

/// Says nothing more.
pub(super) fn hush() {
    if let Some(synthesis) = global("speechSynthesis") {
        let _ = call(&synthesis, "cancel", &[]);
    }
}

const ON_DEVICE: &str = "processLocally";

fn recognition() -> Option<JsValue> {
    let class = global("SpeechRecognition").or_else(|| global("webkitSpeechRecognition"))?;
    let prototype = Reflect::get(&class, &"prototype".into()).ok()?;
    let knows = Reflect::has(&prototype, &ON_DEVICE.into()).unwrap_or(false);
    knows.then_some(class)
}

/// Whether the browser hears words without sending them anywhere.
pub(super) fn can_listen() -> bool {
    recognition().is_some()
}

/// Listens while it is wanted.
pub(in crate::edge) struct Voice {
    emit: Callback<Msg>,
    is_wanted: Rc<Cell<bool>>,
    ear: Rc<RefCell<Option<Ear>>>,
}

/// A recognition, with what it calls.
struct Ear {
    recognition: JsValue,
    _heard: Closure<dyn FnMut(JsValue)>,
    _ended: Closure<dyn FnMut()>,
}

impl Voice {
    pub(in crate::edge) fn new(emit: Callback<Msg>) -> Self {
        Self {
            emit,
            is_wanted: Rc::default(),
            ear: Rc::default(),
        }
    }

    /// Listens from now on, or no longer.
    pub(super) fn listen(&self, is_wanted: bool) {
        if self.is_wanted.replace(is_wanted) == is_wanted {
            return;
        }
        if !is_wanted {
            if let Some(ear) = self.ear.take() {
                let _ = call(&ear.recognition, "abort", &[]);
            }
        } else if let Ok(ear) = self.open() {
            let _ = call(&ear.recognition, "start", &[]);
            self.ear.replace(Some(ear));
        }
    }

    fn open(&self) -> Result<Ear, JsValue> {
        let class = recognition().ok_or(JsValue::UNDEFINED)?;
        let recognition = make(&class, &[])?;
        for (name, value) in [
            (ON_DEVICE, JsValue::TRUE),
            ("continuous", JsValue::TRUE),
            ("lang", "en-US".into()),
        ] {
            Reflect::set(&recognition, &name.into(), &value)?;
        }
        let emit = self.emit.clone();
        let heard = Closure::<dyn FnMut(JsValue)>::new(move |event| {
            if let Some(words) = last_words(&event) {
                emit.emit(Msg::Heard(words));
            }
        });
        // After a silence the browser stops listening by itself.
        let (is_wanted, again) = (Rc::clone(&self.is_wanted), recognition.clone());
        let ended = Closure::<dyn FnMut()>::new(move || {
            if is_wanted.get() {
                let _ = call(&again, "start", &[]);
            }
        });
        Reflect::set(&recognition, &"onresult".into(), heard.as_ref())?;
        Reflect::set(&recognition, &"onend".into(), ended.as_ref())?;
        Ok(Ear {
            recognition,
            _heard: heard,
            _ended: ended,
        })
    }
}

/// The newest words of a result.
fn last_words(event: &JsValue) -> Option<String> {
    let results = Reflect::get(event, &"results".into()).ok()?;
    let length = Reflect::get(&results, &"length".into()).ok()?.as_f64()?;
    let last = Reflect::get_u32(&results, (length - 1.0) as u32).ok()?;
    let best = Reflect::get_u32(&last, 0).ok()?;
    Reflect::get(&best, &"transcript".into()).ok()?.as_string()
}
