//! Every screen of the page, one after another.

use anyhow::Result;
use notchwright_tests::browser::Page;

use crate::making::ask_for_dovetails;
use crate::steps::{cut_one_board_of_each, see, see_nothing, type_width};

/// Goes from a first visit through every screen, and has a look at each.
pub(crate) async fn walk(page: &Page, mut look: impl AsyncFnMut(&str) -> Result<()>) -> Result<()> {
    look("joint").await?;
    fingers(page, &mut look).await?;
    folds(page, &mut look).await?;
    dovetails(page, &mut look).await?;
    sliding(page, &mut look).await?;
    problems(page, &mut look).await?;
    sled(page, &mut look).await?;
    drawers(page, &mut look).await?;
    parts(page, &mut look).await?;
    sheets(page, &mut look).await?;
    shop(page, &mut look).await?;
    jobs(page, &mut look).await?;
    saw(page, &mut look).await
}

async fn fingers(page: &Page, look: &mut impl AsyncFnMut(&str) -> Result<()>) -> Result<()> {
    for rule in [
        "by width",
        "one pass per socket",
        "by a pattern",
        "by number",
    ] {
        let list = page.find("#joint-layout").await?;
        list.select_by_label(rule).await?;
        see(page, ".verdict strong", "It fits").await?;
        look(&format!("fingers {rule}")).await?;
    }
    Ok(())
}

async fn folds(page: &Page, look: &mut impl AsyncFnMut(&str) -> Result<()>) -> Result<()> {
    page.press("Fit, zero and groove").await?;
    page.choose("groove", "check one").await?;
    page.choose("zero", "by a test kerf").await?;
    look("fit, zero and groove").await?;
    page.choose("zero", "touching").await?;
    page.press("Before you cut").await?;
    look("cautions").await
}

/// Dovetails unfolded, in every way of asking, wrong, on the way to paper, and at the saw.
async fn dovetails(page: &Page, look: &mut impl AsyncFnMut(&str) -> Result<()>) -> Result<()> {
    page.choose("joint-kind", "Dovetails").await?;
    see(page, ".verdict strong", "It fits").await?;
    look("dovetails").await?;
    for way in ["tail to pin", "tails and pins alike", "by their widths"] {
        let list = page.find("#dovetail-pins").await?;
        list.select_by_label(way).await?;
        see_nothing(page, ".stale").await?;
        look(&format!("dovetails {way}")).await?;
    }
    page.press("Fit, zero, lap, wedge and blade").await?;
    page.replace_text("#dovetail-lean-offset", "6.25").await?;
    page.replace_text("#dovetail-lean-height", "50").await?;
    page.press("Before you cut").await?;
    page.press("Put a template on the print").await?;
    look("dovetails unfolded").await?;
    page.press("Leave the template off the print").await?;
    page.choose("slope-by", "in degrees").await?;
    page.replace_text("#dovetail-degrees", "50").await?;
    page.replace_text("#dovetail-lap", "18").await?;
    page.find(".plan.stale").await?;
    look("dovetail problems, stale").await?;
    page.choose("slope-by", "1 to a number").await?;
    page.replace_text("#dovetail-lap", "6").await?;
    see_nothing(page, ".stale").await?;
    look("half-blind dovetails").await?;
    page.replace_text("#dovetail-lap", "").await?;
    page.choose("units", "in").await?;
    see(page, ".verdict strong", "It fits").await?;
    look("dovetails in inches").await?;
    page.choose("units", "mm").await?;
    dovetails_at_the_saw(page, look).await
}

/// Each set-up, and the first stop of its set.
async fn dovetails_at_the_saw(
    page: &Page,
    look: &mut impl AsyncFnMut(&str) -> Result<()>,
) -> Result<()> {
    page.press("At the saw").await?;
    for set in 1..=5 {
        if set > 1 {
            page.click(".jump summary").await?;
            page.click(&format!(
                ".jump nav > ol:first-of-type li:nth-child({set}) button"
            ))
            .await?;
        }
        page.find(".saw.set-up").await?;
        look(&format!("dovetails, set-up {set}")).await?;
        page.press("All is set").await?;
        page.press("It is clamped").await?;
        look(&format!("dovetails, stop of set {set}")).await?;
    }
    page.press("Leave").await
}

async fn sliding(page: &Page, look: &mut impl AsyncFnMut(&str) -> Result<()>) -> Result<()> {
    page.choose("joint-kind", "Sliding").await?;
    see(page, ".facts", "Socket mouth").await?;
    page.replace_text("#sliding-floor", "16").await?;
    page.replace_text("#sliding-taper", "0.8").await?;
    see(page, ".outcome .state", "Still needed").await?;
    look("sliding, still needed").await?;
    page.replace_text("#sliding-length", "300").await?;
    see(page, ".facts", "Shim for the taper").await?;
    look("sliding").await?;
    page.replace_text("#sliding-flank", "50").await?;
    page.find(".found.stale").await?;
    look("sliding problem").await?;
    page.choose("joint-kind", "Box joint").await?;
    see(page, ".facts", "Finger width").await
}

async fn problems(page: &Page, look: &mut impl AsyncFnMut(&str) -> Result<()>) -> Result<()> {
    type_width(page, "wide").await?;
    page.replace_text("#joint-thickness-b", "0").await?;
    page.find(".plan.stale").await?;
    look("problems, stale").await?;
    page.replace_text("#joint-thickness-b", "18").await?;
    page.choose("units", "in").await?;
    type_width(page, "5 1/2").await?;
    see(page, ".verdict strong", "It fits").await?;
    look("typing inches").await
}

/// Every tool of the sled, in the inches that were just chosen and then in millimetres.
async fn sled(page: &Page, look: &mut impl AsyncFnMut(&str) -> Result<()>) -> Result<()> {
    page.press("Sled").await?;
    page.find(".main.sled .facts").await?;
    look("sled").await?;
    for fold in [
        "The saw's table",
        "The sled",
        "Blade and cut",
        "Measured on the saw",
    ] {
        page.press(fold).await?;
    }
    look("sled unfolded in inches").await?;
    page.choose("units", "mm").await?;
    sled_problems(page, look).await?;
    page.press("Before you cut").await?;
    look("sled unfolded").await?;
    sled_tools(page, look).await?;
    page.choose("units", "in").await
}

async fn sled_problems(page: &Page, look: &mut impl AsyncFnMut(&str) -> Result<()>) -> Result<()> {
    page.replace_text("#sled-1-front-rail", "300").await?;
    page.replace_text("#sled-1-contact-far", "10").await?;
    page.find(".found.stale").await?;
    look("sled problems, stale").await?;
    page.replace_text("#sled-1-front-rail", "370").await?;
    page.replace_text("#saw-1-front", "").await?;
    page.replace_text("#sled-1-contact-far", "560").await?;
    see(page, ".outcome .state", "Still needed").await?;
    look("sled, still needed").await?;
    page.replace_text("#saw-1-front", "305").await?;
    page.press("Pushed through").await?;
    page.find("text.contact-off").await?;
    look("sled, runner off the table").await?;
    page.replace_text("#sled-1-contact-far", "440").await?;
    see_nothing(page, ".found.stale, text.contact-off").await
}

async fn sled_tools(page: &Page, look: &mut impl AsyncFnMut(&str) -> Result<()>) -> Result<()> {
    page.choose("tool", "Base").await?;
    look("base").await?;
    page.choose("prints", "the hole line").await?;
    look("base, hole line").await?;
    page.choose("tool", "Square").await?;
    page.press("Keep this test").await?;
    page.press("Keep this test").await?;
    page.find("[aria-label='Error of each test, in order']")
        .await?;
    for cut in 1..=5 {
        look(&format!("square, cut {cut}")).await?;
        if cut < 5 {
            page.press("Next cut").await?;
        }
    }
    page.choose("tool", "Screw").await?;
    look("screw").await?;
    page.replace_text("#point-3-measured", "wide").await?;
    page.find(".found.stale").await?;
    look("screw problem").await?;
    page.replace_text("#point-3-measured", "40.05").await?;
    page.click("[aria-label='Position 2 was reached from below: change']")
        .await?;
    see(page, ".found", "Take the backlash").await?;
    look("screw, both directions").await?;
    page.choose("tool", "Groove").await?;
    page.press("Stopped groove").await?;
    page.replace_text("#rout-from", "40").await?;
    page.replace_text("#rout-to", "100").await?;
    see(page, ".found", "Marks for a stopped groove").await?;
    look("groove").await?;
    page.choose("width-by", "known").await?;
    page.replace_text("#rout-width", "4").await?;
    see(page, "#rout-bit-problem", "take a bit").await?;
    look("groove problem").await
}

/// In the inches that were just chosen, and then in millimetres.
async fn drawers(page: &Page, look: &mut impl AsyncFnMut(&str) -> Result<()>) -> Result<()> {
    page.press("Parts").await?;
    page.find(".main.parts .found").await?;
    look("drawers in inches").await?;
    page.choose("units", "mm").await?;
    for fold in ["Room in the groove", "Applied front", "Swelling"] {
        page.press(fold).await?;
    }
    page.replace_text("#drawer-applied", "18").await?;
    page.replace_text("#drawer-appliedLap", "10").await?;
    page.find("#drawer-bottomWood")
        .await?
        .select_by_label("white ash")
        .await?;
    see(page, ".outcome .state", "Still needed").await?;
    look("drawers unfolded, still needed").await?;
    page.replace_text("#drawer-bottomMoisture", "8").await?;
    see(page, ".outcome .facts", "Bottom held at the driest").await?;
    page.choose("drawer-heights", "by a step").await?;
    page.replace_text("#drawer-step", "4").await?;
    see_nothing(page, ".found.stale").await?;
    look("graduated drawers").await?;
    ask_for_dovetails(page).await?;
    look("dovetailed drawers").await?;
    page.replace_text("#drawer-width", "wide").await?;
    page.replace_text("#drawer-lap", "18").await?;
    page.find(".found.stale").await?;
    look("drawers' problems, stale").await?;
    page.replace_text("#drawer-lap", "").await?;
    page.replace_text("#drawer-width", "900").await?;
    see_nothing(page, ".found.stale").await?;
    page.press("To Parts").await
}

async fn parts(page: &Page, look: &mut impl AsyncFnMut(&str) -> Result<()>) -> Result<()> {
    page.find(".parts-rows").await?;
    look("parts that came").await?;
    page.press("Undo").await?;
    page.press("Stock and grain").await?;
    page.press("To and from a spreadsheet").await?;
    look("parts unfolded").await?;
    page.replace_text("#part-1-width", "300 - 2*t").await?;
    page.replace_text("#part-2-width", "hihg").await?;
    page.replace_text("#part-3-count", "many").await?;
    page.replace_text("#stock-1-thickness", "12.4").await?;
    see(page, ".parts-rows .changed", "Width was").await?;
    look("parts changed and wrong").await?;
    page.choose("units", "in").await?;
    look("parts in inches").await
}

async fn sheets(page: &Page, look: &mut impl AsyncFnMut(&str) -> Result<()>) -> Result<()> {
    // What was typed wrong there is wrong here too.
    page.choose("parts-tool", "Sheet").await?;
    see(page, "main", "Sheets and boards").await?;
    look("sheets with a part that is none").await?;
    page.choose("units", "mm").await?;
    for (field, text) in [
        ("part-1-width", "144"),
        ("part-2-width", "144"),
        ("part-3-count", "8"),
    ] {
        page.choose("parts-tool", "Parts").await?;
        page.replace_text(&format!("#{field}"), text).await?;
    }
    page.choose("parts-tool", "Sheet").await?;
    see(page, ".search", "The search rests.").await?;
    for fold in [
        "Grain, edges, price",
        "Breaking down large sheets",
        "Off-cuts worth keeping",
        "Cuts",
    ] {
        page.press(fold).await?;
    }
    page.click(".cut-list li:nth-child(2) .cut").await?;
    see(page, ".search", "Cutting has begun").await?;
    look("sheets being cut").await?;
    page.replace_text("#sheet-2-length", "500").await?;
    see(page, "main", "larger than every sheet").await?;
    look("sheets that are too small").await
}

async fn shop(page: &Page, look: &mut impl AsyncFnMut(&str) -> Result<()>) -> Result<()> {
    page.press("Shop").await?;
    look("shop").await?;
    for thing in ["Rip blade", "Bench saw", "Sled screw"] {
        page.press(&format!("Edit {thing}")).await?;
    }
    page.choose("grind-1", "alternately sloping").await?;
    look("shop unfolded").await?;
    page.choose("grind-1", "flat").await?;
    page.press("Edit Straight bit").await?;
    page.click("#cutter-3-name").await?;
    page.click(".thing:has(#cutter-3-name) .buttons .button:last-child")
        .await?;
    see(page, ".notice", "Straight bit was removed.").await?;
    look("notice").await?;
    page.press("Undo").await?;
    page.press("Joint").await
}

async fn jobs(page: &Page, look: &mut impl AsyncFnMut(&str) -> Result<()>) -> Result<()> {
    page.press("Jobs").await?;
    page.find("#this-job").await?;
    look("jobs").await?;
    page.press("Show the link as a QR code").await?;
    page.replace_text("#pieces-count", "many").await?;
    see(page, "#pieces-count-problem", "whole number").await?;
    look("jobs, code and problem").await?;
    page.replace_text("#pieces-count", "8").await?;
    page.press("Add a joint").await?;
    page.press("Add a job").await?;
    look("jobs, more of them").await?;
    page.click("[aria-label=Undo]").await?;
    page.click("[aria-label=Undo]").await?;
    page.press("Joint").await
}

async fn saw(page: &Page, look: &mut impl AsyncFnMut(&str) -> Result<()>) -> Result<()> {
    page.press("At the saw").await?;
    look("set-up").await?;
    page.press("All is set").await?;
    look("next end").await?;
    page.press("It is clamped").await?;
    look("first stop").await?;
    page.press("Cut, next").await?;
    look("second stop").await?;
    page.click(".jump summary").await?;
    page.replace_text("#lost-division", "70").await?;
    look("jump").await?;
    page.click(".jump summary").await?;
    page.click("[aria-label=Pause]").await?;
    look("paused").await?;
    page.press("Go on").await?;
    page.press("Leave").await?;
    cut_one_board_of_each(page).await?;
    page.press("At the saw").await?;
    // It comes back to the stop where it was left.
    page.click(".jump summary").await?;
    page.press("Set up for board A").await?;
    for board in ["A", "B"] {
        see(page, ".saw h1", &format!("Set up for board {board}")).await?;
        page.click(".jump summary").await?;
        page.click(".jump nav > ol:last-of-type li:last-child button")
            .await?;
        page.press("Cut, next").await?;
    }
    see(page, ".saw h1", "Both boards are cut").await?;
    look("done").await
}
