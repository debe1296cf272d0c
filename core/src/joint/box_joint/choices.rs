//! Every sensible number of fingers for a board and a cutter, the best first.

use core::cmp::Ordering;

use serde::Serialize;

use super::check::{steps_cover, thickness};
use super::layout::{Ground, Layout, lay_out};
use super::passes::usual_count;
use super::rule::Rule;
use super::{fit, request::BoardRequest};
use crate::check::{Checker, part};
use crate::cutter::{Cutter, CutterRequest};
use crate::dial::{Scale, Screw, ScrewRequest, Zero};
use crate::given::{Given, request};
use crate::limits;
use crate::message;
use crate::message::Message;
use crate::order::in_order;
use crate::problem::{Checked, Planned};
use crate::units::Mm;

request! {
    /// What the choices are made for.
    pub struct ChoicesRequest {
        /// Width of both boards, mm.
        pub width: Given<f64> = "width",
        /// Board A.
        pub a: Given<BoardRequest> = "a",
        /// Board B.
        pub b: Given<BoardRequest> = "b",
        /// The cutter.
        pub cutter: Given<CutterRequest> = "cutter",
        /// The screw.
        pub screw: Given<ScrewRequest> = "screw",
        /// Glue gap at each flank, mm; 0.05 when left out.
        pub glue_gap: Given<f64> = "glueGap",
    }
}

/// Numbers of fingers to choose from.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "camelCase")]
pub struct Choices {
    /// The best first; empty when the cutter is too wide for any inner socket on this board, or the dial too
    /// coarse. Fingers are from a quarter of the thinner board's thickness to three of the thicker one's,
    /// where there are such.
    pub choices: Vec<Choice>,
}

/// One number of fingers.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "camelCase")]
pub struct Choice {
    /// Pins and sockets together; odd, so that the joint is the same from both edges.
    pub count: u32,
    /// Width of a finger, mm.
    pub finger_width: Mm,
    /// Passes that clear one inner socket.
    pub passes_per_socket: usize,
    /// Passes for one end of both boards.
    pub total_passes: usize,
    /// Width of the finger at each edge, mm.
    pub end_finger: Mm,
    /// Whether a finger and its neighbour together are a whole number of the dial's steps.
    pub whole_divisions: bool,
    /// Why it stands where it stands.
    pub reason: Message,
}

/// Lists every sensible odd number of fingers that this cutter can make, the best first.
///
/// A finger of half to one and a half board thicknesses looks right (common practice); among those the
/// fewest passes win.
///
/// # Errors
/// Every problem of the request at once.
pub fn choices(request: &ChoicesRequest) -> Checked<Choices> {
    let mut problems = Vec::new();
    let found = read(request, &mut Checker::new(&mut problems));
    match found {
        Some(bench) if problems.is_empty() => Ok(Planned::plain(Choices {
            choices: bench.choices(),
        })),
        _ => Err(problems),
    }
}

fn read(request: &ChoicesRequest, check: &mut Checker<'_>) -> Option<Bench> {
    let width = check.length("width", &request.width, &limits::BOARD_WIDTH);
    let a = thickness("a", &request.a, check);
    let b = thickness("b", &request.b, check);
    let cutter = part("cutter", &request.cutter, check, Cutter::check);
    let screw = part("screw", &request.screw, check, Screw::check);
    let gap = check.length_or(
        "glueGap",
        &request.glue_gap,
        &limits::GLUE_GAP,
        Mm::constant(0.05),
    );
    let (a, b, cutter) = (a?, b?, cutter?);
    let scale = Scale::new(screw?, Zero::Touch, cutter.kerf());
    Some(Bench {
        width: width?,
        thin: a.min(b),
        thick: a.max(b),
        cutter,
        scale,
        gap: gap?,
    })
}

struct Bench {
    width: Mm,
    thin: Mm,
    thick: Mm,
    cutter: Cutter,
    scale: Scale,
    gap: Mm,
}

/// How a finger looks beside the boards' thickness.
#[derive(Clone, Copy, Debug, PartialEq)]
enum Look {
    Thin,
    Right,
    Wide,
}

impl Bench {
    fn choices(&self) -> Vec<Choice> {
        let most = limits::FINGER_COUNT.most as u32;
        let counts = || (3..=most).step_by(2);
        let sensible = counts().filter(|count| self.is_sensible(*count));
        let better = |x: &Choice, y: &Choice| self.better(x, y);
        let choices = in_order(sensible.map_while(|count| self.choice(count)), better);
        if choices.is_empty() {
            // A board far wider or far narrower than it is thick: the nearest that can be made.
            let nearest = counts()
                .map_while(|count| self.choice(count))
                .min_by(better);
            return nearest.into_iter().collect();
        }
        choices
    }

    /// Nobody looks for a finger thinner than a quarter of a board or wider than three of them.
    fn is_sensible(&self, count: u32) -> bool {
        let finger = self.width / f64::from(count);
        finger >= self.thin / 4.0 && finger <= self.thick * 3.0
    }

    /// `None` from the first number of fingers that is too many for the cutter or the dial.
    fn choice(&self, count: u32) -> Option<Choice> {
        let ground = Ground {
            width: self.width,
            gap: self.gap,
            first_is_pin: true,
            cutter: &self.cutter,
            scale: &self.scale,
        };
        let mut problems = Vec::new();
        let mut check = Checker::new(&mut problems);
        let layout = lay_out(&Rule::Count(count), &ground, &mut check)?;
        steps_cover(&layout, &self.cutter, &self.scale, &mut check)?;
        let finger = layout.finger;
        let passes = usual_count(finger + self.gap, &self.cutter);
        Some(Choice {
            count,
            finger_width: finger,
            passes_per_socket: usize::try_from(passes).unwrap_or_default(),
            total_passes: self.total(&layout),
            end_finger: finger,
            whole_divisions: self.is_whole(finger * 2.0),
            reason: self.reason(finger),
        })
    }

    fn total(&self, layout: &Layout) -> usize {
        let fitted = fit::fit(layout, &self.cutter, &self.scale);
        fitted
            .a
            .iter()
            .chain(&fitted.b)
            .map(|cleared| cleared.run.len())
            .sum()
    }

    fn is_whole(&self, pitch: Mm) -> bool {
        let steps = pitch / self.scale.screw().division();
        (steps - steps.round()).abs() < 1e-6
    }

    fn look(&self, finger: Mm) -> Look {
        if finger < self.thin / 2.0 {
            Look::Thin
        } else if finger > self.thick * 1.5 {
            Look::Wide
        } else {
            Look::Right
        }
    }

    fn reason(&self, finger: Mm) -> Message {
        match self.look(finger) {
            Look::Right => {
                message!["In proportion: between half and one and a half board thicknesses."]
            }
            Look::Thin => {
                message!["Thin: less than half a board thickness; more glue line, more passes."]
            }
            Look::Wide => message![
                "Wide: more than one and a half board thicknesses; quick to cut, plainer to look at."
            ],
        }
    }

    /// In proportion first, then nearest to as wide as the boards are thick, then fewer passes.
    fn better(&self, x: &Choice, y: &Choice) -> Ordering {
        let rank = |choice: &Choice| {
            let middle = (self.thin + self.thick) / 2.0;
            let ratio = choice.finger_width / middle;
            let off = if ratio < 1.0 { 1.0 / ratio } else { ratio };
            (self.look(choice.finger_width) != Look::Right, off)
        };
        let ((x_off_look, x_off), (y_off_look, y_off)) = (rank(x), rank(y));
        x_off_look
            .cmp(&y_off_look)
            .then(x_off.total_cmp(&y_off))
            .then(x.total_passes.cmp(&y.total_passes))
    }
}

#[cfg(test)]
mod tests {
    use super::{ChoicesRequest, choices};
    use crate::cutter::CutterRequest;
    use crate::dial::ScrewRequest;
    use crate::given::Given;
    use crate::joint::box_joint::{BoardRequest, BoxJointRequest, LayoutRequest, box_joint};

    fn request(width: f64, kerf: f64) -> ChoicesRequest {
        let board = |thickness: f64| BoardRequest {
            thickness: thickness.into(),
        };
        ChoicesRequest {
            width: width.into(),
            a: board(12.0).into(),
            b: board(18.0).into(),
            cutter: CutterRequest {
                kerf: kerf.into(),
                ..CutterRequest::default()
            }
            .into(),
            screw: ScrewRequest {
                lead: 2.0.into(),
                divisions: 100.0.into(),
                ..ScrewRequest::default()
            }
            .into(),
            glue_gap: Given::Missing,
        }
    }

    #[test]
    fn the_best_comes_first() {
        let choices = choices(&request(140.0, 3.2)).unwrap().plan.choices;
        // Derived: 140 / 9 = 15.56, nearest of all to the boards' mean thickness of 15.
        assert_eq!(choices[0].count, 9);
        assert_eq!(
            (choices[0].passes_per_socket, choices[0].total_passes),
            (6, 54)
        );
        // Derived: inner sockets of 140 / N + 0.05 take a 3.2 mm cutter up to N = 44.4, odd: 43.
        assert_eq!(choices.iter().map(|choice| choice.count).max(), Some(43));
        assert_eq!(choices.len(), 21);
    }

    #[test]
    fn every_choice_can_be_made_and_takes_the_passes_it_says() {
        let request = request(217.3, 3.07);
        for choice in choices(&request).unwrap().plan.choices {
            let joint = BoxJointRequest {
                width: request.width.clone(),
                a: request.a.clone(),
                b: request.b.clone(),
                cutter: request.cutter.clone(),
                screw: request.screw.clone(),
                layout: LayoutRequest::count(f64::from(choice.count)).into(),
                ..BoxJointRequest::default()
            };
            let plan = box_joint(&joint).unwrap().plan;
            let stops: usize = plan.sets.iter().map(|set| set.stops.len()).sum();
            assert_eq!(stops, choice.total_passes, "{}", choice.count);
            let inner = plan
                .sets
                .iter()
                .flat_map(|set| &set.stops)
                .filter(|stop| stop.space > 0 && stop.space + 1 < plan.count);
            assert!(
                inner
                    .clone()
                    .all(|stop| stop.passes == choice.passes_per_socket),
                "{}",
                choice.count
            );
        }
    }

    #[test]
    fn whole_divisions_are_found() {
        // Derived: 126 / 9 = 14, a pitch of 28 mm, 1400 divisions of 0.02 mm.
        let choices = choices(&request(126.0, 3.2)).unwrap().plan.choices;
        let nine = choices.iter().find(|choice| choice.count == 9).unwrap();
        assert!(nine.whole_divisions);
        assert!(
            !choices
                .iter()
                .find(|choice| choice.count == 11)
                .unwrap()
                .whole_divisions
        );
    }

    #[test]
    fn a_cutter_too_wide_for_any_socket_leaves_no_choice() {
        assert_eq!(choices(&request(140.0, 50.0)).unwrap().plan.choices, []);
    }

    /// Derived: one division of 6 mm leaves wood between passes of 3.2 mm; a socket of one pass has no between.
    #[test]
    fn a_dial_too_coarse_for_several_passes_leaves_no_choice() {
        let coarse = ScrewRequest {
            lead: 6.0.into(),
            divisions: 1.0.into(),
            ..ScrewRequest::default()
        };
        let request = ChoicesRequest {
            screw: coarse.into(),
            ..request(140.0, 3.2)
        };
        assert_eq!(choices(&request).unwrap().plan.choices, []);
    }

    #[test]
    fn a_board_wider_than_five_hundred_fingers_still_gets_one() {
        // Derived: 3000 mm of 1 mm stock would want fingers of 3 mm at most, 1000 of them; 499 is the nearest.
        let board = BoardRequest {
            thickness: 1.0.into(),
        };
        let request = ChoicesRequest {
            a: board.clone().into(),
            b: board.into(),
            ..request(3000.0, 3.2)
        };
        let counts: Vec<_> = choices(&request)
            .unwrap()
            .plan
            .choices
            .iter()
            .map(|choice| choice.count)
            .collect();
        assert_eq!(counts, [499]);
    }

    #[test]
    fn problems_come_at_once() {
        let problems = choices(&ChoicesRequest::default()).unwrap_err();
        assert_eq!(problems.len(), 5);
    }
}
