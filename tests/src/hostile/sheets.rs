//! What holds for every layout of sheets.

use anyhow::{Context, Error, ensure};
use notchwright_core::given::{self, Given};
use notchwright_core::plain::Plain;
use notchwright_core::problem::Checked;
use notchwright_core::sheet::{
    self, LaidPart, LaidSheet, Place, SearchRequest, SheetLayoutPlan, SheetLayoutRequest,
    StockBound,
};

use super::Held;
use super::replies::{find, number, text, truth, with};
use crate::saw::{self, Bench, SAME, Saws, Wood};

/// Rounds that a case may take.
const ROUNDS: f64 = 4.0;

/// The layout after few rounds: a search of a night would hold the fuzzer up.
pub(super) fn few_rounds(request: &SheetLayoutRequest) -> Checked<SheetLayoutPlan> {
    let mut request = request.clone();
    match &mut request.search {
        Given::Value(search) => search.steps = few(&search.steps),
        search @ Given::Missing => {
            *search = SearchRequest {
                steps: ROUNDS.into(),
                ..SearchRequest::default()
            }
            .into();
        }
        Given::Wrong(_) => {}
    }
    sheet::sheet_layout(&request)
}

fn few(steps: &Given<f64>) -> Given<f64> {
    match steps {
        Given::Value(steps) if (ROUNDS..=1e6).contains(steps) => ROUNDS.into(),
        Given::Missing => ROUNDS.into(),
        given => given.clone(),
    }
}

/// A saw that follows the cuts has every part on its bench, as it was asked for, and nothing lies over another.
pub(super) fn sheet_layout(request: &Plain, plan: &SheetLayoutPlan) -> Held {
    for (place, sheet) in plan.sheets.iter().enumerate() {
        ensure!(sheet.number as usize == place + 1, "sheet {}", sheet.number);
        let bench = saw::follow(sheet, saws(request)?).map_err(Error::msg)?;
        saw::listed(sheet, &bench).map_err(Error::msg)?;
        saw::adds_up(sheet, &bench).map_err(Error::msg)?;
        is_lifted(request, sheet, &bench)?;
        is_of_its_kind(request, sheet)?;
        for part in &sheet.parts {
            lies_right(request, sheet, part).with_context(|| format!("{part:?}"))?;
        }
    }
    all_are_there(request, plan)?;
    sums(request, plan)?;
    bounds(plan)?;
    goes_on(request, plan)
}

/// Kerfs as they are reckoned with: whole micrometres.
fn saws(request: &Plain) -> anyhow::Result<Saws> {
    let whole = |mm: f64| (mm * 1000.0 + 1e-4).floor() / 1000.0;
    let kerf = number(request, "kerf").context("a kerf")?;
    let by_hand = number(request, "rough.kerf").unwrap_or(kerf);
    Ok(Saws {
        kerf: whole(kerf),
        by_hand: whole(by_hand),
    })
}

/// Lengths at start, end, near and far.
fn edges(request: &Plain, path: &str) -> [f64; 4] {
    match find(request, path) {
        Some(Plain::Number(all)) => [*all; 4],
        _ => ["start", "end", "near", "far"]
            .map(|edge| number(request, &format!("{path}.{edge}")).unwrap_or(0.0)),
    }
}

/// No piece in hand at the table saw is more than a person lifts.
fn is_lifted(request: &Plain, sheet: &LaidSheet, bench: &Bench) -> Held {
    let bound = |name: &str| number(request, &format!("rough.{name}"));
    let (longest, widest) = (bound("longest"), bound("widest"));
    let widest = widest.or(longest).unwrap_or(f64::INFINITY);
    let longest = longest.unwrap_or(f64::INFINITY);
    let mass = number(request, &format!("sheets.{}.mass", sheet.kind));
    let per_area = mass.unwrap_or(0.0) / (sheet.length.mm() * sheet.width.mm());
    for Wood { length, width, .. } in &bench.at_the_saw {
        let (long, short) = (length.max(*width), length.min(*width));
        ensure!(
            long <= longest.max(widest) + SAME && short <= longest.min(widest) + SAME,
            "{long} by {short} is lifted"
        );
        let heavy = per_area * length * width;
        ensure!(
            bound("heaviest").is_none_or(|most| heavy <= most * (1.0 + 1e-5)),
            "{heavy} kg are lifted"
        );
    }
    Ok(())
}

fn is_of_its_kind(request: &Plain, sheet: &LaidSheet) -> Held {
    let of = |name: &str| format!("sheets.{}.{name}", sheet.kind);
    for (side, name) in [(sheet.length, "length"), (sheet.width, "width")] {
        let asked = number(request, &of(name)).context("a side")?;
        ensure!(saw::is_same(side.mm(), asked), "{name} {side}");
    }
    ensure!(
        sheet.stock == text(request, &of("stock")),
        "{:?}",
        sheet.stock
    );
    ensure!(sheet.name == text(request, &of("name")), "{:?}", sheet.name);
    Ok(())
}

/// A part has its size, its grain and its stock, and lies within what is left of the sheet when its edges are off.
fn lies_right(request: &Plain, sheet: &LaidSheet, part: &LaidPart) -> Held {
    let of = |name: &str| format!("parts.{}.{name}", part.part);
    let [start, end, near, far] = edges(request, &of("trim"));
    let length = number(request, &of("length")).context("a length")? + start + end;
    let width = number(request, &of("width")).context("a width")? + near + far;
    let grain = text(request, &format!("sheets.{}.grain", sheet.kind));
    let across = part.turned != (grain.as_deref() == Some("width"));
    let (x, y) = if across {
        (width, length)
    } else {
        (length, width)
    };
    let Place { length, width, .. } = part.place;
    ensure!(
        saw::is_same(length.mm(), x) && saw::is_same(width.mm(), y),
        "asked for {x} by {y}"
    );
    let may_turn = truth(request, &of("mayTurn")) || grain.as_deref() == Some("none");
    ensure!(may_turn || !part.turned, "across the grain");
    ensure!(part.later == truth(request, &of("later")), "later");
    let stock = text(request, &of("stock"));
    ensure!(stock.is_none() || stock == sheet.stock, "of another stock");
    let named = number(request, &of("number")).unwrap_or(part.part as f64 + 1.0);
    ensure!(f64::from(part.number) == named, "the number");
    let [start, end, near, far] = edges(request, &format!("sheets.{}.edgeTrim", sheet.kind));
    within(
        part.place.x.mm(),
        length.mm(),
        start,
        sheet.length.mm() - end,
    )?;
    within(part.place.y.mm(), width.mm(), near, sheet.width.mm() - far)
}

fn within(from: f64, long: f64, least: f64, most: f64) -> Held {
    ensure!(
        from >= least - SAME && from + long <= most + SAME,
        "{from} and {long} more are not within {least} and {most}"
    );
    Ok(())
}

/// Each part as often as it was asked for, and no sheet oftener than there are.
fn all_are_there(request: &Plain, plan: &SheetLayoutPlan) -> Held {
    let Some(Plain::List(parts)) = find(request, "parts") else {
        return Err(Error::msg("no parts"));
    };
    let laid = || plan.sheets.iter().flat_map(|sheet| &sheet.parts);
    for index in 0..parts.len() {
        let count = number(request, &format!("parts.{index}.count")).unwrap_or(1.0);
        let there = laid().filter(|part| part.part == index).count();
        ensure!(there as f64 == count, "{there} of part {index}");
    }
    for sheet in &plan.sheets {
        let used = plan.sheets.iter().filter(|other| other.kind == sheet.kind);
        let there = number(request, &format!("sheets.{}.quantity", sheet.kind));
        let used = used.count() as f64;
        ensure!(
            there.is_none_or(|there| used <= there),
            "{used} of {there:?}"
        );
    }
    Ok(())
}

fn sums(request: &Plain, plan: &SheetLayoutPlan) -> Held {
    let of = |sheet: &LaidSheet, name: &str| format!("sheets.{}.{name}", sheet.kind);
    let is_offcut = |sheet: &&LaidSheet| truth(request, &of(sheet, "offcut"));
    let offcuts = plan.sheets.iter().filter(is_offcut).count();
    let wholes: Vec<_> = plan
        .sheets
        .iter()
        .filter(|sheet| !is_offcut(sheet))
        .collect();
    ensure!(plan.offcuts_used as usize == offcuts, "{offcuts} off-cuts");
    ensure!(
        plan.whole_sheets as usize == wholes.len(),
        "{} sheets",
        wholes.len()
    );
    let settings: u32 = plan.sheets.iter().map(|sheet| sheet.settings).sum();
    ensure!(plan.settings == settings, "{settings} settings");
    let last = plan.sheets.last().context("no sheet")?;
    ensure!(
        plan.used_length == last.used_length,
        "the last one's length"
    );
    let price = |sheet: &&LaidSheet| number(request, &of(sheet, "price"));
    let cost = wholes.iter().map(price).sum::<Option<f64>>();
    let is_cost = match (plan.cost, cost) {
        (Some(said), Some(cost)) => (said - cost).abs() < 1e-6,
        (said, cost) => said == cost,
    };
    ensure!(is_cost, "it costs {cost:?}");
    ensure!(
        (0.0..=1.0 + 1e-9).contains(&plan.share),
        "a share of {}",
        plan.share
    );
    Ok(())
}

/// No layout is better than its bound says.
fn bounds(plan: &SheetLayoutPlan) -> Held {
    let used = |bound: &StockBound| {
        let own = plan
            .sheets
            .iter()
            .filter(|sheet| sheet.stock == bound.stock);
        own.map(|sheet| sheet.used_length).collect::<Vec<_>>()
    };
    for bound in &plan.bounds {
        let used = used(bound);
        ensure!(used.len() >= bound.sheets as usize, "{bound:?}");
        let more = used.len() > bound.sheets as usize;
        let last = used.into_iter().min().context("none of a stock")?;
        ensure!(
            more || last.mm() >= bound.used_length.mm() - SAME,
            "{bound:?}"
        );
    }
    Ok(())
}

/// Who goes on from here has the same layout to begin with.
fn goes_on(request: &Plain, plan: &SheetLayoutPlan) -> Held {
    let search = Plain::Object(vec![
        ("from".into(), Plain::Number(plan.search.steps.into())),
        ("steps".into(), Plain::Number(0.0)),
        ("best".into(), Plain::Text(plan.search.best.clone())),
    ]);
    let again = given::answer(&with(request, "search", search), sheet::sheet_layout)
        .map_err(|problems| anyhow::anyhow!("it does not go on: {problems:?}"))?;
    ensure!(again.plan.sheets == plan.sheets, "{:#?}", again.plan.sheets);
    Ok(())
}
