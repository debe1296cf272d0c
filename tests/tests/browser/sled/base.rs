//! The base's drawing as a file and on paper, and its holes at full size.

use anyhow::{Context, Result};
use notchwright_core::drawing::svg::{number, path, view_box};
use notchwright_core::drawing::{Paper, Role, Shape, hole_line_tiles, sled_base};
use notchwright_core::units::Unit;
use notchwright_tests::browser::{Downloads, Page, serve_dist};
use serde_json::{Value, json};

use super::asked::Asked;
use super::{choose_tool, open_sled};
use crate::answer::bare;
use crate::steps::see_nothing;

async fn print(page: &Page) -> Result<()> {
    page.devtools("Emulation.setEmulatedMedia", json!({ "media": "print" }))
        .await?;
    page.evaluate("void window.dispatchEvent(new Event('beforeprint'))")
        .await?;
    Ok(())
}

/// How many pages are printed, as the style sheets want their paper.
async fn pages(page: &Page) -> Result<Value> {
    let printed = page
        .devtools("Page.printToPDF", json!({ "preferCSSPageSize": true }))
        .await?;
    let data = printed.pointer("/data").context("nothing was printed")?;
    page.evaluate(&format!(
        "(atob({data}).match(/\\/Type\\s*\\/Page\\b(?!s)/g) ?? []).length"
    ))
    .await
}

#[tokio::test]
async fn the_drawing_is_saved_as_a_file() -> Result<()> {
    let site = serve_dist()?;
    let page = open_sled(&site).await?;
    choose_tool(&page, "Base").await?;
    let plan = Asked::worked().plan()?;
    let drawing = sled_base(&plan);
    let boxes = page.attributes(".base-drawing svg", "viewBox").await?;
    assert_eq!(boxes, [view_box(&drawing)]);

    let downloads = Downloads::new("base");
    let saved = page
        .saved(&downloads, "sled-base.svg", page.press("Save as SVG"))
        .await?;
    assert!(saved.starts_with("<svg xmlns="), "{saved}");
    assert!(saved.contains(&format!("viewBox=\"{}\"", view_box(&drawing))));
    let from_left = bare(plan.runner.from_base_left, Unit::Mm);
    assert!(saved.contains(&from_left), "no {from_left} in {saved}");
    // Dressed where no style sheet of the page's is; the page itself may not parse styles.
    let (head, rest) = saved.split_once("<style>").context("no style")?;
    let (style, body) = rest.split_once("</style>").context("no end of the style")?;
    assert!(style.contains(".sled-base"), "{style}");
    let elements = format!(
        "((it) => [it.documentElement.localName, it.querySelectorAll('parsererror').length, it.querySelectorAll('.hole').length > 0])
            (new DOMParser().parseFromString({}, 'image/svg+xml'))",
        json!(format!("{head}{body}"))
    );
    assert_eq!(page.evaluate(&elements).await?, json!(["svg", 0, true]));
    page.assert_quiet().await
}

#[tokio::test]
async fn the_drawing_is_printed_alone_on_a_page() -> Result<()> {
    let site = serve_dist()?;
    let page = open_sled(&site).await?;
    choose_tool(&page, "Base").await?;
    print(&page).await?;
    let left = "[...document.querySelectorAll('button, input, select, summary')].filter((it) => it.checkVisibility()).length";
    page.wait_for(left, &json!(0)).await?;
    page.wait_until(
        "document.querySelector('.main.sled .for-paper').innerText.includes('Base of Joint sled')",
    )
    .await?;
    page.wait_until("document.querySelector('.base-drawing svg').checkVisibility()")
        .await?;
    assert_eq!(pages(&page).await?, 1);
    page.assert_quiet().await
}

/// Width, height and box of each sheet as they are written, and its width as it is laid out, in millimetres.
const SHEETS: &str = "[...document.querySelectorAll('.tile svg')].map((it) => [
    it.getAttribute('width'), it.getAttribute('height'), it.getAttribute('viewBox'),
    (it.getBoundingClientRect().width / 96 * 25.4).toFixed(1),
])";

/// The lines that are as long as they say: two ends of `d`, one above the other, 100 apart.
const BARS: &str = "[...document.querySelectorAll('.tile svg')].map((svg) =>
    [...svg.querySelectorAll('path.line.dimension')]
        .flatMap((it) => it.getAttribute('d').split('M').slice(1))
        .map((line) => line.split('L').map((place) => place.split(' ').map(Number)))
        .filter(([[x, y], [u, v]]) => x === u && Math.abs(Math.abs(v - y) - 100) < 1e-9).length)";

#[tokio::test]
async fn the_hole_line_is_printed_at_full_size() -> Result<()> {
    let site = serve_dist()?;
    let page = open_sled(&site).await?;
    choose_tool(&page, "Base").await?;
    page.choose("prints", "the hole line").await?;
    for (name, paper) in [("A4", Paper::A4), ("Letter", Paper::Letter)] {
        page.choose("paper", name).await?;
        let tiles = hole_line_tiles(&Asked::worked().plan()?, paper);
        assert!(tiles.len() > 1, "{} sheets", tiles.len());
        print(&page).await?;
        let sheets = tiles.iter().map(|tile| {
            let (width, height) = (number(tile.width), number(tile.height));
            json!([
                format!("{width}mm"),
                format!("{height}mm"),
                format!("0 0 {width} {height}"),
                format!("{:.1}", tile.width.mm()),
            ])
        });
        page.wait_for(SHEETS, &sheets.collect()).await?;
        let bars = page.evaluate(BARS).await?;
        assert_eq!(bars, tiles.iter().map(|_| 1).collect::<Value>());
        let holes = page.attributes(".tile .area.hole", "d").await?;
        let wanted = tiles.iter().flat_map(|tile| &tile.items);
        let wanted = wanted.filter_map(|item| match (&item.shape, item.role) {
            (Shape::Polygons { polygons }, Role::Hole) => Some(path(polygons, true)),
            _ => None,
        });
        assert_eq!(holes, wanted.collect::<Vec<_>>());
        assert_eq!(pages(&page).await?, tiles.len(), "{name}");
        page.devtools("Emulation.setEmulatedMedia", json!({ "media": "screen" }))
            .await?;
        page.evaluate("void window.dispatchEvent(new Event('afterprint'))")
            .await?;
    }
    page.assert_quiet().await
}

#[tokio::test]
async fn a_runner_without_holes_says_what_is_missing() -> Result<()> {
    let site = serve_dist()?;
    let page = open_sled(&site).await?;
    page.press("The sled").await?;
    page.replace_text("#sled-1-hole-clearance", "").await?;
    page.replace_text("#sled-1-holes", "").await?;
    see_nothing(&page, ".found.stale").await?;
    choose_tool(&page, "Base").await?;
    page.choose("prints", "the hole line").await?;
    crate::steps::see(&page, ".found", "The runner has no holes yet").await?;
    see_nothing(&page, ".tile").await?;
    page.assert_quiet().await
}
