//! Finds where a record is nested too deep, before it is parsed: readers of the tree call themselves once
//! for each level, so that a text of some kilobytes could exhaust the stack.
//!
//! In: the text of a file. Out: the place of the first bracket, brace or part of a dotted key beyond
//! [`DEEPEST_NESTING`] levels.

use std::ops::Range;

use toml_parser::Source;
use toml_parser::lexer::TokenKind;

use crate::read::limits::DEEPEST_NESTING;

/// The place at which a text is nested deeper than [`DEEPEST_NESTING`].
///
/// Levels are open brackets and braces, and the dots of the keys in which they stand. A header begins
/// anew, so brackets that were never closed do not add up over the tables of a file.
pub(crate) fn too_deep(text: &str) -> Option<Range<usize>> {
    let mut levels = Levels::default();
    let mut begins_line = true;
    for token in Source::new(text).lex() {
        let span = token.span().start()..token.span().end();
        match token.kind() {
            TokenKind::LeftSquareBracket | TokenKind::LeftCurlyBracket => {
                if begins_line && is_header(text, span.start) {
                    levels = Levels::default();
                }
                levels.open.push(0);
                levels.all += 1;
            }
            TokenKind::RightSquareBracket | TokenKind::RightCurlyBracket => levels.close(),
            TokenKind::Dot => levels.add_dot(),
            TokenKind::Newline | TokenKind::Comma => levels.end_key(),
            _ => {}
        }
        if levels.all > DEEPEST_NESTING {
            return Some(span);
        }
        begins_line = match token.kind() {
            TokenKind::Newline => true,
            TokenKind::Whitespace => begins_line,
            _ => false,
        };
    }
    None
}

/// Whether a bracket at the start of a line opens a header: a name follows, not a value.
fn is_header(text: &str, at: usize) -> bool {
    let line = text.get(at..).unwrap_or_default();
    let name = line.trim_start_matches('[');
    name.len() < line.len() && name.starts_with(|c: char| c.is_ascii_alphabetic())
}

/// The levels that are open at a place of the text.
#[derive(Default)]
struct Levels {
    /// The dots of the key at the top of the file.
    dots_at_top: usize,
    /// For each open bracket or brace, the dots of the present key in it.
    open: Vec<usize>,
    /// All levels together.
    all: usize,
}

impl Levels {
    fn add_dot(&mut self) {
        *self.open.last_mut().unwrap_or(&mut self.dots_at_top) += 1;
        self.all += 1;
    }

    fn end_key(&mut self) {
        let dots = self.open.last_mut().unwrap_or(&mut self.dots_at_top);
        self.all -= std::mem::take(dots);
    }

    fn close(&mut self) {
        if let Some(dots) = self.open.pop() {
            self.all -= dots + 1;
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn nesting_is_told_where_it_becomes_too_deep() {
        let brackets = |n: usize| format!("a = {}1{}\n", "[".repeat(n), "]".repeat(n));
        assert_eq!(too_deep(&brackets(DEEPEST_NESTING)), None);
        assert_eq!(too_deep(&brackets(100_000)), Some(36..37));
        let braces = "a = ".to_owned() + &"{ a = ".repeat(DEEPEST_NESTING + 1);
        assert!(too_deep(&braces).is_some());
        let dotted = |n: usize| format!("{}a = 1\n", "a.".repeat(n));
        assert_eq!(too_deep(&dotted(DEEPEST_NESTING)), None);
        assert_eq!(too_deep(&dotted(100_000)), Some(65..66));
        assert!(too_deep(&format!("[{}a]\n", "a.".repeat(100_000))).is_some());
        let both = format!("{}{{", "a.a.a.a.a.a = {".repeat(8));
        assert!(too_deep(&both).is_some());
    }

    #[test]
    fn what_only_repeats_is_not_deep() {
        for text in [
            "a = [1, 2]\n".repeat(1000),
            "[a.b.c]\nx.y = 1.5\n".repeat(1000),
            "[a\n".repeat(1000),
            "[[points]\nx = [\n".repeat(1000),
            format!("a = [{}]\n", "{ b = [1.5, 2.5] }, ".repeat(1000)),
            format!("a = \"{}\" # {}\n", "[.{".repeat(100), "[.{".repeat(100)),
            format!("a = \"\"\"\n{}\"\"\"\n", "[\n".repeat(100)),
            "]}\n".repeat(1000),
        ] {
            assert_eq!(too_deep(&text), None, "{}", &text[..20]);
        }
    }
}
