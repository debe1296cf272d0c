//! What earlier versions wrote: the first, when sleds still stood with their saws, and the second, when there was one
//! joint.

use proptest::collection::vec;
use proptest::prelude::*;
use proptest::sample::select;
use serde_json::{Map, Value, json};

use super::whole;
use crate::keep::{Restored, Unreadable, saved};
use crate::model::Model;
use crate::msg::{Edit, Msg, Shelf};
use crate::state::{Entry, Id, State};
use crate::update::Found;

fn stored(state: &Value) -> String {
    json!({ "version": 1, "state": state }).to_string()
}

fn restored(state: &Value) -> Restored {
    saved::restore(&stored(state)).unwrap()
}

/// A shop of the first version with these saws.
fn saws(items: &Value, chosen: u16) -> Value {
    json!({ "work": { "shop": { "saws": { "items": items, "chosen": chosen } } } })
}

/// Every sled: its number, its base and its travel.
fn sleds(state: &State) -> Vec<(u16, &str, &str)> {
    let sleds = state.work.shop.sleds.items().iter();
    sleds
        .map(|sled| {
            (
                sled.id.0,
                sled.base.text.as_str(),
                sled.travel.text.as_str(),
            )
        })
        .collect()
}

fn chosen_sled(state: &State) -> Option<Id> {
    state.work.shop.sleds.chosen().map(|sled| sled.id)
}

#[test]
fn every_saw_that_had_one_gets_a_sled_of_its_number() {
    let items = json!([
        { "id": 1, "name": "Bench saw", "base": "15", "travel": "320" },
        { "id": 2, "name": "Small saw", "greatestHeight": "60" },
        { "id": 4, "name": "Other saw", "base": { "in": "1/2" } },
        { "id": 5, "travel": "300" },
    ]);
    let Restored {
        state, is_whole, ..
    } = restored(&saws(&items, 4));
    assert!(is_whole);
    assert_eq!(
        sleds(&state),
        [(1, "15", "320"), (4, "1/2", ""), (5, "", "300")]
    );
    assert_eq!(chosen_sled(&state), Some(Id(4)));
    let shop = &state.work.shop;
    assert_eq!(
        shop.sleds.get(Id(4)).unwrap().base,
        Entry::new("1/2", notchwright_core::units::Unit::Inch)
    );
    assert_eq!(shop.sleds.get(Id(1)).unwrap().name, Entry::mm("Sled"));
    let ids: Vec<_> = shop.saws.items().iter().map(|saw| saw.id.0).collect();
    assert_eq!(ids, [1, 2, 4, 5]);
    assert_eq!(shop.saws.chosen().map(|saw| saw.id), Some(Id(4)));
    assert_eq!(saved::restore(&saved::save(&state)).unwrap().state, state);
}

#[test]
fn saws_without_sleds_bring_none() {
    let items = json!([{ "id": 1, "name": "Bench saw", "greatestHeight": "80" }]);
    let Restored {
        state, is_whole, ..
    } = restored(&saws(&items, 1));
    assert!(is_whole);
    assert_eq!(sleds(&state), []);
    assert_eq!(state.work.shop.saws.items().len(), 1);
}

/// Another sled must not come into use unasked.
#[test]
fn a_sled_that_is_added_later_is_not_chosen_in_anothers_place() {
    let items =
        json!([{ "id": 1, "name": "Bench saw", "base": "15" }, { "id": 2, "name": "Bare" }]);
    let text = stored(&saws(&items, 2));
    let (mut model, _) = Model::start(Found {
        stored: Some(text),
        ..Found::default()
    });
    assert_eq!(model.notices, []);
    assert_eq!(chosen_sled(&model.state), Some(Id(1)));
    model.update(Msg::Edit(Edit::Add(Shelf::Sleds)));
    assert_eq!(sleds(&model.state).len(), 2);
    assert_eq!(chosen_sled(&model.state), Some(Id(1)));
}

#[test]
fn what_cannot_be_a_shop_is_noticed_and_does_no_harm() {
    let in_shop = |shop: Value| json!({ "work": { "shop": shop } });
    for state in [
        json!({ "work": 7 }),
        json!({ "work": [] }),
        in_shop(json!(7)),
        in_shop(json!(["saws"])),
        in_shop(json!({ "saws": 7 })),
        in_shop(json!({ "saws": [{ "id": 1, "base": "15" }] })),
        in_shop(json!({ "saws": { "items": { "id": 1, "base": "15" } } })),
        saws(&json!([7, "saw", null, [], true]), 1),
        saws(&json!([{ "id": 1, "base": 15, "travel": null }]), 1),
        saws(&json!([{ "id": 1, "base": { "in": 3 } }]), 1),
        saws(
            &json!([{ "id": 1, "base": "15" }, { "id": 1, "base": "18" }]),
            1,
        ),
        saws(&json!([{ "id": "one", "base": "15" }]), 1),
        saws(&json!([{ "id": 1, "base": "15", "width": "520" }]), 1),
        in_shop(json!({
            "saws": { "items": [{ "id": 1, "base": "15" }], "chosen": 1 },
            "sleds": { "items": [{ "id": 1, "base": "18" }], "chosen": 1 },
        })),
    ] {
        let Restored {
            state: read,
            is_whole,
            ..
        } = restored(&state);
        assert!(!is_whole, "{state}");
        // What was understood of it is kept for good.
        let again = saved::restore(&saved::save(&read)).unwrap();
        assert_eq!(again, whole(read), "{state}");
    }
    for state in [json!(7), json!([]), json!(null)] {
        assert_eq!(saved::restore(&stored(&state)), Err(Unreadable::Damaged));
    }
}

/// Whatever may stand where something else is expected.
fn anything() -> impl Strategy<Value = Value> {
    let leaf = prop_oneof![
        Just(Value::Null),
        any::<bool>().prop_map(Value::from),
        (0_u32..5).prop_map(Value::from),
        "[0-9]{0,3}".prop_map(Value::from),
    ];
    leaf.prop_recursive(3, 24, 4, |inside| {
        let name = select(&["id", "base", "travel", "name", "items", "chosen", "in"][..]);
        prop_oneof![
            vec(inside.clone(), 0..4).prop_map(Value::from),
            vec((name, inside), 0..4).prop_map(|fields| {
                let named = |(name, value): (&str, Value)| (name.to_owned(), value);
                Value::Object(fields.into_iter().map(named).collect::<Map<_, _>>())
            }),
        ]
    })
}

/// Every text in it, in no order.
fn texts(value: &Value) -> Vec<&str> {
    match value {
        Value::String(text) => vec![text],
        Value::Array(items) => items.iter().flat_map(texts).collect(),
        Value::Object(fields) => fields.values().flat_map(texts).collect(),
        _ => Vec::new(),
    }
}

/// A saw as the first version wrote it.
fn saw(id: u16) -> impl Strategy<Value = Value> {
    let name = select(&["name", "base", "travel", "greatestHeight"][..]);
    vec((name, "[0-9]{1,3}"), 0..4).prop_map(move |fields| {
        let mut saw = Map::from_iter([("id".to_owned(), id.into())]);
        saw.extend(
            fields
                .into_iter()
                .map(|(name, text)| (name.to_owned(), text.into())),
        );
        Value::Object(saw)
    })
}

proptest! {
    /// Whatever is called whole has lost not one text.
    #[test]
    fn what_is_called_whole_is_whole(list in anything(), at in 0..4) {
        let state = match at {
            0 => json!({ "work": { "shop": list } }),
            1 => json!({ "work": { "shop": { "saws": list } } }),
            2 => json!({ "work": { "shop": { "saws": { "items": list, "chosen": 1 } } } }),
            _ => json!({ "work": { "shop": { "saws": { "items": [list], "chosen": 1 } } } }),
        };
        let Restored { state: read, is_whole, .. } = restored(&state);
        if is_whole {
            let saved: Value = serde_json::from_str(&saved::save(&read)).unwrap();
            let mut kept = texts(&saved);
            for text in texts(&state) {
                let place = kept.iter().position(|other| *other == text);
                prop_assert!(place.is_some(), "{} lost {}", state, text);
                kept.remove(place.unwrap());
            }
        }
    }

    #[test]
    fn whatever_saws_there_were_come_back_whole(
        first in saw(1),
        second in saw(2),
        third in saw(7),
        chosen in select(&[1_u16, 2, 7][..]),
    ) {
        let items = json!([first, second, third]);
        let Restored { state, is_whole, .. } = restored(&saws(&items, chosen));
        prop_assert!(is_whole, "{}", items);
        prop_assert_eq!(state.work.shop.saws.items().len(), 3);
        prop_assert_eq!(state.work.shop.saws.chosen().map(|saw| saw.id), Some(Id(chosen)));
        let had = |saw: &&Value| saw.get("base").is_some() || saw.get("travel").is_some();
        let expected = items.as_array().unwrap().iter().filter(had).count();
        prop_assert_eq!(state.work.shop.sleds.items().len(), expected);
    }
}
