//! What a script does: make plain objects, call, and look at what comes back.

use js_sys::{Array, Function, Reflect};
use notchwright_web::api;
use wasm_bindgen::{JsCast, JsValue};

/// An exported function.
pub(crate) type Tool = fn(JsValue) -> JsValue;

/// Every exported function, by the name scripts know.
pub(crate) const TOOLS: [(&str, Tool); 16] = [
    ("boxJoint", api::box_joint),
    ("boxJointChoices", api::box_joint_choices),
    ("dovetail", api::dovetail),
    ("dovetailChoices", api::dovetail_choices),
    ("slidingDovetail", api::sliding_dovetail),
    ("cutterStack", api::cutter_stack),
    ("kerfFromSlot", api::kerf_from_slot),
    ("parseLength", api::parse_length),
    ("formatLength", api::format_length),
    ("sledFit", api::sled_fit),
    ("squareTest", api::square_test),
    ("screwCheck", api::screw_check),
    ("grooveSetup", api::groove_setup),
    ("partsList", api::parts_list),
    ("drawerBox", api::drawer_box),
    ("sheetLayout", api::sheet_layout),
];

/// A joint with nothing wrong: 140 mm wide, nine fingers.
pub(crate) const JOINT: &str = "{ width: 140, a: { thickness: 12 }, b: { thickness: 18 }, \
     cutter: { kerf: 3.2 }, screw: { threadsPerInch: 16, divisions: 80 }, layout: { kind: 'count', count: 9 } }";

/// The value of an expression.
pub(crate) fn js(expression: &str) -> JsValue {
    let body = format!("return ({expression})");
    Function::new_no_args(&body).call0(&JsValue::NULL).unwrap()
}

/// A joint with some fields changed or added.
pub(crate) fn joint_with(changes: &str) -> JsValue {
    js(&format!("Object.assign({JOINT}, {changes})"))
}

/// What stands at `path` in `value`.
pub(crate) fn at(value: &JsValue, path: &str) -> JsValue {
    path.split('.').fold(value.clone(), |value, name| {
        Reflect::get(&value, &name.into()).unwrap_or(JsValue::UNDEFINED)
    })
}

/// The number at `path`.
pub(crate) fn number(value: &JsValue, path: &str) -> f64 {
    at(value, path).as_f64().unwrap_or(f64::NAN)
}

/// The text at `path`.
pub(crate) fn text(value: &JsValue, path: &str) -> String {
    at(value, path).as_string().unwrap_or_default()
}

/// The list at `path`.
pub(crate) fn list(value: &JsValue, path: &str) -> Vec<JsValue> {
    at(value, path).unchecked_into::<Array>().to_vec()
}

/// Whether a reply is a plan.
pub(crate) fn is_ok(reply: &JsValue) -> bool {
    at(reply, "ok") == true
}

/// The problems of a reply as "field: code".
pub(crate) fn problems(reply: &JsValue) -> Vec<String> {
    let problems = list(reply, "problems");
    problems
        .iter()
        .map(|problem| format!("{}: {}", text(problem, "field"), text(problem, "code")))
        .collect()
}

/// What in a reply no reply may have, or nothing.
pub(crate) fn flaw(reply: &JsValue) -> Option<String> {
    const LOOK: &str = "
        const look = (value, path) => {
            if (typeof value === 'number') return Number.isFinite(value) ? '' : path;
            if (typeof value === 'string' || typeof value === 'boolean') return '';
            if (typeof value !== 'object' || value === null) return path;
            const isPlain = Array.isArray(value) || Object.getPrototypeOf(value) === Object.prototype;
            if (!isPlain) return path;
            for (const name of Object.keys(value)) {
                const found = look(value[name], `${path}.${name}`);
                if (found) return found;
            }
            return '';
        };
        const found = look(reply, 'reply');
        if (found) return found;
        if (reply.ok === true) return 'plan' in reply && Array.isArray(reply.notes) ? '' : 'no plan';
        if (reply.ok !== false) return 'neither ok nor not';
        const said = (problem) => typeof problem.field === 'string' && problem.code && problem.message;
        return reply.problems.length > 0 && reply.problems.every(said) ? '' : 'nothing said';
    ";
    let look = Function::new_with_args("reply", LOOK);
    let found = look.call1(&JsValue::NULL, reply).unwrap().as_string();
    found.filter(|found| !found.is_empty())
}
