//! Rule: a sheet was owned, seen, photographed or exhibited before it can have been printed.

use crate::model::catalogue::Catalogue;
use crate::model::certainty::Certainty;
use crate::model::codes::Code;
use crate::model::design::Design;
use crate::model::edtf::Date;
use crate::model::finding::Finding;
use crate::model::impression::Impression;
use crate::model::place::Placed;
use crate::model::provenance::PartyRole;
use crate::study::Studies;
use crate::study::census::is_counted;

use super::dates::taken_as;
use super::firm;
use super::wording;

/// The earliest time at which a sheet can have been printed.
struct EarliestPrint<'a> {
    /// "14.2 was pulled".
    what: String,
    date: &'a Placed<Date>,
}

/// A sheet was owned, handled, kept, seen, photographed or exhibited before it was printed.
pub(super) fn known_before_print(catalogue: &Catalogue, _: &Studies, findings: &mut Vec<Finding>) {
    for (design, impression) in catalogue.impressions() {
        let Some(printed) = printed(design, impression) else {
            continue;
        };
        let mut check = |what: &str, date: Option<&Placed<Date>>, is_first: bool| {
            let date = firm::date(date).filter(|d| firm::is_before(&d.value, &printed.date.value));
            if let Some(date) = date {
                findings.push(finding(what, date, &printed, is_first));
            }
        };
        let entries = impression
            .provenance
            .iter()
            .filter(|entry| entry.is_certain());
        for entry in entries {
            let whom = wording::party(catalogue, &entry.party);
            let what = match entry.role {
                PartyRole::Owner => {
                    format!(
                        "{} is said to have been owned by {whom}",
                        catalogue.sheet_number(&impression.key)
                    )
                }
                PartyRole::Agent => {
                    format!(
                        "{} is said to have been handled by {whom}",
                        catalogue.sheet_number(&impression.key)
                    )
                }
                PartyRole::Keeper => {
                    format!(
                        "{} is said to have been kept by {whom}",
                        catalogue.sheet_number(&impression.key)
                    )
                }
            };
            check(&what, entry.from.as_ref().or(entry.to.as_ref()), true);
        }
        for sighting in &impression.sightings {
            let what = format!(
                "{} is said to have been seen",
                catalogue.sheet_number(&impression.key)
            );
            check(&what, Some(&sighting.date), true);
        }
        for picture in &impression.pictures {
            let what = format!(
                "{} is said to have been photographed",
                catalogue.sheet_number(&impression.key)
            );
            check(&what, picture.date.as_ref(), true);
        }
        for shown in impression
            .exhibited
            .iter()
            .filter(|shown| shown.is_certain())
        {
            let exhibition = catalogue.exhibitions.get(&shown.exhibition.value);
            let what = format!(
                "{} is said to have been exhibited",
                catalogue.sheet_number(&impression.key)
            );
            check(&what, exhibition.and_then(|e| e.date.as_ref()), false);
        }
    }
}

/// When a sheet was printed at the earliest: by its own date, or else by that of the earliest printing it
/// may be of, or else by that of the design (docs/definitions.md, "When a sheet was printed").
fn printed<'a>(design: &'a Design, impression: &'a Impression) -> Option<EarliestPrint<'a>> {
    if !is_counted(design, impression) {
        return None;
    }
    if let Some(date) = firm::own_date(&impression.sheet.date) {
        return Some(EarliestPrint {
            what: format!("{} was pulled", design.sheet_number(impression)),
            date,
        });
    }
    // Where the sheet has a date that is not firm, it may be older than its printing.
    if !impression.sheet.date.is_empty() {
        return None;
    }
    let is_identified = impression
        .identified
        .as_ref()
        .is_some_and(|i| i.claim.certainty() == Certainty::Certain);
    let candidates = taken_as(design, impression);
    let runs = candidates.iter().map(|c| {
        let printing = c.printing?;
        Some((printing, firm::own_date(&printing.date)?))
    });
    let runs: Option<Vec<_>> = runs.filter(|_| is_identified).collect();
    let earliest = runs
        .into_iter()
        .flatten()
        .min_by_key(|(_, run)| firm::first_day(&run.value));
    if let Some((printing, date)) = earliest {
        let printing = wording::printing(&printing.key.value);
        let what = format!("{printing} ran");
        return Some(EarliestPrint { what, date });
    }
    Some(EarliestPrint {
        what: format!("design {} was made", design.number),
        date: firm::own_date(&design.date)?,
    })
}

fn finding(
    what: &str,
    date: &Placed<Date>,
    printed: &EarliestPrint<'_>,
    is_own_record: bool,
) -> Finding {
    let finding = Finding::new(
        Code::KnownBeforePrint,
        if is_own_record {
            date.place
        } else {
            printed.date.place
        },
        format!(
            "{what} in {}, but {} in {}",
            date.value, printed.what, printed.date.value
        ),
    );
    let finding = if is_own_record {
        finding.beside(printed.date.place, "printed")
    } else {
        finding.beside(date.place, "exhibited")
    };
    finding.help(
        "correct one of the dates, say that it may be of another sheet, or correct the identification",
    )
}
