//! One job of a state, to be carried elsewhere: by a link, a picture of it, or a file of its own.

use crate::state::{Around, Progress, State, Work};

/// The open job with the whole shop: a bookmark is a copy of what one would miss.
#[must_use]
pub(crate) fn with_shop(state: &State) -> State {
    let work = Work {
        jobs: Around::default(),
        ..state.work.clone()
    };
    let mut parcel = State {
        work,
        progress: Default::default(),
        ..state.clone()
    };
    for joint in parcel
        .work
        .joints()
        .map(|joint| joint.id)
        .collect::<Vec<_>>()
    {
        // Of one that has not begun, the progress names no joint.
        parcel.progress.set(Progress {
            joint,
            ..state.progress.of(joint).clone()
        });
    }
    parcel
}

/// The open job with no more of the shop than it was planned with.
#[must_use]
pub(crate) fn with_its_tools(state: &State) -> State {
    let mut parcel = with_shop(state);
    parcel.work.keep_own_tools();
    parcel
}
