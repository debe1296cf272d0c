//! Fingers about as wide as asked: an odd number of them, so that both edges are alike.

use super::layout::{Ground, nearest_odd};
use crate::check::Checker;
use crate::limits;
use crate::message;
use crate::problem::Code;
use crate::units::Mm;

impl Ground<'_> {
    /// How many fingers come nearest to the one asked.
    pub(super) fn odd_count(&self, finger: Mm, check: &mut Checker<'_>) -> Option<u32> {
        let count = nearest_odd(self.width / finger);
        let most = self.width / 2.0;
        if count < 3 {
            let message = message![
                "A finger may be at most half the board's width, ",
                most,
                "."
            ];
            check
                .at("layout")
                .refuse("width", Code::TooLarge, message, Some(most.mm()));
            return None;
        }
        if f64::from(count) > limits::FINGER_COUNT.most {
            // The greatest odd number that is planned.
            let least = self.width / (limits::FINGER_COUNT.most - 1.0);
            let message = message![
                "This would be ",
                count,
                " fingers; of at least ",
                least,
                " they would be few enough to be planned."
            ];
            check
                .at("layout")
                .refuse("width", Code::TooSmall, message, Some(least.mm()));
            return None;
        }
        Some(count)
    }

    /// Says how wide they must be: they come out somewhat wider or narrower than asked, since they fill the width.
    pub(super) fn finger_too_narrow(&self, opening: Mm, check: &mut Checker<'_>) {
        let kerf = self.cutter.kerf();
        let most = (self.width / (kerf - self.gap) + 1e-9).floor();
        let odd = most - (most + 1.0) % 2.0;
        let fewest = 3.0;
        let finger = self.width / odd.max(fewest);
        let (remedy, limit) = if odd < fewest {
            let widest = finger + self.gap;
            (
                message!["a cutter of at most ", widest, " would work."],
                None,
            )
        } else {
            let remedy = message!["fingers must be at least ", finger, " wide."];
            (remedy, Some(finger.mm()))
        };
        let message = message![
            "Sockets would be ",
            opening,
            " wide, narrower than the cutter's ",
            kerf,
            "; "
        ];
        check
            .at("layout")
            .refuse("width", Code::CutterTooWide, message.and(remedy), limit);
    }
}
