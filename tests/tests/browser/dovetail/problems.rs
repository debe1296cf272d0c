//! What cannot be cut is said beside its field, and what it proposes works.

use anyhow::{Context, Result};
use notchwright_core::joint::dovetail::{DovetailRequest, SlopeRequest};
use notchwright_core::units::Unit;
use notchwright_tests::browser::{Page, serve_dist};

use super::{FOLD, open_dovetails, plan, problem, shows, worked};
use crate::answer::{length, sentence};
use crate::steps::{see, see_nothing};

/// A field, what is typed into it, and what the core is then asked.
type Wrong = (&'static str, &'static str, fn(&mut DovetailRequest));

const WRONG: [Wrong; 6] = [
    // Derived: fifteen tails and fourteen pins of 5 leave 58 / 15 = 3.87 at the tip, less 4.5: they meet.
    ("dovetail-tails", "15", |it| it.tails = 15.0.into()),
    ("dovetail-tails", "61", |it| it.tails = 61.0.into()),
    // Derived: the leaning kerf is 3.07 / cos 7.125° = 3.094 wide.
    ("dovetail-narrow-pin", "3", |it| it.narrow_pin = 3.0.into()),
    ("dovetail-run", "0", |it| {
        it.slope = SlopeRequest::ratio(0.0).into();
    }),
    ("dovetail-lap", "18", |it| it.lap = 18.0.into()),
    ("dovetail-lap", "20", |it| it.lap = 20.0.into()),
];

/// The field is marked and says so, and the results are those of before.
async fn is_refused(page: &Page, field: &str, says: &str) -> Result<()> {
    see(page, &format!("#{field}-problem"), says).await?;
    let describes = format!("#{field}[aria-invalid=true][aria-describedby~={field}-problem]");
    page.find(&describes).await?;
    page.find(".plan.stale").await?;
    see(page, ".outcome .state", "From the last good numbers.").await?;
    // Nobody goes to the saw with numbers that are not what the fields say.
    see_nothing(page, ".go").await
}

#[tokio::test]
async fn impossible_dovetails_are_refused_until_they_are_mended() -> Result<()> {
    let site = serve_dist()?;
    let page = open_dovetails(&site).await?;
    page.press(FOLD).await?;
    for (field, text, change) in WRONG {
        let id = format!("#{field}");
        let good = page.value(&id).await?;
        page.replace_text(&id, text).await?;
        let mut request = worked();
        change(&mut request);
        is_refused(&page, field, &sentence(&problem(&request)?.message)).await?;
        page.replace_text(&id, &good).await?;
        shows(&page, &worked()).await?;
        see_nothing(&page, ".main [aria-invalid], .main .mend").await?;
    }
    page.choose("slope-by", "in degrees").await?;
    for degrees in [0.0, 50.0] {
        page.replace_text("#dovetail-degrees", &degrees.to_string())
            .await?;
        let request = DovetailRequest {
            slope: SlopeRequest::angle(degrees).into(),
            ..worked()
        };
        let says = sentence(&problem(&request)?.message);
        is_refused(&page, "dovetail-degrees", &says).await?;
    }
    page.assert_quiet().await
}

#[tokio::test]
async fn the_narrowest_pin_may_be_typed_as_it_is_named() -> Result<()> {
    let site = serve_dist()?;
    let page = open_dovetails(&site).await?;
    page.replace_text("#dovetail-narrow-pin", "3").await?;
    let named = length(plan(&worked())?.narrowest_pin, Unit::Mm);
    is_refused(&page, "dovetail-narrow-pin", &named).await?;
    let text = named.strip_suffix(" mm").context("no millimetres")?;
    page.replace_text("#dovetail-narrow-pin", text).await?;
    let request = DovetailRequest {
        narrow_pin: text.parse::<f64>()?.into(),
        ..worked()
    };
    shows(&page, &request).await?;
    see_nothing(&page, ".main [aria-invalid]").await?;
    page.assert_quiet().await
}

#[tokio::test]
async fn what_is_still_needed_is_named() -> Result<()> {
    let site = serve_dist()?;
    let page = open_dovetails(&site).await?;
    page.replace_text("#dovetail-run", "").await?;
    see(&page, ".outcome .state", "Still needed: Slope.").await?;
    // What is blank is to be filled in, not wrong.
    see_nothing(&page, ".main [aria-invalid]").await?;
    page.replace_text("#dovetail-run", "8").await?;
    shows(&page, &worked()).await?;
    page.assert_quiet().await
}
