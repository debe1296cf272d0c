//! How fast the page is: a keystroke, and the first answer of a visit without network.
//!
//! Prints medians and asserts nothing, since machines differ.

use anyhow::{Context, Result, bail};
use notchwright_tests::browser::{Page, View, serve_dist};
use serde_json::json;

/// Keystrokes and visits, of which the median is taken.
const KEYSTROKES: u32 = 41;
const VISITS: u32 = 9;
/// How much slower a phone's processor is taken to be.
const SLOWER: f64 = 6.0;

/// Types two widths in turn, as fast as a person does, so that none waits for the picture of the one
/// before. Each counts from the input event until a row of stops has changed and the page is laid out;
/// the first five only warm it up.
const TYPE: &str = r"
    const [count, done] = arguments;
    const field = document.getElementById('joint-width');
    const setValue = Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, 'value').set;
    const readings = () => [...document.querySelectorAll('.stops td')].map((cell) => cell.textContent).join();
    const times = [];
    let before = readings();
    let start;
    function type() {
        setValue.call(field, field.value === '141.3' ? '142.7' : '141.3');
        start = performance.now();
        field.dispatchEvent(new InputEvent('input', { bubbles: true }));
    }
    const observer = new MutationObserver(() => {
        const now = readings();
        if (now === before) return;
        before = now;
        document.body.getBoundingClientRect();
        times.push(performance.now() - start);
        if (times.length < count + 5) return setTimeout(type, 100);
        observer.disconnect();
        done(times.slice(5));
    });
    observer.observe(document.body, { subtree: true, childList: true, attributes: true, characterData: true });
    type();
";

/// Notes the time, from the start of the navigation, at which the first stop has been painted.
const WATCH: &str = r"
    new MutationObserver((_, observer) => {
        if (!document.querySelector('.stops td')) return;
        observer.disconnect();
        requestAnimationFrame(() => setTimeout(() => { window.firstAnswer = performance.now(); }));
    }).observe(document, { subtree: true, childList: true });
";

#[tokio::main(flavor = "current_thread")]
async fn main() -> Result<()> {
    let site = serve_dist()?;
    let url = site.url();
    let page = Page::open(&url, &View::phone()).await?;
    page.wait_until_kept().await?;
    page.find(".stops td").await?;

    for rate in [1.0, SLOWER] {
        page.slow_down(rate).await?;
        let time = keystroke(&page).await?;
        println!("keystroke to updated page, processor slowed {rate} times: {time:.1} ms");
    }

    let parameters = json!({ "source": WATCH });
    page.devtools("Page.addScriptToEvaluateOnNewDocument", parameters)
        .await?;
    drop(site);
    let time = first_answer(&page, &url).await?;
    println!("first answer painted, kept copy, offline, slowed {SLOWER} times: {time:.0} ms");
    Ok(())
}

/// The median over many keystrokes, in ms.
async fn keystroke(page: &Page) -> Result<f64> {
    let times = page
        .client()
        .execute_async(TYPE, vec![KEYSTROKES.into()])
        .await?;
    median(serde_json::from_value(times).context("no times came back")?)
}

/// The median over a few visits, in ms.
async fn first_answer(page: &Page, url: &str) -> Result<f64> {
    let mut times = Vec::new();
    for _ in 0..VISITS {
        page.go_to("about:blank").await?;
        page.go_to(url).await?;
        page.wait_until("window.firstAnswer").await?;
        let time = page.evaluate("window.firstAnswer").await?;
        times.push(time.as_f64().context("the time is no number")?);
    }
    median(times)
}

fn median(mut times: Vec<f64>) -> Result<f64> {
    times.sort_by(f64::total_cmp);
    match times.get(times.len() / 2) {
        Some(time) => Ok(*time),
        None => bail!("nothing was measured"),
    }
}
