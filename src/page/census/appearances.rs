//! When sheets were seen: a drawing and a table, decade by decade.

use std::collections::BTreeSet;

use serde::Serialize;

use super::sheet_records::Records;
use crate::model::key::ImpressionKey;
use crate::page::drawings::bars::{self, Columns};
use crate::page::phrases::dates;
use crate::page::setting::address::Fragment;
use crate::page::setting::book::Here;
use crate::page::setting::html::CleanHtml;
use crate::study::appearances::{AppearancesByDecade, Decade};

/// When sheets were seen.
#[derive(Serialize)]
pub(super) struct Seen {
    /// The drawing.
    columns: Columns,
    /// The same as a table.
    rows: Vec<SeenRow>,
    /// "Three appearances have no date."; empty where all have.
    undated: String,
}

#[derive(Serialize)]
struct SeenRow {
    decade: String,
    first: SeenSheets,
    again: SeenSheets,
}

/// How often sheets were seen, and the records of these sheets.
#[derive(Serialize)]
struct SeenSheets {
    figure: usize,
    records: CleanHtml,
}

/// When sheets were seen; `None` where nothing dated was.
pub(super) fn seen(
    here: &Here<'_>,
    over_time: &AppearancesByDecade,
    records: &Records<'_>,
) -> Option<Seen> {
    let words = here.words();
    let AppearancesByDecade { decades, undated } = over_time;
    if decades.is_empty() {
        return None;
    }
    let seen = |sheets: &[ImpressionKey]| {
        let each: BTreeSet<ImpressionKey> = sheets.iter().cloned().collect();
        let each: Vec<ImpressionKey> = each.into_iter().collect();
        SeenSheets {
            figure: sheets.len(),
            records: records.behind(here, &each, Fragment::Counts("status")),
        }
    };
    let row = |decade: &Decade| SeenRow {
        decade: dates::decade(here.words(), decade.from),
        first: seen(&decade.first),
        again: seen(&decade.again),
    };
    Some(Seen {
        columns: bars::columns(decades),
        rows: decades.iter().filter(|d| d.has_any()).map(row).collect(),
        undated: match *undated {
            0 => String::new(),
            n => words.count("appearances-undated", n),
        },
    })
}
