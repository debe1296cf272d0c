//! The open joint's pictures, of whichever kind it is.

use notchwright_core::drawing::{
    Drawing, Paper, box_joint_drawing, box_joint_mated, box_joint_template,
};
use notchwright_core::units::parse_length;

use crate::answer::Of;
use crate::state::{PaperSize, State};
use crate::view::slanted;

/// A picture and what it shows.
pub(crate) type Named = (String, Drawing);

/// Both boards as cut.
pub(crate) fn boards(of: Of<'_>) -> Option<Drawing> {
    match of {
        Of::Box(plan) => Some(box_joint_drawing(plan)),
        Of::Dovetail(plan) => slanted::pictures(plan)
            .into_iter()
            .next()
            .map(|(_, picture)| picture),
    }
}

/// The sheets of the full-size template.
pub(crate) fn template(of: Of<'_>, state: &State) -> Vec<Drawing> {
    let paper = match state.sled.paper {
        PaperSize::A4 => Paper::A4,
        PaperSize::Letter => Paper::Letter,
    };
    match of {
        Of::Box(plan) => box_joint_template(plan, paper),
        Of::Dovetail(plan) => slanted::template(plan, paper),
    }
}

/// All of them: the boards, the closed joint, the template's sheets.
pub(crate) fn all(of: Of<'_>, state: &State) -> Vec<Named> {
    let named = |name: &str, picture| (name.to_owned(), picture);
    let mut pictures: Vec<Named> = match of {
        Of::Box(plan) => {
            let entry = &state.work.joint.thickness_b;
            let thickness = parse_length(&entry.text, entry.unit).ok();
            let closed = thickness.map(|thickness| box_joint_mated(plan, thickness));
            let boards = named("Boards", box_joint_drawing(plan));
            let closed = closed.map(|closed| named("Closed joint", closed));
            [boards].into_iter().chain(closed).collect()
        }
        Of::Dovetail(plan) => {
            let pictures = slanted::pictures(plan).into_iter();
            pictures
                .map(|(name, picture)| named(name, picture))
                .collect()
        }
    };
    let sheets = template(of, state).into_iter().enumerate();
    pictures.extend(sheets.map(|(index, sheet)| (format!("Template {}", index + 1), sheet)));
    pictures
}
