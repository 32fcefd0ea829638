//! `people/KEY.toml`.

use crate::model::key::Key;
use crate::model::person::{OtherName, Person};
use crate::model::place::Placed;
use crate::read::records::as_found;
use crate::read::table::fields::Fields;
use crate::read::values;

/// Reads a person, without their text.
pub(crate) fn person(fields: &mut Fields<'_, '_>, key: &Key) -> Person {
    let name = fields.text("name");
    Person {
        key: key.clone(),
        name: name.unwrap_or(Placed::new(String::new(), fields.at)),
        sort: fields.words("sort"),
        roles: fields.terms("roles"),
        born: fields.date("born"),
        died: fields.date("died"),
        active: fields.date("active"),
        names: names(fields),
        authority: fields.several("authority", values::web),
        ids: as_found::ids(fields),
        note: None,
        place: fields.at,
    }
}

fn names(fields: &mut Fields<'_, '_>) -> Vec<OtherName> {
    fields.tables("names", |fields| {
        let text = fields.text("text");
        let lang = fields.one("lang", values::language);
        Some(OtherName { text: text?, lang })
    })
}
