//! At the saw: one stop after another, and never lost.

use anyhow::Result;
use notchwright_core::joint::box_joint::BoxJointPlan;
use notchwright_core::units::write_number;
use notchwright_tests::browser::{Page, Profile, View, serve_dist};

use crate::access::assert_usable;
use crate::answer::{self, worked};
use crate::steps::{
    cut_one_board_of_each, go_to_first_stop, is_at, next, open, open_on, see, see_nothing, shows,
};

fn worked_plan() -> Result<BoxJointPlan> {
    answer::plan(&worked(140.0))
}

async fn is_set_up(page: &Page, plan: &BoxJointPlan, set: usize) -> Result<()> {
    let set = answer::set(plan, set)?;
    let title = format!("Set up for {}", set.name.replacen("Board", "board", 1));
    see(page, ".saw.set-up h1", &title).await?;
    see(page, ".saw .height", &write_number(set.height.mm(), 2)).await
}

#[tokio::test]
async fn the_saw_is_set_up_first() -> Result<()> {
    let site = serve_dist()?;
    let page = open(&site).await?;
    cut_one_board_of_each(&page).await?;
    page.press("At the saw").await?;
    is_set_up(&page, &worked_plan()?, 1).await?;
    see(&page, ".saw", "Unplug the saw first.").await?;
    see(&page, ".saw .steps", "reference edge just touches").await?;
    see(&page, ".saw .steps", "there the dial reads 0").await?;
    let cautions = page.attributes(".saw .notes .caution", "class").await?;
    assert!(cautions.len() >= 3, "{cautions:?}");
    page.press("All is set").await?;
    is_at(&page, &worked_plan()?, 1, 1).await?;
    page.assert_quiet().await
}

#[tokio::test]
async fn a_stop_outlives_reload_tab_and_browser() -> Result<()> {
    let site = serve_dist()?;
    let plan = worked_plan()?;
    let profile = Profile::new("saw");
    let view = View::phone().profile(profile.folder());
    let page = open_on(&site.url(), &view).await?;
    go_to_first_stop(&page).await?;
    for stop in 1..=5 {
        is_at(&page, &plan, 1, stop).await?;
        next(&page).await?;
    }
    is_at(&page, &plan, 1, 6).await?;
    page.reload().await?;
    is_at(&page, &plan, 1, 6).await?;
    next(&page).await?;
    page.go_on_in_a_new_tab(&site.url()).await?;
    is_at(&page, &plan, 1, 7).await?;
    page.assert_quiet().await?;
    drop(page);

    let page = Page::open(&site.url(), &view).await?;
    is_at(&page, &plan, 1, 7).await?;
    page.assert_quiet().await
}

#[tokio::test]
async fn one_can_go_back_jump_leave_and_return() -> Result<()> {
    let site = serve_dist()?;
    let page = open(&site).await?;
    let plan = worked_plan()?;
    go_to_first_stop(&page).await?;
    next(&page).await?;
    is_at(&page, &plan, 1, 2).await?;
    page.press("Back").await?;
    is_at(&page, &plan, 1, 1).await?;
    page.press("Back").await?;
    is_set_up(&page, &plan, 1).await?;

    page.click(".jump summary").await?;
    page.press("Set up for board B").await?;
    is_set_up(&page, &plan, 2).await?;
    page.click(".jump summary").await?;
    page.click(".jump nav > ol:last-of-type li:nth-child(3) button")
        .await?;
    is_at(&page, &plan, 2, 3).await?;

    page.press("Leave").await?;
    shows(&page, &worked(140.0)).await?;
    page.press("At the saw").await?;
    is_at(&page, &plan, 2, 3).await?;
    page.assert_quiet().await
}

#[tokio::test]
async fn every_stop_of_both_boards_is_passed_to_the_end() -> Result<()> {
    let site = serve_dist()?;
    let page = open(&site).await?;
    let plan = worked_plan()?;
    cut_one_board_of_each(&page).await?;
    page.press("At the saw").await?;
    for (index, set) in plan.sets.iter().enumerate() {
        is_set_up(&page, &plan, index + 1).await?;
        page.press("All is set").await?;
        for stop in 1..=set.stops.len() {
            is_at(&page, &plan, index + 1, stop).await?;
            next(&page).await?;
        }
    }
    see(&page, ".saw.done h1", "Both boards are cut").await?;
    page.press("To the joint").await?;
    see_nothing(&page, ".saw").await?;

    page.press("At the saw").await?;
    is_set_up(&page, &plan, 1).await?;
    page.assert_quiet().await
}

/// Read at arm's length, and worked without looking for the button.
#[tokio::test]
async fn the_setting_is_the_largest_text_and_next_needs_no_scrolling() -> Result<()> {
    let site = serve_dist()?;
    for view in [
        View::phone(),
        View::narrow(),
        View::phone().on_its_side(),
        View::narrow().on_its_side(),
        View::desktop(),
    ] {
        let page = open_on(&site.url(), &view).await?;
        page.press("At the saw").await?;
        page.press("All is set").await?;
        page.press("It is clamped").await?;
        is_at(&page, &worked_plan()?, 1, 1).await?;
        next(&page).await?;
        is_at(&page, &worked_plan()?, 1, 2).await?;
        assert_usable(&page, &format!("{view:?}")).await?;
        let sizes = page.evaluate(SIZES).await?;
        let [setting, other, below]: [f64; 3] = serde_json::from_value(sizes)?;
        assert!(setting >= 56.0, "{setting} px");
        assert!(setting > other, "{setting} px beside {other} px");
        assert!(
            below <= 0.5,
            "next ends {below} px below the screen: {view:?}"
        );
        page.assert_quiet().await?;
    }
    Ok(())
}

/// Size of the setting's type, the largest of any other words, and how far the last button ends below the
/// screen.
const SIZES: &str = "(() => {
    const size = (element) => parseFloat(getComputedStyle(element).fontSize);
    const others = [...document.querySelectorAll('.saw :is(h1, p, b, small, span, button)')];
    return [
        Math.min(...[...document.querySelectorAll('.setting strong')].map(size)),
        Math.max(...others.map(size)),
        document.querySelector('.saw .signal').getBoundingClientRect().bottom - innerHeight,
    ];
})()";

/// Eight drawers: the saw names each end, ticks it off, and comes back to it.
#[tokio::test]
async fn every_end_is_named_and_ticked_off() -> Result<()> {
    let site = serve_dist()?;
    let page = open(&site).await?;
    let plan = worked_plan()?;
    let stops = answer::set(&plan, 1)?.stops.len();
    page.press("At the saw").await?;
    page.press("All is set").await?;
    see(&page, ".end-name", "Drawer 1, left side").await?;
    page.press("It is clamped").await?;
    page.click(".jump summary").await?;
    page.click(".jump nav > ol:last-of-type li:last-child button")
        .await?;
    is_at(&page, &plan, 1, stops).await?;
    see(&page, ".last-pass", "Last of this socket").await?;
    next(&page).await?;
    see(&page, ".end-name", "Drawer 1, right side").await?;
    page.reload().await?;
    see(&page, ".end-name", "Drawer 1, right side").await?;
    see(&page, ".saw .body", "1 of 16 cut").await?;
    page.press("Leave").await?;
    page.press("Jobs").await?;
    see(&page, ".leaf.open", "1 of 32 ends cut").await?;
    page.assert_quiet().await
}

#[tokio::test]
async fn whoever_lost_count_finds_the_stop_by_the_wheel() -> Result<()> {
    let site = serve_dist()?;
    let page = open(&site).await?;
    let plan = worked_plan()?;
    go_to_first_stop(&page).await?;
    let seventh = answer::set(&plan, 1)?.stops[6].dial;
    page.click(".jump summary").await?;
    page.replace_text("#lost-turns", &seventh.turns.to_string())
        .await?;
    page.replace_text("#lost-division", &write_number(seventh.division, 2))
        .await?;
    page.press("Pass 7:").await?;
    is_at(&page, &plan, 1, 7).await?;
    page.click(".jump summary").await?;
    page.replace_text("#lost-turns", "999").await?;
    page.replace_text("#lost-division", "0").await?;
    see(&page, ".lost", "No stop reads so. The nearest:").await?;
    page.assert_quiet().await
}

#[tokio::test]
async fn the_work_can_rest_and_the_other_hand_take_over() -> Result<()> {
    let site = serve_dist()?;
    let page = open(&site).await?;
    let plan = worked_plan()?;
    cut_one_board_of_each(&page).await?;
    page.press("At the saw").await?;
    page.choose("saw-hand", "at the left").await?;
    page.press("All is set").await?;
    page.wait_until("document.querySelector('.saw .signal').getBoundingClientRect().left < document.querySelector('.saw .buttons .button:not(.signal)').getBoundingClientRect().left").await?;
    next(&page).await?;
    page.click("[aria-label=Pause]").await?;
    see(&page, ".saw.paused", "Pass 2 of 24 is due").await?;
    page.reload().await?;
    page.press("Go on").await?;
    is_at(&page, &plan, 1, 2).await?;
    page.assert_quiet().await
}

/// The browser's own voice, as a page hears of it.
#[tokio::test]
async fn the_setting_is_spoken_and_a_word_moves_on() -> Result<()> {
    let site = serve_dist()?;
    let page = open(&site).await?;
    let plan = worked_plan()?;
    cut_one_board_of_each(&page).await?;
    page.evaluate(
        "(() => {
            window.said = [];
            window.speechSynthesis.speak = (words) => said.push(words.text);
            window.SpeechRecognition = class { set processLocally(on) { this.local = on; } get processLocally() { return this.local; }
                start() { window.ear = this; } abort() { window.ear = null; } };
        })()",
    )
    .await?;
    // What the browser can do is asked when its part of the program comes; here it has come already.
    page.evaluate("void window.dispatchEvent(new Event('notchwright:jobs-came'))")
        .await?;
    page.press("At the saw").await?;
    page.choose("saw-speaks", "shown and spoken").await?;
    page.choose("saw-listens", "the button or a word").await?;
    page.press("All is set").await?;
    page.wait_until("said.at(-1) === '11 turns, 57.'").await?;
    let say = "ear.onresult({ results: [[{ transcript: 'next' }]] })";
    page.evaluate(&format!("void ({say})")).await?;
    is_at(&page, &plan, 1, 2).await?;
    page.wait_until("ear.local === true && said.length === 2")
        .await?;
    page.press("Leave").await?;
    page.wait_until("window.ear === null").await?;
    page.assert_quiet().await
}
