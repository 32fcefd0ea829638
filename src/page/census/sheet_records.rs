//! The published records behind a figure of the census.

use std::collections::{BTreeMap, BTreeSet};

use crate::model::design::Design;
use crate::model::key::{ImpressionKey, Key};
use crate::model::words::{ClosedList as _, Standing};
use crate::page::phrases::standing_note;
use crate::page::setting::address::{Address, Fragment};
use crate::page::setting::book::Here;
use crate::page::setting::html::CleanHtml;
use crate::study::census::{Census, is_counted};

/// The published records of each sheet, by its first record.
pub(crate) struct Records<'a> {
    of: BTreeMap<ImpressionKey, Vec<&'a ImpressionKey>>,
    /// Whether a long row names designs with the number of records of each, instead of hundreds of records.
    is_long: bool,
}

/// A row of more records than this names the designs and the number of each.
const HANDLES: usize = 60;

impl<'a> Records<'a> {
    /// The counted records of some designs.
    pub fn of(here: &Here<'a>, designs: impl Iterator<Item = &'a Design>) -> Records<'a> {
        let mut of: BTreeMap<ImpressionKey, Vec<&ImpressionKey>> = BTreeMap::new();
        for design in designs {
            for impression in design.impressions.values() {
                if is_counted(design, impression) {
                    let first = here.book.studies.groups.first_of(&impression.key);
                    of.entry(first).or_default().push(&impression.key);
                }
            }
        }
        Records { of, is_long: false }
    }

    /// The same for a table of a whole catalogue.
    pub fn by_design(mut self) -> Records<'a> {
        self.is_long = true;
        self
    }

    /// The records of some sheets, those among them that are not accepted, and the number of sheets without a
    /// published record. Where designs are named instead, each links to `part` of its census.
    pub fn behind(
        &self,
        here: &Here<'_>,
        sheets: &[ImpressionKey],
        part: Fragment<'_>,
    ) -> CleanHtml {
        let records = sheets
            .iter()
            .filter_map(|sheet| self.of.get(sheet))
            .flatten()
            .copied();
        let mut records = here.sheets_of(records);
        let order = &here.book.studies.order;
        records.sort_by_key(|key| order.impression_rank(key));
        let shown = if self.is_long && records.len() > HANDLES {
            designs_with_numbers(here, &records, part)
        } else {
            here.handles(records.iter().copied())
        };
        let hidden = sheets.iter().filter(|s| !self.of.contains_key(s)).count();
        let hidden = match hidden {
            0 => CleanHtml::empty(),
            n => CleanHtml::quiet(&here.words().count("counted-not-shown", n)),
        };
        let doubtful = not_accepted(here, &records);
        CleanHtml::join([&shown, &doubtful, &hidden], "; ")
    }

    /// "1 of them doubtful (1.6)": the records of a design that are counted and not accepted; empty where all are.
    pub fn not_accepted_of(&self, here: &Here<'_>, design: &Key) -> CleanHtml {
        let records = self.of.values().flatten().copied();
        let mut records: Vec<&ImpressionKey> = records.filter(|r| r.design == *design).collect();
        let order = &here.book.studies.order;
        records.sort_by_key(|key| order.impression_rank(key));
        not_accepted(here, &records)
    }

    /// How many sheets of a census have no published record: they are counted and not shown.
    pub fn not_shown(&self, census: &Census) -> usize {
        let sheets = census.by.kind.iter().flat_map(|row| &row.allowing);
        let hidden: BTreeSet<&ImpressionKey> =
            sheets.filter(|s| !self.of.contains_key(s)).collect();
        hidden.len()
    }
}

/// The sheets of some records whose standing is not accepted, by standing: "1 of them doubtful (1.6)".
pub(super) fn not_accepted(here: &Here<'_>, records: &[&ImpressionKey]) -> CleanHtml {
    let groups = &here.book.studies.groups;
    let of_standing = |standing: &Standing| {
        let has_it = |key: &&&ImpressionKey| {
            let record = here.public().impression(key);
            record.is_some_and(|record| record.standing.standing == *standing)
        };
        let keys: Vec<&ImpressionKey> = records.iter().filter(has_it).copied().collect();
        let record = here.public().impression(keys.first()?)?;
        let word = CleanHtml::text(standing_note::remark(here, &record.standing));
        let sheets: BTreeSet<ImpressionKey> = keys.iter().map(|k| groups.first_of(k)).collect();
        let handles = here.handles(keys);
        let given = [("standing", &word), ("records", &handles)];
        let words = here.words();
        Some(words.html("of-them-standing", Some(sheets.len()), &given))
    };
    let standings = Standing::ALL.iter().filter(|s| **s != Standing::Accepted);
    let parts: Vec<CleanHtml> = standings.filter_map(of_standing).collect();
    CleanHtml::join(&parts, ", ")
}

/// "7 (24), 8 (6)", as links to the census of each design.
fn designs_with_numbers(
    here: &Here<'_>,
    records: &[&ImpressionKey],
    part: Fragment<'_>,
) -> CleanHtml {
    let mut designs: Vec<(&Key, usize)> = Vec::new();
    for key in records {
        match designs.last_mut() {
            Some((design, n)) if **design == key.design => *n += 1,
            _ => designs.push((&key.design, 1)),
        }
    }
    let parts: Vec<CleanHtml> = designs
        .into_iter()
        .filter_map(|(key, n)| {
            let design = here.public().designs.get(key)?;
            let to = here.href_part(&Address::DesignCensus(key.clone()), part);
            let link = CleanHtml::link(&to, &CleanHtml::text(&design.number));
            Some(link.then(&format!(" ({n})")))
        })
        .collect();
    CleanHtml::join(&parts, ", ")
}
