//! The sled on its saw, and what is measured of it.

use js_sys::Array;
use wasm_bindgen::JsValue;

use super::maker::Maker;

impl Maker {
    pub(super) fn sled_fit(&mut self) -> JsValue {
        let saw = vec![
            ("bladeToSlot", self.number(90.0, 180.0)),
            ("slotSide", self.word(&["left", "right"])),
            ("frontToArbor", self.number(250.0, 500.0)),
            ("arborToRear", self.number(200.0, 400.0)),
            ("greatestHeight", self.number(60.0, 110.0)),
        ];
        let blade = vec![
            ("diameter", self.number(220.0, 320.0)),
            ("kerf", self.number(1.8, 4.0)),
        ];
        let base = vec![
            ("thickness", self.number(9.0, 19.0)),
            ("width", self.number(450.0, 700.0)),
            ("length", self.number(550.0, 800.0)),
        ];
        let runner = vec![
            ("contactNear", self.number(0.0, 60.0)),
            ("contactFar", self.number(250.0, 450.0)),
            ("width", self.number(15.0, 22.0)),
        ];
        let cut = vec![
            ("depth", self.number(5.0, 45.0)),
            ("boardThickness", self.number(6.0, 25.0)),
        ];
        let [saw, blade, base, runner, cut] =
            [saw, blade, base, runner, cut].map(|fields| self.object(fields));
        let sled = vec![
            ("base", base),
            ("carriageFace", self.number(100.0, 200.0)),
            ("frontRail", self.number(420.0, 540.0)),
            ("runner", runner),
        ];
        let sled = self.object(sled);
        let play = self.number(0.0, 0.5);
        let mut fields = vec![("saw", saw), ("blade", blade), ("sled", sled), ("cut", cut)];
        fields.extend(self.sometimes("play", play));
        self.object(fields)
    }

    pub(super) fn square_test(&mut self) -> JsValue {
        let fields = vec![
            ("fenceEnd", self.number(5.0, 40.0)),
            ("freeEnd", self.number(5.0, 40.0)),
            ("apart", self.number(100.0, 800.0)),
            ("pivotToAdjuster", self.number(100.0, 900.0)),
            ("readingUncertainty", self.number(0.0, 0.1)),
            ("boardThickness", self.number(6.0, 40.0)),
        ];
        self.object(fields)
    }

    pub(super) fn screw_check(&mut self) -> JsValue {
        let points = Array::new();
        for _ in 0..3 + self.chance.below(6) {
            let at = self.chance.between(0.0, 200.0);
            let off = self.chance.between(-0.1, 0.1);
            let fields = vec![
                ("commanded", at.into()),
                ("measured", (at + off).into()),
                ("approach", self.word(&["up", "down"])),
            ];
            points.push(&self.object(fields));
        }
        let screw = self.screw();
        let points = self.or_junk(points.into());
        self.object(vec![("screw", screw), ("points", points)])
    }

    pub(super) fn groove_setup(&mut self) -> JsValue {
        let fields = vec![
            ("fromEdge", self.number(10.0, 60.0)),
            ("width", self.number(6.0, 20.0)),
            ("bit", self.number(3.0, 8.0)),
            ("depth", self.number(2.0, 12.0)),
            ("passDepth", self.number(1.0, 5.0)),
        ];
        self.object(fields)
    }
}
