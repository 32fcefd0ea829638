//! Words the references to works of the literature.
//!
//! Two forms: short ("Verhoeven 1961") for use in a line, and full, in the author-date style of The
//! Chicago Manual of Style.
//!
//! In: entries as `biblatex` read them, and the [`Words`] of the catalogue's language. Out: [`Work`]s.
//! [`description`] reads the fields of an entry, [`short`] makes the short form, [`setting`] the full one
//! from [`names`], [`pages`] and [`words`], as a [`line`] of text and HTML.

mod description;
mod line;
mod names;
mod pages;
mod setting;
mod short;
mod words;

use std::collections::BTreeMap;

pub(super) use self::description::Description;
use self::names::sorted;
use self::setting::set;
use self::short::{letters, short};
pub(super) use self::words::Words;
use crate::model::key::Key;
use crate::model::literature::Work;
use crate::model::place::Place;

/// The works, worded in the language of `words`.
pub(super) fn works(
    described: Vec<(Key, Place, Description)>,
    words: &Words,
) -> BTreeMap<Key, Work> {
    let shorts: Vec<String> = described
        .iter()
        .map(|(_, _, work)| short(work, words))
        .collect();
    let letters = letters(&shorts);
    let shorts = shorts.iter().zip(letters);
    let mut works = BTreeMap::new();
    for ((key, place, described), (short, letter)) in described.into_iter().zip(shorts) {
        let authors: Vec<String> = described.names().iter().map(sorted).collect();
        let (year, title) = (described.year(), described.title.clone());
        let full = set(&described.isolated(), &letter, words);
        let work = Work {
            key: key.clone(),
            short: format!("{short}{letter}"),
            full: full.text,
            full_html: full.html,
            head_html: full.head,
            authors: authors.join("; "),
            year,
            title,
            place,
            note: None,
        };
        works.insert(key, work);
    }
    works
}

#[cfg(test)]
mod tests {
    use super::Words;
    use crate::model::place::FileId;
    use crate::model::theme::Theme;
    use crate::read::bibtex;

    fn work(entry: &str) -> crate::model::literature::Work {
        let (works, findings) = bibtex::read(entry, FileId::default(), &Words::built_in("en"));
        assert!(findings.is_empty(), "{findings:?}");
        works.into_values().next().unwrap()
    }

    #[derive(serde::Deserialize)]
    struct Table {
        reference: Vec<Row>,
    }

    /// An entry in `language`, as an independent program sets it and, where this program differs, as this
    /// program does.
    #[derive(serde::Deserialize)]
    struct Row {
        language: String,
        entry: String,
        hayagriva: String,
        keyblock: Option<String>,
    }

    /// Source: the head of `tests/checks/citations.toml`; each difference has its reason there.
    #[test]
    fn references_are_set_as_an_independent_program_sets_them() {
        let table = include_str!("../../tests/checks/citations.toml");
        let table: Table = toml::from_str(table).unwrap();
        let mut same = 0;
        for row in &table.reference {
            let words = Words::built_in(&row.language);
            let (works, findings) = bibtex::read(&row.entry, FileId::default(), &words);
            assert!(findings.is_empty(), "{}: {findings:?}", row.entry);
            let key = row.entry.split(['{', ',']).nth(1).unwrap();
            let work = &works[key];
            let expected = row.keyblock.as_ref().unwrap_or(&row.hayagriva);
            assert_eq!(&work.full_html, expected, "{}", row.entry);
            assert_ne!(row.keyblock.as_ref(), Some(&row.hayagriva), "{}", row.entry);
            same += usize::from(row.keyblock.is_none());
        }
        assert!(same >= 90, "{same} of {}", table.reference.len());
    }

    /// A catalogue's own theme may change a word of the references, or add a language for which the program
    /// has no words.
    #[test]
    fn the_words_of_a_reference_are_the_themes() {
        let mut theme = Theme::default();
        let words = "bibliography-and = et\nbibliography-quoted = « { $title } »{ $stop }\n";
        let path = "words/fr.ftl".to_owned();
        theme.files.insert(path, words.as_bytes().into());
        let entry = "@article{a, author = {Ray, C. and Meer, J.}, title = {A}, journal = {B}}";
        let words = Words::new(&theme, "fr");
        let (works, _) = bibtex::read(entry, FileId::default(), &words);
        let work = works.into_values().next().unwrap();
        assert_eq!(work.full, "Ray, C., et J. Meer. n.d. « A ». B.");
        assert_eq!(work.short, "Ray et Meer");
    }

    /// "Perelaz 1951" of a ledger kept from 1919 would date every entry to the last year.
    #[test]
    fn what_was_never_published_is_cited_by_its_title_and_all_its_years() {
        let short = |fields: &str| work(&format!("@unpublished{{a, {fields}}}")).short;
        let author = "author = {Perelaz, Oryna}, title = {Print ledger}";
        for (fields, expected) in [
            (
                format!("{author}, date = {{1919/1951}}"),
                "Perelaz, Print ledger, 1919–1951",
            ),
            (
                format!("{author}, date = {{1936}}"),
                "Perelaz, Print ledger, 1936",
            ),
            (author.to_owned(), "Perelaz, Print ledger"),
            (
                "title = {Day-book of the Press: Accounts}, date = {1930/1940}".to_owned(),
                "Day-book of the Press, 1930–1940",
            ),
        ] {
            assert_eq!(short(&fields), expected, "{fields}");
        }
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
        let (works, _) = bibtex::read(text, FileId::default(), &Words::built_in("en"));
        let shorts: Vec<_> = works.values().map(|w| w.short.as_str()).collect();
        assert_eq!(shorts, ["Ray 1970a", "Ray 1970b"]);
    }

    #[test]
    fn names_and_year_begin_the_full_form_with_the_letter_of_the_short_one() {
        let text = "@book{a, author={Ray, C.}, year=1970, title={A}, address={Northport}}\n@book{b, author={Ray, C.}, year=1970, title={B}}\n@misc{c, title={A Sale}, year=1949, address={Northport}}";
        let (works, _) = bibtex::read(text, FileId::default(), &Words::built_in("en"));
        let said: Vec<_> = works
            .values()
            .map(|w| (w.head_html.as_str(), w.full.as_str()))
            .collect();
        assert_eq!(
            said,
            [
                ("Ray, C. 1970a", "Ray, C. 1970a. A. Northport."),
                ("Ray, C. 1970b", "Ray, C. 1970b. B."),
                ("“A Sale.” 1949", "“A Sale.” 1949. Northport."),
            ]
        );
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

    /// Each text that is written from right to left has a direction of its own, and signs for directions in
    /// an entry open and close nothing.
    #[test]
    fn texts_from_right_to_left_are_isolated_in_a_reference() {
        let work = work(
            "@book{a, author = {\u{5db}\u{5d4}\u{5df}, \u{5d3}\u{5df} and Ray, C.}, title = {\u{2069}\u{5e9}\u{5dc}\u{5d5}\u{5dd}?\u{2067}}, year = 1970, publisher = {\u{2068}Northport}}",
        );
        let name = "\u{5db}\u{5d4}\u{5df}, \u{5d3}\u{5df}";
        let title = "\u{5e9}\u{5dc}\u{5d5}\u{5dd}?";
        assert_eq!(
            work.full_html,
            format!("<bdi>{name}</bdi>, and C. Ray. 1970. <em><bdi>{title}</bdi></em> Northport.")
        );
        assert_eq!(
            work.full,
            format!("{name}, and C. Ray. 1970. {title} Northport.")
        );
    }

    /// The style's own words ("edited by", "in") follow the language of the catalogue.
    #[test]
    fn a_reference_speaks_the_language_of_the_catalogue() {
        let entry = "@incollection{a, author = {Ray, C.}, title = {A}, booktitle = {B}, editor = {Meer, J.}, year = 1970}";
        let full = |language| {
            let (works, _) = bibtex::read(entry, FileId::default(), &Words::built_in(language));
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
        let (works, _) = bibtex::read(&text, FileId::default(), &Words::built_in("en"));
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
