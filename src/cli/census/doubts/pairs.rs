//! The pairs of records that may be one sheet, with the phrases that all three outputs share.

use crate::model::catalogue::Catalogue;
use crate::model::design::Design;
use crate::model::impression::OtherSheet;
use crate::model::key::ImpressionKey;
use crate::study::Studies;
use crate::study::same_sheet::reason::Bearing;
use crate::study::same_sheet::{RecordPair, pairs};

/// The pairs of one design.
pub(super) struct DesignPairs<'a> {
    pub(super) design: &'a Design,
    pub(super) pairs: Vec<RecordPair>,
}

/// The pairs in readers' order, of one design or of every one.
pub(super) fn in_order<'a>(
    catalogue: &'a Catalogue,
    studies: &Studies,
    design: Option<&Design>,
) -> Vec<DesignPairs<'a>> {
    let mut found = pairs(catalogue, &studies.groups);
    let keys = studies.order.keys().iter();
    keys.filter(|key| design.is_none_or(|design| design.key == **key))
        .filter_map(|key| {
            Some(DesignPairs {
                design: catalogue.designs.get(key)?,
                pairs: found.remove(key)?,
            })
        })
        .collect()
}

/// The reason that the records of a pair state themselves for being perhaps one sheet, unless it is private.
pub(super) fn stated_why<'a>(
    catalogue: &'a Catalogue,
    records: &[ImpressionKey; 2],
) -> Option<&'a str> {
    let [one, other] = records;
    let why = |from: &ImpressionKey, to: &ImpressionKey| {
        let record = catalogue.published_impression(catalogue.impression(from)?);
        let links: &[OtherSheet] = &record.maybe_same_as;
        let link = links.iter().find(|link| link.impression.value == *to)?;
        link.why.as_deref()
    };
    why(one, other).or_else(|| why(other, one))
}

/// The word for a bearing.
pub(super) fn bearing_word(bearing: Bearing) -> &'static str {
    match bearing {
        Bearing::Proves => "ties",
        Bearing::Speaks => "speaks for",
        Bearing::Fits => "fits",
        Bearing::Weighs => "weighs against",
        Bearing::Contradicts => "contradicts",
        Bearing::Excludes => "excludes",
    }
}

/// The conclusion from the reasons, as a phrase.
pub(super) fn verdict(pair: &RecordPair) -> &'static str {
    if pair.is_excluded() {
        "excluded, unless something recorded as certain is wrong"
    } else if pair.is_suggested() && !pair.is_stated {
        "may be one sheet (not yet stated in any record)"
    } else if pair.is_suggested() {
        "may be one sheet"
    } else {
        "stated in a record; little else speaks for it"
    }
}
