//! The sled anywhere on its stroke, and a runner that leaves the table.

use anyhow::{Context, Result};
use notchwright_core::drawing::svg::path;
use notchwright_core::drawing::{Drawing, Role, Shape, sled_travel_plan};
use notchwright_core::sled::SledFitPlan;
use notchwright_core::units::Unit;
use notchwright_tests::browser::{Key, Page, serve_dist};
use serde_json::json;

use super::asked::Asked;
use super::{open_sled, shows_fit};
use crate::answer::{bare, sentence};
use crate::steps::{holds, see};

/// From above: where the sled's base is, the contacts that are on the table and off it, and what is said of those.
const PICTURE: &str = "((svg) => [
    ...['sled-base', 'contact', 'contact-off'].map((role) =>
        [...svg.querySelectorAll(`path.area.${role}`)].map((it) => it.getAttribute('d'))),
    [...svg.querySelectorAll('text.contact-off')].map((it) => it.textContent),
])(document.querySelector('.stroke svg'))";

fn outlines(drawing: &Drawing, role: Role) -> Vec<String> {
    let items = drawing.items.iter().filter(|item| item.role == role);
    let areas = items.filter_map(|item| match &item.shape {
        Shape::Polygons { polygons } => Some(path(polygons, true)),
        _ => None,
    });
    areas.collect()
}

fn texts(drawing: &Drawing, role: Role) -> Vec<String> {
    let items = drawing.items.iter().filter(|item| item.role == role);
    let texts = items.filter_map(|item| match &item.shape {
        Shape::Text { text, .. } => Some(text.show(|mm| bare(mm, Unit::Mm))),
        _ => None,
    });
    texts.collect()
}

/// Waits until the picture is the core's with the sled pushed through by so many thousandths, and says
/// whether any contact is off the table in it.
async fn is_pushed(page: &Page, plan: &SledFitPlan, thousandths: u32) -> Result<bool> {
    holds(page, "#pushed", &thousandths.to_string()).await?;
    let drawing = sled_travel_plan(plan, f64::from(thousandths) / 1000.0);
    let off = outlines(&drawing, Role::ContactOff);
    let wanted = json!([
        outlines(&drawing, Role::SledBase),
        outlines(&drawing, Role::Contact),
        off,
        texts(&drawing, Role::ContactOff),
    ]);
    page.wait_for(PICTURE, &wanted).await?;
    Ok(!off.is_empty())
}

/// A runner so long that its far contact goes over the table's rear edge on the last part of its way.
async fn lengthen_the_runner(page: &Page) -> Result<Asked> {
    page.press("The sled").await?;
    page.replace_text("#sled-1-contact-far", "560").await?;
    let mut asked = Asked::worked();
    asked.runner.contact_far = 560.0.into();
    shows_fit(page, &asked.plan()?).await?;
    Ok(asked)
}

#[tokio::test]
async fn the_picture_moves_with_the_buttons_and_the_slider() -> Result<()> {
    let site = serve_dist()?;
    let page = open_sled(&site).await?;
    let plan = lengthen_the_runner(&page).await?.plan()?;
    page.press("Pulled back").await?;
    assert!(!is_pushed(&page, &plan, 0).await?);
    page.press("Pushed through").await?;
    assert!(is_pushed(&page, &plan, 1000).await?);
    page.find(".mover .button:last-child[aria-pressed=true]")
        .await?;

    // With the contact at the very edge the face is as far before its end as the contact then hangs over.
    let over = plan.runner.far_left.mm().abs() / plan.travel.length.mm();
    let steps = (over * 100.0).floor();
    let slider = page.find("#pushed").await?;
    let mut pushed = 1000;
    while f64::from(1000 - pushed) < steps * 10.0 {
        slider.send_keys(&char::from(Key::Left).to_string()).await?;
        pushed -= 10;
    }
    assert!(is_pushed(&page, &plan, pushed).await?, "still off");
    slider.send_keys(&char::from(Key::Left).to_string()).await?;
    assert!(!is_pushed(&page, &plan, pushed - 10).await?, "on again");
    page.assert_quiet().await
}

#[tokio::test]
async fn a_runner_that_leaves_the_table_is_marked_and_said() -> Result<()> {
    let site = serve_dist()?;
    let page = open_sled(&site).await?;
    let mut asked = lengthen_the_runner(&page).await?;
    for (contact_far, code) in [(560.0, "leaves-table"), (640.0, "runner-too-long")] {
        page.replace_text("#sled-1-contact-far", &contact_far.to_string())
            .await?;
        asked.runner.contact_far = contact_far.into();
        let answer = asked.answer()?;
        shows_fit(&page, &answer.plan).await?;
        let mut notes = answer.notes.iter();
        let warning = notes.find(|note| note.code == code);
        let says = sentence(&warning.context(code)?.message);
        see(
            &page,
            ".found .verdict strong",
            "The runner leaves the table.",
        )
        .await?;
        see(&page, ".found .verdict", &says).await?;
        page.press("Pushed through").await?;
        is_pushed(&page, &answer.plan, 1000).await?;
        let words = page.evaluate("document.querySelector('.stroke text.contact-off').textContent");
        let words = words.await?;
        let far_left = -answer.plan.runner.far_left;
        let length = bare(far_left, Unit::Mm);
        assert!(
            words
                .as_str()
                .unwrap_or_default()
                .starts_with(&format!("{length} off")),
            "{words}"
        );
    }
    page.assert_quiet().await
}
