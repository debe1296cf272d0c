//! Outside references, the shipped module, and the person's path in a real browser.

#[cfg(feature = "browser")]
pub mod browser;
pub mod hostile;
pub mod saw;
