//! Finds the marks that a program for versions leaves in a text where it could not merge two versions.
//!
//! In: a text and its kind. Out: the place of the first mark. `git` writes `<<<<<<<`, `|||||||`, `=======`
//! and `>>>>>>>` at the starts of lines, each of seven signs (git-merge(1), "How conflicts are presented").

use std::ops::Range;

use crate::read::files::kind::FileKind;

/// The first mark of an unfinished merge in a text.
///
/// `=======` counts only where `>>>>>>>` follows and nothing else comes before, because in Markdown it
/// underlines a heading.
pub(crate) fn conflict_mark(text: &str, kind: &FileKind) -> Option<Range<usize>> {
    if !kind.is_text() {
        return None;
    }
    let mut start = 0;
    let mut divider = None;
    for line in text.split_inclusive('\n') {
        let line_start = start;
        start += line.len();
        let line = line.trim_end();
        let mark = || line_start..line_start + line.len();
        if is_mark(line, "<<<<<<<") || is_mark(line, "|||||||") {
            return Some(mark());
        }
        if is_mark(line, ">>>>>>>") {
            return divider.or_else(|| Some(mark()));
        }
        if line == "=======" {
            divider.get_or_insert_with(mark);
        }
    }
    None
}

/// Whether a line is a mark: the seven signs alone, or with a name after a space.
fn is_mark(line: &str, signs: &str) -> bool {
    line.strip_prefix(signs)
        .is_some_and(|rest| rest.is_empty() || rest.starts_with(' '))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn mark(text: &str) -> Option<&str> {
        conflict_mark(text, &FileKind::Settings).map(|mark| &text[mark])
    }

    #[test]
    fn the_first_mark_is_found() {
        let merged = "a = 1\n<<<<<<< HEAD\nb = 2\n=======\nb = 3\n>>>>>>> other\n";
        assert_eq!(mark(merged), Some("<<<<<<< HEAD"));
        assert_eq!(mark("a\r\n>>>>>>> other\r\n"), Some(">>>>>>> other"));
        assert_eq!(mark("a\n=======\nb\n>>>>>>> other"), Some("======="));
        assert_eq!(mark("||||||| parent"), Some("||||||| parent"));
        assert_eq!(mark("A\n=======\n<<<<<<< HEAD\n"), Some("<<<<<<< HEAD"));
    }

    #[test]
    fn headings_and_signs_within_a_line_are_no_marks() {
        for text in [
            "A heading\n=======\n\nText.\n",
            "a = \"<<<<<<< HEAD\"\n",
            "<<<<<<<< eight\n",
            ">>>>>>>quoted\n",
            "| | | | | | |\n",
            "|||||||cells|\n",
        ] {
            assert_eq!(mark(text), None, "{text:?}");
        }
    }
}
