//! What is made: drawers, parts, and the sheets that they are cut from.

use js_sys::Array;
use wasm_bindgen::JsValue;

use super::maker::Maker;

impl Maker {
    pub(super) fn parts_list(&mut self) -> JsValue {
        let stock = vec![
            ("name", "Ash".into()),
            ("thickness", self.number(4.0, 30.0)),
            ("former", self.number(4.0, 30.0)),
        ];
        let measure = vec![
            ("name", "rail".into()),
            (
                "value",
                self.word(&["40", "2*t", "1 3/4\" + t", "60 - t/2"]),
            ),
        ];
        let part = vec![
            ("name", "Side".into()),
            ("count", self.whole(1.0, 99.0)),
            ("length", self.number(50.0, 900.0)),
            (
                "width",
                self.word(&["300 - 2*t", "rail + 19,05", "max(rail; t)*2", "(90 - t)/2"]),
            ),
            ("stock", self.word(&["Ash"])),
            ("trim", self.word(&["", "2", "t/2"])),
        ];
        let list = |item: JsValue| -> JsValue { Array::of1(&item).into() };
        let fields = vec![
            ("unit", self.word(&["mm", "in"])),
            ("stocks", list(self.object(stock))),
            ("measures", list(self.object(measure))),
            ("parts", list(self.object(part))),
        ];
        self.object(fields)
    }

    pub(super) fn drawers(&mut self) -> JsValue {
        let size = vec![
            ("kind", self.word(&["opening"])),
            ("width", self.number(250.0, 900.0)),
            ("height", self.number(200.0, 900.0)),
            ("depth", self.number(250.0, 600.0)),
            ("slides", self.word(&["side", "under"])),
            ("sideClearance", self.number(0.0, 15.0)),
            ("above", self.number(0.0, 4.0)),
            ("below", self.number(0.0, 4.0)),
        ];
        let groove = vec![
            ("fromEdge", self.number(4.0, 15.0)),
            ("depth", self.number(2.0, 5.0)),
        ];
        let [size, groove] = [size, groove].map(|fields| self.object(fields));
        let joint = self.corner();
        let bottom = vec![("thickness", self.number(3.0, 8.0)), ("groove", groove)];
        let bottom = self.object(bottom);
        let [side, front, back] = [18.0, 20.0, 14.0].map(|most| self.board(10.0, most));
        let fields = vec![
            ("size", size),
            ("count", self.whole(1.0, 3.0)),
            ("between", self.number(0.0, 20.0)),
            ("side", side),
            ("front", front),
            ("back", back),
            ("joint", joint),
            ("bottom", bottom),
        ];
        self.object(fields)
    }

    /// Fingers, or dovetails.
    fn corner(&mut self) -> JsValue {
        let mut fields = if self.chance.below(2) == 0 {
            let layout = vec![
                ("kind", self.word(&["finger"])),
                ("width", self.number(12.0, 25.0)),
            ];
            vec![
                ("kind", self.word(&["box"])),
                ("layout", self.object(layout)),
            ]
        } else {
            let slope = vec![
                ("kind", self.word(&["ratio"])),
                ("run", self.number(5.0, 10.0)),
            ];
            vec![
                ("kind", self.word(&["dovetail"])),
                ("slope", self.object(slope)),
                ("tails", self.whole(1.0, 4.0)),
                ("halfPin", self.number(4.0, 12.0)),
                ("narrowPin", self.number(4.0, 14.0)),
            ]
        };
        fields.push(("cutter", self.cutter()));
        fields.push(("screw", self.screw()));
        self.object(fields)
    }

    pub(super) fn sheet_layout(&mut self) -> JsValue {
        let sheet = vec![
            ("length", self.number(1000.0, 2500.0)),
            ("width", self.number(600.0, 1300.0)),
            ("grain", self.word(&["length", "width", "none"])),
            ("edgeTrim", self.number(0.0, 10.0)),
        ];
        let sheet = self.object(sheet);
        let parts = Array::new();
        for _ in 0..self.chance.below(4) + 1 {
            let part = vec![
                ("length", self.number(50.0, 700.0)),
                ("width", self.number(30.0, 500.0)),
                ("count", self.whole(1.0, 6.0)),
            ];
            parts.push(&self.object(part));
        }
        let search = vec![
            ("from", self.whole(0.0, 60.0)),
            ("steps", self.whole(0.0, 2.0)),
        ];
        let search = self.object(search);
        let fields = vec![
            ("sheets", Array::of1(&sheet).into()),
            ("parts", parts.into()),
            ("kerf", self.number(0.0, 4.0)),
            ("search", search),
        ];
        self.object(fields)
    }
}
