//! Names: how each kind of record is called, everywhere in the same way.
//!
//! A design is "14, *The Last Ferry*", a supplied title stands in brackets; an impression is its
//! handle "14.7" and where it is; a holder is "Harbour Museum, Northport", or city first in lists.
//! A record that is not there (a mistaken key in a catalogue with errors) is called by its key.

use super::address::{Address, Fragment, Overview};
use super::book::Here;
use super::dates;
use super::html::CleanHtml;
use super::words::Given;
use crate::model::design::{Design, Title};
use crate::model::holder::{Holder, HolderKind};
use crate::model::impression::{Impression, Status};
use crate::model::key::{ImpressionKey, Key};
use crate::model::link::Target;
use crate::model::person::Person;
use crate::model::provenance::Party;
use crate::model::vocabulary::List;
use crate::model::words::Standing;

impl Here<'_> {
    /// A title as a catalogue prints it: italic, or in brackets where the catalogue supplies it.
    pub fn title(&self, title: &Title) -> CleanHtml {
        let language = title.lang.as_ref().map(|l| l.value.as_str());
        if title.supplied {
            let text = CleanHtml::text("[").then(&title.text).then("]");
            self.in_language("span", &text, language)
        } else {
            self.in_language("i", &CleanHtml::text(&title.text), language)
        }
    }

    /// The title of a design in use.
    pub fn design_title(&self, design: &Design) -> CleanHtml {
        design.title().map_or_else(
            || CleanHtml::text(self.words().word("untitled")),
            |title| self.title(title),
        )
    }

    /// "14, *The Last Ferry*".
    pub fn design_name(&self, design: &Design) -> CleanHtml {
        CleanHtml::text(&design.number)
            .then(", ")
            .and(&self.design_title(design))
    }

    /// "14, *The Last Ferry*", leading to the design, and how that stands where it is not accepted.
    pub fn design(&self, key: &Key) -> CleanHtml {
        match self.public().designs.get(key) {
            Some(design) => {
                let name = self.link(&Address::Design(key.clone()), &self.design_name(design));
                CleanHtml::join([&name, &self.standing(design)], ", ")
            }
            None => CleanHtml::text(key.as_str()),
        }
    }

    /// "Rejected": how a design stands; nothing where it is accepted.
    pub fn standing(&self, design: &Design) -> CleanHtml {
        match design.standing.standing {
            Standing::Accepted => CleanHtml::empty(),
            standing => Here::quiet(self.words().listed("standing", standing)),
        }
    }

    /// The handle of an impression, "14.7", leading to it where its page is published.
    pub fn impression(&self, key: &ImpressionKey) -> CleanHtml {
        let text = CleanHtml::text(&key.to_string());
        let address = Address::Impression(key.clone());
        if self.public().impression(key).is_none() || address == *self.address {
            return CleanHtml::span("handle", &text);
        }
        CleanHtml::element(
            "a",
            &[("class", "handle"), ("href", &self.href(&address))],
            &text,
        )
    }

    /// Where a sheet is, city first: "Northport, Harbour Museum", "Private collection, Switzerland",
    /// "untraced".
    pub fn whereabouts(&self, impression: &Impression) -> String {
        let holder = impression
            .holder
            .as_ref()
            .and_then(|key| self.public().holders.get(&key.value));
        match holder {
            Some(holder) => self.holder_city_first(holder),
            None if impression.status.value == Status::Located => {
                self.words().word("holder-not-recorded").to_owned()
            }
            None => self.status(impression.status.value).to_owned(),
        }
    }

    /// The word for a status.
    pub fn status(&self, status: Status) -> &str {
        self.words().listed("status", status)
    }

    /// The name of a holder, leading to it.
    pub fn holder(&self, key: &Key) -> CleanHtml {
        match self.public().holders.get(key) {
            Some(holder) => self.link(
                &Address::Holder(key.clone()),
                &CleanHtml::text(&self.holder_name(holder)),
            ),
            None => CleanHtml::text(key.as_str()),
        }
    }

    /// The name of a holder with its city, leading to it: "Harbour Museum, Northport".
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

    /// "a private collection, Switzerland", as a sentence has it, for an owner who goes by the theme's
    /// words for one who is not named.
    pub fn unnamed_collection(&self, key: &Key) -> Option<CleanHtml> {
        let words = self.words();
        let holder = self.public().holders.get(key)?;
        let is_unnamed = holder.kind == HolderKind::Private
            && holder.town.is_none()
            && holder.name.value == words.word("private-collection");
        let country = holder.country.as_ref().filter(|_| is_unnamed)?;
        let name = words.with(
            "private-in-text",
            &[("country", Given::Text(self.country(country)))],
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

    /// A person's name, leading to them.
    pub fn person(&self, key: &Key) -> CleanHtml {
        match self.public().people.get(key) {
            Some(person) => self.link(
                &Address::Person(key.clone()),
                &CleanHtml::text(&person.name),
            ),
            None => CleanHtml::text(key.as_str()),
        }
    }

    /// A life: "1903–1958", "active 1950 to 1975"; nothing where nothing is known.
    pub fn life(&self, person: &Person) -> String {
        let born = person.born.as_ref().map(|d| &d.value);
        let died = person.died.as_ref().map(|d| &d.value);
        let life = dates::life(born, died, self.words());
        match &person.active {
            Some(active) if life.is_empty() => {
                let years = dates::throughout(active, self.words());
                self.words()
                    .with("life-active", &[("date", Given::Text(&years))])
            }
            _ => life,
        }
    }

    /// Somebody who is recorded as a person or a holder.
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

    /// A work by its short form, leading to it, with the place in it: "Verhoeven 1961, p. 12".
    pub fn work(&self, key: &Key, at: Option<&str>) -> CleanHtml {
        let short = match self.public().literature.get(key) {
            Some(work) => self.link(&Address::Work(key.clone()), &CleanHtml::text(&work.short)),
            None => CleanHtml::text(key.as_str()),
        };
        match at {
            Some(at) => short.then(", ").then(at),
            None => short,
        }
    }

    /// An exhibition by its title, leading to it.
    pub fn exhibition(&self, key: &Key) -> CleanHtml {
        match self.public().exhibitions.get(key) {
            Some(exhibition) => self.link(
                &Address::Exhibition(key.clone()),
                &CleanHtml::element("i", &[], &CleanHtml::text(&exhibition.title)),
            ),
            None => CleanHtml::text(key.as_str()),
        }
    }

    /// A term of a vocabulary, in words: "colour woodcut".
    pub fn term(&self, list: List, key: &str) -> String {
        self.public()
            .vocabularies
            .term(list, key)
            .and_then(|term| term.label(self.language()))
            .map_or_else(|| key.replace('-', " "), str::to_owned)
    }

    /// A technique, subject or series, leading to its place in the page that gathers them. `name`
    /// is what it is called, `key` its key or the nearest thing to one.
    pub fn gathered(&self, overview: Overview, key: &str, name: &str) -> CleanHtml {
        let text = CleanHtml::text(name);
        let fragment = Key::nearest_form(key);
        match fragment.filter(|_| self.book.overviews.contains(&overview)) {
            Some(fragment) => CleanHtml::link(
                &format!("{}#{fragment}", self.href(&Address::Overview(overview))),
                &text,
            ),
            None => text,
        }
    }

    /// A technique, leading to the designs made in it.
    pub fn technique(&self, key: &Key) -> CleanHtml {
        let name = self.term(List::Techniques, key.as_str());
        self.gathered(Overview::Techniques, key.as_str(), &name)
    }

    /// A subject, leading to the designs that show it.
    pub fn subject(&self, subject: &str) -> CleanHtml {
        let name = self
            .public()
            .vocabularies
            .term(List::Subjects, subject)
            .and_then(|term| term.label(self.language()))
            .unwrap_or(subject);
        self.gathered(Overview::Subjects, subject, name)
    }

    /// "*iii*/iv" as HTML, the numeral leading to the state; "only state"; the key of a state that
    /// has no numeral.
    pub fn state_of(&self, design: &Key, state: &Key) -> CleanHtml {
        let to = self.href_part(&Address::Design(design.clone()), Fragment::State(state));
        match self.book.studies.numeral(design, state) {
            Some(numeral) if numeral.is_only() => {
                CleanHtml::link(&to, &CleanHtml::text(self.words().word("only-state")))
            }
            Some(numeral) => {
                let link = CleanHtml::link(&to, &CleanHtml::text(&numeral.roman()));
                let total = crate::study::numerals::roman(numeral.of());
                CleanHtml::span("numeral", &link).then("/").then(&total)
            }
            None => CleanHtml::link(&to, &CleanHtml::text(&state.as_str().replace('-', " "))),
        }
    }

    /// The numeral of a state without the total; "only state" where there is one.
    pub fn numeral(&self, design: &Key, state: &Key) -> CleanHtml {
        match self.book.studies.numeral(design, state) {
            Some(numeral) if numeral.is_only() => CleanHtml::text(self.words().word("only-state")),
            Some(numeral) => CleanHtml::span("numeral", &CleanHtml::text(&numeral.roman())),
            None => CleanHtml::text(&state.as_str().replace('-', " ")),
        }
    }

    /// The name of a printing as readers see it: its own, else the word for its kind.
    pub fn printing_name(&self, design: &Design, key: &Key) -> String {
        let Some(printing) = design.printing(key) else {
            return key.as_str().replace('-', " ");
        };
        match (&printing.name, printing.kind.own()) {
            (Some(name), _) => name.clone(),
            (None, Some(kind)) => self.words().listed("printing", *kind).to_owned(),
            (None, None) => key.as_str().replace('-', " "),
        }
    }

    /// The record that a link in a text leads to, by its own short name. `None` where it has no
    /// page to lead to.
    pub fn target(&self, target: &Target) -> Option<(Address, CleanHtml)> {
        let public = self.public();
        Some(match target {
            Target::Design(key) => {
                let design = public.designs.get(key)?;
                (Address::Design(key.clone()), self.design_name(design))
            }
            Target::Impression(key) => {
                public.impression(key)?;
                (
                    Address::Impression(key.clone()),
                    CleanHtml::text(&key.to_string()),
                )
            }
            Target::Holder(key) => {
                let holder = public.holders.get(key)?;
                (
                    Address::Holder(key.clone()),
                    CleanHtml::text(&self.holder_name(holder)),
                )
            }
            Target::Person(key) => {
                let person = public.people.get(key)?;
                (Address::Person(key.clone()), CleanHtml::text(&person.name))
            }
            Target::Work(key) => {
                let work = public.literature.get(key)?;
                (Address::Work(key.clone()), CleanHtml::text(&work.short))
            }
            Target::Exhibition(key) => {
                let exhibition = public.exhibitions.get(key)?;
                let title = CleanHtml::element("i", &[], &CleanHtml::text(&exhibition.title));
                (Address::Exhibition(key.clone()), title)
            }
            Target::Page(key) => {
                let page = public.pages.get(key)?;
                (Address::of_page(key), CleanHtml::text(&page.title))
            }
            Target::Picture(key) => {
                public.picture(key)?;
                let address = match &key.owner {
                    crate::model::key::PictureOwner::Design(design) => {
                        Address::Design(design.clone())
                    }
                    crate::model::key::PictureOwner::Impression(impression) => {
                        Address::Impression(impression.clone())
                    }
                };
                (address, CleanHtml::text(&key.to_string()))
            }
        })
    }
}
