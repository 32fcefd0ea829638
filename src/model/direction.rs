//! The direction in which texts are written.

/// Whether a character is of a script that is written from right to left, by the blocks that Unicode 16.0
/// keeps for such scripts (UAX #9, section 3.2), or opens such a direction.
#[must_use]
pub fn is_right_to_left(c: char) -> bool {
    matches!(
        c,
        '\u{590}'..='\u{8ff}'
            | '\u{200f}'
            | '\u{2067}'
            | '\u{fb1d}'..='\u{fdff}'
            | '\u{fe70}'..='\u{feff}'
            | '\u{10800}'..='\u{10fff}'
            | '\u{1e800}'..='\u{1efff}'
    )
}
