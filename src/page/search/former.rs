//! Former keys as they are searched: whoever has an old address finds the record by the key in it.

use crate::model::former::Named;
use crate::model::key::{ImpressionKey, Key};
use crate::model::link::Target;
use crate::page::setting::book::Here;
use crate::study::search::entry::{Entry, Field};

/// Adds the former keys of a record.
pub(super) fn add(here: &Here<'_>, target: Target, entry: &mut Entry) {
    let keys = here.public().former.public_of(&Named::Record(target));
    entry.add_all(Field::Number, keys.iter().map(Key::as_str));
}

/// Adds the keys that an impression had under former keys of its design.
pub(super) fn add_of_sheet(here: &Here<'_>, sheet: &ImpressionKey, entry: &mut Entry) {
    let design = Named::Record(Target::Design(sheet.design.clone()));
    let keys = here.public().former.public_of(&design).iter();
    entry.add_all(
        Field::Number,
        keys.map(|key| format!("{key}.{}", sheet.number)),
    );
}
