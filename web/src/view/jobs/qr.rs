//! The address as a QR code (ISO/IEC 18004), made here.

use core::fmt::Write;

use qrcodegen::{QrCode, QrCodeEcc};
use yew::{Html, html};

use crate::keep::link;
use crate::view::context::Context;

/// Light modules around the code, which the standard asks for.
const QUIET: i32 = 4;

/// The code; none for a link that is too long for one, or that only this device could open.
pub(in crate::view) fn view(context: Context<'_>) -> Option<Html> {
    if context.model.home.starts_with("file:") {
        return None;
    }
    let address = format!(
        "{}{}",
        context.model.home,
        link::write_lean(&context.model.state)
    );
    let code = QrCode::encode_text(&address, QrCodeEcc::Low).ok()?;
    let size = code.size() + 2 * QUIET;
    let view_box = format!("0 0 {size} {size}");
    Some(html! {
        <svg class="qr" viewBox={view_box} role="img" aria-label="The link as a QR code" shape-rendering="crispEdges">
            <rect width={size.to_string()} height={size.to_string()} fill="#fff" />
            <path d={dark(&code)} fill="#000" />
        </svg>
    })
}

/// Dark modules, row by row in runs.
fn dark(code: &QrCode) -> String {
    let mut path = String::new();
    for y in 0..code.size() {
        let mut x = 0;
        while x < code.size() {
            let run = (x..code.size())
                .take_while(|x| code.get_module(*x, y))
                .count();
            let run = i32::try_from(run).unwrap_or(0);
            if run > 0 {
                // Writing to a text does not fail.
                let _ = write!(path, "M{} {}h{run}v1h-{run}z", x + QUIET, y + QUIET);
            }
            x += run.max(1);
        }
    }
    path
}
