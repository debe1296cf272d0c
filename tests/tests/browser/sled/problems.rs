//! What cannot be is said beside its field, and what it proposes works.

use anyhow::Result;
use notchwright_tests::browser::{Page, serve_dist};

use super::asked::Asked;
use super::{is_greyed, open_sled, proposed, shows_fit};
use crate::answer::sentence;
use crate::steps::{see, see_nothing};

/// A field that is typed wrong: where it is folded away, its id, the text, and what the core is then asked.
type Wrong = (&'static str, &'static str, &'static str, fn(&mut Asked));

const WRONG: [Wrong; 6] = [
    ("The sled", "sled-1-front-rail", "300", |it| {
        it.sled.front_rail = 300.0.into();
    }),
    ("The sled", "sled-1-front-rail", "600", |it| {
        it.sled.front_rail = 600.0.into();
    }),
    ("The sled", "sled-1-contact-far", "10", |it| {
        it.runner.contact_far = 10.0.into();
    }),
    ("The sled", "sled-1-contact-far", "700", |it| {
        it.runner.contact_far = 700.0.into();
    }),
    ("Blade and cut", "cutter-1-diameter", "60", |it| {
        it.blade.diameter = 60.0.into();
    }),
    ("Blade and cut", "cut-depth", "70", |it| {
        it.cut.depth = 70.0.into();
    }),
];

/// The field is marked and says so, its fold too, and the figures are those of before.
async fn is_refused(page: &Page, fold: &str, field: &str, says: &str) -> Result<()> {
    see(page, &format!("#{field}-problem"), says).await?;
    let describes = format!("#{field}[aria-invalid=true][aria-describedby~={field}-problem]");
    page.find(&describes).await?;
    is_greyed(page, "The marked fields say what would work.").await?;
    let marked = format!(
        "[...document.querySelectorAll('details:has(.mend) > summary b')].some((it) => it.textContent === '{fold}')"
    );
    page.wait_until(&marked).await
}

#[tokio::test]
async fn impossible_geometry_is_refused_until_it_is_mended() -> Result<()> {
    let site = serve_dist()?;
    let page = open_sled(&site).await?;
    page.press("The sled").await?;
    page.press("Blade and cut").await?;
    for (fold, field, text, change) in WRONG {
        let id = format!("#{field}");
        let good = page.value(&id).await?;
        page.replace_text(&id, text).await?;
        let mut asked = Asked::worked();
        change(&mut asked);
        is_refused(&page, fold, field, &sentence(&asked.problem()?.message)).await?;

        page.replace_text(&id, &good).await?;
        shows_fit(&page, &Asked::worked().plan()?).await?;
        see_nothing(&page, ".main.sled [aria-invalid], .main.sled .mend").await?;
        see_nothing(&page, ".stale-label").await?;
    }
    page.assert_quiet().await
}

#[tokio::test]
async fn what_is_proposed_works() -> Result<()> {
    let site = serve_dist()?;
    let page = open_sled(&site).await?;
    page.press("The sled").await?;
    page.press("Blade and cut").await?;
    let mut tried = 0;
    for (fold, field, text, change) in WRONG {
        let mut asked = Asked::worked();
        change(&mut asked);
        let problem = asked.problem()?;
        // Beyond a contact and more than a diameter exclude the bound; the deepest cut of the saw needs
        // a wider window than this.
        if matches!(
            (field, text),
            (_, "10") | ("cutter-1-diameter" | "cut-depth", _)
        ) {
            continue;
        }
        let id = format!("#{field}");
        let good = page.value(&id).await?;
        page.replace_text(&id, text).await?;
        is_refused(&page, fold, field, &sentence(&problem.message)).await?;
        page.replace_text(&id, &proposed(&problem)?).await?;
        see_nothing(&page, ".found.stale").await?;
        see_nothing(&page, &format!("{id}[aria-invalid]")).await?;
        page.replace_text(&id, &good).await?;
        shows_fit(&page, &Asked::worked().plan()?).await?;
        tried += 1;
    }
    assert_eq!(tried, 3);
    page.assert_quiet().await
}

#[tokio::test]
async fn what_is_still_needed_is_named() -> Result<()> {
    let site = serve_dist()?;
    let page = open_sled(&site).await?;
    page.press("The saw's table").await?;
    page.press("The sled").await?;
    page.replace_text("#saw-1-front", "").await?;
    is_greyed(&page, "Still needed: Front edge to arbor.").await?;
    page.replace_text("#sled-1-width", "").await?;
    is_greyed(&page, "Still needed: Front edge to arbor, Base width.").await?;
    // What is blank is to be filled in, not wrong.
    see_nothing(&page, ".main.sled [aria-invalid]").await?;
    see(&page, "details:has(#saw-1-front) .mend", "needed").await?;
    see(&page, "details:has(#sled-1-width) .mend", "needed").await?;

    page.replace_text("#saw-1-front", "305").await?;
    is_greyed(&page, "Still needed: Base width.").await?;
    page.replace_text("#sled-1-width", "520").await?;
    shows_fit(&page, &Asked::worked().plan()?).await?;
    page.assert_quiet().await
}

#[tokio::test]
async fn what_is_no_length_is_said_beside_its_field() -> Result<()> {
    let site = serve_dist()?;
    let page = open_sled(&site).await?;
    page.press("The sled").await?;
    page.replace_text("#sled-1-holes", "60; wide; 400").await?;
    is_refused(&page, "The sled", "sled-1-holes", "«wide»").await?;
    page.replace_text("#sled-1-holes", "60; 230; 400").await?;
    shows_fit(&page, &Asked::worked().plan()?).await?;
    page.assert_quiet().await
}
