//! The views as text: what must be there for everybody to read, whatever is in the model.

mod jobs;
mod making;
mod saw;
mod slanted;
mod sled;

use std::rc::Rc;

use futures::executor::block_on;
use notchwright_core::drawing::Role;
use notchwright_core::problem::Severity;
use notchwright_core::units::Unit;
use proptest::collection::vec;
use proptest::prelude::*;
use yew::{Callback, Html, LocalServerRenderer, Properties, component};

use super::show;
use crate::model::{Chunk, Model};
use crate::msg::{Edit, Msg, SawMove, Shelf};
use crate::state::{CutterField, Field, Id, JointField, Kind, Place, State, Step, ZeroKind};
use crate::testing::{msg, opened_with, single};

#[derive(PartialEq, Properties)]
struct PageProps {
    model: Rc<Model>,
}

#[component]
fn Page(props: &PageProps) -> Html {
    super::view(&props.model, &Callback::noop())
}

/// The page as it would be sent.
fn page(model: &Model) -> String {
    let model = Rc::new(model.clone());
    block_on(
        LocalServerRenderer::<Page>::with_props(PageProps { model })
            .hydratable(false)
            .render(),
    )
}

fn started(messages: impl IntoIterator<Item = Msg>) -> Model {
    after(&State::demo(), messages)
}

/// One joint, cut on one end of one board each.
fn alone(messages: impl IntoIterator<Item = Msg>) -> Model {
    after(&single(), messages)
}

fn after(state: &State, messages: impl IntoIterator<Item = Msg>) -> Model {
    let (mut model, _) = opened_with(state);
    model.update(Msg::Came(Chunk::Shop));
    for message in messages {
        model.update(message);
    }
    model
}

fn typed(field: Field, text: &str) -> Msg {
    Msg::Edit(Edit::Type(field, text.into()))
}

/// What stands between the tags of the one element with this id.
fn inside<'a>(page: &'a str, id: &str, tag: &str) -> &'a str {
    let named = format!("id=\"{id}\"");
    let mut parts = page.split(&named);
    let element = parts
        .nth(1)
        .unwrap_or_else(|| panic!("nothing is called {id}"));
    assert_eq!(parts.next(), None, "{id} is there twice");
    let (_, content) = element.split_once('>').unwrap();
    content.split_once(&format!("</{tag}>")).unwrap().0
}

/// The attributes of the element with this id.
fn attributes<'a>(page: &'a str, id: &str) -> &'a str {
    let place = page.find(&format!("id=\"{id}\"")).unwrap();
    let (before, after) = page.split_at(place);
    &page[before.rfind('<').unwrap()..place + after.find('>').unwrap()]
}

#[track_caller]
fn assert_all(text: &str, words: &[&str]) {
    for words in words {
        assert!(text.contains(words), "no «{words}» in {text}");
    }
}

/// As text is written in a page.
fn escaped(text: &str) -> String {
    text.replace('&', "&amp;")
        .replace('<', "&lt;")
        .replace('>', "&gt;")
}

fn every_number() -> Vec<Field> {
    let joint = JointField::ALL.iter().map(|field| Field::Joint(*field));
    joint.filter(|field| field.kind() != Kind::Name).collect()
}

fn assert_said_beside(model: &Model, is_there: impl Fn(Field) -> bool) {
    let page = page(model);
    let mut seen = 0;
    for problem in &model.answer.problems {
        let Some(field) = problem.field.filter(|field| is_there(*field)) else {
            continue;
        };
        let id = field.id();
        let said = show::message(&problem.message, model.state.units);
        let beside = inside(&page, &format!("{id}-problem"), "p");
        assert!(
            beside.contains(&escaped(&said)),
            "{beside} does not say: {said}"
        );
        let input = attributes(&page, &id);
        assert!(input.contains("aria-invalid=\"true\""), "{input}");
        assert!(input.contains(&format!("{id}-problem")), "{input}");
        seen += 1;
    }
    assert!(seen > 0);
}

/// «8 in mm» would be read as either.
#[test]
fn a_field_that_names_its_unit_is_followed_by_no_other() {
    let width = Field::Joint(JointField::Width);
    for (text, unit) in [
        ("200", Some("mm")),
        ("8 ½", Some("mm")),
        ("8 in", None),
        ("8\"", None),
        ("20cm", None),
    ] {
        let page = page(&started([typed(width, text)]));
        let (_, after) = page.split_once("id=\"joint-width\"").unwrap();
        let (field, _) = after.split_once("</label>").unwrap();
        let shown = field
            .split_once("class=\"unit\">")
            .map(|(_, unit)| &unit[..2]);
        assert_eq!(shown, unit, "{text}");
    }
}

/// «217.3 mm in» would be read as either: what names its unit is followed by no other, wherever it is told.
#[test]
fn a_length_that_names_its_unit_is_told_with_that_alone() {
    let cutter = State::demo().work.shop.cutters.items()[0].id;
    let kerf = Field::Cutter(cutter, CutterField::Kerf);
    let mut model = alone([
        typed(Field::Joint(JointField::Width), "217.3 mm"),
        typed(Field::Joint(JointField::ThicknessA), "7/16\""),
        typed(Field::Joint(JointField::ThicknessB), "1.16cm"),
        typed(kerf, "3.07 mm"),
        Msg::Edit(Edit::Zero(ZeroKind::TestKerf)),
        typed(Field::Joint(JointField::ZeroReading), "8mm"),
        typed(Field::Joint(JointField::ZeroMeasured), "5"),
    ]);
    assert!(model.answer.current().is_some());
    let to_saw = Msg::Saw(SawMove::Open);
    for (go, says) in [
        (Msg::Go(Place::Jobs), "217.3 mm wide, 7/16\" to 1.16cm<"),
        (Msg::Go(Place::Joint), "cuts 3.07 mm<"),
        (
            Msg::Paper(true),
            "Boards 217.3 mm wide, A 7/16\" thick, B 1.16cm thick.",
        ),
        (Msg::Paper(false), "cuts 3.07 mm<"),
        (to_saw, "made at 8mm, it lies 5 mm from"),
        (
            Msg::Saw(SawMove::Jump(1, Step::SetUp)),
            "Board B, 1.16cm thick",
        ),
    ] {
        model.update(go);
        assert_all(&page(&model), &[says]);
    }
    // Without a unit of its own it has the page's; converted, that one's.
    model.update(Msg::Units(Unit::Inch));
    model.update(typed(Field::Joint(JointField::ThicknessB), "1/2"));
    assert_all(&page(&model), &["Board B, 1/2 in thick"]);
    model.update(Msg::Units(Unit::Mm));
    assert_all(&page(&model), &["Board B, 12.7 mm thick"]);
}

#[test]
fn what_is_wrong_is_said_beside_its_field() {
    let wrong = every_number()
        .into_iter()
        .map(|field| typed(field, "twelve <b>"));
    let open = [
        Msg::Edit(Edit::Groove(true)),
        Msg::Edit(Edit::Zero(ZeroKind::TestKerf)),
    ];
    let mut model = started(open.into_iter().chain(wrong));
    assert_said_beside(&model, |field| matches!(field, Field::Joint(_)));
    let page_in_joint = page(&model);
    assert!(page_in_joint.contains("twelve &lt;b&gt;"));

    let in_shop = |field: Field| !matches!(field, Field::Joint(_));
    let kerf = Field::Cutter(Id(1), crate::state::CutterField::Kerf);
    model.update(typed(kerf, "-1"));
    model.update(typed(Field::Slot(crate::state::SlotField::Kerfs), "0"));
    model.update(Msg::Go(Place::Shop));
    assert_said_beside(&model, in_shop);
}

#[test]
fn a_problem_in_the_shop_is_told_at_the_joint() {
    let kerf = Field::Cutter(Id(1), crate::state::CutterField::Kerf);
    let model = started([typed(kerf, "-1")]);
    let said = model.answer.problems_of(kerf).next().unwrap();
    let page = page(&model);
    assert!(page.contains(&escaped(&show::message(said, model.state.units))));
    assert!(page.contains("Mend it in the shop"));
}

const STALE: &str = "From the last good numbers.";

#[test]
fn an_old_answer_is_labelled_and_cannot_be_cut() {
    let good = started([]);
    assert!(!page(&good).contains(STALE));
    assert!(page(&good).contains("At the saw"));

    let stale = started([typed(Field::Joint(JointField::Width), "")]);
    let page = page(&stale);
    assert!(page.contains(STALE));
    assert!(page.contains("class=\"plan stale\""));
    assert!(!page.contains("At the saw"));
}

#[test]
fn the_saw_shows_the_setting_and_says_it() {
    let mut model = started([
        Msg::Saw(SawMove::Open),
        Msg::Saw(SawMove::Jump(0, Step::Stop(6))),
    ]);
    let set = &model.answer.current().unwrap().plan.sets[0];
    let stop = set.stops[6];
    let (turns, division) = (stop.dial.turns, show::number(stop.dial.division));
    let shown = page(&model);
    assert!(shown.contains(&format!("<strong>{turns}</strong>")));
    assert!(shown.contains(&format!("<strong>{division}</strong>")));
    assert!(shown.contains(&format!("pass 7 of 24. Dial: {turns} turns {division}.")));

    model.update(Msg::Saw(SawMove::Next));
    assert!(page(&model).contains("pass 8 of 24. Dial:"));
}

#[test]
fn every_caution_stands_before_the_first_pass() {
    let model = started([Msg::Saw(SawMove::Open)]);
    let page = page(&model);
    let (before, _) = page.split_once("All is set").unwrap();
    let notes = &model.answer.current().unwrap().notes;
    let cautions: Vec<_> = notes
        .iter()
        .filter(|note| note.severity == Severity::Caution)
        .collect();
    assert!(cautions.len() > 3);
    for caution in cautions {
        let said = show::message(&caution.message, model.state.units);
        assert!(before.contains(&escaped(&said)), "{said}");
    }
}

#[test]
fn every_set_is_followed_to_the_end() {
    let mut model = alone([Msg::Saw(SawMove::Open)]);
    let plan = model.answer.current().unwrap().plan.clone();
    for set in &plan.sets {
        let name = set.name.replace("Board", "board");
        assert!(page(&model).contains(&format!("Set up for {name}</h1>")));
        for _ in 0..=set.stops.len() {
            model.update(Msg::Saw(SawMove::Next));
        }
    }
    assert!(page(&model).contains("Both boards are cut</h1>"));
}

#[test]
fn a_long_table_is_cut_off_but_on_paper() {
    let count = |text| typed(Field::Joint(JointField::Count), text);
    assert!(
        !page(&started([
            count("3"),
            typed(Field::Joint(JointField::Width), "30")
        ]))
        .contains("Show all")
    );
    let mut model = started([count("43")]);
    let stops = model.answer.current().unwrap().plan.sets[1].stops.len();
    assert!(page(&model).contains(&format!("Show all {stops} stops")));
    assert!(page(&model).matches("<td").count() < 4 * rows(&model));
    model.update(Msg::Paper(true));
    assert!(!page(&model).contains("Show all"));
    assert_eq!(page(&model).matches("<td").count(), 4 * rows(&model));
}

fn rows(model: &Model) -> usize {
    model
        .answer
        .current()
        .unwrap()
        .plan
        .sets
        .iter()
        .map(|set| set.stops.len())
        .sum()
}

#[test]
fn a_removal_offers_its_undo() {
    let model = started([
        Msg::Go(Place::Shop),
        Msg::Edit(Edit::Remove(Shelf::Cutters, Id(2))),
    ]);
    let page = page(&model);
    let (_, notice) = page.split_once("Grooving stack was removed.").unwrap();
    assert!(notice.contains(">Undo</button>"));
}

#[test]
fn every_role_of_a_drawing_is_dressed() {
    let style = concat!(
        include_str!("../../../www/css/drawing.css"),
        include_str!("../../../www/css/sled.css")
    );
    for role in Role::ALL {
        let name = role.name();
        let dressed = style.lines().any(|line| {
            line.split([' ', ',', '{'])
                .any(|word| word.split('.').any(|class| class == name))
        });
        assert!(dressed, "{name}");
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    fn there_is_one_heading_of_the_page_whatever_happened(messages in vec(msg(), 0..12)) {
        let page = page(&started(messages));
        prop_assert_eq!(page.matches("<h1").count(), 1);
        prop_assert_eq!(page.matches("<main").count(), 1);
    }
}
