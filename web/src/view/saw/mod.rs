//! At the saw: one thing at a time, over the whole screen. Only [`view`] may be called from elsewhere, and
//! only once this part of the program has come.

mod board;
mod done;
mod jump;
mod lost;
mod pause;
mod set_up;
pub(super) mod steps;
mod stop;
mod ways;

use notchwright_core::stop::{Set, Stop};
use yew::{Html, classes, html};

use super::context::Context;
use super::heading::Heading;
use crate::answer::Cut;
use crate::answer::course::{Course, Load};
use crate::msg::{Msg, SawMove};
use crate::state::{Hand, Progress, Step};
pub(super) use set_up::IN_EVERY_SET_UP;

/// Where one is.
struct Here<'a> {
    cut: Cut<'a>,
    course: Course<'a>,
    at: &'a Progress,
    /// The set that is set up for.
    set: &'a Set,
    /// What is on the carriage.
    load: Load,
    /// Its passes.
    passes: Vec<(&'a Set, &'a Stop)>,
}

impl<'a> Here<'a> {
    fn new(context: Context<'a>) -> Option<Self> {
        let at = context.model.state.progress();
        let answer = &context.model.answer;
        let course = answer.course(context.model.state.at_saw.order)?;
        let load = course.load(at.set, at.end)?;
        Some(Self {
            cut: answer.cut()?,
            set: course.set(at.set)?,
            passes: course.passes(at.set, &load),
            load,
            course,
            at,
        })
    }

    /// Whether several ends are cut alike in this set-up.
    fn is_many(&self) -> bool {
        self.course.loads(self.at.set).len() > 1
    }

    /// What is on the carriage, to be put before something else: nothing where only one thing ever is.
    fn on_carriage(&self) -> String {
        let name = self.course.name(&self.load);
        if name.is_empty() {
            name
        } else {
            format!("{name}: ")
        }
    }
}

/// The step that is due.
#[inline(never)]
pub(super) fn view(context: Context<'_>) -> Html {
    let Some(here) = Here::new(context) else {
        return no_plan(context);
    };
    let inside = match here.at.step {
        _ if context.model.state.at_saw.paused => pause::view(&here, context),
        Step::SetUp => set_up::view(&here, context),
        Step::Board => board::view(&here, context),
        Step::Stop(index) => match here.passes.get(index) {
            Some((set, stop)) => stop::view(&here, index, set, stop, context),
            None => no_plan(context),
        },
        Step::Done => done::view(&here, context),
    };
    let hand = match context.model.state.at_saw.hand {
        Hand::Right => None,
        Hand::Left => Some("left-handed"),
    };
    html! { <div class={classes!("way", hand)}>{ inside }</div> }
}

/// The head of every page at the saw: what it is about, a way to any other step, a way out.
fn over(title: &str, place: String, here: &Here<'_>, context: Context<'_>) -> Html {
    html! {
        <header class="over">
            <Heading key={title} text={title.to_owned()} />
            { jump::view(place, here, context) }
            { leave(context) }
            if matches!(here.at.step, Step::Stop(_)) && here.is_many() {
                <p class="on-carriage">{ board::sentence(&here.course.name(&here.load)) }</p>
            }
        </header>
    }
}

fn leave(context: Context<'_>) -> Html {
    html! {
        <button type="button" class="button" onclick={context.send(Msg::Saw(SawMove::Leave))}>{ "Leave" }</button>
    }
}

fn button(movement: SawMove, words: impl Into<Html>, context: Context<'_>) -> Html {
    html! {
        <button type="button" class="button" onclick={context.send(Msg::Saw(movement))}>{ words.into() }</button>
    }
}

/// The two large buttons below: one step back, and on.
fn buttons(is_first: bool, on: SawMove, words: &str, context: Context<'_>) -> Html {
    html! {
        <div class="buttons">
            if !is_first {
                <button key="back" type="button" class="button" onclick={context.send(Msg::Saw(SawMove::Back))}>{ "Back" }</button>
            }
            <button key="next" type="button" class="button signal" onclick={context.send(Msg::Saw(on))}>{ words }</button>
        </div>
    }
}

fn no_plan(context: Context<'_>) -> Html {
    html! {
        <main class="saw done">
            <header class="over">
                <Heading text="Nothing to cut" />
                { leave(context) }
            </header>
            <p>{ "The joint's numbers have problems. Leave, and mend the marked fields." }</p>
        </main>
    }
}
