//! The page on which something hostile is opened: everything that follows from it is worked out and drawn.

use anyhow::ensure;
use notchwright_core::units::Unit;
use notchwright_web::effect::Effect;
use notchwright_web::model::{Chunk, Model};
use notchwright_web::msg::{Edit, Export, HandOver, Look, MakingEdit, Msg, SawMove, Search};
use notchwright_web::state::{PartsTool, Place};
use notchwright_web::update::Found;

use super::{Held, kept};

/// The page that was opened with this fragment.
pub(super) fn open_link(fragment: &str, picture: usize) -> Held {
    let (model, _) = Model::start(Found {
        fragment: fragment.to_owned(),
        ..Found::default()
    });
    use_page(model, picture)
}

/// The page in which this file was opened, beside the work that was there.
pub(super) fn open_file(text: &str, picture: usize) -> Held {
    let (mut model, _) = Model::start(Found::default());
    model.update(Msg::OpenFile(text.to_owned()));
    use_page(model, picture)
}

fn use_page(mut model: Model, picture: usize) -> Held {
    for chunk in [
        Chunk::Jobs,
        Chunk::Dovetail,
        Chunk::Sled,
        Chunk::Parts,
        Chunk::Shop,
    ] {
        model.update(Msg::Came(chunk));
    }
    for place in [
        Place::Joint,
        Place::Sled,
        Place::Parts,
        Place::Shop,
        Place::Jobs,
        Place::Joint,
    ] {
        model.update(Msg::Go(place));
    }
    model.update(Msg::Units(Unit::Inch));
    for export in [Export::Svg(picture), Export::Dxf(picture), Export::Csv] {
        numbers_only(&model.update(Msg::Export(export)))?;
    }
    make(&mut model)?;
    model.update(Msg::Saw(SawMove::Open));
    for _ in 0..3 {
        model.update(Msg::Saw(SawMove::Next));
    }
    model.update(Msg::Saw(SawMove::Back));
    model.update(Msg::Undo);
    kept::is_saved(&model.state)
}

/// Parts are laid out on sheets, drawers become parts and a joint, and the table of parts is pasted back.
fn make(model: &mut Model) -> Held {
    for tool in [PartsTool::Parts, PartsTool::Sheet, PartsTool::Drawer] {
        model.update(Msg::Look(Look::PartsTool(tool)));
        // The first of the search for a layout.
        model.update(Msg::Search(Search::Slice(None)));
    }
    model.update(Msg::Edit(Edit::HandOver(HandOver::Parts)));
    for effect in model.update(Msg::CopyParts) {
        if let Effect::Copy(table) = effect {
            let paste = MakingEdit::Paste(table);
            model.update(Msg::Edit(Edit::Making(paste)));
        }
    }
    model.update(Msg::Edit(Edit::HandOver(HandOver::Joint(0))));
    kept::is_saved(&model.state)
}

/// No picture and no table has a place that is no number.
fn numbers_only(effects: &[Effect]) -> Held {
    for effect in effects {
        if let Effect::Download { name, text } = effect {
            // Names of boards are written as they were typed, between marks of the text's own.
            let words = text.split([' ', ',', '"', '\n', '(']);
            let mut odd = words.filter(|word| ["NaN", "inf", "-inf"].contains(word));
            ensure!(odd.next().is_none(), "{name}: {text}");
        }
    }
    Ok(())
}
