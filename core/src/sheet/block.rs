//! What is cut out of a sheet, from the parts upwards.
//!
//! Blocks side by side, a kerf between neighbours, make a larger block. Whatever is built like this can be cut
//! from edge to edge, and a layout is one block that fits its sheet; where it is smaller, the rest falls off.

use super::job::{Axis, Grain, Job, Kind, Size, Um};

/// A block with its size.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Block {
    pub(super) size: Size,
    pub(super) what: What,
}

/// What a block is.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum What {
    /// One part, with its grain across the sheet's if it is turned.
    Part { part: usize, turned: bool },
    /// Blocks side by side.
    Join { joint: Joint, blocks: Vec<Block> },
}

/// How blocks lie side by side: which way, and what is lost between them.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Joint {
    pub(super) axis: Axis,
    pub(super) gap: Um,
    /// Whether they are parted by the hand-held saw.
    pub(super) rough: bool,
}

impl Joint {
    /// Parted on the table saw.
    pub(super) fn sawn(axis: Axis, job: &Job) -> Self {
        Self {
            axis,
            gap: job.kerf,
            rough: false,
        }
    }
}

impl Block {
    /// One part on a sheet of this grain, if it may lie so.
    pub(super) fn part(job: &Job, part: usize, turned: bool, grain: Grain) -> Option<Self> {
        Some(Self {
            size: job.parts.get(part)?.on(grain, turned)?,
            what: What::Part { part, turned },
        })
    }

    /// Blocks side by side; those that are joined the same way already become neighbours of the rest.
    pub(super) fn join(joint: Joint, blocks: impl IntoIterator<Item = Self>) -> Option<Self> {
        let mut all: Vec<Self> = Vec::new();
        for block in blocks {
            match block.what {
                What::Join {
                    joint: inner,
                    blocks,
                } if inner == joint => all.extend(blocks),
                what => all.push(Self { what, ..block }),
            }
        }
        if all.len() < 2 {
            return all.pop();
        }
        let axis = joint.axis;
        let gaps = joint.gap * (all.len() as Um - 1);
        let along: Um = all.iter().map(|block| block.size.along(axis)).sum();
        let across = all.iter().map(|block| block.size.along(axis.other())).max();
        let size = Size::default()
            .with(axis, along + gaps)
            .with(axis.other(), across.unwrap_or_default());
        Some(Self {
            size,
            what: What::Join { joint, blocks: all },
        })
    }

    /// The same with all in it turned by a quarter.
    pub(super) fn turned(self) -> Self {
        let what = match self.what {
            What::Part { part, turned } => What::Part {
                part,
                turned: !turned,
            },
            What::Join { joint, blocks } => What::Join {
                joint: Joint {
                    axis: joint.axis.other(),
                    ..joint
                },
                blocks: blocks.into_iter().map(Self::turned).collect(),
            },
        };
        Self {
            size: self.size.turned(),
            what,
        }
    }

    /// Its parts in order, each with whether it is turned.
    pub(super) fn each_part(&self, seen: &mut impl FnMut(usize, bool)) {
        match &self.what {
            What::Part { part, turned } => seen(*part, *turned),
            What::Join { blocks, .. } => {
                for block in blocks {
                    block.each_part(seen);
                }
            }
        }
    }

    /// How many parts it has.
    pub(super) fn pieces(&self) -> usize {
        match &self.what {
            What::Part { .. } => 1,
            What::Join { blocks, .. } => blocks.iter().map(Self::pieces).sum(),
        }
    }

    /// Area of its parts.
    pub(super) fn wood(&self) -> Um {
        match &self.what {
            What::Part { .. } => self.size.area(),
            What::Join { blocks, .. } => blocks.iter().map(Self::wood).sum(),
        }
    }

    /// How many blocks are inside one another.
    pub(super) fn depth(&self) -> usize {
        match &self.what {
            What::Part { .. } => 1,
            What::Join { blocks, .. } => 1 + blocks.iter().map(Self::depth).max().unwrap_or(0),
        }
    }

    /// Whether it can be cut from a sheet of this kind: it fits, and whatever comes to the table saw is lifted.
    pub(super) fn can_be_cut(&self, job: &Job, kind: &Kind) -> bool {
        self.size.fits(kind.usable()) && (job.lifts(kind.size, kind) || self.is_lifted(job, kind))
    }

    fn is_lifted(&self, job: &Job, kind: &Kind) -> bool {
        match &self.what {
            What::Join { joint, blocks } if joint.rough => {
                blocks.iter().all(|block| block.is_lifted(job, kind))
            }
            _ => job.lifts_with_margins(self.size, kind),
        }
    }
}
