//! The place of the jobs: joints, pieces, how far each has come, and how a job is carried.

use notchwright_core::stop::Board;
use qrcodegen::{QrCode, QrCodeEcc};

use super::{assert_all, attributes, escaped, inside, page, started, typed};
use crate::keep::link;
use crate::model::{Can, Chunk, Model, Parts};
use crate::msg::{Edit, Leaf, Msg, SawMove};
use crate::state::{Field, JointField, JointKind, PiecesField, Place, Step};

fn open(then: impl IntoIterator<Item = Msg>) -> Model {
    started([Msg::Go(Place::Jobs)].into_iter().chain(then))
}

/// The list of this name, item by item.
fn rows<'a>(page: &'a str, name: &str) -> Vec<&'a str> {
    let (_, rest) = page
        .split_once(&format!("<ul aria-label=\"{name}\">"))
        .unwrap();
    let (list, _) = rest.split_once("</ul>").unwrap();
    list.split("<li").skip(1).collect()
}

fn joints(page: &str) -> Vec<&str> {
    rows(page, "Joints of this job")
}

#[test]
fn joints_are_listed_with_their_boards_and_how_far_they_have_come() {
    let mut model = open([]);
    let shown = page(&model);
    let [front, back] = joints(&shown)[..] else {
        panic!("{shown}")
    };
    assert_all(
        front,
        &[
            "Drawers, side to front",
            "Box joint · 140 mm wide, 12 mm to 18 mm",
            "Not begun: 32 ends to cut.",
            "class=\"is-open\">Open<",
        ],
    );
    assert_all(
        back,
        &[
            "Drawers, side to back",
            "12 mm to 12 mm",
            "Not begun.",
            ">Open<span",
        ],
    );
    assert!(!front.contains(">Open<span") && !back.contains("is-open"));

    let end = model.answer.pieces.ends(Board::A).next().unwrap();
    for movement in [SawMove::Open, SawMove::Mark(end, true), SawMove::Leave] {
        model.update(Msg::Saw(movement));
    }
    let shown = page(&model);
    assert_all(
        joints(&shown)[0],
        &["1 of 32 ends cut.", "<progress max=\"32\"", "value=\"1\""],
    );
    // One that is not open is as it was last at the saw.
    model.update(Msg::Edit(Edit::JointOf(Leaf::Open(1))));
    let shown = page(&model);
    assert_all(joints(&shown)[0], &["1 of 32 ends cut.", ">Open<span"]);
    assert_all(
        joints(&shown)[1],
        &["is-open", "Not begun: 32 ends to cut."],
    );
}

#[test]
fn a_joint_that_is_all_cut_says_so() {
    let mut model = open([]);
    model.update(Msg::Saw(SawMove::Open));
    for (set, board) in [(0, Board::A), (1, Board::B)] {
        model.update(Msg::Saw(SawMove::Jump(set, Step::SetUp)));
        for end in model.answer.pieces.ends(board).collect::<Vec<_>>() {
            model.update(Msg::Saw(SawMove::Mark(end, true)));
        }
    }
    model.update(Msg::Saw(SawMove::Leave));
    assert_all(joints(&page(&model))[0], &["All 32 ends are cut."]);
    // Fewer drawers: what was cut of the others counts no more.
    model.update(typed(Field::Pieces(PiecesField::Count), "5"));
    assert_all(joints(&page(&model))[0], &["All 20 ends are cut."]);
}

/// Drawers 5 to 8 were cut, and then there are only four: none of them is cut.
#[test]
fn ends_that_are_not_there_any_more_do_not_count() {
    let mut model = open([]);
    model.update(Msg::Saw(SawMove::Open));
    for (set, board) in [(0, Board::A), (1, Board::B)] {
        model.update(Msg::Saw(SawMove::Jump(set, Step::SetUp)));
        for end in model.answer.pieces.ends(board).skip(8).collect::<Vec<_>>() {
            model.update(Msg::Saw(SawMove::Mark(end, true)));
        }
    }
    model.update(Msg::Saw(SawMove::Leave));
    assert_all(joints(&page(&model))[0], &["16 of 32 ends cut."]);
    model.update(typed(Field::Pieces(PiecesField::Count), "4"));
    let shown = page(&model);
    assert_all(joints(&shown)[0], &["value=\"0\""]);
    assert!(!shown.contains("All 16 ends are cut."));
}

#[test]
fn jobs_are_listed_with_the_number_of_their_joints() {
    let model = open([
        Msg::Edit(Edit::Job(Leaf::Add)),
        typed(Field::Job, "Bench"),
        Msg::Edit(Edit::Job(Leaf::Add)),
    ]);
    let shown = page(&model);
    let [chest, bench, nameless] = rows(&shown, "Jobs")[..] else {
        panic!("{shown}")
    };
    assert_all(chest, &["<b>Chart chest</b>", "2 joints", ">Open<span"]);
    assert_all(bench, &["<b>Bench</b>", "1 joint<"]);
    assert_all(
        nameless,
        &["<b>A job without a name</b>", "1 joint<", "is-open"],
    );
    assert_eq!(joints(&shown).len(), 1);
}

/// Text from links and files is data, wherever it stands.
#[test]
fn names_are_text_and_never_markup() {
    let bad = "<img src=x onerror=\"alert(1)\">&amp;";
    let model = open([
        typed(Field::Job, bad),
        typed(Field::Joint(JointField::Name), bad),
        typed(Field::Pieces(PiecesField::What), bad),
        typed(Field::Pieces(PiecesField::NamesA), bad),
        Msg::Edit(Edit::JointOf(Leaf::Remove(1))),
        Msg::Edit(Edit::Job(Leaf::Add)),
    ]);
    let mut at_saw = model.clone();
    at_saw.update(Msg::Edit(Edit::Job(Leaf::Open(0))));
    at_saw.update(Msg::Saw(SawMove::Open));
    let mut seen = 0;
    for movement in [
        None,
        Some(SawMove::Next),
        Some(SawMove::Next),
        Some(SawMove::Pause(true)),
    ] {
        if let Some(movement) = movement {
            at_saw.update(Msg::Saw(movement));
        }
        let shown = page(&at_saw);
        assert!(!shown.contains("<img"), "{shown}");
        seen += shown.matches("&lt;img").count();
    }
    assert!(seen > 3);
    let shown = page(&model);
    assert!(!shown.contains("<img"), "{shown}");
    assert_all(&shown, &[&format!("<b>{}</b>", escaped(bad))]);
}

#[test]
fn pieces_are_asked_for_by_the_names_of_the_boards() {
    let model = open([]);
    let shown = page(&model);
    assert_all(
        &shown,
        &[
            "16 ends of one board and 16 ends of the other.",
            "cut as board A",
        ],
    );
    assert!(attributes(&shown, "pieces-names-a").contains("left side; right side"));

    let wrong = page(&open([typed(Field::Pieces(PiecesField::Count), "2.5")]));
    assert!(inside(&wrong, "pieces-count-problem", "p").contains("a whole number from 1 to 200"));

    let dovetail = [
        Msg::Edit(Edit::Joint(JointKind::Dovetail)),
        Msg::Came(Chunk::Dovetail),
    ];
    assert_all(
        &page(&open(dovetail)),
        &["cut as tail board", "cut as pin board"],
    );
    let sliding = [
        Msg::Edit(Edit::Joint(JointKind::Sliding)),
        Msg::Came(Chunk::Dovetail),
    ];
    assert!(!page(&open(sliding)).contains("id=\"pieces\""));
}

#[test]
fn the_link_is_there_as_a_code() {
    let mut model = open([]);
    model.home = "https://example.org/".into();
    let shown = page(&model);
    let (svg, code) = shown.split_once("class=\"qr\"").unwrap();
    let (_, svg) = svg.rsplit_once('<').unwrap();
    let (code, _) = code.split_once("</svg>").unwrap();
    assert_all(
        svg,
        &["aria-label=\"The link as a QR code\"", "role=\"img\""],
    );
    let address = format!("{}{}", model.home, link::write_lean(&model.state));
    let expected = QrCode::encode_text(&address, QrCodeEcc::Low).unwrap();
    // Four light modules on each side (ISO/IEC 18004).
    let side = expected.size() + 8;
    assert_all(svg, &[&format!("viewBox=\"0 0 {side} {side}\"")]);
    // As many dark ones as the code has, run by run.
    let (_, path) = code.split_once("<path d=\"").unwrap();
    let lines = path.split_once('"').unwrap().0.split('h');
    let runs = lines.filter_map(|line| line.split_once('v'));
    let runs = runs.map(|(run, _)| run.parse::<usize>().unwrap());
    let all = (0..expected.size()).flat_map(|y| (0..expected.size()).map(move |x| (x, y)));
    let dark = all.filter(|(x, y)| expected.get_module(*x, *y)).count();
    assert_eq!(runs.sum::<usize>(), dark);
    assert!(!shown.contains("more than some programs pass on"));
    // An address that only this device could open is of no use elsewhere.
    model.home = "file:///home/page.html".into();
    assert!(!page(&model).contains("class=\"qr\""));
}

#[test]
fn a_link_that_is_too_long_says_so() {
    let name = |number: u64| {
        let words: Vec<_> = (1..18)
            .map(|n| format!("{:x}", (number + 3).pow(5) * n * 7_919))
            .collect();
        typed(Field::Joint(JointField::Name), &words.join(" "))
    };
    let many = (0..22).flat_map(|number| [Msg::Edit(Edit::JointOf(Leaf::Add)), name(number)]);
    let model = open(many);
    let length = link::write(&model.state).len();
    assert!(length > 2953, "{length}");
    let shown = page(&model);
    assert_all(
        &shown,
        &[
            &format!("This job&#x27;s link has {length} characters").replace("&#x27;", "'"),
            "The link is too long for a code.",
        ],
    );
    assert!(!shown.contains("class=\"qr\""));
}

/// The link is the whole address: it is too long even where what the page wrote of it is not.
#[test]
fn the_address_of_the_page_counts_too() {
    let mut model = open([]);
    let words = "more than some programs pass on whole";
    model.home = "https://example.org/joinery/".to_owned();
    assert!(!page(&model).contains(words));
    let fragment = link::write(&model.state).len();
    model.home = format!(
        "https://example.org/{}",
        "x".repeat(link::USUAL_LONGEST - fragment)
    );
    let length = model.home.len() + fragment;
    assert_all(
        &page(&model),
        &[&format!("link has {length} characters, {words}")],
    );
}

#[test]
fn whoever_keeps_work_is_told_how_it_is_lost_and_what_protects_it() {
    let shown = page(&open([]));
    let kept = [
        "A phone may wipe what a page has stored after a week without a visit.",
        "this page on the home screen, a bookmark of the job, or a file.",
        "Save everything as a file",
        "Ask the browser to keep it",
        "href=\"./notchwright.html\" download=\"notchwright.html\"",
    ];
    assert_all(&shown, &kept);
}

#[test]
fn only_what_the_browser_can_do_is_offered() {
    for share in [false, true] {
        let can = Can {
            share,
            ..Can::default()
        };
        assert_eq!(
            page(&open([Msg::Can(can)])).contains(">Share it</button>"),
            share
        );
    }
}

#[test]
fn a_place_that_has_not_come_says_so() {
    let mut model = open([]);
    model.parts = Parts::default();
    assert_all(&page(&model), &["One moment…"]);
    model.update(Msg::DidNotCome(Chunk::Jobs));
    assert_all(&page(&model), &[">Try again</button>"]);
}
