//! What `census --doubts --json` prints (docs/JSON.md).

use serde::Serialize;

use super::pairs::{DesignPairs, stated_why};
use crate::audit::same_sheet;
use crate::model::catalogue::Catalogue;
use crate::model::design::Design;
use crate::study::Studies;
use crate::study::same_sheet::RecordPair;
use crate::study::same_sheet::reason::{Bearing, Reason};

/// What `census --doubts --json` prints.
#[derive(Debug, Serialize)]
pub(super) struct DoubtsDocument {
    /// The design's key; null for the whole catalogue.
    design: Option<String>,
    pairs: Vec<PairEntry>,
}

#[derive(Debug, Serialize)]
struct PairEntry {
    records: [String; 2],
    /// Whether a record states that they may be one sheet, and its reason.
    stated: bool,
    why: Option<String>,
    suggested: bool,
    excluded: bool,
    reasons: Vec<ReasonEntry>,
}

#[derive(Debug, Serialize)]
struct ReasonEntry {
    bearing: &'static str,
    kind: &'static str,
    says: String,
    /// The place in each of the two records.
    at: [Position; 2],
}

#[derive(Debug, Serialize)]
struct Position {
    file: String,
    line: usize,
    column: usize,
}

pub(super) fn document(
    catalogue: &Catalogue,
    studies: &Studies,
    design: Option<&Design>,
    found: &[DesignPairs<'_>],
) -> DoubtsDocument {
    let pairs = found.iter().flat_map(|of| &of.pairs);
    DoubtsDocument {
        design: design.map(|design| design.key.to_string()),
        pairs: pairs
            .map(|pair| of_pair(catalogue, studies, pair))
            .collect(),
    }
}

fn of_pair(catalogue: &Catalogue, studies: &Studies, pair: &RecordPair) -> PairEntry {
    let of_reason = |reason: &Reason| ReasonEntry {
        bearing: bearing(reason.bearing),
        kind: reason.evidence.kind().word,
        says: same_sheet::reason(catalogue, studies, &pair.records, reason),
        at: reason.places.map(|place| {
            let position = catalogue.sources.position(place);
            Position {
                file: catalogue.sources.path(place.file).to_owned(),
                line: position.line,
                column: position.column,
            }
        }),
    };
    PairEntry {
        records: pair.records.each_ref().map(ToString::to_string),
        stated: pair.is_stated,
        why: stated_why(catalogue, &pair.records).map(str::to_owned),
        suggested: pair.is_suggested(),
        excluded: pair.is_excluded(),
        reasons: pair.reasons.iter().map(of_reason).collect(),
    }
}

/// The word for a bearing. Programs rely on it.
fn bearing(bearing: Bearing) -> &'static str {
    match bearing {
        Bearing::Proves => "ties",
        Bearing::Speaks => "speaks",
        Bearing::Fits => "fits",
        Bearing::Weighs => "weighs",
        Bearing::Contradicts => "contradicts",
        Bearing::Excludes => "excludes",
    }
}
