//! The places that designs and printings have in series.

use crate::model::codes::Code;
use crate::model::finding::Finding;
use crate::model::key::Key;
use crate::model::place::Placed;
use crate::model::series_place::{SeriesPlace, SeriesRef};
use crate::read::table::fields::Fields;

/// Reads `series` of a design or a printing: each by the key of its record, or by its name where it has none.
pub(crate) fn series_places(fields: &mut Fields<'_, '_>) -> Vec<SeriesPlace> {
    let text = fields.take("series").and_then(|node| {
        let text = node.get_ref().as_str()?;
        Some((text.to_owned(), fields.faults.of(node)))
    });
    if let Some((text, place)) = text {
        let key = if text.parse::<Key>().is_ok() {
            "series"
        } else {
            "name"
        };
        let message = "`series` takes a table or a list of tables, not text";
        let finding = Finding::new(Code::ValueType, place, message);
        fields.faults.push(finding.help(format!(
            "write it like this: series = {{ {key} = \"{text}\" }}"
        )));
        return Vec::new();
    }
    fields.tables("series", |fields| {
        match (fields.key_place("series"), fields.key_place("name")) {
            (None, None) => fields.missing(
                &["series", "name"],
                "`series` or `name`",
                "add `series`, the key of its record in records/series/, or `name` where it has none",
            ),
            (Some(key), Some(name)) => {
                let message = "a place in a series has both `series` and `name`";
                let finding = Finding::new(Code::KeyTwice, name, message);
                fields.faults.push(
                    finding
                        .beside(key, "the record")
                        .help("leave `name` out: the record has the title"),
                );
            }
            _ => {}
        }
        let record = fields.key("series");
        let record = record.map(|key| Placed::new(SeriesRef::Record(key.value), key.place));
        let named = fields.text("name");
        let named = named.map(|name| Placed::new(SeriesRef::Named(name.value), name.place));
        let position = fields.text("position");
        Some(SeriesPlace {
            of: record.or(named)?,
            position,
        })
    })
}
