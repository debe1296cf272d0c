//! Files: of everything, in the place of what is here, and of one job, beside it.

use notchwright_core::stop::Board;

use super::open::{job, width, widths};
use super::{WIDTH, type_in};
use crate::effect::Effect;
use crate::keep::{Unreadable, saved};
use crate::model::Model;
use crate::msg::{Edit, Leaf, Msg, SawMove};
use crate::notice::Notice;
use crate::state::State;
use crate::testing::{opened_with, started};

#[test]
fn a_file_brings_back_what_was_saved_in_it() {
    let mut model = started();
    type_in(&mut model, WIDTH, "160");
    let effects = model.update(Msg::SaveAll);
    let [Effect::Download { name, text }] = effects.as_slice() else {
        panic!("{effects:?}")
    };
    assert_eq!(name, "notchwright.json");
    let saved = model.state.clone();
    assert_eq!(model.update(Msg::OpenFile(text.clone())), []);
    assert_eq!(model.notices, [Notice::FileSame]);

    type_in(&mut model, WIDTH, "170");
    let effects = model.update(Msg::OpenFile(text.clone()));
    assert_eq!(model.state, saved);
    assert!(model.notices.contains(&Notice::FileReplaced));
    let [Effect::KeepAside { key, .. }] = effects.as_slice() else {
        panic!("{effects:?}")
    };
    let effects = model.update(Msg::Undo);
    assert_eq!(width(&model), "170");
    assert_eq!(effects, [Effect::DropAside { key: key.clone() }]);
}

fn job_file(model: &mut Model) -> String {
    let effects = model.update(Msg::SaveJob);
    let [Effect::Download { name, text }] = effects.as_slice() else {
        panic!("{effects:?}")
    };
    assert_eq!(name, "chart-chest-job.json");
    text.clone()
}

/// On a first visit in the place of the worked job, and beside others after that; undo takes it away again.
#[test]
fn the_file_of_a_job_opens_beside_what_is_here() {
    let file = job_file(&mut opened_with(&job("160")).0);
    let mut model = started();
    assert_eq!(model.update(Msg::OpenFile(file.clone())), []);
    assert_eq!(widths(&model), ["160"]);
    assert_eq!(model.notices, [Notice::FileReplaced]);
    model.update(Msg::Undo);
    assert_eq!(model.state, State::demo());
    type_in(&mut model, WIDTH, "170");
    model.update(Msg::OpenFile(file.clone()));
    assert_eq!(widths(&model), ["170", "160"]);
    assert_eq!(model.notices, [Notice::JobAdded]);
    model.update(Msg::Dismiss(Notice::JobAdded));
    model.update(Msg::OpenFile(file));
    assert_eq!(widths(&model), ["170", "160"]);
    assert_eq!(model.notices, [Notice::FileSame]);
}

fn mark(model: &mut Model, ends: usize) {
    let all: Vec<_> = model.answer.pieces.ends(Board::A).take(ends).collect();
    model.update(Msg::Saw(SawMove::Open));
    for end in all {
        model.update(Msg::Saw(SawMove::Mark(end, true)));
    }
    model.update(Msg::Saw(SawMove::Leave));
}

/// The job was cut on another device and comes home: what is cut there is cut. An older file takes nothing back.
#[test]
fn a_file_tells_how_far_its_job_has_been_cut() {
    let (mut away, _) = opened_with(&job("160"));
    let early = job_file(&mut away);
    mark(&mut away, 5);
    let late = job_file(&mut away);
    for is_beside in [false, true] {
        let (mut model, _) = opened_with(&job("160"));
        if is_beside {
            model.update(Msg::Edit(Edit::Job(Leaf::Add)));
        }
        for (file, notice) in [
            (&late, Notice::FileFurther),
            (&late, Notice::FileSame),
            (&early, Notice::FileSame),
        ] {
            model.notices.clear();
            model.update(Msg::OpenFile(file.clone()));
            assert_eq!(model.notices, [notice]);
            assert_eq!(widths(&model)[0], "160");
            assert_eq!(model.state.progress().done, away.state.progress().done);
        }
    }
}

/// A file of everything that differs only in what is cut is no file of what is here.
#[test]
fn a_file_of_everything_brings_back_what_was_cut() {
    let (mut model, _) = opened_with(&job("160"));
    mark(&mut model, 5);
    let further = model.state.clone();
    let file = saved::save(&further);
    let (mut model, _) = opened_with(&job("160"));
    let before = model.state.clone();
    model.update(Msg::OpenFile(file));
    assert_eq!(model.notices, [Notice::FileReplaced]);
    assert_eq!(model.state, further);
    model.update(Msg::Undo);
    assert_eq!(model.state, before);
}

#[test]
fn a_file_that_is_no_job_changes_nothing() {
    for (text, fault) in [
        ("", Unreadable::Damaged),
        ("<script>alert(1)</script>", Unreadable::Damaged),
        (r#"{"version":1,"state":7}"#, Unreadable::Damaged),
        (r#"{"version":99,"state":{}}"#, Unreadable::NewerVersion),
    ] {
        let mut model = started();
        let before = model.state.clone();
        assert_eq!(model.update(Msg::OpenFile(text.into())), [], "{text}");
        assert_eq!(model.state, before, "{text}");
        assert_eq!(model.notices, [Notice::FileBroken(fault)], "{text}");
    }
}

#[test]
fn a_file_that_is_partly_understood_says_so() {
    let mut model = started();
    let text = saved::save(&job("160")).replace("\"Chart chest\"", "7");
    model.update(Msg::OpenFile(text));
    assert_eq!(width(&model), "160");
    assert_eq!(model.notices, [Notice::FilePartly]);
    model.update(Msg::Undo);
    assert_eq!(model.state, State::demo());
}
