//! The worked joint that the page opens on.

use super::{
    Cutter, Entry, GrooveForm, JointForm, LeadBy, List, Saw, Screw, Shop, SlotForm, StackForm,
    State, Work,
};

impl State {
    /// A worked joint: change the board's width, and everything follows.
    #[must_use]
    pub fn demo() -> Self {
        Self {
            work: Work {
                joint: joint(),
                shop: shop(),
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
        ..JointForm::default()
    }
}

fn shop() -> Shop {
    Shop {
        saws: List::new([Saw {
            name: Entry::mm("Bench saw"),
            greatest_height: Entry::mm("80"),
            base: Entry::mm("15"),
            travel: Entry::mm("320"),
            ..Saw::default()
        }]),
        cutters: List::new([
            cutter("Rip blade", "3.07"),
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

fn cutter(name: &str, kerf: &str) -> Cutter {
    Cutter {
        name: Entry::mm(name),
        kerf: Entry::mm(kerf),
        ..Cutter::default()
    }
}
