//! Words faults of TOML syntax for cataloguers.

use super::lines::line_around;
use crate::read::values::dimensions;

// The beginnings of the parser's messages, by which faults are recognised.
pub(super) const NO_VALUE: &str = "key with no value";
pub(super) const NO_KEY: &str = "invalid key-value pair";
pub(super) const UNCLOSED_LIST: &str = "unclosed array";
pub(super) const UNCLOSED_BRACES: &str = "unclosed inline table";
pub(super) const UNCLOSED_HEADER: &str = "unclosed table";
pub(super) const UNCLOSED_HEADERS: &str = "unclosed array table";
pub(super) const DUPLICATE: &str = "duplicate key";

/// The message and the help for a fault. `said`: the parser's message; `written`: the bytes at fault,
/// which begin at `start` of `text`.
pub(super) fn in_words(said: &str, written: &str, start: usize, text: &str) -> (String, String) {
    let starts = |with: &str| said.starts_with(with);
    let pair = |message: &str, help: &str| (message.to_owned(), help.to_owned());
    if starts("string values must be quoted") {
        if written.is_empty() {
            return pair(
                "there is nothing after the equals sign",
                "write a value, or remove the key",
            );
        }
        if let Some(text) = in_curly_quotes(written, start, text) {
            return (
                format!("the quotes around `{text}` are not straight"),
                format!("write straight quotes: \"{text}\""),
            );
        }
        if let Some(numbers) = dimensions::numbers(written) {
            return no_numbers(written, &numbers, start, text);
        }
        let help = match written.to_lowercase().as_str() {
            "yes" => "write true, without quotes".to_owned(),
            "no" => "write false, without quotes".to_owned(),
            _ => format!("put it in quotes: \"{written}\""),
        };
        return (format!("`{written}` is not in quotes"), help);
    }
    if starts(NO_VALUE) || starts(NO_KEY) {
        let help = if written.contains(':') && !written.contains('=') {
            "write an equals sign in place of the colon: key = \"value\""
        } else {
            "write key = \"value\", or begin the line with # to make it a comment"
        };
        return pair("this line is not a key with a value", help);
    }
    if starts("invalid basic string")
        || starts("invalid literal string")
        || starts("invalid multi-line")
    {
        if said.contains("characters") {
            return pair(
                "this text holds a character that cannot be seen",
                "remove the character",
            );
        }
        let help = if line_before(text, start)
            .trim_end()
            .ends_with(is_closing_curly)
        {
            "end it with a straight quote, not with a curly one"
        } else {
            "close it with the quote that opens it"
        };
        return pair("this text is not closed", help);
    }
    if starts("missing escaped value") || starts("too few unicode") || said.contains("escape") {
        return pair(
            "there is a backslash in a text in double quotes",
            "write two backslashes for one, or put the text in single quotes",
        );
    }
    if starts("cannot extend value") {
        return (
            format!("`{written}` has a value already and cannot be a table too"),
            "keep one of the two".to_owned(),
        );
    }
    if starts("missing comma between array") {
        return pair(
            "a comma is missing in this list",
            "put a comma between the values",
        );
    }
    if starts("missing comma between key") {
        return pair(
            "a comma is missing in this table",
            "put a comma between the keys",
        );
    }
    if starts("extra comma") {
        return pair("there is a comma too many", "remove the comma");
    }
    if starts(UNCLOSED_HEADER) || starts(UNCLOSED_HEADERS) {
        return (
            "this header is not closed".to_owned(),
            closed_header(text, start),
        );
    }
    if starts(UNCLOSED_LIST) {
        return pair("this list is never closed", "end it with a bracket: ]");
    }
    if starts(UNCLOSED_BRACES) {
        return pair("this table is never closed", "end it with a brace: }");
    }
    if starts("unexpected key or value") || starts("unexpected content") {
        let value = line_before(text, start).rsplit('=').next();
        if value.is_some_and(|value| value.trim_start().starts_with(is_opening_curly)) {
            return pair(
                "this text is in curly quotes",
                "write straight quotes around the whole text: \"…\"",
            );
        }
        let rest = text.get(start..).unwrap_or_default();
        let before = text.get(..start).unwrap_or_default();
        let help = if rest.starts_with(',') && before.ends_with(|c: char| c.is_ascii_digit()) {
            "write a point, not a comma, before tenths: 211.5"
        } else {
            "begin a new line, or remove what follows the value"
        };
        return pair("there is something after the end of the value", help);
    }
    if starts("unexpected leading zero") {
        return pair(
            "a number does not begin with 0",
            "leave out the 0, or put the number in quotes if it is text",
        );
    }
    if starts("invalid boolean") {
        return (
            format!("`{written}` is neither true nor false"),
            "write true or false".to_owned(),
        );
    }
    if starts("invalid date") || starts("invalid time") || starts("invalid datetime") {
        return (
            format!("`{written}` is not a date"),
            format!("put dates in quotes: \"{written}\""),
        );
    }
    if starts("extra `=`") || starts("unexpected `=`") || starts("extra assignment") {
        return pair("there is an equals sign too many", "remove it");
    }
    if starts("carriage return") {
        return pair(
            "a line ends in the middle",
            "end lines as your editor does by default; a lone carriage return is not an end of line",
        );
    }
    if said.contains("recurs") {
        return pair(
            "this is nested deeper than any record",
            "take tables and lists apart",
        );
    }
    if starts("invalid unquoted key") && written.contains(is_curly) {
        return pair(
            "a key stands in curly quotes",
            "write the key without quotes",
        );
    }
    if starts("invalid unquoted key") || starts("unquoted keys") || starts("missing key") {
        return pair(
            "there is no key here, or one with a character that keys cannot have",
            "keys are letters, digits, _ and -",
        );
    }
    if said.contains("number")
        || said.contains("integer")
        || said.contains("float")
        || said.contains("sign")
        || said.contains("radix")
        || said.contains('_')
    {
        return (
            format!("`{written}` is not a number"),
            "write digits, with a point before tenths, or put it in quotes if it is text"
                .to_owned(),
        );
    }
    pair(
        "this is no TOML",
        "compare the line with a record that can be read; what was meant is unclear",
    )
}

/// Numbers that are not written as numbers: "230 x 290" in a list or without one, "290 mm". `numbers`: as they are to be
/// written.
fn no_numbers(written: &str, numbers: &[String], start: usize, text: &str) -> (String, String) {
    let before = text.get(..start).unwrap_or_default().trim_end();
    let all = numbers.join(", ");
    let message = format!("`{written}` is no number");
    let help = match numbers {
        [one] => format!("write the number alone, without a unit: {one}"),
        _ if before.ends_with(['[', ',']) => {
            format!("put commas between the numbers, in millimetres, and no quotes: {all}")
        }
        _ => format!("write a list in millimetres, height first: [{all}]"),
    };
    (message, help)
}

/// The text in curly quotes (or other quotes of print) that begins at a byte. `written`: what was read of it; it ends at a
/// comma.
fn in_curly_quotes<'t>(written: &'t str, start: usize, text: &'t str) -> Option<&'t str> {
    if !written.starts_with(is_curly) {
        return None;
    }
    let inside = if let Some(inside) = written.strip_suffix(is_closing_curly) {
        inside
    } else {
        let line = line_around(text, start);
        let rest = text.get(start..line.end)?;
        rest.rfind(is_closing_curly)
            .filter(|end| *end > 0)
            .and_then(|end| rest.get(..end))
            .unwrap_or(written)
    };
    Some(inside.trim_matches(is_curly))
}

/// The part of a line before a byte.
fn line_before(text: &str, at: usize) -> &str {
    let line = line_around(text, at);
    text.get(line.start..at).unwrap_or_default()
}

fn is_curly(c: char) -> bool {
    is_opening_curly(c) || is_closing_curly(c)
}

fn is_opening_curly(c: char) -> bool {
    matches!(c, '“' | '„' | '‘' | '‚' | '«' | '»' | '‹' | '›')
}

/// “ closes a text in German, » one in French and German.
fn is_closing_curly(c: char) -> bool {
    matches!(c, '”' | '“' | '’' | '‘' | '«' | '»' | '‹' | '›')
}

/// How to close the header on the line of a byte.
fn closed_header(text: &str, at: usize) -> String {
    let line = text.get(line_around(text, at)).unwrap_or_default();
    let is_name = |c: char| c.is_alphanumeric() || matches!(c, '-' | '_' | '.');
    let name = line.trim().trim_start_matches('[');
    let name = name.split(|c| !is_name(c)).next().unwrap_or_default();
    if line.trim().starts_with("[[") {
        format!("end it with two brackets: [[{name}]]")
    } else {
        format!("end it with a bracket: [{name}]")
    }
}
