//! Dovetails to try: as planned, cut by blades and wedges that are not quite what they were set to.

use notchwright_core::cutter::{CutterRequest, GrindRequest};
use notchwright_core::dial::ScrewRequest;
use notchwright_core::dryfit::slanted::Bench;
use notchwright_core::given::Given;
use notchwright_core::joint::box_joint::BoardRequest;
use notchwright_core::joint::dovetail::{
    ByRequest, DovetailPlan, DovetailRequest, MeasuredRequest, SlopeRequest, dovetail,
};
use proptest::prelude::*;

use super::sweep::Tips;

/// A planned dovetail, and what was said of cutters and angles when it was asked for.
#[derive(Debug)]
pub(super) struct Case {
    pub(super) plan: DovetailPlan,
    pub(super) tail_thickness: f64,
    pub(super) pin_thickness: f64,
    pub(super) proud: f64,
    pub(super) tips: Tips,
    pub(super) upright_tips: Tips,
    /// What the blade leans, radians.
    pub(super) lean: f64,
    /// What the pin board is turned, radians.
    pub(super) turn: f64,
}

impl Case {
    pub(super) fn bench(&self) -> &Bench {
        &self.plan.bench
    }

    pub(super) fn through(&self) -> f64 {
        self.pin_thickness - self.plan.lap.mm()
    }
}

#[derive(Clone, Copy, Debug)]
enum Grind {
    Flat,
    Slope,
    Alternate(f64),
}

impl Grind {
    fn request(self) -> Given<GrindRequest> {
        let kind = |kind: &str| GrindRequest {
            kind: kind.into(),
            ..GrindRequest::default()
        };
        match self {
            Self::Flat => Given::Missing,
            Self::Slope => kind("slope").into(),
            Self::Alternate(bevel) => GrindRequest {
                bevel_degrees: bevel.into(),
                ..kind("alternate")
            }
            .into(),
        }
    }

    /// Teeth ground to the slope are ground to the one asked for, whatever was measured.
    fn tips(self, slope: f64) -> Tips {
        match self {
            Self::Flat => Tips::Flat,
            Self::Slope => Tips::Slope(slope),
            Self::Alternate(bevel) => Tips::Alternate(bevel.to_radians().tan()),
        }
    }
}

#[derive(Clone, Copy, Debug)]
struct Cutter {
    kerf: f64,
    overlap: f64,
    grind: Grind,
}

impl Cutter {
    fn request(self) -> CutterRequest {
        CutterRequest {
            kerf: self.kerf.into(),
            overlap: (self.kerf * self.overlap).into(),
            grind: self.grind.request(),
            ..CutterRequest::default()
        }
    }
}

/// The slope: 1 in `run`, or degrees.
#[derive(Clone, Copy, Debug)]
enum Slope {
    Ratio(f64),
    Angle(f64),
}

impl Slope {
    fn radians(self) -> f64 {
        match self {
            Self::Ratio(run) => (1.0 / run).atan(),
            Self::Angle(degrees) => degrees.to_radians(),
        }
    }

    fn request(self) -> SlopeRequest {
        match self {
            Self::Ratio(run) => SlopeRequest::ratio(run),
            Self::Angle(degrees) => SlopeRequest::angle(degrees),
        }
    }
}

/// Dovetails as they are planned.
pub(super) fn planned() -> impl Strategy<Value = Case> {
    let slope = prop_oneof![
        (2.0..20.0_f64).prop_map(Slope::Ratio),
        (1.0..30.0_f64).prop_map(Slope::Angle),
    ];
    let boards = (4.0..30.0_f64, 4.0..30.0_f64, slope, 1..=12_usize);
    let cutters = (cutter(), prop::option::of(cutter()), screw());
    // How much wider than they must be pins, half-pins and tails are.
    let spare = (spare(12.0), spare(12.0), spare(40.0));
    let fit = (0.0..0.2_f64, proud_or_lap(), any::<bool>(), weights());
    let off = (off(), off());
    (boards, cutters, spare, fit, off).prop_filter_map("no such joint", case)
}

type Boards = (f64, f64, Slope, usize);
type Cutters = (Cutter, Option<Cutter>, ScrewRequest);
type Spare = (f64, f64, f64);
/// Glue gap, what stands proud and what is left as a lap, whether pins are the narrowest, weights.
type Fit = (f64, (f64, f64), bool, Option<Vec<f64>>);
type Off = (Option<f64>, Option<f64>);

fn case(parts: (Boards, Cutters, Spare, Fit, Off)) -> Option<Case> {
    let (boards, cutters, spare, fit, off) = parts;
    let (tail, pin, slope, count) = boards;
    let (cutter, upright, screw) = cutters;
    let (gap, (proud, lap), narrowest, weights) = fit;
    let (proud, lap) = (proud.min(tail).min(pin), lap * pin);
    let angle = slope.radians();
    let kerf = upright.map_or(cutter.kerf, |upright| upright.kerf.max(cutter.kerf));
    let narrow_pin = kerf / angle.cos() + 2.0 * proud * angle.tan() + spare.0;
    let half_pin = 0.3 + proud * angle.tan() + spare.1;
    let tip = kerf / angle.cos() + 2.0 * angle.tan() * pin + 0.1 + spare.2;
    let tails = count as f64;
    let found = |off: Option<f64>| off.map(|off| (angle.to_degrees() + off).max(0.1));
    let found = (found(off.0), found(off.1));
    let missing = |given: Option<f64>| given.map_or(Given::Missing, Given::Value);
    let board = |thickness: f64| BoardRequest {
        thickness: thickness.into(),
    };
    let request = DovetailRequest {
        width: (tails * tip + (tails - 1.0) * narrow_pin + 2.0 * half_pin).into(),
        tail: board(tail).into(),
        pin: board(pin).into(),
        slope: slope.request().into(),
        tails: tails.into(),
        half_pin: half_pin.into(),
        narrow_pin: missing((!narrowest).then_some(narrow_pin)),
        by: if narrowest {
            ByRequest::kind("narrowest").into()
        } else {
            Given::Missing
        },
        weights: weights.map_or(Given::Missing, |weights| {
            let own = weights.into_iter().take(count).map(Given::Value);
            own.collect::<Vec<_>>().into()
        }),
        lap: lap.into(),
        glue_gap: gap.into(),
        proud: proud.into(),
        cutter: cutter.request().into(),
        pin_cutter: upright.map_or(Given::Missing, |upright| upright.request().into()),
        screw: screw.into(),
        measured: MeasuredRequest {
            lean_degrees: missing(found.0),
            turn_degrees: missing(found.1),
        }
        .into(),
        ..DovetailRequest::default()
    };
    Some(Case {
        plan: dovetail(&request).ok()?.plan,
        tail_thickness: tail,
        pin_thickness: pin,
        proud,
        tips: cutter.grind.tips(angle.tan()),
        upright_tips: upright.unwrap_or(cutter).grind.tips(angle.tan()),
        lean: found.0.map_or(angle, f64::to_radians),
        turn: found.1.map_or(angle, f64::to_radians),
    })
}

fn spare(most: f64) -> impl Strategy<Value = f64> {
    prop_oneof![0.0..0.3_f64, 0.0..most]
}

fn proud_or_lap() -> impl Strategy<Value = (f64, f64)> {
    prop_oneof![
        4 => Just((0.0, 0.0)),
        4 => (0.0..4.0_f64).prop_map(|proud| (proud, 0.0)),
        1 => (0.1..0.5_f64).prop_map(|lap| (0.0, lap)),
    ]
}

/// Twelve nearly equal weights, so that the narrowest tail still stands.
fn weights() -> impl Strategy<Value = Option<Vec<f64>>> {
    prop::option::of(prop::collection::vec(1.0..1.1_f64, 12))
}

/// How far blade or wedge is from what it was set to, degrees.
fn off() -> impl Strategy<Value = Option<f64>> {
    prop_oneof![3 => Just(None), 1 => (-1.0..1.0_f64).prop_map(Some)]
}

fn cutter() -> impl Strategy<Value = Cutter> {
    let grind = prop_oneof![
        Just(Grind::Flat),
        Just(Grind::Slope),
        (1.0..40.0_f64).prop_map(Grind::Alternate),
    ];
    (1.2..8.0_f64, 0.0..0.5_f64, grind).prop_map(|(kerf, overlap, grind)| Cutter {
        kerf,
        overlap,
        grind,
    })
}

fn screw() -> impl Strategy<Value = ScrewRequest> {
    let rises = prop_oneof!["away", "towards"];
    let rounding = prop_oneof!["division", "half", "none"];
    (0.8..6.0_f64, 20..400_u32, rises, rounding).prop_map(|(lead, divisions, rises, rounding)| {
        ScrewRequest {
            lead: lead.into(),
            divisions: f64::from(divisions).into(),
            rises: rises.into(),
            rounding: rounding.into(),
            ..ScrewRequest::default()
        }
    })
}
