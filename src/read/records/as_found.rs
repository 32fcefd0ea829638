//! What others record of the same thing: a holder's own description of a sheet, and identifiers elsewhere.

use crate::model::as_found::{AsGiven, GivenField, OtherId};
use crate::model::place::Placed;
use crate::read::table::fields::Fields;
use crate::read::values;

/// Reads `[as_given]`.
pub(crate) fn as_given(fields: &mut Fields<'_, '_>) -> Option<AsGiven> {
    fields.table("as_given", |fields| AsGiven {
        seen: fields.date("seen"),
        source: fields.text("source"),
        lang: fields.one("lang", values::language),
        fields: fields.further(|faults, entry| {
            let text = values::telling_text(faults, entry.node)?;
            let place = faults.place(entry.key.span());
            let name = Placed::new(entry.key.get_ref().to_string(), place);
            Some(GivenField { name, text })
        }),
        place: fields.at,
    })
}

/// Reads `ids`.
pub(crate) fn ids(fields: &mut Fields<'_, '_>) -> Vec<OtherId> {
    fields.tables("ids", |fields| {
        let scheme = fields.text("scheme");
        let id = fields.text("id");
        Some(OtherId {
            scheme: scheme?,
            id: id?,
        })
    })
}
