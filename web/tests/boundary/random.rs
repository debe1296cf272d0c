//! Random requests through every exported function, in a build that checks its arithmetic.

use gloo_timers::future::TimeoutFuture;
use js_sys::{Array, JSON, Object, Reflect};
use wasm_bindgen::JsValue;
use wasm_bindgen_test::wasm_bindgen_test;

use crate::script::{TOOLS, flaw, is_ok, js};

/// As many as a slow machine answers within the time that the runner allows; the shipped module is
/// asked many more in Node.
const REQUESTS: u32 = 1500;

/// xorshift64*, so that a failure can be repeated from its seed.
struct Chance(u64);

impl Chance {
    fn next(&mut self) -> u64 {
        self.0 ^= self.0 >> 12;
        self.0 ^= self.0 << 25;
        self.0 ^= self.0 >> 27;
        self.0.wrapping_mul(0x2545_f491_4f6c_dd1d)
    }

    /// A whole number below `end`.
    fn below(&mut self, end: u64) -> u64 {
        (self.next() >> 16) % end
    }

    fn between(&mut self, from: f64, to: f64) -> f64 {
        from + (to - from) * (self.below(1 << 20) as f64) / (1 << 20) as f64
    }

    fn pick<'a>(&mut self, words: &[&'a str]) -> &'a str {
        words[self.below(words.len() as u64) as usize]
    }
}

/// Makes requests that could be meant, and now and then spoils a field.
struct Maker {
    chance: Chance,
    junk: Vec<JsValue>,
}

impl Maker {
    fn new() -> Self {
        let junk = js(
            "[NaN, Infinity, -Infinity, -0, -1, 0, 1e-12, 1e308, 5e-324, 2 ** 53, 10n, '', '3/4', 'pin', \
             null, undefined, true, [], [1, 2], {}, { kind: 'count' }, 'count', 'x'.repeat(500)]",
        );
        Self {
            chance: Chance(0x6e6f_7463_6877_7269),
            junk: Array::from(&junk).to_vec(),
        }
    }

    fn or_junk(&mut self, value: JsValue) -> JsValue {
        // One field in forty: most requests have none, some have several.
        if self.chance.below(40) > 0 {
            return value;
        }
        let which = self.chance.below(self.junk.len() as u64) as usize;
        self.junk[which].clone()
    }

    fn number(&mut self, from: f64, to: f64) -> JsValue {
        let number = self.chance.between(from, to);
        let number = if self.chance.below(2) == 0 {
            number.round()
        } else {
            number
        };
        self.or_junk(number.into())
    }

    fn whole(&mut self, from: f64, to: f64) -> JsValue {
        let number = self.chance.between(from, to).round();
        self.or_junk(number.into())
    }

    fn word(&mut self, words: &[&str]) -> JsValue {
        let word = self.chance.pick(words);
        self.or_junk(word.into())
    }

    fn numbers(&mut self, from: f64, to: f64) -> JsValue {
        let list = Array::new();
        for _ in 0..=self.chance.below(6) {
            list.push(&self.number(from, to));
        }
        self.or_junk(list.into())
    }

    fn object(&mut self, fields: Vec<(&str, JsValue)>) -> JsValue {
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
    fn sometimes<'a>(&mut self, name: &'a str, value: JsValue) -> Vec<(&'a str, JsValue)> {
        if self.chance.below(2) == 0 {
            vec![(name, value)]
        } else {
            Vec::new()
        }
    }

    fn cutter(&mut self) -> JsValue {
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

    fn screw(&mut self) -> JsValue {
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

    fn joint(&mut self) -> JsValue {
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

    fn request(&mut self, tool: &str) -> JsValue {
        match tool {
            "boxJoint" => self.joint(),
            "boxJointChoices" => {
                let fields = self.boards();
                self.object(fields)
            }
            "cutterStack" => {
                let fields = vec![
                    ("outer", self.numbers(2.0, 4.0)),
                    ("chippers", self.numbers(1.0, 4.0)),
                    ("shims", self.numbers(0.05, 0.6)),
                    ("want", self.number(4.0, 30.0)),
                ];
                self.object(fields)
            }
            "kerfFromSlot" => {
                let fields = vec![
                    ("steps", self.whole(1.0, 9.0)),
                    ("step", self.number(0.5, 3.0)),
                    ("slotWidth", self.number(3.0, 40.0)),
                ];
                self.object(fields)
            }
            "parseLength" => {
                let (whole, over) = (self.chance.below(99), self.chance.below(16));
                let text = match self.chance.below(4) {
                    0 => format!("{whole} {over}/16\""),
                    1 => format!("{whole},{over}"),
                    2 => format!("{whole}' {over}"),
                    _ => self
                        .chance
                        .pick(&["½", "1½ in", "-", "1,234", "3 4", "12 mm"])
                        .to_owned(),
                };
                let text = self.or_junk(text.into());
                let unit = self.word(&["mm", "in"]);
                self.object(vec![("text", text), ("unit", unit)])
            }
            "sledFit" => self.sled_fit(),
            "dovetail" => {
                let mut fields = self.dovetail_boards();
                fields.push(("tails", self.whole(1.0, 8.0)));
                fields.push(("halfPin", self.number(3.0, 12.0)));
                fields.push(("narrowPin", self.number(3.0, 14.0)));
                let gap = self.number(0.0, 0.2);
                fields.extend(self.sometimes("glueGap", gap));
                self.object(fields)
            }
            "dovetailChoices" => {
                let mut fields = self.dovetail_boards();
                let by = vec![("kind", self.word(&["equal", "narrowest"]))];
                let by = self.object(by);
                fields.push(("by", by));
                self.object(fields)
            }
            "slidingDovetail" => {
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
            "squareTest" => {
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
            "screwCheck" => self.screw_check(),
            "grooveSetup" => {
                let fields = vec![
                    ("fromEdge", self.number(10.0, 60.0)),
                    ("width", self.number(6.0, 20.0)),
                    ("bit", self.number(3.0, 8.0)),
                    ("depth", self.number(2.0, 12.0)),
                    ("passDepth", self.number(1.0, 5.0)),
                ];
                self.object(fields)
            }
            "partsList" => self.parts_list(),
            "drawerBox" => self.drawers(),
            "sheetLayout" => self.sheet_layout(),
            _ => {
                let fields = vec![
                    ("mm", self.number(-500.0, 3000.0)),
                    ("unit", self.word(&["mm", "in"])),
                    ("fraction", self.whole(1.0, 1024.0)),
                ];
                self.object(fields)
            }
        }
    }
}

impl Maker {
    fn parts_list(&mut self) -> JsValue {
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

    fn board(&mut self, least: f64, most: f64) -> JsValue {
        let thickness = self.number(least, most);
        self.object(vec![("thickness", thickness)])
    }

    fn sled_fit(&mut self) -> JsValue {
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

    fn screw_check(&mut self) -> JsValue {
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
}

impl Maker {
    fn drawers(&mut self) -> JsValue {
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
        let layout = vec![
            ("kind", self.word(&["finger"])),
            ("width", self.number(12.0, 25.0)),
        ];
        let groove = vec![
            ("fromEdge", self.number(4.0, 15.0)),
            ("depth", self.number(2.0, 5.0)),
        ];
        let [size, layout, groove] = [size, layout, groove].map(|fields| self.object(fields));
        let joint = vec![
            ("kind", self.word(&["box"])),
            ("layout", layout),
            ("cutter", self.cutter()),
            ("screw", self.screw()),
        ];
        let bottom = vec![("thickness", self.number(3.0, 8.0)), ("groove", groove)];
        let [joint, bottom] = [joint, bottom].map(|fields| self.object(fields));
        let (side, front) = (self.board(10.0, 18.0), self.board(10.0, 20.0));
        let fields = vec![
            ("size", size),
            ("count", self.whole(1.0, 3.0)),
            ("between", self.number(0.0, 20.0)),
            ("side", side),
            ("front", front),
            ("joint", joint),
            ("bottom", bottom),
        ];
        self.object(fields)
    }
}

impl Maker {
    fn sheet_layout(&mut self) -> JsValue {
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

/// No panic, no exception, no number that is none, and something of everything.
async fn survives(name: &str) {
    let (name, tool) = TOOLS.into_iter().find(|tool| tool.0 == name).unwrap();
    let mut maker = Maker::new();
    let mut good = 0;
    for i in 0..REQUESTS {
        let request = maker.request(name);
        let reply = tool(request.clone());
        assert_eq!(flaw(&reply), None, "{name}({})", shown(&request));
        good += u32::from(is_ok(&reply));
        if i % 100 == 0 {
            // Whoever watches the test must be able to ask how it goes.
            TimeoutFuture::new(0).await;
        }
    }
    // Otherwise the requests would say nothing about plans, or nothing about problems.
    let bad = REQUESTS - good;
    let few = REQUESTS / 10;
    assert!(good > few && bad > few, "{name}: {good} good, {bad} bad");
}

macro_rules! every_tool {
    ($($test:ident: $name:literal;)+) => {
        $(
            #[wasm_bindgen_test]
            async fn $test() {
                survives($name).await;
            }
        )+

        #[wasm_bindgen_test]
        fn no_tool_is_forgotten() {
            assert_eq!([$($name),+], TOOLS.map(|(name, _)| name));
        }
    };
}

every_tool! {
    many_joints: "boxJoint";
    many_choices: "boxJointChoices";
    many_dovetails: "dovetail";
    many_dovetail_choices: "dovetailChoices";
    many_sliding_dovetails: "slidingDovetail";
    many_stacks: "cutterStack";
    many_kerfs: "kerfFromSlot";
    many_texts: "parseLength";
    many_lengths: "formatLength";
    many_sleds: "sledFit";
    many_squares: "squareTest";
    many_screws: "screwCheck";
    many_grooves: "grooveSetup";
    many_parts: "partsList";
    many_drawers: "drawerBox";
    many_sheets: "sheetLayout";
}

fn shown(request: &JsValue) -> String {
    let text = JSON::stringify(request)
        .ok()
        .and_then(|text| text.as_string());
    text.unwrap_or_else(|| format!("{request:?}"))
}
