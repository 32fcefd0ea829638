//! Pairs of records that may be one sheet.

use std::collections::BTreeSet;

use serde::Serialize;

use crate::model::design::Design;
use crate::model::key::ImpressionKey;
use crate::page::phrases::enumeration;
use crate::page::setting::book::Here;
use crate::page::setting::html::CleanHtml;

/// A pair of records that may be one sheet.
#[derive(Serialize)]
pub(super) struct RecordPair {
    /// The records: "14.20 and 14.21".
    pub records: CleanHtml,
    /// The reason, where one is recorded.
    pub why: Vec<CleanHtml>,
}

/// The pairs of records of some designs that may be one sheet, each once.
pub(super) fn open_pairs<'a>(
    here: &Here<'_>,
    designs: impl Iterator<Item = &'a Design>,
) -> Vec<RecordPair> {
    let mut seen: BTreeSet<(&ImpressionKey, &ImpressionKey)> = BTreeSet::new();
    let mut pairs = Vec::new();
    for impression in designs.flat_map(|d| d.impressions.values()) {
        for other in &impression.maybe_same_as {
            let joined = here.joined();
            let a = joined.page_of(&impression.key);
            let b = joined.page_of(&other.impression.value);
            let is_published = here.public().impression(b).is_some();
            if !is_published || a == b || !seen.insert((a.min(b), a.max(b))) {
                continue;
            }
            pairs.push(RecordPair {
                records: enumeration::together(
                    here,
                    &[here.impression(a.min(b)), here.impression(a.max(b))],
                ),
                why: other
                    .why
                    .as_deref()
                    .map(CleanHtml::text)
                    .into_iter()
                    .collect(),
            });
        }
    }
    pairs
}
