//! The saw of these tests is of use only if it notices what is wrong.

use notchwright_core::sheet::{SheetLayoutPlan, sheet_layout};
use notchwright_core::units::Mm;

use crate::{job, part, sheet};
use notchwright_tests::saw::{Saws, Wanted, prove};

const SAWS: Saws = Saws {
    kerf: 3.2,
    by_hand: 3.2,
};

fn good() -> (SheetLayoutPlan, Vec<Wanted>) {
    let parts = [(560.0, 120.0, 6), (880.0, 545.0, 2)];
    let request = parts.map(|(length, width, count)| part(length, width, count));
    let wanted = (1..)
        .zip(parts)
        .map(|(number, (length, width, count))| Wanted {
            number,
            length,
            width,
            count,
            may_turn: false,
        });
    let plan =
        sheet_layout(&job(vec![sheet()], request.to_vec(), 3.2, 10)).expect("a good request");
    (plan.plan, wanted.collect())
}

#[test]
fn a_good_plan_is_proven() {
    let (plan, wanted) = good();
    assert!(prove(&plan, &wanted, SAWS, false).is_ok());
}

#[test]
fn what_is_wrong_is_noticed() {
    type Spoil = fn(&mut SheetLayoutPlan);
    let spoils: [(&str, Spoil); 8] = [
        ("the fence", |plan| {
            plan.sheets[0].cuts[2].fence += Mm::constant(0.5)
        }),
        ("a cut less", |plan| plan.sheets[0].cuts.truncate(5)),
        ("the order", |plan| plan.sheets[0].cuts.swap(0, 3)),
        ("a place", |plan| {
            plan.sheets[0].parts[1].place.x = Mm::constant(1.0)
        }),
        ("a part for another", |plan| {
            plan.sheets[0].cuts.iter_mut().for_each(|cut| {
                cut.yields
                    .iter_mut()
                    .for_each(|yielded| yielded.part = yielded.part.map(|_| 1));
            })
        }),
        ("an off-cut less", |plan| plan.sheets[0].offcuts.truncate(1)),
        ("the settings", |plan| plan.sheets[0].settings += 1),
        ("the share", |plan| plan.sheets[0].share *= 0.99),
    ];
    for (what, spoil) in spoils {
        let (mut plan, wanted) = good();
        spoil(&mut plan);
        assert!(prove(&plan, &wanted, SAWS, false).is_err(), "{what}");
    }
    let (plan, mut wanted) = good();
    assert!(
        prove(&plan, &wanted, Saws { kerf: 3.0, ..SAWS }, false).is_err(),
        "the kerf"
    );
    assert!(prove(&plan, &wanted, SAWS, true).is_err(), "the grain");
    wanted[0].count += 1;
    assert!(prove(&plan, &wanted, SAWS, false).is_err(), "one part more");
}
