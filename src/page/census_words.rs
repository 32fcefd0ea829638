//! Counts of sheets in words: "14 impressions", "between 13 and 14 impressions".

use super::book::Here;
use super::words::Given;
use crate::study::census::Sheets;

/// A count as a phrase: "14 impressions known", "at least 13, at most 14 impressions known".
pub(super) fn known(here: &Here<'_>, sheets: Sheets) -> String {
    let words = here.words();
    if sheets.is_certain() {
        words.count("sheets-known", sheets.at_most)
    } else {
        words.with(
            if sheets.exact {
                "sheets-known-between"
            } else {
                "sheets-known-not-below"
            },
            &[
                ("least", Given::Count(sheets.at_least)),
                ("n", Given::Count(sheets.at_most)),
            ],
        )
    }
}

/// A count as a figure: "14", "13–14".
pub(super) fn figure(sheets: Sheets) -> String {
    if sheets.is_certain() {
        sheets.at_most.to_string()
    } else {
        format!("{}–{}", sheets.at_least, sheets.at_most)
    }
}
