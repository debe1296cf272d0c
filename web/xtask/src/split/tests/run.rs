//! The parts run together as the whole does.

use wasmi::{Caller, Engine, Error, Instance, Linker, Module, Store};

use super::{LATER, WHOLE, changed, module, parts_of, read};

/// Modules that were started together, and what they told the browser's side.
pub(super) struct Running {
    engine: Engine,
    store: Store<Vec<i32>>,
    linker: Linker<Vec<i32>>,
    page: Instance,
    parts: Vec<(&'static str, Vec<u8>)>,
    /// Whether what several chunks need has come.
    has_common: bool,
}

impl Running {
    pub(super) fn start(bytes: &[u8]) -> Self {
        let engine = Engine::default();
        let mut store = Store::new(&engine, Vec::new());
        let mut linker = Linker::new(&engine);
        for (name, sign) in [("note", 1), ("warn", -1)] {
            let note = move |mut caller: Caller<'_, Vec<i32>>, what: i32| {
                caller.data_mut().push(sign * what);
            };
            linker.func_wrap("glue", name, note).unwrap();
        }
        let module = Module::new(&engine, bytes).unwrap();
        let page = linker.instantiate_and_start(&mut store, &module).unwrap();
        linker.instance(&mut store, "page", page).unwrap();
        Self {
            engine,
            store,
            linker,
            page,
            parts: Vec::new(),
            has_common: false,
        }
    }

    /// All in one, as in the single file.
    fn whole() -> Self {
        Self::start(&module(WHOLE))
    }

    /// What the page fetches first.
    fn page() -> Self {
        Self::page_of(WHOLE)
    }

    fn page_of(text: &str) -> Self {
        Self::of_parts(&parts_of(text))
    }

    pub(super) fn of_parts(parts: &[(&'static str, Vec<u8>)]) -> Self {
        Self {
            parts: parts.to_vec(),
            ..Self::start(&parts[0].1)
        }
    }

    pub(super) fn fetch(&mut self, chunk: &str) {
        if !std::mem::replace(&mut self.has_common, true) {
            let common = self.instance("common");
            self.linker
                .instance(&mut self.store, "common", common)
                .unwrap();
        }
        self.instance(chunk);
    }

    fn instance(&mut self, part: &str) -> Instance {
        let (_, bytes) = self.parts.iter().find(|it| it.0 == part).unwrap();
        let module = Module::new(&self.engine, bytes).unwrap();
        let started = self.linker.instantiate_and_start(&mut self.store, &module);
        started.unwrap()
    }

    fn start_page(&mut self) {
        let start = self.page.get_typed_func::<(), ()>(&self.store, "startPage");
        start.unwrap().call(&mut self.store, ()).unwrap();
    }

    pub(super) fn call(&mut self, name: &str, given: i32) -> Result<i32, Error> {
        let function = self.page.get_typed_func::<i32, i32>(&self.store, name)?;
        function.call(&mut self.store, given)
    }

    fn call_slot(&mut self, slot: i32, given: i32) -> Result<i32, Error> {
        let call = self
            .page
            .get_typed_func::<(i32, i32), i32>(&self.store, "page__call")?;
        call.call(&mut self.store, (slot, given))
    }

    fn stack(&mut self) -> i32 {
        let stack = self
            .page
            .get_typed_func::<(), i32>(&self.store, "page__stack");
        stack.unwrap().call(&mut self.store, ()).unwrap()
    }

    /// The four bytes at this place of the memory.
    fn stored(&self, at: usize) -> i32 {
        let memory = self.page.get_memory(&self.store, "memory").unwrap();
        let mut bytes = [0; 4];
        memory.read(&self.store, at, &mut bytes).unwrap();
        i32::from_le_bytes(bytes)
    }
}

#[test]
fn the_page_works_before_anything_else_has_come() {
    let mut page = Running::page();
    page.start_page();
    assert_eq!(page.store.data(), &[1]);
    // Derived from the module's text: 3 + 7, and 3 · 10.
    assert_eq!(page.call("page__own", 3).unwrap(), 10);
    assert_eq!(page.call_slot(1, 3).unwrap(), 30);
    assert_eq!(page.stack(), 1000);
}

#[test]
fn a_gate_is_shut_until_its_chunk_has_come() {
    let mut page = Running::page();
    for name in ["page__open", "page__open_other"] {
        let shut = page.call(name, 3).unwrap_err().to_string();
        assert!(shut.contains("uninitialized"), "{name}: {shut}");
    }
    assert!(page.call_slot(2, 3).is_err());
    // Derived from the module's text: the page has this closure too, so it never waits.
    assert_eq!(page.call_slot(3, 3).unwrap(), -3);
    page.fetch("other");
    assert!(page.call("page__open", 3).is_err());
    assert_eq!(page.call("page__open_other", 3).unwrap(), 23);
}

#[test]
fn the_parts_together_do_what_the_whole_does() {
    let mut whole = Running::whole();
    for order in [["later", "other"], ["other", "later"]] {
        let mut page = Running::page();
        order.iter().for_each(|chunk| page.fetch(chunk));
        for given in [0, 3, -12] {
            for name in ["page__open", "page__open_other", "page__own"] {
                let expected = whole.call(name, given).unwrap();
                assert_eq!(page.call(name, given).unwrap(), expected, "{name}");
            }
            for slot in 1..4 {
                let expected = whole.call_slot(slot, given).unwrap();
                assert_eq!(page.call_slot(slot, given).unwrap(), expected, "{slot}");
            }
        }
    }
}

#[test]
fn memory_globals_and_what_the_browser_gives_are_shared() {
    let mut page = Running::page();
    page.fetch("later");
    // Derived from the module's text: (3 + 7) + 3 · 17 + (3 + 19) + (3 + 2000).
    assert_eq!(page.call("page__open", 3).unwrap(), 2086);
    assert_eq!(page.stored(32), 3);
    assert_eq!(page.stack(), 984);
    assert_eq!(page.store.data(), &[-3]);
    page.call("page__open", 4).unwrap();
    assert_eq!((page.stored(32), page.stack()), (4, 968));
}

#[test]
fn what_was_in_memory_stays_when_a_chunk_comes() {
    let mut page = Running::page();
    let memory = page.page.get_memory(&page.store, "memory").unwrap();
    memory.write(&mut page.store, 8, &[9, 0, 0, 0]).unwrap();
    page.fetch("later");
    assert_eq!(page.stored(8), 9);
    assert_eq!(page.call("page__own", 3).unwrap(), 12);
}

#[test]
fn data_come_with_whoever_needs_them() {
    let mut page = Running::page();
    let held = |page: &Running| [8, 12, 16, 20, 24].map(|at| page.stored(at));
    assert_eq!(held(&page), [7, 5, 0, 0, 0]);
    page.fetch("other");
    assert_eq!(held(&page), [7, 5, 0, 19, 0]);
    page.fetch("later");
    assert_eq!(held(&page), [7, 5, 17, 19, 2]);
    assert_eq!(held(&page), held(&Running::whole()));
}

/// What `app::other::view` calls in place of what it calls in the text.
fn with_other_calling(call: &str) -> String {
    changed(
        "(call $\"lib::both\" (i32.add (local.get 0) (i32.const 1)))",
        call,
    )
}

/// It need not wait for the other.
#[test]
fn what_one_chunk_calls_in_another_both_share() {
    let text = with_other_calling("(call $\"core::ops::FnOnce::call_once\" (local.get 0))");
    let mut whole = Running::start(&module(&text));
    for order in [&["other"][..], &["later", "other"]] {
        let mut page = Running::page_of(&text);
        order.iter().for_each(|chunk| page.fetch(chunk));
        let expected = whole.call("page__open_other", 3).unwrap();
        // Derived from the module's text.
        assert_eq!(expected, 2003);
        assert_eq!(page.call("page__open_other", 3).unwrap(), expected);
    }
}

/// A gate is only in its own chunk, and is waited for by whoever calls it.
#[test]
fn a_chunk_calls_anothers_gate_through_the_table() {
    let text = with_other_calling(&format!("(call ${LATER:?} (local.get 0))"));
    let mut whole = Running::start(&module(&text));
    let mut page = Running::page_of(&text);
    page.fetch("other");
    let shut = page.call("page__open_other", 3).unwrap_err().to_string();
    assert!(shut.contains("uninitialized"), "{shut}");
    for order in [["later", "other"], ["other", "later"]] {
        let mut page = Running::page_of(&text);
        order.iter().for_each(|chunk| page.fetch(chunk));
        for given in [0, 3, -12] {
            for name in ["page__open", "page__open_other"] {
                let expected = whole.call(name, given).unwrap();
                assert_eq!(page.call(name, given).unwrap(), expected, "{name}");
            }
        }
        // The gate worked on the page's memory and stack, whoever called it.
        assert_eq!(page.stored(32), -12);
        assert_eq!(page.stack(), 1000 - 6 * 16);
    }
    // Derived from the module's text: its own view, and the call through the table in the gate's place.
    let (_, other) = page.parts.iter().find(|part| part.0 == "other").unwrap();
    assert_eq!(read(other).funcs.iter_local().count(), 2);
}

/// Where the page calls it too, both go through the same slot.
#[test]
fn a_gate_has_one_slot_whoever_calls_it() {
    let text = with_other_calling(&format!(
        "(i32.add (call ${LATER:?} (local.get 0)) (call $\"app::page::open\" (local.get 0)))"
    ));
    let mut whole = Running::start(&module(&text));
    let mut page = Running::page_of(&text);
    // Two gates beside the five slots there were.
    let table = page.page.get_table(&page.store, "table").unwrap();
    assert_eq!(table.size(&page.store), 7);
    page.fetch("later");
    page.fetch("other");
    let expected = whole.call("page__open_other", 5).unwrap();
    assert_eq!(page.call("page__open_other", 5).unwrap(), expected);
}
