//! Enumerations in a sentence: "a, b or c", "a, b and c".
//!
//! The word `list-comma` separates all parts but the last two; `list-or` and `list-and` join the last.

use crate::page::setting::book::Here;
use crate::page::setting::html::CleanHtml;
use crate::page::setting::words::{Argument, Words};

/// "a, b or c".
pub(crate) fn either(here: &Here<'_>, parts: &[CleanHtml]) -> CleanHtml {
    joined(here.words(), parts, "list-or")
}

/// "a, b and c".
pub(crate) fn together(here: &Here<'_>, parts: &[CleanHtml]) -> CleanHtml {
    joined(here.words(), parts, "list-and")
}

fn joined(words: &Words, parts: &[CleanHtml], id: &str) -> CleanHtml {
    match parts {
        [] => CleanHtml::empty(),
        [one] => one.clone(),
        [before @ .., last] => {
            let before = CleanHtml::join(before, words.word("list-comma"));
            words.html(id, None, &[("before", &before), ("last", last)])
        }
    }
}

/// The same as [`either`], of plain text.
pub(crate) fn either_text(words: &Words, parts: &[String]) -> String {
    joined_text(words, parts, "list-or")
}

/// The same as [`together`], of plain text.
pub(crate) fn together_text(words: &Words, parts: &[String]) -> String {
    joined_text(words, parts, "list-and")
}

fn joined_text(words: &Words, parts: &[String], id: &str) -> String {
    match parts {
        [] => String::new(),
        [one] => one.clone(),
        [before @ .., last] => {
            let before = before.join(words.word("list-comma"));
            words.with(
                id,
                &[
                    ("before", Argument::Text(&before)),
                    ("last", Argument::Text(last)),
                ],
            )
        }
    }
}
