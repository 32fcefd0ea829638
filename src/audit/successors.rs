//! Rule: a sheet is said to be with, or to have come to, a holder that another holder had taken over.

use crate::model::catalogue::Catalogue;
use crate::model::codes::Code;
use crate::model::edtf::Date;
use crate::model::finding::Finding;
use crate::model::holder::Successor;
use crate::model::key::Key;
use crate::model::place::{Place, Placed};
use crate::model::provenance::Party;
use crate::study::Studies;

use super::firm;
use super::wording;

/// A sheet is recorded as held by a holder that another took over, or as having come there after that.
pub(super) fn after_the_end(catalogue: &Catalogue, _: &Studies, findings: &mut Vec<Finding>) {
    for (_, impression) in catalogue.impressions() {
        let successor = |key: &Key| catalogue.holders.get(key)?.successor.as_ref();
        if let Some(holder) = &impression.holder
            && let Some(next) = successor(&holder.value)
        {
            let what = format!("{} is kept by", catalogue.sheet_number(&impression.key));
            findings.push(finding(catalogue, &what, holder, holder.place, next));
        }
        for entry in &impression.provenance {
            let Party::Record(key) = &entry.party else {
                continue;
            };
            let (Some(next), Some(from)) = (successor(&key.value), firm::date(entry.from.as_ref()))
            else {
                continue;
            };
            let is_later = |ended: &Placed<Date>| firm::is_before(&ended.value, &from.value);
            if firm::date(next.date.as_ref()).is_some_and(is_later) {
                let what = format!(
                    "in {} {} came to",
                    from.value,
                    catalogue.sheet_number(&impression.key)
                );
                findings.push(finding(catalogue, &what, key, from.place, next));
            }
        }
    }
}

fn finding(
    catalogue: &Catalogue,
    what: &str,
    holder: &Key,
    place: Place,
    next: &Successor,
) -> Finding {
    let since = next
        .date
        .as_ref()
        .map_or_else(String::new, |date| format!(" in {}", date.value));
    let next_name = wording::person_or_holder(catalogue, &next.holder.value);
    Finding::new(
        Code::HolderSucceeded,
        place,
        format!(
            "{what} {}, which {next_name} took over{since}",
            wording::person_or_holder(catalogue, holder)
        ),
    )
    .beside(next.holder.place, "took it over")
    .help(format!(
        "write `{}`, and keep the old number among `former_accessions`",
        next.holder.value
    ))
}
