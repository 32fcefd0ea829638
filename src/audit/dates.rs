//! Rules on dates of sheets, states and printings that cannot all be right.

use std::collections::BTreeSet;

use crate::model::catalogue::Catalogue;
use crate::model::codes::Code;
use crate::model::design::Design;
use crate::model::edtf::Date;
use crate::model::finding::Finding;
use crate::model::impression::Impression;
use crate::model::key::Key;
use crate::model::place::Placed;
use crate::model::printing::Printing;
use crate::model::state::State;
use crate::study::Studies;
use crate::study::candidates::{Candidate, allowed_by};
use crate::study::numerals::predecessors;

use super::firm;
use super::wording;

/// The candidates that the identification of an impression allows; none where it has no identification.
pub(super) fn taken_as<'a>(design: &'a Design, impression: &Impression) -> Vec<Candidate<'a>> {
    impression
        .identified
        .as_ref()
        .map(|identified| allowed_by(design, identified))
        .unwrap_or_default()
}

/// The date before which a state did not exist: the latest firm date among its own and those of the states it
/// was changed from. The state that has the date comes with it.
fn made<'a>(design: &'a Design, state: &'a State) -> Option<(&'a State, &'a Placed<Date>)> {
    let mut seen: BTreeSet<&Key> = BTreeSet::new();
    let mut to_visit = vec![state];
    let mut latest: Option<(&State, &Placed<Date>)> = None;
    while let Some(state) = to_visit.pop() {
        if !seen.insert(&state.key.value) {
            continue;
        }
        if let Some(date) = firm::own_date(&state.date) {
            let is_later = latest.is_none_or(|(_, known)| {
                firm::first_day(&known.value) < firm::first_day(&date.value)
            });
            if is_later {
                latest = Some((state, date));
            }
        }
        to_visit.extend(predecessors(design, state));
    }
    latest
}

/// A sheet is dated before every state that it may be of.
pub(super) fn before_state(catalogue: &Catalogue, studies: &Studies, findings: &mut Vec<Finding>) {
    for (design, impression) in catalogue.impressions() {
        let Some(pulled) = firm::own_date(&impression.sheet.date) else {
            continue;
        };
        let candidates = taken_as(design, impression);
        let made: Option<Vec<(&State, &Placed<Date>)>> = candidates
            .iter()
            .map(|c| {
                made(design, c.state?).filter(|(_, d)| firm::is_before(&pulled.value, &d.value))
            })
            .collect();
        let first = candidates.first().and_then(|candidate| candidate.state);
        let (Some(made), Some(state)) = (made, first) else {
            continue;
        };
        let Some((dated, date)) = made.first() else {
            continue;
        };
        let name = wording::state(studies, design, &state.key.value);
        let through = if dated.key.value == state.key.value {
            format!("{name} was made in {}", date.value)
        } else {
            let before = wording::state(studies, design, &dated.key.value);
            format!("{name} came after {before}, made in {}", date.value)
        };
        findings.push(
            Finding::new(
                Code::DatedBeforeState,
                pulled.place,
                format!(
                    "{} is dated {}, but {through}",
                    catalogue.sheet_number(&impression.key),
                    pulled.value
                ),
            )
            .saying("pulled")
            .beside(date.place, "the state was made")
            .help("correct one of the dates, or the identification"),
        );
    }
}

/// A sheet is dated outside every printing that it may be of.
pub(super) fn outside_printing(catalogue: &Catalogue, _: &Studies, findings: &mut Vec<Finding>) {
    for (design, impression) in catalogue.impressions() {
        let Some(pulled) = firm::own_date(&impression.sheet.date) else {
            continue;
        };
        let outside = |printing: &Printing| {
            firm::own_date(&printing.date).is_some_and(|run| {
                firm::is_before(&pulled.value, &run.value)
                    || firm::is_before(&run.value, &pulled.value)
            })
        };
        let candidates = taken_as(design, impression);
        let all_outside =
            !candidates.is_empty() && candidates.iter().all(|c| c.printing.is_some_and(outside));
        let printing = candidates.first().and_then(|c| c.printing);
        let (true, Some(printing)) = (all_outside, printing) else {
            continue;
        };
        let Some(run) = firm::own_date(&printing.date) else {
            continue;
        };
        findings.push(
            Finding::new(
                Code::DatedBeforePrinting,
                pulled.place,
                format!(
                    "{} is dated {}, but {} ran in {}",
                    catalogue.sheet_number(&impression.key),
                    pulled.value,
                    wording::printing(&printing.key.value),
                    run.value
                ),
            )
            .saying("pulled")
            .beside(run.place, "the printing ran")
            .help("correct one of the dates, or the identification"),
        );
    }
}

/// The paper was made after the date of the sheet, or after every printing it may be of. Older paper gives no
/// finding: old stock is used for decades (docs/trade.md, "Paper").
pub(super) fn paper_too_late(catalogue: &Catalogue, _: &Studies, findings: &mut Vec<Finding>) {
    for (design, impression) in catalogue.impressions() {
        let Some(paper) = firm::date(impression.sheet.paper_date.as_ref()) else {
            continue;
        };
        let is_too_late = |date: &Date| firm::is_before(date, &paper.value);
        let candidates = taken_as(design, impression);
        let ended: Option<Vec<(&Printing, &Placed<Date>)>> = candidates
            .iter()
            .map(|c| {
                let printing = c.printing?;
                let run = firm::own_date(&printing.date)?;
                is_too_late(&run.value).then_some((printing, run))
            })
            .collect();
        let pulled = firm::own_date(&impression.sheet.date).filter(|d| is_too_late(&d.value));
        let ended = ended.as_ref().and_then(|e| e.first());
        let (message, place, label) = match (pulled, ended) {
            (Some(pulled), _) => (
                format!(
                    "the paper of {} was not made before {}, but the sheet is dated {}",
                    catalogue.sheet_number(&impression.key),
                    paper.value,
                    pulled.value
                ),
                pulled.place,
                "pulled",
            ),
            (None, Some((printing, run))) => (
                format!(
                    "the paper of {} was not made before {}, but {} ended in {}",
                    catalogue.sheet_number(&impression.key),
                    paper.value,
                    wording::printing(&printing.key.value),
                    run.value
                ),
                run.place,
                "the printing ran",
            ),
            (None, None) => continue,
        };
        findings.push(
            Finding::new(Code::PaperTooLate, paper.place, message)
                .saying("the paper")
                .beside(place, label)
                .help("look at the paper again, or identify the sheet with a later printing"),
        );
    }
}

/// A period ends before it begins, or a state or printing is dated before one that came before it.
pub(super) fn backwards(catalogue: &Catalogue, studies: &Studies, findings: &mut Vec<Finding>) {
    for (_, impression) in catalogue.impressions() {
        for entry in &impression.provenance {
            let from = firm::date(entry.from.as_ref());
            let to = firm::date(entry.to.as_ref());
            let owner = wording::party(catalogue, &entry.party);
            let what = format!("{owner} had {}", catalogue.sheet_number(&impression.key));
            ends_first(&what, from, to, findings);
        }
    }
    for person in catalogue.people.values() {
        let born = firm::date(person.born.as_ref());
        let died = firm::date(person.died.as_ref());
        ends_first(
            &format!("{} lived", person.name.value),
            born,
            died,
            findings,
        );
    }
    for holder in catalogue.holders.values() {
        let Some(consent) = &holder.consent else {
            continue;
        };
        let what = format!("the consent of `{}` stood", holder.key);
        let given = firm::date(consent.date.as_ref());
        let withdrawn = firm::date(consent.withdrawn.as_ref());
        ends_first(&what, given, withdrawn, findings);
    }
    for design in catalogue.designs.values() {
        for state in design.standing_states() {
            before_its_predecessors(studies, design, state, findings);
        }
        for printing in design.standing_printings() {
            before_its_states(studies, design, printing, findings);
        }
    }
}

fn ends_first(
    what: &str,
    from: Option<&Placed<Date>>,
    to: Option<&Placed<Date>>,
    findings: &mut Vec<Finding>,
) {
    let (Some(from), Some(to)) = (from, to) else {
        return;
    };
    if firm::is_before(&to.value, &from.value) {
        findings.push(
            Finding::new(
                Code::DatesBackwards,
                to.place,
                format!("{what} until {}, but from {}", to.value, from.value),
            )
            .saying("ends")
            .beside(from.place, "begins")
            .help("correct one of the dates, or exchange them"),
        );
    }
}

fn before_its_predecessors(
    studies: &Studies,
    design: &Design,
    state: &State,
    findings: &mut Vec<Finding>,
) {
    let Some(date) = firm::own_date(&state.date) else {
        return;
    };
    for before in predecessors(design, state) {
        let Some(earlier) = firm::own_date(&before.date) else {
            continue;
        };
        if firm::is_before(&date.value, &earlier.value) {
            let name = wording::state(studies, design, &state.key.value);
            let followed = wording::state(studies, design, &before.key.value);
            findings.push(
                Finding::new(
                    Code::DatesBackwards,
                    date.place,
                    format!(
                        "{name} of design {} is dated {}, but follows {followed}, dated {}",
                        design.number, date.value, earlier.value
                    ),
                )
                .saying("the later state")
                .beside(earlier.place, "the state it follows")
                .help("correct one of the dates, or say with `follows` which state it was changed from"),
            );
        }
    }
}

/// A printing ended before any of the states it contains was made.
fn before_its_states(
    studies: &Studies,
    design: &Design,
    printing: &Printing,
    findings: &mut Vec<Finding>,
) {
    let Some(run) = firm::own_date(&printing.date) else {
        return;
    };
    let contained: Vec<&State> = design
        .standing_states()
        .filter(|s| printing.states.contains(&s.key.value))
        .collect();
    let too_late: Option<Vec<&Placed<Date>>> = contained
        .iter()
        .map(|state| {
            let (_, date) = made(design, state)?;
            firm::is_before(&run.value, &date.value).then_some(date)
        })
        .collect();
    let (Some(too_late), Some(state)) = (too_late, contained.first()) else {
        return;
    };
    if let Some(date) = too_late.first() {
        let name = wording::state(studies, design, &state.key.value);
        findings.push(
            Finding::new(
                Code::DatesBackwards,
                run.place,
                format!(
                    "{} of design {} ended in {}, but {name}, which it contains, was made in {}",
                    wording::printing(&printing.key.value),
                    design.number,
                    run.value,
                    date.value
                ),
            )
            .saying("the printing ran")
            .beside(date.place, "the state was made")
            .help("correct one of the dates, or the printing's `states`"),
        );
    }
}
