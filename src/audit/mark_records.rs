//! Rules on marks that name a record: what a sheet says of such a mark must agree with its record.

use crate::model::catalogue::Catalogue;
use crate::model::certainty::Certainty;
use crate::model::codes::Code;
use crate::model::edtf::Date;
use crate::model::finding::Finding;
use crate::model::mark::{Mark, MarkRecord};
use crate::model::place::Placed;
use crate::study::Studies;

use super::firm;
use super::wording;

/// A mark was put on a sheet outside the time in which its user had it, or in which it was in the condition that is
/// seen (docs/definitions.md, "Recorded marks").
pub(super) fn out_of_time(catalogue: &Catalogue, _: &Studies, findings: &mut Vec<Finding>) {
    for (mark, record) in recorded_marks(catalogue) {
        let Some(applied) = firm::date(mark.applied.as_ref()) else {
            continue;
        };
        let condition = mark.condition.as_ref();
        if let Some(condition) = condition.and_then(|key| record.condition(&key.value))
            && let Some(limit) = outside(applied, condition.from.as_ref(), condition.to.as_ref())
        {
            let message = format!(
                "the mark `{}` was put here in {}, outside the time of its condition `{}`",
                record.key, applied.value, condition.key.value
            );
            findings.push(out_of(applied, message, limit, "the condition"));
        }
        let Some(by) = &mark.applied_by else {
            continue;
        };
        let times: Vec<_> = record
            .users
            .iter()
            .filter(|user| user.person.value == by.value)
            .map(|user| {
                let is_certain = user.claim.certainty() == Certainty::Certain;
                outside(applied, user.from.as_ref(), user.to.as_ref()).filter(|_| is_certain)
            })
            .collect();
        if let Some(Some(limit)) = times.first().filter(|_| times.iter().all(Option::is_some)) {
            let message = format!(
                "{} put the mark `{}` here in {}, but used it at another time",
                wording::person_or_holder(catalogue, &by.value),
                record.key,
                applied.value
            );
            findings.push(out_of(applied, message, limit, "when it was used"));
        }
    }
}

fn out_of(applied: &Placed<Date>, message: String, limit: &Placed<Date>, what: &str) -> Finding {
    Finding::new(Code::MarkOutOfTime, applied.place, message)
        .saying("put here")
        .beside(limit.place, what)
        .help("correct one of the dates, the user or the condition")
}

/// The end of a time that a date lies outside of; `None` where it may lie within.
fn outside<'a>(
    date: &Placed<Date>,
    from: Option<&'a Placed<Date>>,
    to: Option<&'a Placed<Date>>,
) -> Option<&'a Placed<Date>> {
    let before = firm::date(from).filter(|from| firm::is_before(&date.value, &from.value));
    before.or_else(|| firm::date(to).filter(|to| firm::is_before(&to.value, &date.value)))
}

/// Somebody put a mark on a sheet whom the list of its users does not have.
pub(super) fn user_unlisted(catalogue: &Catalogue, _: &Studies, findings: &mut Vec<Finding>) {
    for (mark, record) in recorded_marks(catalogue) {
        let (Some(by), Some(first)) = (&mark.applied_by, record.users.first()) else {
            continue;
        };
        if record
            .users
            .iter()
            .all(|user| user.person.value != by.value)
        {
            let who = wording::person_or_holder(catalogue, &by.value);
            let message = format!("{who} is not among the users of the mark `{}`", record.key);
            findings.push(
                Finding::new(Code::MarkUserUnlisted, by.place, message)
                    .saying("put it here")
                    .beside(first.person.place, "its users")
                    .help("add them to `users` in the record of the mark, or correct `applied_by`"),
            );
        }
    }
}

/// A mark on a sheet is said to be of another kind than its record.
pub(super) fn other_kind(catalogue: &Catalogue, _: &Studies, findings: &mut Vec<Finding>) {
    for (mark, record) in recorded_marks(catalogue) {
        let (Some(here), Some(there)) = (&mark.kind, &record.kind) else {
            continue;
        };
        if here.value != there.value {
            let message = format!(
                "the mark `{}` is a {} here and a {} in its record",
                record.key, here.value, there.value
            );
            findings.push(
                Finding::new(Code::MarkOtherKind, here.place, message)
                    .saying("on this sheet")
                    .beside(there.place, "in the record")
                    .help("leave `kind` out here, name another mark, or correct the record"),
            );
        }
    }
}

/// Every mark on a sheet that has a record, with the record.
fn recorded_marks(catalogue: &Catalogue) -> impl Iterator<Item = (&Mark, &MarkRecord)> {
    let marks = catalogue.impressions().flat_map(|(_, sheet)| &sheet.marks);
    marks.filter_map(|mark| {
        let record = mark.record.as_ref()?;
        Some((mark, catalogue.marks.get(&record.value)?))
    })
}
