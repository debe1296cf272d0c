//! What a screw check is asked with.

use super::{Approach, Point};
use crate::check::Checker;
use crate::dial::ScrewRequest;
use crate::given::{Given, request};
use crate::limits;
use crate::message;
use crate::problem::Code;

request! {
    /// A screw with positions that were commanded and then measured.
    pub struct ScrewCheckRequest {
        /// The screw as it is taken to be.
        pub screw: Given<ScrewRequest> = "screw",
        /// The positions; at least three, at most 500.
        pub points: Given<Vec<Given<PointRequest>>> = "points",
    }

    /// One position.
    pub struct PointRequest {
        /// Commanded, mm.
        pub commanded: Given<f64> = "commanded",
        /// Measured, mm.
        pub measured: Given<f64> = "measured",
        /// Which way it was approached: with readings going `up` or `down`; nothing when that is not known.
        pub approach: Given<String> = "approach",
    }
}

/// Every point, or none when any has a problem.
pub(super) fn points(given: &[Given<PointRequest>], check: &mut Checker<'_>) -> Option<Vec<Point>> {
    let (least, most) = (limits::POINTS.least, limits::POINTS.most);
    let count = given.len();
    if (count as f64) < least || (count as f64) > most {
        let (code, limit) = if (count as f64) < least {
            (Code::TooSmall, least)
        } else {
            (Code::TooLarge, most)
        };
        let message = message!["From 3 to 500 points are needed; these are ", count, "."];
        check.refuse("points", code, message, Some(limit));
        return None;
    }
    let mut check = check.at("points");
    let points: Vec<_> = given
        .iter()
        .enumerate()
        .map(|(i, point)| self::point(&i.to_string(), point, &mut check))
        .collect();
    points.into_iter().collect()
}

fn point(place: &str, given: &Given<PointRequest>, check: &mut Checker<'_>) -> Option<Point> {
    let point = check.required(place, given)?;
    let mut check = check.at(place);
    let commanded = check.length("commanded", &point.commanded, &limits::READING);
    let measured = check.length("measured", &point.measured, &limits::READING);
    let ways = [("up", Some(Approach::Up)), ("down", Some(Approach::Down))];
    let approach = check.word_or("approach", &point.approach, &ways, None);
    Some(Point {
        commanded: commanded?,
        measured: measured?,
        approach: approach?,
    })
}
