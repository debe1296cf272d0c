//! Whatever a script hands over, as plain data.
//!
//! Getters run once, here, where their exceptions can be caught; lists without end and objects that
//! contain themselves come to an end here.

use js_sys::{Array, Reflect};
use notchwright_core::plain::Plain;
use wasm_bindgen::{JsCast, JsValue};

/// No request is as deep.
const DEEPEST: usize = 8;
/// No request has as many values.
const MOST_VALUES: u32 = 20_000;

/// Reads a value with all that is in it.
pub(super) fn read(value: &JsValue) -> Plain {
    let mut left = MOST_VALUES;
    Reader {
        left: &mut left,
        depth: 0,
    }
    .read(value)
}

struct Reader<'a> {
    left: &'a mut u32,
    depth: usize,
}

impl Reader<'_> {
    fn read(&mut self, value: &JsValue) -> Plain {
        if value.is_null() || value.is_undefined() {
            Plain::Nothing
        } else if let Some(truth) = value.as_bool() {
            Plain::Truth(truth)
        } else if let Some(number) = value.as_f64() {
            Plain::Number(number)
        } else if let Some(text) = value.as_string() {
            Plain::Text(text)
        } else if self.depth == DEEPEST || *self.left == 0 {
            Plain::Foreign("more than any request needs")
        } else if let Some(list) = value.dyn_ref::<Array>() {
            self.inside().read_list(list)
        } else if value.is_object() {
            self.inside().read_object(value)
        } else if value.is_function() {
            Plain::Foreign("a function")
        } else {
            Plain::Foreign("something that is no plain data")
        }
    }

    fn inside(&mut self) -> Reader<'_> {
        let depth = self.depth + 1;
        let left = &mut *self.left;
        Reader { left, depth }
    }

    fn read_list(&mut self, list: &Array) -> Plain {
        let mut items = Vec::new();
        for i in 0..list.length() {
            if !self.may_go_on() {
                return Plain::Foreign("a longer list than any request needs");
            }
            items.push(self.read_field(Reflect::get_u32(list, i)));
        }
        Plain::List(items)
    }

    fn read_object(&mut self, object: &JsValue) -> Plain {
        let Ok(keys) = Reflect::own_keys(object) else {
            return Plain::Foreign("an object that cannot be read");
        };
        let mut fields = Vec::new();
        for key in keys.iter() {
            if !self.may_go_on() {
                return Plain::Foreign("a larger object than any request needs");
            }
            if let Some(name) = key.as_string() {
                fields.push((name, self.read_field(Reflect::get(object, &key))));
            }
        }
        Plain::Object(fields)
    }

    fn read_field(&mut self, field: Result<JsValue, JsValue>) -> Plain {
        match field {
            Ok(value) => self.read(&value),
            Err(_) => Plain::Foreign("something that cannot be read"),
        }
    }

    fn may_go_on(&mut self) -> bool {
        let is_more = *self.left > 0;
        *self.left = self.left.saturating_sub(1);
        is_more
    }
}
