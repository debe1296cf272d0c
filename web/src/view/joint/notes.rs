//! What to know about a plan, what matters most first.

use notchwright_core::problem::{Note, Severity};
use yew::{Html, classes, html};

use crate::view::context::Context;
use crate::view::icon::Icon;
use crate::view::show;

/// Warnings and what is good to know; the cautions are folded away below them.
pub(in crate::view) fn view(notes: &[Note], context: Context<'_>) -> Html {
    let warnings = of(notes, Severity::Warning).chain(of(notes, Severity::Info));
    let cautions = of(notes, Severity::Caution).count();
    html! {
        <section class="section good-to-know" aria-labelledby="notes">
            <h2 id="notes">{ "Good to know" }</h2>
            <ul class="notes">{ for warnings.map(|note| item(note, context)) }</ul>
            if cautions > 0 {
                <details class="more">
                    <summary>
                        <b>{ format!("Before you cut: {}", show::count(cautions, "caution", "cautions")) }</b>
                        { Icon::Down.view() }
                    </summary>
                    <div class="inside">{ self::cautions(notes, context) }</div>
                </details>
            }
        </section>
    }
}

/// The cautions.
pub(in crate::view) fn cautions(notes: &[Note], context: Context<'_>) -> Html {
    html! { <ul class="notes">{ for of(notes, Severity::Caution).map(|note| item(note, context)) }</ul> }
}

fn of(notes: &[Note], severity: Severity) -> impl Iterator<Item = &Note> {
    notes.iter().filter(move |note| note.severity == severity)
}

fn item(note: &Note, context: Context<'_>) -> Html {
    let (class, word, icon) = match note.severity {
        Severity::Caution => ("caution", "Caution: ", Icon::Exclamation),
        Severity::Warning => ("warning", "Warning: ", Icon::Exclamation),
        Severity::Info => ("info", "", Icon::Info),
    };
    html! {
        <li key={note.code} class={classes!(class)}>
            { icon.sign(class) }
            <span><span class="for-readers">{ word }</span>{ context.message(&note.message) }</span>
        </li>
    }
}
