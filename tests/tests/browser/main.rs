//! The person's path through the built page, in headless Chromium.

mod offline;
mod start;
