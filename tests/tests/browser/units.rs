//! Millimetres, inches, fractions and commas.

use anyhow::Result;
use notchwright_core::units::Unit;
use notchwright_tests::browser::serve_dist;

use crate::answer::worked;
use crate::steps::{holds, open, shows, shows_in, type_width};

#[tokio::test]
async fn inches_and_back_leave_what_was_typed() -> Result<()> {
    let site = serve_dist()?;
    let page = open(&site).await?;
    type_width(&page, "142,50").await?;
    shows(&page, &worked(142.5)).await?;

    page.choose("units", "in").await?;
    shows_in(&page, &worked(142.5), Unit::Inch).await?;
    // Derived: 142.5 / 25.4 = 5.61024.
    holds(&page, "#joint-width", "5.6102").await?;

    page.choose("units", "mm").await?;
    holds(&page, "#joint-width", "142,50").await?;
    holds(&page, "#joint-thickness-a", "12").await?;
    shows(&page, &worked(142.5)).await?;
    page.assert_quiet().await
}

/// Derived: an inch is 25.4 mm by definition.
#[tokio::test]
async fn lengths_are_typed_as_people_write_them() -> Result<()> {
    let site = serve_dist()?;
    let page = open(&site).await?;
    for (text, width) in [("150,25", 150.25), ("6\"", 152.4), ("15 cm", 150.0)] {
        type_width(&page, text).await?;
        shows(&page, &worked(width)).await?;
    }
    page.choose("units", "in").await?;
    for (text, width) in [
        ("5 1/2", 139.7),
        ("5½", 139.7),
        ("5.75", 146.05),
        ("145mm", 145.0),
    ] {
        type_width(&page, text).await?;
        shows_in(&page, &worked(width), Unit::Inch).await?;
    }
    page.assert_quiet().await
}

#[tokio::test]
async fn a_fraction_is_tapped_beside_the_field() -> Result<()> {
    let site = serve_dist()?;
    let page = open(&site).await?;
    page.choose("units", "in").await?;
    type_width(&page, "5").await?;
    page.click("[aria-label='Fractions for Board width'] [aria-label='3/4 in']")
        .await?;
    holds(&page, "#joint-width", "5 3/4").await?;
    shows_in(&page, &worked(146.05), Unit::Inch).await?;
    let focused = page.evaluate("document.activeElement.id").await?;
    assert_eq!(focused, "joint-width", "the keyboard stays up");
    page.assert_quiet().await
}
