//! Clean HTML: the only text that templates print unescaped.
//!
//! A [`CleanHtml`] is made of escaped text and of elements written in this stage's code, so no text of
//! a record becomes markup. Templates get it as a value marked as safe and never switch escaping off.

use std::borrow::Cow;
use std::fmt::Write as _;

use serde::{Serialize, Serializer};

use crate::model::direction::is_right_to_left;

/// HTML in which every record's text has been escaped.
///
/// Invariant: only this module and `markdown` make it, from escaped text and known elements.
#[derive(Clone, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub struct CleanHtml(String);

impl CleanHtml {
    /// The empty text.
    pub fn empty() -> CleanHtml {
        CleanHtml::default()
    }

    /// Text, escaped, its apostrophes as they are printed. Text that is written from right to left is isolated, so that
    /// it does not reorder the words, numbers and commas around it.
    pub fn text(text: &str) -> CleanHtml {
        let mut out = CleanHtml(String::with_capacity(text.len()));
        out.push_text(text);
        out
    }

    /// HTML that the caller has escaped: cleaned Markdown and formatted references.
    pub(crate) fn trusted(html: String) -> CleanHtml {
        CleanHtml(html)
    }

    /// Data for a script, as the text of a `script` element of type `application/json`: no character
    /// of it can end the element or begin another.
    pub fn data(data: &impl Serialize) -> CleanHtml {
        let json = serde_json::to_string(data).unwrap_or_default();
        let json = json.replace('<', "\\u003c").replace('>', "\\u003e");
        CleanHtml(json.replace('&', "\\u0026"))
    }

    /// An element around `inner`. Names of elements and attributes come from this program; values of
    /// attributes are escaped.
    pub fn element(
        name: &'static str,
        attributes: &[(&'static str, &str)],
        inner: &CleanHtml,
    ) -> CleanHtml {
        let mut out = String::with_capacity(inner.0.len() + 48);
        out.push('<');
        out.push_str(name);
        for (attribute, value) in attributes {
            let _ = write!(out, " {attribute}=\"");
            escape_into(&mut out, value);
            out.push('"');
        }
        out.push('>');
        out.push_str(&inner.0);
        let _ = write!(out, "</{name}>");
        CleanHtml(out)
    }

    /// A link.
    pub fn link(href: &str, inner: &CleanHtml) -> CleanHtml {
        CleanHtml::element("a", &[("href", href)], inner)
    }

    /// A link out of the catalogue that shows its address; plain text where that is no web address.
    pub fn web_address(address: &str) -> CleanHtml {
        let text = CleanHtml::text(address);
        if address.starts_with("https://") || address.starts_with("http://") {
            let attributes = [
                ("class", "bare-address"),
                ("href", address),
                ("rel", "noopener noreferrer external"),
            ];
            CleanHtml::element("a", &attributes, &text)
        } else {
            text
        }
    }

    /// A link out of the catalogue with a text of its own; the text alone where the address is no web address. `title`
    /// says where it leads.
    pub fn link_out(address: &str, title: &str, inner: &CleanHtml) -> CleanHtml {
        if address.starts_with("https://") || address.starts_with("http://") {
            let attributes = [
                ("href", address),
                ("rel", "noopener noreferrer external"),
                ("title", title),
            ];
            CleanHtml::element("a", &attributes, inner)
        } else {
            inner.clone()
        }
    }

    /// A span of a class.
    pub fn span(class: &'static str, inner: &CleanHtml) -> CleanHtml {
        CleanHtml::element("span", &[("class", class)], inner)
    }

    /// Text in quiet ink; empty for no text.
    pub fn quiet(text: &str) -> CleanHtml {
        if text.is_empty() {
            CleanHtml::empty()
        } else {
            CleanHtml::span("quiet", &CleanHtml::text(text))
        }
    }

    /// A number at the end of a line of an index.
    pub fn count(number: &CleanHtml) -> CleanHtml {
        CleanHtml::text(" ").and(&CleanHtml::span("count", number))
    }

    /// Adds `other` at the end.
    pub fn push(&mut self, other: &CleanHtml) {
        self.0.push_str(&other.0);
    }

    /// Adds text at the end, escaped and isolated as [`CleanHtml::text`] is.
    pub fn push_text(&mut self, text: &str) {
        let printed = with_apostrophes(text);
        let text = printed.as_ref();
        if text.chars().any(is_right_to_left) {
            self.0.push_str("<bdi>");
            escape_into(&mut self.0, text);
            self.0.push_str("</bdi>");
        } else {
            escape_into(&mut self.0, text);
        }
    }

    /// The same with `text`, escaped, at the end.
    #[must_use]
    pub fn then(mut self, text: &str) -> CleanHtml {
        self.push_text(text);
        self
    }

    /// The same with `other` at the end.
    #[must_use]
    pub fn and(mut self, other: &CleanHtml) -> CleanHtml {
        self.push(other);
        self
    }

    /// All of `parts` with `between` between them; empty parts are left out.
    pub fn join<'a>(parts: impl IntoIterator<Item = &'a CleanHtml>, between: &str) -> CleanHtml {
        let mut out = CleanHtml::empty();
        for part in parts.into_iter().filter(|p| !p.is_empty()) {
            if !out.is_empty() {
                out.push_text(between);
            }
            out.push(part);
        }
        out
    }

    /// Whether it is empty.
    pub fn is_empty(&self) -> bool {
        self.0.is_empty()
    }

    /// `None` where it is empty, so that a template can leave it out.
    pub fn some(self) -> Option<CleanHtml> {
        if self.is_empty() { None } else { Some(self) }
    }

    /// The HTML.
    pub fn as_str(&self) -> &str {
        &self.0
    }

    /// The text alone, for titles, descriptions and alternative texts.
    pub fn plain(&self) -> String {
        let mut out = String::with_capacity(self.0.len());
        let mut in_tag = false;
        for c in self.0.chars() {
            match c {
                '<' => in_tag = true,
                '>' => in_tag = false,
                c if !in_tag => out.push(c),
                _ => {}
            }
        }
        if !out.contains('&') {
            return out;
        }
        out.replace("&lt;", "<")
            .replace("&gt;", ">")
            .replace("&quot;", "\"")
            .replace("&#39;", "'")
            .replace("&amp;", "&")
    }
}

impl Serialize for CleanHtml {
    /// As a value that templates print without escaping.
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        tera::Value::safe_string(&self.0).serialize(serializer)
    }
}

/// `html` with its first letter as a capital, where it begins with a lower-case letter and not with an
/// element.
pub(crate) fn capitalised(html: &CleanHtml) -> CleanHtml {
    let text = html.as_str();
    match text.chars().next() {
        Some(first) if first.is_lowercase() => {
            let rest = text.get(first.len_utf8()..).unwrap_or_default();
            CleanHtml::text(&first.to_uppercase().to_string())
                .and(&CleanHtml::trusted(rest.to_owned()))
        }
        _ => html.clone(),
    }
}

/// `html` with its first letter as a capital, where it begins with a lower-case letter, be it within brackets
/// or elements.
pub(crate) fn sentence_start(html: &CleanHtml) -> CleanHtml {
    let (before, text) = html.as_str().split_at(first_letter(html.as_str()));
    let rest = capitalised(&CleanHtml::trusted(text.to_owned()));
    CleanHtml::trusted(before.to_owned()).and(&rest)
}

/// The byte at which the text begins, after brackets and the tags of elements.
pub(crate) fn first_letter(html: &str) -> usize {
    let mut rest = html;
    loop {
        let after = match rest.strip_prefix('(') {
            Some(after) => after,
            None => match rest.strip_prefix('<').and_then(|tag| tag.split_once('>')) {
                Some((_, after)) => after,
                None => return html.len() - rest.len(),
            },
        };
        rest = after;
    }
}

/// The parts as sentences, each with a capital and a full stop; empty parts are left out.
pub(crate) fn as_sentences(parts: &[CleanHtml]) -> CleanHtml {
    let mut out = CleanHtml::empty();
    for part in parts.iter().filter(|p| !p.is_empty()) {
        if !out.is_empty() {
            out.push_text(" ");
        }
        out.push(&capitalised(part));
        if !part.plain().ends_with(['.', '!', '?', '…']) {
            out.push_text(".");
        }
    }
    out
}

/// Text with apostrophes as they are printed: ’ for the typewriter's sign after a letter. Markdown does the same. A web
/// address stays as it is.
fn with_apostrophes(text: &str) -> Cow<'_, str> {
    if !text.contains('\'') || text.contains("://") {
        return Cow::Borrowed(text);
    }
    let mut before = ' ';
    let printed = text.chars().map(|c| {
        let is_apostrophe = c == '\'' && before.is_alphabetic();
        before = c;
        if is_apostrophe { '’' } else { c }
    });
    Cow::Owned(printed.collect())
}

/// Appends `text` with the five characters escaped that have a meaning in HTML.
pub(crate) fn escape_into(out: &mut String, text: &str) {
    // Most texts have none of them and are copied whole.
    let mut copied = 0;
    for (at, c) in text.char_indices() {
        let instead = match c {
            '&' => "&amp;",
            '<' => "&lt;",
            '>' => "&gt;",
            '"' => "&quot;",
            '\'' => "&#39;",
            // Control characters that HTML forbids, and marks that would reverse the direction of the
            // rest of a page.
            '\0'..='\u{8}'
            | '\u{b}'
            | '\u{c}'
            | '\u{e}'..='\u{1f}'
            | '\u{7f}'
            | '\u{202a}'..='\u{202e}' => "",
            _ => continue,
        };
        out.push_str(&text[copied..at]);
        out.push_str(instead);
        copied = at + c.len_utf8();
    }
    out.push_str(&text[copied..]);
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_apostrophe_after_a_letter_is_printed_as_one() {
        let printed = |text: &str| CleanHtml::text(text).plain();
        assert_eq!(
            printed("The Chandlers' Yard, the cooper's"),
            "The Chandlers’ Yard, the cooper’s"
        );
        // Minutes, feet and addresses are none.
        assert_eq!(printed("5' 6\""), "5' 6\"");
        assert_eq!(
            printed("https://example.org/o'b"),
            "https://example.org/o'b"
        );
    }

    #[test]
    fn text_and_attributes_are_escaped() {
        let hostile = "\"><script>alert('x')</script>";
        let link = CleanHtml::link(hostile, &CleanHtml::text(hostile));
        assert!(!link.as_str().contains("<script"));
        // A straight sign after a letter is printed as an apostrophe.
        assert_eq!(link.plain(), hostile.replace("x'", "x’"));
    }

    #[test]
    fn text_from_right_to_left_is_isolated_and_nothing_else_is() {
        let name = "\u{5e9}\u{5dc}\u{5d5}\u{5dd} & Co.";
        let isolated = "<bdi>\u{5e9}\u{5dc}\u{5d5}\u{5dd} &amp; Co.</bdi>";
        assert_eq!(CleanHtml::text(name).as_str(), isolated);
        let sentence = CleanHtml::text("owned by ").then(name).then(", 1927");
        assert_eq!(sentence.as_str(), format!("owned by {isolated}, 1927"));
        assert_eq!(sentence.plain(), format!("owned by {name}, 1927"));
        let link = CleanHtml::element("a", &[("title", name)], &CleanHtml::text("Майстер 日本"));
        assert!(!link.as_str().contains("bdi"), "{}", link.as_str());
    }

    #[test]
    fn data_cannot_end_its_element() {
        let data = CleanHtml::data(&["</script><!--", "&amp;"]);
        assert_eq!(
            data.as_str(),
            r#"["\u003c/script\u003e\u003c!--","\u0026amp;"]"#
        );
    }

    #[test]
    fn empty_parts_leave_no_comma() {
        let parts = [
            CleanHtml::text("a"),
            CleanHtml::empty(),
            CleanHtml::text("b"),
        ];
        assert_eq!(CleanHtml::join(&parts, ", ").as_str(), "a, b");
    }
}
