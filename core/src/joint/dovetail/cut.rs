//! Which ticks of the dial cut the flanks, and how the rest of each socket is cleared.
//!
//! The tail board leads: its flanks are rounded to the dial, and the pin board's are chosen against what
//! they then really are, so that every gap is within half a step of what was asked, however many tails.

use super::check::Job;
use super::scales::Scales;
use crate::cutter::Grind;
use crate::dial::Tick;
use crate::joint::run::Run;
use crate::joint::stops::Row;
use crate::units::Mm;

/// The passes of every set, rows from the edge at the stop outwards.
#[derive(Clone, Debug, Default)]
pub(super) struct Passes {
    pub(super) leaning: Vec<Row>,
    pub(super) turned_over: Vec<Row>,
    pub(super) upright: Vec<Row>,
    pub(super) pins_clockwise: Vec<Row>,
    pub(super) pins_anticlockwise: Vec<Row>,
}

impl Passes {
    pub(super) fn count(&self) -> usize {
        let sets = [
            &self.leaning,
            &self.turned_over,
            &self.upright,
            &self.pins_clockwise,
            &self.pins_anticlockwise,
        ];
        sets.into_iter().flatten().map(|row| row.run.len()).sum()
    }
}

/// Both boards as the dial lets them be cut.
#[derive(Clone, Debug)]
pub(super) struct Cuts {
    pub(super) passes: Passes,
    pub(super) sockets: Vec<TailSocket>,
    pub(super) pin_sockets: Vec<PinSocket>,
}

/// A socket of the tail board at the board's end; open at a board edge where it has no flank.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct TailSocket {
    left: Option<Flank>,
    right: Option<Flank>,
}

/// A flank as a tick of its own set, and where that puts it, from the reference edge.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Flank {
    tick: Tick,
    place: Mm,
}

/// A socket of the pin board at its outer face.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct PinSocket {
    left: Flank,
    right: Flank,
}

/// Cuts both boards.
pub(super) fn cut(job: &Job, scales: &Scales) -> Cuts {
    let cutting = Cutting { job, scales };
    let sockets = cutting.tail_sockets();
    let mut passes = cutting.tail_passes(&sockets);
    let mut pin_sockets = Vec::new();
    if !job.boards.is_half_blind() {
        pin_sockets = cutting.pin_sockets(&sockets);
        passes.pins_clockwise = cutting.clockwise(&pin_sockets);
        passes.pins_anticlockwise = cutting.anticlockwise(&pin_sockets);
    }
    Cuts {
        passes,
        sockets,
        pin_sockets,
    }
}

impl Cuts {
    /// The least wood left between two neighbouring flanks of one board, at its narrow end.
    pub(super) fn narrowest_wood(&self, job: &Job) -> Mm {
        let width = job.layout.width;
        let sockets = || self.sockets.iter();
        let pair = |before: Option<Flank>, after: Option<Flank>| Some(after?.place - before?.place);
        let tails = sockets()
            .zip(sockets().skip(1))
            .filter_map(|(before, after)| pair(before.right, after.left))
            .map(|tail| tail - job.lean() * 2.0);
        // At the board's end a tail must not reach past the edge either.
        let first = sockets().filter_map(|socket| socket.right.map(|right| right.place));
        let last = sockets().filter_map(|socket| socket.left.map(|left| width - left.place));
        let pins = || self.pin_sockets.iter();
        let between = pins()
            .zip(pins().skip(1))
            .map(|(before, after)| after.left.place - before.right.place);
        let at_edges = pins().flat_map(|socket| [socket.left.place, width - socket.right.place]);
        let wood = tails.chain(first).chain(last);
        wood.chain(between)
            .chain(at_edges)
            .min()
            .unwrap_or_default()
    }

    /// The narrowest socket of the pin board, at the inner face; none in a half-blind joint.
    pub(super) fn narrowest_pin_socket(&self, job: &Job) -> Option<Mm> {
        let turns = job.both_turns();
        let widths = self.pin_sockets.iter().map(PinSocket::width);
        widths.min().map(|width| width - turns)
    }
}

struct Cutting<'a> {
    job: &'a Job,
    scales: &'a Scales,
}

/// From one edge of the board or from the other.
#[derive(Clone, Copy, PartialEq)]
enum From {
    Reference,
    Far,
}

impl Cutting<'_> {
    fn width(&self) -> Mm {
        self.job.layout.width
    }

    fn place(&self, from: From, tick: Tick) -> Mm {
        let at = self.scales.leaning.at(tick);
        match from {
            From::Reference => at,
            From::Far => self.width() - at,
        }
    }

    /// The sockets of the tail board, half a glue gap wider on each side than the pins, at its end.
    fn tail_sockets(&self) -> Vec<TailSocket> {
        let back = self.job.gap / 2.0 - self.job.lean_of_proud();
        let tails = &self.job.layout.tails;
        let lefts = tails.iter().map(|tail| Some(tail.to_tip - back));
        let rights = tails.iter().map(|tail| Some(tail.from_tip + back));
        let sockets = [None].into_iter().chain(lefts);
        sockets
            .zip(rights.chain([None]))
            .map(|(left, right)| self.tail_socket(left, right))
            .collect()
    }

    fn tail_socket(&self, left: Option<Mm>, right: Option<Mm>) -> TailSocket {
        let scale = &self.scales.leaning;
        let flank = |from, tick| Flank {
            tick,
            place: self.place(from, tick),
        };
        let far = right.map(|right| self.width() - right);
        let nearest = TailSocket {
            left: left.map(|left| flank(From::Reference, scale.nearest(left))),
            right: far.map(|far| flank(From::Far, scale.nearest(far))),
        };
        let kerf = self.job.leaning_kerf();
        match nearest.width() {
            // A place as narrow as the kerf is rounded outwards, so that no pass touches the other flank.
            Some(width) if width.is_below(kerf) => TailSocket {
                left: left.map(|left| flank(From::Reference, scale.not_beyond(left))),
                right: far.map(|far| flank(From::Far, scale.not_beyond(far))),
            },
            _ => nearest,
        }
    }

    fn tail_passes(&self, sockets: &[TailSocket]) -> Passes {
        let upright: Vec<_> = if self.leaning_leaves_nothing(sockets) {
            vec![None; sockets.len()]
        } else {
            sockets.iter().map(|socket| self.upright(socket)).collect()
        };
        let cleared = || sockets.iter().zip(&upright).enumerate();
        let row = |index: usize, run| Row {
            space: 2 * index,
            socket: index,
            run,
        };
        let leaning = cleared().filter_map(|(index, (socket, upright))| {
            let run = self.leaning(From::Reference, socket, upright.is_some())?;
            Some(row(index, run))
        });
        let turned_over = cleared().rev().filter_map(|(index, (socket, upright))| {
            let run = self.leaning(From::Far, socket, upright.is_some())?;
            Some(row(index, run))
        });
        let uprights = upright.iter().enumerate();
        Passes {
            leaning: leaning.collect(),
            turned_over: turned_over.collect(),
            upright: uprights
                .filter_map(|(index, run)| Some(row(index, (*run)?)))
                .collect(),
            ..Passes::default()
        }
    }

    /// Teeth ground to the slope leave level floors, and from both sides they meet at the baseline where
    /// the narrow end is wide enough.
    fn leaning_leaves_nothing(&self, sockets: &[TailSocket]) -> bool {
        let both_leans = self.job.lean() * 2.0;
        let meet = |width: Mm| !width.is_below(both_leans);
        self.job.tools.cutter.grind() == Grind::Slope
            && sockets.iter().filter_map(TailSocket::width).all(meet)
    }

    /// Upright passes between the flanks at the board's end, where the cutter fits.
    fn upright(&self, socket: &TailSocket) -> Option<Run> {
        let (scale, cutter) = (&self.scales.upright, &self.job.tools.pin_cutter);
        let stride = scale.steps_within(cutter.stride());
        let first = socket.left.map(|left| scale.not_before(left.place));
        let last = socket
            .right
            .map(|right| scale.not_beyond(right.place - cutter.kerf()));
        match (first, last) {
            (Some(first), Some(last)) => {
                (first <= last).then(|| Run::covering(first, last, stride))
            }
            (Some(first), None) => {
                let off = scale.not_before(self.width() - cutter.kerf());
                Some(Run::covering(first, off, stride))
            }
            (None, Some(last)) => {
                let off = scale.not_beyond(Mm::ZERO).min(last);
                Some(Run::covering(off, last, stride))
            }
            (None, None) => None,
        }
    }

    /// Leaning passes from the flank that is on the left as seen from this edge.
    fn leaning(&self, from: From, socket: &TailSocket, cleared_upright: bool) -> Option<Run> {
        let (own, other) = match from {
            From::Reference => (socket.left, socket.right),
            From::Far => (socket.right, socket.left),
        };
        let seen = |place: Mm| match from {
            From::Reference => place,
            From::Far => self.width() - place,
        };
        let own = own?;
        let start = seen(own.place);
        let end = other.map(|other| seen(other.place));
        let to = self.filled_to(start, end, cleared_upright);
        let (scale, kerf) = (&self.scales.leaning, self.job.leaning_kerf());
        let inside = end.map(|end| scale.not_beyond(end - kerf));
        let wanted = scale.not_before(to - kerf);
        let last = inside.map_or(wanted, |inside| wanted.min(inside));
        let stride = self.job.tools.cutter.stride() / self.job.slope().cos;
        Some(Run::covering(own.tick, last, scale.steps_within(stride)))
    }

    /// How far from a flank the leaning passes go, at the board's end.
    fn filled_to(&self, start: Mm, end: Option<Mm>, cleared_upright: bool) -> Mm {
        let (lean, overlap) = (self.job.lean(), self.overlap());
        match (cleared_upright, end) {
            // Upright passes take all that is between the flanks' ends; what is below the tails is left.
            (true, Some(end)) => end.min(start + lean + overlap),
            (true, None) => (start + lean + overlap).min(self.width() + lean),
            (false, Some(end)) => end.min((start + end) / 2.0 + lean + overlap),
            (false, None) => self.width() + lean,
        }
    }

    fn overlap(&self) -> Mm {
        let cutter = &self.job.tools.cutter;
        (cutter.kerf() - cutter.stride()) / self.job.slope().cos
    }

    /// The sockets of the pin board at its outer face, a whole glue gap wider on each side than the
    /// tails really are.
    fn pin_sockets(&self, sockets: &[TailSocket]) -> Vec<PinSocket> {
        let proud = self.job.lean_of_proud();
        let tails = sockets.iter().zip(sockets.iter().skip(1));
        tails
            .filter_map(|(before, after)| {
                let left = before.right?.place + proud - self.job.gap;
                let right = after.left?.place - proud + self.job.gap;
                Some(self.pin_socket(left, right))
            })
            .collect()
    }

    fn pin_socket(&self, left: Mm, right: Mm) -> PinSocket {
        let kerf = self.job.turned_kerf();
        let socket = |left, right| PinSocket {
            left: Flank {
                tick: left,
                place: self.scales.anticlockwise.at(left),
            },
            right: Flank {
                tick: right,
                place: self.scales.clockwise.at(right) + kerf,
            },
        };
        let nearest = socket(
            self.scales.anticlockwise.nearest(left),
            self.scales.clockwise.nearest(right - kerf),
        );
        let narrow_end = nearest.width() - self.job.both_turns();
        if !narrow_end.is_below(kerf) {
            return nearest;
        }
        socket(
            self.scales.anticlockwise.not_beyond(left),
            self.scales.clockwise.not_before(right - kerf),
        )
    }

    /// Passes along the flanks that run away from the reference edge going inwards.
    fn anticlockwise(&self, sockets: &[PinSocket]) -> Vec<Row> {
        let scale = &self.scales.anticlockwise;
        let run = |socket: &PinSocket| {
            let (kerf, half_lap) = (self.job.turned_kerf(), self.turned_overlap() / 2.0);
            let wanted = scale.not_before(socket.middle() + half_lap - kerf);
            let inside = scale.not_beyond(socket.right.place - self.job.both_turns() - kerf);
            Run::covering(socket.left.tick, wanted.min(inside), self.turned_stride())
        };
        rows(sockets, run)
    }

    /// Passes along the flanks that run towards the reference edge going inwards.
    fn clockwise(&self, sockets: &[PinSocket]) -> Vec<Row> {
        let scale = &self.scales.clockwise;
        let run = |socket: &PinSocket| {
            let wanted = scale.not_beyond(socket.middle() - self.turned_overlap() / 2.0);
            let inside = scale.not_before(socket.left.place + self.job.both_turns());
            let first = wanted.max(inside).min(socket.right.tick);
            Run::covering(first, socket.right.tick, self.turned_stride())
        };
        rows(sockets, run)
    }

    fn turned_stride(&self) -> i64 {
        let stride = self.job.tools.pin_cutter.stride() / self.job.slope().cos;
        self.scales.clockwise.steps_within(stride)
    }

    fn turned_overlap(&self) -> Mm {
        let cutter = &self.job.tools.pin_cutter;
        (cutter.kerf() - cutter.stride()) / self.job.slope().cos
    }
}

fn rows(sockets: &[PinSocket], run: impl Fn(&PinSocket) -> Run) -> Vec<Row> {
    let row = |(index, socket): (usize, &PinSocket)| Row {
        space: 2 * index + 1,
        socket: index,
        run: run(socket),
    };
    sockets.iter().enumerate().map(row).collect()
}

impl TailSocket {
    /// Width at the board's end, where both flanks are its own.
    fn width(&self) -> Option<Mm> {
        Some(self.right?.place - self.left?.place)
    }
}

impl PinSocket {
    /// Width at the outer face.
    fn width(&self) -> Mm {
        self.right.place - self.left.place
    }

    fn middle(&self) -> Mm {
        (self.left.place + self.right.place) / 2.0
    }
}
