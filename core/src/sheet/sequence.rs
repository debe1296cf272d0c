//! The order in which a person makes the cuts of one sheet.

use super::cuts::{Cut, CutKind, Cutting, Fate};
use super::job::{Grain, Um};

/// One cut in its turn, and whether the fence stays where it is.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Turn {
    /// The piece in hand.
    pub(crate) piece: usize,
    pub(crate) cut: Cut,
    pub(crate) same_setting: bool,
}

/// What the saw is set to: for rips or for crosscuts, and how far from the blade.
type Setting = (bool, Um);

/// The cuts in order: by hand, trims, rips, crosscuts, as soon as the piece for them is there; a setting of the
/// fence is used for all that needs it before it is changed. What is left for later comes last.
pub(crate) fn sequence(cutting: &Cutting, grain: Grain) -> Vec<Turn> {
    let mut ready: Vec<(usize, Cut)> = Vec::new();
    let mut turns: Vec<Turn> = Vec::new();
    let mut set: Option<Setting> = None;
    open(cutting, Some(0), &mut ready);
    while let Some(index) = next(&ready, set, grain) {
        let (piece, cut) = ready.swap_remove(index);
        let needed = setting(&cut, grain);
        turns.push(Turn {
            piece,
            cut,
            same_setting: needed.is_some() && needed == set,
        });
        set = needed.or(set);
        open(cutting, Some(cut.kept), &mut ready);
        open(cutting, cut.rest, &mut ready);
    }
    turns
}

/// How often the fence is set.
pub(crate) fn settings(turns: &[Turn]) -> u32 {
    let set = turns
        .iter()
        .filter(|turn| !turn.same_setting && turn.cut.kind != CutKind::Rough);
    set.map(|_| 1).sum()
}

fn setting(cut: &Cut, grain: Grain) -> Option<Setting> {
    (cut.kind != CutKind::Rough).then_some((cut.axis != grain.rip(), cut.fence))
}

fn open(cutting: &Cutting, piece: Option<usize>, ready: &mut Vec<(usize, Cut)>) {
    let Some(index) = piece else { return };
    if let Some(Fate::Cut(cut)) = cutting.pieces.get(index).map(|piece| piece.fate) {
        ready.push((index, cut));
    }
}

/// The next cut: one that needs no other setting; else the kind that comes first, and of it the setting that
/// most cuts wait for.
fn next(ready: &[(usize, Cut)], set: Option<Setting>, grain: Grain) -> Option<usize> {
    let stays = |cut: &Cut| set.is_some() && setting(cut, grain) == set;
    let phase = |cut: &Cut| (cut.later, cut.kind);
    let first = ready.iter().map(|(_, cut)| phase(cut)).min()?;
    let same = ready
        .iter()
        .position(|(_, cut)| stays(cut) && cut.later == first.0);
    if same.is_some() {
        return same;
    }
    let here = || {
        ready
            .iter()
            .enumerate()
            .filter(|(_, (_, cut))| phase(cut) == first)
    };
    let waiting = waiting(here().map(|(_, (_, cut))| setting(cut, grain)));
    let best = here().max_by_key(|(index, (_, cut))| {
        let needed = setting(cut, grain);
        let place = waiting.binary_search_by_key(&needed, |(known, _)| *known);
        let count = place.ok().and_then(|place| waiting.get(place));
        (
            count.map(|(_, count)| *count),
            cut.fence,
            usize::MAX - index,
        )
    });
    best.map(|(index, _)| index)
}

/// How many cuts wait for each setting, in order: comparing each cut with each would take seconds over thousands.
fn waiting(needed: impl Iterator<Item = Option<Setting>>) -> Vec<(Option<Setting>, usize)> {
    let mut waiting: Vec<(Option<Setting>, usize)> = Vec::new();
    for setting in needed {
        let place = waiting.binary_search_by_key(&setting, |(known, _)| *known);
        match place.map(|place| waiting.get_mut(place)) {
            Ok(Some((_, count))) => *count += 1,
            Ok(None) => {}
            Err(place) => waiting.insert(place, (setting, 1)),
        }
    }
    waiting
}
