//! Markdown as the words that readers see, without markup.
//!
//! Markup in the text is left out, as on pages. A link without a text gives the short name of its record; of a
//! picture the alternative text remains.

use pulldown_cmark::{Event, Tag, TagEnd};

use crate::model::link::Target;
use crate::model::note::Note;
use crate::page::setting::book::Here;

/// The words of a note; empty where there is none.
pub(crate) fn note(here: &Here<'_>, note: Option<&Note>) -> String {
    let Some(note) = note else {
        return String::new();
    };
    let mut out = String::with_capacity(note.text.len());
    // The link that was just opened.
    let mut opened: Option<String> = None;
    for event in note.parser() {
        match event {
            Event::Text(text) | Event::Code(text) => out.push_str(&text),
            Event::Start(Tag::Link { dest_url, .. }) => {
                opened = Some(dest_url.into_string());
                continue;
            }
            Event::End(TagEnd::Link) => {
                let target = opened.take().and_then(|link| link.parse::<Target>().ok());
                if let Some((_, name)) = target.and_then(|target| here.target(&target)) {
                    out.push_str(&name.plain());
                }
            }
            Event::Start(Tag::Emphasis | Tag::Strong | Tag::Strikethrough)
            | Event::End(TagEnd::Emphasis | TagEnd::Strong | TagEnd::Strikethrough) => {}
            _ => out.push(' '),
        }
        opened = None;
    }
    out
}
