//! The names by which records may be sought: each key with the names of its record in the form of keys.

use crate::model::catalogue::Catalogue;
use crate::model::key::Key;

/// Keys of records, each with the names of its record: "The Last Ferry" is "the-last-ferry".
type KeysWithNames<'c> = Vec<(&'c str, Vec<String>)>;

/// Designs with their titles.
pub(crate) fn of_designs(catalogue: &Catalogue) -> KeysWithNames<'_> {
    let designs = catalogue.designs.iter();
    let titles = designs.map(|(key, design)| {
        let titles = design.titles.iter();
        (key, titles.map(|title| title.text.value.as_str()).collect())
    });
    titles.map(as_keys).collect()
}

/// Holders with their present and former names.
pub(crate) fn of_holders(catalogue: &Catalogue) -> KeysWithNames<'_> {
    let holders = catalogue.holders.iter();
    let names = holders.map(|(key, holder)| {
        let former = holder.formerly.iter().map(|former| &former.name);
        let names = std::iter::once(&holder.name).chain(former);
        (key, names.map(|name| name.value.as_str()).collect())
    });
    names.map(as_keys).collect()
}

/// People with all their names.
pub(crate) fn of_people(catalogue: &Catalogue) -> KeysWithNames<'_> {
    let people = catalogue.people.iter();
    let names = people.map(|(key, person)| {
        let others = person.names.iter().map(|other| &other.text);
        let names = std::iter::once(&person.name).chain(others);
        (key, names.map(|name| name.value.as_str()).collect())
    });
    names.map(as_keys).collect()
}

fn as_keys<'c>((key, names): (&'c Key, Vec<&'c str>)) -> (&'c str, Vec<String>) {
    let forms = names.into_iter().filter_map(Key::nearest_form);
    (key.as_str(), forms.map(|form| form.to_string()).collect())
}
