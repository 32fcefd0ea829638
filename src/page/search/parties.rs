//! Holders and people as they are searched.

use super::former;
use super::narrowing::Ranks;
use crate::model::link::Target;
use crate::page::phrases::identifiers;
use crate::page::phrases::party_names::roles;
use crate::page::setting::address::Address;
use crate::page::setting::book::Here;
use crate::page::texts::plain_text;
use crate::study::order::Collator;
use crate::study::search::entry::{Entry, EntryKind, Field};

/// The holders, by name.
pub(super) fn holders(here: &Here<'_>, ranks: &Ranks) -> Vec<Entry> {
    let holders = here.public().holders.values().map(|holder| {
        let name = here.holder_name(holder);
        let href = Address::Holder(holder.key.clone()).to_string();
        let mut entry = Entry::new(EntryKind::Holder, name, href);
        let town = holder.town.as_ref().map(|town| town.as_str());
        let country = holder.country.as_ref().map(|code| here.country(code));
        entry.about = town
            .into_iter()
            .chain(country)
            .collect::<Vec<_>>()
            .join(", ");
        entry.add(Field::Name, &holder.name.value);
        former::add(here, Target::Holder(holder.key.clone()), &mut entry);
        entry.add_all(Field::Name, holder.formerly.iter().map(|f| f.name.as_str()));
        entry.add_all(
            Field::Number,
            holder.isil.as_ref().map(|isil| isil.as_str()),
        );
        entry.add_all(Field::Accession, identifiers::searched(&holder.ids));
        entry.add_all(Field::Fact, town);
        entry.add_all(Field::Fact, country);
        entry.add_all(Field::Fact, &holder.credit);
        entry.add(Field::Fact, here.words().listed("holder-kind", holder.kind));
        entry.add(Field::Text, plain_text::note(here, holder.note.as_ref()));
        entry.values.extend(ranks.holder(&holder.key));
        entry
    });
    by_title(here, holders.collect())
}

/// The people, by name.
pub(super) fn people(here: &Here<'_>) -> Vec<Entry> {
    let people = here.public().people.values().map(|person| {
        let href = Address::Person(person.key.clone()).to_string();
        let mut entry = Entry::new(EntryKind::Person, person.name.value.clone(), href);
        let facts = [here.life(person), roles(here, person)];
        let told = facts
            .iter()
            .map(String::as_str)
            .filter(|fact| !fact.is_empty());
        entry.about = told.collect::<Vec<_>>().join(", ");
        entry.add(Field::Name, &person.name.value);
        former::add(here, Target::Person(person.key.clone()), &mut entry);
        entry.add_all(
            Field::Name,
            person.names.iter().map(|name| name.text.as_str()),
        );
        entry.add_all(Field::Accession, identifiers::searched(&person.ids));
        entry.add_all(Field::Fact, facts);
        entry.add(Field::Text, plain_text::note(here, person.note.as_ref()));
        entry
    });
    by_title(here, people.collect())
}

/// Entries in the order of their titles.
pub(super) fn by_title(here: &Here<'_>, mut entries: Vec<Entry>) -> Vec<Entry> {
    let collator = Collator::of_words(here.language());
    // The sort is stable: entries with one title keep the order of their keys.
    entries.sort_by(|a, b| collator.compare(&a.title, &b.title));
    entries
}
