//! What fields are called, beside them and where they are still to be filled in.

use crate::state::{
    CutField, CutterField, DovetailField, Field, JointField, RoutField, SawField, ScrewField,
    SledField, SlidingField, SquareField,
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
        Field::Joint(field) => joint(field),
        Field::Dovetail(field) => dovetail(field),
        Field::Sliding(field) => sliding(field),
        Field::Making(spot) => spot.label,
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

fn joint(field: JointField) -> &'static str {
    match field {
        JointField::Width => "Board width",
        JointField::ThicknessA => "Tails thick",
        JointField::ThicknessB => "Pins thick",
        JointField::GlueGap => "Glue gap",
        JointField::ZeroReading => "The dial read",
        JointField::ZeroMeasured => "Edge to kerf",
        _ => "A number of the joint",
    }
}

fn dovetail(field: DovetailField) -> &'static str {
    match field {
        DovetailField::Tails => "Number of tails",
        DovetailField::NarrowPin => "Pin",
        DovetailField::HalfPin => "Half-pin",
        DovetailField::Ratio => "Tail to pin",
        DovetailField::Run | DovetailField::Degrees => "Slope",
        _ => "A number of the dovetails",
    }
}

fn sliding(field: SlidingField) -> &'static str {
    match field {
        SlidingField::Tip => "Diameter at the tip",
        SlidingField::Flank => "Flank",
        SlidingField::Depth => "Depth",
        SlidingField::Thickness => "Tongue board thick",
        SlidingField::Length => "Over a length of",
        SlidingField::CuttingLength | SlidingField::Floor | SlidingField::Taper => {
            "A number of the joint"
        }
    }
}
