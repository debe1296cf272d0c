//! `cargo xtask lighthouse`: what Lighthouse says of the page as a host would serve it.

use std::fs;
use std::path::Path;
use std::process::Command;

use anyhow::{Context, Result};
use notchwright_site::Site;
use serde_json::Value;

use crate::build::{self, Files};
use crate::command::perform;
use crate::compress;
use crate::layout::Layout;
use crate::npm;
use crate::tools;

/// Of so many visits the median counts.
const VISITS: usize = 3;

/// A phone on a slow line with a slow processor is what Lighthouse takes for granted.
const PRESETS: [(&str, &[&str]); 2] = [("phone", &[]), ("desktop", &["--preset=desktop"])];

const CATEGORIES: [&str; 4] = ["performance", "accessibility", "best-practices", "seo"];

/// Measures and prints; nothing is asserted, since machines differ.
pub(crate) fn run(layout: &Layout) -> Result<()> {
    build::run(layout)?;
    tools::ensure(&tools::BROWSER)?;
    tools::ensure(&tools::NODE)?;
    let program = npm::install_lighthouse(layout)?;
    let folder = layout.target.join("lighthouse");
    let site = host(layout, &folder.join("site"))?;
    for (name, options) in PRESETS {
        let mut visits = Vec::new();
        for number in 1..=VISITS {
            let report = folder.join(format!("{name}-{number}.json"));
            measure(&program, &site.url(), options, &report)?;
            visits.push(serde_json::from_slice(&fs::read(&report)?)?);
        }
        println!("\n== {name}, the median of {VISITS} visits");
        print(&median(visits)?);
    }
    println!("\nreports in {}", folder.display());
    Ok(())
}

/// Serves what is shipped, compressed.
fn host(layout: &Layout, folder: &Path) -> Result<Site> {
    let mut files = Files::new();
    build::read_below(&layout.dist(), "", &mut files)?;
    build::empty(folder)?;
    compress::write_with_compressed(folder, &files)?;
    Site::start(folder, 0).context("could not serve the page")
}

fn measure(program: &Path, url: &str, options: &[&str], report: &Path) -> Result<()> {
    let mut lighthouse = Command::new("node");
    lighthouse.arg(program).arg(url).args(options);
    if let Some(chromium) = tools::find("chromium") {
        lighthouse.env("CHROME_PATH", chromium);
    }
    perform(
        lighthouse
            .args(["--quiet", "--no-enable-error-reporting", "--output=json"])
            .arg(format!("--only-categories={}", CATEGORIES.join(",")))
            // Its sandbox refuses to run as root, and /dev/shm is tiny in containers.
            .arg("--chrome-flags=--headless=new --no-sandbox --disable-dev-shm-usage")
            .arg(format!("--output-path={}", report.display())),
    )
}

fn score(category: &Value) -> f64 {
    category
        .pointer("/score")
        .and_then(Value::as_f64)
        .unwrap_or_default()
}

fn median(mut visits: Vec<Value>) -> Result<Value> {
    let speed = |visit: &Value| visit.pointer("/categories/performance").map_or(0.0, score);
    visits.sort_by(|a, b| speed(a).total_cmp(&speed(b)));
    let middle = visits.len() / 2;
    visits
        .into_iter()
        .nth(middle)
        .context("nothing was measured")
}

/// Each category with its score, and under it what cost points.
fn print(report: &Value) {
    for name in CATEGORIES {
        let Some(category) = report.pointer(&format!("/categories/{name}")) else {
            println!("  ?  {name}: not measured");
            continue;
        };
        println!("{:>3.0}  {name}", 100.0 * score(category));
        for loss in losses(report, category) {
            println!("     - {loss}");
        }
    }
}

/// The audits of a category that count in it and are not perfect.
fn losses(report: &Value, category: &Value) -> Vec<String> {
    let audits = category.pointer("/auditRefs").and_then(Value::as_array);
    let counts = |it: &&Value| it.pointer("/weight").and_then(Value::as_f64) > Some(0.0);
    let audits = audits.into_iter().flatten().filter(counts);
    audits
        .filter_map(|it| loss(report, it.pointer("/id")?.as_str()?))
        .collect()
}

fn loss(report: &Value, id: &str) -> Option<String> {
    let audit = report.pointer(&format!("/audits/{id}"))?;
    // What does not apply to the page has no score.
    let score = audit.pointer("/score")?.as_f64()?;
    let text = |name: &str| {
        audit
            .pointer(name)
            .and_then(Value::as_str)
            .unwrap_or_default()
    };
    (score < 1.0).then(|| {
        let (title, value) = (text("/title"), text("/displayValue"));
        format!("{:.0} of 100: {title} {value}", 100.0 * score)
            .trim_end()
            .to_owned()
    })
}

#[cfg(test)]
mod tests {
    use serde_json::json;

    use super::*;

    fn report(speed: f64) -> Value {
        json!({
            "categories": { "performance": { "score": speed, "auditRefs": [
                { "id": "paint", "weight": 25 },
                { "id": "shift", "weight": 25 },
                { "id": "advice", "weight": 0 },
                { "id": "elsewhere", "weight": 1 },
            ] } },
            "audits": {
                "paint": { "score": 0.5, "title": "First paint", "displayValue": "2 s" },
                "shift": { "score": 1, "title": "Shift" },
                "advice": { "score": 0, "title": "Advice" },
                "elsewhere": { "score": null, "title": "Elsewhere" },
            },
        })
    }

    #[test]
    fn what_cost_points_is_listed_and_nothing_else() {
        let report = report(0.9);
        let category = report.pointer("/categories/performance").unwrap();
        assert_eq!(losses(&report, category), ["50 of 100: First paint 2 s"]);
    }

    #[test]
    fn the_visit_in_the_middle_counts() {
        let visits = [0.9, 0.2, 0.7].map(report).to_vec();
        assert_eq!(median(visits).unwrap(), report(0.7));
        assert!(median(Vec::new()).is_err());
    }
}
