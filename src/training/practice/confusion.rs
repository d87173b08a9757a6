//! Which digits were read as which.

/// Counts of digits shown and read, tens and units alike.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Confusion {
    /// By the digit shown, then by the digit read.
    counts: [[u32; 10]; 10],
}

impl Confusion {
    /// Takes in a two-digit number that was shown, and what was read.
    pub fn note(&mut self, shown: u8, read: u8) {
        for place in [10, 1] {
            let digit = |number: u8| usize::from(number / place % 10);
            self.counts[digit(shown)][digit(read)] += 1;
        }
    }

    /// How often `shown` was read as `read`; digits from 0 to 9.
    pub fn count(&self, shown: usize, read: usize) -> u32 {
        self.counts[shown][read]
    }

    /// How often `shown` was shown.
    pub fn shown(&self, shown: usize) -> u32 {
        self.counts[shown].iter().sum()
    }

    /// Whether nothing was read yet.
    pub fn is_empty(&self) -> bool {
        self.counts.iter().flatten().all(|count| *count == 0)
    }

    /// The digits that were confused most often, as shown, read and how often.
    pub fn worst(&self) -> Option<(usize, usize, u32)> {
        let wrong = (0..10).flat_map(|shown| (0..10).map(move |read| (shown, read)));
        let wrong = wrong.filter(|(shown, read)| shown != read);
        let counted = wrong.map(|(shown, read)| (shown, read, self.count(shown, read)));
        // Of equals the first.
        counted
            .rev()
            .max_by_key(|one| one.2)
            .filter(|one| one.2 > 0)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn tens_and_units_are_counted_alike() {
        let mut confusion = Confusion::default();
        assert!(confusion.is_empty() && confusion.worst().is_none());
        confusion.note(42, 42);
        confusion.note(42, 48);
        confusion.note(20, 80);
        confusion.note(5, 5);
        assert_eq!(confusion.count(4, 4), 2);
        assert_eq!(confusion.count(2, 8), 2);
        assert_eq!(confusion.shown(2), 3);
        // 20 read as 80, and 05 read twice as it is.
        assert_eq!(confusion.count(0, 0), 2);
        assert_eq!(confusion.worst(), Some((2, 8, 2)));
    }
}
