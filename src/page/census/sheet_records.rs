//! The published records behind a figure of the census.

use std::collections::BTreeMap;

use crate::model::design::Design;
use crate::model::key::{ImpressionKey, Key};
use crate::page::setting::address::{Address, Fragment};
use crate::page::setting::book::Here;
use crate::page::setting::html::CleanHtml;
use crate::study::census::is_counted;

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

    /// The records of some sheets, and the number of sheets without a published record. Where designs
    /// are named instead, each links to `part` of its census.
    pub fn behind(
        &self,
        here: &Here<'_>,
        sheets: &[ImpressionKey],
        part: Fragment<'_>,
    ) -> CleanHtml {
        let mut records: Vec<&ImpressionKey> = sheets
            .iter()
            .filter_map(|sheet| self.of.get(sheet))
            .flatten()
            .copied()
            .collect();
        let order = &here.book.studies.order;
        records.sort_by_key(|key| order.impression_rank(key));
        let shown = if self.is_long && records.len() > HANDLES {
            designs_with_numbers(here, &records, part)
        } else {
            here.handles(records)
        };
        let hidden = sheets.iter().filter(|s| !self.of.contains_key(s)).count();
        let hidden = match hidden {
            0 => CleanHtml::empty(),
            n => CleanHtml::quiet(&here.words().count("counted-not-shown", n)),
        };
        CleanHtml::join([&shown, &hidden], "; ")
    }
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
