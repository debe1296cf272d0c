use proptest::prelude::*;

use super::{MOST_LOOSE, Stack, StackFault, Stacks, cutter_stack};
use crate::units::Mm;

fn lengths(widths: &[f64]) -> Vec<Mm> {
    widths
        .iter()
        .map(|width| Mm::new(*width).unwrap())
        .collect()
}

fn build(outer: &[f64], chippers: &[f64], shims: &[f64], want: f64) -> Stacks {
    cutter_stack(
        &lengths(outer),
        &lengths(chippers),
        &lengths(shims),
        Mm::new(want).unwrap(),
    )
    .unwrap()
}

fn said(stack: Option<&Stack>) -> Option<(f64, Vec<f64>, Vec<f64>)> {
    let mm = |widths: &[Mm]| widths.iter().map(|width| width.mm()).collect();
    let rounded = |width: Mm| (width.mm() * 1e4).round() / 1e4;
    stack.map(|stack| (rounded(stack.width), mm(&stack.chippers), mm(&stack.shims)))
}

const EIGHTH: f64 = 3.175;
const SIXTEENTH: f64 = 1.5875;
const OUTER: [f64; 2] = [EIGHTH, EIGHTH];

#[test]
fn an_exact_stack_is_below_and_above() {
    // Derived: 1/8 + 1/8 + 1/8 + 1/16 = 7/16 in = 11.1125 mm.
    let stacks = build(&OUTER, &[EIGHTH, EIGHTH, SIXTEENTH], &[0.1, 0.2], 11.1125);
    let exact = Some((11.1125, vec![EIGHTH, SIXTEENTH], vec![]));
    assert_eq!(said(stacks.below.as_ref()), exact);
    assert_eq!(said(stacks.above.as_ref()), exact);
    assert_eq!(stacks.nearest, stacks.below.unwrap());
}

#[test]
fn the_nearest_from_both_sides_are_found() {
    // Derived: 9.525 + 0.4 = 9.925 below 10; 9.525 + 0.5 = 10.025 above it and nearer.
    let stacks = build(&OUTER, &[EIGHTH], &[0.1, 0.4], 10.0);
    assert_eq!(
        said(stacks.below.as_ref()),
        Some((9.925, vec![EIGHTH], vec![0.4]))
    );
    assert_eq!(
        said(stacks.above.as_ref()),
        Some((10.025, vec![EIGHTH], vec![0.1, 0.4]))
    );
    assert_eq!(stacks.nearest, stacks.above.unwrap());
}

#[test]
fn what_is_out_of_reach_has_only_one_side() {
    let wide = build(&OUTER, &[EIGHTH], &[0.1], 50.0);
    assert_eq!(
        said(wide.below.as_ref()),
        Some((9.625, vec![EIGHTH], vec![0.1]))
    );
    assert_eq!(wide.above, None);
    assert_eq!(Some(wide.nearest), wide.below);
    let narrow = build(&OUTER, &[EIGHTH], &[0.1], 5.0);
    assert_eq!(narrow.below, None);
    assert_eq!(said(narrow.above.as_ref()), Some((6.35, vec![], vec![])));
    assert_eq!(Some(narrow.nearest), narrow.above);
}

#[test]
fn of_equal_stacks_the_simplest_is_taken() {
    for (chippers, shims, want, used) in [
        // One chipper rather than two.
        (&[1.0, 2.0, 3.0][..], &[][..], 9.35, (vec![3.0], vec![])),
        // A chipper rather than a shim.
        (&[0.5], &[0.5], 6.85, (vec![0.5], vec![])),
        // Two pieces without a shim rather than two with one.
        (&[1.0, 2.0, 2.5], &[0.5], 9.35, (vec![1.0, 2.0], vec![])),
        // The first of two alike.
        (&[2.0, 1.0, 1.0004], &[], 7.35, (vec![1.0], vec![])),
        // The same within a micrometre: one piece rather than the exact two.
        (&[1.0, 1.0, 2.0004], &[], 8.35, (vec![2.0004], vec![])),
    ] {
        let (_, chippers, shims) =
            said(Some(&build(&OUTER, chippers, shims, want).nearest)).unwrap();
        assert_eq!((chippers, shims), used);
    }
}

#[test]
fn as_near_from_both_sides_the_narrower_is_nearest() {
    let stacks = build(&OUTER, &[1.0, 2.0], &[], 7.85);
    assert_eq!(Some(stacks.nearest), stacks.below);
    assert!(stacks.above.is_some());
}

#[test]
fn boxes_that_make_no_stack_are_refused() {
    let one = [Mm::INCH];
    assert_eq!(
        cutter_stack(&[], &one, &one, Mm::INCH),
        Err(StackFault::NoOuterCutters)
    );
    let shims = [Mm::INCH; MOST_LOOSE];
    assert!(cutter_stack(&one, &[], &shims, Mm::INCH).is_ok());
    assert_eq!(
        cutter_stack(&one, &one, &shims, Mm::INCH),
        Err(StackFault::TooManyPieces {
            given: MOST_LOOSE + 1
        })
    );
}

/// Micrometres off `want` and number of pieces and shims of the best stack on each side, by trying all.
fn by_trying_all(chippers: &[Mm], shims: &[Mm], want: Mm) -> [Option<(i64, u32, u32)>; 2] {
    let loose: Vec<Mm> = chippers.iter().chain(shims).copied().collect();
    let bare: Mm = lengths(&OUTER).into_iter().sum();
    let stacks = (0_u32..1 << loose.len()).map(|members| {
        let used = loose
            .iter()
            .enumerate()
            .filter(|(place, _)| members >> place & 1 == 1);
        let width = bare + used.map(|(_, width)| *width).sum();
        let off = ((width - want).mm() * 1000.0).round() as i64;
        (
            off,
            members.count_ones(),
            (members >> chippers.len()).count_ones(),
        )
    });
    let (under, over): (Vec<_>, Vec<_>) = (
        stacks.clone().filter(|stack| stack.0 <= 0).collect(),
        stacks.filter(|stack| stack.0 >= 0).collect(),
    );
    let best = |stacks: Vec<(i64, u32, u32)>| {
        stacks
            .into_iter()
            .min_by_key(|stack| (stack.0.abs(), stack.1, stack.2))
    };
    [best(under), best(over)]
}

/// Thousandths of a millimetre and of an inch, and sixty-fourths, as boxes of both kinds hold.
fn any_width() -> impl Strategy<Value = f64> {
    prop_oneof![
        (10_u32..4000).prop_map(|micrometres| f64::from(micrometres) / 1000.0),
        (1_u32..200).prop_map(|thousandths| f64::from(thousandths) * 0.0254),
        (1_u32..=16).prop_map(|parts| f64::from(parts) * 25.4 / 64.0),
    ]
}

proptest! {
    #[test]
    fn no_stack_is_nearer_or_simpler(
        chippers in proptest::collection::vec(any_width(), 0..6),
        shims in proptest::collection::vec(any_width(), 0..6),
        // A hundredth of a micrometre past what widths can make, so that no half is rounded either way.
        want in (5_000_u32..30_000).prop_map(|micrometres| f64::from(micrometres) / 1000.0 + 0.000_01),
    ) {
        let (chippers, shims, want) = (lengths(&chippers), lengths(&shims), Mm::new(want).unwrap());
        let stacks = cutter_stack(&lengths(&OUTER), &chippers, &shims, want).unwrap();
        let found = [&stacks.below, &stacks.above].map(|stack| stack.as_ref().map(|stack| {
            let off = ((stack.width - want).mm() * 1000.0).round() as i64;
            let pieces = stack.chippers.len() + stack.shims.len();
            (off, pieces as u32, stack.shims.len() as u32)
        }));
        prop_assert_eq!(found, by_trying_all(&chippers, &shims, want));
    }
}
