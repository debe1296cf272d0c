//! Numbers that look like chance and are the same every time.

/// The `SplitMix64` generator (Steele, Lea and Flood, "Fast splittable pseudorandom number generators", OOPSLA 2014).
#[derive(Clone, Copy, Debug)]
pub(super) struct Chance(u64);

impl Chance {
    /// The numbers of one round, whatever rounds came before.
    pub(super) fn of_round(round: u32) -> Self {
        Self(u64::from(round).wrapping_mul(0xd134_2543_de82_ef95))
    }

    pub(super) fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut mixed = self.0;
        mixed = (mixed ^ (mixed >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        mixed ^ (mixed >> 31)
    }

    /// A whole number below `end`, or 0 where there is none.
    pub(super) fn below(&mut self, end: usize) -> usize {
        let drawn = (self.next() >> 32) as usize;
        drawn.checked_rem(end).unwrap_or(0)
    }

    /// The same as a signed number.
    pub(super) fn up_to(&mut self, most: i64) -> i64 {
        self.below(most.unsigned_abs() as usize + 1) as i64
    }

    /// Whether a thing that happens so many times in a hundred happens now.
    pub(super) fn percent(&mut self, percent: usize) -> bool {
        self.below(100) < percent
    }

    /// One of a few.
    pub(super) fn pick<T: Copy>(&mut self, things: &[T]) -> Option<T> {
        things.get(self.below(things.len())).copied()
    }
}
