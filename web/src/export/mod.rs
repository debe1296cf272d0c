//! The open joint as files for other programs. It comes with the jobs' part of the program, and only [`file`]
//! may be called from elsewhere, once that has come.

pub(crate) mod pictures;

use notchwright_core::drawing::{Drawing, dxf::dxf, svg::svg};
use notchwright_core::stop::csv;

use crate::effect::Effect;
use crate::model::Model;
use crate::msg::Export;
use crate::view::bare_length;

/// What the roles of a drawing look like in a file of its own.
const STYLE: &str = include_str!("style.css");

/// The file; none where there is nothing to be cut, or no such picture.
#[inline(never)]
pub(crate) fn file(model: &Model, what: Export) -> Option<Effect> {
    let cut = model.answer.cut()?;
    let unit = model.state.units;
    let length = |length| bare_length(length, unit);
    let picture = |place: usize| pictures::all(cut.of, &model.state).into_iter().nth(place);
    let (name, text) = match what {
        Export::Csv => ("stops.csv".to_owned(), csv::write(cut.sets)),
        Export::Svg(place) => {
            let (name, drawing) = picture(place)?;
            (
                file_name(&name, "svg"),
                in_millimetres(&drawing, &svg(&drawing, STYLE, length)),
            )
        }
        Export::Dxf(place) => {
            let (name, drawing) = picture(place)?;
            (file_name(&name, "dxf"), dxf(&drawing, length))
        }
    };
    let job = model.file_name(&name);
    Some(Effect::Download { name: job, text })
}

fn file_name(picture: &str, ending: &str) -> String {
    let name = picture.to_ascii_lowercase().replace(' ', "-");
    format!("{name}.{ending}")
}

/// Its true size, so that other programs open it at 1:1.
fn in_millimetres(drawing: &Drawing, svg: &str) -> String {
    use notchwright_core::drawing::svg::number;
    let size = format!(
        "<svg width=\"{}mm\" height=\"{}mm\" ",
        number(drawing.width),
        number(drawing.height)
    );
    svg.replacen("<svg ", &size, 1)
}
