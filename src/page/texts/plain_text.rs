//! Markdown as the words that readers see, without markup.
//!
//! Markup in the text is left out, as on pages. A link without a text gives the short name of its record; of a
//! picture the alternative text remains.
//!
//! [`note`] gives them in one line, for the search; [`by_lines`] with the lines and parts that the text has.

use pulldown_cmark::{Event, Parser, Tag, TagEnd};

use super::lines::numbers_as_written;
use crate::model::link::Target;
use crate::model::note::{MARKDOWN, Note};
use crate::page::setting::book::Here;

/// The words of a note; empty where there is none.
pub(crate) fn note(here: &Here<'_>, note: Option<&Note>) -> String {
    let Some(note) = note else {
        return String::new();
    };
    words(here, note.parser(), |event| match event {
        Event::Start(Tag::Emphasis | Tag::Strong | Tag::Strikethrough)
        | Event::End(TagEnd::Emphasis | TagEnd::Strong | TagEnd::Strikethrough) => "",
        _ => " ",
    })
}

/// The words of a document, each of its lines a line, and an empty one between parts.
pub(crate) fn by_lines(here: &Here<'_>, note: &Note) -> String {
    let text = numbers_as_written(&note.text);
    let all = words(
        here,
        Parser::new_ext(&text, MARKDOWN),
        |event| match event {
            Event::SoftBreak
            | Event::HardBreak
            | Event::End(TagEnd::Item | TagEnd::TableRow | TagEnd::TableHead) => "\n",
            Event::End(TagEnd::TableCell) => " ",
            Event::End(
                TagEnd::Paragraph
                | TagEnd::Heading(_)
                | TagEnd::CodeBlock
                | TagEnd::Table
                | TagEnd::List(_),
            )
            | Event::Rule => "\n\n",
            _ => "",
        },
    );
    let lines = all.trim().lines().map(str::trim);
    let mut out = String::with_capacity(all.len());
    let mut is_after_empty = false;
    for line in lines {
        if !(line.is_empty() && is_after_empty) {
            out.push_str(line);
            out.push('\n');
        }
        is_after_empty = line.is_empty();
    }
    out.truncate(out.trim_end().len());
    out
}

/// The words of a text, with what `between` puts in place of everything that is no word.
fn words<'t>(
    here: &Here<'_>,
    events: impl Iterator<Item = Event<'t>>,
    between: impl Fn(&Event<'t>) -> &'static str,
) -> String {
    let mut out = String::new();
    // The link that was just opened.
    let mut opened: Option<String> = None;
    for event in events {
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
            other => out.push_str(between(&other)),
        }
        opened = None;
    }
    out
}
