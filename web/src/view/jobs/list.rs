//! All jobs.

use yew::{Html, html};

use super::leaf::Row;
use crate::msg::{Edit, Leaf};
use crate::view::context::Context;
use crate::view::icon::Icon;
use crate::view::show;

/// The section.
pub(super) fn view(context: Context<'_>) -> Html {
    let work = &context.model.state.work;
    let row = |place: usize| {
        let resting = work.jobs.get(place);
        let job = resting.map_or(&work.job, |resting| &resting.job);
        let joints = show::count(job.joints.count(), "joint", "joints");
        Row {
            place,
            is_open: resting.is_none(),
            name: &job.name,
            one: "job",
            says: html! { <p class="quiet">{ joints }</p> },
            edit: Edit::Job,
        }
        .view(context)
    };
    html! {
        <section class="shelf" aria-labelledby="all-jobs">
            <h2 id="all-jobs">{ "All jobs" }</h2>
            <ul aria-label="Jobs">{ for (0..work.jobs.count()).map(row) }</ul>
            <div class="buttons">
                <button type="button" class="button" onclick={context.edit(Edit::Job(Leaf::Add))}>
                    { Icon::Plus.view() }{ "Add a job" }
                </button>
            </div>
        </section>
    }
}
