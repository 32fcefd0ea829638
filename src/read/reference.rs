//! References: how a work of the literature is worded.
//!
//! Two forms: short ("Verhoeven 1961") for use in a line, and full, set by the Chicago author-date
//! style that `hayagriva` carries. The full form is turned into HTML here, because the crate's own
//! HTML does not escape text; emphasis is kept, links become text.

use std::collections::BTreeMap;
use std::fmt::Write as _;
use std::sync::LazyLock;

use biblatex::{Chunk, Spanned};
use hayagriva::archive::ArchivedStyle;
use hayagriva::citationberg::{
    FontStyle, IndependentStyle, Locale, LocaleCode, Style, VerticalAlign,
};
use hayagriva::{
    BibliographyDriver, BibliographyRequest, CitationItem, CitationRequest, ElemChild,
    ElemChildren, Formatted,
};

use rayon::prelude::*;

use crate::model::key::Key;
use crate::model::literature::Work;
use crate::model::place::Place;

/// An entry of the literature, understood: what `hayagriva` sets in full, and what the short form
/// is made of.
pub(super) struct Converted {
    entry: hayagriva::Entry,
    names: Vec<Name>,
    title: String,
    year: Option<i32>,
}

/// A name as the short form and the sorting need it.
struct Name {
    family: String,
    given: String,
}

impl Converted {
    /// # Errors
    /// A field whose value is not of the type that BibLaTeX gives it.
    pub(super) fn from(entry: &biblatex::Entry) -> Result<Converted, biblatex::TypeError> {
        let entry = with_whole_titles(entry);
        let converted = hayagriva::Entry::try_from(&entry)?;
        let editors = || {
            Some(
                entry
                    .editors()
                    .ok()?
                    .into_iter()
                    .flat_map(|(people, _)| people)
                    .collect(),
            )
        };
        let people = entry
            .author()
            .ok()
            .filter(|a| !a.is_empty())
            .or_else(editors)
            .unwrap_or_default();
        let title = converted
            .title()
            .map(ToString::to_string)
            .unwrap_or_default();
        let year = converted.date_any().map(|date| date.year);
        Ok(Converted {
            entry: converted,
            names: people.iter().map(Name::of).collect(),
            title,
            year,
        })
    }
}

impl Name {
    fn of(person: &biblatex::Person) -> Name {
        let family = [person.prefix.as_str(), person.name.as_str()].join(" ");
        Name {
            family: family.trim().to_owned(),
            given: person.given_name.clone(),
        }
    }
}

/// The entry with its titles whole and as written. `hayagriva` drops subtitles, by which catalogues
/// of prints are often told apart; and the style would set titles in capitals after the English
/// fashion, which is wrong in any other language.
fn with_whole_titles(entry: &biblatex::Entry) -> biblatex::Entry {
    let mut entry = entry.clone();
    for (title, subtitle) in [
        ("title", "subtitle"),
        ("booktitle", "booksubtitle"),
        ("maintitle", "mainsubtitle"),
        ("journaltitle", "journalsubtitle"),
        ("journal", "journalsubtitle"),
    ] {
        let Some(head) = entry.get(title) else {
            continue;
        };
        let colon = Spanned::detached(Chunk::Normal(": ".to_owned()));
        let tail = entry.get(subtitle).unwrap_or_default();
        let colon = (!tail.is_empty()).then_some(&colon);
        let as_written = head.iter().chain(colon).chain(tail).map(|chunk| {
            let chunk = chunk.clone();
            chunk.map(|chunk| match chunk {
                Chunk::Normal(text) => Chunk::Verbatim(text),
                other => other,
            })
        });
        entry.set(title, as_written.collect());
    }
    entry
}

/// The works, worded for a catalogue in `language`.
pub(super) fn works(entries: Vec<(Key, Place, Converted)>, language: &str) -> BTreeMap<Key, Work> {
    let shorts: Vec<String> = entries
        .iter()
        .map(|(_, _, entry)| short(entry, language))
        .collect();
    let letters = letters(&shorts);
    if entries.is_empty() {
        return BTreeMap::new();
    }
    let setter = Setter::new(language);
    // Setting a work takes about a hundred times as long as parsing it.
    entries
        .into_par_iter()
        .zip(shorts.par_iter().zip(letters))
        .map(|((key, place, entry), (short, letter))| {
            let (full, full_html) = setter.set(&entry.entry);
            let authors = entry
                .names
                .iter()
                .map(Name::sorted)
                .collect::<Vec<_>>()
                .join("; ");
            let work = Work {
                key: key.clone(),
                short: format!("{short}{letter}"),
                full,
                full_html,
                authors,
                year: entry.year,
                title: entry.title,
                place,
                note: None,
            };
            (key, work)
        })
        .collect()
}

impl Name {
    fn sorted(&self) -> String {
        if self.given.is_empty() {
            self.family.clone()
        } else {
            format!("{}, {}", self.family, self.given)
        }
    }
}

/// "Verhoeven 1961", "Smith and Jones 1970", "Smith et al. 1970"; without authors the title.
fn short(entry: &Converted, language: &str) -> String {
    let and = if language.split('-').next() == Some("de") {
        "und"
    } else {
        "and"
    };
    let name = match entry.names.as_slice() {
        [] if entry.title.is_empty() => entry.entry.key().to_owned(),
        [] => shortened(&entry.title),
        [one] => one.family.clone(),
        [one, other] if other.family == "others" => format!("{} et al.", one.family),
        [one, other] => format!("{} {and} {}", one.family, other.family),
        [one, ..] => format!("{} et al.", one.family),
    };
    match entry.year {
        Some(year) => format!("{name} {year}"),
        None => name,
    }
}

/// The first words of a title, up to about 30 characters, without what follows a colon.
fn shortened(title: &str) -> String {
    let head = title.split(':').next().unwrap_or(title).trim();
    let mut short = String::new();
    for word in head.split_whitespace() {
        if !short.is_empty() && short.chars().count() + word.chars().count() > 30 {
            short.push_str(" …");
            break;
        }
        if !short.is_empty() {
            short.push(' ');
        }
        short.push_str(word);
    }
    short
}

/// The letters that tell works of one short form apart: "1961a", "1961b"; beyond z numbers.
fn letters(shorts: &[String]) -> Vec<String> {
    let mut count = BTreeMap::<&str, usize>::new();
    for short in shorts {
        *count.entry(short).or_default() += 1;
    }
    let mut used = BTreeMap::<&str, u8>::new();
    let mut letter = |short| {
        if count.get(short).is_none_or(|n| *n < 2) {
            return String::new();
        }
        let nth = used.entry(short).or_default();
        let ends_in_year = short.ends_with(|c: char| c.is_ascii_digit());
        let letter = if *nth < 26 {
            char::from(b'a' + *nth).to_string()
        } else {
            format!("-{}", usize::from(*nth) + 1)
        };
        *nth = nth.saturating_add(1);
        if ends_in_year {
            letter
        } else {
            format!(" ({letter})")
        }
    };
    shorts.iter().map(|short| letter(short.as_str())).collect()
}

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
struct Setter {
    language: Option<LocaleCode>,
    /// The words of that language, and those the style falls back to.
    locales: Vec<Locale>,
}

impl Setter {
    fn new(language: &str) -> Setter {
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
    fn set(&self, entry: &hayagriva::Entry) -> (String, String) {
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

#[cfg(test)]
mod tests {
    use crate::model::place::Sources;
    use crate::read::bibtex;

    fn work(entry: &str) -> crate::model::literature::Work {
        let mut sources = Sources::default();
        let file = sources.add("records/literature.bib", entry);
        let (works, findings) = bibtex::read(entry, file, "en");
        assert!(findings.is_empty(), "{findings:?}");
        works.into_values().next().unwrap()
    }

    #[test]
    fn the_short_form_is_author_and_year() {
        let short = |fields: &str| {
            work(&format!(
                "@book{{a, title = {{The Blocks: a List}}, {fields}}}"
            ))
            .short
        };
        assert_eq!(
            short("author = {Verhoeven, Jan}, year = {1961}"),
            "Verhoeven 1961"
        );
        assert_eq!(
            short("author = {Jan van der Meer}, year = 1961"),
            "van der Meer 1961"
        );
        assert_eq!(
            short("author = {Smith, A. and Jones, B.}, date = {1970-05}"),
            "Smith and Jones 1970"
        );
        assert_eq!(
            short("author = {Smith, A. and Jones, B. and Ray, C.}, year = {1970}"),
            "Smith et al. 1970"
        );
        assert_eq!(
            short("author = {Smith, A. and others}, year = {1970}"),
            "Smith et al. 1970"
        );
        assert_eq!(
            short("author = {{Harbour Museum}}, year = {1970}"),
            "Harbour Museum 1970"
        );
        assert_eq!(short("editor = {Ray, C.}, year = {1970}"), "Ray 1970");
        assert_eq!(short("year = {1970}"), "The Blocks 1970");
        assert_eq!(short("author = {Ray, C.}"), "Ray");
    }

    #[test]
    fn works_of_one_author_and_year_are_told_apart() {
        let text = "@book{a, author={Ray, C.}, year=1970, title={A}}\n@book{b, author={Ray, C.}, year=1970, title={B}}";
        let (works, _) = bibtex::read(text, crate::model::place::FileId::default(), "en");
        let shorts: Vec<_> = works.values().map(|w| w.short.as_str()).collect();
        assert_eq!(shorts, ["Ray 1970a", "Ray 1970b"]);
    }

    #[test]
    fn the_full_form_reads_as_a_bibliography_does() {
        let work = work(
            "@book{first-list, author = {Verhoeven, Jan}, title = {A First List}, subtitle = {with Notes}, year = {1961}, publisher = {Privately printed}, address = {Northport}}",
        );
        assert_eq!(
            work.full,
            "Verhoeven, Jan. 1961. A First List: with Notes. Northport: Privately printed."
        );
        assert!(
            work.full_html.contains("<em>A First List: with Notes</em>"),
            "{}",
            work.full_html
        );
        assert_eq!(work.authors, "Verhoeven, Jan");
        assert_eq!(work.year, Some(1961));
    }

    /// The style's own words ("edited by", "in") follow the language of the catalogue.
    #[test]
    fn a_reference_speaks_the_language_of_the_catalogue() {
        let entry = "@incollection{a, author = {Ray, C.}, title = {A}, booktitle = {B}, editor = {Meer, J.}, year = 1970}";
        let full = |language| {
            let (works, _) = bibtex::read(entry, crate::model::place::FileId::default(), language);
            works.into_values().next().unwrap().full
        };
        assert!(full("en").contains("edited by J. Meer"), "{}", full("en"));
        assert!(
            full("de-CH").contains("herausgegeben von J. Meer"),
            "{}",
            full("de-CH")
        );
        assert_eq!(full("xx"), full("en"));
    }

    #[test]
    fn titles_keep_their_capitals() {
        let title = "Verzeichnis der graphischen Arbeiten";
        let full = work(&format!(
            "@article{{a, title = {{{title}}}, journal = {{Blätter für den Druck}}, year = 1970}}"
        ))
        .full;
        assert!(
            full.contains(title) && full.contains("Blätter für den Druck"),
            "{full}"
        );
    }

    #[test]
    fn works_that_differ_only_in_their_titles_get_letters_to_the_last() {
        use std::fmt::Write as _;
        let mut text = String::new();
        for n in 0..60 {
            let _ = writeln!(
                text,
                "@book{{work-{n}, author = {{Ray, C. and Meer, Jan van der}}, title = {{List {n}}}, year = {{1961}}, publisher = {{Quay Press}}, address = {{Northport}}}}"
            );
        }
        let (works, _) = bibtex::read(&text, crate::model::place::FileId::default(), "en");
        let shorts: std::collections::BTreeSet<_> =
            works.values().map(|work| &work.short).collect();
        assert_eq!(shorts.len(), 60);
    }

    #[test]
    fn markup_in_a_field_is_text() {
        let work = work(
            "@book{a, author = {Ray, C.}, title = {<script>alert(1)</script> & \"x\"}, year = {1970}, url = {javascript:alert(1)}}",
        );
        assert!(!work.full_html.contains("<script"), "{}", work.full_html);
        assert!(
            !work.full_html.contains("href=\"javascript"),
            "{}",
            work.full_html
        );
        assert!(
            work.full_html.contains("&lt;script&gt;"),
            "{}",
            work.full_html
        );
    }
}
