//! A chest of drawers: its boards, its joint, its parts.
//!
//! The figures are derived as in the core's example of the chest: 900 less twice 10 is 880, and of 640 in height each
//! of eight is left 69.25 at the dampest, 68.4993 as it is cut.

use anyhow::Result;
use notchwright_tests::browser::{Page, serve_dist};
use serde_json::json;

use super::{choose_tool, has_rows, last_rows, open_parts};
use crate::access::assert_usable;
use crate::steps::{holds, see, see_nothing};

/// The boards as they are listed: name, size and number.
const BOARDS: &str = "[...document.querySelectorAll('.outcome .section:has(h2)')]
    .filter((section) => section.querySelector('h2').textContent === 'Boards')
    .flatMap((section) => [...section.querySelectorAll('.facts > div')])
    .map((row) => [row.querySelector('dt').textContent, row.querySelector('dd').textContent])";

#[tokio::test]
async fn the_form_says_every_board() -> Result<()> {
    let site = serve_dist()?;
    let page = open_parts(&site).await?;
    for (width, front, bottom) in [("900", "880", "867"), ("920", "900", "887")] {
        page.replace_text("#drawer-width", width).await?;
        let boards = json!([
            ["drawer side", "590 × 68.5 × 12 mm16 of them"],
            ["drawer front", format!("{front} × 68.5 × 14 mm8 of them")],
            ["drawer back", format!("{front} × 68.5 × 14 mm8 of them")],
            [
                "drawer bottom",
                format!("{bottom} × 573 × 5.8 mm8 of them, grain either way")
            ],
        ]);
        page.wait_for(BOARDS, &boards).await?;
        see_nothing(&page, ".found.stale").await?;
    }
    page.replace_text("#drawer-width", "30").await?;
    see(&page, "#drawer-width-problem", "at least").await?;
    page.find(".found.stale").await?;
    page.assert_quiet().await
}

#[tokio::test]
async fn it_goes_on_as_a_joint() -> Result<()> {
    let site = serve_dist()?;
    let page = open_parts(&site).await?;
    page.press("To Joint").await?;
    for (field, text) in [
        ("#joint-width", "68.5"),
        ("#joint-thickness-a", "12"),
        ("#joint-thickness-b", "14"),
    ] {
        holds(&page, field, text).await?;
    }
    see(&page, ".verdict strong", "It fits.").await?;
    let label = page.attributes(".drawing.boards", "aria-label").await?;
    assert!(
        label[0].ends_with("7 fingers of 9.79 mm on 68.5 mm."),
        "{label:?}"
    );
    page.assert_quiet().await
}

/// Only the parts' own chunk has come when they are planned.
#[tokio::test]
async fn dovetailed_corners_go_on_as_dovetails() -> Result<()> {
    let site = serve_dist()?;
    let page = open_parts(&site).await?;
    ask_for_dovetails(&page).await?;
    see(&page, ".outcome .facts", "Tails2").await?;
    assert_usable(&page, "dovetailed drawers").await?;
    page.press("To Joint").await?;
    holds(&page, "#joint-width", "68.5").await?;
    holds(&page, "#dovetail-run", "8").await?;
    see(&page, ".verdict strong", "It fits").await?;
    page.assert_quiet().await
}

/// Half-blind in front and through at the back: 590 less a lap of 5 are the sides, and 590 − 19 − 10 + 2·(5 − 0.5) is the
/// bottom. The groove of 5.8 + 0.1 takes a bit of 5 twice. A second tap brings both joints up to date.
#[tokio::test]
async fn a_half_blind_front_and_a_through_back_are_two_joints() -> Result<()> {
    let site = serve_dist()?;
    let page = open_parts(&site).await?;
    ask_for_dovetails(&page).await?;
    for (field, text) in [
        ("front", "19"),
        ("back", "10"),
        ("lap", "5"),
        ("backLap", "0"),
        ("grooveDepth", "5"),
        ("grooveBit", "5"),
    ] {
        page.replace_text(&format!("#drawer-{field}"), text).await?;
    }
    let boards = json!([
        ["drawer side", "585 × 68.5 × 12 mm16 of them"],
        ["drawer front", "880 × 68.5 × 19 mm8 of them"],
        ["drawer back", "880 × 68.5 × 10 mm8 of them"],
        [
            "drawer bottom",
            "865 × 570 × 5.8 mm8 of them, grain either way"
        ],
    ]);
    page.wait_for(BOARDS, &boards).await?;
    see(&page, ".outcome .facts", "Fence to the bit10, 10.9 mm").await?;
    assert_usable(&page, "drawers with two kinds of ends").await?;
    page.press("To Joint").await?;
    corner(&page, "19", "5", "Half-blind").await?;
    page.press("Parts").await?;
    page.replace_text("#drawer-back", "11").await?;
    page.press("To Joint").await?;
    see(
        &page,
        ".notice",
        "Brought up to date: Drawer, sides to back.",
    )
    .await?;
    corner(&page, "19", "5", "Half-blind").await?;
    page.press("Jobs").await?;
    page.press("Open Drawer, sides to back").await?;
    page.press("Joint").await?;
    corner(&page, "11", "0", "It fits").await?;
    page.assert_quiet().await
}

/// The open joint is cut on this board with this lap, and is answered.
async fn corner(page: &Page, thickness: &str, lap: &str, verdict: &str) -> Result<()> {
    holds(page, "#joint-thickness-b", thickness).await?;
    holds(page, "#dovetail-lap", lap).await?;
    see(page, ".verdict strong", verdict).await
}

/// From the worked chest to dovetails that fit it.
pub(crate) async fn ask_for_dovetails(page: &Page) -> Result<()> {
    page.choose("drawer-joint", "dovetails").await?;
    for (field, text) in [
        ("tails", "2"),
        ("narrowPin", "6"),
        ("halfPin", "8"),
        ("run", "8"),
    ] {
        page.replace_text(&format!("#drawer-{field}"), text).await?;
    }
    see_nothing(page, ".found.stale").await
}

#[tokio::test]
async fn its_boards_become_parts_once() -> Result<()> {
    let site = serve_dist()?;
    let page = open_parts(&site).await?;
    page.press("To Parts").await?;
    let cells = ["name", "count", "length", "width"];
    let parts = |front, bottom| {
        [
            ["Drawer side", "16", "590", "68.5"],
            ["Drawer front", "8", front, "68.5"],
            ["Drawer back", "8", front, "68.5"],
            ["Drawer bottom", "8", bottom, "573"],
        ]
    };
    let are = async |front, bottom| {
        let parts = parts(front, bottom);
        let rows: Vec<&[&str]> = parts.iter().map(<[_; 4]>::as_slice).collect();
        has_rows(&page, ".parts-rows", 8).await?;
        last_rows(&page, ".parts-rows", &cells, &rows).await
    };
    are("880", "867").await?;
    see(&page, ".notice", "Parts added: 4.").await?;

    page.replace_text("#part-7-length", "chest - 20").await?;
    choose_tool(&page, "Drawer").await?;
    page.replace_text("#drawer-width", "920").await?;
    see_nothing(&page, ".found.stale").await?;
    page.press("To Parts").await?;
    see(
        &page,
        ".notice[role=alert]",
        "Brought up to date: 2. What you typed stays: Drawer back, length.",
    )
    .await?;
    holds(&page, "#part-6-length", "900").await?;
    holds(&page, "#part-7-length", "chest - 20").await?;
    has_rows(&page, ".parts-rows", 8).await?;
    page.press("Undo").await?;
    holds(&page, "#part-6-length", "880").await?;
    page.assert_quiet().await
}
