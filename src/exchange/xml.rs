//! XML documents in UTF-8 (XML 1.0, fifth edition), written by `quick-xml`. Every text passes through its escaping.
//!
//! In: elements with attributes and texts. Out: the bytes of a document.

use std::borrow::Cow;

use quick_xml::Writer;
use quick_xml::events::{BytesDecl, BytesEnd, BytesStart, BytesText, Event};

/// An attribute: its name and its value.
pub(super) type Attribute<'a> = (&'a str, &'a str);

/// A document, or a part of one, that is being written.
pub(super) struct Xml(Writer<Vec<u8>>);

impl Xml {
    /// A document that has its declaration and nothing else yet.
    pub fn document() -> Xml {
        let mut xml = Xml::part();
        xml.event(Event::Decl(BytesDecl::new("1.0", Some("UTF-8"), None)));
        xml.line();
        xml
    }

    /// A part of a document, without a declaration.
    pub fn part() -> Xml {
        Xml(Writer::new(Vec::new()))
    }

    /// Writes an element with what `content` writes in it.
    pub fn element(
        &mut self,
        name: &str,
        attributes: &[Attribute<'_>],
        content: impl FnOnce(&mut Xml),
    ) {
        self.event(Event::Start(start(name, attributes)));
        content(self);
        self.event(Event::End(BytesEnd::new(name)));
    }

    /// Writes an element with a text in it.
    pub fn text(&mut self, name: &str, attributes: &[Attribute<'_>], text: &str) {
        self.element(name, attributes, |xml| {
            xml.event(Event::Text(BytesText::new(&allowed(text))));
        });
    }

    /// Writes an element with a text in it, where there is one.
    pub fn some_text(&mut self, name: &str, attributes: &[Attribute<'_>], text: &str) {
        if !text.is_empty() {
            self.text(name, attributes, text);
        }
    }

    /// Adds a part that was written apart.
    pub fn add(&mut self, part: &[u8]) {
        self.0.get_mut().extend_from_slice(part);
    }

    /// Ends the line.
    pub fn line(&mut self) {
        self.add(b"\n");
    }

    /// The bytes.
    pub fn bytes(self) -> Vec<u8> {
        self.0.into_inner()
    }

    /// Writing to memory cannot fail.
    fn event(&mut self, event: Event<'_>) {
        let _ = self.0.write_event(event);
    }
}

fn start<'a>(name: &'a str, attributes: &[Attribute<'_>]) -> BytesStart<'a> {
    let mut start = BytesStart::new(name);
    for (name, value) in attributes {
        let value = allowed(value);
        start.push_attribute((*name, value.as_ref()));
    }
    start
}

/// The text with U+FFFD for each character that no XML document may hold (section 2.2): most control characters, which
/// the records may hold.
fn allowed(text: &str) -> Cow<'_, str> {
    let is_forbidden = |c: char| {
        let is_control = c < ' ' && !matches!(c, '\t' | '\n' | '\r');
        is_control || matches!(c, '\u{fffe}' | '\u{ffff}')
    };
    if text.contains(is_forbidden) {
        Cow::Owned(text.replace(is_forbidden, "\u{fffd}"))
    } else {
        Cow::Borrowed(text)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn texts_are_escaped_and_what_xml_forbids_is_replaced() {
        let mut xml = Xml::document();
        xml.element("a", &[("b", "\"<&\u{1}\"")], |xml| {
            xml.text("c", &[], "x < y & z > \u{0}]]>\u{ffff}");
            xml.some_text("d", &[], "");
        });
        let text = String::from_utf8(xml.bytes()).unwrap();
        assert_eq!(
            text,
            "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<a b=\"&quot;&lt;&amp;\u{fffd}&quot;\">\
             <c>x &lt; y &amp; z &gt; \u{fffd}]]&gt;\u{fffd}</c></a>"
        );
    }
}
