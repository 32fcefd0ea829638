//! When sheets were met, by decade: a drawing and a table (`docs/definitions.md`, "Occasions").

use std::collections::BTreeSet;

use serde::Serialize;

use super::sheet_records::Records;
use crate::model::key::ImpressionKey;
use crate::page::drawings::bars::{self, Columns};
use crate::page::phrases::dates;
use crate::page::setting::address::Fragment;
use crate::page::setting::book::Here;
use crate::page::setting::html::CleanHtml;
use crate::study::census::Sheets;
use crate::study::occasions::{Decade, OccasionsByDecade};

/// The part on the page.
#[derive(Serialize)]
pub(super) struct OccasionsPart {
    /// The drawing.
    columns: Columns,
    /// The same as a table.
    rows: Vec<DecadeRow>,
    /// "Three reports give no year."; empty where all do.
    undated: String,
    /// That records which may be one sheet count as two here; empty where there are none.
    open: String,
}

#[derive(Serialize)]
struct DecadeRow {
    decade: String,
    first: DecadeFigure,
    again: DecadeFigure,
}

/// How often sheets were met, and their records.
#[derive(Serialize)]
struct DecadeFigure {
    figure: usize,
    records: CleanHtml,
}

/// When the sheets were met of which `known` are counted; `None` without an occasion.
pub(super) fn over_time(
    here: &Here<'_>,
    over_time: &OccasionsByDecade,
    records: &Records<'_>,
    known: Sheets,
) -> Option<OccasionsPart> {
    let words = here.words();
    let OccasionsByDecade { decades, undated } = over_time;
    if decades.is_empty() {
        return None;
    }
    let met = |sheets: &[ImpressionKey]| {
        let each: BTreeSet<ImpressionKey> = sheets.iter().cloned().collect();
        let each: Vec<ImpressionKey> = each.into_iter().collect();
        DecadeFigure {
            figure: sheets.len(),
            records: records.behind(here, &each, Fragment::Counts("status")),
        }
    };
    let row = |decade: &Decade| DecadeRow {
        decade: dates::decade(here.words(), decade.from),
        first: met(&decade.first),
        again: met(&decade.again),
    };
    Some(OccasionsPart {
        columns: bars::columns(decades),
        rows: decades.iter().filter(|d| d.has_any()).map(row).collect(),
        undated: match *undated {
            0 => String::new(),
            n => words.count("occasions-undated", n),
        },
        open: if known.is_certain() {
            String::new()
        } else {
            words.word("open-pairs-count-twice").to_owned()
        },
    })
}
