//! Random requests through every exported function, in a build that checks its arithmetic.

mod joints;
mod maker;
mod making;
mod sled;

use gloo_timers::future::TimeoutFuture;
use js_sys::JSON;
use wasm_bindgen::JsValue;
use wasm_bindgen_test::wasm_bindgen_test;

use crate::script::{TOOLS, flaw, is_ok};
use maker::Maker;

/// As many as a slow machine answers within the time that the runner allows; the shipped module is
/// asked many more in Node.
const REQUESTS: u32 = 1500;

impl Maker {
    fn request(&mut self, tool: &str) -> JsValue {
        match tool {
            "boxJoint" => self.joint(),
            "boxJointChoices" => self.choices(),
            "dovetail" => self.dovetail(),
            "dovetailChoices" => self.dovetail_choices(),
            "slidingDovetail" => self.sliding_dovetail(),
            "cutterStack" => self.cutter_stack(),
            "kerfFromSlot" => self.kerf_from_slot(),
            "parseLength" => self.text(),
            "sledFit" => self.sled_fit(),
            "squareTest" => self.square_test(),
            "screwCheck" => self.screw_check(),
            "grooveSetup" => self.groove_setup(),
            "partsList" => self.parts_list(),
            "drawerBox" => self.drawers(),
            "sheetLayout" => self.sheet_layout(),
            _ => self.length(),
        }
    }

    fn text(&mut self) -> JsValue {
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

    fn length(&mut self) -> JsValue {
        let fields = vec![
            ("mm", self.number(-500.0, 3000.0)),
            ("unit", self.word(&["mm", "in"])),
            ("fraction", self.whole(1.0, 1024.0)),
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
