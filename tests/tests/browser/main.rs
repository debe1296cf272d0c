//! The person's path through the built page, in headless Chromium.

mod access;
mod answer;
mod bookmark;
mod device;
mod dovetail;
mod joint;
mod keyboard;
mod making;
mod offline;
mod paper;
mod problems;
mod saw;
mod screens;
mod shop;
mod single;
mod sled;
mod start;
mod steps;
mod stopped;
mod store;
mod units;
