//! A quiet page is one that was listened to: what goes wrong is noticed in each engine.

use anyhow::{Result, bail};
use notchwright_tests::browser::{Engine, serve_dist};

use super::open;

/// What a page does wrong, and a word of what is heard of it.
const WRONGS: [(&str, &str); 4] = [
    (
        "void setTimeout(() => { throw new Error('thrown') })",
        "thrown",
    ),
    ("void Promise.reject(new Error('refused'))", "refused"),
    ("void console.error('complained')", "complained"),
    (
        "fetch('http://192.0.2.1/').then(() => {}, () => {})",
        "Content Security Policy",
    ),
];

async fn path(engine: Engine) -> Result<()> {
    let Some(engine) = super::engine(engine)? else {
        return Ok(());
    };
    let site = serve_dist()?;
    for (wrong, word) in WRONGS {
        let page = open(engine, &site.url()).await?;
        page.assert_quiet().await?;
        page.evaluate(wrong).await?;
        // It is not said before what was begun has been done.
        page.evaluate("new Promise((done) => setTimeout(done))")
            .await?;
        let Err(said) = page.assert_quiet().await else {
            bail!("{engine:?} notices nothing of {wrong}")
        };
        assert!(said.to_string().contains(word), "{engine:?}: {said}");
    }
    Ok(())
}

super::in_every_engine!(path);
