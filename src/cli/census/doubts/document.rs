//! The shape of `census --doubts --json`.

use serde::Serialize;

use super::{OfDesign, stated_why};
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
    pairs: Vec<OfPair>,
}

#[derive(Debug, Serialize)]
struct OfPair {
    records: [String; 2],
    /// Whether a record says so itself, and why.
    stated: bool,
    why: Option<String>,
    suggested: bool,
    excluded: bool,
    reasons: Vec<OfReason>,
}

#[derive(Debug, Serialize)]
struct OfReason {
    bearing: &'static str,
    kind: &'static str,
    says: String,
    /// Where each of the two records says so.
    at: [At; 2],
}

#[derive(Debug, Serialize)]
struct At {
    file: String,
    line: usize,
    column: usize,
}

pub(super) fn document(
    catalogue: &Catalogue,
    studies: &Studies,
    design: Option<&Design>,
    found: &[OfDesign<'_>],
) -> DoubtsDocument {
    let pairs = found.iter().flat_map(|of| &of.pairs);
    DoubtsDocument {
        design: design.map(|design| design.key.to_string()),
        pairs: pairs
            .map(|pair| of_pair(catalogue, studies, pair))
            .collect(),
    }
}

fn of_pair(catalogue: &Catalogue, studies: &Studies, pair: &RecordPair) -> OfPair {
    let of_reason = |reason: &Reason| OfReason {
        bearing: bearing(reason.bearing),
        kind: reason.evidence.kind().word,
        says: same_sheet::reason(catalogue, studies, &pair.records, reason),
        at: reason.places.map(|place| {
            let position = catalogue.sources.position(place);
            At {
                file: catalogue.sources.path(place.file).to_owned(),
                line: position.line,
                column: position.column,
            }
        }),
    };
    OfPair {
        records: pair.records.each_ref().map(ToString::to_string),
        stated: pair.is_stated,
        why: stated_why(catalogue, &pair.records).map(str::to_owned),
        suggested: pair.is_suggested(),
        excluded: pair.is_excluded(),
        reasons: pair.reasons.iter().map(of_reason).collect(),
    }
}

/// The word for a bearing; promised to programs.
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
