use super::*;

const INDEX: &str = "<meta\n      name=\"description\"\n      content=\"Joints\"\n    />\n<div id=\"app\">Opening</div>";
const GLUE_TEXT: &str = "export function startPage() {}\nfunction __wbg_init() { new URL('x', import.meta.url); }\nexport { __wbg_init as default };\n";

fn files() -> Files {
    [
        (PAGE, INDEX),
        (styles::FIRST, "p{}"),
        (styles::LATER, "q{}"),
        (GLUE, GLUE_TEXT),
        (
            STOPPED,
            "export function sayStopped() {}\nexport function watchForTraps() {}\n",
        ),
        (SEARCH, "export function answer() {}\n"),
        (MODULE, "module"),
        (ICON, "<svg/>"),
    ]
    .map(|(name, text)| (name.to_owned(), text.as_bytes().to_vec()))
    .into()
}

fn made() -> String {
    let mut files = files();
    add(&mut files).unwrap();
    String::from_utf8(files.remove(SINGLE).unwrap()).unwrap()
}

#[test]
fn nothing_is_fetched_or_imported() {
    let page = made();
    for word in [
        "href=\"./",
        "src=\"",
        "\nimport ",
        "\nexport ",
        "import.meta",
        "__CHUNKS__",
    ] {
        assert!(!page.contains(word), "{word}");
    }
    assert!(page.contains("content=\"Joints\""));
    assert!(page.contains("<div id=\"app\">Opening</div>"));
}

/// The policy knows both texts by their hashes, which are of exactly what stands between the tags.
#[test]
fn the_policy_lets_in_what_is_there_and_no_more() {
    let page = made();
    for (tag, closing) in [
        ("<style>", "</style>"),
        ("<script type=\"module\">", "</script>"),
    ] {
        let (_, rest) = page.split_once(tag).unwrap();
        let (text, _) = rest.split_once(closing).unwrap();
        assert!(page.contains(&hash(text)), "{tag}");
    }
    assert!(!page.contains("unsafe-inline"));
}

#[test]
fn the_module_comes_back_from_its_letters() {
    let page = made();
    let (_, rest) = page.split_once("id=\"module\">").unwrap();
    let (letters, _) = rest.split_once('<').unwrap();
    let mut module = String::new();
    let bytes = STANDARD.decode(letters).unwrap();
    std::io::Read::read_to_string(&mut flate2::read::GzDecoder::new(&*bytes), &mut module).unwrap();
    assert_eq!(module, "module");
}

#[test]
fn the_same_files_make_the_same_file() {
    assert_eq!(made(), made());
}

#[test]
fn what_is_missing_is_named() {
    let mut files = files();
    files.remove(STOPPED);
    assert!(add(&mut files).unwrap_err().to_string().contains(STOPPED));
}
