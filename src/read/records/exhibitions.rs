//! `exhibitions.toml`: a table for each exhibition, named by its key.

use crate::model::exhibition::{Exhibition, Venue};
use crate::model::key::Key;
use crate::model::place::Placed;
use crate::read::faults::{Faults, Node};
use crate::read::table::fields::Fields;
use crate::read::values;

/// Reads one exhibition.
pub(crate) fn exhibition(fields: &mut Fields<'_, '_>, key: &Key) -> Exhibition {
    let title = fields.text("title");
    Exhibition {
        key: key.clone(),
        title: title.unwrap_or(Placed::new(String::new(), fields.at)),
        venue: fields.one("venue", venue),
        town: fields.words("place"),
        date: fields.date("date"),
        cite: fields.cite(),
        place: fields.at,
    }
}

/// A holder's key, or free words. Text that has the form of a key is read as a key.
fn venue<'t>(faults: &mut Faults<'t>, node: &'t Node<'t>) -> Option<Venue> {
    let text = values::telling_text(faults, node)?;
    match text.value.parse() {
        Ok(key) => Some(Venue::Holder(Placed::new(key, text.place))),
        Err(_) if text.value.trim().is_empty() => None,
        Err(_) => Some(Venue::Named(text.value)),
    }
}
