//! The numbered parts.

use notchwright_core::given::Given;
use notchwright_core::parts::{
    self, MeasureRequest, PartRequest, PartsDraft, PartsListRequest, StockRequest,
};

use super::{Draft, FieldProblem};
use crate::state::fields::{Known, measure, part, stock};
use crate::state::{Group, Id, Row, Work};

/// Every part, and what is wrong.
pub(super) fn draft(work: &Work) -> (PartsDraft, Vec<FieldProblem>) {
    let mut draft = Draft::new(work);
    let request = request(&mut draft);
    let mut found = parts::draft(&request);
    let problems = draft.finish(std::mem::take(&mut found.problems));
    (found, problems)
}

fn request(draft: &mut Draft<'_>) -> PartsListRequest {
    let making = &draft.work().job.making;
    let each = |group: Group| making.rows(group).iter().enumerate();
    PartsListRequest {
        unit: Given::Missing,
        stocks: each(Group::Stocks)
            .map(|(place, row)| stock(draft, place, row).into())
            .collect::<Vec<_>>()
            .into(),
        measures: each(Group::Measures)
            .map(|(place, row)| measure(draft, place, row).into())
            .collect::<Vec<_>>()
            .into(),
        parts: each(Group::Parts)
            .map(|(place, row)| part(draft, place, row).into())
            .collect::<Vec<_>>()
            .into(),
    }
}

fn path(list: &str, place: usize, field: Known) -> std::borrow::Cow<'static, str> {
    format!("{list}.{place}.{}", field.name()).into()
}

fn stock(draft: &mut Draft<'_>, place: usize, row: &Row) -> StockRequest {
    let at = |field| path("stocks", place, field);
    StockRequest {
        name: called(draft, place, row),
        thickness: draft.length_at(at(stock::THICKNESS), stock::THICKNESS.of(row.id)),
        former: draft.length_at(at(stock::FORMER), stock::FORMER.of(row.id)),
    }
}

/// A stock goes by its name here, and by its place in the list where it has none.
fn called(draft: &mut Draft<'_>, place: usize, row: &Row) -> Given<String> {
    let name = draft.text_at(path("stocks", place, stock::NAME), stock::NAME.of(row.id));
    match name {
        Given::Missing => format!("Stock {}", place + 1).into(),
        name => name,
    }
}

fn measure(draft: &mut Draft<'_>, place: usize, row: &Row) -> MeasureRequest {
    let at = |field| path("measures", place, field);
    MeasureRequest {
        name: draft.text_at(at(measure::NAME), measure::NAME.of(row.id)),
        value: draft.sum_at(at(measure::VALUE), measure::VALUE.of(row.id)),
    }
}

fn part(draft: &mut Draft<'_>, place: usize, row: &Row) -> PartRequest {
    let at = |field| path("parts", place, field);
    let is = |field: Known| Given::Value(!row.form.text(field.name()).is_empty());
    PartRequest {
        name: draft.text_at(at(part::NAME), part::NAME.of(row.id)),
        number: Given::Missing,
        count: draft.number_at(at(part::COUNT), part::COUNT.of(row.id)),
        length: draft.sum_at(at(part::LENGTH), part::LENGTH.of(row.id)),
        width: draft.sum_at(at(part::WIDTH), part::WIDTH.of(row.id)),
        stock: of_stock(draft, place, row),
        may_turn: is(part::MAY_TURN),
        trim: draft.sum_at(at(part::TRIM), part::TRIM.of(row.id)),
        later: is(part::LATER),
    }
}

fn of_stock(draft: &mut Draft<'_>, place: usize, row: &Row) -> Given<String> {
    let _ = draft.text_at(path("parts", place, part::STOCK), part::STOCK.of(row.id));
    stock_name(draft.work(), row.form.text(part::STOCK.name()))
}

/// The stock's name for the stock's id; the first one's where none is chosen.
pub(super) fn stock_name(work: &Work, id: &str) -> Given<String> {
    let stocks = work.job.making.rows(Group::Stocks);
    let id = match id.trim() {
        "" => stocks.first().map(|row| row.id),
        text => text.parse().map(Id).ok(),
    };
    let known = stocks.iter().position(|row| Some(row.id) == id);
    let name = |place: usize| {
        let name = stocks.get(place)?.form.text(stock::NAME.name()).trim();
        Some(match name {
            "" => format!("Stock {}", place + 1),
            name => name.to_owned(),
        })
    };
    known.and_then(name).map_or(Given::Missing, Given::Value)
}
