//! Names of holders, people and other parties.
//!
//! A holder is "Harbour Museum, Northport", or city first in lists; a private owner is named by the
//! theme's words. A record that does not exist is named by its key.

use super::dates;
use crate::model::holder::{Holder, HolderKind};
use crate::model::key::Key;
use crate::model::person::Person;
use crate::model::provenance::Party;
use crate::model::vocabulary::List as Vocabulary;
use crate::page::setting::address::Address;
use crate::page::setting::book::Here;
use crate::page::setting::html::CleanHtml;
use crate::page::setting::words::Argument;

impl Here<'_> {
    /// The name of a holder, as a link.
    pub fn holder(&self, key: &Key) -> CleanHtml {
        match self.public().holders.get(key) {
            Some(holder) => self.link(
                &Address::Holder(key.clone()),
                &CleanHtml::text(&self.holder_name(holder)),
            ),
            None => CleanHtml::text(key.as_str()),
        }
    }

    /// The name of a holder, as a link, with its city: "Harbour Museum, Northport".
    pub fn holder_and_city(&self, key: &Key) -> CleanHtml {
        let link = self.holder(key);
        match self.public().holders.get(key).and_then(|h| h.town.as_ref()) {
            Some(town) => link.then(", ").then(town),
            None => link,
        }
    }

    /// "Harbour Museum"; "Private collection, Switzerland" for an owner who is not named.
    pub fn holder_name(&self, holder: &Holder) -> String {
        match (&holder.country, holder.kind) {
            (Some(country), HolderKind::Private) if holder.town.is_none() => {
                format!("{}, {}", holder.name.value, self.country(country))
            }
            _ => holder.name.value.clone(),
        }
    }

    /// "a private collection, Switzerland", as used within a sentence, for an owner who is named by the
    /// theme's words only.
    pub fn unnamed_collection(&self, key: &Key) -> Option<CleanHtml> {
        let words = self.words();
        let holder = self.public().holders.get(key)?;
        let is_unnamed = holder.kind == HolderKind::Private
            && holder.town.is_none()
            && holder.name.value == words.word("private-collection");
        let country = holder.country.as_ref().filter(|_| is_unnamed)?;
        let name = words.with(
            "private-in-text",
            &[("country", Argument::Text(self.country(country)))],
        );
        let link = self.link(&Address::Holder(key.clone()), &CleanHtml::text(&name));
        Some(words.html("a-private-collection", None, &[("collection", &link)]))
    }

    /// "Northport, Harbour Museum".
    pub fn holder_city_first(&self, holder: &Holder) -> String {
        match &holder.town {
            Some(town) => format!("{}, {}", town.value, holder.name.value),
            None => self.holder_name(holder),
        }
    }

    /// The name of a country by its code (ISO 3166-1 alpha-2); the code where the theme has no name.
    pub fn country<'a>(&'a self, code: &'a str) -> &'a str {
        self.words()
            .find(&format!("country-{code}"))
            .unwrap_or(code)
    }

    /// A person's name, as a link.
    pub fn person(&self, key: &Key) -> CleanHtml {
        match self.public().people.get(key) {
            Some(person) => self.link(
                &Address::Person(key.clone()),
                &CleanHtml::text(&person.name),
            ),
            None => CleanHtml::text(key.as_str()),
        }
    }

    /// A life: "1903–1958", "active 1950 to 1975"; empty where nothing is known.
    pub fn life(&self, person: &Person) -> String {
        let born = person.born.as_ref().map(|d| &d.value);
        let died = person.died.as_ref().map(|d| &d.value);
        let life = dates::life(born, died, self.words());
        match &person.active {
            Some(active) if life.is_empty() => {
                let years = dates::throughout(active, self.words());
                self.words()
                    .with("life-active", &[("date", Argument::Text(&years))])
            }
            _ => life,
        }
    }

    /// The name of a person or a holder, by key.
    pub fn person_or_holder(&self, key: &Key) -> CleanHtml {
        if self.public().holders.contains_key(key) {
            self.holder_and_city(key)
        } else {
            self.person(key)
        }
    }

    /// An owner, agent or keeper.
    pub fn party(&self, party: &Party) -> CleanHtml {
        match party {
            Party::Record(key) => self.person_or_holder(key),
            Party::Named(name) => CleanHtml::text(name),
            Party::Undisclosed => CleanHtml::text(self.words().word("name-withheld")),
        }
    }
}

/// The form of a name under which it is sorted.
pub(crate) fn sorted_name(person: &Person) -> &str {
    person.sort.as_deref().unwrap_or(&person.name.value)
}

/// The roles of a person, in words.
pub(crate) fn roles(here: &Here<'_>, person: &Person) -> String {
    let roles: Vec<String> = person
        .roles
        .iter()
        .map(|role| here.term(Vocabulary::Roles, role.as_str()))
        .collect();
    roles.join(", ")
}
