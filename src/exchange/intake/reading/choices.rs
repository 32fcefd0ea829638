//! What is chosen from the lists of our own forms, or written in their columns by hand.
//!
//! In: a cell. Out: the number of a design, the states and printings as they are named, a status, yes or no. English
//! and German. Which design, state or printing is meant is settled with the catalogue, not here.

use std::sync::LazyLock;

use super::phrases::Phrases;
use super::words::Words;
use crate::model::impression::Status;

/// The dash between what a reader sees and what stands for it: "14 – The Old Lock", "iii – moonlit".
const DASH: &str = " – ";

/// The number of a design: "14" of "14 – The Old Lock".
///
/// ```
/// # use keyblock::exchange::intake::reading::choices::design;
/// assert_eq!(design("14 – The Old Lock"), "14");
/// assert_eq!(design(" R 7 "), "R 7");
/// ```
#[must_use]
pub fn design(cell: &str) -> &str {
    cell.split_once(DASH)
        .map_or(cell, |(number, _)| number)
        .trim()
}

/// A state or a printing as a cell names it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Named<'c> {
    /// The numeral or the name, as it was when the form was made.
    pub shown: &'c str,
    /// The key, which does not change; `None` where the cell has a name alone.
    pub key: Option<&'c str>,
}

/// The states or printings that a cell names, divided by semicolons: any of them may be meant.
///
/// ```
/// # use keyblock::exchange::intake::reading::choices::{named, Named};
/// let states: Vec<Named> = named("ii – moonlit; iii").collect();
/// assert_eq!(states[0], Named { shown: "ii", key: Some("moonlit") });
/// assert_eq!(states[1], Named { shown: "iii", key: None });
/// ```
pub fn named(cell: &str) -> impl Iterator<Item = Named<'_>> {
    let parts = cell
        .split(';')
        .map(str::trim)
        .filter(|part| !part.is_empty());
    parts.map(|part| match part.rsplit_once(DASH) {
        Some((shown, key)) => Named {
            shown: shown.trim(),
            key: Some(key.trim()),
        },
        None => Named {
            shown: part,
            key: None,
        },
    })
}

/// The status that a cell says; `None` where it says something else.
#[must_use]
pub fn status(cell: &str) -> Option<Status> {
    whole(&STATUSES, cell)
}

/// Whether a cell says yes or no.
#[must_use]
pub fn yes(cell: &str) -> Option<bool> {
    whole(&ANSWERS, cell)
}

/// The meaning of a phrase that is the whole cell.
fn whole<T: Clone>(phrases: &Phrases<T>, cell: &str) -> Option<T> {
    let words = Words::of(cell);
    let found = phrases.at(&words, 0)?;
    let is_rest_marks = (found.end..words.len()).all(|at| words.word(at).is_none());
    is_rest_marks.then_some(found.is)
}

static STATUSES: LazyLock<Phrases<Status>> = LazyLock::new(|| {
    Phrases::of(&[
        (Status::Located, "located|nachgewiesen|vorhanden"),
        (Status::Untraced, "untraced|lost|verschollen|unbekannt"),
        (Status::Destroyed, "destroyed|zerstört|vernichtet"),
        (Status::Stolen, "stolen|gestohlen"),
    ])
});

static ANSWERS: LazyLock<Phrases<bool>> = LazyLock::new(|| {
    Phrases::of(&[
        (true, "yes|y|ja|j|oui|true|1|はい"),
        (false, "no|n|nein|non|nee|false|0|いいえ"),
    ])
});

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_answer_is_the_whole_cell_or_none() {
        assert_eq!(yes("Ja"), Some(true));
        assert_eq!(yes("no."), Some(false));
        assert_eq!(yes("yes, but not larger than 800 px"), None);
        assert_eq!(yes(""), None);
        assert_eq!(status("verschollen"), Some(Status::Untraced));
        assert_eq!(status("on loan"), None);
    }
}
