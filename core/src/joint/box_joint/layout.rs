//! How the width is divided: boundaries between pins and sockets.

use super::rule::{Leftover, Rule};
use crate::check::Checker;
use crate::cutter::Cutter;
use crate::dial::Scale;
use crate::limits;
use crate::message;
use crate::problem::Code;
use crate::stop::Board;
use crate::units::{Mm, write_number};

/// The divided width.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Layout {
    /// From the reference edge, both edges included.
    pub(super) boundaries: Vec<Mm>,
    /// Width of a usual finger.
    pub(super) finger: Mm,
    /// Gap aimed at, per flank.
    pub(super) gap: Mm,
    /// Whether board A has a pin at the reference edge.
    pub(super) first_is_pin: bool,
    /// Widths that whole fingers fill, where the rest is ripped off.
    pub(super) rip_to: Option<(Mm, Mm)>,
    /// Whether each socket is one pass by its rule.
    pub(super) one_pass: bool,
}

impl Layout {
    pub(super) fn count(&self) -> usize {
        self.boundaries.len().saturating_sub(1)
    }

    pub(super) fn boundary(&self, index: usize) -> Mm {
        self.boundaries.get(index).copied().unwrap_or_default()
    }

    pub(super) fn width(&self) -> Mm {
        self.boundaries.last().copied().unwrap_or_default()
    }

    pub(super) fn width_of(&self, space: usize) -> Mm {
        self.boundary(space + 1) - self.boundary(space)
    }

    pub(super) fn is_inner(&self, space: usize) -> bool {
        space > 0 && space + 1 < self.count()
    }

    /// The spaces that are sockets of a board.
    pub(super) fn sockets(&self, board: Board) -> impl Iterator<Item = usize> + use<> {
        let a_starts = usize::from(self.first_is_pin);
        let start = if board == Board::A {
            a_starts
        } else {
            1 - a_starts
        };
        (start..self.count()).step_by(2)
    }

    /// Whether it reads the same from both edges.
    pub(super) fn is_symmetric(&self) -> bool {
        let width = self.width();
        self.count() % 2 == 1
            && self
                .boundaries
                .iter()
                .zip(self.boundaries.iter().rev())
                .all(|(x, y)| (*x + *y).is_same(width))
    }
}

/// Everything a rule needs to become a layout.
pub(super) struct Ground<'a> {
    pub(super) width: Mm,
    pub(super) gap: Mm,
    pub(super) first_is_pin: bool,
    pub(super) cutter: &'a Cutter,
    pub(super) scale: &'a Scale,
}

/// Divides the width, or says what is wrong with the rule for this board and cutter.
pub(super) fn lay_out(rule: &Rule, ground: &Ground<'_>, check: &mut Checker<'_>) -> Option<Layout> {
    let layout = match rule {
        Rule::Count(count) => ground.equal(*count),
        Rule::Finger(finger) => ground.equal(ground.odd_count(*finger, check)?),
        Rule::OnePass(leftover) => ground.one_pass(*leftover, check)?,
        Rule::Pattern { weights, mirrored } => ground.pattern(weights, *mirrored),
    };
    let fits_cutter = ground.cutter_fits(rule, &layout, check);
    let pins_stand = ground.pins_stand(&layout, check);
    (fits_cutter && pins_stand).then_some(layout)
}

impl Ground<'_> {
    fn layout(&self, boundaries: Vec<Mm>, finger: Mm) -> Layout {
        Layout {
            boundaries,
            finger,
            gap: self.gap,
            first_is_pin: self.first_is_pin,
            rip_to: None,
            one_pass: false,
        }
    }

    fn equal(&self, count: u32) -> Layout {
        let boundaries = (0..=count)
            .map(|j| self.width * f64::from(j) / f64::from(count))
            .collect();
        self.layout(boundaries, self.width / f64::from(count))
    }

    /// The pitch (pin and socket) is the even number of dial steps nearest `2·(kerf − gap)`, so that half
    /// of it, the finger, is a whole number of steps too and every gap comes out as `kerf − pitch/2`.
    fn one_pass(&self, leftover: Leftover, check: &mut Checker<'_>) -> Option<Layout> {
        let step = self.scale.step();
        let opening = self.cutter.kerf() - self.gap;
        let steps = (opening / step).round();
        // Two fingers at least, of whole steps each.
        let most = (self.width / 2.0 / step + 5e-10).floor();
        if steps.min(most) < 1.0 {
            let message = message![
                "One pass per socket needs dial steps of at most ",
                opening.min(self.width / 2.0),
                "; this screw's are ",
                step,
                ". More divisions, half divisions or another layout would work."
            ];
            check
                .at("screw")
                .refuse("divisions", Code::DialTooCoarse, message, None);
            return None;
        }
        let finger = step * steps;
        if steps > most {
            let message = message![
                "This cutter makes fingers of ",
                finger,
                "; the board must be at least two of them wide, ",
                finger * 2.0,
                "."
            ];
            check.at("cutter").refuse(
                "kerf",
                Code::CutterTooWide,
                message,
                Some((step * most + self.gap).mm()),
            );
            return None;
        }
        let ratio = self.width / finger;
        let (below, above) = ((ratio + 1e-9).floor(), (ratio - 1e-9).ceil());
        let count = match leftover {
            Leftover::Ends => nearest_odd(ratio),
            Leftover::Far => whole((ratio + 0.5).floor()),
            Leftover::Rip => whole(below),
        };
        let count = few_enough(count, check)?;
        let width = if leftover == Leftover::Rip {
            finger * below
        } else {
            self.width
        };
        let first = match leftover {
            Leftover::Ends => finger + (width - finger * f64::from(count)) / 2.0,
            Leftover::Far | Leftover::Rip => finger,
        };
        let inner = (0..count - 1).map(|j| first + finger * f64::from(j));
        let boundaries = [Mm::ZERO].into_iter().chain(inner).chain([width]).collect();
        let gap = self.cutter.kerf() - finger;
        let rip_to = (leftover == Leftover::Rip).then_some((width, finger * above));
        Some(Layout {
            gap,
            rip_to,
            one_pass: true,
            ..self.layout(boundaries, finger)
        })
    }

    fn pattern(&self, weights: &[f64], mirrored: bool) -> Layout {
        let back = weights
            .iter()
            .rev()
            .skip(1)
            .take(if mirrored { weights.len() } else { 0 });
        let all: Vec<f64> = weights.iter().chain(back).copied().collect();
        let total: f64 = all.iter().sum();
        let mut run = 0.0;
        let mut boundaries = vec![Mm::ZERO];
        for weight in all.iter().take(all.len().saturating_sub(1)) {
            run += weight;
            boundaries.push(self.width * (run / total));
        }
        boundaries.push(self.width);
        self.layout(boundaries, self.width / all.len() as f64)
    }

    /// Inner sockets must take the cutter; those open at an edge always do.
    fn cutter_fits(&self, rule: &Rule, layout: &Layout, check: &mut Checker<'_>) -> bool {
        let kerf = self.cutter.kerf();
        let least = kerf - layout.gap;
        let narrow = |space: &usize| {
            let opening = layout.width_of(*space) + layout.gap;
            layout.is_inner(*space) && opening < kerf && !opening.is_same(kerf)
        };
        let mut narrow = (0..layout.count()).filter(narrow).peekable();
        let Some(space) = narrow.peek().copied() else {
            return true;
        };
        let opening = layout.width_of(space) + layout.gap;
        match rule {
            Rule::Count(_) => {
                let most = ((self.width / least + 1e-9).floor()).max(2.0);
                let message = message![
                    "Inner sockets would be ",
                    opening,
                    " wide, narrower than the cutter's ",
                    kerf,
                    "; at most ",
                    write_number(most, 0),
                    " fingers, or a cutter of at most ",
                    opening,
                    "."
                ];
                check
                    .at("layout")
                    .refuse("count", Code::CutterTooWide, message, Some(most));
            }
            Rule::Finger(_) | Rule::OnePass(_) => self.finger_too_narrow(opening, check),
            Rule::Pattern { weights, .. } => {
                let mut check = check.at("layout");
                let mut seen = Vec::new();
                for space in narrow {
                    let index = if space < weights.len() {
                        space
                    } else {
                        layout.count() - 1 - space
                    };
                    if seen.contains(&index) {
                        continue;
                    }
                    seen.push(index);
                    let message = message![
                        "Space ",
                        space + 1,
                        " would be ",
                        layout.width_of(space) + layout.gap,
                        " wide as a socket, narrower than the cutter's ",
                        kerf,
                        "; it needs at least ",
                        least,
                        " of the board's width."
                    ];
                    check.refuse(
                        &format!("weights.{index}"),
                        Code::CutterTooWide,
                        message,
                        None,
                    );
                }
            }
        }
        false
    }

    /// Every pin must be left standing, also after each flank has been rounded to the dial.
    fn pins_stand(&self, layout: &Layout, check: &mut Checker<'_>) -> bool {
        let step = self.scale.step();
        let rounding = |space| match (layout.one_pass, layout.is_inner(space)) {
            // All stops of such a layout round alike, so only the ends take the difference up.
            (true, true) => Mm::ZERO,
            (true, false) => step,
            // The leading board's flanks move by half a step, the follower's by half a step more.
            (false, _) => step * 2.0,
        };
        let gaps = |space| {
            if layout.is_inner(space) {
                layout.gap
            } else {
                layout.gap / 2.0
            }
        };
        let weakest = (0..layout.count())
            .min_by_key(|space| layout.width_of(*space) - gaps(*space) - rounding(*space));
        let Some(space) = weakest else { return false };
        let width = layout.width_of(space);
        if (width - gaps(space) - rounding(space)).is_above(Mm::ZERO) {
            return true;
        }
        if self.gap < width / 2.0 {
            let message = message![
                "The narrowest finger would be ",
                width,
                " wide; dial steps of ",
                step,
                " are too coarse for it. More divisions, half divisions or wider fingers would work."
            ];
            check
                .at("screw")
                .refuse("divisions", Code::DialTooCoarse, message, None);
        } else {
            let most = (width / 2.0 - step).max(Mm::ZERO);
            let message = message![
                "The glue gap would eat a finger of ",
                width,
                "; at most ",
                most,
                " would work."
            ];
            check.refuse("glueGap", Code::TooLarge, message, Some(most.mm()));
        }
        false
    }
}

fn few_enough(count: u32, check: &mut Checker<'_>) -> Option<u32> {
    let most = limits::FINGER_COUNT.most;
    if f64::from(count) <= most {
        return Some(count);
    }
    let message = message![
        "This would be ",
        count,
        " fingers; at most ",
        write_number(most, 0),
        " are planned."
    ];
    check.refuse("layout", Code::TooLarge, message, None);
    None
}

/// The odd whole number nearest to a ratio, the greater of two.
pub(super) fn nearest_odd(ratio: f64) -> u32 {
    whole(2.0 * ((ratio + 1e-9) / 2.0).floor() + 1.0)
}

#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "a board's width over a finger"
)]
fn whole(number: f64) -> u32 {
    number as u32
}
