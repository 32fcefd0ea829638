//! References: how a work of the literature is worded.
//!
//! Two forms: short ("Verhoeven 1961") for use in a line, and full, set by the Chicago author-date
//! style that `hayagriva` carries.
//!
//! In: an entry as `biblatex` read it. Out: [`Work`]s. The short form is made in [`short`], the full
//! one in [`setting`].

mod setting;
mod short;

use std::collections::BTreeMap;

use biblatex::{Chunk, Spanned};
use rayon::prelude::*;

use self::setting::Setter;
use self::short::{letters, short};
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
