//! A quiet page is one that was listened to: what goes wrong is noticed in each engine.

use anyhow::{Context, Result};
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
        page.hear(word)
            .await
            .with_context(|| format!("{engine:?} notices nothing of {wrong}"))?;
        assert!(page.assert_quiet().await.is_err(), "{engine:?}: {wrong}");
    }
    Ok(())
}

super::in_every_engine!(path);
