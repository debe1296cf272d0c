//! A plain copy of whatever a script hands over.
//!
//! Getters run while it is made, where their exceptions can be caught, and never again; lists without
//! end and objects that contain themselves come to an end here.

use js_sys::{Array, Object, Reflect};
use notchwright_core::message;
use notchwright_core::problem::{Code, Problem};
use wasm_bindgen::{JsCast, JsValue};

/// No request is as deep.
const DEEPEST: usize = 8;
/// No request has as many values.
const MOST_VALUES: u32 = 20_000;

/// Copies plain data: numbers, texts, truths, lists and objects.
///
/// # Errors
/// The first place where something else stands.
pub(super) fn copy(value: &JsValue) -> Result<JsValue, Problem> {
    let mut copier = Copier {
        path: Vec::new(),
        left: MOST_VALUES,
    };
    copier.copy(value).ok_or_else(|| copier.problem())
}

struct Copier {
    path: Vec<String>,
    left: u32,
}

impl Copier {
    /// `None` where something is no plain data; `path` then leads to it.
    fn copy(&mut self, value: &JsValue) -> Option<JsValue> {
        self.left = self.left.checked_sub(1)?;
        if self.path.len() > DEEPEST || value.is_function() || value.is_symbol() {
            return None;
        }
        if let Some(list) = value.dyn_ref::<Array>() {
            return self.copy_list(list);
        }
        if value.is_object() {
            return self.copy_object(value);
        }
        Some(value.clone())
    }

    fn copy_list(&mut self, list: &Array) -> Option<JsValue> {
        let copy = Array::new();
        for i in 0..list.length() {
            self.path.push(i.to_string());
            let item = Reflect::get_u32(list, i).ok()?;
            copy.push(&self.copy(&item)?);
            self.path.pop();
        }
        Some(copy.into())
    }

    fn copy_object(&mut self, object: &JsValue) -> Option<JsValue> {
        // Without a prototype, "__proto__" is a field like any other.
        let copy: Object = Object::create(JsValue::NULL.unchecked_ref());
        for key in Reflect::own_keys(object).ok()?.iter() {
            let Some(name) = key.as_string() else {
                continue;
            };
            self.path.push(name);
            let item = Reflect::get(object, &key).ok()?;
            Reflect::set(&copy, &key, &self.copy(&item)?).ok()?;
            self.path.pop();
        }
        Some(copy.into())
    }

    fn problem(self) -> Problem {
        Problem {
            field: self.path.join("."),
            code: Code::WrongKind,
            message: message![
                "Plain data belongs here: numbers, texts, true or false, lists and objects."
            ],
            limit: None,
        }
    }
}
