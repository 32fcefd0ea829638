//! What is cited: an entry of the catalogue, with the catalogue as the work that holds it.
//!
//! In: a design, an impression, a document or a series. Out: the data that every format of citation writes.

use crate::model::edtf::Date;
use crate::model::person::Person;
use crate::page::citations::{self, CitedEntry};
use crate::page::{Address, Here, Subject, imprint};

/// An entry of the catalogue, as reference managers take it.
pub(super) struct CitedItem {
    /// Its key in a bibliography, made of permanent keys: "op-7-state-beam".
    pub id: String,
    /// The short citation: "OP 7 iii/v".
    pub short: String,
    /// The short citation and the title of the design, or a title of its own.
    pub title: String,
    /// The title of the catalogue.
    pub catalogue: String,
    /// The editors of the catalogue.
    pub editors: Vec<Name>,
    /// The edition of the catalogue, as recorded.
    pub edition: Option<String>,
    /// That the entry was revised since the edition, in words; `None` where it stands as the edition had it.
    pub revised: Option<String>,
    /// The date of the edition: year, month, day, as far as recorded.
    pub date: Vec<u32>,
    /// The permanent address.
    pub url: String,
    /// The language of the catalogue, BCP 47.
    pub language: String,
}

/// A name.
#[derive(Debug, PartialEq)]
pub(super) enum Name {
    /// Family name and the rest.
    Parts { family: String, given: String },
    /// A name that is not divided.
    Whole(String),
}

impl Name {
    /// The name of a person: divided where its form for sorting has one comma and is made of the same words.
    fn of(person: &Person) -> Name {
        let whole = &person.name.value;
        let parts = person
            .sort
            .as_deref()
            .and_then(|sort| sort.split_once(", "));
        match parts {
            Some((family, given)) if format!("{given} {family}") == *whole => Name::Parts {
                family: family.to_owned(),
                given: given.to_owned(),
            },
            _ => Name::Whole(whole.clone()),
        }
    }
}

/// The entries that a subject's file cites, the page itself first; empty for other subjects.
pub(super) fn items(here: &Here<'_>, subject: &Subject) -> Vec<CitedItem> {
    let Subject::Page(page) = subject else {
        return Vec::new();
    };
    let public = here.public();
    let entries = match page {
        Address::Design(key) => {
            let design = public.designs.get(key);
            design.map(|design| citations::of_design(here, design))
        }
        Address::Impression(key) => Some(vec![citations::of_impression(here, key)]),
        Address::Document(key) => {
            let document = public.documents.get(key);
            document.map(|document| vec![citations::of_document(here, document)])
        }
        Address::Series(key) => {
            let series = public.series.get(key);
            series.map(|series| vec![citations::of_series(here, series)])
        }
        _ => None,
    };
    let entries = entries.unwrap_or_default().into_iter();
    entries.map(|entry| item(here, entry)).collect()
}

fn item(here: &Here<'_>, entry: CitedEntry) -> CitedItem {
    let public = here.public();
    let settings = &public.settings;
    let editors = settings.editors.iter();
    let editors = editors.filter_map(|key| public.people.get(&key.value));
    let edition = imprint::CitedEdition::of(here.book);
    let revised = edition.is_revised;
    let revised = revised.then(|| here.words().word("edition-revised").to_owned());
    CitedItem {
        id: id(&settings.siglum.value, &entry.key),
        title: entry.title,
        short: entry.short,
        catalogue: settings.title.value.clone(),
        editors: editors.map(Name::of).collect(),
        edition: edition.name.map(str::to_owned),
        revised,
        date: edition.dated.map_or_else(Vec::new, day),
        url: entry.url,
        language: settings.language.value.clone(),
    }
}

/// The siglum and the key in the signs that every program takes in the key of an entry.
fn id(siglum: &str, key: &str) -> String {
    let siglum: String = siglum.chars().filter(char::is_ascii_alphanumeric).collect();
    if siglum.is_empty() {
        key.to_owned()
    } else {
        format!("{}-{key}", siglum.to_ascii_lowercase())
    }
}

/// Year, month and day of a date that is a year, a month or a day; nothing of any other.
fn day(date: &Date) -> Vec<u32> {
    let parts: Result<Vec<u32>, _> = date.as_str().split('-').map(str::parse).collect();
    parts.unwrap_or_default()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_plain_dates_are_taken() {
        let parts = |text| day(&Date::parse(text).unwrap());
        assert_eq!(parts("2026-10-15"), [2026, 10, 15]);
        assert_eq!(parts("2026"), [2026]);
        for text in ["2026~", "2026/2027", "202X", "-0044"] {
            assert!(parts(text).is_empty(), "{text}");
        }
    }

    #[test]
    fn ids_are_ascii() {
        assert_eq!(id("OP", "7-state-beam"), "op-7-state-beam");
        assert_eq!(id("版画", "7.5"), "7.5");
    }
}
