//! What is kept comes back, and what is foreign does no harm.

mod former;
mod links;

use notchwright_core::units::Unit;
use proptest::collection::vec;
use proptest::prelude::*;
use serde_json::{Value, json};

use super::{Extent, LARGEST, Restored, Unreadable, letters, link, parcel, saved};
use crate::msg::{Edit, Look, Msg, Shelf};
use crate::state::{
    Approach, CutField, Entry, Field, Id, JointField, JointKind, MeasuredFrom, PaperSize,
    PiecesForm, Place, PointField, Prints, Progress, RoutField, SawField, Section, Side, SledField,
    SquareField, State, Step, Tool, WidthBy,
};
use crate::testing::{msg, started};

fn whole(state: State) -> Restored {
    Restored {
        state,
        is_whole: true,
        extent: Extent::All,
    }
}

/// What a link with this state carries.
fn carried(state: State) -> Restored {
    Restored {
        extent: Extent::Job,
        ..whole(state)
    }
}

fn after(messages: Vec<Msg>) -> State {
    let mut model = started();
    for msg in messages {
        model.update(msg);
    }
    model.state
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]
    #[test]
    fn what_is_saved_is_restored(messages in vec(msg(), 0..24)) {
        let state = after(messages);
        prop_assert_eq!(saved::restore(&saved::save(&state)), Ok(whole(state.clone())));
        let read = link::read(&link::write(&state)).unwrap().unwrap();
        let forms = [parcel::with_shop(&state), parcel::with_its_tools(&state)];
        prop_assert!(forms.map(carried).contains(&read));
    }
}

proptest! {
    #[test]
    fn whatever_text_is_stored_is_read_or_refused(text in "\\PC{0,80}") {
        let _ = saved::restore(&text);
        let _ = link::read(&text);
        let _ = link::read(&format!("#j=3.{text}"));
        let _ = saved::restore(&format!("{{\"version\":3,\"state\":{text}}}"));
    }

    #[test]
    fn whatever_bytes_a_link_carries_are_read_or_refused(bytes in vec(any::<u8>(), 0..200)) {
        let text = letters::write(&bytes);
        let fragment = format!("#j=3.{text}");
        prop_assert!(matches!(link::read(&fragment), Some(Err(_))));
    }

    /// A wrong number in a link that still opens would spoil a board.
    #[test]
    fn a_link_with_one_letter_changed_is_refused(at in 5_usize..200, letter in "[A-Za-z0-9_-]") {
        let fragment = link::write(&State::demo());
        let mut letters: Vec<char> = fragment.chars().collect();
        let letter = letter.chars().next().unwrap();
        prop_assume!(at < letters.len() && letters[at] != letter);
        letters[at] = letter;
        let changed: String = letters.into_iter().collect();
        match link::read(&changed) {
            Some(Ok(restored)) => prop_assert_eq!(restored, carried(State::demo())),
            read => prop_assert!(matches!(read, Some(Err(Unreadable::Damaged | Unreadable::TooLarge)))),
        }
    }
}

#[test]
fn a_link_cut_short_is_refused() {
    let fragment = link::write(&State::demo());
    for end in 5..fragment.len() {
        let read = link::read(&fragment[..end]);
        assert!(
            matches!(read, Some(Err(Unreadable::Damaged))),
            "{end}: {read:?}"
        );
    }
}

/// Messengers and mail programs break lines at about two thousand. It was 1228 when jobs came, 1509 with parts, 1776
/// with sheets.
#[test]
fn the_link_of_an_ordinary_job_is_short() {
    let length = link::write(&State::demo()).len();
    assert!(length < 1850, "{length}");
}

#[test]
fn fragments_that_are_no_job_are_none() {
    for fragment in ["", "#", "#top", "#job=1", "j=1.abc"] {
        assert_eq!(link::read(fragment), None, "{fragment:?}");
    }
}

#[test]
fn a_newer_version_says_so() {
    assert_eq!(
        link::read("#j=4.whatever"),
        Some(Err(Unreadable::NewerVersion))
    );
    let newer = json!({ "version": 4, "state": [] }).to_string();
    assert_eq!(saved::restore(&newer), Err(Unreadable::NewerVersion));
}

#[test]
fn a_small_link_that_unpacks_to_a_large_one_is_refused() {
    let bomb = vec![b' '; 50 * LARGEST];
    let packed = miniz_oxide::deflate::compress_to_vec_zlib(&bomb, 9);
    let text = letters::write(&packed);
    assert!(text.len() < LARGEST);
    let fragment = format!("#j=3.{text}");
    assert_eq!(link::read(&fragment), Some(Err(Unreadable::TooLarge)));
    assert_eq!(
        saved::restore(&"[".repeat(LARGEST + 1)),
        Err(Unreadable::TooLarge)
    );
    assert_eq!(
        saved::restore(&"[".repeat(LARGEST)),
        Err(Unreadable::Damaged)
    );
}

fn restored(state: &Value) -> Restored {
    saved::restore(&json!({ "version": 3, "state": state }).to_string()).unwrap()
}

#[test]
fn fields_that_cannot_be_read_leave_the_others_alone() {
    let Restored {
        state, is_whole, ..
    } = restored(&json!({
        "units": "ell",
        "theme": "dark",
        "atSaw": { "open": "yes" },
        "progress": [{ "set": -1, "step": { "stop": 7 } }, 7],
        "work": {
            "joint": { "width": 140, "thicknessA": "12", "layout": [], "mirrored": true, "groove": null },
            "shop": "none",
        },
    }));
    assert!(!is_whole);
    let mut expected = State {
        theme: crate::state::Theme::Dark,
        ..State::default()
    };
    expected.progress.set(Progress {
        step: Step::Stop(7),
        ..Progress::default()
    });
    expected.work.joint.thickness_a = Entry::mm("12");
    expected.work.joint.mirrored = true;
    assert_eq!(state, expected);
}

#[test]
fn fields_of_a_later_program_are_noticed() {
    let text = saved::save(&State::demo());
    let later = text.replacen("\"joint\":{", "\"joint\":{\"species\":\"oak\",", 1);
    assert_ne!(later, text);
    let read = saved::restore(&later).unwrap();
    assert_eq!(read.state, State::demo());
    assert!(!read.is_whole);
}

#[test]
fn hostile_lists_are_cut_to_size() {
    let cutter = |id: usize| json!({ "id": id, "name": "x".repeat(20) });
    let many: Vec<_> = (1..3000).map(cutter).collect();
    let read =
        restored(&json!({ "work": { "shop": { "cutters": { "items": many, "chosen": 2999 } } } }));
    let cutters = &read.state.work.shop.cutters;
    assert_eq!(cutters.items().len(), 50);
    assert_eq!(cutters.chosen().map(|cutter| cutter.id), Some(Id(1)));
    assert!(!read.is_whole);

    let twins = json!([cutter(3), cutter(3), 7, "saw", null, cutter(70_000)]);
    let read = restored(&json!({ "work": { "shop": { "cutters": { "items": twins } } } }));
    let ids: Vec<_> = read
        .state
        .work
        .shop
        .cutters
        .items()
        .iter()
        .map(|cutter| cutter.id)
        .collect();
    assert_eq!(ids, [Id(3), Id(0)]);
}

#[test]
fn a_text_longer_than_any_field_is_cut_and_noticed() {
    let read = restored(&json!({ "work": { "job": { "name": "x".repeat(5000) } } }));
    assert_eq!(read.state.work.job.name.text.len(), crate::state::LONGEST);
    assert!(!read.is_whole);
}

#[test]
fn what_was_typed_in_inches_stays_in_inches() {
    let state = after(vec![
        Msg::Units(Unit::Inch),
        Msg::Edit(Edit::Type(Field::Joint(JointField::Width), "5 1/2".into())),
    ]);
    let back = saved::restore(&saved::save(&state)).unwrap().state;
    assert_eq!(back.shown(Field::Joint(JointField::Width)), "5 1/2");
    assert_eq!(back, state);
}

/// Joints that somebody wrote without numbers, or with one for several: what is cut of one is not cut of another.
#[test]
fn joints_with_one_number_are_told_apart() {
    let joint = |id: u16| json!({"joint": {"id": id, "width": "100"}});
    let text = json!({"version": 3, "state": {"work": {
        "joint": {"width": "100"},
        "job": {"joints": {"after": [joint(0), joint(65_535)]}},
        "jobs": {"after": [{"open": joint(65_535), "job": {"joints": {"before": [joint(1), joint(0)]}}}]},
    }}});
    let restored = saved::restore(&text.to_string()).unwrap();
    assert!(!restored.is_whole);
    let work = &restored.state.work;
    assert_eq!(work.joint.id, Id(0));
    let mut ids: Vec<_> = work.all_joints().map(|joint| joint.id).collect();
    assert!(ids.contains(&Id(1)) && ids.contains(&Id(65_535)));
    ids.sort();
    ids.dedup();
    assert_eq!(ids.len(), 6);
    let mut more = restored.state.clone();
    more.work.add_job(work.jobs.get(1).unwrap().clone());
    let mut ids: Vec<_> = more.work.all_joints().map(|joint| joint.id).collect();
    ids.sort();
    ids.dedup();
    assert_eq!(ids.len(), 9);
}

/// Everything of the sled's place, each at least once.
#[test]
fn what_is_kept_in_the_sleds_place_comes_back() {
    let mut messages: Vec<_> = [
        Edit::Duplicate(Shelf::Sleds, Id(1)),
        Edit::Choose(Shelf::Sleds, Id(2)),
        Edit::Side(Id(1), Side::Right),
        Edit::MeasuredFrom(Id(1), MeasuredFrom::Centre),
        Edit::Section(Id(1), Section::T),
        Edit::KeepTest("2026-04-30".into()),
        Edit::AddPoint,
        Edit::Approach(Id(9), Approach::Down),
        Edit::WidthBy(WidthBy::Width),
    ]
    .map(Msg::Edit)
    .to_vec();
    let forms = CutField::ALL.iter().map(|field| Field::Cut(*field));
    let forms = forms.chain(SquareField::ALL.iter().map(|field| Field::Square(*field)));
    let forms = forms.chain(RoutField::ALL.iter().map(|field| Field::Rout(*field)));
    let sled = SledField::ALL
        .iter()
        .map(|field| Field::Sled(Id(2), *field));
    let saw = SawField::ALL.iter().map(|field| Field::Saw(Id(1), *field));
    let point = PointField::ALL
        .iter()
        .map(|field| Field::Point(Id(9), *field));
    let all: Vec<_> = forms.chain(sled).chain(saw).chain(point).collect();
    // Every field has a text of its own, so that no two can take each other's place.
    let texts = all.iter().zip(100..);
    messages.extend(texts.map(|(field, n)| Msg::Edit(Edit::Type(*field, n.to_string()))));
    messages.extend(
        [
            Look::Tool(Tool::Groove),
            Look::Pushed(400),
            Look::Cut(3),
            Look::Prints(Prints::HoleLine),
            Look::Paper(PaperSize::Letter),
        ]
        .map(Msg::Look),
    );
    messages.push(Msg::Go(Place::Sled));
    let mut state = after(messages);
    // Beside what is made, a link would be too long to carry the sled's place.
    state.work.job.making = Default::default();
    for read in [
        saved::restore(&saved::save(&state)).unwrap(),
        link::read(&link::write(&state)).unwrap().unwrap(),
    ] {
        assert!(read.is_whole);
        for (field, n) in all.iter().zip(100..) {
            assert_eq!(read.state.shown(*field), n.to_string(), "{field:?}");
        }
        let [test] = read.state.work.sled.tests.items() else {
            panic!("{:?}", read.state.work.sled.tests)
        };
        assert_eq!((test.date.text.as_str(), test.sled), ("2026-04-30", Id(2)));
        assert_eq!(read.state, state);
    }
}

/// Written by the first version; every later one must go on reading both.
#[test]
fn the_first_version_is_read_for_good() {
    let stored = saved::restore(include_str!("tests/version-1.json").trim()).unwrap();
    assert!(stored.is_whole);
    let work = &stored.state.work;
    assert_eq!(work.joint.width, Entry::new("5 1/2", Unit::Inch));
    assert_eq!(
        work.shop.cutters.chosen().map(|cutter| cutter.id),
        Some(Id(3))
    );
    assert_eq!(stored.state.progress().step, Step::Stop(7));
    // What then stood with the saw is the sled's now.
    let sled = work.shop.sleds.chosen().unwrap();
    assert_eq!(sled.base, Entry::mm("15"));
    assert_eq!(sled.travel, Entry::mm("320"));
    assert_eq!(
        link::read(include_str!("tests/version-1.link")),
        Some(Ok(carried(stored.state)))
    );
}

/// Written by the second version, which knew one joint and had its place at the saw beside the saw's settings.
#[test]
fn the_second_version_is_read_for_good() {
    let stored = saved::restore(include_str!("tests/version-2.json").trim()).unwrap();
    assert!(stored.is_whole);
    assert_eq!(stored.extent, Extent::All);
    let state = &stored.state;
    assert_eq!(state.work.job.name, Entry::new("Tool chest", Unit::Inch));
    assert_eq!(state.work.job.joints.count(), 1);
    assert_eq!(state.work.jobs.count(), 1);
    let joint = &state.work.joint;
    assert_eq!(joint.id, Id(0));
    assert_eq!(joint.name, Entry::new("Case, side to end", Unit::Inch));
    assert_eq!(joint.kind, JointKind::Dovetail);
    assert_eq!(joint.thickness_b, Entry::new("3/4", Unit::Inch));
    assert_eq!(joint.dovetail.pin_cutter, Id(3));
    assert_eq!(joint.pieces, PiecesForm::default());
    let cutters = &state.work.shop.cutters;
    let ids: Vec<_> = cutters.items().iter().map(|cutter| cutter.id.0).collect();
    assert_eq!(ids, [1, 3, 4]);
    assert!(cutters.is_chosen(Id(4)));
    assert!(state.work.shop.saws.is_chosen(Id(2)));
    // The place at the saw is that joint's.
    assert!(state.at_saw.open);
    let at = state.progress();
    assert_eq!((at.set, at.step), (3, Step::Stop(2)));
    assert_eq!((at.plan, at.done.count()), (971_541_915, 0));
    assert_eq!(
        link::read(include_str!("tests/version-2.link")),
        Some(Ok(carried(state.clone())))
    );
    assert_eq!(saved::restore(&saved::save(state)), Ok(stored));
}

/// Whoever had left the saw, and had set nothing else there, is not told that something was lost.
#[test]
fn what_moved_elsewhere_leaves_nothing_behind() {
    for state in [
        json!({ "atSaw": { "set": 1, "step": "done" } }),
        json!({ "work": { "joint": { "job": "Chest" } } }),
    ] {
        let text = json!({ "version": 2, "state": state }).to_string();
        assert!(saved::restore(&text).unwrap().is_whole, "{state}");
    }
}
