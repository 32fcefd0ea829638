//! The size of the number at the head of a page.

/// The class that makes a long number smaller.
pub(crate) fn number_class(number: &str) -> &'static str {
    match number.chars().count() {
        0..=3 => "number",
        4..=6 => "number long",
        _ => "number longer",
    }
}
