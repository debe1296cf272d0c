//! What is made: drawers that become joints and parts, parts that follow their stock, and the
//! sheets that they are cut from.

mod drawer;
mod list;
mod sheets;

pub(crate) use drawer::ask_for_dovetails;

use anyhow::Result;
use notchwright_tests::browser::{Page, Site};
use serde_json::json;

use crate::steps::open;

/// The first visit to the parts' place, which opens on the drawers.
async fn open_parts(site: &Site) -> Result<Page> {
    let page = open(site).await?;
    page.press("Parts").await?;
    page.find(".main.parts .found").await?;
    Ok(page)
}

async fn choose_tool(page: &Page, name: &str) -> Result<()> {
    page.choose("parts-tool", name).await
}

/// The texts of these cells in the last rows of a list.
async fn last_rows(page: &Page, list: &str, cells: &[&str], rows: &[&[&str]]) -> Result<()> {
    let script = format!(
        "((cells, count) => [...document.querySelectorAll('{list} > li')].slice(-count)
            .map((row) => cells.map((cell) => row.querySelector(`input[id$='-${{cell}}']`).value)))
            ({}, {})",
        json!(cells),
        rows.len()
    );
    page.wait_for(&script, &json!(rows)).await
}

/// Waits until a list has so many rows.
async fn has_rows(page: &Page, list: &str, count: usize) -> Result<()> {
    let script = format!("document.querySelectorAll('{list} > li').length");
    page.wait_for(&script, &json!(count)).await
}
