//! Joints, and the cutters and screws that they are cut with.

use wasm_bindgen::JsValue;

use super::maker::Maker;

impl Maker {
    pub(super) fn cutter(&mut self) -> JsValue {
        let kerf = self.number(0.5, 12.0);
        let bevel = self.number(0.0, 40.0);
        let grind = match self.chance.below(3) {
            0 => vec![("kind", "flat".into())],
            1 => vec![("kind", "alternate".into()), ("bevelDegrees", bevel)],
            _ => vec![("kind", "slope".into())],
        };
        let grind = self.object(grind);
        let overlap = self.number(0.0, 0.3);
        let mut fields = vec![("kerf", kerf)];
        fields.extend(self.sometimes("grind", grind));
        fields.extend(self.sometimes("overlap", overlap));
        self.object(fields)
    }

    pub(super) fn screw(&mut self) -> JsValue {
        let lead = match self.chance.below(2) {
            0 => ("lead", self.number(0.5, 6.0)),
            _ => ("threadsPerInch", self.number(4.0, 32.0)),
        };
        let mut fields = vec![lead, ("divisions", self.whole(20.0, 500.0))];
        let backlash = self.number(0.0, 1.0);
        fields.extend(self.sometimes("backlash", backlash));
        let rounding = self.word(&["division", "half", "none"]);
        fields.extend(self.sometimes("rounding", rounding));
        let rises = self.word(&["away", "towards"]);
        fields.extend(self.sometimes("rises", rises));
        self.object(fields)
    }

    fn layout(&mut self) -> JsValue {
        let fields = match self.chance.below(4) {
            0 => vec![("kind", "count".into()), ("count", self.whole(2.0, 60.0))],
            1 => vec![("kind", "finger".into()), ("width", self.number(3.0, 40.0))],
            2 => vec![
                ("kind", "onePass".into()),
                ("leftover", self.word(&["ends", "far", "rip"])),
            ],
            _ => vec![
                ("kind", "pattern".into()),
                ("weights", self.numbers(0.2, 5.0)),
            ],
        };
        self.object(fields)
    }

    fn zero(&mut self) -> JsValue {
        let fields = match self.chance.below(3) {
            0 => vec![("kind", "touch".into())],
            1 => vec![("kind", "flush".into())],
            _ => vec![
                ("kind", "testKerf".into()),
                ("reading", self.number(-50.0, 50.0)),
                ("measured", self.number(0.0, 50.0)),
            ],
        };
        self.object(fields)
    }

    fn boards(&mut self) -> Vec<(&'static str, JsValue)> {
        let thickness = self.number(4.0, 40.0);
        let a = self.object(vec![("thickness", thickness)]);
        let thickness = self.number(4.0, 40.0);
        let b = self.object(vec![("thickness", thickness)]);
        let width = self.number(20.0, 400.0);
        let (cutter, screw) = (self.cutter(), self.screw());
        vec![
            ("width", width),
            ("a", a),
            ("b", b),
            ("cutter", cutter),
            ("screw", screw),
        ]
    }

    pub(super) fn joint(&mut self) -> JsValue {
        let mut fields = self.boards();
        fields.push(("layout", self.layout()));
        let groove = vec![
            ("fromEdge", self.number(0.0, 30.0)),
            ("width", self.number(2.0, 12.0)),
            ("depth", self.number(1.0, 9.0)),
            ("edge", self.word(&["reference", "far"])),
        ];
        let groove = self.object(groove);
        let saw = vec![
            ("greatestHeight", self.number(20.0, 120.0)),
            ("base", self.number(0.0, 20.0)),
        ];
        let saw = self.object(saw);
        let zero = self.zero();
        for (name, value) in [
            ("zero", zero),
            ("first", self.word(&["pin", "socket"])),
            ("glueGap", self.number(0.0, 0.3)),
            ("proud", self.number(0.0, 3.0)),
            ("groove", groove),
            ("saw", saw),
        ] {
            fields.extend(self.sometimes(name, value));
        }
        self.object(fields)
    }

    fn dovetail_boards(&mut self) -> Vec<(&'static str, JsValue)> {
        let slope = vec![
            ("kind", self.word(&["ratio"])),
            ("run", self.number(5.0, 10.0)),
        ];
        let slope = self.object(slope);
        let (tail, pin) = (self.board(6.0, 25.0), self.board(6.0, 25.0));
        let (cutter, screw) = (self.cutter(), self.screw());
        vec![
            ("width", self.number(60.0, 300.0)),
            ("tail", tail),
            ("pin", pin),
            ("slope", slope),
            ("cutter", cutter),
            ("screw", screw),
        ]
    }

    pub(super) fn choices(&mut self) -> JsValue {
        let fields = self.boards();
        self.object(fields)
    }

    pub(super) fn dovetail(&mut self) -> JsValue {
        let mut fields = self.dovetail_boards();
        fields.push(("tails", self.whole(1.0, 8.0)));
        fields.push(("halfPin", self.number(3.0, 12.0)));
        fields.push(("narrowPin", self.number(3.0, 14.0)));
        let gap = self.number(0.0, 0.2);
        fields.extend(self.sometimes("glueGap", gap));
        self.object(fields)
    }

    pub(super) fn dovetail_choices(&mut self) -> JsValue {
        let mut fields = self.dovetail_boards();
        let by = vec![("kind", self.word(&["equal", "narrowest"]))];
        let by = self.object(by);
        fields.push(("by", by));
        self.object(fields)
    }

    pub(super) fn sliding_dovetail(&mut self) -> JsValue {
        let bit = vec![
            ("tipDiameter", self.number(8.0, 25.0)),
            ("flankDegrees", self.number(7.0, 15.0)),
        ];
        let bit = self.object(bit);
        let board = self.board(30.0, 60.0);
        let fields = vec![
            ("bit", bit),
            ("depth", self.number(4.0, 10.0)),
            ("socketFloor", self.number(25.0, 30.0)),
            ("board", board),
            ("glueGap", self.number(0.0, 0.2)),
        ];
        self.object(fields)
    }

    pub(super) fn cutter_stack(&mut self) -> JsValue {
        let fields = vec![
            ("outer", self.numbers(2.0, 4.0)),
            ("chippers", self.numbers(1.0, 4.0)),
            ("shims", self.numbers(0.05, 0.6)),
            ("want", self.number(4.0, 30.0)),
        ];
        self.object(fields)
    }

    pub(super) fn kerf_from_slot(&mut self) -> JsValue {
        let fields = vec![
            ("steps", self.whole(1.0, 9.0)),
            ("step", self.number(0.5, 3.0)),
            ("slotWidth", self.number(3.0, 40.0)),
        ];
        self.object(fields)
    }
}
