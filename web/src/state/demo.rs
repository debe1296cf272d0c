//! The worked joint that the page opens on.

use super::{
    CutForm, Cutter, DovetailForm, Entry, GrooveForm, JointForm, LeadBy, List, Point, RoutForm,
    Saw, Screw, Shop, Sled, SledForm, SlidingForm, SlotForm, SquareForm, StackForm, State, Work,
};

impl State {
    /// A worked joint: change the board's width, and everything follows.
    #[must_use]
    pub fn demo() -> Self {
        Self {
            work: Work {
                joint: joint(),
                shop: shop(),
                sled: sled_form(),
            },
            ..Self::default()
        }
    }
}

fn joint() -> JointForm {
    JointForm {
        job: Entry::mm("Chart chest"),
        name: Entry::mm("Drawer 3, side to front"),
        width: Entry::mm("140"),
        thickness_a: Entry::mm("12"),
        thickness_b: Entry::mm("18"),
        count: Entry::mm("9"),
        finger_width: Entry::mm("15"),
        weights: Entry::mm("1 1 2 1 3"),
        mirrored: true,
        glue_gap: Entry::mm("0.05"),
        groove: GrooveForm {
            from_edge: Entry::mm("9"),
            width: Entry::mm("6"),
            depth: Entry::mm("6"),
            ..GrooveForm::default()
        },
        dovetail: dovetail(),
        sliding: sliding(),
        ..JointForm::default()
    }
}

fn dovetail() -> DovetailForm {
    DovetailForm {
        tails: Entry::mm("4"),
        narrow_pin: Entry::mm("5"),
        half_pin: Entry::mm("6"),
        ratio: Entry::mm("3"),
        run: Entry::mm("8"),
        degrees: Entry::mm("8"),
        wedge_length: Entry::mm("300"),
        wedge_thin: Entry::mm("6"),
        ..DovetailForm::default()
    }
}

/// A shelf into the chest's side.
fn sliding() -> SlidingForm {
    SlidingForm {
        tip: Entry::mm("12.7"),
        flank: Entry::mm("14"),
        depth: Entry::mm("9.5"),
        thickness: Entry::mm("18"),
        ..SlidingForm::default()
    }
}

fn shop() -> Shop {
    Shop {
        saws: List::new([saw()]),
        sleds: List::new([sled()]),
        cutters: List::new([
            Cutter {
                diameter: Entry::mm("254"),
                ..cutter("Rip blade", "3.07")
            },
            cutter("Grooving stack", "9.53"),
            cutter("Straight bit", "6.35"),
        ]),
        screws: List::new([Screw {
            name: Entry::mm("Sled screw"),
            by: LeadBy::Threads,
            threads: Entry::mm("16"),
            divisions: Entry::mm("80"),
            ..Screw::default()
        }]),
        stack: StackForm {
            outer: Entry::mm("3.2; 3.2"),
            chippers: Entry::mm("3.2; 3.2; 2.4; 1.6"),
            shims: Entry::mm("0.5; 0.3; 0.2; 0.1; 0.1"),
            want: Entry::mm("12"),
        },
        slot: SlotForm {
            kerfs: Entry::mm("5"),
            step: Entry::mm("2.5"),
            width: Entry::mm("13.07"),
        },
    }
}

fn saw() -> Saw {
    Saw {
        name: Entry::mm("Bench saw"),
        greatest_height: Entry::mm("80"),
        to_slot: Entry::mm("118.5"),
        second_slot: Entry::mm("142"),
        front: Entry::mm("305"),
        rear: Entry::mm("372"),
        ..Saw::default()
    }
}

fn sled() -> Sled {
    Sled {
        name: Entry::mm("Joint sled"),
        base: Entry::mm("15"),
        travel: Entry::mm("320"),
        width: Entry::mm("520"),
        length: Entry::mm("560"),
        carriage_face: Entry::mm("170"),
        front_rail: Entry::mm("370"),
        runner_width: Entry::mm("19"),
        contact_near: Entry::mm("20"),
        contact_far: Entry::mm("440"),
        margin: Entry::mm("20"),
        holes: Entry::mm("60; 230; 400"),
        hole_clearance: Entry::mm("0.5"),
        ..Sled::default()
    }
}

/// A test that found the fence a little out, a screw measured over three turns, and a groove for a
/// drawer bottom.
fn sled_form() -> SledForm {
    SledForm {
        cut: CutForm {
            play: Entry::mm("0.1"),
            ..CutForm::default()
        },
        square: SquareForm {
            fence_end: Entry::mm("24.36"),
            free_end: Entry::mm("24.02"),
            apart: Entry::mm("340"),
            pivot: Entry::mm("460"),
            ..SquareForm::default()
        },
        points: List::new(POINTS.map(|(commanded, measured)| Point {
            commanded: Entry::mm(commanded),
            measured: Entry::mm(measured),
            ..Point::default()
        })),
        rout: RoutForm {
            from_edge: Entry::mm("12"),
            sheet: Entry::mm("5.8"),
            clearance: Entry::mm("0.2"),
            bit: Entry::mm("5"),
            depth: Entry::mm("6"),
            pass_depth: Entry::mm("3"),
            ..RoutForm::default()
        },
        ..SledForm::default()
    }
}

/// Commanded and measured.
const POINTS: [(&str, &str); 8] = [
    ("0", "0"),
    ("20", "20.03"),
    ("40", "40.05"),
    ("60", "60.06"),
    ("80", "80.1"),
    ("100", "100.11"),
    ("120", "120.14"),
    ("140", "140.15"),
];

fn cutter(name: &str, kerf: &str) -> Cutter {
    Cutter {
        name: Entry::mm(name),
        kerf: Entry::mm(kerf),
        ..Cutter::default()
    }
}
