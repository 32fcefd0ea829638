//! Things named one after another in a sentence: "a, b or c", "a, b and c".

use crate::page::setting::book::Here;
use crate::page::setting::html::CleanHtml;

/// "a, b or c".
pub(crate) fn either(here: &Here<'_>, parts: &[CleanHtml]) -> CleanHtml {
    joined(here, parts, "or")
}

/// "a, b and c".
pub(crate) fn together(here: &Here<'_>, parts: &[CleanHtml]) -> CleanHtml {
    joined(here, parts, "and")
}

fn joined(here: &Here<'_>, parts: &[CleanHtml], word: &str) -> CleanHtml {
    match parts {
        [] => CleanHtml::empty(),
        [one] => one.clone(),
        [before @ .., last] => CleanHtml::join(before, ", ")
            .then(" ")
            .then(here.words().word(word))
            .then(" ")
            .and(last),
    }
}

/// The same as [`either`], of plain text.
pub(crate) fn either_text(here: &Here<'_>, parts: &[String]) -> String {
    match parts {
        [] => String::new(),
        [one] => one.clone(),
        [before @ .., last] => {
            format!("{} {} {last}", before.join(", "), here.words().word("or"))
        }
    }
}
