//! Boards and bottoms as rows of a parts list.

use super::plan::{AppliedFront, DrawerBoard, DrawerPlan, PartRow};

/// Rows for all drawers; where they differ, each names its drawer.
pub(super) fn rows(
    drawers: &[DrawerPlan],
    applied: &[AppliedFront],
    solid_bottom: bool,
) -> Vec<PartRow> {
    let alone = drawers.len() == 1;
    let mut rows = Vec::new();
    for (number, drawer) in (1_usize..).zip(drawers) {
        let front = drawer.boards.iter().find(|board| board.name == "front");
        let is_as_front = |board: &DrawerBoard| {
            front.is_some_and(|front| front.thickness.is_same(board.thickness))
        };
        let name = |what: &str| {
            if alone {
                format!("drawer {what}")
            } else {
                format!("drawer {number}, {what}")
            }
        };
        for board in &drawer.boards {
            rows.push(PartRow {
                name: name(board.name),
                count: board.count * drawer.count,
                length: board.length,
                width: board.width,
                thickness: board.thickness,
                stock: match board.name {
                    "side" => "sides",
                    "back" if !is_as_front(board) => "backs",
                    _ => "fronts",
                },
                may_turn: false,
            });
        }
        rows.push(PartRow {
            name: name("bottom"),
            count: drawer.count,
            length: drawer.bottom.length,
            width: drawer.bottom.width,
            thickness: drawer.bottom.thickness,
            stock: "bottoms",
            may_turn: !solid_bottom,
        });
    }
    let fronts = applied.iter().map(|front| PartRow {
        name: format!("drawer {}, applied front", front.number),
        count: 1,
        length: front.width,
        width: front.height,
        thickness: front.thickness,
        stock: "applied fronts",
        may_turn: false,
    });
    rows.into_iter().chain(fronts).collect()
}
