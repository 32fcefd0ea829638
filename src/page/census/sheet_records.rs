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
    /// The same records by design.
    of_design: BTreeMap<&'a Key, Vec<&'a ImpressionKey>>,
    /// Whether a long row names designs with the number of records of each, instead of hundreds of records.
    is_long: bool,
}

/// A row of more records than this names the designs and the number of each; a row of more designs stays folded.
const HANDLES: usize = 60;

impl<'a> Records<'a> {
    /// The counted records of some designs.
    pub fn of(here: &Here<'a>, designs: impl Iterator<Item = &'a Design>) -> Records<'a> {
        let mut of: BTreeMap<ImpressionKey, Vec<&ImpressionKey>> = BTreeMap::new();
        let mut of_design: BTreeMap<&Key, Vec<&ImpressionKey>> = BTreeMap::new();
        for design in designs {
            for impression in design.impressions.values() {
                if is_counted(design, impression) {
                    let first = here.book.studies.groups.first_of(&impression.key);
                    of.entry(first).or_default().push(&impression.key);
                    let own = of_design.entry(&design.key).or_default();
                    own.push(&impression.key);
                }
            }
        }
        Records {
            of,
            of_design,
            is_long: false,
        }
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

    /// "1,150 designs", where a row has records of more designs than a reader takes in; empty where it has fewer.
    pub fn summary(&self, here: &Here<'_>, sheets: &[ImpressionKey]) -> String {
        let records = sheets.iter().filter_map(|sheet| self.of.get(sheet));
        let designs: BTreeSet<&Key> = records.flatten().map(|record| &record.design).collect();
        if self.is_long && designs.len() > HANDLES {
            here.words().count("count-designs", designs.len())
        } else {
            String::new()
        }
    }

    /// "1 of them doubtful (1.6)": the records of a design that are counted and not accepted; empty where all are.
    pub fn not_accepted_of(&self, here: &Here<'_>, design: &Key) -> CleanHtml {
        let records = self.of_design.get(design);
        let mut records: Vec<&ImpressionKey> = records.into_iter().flatten().copied().collect();
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

/// "7 (24), 8.2, 9 (6)": the census of each design with the number of its sheets, or its only sheet, as links.
fn designs_with_numbers(
    here: &Here<'_>,
    records: &[&ImpressionKey],
    part: Fragment<'_>,
) -> CleanHtml {
    let parts: Vec<CleanHtml> = records
        .chunk_by(|a, b| a.design == b.design)
        .filter_map(|of_design| {
            let (first, n) = (of_design.first()?, of_design.len());
            if n == 1 {
                return Some(here.impression(first));
            }
            let key = &first.design;
            let design = here.public().designs.get(key)?;
            let to = here.href_part(&Address::DesignCensus(key.clone()), part);
            let link = CleanHtml::link(&to, &CleanHtml::text(&design.number));
            Some(link.then(&format!(" ({n})")))
        })
        .collect();
    CleanHtml::join(&parts, ", ")
}
