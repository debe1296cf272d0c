//! Two numbers, and there is an answer.

use anyhow::Result;
use notchwright_core::units::write_number;
use notchwright_tests::browser::{Key, View, serve_dist};

use crate::answer::{plan, worked};
use crate::steps::{open, open_on, see, see_nothing, shows, type_width};

#[tokio::test]
async fn it_opens_on_a_worked_joint() -> Result<()> {
    let site = serve_dist()?;
    let page = open(&site).await?;
    see(&page, ".verdict strong", "It fits.").await?;
    shows(&page, &worked(140.0)).await?;
    for board in ["board-a", "board-b"] {
        let outlines = page
            .attributes(&format!(".drawing.boards path.{board}"), "d")
            .await?;
        // Nine fingers have more corners than a plain board.
        assert!(
            outlines.iter().any(|it| it.matches('L').count() > 9 * 2),
            "{board}: {outlines:?}"
        );
    }
    page.assert_quiet().await
}

/// Whether a number is wider than the field that shows it.
const CUT_OFF: &str = "[...document.querySelectorAll('.fields.boards input')]
    .filter((it) => it.scrollWidth > it.clientWidth).map((it) => it.id)";

#[tokio::test]
async fn no_figure_of_an_awkward_board_is_cut_off() -> Result<()> {
    let site = serve_dist()?;
    for view in [View::phone(), View::desktop()] {
        let page = open_on(&site.url(), &view).await?;
        for (field, text) in [
            ("#joint-width", "1217.35"),
            ("#joint-thickness-a", "11.65"),
            ("#joint-thickness-b", "11.6"),
        ] {
            page.replace_text(field, text).await?;
            page.wait_for(CUT_OFF, &serde_json::json!([])).await?;
        }
        page.assert_quiet().await?;
    }
    Ok(())
}

#[tokio::test]
async fn another_width_changes_everything_at_once() -> Result<()> {
    let site = serve_dist()?;
    let page = open(&site).await?;
    let before = page.attributes(".drawing path", "d").await?;
    type_width(&page, "163.7").await?;

    let request = worked(163.7);
    shows(&page, &request).await?;
    see(&page, ".verdict strong", "It fits.").await?;
    let finger = write_number(plan(&request)?.finger_width.mm(), 2);
    see(&page, ".facts", &format!("Finger width{finger} mm")).await?;
    let label = page.attributes(".drawing.boards", "aria-label").await?;
    assert!(
        label[0].ends_with(&format!("9 fingers of {finger} mm on 163.7 mm.")),
        "{label:?}"
    );
    assert_ne!(page.attributes(".drawing path", "d").await?, before);
    page.assert_quiet().await
}

#[tokio::test]
async fn each_keystroke_is_answered() -> Result<()> {
    let site = serve_dist()?;
    let page = open(&site).await?;
    type_width(&page, "15").await?;
    page.find("#joint-count[aria-invalid=true]").await?;
    for (key, width) in [("0", 150.0), (".", 150.0), ("5", 150.5)] {
        page.find("#joint-width").await?.send_keys(key).await?;
        shows(&page, &worked(width)).await?;
    }
    page.assert_quiet().await
}

/// Not even by the form's own key, and without the parts of the program that come later.
#[tokio::test]
async fn enter_in_a_field_changes_nothing() -> Result<()> {
    let site = serve_dist()?;
    let page = open(&site).await?;
    type_width(&page, "150.5").await?;
    page.key(Key::Enter).await?;
    shows(&page, &worked(150.5)).await?;
    page.assert_quiet().await
}

#[tokio::test]
async fn undo_brings_back_what_was_typed_over() -> Result<()> {
    let site = serve_dist()?;
    let page = open(&site).await?;
    type_width(&page, "150.5").await?;
    shows(&page, &worked(150.5)).await?;
    page.click("button[aria-label=Undo]").await?;
    shows(&page, &worked(140.0)).await?;
    page.click("button[aria-label=Redo]").await?;
    shows(&page, &worked(150.5)).await?;
    see_nothing(&page, "button[aria-label=Redo]:not([disabled])").await?;
    page.assert_quiet().await
}
