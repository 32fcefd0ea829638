//! Finds faults of TOML syntax, and gives the text that can be parsed in spite of them.
//!
//! The parser recovers from most faults and stops at a few (a line without an equals sign, a
//! bracket that is never closed). Such a line is reported and replaced by blanks, and the file is parsed
//! again, so that one fault does not hide the next. Blanks keep the places of all other bytes.
//!
//! In: the text of a file. Out: a text of the same length that can be parsed ([`Parsable`]), and its
//! faults. [`words`] words their findings, and [`depth`] finds text that is nested too deep to be parsed.

mod depth;
mod lines;
mod words;

use std::borrow::Cow;
use std::ops::Range;

use toml::de::{DeTable, DeValue};

pub(crate) use self::depth::too_deep;
use self::lines::{blanked, line_around, next_header, trimmed};
use self::words::{
    DUPLICATE, NO_KEY, NO_VALUE, UNCLOSED_BRACES, UNCLOSED_HEADER, UNCLOSED_HEADERS, UNCLOSED_LIST,
    in_words,
};
use crate::model::codes::Code;
use crate::model::finding::Finding;
use crate::model::place::{FileId, Place};
use crate::read::faults::Node;

use crate::read::limits::MOST_SYNTAX_FAULTS;

/// The largest number of times a file is parsed again. A file with more lines at which the parser stops
/// is not TOML.
const ROUNDS: usize = 24;

/// How many bytes are parsed again in all, so that a large file is parsed less often.
const PARSED_AGAIN: usize = 2 * 4 * 1024 * 1024;

/// A text that can be parsed, and the syntax faults of the original.
pub(crate) struct Parsable<'t> {
    /// The text, with the lines at which the parser stopped replaced by blanks; as long as the original.
    pub(crate) text: Cow<'t, str>,
    /// The faults, in the order of the text; at most [`MOST_SYNTAX_FAULTS`].
    pub(crate) faults: Vec<Fault>,
    /// Where there may be more faults, the place from which on they are not told.
    pub(crate) more_from: Option<Range<usize>>,
}

/// A fault of syntax.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Fault {
    span: Range<usize>,
    /// The parser's message; [`Fault::finding`] rewords it for cataloguers.
    said: String,
}

/// Finds the syntax faults in `text`, and the text that can be parsed in spite of them.
pub(crate) fn parsable(text: &str) -> Parsable<'_> {
    let mut parsable = Parsable {
        text: Cow::Borrowed(text),
        faults: Vec::new(),
        more_from: None,
    };
    let mut given_up: Vec<Fault> = Vec::new();
    let mut is_at_end = false;
    let rounds = (PARSED_AGAIN / text.len().max(1)).clamp(1, ROUNDS);
    for _ in 0..rounds {
        let (tree, errors) = DeTable::parse_recoverable(&parsable.text);
        if errors.is_empty() {
            is_at_end = true;
            break;
        }
        let mut faults: Vec<Fault> = errors
            .iter()
            .map(|error| Fault {
                span: within(error.span().unwrap_or_default(), text),
                said: error.message().to_owned(),
            })
            .collect();
        faults.sort_by_key(|fault| fault.span.start);
        // Of a text with a million faults only the first are looked at, and those that explain the others: a
        // bracket that is never closed is told at the end of the text.
        let (first, others) = faults.split_at(faults.len().min(MOST_SYNTAX_FAULTS + 1));
        let never_closed = others.iter().filter(|fault| fault.is_never_closed());
        let stop = first
            .iter()
            .chain(never_closed.take(MOST_SYNTAX_FAULTS))
            .filter_map(|fault| stop(fault, tree.get_ref(), &parsable.text))
            .min_by_key(|(line, _)| line.start);
        drop(tree);
        faults.truncate(MOST_SYNTAX_FAULTS + 1);
        let Some((line, fault)) = stop else {
            parsable.faults = faults;
            is_at_end = true;
            break;
        };
        given_up.push(fault);
        parsable.text = Cow::Owned(blanked(&parsable.text, line));
    }
    if !is_at_end {
        parsable.more_from = given_up.last().map(|fault| fault.span.clone());
    }
    parsable.faults.extend(given_up);
    parsable.faults.sort_by_key(|fault| fault.span.start);
    parsable.faults.dedup();
    parsable.faults = without_repetition(parsable.faults, text);
    if let Some(next) = parsable.faults.get(MOST_SYNTAX_FAULTS) {
        parsable.more_from = Some(next.span.clone());
    }
    parsable.faults.truncate(MOST_SYNTAX_FAULTS);
    parsable
}

/// The faults without those that only repeat an earlier one. The parser reports a duplicate header a
/// second time further down, and it reports every key below a missing header as a duplicate.
fn without_repetition(faults: Vec<Fault>, text: &str) -> Vec<Fault> {
    let mut kept: Vec<(Fault, Range<usize>)> = Vec::new();
    for fault in faults {
        let repeats = |(earlier, reach): &(Fault, Range<usize>)| {
            let is_twice = fault.said.starts_with(DUPLICATE) && earlier.said.starts_with(DUPLICATE);
            let same_header = earlier.is_header(text)
                && fault.is_header(text)
                && fault.written(text) == earlier.written(text);
            is_twice && (same_header || reach.contains(&fault.span.start))
        };
        if !kept.iter().any(repeats) {
            let reach = fault.reach(text);
            kept.push((fault, reach));
        }
    }
    kept.into_iter().map(|(fault, _)| fault).collect()
}

/// The span, limited to the text and moved back to character boundaries.
fn within(span: Range<usize>, text: &str) -> Range<usize> {
    let whole = |at: usize| {
        let mut at = at.min(text.len());
        while !text.is_char_boundary(at) {
            at -= 1;
        }
        at
    };
    let start = whole(span.start);
    start..whole(span.end).max(start)
}

/// The lines to replace by blanks at a fault at which the parser stops, and the fault to report; `None`
/// for a fault from which the parser recovers.
fn stop(fault: &Fault, tree: &DeTable<'_>, text: &str) -> Option<(Range<usize>, Fault)> {
    let gives_up = [NO_VALUE, NO_KEY]
        .iter()
        .any(|said| fault.said.starts_with(said));
    if gives_up {
        let line = line_around(text, fault.span.start);
        let span = trimmed(text, line.clone());
        let said = fault.said.clone();
        return (!span.is_empty()).then_some((line, Fault { span, said }));
    }
    if fault.said.starts_with(UNCLOSED_HEADER) || fault.said.starts_with(UNCLOSED_HEADERS) {
        // The lines below an unclosed header belong to a table whose name is not known, so they are
        // blanked up to the next header; otherwise they would be read into the table before.
        let line = line_around(text, fault.span.start);
        let below = text.get(line.end..).unwrap_or_default();
        let next = next_header(below).map_or(text.len(), |at| line.end + at);
        let fault = fault.clone();
        return (!trimmed(text, line.clone()).is_empty()).then_some((line.start..next, fault));
    }
    if fault.is_never_closed() {
        let open = outermost_open(tree, fault.span.end, text)?;
        let line = line_around(text, open);
        // All nested brackets are unclosed then; only the outermost is reported.
        let is_list = text.get(open..).is_some_and(|t| t.starts_with('['));
        let said = if is_list {
            UNCLOSED_LIST
        } else {
            UNCLOSED_BRACES
        }
        .to_owned();
        return Some((
            line,
            Fault {
                span: open..open + 1,
                said,
            },
        ));
    }
    None
}

/// The start of the outermost list or table in braces that runs to `end`.
fn outermost_open(tree: &DeTable<'_>, end: usize, text: &str) -> Option<usize> {
    fn of(node: &Node<'_>, end: usize, text: &str, best: &mut Option<usize>) {
        let span = node.span();
        let opens = text
            .get(span.clone())
            .is_some_and(|t| t.starts_with(['[', '{']));
        match node.get_ref() {
            DeValue::Array(list) => {
                if opens && span.end >= end && best.is_none_or(|at| span.start < at) {
                    *best = Some(span.start);
                }
                list.iter().for_each(|node| of(node, end, text, best));
            }
            DeValue::Table(table) => {
                if opens && span.end >= end && best.is_none_or(|at| span.start < at) {
                    *best = Some(span.start);
                }
                table.values().for_each(|node| of(node, end, text, best));
            }
            _ => {}
        }
    }
    let mut best = None;
    tree.values()
        .for_each(|node| of(node, end, text, &mut best));
    best
}

impl Fault {
    /// Whether it is a list or a table in braces that is never closed.
    fn is_never_closed(&self) -> bool {
        [UNCLOSED_LIST, UNCLOSED_BRACES]
            .iter()
            .any(|said| self.said.starts_with(said))
    }

    /// The bytes of `text` in which other findings are consequences of this fault: its line, or, where a
    /// header is missing, everything up to the next header.
    pub(crate) fn reach(&self, text: &str) -> Range<usize> {
        let line = line_around(text, self.span.start);
        if !self.lacks_header(text) {
            return line;
        }
        let below = text.get(line.end..).unwrap_or_default();
        line.start..next_header(below).map_or(text.len(), |at| line.end + at)
    }

    /// Whether something was not read because of this fault. A duplicate key hides nothing, except where it
    /// is a header or begins another table.
    pub(crate) fn hides(&self, text: &str) -> bool {
        !self.said.starts_with(DUPLICATE) || self.is_header(text) || self.lacks_header(text)
    }

    /// Whether it stands in a header.
    fn is_header(&self, text: &str) -> bool {
        let line = line_around(text, self.span.start);
        let line = text.get(line).unwrap_or_default();
        line.trim_start().starts_with('[')
    }

    /// Whether a header seems to be missing above it: each table of a list begins with `key`, so a second
    /// `key` begins another table.
    fn lacks_header(&self, text: &str) -> bool {
        self.said.starts_with(DUPLICATE) && !self.is_header(text) && self.written(text) == "key"
    }

    fn written<'t>(&self, text: &'t str) -> &'t str {
        text.get(self.span.clone()).unwrap_or_default()
    }

    /// The finding that reports it. `tree` is the parsed text, in which the first of two equal keys is found.
    pub(crate) fn finding(&self, file: FileId, text: &str, tree: &DeTable<'_>) -> Finding {
        let place = Place::new(file, self.span.clone());
        if self.said.starts_with(DUPLICATE) {
            return self.twice(file, text, tree);
        }
        let (message, help) = in_words(&self.said, self.written(text), self.span.start, text);
        Finding::new(Code::TomlSyntax, place, message).help(help)
    }

    fn twice(&self, file: FileId, text: &str, tree: &DeTable<'_>) -> Finding {
        let name = self.written(text);
        let (message, help) = if self.is_header(text) {
            (
                format!("the header `{name}` occurs twice"),
                "join the two under one header; in a list every header has two brackets, as in [[points]]"
.to_owned(),
            )
        } else if self.lacks_header(text) {
            (
                format!("`{name}` is written twice in one table"),
                "keep one of the two; where another part begins, its header is missing above: [[points]]"
                    .to_owned(),
            )
        } else {
            (
                format!("`{name}` is written twice in one table"),
                "keep one of the two".to_owned(),
            )
        };
        let finding = Finding::new(Code::KeyTwice, Place::new(file, self.span.clone()), message);
        let mut first = None;
        last_key_before(
            tree,
            name.trim_matches(['"', '\'']),
            self.span.start,
            &mut first,
        );
        let first = first.or_else(|| header_before(text, name, self.span.start));
        let finding = match first {
            Some(first) => finding.beside(Place::new(file, first), "the first"),
            None => finding,
        };
        finding.help(help)
    }
}

/// The last key `name` before a byte of the file.
fn last_key_before(
    table: &DeTable<'_>,
    name: &str,
    before: usize,
    last: &mut Option<Range<usize>>,
) {
    for (key, node) in table {
        let span = key.span();
        if key.get_ref() == name
            && span.start < before
            && last.as_ref().is_none_or(|l| l.start < span.start)
        {
            *last = Some(span);
        }
        last_key_in(node, name, before, last);
    }
}

fn last_key_in(node: &Node<'_>, name: &str, before: usize, last: &mut Option<Range<usize>>) {
    match node.get_ref() {
        DeValue::Table(table) => last_key_before(table, name, before, last),
        DeValue::Array(list) => {
            for node in list {
                last_key_in(node, name, before, last);
            }
        }
        _ => {}
    }
}

/// The name in the header `[name]` that stands before a byte of the file. It is searched for in the
/// text, because the parser keeps only the second of two such headers.
fn header_before(text: &str, name: &str, before: usize) -> Option<Range<usize>> {
    let header = format!("[{name}]");
    let at = text.get(..before)?.rfind(&header)?;
    Some(at + 1..at + 1 + name.len())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::model::place::Sources;

    fn told(text: &str) -> Vec<String> {
        let mut sources = Sources::default();
        let file = sources.add("a.toml", text);
        let parsable = parsable(text);
        assert_eq!(parsable.text.len(), text.len());
        let (tree, _) = DeTable::parse_recoverable(&parsable.text);
        parsable
            .faults
            .iter()
            .map(|fault| {
                let finding = fault.finding(file, text, tree.get_ref());
                let at = sources.position(finding.at.place);
                format!("{}:{} {}", at.line, at.column, finding.message)
            })
            .collect()
    }

    #[test]
    fn a_line_without_an_equals_sign_does_not_hide_the_next_fault() {
        assert_eq!(
            told("title\nsiglum: 3\ndate = 1927~\nx = 1\nx = 2\n"),
            [
                "1:1 this line is not a key with a value",
                "2:1 this line is not a key with a value",
                "3:8 `1927~` is not in quotes",
                "5:1 `x` is written twice in one table",
            ]
        );
    }

    #[test]
    fn a_list_that_is_never_closed_is_told_where_it_opens() {
        assert_eq!(
            told("a = [1, 2\nb = 3\nc = {d = 1\ne = tru\n"),
            [
                "1:5 this list is never closed",
                "3:5 this table is never closed",
                "4:5 `tru` is neither true nor false",
            ]
        );
    }

    fn helped(text: &str) -> Vec<(String, String)> {
        let file = Sources::default().add("a.toml", text);
        let parsable = parsable(text);
        let (tree, _) = DeTable::parse_recoverable(&parsable.text);
        let findings = parsable.faults.iter();
        let findings = findings.map(|fault| fault.finding(file, text, tree.get_ref()));
        findings
            .map(|f| (f.message, f.help.unwrap_or_default()))
            .collect()
    }

    #[test]
    fn numbers_with_a_cross_between_them_are_told_as_numbers_with_commas() {
        let commas = "put commas between the numbers, in millimetres, and no quotes: 230, 290";
        let list = "write a list in millimetres, height first: [230, 290]";
        for (text, help) in [
            ("image = [230 x 290]\n", commas),
            ("image = [230 × 290]\n", commas),
            ("size = { image = [230x290] }\n", commas),
            ("image = [23 × 29 cm]\n", commas),
            ("image = 230 x 290 mm\nb = 1\n", list),
            (
                "image = [230, 290 mm]\n",
                "write the number alone, without a unit: 290",
            ),
        ] {
            let told = helped(text);
            assert_eq!(told.len(), 1, "{text:?}: {told:?}");
            assert_eq!(told[0].1, help, "{text:?}");
            // What the help says can be read.
            assert!(!told[0].1.contains('"'), "{text:?}");
        }
    }

    #[test]
    fn curly_quotes_are_to_be_straight_and_are_not_quoted_again() {
        for (text, written) in [
            ("a = “The Last Ferry”\nb = 1\n", "The Last Ferry"),
            ("a = „Die Fähre“ # note\n", "Die Fähre"),
            ("a = ‘The Ferry’\n", "The Ferry"),
            ("a = «La nave»\n", "La nave"),
            ("a = [{ text = “The Ferry”, lang = \"en\" }]\n", "The Ferry"),
            (
                "a = “The Ferry, or a crossing”\n",
                "The Ferry, or a crossing",
            ),
        ] {
            let told = helped(text);
            let expected = (
                format!("the quotes around `{written}` are not straight"),
                format!("write straight quotes: \"{written}\""),
            );
            assert_eq!(told.first(), Some(&expected), "{text:?}");
        }
        let told = helped("a = “The Ferry, or a crossing”\n");
        assert_eq!(told[1].0, "this text is in curly quotes");
        let told = helped("a = \"The Ferry”\nb = 1\n");
        assert_eq!(
            told[0].1,
            "end it with a straight quote, not with a curly one"
        );
        let told = helped("“a” = 1\n");
        assert!(
            told.iter()
                .all(|(_, help)| help == "write the key without quotes"),
            "{told:?}"
        );
    }

    #[test]
    fn no_message_speaks_of_types_or_of_the_parser() {
        for text in [
            "a = [1 2]\n",
            "a = 'x\n",
            "a = \"\\q\"\n",
            "a = 007\n",
            "= 3\n",
            "a = 1 b = 2\n",
            "a = [1,,2]\n",
            "a == 1\n",
            "a = 1.2.3\n",
            "a = 1927-13-45\n",
            "[a\n",
            "[[a]\n",
            "} x\n",
            "a = \"\u{1}\"\n",
            "a = \"x\"\r b = 1",
            "a = 1\na.b = 2\n",
            "a = +_1\n",
            "a = 0xZ\n",
        ] {
            let messages = told(text);
            assert!(!messages.is_empty(), "{text:?}");
            for message in messages {
                for word in [
                    "string", "expected", "integer", "boolean", "array", "inline", "panic",
                ] {
                    assert!(!message.contains(word), "{text:?}: {message}");
                }
            }
        }
    }
}
