//! The elements and texts of an XML document, without their namespaces.
//!
//! References to characters and the five predefined entities are resolved; a document that declares a type is refused,
//! since only there entities are declared.

use std::borrow::Cow;
use std::io::BufRead;

use quick_xml::Reader;
use quick_xml::events::{BytesStart, Event};

use super::fault::TableFault;

/// A part of a document.
pub(in crate::exchange::intake) enum Node<'n> {
    /// An element begins.
    Open(Element<'n>),
    /// An element ends.
    Close(&'n str),
    /// A text, or a part of one.
    Text(&'n str),
}

/// An element that begins.
pub(in crate::exchange::intake) struct Element<'n> {
    start: &'n BytesStart<'n>,
    /// Its name without a prefix.
    pub name: &'n str,
}

impl Element<'_> {
    /// An attribute by its name without a prefix.
    pub fn attribute(&self, name: &str) -> Option<String> {
        let found = self
            .start
            .attributes()
            .with_checks(false)
            .flatten()
            .find(|attribute| local(attribute.key.as_ref()) == name)?;
        let value = quick_xml::escape::unescape(&found.value).ok()?;
        Some(value.into_owned())
    }

    /// Every attribute but declarations of namespaces: its name without a prefix, and its value.
    pub fn attributes(&self) -> Vec<(String, String)> {
        let mut found = Vec::new();
        for attribute in self.start.attributes().with_checks(false).flatten() {
            let name: &str = attribute.key.as_ref();
            if name == "xmlns" || name.starts_with("xmlns:") {
                continue;
            }
            let value = quick_xml::escape::unescape(&attribute.value);
            let value = value.map_or_else(|_| attribute.value.to_string(), Cow::into_owned);
            found.push((local(name).to_owned(), value));
        }
        found
    }

    /// An attribute that is a number.
    pub fn number(&self, name: &str) -> Option<u32> {
        self.attribute(name)?.trim().parse().ok()
    }
}

fn local(name: &str) -> &str {
    name.rsplit_once(':').map_or(name, |(_, local)| local)
}

/// Goes over a document; `visit` is called for every part of it in order, until one call fails.
///
/// # Errors
/// The first fault of the document or of a call.
pub(in crate::exchange::intake) fn walk(
    source: impl BufRead,
    part: &str,
    mut visit: impl FnMut(Node<'_>) -> Result<(), TableFault>,
) -> Result<(), TableFault> {
    let mut reader = Reader::from_reader(source);
    reader.config_mut().expand_empty_elements = true;
    reader.config_mut().allow_dangling_amp = true;
    let mut buffer = Vec::new();
    loop {
        buffer.clear();
        let event = reader.read_event_into(&mut buffer).map_err(|_| {
            TableFault::damaged(part, "it is no sound XML, or longer than it may be")
        })?;
        match event {
            Event::Start(start) => {
                let name = start.name();
                let name = local(name.as_ref());
                visit(Node::Open(Element {
                    start: &start,
                    name,
                }))?;
            }
            Event::End(end) => {
                let name = end.name();
                visit(Node::Close(local(name.as_ref())))?;
            }
            Event::Text(text) => visit(Node::Text(&text))?,
            Event::CData(text) => visit(Node::Text(&text))?,
            Event::GeneralRef(reference) => {
                if let Ok(Some(letter)) = reference.resolve_char_ref() {
                    visit(Node::Text(letter.encode_utf8(&mut [0; 4])))?;
                } else {
                    let name: &str = &reference;
                    let known = quick_xml::escape::resolve_predefined_entity(name);
                    visit(Node::Text(known.unwrap_or("\u{fffd}")))?;
                }
            }
            Event::DocType(_) => {
                return Err(TableFault::DeclaresEntities {
                    part: part.to_owned(),
                });
            }
            Event::Eof => return Ok(()),
            _ => {}
        }
    }
}
