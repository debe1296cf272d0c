//! What comes in by keys, and all that can be done without a mouse and without a finger.

use anyhow::{Result, bail};
use notchwright_tests::browser::{Key, Page, View, serve_dist};
use serde_json::json;

use crate::answer::{plan, worked};
use crate::screens::walk;
use crate::steps::{is_at, open, open_on, shows};

/// Whether the focused element, or the label that shows for it, looks different without the focus.
const FOCUS_SHOWS: &str = "(() => {
    const element = document.activeElement;
    const shown = [element, element.closest('label')].filter(Boolean);
    const look = () => shown.map((it) => {
        const { outline, boxShadow, borderColor } = getComputedStyle(it);
        return [outline, boxShadow, borderColor].join();
    }).join();
    const focused = look();
    element.blur();
    const blurred = look();
    element.focus();
    return focused !== blurred;
})()";

const FOCUSED: &str = "document.activeElement.id || document.activeElement.textContent.trim()";

/// Presses Tab until the focus is where it is wanted, and sees it at each step.
async fn tab_to(page: &Page, wanted: &str) -> Result<()> {
    let mut passed = Vec::new();
    for _ in 0..60 {
        page.key(Key::Tab).await?;
        let focused = page.evaluate(FOCUSED).await?;
        let focused = focused.as_str().unwrap_or_default().to_owned();
        let shows = page.evaluate(FOCUS_SHOWS).await?;
        assert_eq!(shows, true, "the focus cannot be seen on {focused}");
        if focused.starts_with(wanted) {
            return Ok(());
        }
        passed.push(focused);
    }
    bail!("Tab did not come to {wanted}, but to {passed:?}")
}

#[tokio::test]
async fn the_keyboard_alone_goes_from_the_width_to_the_stops() -> Result<()> {
    let site = serve_dist()?;
    let page = open_on(&site.url(), &View::desktop()).await?;
    tab_to(&page, "joint-width").await?;
    page.replace_text("#joint-width", "150.5").await?;
    let request = worked(150.5);
    shows(&page, &request).await?;

    let plan = plan(&request)?;
    tab_to(&page, "At the saw").await?;
    page.key(Key::Enter).await?;
    for button in ["All is set", "It is clamped"] {
        tab_to(&page, button).await?;
        page.key(Key::Enter).await?;
    }
    is_at(&page, &plan, 1, 1).await?;
    tab_to(&page, "Cut, next").await?;
    for stop in 2..=6 {
        page.key(Key::Enter).await?;
        is_at(&page, &plan, 1, stop).await?;
    }
    page.assert_quiet().await
}

/// Types what is wrong, what names its unit, and nothing into every field that has not been typed into yet, and then
/// what it held; says which fields lost the focus, with which any further key would be lost too.
const LOST_FIELDS: &str = "(async () => {
    const write = Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, 'value').set;
    const frame = () => new Promise((resolve) => requestAnimationFrame(() => setTimeout(resolve)));
    const fields = [...document.querySelectorAll('.field input:not([type])')]
        .filter((it) => it.checkVisibility() && !window.typedInto.has(it.id));
    const lost = [];
    for (const { id, value } of fields) {
        window.typedInto.add(id);
        for (const text of ['wide', '8 in', '', value]) {
            const field = document.getElementById(id);
            field.focus();
            write.call(field, text);
            field.dispatchEvent(new InputEvent('input', { bubbles: true }));
            await frame();
            if (document.activeElement !== field) lost.push(`${id} with «${text}»`);
        }
    }
    return lost;
})()";

/// Not in inches, because there fields show a rounded length, which would be another when it is typed; and not while
/// something may be undone, because a change ends that.
const MAY_TYPE: &str = "document.querySelector('[name=units]')?.checked === true && !document.querySelector('.notice')";

#[tokio::test]
async fn no_field_loses_the_focus_while_it_is_typed_in() -> Result<()> {
    let site = serve_dist()?;
    let page = open(&site).await?;
    page.evaluate("void (window.typedInto = new Set())").await?;
    walk(&page, async |name| {
        if page.evaluate(MAY_TYPE).await? == true {
            let lost = page.evaluate(LOST_FIELDS).await?;
            assert_eq!(lost, json!([]), "{name}");
        }
        Ok(())
    })
    .await?;
    let typed_into = page.evaluate("window.typedInto.size").await?;
    assert!(typed_into.as_u64() > Some(100), "only {typed_into} fields");
    page.assert_quiet().await
}
