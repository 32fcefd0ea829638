//! Rules on marks as evidence. A stamp, seal or signature can be added at any time and may be missing; alone it
//! proves no printing (common practice, no source).

use std::collections::BTreeSet;

use crate::model::catalogue::Catalogue;
use crate::model::certainty::Certainty;
use crate::model::codes::Code;
use crate::model::design::Design;
use crate::model::finding::Finding;
use crate::model::impression::Impression;
use crate::model::key::Key;
use crate::model::point::EvidenceKind;
use crate::model::printing::Printing;
use crate::study::Studies;
use crate::study::identify::{identify, observed_on};
use crate::study::index::{CandidateAt, PointAt};
use crate::study::printing_record::inks_differ;
use crate::study::table::DiagnosticTable;

use super::wording;

/// Two printings of one state can be told only by a mark.
pub(super) fn printings(catalogue: &Catalogue, studies: &Studies, findings: &mut Vec<Finding>) {
    for design in catalogue.designs.values() {
        let Some(study) = studies.designs.get(&design.key) else {
            continue;
        };
        let mut known: BTreeSet<(&Key, &Key)> = BTreeSet::new();
        for (one, other) in &study.separability.only_likelier {
            let rows = [one, other].map(|at| &study.table.candidates[*at]);
            let [Some(first), Some(second)] = rows.map(|row| row.printing.as_ref()) else {
                continue;
            };
            let points = separating(&study.table, *one, *other);
            let is_by_mark = points.iter().all(|at| is_mark(&study.table, *at));
            if rows[0].state != rows[1].state || !is_by_mark || !known.insert((first, second)) {
                continue;
            }
            let (Some(earlier), Some(later)) = (design.printing(first), design.printing(second))
            else {
                continue;
            };
            if records_differ(earlier, later) {
                continue;
            }
            let named = points
                .iter()
                .map(|at| format!("`{}`", study.table.points[*at].key));
            findings.push(
                Finding::new(
                    Code::PrintingsByMark,
                    later.key.place,
                    format!(
                        "only a mark separates {} of design {} from {}: {}",
                        wording::printing(second),
                        design.number,
                        wording::printing(first),
                        wording::either(named)
                    ),
                )
                .beside(earlier.key.place, "the other printing")
                .help(
                    "record what else differs (paper, inking, blocks, wear), or say why the mark `decides`",
                ),
            );
        }
    }
}

/// The points that separate two candidates.
fn separating(table: &DiagnosticTable, one: CandidateAt, other: CandidateAt) -> Vec<PointAt> {
    let points = table.points.entries();
    let separates = points.filter(
        |(_, column)| match (column.allows(one), column.allows(other)) {
            (Some(one), Some(other)) => column.scale.tells_apart(one, other),
            _ => false,
        },
    );
    separates.map(|(at, _)| at).collect()
}

fn is_mark(table: &DiagnosticTable, at: PointAt) -> bool {
    table.points[at].evidence == EvidenceKind::Mark && !table.points[at].is_deciding
}

/// Whether the records of two printings differ in paper, inks, numbering or blocks, which a sheet shows as well.
fn records_differ(one: &Printing, other: &Printing) -> bool {
    let papers =
        |of: &Printing| -> BTreeSet<Key> { of.paper.iter().map(|p| p.value.clone()).collect() };
    let blocks =
        |of: &Printing| -> BTreeSet<Key> { of.matrices.iter().map(|m| m.value.clone()).collect() };
    let (first, second) = (papers(one), papers(other));
    let other_papers = !first.is_empty() && !second.is_empty() && first.is_disjoint(&second);
    let other_blocks =
        !one.matrices.is_empty() && !other.matrices.is_empty() && blocks(one) != blocks(other);
    let other_numbering = matches!((one.numbered, other.numbered), (Some(a), Some(b)) if a != b);
    other_papers || other_blocks || other_numbering || inks_differ(one, other)
}

/// An impression is called certainly of a printing though nothing but marks speaks for it.
pub(super) fn certain(catalogue: &Catalogue, studies: &Studies, findings: &mut Vec<Finding>) {
    for (design, impression) in catalogue.impressions() {
        let Some(study) = studies.designs.get(&design.key) else {
            continue;
        };
        let Some(marks) = only_marks(&study.table, design, impression) else {
            continue;
        };
        let Some(identified) = &impression.identified else {
            continue;
        };
        let named = marks
            .iter()
            .map(|at| format!("`{}`", study.table.points[*at].key));
        let mut finding = Finding::new(
            Code::CertainByMark,
            wording::place_of_reading(identified),
            format!(
                "{} is called certain as {}, but of what was recorded only marks speak for that printing: {}",
                catalogue.sheet_number(&impression.key),
                wording::reading(studies, design, identified),
                wording::either(named)
            ),
        )
        .saying(wording::attributed(catalogue, &identified.claim, "identified"))
        .help("record what else speaks for it, or lower the certainty: a mark can be added at any time");
        let at = marks.first().map(|at| &study.table.points[*at].key);
        let observation = impression
            .observed
            .iter()
            .find(|o| Some(&o.point.value) == at);
        if let Some(observation) = observation {
            finding = finding.beside(observation.place, "seen");
        }
        findings.push(finding);
    }
}

/// The marks that alone speak for the one printing of which an impression is called certain; `None` where it is
/// not called certain, something else speaks for it, or no other printing is left.
fn only_marks(
    table: &DiagnosticTable,
    design: &Design,
    impression: &Impression,
) -> Option<Vec<PointAt>> {
    let identified = impression.identified.as_ref()?;
    let [printing] = identified.printing.as_slice() else {
        return None;
    };
    let is_certain = identified.claim.certainty() == Certainty::Certain && identified.or.is_empty();
    let printing = design.printing(&printing.value)?;
    let is_numbered = impression.numbering.is_some() && printing.numbered == Some(true);
    if !is_certain || is_numbered || !impression.sheet.date.0.is_empty() {
        return None;
    }
    let found = identify(table, &observed_on(table, design, impression));
    let is_of_printing =
        |at: &CandidateAt| table.candidates[*at].printing.as_ref() == Some(&printing.key.value);
    let own: Vec<CandidateAt> = found.left().filter(is_of_printing).collect();
    let rivals: Vec<CandidateAt> = found.left().filter(|at| !is_of_printing(at)).collect();
    let is_other = |at: &CandidateAt| {
        let other = table.candidates[*at]
            .printing
            .as_ref()
            .and_then(|key| design.printing(key));
        other.is_some_and(|other| !records_differ(printing, other))
    };
    if !rivals.iter().any(is_other) {
        return None;
    }
    let speaking: BTreeSet<PointAt> = own
        .iter()
        .flat_map(|at| &found.candidates[*at].in_favour)
        .copied()
        .filter(|point| {
            rivals
                .iter()
                .any(|rival| found.candidates[*rival].against.contains(point))
        })
        .collect();
    let is_only_marks = !speaking.is_empty() && speaking.iter().all(|at| is_mark(table, *at));
    is_only_marks.then(|| speaking.into_iter().collect())
}
