//! What each field allows by itself may still not go together.

use super::job::{Job, Kind, Part, Rough, Size, Um, ceil, mm};
use crate::check::Checker;
use crate::limits;
use crate::message;
use crate::message::Piece;
use crate::problem::Code;
use crate::units::{Mm, write_number};

/// Gives each stock a number; parts without one take that of the sheets, where all are of one.
pub(super) fn by_stock(
    mut kinds: Vec<Kind>,
    parts: Vec<(Part, Option<String>)>,
    check: &mut Checker<'_>,
) -> Option<(Vec<Kind>, Vec<Part>)> {
    let mut stocks: Vec<Option<String>> = Vec::new();
    for kind in &mut kinds {
        kind.group = stocks
            .iter()
            .position(|stock| *stock == kind.stock)
            .unwrap_or_else(|| {
                stocks.push(kind.stock.clone());
                stocks.len() - 1
            });
    }
    let mut check = check.at("parts");
    let grouped: Vec<_> = parts
        .into_iter()
        .enumerate()
        .map(|(index, (part, stock))| {
            let found = stocks.iter().position(|known| *known == stock);
            let only = (stock.is_none() && stocks.len() == 1).then_some(0);
            let group = found.or(only);
            if group.is_none() {
                let message = match &stock {
                    Some(stock) => message![
                        "No sheet is of the stock «",
                        stock,
                        "»: add one, or correct the name."
                    ],
                    None => message![
                        "There are sheets of several stocks: say which one this part is made of."
                    ],
                };
                let code = if stock.is_some() {
                    Code::UnknownWord
                } else {
                    Code::Missing
                };
                check
                    .at(&index.to_string())
                    .refuse("stock", code, message, None);
            }
            Some(Part {
                group: group?,
                ..part
            })
        })
        .collect();
    let grouped: Option<Vec<_>> = grouped.into_iter().collect();
    Some((kinds, grouped?))
}

/// Whether there is a sheet for each part, and a saw for each cut.
pub(super) fn can_be_cut(job: &Job, check: &mut Checker<'_>) {
    let pieces: f64 = job.parts.iter().map(|part| f64::from(part.count)).sum();
    if pieces > limits::PIECES_LAID.most {
        let message = message![
            "There are ",
            pieces as u32,
            " pieces; at most ",
            limits::PIECES_LAID.most as u32,
            " are laid out together. Divide the list."
        ];
        check.refuse(
            "parts",
            Code::TooLarge,
            message,
            Some(limits::PIECES_LAID.most),
        );
    }
    for (index, kind) in job.kinds.iter().enumerate() {
        let usable = kind.usable();
        if usable.x <= 0 || usable.y <= 0 {
            let message = message![
                "Nothing is left of this sheet once its edges are trimmed: trim less than half of its shorter side."
            ];
            check.at("sheets").at(&index.to_string()).refuse(
                "edgeTrim",
                Code::TooLarge,
                message,
                None,
            );
        }
    }
    for (index, part) in job.parts.iter().enumerate() {
        let mut check = check.at("parts");
        let mut check = check.at(&index.to_string());
        is_wider_than_kerf(job, part, &mut check);
        fits_a_sheet(job, part, &mut check);
    }
    if let Some(rough) = &job.rough {
        can_be_lifted(job, rough, &mut check.at("rough"));
    }
}

fn is_wider_than_kerf(job: &Job, part: &Part, check: &mut Checker<'_>) {
    let sides = [("length", part.size.x), ("width", part.size.y)];
    for (field, _) in sides.into_iter().filter(|(_, side)| *side <= job.kerf) {
        let message = message![
            "This part is no wider than the kerf of ",
            mm(job.kerf),
            ": it must be larger, or the kerf narrower."
        ];
        check.refuse(field, Code::TooSmall, message, Some(mm(job.kerf).mm()));
    }
}

fn fits_a_sheet(job: &Job, part: &Part, check: &mut Checker<'_>) {
    let own = || job.kinds.iter().filter(|kind| kind.group == part.group);
    let fits = |kind: &Kind, turned| {
        part.on(kind.grain, turned)
            .is_some_and(|size| size.fits(kind.usable()))
    };
    if own().any(|kind| fits(kind, false) || fits(kind, true)) {
        return;
    }
    let Some(largest) = own().max_by_key(|kind| kind.usable().area()) else {
        return;
    };
    let along = part.on(largest.grain, false).unwrap_or_default();
    let beyond = |side: Um, room: Um| side > room;
    let usable = largest.usable();
    // The side that is too long on the largest sheet, in the part's own words.
    let field = if beyond(along.x, usable.x) == (along.x == part.size.x) {
        "length"
    } else {
        "width"
    };
    let message = message![
        "This part is larger than every sheet of its stock. With its allowances it needs a sheet of at least ",
        mm(along.x + largest.size.x - usable.x),
        " by ",
        mm(along.y + largest.size.y - usable.y),
        " before its edges are trimmed; the largest here is ",
        mm(largest.size.x),
        " by ",
        mm(largest.size.y),
        "."
    ];
    check.refuse(field, Code::LargerThanSheet, message, None);
}

/// What is lacking for a part to come to the saw, with what is still to be trimmed from it.
struct Lack {
    field: &'static str,
    /// Micrometres, or grams, which are as many thousandths of a kilogram.
    least: Um,
    part: u32,
}

/// Each part must itself come to the saw; of those that do not, the one that needs most speaks for all.
fn can_be_lifted(job: &Job, rough: &Rough, check: &mut Checker<'_>) {
    let lacks = || {
        let pairs = job
            .parts
            .iter()
            .flat_map(|part| job.kinds.iter().map(move |kind| (part, kind)));
        let own = pairs.filter(|(part, kind)| part.group == kind.group);
        own.filter_map(|(part, kind)| lack(rough, part, kind))
    };
    for field in ["longest", "widest", "heaviest"] {
        let own = lacks().filter(|lack| lack.field == field);
        let Some(lack) = own.max_by_key(|lack| lack.least) else {
            continue;
        };
        let least = mm(lack.least);
        let shown: Piece = match field {
            "heaviest" => format!("{} kg", write_number(least.mm(), 3)).into(),
            _ => least.into(),
        };
        let message = message![
            "Part ",
            lack.part,
            " must itself come to the saw, with what is still trimmed from it: allow at least ",
            shown,
            " here."
        ];
        check.refuse(field, Code::TooSmall, message, Some(least.mm()));
    }
}

fn lack(rough: &Rough, part: &Part, kind: &Kind) -> Option<Lack> {
    let around = 2 * rough.around(kind);
    let piece = Size {
        x: part.size.x + around,
        y: part.size.y + around,
    };
    if rough.lifts(piece, kind) {
        return None;
    }
    let (long, short) = (piece.x.max(piece.y), piece.x.min(piece.y));
    let [longest, widest] = rough.fields;
    let (field, least) = if long > rough.longest {
        (longest, long)
    } else if short > rough.widest {
        (widest, short)
    } else {
        let mass = kind.mass.unwrap_or_default();
        let heavy = mass * piece.area() as f64 / kind.size.area() as f64;
        ("heaviest", ceil(Mm::new(heavy).unwrap_or_default()) + 1)
    };
    Some(Lack {
        field,
        least,
        part: part.number,
    })
}
