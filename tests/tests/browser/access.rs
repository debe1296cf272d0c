//! Every screen can be read, reached and hit, whatever it is seen on.

use anyhow::Result;
use notchwright_tests::browser::{Page, View, Violation, serve_dist};
use serde_json::json;

use crate::screens::walk;
use crate::steps::open_on;

/// Least size of what is tapped, in CSS pixels: anywhere, and at the saw, where hands wear gloves.
const TARGET: u32 = 48;
const TARGET_AT_SAW: u32 = 64;

/// What is smaller than the least size; a field or a choice is as large as the label around it. Names
/// that are typed where they are read need 44 pixels, the least that WCAG 2.2 has in criterion 2.5.5.
const TOO_SMALL: &str = "((least) =>
    [...document.querySelectorAll('a[href], button, input, select, summary, textarea')]
        .filter((it) => !it.disabled && it.checkVisibility())
        .map((it) => [it, (it.closest('label') ?? it).getBoundingClientRect()])
        .filter(([it, { width, height }]) => Math.min(width, height) < (it.matches('h1 ~ input') ? 44 : least) - 0.1)
        .map(([it, { width, height }]) =>
            `${it.tagName} ${it.id || it.textContent.trim() || it.ariaLabel}: ${width.toFixed()} x ${height.toFixed()}`))";

const TOO_WIDE: &str = "((root) => root.scrollWidth > root.clientWidth
    ? [...document.querySelectorAll('body *')]
        .filter((it) => it.getBoundingClientRect().right > root.clientWidth + 0.5)
        .map((it) => `${it.tagName}.${it.getAttribute('class')} ends at ${it.getBoundingClientRect().right.toFixed()}`)
        .concat(`${root.scrollWidth} in ${root.clientWidth}`)
    : [])(document.documentElement)";

/// Numbers that show without their last figures.
const CUT_OFF: &str =
    "[...document.querySelectorAll('.field input:not(.text, [type=radio], [type=checkbox])')]
    .filter((it) => it.ariaInvalid !== 'true' && it.checkVisibility() && it.scrollWidth > it.clientWidth)
    .map((it) => `${it.id} cuts off ${it.value}`)";

/// What does not fit the screen or its field, and what is too small to be hit.
async fn misfits(page: &Page, name: &str) -> Result<Vec<String>> {
    let at_saw = page
        .evaluate("document.querySelector('.saw') !== null")
        .await?
        == json!(true);
    let least = if at_saw { TARGET_AT_SAW } else { TARGET };
    let mut found = Vec::new();
    for script in [&format!("{TOO_SMALL}({least})"), TOO_WIDE, CUT_OFF] {
        let them: Vec<String> = serde_json::from_value(page.evaluate(script).await?)?;
        found.extend(them.into_iter().map(|it| format!("{name}: {it}")));
    }
    Ok(found)
}

async fn barriers(page: &Page, name: &str) -> Result<Vec<String>> {
    let found = page.violations().await?;
    let serious = found.iter().filter(|it| it.is_serious());
    Ok(serious
        .map(|it: &Violation| format!("{name}: {it}"))
        .collect())
}

/// Fails when anything on one screen is too small, too wide, or found by axe-core.
pub(crate) async fn assert_usable(page: &Page, name: &str) -> Result<()> {
    let mut found = misfits(page, name).await?;
    found.extend(barriers(page, name).await?);
    assert!(found.is_empty(), "{}", found.join("\n"));
    Ok(())
}

/// Looks at every screen for what is too small, too wide, and for what axe-core finds.
async fn check(view: &View) -> Result<()> {
    let site = serve_dist()?;
    let page = open_on(&site.url(), view).await?;
    let mut found = Vec::new();
    walk(&page, async |name| {
        found.extend(misfits(&page, name).await?);
        found.extend(barriers(&page, name).await?);
        Ok(())
    })
    .await?;
    assert!(found.is_empty(), "{}", found.join("\n"));
    page.assert_quiet().await
}

#[tokio::test]
async fn every_screen_can_be_used_on_a_phone() -> Result<()> {
    check(&View::phone()).await
}

#[tokio::test]
async fn every_screen_can_be_used_on_a_phone_in_the_dark() -> Result<()> {
    check(&View::phone().dark()).await
}

#[tokio::test]
async fn every_screen_can_be_used_on_the_narrowest_phone() -> Result<()> {
    check(&View::narrow()).await
}

#[tokio::test]
async fn every_screen_can_be_used_with_type_twice_as_large() -> Result<()> {
    check(&View::phone().large_type()).await
}

#[tokio::test]
async fn every_screen_can_be_used_at_a_desk() -> Result<()> {
    check(&View::desktop()).await
}

#[tokio::test]
async fn every_screen_can_be_used_at_a_desk_in_the_dark() -> Result<()> {
    check(&View::desktop().dark()).await
}
