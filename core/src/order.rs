//! Few things put in order.

use core::cmp::Ordering;

/// Things in order, by insertion; of equals the one that came first stays first.
///
/// For a few hundred at most. The standard sort is quick for millions and brings some kilobytes for every
/// kind of thing it sorts, which a phone would have to fetch.
pub fn in_order<T>(
    things: impl IntoIterator<Item = T>,
    compare: impl Fn(&T, &T) -> Ordering,
) -> Vec<T> {
    let mut ordered = Vec::new();
    for thing in things {
        let place = ordered.partition_point(|other| compare(other, &thing).is_le());
        ordered.insert(place, thing);
    }
    ordered
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::in_order;

    proptest! {
        /// The standard library's stable sort is the reference.
        #[test]
        fn orders_as_the_standard_sort_does(things in prop::collection::vec((0..20_u8, any::<u8>()), 0..200)) {
            let mut sorted = things.clone();
            sorted.sort_by_key(|thing| thing.0);
            prop_assert_eq!(in_order(things, |x, y| x.0.cmp(&y.0)), sorted);
        }
    }
}
