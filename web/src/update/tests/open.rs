//! Opening, and never losing what was there.

use super::{WIDTH, type_in};
use crate::effect::Effect;
use crate::keep::{Unreadable, link, saved};
use crate::model::{Chunk, Model};
use crate::msg::{Edit, Leaf, Msg, SawMove};
use crate::notice::Notice;
use crate::state::{Entry, Progress, State, Step};
use crate::testing::{opened, opened_with, started};
use crate::update::Found;

/// A job of this width.
pub(super) fn job(width: &str) -> State {
    let mut state = State::demo();
    state.work.joint.width = Entry::mm(width);
    state
}

fn found(stored: &State, fragment: &str) -> Found {
    Found {
        stored: Some(saved::save(stored)),
        fragment: fragment.into(),
        ..Found::default()
    }
}

pub(super) fn width(model: &Model) -> &str {
    &model.state.work.joint.width.text
}

/// The widths of the open joints of all jobs, in order.
pub(super) fn widths(model: &Model) -> Vec<&str> {
    let work = &model.state.work;
    let job = |place| {
        work.jobs
            .get(place)
            .map_or(&work.joint, |job| &job.open.joint)
    };
    let widths = (0..work.jobs.count()).map(|place| job(place).width.text.as_str());
    widths.collect()
}

#[test]
fn the_first_visit_opens_the_worked_joint() {
    let (model, effects) = Model::start(Found::default());
    assert_eq!(model.state, State::demo());
    assert!(model.answer.current().is_some());
    assert_eq!(model.notices, []);
    assert_eq!(effects, [Effect::Fetch(Chunk::Jobs)]);
    assert!(!model.can_undo);
}

#[test]
fn a_bookmark_restores_the_job_in_another_browser() {
    let mut job = job("160");
    job.progress.set(Progress {
        step: Step::Stop(3),
        ..Progress::default()
    });
    let (model, effects) = opened(Found {
        fragment: link::write(&job),
        ..Found::default()
    });
    assert_eq!(model.state, job);
    // The worked joint that was there before is no loss.
    assert_eq!((model.notices, effects), (vec![], vec![]));
}

#[test]
fn a_link_is_opened_beside_other_work_and_undo_takes_it_away() {
    let (mut model, effects) = opened(found(&job("150"), &link::write(&job("160"))));
    assert_eq!(widths(&model), ["150", "160"]);
    assert_eq!(width(&model), "160");
    assert_eq!(model.notices, [Notice::JobAdded]);
    assert!(model.notices[0].can_undo());
    assert_eq!((effects, &model.asides), (vec![], &vec![]));

    model.update(Msg::Undo);
    assert_eq!(model.state, job("150"));
    assert_eq!(model.notices, []);
    model.update(Msg::Redo);
    assert_eq!(widths(&model), ["150", "160"]);
}

/// Undo is about what was typed: whoever went on cutting meanwhile has not cut less.
#[test]
fn undoing_an_added_job_takes_back_nothing_that_was_cut() {
    let (mut model, _) = opened(found(&job("150"), &link::write(&job("160"))));
    model.update(Msg::Edit(Edit::Job(Leaf::Open(0))));
    for movement in [SawMove::Open, SawMove::Next, SawMove::Next, SawMove::Leave] {
        model.update(Msg::Saw(movement));
    }
    let cut = model.state.progress().clone();
    assert_eq!(cut.step, Step::Stop(0));
    for _ in 0..2 {
        model.update(Msg::Undo);
    }
    assert_eq!(widths(&model), ["150"]);
    assert_eq!(model.state.progress(), &cut);
    for _ in 0..2 {
        assert_eq!(model.update(Msg::Redo), []);
    }
    assert_eq!(widths(&model), ["150", "160"]);
    assert_eq!(model.state.progress(), &cut);
}

#[test]
fn work_kept_aside_survives_the_tab_and_changes_places_when_opened() {
    let (mut first, _) = opened(found(&job("150"), ""));
    let effects = first.update(Msg::OpenFile(saved::save(&job("160"))));
    let [Effect::KeepAside { key, text }] = effects.as_slice() else {
        panic!("{effects:?}")
    };
    assert_eq!(*text, saved::save(&job("150")));
    let (mut model, _) = opened(Found {
        asides: vec![(key.clone(), text.clone())],
        ..found(&first.state, "")
    });
    assert!(model.asides[0].can_open);
    model.update(Msg::OpenAside(key.clone()));
    assert_eq!(width(&model), "150");
    let kept: Vec<_> = model.asides.iter().map(|aside| &*aside.text).collect();
    assert_eq!(kept, [saved::save(&job("160"))]);
    model.update(Msg::Undo);
    assert_eq!(width(&model), "160");
}

#[test]
fn a_link_to_the_same_work_keeps_the_place_at_the_saw() {
    for width in ["140", "150"] {
        let (mut stored, _) = opened_with(&job(width));
        stored.update(Msg::Saw(SawMove::Open));
        stored.update(Msg::Saw(SawMove::Next));
        let (model, effects) = opened(found(&stored.state, &link::write(&job(width))));
        assert_eq!(model.state, stored.state);
        assert_eq!((model.notices, effects), (vec![], vec![]));
    }
}

#[test]
fn the_pages_own_address_never_outdoes_the_store() {
    let (model, _) = opened(Found {
        is_own: true,
        ..found(&job("150"), &link::write(&job("140.5")))
    });
    assert_eq!(width(&model), "150");
    assert_eq!(model.notices, []);
    // But it is all there is where the store was wiped.
    let (model, _) = opened(Found {
        is_own: true,
        fragment: link::write(&job("140.5")),
        ..Found::default()
    });
    assert_eq!(width(&model), "140.5");
}

#[test]
fn a_broken_link_changes_nothing_and_is_kept_aside() {
    let mut model = started();
    type_in(&mut model, WIDTH, "150");
    for (fragment, fault) in [
        ("#j=1.AAAA", Unreadable::Damaged),
        ("#j=7.AAAA", Unreadable::NewerVersion),
    ] {
        let effects = model.update(Msg::OpenLink(fragment.into()));
        assert_eq!(width(&model), "150");
        assert!(model.notices.contains(&Notice::LinkBroken(fault)));
        let kept =
            matches!(effects.as_slice(), [Effect::KeepAside { text, .. }] if text == fragment);
        assert!(kept, "{effects:?}");
        assert!(!model.asides.last().unwrap().can_open);
    }
    assert_eq!(model.update(Msg::OpenLink("#j=1.AAAA".into())), []);
    assert_eq!(model.update(Msg::OpenLink("#top".into())), []);
}

#[test]
fn a_broken_store_is_kept_aside_and_the_page_works() {
    let (mut model, effects) = opened(Found {
        stored: Some("{\"version\":1,\"st".into()),
        ..Found::default()
    });
    assert_eq!(model.notices, [Notice::StoreBroken]);
    assert_eq!(model.state, State::demo());
    let [Effect::KeepAside { key, text }] = effects.as_slice() else {
        panic!("{effects:?}")
    };
    assert_eq!(
        (key.as_str(), text.as_str()),
        ("notchwright.aside.1", "{\"version\":1,\"st")
    );
    let download = Effect::Download {
        name: "notchwright-1.txt".into(),
        text: text.clone(),
    };
    assert_eq!(model.update(Msg::SaveAside(key.clone())), [download]);
    let copy = Effect::Copy(text.clone());
    assert_eq!(model.update(Msg::CopyAside(key.clone())), [copy]);
    let drop = Effect::DropAside { key: key.clone() };
    assert_eq!(model.update(Msg::DropAside(key.clone())), [drop]);
    assert_eq!(model.asides, []);
}

#[test]
fn a_store_read_in_parts_says_so() {
    let text = "{\"version\":1,\"state\":{\"work\":{\"joint\":{\"width\":\"150\",\"glueGap\":7}}}}";
    let (model, effects) = opened(Found {
        stored: Some(text.into()),
        ..Found::default()
    });
    assert_eq!(width(&model), "150");
    assert_eq!(model.notices, [Notice::StorePartly]);
    assert!(matches!(effects.as_slice(), [Effect::KeepAside { .. }]));
}

#[test]
fn new_texts_set_aside_never_take_the_place_of_others() {
    let aside = |n: usize| (format!("notchwright.aside.{n}"), format!("text {n}"));
    let (model, effects) = opened(Found {
        stored: Some("?".into()),
        asides: vec![aside(10), aside(9)],
        ..Found::default()
    });
    let keys: Vec<_> = model
        .asides
        .iter()
        .map(|aside| aside.key.as_str())
        .collect();
    assert_eq!(
        keys,
        [
            "notchwright.aside.9",
            "notchwright.aside.10",
            "notchwright.aside.11"
        ]
    );
    assert_eq!(effects.len(), 1);

    let (model, effects) = opened(Found {
        stored: Some("?".into()),
        asides: (1..=20).map(aside).collect(),
        ..Found::default()
    });
    let oldest = Effect::DropAside {
        key: "notchwright.aside.1".into(),
    };
    assert_eq!(effects.first(), Some(&oldest));
    assert_eq!(model.asides.len(), 20);
}

#[test]
fn another_tab_is_followed_and_its_run_of_changes_is_one_step() {
    let mut model = started();
    for width in ["1", "15", "150"] {
        model.update(Msg::OtherTab(saved::save(&job(width))));
    }
    assert_eq!(width(&model), "150");
    model.update(Msg::Undo);
    assert_eq!(width(&model), "140");
    model.update(Msg::OtherTab("?".into()));
    assert_eq!(width(&model), "140");
}

#[test]
fn another_tab_does_not_move_the_saw_in_this_one() {
    let mut model = started();
    model.update(Msg::Saw(SawMove::Open));
    model.update(Msg::Saw(SawMove::Jump(0, Step::Stop(5))));
    let here = model.state.clone();
    model.update(Msg::OtherTab(saved::save(&State::demo())));
    assert_eq!(model.state, here);

    // But a tab that looks on takes over how far the other has come.
    let mut onlooker = started();
    onlooker.update(Msg::OtherTab(saved::save(&here)));
    assert_eq!(onlooker.state.progress().step, Step::Stop(5));
    assert!(!onlooker.state.at_saw.open);
}

/// Whoever left the second version at the saw goes on where they were: the plan is the same.
#[test]
fn the_second_version_is_taken_up_at_the_saw() {
    let text = include_str!("../../keep/tests/version-2.json").trim();
    let (mut model, effects) = opened(Found {
        stored: Some(text.into()),
        ..Found::default()
    });
    assert_eq!(effects, [Effect::Fetch(Chunk::Dovetail)]);
    model.update(Msg::Came(Chunk::Dovetail));
    assert_eq!(model.notices, []);
    let at = model.state.progress();
    assert_eq!((at.set, at.step), (3, Step::Stop(2)));
    assert!(model.state.at_saw.open);
}
