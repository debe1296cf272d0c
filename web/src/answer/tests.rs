//! From what is typed to the plan, and from its problems back to the fields.

mod course;

use notchwright_core::units::Unit;

use super::Answer;
use crate::model::Chunk;
use crate::state::{
    Cutter, CutterField, Entry, Field, GrindKind, Id, JointField, LayoutKind, LeadBy, SawField,
    ScrewField, Sled, SledField, SlotField, StackField, State, Work, ZeroKind,
};

fn answer(change: impl FnOnce(&mut Work)) -> Answer {
    let mut work = State::demo().work;
    let good = Answer::new(&work, &Answer::default());
    change(&mut work);
    answered(&work, &good)
}

/// What follows, with all that the shop shows.
fn answered(work: &Work, before: &Answer) -> Answer {
    let mut answer = Answer::new(work, before);
    answer.add(Chunk::Shop, work);
    answer
}

/// The fields with problems, each with the first sentence about it.
fn problems(answer: &Answer) -> Vec<(Option<Field>, String)> {
    let say = |length: notchwright_core::units::Mm| format!("{} mm", length.mm());
    let problems = answer.shown_problems();
    problems
        .map(|problem| (problem.field, problem.message.show(say)))
        .collect()
}

fn fields(answer: &Answer) -> Vec<Option<Field>> {
    answer
        .shown_problems()
        .map(|problem| problem.field)
        .collect()
}

#[test]
fn the_demo_has_an_answer() {
    let answer = answer(|_| {});
    assert_eq!(problems(&answer), []);
    let plan = &answer.current().unwrap().plan;
    // Handbook example, derived: 140 / 9 = 15.5556.
    assert!((plan.finger_width.mm() - 140.0 / 9.0).abs() < 1e-9);
    assert_eq!((plan.depth_a.mm(), plan.depth_b.mm()), (18.0, 12.0));
    assert!(!plan.dry_fit.clash);
    assert!(answer.choices.iter().any(|choice| choice.count == 9));
    // Derived: 3.2 + 3.2 + 3.2 + 2.4 = 12.
    assert!((answer.stack().unwrap().nearest.width.mm() - 12.0).abs() < 1e-9);
    // Derived: 13.07 − 4 · 2.5 = 3.07.
    assert!((answer.kerf().unwrap().kerf.mm() - 3.07).abs() < 1e-9);
}

#[test]
fn the_last_good_plan_stays_and_is_marked() {
    let answer = answer(|work| work.joint.width = Entry::mm("14o"));
    assert_eq!(fields(&answer), [Some(Field::Joint(JointField::Width))]);
    assert!(answer.is_stale);
    assert!(answer.joint.is_some());
    assert!(answer.current().is_none());
    assert!(answer.choices.is_empty());
}

#[test]
fn an_optional_field_that_cannot_be_read_is_not_left_out_unseen() {
    for field in [JointField::GlueGap, JointField::Proud] {
        let answer = answer(|work| *work.joint.entry_mut(field) = Entry::mm("a hair"));
        assert_eq!(fields(&answer), [Some(Field::Joint(field))]);
        assert!(answer.is_stale, "{field:?}");
    }
}

#[test]
fn blank_optional_fields_take_what_is_usual() {
    let answer = answer(|work| {
        work.joint.glue_gap = Entry::default();
        work.joint.proud = Entry::mm("  ");
    });
    assert_eq!(problems(&answer), []);
    assert!((answer.current().unwrap().plan.glue_gap.mm() - 0.05).abs() < 1e-12);
}

#[test]
fn all_problems_are_found_at_once_each_at_its_field() {
    let answer = answer(|work| {
        work.joint.width = Entry::mm("0");
        work.joint.thickness_a = Entry::default();
        work.joint.count = Entry::mm("nine");
        work.joint.zero.kind = ZeroKind::TestKerf;
        work.joint.zero.reading = Entry::mm("10");
        work.joint.groove.on = true;
        work.joint.groove.depth = Entry::mm("-1");
        work.shop.cutters.change(Id(1), |cutter| {
            cutter.grind = GrindKind::Alternate;
            cutter.overlap = Entry::mm("2");
        });
        work.shop
            .screws
            .change(Id(1), |screw| screw.by = LeadBy::Lead);
        work.shop
            .saws
            .change(Id(1), |saw| saw.greatest_height = Entry::mm("9000"));
    });
    let joint = |field| Some(Field::Joint(field));
    let mut found = fields(&answer);
    for expected in [
        joint(JointField::Width),
        joint(JointField::ThicknessA),
        joint(JointField::Count),
        joint(JointField::ZeroMeasured),
        joint(JointField::GrooveDepth),
        Some(Field::Cutter(Id(1), CutterField::Bevel)),
        Some(Field::Screw(Id(1), ScrewField::Lead)),
        Some(Field::Saw(Id(1), SawField::GreatestHeight)),
    ] {
        let place = found.iter().position(|field| *field == expected);
        found.remove(place.unwrap_or_else(|| panic!("{expected:?} in {found:?}")));
    }
    assert_eq!(found, []);
}

#[test]
fn one_item_of_a_list_is_the_field_of_the_list() {
    let answer = answer(|work| {
        work.joint.layout = LayoutKind::Pattern;
        work.joint.weights = Entry::mm("1 0 2");
    });
    assert_eq!(fields(&answer), [Some(Field::Joint(JointField::Weights))]);
}

#[test]
fn weights_are_separated_in_the_ways_people_do_it() {
    for weights in ["1 2 1", "1; 2; 1", "1, 2, 1", " 1  2,0 1 "] {
        let answer = answer(|work| {
            work.joint.layout = LayoutKind::Pattern;
            work.joint.mirrored = false;
            work.joint.weights = Entry::mm(weights);
        });
        assert_eq!(problems(&answer), [], "{weights:?}");
        assert_eq!(answer.current().unwrap().plan.count, 3, "{weights:?}");
    }
    let answer = answer(|work| {
        work.joint.layout = LayoutKind::Pattern;
        work.joint.weights = Entry::mm("1,2,1");
    });
    assert_eq!(fields(&answer), [Some(Field::Joint(JointField::Weights))]);
}

#[test]
fn numbers_that_only_look_like_numbers_are_refused() {
    for text in ["inf", "nan", "1e3", "0x9", "9 9", "٩", "--9", "9-"] {
        let answer = answer(|work| work.joint.count = Entry::mm(text));
        let expected = format!("«{text}» is no number: write one like 9 or 2.5.");
        let field = Some(Field::Joint(JointField::Count));
        assert_eq!(problems(&answer), [(field, expected)]);
    }
}

#[test]
fn lengths_are_read_in_the_unit_they_were_typed_in() {
    let in_inches = answer(|work| work.joint.width = Entry::new("5 1/2", Unit::Inch));
    let in_mm = answer(|work| work.joint.width = Entry::mm("139.7"));
    assert_eq!(in_inches.joint, in_mm.joint);
    assert!(in_inches.current().is_some());
}

#[test]
fn an_empty_shelf_is_said_plainly() {
    let answer = answer(|work| work.shop.cutters = crate::state::List::default());
    let problem = (None, "There is no cutter: add one in the shop.".to_owned());
    assert_eq!(problems(&answer), [problem]);
}

#[test]
fn things_that_are_not_in_use_are_checked_but_may_be_unfinished() {
    let answer = answer(|work| {
        let kerf = Entry::mm("1000");
        let name = Entry::mm("spare");
        work.shop.cutters.push(Cutter {
            name,
            kerf,
            ..Cutter::default()
        });
        work.shop.cutters.push(Cutter::default());
        let travel = Entry::mm("far");
        work.shop.sleds.push(Sled {
            travel,
            ..Sled::default()
        });
    });
    let expected = [
        Some(Field::Sled(Id(2), SledField::Travel)),
        Some(Field::Cutter(Id(4), CutterField::Kerf)),
    ];
    assert_eq!(fields(&answer), expected);
    assert!(answer.current().is_some());
}

#[test]
fn a_saw_limits_the_joint_only_as_far_as_it_is_known() {
    let thick = |work: &mut Work| work.joint.thickness_b = Entry::mm("70");
    let too_deep = answer(thick);
    assert_eq!(
        fields(&too_deep),
        [Some(Field::Joint(JointField::ThicknessB))]
    );
    let no_height = |work: &mut Work| {
        thick(work);
        work.shop
            .saws
            .change(Id(1), |saw| saw.greatest_height = Entry::default());
    };
    let too_long = problems(&answer(no_height));
    assert!(too_long[0].1.contains("needs a window of"), "{too_long:?}");
    let unknown = answer(|work| {
        no_height(work);
        work.shop
            .sleds
            .change(Id(1), |sled| sled.front_rail = Entry::default());
    });
    assert_eq!(problems(&unknown), []);
    // A bit as wide as it cuts stands upright: its diameter is no bound.
    let bit = answer(|work| {
        no_height(work);
        work.shop.cutters.choose(Id(3));
        work.shop
            .cutters
            .change(Id(3), |bit| bit.diameter = Entry::mm("6.35"));
    });
    assert_eq!(problems(&bit), []);
}

/// What is said names what was typed: nobody typed a window below zero.
#[test]
fn a_rail_before_the_carriage_leaves_no_window() {
    let answer = answer(|work| {
        work.shop
            .sleds
            .change(Id(1), |sled| sled.front_rail = Entry::mm("100"));
    });
    let thicknesses = [JointField::ThicknessB, JointField::ThicknessA];
    assert_eq!(
        fields(&answer),
        thicknesses.map(|field| Some(Field::Joint(field)))
    );
    for (_, said) in problems(&answer) {
        assert!(said.contains("the sled has 0 mm"), "{said}");
    }
}

#[test]
fn a_form_waits_until_it_is_filled_in() {
    let blank = answer(|work| {
        work.shop.stack = crate::state::StackForm::default();
        work.shop.slot = crate::state::SlotForm::default();
    });
    assert_eq!(problems(&blank), []);
    assert_eq!((blank.stack(), blank.kerf()), (None, None));
    let wrong = answer(|work| {
        work.shop.stack.shims = Entry::mm("0.1; thin");
        work.shop.slot.step = Entry::mm("9");
    });
    let expected = [
        Some(Field::Stack(StackField::Shims)),
        Some(Field::Slot(SlotField::Width)),
    ];
    assert_eq!(fields(&wrong), expected);
    assert_eq!((wrong.stack(), wrong.kerf()), (None, None));
}

#[test]
fn a_stack_is_found_anew_when_its_box_changes() {
    let change = |work: &mut Work, want: &str| work.shop.stack.want = Entry::mm(want);
    let mut work = State::demo().work;
    let mut last = answered(&work, &Answer::default());
    for (want, nearest) in [("9.6", 9.6), ("a lot", 0.0), ("9.6", 9.6), ("8", 8.0)] {
        change(&mut work, want);
        last = answered(&work, &last);
        let found = last.stack().map_or(0.0, |stack| stack.nearest.width.mm());
        assert!((found - nearest).abs() < 1e-9, "{want}: {found}");
        assert_eq!(last.shown_problems().count(), usize::from(nearest == 0.0));
        assert_eq!(last, answered(&work, &last));
    }
}
