//! A person's path through the built page, driven in headless Chromium.
//!
//! A test opens a [`Page`] on a [`Site`] with some [`View`] and does what a person would:
//!
//! ```no_run
//! use notchwright_tests::browser::{Page, View, serve_dist};
//!
//! # async fn path() -> anyhow::Result<()> {
//! let site = serve_dist()?;
//! let page = Page::open(&site.url(), &View::phone().dark()).await?;
//! page.replace_text("#joint-width", "217.3").await?;
//! page.press("At the saw").await?;
//! page.wait_until("document.querySelector('.saw .steps')").await?;
//! page.screenshot("width-typed").await?;
//! drop(site); // from here on the page is offline, and honestly so
//! page.reload().await?;
//! page.assert_quiet().await?;
//! # Ok(())
//! # }
//! ```
//!
//! Each page has a driver, a browser and an empty profile of its own, and takes them along when it
//! is dropped, also by a failing assertion. End each test with [`Page::assert_quiet`].
//! Screenshots go to `target/screenshots/`.

mod accessibility;
mod checks;
mod devtools;
mod driver;
mod engine;
mod hands;
mod journal;
mod page;
mod place;
mod said;
mod screen;
mod start;
mod view;

pub use accessibility::Violation;
pub use engine::Engine;
pub use fantoccini::key::Key;
pub use notchwright_site::Site;
pub use page::Page;
pub use place::{Copy, Downloads, Profile, dist, serve_dist};
pub use view::View;
