//! Results against values from outside the project, each with its source beside it.
//!
//! A source is a published text by name, or "derived": it follows from the definitions alone and was
//! worked out without the program. Grades: (quoted) seen in a second source, (memory) recalled and
//! not looked up; without a grade the value was seen in the source's own text.

#![expect(
    clippy::expect_used,
    reason = "what a helper finds wrong fails its test"
)]

use notchwright_core::cutter::{CutterRequest, GrindRequest, kerf_from_slot};
use notchwright_core::dial::{ScrewRequest, ZeroRequest};
use notchwright_core::given::Given;
use notchwright_core::joint::box_joint::{
    BoardRequest, BoxJointPlan, BoxJointRequest, LayoutRequest, box_joint,
};
use notchwright_core::stop::{Set, Stop};
use notchwright_core::units::{Mm, Style, Unit, format_length, parse_length};

/// Half of the last decimal that a value is given with.
const FOURTH_DECIMAL: f64 = 0.000_05;
const THIRD_DECIMAL: f64 = 0.000_5;

fn close(got: Mm, given: f64, off: f64) {
    assert!((got.mm() - given).abs() <= off, "{got} is not {given}");
}

/// Nine fingers on 140 mm, cut by a 3.2 mm kerf with an unrounded dial, so that nothing but the
/// layout decides.
fn nine_on_140() -> BoxJointRequest {
    let board = |thickness: f64| BoardRequest {
        thickness: thickness.into(),
    };
    BoxJointRequest {
        width: 140.0.into(),
        a: board(12.0).into(),
        b: board(18.0).into(),
        cutter: cutter(Given::Missing).into(),
        screw: unrounded().into(),
        layout: LayoutRequest::count(9.0).into(),
        ..BoxJointRequest::default()
    }
}

fn cutter(grind: Given<GrindRequest>) -> CutterRequest {
    CutterRequest {
        kerf: 3.2.into(),
        grind,
        ..CutterRequest::default()
    }
}

fn unrounded() -> ScrewRequest {
    ScrewRequest {
        lead: 1.5.into(),
        divisions: 100.0.into(),
        rounding: "none".into(),
        ..ScrewRequest::default()
    }
}

fn plan(request: &BoxJointRequest) -> BoxJointPlan {
    box_joint(request).expect("a good request").plan
}

/// Nearer and farther side of every inner socket, with its passes.
fn inner_sockets(set: &Set, width: Mm) -> Vec<(Mm, Mm, usize)> {
    let sockets = set.stops.chunk_by(|one, next| one.socket == next.socket);
    let sides = |stops: &[Stop]| {
        let near = stops.iter().map(|stop| stop.at).min()?;
        let far = stops.iter().map(|stop| stop.at + set.kerf).max()?;
        Some((near, far, stops.len()))
    };
    let inner = |socket: &(Mm, Mm, usize)| socket.0 > Mm::ZERO && socket.1 < width;
    sockets.filter_map(sides).filter(inner).collect()
}

/// Derived: 140 / 9 = 15.5556; with a gap of 0.05 per flank an inner socket is 0.05 wider, 15.6056.
/// ⌈(15.6056 − 3.2) / (3.2 − 0.3)⌉ + 1 = 6 passes with the usual overlap of 0.3.
#[test]
fn nine_fingers_on_140() {
    let plan = plan(&nine_on_140());
    close(plan.finger_width, 15.5556, FOURTH_DECIMAL);
    let sockets: Vec<_> = plan
        .sets
        .iter()
        .flat_map(|set| inner_sockets(set, plan.width))
        .collect();
    // A pin first: four sockets of A and three of B's five lie between pins.
    assert_eq!(sockets.len(), 7);
    for (near, far, passes) in sockets {
        close(far - near, 15.6056, FOURTH_DECIMAL);
        assert_eq!(passes, 6);
    }
}

/// Derived: each board's flanks move back by half the gap, so A's are at 15.5556 − 0.025 and
/// 31.1111 + 0.025 and B's beside them at 15.5556 + 0.025 and 31.1111 − 0.025.
#[test]
fn flanks_of_both_boards_lie_half_a_gap_from_their_boundary() {
    let plan = plan(&nine_on_140());
    let (near, far, _) = inner_sockets(&plan.sets[0], plan.width)[0];
    close(near, 15.5306, FOURTH_DECIMAL);
    close(far, 31.1361, FOURTH_DECIMAL);
    let mates: Vec<f64> = plan.sets[1]
        .stops
        .iter()
        .flat_map(|stop| [stop.at.mm(), (stop.at + plan.sets[1].kerf).mm()])
        .collect();
    for flank in [15.5806, 31.0861] {
        let nearest = mates.iter().map(|mate| (mate - flank).abs());
        assert!(
            nearest.fold(f64::INFINITY, f64::min) < FOURTH_DECIMAL,
            "{flank}"
        );
    }
}

/// Derived: each tooth slopes over its whole kerf, alternately, so a ridge stands in the middle,
/// kerf / 2 · tan β: 0.429 for 3.2 mm and 15°, none under flat teeth.
#[test]
fn ridge_under_alternate_teeth() {
    let grind = GrindRequest {
        kind: "alternate".into(),
        bevel_degrees: 15.0.into(),
    };
    let plan = plan(&BoxJointRequest {
        cutter: cutter(grind.into()).into(),
        ..nine_on_140()
    });
    for set in &plan.sets {
        close(set.ridge, 0.429, THIRD_DECIMAL);
    }
    let tallest = plan.dry_fit.uncut.iter().map(|uncut| uncut.height).max();
    close(tallest.expect("ridges are left"), 0.429, THIRD_DECIMAL);
    close(plan.dry_fit.floor_gap_a, -0.429, THIRD_DECIMAL);
}

#[test]
fn no_ridge_under_flat_teeth() {
    let plan = plan(&nine_on_140());
    assert!(plan.sets.iter().all(|set| set.ridge == Mm::ZERO));
    assert!(plan.dry_fit.uncut.is_empty());
}

/// FDMC magazine (woodworking trade press): surfaces 0.002 to 0.006 in apart, printed as 0.05 to
/// 0.15 mm, suit most wood glues.
#[test]
fn the_usual_gap_suits_glue() {
    let plan = plan(&nine_on_140());
    for gap in [
        plan.glue_gap,
        plan.dry_fit.smallest_gap,
        plan.dry_fit.largest_gap,
    ] {
        // An unrounded dial still counts in steps of 10⁻⁷ mm.
        assert!((0.05 - 1e-6..=0.15).contains(&gap.mm()), "{gap}");
    }
}

/// FDMC magazine, "What you should know about circular saw blades": alternate bevels of 5° to 40°;
/// kerfs of 1/8 in and, for thin blades, 3/32 in.
#[test]
fn blades_that_are_made_can_be_asked_for() {
    for bevel in [5.0, 10.0, 20.0, 40.0] {
        for kerf in ["1/8", "3/32"] {
            let kerf = parse_length(kerf, Unit::Inch).expect("a fraction of an inch");
            let grind = GrindRequest {
                kind: "alternate".into(),
                bevel_degrees: bevel.into(),
            };
            let cutter = CutterRequest {
                kerf: kerf.mm().into(),
                ..cutter(grind.into())
            };
            let request = BoxJointRequest {
                cutter: cutter.into(),
                ..nine_on_140()
            };
            assert_eq!(plan(&request).sets[0].kerf, kerf);
        }
    }
}

/// Single start, so the lead is the pitch. Metric coarse pitches by ISO 261; 1/4-20 and 3/8-16 by the
/// unified thread tables.
#[test]
fn a_turn_of_a_common_screw_is_its_pitch() {
    let metric = |lead: f64| ScrewRequest {
        lead: lead.into(),
        ..ScrewRequest::default()
    };
    let unified = |threads: f64| ScrewRequest {
        threads_per_inch: threads.into(),
        ..ScrewRequest::default()
    };
    let rows = [
        ("M6", metric(1.0), 1.0),
        ("M8", metric(1.25), 1.25),
        ("M10", metric(1.5), 1.5),
        ("M12", metric(1.75), 1.75),
        ("1/4-20", unified(20.0), 1.27),
        ("3/8-16", unified(16.0), 1.5875),
    ];
    const DIVISIONS: f64 = 50.0;
    for (screw, request, pitch) in rows {
        let screw_request = ScrewRequest {
            divisions: DIVISIONS.into(),
            ..request
        };
        let plan = plan(&BoxJointRequest {
            screw: screw_request.into(),
            ..nine_on_140()
        });
        for stop in plan.sets.iter().flat_map(|set| &set.stops) {
            let turns = stop.dial.turns as f64 + stop.dial.division / DIVISIONS;
            let off = (stop.dial.reading.mm() - turns * pitch).abs();
            assert!(off < 1e-9, "{screw}: {:?}", stop.dial);
        }
    }
}

/// NIST SP 811 (memory): 1 in = 25.4 mm exactly.
#[test]
fn an_inch() {
    assert_eq!(parse_length("1 in", Unit::Mm), Ok(Mm::constant(25.4)));
    let inch = format_length(Mm::constant(25.4), Style::usual(Unit::Inch));
    assert_eq!((inch.text.as_str(), inch.exact), ("1\"", true));
}

/// Derived: two kerfs of 3.2 moved by 2.5 make a slot of 5.7, three moved by 3 one of 9.2.
#[test]
fn kerf_of_a_stepped_slot() {
    for (kerfs, step, slot) in [(2, 2.5, 5.7), (3, 3.0, 9.2)] {
        let kerf = kerf_from_slot(kerfs, Mm::constant(step), Mm::constant(slot));
        close(kerf.expect("kerfs that overlap"), 3.2, 1e-9);
    }
}

/// Common practice, no source: a touch zero is where the edge just touches the stopped cutter, so the
/// first 3.2 mm of travel bring the kerf flush with the edge.
#[test]
fn touch_zero_reads_a_kerf_more_than_flush() {
    let zero = |kind: &str| ZeroRequest {
        kind: kind.into(),
        ..ZeroRequest::default()
    };
    let with = |kind| {
        plan(&BoxJointRequest {
            zero: zero(kind).into(),
            ..nine_on_140()
        })
    };
    let (touch, flush) = (with("touch"), with("flush"));
    for (touch, flush) in touch.sets[0].stops.iter().zip(&flush.sets[0].stops) {
        close(touch.dial.reading - touch.at, 3.2, 1e-6);
        close(flush.dial.reading - flush.at, 0.0, 1e-6);
    }
}
