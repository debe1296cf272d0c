//! The numbered parts: sums over the stock, tables of a spreadsheet, the sled's own.

use anyhow::Result;
use notchwright_tests::browser::{Page, serve_dist};
use serde_json::json;

use super::{choose_tool, has_rows, last_rows, open_parts};
use crate::steps::{holds, open, see, see_nothing};

const ROWS: &str = ".parts-rows";

async fn open_list(page: &Page) -> Result<()> {
    choose_tool(page, "Parts").await?;
    page.find(ROWS).await?;
    Ok(())
}

/// 300 less twice 15 is 270, and 268 of 16.
#[tokio::test]
async fn a_sum_follows_the_stock_and_says_by_how_much() -> Result<()> {
    let site = serve_dist()?;
    let page = open_parts(&site).await?;
    open_list(&page).await?;
    page.replace_text("#stock-1-thickness", "15").await?;
    page.press("That is settled").await?;
    page.replace_text("#part-1-width", "300 - 2*t").await?;
    let first = ".parts-rows > li:first-child .size";
    see(&page, first, "560 × 270 mm").await?;
    see_nothing(&page, &format!("{first} .changed")).await?;

    page.replace_text("#stock-1-thickness", "16").await?;
    see(&page, ".changed[role=status]", "It was 15 mm").await?;
    see(&page, first, "560 × 268 mm").await?;
    see(
        &page,
        &format!("{first} .changed"),
        "Width was 270 mm: −2 mm.",
    )
    .await?;

    // The allowance follows, too.
    page.press("Stock and grain").await?;
    page.replace_text("#part-1-trim", "t/4").await?;
    see(&page, first, "Trim at each side was 3.75 mm: +0.25 mm.").await?;
    page.press("That is settled").await?;
    see_nothing(&page, &format!("{first} .changed")).await?;
    page.assert_quiet().await
}

#[tokio::test]
async fn a_wrong_name_is_said_beside_its_cell_and_kept() -> Result<()> {
    let site = serve_dist()?;
    let page = open_parts(&site).await?;
    open_list(&page).await?;
    page.replace_text("#part-1-width", "hihg - 2*t").await?;
    let says = "There is no measure «hihg»; write «high»?";
    see(&page, "#part-1-width-problem", says).await?;
    // The rest is still worked out.
    see(&page, ".parts-rows > li:first-child .size", "560 × ? mm").await?;
    see(&page, ".parts-rows > li:nth-child(2) .size", "900 × 140 mm").await?;
    page.reload().await?;
    holds(&page, "#part-1-width", "hihg - 2*t").await?;
    see(&page, "#part-1-width-problem", says).await?;
    page.replace_text("#part-1-width", "high - 2*t").await?;
    see(&page, ".parts-rows > li:first-child .size", "560 × 116 mm").await?;
    page.assert_quiet().await
}

const TABLE: &str = "Name\tCount\tLength\tWidth\tStock\tMay turn\tTrim\n\
    Shelf\t3\t300 - 2*t\t200\tAsh, 18\t\t2\n\
    Back\tmany\t600\t400\tHardboard\tyes\t\n";

/// What is pasted comes with one keystroke, whatever is in it.
async fn paste(page: &Page, text: &str) -> Result<()> {
    page.click(".outcome textarea").await?;
    page.devtools("Input.insertText", json!({ "text": text }))
        .await?;
    Ok(())
}

#[tokio::test]
async fn a_table_is_pasted_and_copied_again() -> Result<()> {
    let site = serve_dist()?;
    let page = open_parts(&site).await?;
    open_list(&page).await?;
    page.press("To and from a spreadsheet").await?;
    paste(&page, TABLE).await?;
    see(&page, ".notice", "Parts added: 2.").await?;
    page.press("OK").await?;
    has_rows(&page, ROWS, 6).await?;
    let cells = ["name", "count", "length", "width"];
    let rows: [&[&str]; 2] = [
        &["Shelf", "3", "300 - 2*t", "200"],
        &["Back", "many", "600", "400"],
    ];
    last_rows(&page, ROWS, &cells, &rows).await?;
    holds(&page, ".outcome textarea", "").await?;
    // A stock that was not there is, and waits to be measured; what cannot be read stays as it is.
    holds(&page, "#stock-4-name", "Hardboard").await?;
    see(&page, "#part-6-count-problem", "number").await?;

    let permissions = json!({ "permissions": ["clipboardReadWrite", "clipboardSanitizedWrite"] });
    page.devtools("Browser.grantPermissions", permissions)
        .await?;
    page.press("Copy all parts as a table").await?;
    see(&page, ".notices", "Copied.").await?;
    let copied = page.evaluate("navigator.clipboard.readText()").await?;
    let copied = copied.as_str().unwrap_or_default();
    let lines: Vec<_> = copied.lines().collect();
    assert_eq!(lines.len(), 7, "{copied}");
    assert_eq!(lines[5], "Shelf\t3\t300 - 2*t\t200\tAsh, 18\t\t2\t");
    assert_eq!(lines[6], "Back\tmany\t600\t400\tHardboard\tyes\t\t");
    page.assert_quiet().await
}

#[tokio::test]
async fn the_sled_is_parts_with_one_tap() -> Result<()> {
    let site = serve_dist()?;
    let page = open(&site).await?;
    page.press("Sled").await?;
    page.choose("tool", "Base").await?;
    page.press("Add its parts to this job").await?;
    see(&page, ".notice", "Parts added: 3.").await?;
    page.press("OK").await?;
    page.press("Add its parts to this job").await?;
    see(
        &page,
        ".notices",
        "All these parts are there, and up to date.",
    )
    .await?;
    page.press("Parts").await?;
    open_list(&page).await?;
    has_rows(&page, ROWS, 7).await?;
    let rows: [&[&str]; 3] = [
        &["Base", "base_length", "base_width"],
        &["Front rail", "base_width", ""],
        &["Runner", "runner_length", "runner_width"],
    ];
    last_rows(&page, ROWS, &["name", "length", "width"], &rows).await?;
    see(&page, ".parts-rows > li:nth-child(5) .size", "560 × 520 mm").await?;
    page.assert_quiet().await
}
