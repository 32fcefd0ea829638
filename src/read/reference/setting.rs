//! The full form of a reference, set by the style that `hayagriva` carries.
//!
//! It is turned into HTML here, because the crate's own HTML does not escape text; emphasis is kept,
//! links become text.

use std::fmt::Write as _;
use std::sync::LazyLock;

use hayagriva::archive::ArchivedStyle;
use hayagriva::citationberg::{
    FontStyle, IndependentStyle, Locale, LocaleCode, Style, VerticalAlign,
};
use hayagriva::{
    BibliographyDriver, BibliographyRequest, CitationItem, CitationRequest, ElemChild,
    ElemChildren, Formatted,
};

/// The style, decoded once for all compiles of a process. What it sets where a work is cited is left
/// out, because only the list of works is used: that halves the time.
static STYLE: LazyLock<Option<IndependentStyle>> =
    LazyLock::new(|| match ArchivedStyle::TurabianAuthorDate.get() {
        Style::Independent(mut style) => {
            style.citation.layout.elements.clear();
            Some(style)
        }
        Style::Dependent(_) => None,
    });

/// The words of the style in every language. Decoding them takes a tenth of a second, so they are
/// touched only where there is a work to be set.
static LOCALES: LazyLock<Vec<Locale>> = LazyLock::new(hayagriva::archive::locales);

/// Sets works in one language.
pub(super) struct Setter {
    language: Option<LocaleCode>,
    /// The words of that language, and those the style falls back to.
    locales: Vec<Locale>,
}

impl Setter {
    /// For a catalogue in `language` (BCP 47).
    pub(super) fn new(language: &str) -> Setter {
        let primary = language.split('-').next().unwrap_or(language);
        let national = match primary {
            "en" => "en-US".to_owned(),
            other => format!("{other}-{}", other.to_uppercase()),
        };
        let find = |is: &dyn Fn(&str) -> bool| {
            let mut all = LOCALES.iter();
            all.find(|locale| locale.lang.as_ref().is_some_and(|code| is(&code.0)))
        };
        let found = find(&|code| code == language)
            .or_else(|| find(&|code| code == national))
            .or_else(|| find(&|code| code.split('-').next() == Some(primary)));
        let fallback = find(&|code| code == "en-US");
        let mut locales: Vec<Locale> = found.into_iter().chain(fallback).cloned().collect();
        locales.dedup_by(|later, earlier| later.lang == earlier.lang);
        Setter {
            language: found.and_then(|locale| locale.lang.clone()),
            locales,
        }
    }

    /// The full reference as text and as HTML. Each work is set alone, so that no reference depends
    /// on its neighbours (a dash for a repeated author).
    pub(super) fn set(&self, entry: &hayagriva::Entry) -> (String, String) {
        let Some(style) = STYLE.as_ref() else {
            return (String::new(), String::new());
        };
        let language = || self.language.clone();
        let items = vec![CitationItem::with_entry(entry)];
        let mut driver = BibliographyDriver::new();
        let request = CitationRequest::new(items, style, language(), &self.locales, None);
        driver.citation(request);
        let list = driver.finish(BibliographyRequest::new(style, language(), &self.locales));
        let mut text = String::new();
        let mut html = String::new();
        for item in list.bibliography.iter().flat_map(|list| &list.items) {
            write_text(&item.content, &mut text);
            write_html(&item.content, &mut html);
        }
        (text, html)
    }
}

fn write_text(children: &ElemChildren, out: &mut String) {
    for child in &children.0 {
        match child {
            ElemChild::Text(text) | ElemChild::Link { text, .. } => out.push_str(&text.text),
            ElemChild::Elem(element) => write_text(&element.children, out),
            ElemChild::Markup(text) => out.push_str(text),
            ElemChild::Transparent { .. } => {}
        }
    }
}

fn write_html(children: &ElemChildren, out: &mut String) {
    for child in &children.0 {
        match child {
            ElemChild::Text(text) | ElemChild::Link { text, .. } => write_formatted(text, out),
            ElemChild::Elem(element) => write_html(&element.children, out),
            ElemChild::Markup(text) => {
                let _ = write!(out, "{}", Escaped(text));
            }
            ElemChild::Transparent { .. } => {}
        }
    }
}

fn write_formatted(text: &Formatted, out: &mut String) {
    let format = &text.formatting;
    let tags: Vec<&str> = [
        (format.font_style == FontStyle::Italic, "em"),
        (format.vertical_align == VerticalAlign::Sup, "sup"),
        (format.vertical_align == VerticalAlign::Sub, "sub"),
    ]
    .into_iter()
    .filter_map(|(is_set, tag)| is_set.then_some(tag))
    .collect();
    for tag in &tags {
        let _ = write!(out, "<{tag}>");
    }
    let _ = write!(out, "{}", Escaped(&text.text));
    for tag in tags.iter().rev() {
        let _ = write!(out, "</{tag}>");
    }
}

/// Text in HTML, with everything escaped that could be markup.
struct Escaped<'t>(&'t str);

impl std::fmt::Display for Escaped<'_> {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        for c in self.0.chars() {
            match c {
                '&' => f.write_str("&amp;")?,
                '<' => f.write_str("&lt;")?,
                '>' => f.write_str("&gt;")?,
                '"' => f.write_str("&quot;")?,
                '\'' => f.write_str("&#39;")?,
                c => f.write_char(c)?,
            }
        }
        Ok(())
    }
}
