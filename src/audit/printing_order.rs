//! Rules on the order of printing: what is recorded of several sheets cannot all be right, or two sheets of one number
//! have unlike wear (docs/definitions.md, "Order of printing").

use crate::model::catalogue::Catalogue;
use crate::model::codes::Code;
use crate::model::design::Design;
use crate::model::finding::Finding;
use crate::model::impression::Impression;
use crate::model::key::{ImpressionKey, Key};
use crate::model::place::Place;
use crate::model::point::PointKind;
use crate::study::Studies;
use crate::study::index::ValueAt;
use crate::study::printing_order::{Cycle, CycleStep, DatedBy, Reason, UnlikeWear, WearStep};

use super::wording;

/// What is recorded of several sheets would have each of them printed before another of them.
pub(super) fn backwards(catalogue: &Catalogue, studies: &Studies, findings: &mut Vec<Finding>) {
    for design in catalogue.designs.values() {
        let Some(study) = studies.designs.get(&design.key) else {
            continue;
        };
        let judged = Judged {
            catalogue,
            studies,
            design,
        };
        for place in &study.printing_order.places {
            let Some(cycle) = &place.cycle else { continue };
            let others = place.sheets.len().saturating_sub(cycle.steps.len());
            let found = judged.later_state_less_worn(cycle, others);
            findings.extend(found.or_else(|| judged.in_a_cycle(cycle, others)));
        }
    }
}

/// Two sheets of one printing have one number and unlike wear, so that one number is read or recorded wrongly, or was
/// given twice.
pub(super) fn unlike_wear(catalogue: &Catalogue, studies: &Studies, findings: &mut Vec<Finding>) {
    for design in catalogue.designs.values() {
        let Some(study) = studies.designs.get(&design.key) else {
            continue;
        };
        let judged = Judged {
            catalogue,
            studies,
            design,
        };
        let found = study.unlike_wear.iter();
        findings.extend(found.filter_map(|found| judged.one_number(found)));
    }
}

/// What a finding of one design is told from.
struct Judged<'a> {
    catalogue: &'a Catalogue,
    studies: &'a Studies,
    design: &'a Design,
}

/// The first or the second sheet of a step.
#[derive(Clone, Copy)]
enum End {
    Before,
    After,
}

impl<'a> Judged<'a> {
    /// A sheet as readers cite it.
    fn number(&self, sheet: &ImpressionKey) -> String {
        self.catalogue.sheet_number(sheet)
    }

    fn one_number(&self, found: &UnlikeWear) -> Option<Finding> {
        let step = found.wear.first()?;
        let [less, more] = &found.records;
        let (fewer, further) = (self.number(less), self.number(more));
        let numbered =
            |key: &ImpressionKey| Some(self.catalogue.impression(key)?.numbering.as_ref()?.place);
        let finding = Finding::new(
            Code::NumberUnlikeWear,
            numbered(more)?,
            format!(
                "{further} and {fewer} have one number of {}, but {further} shows more wear at `{}`: {}, not {}",
                wording::printing(&found.printing),
                step.point,
                self.stage(step, step.after),
                self.stage(step, step.before),
            ),
        )
        .saying(further)
        .beside(numbered(less)?, fewer)
        .help("these are two sheets: read both numbers and both stages again; where both numbers are right, say so in the notes");
        Some(finding)
    }

    /// The cycle of two sheets of which the one of the later state shows less wear.
    fn later_state_less_worn(&self, cycle: &Cycle, others: usize) -> Option<Finding> {
        let [one, other] = cycle.steps.as_slice() else {
            return None;
        };
        let by_wear = |step: &CycleStep| match step.reasons.first() {
            Some(Reason::Wear(wear)) => Some(wear.clone()),
            _ => None,
        };
        let is_of_states =
            |step: &CycleStep| matches!(step.reasons.first(), Some(Reason::States { .. }));
        let (worn, wear) =
            [(one, other), (other, one)]
                .into_iter()
                .find_map(|(worn, succession)| {
                    let wear = by_wear(worn).filter(|_| is_of_states(succession))?;
                    Some((worn, wear))
                })?;
        let (later, earlier) = (&worn.before, &worn.after);
        let finding = Finding::new(
            Code::WearBackwards,
            self.seen_at(later, &wear.point)?,
            format!(
                "{} is of a later state than {}, but shows less wear at `{}`: {}, not {}{}",
                self.number(later),
                self.number(earlier),
                wear.point,
                self.stage(&wear, wear.before),
                self.stage(&wear, wear.after),
                not_in_order(others),
            ),
        )
        .saying("seen on the later state")
        .beside(self.seen_at(earlier, &wear.point)?, "seen on the earlier state")
        .help("look again at both sheets, or lower the certainty of one observation or identification");
        Some(finding)
    }

    fn in_a_cycle(&self, cycle: &Cycle, others: usize) -> Option<Finding> {
        let steps: Vec<String> = cycle
            .steps
            .iter()
            .zip(std::iter::once("was printed before").chain(std::iter::repeat("before")))
            .map(|(step, before)| {
                let reasons = step.reasons.iter().map(|reason| self.in_words(reason));
                let reasons: Vec<String> = reasons.collect();
                format!(
                    "{} {before} {} ({})",
                    self.number(&step.before),
                    self.number(&step.after),
                    reasons.join("; ")
                )
            })
            .collect();
        let mut all = cycle.steps.iter().flat_map(|step| &step.reasons);
        let is_of_wear = all.any(|reason| matches!(reason, Reason::Wear(_)));
        let code = if is_of_wear {
            Code::WearBackwards
        } else {
            Code::OrderBackwards
        };
        let mut places: Vec<(Place, String)> = Vec::new();
        for step in &cycle.steps {
            let Some(reason) = step.reasons.first() else {
                continue;
            };
            for (sheet, end) in [(&step.before, End::Before), (&step.after, End::After)] {
                let place = self.place_of(sheet, reason, end);
                if let Some(place) = place
                    && places.iter().all(|(known, _)| *known != place)
                {
                    places.push((place, format!("recorded of {}", self.number(sheet))));
                }
            }
        }
        let mut places = places.into_iter();
        let (first, saying) = places.next()?;
        let finding = Finding::new(
            code,
            first,
            format!(
                "by what is recorded, {}{}",
                steps.join(", and "),
                not_in_order(others),
            ),
        )
        .saying(saying)
        .help("look again at what is recorded of these sheets, and correct it or lower the certainty of one statement");
        Some(places.fold(finding, |finding, (place, saying)| {
            finding.beside(place, saying)
        }))
    }

    /// "less wear at `crack`: `none`, not `edge`", "state ii before state iii", "1936 before 1937".
    fn in_words(&self, reason: &Reason) -> String {
        match reason {
            Reason::Wear(step) => format!(
                "less wear at `{}`: {}, not {}",
                step.point,
                self.stage(step, step.before),
                self.stage(step, step.after)
            ),
            Reason::States { before, after } => format!(
                "{} before {}",
                wording::state(self.studies, self.design, before),
                wording::state(self.studies, self.design, after)
            ),
            Reason::Dates { before, after } => {
                format!("{} before {}", dated(before), dated(after))
            }
        }
    }

    fn stage_of(&self, step: &WearStep, stage: ValueAt) -> Option<String> {
        let PointKind::Stage(stages) = &self.design.point(&step.point)?.kind else {
            return None;
        };
        Some(format!("`{}`", stages.get(stage.index())?.value))
    }

    /// A stage as it is recorded.
    fn stage(&self, step: &WearStep, stage: ValueAt) -> String {
        self.stage_of(step, stage).unwrap_or_default()
    }

    /// The records of a sheet, the named one first.
    fn records<'s>(
        &'s self,
        sheet: &'s ImpressionKey,
    ) -> impl Iterator<Item = &'a Impression> + 's {
        let others = self.studies.groups.others_of(sheet);
        let records = std::iter::once(sheet).chain(others);
        records.filter_map(|key| self.catalogue.impression(key))
    }

    /// Where a point was observed on a sheet.
    fn seen_at(&self, sheet: &ImpressionKey, point: &Key) -> Option<Place> {
        self.records(sheet).find_map(|impression| {
            let mut observed = impression.observed.iter();
            Some(observed.find(|o| o.point.value == *point)?.place)
        })
    }

    /// Where what a reason says of one of its two sheets is recorded.
    fn place_of(&self, sheet: &ImpressionKey, reason: &Reason, end: End) -> Option<Place> {
        match (reason, end) {
            (Reason::Wear(step), _) => self.seen_at(sheet, &step.point),
            (Reason::States { .. }, _) => self.records(sheet).find_map(|impression| {
                let identified = impression.identified.as_ref()?;
                Some(wording::place_of_reading(identified))
            }),
            (Reason::Dates { before: dated, .. }, End::Before)
            | (Reason::Dates { after: dated, .. }, End::After) => match &dated.printing {
                Some(printing) => {
                    let date = self.design.printing(printing)?.date.0.first()?;
                    Some(date.is.place)
                }
                None => self
                    .records(sheet)
                    .find_map(|impression| Some(impression.sheet.date.0.first()?.is.place)),
            },
        }
    }
}

/// "1937", "printing `own`, 1927/1936".
fn dated(by: &DatedBy) -> String {
    match &by.printing {
        Some(printing) => format!("{}, {}", wording::printing(printing), by.date),
        None => by.date.to_string(),
    }
}

/// What is said of the sheets that are in the same cycles and not named.
fn not_in_order(others: usize) -> String {
    match others {
        0 => String::new(),
        1 => "; 1 more sheet has no place for the same reasons".to_owned(),
        n => format!("; {n} more sheets have no place for the same reasons"),
    }
}
