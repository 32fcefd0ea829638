//! Rule: the catalogue states no licence.

use crate::model::catalogue::Catalogue;
use crate::model::codes::Code;
use crate::model::finding::Finding;
use crate::study::Studies;

/// The catalogue does not state under which licence it is published, so readers may not reuse it.
pub(super) fn unsaid(catalogue: &Catalogue, _: &Studies, findings: &mut Vec<Finding>) {
    let settings = &catalogue.settings;
    let is_said = settings
        .licence
        .as_ref()
        .is_some_and(|licence| !licence.trim().is_empty());
    if !is_said {
        findings.push(
            Finding::new(
                Code::RightsUnsaid,
                settings.place,
                "the catalogue does not say under which licence it is published",
            )
            .help("add `licence`, as \"CC-BY-4.0\" or in your own words"),
        );
    }
}
