//! What a sheet layout is asked with.

use serde::Serialize;

use crate::check::Checker;
use crate::given::{Given, Shape, request};
use crate::plain::Plain;

request! {
    /// Sheets on hand or to buy, and the parts to be cut from them.
    pub struct SheetLayoutRequest {
        /// Kinds of sheets.
        pub sheets: Given<Vec<Given<SheetRequest>>> = "sheets",
        /// Parts to cut.
        pub parts: Given<Vec<Given<PartRequest>>> = "parts",
        /// Width the saw really cuts, mm.
        pub kerf: Given<f64> = "kerf",
        /// Breaking sheets down with a hand-held saw before they come to the table saw; not done when left out.
        pub rough: Given<RoughRequest> = "rough",
        /// Smallest off-cut worth keeping; 300 by 100 mm when left out.
        pub least_offcut: Given<SizeRequest> = "leastOffcut",
        /// How long to search, and from where.
        pub search: Given<SearchRequest> = "search",
    }

    /// One kind of sheet.
    pub struct SheetRequest {
        /// What it is called.
        pub name: Given<String> = "name",
        /// Stock it is made of; parts come from sheets of their own stock.
        pub stock: Given<String> = "stock",
        /// Length, mm.
        pub length: Given<f64> = "length",
        /// Width, mm.
        pub width: Given<f64> = "width",
        /// Thickness, mm; only shown.
        pub thickness: Given<f64> = "thickness",
        /// Where the grain runs: along the `length` (when left out), along the `width`, or `none`.
        pub grain: Given<String> = "grain",
        /// What is cut off each edge before anything else, mm, kerf included; 0 when left out.
        pub edge_trim: Given<SidesRequest> = "edgeTrim",
        /// How many there are; as many as needed when left out.
        pub quantity: Given<f64> = "quantity",
        /// Price of one, in any money.
        pub price: Given<f64> = "price",
        /// Mass of one, kg: for what a person lifts; by its area that of another of its stock and thickness when
        /// left out.
        pub mass: Given<f64> = "mass",
        /// Whether it is an off-cut on hand, to be used before any whole sheet; `false` when left out.
        pub offcut: Given<bool> = "offcut",
    }

    /// One part of a list.
    pub struct PartRequest {
        /// What it is called.
        pub name: Given<String> = "name",
        /// Its number in the list; its place in it, from 1, when left out.
        pub number: Given<f64> = "number",
        /// How many are needed; 1 when left out.
        pub count: Given<f64> = "count",
        /// Finished length along the grain, mm.
        pub length: Given<f64> = "length",
        /// Finished width across the grain, mm.
        pub width: Given<f64> = "width",
        /// Whether its grain may run across; `false` when left out.
        pub may_turn: Given<bool> = "mayTurn",
        /// Allowance at each edge to be trimmed later, mm; 0 when left out.
        pub trim: Given<SidesRequest> = "trim",
        /// Stock it is made of; may be left out where all sheets are of one.
        pub stock: Given<String> = "stock",
        /// Whether it is cut later: it gets its place, and stays in a larger piece; `false` when left out.
        pub later: Given<bool> = "later",
    }

    /// The largest piece that comes to the table saw.
    pub struct RoughRequest {
        /// Longest side of a piece that a person lifts, mm; no bound when left out.
        pub longest: Given<f64> = "longest",
        /// Its other side at most, mm; the same as `longest` when left out.
        pub widest: Given<f64> = "widest",
        /// Its mass at most, kg; needs the `mass` of a sheet of each stock; no bound when left out.
        pub heaviest: Given<f64> = "heaviest",
        /// Left beside each rough cut for the table saw to trim, mm, its kerf included; 5 when left out.
        pub allowance: Given<f64> = "allowance",
        /// Width the hand-held saw cuts, mm; the same as `kerf` when left out.
        pub kerf: Given<f64> = "kerf",
    }

    /// A size.
    pub struct SizeRequest {
        /// One side, mm.
        pub length: Given<f64> = "length",
        /// The other side, mm.
        pub width: Given<f64> = "width",
    }

    /// How long to search, and from where.
    pub struct SearchRequest {
        /// Rounds that were made before; 0 when left out.
        pub from: Given<f64> = "from",
        /// Rounds to make now, at most; 200 when left out.
        pub steps: Given<f64> = "steps",
        /// The best layout of the rounds before, as the plan gave it.
        pub best: Given<String> = "best",
    }

    /// A length for each edge; 0 when left out.
    pub struct EachSideRequest {
        /// At the edge where the length begins, mm.
        pub start: Given<f64> = "start",
        /// At the edge where the length ends, mm.
        pub end: Given<f64> = "end",
        /// At the edge where the width begins, mm.
        pub near: Given<f64> = "near",
        /// At the edge where the width ends, mm.
        pub far: Given<f64> = "far",
    }
}

/// The same length for all four edges, or one for each.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(untagged)]
pub enum SidesRequest {
    /// The same for all, mm.
    All(f64),
    /// One for each.
    Each(EachSideRequest),
}

impl Shape for SidesRequest {
    const EXPECTED: &'static str = "a number, or an object with one for each edge";

    fn take(plain: &Plain, check: &mut Checker<'_>) -> Option<Self> {
        match plain {
            Plain::Number(number) => Some(Self::All(*number)),
            plain => EachSideRequest::take(plain, check).map(Self::Each),
        }
    }
}
