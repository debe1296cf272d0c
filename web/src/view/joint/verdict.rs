//! What the dry fit says, in words and with a sign.

use notchwright_core::dryfit::DryFit;
use notchwright_core::units::Mm;
use yew::{Html, html};

use crate::view::context::Context;
use crate::view::icon::Icon;

/// How the boards go together as cut.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(in crate::view) enum Fit {
    /// As they come from the saw.
    Goes,
    /// Once wood that the cutter left is pared away.
    NeedsChisel,
    /// Not at all.
    Clashes,
}

impl Fit {
    pub(in crate::view) fn of(fit: &DryFit) -> Self {
        if fit.clash {
            Self::Clashes
        } else if left_on_floors(fit).is_some() || !fit.uncut.is_empty() {
            Self::NeedsChisel
        } else {
            Self::Goes
        }
    }
}

/// How high ridges stand where the other board should sit.
fn left_on_floors(fit: &DryFit) -> Option<Mm> {
    let least = fit.floor_gap_a.min(fit.floor_gap_b);
    least.is_below(Mm::ZERO).then_some(-least)
}

/// The verdict; readers hear it whenever it changes.
pub(in crate::view) fn view(fit: &DryFit, aim: Mm, context: Context<'_>) -> Html {
    let (sign, title, says) = match Fit::of(fit) {
        Fit::Goes => (Icon::Tick.sign("fits"), "It fits.", gaps(fit, aim, context)),
        Fit::NeedsChisel => (
            Icon::Chisel.sign("chisel"),
            "It fits, after the chisel.",
            for_the_chisel(fit, aim, context),
        ),
        Fit::Clashes => (
            Icon::Cross.sign("clash"),
            "It clashes.",
            clash(fit, context),
        ),
    };
    html! {
        <div class="verdict" role="status">
            { sign }
            <strong>{ title }</strong>
            <span>{ says }</span>
        </div>
    }
}

fn gaps(fit: &DryFit, aim: Mm, context: Context<'_>) -> String {
    let (least, most) = (fit.smallest_gap, fit.largest_gap);
    let aim = context.length(aim);
    if context.length(least) == context.length(most) {
        return format!(
            "Dry fit: every gap {}, aimed at {aim}. Nothing clashes.",
            context.length(least)
        );
    }
    format!(
        "Dry fit: every gap {} to {}, aimed at {aim}. Nothing clashes.",
        crate::view::show::bare(least, context.unit()),
        context.length(most)
    )
}

fn for_the_chisel(fit: &DryFit, aim: Mm, context: Context<'_>) -> String {
    let ridges = left_on_floors(fit).map(|ridge| {
        format!(
            "Pare the socket floors level: ridges of up to {} are left. ",
            context.length(ridge)
        )
    });
    let highest = fit.uncut.iter().map(|uncut| uncut.height).max();
    let uncut = highest.map(|height| {
        format!(
            "Pare away what no pass reaches, up to {} high. ",
            context.length(height)
        )
    });
    format!(
        "{}{}{}",
        ridges.unwrap_or_default(),
        uncut.unwrap_or_default(),
        gaps(fit, aim, context)
    )
}

fn clash(fit: &DryFit, context: Context<'_>) -> String {
    let overlap = context.length(-fit.smallest_gap);
    format!(
        "Dry fit: wood overlaps by up to {overlap} at a flank. Do not cut this; a larger glue gap would work."
    )
}
