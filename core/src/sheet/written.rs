//! The best layout as a short text, to go on from: written by one slice of a search, read by the next.
//!
//! Each sheet is the number of its kind, a colon and a block: a part is its place in the list, with a `t` where it
//! is turned; `[…]` lie side by side along the sheet's length and `(…)` along its width, `{…}` and `<…>` the same
//! parted by hand. `3*7` is three times the part 7.

use super::block::{Block, Joint, What};
use super::job::{Axis, Grain, Job};
use super::search::{Laid, Layout, Search};

/// No layout is deeper: nobody makes as many cuts in pieces of pieces.
pub(super) const DEEPEST: usize = 400;

/// Writes every sheet of a search.
pub(super) fn write(search: &Search<'_>) -> String {
    let mut text = String::new();
    for laid in search.laid() {
        if !text.is_empty() {
            text.push(';');
        }
        text.push_str(&laid.kind.to_string());
        text.push(':');
        write_block(&laid.block, 1, &mut text);
    }
    text
}

fn brackets(joint: Joint) -> [char; 2] {
    match (joint.axis, joint.rough) {
        (Axis::X, false) => ['[', ']'],
        (Axis::Y, false) => ['(', ')'],
        (Axis::X, true) => ['{', '}'],
        (Axis::Y, true) => ['<', '>'],
    }
}

fn write_block(block: &Block, times: usize, text: &mut String) {
    if times > 1 {
        text.push_str(&times.to_string());
        text.push('*');
    }
    match &block.what {
        What::Part { part, turned } => {
            text.push_str(&part.to_string());
            if *turned {
                text.push('t');
            }
        }
        What::Join { joint, blocks } => {
            let [open, close] = brackets(*joint);
            text.push(open);
            let mut rest = blocks.as_slice();
            while let Some((first, others)) = rest.split_first() {
                let same = match first.what {
                    What::Part { .. } => others.iter().take_while(|other| *other == first).count(),
                    What::Join { .. } => 0,
                };
                write_block(first, same + 1, text);
                rest = others.get(same..).unwrap_or_default();
                if !rest.is_empty() {
                    text.push(',');
                }
            }
            text.push(close);
        }
    }
}

/// Reads what [`write`] wrote into a search; `None` where it is no layout of all parts of this job that can be cut.
pub(super) fn read<'a>(mut search: Search<'a>, text: &str) -> Option<Search<'a>> {
    let job = search.job;
    let mut laid = Vec::new();
    let mut parts_left: u32 = job.parts.iter().map(|part| part.count).sum();
    for sheet in text.split(';') {
        let (number, block) = sheet.split_once(':')?;
        let index: usize = number.parse().ok()?;
        let kind = job.kinds.get(index)?;
        let mut reader = Reader {
            job,
            grain: kind.grain,
            left: block,
            parts_left,
        };
        let block = reader.block(DEEPEST)?;
        parts_left = reader.parts_left;
        if !reader.left.is_empty() || !block.can_be_cut(job, kind) {
            return None;
        }
        laid.push(Laid { kind: index, block });
    }
    for group in &mut search.groups {
        let own = |laid: &Laid| {
            job.kinds
                .get(laid.kind)
                .is_some_and(|kind| kind.group == group.number)
        };
        let own: Vec<Laid> = laid.iter().filter(|laid| own(laid)).cloned().collect();
        let mut counts = vec![0; job.parts.len()];
        for laid in &own {
            laid.block.each_part(&mut |part, _| {
                if let Some(count) = counts.get_mut(part) {
                    *count += 1;
                }
            });
        }
        if counts != group.counts {
            return None;
        }
        group.offer(job, Layout::new(job, own));
    }
    Some(search)
}

struct Reader<'a> {
    job: &'a Job,
    grain: Grain,
    left: &'a str,
    /// More parts than the job has are not even made, on however many sheets.
    parts_left: u32,
}

impl Reader<'_> {
    fn take(&mut self, sign: char) -> Option<()> {
        self.left = self.left.strip_prefix(sign)?;
        Some(())
    }

    fn number(&mut self) -> Option<usize> {
        let end = self
            .left
            .find(|sign: char| !sign.is_ascii_digit())
            .unwrap_or(self.left.len());
        let (number, left) = self.left.split_at_checked(end)?;
        self.left = left;
        number.parse().ok()
    }

    fn block(&mut self, depth: usize) -> Option<Block> {
        let joint = |axis, rough| {
            let hand = self.job.rough.map(|rough| rough.gap());
            let gap = if rough { hand? } else { self.job.kerf };
            Some(Joint { axis, gap, rough })
        };
        let joint = match self.left.chars().next()? {
            '[' => joint(Axis::X, false)?,
            '(' => joint(Axis::Y, false)?,
            '{' => joint(Axis::X, true)?,
            '<' => joint(Axis::Y, true)?,
            _ => return self.parts(None)?.pop(),
        };
        let [open, close] = brackets(joint);
        self.take(open)?;
        let mut blocks = Vec::new();
        loop {
            if self.left.starts_with(|sign: char| sign.is_ascii_digit()) {
                blocks.extend(self.parts(Some(joint))?);
            } else {
                blocks.push(self.block(depth.checked_sub(1)?)?);
            }
            if self.take(close).is_some() {
                return Block::join(joint, blocks);
            }
            self.take(',')?;
        }
    }

    /// A part, or several times the same one where they lie side by side.
    fn parts(&mut self, side_by_side: Option<Joint>) -> Option<Vec<Block>> {
        let mut times = 1;
        let mut part = self.number()?;
        if side_by_side.is_some() && self.take('*').is_some() {
            times = part;
            part = self.number()?;
        }
        let turned = self.take('t').is_some();
        self.parts_left = self.parts_left.checked_sub(u32::try_from(times).ok()?)?;
        let block = Block::part(self.job, part, turned, self.grain)?;
        Some(vec![block; times])
    }
}
