//! Dovetails: asked for in the joint's place, by a part of the program that comes when it is needed.

mod paper;
mod part;
mod problems;
mod saw;
mod sliding;

use anyhow::{Result, bail};
use notchwright_core::cutter::CutterRequest;
use notchwright_core::dial::ScrewRequest;
use notchwright_core::given::Given;
use notchwright_core::joint::box_joint::{BoardRequest, SawRequest};
use notchwright_core::joint::dovetail::{
    ByRequest, DovetailPlan, DovetailRequest, SlopeRequest, dovetail,
};
use notchwright_core::problem::Problem;
use notchwright_core::units::Unit;
use notchwright_tests::browser::{Page, Site, View, serve_dist};
use serde_json::{Value, json};

use crate::steps::{bookmark, open, open_on, see, shows_sets, type_width};

const FOLD: &str = "Fit, zero, lap, wedge and blade";

/// The joint that the page opens on, as a script would ask for its dovetails.
fn worked() -> DovetailRequest {
    let board = |thickness: f64| BoardRequest {
        thickness: thickness.into(),
    };
    DovetailRequest {
        width: 140.0.into(),
        tail: board(12.0).into(),
        pin: board(18.0).into(),
        slope: SlopeRequest::ratio(8.0).into(),
        tails: 4.0.into(),
        narrow_pin: 5.0.into(),
        half_pin: 6.0.into(),
        cutter: CutterRequest {
            kerf: 3.07.into(),
            diameter: 254.0.into(),
            ..CutterRequest::default()
        }
        .into(),
        screw: ScrewRequest {
            threads_per_inch: 16.0.into(),
            divisions: 80.0.into(),
            travel: 320.0.into(),
            ..ScrewRequest::default()
        }
        .into(),
        saw: SawRequest {
            greatest_height: 80.0.into(),
            base: 15.0.into(),
            // Its front rail at 370, its carriage's face at 170.
            window: 200.0.into(),
        }
        .into(),
        ..DovetailRequest::default()
    }
}

/// The same without widths of its pins.
fn by_rule(by: ByRequest) -> DovetailRequest {
    DovetailRequest {
        by: by.into(),
        narrow_pin: Given::Missing,
        half_pin: Given::Missing,
        ..worked()
    }
}

/// The core's answer, which must not be a refusal.
fn plan(request: &DovetailRequest) -> Result<DovetailPlan> {
    match dovetail(request) {
        Ok(planned) => Ok(planned.plan),
        Err(problems) => bail!("these dovetails cannot be cut: {problems:?}"),
    }
}

/// The one thing that the core says is wrong.
fn problem(request: &DovetailRequest) -> Result<Problem> {
    let refused = dovetail(request).err().unwrap_or_default();
    let [problem] = refused.as_slice() else {
        bail!("not one refusal: {refused:?}")
    };
    Ok(problem.clone())
}

/// The first visit, where dovetails are then chosen.
async fn open_dovetails(site: &Site) -> Result<Page> {
    let page = open(site).await?;
    choose_dovetails(&page).await?;
    Ok(page)
}

/// Waits until their part of the program has come, too.
async fn choose_dovetails(page: &Page) -> Result<()> {
    page.choose("joint-kind", "Dovetails").await?;
    page.find(".verdict").await?;
    Ok(())
}

/// Waits until the tables of all sets are the core's, as current.
async fn shows(page: &Page, request: &DovetailRequest) -> Result<()> {
    shows_sets(page, &plan(request)?.sets, Unit::Mm).await
}

/// Waits until a figure says this, without the line below it.
async fn reads(page: &Page, name: &str, value: &str) -> Result<()> {
    let figure = format!(
        "[...document.querySelectorAll('.outcome .facts > div')]
            .find((it) => it.querySelector('dt').textContent === {})
            ?.querySelector('dd').firstChild.textContent",
        json!(name)
    );
    page.wait_for(&figure, &Value::from(value)).await
}

async fn choose_from(page: &Page, list: &str, label: &str) -> Result<()> {
    let list = page.find(list).await?;
    Ok(list.select_by_label(label).await?)
}

#[tokio::test]
async fn the_handbooks_example_is_typed_and_read_off() -> Result<()> {
    let site = serve_dist()?;
    let page = open_dovetails(&site).await?;
    // From another joint, so that every number is really typed.
    for (field, other, text) in [
        ("#joint-width", "90", "140"),
        ("#joint-thickness-a", "16", "12"),
        ("#joint-thickness-b", "12", "18"),
        ("#dovetail-tails", "3", "4"),
        ("#dovetail-run", "6", "8"),
        ("#dovetail-narrow-pin", "4", "5"),
        ("#dovetail-half-pin", "5", "6"),
    ] {
        page.replace_text(field, other).await?;
        page.replace_text(field, text).await?;
    }
    // Derived: (140 − 3 · 5 − 2 · 6) / 4 = 28.25 at the tip; 2 · 18 / 8 = 4.5 less at the baseline.
    reads(&page, "Tails", "28.25 to 23.75 mm").await?;
    reads(&page, "Pins", "5 to 9.5 mm").await?;
    reads(&page, "Half-pins", "6 to 8.25 mm").await?;
    reads(&page, "Slope", "1:8, 7.125°").await?;
    shows(&page, &worked()).await?;
    assert_eq!(plan(&worked())?.sets.len(), 5);
    page.assert_quiet().await
}

#[tokio::test]
async fn each_way_of_asking_is_the_cores() -> Result<()> {
    let site = serve_dist()?;
    let page = open_dovetails(&site).await?;
    for (way, request) in [
        ("tail to pin", by_rule(ByRequest::ratio(3.0))),
        ("tails and pins alike", by_rule(ByRequest::kind("equal"))),
        (
            "as narrow as the blade",
            DovetailRequest {
                half_pin: 6.0.into(),
                ..by_rule(ByRequest::kind("narrowest"))
            },
        ),
        ("by their widths", worked()),
    ] {
        choose_from(&page, "#dovetail-pins", way).await?;
        shows(&page, &request).await?;
    }
    page.choose("slope-by", "in degrees").await?;
    let degrees = DovetailRequest {
        slope: SlopeRequest::angle(8.0).into(),
        ..worked()
    };
    shows(&page, &degrees).await?;
    page.press(FOLD).await?;
    choose_from(&page, "#pin-cutter", "Straight bit").await?;
    let with_a_bit = DovetailRequest {
        pin_cutter: CutterRequest {
            kerf: 6.35.into(),
            ..CutterRequest::default()
        }
        .into(),
        ..degrees
    };
    shows(&page, &with_a_bit).await?;
    page.assert_quiet().await
}

#[tokio::test]
async fn a_number_of_tails_is_picked_and_taken_back() -> Result<()> {
    let site = serve_dist()?;
    let page = open_dovetails(&site).await?;
    page.choose("tails", "3").await?;
    let three = DovetailRequest {
        tails: 3.0.into(),
        ..worked()
    };
    shows(&page, &three).await?;
    page.click("button[aria-label=Undo]").await?;
    shows(&page, &worked()).await?;
    page.click("button[aria-label=Undo]").await?;
    see(&page, ".facts", "Finger width").await?;
    page.assert_quiet().await
}

#[tokio::test]
async fn a_bookmark_carries_them_to_another_device() -> Result<()> {
    let site = serve_dist()?;
    let page = open_dovetails(&site).await?;
    type_width(&page, "163.5").await?;
    page.replace_text("#dovetail-weights", "1 2 2 1").await?;
    let request = DovetailRequest {
        width: 163.5.into(),
        weights: [1.0, 2.0, 2.0, 1.0].map(Given::from).to_vec().into(),
        ..worked()
    };
    shows(&page, &request).await?;
    let address = bookmark(&page).await?;
    page.assert_quiet().await?;
    drop(page);

    let page = open_on(&address, &View::phone()).await?;
    shows(&page, &request).await?;
    page.assert_quiet().await
}
