//! A fence around the compiled module, in the glue: after a trap neither an event nor a timer gets in again.
//!
//! The bundler has such a guard for modules that unwind; this one aborts, which is smaller.

use anyhow::{Result, ensure};

const FENCE: &str = include_str!("fence.js");

/// What is put where. A chunk is linked with the module itself, so that is what the glue hands out.
const PLACES: [(&str, &str); 3] = [
    (
        "\n    wasm = instance.exports;",
        "\n    wasm = fenced(instance.exports, wayIn);",
    ),
    ("\n    return wasm;", "\n    return instance.exports;"),
    ("_bg.js\": import0,", "_bg.js\": fenced(import0, wayOut),"),
];

/// The glue with the fence in it.
///
/// # Errors
///
/// When the glue is not as this expects it.
pub(crate) fn around(glue: &str) -> Result<String> {
    let mut fenced = glue.to_owned();
    for (place, with) in PLACES {
        let places = glue.matches(place).count();
        ensure!(
            places == 1,
            "the glue has {places} places {place:?}, not one"
        );
        fenced = fenced.replace(place, with);
    }
    Ok(fenced + FENCE)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_glue_without_its_places_is_refused() {
        let whole: String = PLACES.map(|(place, _)| place).concat();
        assert!(around(&whole).is_ok());
        for (place, _) in PLACES {
            assert!(around(&whole.replace(place, "")).is_err(), "{place}");
            assert!(around(&(whole.clone() + place)).is_err(), "{place}");
        }
    }
}
