//! What lies around the one that is open: the others of its kind, in order.

use std::rc::Rc;

use notchwright_core::plain::Plain;

use super::stored::{Stored, field};

/// Something of which one is open and the others rest.
pub trait AtRest: Clone + Default + PartialEq {
    /// More than anybody keeps of them, the open one included.
    const MOST: usize;
}

/// The others, before and after the open one. That there always is an open one is so by construction:
/// it lies elsewhere.
///
/// They are shared between the states that undo goes back to, of which there are many.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Around<T: AtRest> {
    before: Vec<Rc<T>>,
    after: Vec<Rc<T>>,
}

impl<T: AtRest> Around<T> {
    /// Those after the open one, when there are none before it.
    pub fn after(after: impl IntoIterator<Item = T>) -> Self {
        Self {
            before: Vec::new(),
            after: after.into_iter().map(Rc::new).collect(),
        }
    }

    /// How many there are, with the open one.
    #[must_use]
    pub fn count(&self) -> usize {
        self.before.len() + 1 + self.after.len()
    }

    /// Which one is open, from 0.
    #[must_use]
    pub fn place(&self) -> usize {
        self.before.len()
    }

    /// Whether there is room for another.
    #[must_use]
    pub fn has_room(&self) -> bool {
        self.has_room_for(1)
    }

    /// Whether there is room for so many others.
    #[must_use]
    pub fn has_room_for(&self, others: usize) -> bool {
        self.count() + others <= T::MOST
    }

    /// Those at rest, in order.
    pub fn iter(&self) -> impl Iterator<Item = &T> {
        self.before.iter().chain(&self.after).map(Rc::as_ref)
    }

    /// Those at rest, in order, to be changed.
    pub(crate) fn iter_mut(&mut self) -> impl Iterator<Item = &mut T> {
        let all = self.before.iter_mut().chain(&mut self.after);
        all.map(Rc::make_mut)
    }

    /// The one at rest at `place` of all; none where the open one is.
    #[must_use]
    pub fn get(&self, place: usize) -> Option<&T> {
        let after = place.checked_sub(self.before.len() + 1);
        let resting = match after {
            Some(after) => self.after.get(after),
            None => self.before.get(place),
        };
        resting.map(Rc::as_ref)
    }

    /// Makes the one at `place` the open one; `leaving` takes its own place among those at rest.
    pub(crate) fn exchange(&mut self, place: usize, leaving: T) -> Option<T> {
        let here = self.before.len();
        if place == here || place >= self.count() {
            return None;
        }
        let mut all = std::mem::take(&mut self.before);
        all.push(Rc::new(leaving));
        all.append(&mut self.after);
        self.after = all.split_off(place + 1);
        let taken = all.pop();
        self.before = all;
        taken.map(Rc::unwrap_or_clone)
    }

    /// Lays the open one to rest, for another that stands right after it.
    pub(crate) fn lay_before(&mut self, leaving: T) {
        self.before.push(Rc::new(leaving));
    }

    /// Takes out the one at `place`.
    pub(crate) fn remove(&mut self, place: usize) -> Option<T> {
        let removed = match place.checked_sub(self.before.len() + 1) {
            Some(after) if after < self.after.len() => self.after.remove(after),
            None if place < self.before.len() => self.before.remove(place),
            _ => return None,
        };
        Some(Rc::unwrap_or_clone(removed))
    }

    /// Takes out the one that follows the open one, or else the one before it.
    pub(crate) fn heir(&mut self) -> Option<T> {
        if self.after.is_empty() {
            return self.before.pop().map(Rc::unwrap_or_clone);
        }
        Some(Rc::unwrap_or_clone(self.after.remove(0)))
    }
}

const BEFORE: &str = "before";
const AFTER: &str = "after";

impl<T: AtRest + Stored> Stored for Around<T> {
    fn write(&self) -> Plain {
        let sides = [(BEFORE, &self.before), (AFTER, &self.after)];
        let filled = sides.into_iter().filter(|(_, side)| !side.is_empty());
        let written = filled.map(|(name, side)| {
            let items = side.iter().map(|item| item.write()).collect();
            (name.to_owned(), Plain::List(items))
        });
        Plain::Object(written.collect())
    }

    fn read(&mut self, plain: &Plain) -> bool {
        let Plain::Object(fields) = plain else {
            return false;
        };
        for name in [BEFORE, AFTER] {
            let Some(Plain::List(items)) = field(fields, name) else {
                continue;
            };
            for plain in items {
                let mut item = T::default();
                if self.has_room() && item.read(plain) {
                    let side = if name == BEFORE {
                        &mut self.before
                    } else {
                        &mut self.after
                    };
                    side.push(Rc::new(item));
                }
            }
        }
        true
    }

    fn is_usual(&self) -> bool {
        self.count() == 1
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::state::JointAtRest;

    fn named(name: u16) -> JointAtRest {
        let mut joint = JointAtRest::default();
        joint.joint.id = crate::state::Id(name);
        joint
    }

    fn names(around: &Around<JointAtRest>) -> Vec<u16> {
        around.iter().map(|joint| joint.joint.id.0).collect()
    }

    #[test]
    fn whichever_is_taken_up_the_order_stays() {
        for place in 0..4 {
            // 0 is open, 1 to 3 come after it.
            let mut around = Around::after([1, 2, 3].map(named));
            match around.exchange(place, named(0)) {
                None => assert_eq!(place, 0),
                Some(taken) => {
                    assert_eq!(usize::from(taken.joint.id.0), place);
                    assert_eq!(around.place(), place);
                    let rest: Vec<u16> =
                        (0..4).filter(|name| usize::from(*name) != place).collect();
                    assert_eq!(names(&around), rest);
                    assert!(around.get(place).is_none());
                }
            }
        }
        assert!(Around::after([named(1)]).exchange(9, named(0)).is_none());
    }

    #[test]
    fn what_is_taken_out_leaves_the_others() {
        let mut around = Around::after([1, 2, 3].map(named));
        let _ = around.exchange(2, named(0));
        assert_eq!(names(&around), [0, 1, 3]);
        assert!(around.remove(2).is_none());
        assert_eq!(around.remove(3).map(|joint| joint.joint.id.0), Some(3));
        assert_eq!(around.remove(0).map(|joint| joint.joint.id.0), Some(0));
        assert_eq!((names(&around), around.place()), (vec![1], 1));
        assert_eq!(around.heir().map(|joint| joint.joint.id.0), Some(1));
        assert!(around.heir().is_none());
    }
}
