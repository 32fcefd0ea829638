//! Citations in records, with and without the number that the work gives.

use crate::model::literature::{Citation, Relation};
use crate::model::place::Placed;
use crate::read::table::fields::Fields;

/// Citations with the number that the work gives.
pub(crate) fn numbered(fields: &mut Fields<'_, '_>, name: &'static str) -> Vec<Citation> {
    fields.tables(name, with_number)
}

/// Citations of one sheet, with the number that the work gives.
pub(crate) fn of_sheet(fields: &mut Fields<'_, '_>, name: &'static str) -> Vec<Citation> {
    fields.tables(name, |fields| {
        let this_sheet = fields.word("this_sheet");
        let illustrated = fields.flag("illustrated");
        Some(Citation {
            this_sheet,
            illustrated,
            ..with_number(fields)?
        })
    })
}

/// Citations without a number.
pub(crate) fn plain(fields: &mut Fields<'_, '_>, name: &'static str) -> Vec<Citation> {
    fields.tables(name, without_number)
}

fn with_number(fields: &mut Fields<'_, '_>) -> Option<Citation> {
    let number = fields.words("number");
    let relation = fields.word("relation");
    Some(Citation {
        number,
        relation: relation.map_or(Relation::Same, |relation: Placed<_>| relation.value),
        ..without_number(fields)?
    })
}

fn without_number(fields: &mut Fields<'_, '_>) -> Option<Citation> {
    let cite = fields.cite();
    let at = fields.words("at");
    Some(Citation {
        cite: cite?,
        at,
        number: None,
        relation: Relation::Same,
        this_sheet: None,
        illustrated: None,
        place: fields.at,
    })
}
