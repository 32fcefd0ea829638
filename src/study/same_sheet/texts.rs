//! Texts made comparable: inscriptions, the texts of marks, and the numbers of exhibits.
//!
//! In: texts as recorded. Out: the same without case, punctuation and repeated spaces, or `None` where too
//! little is left to compare.

use keyblock_model::mark::Mark;

/// The fewest letters and figures of writing that is a tie; with fewer it is none: "12", "Imp.", "1927".
const TELLING_LETTERS: usize = 6;

/// The words of an inscription ([`letters`]); `None` where they have too few letters to be a tie.
pub(super) fn inscribed(mark: &Mark) -> Option<String> {
    let text = letters(mark.text.as_deref()?);
    (text.chars().filter(|c| *c != ' ').count() >= TELLING_LETTERS).then_some(text)
}

/// The words of a text, in lower case, with single spaces between.
pub(super) fn letters(text: &str) -> String {
    let words = text
        .split(|c: char| !c.is_alphanumeric())
        .filter(|word| !word.is_empty());
    words.map(str::to_lowercase).collect::<Vec<_>>().join(" ")
}

/// The number of an exhibit, where the text is nothing else: "no. 71", "71a".
pub(super) fn plain_number(at: &str) -> Option<String> {
    let bare = at.trim().to_lowercase();
    let bare = ["no.", "nr.", "cat.", "№"]
        .iter()
        .find_map(|word| bare.strip_prefix(word))
        .unwrap_or(&bare)
        .trim()
        .to_owned();
    let figures = bare.trim_end_matches(|c: char| c.is_ascii_lowercase());
    let is_number = !figures.is_empty() && figures.bytes().all(|b| b.is_ascii_digit());
    (is_number && bare.len() <= figures.len() + 1).then_some(bare)
}
