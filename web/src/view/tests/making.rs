//! What is made: rows are called by their names, and by their own places where they have none.

use super::{assert_all, page, started, typed};
use crate::model::{Chunk, Model};
use crate::msg::{Edit, Look, MakingEdit, Msg, Search};
use crate::state::fields::{drawer, part, sheet, stock};
use crate::state::{Group, Id, PartsTool, Place};

fn open(tool: PartsTool) -> Model {
    started([
        Msg::Look(Look::PartsTool(tool)),
        Msg::Go(Place::Parts),
        Msg::Came(Chunk::Parts),
    ])
}

fn making(edit: MakingEdit) -> Msg {
    Msg::Edit(Edit::Making(edit))
}

#[test]
fn rows_without_a_name_are_called_by_their_own_places() {
    let mut model = open(PartsTool::Parts);
    for msg in [
        typed(stock::NAME.of(Id(2)), ""),
        typed(part::NAME.of(Id(3)), ""),
        typed(part::LENGTH.of(Id(3)), "nothing"),
        making(MakingEdit::Refer(part::STOCK.spot(Id(3)), Id(2))),
    ] {
        model.update(msg);
    }
    assert_all(
        &page(&model),
        &[
            "<span class=\"says\">Stock 2",
            "Remove<span class=\"for-readers\"> Part 3<",
        ],
    );
    model.update(Msg::Look(Look::PartsTool(PartsTool::Sheet)));
    assert_all(&page(&model), &["Part 3, Length: "]);
    let making = &model.state.work.job.making;
    let first = making.rows(Group::Sheets)[0].id;
    model.update(self::making(MakingEdit::Refer(
        sheet::STOCK.spot(first),
        Id(2),
    )));
    model.update(typed(part::LENGTH.of(Id(3)), "300"));
    model.update(typed(part::WIDTH.of(Id(3)), "100"));
    model.update(typed(sheet::NAME.of(first), ""));
    model.update(Msg::Search(Search::Slice(None)));
    assert_all(&page(&model), &["Sheets 1 to 4, alike: Stock 2, "]);
}

#[test]
fn one_board_is_not_one_of_them() {
    let mut model = open(PartsTool::Drawer);
    model.update(typed(drawer::COUNT.alone(), "1"));
    model.update(typed(drawer::HEIGHT.alone(), "90"));
    assert!(
        model
            .answer
            .making
            .as_ref()
            .unwrap()
            .drawer
            .current()
            .is_some()
    );
    let shown = page(&model);
    assert_all(
        &shown,
        &[
            "<small>2 of them</small>",
            "<small>one</small>",
            "<small>one, grain either way</small>",
        ],
    );
    assert!(!shown.contains("1 of them"));
}
