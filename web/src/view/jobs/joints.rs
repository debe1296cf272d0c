//! The open job: its name, its joints, and how far each has come.

use yew::{Html, html};

use super::leaf::Row;
use crate::answer::course::Course;
use crate::msg::{Edit, Leaf, Msg};
use crate::state::{Field, JointField, JointForm, JointKind, Order, Place, Progress};
use crate::view::context::Context;
use crate::view::field::Entry;
use crate::view::head;
use crate::view::icon::Icon;
use crate::view::saw::IN_EVERY_SET_UP;

/// The section.
pub(super) fn view(context: Context<'_>) -> Html {
    let work = &context.model.state.work;
    let open = work.job.joints.place();
    let row = |(place, joint): (usize, &JointForm)| {
        Row {
            place,
            is_open: place == open,
            name: &joint.name,
            one: "joint",
            says: says(joint, place == open, context),
            edit: Edit::JointOf,
        }
        .view(context)
    };
    html! {
        <section class="shelf" aria-labelledby="this-job">
            <h2 id="this-job">{ "This job" }</h2>
            <div class="fields">
                { Entry::new(Field::Job, "Name of the piece").view(context) }
                { Entry::new(Field::Joint(JointField::Name), "Name of the open joint").view(context) }
            </div>
            <ul aria-label="Joints of this job">{ for work.joints().enumerate().map(row) }</ul>
            <div class="buttons">
                <button type="button" class="button" onclick={context.edit(Edit::JointOf(Leaf::Add))}>
                    { Icon::Plus.view() }{ "Add a joint" }
                </button>
                <button type="button" class="button" onclick={context.send(Msg::Go(Place::Joint))}>
                    { "To the open joint" }
                </button>
            </div>
        </section>
    }
}

fn says(joint: &JointForm, is_open: bool, context: Context<'_>) -> Html {
    let kind = head::kind(joint.kind);
    let length = |entry| context.entered_length(entry);
    let boards = format!(
        "{kind} · {} wide, {} to {}",
        length(&joint.width),
        length(&joint.thickness_a),
        length(&joint.thickness_b)
    );
    html! {
        <>
            <p class="quiet">{ boards }</p>
            { progress(joint, is_open, context) }
        </>
    }
}

/// How many cuttings of ends are done of how many. Of the open joint it is known now, of others as they
/// were when they were last at the saw.
fn progress(joint: &JointForm, is_open: bool, context: Context<'_>) -> Html {
    let model = context.model;
    let at = model.state.progress.of(joint.id);
    let course = model.answer.course(Order::Boards).filter(|_| is_open);
    let ends = course.as_ref().map(Course::ends);
    let known = course.map(|course| (course.cuttings(), course.done(&at.done)));
    let (of, done) = known.unwrap_or_else(|| (at.of, at.done.count().min(at.of)));
    // Each end of a dovetail is cut in several set-ups.
    let is_repeated = joint.kind == JointKind::Dovetail;
    let words = match (of, done) {
        (0, _) => return html! { <p class="quiet">{ "Not begun." }</p> },
        (_, 0) if *at == Progress::default() => {
            format!("Not begun: {} ends to cut.", ends.unwrap_or(of))
        }
        (of, done) if done == of && is_repeated => "All ends are cut.".to_owned(),
        (of, done) if done == of => format!("All {of} ends are cut."),
        _ if is_repeated => format!("{done} of {of} ends cut{IN_EVERY_SET_UP}."),
        _ => format!("{done} of {of} ends cut."),
    };
    html! {
        <p class="come">
            <progress max={of.to_string()} value={done.to_string()} aria-hidden="true" />
            <span>{ words }</span>
        </p>
    }
}
