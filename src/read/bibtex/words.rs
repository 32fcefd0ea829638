//! Words faults of BibTeX for cataloguers.

use biblatex::{ParseErrorKind, Token, TypeErrorKind};

/// The message and the help for an entry that cannot be parsed.
pub(super) fn words_for_syntax(kind: &ParseErrorKind) -> (String, &'static str) {
    const CLOSE: &str = "look for a brace or quotation mark that has no partner";
    let (message, help) = match kind {
        ParseErrorKind::UnexpectedEof => ("this entry of the literature is never closed", CLOSE),
        ParseErrorKind::Unexpected(Token::DecimalPoint) => (
            "a number has two decimal points",
            "put the value in braces: {…}",
        ),
        ParseErrorKind::Unexpected(_) => ("a sign stands here that belongs to no field", CLOSE),
        ParseErrorKind::Expected(Token::Comma) => (
            "a comma is missing before this",
            "put a comma after the key and after each field",
        ),
        ParseErrorKind::Expected(Token::Equals) => (
            "an equals sign is missing before this",
            "write each field as name = {value}",
        ),
        ParseErrorKind::Expected(Token::Identifier) => (
            "the name of a field or of a kind of work is missing here",
            "write each field as name = {value}",
        ),
        ParseErrorKind::Expected(_) => ("a brace or quotation mark is missing here", CLOSE),
        ParseErrorKind::UnknownAbbreviation(word) => {
            return (
                format!("`{word}` is not an abbreviation that the file declares"),
                "put the value in braces: {…}, or declare it with @string",
            );
        }
        ParseErrorKind::MalformedCommand => (
            "a TeX command is not complete",
            "write the letter itself: files are UTF-8",
        ),
        ParseErrorKind::ResolutionError(kind) => {
            let (message, help) = words_for_type(kind);
            return (message.to_owned(), help);
        }
        _ => (
            "this is not BibTeX",
            "compare it with an entry that can be read",
        ),
    };
    (message.to_owned(), help)
}

/// The message and the help for a field that cannot be understood.
pub(super) fn words_for_type(kind: &TypeErrorKind) -> (&'static str, &'static str) {
    const DATE: &str = "write year = {1961}, or date = {1961-05}";
    match kind {
        TypeErrorKind::UndefinedRange => ("a date is open at both ends", DATE),
        TypeErrorKind::DayOutOfRange => ("a date has a day that no month has", DATE),
        TypeErrorKind::MonthOutOfRange => ("a date has a month that no year has", DATE),
        TypeErrorKind::YearZeroCE => ("a date has a year that does not exist", DATE),
        TypeErrorKind::WrongNumberOfDigits => ("a date has too many or too few digits", DATE),
        TypeErrorKind::InvalidNumber
        | TypeErrorKind::MissingNumber
        | TypeErrorKind::InvalidIntegerRange => ("a number belongs here", "write digits only"),
        TypeErrorKind::UnknownEditorType => {
            ("the kind of editor is not known", "remove `editortype`")
        }
        _ => (
            "the value is not of the form that this field takes",
            "compare it with an entry that can be read",
        ),
    }
}
