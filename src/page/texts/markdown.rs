//! Markdown to clean HTML.
//!
//! The text is not trusted: markup in it is dropped, and a link leads only to a record or to `http`,
//! `https` or `mailto`. A link to a record without a text gets the record's short name. A picture of the
//! catalogue becomes a plate with caption and credit; any other picture is replaced by its alternative
//! text, because no page loads files from other sites.
//!
//! Not here: findings on links to nothing and on dropped markup (`read::references::note`).

use std::collections::BTreeMap;

use pulldown_cmark::{Alignment, CodeBlockKind, Event, Options, Parser, Tag, TagEnd};

use crate::model::link::Target;
use crate::model::note::Note;
use crate::page::plates::figures;
use crate::page::setting::book::Here;
use crate::page::setting::html::{CleanHtml, escape_into};
use crate::page::setting::pictures::Setting;
use crate::page::setting::words::Words;

const OPTIONS: Options = crate::model::note::MARKDOWN;

/// The place of a text on its page, which decides the level of its headings.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Placement {
    /// It is the whole page; its first heading is the title, which the frame prints.
    Page,
    /// It stands under a heading of the page.
    Part,
}

/// Markdown as HTML; empty for a text without content.
pub(crate) fn html(text: &str, here: &Here<'_>, placement: Placement) -> CleanHtml {
    let mut writer = Writer {
        here,
        placement,
        out: vec![String::new()],
        figures: String::new(),
        links: Vec::new(),
        picture: None,
        note_labels: Vec::new(),
        label_at: BTreeMap::new(),
        notes: Vec::new(),
        noted: Vec::new(),
        alignments: Vec::new(),
        column: 0,
        in_head: false,
        title_is_behind: placement == Placement::Part,
        quotes: Quotes::of(here.words()),
    };
    for (event, range) in Parser::new_ext(text, OPTIONS).into_offset_iter() {
        // A quotation mark that is straight in the text was curled by the parser.
        let curled = text
            .get(range)
            .is_some_and(|source| source == "\"" || source == "'");
        writer.event(event, curled);
    }
    CleanHtml::trusted(writer.finish())
}

/// The note of a record, to stand under a heading of its page; `None` where it has no content.
pub(crate) fn note(here: &Here<'_>, note: Option<&Note>) -> Option<CleanHtml> {
    html(&note?.text, here, Placement::Part).some()
}

/// The first paragraph of a text without its note marks; empty where it has none.
pub(crate) fn first_paragraph(text: &str, here: &Here<'_>) -> CleanHtml {
    let mut depth = 0_usize;
    for (event, range) in Parser::new_ext(text, OPTIONS).into_offset_iter() {
        match event {
            Event::Start(Tag::Paragraph) if depth == 0 => {
                let paragraph = without_note_marks(text.get(range).unwrap_or_default());
                return html(&paragraph, here, Placement::Part);
            }
            Event::Start(_) => depth += 1,
            Event::End(_) => depth = depth.saturating_sub(1),
            _ => {}
        }
    }
    CleanHtml::empty()
}

/// The text without `[^1]`, whose notes stand elsewhere.
fn without_note_marks(text: &str) -> String {
    let mut out = String::new();
    let mut rest = text;
    while let Some((before, after)) = rest.split_once("[^") {
        out.push_str(before);
        rest = after.split_once(']').map_or("", |(_, after)| after);
    }
    out.push_str(rest);
    out
}

struct Writer<'h, 'b> {
    here: &'h Here<'b>,
    placement: Placement,
    /// The output: the text, and above it parts that are held back until they end.
    out: Vec<String>,
    /// Plates met within a paragraph; they stand after it.
    figures: String,
    /// The links that are open, with their targets.
    links: Vec<LinkTarget>,
    /// The picture whose alternative text is being read.
    picture: Option<Option<Target>>,
    /// Labels of notes, in the order in which they are first referred to.
    note_labels: Vec<String>,
    /// The place of each label among them.
    label_at: BTreeMap<String, usize>,
    /// Notes: label and HTML.
    notes: Vec<(String, String)>,
    /// How often each label was referred to.
    noted: Vec<usize>,
    alignments: Vec<Alignment>,
    column: usize,
    in_head: bool,
    title_is_behind: bool,
    quotes: Quotes<'h>,
}

/// The quotation marks of the catalogue's language.
struct Quotes<'w> {
    open: &'w str,
    close: &'w str,
    single_open: &'w str,
    single_close: &'w str,
}

impl<'w> Quotes<'w> {
    fn of(words: &'w Words) -> Quotes<'w> {
        Quotes {
            open: words.word("quote-open"),
            close: words.word("quote-close"),
            single_open: words.word("quote-single-open"),
            single_close: words.word("quote-single-close"),
        }
    }

    /// The quotation mark of the catalogue's language in place of the parser's English one.
    fn mark<'t>(&self, curled: &'t str) -> &'t str
    where
        'w: 't,
    {
        match curled {
            "\u{201c}" => self.open,
            "\u{201d}" => self.close,
            "\u{2018}" => self.single_open,
            "\u{2019}" => self.single_close,
            other => other,
        }
    }
}

/// The target of a link.
enum LinkTarget {
    /// A record: address, short name, text after the link, class.
    Record {
        href: String,
        name: CleanHtml,
        after: String,
        class: Option<&'static str>,
    },
    /// An address outside the catalogue.
    Web(String),
    /// No target; the text of the link stays.
    Nowhere,
}

impl Writer<'_, '_> {
    fn push(&mut self, html: &str) {
        if let Some(out) = self.out.last_mut() {
            out.push_str(html);
        }
    }

    fn push_text(&mut self, text: &str) {
        if let Some(out) = self.out.last_mut() {
            escape_into(out, text);
        }
    }

    /// Holds back what follows until [`Writer::take`].
    fn hold(&mut self) {
        self.out.push(String::new());
    }

    fn take(&mut self) -> String {
        if self.out.len() > 1 {
            self.out.pop().unwrap_or_default()
        } else {
            String::new()
        }
    }

    fn event(&mut self, event: Event<'_>, curled: bool) {
        match event {
            Event::Start(tag) => self.start(tag),
            Event::End(tag) => self.end(tag),
            Event::Text(text) if curled => self.push_text(self.quotes.mark(&text)),
            Event::Text(text) => self.push_text(&text),
            Event::Code(code) => {
                self.push("<code>");
                self.push_text(&code);
                self.push("</code>");
            }
            Event::SoftBreak => self.push("\n"),
            Event::HardBreak => self.push("<br>"),
            Event::Rule => self.push("<hr>\n"),
            Event::FootnoteReference(label) => self.reference(&label),
            // Markup in the text is dropped. The other events belong to extensions that are not enabled.
            Event::Html(_)
            | Event::InlineHtml(_)
            | Event::TaskListMarker(_)
            | Event::InlineMath(_)
            | Event::DisplayMath(_) => {}
        }
    }

    fn start(&mut self, tag: Tag<'_>) {
        match tag {
            Tag::Paragraph | Tag::Heading { .. } | Tag::HtmlBlock | Tag::MetadataBlock(_) => {
                self.hold();
            }
            Tag::BlockQuote(_) => self.push("<blockquote>\n"),
            Tag::CodeBlock(CodeBlockKind::Fenced(_) | CodeBlockKind::Indented) => {
                self.push("<pre><code>");
            }
            Tag::List(Some(1)) => self.push("<ol>\n"),
            Tag::List(Some(first)) => self.push(&format!("<ol start=\"{first}\">\n")),
            Tag::List(None) => self.push("<ul>\n"),
            Tag::Item => self.push("<li>"),
            Tag::FootnoteDefinition(label) => {
                self.notes.push((label.to_string(), String::new()));
                self.hold();
            }
            Tag::DefinitionList => self.push("<dl class=\"terms\">\n"),
            Tag::DefinitionListTitle => self.push("<dt>"),
            Tag::DefinitionListDefinition => self.push("<dd>"),
            Tag::Table(alignments) => {
                self.alignments = alignments;
                let label = self.here.words().word("table");
                self.push("<div class=\"scroll\" tabindex=\"0\" role=\"region\" aria-label=\"");
                self.push_text(label);
                self.push("\"><table>\n");
            }
            Tag::TableHead => {
                self.in_head = true;
                self.column = 0;
                self.push("<thead><tr>");
            }
            Tag::TableRow => {
                self.column = 0;
                self.push("<tr>");
            }
            Tag::TableCell => {
                let is_figure = self.alignments.get(self.column) == Some(&Alignment::Right);
                let class = if is_figure { " class=\"figure\"" } else { "" };
                let cell = if self.in_head {
                    format!("<th scope=\"col\"{class}>")
                } else {
                    format!("<td{class}>")
                };
                self.push(&cell);
            }
            Tag::Emphasis => self.push("<em>"),
            Tag::Strong => self.push("<strong>"),
            Tag::Strikethrough => self.push("<s>"),
            Tag::Superscript => self.push("<sup>"),
            Tag::Subscript => self.push("<sub>"),
            Tag::Link {
                dest_url, title, ..
            } => {
                let target = self.link_target(&dest_url, &title);
                self.links.push(target);
                self.hold();
            }
            Tag::Image { dest_url, .. } => {
                let target = dest_url.parse().ok();
                self.picture = Some(target.map(|target| self.present(target)));
                self.hold();
            }
        }
    }

    fn end(&mut self, tag: TagEnd) {
        match tag {
            TagEnd::Paragraph => {
                let text = self.take();
                if !text.trim().is_empty() {
                    self.push("<p>");
                    self.push(&text);
                    self.push("</p>\n");
                }
                self.flush_figures();
            }
            TagEnd::Heading(level) => {
                let text = self.take();
                if self.title_is_behind {
                    let level = match self.placement {
                        Placement::Page => (level as u8).max(2),
                        Placement::Part => (level as u8 + 2).min(6),
                    };
                    if !text.trim().is_empty() {
                        self.push(&format!("<h{level}>{text}</h{level}>\n"));
                    }
                }
                self.title_is_behind = true;
                self.flush_figures();
            }
            TagEnd::HtmlBlock | TagEnd::MetadataBlock(_) => {
                self.take();
            }
            TagEnd::BlockQuote(_) => self.push("</blockquote>\n"),
            TagEnd::CodeBlock => self.push("</code></pre>\n"),
            TagEnd::List(true) => self.push("</ol>\n"),
            TagEnd::List(false) => self.push("</ul>\n"),
            TagEnd::Item => {
                self.flush_figures();
                self.push("</li>\n");
            }
            TagEnd::FootnoteDefinition => {
                self.flush_figures();
                let html = self.take();
                if let Some((_, note)) = self.notes.last_mut() {
                    *note = html;
                }
            }
            TagEnd::DefinitionList => self.push("</dl>\n"),
            TagEnd::DefinitionListTitle => self.push("</dt>\n"),
            TagEnd::DefinitionListDefinition => {
                self.flush_figures();
                self.push("</dd>\n");
            }
            TagEnd::Table => self.push("</tbody></table></div>\n"),
            TagEnd::TableHead => {
                self.in_head = false;
                self.push("</tr></thead>\n<tbody>\n");
            }
            TagEnd::TableRow => self.push("</tr>\n"),
            TagEnd::TableCell => {
                self.flush_figures();
                self.push(if self.in_head { "</th>" } else { "</td>" });
                self.column += 1;
            }
            TagEnd::Emphasis => self.push("</em>"),
            TagEnd::Strong => self.push("</strong>"),
            TagEnd::Strikethrough => self.push("</s>"),
            TagEnd::Superscript => self.push("</sup>"),
            TagEnd::Subscript => self.push("</sub>"),
            TagEnd::Link => self.end_link(),
            TagEnd::Image => self.end_picture(),
        }
    }

    /// The record that a link names, by its present key.
    fn present(&self, target: Target) -> Target {
        let former = &self.here.public().former;
        former.record(&target).unwrap_or(target)
    }

    fn link_target(&self, to: &str, title: &str) -> LinkTarget {
        if let Ok(target) = to.parse::<Target>() {
            let target = self.present(target);
            let Some((address, name)) = self.here.target(&target) else {
                return LinkTarget::Nowhere;
            };
            return LinkTarget::Record {
                href: self.here.href(&address),
                name,
                after: title.to_owned(),
                class: matches!(target, Target::Impression(_)).then_some("handle"),
            };
        }
        let scheme = to.split_once(':').map(|(scheme, _)| scheme.to_lowercase());
        match scheme.as_deref() {
            Some("http" | "https" | "mailto") => LinkTarget::Web(to.to_owned()),
            _ => LinkTarget::Nowhere,
        }
    }

    fn end_link(&mut self) {
        let text = CleanHtml::trusted(self.take());
        let is_bare = text.as_str().trim().is_empty();
        match self.links.pop().unwrap_or(LinkTarget::Nowhere) {
            LinkTarget::Record {
                href,
                name,
                after,
                class,
            } => {
                let link = match class.filter(|_| is_bare) {
                    Some(class) => {
                        CleanHtml::element("a", &[("class", class), ("href", &href)], &name)
                    }
                    None => CleanHtml::link(&href, if is_bare { &name } else { &text }),
                };
                self.push(link.as_str());
                if !after.is_empty() {
                    self.push_text(", ");
                    self.push_text(&after);
                }
            }
            LinkTarget::Web(href) => {
                let shown = if is_bare {
                    CleanHtml::text(&href)
                } else {
                    text
                };
                let link = CleanHtml::element(
                    "a",
                    &[("href", &href), ("rel", "noopener noreferrer external")],
                    &shown,
                );
                self.push(link.as_str());
            }
            LinkTarget::Nowhere => self.push(text.as_str()),
        }
    }

    fn end_picture(&mut self) {
        let words = self.take();
        match self.picture.take().flatten() {
            Some(Target::Picture(key)) => {
                let alt = CleanHtml::trusted(words).plain();
                let alt = Some(alt).filter(|alt| !alt.trim().is_empty());
                if let Some(figure) = figures::figure(self.here, &key, alt, Setting::Gallery) {
                    self.figures.push_str(figure.as_str());
                }
            }
            _ => self.push(&words),
        }
    }

    fn flush_figures(&mut self) {
        let figures = std::mem::take(&mut self.figures);
        self.push(&figures);
    }

    fn reference(&mut self, label: &str) {
        let at = self.label_at.get(label).copied().unwrap_or_else(|| {
            let at = self.note_labels.len();
            self.label_at.insert(label.to_owned(), at);
            self.note_labels.push(label.to_owned());
            self.noted.push(0);
            at
        });
        let number = at + 1;
        let Some(times) = self.noted.get_mut(at) else {
            return;
        };
        *times += 1;
        let id = if *times == 1 {
            format!("noteref-{number}")
        } else {
            format!("noteref-{number}-{times}")
        };
        self.push(&format!(
            "<sup class=\"noteref\"><a href=\"#note-{number}\" id=\"{id}\">{number}</a></sup>"
        ));
    }

    fn finish(mut self) -> String {
        self.flush_figures();
        while self.out.len() > 1 {
            let held = self.take();
            self.push(&held);
        }
        let mut out = self.out.pop().unwrap_or_default();
        if !self.note_labels.is_empty() {
            let back = self.here.words().word("note-back");
            let mut notes: BTreeMap<&str, &str> = BTreeMap::new();
            for (label, html) in &self.notes {
                notes.entry(label).or_insert(html);
            }
            out.push_str("<div class=\"notes\"><ol>\n");
            for (label, number) in self.note_labels.iter().zip(1..) {
                let text = notes.get(label.as_str()).map_or("", |html| html.trim());
                // The link back stands in the last paragraph of the note.
                let text = text.strip_suffix("</p>").unwrap_or(text);
                out.push_str("<li id=\"note-");
                out.push_str(&number.to_string());
                out.push_str("\">");
                out.push_str(text);
                out.push_str(" <a href=\"#noteref-");
                out.push_str(&number.to_string());
                out.push_str("\">");
                escape_into(&mut out, back);
                out.push_str("</a>");
                out.push_str(if text.contains("<p>") { "</p>" } else { "" });
                out.push_str("</li>\n");
            }
            out.push_str("</ol></div>\n");
        }
        out
    }
}
