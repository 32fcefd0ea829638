//! Citations in records, with and without the number that the work gives.

use crate::model::literature::{Citation, Relation};
use crate::model::place::Placed;
use crate::read::table::fields::Fields;

/// Citations with the number that the work gives.
pub(crate) fn numbered(fields: &mut Fields<'_, '_>, name: &'static str) -> Vec<Citation> {
    fields.tables(name, |fields| {
        let cite = fields.cite();
        let at = fields.words("at");
        let number = fields.words("number");
        let relation = fields.word("relation");
        Some(Citation {
            cite: cite?,
            at,
            number,
            relation: relation.map_or(Relation::Same, |relation: Placed<_>| relation.value),
            place: fields.at,
        })
    })
}

/// Citations without a number.
pub(crate) fn plain(fields: &mut Fields<'_, '_>, name: &'static str) -> Vec<Citation> {
    fields.tables(name, |fields| {
        let cite = fields.cite();
        let at = fields.words("at");
        Some(Citation {
            cite: cite?,
            at,
            number: None,
            relation: Relation::Same,
            place: fields.at,
        })
    })
}
