//! Rows and records that may be one sheet, by the reasons of `census --doubts`.
//!
//! In: rows as records, each in the designs that it may belong to. Out: [`SheetPair`]s that `study::same_sheet` suggests and
//! that join a row with a record, or two rows. The rows are compared some thousand at a time, so that memory stays bounded
//! however long the file is; rows of one design are compared together.

use std::collections::BTreeMap;

use crate::model::catalogue::Catalogue;
use crate::model::certainty::Claim;
use crate::model::design::{Design, Title, TitleKind};
use crate::model::former::FormerKeys;
use crate::model::impression::Impression;
use crate::model::key::{ImpressionKey, Key};
use crate::model::place::{Place, Placed, Sources};
use crate::model::redacted::Redacted;
use crate::study::Studies;
use crate::study::census::Groups;
use crate::study::same_sheet::reason::{Bearing, Reason};
use crate::study::same_sheet::{RecordPair, pairs};

/// A reason in words, for a pair of records: of the catalogue, the studies, the records and the reason.
pub type ReasonWords<'w> = &'w dyn Fn(&Catalogue, &Studies, &[ImpressionKey; 2], &Reason) -> String;

/// The words of reasons: `audit` has them, and `press` hands them on.
#[derive(Clone, Copy)]
pub struct Wording<'w> {
    /// With what records keep private, for editors.
    pub in_full: ReasonWords<'w>,
    /// As everybody may read it.
    pub public: ReasonWords<'w>,
}

/// A row, or a record of the census.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum SheetOf {
    /// A row, by its place among the rows.
    Row(usize),
    /// A record.
    Record(ImpressionKey),
}

/// Two that may be one sheet, at least one of them a row.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SheetPair {
    /// The row.
    pub row: usize,
    /// The other.
    pub other: SheetOf,
    /// Why, in words.
    pub why: String,
    /// Whether the words rest on what a record keeps private.
    pub is_private: bool,
}

/// How many rows are compared at a time.
const AT_A_TIME: usize = 1_000;

/// The first number of the rows among the impressions of a design: no record has it.
const FIRST_OF_ROWS: u32 = 3_000_000_000;

/// The pairs. `designs`: for each design its rows, by their places; a design that the catalogue does not have is made up for
/// the comparison. `as_record` makes a row a record with the key that it is given; `number` gives the number by which people
/// know a row.
#[must_use]
pub fn sheet_pairs(
    catalogue: &Catalogue,
    studies: &Studies,
    designs: &BTreeMap<Key, Vec<usize>>,
    as_record: &dyn Fn(usize, ImpressionKey) -> Impression,
    number: &dyn Fn(usize) -> u32,
    wording: Wording<'_>,
) -> Vec<SheetPair> {
    let mut found = Vec::new();
    let mut part = without_designs(catalogue);
    let mut rows_in_part = 0;
    let last = designs.keys().next_back();
    for (key, rows) in designs {
        let design = with_rows(catalogue, key, rows, as_record);
        part.designs.insert(key.clone(), design);
        rows_in_part += rows.len();
        if rows_in_part >= AT_A_TIME || Some(key) == last {
            compare_part(&part, studies, number, wording, &mut found);
            part.designs.clear();
            rows_in_part = 0;
        }
    }
    found
}

/// A design with some rows among its impressions.
fn with_rows(
    catalogue: &Catalogue,
    key: &Key,
    rows: &[usize],
    as_record: &dyn Fn(usize, ImpressionKey) -> Impression,
) -> Design {
    let recorded = catalogue.designs.get(key).cloned();
    let mut design = recorded.unwrap_or_else(|| made_up(key));
    for row in rows {
        let number = number_of_row(*row);
        let impression = ImpressionKey {
            design: key.clone(),
            number,
        };
        let record = as_record(*row, impression);
        design.impressions.insert(number, record);
    }
    design
}

fn compare_part(
    part: &Catalogue,
    studies: &Studies,
    number: &dyn Fn(usize) -> u32,
    wording: Wording<'_>,
    found: &mut Vec<SheetPair>,
) {
    let groups = Groups::of(part);
    for pair in pairs(part, &groups).values().flatten() {
        let [one, other] = pair.records.each_ref().map(sheet_of);
        let ((SheetOf::Row(row), other) | (other, SheetOf::Row(row))) = (one, other) else {
            continue;
        };
        if !pair.is_suggested() {
            continue;
        }
        let words = |reason| words(part, studies, pair, reason, number, wording);
        let strongest = pair.with(Bearing::Proves).chain(pair.with(Bearing::Speaks));
        let told: Vec<(String, bool)> = strongest.map(words).collect();
        let is_unpublished = match &other {
            SheetOf::Record(key) => {
                let record = part.impression(key);
                record.is_some_and(|record| !part.published_impression(record).publish)
            }
            SheetOf::Row(_) => false,
        };
        let why: Vec<&str> = told.iter().map(|(words, _)| words.as_str()).collect();
        found.push(SheetPair {
            row,
            other,
            why: why.join("; "),
            is_private: is_unpublished || told.iter().any(|(_, is_private)| *is_private),
        });
    }
}

/// A reason in words, and whether they rest on something private.
fn words(
    catalogue: &Catalogue,
    studies: &Studies,
    pair: &RecordPair,
    reason: &Reason,
    number: &dyn Fn(usize) -> u32,
    wording: Wording<'_>,
) -> (String, bool) {
    let mut full = (wording.in_full)(catalogue, studies, &pair.records, reason);
    let public = (wording.public)(catalogue, studies, &pair.records, reason);
    let is_private = reason.is_private || full != public;
    for key in &pair.records {
        if let SheetOf::Row(row) = sheet_of(key) {
            // The number that only the row has in the comparison stands for the row.
            let cited = catalogue.sheet_number(key);
            full = full.replace(&cited, &format!("row {}", number(row)));
        }
    }
    (full, is_private)
}

fn number_of_row(row: usize) -> u32 {
    let row = u32::try_from(row).unwrap_or(u32::MAX - FIRST_OF_ROWS);
    FIRST_OF_ROWS.saturating_add(row)
}

fn sheet_of(key: &ImpressionKey) -> SheetOf {
    match key.number.checked_sub(FIRST_OF_ROWS) {
        Some(row) => SheetOf::Row(usize::try_from(row).unwrap_or(usize::MAX)),
        None => SheetOf::Record(key.clone()),
    }
}

/// The catalogue with everything that comparing needs, without its designs.
fn without_designs(catalogue: &Catalogue) -> Catalogue {
    Catalogue {
        sources: Sources::default(),
        settings: catalogue.settings.clone(),
        designs: BTreeMap::new(),
        holders: catalogue.holders.clone(),
        people: catalogue.people.clone(),
        literature: catalogue.literature.clone(),
        exhibitions: catalogue.exhibitions.clone(),
        marks: catalogue.marks.clone(),
        documents: catalogue.documents.clone(),
        series: catalogue.series.clone(),
        vocabularies: catalogue.vocabularies.clone(),
        pages: BTreeMap::new(),
        occurrences: BTreeMap::new(),
        contents: BTreeMap::new(),
        register: None,
        unpublished: BTreeMap::new(),
        former: FormerKeys::default(),
        settled: Vec::new(),
        redacted: Redacted {
            impressions: catalogue.redacted.impressions.clone(),
            holders: catalogue.redacted.holders.clone(),
            people: catalogue.redacted.people.clone(),
            exhibitions: catalogue.redacted.exhibitions.clone(),
            marks: catalogue.redacted.marks.clone(),
            documents: catalogue.redacted.documents.clone(),
            texts: catalogue.redacted.texts.clone(),
            ..Redacted::default()
        },
    }
}

/// A design of which nothing is recorded.
fn made_up(key: &Key) -> Design {
    let title = Title {
        text: Placed::new(String::new(), Place::default()),
        lang: None,
        kind: TitleKind::Usual,
        supplied: false,
        claim: Claim::default(),
    };
    Design {
        titles: vec![title],
        ..Design::blank(key, Place::default())
    }
}
