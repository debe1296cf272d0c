//! What holds for every list of parts.

use anyhow::{Context, ensure};
use notchwright_core::limits;
use notchwright_core::parts::{Dimension, PartRow, PartsListPlan, StockTotal};
use notchwright_core::plain::Plain;
use notchwright_core::units::Mm;

use super::Held;
use super::plans::is_near;
use super::replies::{find, number, text, truth};

/// Areas of some square metres, in mm².
const SAME_AREA: f64 = 1e-6;

fn count(request: &Plain, path: &str) -> usize {
    match find(request, path) {
        Some(Plain::List(items)) => items.len(),
        _ => 0,
    }
}

/// Every part is there as it was asked for, of a stock that is there, and the stocks add up.
pub(super) fn parts_list(request: &Plain, plan: &PartsListPlan) -> Held {
    ensure!(plan.parts.len() == count(request, "parts"), "the parts");
    ensure!(plan.stocks.len() == count(request, "stocks"), "the stocks");
    for (place, stock) in plan.stocks.iter().enumerate() {
        let of = |name: &str| format!("stocks.{place}.{name}");
        let measured = number(request, &of("thickness")).context("a thickness")?;
        ensure!(is_near(stock.thickness, measured), "{stock:?}");
        total(stock, &plan.parts).with_context(|| format!("{stock:?}"))?;
    }
    for (place, part) in plan.parts.iter().enumerate() {
        row(request, place, part).with_context(|| format!("{part:?}"))?;
        stock(request, part, &plan.stocks).with_context(|| format!("{part:?}"))?;
        let mut others = plan.parts.iter().skip(place + 1);
        ensure!(others.all(|other| other.number != part.number), "{part:?}");
    }
    Ok(())
}

fn row(request: &Plain, place: usize, part: &PartRow) -> Held {
    let of = |name: &str| format!("parts.{place}.{name}");
    let name = text(request, &of("name")).context("a name")?;
    ensure!(part.name == name.trim(), "the name");
    let asked = number(request, &of("count")).context("a count")?;
    ensure!(f64::from(part.count) == asked, "the count");
    let numbered = number(request, &of("number"));
    ensure!(
        numbered.is_none_or(|asked| f64::from(part.number) == asked),
        "the number"
    );
    ensure!(
        part.may_turn == truth(request, &of("mayTurn")),
        "whether it may turn"
    );
    ensure!(
        part.later == truth(request, &of("later")),
        "whether it is later"
    );
    trim(request, &of("trim"), part.trim)?;
    for (name, dimension) in [("length", part.length), ("width", part.width)] {
        let typed = number(request, &of(name));
        ensure!(
            typed.is_none_or(|typed| is_near(dimension.finished, typed)),
            "{name}"
        );
        self::dimension(dimension, part.trim).context(name)?;
    }
    let area = part.length.finished.mm() * part.width.finished.mm();
    ensure!((part.area - area).abs() < SAME_AREA, "the area");
    Ok(())
}

fn trim(request: &Plain, path: &str, trim: Mm) -> Held {
    let typed = number(request, path);
    ensure!(typed.is_none_or(|typed| is_near(trim, typed)), "the trim");
    let (least, most) = (limits::TRIM.least, limits::TRIM.most);
    ensure!((least..=most).contains(&trim.mm()), "the trim");
    Ok(())
}

/// Trimmed on both sides it is what it is to be, and what it has grown by is what it is more than it was.
fn dimension(dimension: Dimension, trim: Mm) -> Held {
    let finished = dimension.finished;
    let (least, most) = (limits::PART.least, limits::PART.most);
    ensure!((least..=most).contains(&finished.mm()), "{finished}");
    ensure!(
        is_near(dimension.rough, (finished + trim * 2.0).mm()),
        "rough"
    );
    let change = dimension.change;
    ensure!(
        change
            .is_none_or(|change| is_near(change.was + change.by, finished.mm())
                && !change.by.is_same(Mm::ZERO)),
        "{change:?}"
    );
    Ok(())
}

/// A part that says of what it is made is made of that, and changes with nothing but a stock that has changed.
fn stock(request: &Plain, part: &PartRow, stocks: &[StockTotal]) -> Held {
    let place = stocks.iter().position(|stock| stock.name == part.stock);
    let place = place.context("of no stock")?;
    let stock = stocks.get(place).context("of no stock")?;
    ensure!(part.thickness == stock.thickness, "the thickness");
    let former = number(request, &format!("stocks.{place}.former"));
    let changes = part.length.change.is_some() || part.width.change.is_some();
    let has_changed = former.is_some_and(|former| former != stock.thickness.mm());
    ensure!(has_changed || !changes, "nothing has changed");
    Ok(())
}

fn total(stock: &StockTotal, parts: &[PartRow]) -> Held {
    let own = || parts.iter().filter(|part| part.stock == stock.name);
    ensure!(own().count() == stock.parts as usize, "its parts");
    ensure!(
        own().map(|part| part.count).sum::<u32>() == stock.pieces,
        "its pieces"
    );
    let area = |length: fn(&PartRow) -> f64| own().map(length).sum::<f64>();
    let finished = area(|part| part.area * f64::from(part.count));
    let rough = area(|part| part.length.rough.mm() * part.width.rough.mm() * f64::from(part.count));
    let is_same = |one: f64, other: f64| (one - other).abs() <= SAME_AREA + other * 1e-12;
    ensure!(
        is_same(stock.area, finished) && is_same(stock.rough_area, rough),
        "its areas"
    );
    Ok(())
}
