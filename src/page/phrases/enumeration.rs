//! Enumerations in a sentence: "a, b or c", "a, b and c".
//!
//! The word `list-comma` separates all parts but the last two; `list-or` and `list-and` join the last. Where a part itself
//! has a comma, they join all: "rose, even or orange, even or bare".

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
            let before = if before.len() > 1 && parts.iter().any(|part| has_comma(&part.plain())) {
                joined(words, before, id)
            } else {
                CleanHtml::join(before, words.word("list-comma"))
            };
            words.html(id, None, &[("before", &before), ("last", last)])
        }
    }
}

fn has_comma(part: &str) -> bool {
    part.contains([',', '،', '、'])
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
            let before = if before.len() > 1 && parts.iter().any(|part| has_comma(part)) {
                joined_text(words, before, id)
            } else {
                before.join(words.word("list-comma"))
            };
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

#[cfg(test)]
mod tests {
    use super::{either_text, together_text};
    use crate::model::theme::Theme;
    use crate::page::setting::words::Words;

    #[test]
    fn parts_with_commas_are_each_divided_by_the_word() {
        let words = |language| Words::new(&Theme::default(), language).unwrap();
        let [english, german] = ["en", "de"].map(words);
        let parts = |parts: &[&str]| parts.iter().map(ToString::to_string).collect::<Vec<_>>();
        let plain = parts(&["none", "edge", "across"]);
        let with_commas = parts(&["orange", "rose, even", "orange, fading"]);
        assert_eq!(either_text(&english, &plain), "none, edge or across");
        assert_eq!(
            either_text(&english, &with_commas),
            "orange or rose, even or orange, fading"
        );
        assert_eq!(
            either_text(&german, &with_commas),
            "orange oder rose, even oder orange, fading"
        );
        assert_eq!(
            together_text(&english, &with_commas),
            "orange and rose, even and orange, fading"
        );
    }
}
