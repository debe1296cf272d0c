//! When the program stops or cannot start, the page says so, nothing of it runs on, and the work is handed out.

use anyhow::{Context, Result};
use notchwright_tests::browser::{Copy, Downloads, Page, Site, View, dist, serve_dist};
use serde_json::{Value, json};
use url::Url;

use crate::steps::{holds, open, see, see_nothing, stored, type_width};

const STATE: &str = "notchwright.state";

/// Keeps the program where a test reaches it. Chunks come after it.
const REACH: &str = "
    for (const name of ['instantiate', 'instantiateStreaming']) {
        const former = WebAssembly[name];
        WebAssembly[name] = async (...given) => {
            const made = await former(...given);
            window.program ??= (made.instance ?? made).exports;
            return made;
        };
    }";

/// Every address in the program's memory leads nowhere, so that it traps, until `heal()` puts back what was there.
/// Healed, it could run on: only the fence keeps it from that.
const BREAK: &str = "(() => {
    const bytes = () => new Uint8Array(program.memory.buffer);
    const whole = bytes().slice();
    bytes().fill(0xff);
    window.heal = () => bytes().set(whole);
})()";

/// All that the program listens to, and its timer: the address is written a second after a change.
const WAKE: &str = "new Promise((done) => {
    heal();
    const names = ['storage', 'beforeprint', 'afterprint', 'pageshow', 'notchwright:update',
        'notchwright:offline-ready', 'notchwright:sled-came', 'notchwright:shop-failed'];
    for (const name of names) window.dispatchEvent(new Event(name));
    document.dispatchEvent(new Event('visibilitychange'));
    document.body.dispatchEvent(new KeyboardEvent('keydown', { key: 'z', ctrlKey: true, bubbles: true }));
    setTimeout(() => done(true), 1500);
})";

/// Loads the page again so that a test can make it trap, and types a width.
async fn work_on(page: &Page) -> Result<()> {
    let parameters = json!({ "source": REACH });
    page.devtools("Page.addScriptToEvaluateOnNewDocument", parameters)
        .await?;
    page.reload().await?;
    page.wait_until("window.program").await?;
    type_width(page, "151.3").await
}

/// The state and the mark of who stored it.
async fn store(page: &Page) -> Result<[Value; 2]> {
    let state = stored(page, STATE).await?;
    assert!(
        state.as_str().is_some_and(|text| text.contains("151.3")),
        "{state}"
    );
    Ok([state, stored(page, "notchwright.turn").await?])
}

async fn has_stopped(page: &Page) -> Result<()> {
    see(page, "#trouble", "Notchwright has stopped").await?;
    see(page, "#trouble", "is still stored on this device").await?;
    see_nothing(page, "#joint-width").await
}

/// The errors on the console, one a line.
async fn errors(page: &Page) -> Result<Vec<String>> {
    let said = page.assert_quiet().await.err().context("no error")?;
    let said = said.to_string();
    Ok(said.lines().skip(1).map(str::to_owned).collect())
}

/// Breaks it as a key arrives: any earlier, its own timer or the news of a copy might find it broken first.
async fn trap(page: &Page) -> Result<()> {
    page.evaluate(&format!(
        "void addEventListener('beforeinput', () => {BREAK}, {{ capture: true, once: true }})"
    ))
    .await?;
    type_width(page, "99").await?;
    has_stopped(page).await
}

/// What stopped wakes at nothing, writes neither store nor address, and is said once.
async fn stays_stopped(page: &Page, before: &[Value; 2]) -> Result<()> {
    let address = page.evaluate("location.href").await?;
    page.wait_until(WAKE).await?;
    page.evaluate("void (location.hash = '#j=3.another')")
        .await?;
    page.evaluate("new Promise((done) => setTimeout(done, 100))")
        .await?;
    has_stopped(page).await?;
    assert_eq!(&store(page).await?, before);
    let now = page.evaluate("location.href").await?;
    assert_eq!(page.evaluate("location.hash").await?, "#j=3.another");
    assert_ne!(now, address);
    let errors = errors(page).await?;
    assert_eq!(errors.len(), 1, "{errors:#?}");
    assert!(
        errors.iter().all(|it| it.contains("RuntimeError")),
        "{errors:#?}"
    );
    Ok(())
}

/// The file that is offered is what was stored, and opens in a browser that knows nothing of it.
async fn hands_out(page: &Page, state: &Value, fresh: &str) -> Result<()> {
    let downloads = Downloads::new("stopped");
    let saved = page.press("Save everything as a file");
    let saved = page.saved(&downloads, "notchwright.json", saved).await?;
    assert_eq!(&Value::from(saved), state);

    let other = Page::open(fresh, &View::phone()).await?;
    other.press("Jobs").await?;
    let file = downloads.folder().join("notchwright.json");
    let field = other.find("input[type=file]").await?;
    field.send_keys(&file.to_string_lossy()).await?;
    other.press("Joint").await?;
    holds(&other, "#joint-width", "151.3").await?;
    other.assert_quiet().await
}

#[tokio::test]
async fn a_trap_stops_the_page_and_keeps_the_work() -> Result<()> {
    let site = serve_dist()?;
    let page = open(&site).await?;
    work_on(&page).await?;
    let before = store(&page).await?;
    trap(&page).await?;
    assert_eq!(store(&page).await?, before);
    let [state, _] = &before;
    stays_stopped(&page, &before).await?;
    hands_out(&page, state, &site.url()).await?;
    page.evaluate("void history.replaceState(null, '', location.pathname)")
        .await?;
    page.press("Load the page again").await?;
    holds(&page, "#joint-width", "151.3").await
}

#[tokio::test]
async fn the_page_in_one_file_stops_the_same_way() -> Result<()> {
    let file = Url::from_file_path(dist().join("notchwright.html"));
    let address = file.ok().context("no address")?;
    let page = Page::open(address.as_str(), &View::phone()).await?;
    work_on(&page).await?;
    let before = store(&page).await?;
    trap(&page).await?;
    stays_stopped(&page, &before).await?;
    let [state, _] = &before;
    hands_out(&page, state, address.as_str()).await
}

/// An event that is sent from within the program may stop it there: what had sent it must not go on to store.
#[tokio::test]
async fn what_had_called_outside_ends_there() -> Result<()> {
    let site = serve_dist()?;
    let page = open(&site).await?;
    work_on(&page).await?;
    let before = store(&page).await?;
    let meanwhile = format!(
        "void addEventListener('notchwright:need-shop', () => {{
            {BREAK};
            dispatchEvent(new Event('beforeprint'));
            heal();
            const reads = Storage.prototype.getItem;
            Storage.prototype.getItem = function (key) {{
                if (new Error().stack.includes('wasm')) window.ranOn = true;
                return reads.call(this, key);
            }};
        }})"
    );
    page.evaluate(&meanwhile).await?;
    page.press("Shop").await?;
    has_stopped(&page).await?;
    assert!(page.evaluate("window.ranOn").await?.is_null());
    stays_stopped(&page, &before).await
}

#[tokio::test]
async fn a_stop_page_looks_like_the_page() -> Result<()> {
    let site = serve_dist()?;
    let views = [
        ("light", View::phone(), "rgb(250, 247, 240)"),
        ("dark", View::phone().dark(), "rgb(23, 22, 20)"),
    ];
    for (name, view, paper) in views {
        let page = Page::open(&site.url(), &view).await?;
        work_on(&page).await?;
        trap(&page).await?;
        let colour = page.evaluate("getComputedStyle(document.body).backgroundColor");
        assert_eq!(colour.await?, paper, "{name}");
        page.assert_accessible().await?;
        page.screenshot(&format!("stopped-{name}")).await?;
    }
    Ok(())
}

#[tokio::test]
async fn what_stops_at_every_start_is_kept_aside() -> Result<()> {
    let site = serve_dist()?;
    let page = open(&site).await?;
    work_on(&page).await?;
    let [state, _] = store(&page).await?;
    trap(&page).await?;
    page.press("Start afresh").await?;
    holds(&page, "#joint-width", "140").await?;
    assert_eq!(stored(&page, "notchwright.aside.1").await?, state);
    Ok(())
}

/// The stopped program can no longer ask whether to use it.
#[tokio::test]
async fn loading_again_brings_a_newer_version() -> Result<()> {
    let copy = Copy::new("stopped-update", "")?;
    let site = Site::start(copy.top(), 0)?;
    let page = open(&site).await?;
    work_on(&page).await?;
    trap(&page).await?;

    let worker = copy.page().join("sw.js");
    let text = std::fs::read_to_string(&worker)?;
    std::fs::write(
        &worker,
        text.replace("const CACHE = PREFIX + '", "const CACHE = PREFIX + 'next-"),
    )?;
    page.evaluate("navigator.serviceWorker.ready.then((it) => void it.update())")
        .await?;
    page.wait_until("navigator.serviceWorker.ready.then((it) => it.waiting)")
        .await?;
    page.press("Load the page again").await?;
    holds(&page, "#joint-width", "151.3").await?;
    page.wait_until(
        "caches.keys().then((names) => names.length === 1 && names[0].includes('next-'))",
    )
    .await
}

#[tokio::test]
async fn a_page_that_cannot_start_hands_out_the_work() -> Result<()> {
    let copy = Copy::new("cannot-start", "")?;
    // Its copy on the device would start.
    std::fs::remove_file(copy.page().join("sw.js"))?;
    let site = Site::start(copy.top(), 0)?;
    let page = Page::open(&site.url(), &View::phone()).await?;
    work_on(&page).await?;
    let [state, _] = store(&page).await?;
    let fresh = serve_dist()?;
    let module = copy.page().join("pkg/page.wasm");
    for broken in [Some("not a module"), None] {
        match broken {
            Some(text) => std::fs::write(&module, text)?,
            None => std::fs::remove_file(&module)?,
        }
        page.go_to("about:blank").await?;
        page.go_to(&site.url()).await?;
        see(&page, "#trouble", "Notchwright could not start").await?;
        see(&page, "#trouble", "is still stored on this device").await?;
        page.assert_accessible().await?;
        assert_eq!(stored(&page, STATE).await?, state);
        hands_out(&page, &state, &fresh.url()).await?;
    }
    Ok(())
}
