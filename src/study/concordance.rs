//! The concordance: our numbers beside those of earlier catalogues, both ways.
//!
//! In: the `literature` of designs, states and printings. Out: [`Concordance`]: rows from ours to theirs,
//! and from theirs to ours, many to many; and the address of each of their numbers. A work is in the concordance where some citation gives its number for a
//! design, state or printing; a work cited only with a page is not.
//! Definitions: `docs/definitions.md, "Older numbers"`.
//!
//! ```
//! # mod literal { include!(concat!(env!("CARGO_MANIFEST_DIR"), "/../../tests/doc/catalogue.rs")); }
//! # use literal::catalogue;
//! # use keyblock::model::key::Key;
//! # use keyblock::study::{concordance::Concordance, order::Order};
//! let catalogue = catalogue(r#"
//! -- records/literature.bib
//! @book{first-list, author = {Baker, B.}, title = {First List}, year = {1950}}
//! -- records/designs/1/design.toml
//! titles = [{ text = "The Ferry" }]
//! literature = [{ cite = "first-list", number = "12" }]
//! "#);
//! let concordance = Concordance::of(&catalogue, &Order::of(&catalogue));
//! let work: Key = "first-list".parse().unwrap();
//! assert_eq!(concordance.reverse[&work][0].number.as_deref(), Some("12"));
//! assert_eq!(concordance.reverse[&work][0].ours.design.as_str(), "1");
//! ```

use std::collections::{BTreeMap, BTreeSet};

use super::order::{Collator, Order};
use super::search::words::number_parts;
use keyblock_model::catalogue::Catalogue;
use keyblock_model::design::Design;
use keyblock_model::key::Key;
use keyblock_model::literature::{Citation, Relation};

/// The part of a design that a row is about.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum DesignPart {
    /// The design.
    Whole,
    /// One of its states.
    State(Key),
    /// One of its printings.
    Printing(Key),
}

/// A design, or a state or printing of one.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct OwnEntry {
    /// The design.
    pub design: Key,
    /// The part.
    pub part: DesignPart,
}

/// The number that an earlier catalogue gives to a design, state or printing.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct OtherNumber {
    /// The number, as cited.
    pub number: String,
    /// The number of the design in that catalogue, where this is that of a state or printing.
    pub of_design: Option<String>,
    /// How the other entry relates to ours.
    pub relation: Relation,
    /// Where in the work.
    pub at: Option<String>,
}

impl OtherNumber {
    /// The number as it is cited: "9", "9 I".
    #[must_use]
    pub fn cited(&self) -> String {
        cited(self.of_design.as_deref(), Some(&self.number))
    }

    /// Its place on the page of its work.
    #[must_use]
    pub fn fragment(&self) -> String {
        row_fragment(self.of_design.as_deref(), Some(&self.number))
    }
}

/// A row from ours to theirs.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ConcordanceRow {
    /// Ours.
    pub ours: OwnEntry,
    /// The other numbers, by work; a work without an entry does not number it.
    pub cells: BTreeMap<Key, Vec<OtherNumber>>,
}

/// A row from theirs to ours.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ReverseRow {
    /// Their number for the design; `None` where they are cited for a state or printing only.
    pub number: Option<String>,
    /// Their number for the state or printing.
    pub part: Option<String>,
    /// How theirs relates to ours.
    pub relation: Relation,
    /// Where in the work.
    pub at: Option<String>,
    /// Ours.
    pub ours: OwnEntry,
}

/// A number of an earlier catalogue, with everything of ours that it stands for.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct EarlierNumber<'c> {
    /// Their number for the design; `None` where they are cited for a state or printing only.
    pub number: Option<&'c str>,
    /// Their number for the state or printing.
    pub part: Option<&'c str>,
    /// Its place on the page of the work ([`row_fragment`]).
    pub fragment: String,
    /// Its rows, in our order.
    pub rows: Vec<&'c ReverseRow>,
}

/// The concordance of a catalogue with earlier literature.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Concordance {
    /// The works, by year, then as readers sort them.
    pub works: Vec<Key>,
    /// Every design, followed by those of its states and printings that a work numbers.
    pub rows: Vec<ConcordanceRow>,
    /// For each work, its numbers in order, each with our entry.
    pub reverse: BTreeMap<Key, Vec<ReverseRow>>,
}

impl Concordance {
    /// The concordance of a catalogue.
    #[must_use]
    pub fn of(catalogue: &Catalogue, order: &Order) -> Concordance {
        let mut rows = Vec::new();
        let mut reverse: BTreeMap<Key, Vec<ReverseRow>> = BTreeMap::new();
        for design in order.keys().iter().filter_map(|k| catalogue.designs.get(k)) {
            for (part, literature) in parts(design) {
                let ours = OwnEntry {
                    design: design.key.clone(),
                    part,
                };
                let of_design = (ours.part != DesignPart::Whole).then_some(design);
                let cells = cells(literature, of_design);
                for (work, cells) in &cells {
                    let theirs = reverse.entry(work.clone()).or_default();
                    theirs.extend(
                        cells
                            .iter()
                            .map(|cell| from_theirs(design, work, cell, &ours)),
                    );
                }
                if !cells.is_empty() || ours.part == DesignPart::Whole {
                    rows.push(ConcordanceRow { ours, cells });
                }
            }
        }
        let collator = Collator::of_numbers(&catalogue.settings.language);
        for theirs in reverse.values_mut() {
            // Rows are made in our order; the sort keeps it among equal numbers.
            theirs.sort_by(|a, b| {
                collator
                    .compare(text(a.number.as_ref()), text(b.number.as_ref()))
                    .then_with(|| collator.compare(text(a.part.as_ref()), text(b.part.as_ref())))
            });
        }
        Concordance {
            works: works_in_order(catalogue, reverse.keys().cloned().collect()),
            rows,
            reverse,
        }
    }

    /// Every number of an earlier catalogue beside one of our entries: the works in order, each with its rows.
    pub fn pairs(&self) -> impl Iterator<Item = (&Key, &ReverseRow)> {
        let works = self.works.iter();
        works.flat_map(|work| {
            let rows = self.reverse.get(work).into_iter().flatten();
            rows.map(move |row| (work, row))
        })
    }

    /// The numbers of an earlier catalogue, in order, each once however it is written.
    #[must_use]
    pub fn numbers_of(&self, work: &Key) -> Vec<EarlierNumber<'_>> {
        let mut numbers: Vec<EarlierNumber<'_>> = Vec::new();
        let mut places: BTreeMap<String, usize> = BTreeMap::new();
        for row in self.reverse.get(work).into_iter().flatten() {
            let fragment = row.fragment();
            let place = *places.entry(fragment).or_insert_with_key(|fragment| {
                numbers.push(EarlierNumber {
                    number: row.number.as_deref(),
                    part: row.part.as_deref(),
                    fragment: fragment.clone(),
                    rows: Vec::new(),
                });
                numbers.len() - 1
            });
            if let Some(number) = numbers.get_mut(place) {
                number.rows.push(row);
            }
        }
        numbers
    }

    /// The row of one of our entries.
    #[must_use]
    pub fn row(&self, ours: &OwnEntry) -> Option<&ConcordanceRow> {
        self.rows.iter().find(|row| row.ours == *ours)
    }
}

/// A number with that of a state or printing behind it: "9 I".
fn cited(number: Option<&str>, part: Option<&str>) -> String {
    let parts = [number, part].into_iter().flatten();
    parts.collect::<Vec<_>>().join(" ")
}

impl EarlierNumber<'_> {
    /// The number as it is cited: "9", "9 I".
    #[must_use]
    pub fn cited(&self) -> String {
        cited(self.number, self.part)
    }
}

impl ReverseRow {
    /// The place of the number on the page of its work.
    #[must_use]
    pub fn fragment(&self) -> String {
        row_fragment(self.number.as_deref(), self.part.as_deref())
    }
}

/// The place of a number on the page of its work, as the `id` of its row: its letters and figures, folded, with a
/// hyphen between two runs of letters or two of figures. One number has one place however it is punctuated; two
/// numbers never share one. Empty for a number without letters and figures, which has no address.
///
/// ```
/// # use keyblock::study::concordance::row_fragment;
/// assert_eq!(row_fragment(Some("9"), None), "9");
/// assert_eq!(row_fragment(Some("9a"), None), "9a");
/// assert_eq!(row_fragment(Some("12/I"), None), "12i");
/// assert_eq!(row_fragment(Some("W 4"), Some("III")), "w4iii");
/// assert_eq!(row_fragment(Some("1962.44"), None), "1962-44");
/// ```
#[must_use]
pub fn row_fragment(number: Option<&str>, part: Option<&str>) -> String {
    let mut fragment = String::new();
    for text in [number, part].into_iter().flatten() {
        for part in number_parts(text) {
            let is_of_figures = |c: Option<char>| c.is_some_and(char::is_numeric);
            let (before, next) = (fragment.chars().next_back(), part.chars().next());
            if before.is_some() && is_of_figures(before) == is_of_figures(next) {
                fragment.push('-');
            }
            fragment.push_str(&part);
        }
    }
    fragment
}

fn text(number: Option<&String>) -> &str {
    number.map(String::as_str).unwrap_or_default()
}

/// A design, its states and its printings, each with its literature.
fn parts(design: &Design) -> impl Iterator<Item = (DesignPart, &[Citation])> {
    let states = design.standing_states().map(|s| {
        (
            DesignPart::State(s.key.value.clone()),
            s.literature.as_slice(),
        )
    });
    let printings = design.standing_printings().map(|p| {
        (
            DesignPart::Printing(p.key.value.clone()),
            p.literature.as_slice(),
        )
    });
    std::iter::once((DesignPart::Whole, design.literature.as_slice()))
        .chain(states)
        .chain(printings)
}

/// The numbers by work. `of_design`: the design, for the numbers of its states and printings.
fn cells(literature: &[Citation], of_design: Option<&Design>) -> BTreeMap<Key, Vec<OtherNumber>> {
    let mut cells: BTreeMap<Key, Vec<OtherNumber>> = BTreeMap::new();
    for citation in literature {
        // A document may number prints, but is no catalogue of them.
        let (Some(number), Some(work)) = (&citation.number, citation.cite.work()) else {
            continue;
        };
        cells.entry(work.clone()).or_default().push(OtherNumber {
            number: number.clone(),
            of_design: of_design.and_then(|design| number_of(design, work)),
            relation: citation.relation,
            at: citation.at.clone(),
        });
    }
    cells
}

fn from_theirs(design: &Design, work: &Key, cell: &OtherNumber, ours: &OwnEntry) -> ReverseRow {
    let (number, part) = match ours.part {
        DesignPart::Whole => (Some(cell.number.clone()), None),
        DesignPart::State(_) | DesignPart::Printing(_) => {
            (number_of(design, work), Some(cell.number.clone()))
        }
    };
    ReverseRow {
        number,
        part,
        relation: cell.relation,
        at: cell.at.clone(),
        ours: ours.clone(),
    }
}

/// The number of a design in a work.
fn number_of(design: &Design, work: &Key) -> Option<String> {
    let mut numbers = design
        .literature
        .iter()
        .filter(|c| c.cite.work() == Some(work));
    numbers.find_map(|citation| citation.number.clone())
}

fn works_in_order(catalogue: &Catalogue, works: BTreeSet<Key>) -> Vec<Key> {
    let collator = Collator::of_words(&catalogue.settings.language);
    let mut works: Vec<Key> = works.into_iter().collect();
    works.sort_by(|a, b| {
        let known = |key: &Key| {
            let work = catalogue.literature.get(key);
            let year = work.and_then(|w| w.year).unwrap_or(i32::MAX);
            (year, work.map_or("", |w| w.short.as_str()))
        };
        let ((year_a, short_a), (year_b, short_b)) = (known(a), known(b));
        year_a
            .cmp(&year_b)
            .then_with(|| collator.compare(short_a, short_b))
            .then_with(|| a.cmp(b))
    });
    works
}
