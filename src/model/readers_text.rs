//! The Markdown of a text without what readers may not have.
//!
//! Pages leave out markup and the targets of links to records that are not published. Files for other programs give
//! the Markdown itself, so it must not have them either.
//!
//! In: Markdown, and which records are published. Out: the same Markdown with parts cut out; everything else stays as
//! it was written, byte for byte.

use std::ops::Range;

use pulldown_cmark::{Event, LinkType, Parser, Tag, TagEnd};

use super::link::Target;
use super::note::MARKDOWN;

/// The text with every link to a record for which `is_published` is false reduced to its words, and without pictures
/// and definitions of links that lead to such records; `None` where it has none of them.
///
/// ```
/// # use keyblock_model::readers_text::unlinked;
/// let text = "Like [the other](impression:14.2), it is trimmed.";
/// assert_eq!(unlinked(text, |_| false).unwrap(), "Like the other, it is trimmed.");
/// assert_eq!(unlinked(text, |_| true), None);
/// ```
#[must_use]
pub fn unlinked(text: &str, is_published: impl Fn(&Target) -> bool) -> Option<String> {
    let is_withheld = |destination: &str| {
        let target = destination.parse::<Target>();
        target.is_ok_and(|target| !is_published(&target))
    };
    let parser = Parser::new_ext(text, MARKDOWN);
    let definitions = parser.reference_definitions().iter();
    let definitions = definitions.filter(|(_, definition)| is_withheld(&definition.dest));
    let mut cuts: Vec<Range<usize>> = definitions
        .map(|(_, definition)| whole_line(text, definition.span.clone()))
        .collect();
    let mut open: Vec<OpenLink> = Vec::new();
    for (event, range) in parser.into_offset_iter() {
        // The end of a link has the range of the whole link.
        let ended = match event {
            Event::End(TagEnd::Link) => open.pop(),
            _ => None,
        };
        if let Some(link) = ended.filter(|link| link.is_withheld) {
            cuts.extend(link.around_its_words());
        }
        for link in &mut open {
            link.words_end = link.words_end.max(range.end.min(link.whole.end));
        }
        match event {
            Event::Start(Tag::Link {
                link_type,
                dest_url,
                ..
            }) => open.push(OpenLink {
                words_start: match link_type {
                    // Its words are its target.
                    LinkType::Autolink => range.end,
                    _ => range.start + "[".len(),
                },
                words_end: range.start,
                is_withheld: is_withheld(&dest_url),
                whole: range,
            }),
            Event::Start(Tag::Image { dest_url, .. }) if is_withheld(&dest_url) => cuts.push(range),
            _ => {}
        }
    }
    (!cuts.is_empty()).then(|| without(text, cuts))
}

/// The text without HTML, comments included.
///
/// ```
/// # use keyblock_model::readers_text::without_html;
/// assert_eq!(without_html("Pulled<!-- ask again --> in <b>May</b>."), "Pulled in May.");
/// ```
#[must_use]
pub fn without_html(text: &str) -> String {
    let events = Parser::new_ext(text, MARKDOWN).into_offset_iter();
    let cuts = events.filter_map(|(event, range)| match event {
        Event::InlineHtml(_) => Some(range),
        // The end of the line stays, so that what follows begins a paragraph as before.
        Event::Html(html) => {
            let ends_line = html.ends_with('\n');
            Some(range.start..range.end - usize::from(ends_line))
        }
        _ => None,
    });
    without(text, cuts.collect())
}

/// A link whose end has not been met.
struct OpenLink {
    whole: Range<usize>,
    words_start: usize,
    words_end: usize,
    is_withheld: bool,
}

impl OpenLink {
    /// Everything of the link but its words.
    fn around_its_words(self) -> [Range<usize>; 2] {
        let words_end = self.words_end.max(self.words_start).min(self.whole.end);
        [
            self.whole.start..self.words_start,
            words_end..self.whole.end,
        ]
    }
}

/// The range, extended to the end of its line.
fn whole_line(text: &str, range: Range<usize>) -> Range<usize> {
    let rest = text.get(range.end..).unwrap_or_default();
    let line = rest.find('\n').map_or(rest.len(), |at| at + 1);
    range.start..range.end + line
}

/// The text without some ranges, which may lie in each other.
fn without(text: &str, mut cuts: Vec<Range<usize>>) -> String {
    cuts.sort_by_key(|cut| (cut.start, cut.end));
    let mut out = String::with_capacity(text.len());
    let mut at = 0;
    for cut in cuts {
        out.push_str(text.get(at..cut.start).unwrap_or_default());
        at = at.max(cut.end);
    }
    out.push_str(text.get(at..).unwrap_or_default());
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Only sheet 14.1 is published, with its pictures.
    fn readers(text: &str) -> String {
        let is_published = |target: &Target| target.key().to_string().starts_with("14.1");
        unlinked(text, is_published).unwrap_or_else(|| text.to_owned())
    }

    #[test]
    fn links_to_what_is_not_published_are_reduced_to_their_words() {
        for (written, read) in [
            ("[the other](impression:14.2)", "the other"),
            (
                "[*the* other](impression:14.2 \"verso\") and",
                "*the* other and",
            ),
            ("see [](impression:14.2).", "see ."),
            ("see <impression:14.2>.", "see ."),
            ("[a \\] b](impression:14.2)", "a \\] b"),
            ("[a][x] b\n\n[x]: impression:14.2\n", "a b\n\n"),
            ("[x] b\n\n[x]: impression:14.2 \"t\"\nafter", "x b\n\nafter"),
            ("unused\n\n[x]: <impression:14.2>", "unused\n\n"),
            ("![A mark](picture:14.2/recto) b", " b"),
            (
                "[![A](picture:14.1/recto) b](impression:14.2)",
                "![A](picture:14.1/recto) b",
            ),
            (
                "[![A](picture:14.2/recto) b](impression:14.1)",
                "[ b](impression:14.1)",
            ),
            ("> - [q](impression:14.2)\n> - r", "> - q\n> - r"),
            (
                "text[^1]\n\n[^1]: [n](impression:14.2)",
                "text[^1]\n\n[^1]: n",
            ),
        ] {
            assert_eq!(readers(written), read, "{written}");
        }
    }

    #[test]
    fn everything_else_stays_as_it_was_written() {
        for text in [
            "[one](impression:14.1), [web](https://example.org/14.2), `[x](impression:14.2)`",
            "14.2 is not a link, \\[x](impression:14.2) neither",
            "",
        ] {
            assert_eq!(readers(text), text);
        }
        let plain = "# A\n\n*b* & c\n\n- d\n  e\n";
        assert_eq!(without_html(plain), plain);
    }

    #[test]
    fn html_is_cut_and_paragraphs_stay_apart() {
        for (written, read) in [
            ("a\n\n<!-- two\n\nlines -->\n\nb", "a\n\n\n\n\n\nb"),
            ("a\n<!-- c -->\nb", "a\n\nb"),
            ("a <span title=\"c\">b</span>", "a b"),
            ("<div>x</div>", ""),
        ] {
            assert_eq!(without_html(written), read, "{written}");
        }
    }
}
