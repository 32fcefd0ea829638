//! How exactly a length is written.

use crate::exchange::intake::reading::sizes::Length;

/// Half of what the last figure of a number stands for: 0.5 of `166`, 0.05 of `166.5`.
pub(super) fn within(written: &str) -> f64 {
    let decimals = written.split_once('.').map_or("", |(_, decimals)| decimals);
    let figures = decimals.chars().take_while(char::is_ascii_digit).count();
    match figures {
        0 => 0.5,
        1 => 0.05,
        2 => 0.005,
        _ => 0.0005,
    }
}

/// A length as exact as its figures.
pub(super) fn plain(mm: f64, written: &str) -> Length {
    Length {
        mm,
        tolerance_mm: within(written),
    }
}
