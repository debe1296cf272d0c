//! Joints with slanted flanks: what is asked and what is found.

mod saw;

use notchwright_core::drawing::{Paper, marking_template};
use notchwright_core::joint::dovetail::DovetailPlan;
use notchwright_core::units::{Mm, Unit, write_number};
use proptest::collection::vec;
use proptest::prelude::*;

use super::{STALE, attributes, escaped, inside, page, show, started, typed};
use crate::answer::tools::SlantedAnswer;
use crate::model::{Chunk, Model};
use crate::msg::{Edit, Look, Msg};
use crate::state::{
    CutterField, DovetailField, Field, GrindKind, Id, JointField, JointKind, PaperSize, PinsBy,
    Place, SlidingField, SlopeBy,
};
use crate::testing::msg;

fn open(kind: JointKind, then: impl IntoIterator<Item = Msg>) -> Model {
    let opened = [Msg::Edit(Edit::Joint(kind)), Msg::Came(Chunk::Dovetail)];
    started(opened.into_iter().chain(then))
}

fn dovetails(then: impl IntoIterator<Item = Msg>) -> Model {
    open(JointKind::Dovetail, then)
}

/// The same, cut on one end of one board each.
fn alone(then: impl IntoIterator<Item = Msg>) -> Model {
    let opened = [
        Msg::Edit(Edit::Joint(JointKind::Dovetail)),
        Msg::Came(Chunk::Dovetail),
    ];
    super::alone(opened.into_iter().chain(then))
}

fn answer(model: &Model) -> &SlantedAnswer {
    model.answer.slanted.as_deref().unwrap()
}

fn plan(model: &Model) -> &DovetailPlan {
    &answer(model).dovetail.current().unwrap().plan
}

fn length(model: &Model, length: Mm) -> String {
    show::length(length, model.state.units)
}

fn own(field: DovetailField, text: &str) -> Msg {
    typed(Field::Dovetail(field), text)
}

/// What is said of the figure with this name.
fn fact<'a>(page: &'a str, name: &str) -> &'a str {
    let (_, rest) = page
        .split_once(&format!("<dt>{name}</dt>"))
        .unwrap_or_else(|| panic!("nothing is said of {name}"));
    rest.split_once("</dd>").unwrap().0
}

#[track_caller]
fn assert_says(page: &str, words: &str) {
    assert!(page.contains(&escaped(words)), "nothing says: {words}");
}

#[test]
fn the_kind_of_joint_is_chosen_above_each_form() {
    for (kind, label) in [
        (JointKind::Box, "Box joint"),
        (JointKind::Dovetail, "Dovetails"),
        (JointKind::Sliding, "Sliding"),
    ] {
        let page = page(&open(kind, []));
        assert_eq!(page.matches("name=\"joint-kind\"").count(), 3);
        let chosen = "class=\"on\"><input checked type=\"radio\" name=\"joint-kind\">";
        assert!(page.contains(&format!("{chosen}<span>{label}</span>")));
        assert!(page.contains(&format!("<h1 class=\"for-readers\">{label}")));
        assert!(!page.contains("stale"));
    }
}

#[test]
fn what_is_under_way_or_cannot_be_had_is_said() {
    let mut model = started([Msg::Edit(Edit::Joint(JointKind::Dovetail))]);
    assert_says(&page(&model), "One moment…");
    assert!(page(&model).contains("name=\"joint-kind\""));
    model.update(Msg::DidNotCome(Chunk::Dovetail));
    let failed = page(&model);
    assert_says(&failed, "This part of the page could not be fetched");
    assert!(failed.contains(">Try again</button>"));
    assert!(!failed.contains("class=\"plan"));
    model.update(Msg::AskAgain(Chunk::Dovetail));
    assert_says(&page(&model), "One moment…");
}

#[test]
fn the_figures_are_the_plans() {
    let model = dovetails([]);
    let (page, plan) = (page(&model), plan(&model));
    for (name, narrow, wide) in [
        ("Tails", plan.tail_tip, plan.tail_base),
        ("Pins", plan.pin_outer, plan.pin_inner),
        ("Half-pins", plan.half_pin_outer, plan.half_pin_inner),
    ] {
        let both = format!(
            "{} to {}",
            show::bare(narrow, Unit::Mm),
            length(&model, wide)
        );
        assert!(fact(&page, name).contains(&both), "{name}");
    }
    assert!(fact(&page, "Slope").contains("1:8, 7.125°"));
    assert!(fact(&page, "Narrowest pin").contains(&length(&model, plan.narrowest_pin)));
    assert!(fact(&page, "Blade height, tail board").contains(&length(&model, plan.depth_a)));
    assert_eq!(page.matches("Blade height, tail board").count(), 1);
    for set in &plan.sets {
        assert_says(&page, &set.name);
    }
    let passes: usize = plan.sets.iter().map(|set| set.stops.len()).sum();
    assert_says(&page, &format!("5 set-ups, {passes} passes"));
}

#[test]
fn every_way_of_asking_shows_its_own_fields() {
    let id = |field: DovetailField| format!("id=\"{}\"", Field::Dovetail(field).id());
    let all = [
        DovetailField::NarrowPin,
        DovetailField::HalfPin,
        DovetailField::Ratio,
    ];
    for (by, shown) in [
        (PinsBy::Widths, &all[..2]),
        (PinsBy::Ratio, &all[2..]),
        (PinsBy::Equal, &[]),
        (PinsBy::Narrowest, &all[1..2]),
    ] {
        let page = page(&dovetails([Msg::Edit(Edit::Pins(by))]));
        for field in all {
            assert_eq!(page.contains(&id(field)), shown.contains(&field), "{by:?}");
        }
        assert!(!page.contains("stale"), "{by:?}");
    }
    for (by, field, other) in [
        (SlopeBy::Run, DovetailField::Run, DovetailField::Degrees),
        (SlopeBy::Degrees, DovetailField::Degrees, DovetailField::Run),
    ] {
        let page = page(&dovetails([Msg::Edit(Edit::Slope(by))]));
        assert!(page.contains(&id(field)) && !page.contains(&id(other)));
    }
}

#[test]
fn the_verdict_asks_for_the_chisel_where_wood_is_left() {
    let flat = dovetails([]);
    let words = page(&flat);
    let uncut = &plan(&flat).dry_fit.uncut;
    assert_says(&words, "It fits, after the chisel.");
    assert_says(&words, " For the chisel");
    assert_says(&words, &format!("{} places, up to", uncut.len()));
    let area: f64 = uncut.iter().map(|uncut| uncut.area).sum();
    assert_says(&words, &format!("{} mm² in all", write_number(area, 1)));

    // Teeth ground to the slope reach the corner; what is upright needs flat ones.
    let ground = dovetails([
        Msg::Edit(Edit::Grind(Id(1), GrindKind::Slope)),
        Msg::Edit(Edit::PinCutter(Id(3))),
    ]);
    let words = page(&ground);
    assert_says(&words, "It fits.");
    assert!(!words.contains("For the chisel"));

    let tight = dovetails([
        typed(Field::Joint(JointField::GlueGap), "0"),
        own(DovetailField::LeanOffset, "8"),
        own(DovetailField::LeanHeight, "50"),
    ]);
    assert!(plan(&tight).dry_fit.clash);
    let words = page(&tight);
    assert_says(&words, "It clashes.");
    assert_says(&words, "At the saw all the same");
}

#[test]
fn the_template_is_put_on_the_print_when_it_is_wanted() {
    const SHEET: &str = "class=\"drawing full-size\"";
    let off = page(&dovetails([]));
    assert!(!off.contains(SHEET) && off.contains("Put a template on the print"));
    for (size, paper) in [
        (PaperSize::A4, Paper::A4),
        (PaperSize::Letter, Paper::Letter),
    ] {
        let model = dovetails([
            Msg::Look(Look::Templates(true)),
            Msg::Look(Look::Paper(size)),
            Msg::Paper(true),
        ]);
        let tiles = marking_template(plan(&model), paper);
        let on = page(&model);
        assert!(!tiles.is_empty());
        assert_eq!(on.matches(SHEET).count(), tiles.len());
        assert_says(&on, "Leave the template off the print");
        let sheets = show::count(tiles.len(), "sheet", "sheets");
        assert_says(&on, &format!("{sheets} with the lines."));
    }
}

#[test]
fn the_card_calls_the_boards_as_its_set_ups_do() {
    let shown = page(&alone([Msg::Paper(true)]));
    assert_says(
        &shown,
        "wide, tail board 12 mm thick, pin board 18 mm thick.",
    );
}

#[test]
fn what_is_wrong_is_said_beside_its_field_and_by_its_fold() {
    let wrong = [
        DovetailField::Tails,
        DovetailField::NarrowPin,
        DovetailField::HalfPin,
        DovetailField::Run,
        DovetailField::Weights,
        DovetailField::Lap,
        DovetailField::LeanOffset,
        DovetailField::LeanHeight,
    ];
    let model = dovetails(wrong.map(|field| own(field, "a <hair>")));
    let shown = page(&model);
    for field in wrong.map(Field::Dovetail) {
        let said = model.answer.problems_of(field).next().unwrap();
        let beside = inside(&shown, &format!("{}-problem", field.id()), "p");
        assert!(beside.contains(&escaped(&show::message(said, Unit::Mm))));
        assert!(attributes(&shown, &field.id()).contains("aria-invalid=\"true\""));
    }
    assert_says(&shown, STALE);
    assert_says(&shown, "Something in here needs mending.");
    assert!(!shown.contains(">At the saw"));

    let outside = page(&dovetails([own(DovetailField::Tails, "61")]));
    assert!(!outside.contains("Something in here needs mending."));
}

#[test]
fn what_is_still_needed_is_named() {
    let model = dovetails([
        own(DovetailField::Run, ""),
        own(DovetailField::Tails, ""),
        typed(Field::Joint(JointField::ThicknessB), ""),
    ]);
    let shown = page(&model);
    assert_says(&shown, "Still needed: Pins thick, Slope, Number of tails.");
    assert!(!shown.contains("aria-invalid"));
}

#[test]
fn a_problem_in_the_shop_is_told_at_the_joint_and_in_the_shop() {
    let kerf = Field::Cutter(Id(1), CutterField::Kerf);
    let mut model = dovetails([typed(kerf, "-1")]);
    let said = show::message(model.answer.problems_of(kerf).next().unwrap(), Unit::Mm);
    let at_joint = page(&model);
    assert_says(&at_joint, &said);
    assert_says(&at_joint, "Mend it in the shop");
    model.update(Msg::Go(Place::Shop));
    let in_shop = page(&model);
    assert!(inside(&in_shop, &format!("{}-problem", kerf.id()), "p").contains(&escaped(&said)));
}

#[test]
fn wedge_and_lean_are_worked_out() {
    let model = dovetails([
        own(DovetailField::LeanOffset, "6"),
        own(DovetailField::LeanHeight, "50"),
    ]);
    let shown = page(&model);
    // Derived: 300 / 8 = 37.5 thicker than 6.
    assert_says(&shown, "Thin end 6 mm, thick end 43.5 mm");
    // Derived: arctan 6 / 50 = 6.843°, 7.125° asked; 50 / 8 = 6.25.
    assert_says(
        &shown,
        "The blade leans 6.843°, −0.282° off what was asked: over that height it should be 6.25 mm.",
    );
    let blank = page(&dovetails([own(DovetailField::WedgeLength, "")]));
    assert!(!blank.contains("Thin end 6 mm") && !blank.contains("The blade leans"));
}

#[test]
fn numbers_of_tails_are_offered_with_a_reason() {
    let model = dovetails([]);
    let shown = page(&model);
    let choices = &answer(&model).choices;
    let chips = shown.matches("name=\"tails\"").count();
    assert!((2..=7).contains(&chips), "{chips}");
    let chosen = choices.iter().find(|choice| choice.count == 4).unwrap();
    assert_says(
        &shown,
        &format!("4: {}", show::message(&chosen.reason, Unit::Mm)),
    );
    let none = page(&dovetails([own(DovetailField::Tails, "")]));
    assert_says(&none, &format!("Recommended is {}", choices[0].count));
}

#[test]
fn a_sliding_one_says_what_is_set_on_the_table() {
    let slide = |field, text| typed(Field::Sliding(field), text);
    let model = open(JointKind::Sliding, []);
    let shown = page(&model);
    // Derived: 12.7 − 2 · 9.5 · tan 14° = 7.963; (18 − 12.6) / 2 = 2.7.
    assert!(fact(&shown, "Socket mouth").contains("7.96 mm"));
    assert!(fact(&shown, "Fence moves").contains("one pass on the middle"));
    assert!(fact(&shown, "Cut from each side").contains("2.7 mm"));
    assert!(!shown.contains("Shim for the taper") && !shown.contains("At the saw"));

    let model = open(
        JointKind::Sliding,
        [
            slide(SlidingField::Floor, "16"),
            slide(SlidingField::Taper, "0.8"),
            slide(SlidingField::Length, "300"),
        ],
    );
    let shown = page(&model);
    let plan = &answer(&model).sliding.current().unwrap().plan;
    let moves = format!(
        "{} × {}",
        plan.socket_fence_moves.len(),
        length(&model, plan.socket_fence_moves[0])
    );
    assert!(fact(&shown, "Fence moves").contains(&moves));
    // Derived: half of 0.8 for each flank.
    assert!(fact(&shown, "Shim for the taper").contains("0.4 mm"));

    let stale = page(&open(
        JointKind::Sliding,
        [slide(SlidingField::Flank, "50")],
    ));
    assert_says(&stale, STALE);
    assert!(stale.contains("class=\"found stale\""));
    let needed = page(&open(
        JointKind::Sliding,
        [slide(SlidingField::Taper, "0.8")],
    ));
    assert_says(&needed, "Still needed: Over a length of.");
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    fn there_is_one_heading_of_the_page_whatever_happened(
        kind in prop_oneof![Just(JointKind::Dovetail), Just(JointKind::Sliding)],
        messages in vec(msg(), 0..12),
    ) {
        let page = page(&open(kind, messages));
        prop_assert_eq!(page.matches("<h1").count(), 1);
        prop_assert_eq!(page.matches("<main").count(), 1);
        prop_assert!(!page.contains("NaN"));
    }
}
