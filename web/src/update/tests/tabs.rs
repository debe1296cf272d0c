//! Several tabs of one browser: they follow each other, and none writes over another's work unseen.

use notchwright_core::stop::Board;
use proptest::collection::vec;
use proptest::prelude::*;

use super::type_in;
use crate::effect::Effect;
use crate::keep::saved;
use crate::model::{Chunk, Model};
use crate::msg::{Edit, Leaf, Msg, SawMove};
use crate::notice::Notice;
use crate::state::{End, Entry, Field, Id, JointKind, State, Step};
use crate::testing::started;

/// What all tabs share. Each writing has a mark of its own.
#[derive(Default)]
struct Store {
    text: String,
    turn: usize,
}

/// A tab, as the edge leads it.
struct Tab {
    model: Model,
    last: String,
    turn: usize,
    /// Of what it has not been told yet.
    untold: Vec<String>,
}

impl Tab {
    fn open(store: &Store) -> Self {
        Self {
            model: started(),
            last: store.text.clone(),
            turn: store.turn,
            untold: Vec::new(),
        }
    }

    fn catch_up(&mut self, store: &Store) {
        (self.last, self.turn) = (store.text.clone(), store.turn);
    }

    /// The browser tells it of what others wrote; one that it has frozen, it does not.
    fn wake(&mut self, store: &Store, was_frozen: bool) {
        for text in std::mem::take(&mut self.untold) {
            if !was_frozen {
                self.model.update(Msg::OtherTab(text));
                self.catch_up(store);
            }
        }
    }

    /// Does what the person does, and saves; the answer is what others are to be told.
    fn act(&mut self, msg: Msg, store: &mut Store) -> Option<String> {
        self.model.update(msg);
        let text = saved::save(&self.model.state);
        if self.last != text && store.turn != self.turn {
            let known = std::mem::take(&mut self.last);
            self.catch_up(store);
            if store.text != known {
                let effects = self.model.update(Msg::Overtaken(store.text.clone()));
                assert!(
                    matches!(effects.as_slice(), [Effect::KeepAside { .. }]) || effects.is_empty()
                );
                assert!(self.model.notices.contains(&Notice::Overtaken));
            }
        }
        if self.last == text {
            return None;
        }
        (store.text, store.turn) = (text, store.turn + 1);
        self.catch_up(store);
        Some(store.text.clone())
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(96))]

    /// Every job that anybody added is in the store, or was kept aside.
    #[test]
    fn no_job_is_lost_unseen(acts in vec((0_usize..2, any::<bool>(), 0_usize..3), 0..14)) {
        let mut store = Store { text: saved::save(&State::demo()), turn: 0 };
        let mut tabs = [Tab::open(&store), Tab::open(&store)];
        let mut names = Vec::new();
        for (number, (who, was_frozen, what)) in acts.into_iter().enumerate() {
            tabs[who].wake(&store, was_frozen);
            let name = format!("Job number {number}.");
            let messages = match what {
                0 => vec![Msg::Edit(Edit::JointOf(Leaf::Open(number % 3)))],
                1 => vec![Msg::Edit(Edit::Job(Leaf::Open(number % 4)))],
                _ => vec![
                    Msg::Edit(Edit::Job(Leaf::Add)),
                    Msg::Edit(Edit::Type(Field::Job, name.clone())),
                ],
            };
            names.extend((what == 2).then_some(name));
            for msg in messages {
                let told = tabs[who].act(msg, &mut store);
                tabs[1 - who].untold.extend(told);
            }
        }
        let asides = tabs.iter().flat_map(|tab| &tab.model.asides);
        let kept: Vec<&str> = asides.map(|aside| &*aside.text).chain([store.text.as_str()]).collect();
        for name in names {
            prop_assert!(kept.iter().any(|text| text.contains(&name)), "{}", name);
        }
    }
}

/// What this tab stored.
fn stored(model: &Model) -> Msg {
    Msg::OtherTab(saved::save(&model.state))
}

#[test]
fn each_tab_goes_on_showing_its_own_joint() {
    let (mut one, mut other) = (started(), started());
    other.update(Msg::Edit(Edit::JointOf(Leaf::Open(1))));
    one.update(stored(&other));
    assert_eq!(one.state.work, State::demo().work);
    type_in(&mut one, Field::Job, "Other chest");
    other.update(stored(&one));
    assert_eq!(other.state.work.joint.id, Id(1));
    assert_eq!(other.state.work.job.name, Entry::mm("Other chest"));

    // In whichever job it is; the one that is gone gives way to the other's.
    other.update(Msg::Edit(Edit::Job(Leaf::Add)));
    one.update(stored(&other));
    assert_eq!(
        (one.state.work.jobs.count(), one.state.work.jobs.place()),
        (2, 0)
    );
    assert_eq!(one.state.work.joint.id, Id(0));
    other.update(Msg::Edit(Edit::Job(Leaf::Remove(0))));
    one.update(stored(&other));
    assert_eq!(one.state.work, other.state.work);
    one.update(Msg::Undo);
    assert_eq!(one.state.work.joint.id, Id(0));
}

#[test]
fn two_tabs_cut_two_joints_of_one_job() {
    let (mut one, mut other) = (started(), started());
    other.update(Msg::Edit(Edit::JointOf(Leaf::Open(1))));
    one.update(stored(&other));
    for (model, stop) in [(&mut one, 3), (&mut other, 6)] {
        model.update(Msg::Saw(SawMove::Open));
        model.update(Msg::Saw(SawMove::Jump(0, Step::Stop(stop))));
    }
    one.update(stored(&other));
    other.update(stored(&one));
    for model in [&one, &other] {
        let step = |joint| model.state.progress.of(Id(joint)).step;
        assert_eq!((step(0), step(1)), (Step::Stop(3), Step::Stop(6)));
        assert!(model.state.at_saw.open);
        assert_eq!(model.notices, []);
    }
}

/// Both at the saw with one joint: each keeps its own place, and both know what is cut.
#[test]
fn what_one_tab_has_cut_is_cut_in_the_other() {
    let (mut one, mut other) = (started(), started());
    for model in [&mut one, &mut other] {
        model.update(Msg::Saw(SawMove::Open));
    }
    let ends: Vec<_> = one.answer.pieces.ends(Board::A).take(3).collect();
    let mark = |end: &End, is_cut| Msg::Saw(SawMove::Mark(*end, is_cut));
    one.update(mark(&ends[0], true));
    one.update(Msg::Saw(SawMove::Jump(0, Step::Stop(3))));
    other.update(stored(&one));
    other.update(mark(&ends[1], true));
    other.update(mark(&ends[2], true));
    one.update(stored(&other));
    one.update(mark(&ends[2], false));
    other.update(stored(&one));
    for (model, step) in [(&one, Step::Stop(3)), (&other, Step::SetUp)] {
        let at = model.state.progress();
        let is_cut: Vec<_> = ends.iter().map(|end| at.done.has(0, *end)).collect();
        assert_eq!((at.step, is_cut), (step, vec![true, true, false]));
    }
}

/// A newer program may have stored what this one would lose.
#[test]
fn what_is_not_all_understood_is_not_followed() {
    let mut model = started();
    let before = model.clone();
    let state = saved::save(&State::demo());
    let unknown = state.replace("\"width\":\"140\"", "\"width\":\"150\",\"unknown\":1");
    for text in [state.replace("\"version\":3", "\"version\":99"), unknown] {
        assert_ne!(text, state);
        assert!(!saved::is_whole(&text));
        assert_eq!(model.update(Msg::OtherTab(text)), []);
        assert!(model == before);
    }
}

#[test]
fn what_was_overtaken_is_kept_once_and_can_be_opened() {
    let mut model = started();
    let mut theirs = State::demo();
    theirs.work.job.name = Entry::mm("Theirs");
    let text = saved::save(&theirs);
    let effects = model.update(Msg::Overtaken(text.clone()));
    assert!(matches!(effects.as_slice(), [Effect::KeepAside { .. }]));
    assert_eq!(model.update(Msg::Overtaken(text.clone())), []);
    assert_eq!(model.notices, [Notice::Overtaken]);
    assert!(model.notices[0].is_warning());
    let [aside] = model.asides.as_slice() else {
        panic!("{:?}", model.asides)
    };
    assert!(aside.can_open);
    let key = aside.key.clone();
    model.update(Msg::OpenAside(key));
    assert_eq!(model.state.work, theirs.work);
}

/// What another tab chose may need a part of the program that this one has not fetched.
#[test]
fn what_another_tabs_work_needs_is_fetched() {
    let mut model = started();
    let mut theirs = State::demo();
    theirs.work.joint.kind = JointKind::Dovetail;
    let effects = model.update(Msg::OtherTab(saved::save(&theirs)));
    assert_eq!(effects, [Effect::Fetch(Chunk::Dovetail)]);
}
