//! Both boards as cut, and the numbers of the tail that was tapped in the picture or chosen beside it.

use std::rc::Rc;

use notchwright_core::drawing::{Drawing, dovetail_boards};
use notchwright_core::dryfit::Flank;
use notchwright_core::joint::dovetail::{DovetailPlan, Tail};
use notchwright_core::problem::Planned;
use notchwright_core::units::{Mm, Unit};
use web_sys::Element;
use yew::{
    Callback, Html, MouseEvent, Properties, TargetCast, component, html, use_callback, use_state,
};

use crate::view::joint::fact;
use crate::view::select::Select;
use crate::view::{drawing, show};

/// Which plan, and how lengths are written.
#[derive(Clone, Debug, PartialEq, Properties)]
pub(super) struct TailsProps {
    /// The plan.
    pub(super) planned: Rc<Planned<DovetailPlan>>,
    /// Unit that lengths are shown in.
    pub(super) unit: Unit,
}

/// The picture, and below it one tail's numbers.
#[component]
pub(super) fn Tails(props: &TailsProps) -> Html {
    let chosen = use_state(|| 0_usize);
    let plan = &props.planned.plan;
    let picture = dovetail_boards(plan);
    let choose = {
        let chosen = chosen.clone();
        use_callback((), move |index: usize, ()| chosen.set(index))
    };
    let tap = tapped(&picture, plan, choose.clone());
    let index = (*chosen).min(plan.tails.len().saturating_sub(1));
    let names = (1..=plan.tails.len()).map(|number| format!("tail {number}").into());
    let label = format!(
        "The tail board's face and the pin board's end as cut: {} of {} at the tip.",
        show::count(plan.count, "tail", "tails"),
        show::length(plan.tail_tip, props.unit)
    );
    html! {
        <figure class="card figure">
            <div onclick={tap}>
                { drawing::view(&picture, "boards", label, &|length| show::bare(length, props.unit)) }
            </div>
            <figcaption>
                <label class="rule">
                    <span class="quiet">{ "Tap a tail, or choose one" }</span>
                    <Select id="dovetail-tail" label="Which tail" options={names.collect::<Vec<_>>()} chosen={index} {choose} />
                </label>
                { for plan.tails.get(index).map(|tail| numbers(tail, plan, props.unit)) }
            </figcaption>
        </figure>
    }
}

fn numbers(tail: &Tail, plan: &DovetailPlan, unit: Unit) -> Html {
    let between = |from: Mm, to: Mm| {
        let ends = format!("{} to {}", show::bare(from, unit), show::length(to, unit));
        (
            show::length(to - from, unit),
            format!("from the reference edge {ends}"),
        )
    };
    let (tip, tip_ends) = between(tail.from_tip, tail.to_tip);
    let (base, base_ends) = between(tail.from_base, tail.to_base);
    let gap = |flank: &Flank| {
        let inner = show::length(flank.gap_at_inner, unit);
        (
            show::length(flank.gap_at_outer, unit),
            format!("at the outer face, {inner} at the inner"),
        )
    };
    let at = |place: Mm| {
        let flanks = plan.dry_fit.flanks.iter();
        flanks.min_by_key(|flank| (flank.x - place).abs()).map(gap)
    };
    html! {
        <dl class="facts" aria-live="polite">
            { fact("At the tip", tip, Some(tip_ends)) }
            { fact("At the baseline", base, Some(base_ends)) }
            { for at(tail.from_tip).map(|(gap, inner)| fact("Gap, nearer flank", gap, Some(inner))) }
            { for at(tail.to_tip).map(|(gap, inner)| fact("Gap, farther flank", gap, Some(inner))) }
        </dl>
    }
}

/// The boards lie in the middle of the picture, one unit of it to the millimetre.
fn tapped(picture: &Drawing, plan: &DovetailPlan, choose: Callback<usize>) -> Callback<MouseEvent> {
    let size = [picture.width, picture.height].map(Mm::mm);
    let edge = (picture.width - plan.width).mm() / 2.0;
    let tails: Vec<_> = plan
        .tails
        .iter()
        .map(|tail| (tail.from_tip.mm(), tail.to_tip.mm()))
        .collect();
    Callback::from(move |event: MouseEvent| {
        let svg = event
            .target_dyn_into::<Element>()
            .and_then(|target| target.closest("svg").ok()?);
        if let Some(svg) = svg {
            let shown = svg.get_bounding_client_rect();
            let [width, height] = size;
            // The picture is fitted into its frame, in the middle of it.
            let scale = (shown.width() / width).min(shown.height() / height);
            let from_middle = f64::from(event.client_x()) - shown.left() - shown.width() / 2.0;
            let x = from_middle / scale + width / 2.0 - edge;
            if let Some(index) = tails
                .iter()
                .position(|(from, to)| (*from..=*to).contains(&x))
            {
                choose.emit(index);
            }
        }
    })
}
