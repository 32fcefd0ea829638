//! The `size` table of a design, a state or a printing.

use crate::model::size::Sizes;
use crate::read::table::fields::Fields;
use crate::read::values;

/// Reads `size = { image, matrix }`; empty where the record has none.
pub(crate) fn sizes(fields: &mut Fields<'_, '_>) -> Sizes {
    fields
        .table("size", |fields| Sizes {
            image: fields.statements("image", values::size),
            matrix: fields.statements("matrix", values::size),
        })
        .unwrap_or_default()
}
