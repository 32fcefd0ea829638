//! `settled`, which every record may have: the doubts about it that were judged.

use crate::model::codes::{Code, Severity};
use crate::model::finding::Finding;
use crate::model::place::Placed;
use crate::model::settled::SettledDoubt;
use crate::read::faults::{Faults, Node};
use crate::read::shape::settleable;
use crate::read::table::fields::Fields;
use crate::read::values;
use crate::read::values::near::nearest;

/// Reads `settled`. An entry whose code is missing or cannot be settled is reported and left out.
pub(crate) fn settled_doubts(fields: &mut Fields<'_, '_>) -> Vec<SettledDoubt> {
    fields.tables("settled", |fields| {
        let code = fields.one("code", code);
        let digest = fields.text("digest");
        let why = fields.words("why");
        let by = fields.key("by");
        let date = fields.date("date");
        Some(SettledDoubt {
            code: code?,
            digest,
            why,
            by,
            date,
            place: fields.at,
        })
    })
}

/// A code of findings that can be settled.
fn code<'t>(faults: &mut Faults<'t>, node: &'t Node<'t>) -> Option<Placed<Code>> {
    let word = values::str_in(faults, node, "a code of findings in quotes")?;
    let (fault, message, help) = match Code::from_word(word.value) {
        Some(code) if code.can_be_settled() => return Some(Placed::new(code, word.place)),
        Some(code) if code.severity() == Severity::Error => (
            Code::SettledRefused,
            format!(
                "`{}` is an error, and an error cannot be settled",
                word.value
            ),
            "correct what it reports, and remove this entry".to_owned(),
        ),
        Some(_) => (
            Code::SettledRefused,
            format!(
                "`{}` is not about what a record says, so no record can settle it",
                word.value
            ),
            "do what it advises, and remove this entry".to_owned(),
        ),
        None => (
            Code::ValueUnknown,
            format!("no finding has the code \"{}\"", word.value),
            match nearest(word.value, settleable()) {
                Some(near) => format!("did you mean \"{near}\"?"),
                None => {
                    "write the code as `keyblock audit` prints it, in brackets behind \"doubt\" or \"hint\""
                        .to_owned()
                }
            },
        ),
    };
    faults.push(Finding::new(fault, word.place, message).help(help));
    None
}
