//! Where a groove shows, and where it would not.

use super::{groove, near, plan, request};
use crate::joint::box_joint::{BoxJointRequest, GrooveRequest, LayoutRequest, Make, Through};

#[test]
fn a_groove_shows_where_it_leaves_through_a_pin() {
    // Fingers of 15.56: A has its first socket from 15.56 to 31.11.
    for (from, a, b) in [
        (
            5.0,
            (Through::Pin, Make::Stopped),
            (Through::Socket, Make::Through),
        ),
        (
            20.0,
            (Through::Socket, Make::Through),
            (Through::Pin, Make::Stopped),
        ),
        (
            12.0,
            (Through::Both, Make::Stopped),
            (Through::Both, Make::Stopped),
        ),
    ] {
        let groove = plan(&BoxJointRequest {
            groove: groove(from, 6.0, 4.0).into(),
            ..request(LayoutRequest::count(9.0))
        })
        .groove
        .unwrap();
        let [end_a, end_b] = groove.ends;
        assert_eq!(
            ((end_a.through, end_a.make), (end_b.through, end_b.make)),
            (a, b),
            "{from}"
        );
        assert_eq!(groove.better.is_empty(), from != 12.0);
    }
}

#[test]
fn a_better_groove_is_near_and_settles_it() {
    for edge in ["reference", "far"] {
        let ask = |from: f64| GrooveRequest {
            edge: edge.into(),
            ..groove(from, 6.0, 4.0)
        };
        let joint = |from: f64| {
            plan(&BoxJointRequest {
                groove: ask(from).into(),
                ..request(LayoutRequest::count(9.0))
            })
        };
        let better = joint(12.0).groove.unwrap().better;
        near(better[0].from_edge, 140.0 / 9.0 - 6.0);
        for place in better {
            let exact = place.from_edge.mm();
            let as_read = (exact * 100.0).round() / 100.0;
            for from in [exact, as_read] {
                let moved = joint(from).groove.unwrap();
                let end = moved
                    .ends
                    .iter()
                    .find(|end| end.board == place.through)
                    .unwrap();
                assert_eq!(end.make, Make::Through, "{edge} {from} of {place:?}");
            }
        }
    }
}
