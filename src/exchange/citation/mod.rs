//! Citations for reference managers: of a design with its states and printings, of an impression, of a document, and of a
//! series.
//!
//! | file | subject |
//! |---|---|
//! | `item` | what is cited: title, catalogue, editors, date, address |
//! | `csl_json` | Citation Style Language, JSON |
//! | `bibtex` | BibTeX, as biblatex extends it |
//! | `ris` | RIS |

pub(super) mod bibtex;
pub(super) mod csl_json;
mod item;
pub(super) mod ris;

use super::format::Sources;
use crate::page::{Address, Subject};

/// The folders of the pages that are cited.
const FOLDERS: &[&str] = &["design/…/", "impression/…/", "document/…/", "series/…/"];

/// Each citation describes the page beside it.
const RELATION: &str = "describedby";

/// Every design, sheet, document and series; the records of one sheet have one page.
fn subjects(sources: &Sources<'_>) -> Vec<Subject> {
    let designs = sources.public.designs.values();
    let documents = sources.public.documents.keys().cloned();
    let documents = documents.map(Address::Document);
    let series = sources.public.series.keys().cloned().map(Address::Series);
    designs
        .flat_map(|design| {
            let sheets = design.impressions.values();
            let sheets = sheets.filter(|sheet| sources.studies.joined.has_page(&sheet.key));
            let sheets = sheets.map(|sheet| Address::Impression(sheet.key.clone()));
            std::iter::once(Address::Design(design.key.clone())).chain(sheets)
        })
        .chain(documents)
        .chain(series)
        .map(Subject::Page)
        .collect()
}
