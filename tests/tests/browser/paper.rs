//! On paper: every setting, and nothing that needs a screen.

use anyhow::{Context, Result, bail};
use base64::Engine as _;
use base64::engine::general_purpose::STANDARD;
use lopdf::content::Content;
use lopdf::{Document, Object, ObjectId};
use notchwright_core::units::Unit;
use notchwright_tests::browser::{Page, serve_dist};
use serde_json::json;

use crate::answer::{plan, tables, worked};
use crate::steps::open;

/// Every setting of the card, set by set: pass, turns and divisions, place.
const PRINTED: &str = "[...document.querySelectorAll('.shop-card .set')].map((set) =>
    [...set.querySelectorAll('.ticks li')].filter((row) => row.checkVisibility()).map((row) => {
        const [, number, place] = row.querySelectorAll('span');
        return [number.textContent, ...row.querySelector('b').textContent.split(' t '), place.textContent];
    }))";

#[tokio::test]
async fn the_shop_card_has_every_setting_and_no_button() -> Result<()> {
    let site = serve_dist()?;
    let page = open(&site).await?;
    page.devtools("Emulation.setEmulatedMedia", json!({ "media": "print" }))
        .await?;
    page.evaluate("void window.dispatchEvent(new Event('beforeprint'))")
        .await?;
    let wanted = tables(&plan(&worked(140.0))?, Unit::Mm);
    page.wait_for(PRINTED, &wanted).await?;
    let left = "[...document.querySelectorAll('button, input, select, summary')].filter((it) => it.checkVisibility()).length";
    page.wait_for(left, &0.into()).await?;
    page.wait_until(
        "document.querySelector('.shop-card').innerText.includes('Drawers, side to front')",
    )
    .await?;
    page.wait_until("document.querySelector('.shop-card .qr')")
        .await?;
    let card = printed(&page).await?;
    assert_eq!(card.get_pages().len(), 1, "the card is one sheet");
    page.assert_quiet().await
}

/// What a printer is given: the bar of a template is as long as it says, to a tenth of a millimetre.
#[tokio::test]
async fn the_bar_of_a_template_is_as_long_on_paper_as_it_says() -> Result<()> {
    let site = serve_dist()?;
    let page = open(&site).await?;
    page.press("Jobs").await?;
    for (paper, sheet) in [("A4", [210.0, 297.0]), ("Letter", [215.9, 279.4])] {
        page.choose("card-paper", paper).await?;
        page.choose("card-templates", "printed").await?;
        page.evaluate("void window.dispatchEvent(new Event('beforeprint'))")
            .await?;
        page.find(".shop-card .tile").await?;
        let printed = printed(&page).await?;
        let last = printed
            .get_pages()
            .into_values()
            .last()
            .context("no page")?;
        let (size, lines) = lines(&printed, last)?;
        let millimetres = size.map(|points| points / POINTS_PER_MM);
        for (is, wanted) in millimetres.iter().zip(sheet) {
            assert!((is - wanted).abs() < 0.6, "{millimetres:?} for {paper}");
        }
        let bar = lines.iter().map(|line| line / POINTS_PER_MM);
        let bars: Vec<_> = bar.filter(|length| (length - 100.0).abs() < 0.1).collect();
        assert!(!bars.is_empty(), "no line of 100 mm on {paper}");
        page.evaluate("void window.dispatchEvent(new Event('afterprint'))")
            .await?;
    }
    page.assert_quiet().await
}

const POINTS_PER_MM: f64 = 72.0 / 25.4;

async fn printed(page: &Page) -> Result<Document> {
    let parameters = json!({ "preferCSSPageSize": true, "printBackground": true });
    let printed = page.devtools("Page.printToPDF", parameters).await?;
    let data = printed.pointer("/data").and_then(|data| data.as_str());
    let bytes = STANDARD.decode(data.context("nothing was printed")?)?;
    Ok(Document::load_mem(&bytes)?)
}

/// Size of a page in points, and the length of every straight line on it.
fn lines(document: &Document, page: ObjectId) -> Result<([f64; 2], Vec<f64>)> {
    let number = |object: &Object| object.as_float().map(f64::from);
    let media = document
        .get_dictionary(page)?
        .get(b"MediaBox")?
        .as_array()?;
    let [_, _, width, height] = media.as_slice() else {
        bail!("a page has no size");
    };
    let size = [number(width)?, number(height)?];
    let content = Content::decode(&document.get_page_content(page)?)?;
    let (mut scales, mut scale, mut from, mut lengths) = (Vec::new(), 1.0, (0.0, 0.0), Vec::new());
    for operation in content.operations {
        let values: Vec<f64> = operation.operands.iter().flat_map(number).collect();
        match (operation.operator.as_str(), values.as_slice()) {
            ("q", _) => scales.push(scale),
            ("Q", _) => scale = scales.pop().unwrap_or(1.0),
            // Nothing on these pages is turned or stretched one way.
            ("cm", [a, ..]) => scale *= a,
            ("m", [x, y]) => from = (*x, *y),
            ("l", [x, y]) => {
                let (across, down) = (x - from.0, y - from.1);
                lengths.push((across * across + down * down).sqrt() * f64::abs(scale));
                from = (*x, *y);
            }
            _ => {}
        }
    }
    Ok((size, lengths))
}
