//! Markdown: the texts beside records, and the catalogue's own pages.
//!
//! In: the text of a Markdown file. Out: its [`Occurrences`] (the text itself and its links to records,
//! with exact places), and findings on links that lead nowhere and on markup that is left out of the
//! page ([`read`]); pages with their titles ([`page`]). [`super::resolve`] checks whether the record
//! of a link exists; the stage `page` makes HTML from the text.

use std::collections::BTreeMap;
use std::ops::Range;

use pulldown_cmark::{Event, LinkType, Options, Parser, Tag, TagEnd};

use crate::model::codes::Code;
use crate::model::finding::Finding;
use crate::model::former::FormerKeys;
use crate::model::key::Key;
use crate::model::link::Target;
use crate::model::note::{MARKDOWN, Note, Page};
use crate::model::occurrence::{MentionRole, Occurrences, Reference, Referent, TextAt};
use crate::model::place::{FileId, Place};
use crate::read::faults::bounded;
use crate::read::limits::DEEPEST_NESTING;
use crate::read::references::renewed::Renewed;
use crate::read::values::links::{LinkTarget, nowhere};

/// A link or picture in a text.
#[derive(Clone, Debug, PartialEq)]
struct Link {
    /// Its target.
    target: LinkTarget,
    /// The destination as written.
    destination: String,
    /// Whether it is a picture (`![…](…)`).
    is_picture: bool,
    /// The place of the destination, without brackets.
    place: Place,
}

impl Link {
    /// The link as a reference to the record `now`.
    fn renewed(&self, now: &Target) -> Renewed {
        Renewed {
            place: self.place,
            was: self.destination.clone(),
            now: now.to_string(),
        }
    }
}

/// The links of a text by former keys.
pub(crate) fn renewed(note: &Note, former: &FormerKeys) -> Vec<Renewed> {
    let all = links(note).into_iter();
    all.filter_map(|link| match &link.target {
        LinkTarget::Record(target) => Some(link.renewed(&former.record(target)?)),
        _ => None,
    })
    .collect()
}

/// The text and its links to records, and the findings on it. A link by a former key leads to the record that has
/// a new one.
pub(crate) fn read(note: &Note, former: &FormerKeys) -> (Occurrences, Vec<Finding>) {
    let mut occurrences = Occurrences::default();
    if !note.text.trim().is_empty() {
        let whole = Place::new(note.file, 0..note.text.len());
        occurrences.texts.push(TextAt::as_written("", whole));
    }
    if let Some(at) = too_deep(&note.text) {
        return (occurrences, vec![nested_too_deep(note.file, at)]);
    }
    let mut findings = markup(note);
    for link in links(note) {
        match &link.target {
            LinkTarget::Record(target)
                if !link.is_picture || matches!(target, Target::Picture(_)) =>
            {
                let now = former.record(target);
                findings.extend(now.as_ref().map(|now| link.renewed(now).hint()));
                let target = now.unwrap_or_else(|| target.clone());
                occurrences.references.push(Reference {
                    to: Referent::Record(target, MentionRole::Linked),
                    place: link.place,
                    locator: None,
                });
            }
            LinkTarget::Record(_) | LinkTarget::Outside if link.is_picture => {
                let message = "a picture in a text must be one of the catalogue's own";
                findings.push(Finding::new(Code::LinkUnknown, link.place, message).help(
                    "record the picture with its design or impression, and write picture:14.1/recto",
                ));
            }
            LinkTarget::Record(_) | LinkTarget::Outside => {}
            LinkTarget::Running => findings.push(
                Finding::new(
                    Code::MarkupCleaned,
                    link.place,
                    "a link that would run a script or carry data is left out of the page",
                )
                .help("link to a record, or to an https address"),
            ),
            LinkTarget::Nowhere => findings.push(nowhere(&link.destination, link.place)),
        }
    }
    (occurrences, bounded(findings))
}

fn nested_too_deep(file: FileId, at: Range<usize>) -> Finding {
    let message =
        format!("this is nested more than {DEEPEST_NESTING} deep, so the text is not read");
    Finding::new(Code::NestedTooDeep, Place::new(file, at), message)
        .help("take quotations, lists and emphases apart")
}

/// Where a text is nested more than [`DEEPEST_NESTING`] deep. The signs of quotations and lists at the
/// starts of lines are counted before the text is parsed, because the parser goes through them line by
/// line.
fn too_deep(text: &str) -> Option<Range<usize>> {
    let mut start = 0;
    for line in text.split_inclusive('\n') {
        if let Some(at) = signs_before(line) {
            return Some(start + at..start + at + 1);
        }
        start += line.len();
    }
    let mut depth = 0_usize;
    for (event, span) in Parser::new_ext(text, MARKDOWN).into_offset_iter() {
        match event {
            Event::Start(_) => depth += 1,
            Event::End(_) => depth = depth.saturating_sub(1),
            _ => {}
        }
        // Each item of a list lies in its list, and each text in its paragraph.
        if depth > 2 * DEEPEST_NESTING {
            let first = text.get(span.start..).and_then(|rest| rest.chars().next());
            return Some(span.start..span.start + first.map_or(0, char::len_utf8));
        }
    }
    None
}

/// The byte of a line at which more than [`DEEPEST_NESTING`] signs of quotations and lists stand before
/// its words. A row of one bullet alone is a rule.
fn signs_before(line: &str) -> Option<usize> {
    let bytes = line.trim_end().as_bytes();
    let ends_sign = |at: usize| {
        bytes
            .get(at)
            .is_none_or(|next| matches!(next, b' ' | b'\t'))
    };
    let mut signs: Vec<(usize, u8)> = Vec::new();
    let mut at = 0;
    while let Some(sign) = bytes.get(at) {
        match sign {
            // Space, and the number of an item.
            b' ' | b'\t' | b'0'..=b'9' => {}
            b'>' => signs.push((at, *sign)),
            b'-' | b'+' | b'*' | b'.' | b')' if ends_sign(at + 1) => signs.push((at, *sign)),
            _ => break,
        }
        at += 1;
    }
    let (beyond, sign) = *signs.get(DEEPEST_NESTING)?;
    let is_rule = at == bytes.len() && sign != b'>' && signs.iter().all(|(_, s)| *s == sign);
    (!is_rule).then_some(beyond)
}

/// The links and pictures of a text, in its order.
fn links(note: &Note) -> Vec<Link> {
    let parser = note.parser();
    let mut definitions: BTreeMap<String, Range<usize>> = BTreeMap::new();
    for (id, definition) in parser.reference_definitions().iter() {
        let span = || definition.span.clone();
        definitions.entry(id.to_lowercase()).or_insert_with(span);
    }
    let mut links = Vec::new();
    for (event, span) in parser.into_offset_iter() {
        let (is_picture, link_type, destination, id) = match event {
            Event::Start(Tag::Link {
                link_type,
                dest_url,
                id,
                ..
            }) => (false, link_type, dest_url, id),
            Event::Start(Tag::Image {
                link_type,
                dest_url,
                id,
                ..
            }) => (true, link_type, dest_url, id),
            _ => continue,
        };
        // The destination of `[text][id]` is in its definition.
        let defined = definitions.get(&id.to_lowercase());
        let within = match (link_type, defined) {
            (LinkType::Inline | LinkType::Autolink | LinkType::Email, _) | (_, None) => span,
            (_, Some(definition)) => definition.clone(),
        };
        links.push(Link {
            target: if link_type == LinkType::Email {
                LinkTarget::Outside
            } else {
                LinkTarget::of(&destination)
            },
            is_picture,
            place: Place::new(note.file, target_span(&note.text, within, &destination)),
            destination: destination.into_string(),
        });
    }
    links
}

/// The bytes of `destination` in a link: its last occurrence before any title. A destination written
/// with escapes is not found in the text; then the place is the whole link.
fn target_span(text: &str, link: Range<usize>, destination: &str) -> Range<usize> {
    let written = text.get(link.clone()).unwrap_or_default();
    let after_text = written.rfind("](").map_or(0, |at| at + 2);
    let found = written
        .get(after_text..)
        .and_then(|rest| rest.find(destination))
        .map(|at| after_text + at);
    match found.or_else(|| written.find(destination)) {
        Some(at) if !destination.is_empty() => link.start + at..link.start + at + destination.len(),
        _ => link,
    }
}

/// Reports HTML in a text; it is left out of the page.
fn markup(note: &Note) -> Vec<Finding> {
    let mut findings = Vec::new();
    // A comment of several lines comes line by line.
    let mut is_comment = false;
    for (event, span) in note.parser().into_offset_iter() {
        match event {
            Event::Html(_) | Event::InlineHtml(_) => {}
            _ => {
                is_comment = false;
                continue;
            }
        }
        let source = note.text.get(span.clone()).unwrap_or_default();
        let markup = source.trim();
        if is_comment || markup.starts_with("<!--") {
            is_comment = !markup.ends_with("-->");
            continue;
        }
        // A closing tag is reported together with its opening tag.
        if markup.is_empty() || markup.starts_with("</") {
            continue;
        }
        let start = span.start + source.len() - source.trim_start().len();
        let place = Place::new(note.file, start..start + markup.len());
        findings.push(
            Finding::new(
                Code::MarkupCleaned,
                place,
                "HTML in a text is left out of the page",
            )
            .help("write it in Markdown, or leave it out"),
        );
    }
    findings
}

/// One of the catalogue's own pages. Its title is its first heading.
pub(crate) fn page(key: Key, file: FileId, text: &str) -> (Page, Vec<Finding>) {
    let note = Note {
        file,
        text: text.to_owned(),
    };
    // The text of a page that is nested too deep is reported by `read`.
    let title = match too_deep(text) {
        Some(_) => Some(key.to_string()),
        None => first_heading(&note),
    };
    let mut findings = Vec::new();
    if title.is_none() {
        let message = format!("the page `{key}` has no heading, which would be its title");
        findings.push(
            Finding::new(Code::ValueEmpty, Place::start_of(file), message)
                .help("begin the page with a heading: # How to cite"),
        );
    }
    let title = title.unwrap_or_else(|| key.to_string());
    (Page { key, title, note }, findings)
}

/// The first heading that is not blank, as plain text.
fn first_heading(note: &Note) -> Option<String> {
    let mut heading: Option<String> = None;
    // The title is plain text, with quotes and hyphens as written.
    let plain = MARKDOWN.difference(Options::ENABLE_SMART_PUNCTUATION);
    for event in Parser::new_ext(&note.text, plain) {
        match (event, heading.as_mut()) {
            (Event::Start(Tag::Heading { .. }), _) => heading = Some(String::new()),
            (Event::Text(words) | Event::Code(words), Some(title)) => title.push_str(&words),
            (Event::SoftBreak | Event::HardBreak, Some(title)) => title.push(' '),
            (Event::End(TagEnd::Heading(_)), Some(title)) if !title.trim().is_empty() => {
                return Some(title.trim().to_owned());
            }
            (Event::End(TagEnd::Heading(_)), _) => heading = None,
            _ => {}
        }
    }
    None
}

#[cfg(test)]
mod tests {
    use super::*;

    fn note(text: &str) -> Note {
        Note {
            file: FileId::default(),
            text: text.to_owned(),
        }
    }

    fn places(text: &str) -> Vec<&str> {
        links(&note(text))
            .iter()
            .map(|link| text.get(link.place.span()).unwrap())
            .collect()
    }

    #[test]
    fn every_link_is_found_at_its_target() {
        let text = "See [the lock](design:14), [](impression:14.1) and\n*no. 22* of [](lit:first-list \"p. 31\").\n\n![A detail](picture:14.1/recto)\n\n[elsewhere][r] <https://example.org>\n\n[r]: holder:harbour-museum\n";
        assert_eq!(
            places(text),
            [
                "design:14",
                "impression:14.1",
                "lit:first-list",
                "picture:14.1/recto",
                "holder:harbour-museum",
                "https://example.org"
            ]
        );
        assert_eq!(
            places("[design:1](design:1)[](<design:2>)"),
            ["design:1", "design:2"]
        );
        let twice = "[design:14](design:14)";
        assert_eq!(links(&note(twice))[0].place.span(), 12..21);
    }

    #[test]
    fn links_are_told_apart_by_where_they_lead() {
        let of = |text: &str| links(&note(text)).remove(0).target;
        assert!(matches!(
            of("[a](design:14)"),
            LinkTarget::Record(Target::Design(_))
        ));
        assert_eq!(of("[a](https://example.org)"), LinkTarget::Outside);
        assert_eq!(of("[a](mailto:a@example.org)"), LinkTarget::Outside);
        assert_eq!(of("<a@example.org>"), LinkTarget::Outside);
        assert_eq!(of("[a](JavaScript:alert)"), LinkTarget::Running);
        assert_eq!(of("[a](<java\tscript:alert>)"), LinkTarget::Running);
        assert_eq!(of("[a](other.md)"), LinkTarget::Nowhere);
        assert_eq!(of("[a](//example.org)"), LinkTarget::Nowhere);
    }

    #[test]
    fn markup_is_told_once_and_comments_are_not() {
        let text = "A <b>bold</b> word. <!-- aside -->\n\n<script>alert(1)</script>\n\n[x](javascript:alert)";
        let (_, findings) = read(&note(text), &FormerKeys::default());
        let told: Vec<_> = findings
            .iter()
            .map(|f| text.get(f.at.place.span()).unwrap())
            .collect();
        assert_eq!(
            told,
            ["<b>", "<script>alert(1)</script>", "javascript:alert"]
        );
    }

    #[test]
    fn a_comment_of_several_lines_is_none_of_it_told() {
        let told = |text: &str| markup(&note(text)).len();
        assert_eq!(
            told("<!-- One.\n<b>Two.</b>\nThree. -->\n\n<b>Four.</b>\n"),
            1
        );
        assert_eq!(told("<!-- One.\n\n\t\u{ad}"), 0);
    }

    /// What is told of begins with the first sign and ends with the last, also after a tab and a soft hyphen. Found by
    /// `fuzz::markdown`: a place ended within a character.
    #[test]
    fn markup_is_placed_without_the_space_around_it() {
        let text = "<div>\n\t\u{ad}\n</div>\n";
        let found = markup(&note(text));
        let places: Vec<&str> = found.iter().map(|f| &text[f.at.place.span()]).collect();
        assert_eq!(places, ["<div>", "\u{ad}"]);
    }

    #[test]
    fn a_text_nested_too_deep_is_told_and_not_read() {
        let deep = DEEPEST_NESTING + 1;
        for (text, at) in [
            ("> ".repeat(100_000) + "a\n", 64),
            (">".repeat(100_000), 32),
            ("- ".repeat(100_000) + "a", 64),
            ("1. ".repeat(100_000) + "a", 97),
            ("- + ".repeat(100_000), 64),
            (format!("Text\n\n{}a\n", "> ".repeat(deep)), 70),
        ] {
            assert_eq!(too_deep(&text), Some(at..at + 1), "{}", &text[..20]);
            let (_, findings) = read(&note(&text), &FormerKeys::default());
            assert_eq!(findings[0].code, Code::NestedTooDeep);
            page("a".parse().unwrap(), FileId::default(), &text);
        }
        let indented = |n: usize| -> String {
            let item = |depth| " ".repeat(2 * depth) + "- a\n";
            (0..n).map(item).collect()
        };
        assert!(too_deep(&indented(3 * DEEPEST_NESTING)).is_some());
        for text in [
            "* ".repeat(100),
            "-".repeat(100),
            "> > > a".to_owned(),
            indented(10),
            "a ".to_owned() + &"> ".repeat(100),
            "2020 - 2021 + 1. 2. 3.\n".repeat(100),
        ] {
            assert_eq!(too_deep(&text), None, "{}", &text[..7]);
        }
    }

    #[test]
    fn the_title_of_a_page_is_its_first_heading() {
        let title = |text: &str| page("a".parse().unwrap(), FileId::default(), text).0.title;
        assert_eq!(title("# *How* to cite\n\nText\n\n## More"), "How to cite");
        assert_eq!(title("Text first\n\nSetext\n======\n"), "Setext");
        let (page, findings) = page("about".parse().unwrap(), FileId::default(), "No heading.\n");
        assert_eq!(page.title, "about");
        assert_eq!(findings[0].code, Code::ValueEmpty);
    }
}
