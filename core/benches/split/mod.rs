//! Packings without waste: a sheet that is parted again and again, so that the best layout is known.

/// The `SplitMix64` generator.
struct Chance(u64);

impl Chance {
    /// From 0 to 1.
    fn share(&mut self) -> f64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut mixed = self.0;
        mixed = (mixed ^ (mixed >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        ((mixed ^ (mixed >> 31)) >> 11) as f64 / (1_u64 << 53) as f64
    }
}

/// A sheet of this size as so many parts with a kerf between them: whole millimetres where one side is cut.
pub(crate) fn parted(
    length: f64,
    width: f64,
    count: usize,
    kerf: f64,
    seed: u64,
) -> Vec<(f64, f64)> {
    let mut chance = Chance(seed);
    let mut parts = vec![(length, width)];
    while parts.len() < count {
        // The larger a part, the sooner it is parted.
        let weights: Vec<f64> = parts
            .iter()
            .map(|(x, y)| x * y * (0.3 + chance.share()))
            .collect();
        let largest =
            (0..parts.len()).max_by(|one, other| weights[*one].total_cmp(&weights[*other]));
        let (x, y) = parts.swap_remove(largest.unwrap_or(0));
        let share = 0.25 + 0.5 * chance.share();
        let across = if x > 1.8 * y {
            true
        } else {
            y <= 1.8 * x && chance.share() < 0.5
        };
        if across {
            let first = ((x - kerf) * share).round();
            parts.extend([(first, y), (x - kerf - first, y)]);
        } else {
            let first = ((y - kerf) * share).round();
            parts.extend([(x, first), (x, y - kerf - first)]);
        }
    }
    parts
}
