//! Rules: the status of a sheet and who has it say different things.

use crate::model::catalogue::Catalogue;
use crate::model::codes::Code;
use crate::model::finding::Finding;
use crate::model::impression::Status;
use crate::study::Studies;

use super::wording;

/// A sheet is located, but with nobody; or destroyed, but with a holder.
pub(super) fn status(catalogue: &Catalogue, _: &Studies, findings: &mut Vec<Finding>) {
    for (design, impression) in catalogue.impressions() {
        if impression.standing.is_withdrawn() {
            continue;
        }
        let sheet = design.sheet_number(impression);
        let status = &impression.status;
        match (status.value, &impression.holder) {
            (Status::Located, None) if impression.owners.is_empty() => findings.push(
                Finding::new(
                    Code::LocatedNowhere,
                    status.place,
                    format!("{sheet} is said to be located, but its record names no holder"),
                )
                .help("name the `holder` (a private one may be a record that is not published), or write `untraced`"),
            ),
            (Status::Destroyed, Some(holder)) => findings.push(
                Finding::new(
                    Code::DestroyedWithHolder,
                    status.place,
                    format!(
                        "{sheet} is said to be destroyed, but to be with {}",
                        wording::person_or_holder(catalogue, &holder.value)
                    ),
                )
                .beside(holder.place, "its holder")
                .help("name who had it in `provenance` and leave `holder` out, or correct the status"),
            ),
            _ => {}
        }
    }
}
