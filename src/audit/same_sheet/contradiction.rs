//! Rule: two records are said both to be one sheet and not to be one.

use crate::model::catalogue::Catalogue;
use crate::model::codes::Code;
use crate::model::finding::Finding;
use crate::model::impression::OtherSheet;
use crate::model::key::ImpressionKey;
use crate::study::Studies;

/// Two records are joined by `same_as`, perhaps through others, and said not to be the same.
pub(in crate::audit) fn same_and_not(
    catalogue: &Catalogue,
    studies: &Studies,
    findings: &mut Vec<Finding>,
) {
    for (_, impression) in catalogue.impressions() {
        let group = studies.groups.first_of(&impression.key);
        for other in &impression.not_same_as {
            let other_key = &other.impression.value;
            let is_same =
                *other_key != impression.key && studies.groups.first_of(other_key) == group;
            if !is_same {
                continue;
            }
            let names = |links: &[OtherSheet], key: &ImpressionKey| {
                links
                    .iter()
                    .find(|o| o.impression.value == *key)
                    .map(|o| o.impression.place)
            };
            let back = catalogue.impression(other_key);
            let joined_at = names(&impression.same_as, other_key)
                .or_else(|| names(&back?.same_as, &impression.key))
                .or_else(|| impression.same_as.first().map(|o| o.impression.place));
            let mut finding = Finding::new(
                Code::SameAndNot,
                other.impression.place,
                format!(
                    "{} and {} are said to be one sheet and also not to be",
                    catalogue.sheet_number(&impression.key),
                    catalogue.sheet_number(other_key)
                ),
            )
            .saying("said to be another sheet")
            .help("take away the one of the two that is wrong");
            if let Some(place) = joined_at {
                finding = finding.beside(place, "said to be the same sheet");
            }
            findings.push(finding);
        }
    }
}
