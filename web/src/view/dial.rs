//! The wheel's face with this screw's divisions, and where it must stand.

use std::f64::consts::TAU;

use notchwright_core::math::{cos, sin};
use notchwright_core::units::write_number;
use yew::{Html, html};

/// What the face shows.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Face {
    /// Graduations of the wheel.
    pub(super) divisions: u32,
    /// The division to set, from 0 up to `divisions`.
    pub(super) setting: f64,
}

/// More marks than this would run together on a phone: then only every second, fifth, tenth… is drawn.
const MOST_MARKS: u32 = 260;
/// Numbers that fit around the face.
const MOST_NUMBERS: u32 = 12;
/// Closer than this, marks are drawn with a finer line.
const CLOSE_FROM: u32 = 120;

const RIM: f64 = 88.0;
const NUMBERS: f64 = 65.0;

/// How far apart the marks of a face are, in divisions.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
struct Marks {
    every: u32,
    numbered: u32,
}

impl Marks {
    fn of(divisions: u32) -> Self {
        let every = round_step(divisions, MOST_MARKS, 1);
        Self {
            every,
            numbered: round_step(divisions, MOST_NUMBERS, every),
        }
    }
}

/// The least of 1, 2, 5, 10, 20, 50, … that makes at most `most` parts; one that leaves no odd part
/// at the end of the turn is preferred, and multiples of `of` are all that is looked at.
fn round_step(divisions: u32, most: u32, of: u32) -> u32 {
    let steps = || {
        (0..9)
            .flat_map(|power| [1, 2, 5].map(|digit| digit * 10_u32.pow(power)))
            .filter(move |step| step.is_multiple_of(of) && divisions.div_ceil(*step) <= most)
    };
    let fewest_wanted = most / 3;
    steps()
        .find(|step| divisions.is_multiple_of(*step) && divisions / step >= fewest_wanted)
        .or_else(|| steps().next())
        .unwrap_or(divisions)
}

/// The face; what it says is also in the words beside it, so readers are spared it.
pub(super) fn view(face: Face) -> Html {
    let marks = Marks::of(face.divisions);
    let close = (face.divisions / marks.every > CLOSE_FROM).then_some("close");
    let setting = super::show::number(face.setting);
    let is_long = setting.len() > 3;
    html! {
        <svg class="dial" viewBox="-108 -108 216 216" aria-hidden="true" focusable="false">
            <circle class="face" r="92" />
            <path class={yew::classes!("ticks", close)} d={ticks(face.divisions, marks.every, 82.0)} />
            <path class="ticks numbered" d={ticks(face.divisions, marks.numbered, 76.0)} />
            { for numbers(face.divisions, marks.numbered) }
            <path class="mark" d={mark(share(face.setting, face.divisions))} />
            <path class="pointer" d={pointer(share(face.setting, face.divisions))} />
            <text class={yew::classes!("setting", is_long.then_some("long"))} y={if is_long { "10" } else { "14" }}>
                { setting }
            </text>
        </svg>
    }
}

fn share(division: f64, divisions: u32) -> f64 {
    division / f64::from(divisions.max(1))
}

/// A place `radius` from the middle, `turn` of a turn clockwise from the top.
fn at(turn: f64, radius: f64) -> (f64, f64) {
    let angle = turn * TAU;
    (radius * sin(angle), -radius * cos(angle))
}

fn ticks(divisions: u32, every: u32, inner: f64) -> String {
    let mut path = String::new();
    for division in marked(divisions, every) {
        let turn = share(f64::from(division), divisions);
        let ((x, y), (to_x, to_y)) = (at(turn, inner), at(turn, RIM));
        path.push_str(&line((x, y), (to_x, to_y)));
    }
    path
}

fn marked(divisions: u32, every: u32) -> impl Iterator<Item = u32> {
    (0..divisions).step_by(every.max(1) as usize)
}

/// The numbers, without one that would run into the zero.
fn numbers(divisions: u32, every: u32) -> impl Iterator<Item = Html> {
    marked(divisions, every)
        .filter(move |division| *division == 0 || divisions - division > every / 2)
        .map(move |division| {
            let (x, y) = at(share(f64::from(division), divisions), NUMBERS);
            html! {
                <text class="number" x={tenths(x)} y={tenths(y + 4.4)}>{ division }</text>
            }
        })
}

/// An index mark outside the rim, and the mark of the face that belongs under it.
fn pointer(turn: f64) -> String {
    let (tip, left, right) = (
        at(turn, 91.0),
        at(turn - 0.018, 107.0),
        at(turn + 0.018, 107.0),
    );
    format!(
        "{}L{} {}Z",
        line(tip, left),
        tenths(right.0),
        tenths(right.1)
    )
}

fn mark(turn: f64) -> String {
    let ((x, y), (to_x, to_y)) = (at(turn, 75.0), at(turn, RIM));
    line((x, y), (to_x, to_y))
}

fn line(from: (f64, f64), to: (f64, f64)) -> String {
    let [x, y, to_x, to_y] = [from.0, from.1, to.0, to.1].map(tenths);
    format!("M{x} {y}L{to_x} {to_y}")
}

/// The face is 200 wide: finer would not show.
fn tenths(length: f64) -> String {
    write_number(length, 1)
}

#[cfg(test)]
mod tests {
    use super::Marks;

    /// Derived: rows of wheel, marks every, numbers every.
    #[test]
    fn marks_stay_apart_and_numbers_are_round() {
        let rows = [
            (1, 1, 1),
            (10, 1, 1),
            (50, 1, 5),
            (80, 1, 10),
            (100, 1, 10),
            (127, 1, 20),
            (254, 1, 50),
            (1000, 5, 100),
            (10_000, 50, 1000),
        ];
        for (divisions, every, numbered) in rows {
            assert_eq!(
                Marks::of(divisions),
                Marks { every, numbered },
                "{divisions}"
            );
        }
    }
}
