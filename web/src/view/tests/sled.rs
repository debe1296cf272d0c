//! The sled's place, tool by tool.

use notchwright_core::drawing::{Paper, hole_line_tiles};
use notchwright_core::units::write_number;
use proptest::collection::vec;
use proptest::prelude::*;

use super::{STALE, attributes, escaped, page, show, started, typed};
use crate::answer::tools::SledAnswer;
use crate::model::{Chunk, Model};
use crate::msg::{Edit, Look, Msg, Shelf};
use crate::state::{
    Approach, CutField, Field, Id, PaperSize, Place, PointField, Prints, RoutField, SawField,
    SquareField, Tool,
};
use crate::testing::msg;

const TOOLS: [Tool; 5] = [
    Tool::Fit,
    Tool::Base,
    Tool::Square,
    Tool::Screw,
    Tool::Groove,
];

fn open(tool: Tool, then: impl IntoIterator<Item = Msg>) -> Model {
    let opened = [
        Msg::Go(Place::Sled),
        Msg::Came(Chunk::Sled),
        Msg::Look(Look::Tool(tool)),
    ];
    started(opened.into_iter().chain(then))
}

fn answer(model: &Model) -> &SledAnswer {
    model.answer.sled.as_deref().unwrap()
}

fn length(model: &Model, length: notchwright_core::units::Mm) -> String {
    show::length(length, model.state.units)
}

/// What is said of the figure with this name.
fn fact<'a>(page: &'a str, name: &str) -> &'a str {
    let (_, rest) = page
        .split_once(&format!("<dt>{name}</dt>"))
        .unwrap_or_else(|| panic!("nothing is said of {name}"));
    rest.split_once("</dd>").unwrap().0
}

/// What was worked out stands in the page as the outcome, and not greyed.
fn assert_found(page: &str) {
    assert_eq!(page.matches("class=\"found\"").count(), 1);
    assert!(!page.contains("stale"));
}

#[test]
fn the_fit_says_where_the_runner_goes() {
    let model = open(Tool::Fit, []);
    let page = page(&model);
    assert_found(&page);
    let plan = &answer(&model).fit.current().unwrap().plan;
    for (name, value) in [
        ("Runner's middle", plan.runner.from_blade),
        ("Move the runner", plan.runner.forward.abs()),
        ("Then left at both ends", plan.runner.left_after),
        ("Travel", plan.travel.length),
        ("Blade above the table", plan.height),
        ("The other runner", plan.second_runner.unwrap().from_blade),
    ] {
        let said = fact(&page, name);
        assert!(said.contains(&length(&model, value)), "{name}: {said}");
    }
    assert!(
        fact(&page, "Move the runner").contains(match plan.runner.forward.mm() {
            forward if forward > 0.0 => "away from you",
            _ => "towards you",
        })
    );
    assert!(!page.contains("As measured, move it"));
}

#[test]
fn left_overs_that_were_measured_are_compared() {
    let (near, far) = (Field::Cut(CutField::Near), Field::Cut(CutField::Far));
    let model = open(Tool::Fit, [typed(near, "10"), typed(far, "4")]);
    let page = page(&model);
    // Derived: 10 at the near end and 4 at the far end leave 7 at both after 3 towards the operator.
    let said = fact(&page, "As measured, move it");
    assert!(
        said.contains("3 mm") && said.contains("7 mm left at both ends"),
        "{said}"
    );
}

/// What stands in every sheet that is printed in its true size.
const SHEET: &str = "class=\"drawing full-size\"";

#[test]
fn the_base_is_saved_and_printed() {
    let model = open(Tool::Base, []);
    let drawn = page(&model);
    assert_found(&drawn);
    assert!(drawn.contains("Save as SVG"));
    assert!(!drawn.contains(SHEET));
    for (size, paper) in [
        (PaperSize::A4, Paper::A4),
        (PaperSize::Letter, Paper::Letter),
    ] {
        let prints = [
            Msg::Look(Look::Prints(Prints::HoleLine)),
            Msg::Look(Look::Paper(size)),
        ];
        let model = open(Tool::Base, prints);
        let tiles = hole_line_tiles(&answer(&model).fit.current().unwrap().plan, paper);
        let page = page(&model);
        assert_eq!(page.matches(SHEET).count(), tiles.len());
        let sheets = show::count(tiles.len(), "sheet", "sheets");
        assert!(page.contains(&format!("{sheets} of the hole line")));
    }
}

#[test]
fn the_five_cuts_are_gone_through_one_by_one() {
    for (step, number, says) in [
        (0, 1, "Edge 4 against the fence: cut edge 1."),
        (
            1,
            2,
            "Turn edge 1, just cut, against the fence: cut edge 2.",
        ),
        (4, 5, "cut a strip off edge 1, a thumb wide."),
        // As a later program may have stored it.
        (99, 5, "cut a strip off edge 1, a thumb wide."),
    ] {
        let page = page(&open(Tool::Square, [Msg::Look(Look::Cut(step))]));
        assert!(page.contains(&format!("Cut {number} of 5</h2>")), "{step}");
        assert!(page.contains(says), "{step}");
    }
}

#[test]
fn the_strip_says_how_the_fence_is_moved() {
    let model = open(Tool::Square, []);
    let page_before = page(&model);
    assert_found(&page_before);
    let plan = &answer(&model).square.current().unwrap().plan;
    let by = length(&model, plan.travel);
    let correction = format!("Move the fence's outer end {by} towards the panel.");
    assert!(page_before.contains(&correction));
    assert!(fact(&page_before, "Error over 500 mm").contains(&length(&model, plan.per500)));
    assert!(page_before.contains("Keep this test"));

    let other_way = open(
        Tool::Square,
        [typed(Field::Square(SquareField::FenceEnd), "23.9")],
    );
    assert!(page(&other_way).contains("away from the panel."));
    let square = open(
        Tool::Square,
        [typed(Field::Square(SquareField::FenceEnd), "24.02")],
    );
    assert!(page(&square).contains("Leave the fence where it is."));
}

#[test]
fn kept_tests_are_listed_with_their_day() {
    let keep = |date: &str| Msg::Edit(Edit::KeepTest(date.into()));
    let fence_end = Field::Square(SquareField::FenceEnd);
    let model = open(
        Tool::Square,
        [keep("2026-04-30"), typed(fence_end, ""), keep("2026-05-01")],
    );
    let page = page(&model);
    let (_, list) = page.split_once("<ul class=\"kept\">").unwrap();
    let (list, _) = list.split_once("</ul>").unwrap();
    assert_eq!(list.matches("<li").count(), 2);
    let per500 = answer(&model).tests[0].per500.unwrap();
    assert!(list.contains("2026-04-30"));
    assert!(list.contains(&format!("+{} over 500 mm", length(&model, per500))));
    assert!(list.contains("2026-05-01"));
    assert!(list.contains("cannot be read"));
    assert!(!page.contains("Keep this test"));
}

#[test]
fn the_screw_says_its_true_lead_and_offers_it() {
    let model = open(Tool::Screw, []);
    let page_before = page(&model);
    assert_found(&page_before);
    let plan = &answer(&model).screw.current().unwrap().plan;
    let lead = write_number(plan.lead.mm(), 5);
    assert!(fact(&page_before, "True lead").contains(&lead));
    assert!(page_before.contains("Take the lead for Sled screw"));
    assert!(!page_before.contains("Take the backlash"));
    let points = model.state.work.sled.points.items();
    assert_eq!(
        page_before.matches("aria-label=\"Remove position").count(),
        points.len()
    );

    let down = Msg::Edit(Edit::Approach(Id(8), Approach::Down));
    let both = page(&open(Tool::Screw, [down]));
    assert!(both.contains("Take the backlash for Sled screw"));
}

#[test]
fn what_is_wrong_with_a_position_is_said_at_its_row() {
    let wrong = Field::Point(Id(3), PointField::Measured);
    let model = open(Tool::Screw, [typed(wrong, "wide")]);
    let page = page(&model);
    let said = model.answer.problems_of(wrong).next().unwrap();
    let said = escaped(&show::message(said, model.state.units));
    let (_, after) = page.split_once("point-3-measured").unwrap();
    let (beside, _) = after.split_once("point-4-commanded").unwrap();
    assert!(beside.contains(&said));
    assert!(attributes(&page, "point-3-measured").contains("aria-invalid=\"true\""));
}

#[test]
fn the_groove_says_every_setting_of_the_fence() {
    let ends = [
        typed(Field::Rout(RoutField::From), "40"),
        typed(Field::Rout(RoutField::To), "100"),
    ];
    let model = open(Tool::Groove, ends);
    let page = page(&model);
    assert_found(&page);
    let plan = &answer(&model).groove.current().unwrap().plan;
    let (_, settings) = page.split_once("<ol class=\"settings\">").unwrap();
    let (settings, _) = settings.split_once("</ol>").unwrap();
    assert_eq!(settings.matches("<li").count(), plan.passes.len());
    for pass in &plan.passes {
        assert!(settings.contains(&format!("<b>{}</b>", length(&model, pass.fence_to_bit))));
    }
    assert!(page.contains("raise the bit to 3 mm, then 6 mm."));
    // Derived: from 40 to 100 with a bit 5 across feeds 55.
    assert!(fact(&page, "Feed between them").contains("55 mm"));
}

#[test]
fn an_old_outcome_is_greyed_and_says_what_is_needed() {
    let saw = |field| Field::Saw(Id(1), field);
    for (tool, field, needed) in [
        (Tool::Fit, saw(SawField::ToSlot), "Blade to slot middle"),
        (Tool::Base, saw(SawField::Rear), "Arbor to rear edge"),
        (Tool::Square, Field::Square(SquareField::Apart), "A to B"),
        (Tool::Groove, Field::Rout(RoutField::Bit), "Bit diameter"),
    ] {
        let page = page(&open(tool, [typed(field, "")]));
        assert!(page.contains("class=\"found stale\""), "{tool:?}");
        assert!(page.contains(STALE), "{tool:?}");
        assert!(
            page.contains(&format!("Still needed: {needed}.")),
            "{tool:?}"
        );
        for gone in ["Save as SVG", "Keep this test"] {
            assert!(!page.contains(gone), "{tool:?}: {gone}");
        }
    }
    let cleared = page(&open(Tool::Screw, [Msg::Edit(Edit::ClearPoints)]));
    assert!(cleared.contains("class=\"found stale\""));
    assert!(cleared.contains("From 3 to 500 points are needed; these are 0."));
    assert!(!cleared.contains("Take the lead"));

    let unread = page(&open(Tool::Fit, [typed(saw(SawField::ToSlot), "there")]));
    assert!(unread.contains("The marked fields say what would work."));
}

#[test]
fn an_empty_shelf_is_said_where_it_is_missed() {
    for (tool, shelf, thing) in [
        (Tool::Fit, Shelf::Saws, "saw"),
        (Tool::Base, Shelf::Sleds, "sled"),
        (Tool::Screw, Shelf::Screws, "screw"),
    ] {
        let page = page(&open(tool, [Msg::Edit(Edit::Remove(shelf, Id(1)))]));
        let says = format!("There is no {thing}: add one in the shop.");
        assert!(page.contains(&says), "{says}");
    }
}

#[test]
fn a_place_that_has_not_come_says_so() {
    let waiting = page(&started([Msg::Go(Place::Sled)]));
    assert!(waiting.contains("aria-busy=\"true\""));
    assert!(waiting.contains("One moment…"));
    let failed = page(&started([
        Msg::Go(Place::Sled),
        Msg::DidNotCome(Chunk::Sled),
    ]));
    assert!(failed.contains("role=\"alert\""));
    assert!(failed.contains(">Try again</button>"));
    for page in [waiting, failed] {
        assert_eq!(page.matches("<h1").count(), 1);
        assert_eq!(page.matches("<main").count(), 1);
    }
}

/// Every element is named once: labels, problems and the focus find their field by it.
fn ids(page: &str) -> Vec<&str> {
    let parts = page.split(" id=\"").skip(1);
    let mut ids: Vec<_> = parts.map(|part| part.split('"').next().unwrap()).collect();
    ids.sort_unstable();
    ids
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    fn there_is_one_heading_and_every_name_once_in_every_tool(messages in vec(msg(), 0..8)) {
        let mut model = open(Tool::Fit, messages);
        for tool in TOOLS {
            for msg in [Msg::Go(Place::Sled), Msg::Came(Chunk::Sled), Msg::Look(Look::Tool(tool))] {
                model.update(msg);
            }
            let page = page(&model);
            prop_assert_eq!(page.matches("<h1").count(), 1);
            prop_assert_eq!(page.matches("<main").count(), 1);
            let all = ids(&page);
            let mut once = all.clone();
            once.dedup();
            prop_assert_eq!(all, once);
        }
    }
}
