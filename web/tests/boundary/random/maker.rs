//! What requests are made of: chance that can be repeated, and fields that are now and then spoiled.

use js_sys::{Array, Object, Reflect};
use wasm_bindgen::JsValue;

use crate::script::js;

/// xorshift64*, so that a failure can be repeated from its seed.
pub(super) struct Chance(u64);

impl Chance {
    fn next(&mut self) -> u64 {
        self.0 ^= self.0 >> 12;
        self.0 ^= self.0 << 25;
        self.0 ^= self.0 >> 27;
        self.0.wrapping_mul(0x2545_f491_4f6c_dd1d)
    }

    /// A whole number below `end`.
    pub(super) fn below(&mut self, end: u64) -> u64 {
        (self.next() >> 16) % end
    }

    pub(super) fn between(&mut self, from: f64, to: f64) -> f64 {
        from + (to - from) * (self.below(1 << 20) as f64) / (1 << 20) as f64
    }

    pub(super) fn pick<'a>(&mut self, words: &[&'a str]) -> &'a str {
        words[self.below(words.len() as u64) as usize]
    }
}

/// Makes requests that could be meant, and now and then spoils a field.
pub(super) struct Maker {
    pub(super) chance: Chance,
    junk: Vec<JsValue>,
}

impl Maker {
    pub(super) fn new() -> Self {
        let junk = js(
            "[NaN, Infinity, -Infinity, -0, -1, 0, 1e-12, 1e308, 5e-324, 2 ** 53, 10n, '', '3/4', 'pin', \
             null, undefined, true, [], [1, 2], {}, { kind: 'count' }, 'count', 'x'.repeat(500)]",
        );
        Self {
            chance: Chance(0x6e6f_7463_6877_7269),
            junk: Array::from(&junk).to_vec(),
        }
    }

    /// The value, or now and then something that is no such thing.
    pub(super) fn or_junk(&mut self, value: JsValue) -> JsValue {
        // One field in forty: most requests have none, some have several.
        if self.chance.below(40) > 0 {
            return value;
        }
        let which = self.chance.below(self.junk.len() as u64) as usize;
        self.junk[which].clone()
    }

    pub(super) fn number(&mut self, from: f64, to: f64) -> JsValue {
        let number = self.chance.between(from, to);
        let number = if self.chance.below(2) == 0 {
            number.round()
        } else {
            number
        };
        self.or_junk(number.into())
    }

    pub(super) fn whole(&mut self, from: f64, to: f64) -> JsValue {
        let number = self.chance.between(from, to).round();
        self.or_junk(number.into())
    }

    pub(super) fn word(&mut self, words: &[&str]) -> JsValue {
        let word = self.chance.pick(words);
        self.or_junk(word.into())
    }

    pub(super) fn numbers(&mut self, from: f64, to: f64) -> JsValue {
        let list = Array::new();
        for _ in 0..=self.chance.below(6) {
            list.push(&self.number(from, to));
        }
        self.or_junk(list.into())
    }

    pub(super) fn object(&mut self, fields: Vec<(&str, JsValue)>) -> JsValue {
        let object = Object::new();
        for (name, value) in fields {
            let name = if self.chance.below(400) == 0 {
                "mistyped"
            } else {
                name
            };
            Reflect::set(&object, &name.into(), &value).unwrap();
        }
        self.or_junk(object.into())
    }

    /// A field that is there half of the time.
    pub(super) fn sometimes<'a>(
        &mut self,
        name: &'a str,
        value: JsValue,
    ) -> Vec<(&'a str, JsValue)> {
        if self.chance.below(2) == 0 {
            vec![(name, value)]
        } else {
            Vec::new()
        }
    }

    pub(super) fn board(&mut self, least: f64, most: f64) -> JsValue {
        let thickness = self.number(least, most);
        self.object(vec![("thickness", thickness)])
    }
}
