//! Divides the width, or says what would work instead.

use super::layout::{Ground, Layout, Rule};
use super::rule::Division;
use crate::check::Checker;
use crate::message;
use crate::problem::Code;
use crate::units::Mm;

/// The least that must be left, at the narrow ends, for these cutters, this gap and this dial.
#[derive(Clone, Copy, Debug)]
pub(super) struct Needs {
    /// Half-pin at the outer face.
    pub(super) half_pin: Mm,
    /// Tail at the baseline.
    pub(super) base: Mm,
}

/// Divides the width, or refuses the field that stands in the way.
pub(super) fn divide(
    ground: &Ground,
    division: &Division,
    needs: &Needs,
    check: &mut Checker<'_>,
) -> Option<Layout> {
    let division = &Division {
        rule: as_read(division.rule, ground, needs),
        ..division.clone()
    };
    let layout = ground.lay_out(division.rule, division.tails, &division.weights);
    let refusal = Refusal {
        ground,
        division,
        needs,
        layout: &layout,
    };
    let fit = Fit::of(&layout, ground, needs);
    if !fit.pin {
        refusal.pin(check);
    }
    if !fit.half_pin {
        refusal.half_pin(check);
    }
    if !fit.base && (fit.pin && fit.half_pin || !refusal.is_by_ratio()) {
        refusal.base(check);
    }
    fit.all().then_some(layout)
}

/// A pin or a half-pin typed as the least was shown is the least.
fn as_read(rule: Rule, ground: &Ground, needs: &Needs) -> Rule {
    let at_least = |asked: Mm, least: Mm| {
        if least.is_beyond(asked) {
            asked
        } else {
            asked.max(least)
        }
    };
    let half = |half_pin| at_least(half_pin, needs.half_pin);
    match rule {
        Rule::Widths { pin, half_pin } => Rule::Widths {
            pin: at_least(pin, ground.narrowest_pin),
            half_pin: half(half_pin),
        },
        Rule::Ratio(ratio) => Rule::Ratio(ratio),
        Rule::Narrowest { half_pin } => Rule::Narrowest {
            half_pin: half_pin.map(half),
        },
    }
}

/// What may be lost of a proposal when it is shown.
const SHOWN: Mm = Mm::constant(0.02);

/// What of a layout is wide enough.
struct Fit {
    pin: bool,
    half_pin: bool,
    base: bool,
}

impl Fit {
    fn of(layout: &Layout, ground: &Ground, needs: &Needs) -> Self {
        Self {
            pin: layout.tails.len() < 2 || !layout.pin.is_below(ground.narrowest_pin),
            half_pin: !layout.half_pin.is_below(needs.half_pin),
            base: !layout.narrowest_base().1.is_below(needs.base),
        }
    }

    fn all(&self) -> bool {
        self.pin && self.half_pin && self.base
    }
}

struct Refusal<'a> {
    ground: &'a Ground,
    division: &'a Division,
    needs: &'a Needs,
    layout: &'a Layout,
}

impl Refusal<'_> {
    fn is_by_ratio(&self) -> bool {
        matches!(self.division.rule, Rule::Ratio(_))
    }

    fn pin(&self, check: &mut Checker<'_>) {
        if self.is_by_ratio() {
            return self.fewer_tails(Code::CutterTooWide, "Pins", self.layout.pin, check);
        }
        let least = self.ground.narrowest_pin;
        let message = message![
            "Pins of ",
            self.layout.pin,
            " leave no room for this cutter between the tails; they must be at least ",
            least,
            " wide, or the cutter thinner."
        ];
        check.refuse("narrowPin", Code::CutterTooWide, message, Some(least.mm()));
    }

    fn half_pin(&self, check: &mut Checker<'_>) {
        if self.is_by_ratio() {
            let is_said =
                self.layout.tails.len() >= 2 && self.layout.pin.is_below(self.ground.narrowest_pin);
            if !is_said {
                self.fewer_tails(Code::TooLarge, "Half-pins", self.layout.half_pin, check);
            }
            return;
        }
        let least = self.needs.half_pin;
        let message = message![
            "Half-pins of ",
            self.layout.half_pin,
            " would not stand; they must be at least ",
            least,
            " wide."
        ];
        check.refuse("halfPin", Code::TooSmall, message, Some(least.mm()));
    }

    fn base(&self, check: &mut Checker<'_>) {
        let (index, base) = self.layout.narrowest_base();
        let code = if base.is_above(Mm::ZERO) {
            Code::CutterTooWide
        } else {
            Code::TooLarge
        };
        if self.division.weights.is_empty() {
            return self.fewer_tails(code, "At the baseline tails", base, check);
        }
        let message = message![
            "Tail ",
            index + 1,
            " would be ",
            base,
            " wide at the baseline and needs ",
            self.needs.base,
            ": a greater weight, narrower pins or fewer tails would work."
        ];
        check.refuse(&format!("weights.{index}"), Code::TooSmall, message, None);
    }

    /// Refuses the number of tails, or, where not even one would fit, the board.
    fn fewer_tails(&self, code: Code, what: &'static str, width: Mm, check: &mut Checker<'_>) {
        let fits = |tails: &u32| {
            let layout = self.ground.lay_out(self.division.rule, *tails, &[]);
            Fit::of(&layout, self.ground, self.needs).all()
        };
        let Some(most) = (1..self.division.tails).rev().find(fits) else {
            return self.too_narrow_a_board(check);
        };
        let width = width.max(Mm::ZERO);
        let message = match self.widest_pin() {
            Some(pin) => message![
                what,
                " would be ",
                width,
                " wide, too narrow. At most ",
                most,
                " tails, or pins of at most ",
                pin,
                ", would work."
            ],
            None => message![
                what,
                " would be ",
                width,
                " wide, too narrow. At most ",
                most,
                " tails would work."
            ],
        };
        check.refuse("tails", code, message, Some(f64::from(most)));
    }

    /// The widest pins that leave so many tails standing, where there are such.
    fn widest_pin(&self) -> Option<Mm> {
        let Rule::Widths { half_pin, .. } = self.division.rule else {
            return None;
        };
        let tails = f64::from(self.division.tails);
        let least_tail = self.needs.base + self.ground.run() * 2.0;
        let left = self.ground.width - half_pin * 2.0 - least_tail * tails;
        let pin = left / (tails - 1.0) - SHOWN;
        (tails > 1.0 && !pin.is_below(self.ground.narrowest_pin)).then_some(pin)
    }

    fn too_narrow_a_board(&self, check: &mut Checker<'_>) {
        let (run, needs) = (self.ground.run(), self.needs);
        let least_tail = needs.base + run * 2.0;
        let half_pin = match self.division.rule {
            Rule::Widths { half_pin, .. } => Some(half_pin),
            Rule::Narrowest { half_pin } => half_pin,
            Rule::Ratio(_) => None,
        };
        let widest = (self.ground.width - least_tail) / 2.0 - SHOWN;
        if half_pin.is_some() && !widest.is_below(needs.half_pin) {
            let message = message![
                "Not even one tail fits between these half-pins; half-pins of at most ",
                widest,
                " would work with one tail."
            ];
            check.refuse("halfPin", Code::TooLarge, message, Some(widest.mm()));
            return;
        }
        let least = match self.division.rule {
            Rule::Ratio(ratio) => {
                let for_tail = (needs.base + run) * ((1.0 + ratio) / ratio);
                let for_pins = (needs.half_pin * 2.0 + run) * (1.0 + ratio);
                for_tail.max(for_pins)
            }
            Rule::Narrowest { half_pin: None } => {
                least_tail + needs.half_pin.max(self.ground.narrowest_pin) * 2.0
            }
            Rule::Widths { .. } | Rule::Narrowest { .. } => {
                least_tail + half_pin.unwrap_or(needs.half_pin) * 2.0
            }
        } + SHOWN;
        let message = message![
            "Not even one tail of this slope fits on this board; a board of at least ",
            least,
            " would take one. A slighter slope needs less."
        ];
        check.refuse("width", Code::TooSmall, message, Some(least.mm()));
    }
}
