//! The page starts, wherever it is put.

use anyhow::Result;
use notchwright_tests::browser::{Copy, Page, Site, View, serve_dist};

#[tokio::test]
async fn it_starts_on_every_screen() -> Result<()> {
    let site = serve_dist()?;
    for (name, view, width) in [
        ("phone", View::phone(), 390),
        ("phone-dark", View::phone().dark(), 390),
        ("narrow", View::narrow(), 320),
        ("desktop", View::desktop(), 1280),
    ] {
        let page = Page::open(&site.url(), &view).await?;
        page.wait_until_kept().await?;
        let trouble = page.evaluate("document.getElementById('trouble')").await?;
        assert!(trouble.is_null());
        assert_eq!(page.evaluate("innerWidth").await?, width, "{name}");
        let is_dark = page.evaluate("matchMedia('(prefers-color-scheme: dark)').matches");
        assert_eq!(is_dark.await?, name.ends_with("dark"), "{name}");
        page.screenshot_whole(&format!("start-{name}")).await?;
        page.assert_accessible().await?;
        page.assert_quiet().await?;
    }
    Ok(())
}

#[tokio::test]
async fn it_starts_in_any_folder_of_a_larger_site() -> Result<()> {
    let copy = Copy::new("folder", "shop/tools")?;
    let site = Site::start(copy.top(), 0)?;
    let page = Page::open(&format!("{}shop/tools/", site.url()), &View::phone()).await?;
    page.wait_until_kept().await?;
    let scope = page
        .evaluate("navigator.serviceWorker.ready.then((it) => it.scope)")
        .await?;
    assert_eq!(scope, format!("{}shop/tools/", site.url()));
    page.assert_quiet().await
}

/// On a slow line it takes seconds until the program has come. What stands there then is replaced by it.
#[tokio::test]
async fn until_the_program_comes_the_page_says_what_it_is() -> Result<()> {
    let copy = Copy::new("opening", "")?;
    let boot = copy.page().join("boot.js");
    let program = std::fs::read(&boot)?;
    std::fs::write(&boot, "")?;
    let site = Site::start(copy.top(), 0)?;
    for (name, view) in [
        ("light", View::phone()),
        ("dark", View::phone().dark()),
        ("desktop", View::desktop()),
    ] {
        let page = Page::open(&site.url(), &view).await?;
        let said = page.text("#opening").await?;
        assert!(said.contains("table-saw sled"), "{said}");
        page.assert_accessible().await?;
        page.screenshot(&format!("opening-{name}")).await?;
        page.assert_quiet().await?;
    }
    std::fs::write(&boot, program)?;
    let page = Page::open(&site.url(), &View::phone()).await?;
    page.find("#joint-width").await?;
    let opening = page.evaluate("document.getElementById('opening')").await?;
    assert!(opening.is_null());
    page.assert_quiet().await
}

#[tokio::test]
async fn a_module_that_does_not_load_is_said_in_the_page() -> Result<()> {
    let copy = Copy::new("broken", "")?;
    std::fs::write(copy.page().join("pkg/page.wasm"), "not a module")?;
    let site = Site::start(copy.top(), 0)?;
    let page = Page::open(&site.url(), &View::phone()).await?;
    let said = page.text("#trouble").await?;
    assert!(said.contains("could not start"), "{said}");
    assert!(said.contains("Nothing was stored on this device"), "{said}");
    page.assert_accessible().await?;
    // The reason belongs on the console.
    page.hear("CompileError").await
}

#[tokio::test]
async fn a_request_to_another_host_is_refused_and_noticed() -> Result<()> {
    let site = serve_dist()?;
    let page = Page::open(&site.url(), &View::phone()).await?;
    page.wait_until_kept().await?;
    page.assert_quiet().await?;
    let outcome = page.evaluate("fetch('http://192.0.2.1/').then(() => 'sent', () => 'refused')");
    assert_eq!(outcome.await?, "refused");
    page.hear("Content Security Policy").await?;
    assert!(page.assert_quiet().await.is_err());
    Ok(())
}

#[tokio::test]
async fn what_keeps_somebody_out_is_noticed() -> Result<()> {
    let site = serve_dist()?;
    let page = Page::open(&site.url(), &View::phone()).await?;
    page.wait_until_kept().await?;
    page.evaluate("void document.body.append(new Image(48, 48))")
        .await?;
    let found = page.violations().await?;
    assert!(
        found
            .iter()
            .any(|it| it.id == "image-alt" && it.is_serious()),
        "{found:?}"
    );
    Ok(())
}
