//! The five-cut test: cut by cut, what it says, and how it was before.

use anyhow::{Result, bail};
use notchwright_core::square::{SquareTestPlan, SquareTestRequest, square_test};
use notchwright_core::units::{Mm, Unit, write_number};
use notchwright_tests::browser::{Page, serve_dist};
use serde_json::json;

use super::{choose_tool, is_greyed, open_sled, reads, says};
use crate::answer::length;
use crate::steps::{see, see_nothing};

/// What is typed of a strip, and the core's answer to it.
#[derive(Clone, Copy)]
struct Strip {
    fence_end: f64,
    free_end: f64,
    apart: f64,
}

impl Strip {
    fn plan(self) -> Result<SquareTestPlan> {
        let request = SquareTestRequest {
            fence_end: self.fence_end.into(),
            free_end: self.free_end.into(),
            apart: self.apart.into(),
            pivot_to_adjuster: 460.0.into(),
            // The joint's thicker board.
            board_thickness: 18.0.into(),
            ..SquareTestRequest::default()
        };
        match square_test(&request) {
            Ok(planned) => Ok(planned.plan),
            Err(problems) => bail!("this is no strip: {problems:?}"),
        }
    }

    async fn type_on(self, page: &Page) -> Result<()> {
        for (field, mm) in [
            ("#square-fence-end", self.fence_end),
            ("#square-free-end", self.free_end),
            ("#square-apart", self.apart),
            ("#square-pivot", 460.0),
        ] {
            page.replace_text(field, &mm.to_string()).await?;
        }
        Ok(())
    }
}

/// Derived, and confirmed by cutting a polygon five times with a fence error of 0.001 rad.
const TAPERED: Strip = Strip {
    fence_end: 25.366,
    free_end: 24.0,
    apart: 341.48,
};

/// The fence out the other way, by half as much.
const OTHERWISE: Strip = Strip {
    fence_end: 24.0,
    free_end: 24.683,
    apart: 341.48,
};

fn per500(plan: &SquareTestPlan) -> String {
    let sign = if plan.per500.is_below(Mm::ZERO) {
        "−"
    } else {
        "+"
    };
    format!("{sign}{}", length(plan.per500.abs(), Unit::Mm))
}

fn noise(plan: &SquareTestPlan) -> Mm {
    Mm::new(500.0 * plan.uncertainty_radians).unwrap_or_default()
}

/// Waits until the page says what a plan says.
async fn shows(page: &Page, plan: &SquareTestPlan, way: &str) -> Result<()> {
    let by = length(plan.travel, Unit::Mm);
    let words = format!("Move the fence's outer end {by} {way} the panel.");
    see(page, ".verdict", &words).await?;
    reads(
        page,
        &[
            ("Error over 500 mm", per500(plan)),
            (
                "Uncertain by",
                format!("±{}", length(noise(plan), Unit::Mm)),
            ),
            (
                "In this joint",
                length(plan.over_thickness.unwrap_or_default(), Unit::Mm),
            ),
        ],
    )
    .await?;
    let degrees = format!("{}°", write_number(plan.error_degrees, 4).replace('-', "−"));
    says(page, "Error over 500 mm", &degrees).await?;
    let label = page.attributes(".found .figure svg", "aria-label").await?;
    assert_eq!(label, [words]);
    Ok(())
}

#[tokio::test]
async fn the_five_cuts_are_shown_one_by_one() -> Result<()> {
    let site = serve_dist()?;
    let page = open_sled(&site).await?;
    choose_tool(&page, "Square").await?;
    let mut pictures = Vec::new();
    for cut in 1..=5 {
        see(&page, ".cuts h2", &format!("Cut {cut} of 5")).await?;
        let picture = page
            .evaluate("document.querySelector('.cuts svg').innerHTML")
            .await?;
        assert!(!pictures.contains(&picture), "cut {cut} looks like another");
        pictures.push(picture);
        if cut < 5 {
            page.press("Next cut").await?;
        }
    }
    see(&page, ".cuts p", "cut a strip off edge 1").await?;
    let buttons = "[...document.querySelectorAll('.cuts .button')].map((it) => it.disabled)";
    page.wait_for(buttons, &json!([false, true])).await?;
    for _ in 1..5 {
        page.press("Back").await?;
    }
    see(&page, ".cuts h2", "Cut 1 of 5").await?;
    page.wait_for(buttons, &json!([true, false])).await?;
    page.assert_quiet().await
}

#[tokio::test]
async fn a_strip_says_which_way_the_fence_goes() -> Result<()> {
    let site = serve_dist()?;
    let page = open_sled(&site).await?;
    choose_tool(&page, "Square").await?;
    TAPERED.type_on(&page).await?;
    let plan = TAPERED.plan()?;
    assert!((plan.error_radians - 0.001).abs() < 1e-6, "{plan:?}");
    shows(&page, &plan, "towards").await?;
    see(&page, ".verdict strong", "The fence is out.").await?;
    // Derived: 460 · 0.001.
    see(&page, ".verdict", "0.46 mm").await?;
    says(&page, "Slotted holes allow", "which is enough").await?;

    OTHERWISE.type_on(&page).await?;
    shows(&page, &OTHERWISE.plan()?, "away from").await?;

    page.replace_text("#square-free-end", "24").await?;
    see(&page, ".verdict strong", "Square, as far as this shows.").await?;
    see(&page, ".verdict", "Leave the fence where it is.").await?;
    see(&page, ".found .notes", "leave the fence as it is").await?;

    page.replace_text("#square-apart", "").await?;
    is_greyed(&page, "Still needed: A to B.").await?;
    see_nothing(&page, "[aria-invalid]").await?;
    page.assert_quiet().await
}

/// What is said of each kept test, without its day.
const KEPT: &str = "[...document.querySelectorAll('.kept li span')].map((it) =>
    [it.querySelector('b').textContent, it.lastChild.textContent])";

/// The last minute of a day, on which the page's clock stands still.
const TODAY: &str = "2026-03-09";
const STOP_CLOCK: &str = "void (window.Date = class extends Date {
    constructor(...given) { super(...(given.length > 0 ? given : [2026, 2, 9, 23, 59])); }
})";

#[tokio::test]
async fn tests_are_kept_compared_and_removed() -> Result<()> {
    let site = serve_dist()?;
    let page = open_sled(&site).await?;
    choose_tool(&page, "Square").await?;
    let plot = "[aria-label='Error of each test, in order']";
    page.evaluate(STOP_CLOCK).await?;
    let kept = |plan: &SquareTestPlan| {
        let noise = crate::answer::bare(noise(plan), Unit::Mm);
        json!([TODAY, format!("{} over 500 mm, ±{noise}", per500(plan))])
    };
    TAPERED.type_on(&page).await?;
    page.press("Keep this test").await?;
    let first = kept(&TAPERED.plan()?);
    page.wait_for(KEPT, &json!([first])).await?;
    see_nothing(&page, plot).await?;

    OTHERWISE.type_on(&page).await?;
    shows(&page, &OTHERWISE.plan()?, "away from").await?;
    page.press("Keep this test").await?;
    let second = kept(&OTHERWISE.plan()?);
    page.wait_for(KEPT, &json!([first, second])).await?;
    page.find(plot).await?;

    page.click(".kept li:first-child button").await?;
    page.wait_for(KEPT, &json!([second])).await?;
    see_nothing(&page, plot).await?;
    see(&page, ".notice", "The test was removed.").await?;
    page.press("Undo").await?;
    page.wait_for(KEPT, &json!([first, second])).await?;
    page.reload().await?;
    page.wait_for(KEPT, &json!([first, second])).await?;
    page.find(plot).await?;
    page.assert_quiet().await
}
