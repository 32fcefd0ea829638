//! Reports conditions of marks that the record of the mark does not have.
//!
//! In: the marks of every sheet. Out: a finding at each condition that leads nowhere. A mark that has no record at all is
//! reported as such, and its condition is not.

use crate::model::catalogue::Catalogue;
use crate::model::codes::Code;
use crate::model::finding::Finding;
use crate::model::mark::Mark;
use crate::read::values::near::nearest;

/// The findings on the conditions that the sheets of a catalogue name.
pub(super) fn unknown(catalogue: &Catalogue) -> impl Iterator<Item = Finding> {
    let marks = catalogue.impressions().flat_map(|(_, sheet)| &sheet.marks);
    marks.filter_map(|mark| of_mark(catalogue, mark))
}

fn of_mark(catalogue: &Catalogue, mark: &Mark) -> Option<Finding> {
    let condition = mark.condition.as_ref()?;
    let Some(named) = &mark.record else {
        let message = format!("the condition `{}` is of no recorded mark", condition.value);
        return Some(
            Finding::new(Code::MarkConditionUnknown, condition.place, message)
                .help("name the record of the mark beside it: mark = \"KEY\""),
        );
    };
    let record = catalogue.marks.get(&named.value)?;
    if record.condition(&condition.value).is_some() {
        return None;
    }
    let message = format!(
        "the mark `{}` has no condition `{}`",
        record.key, condition.value
    );
    let finding = Finding::new(Code::MarkConditionUnknown, condition.place, message);
    let keys = record.conditions.iter().map(|c| c.key.value.as_str());
    Some(match nearest(condition.value.as_str(), keys) {
        Some(near) => finding.help(format!("write `{near}`, or add the condition to the mark")),
        None => finding.help(format!(
            "add it to `conditions` in records/marks/{}.toml",
            record.key
        )),
    })
}
