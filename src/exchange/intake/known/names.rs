//! The names, numbers and keys by which a row can name a design of this catalogue, a part of one, or an earlier catalogue.
//!
//! In: a catalogue and its studies, private fields included, for editors. Out: [`CatalogueNames`], made once for a file;
//! every name is looked up, none searched for. The names are those of `study::resolve`.

use crate::model::catalogue::Catalogue;
use crate::model::design::Design;
use crate::model::key::Key;
use crate::study::Studies;
use crate::study::resolve::asked::Reader;
use crate::study::resolve::lookup::Lookup;
use crate::study::resolve::names::{DesignNames, QueryWords, References};
use crate::study::search::words::number_parts;

/// The names of a catalogue.
pub struct CatalogueNames<'c> {
    pub(super) catalogue: &'c Catalogue,
    pub(super) references: References,
    pub(super) lookup: Lookup,
    pub(super) reader: Reader,
    /// The works that number designs, by their places in the references.
    pub(super) numbered: Vec<usize>,
}

impl<'c> CatalogueNames<'c> {
    /// The names of a catalogue.
    #[must_use]
    pub fn of(catalogue: &'c Catalogue, studies: &Studies) -> CatalogueNames<'c> {
        let words = |words: &[&str]| words.iter().map(|word| (*word).to_owned()).collect();
        let query = QueryWords {
            number: words(&[
                "no", "nos", "nr", "number", "nummer", "cat", "kat", "design",
            ]),
            state: words(&["state", "of"]),
            ..QueryWords::default()
        };
        let (order, concordance, joined) = (&studies.order, &studies.concordance, &studies.joined);
        let references = References::of(catalogue, order, concordance, joined, query);
        let works = references.works.iter().enumerate();
        let numbered = works.filter(|(_, work)| !work.rows.is_empty());
        CatalogueNames {
            catalogue,
            numbered: numbered.map(|(at, _)| at).collect(),
            lookup: Lookup::of(&references),
            reader: Reader::new(&references),
            references,
        }
    }

    /// The work that a heading of a column names, by its short form: "Dreyloft 1936" for "Nr. (Dreyloft)". `None` where it
    /// names none or several that have numbers.
    ///
    /// Where a reference in the column has no author, this is the author to add to it before rows are grouped.
    #[must_use]
    pub fn work_of_heading(&self, heading: &str) -> Option<&str> {
        let parts = number_parts(heading);
        let mut found: Vec<usize> = Vec::new();
        for start in 0..parts.len() {
            for end in (start + 1..=parts.len()).rev() {
                let works = self.lookup.works.get(&parts[start..end].join("."));
                let mut works = works.into_iter().flatten().copied();
                found.extend(works.by_ref().filter(|at| self.numbered.contains(at)));
            }
        }
        found.sort_unstable();
        found.dedup();
        match found[..] {
            [work] => Some(self.short(work)),
            _ => None,
        }
    }

    /// The short form of a work.
    pub(super) fn short(&self, work: usize) -> &str {
        let work = self.references.works.get(work);
        work.map_or("", |work| &work.short)
    }

    /// A design of the references, by its place.
    pub(super) fn key_of(&self, design: usize) -> Option<&Key> {
        Some(&self.references.designs.get(design)?.key)
    }

    /// A design with its names.
    pub(super) fn named(&self, key: &Key) -> Option<(usize, &DesignNames, &'c Design)> {
        let at = self.references.design(key)?;
        let design = self.catalogue.designs.get(key)?;
        Some((at, &self.references.designs[at], design))
    }

    /// A design in words: `design 14 ("The Lock")`.
    #[must_use]
    pub fn in_words(&self, key: &Key) -> String {
        let design = self.catalogue.designs.get(key);
        let number = design.map_or(key.as_str(), |design| design.number.as_str());
        match design.and_then(Design::title) {
            Some(title) => format!("design {number} (\"{}\")", title.text.value),
            None => format!("design {number}"),
        }
    }
}
