//! Rule: a record is dated after the catalogue itself (`dated` in `catalogue.toml`).

use crate::model::catalogue::Catalogue;
use crate::model::codes::Code;
use crate::model::edtf::Date;
use crate::model::finding::Finding;
use crate::model::place::Placed;
use crate::study::Studies;

use super::firm;

/// A sheet was pulled, owned, seen, observed, identified or shown, or a state or printing made, after the date that the
/// catalogue gives itself.
pub(super) fn dated_later(catalogue: &Catalogue, _: &Studies, findings: &mut Vec<Finding>) {
    let Some(dated) = firm::date(catalogue.settings.dated.as_ref()) else {
        return;
    };
    let mut check = |what: String, date: Option<&Placed<Date>>| {
        let later = firm::date(date).filter(|date| firm::is_before(&dated.value, &date.value));
        findings.extend(later.map(|date| {
            Finding::new(
                Code::DatedAfterCatalogue,
                date.place,
                format!(
                    "{what} is dated {}, but the catalogue is of {}",
                    date.value, dated.value
                ),
            )
            .beside(dated.place, "the catalogue")
            .help("correct the date, or that of the catalogue (`dated`)")
        }));
    };
    for design in catalogue.designs.values() {
        let name = format!("design {}", design.number);
        check(name.clone(), firm::own_date(&design.date));
        for state in &design.states {
            let what = format!("state `{}` of {name}", state.key.value);
            check(what, firm::own_date(&state.date));
        }
        for printing in &design.printings {
            let what = format!("printing `{}` of {name}", printing.key.value);
            check(what, firm::own_date(&printing.date));
        }
    }
    for (design, impression) in catalogue.impressions() {
        let sheet = design.sheet_number(impression);
        check(sheet.clone(), firm::own_date(&impression.sheet.date));
        for entry in &impression.provenance {
            for date in [&entry.from, &entry.to] {
                check(
                    format!("an entry in the provenance of {sheet}"),
                    date.as_ref(),
                );
            }
        }
        for sighting in &impression.sightings {
            check(format!("a sighting of {sheet}"), Some(&sighting.date));
        }
        for observation in &impression.observed {
            let what = format!("an observation of {sheet}");
            check(what, observation.claim.date.as_ref());
        }
        let identified = impression.identified.as_ref();
        let what = format!("the identification of {sheet}");
        check(what, identified.and_then(|i| i.claim.date.as_ref()));
    }
    for exhibition in catalogue.exhibitions.values() {
        let what = format!("the exhibition `{}`", exhibition.key);
        check(what, exhibition.date.as_ref());
    }
}
