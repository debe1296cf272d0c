//! A layout as cuts: the sheet in hand is parted again and again, each time from edge to edge.

use super::block::{Block, What};
use super::job::{Axis, Job, Kind, Rough, Sides, Size, Um};
use crate::order::in_order;

/// Everything that a sheet is parted into, the sheet itself first.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct Cutting {
    pub(crate) pieces: Vec<Piece>,
}

/// A piece and what becomes of it.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Piece {
    /// Its corner on the sheet.
    pub(crate) x: Um,
    pub(crate) y: Um,
    pub(crate) size: Size,
    pub(crate) fate: Fate,
}

/// What becomes of a piece.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) enum Fate {
    /// It is a part.
    Part { part: usize, turned: bool },
    /// It is left over.
    Offcut,
    /// It is what was trimmed off an edge.
    Trimming,
    /// It is parted once more.
    Cut(Cut),
}

/// One cut through the piece in hand.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Cut {
    pub(crate) kind: CutKind,
    /// The direction in which the piece gets shorter.
    pub(crate) axis: Axis,
    /// From the fence or the stop to the blade: the length of what is kept against it.
    pub(crate) fence: Um,
    /// What is kept against the fence.
    pub(crate) kept: usize,
    /// What falls off, unless the blade takes all of it.
    pub(crate) rest: Option<usize>,
    /// Whether it is left for later.
    pub(crate) later: bool,
}

/// Kinds of cuts, in the order in which they are made where there is a choice.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) enum CutKind {
    Rough,
    Trim,
    Rip,
    Crosscut,
}

/// The cuts of one layout on a sheet.
pub(super) fn cutting(job: &Job, kind: &Kind, block: &Block) -> Cutting {
    let mut cutter = Cutter {
        job,
        kind,
        pieces: Vec::new(),
    };
    let whole = cutter.piece(0, 0, kind.size);
    cutter.break_down(whole, kind.trim, block);
    Cutting {
        pieces: cutter.pieces,
    }
}

/// The block with its neighbours in an order that repeats settings of the fence: longest first.
pub(super) fn tidy(block: Block) -> Block {
    let What::Join { joint, blocks } = block.what else {
        return block;
    };
    let across = joint.axis.other();
    let blocks = in_order(blocks.into_iter().map(tidy), |one, other| {
        let along = other
            .size
            .along(joint.axis)
            .cmp(&one.size.along(joint.axis));
        along.then(other.size.along(across).cmp(&one.size.along(across)))
    });
    Block {
        size: block.size,
        what: What::Join { joint, blocks },
    }
}

struct Cutter<'a> {
    job: &'a Job,
    kind: &'a Kind,
    pieces: Vec<Piece>,
}

impl Cutter<'_> {
    fn piece(&mut self, x: Um, y: Um, size: Size) -> usize {
        self.pieces.push(Piece {
            x,
            y,
            size,
            fate: Fate::Offcut,
        });
        self.pieces.len() - 1
    }

    fn size(&self, piece: usize) -> Size {
        self.pieces
            .get(piece)
            .map(|piece| piece.size)
            .unwrap_or_default()
    }

    fn end_as(&mut self, piece: usize, fate: Fate) {
        if let Some(piece) = self.pieces.get_mut(piece) {
            piece.fate = fate;
        }
    }

    fn sawn(&self, axis: Axis) -> CutKind {
        if axis == self.kind.grain.rip() {
            CutKind::Crosscut
        } else {
            CutKind::Rip
        }
    }

    /// Cuts so far from the piece's end that `kept` stays against the fence; gives both pieces. Where the
    /// fence is at the far end, what falls off lies before it.
    fn cut(
        &mut self,
        piece: usize,
        cut: (CutKind, Axis),
        kept: Um,
        from_far_end: bool,
        later: bool,
    ) -> (usize, Option<usize>) {
        let (kind, axis) = cut;
        let kerf = match (kind, &self.job.rough) {
            (CutKind::Rough, Some(rough)) => rough.kerf,
            _ => self.job.kerf,
        };
        let Some(Piece { x, y, size, .. }) = self.pieces.get(piece).cloned() else {
            return (piece, None);
        };
        let rest = size.along(axis) - kept - kerf;
        let at = |offset: Um| match axis {
            Axis::X => (x + offset, y),
            Axis::Y => (x, y + offset),
        };
        let (kept_at, rest_at) = if from_far_end {
            (at(size.along(axis) - kept), at(0))
        } else {
            (at(0), at(kept + kerf))
        };
        let kept_piece = self.piece(kept_at.0, kept_at.1, size.with(axis, kept));
        let rest_piece =
            (rest > 0).then(|| self.piece(rest_at.0, rest_at.1, size.with(axis, rest)));
        let cut = Cut {
            kind,
            axis,
            fence: kept,
            kept: kept_piece,
            rest: rest_piece,
            later,
        };
        self.end_as(piece, Fate::Cut(cut));
        (kept_piece, rest_piece)
    }

    /// By hand until a person lifts it, then trimmed on the table saw, then cut.
    fn break_down(&mut self, piece: usize, trim: Sides, block: &Block) {
        let size = self.size(piece);
        let later = self.is_later(block);
        match (&self.job.rough, &block.what) {
            (Some(rough), _) if !rough.lifts(size, self.kind) => {
                let rough = *rough;
                match &block.what {
                    What::Join { joint, blocks } if joint.rough => {
                        self.part_by_hand(piece, trim, joint.axis, blocks, &rough, later);
                    }
                    _ => self.shorten_by_hand(piece, trim, block, &rough, later),
                }
            }
            _ => {
                let clean = self.trim(piece, trim, later);
                self.divide(clean, block);
            }
        }
    }

    fn part_by_hand(
        &mut self,
        mut piece: usize,
        mut trim: Sides,
        axis: Axis,
        blocks: &[Block],
        rough: &Rough,
        later: bool,
    ) {
        let Some((last, others)) = blocks.split_last() else {
            return;
        };
        for block in others {
            let (start, ends_rough) = match axis {
                Axis::X => (
                    trim.start,
                    Sides {
                        end: rough.allowance,
                        ..trim
                    },
                ),
                Axis::Y => (
                    trim.near,
                    Sides {
                        far: rough.allowance,
                        ..trim
                    },
                ),
            };
            let kept = start + block.size.along(axis) + rough.allowance;
            let (first, rest) = self.cut(piece, (CutKind::Rough, axis), kept, false, later);
            self.break_down(first, ends_rough, block);
            let Some(rest) = rest else { return };
            piece = rest;
            match axis {
                Axis::X => trim.start = rough.allowance,
                Axis::Y => trim.near = rough.allowance,
            }
        }
        self.break_down(piece, trim, last);
    }

    /// Cuts off by hand what no part needs, on the side where more of it is.
    fn shorten_by_hand(
        &mut self,
        piece: usize,
        trim: Sides,
        block: &Block,
        rough: &Rough,
        later: bool,
    ) {
        let size = self.size(piece);
        let kept = |axis: Axis| {
            let before = if axis == Axis::X {
                trim.start
            } else {
                trim.near
            };
            before + block.size.along(axis) + rough.allowance
        };
        let share = |axis: Axis| (size.along(axis) - kept(axis)) * 1000 / size.along(axis).max(1);
        let axis = if share(Axis::X) >= share(Axis::Y) {
            Axis::X
        } else {
            Axis::Y
        };
        if size.along(axis) <= kept(axis) {
            let clean = self.trim(piece, trim, later);
            self.divide(clean, block);
            return;
        }
        let (first, _) = self.cut(piece, (CutKind::Rough, axis), kept(axis), false, later);
        let trim = match axis {
            Axis::X => Sides {
                end: rough.allowance,
                ..trim
            },
            Axis::Y => Sides {
                far: rough.allowance,
                ..trim
            },
        };
        self.break_down(first, trim, block);
    }

    fn trim(&mut self, piece: usize, trim: Sides, later: bool) -> usize {
        let edges = [
            (Axis::Y, trim.near, true),
            (Axis::Y, trim.far, false),
            (Axis::X, trim.start, true),
            (Axis::X, trim.end, false),
        ];
        let mut piece = piece;
        for (axis, off, from_far_end) in edges {
            if off > 0 {
                let kept = self.size(piece).along(axis) - off;
                let (clean, rest) =
                    self.cut(piece, (CutKind::Trim, axis), kept, from_far_end, later);
                if let Some(rest) = rest {
                    self.end_as(rest, Fate::Trimming);
                }
                piece = clean;
            }
        }
        piece
    }

    /// Cuts a clean piece into what a block is made of.
    fn divide(&mut self, piece: usize, block: &Block) {
        match &block.what {
            What::Part { part, turned } => {
                let clean = self.cut_to_part(piece, block);
                self.end_as(
                    clean,
                    Fate::Part {
                        part: *part,
                        turned: *turned,
                    },
                );
            }
            What::Join { joint, blocks } => {
                let piece = self.cut_to_breadth(piece, joint.axis, block);
                self.cut_apart(piece, joint.axis, block, blocks);
            }
        }
    }

    fn cut_to(&mut self, piece: usize, axis: Axis, block: &Block) -> usize {
        let kept = block.size.along(axis);
        if self.size(piece).along(axis) <= kept {
            return piece;
        }
        let later = self.is_later(block);
        self.cut(piece, (self.sawn(axis), axis), kept, false, later)
            .0
    }

    /// The larger off-cut first; where both are waste, to length and then to width, as it comes from a strip.
    fn cut_to_part(&mut self, piece: usize, block: &Block) -> usize {
        let size = self.size(piece);
        let kerf = self.job.kerf;
        let left = |axis: Axis| size.with(axis, size.along(axis) - block.size.along(axis) - kerf);
        let crosscut = self.kind.grain.rip();
        let rip = crosscut.other();
        let keeps_rip =
            self.job.worth_keeping(left(rip)) && left(rip).area() > left(crosscut).area();
        let order = if keeps_rip {
            [rip, crosscut]
        } else {
            [crosscut, rip]
        };
        order
            .into_iter()
            .fold(piece, |piece, axis| self.cut_to(piece, axis, block))
    }

    /// One cut for all that lie side by side, if it is a rip or leaves something worth keeping.
    fn cut_to_breadth(&mut self, piece: usize, along: Axis, block: &Block) -> usize {
        let axis = along.other();
        let size = self.size(piece);
        let left = size.along(axis) - block.size.along(axis) - self.job.kerf;
        let worth = self.job.worth_keeping(size.with(axis, left));
        if worth || self.sawn(axis) == CutKind::Rip {
            self.cut_to(piece, axis, block)
        } else {
            piece
        }
    }

    fn cut_apart(&mut self, piece: usize, axis: Axis, block: &Block, blocks: &[Block]) {
        let mut piece = piece;
        for (index, one) in blocks.iter().enumerate() {
            let kept = one.size.along(axis);
            if self.size(piece).along(axis) <= kept {
                self.divide(piece, one);
                return;
            }
            let rest_is_later = blocks
                .get(index..)
                .unwrap_or_default()
                .iter()
                .all(|one| self.is_later(one));
            let later = rest_is_later || self.is_later(block);
            let (first, rest) = self.cut(piece, (self.sawn(axis), axis), kept, false, later);
            self.divide(first, one);
            let Some(rest) = rest else { return };
            piece = rest;
        }
    }

    fn is_later(&self, block: &Block) -> bool {
        let mut all = true;
        block.each_part(&mut |part, _| {
            all &= self.job.parts.get(part).is_some_and(|part| part.later);
        });
        all
    }
}
