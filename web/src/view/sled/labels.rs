//! What the fields of this place are called, beside them and where they are still to be filled in.

use crate::state::{
    CutField, CutterField, Field, RoutField, SawField, ScrewField, SledField, SquareField,
};

/// A field's label.
pub(super) fn label(field: Field) -> &'static str {
    match field {
        Field::Saw(_, field) => saw(field),
        Field::Sled(_, field) => sled(field),
        Field::Cutter(_, CutterField::Diameter) => "Blade diameter",
        Field::Cutter(_, CutterField::Kerf) => "Kerf",
        Field::Screw(_, ScrewField::Divisions) => "Wheel divisions",
        Field::Screw(..) => "The screw's lead",
        Field::Cut(field) => cut(field),
        Field::Square(field) => square(field),
        Field::Rout(field) => rout(field),
        Field::Point(..) => "A position",
        _ => "A number",
    }
}

fn saw(field: SawField) -> &'static str {
    match field {
        SawField::Name => "Name",
        SawField::GreatestHeight => "Greatest blade height",
        SawField::ToSlot => "Blade to slot middle",
        SawField::SecondSlot => "To the other slot",
        SawField::Front => "Front edge to arbor",
        SawField::Rear => "Arbor to rear edge",
    }
}

fn sled(field: SledField) -> &'static str {
    match field {
        SledField::Name => "Name",
        SledField::Base => "Base thickness",
        SledField::Travel => "Carriage travel",
        SledField::Width => "Base width",
        SledField::Length => "Base length",
        SledField::BladeLine => "Left edge to blade line",
        SledField::CarriageFace => "To carriage face",
        SledField::FrontRail => "To front rail",
        SledField::RunnerWidth => "Runner width",
        SledField::ContactNear => "To near contact",
        SledField::ContactFar => "To far contact",
        SledField::Margin => "Margin at the edges",
        SledField::Holes => "To the screw holes",
        SledField::HoleClearance => "Clearance in slotted holes",
    }
}

fn cut(field: CutField) -> &'static str {
    match field {
        CutField::Depth => "Depth of cut",
        CutField::Thickness => "Board thickness",
        CutField::Width => "Board width",
        CutField::Clearance => "Clear of the blade",
        CutField::Over => "Past the blade's top",
        CutField::Near => "Left at the near end",
        CutField::Far => "Left at the far end",
        CutField::Play => "Side play",
    }
}

fn square(field: SquareField) -> &'static str {
    match field {
        SquareField::FenceEnd => "A, fence end",
        SquareField::FreeEnd => "B, free end",
        SquareField::Apart => "A to B",
        SquareField::Pivot => "Pivot to adjuster",
        SquareField::Uncertainty => "Each reading, ±",
    }
}

fn rout(field: RoutField) -> &'static str {
    match field {
        RoutField::FromEdge => "Edge to groove middle",
        RoutField::Width => "Groove width",
        RoutField::Sheet => "Sheet, measured",
        RoutField::Clearance => "Room for it",
        RoutField::Bit => "Bit diameter",
        RoutField::Depth => "Groove depth",
        RoutField::PassDepth => "Most per pass",
        RoutField::From => "Begins at",
        RoutField::To => "Ends at",
    }
}
