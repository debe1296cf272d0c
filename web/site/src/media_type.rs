//! What a file is, told by the ending of its name.

use std::path::Path;

/// The `Content-Type` of a file.
pub(crate) fn of(path: &Path) -> &'static str {
    match path.extension().and_then(|ending| ending.to_str()) {
        Some("html") => "text/html; charset=utf-8",
        Some("css") => "text/css; charset=utf-8",
        Some("js" | "mjs") => "text/javascript; charset=utf-8",
        Some("json") => "application/json",
        Some("webmanifest") => "application/manifest+json",
        // Browsers compile while they download only when it is served as this.
        Some("wasm") => "application/wasm",
        Some("svg") => "image/svg+xml",
        Some("png") => "image/png",
        Some("ts" | "txt") => "text/plain; charset=utf-8",
        _ => "application/octet-stream",
    }
}
