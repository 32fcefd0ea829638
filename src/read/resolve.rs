//! References: everything a record names that the catalogue does not have.
//!
//! In: the model as read. Out: a finding at each place, with the nearest name or what to add. Keys
//! alone are looked at, never names, so that nothing private can appear in a message.
//!
//! Not here: points and their values (`points`, told while reading, where they are judged), and
//! whether two records agree (`audit`).

mod design;
mod impression;
mod text;

use super::near::nearest;
use crate::model::catalogue::Catalogue;
use crate::model::certainty::{Claim, Statements};
use crate::model::codes::Code;
use crate::model::design::Design;
use crate::model::exhibition::Venue;
use crate::model::finding::Finding;
use crate::model::key::{ImpressionKey, Key, PictureKey, PictureOwner};
use crate::model::literature::Citation;
use crate::model::place::{Place, Placed};
use crate::model::provenance::Party;
use crate::model::state::Stands;
use crate::model::vocabulary::List;

/// Every reference to nothing in the whole catalogue, in the order of the records.
pub(crate) fn resolve(catalogue: &Catalogue) -> Vec<Finding> {
    let mut names = Names {
        catalogue,
        findings: Vec::new(),
    };
    settings(&mut names);
    for design in catalogue.designs.values() {
        design::resolve(&mut names, design);
        for impression in design.impressions.values() {
            impression::resolve(&mut names, design, impression);
        }
    }
    others(&mut names);
    text::resolve(&mut names);
    names.findings
}

fn settings(names: &mut Names) {
    let settings = &names.catalogue.settings;
    for person in settings.artist.iter().chain(&settings.editors) {
        names.person(person);
    }
    for page in &settings.pages {
        names.page(page);
    }
}

/// Holders, people and exhibitions.
fn others(names: &mut Names) {
    let catalogue = names.catalogue;
    for holder in catalogue.holders.values() {
        if let Some(successor) = &holder.successor {
            names.holder(&successor.holder);
        }
    }
    for person in catalogue.people.values() {
        for role in &person.roles {
            names.term(List::Roles, role);
        }
    }
    for exhibition in catalogue.exhibitions.values() {
        if let Some(Venue::Holder(holder)) = &exhibition.venue {
            names.holder(holder);
        }
        if let Some(cite) = &exhibition.cite {
            names.work(cite);
        }
    }
}

/// The names that records may use, and what was found wrong with those they do use.
struct Names<'c> {
    catalogue: &'c Catalogue,
    findings: Vec<Finding>,
}

impl Names<'_> {
    fn push(&mut self, finding: Finding) {
        self.findings.push(finding);
    }

    fn design(&mut self, key: &Placed<Key>) {
        if self.catalogue.designs.contains_key(&key.value) {
            return;
        }
        let near = nearest(key.as_str(), self.catalogue.designs.keys().map(Key::as_str));
        let add = format!("add records/designs/{}/design.toml", key.value);
        self.unknown(
            Code::DesignUnknown,
            key.place,
            format!("no design has the key `{}`", key.value),
            near,
            add,
        );
    }

    fn holder(&mut self, key: &Placed<Key>) {
        if self.catalogue.holders.contains_key(&key.value) {
            return;
        }
        let message = format!("no holder has the key `{}`", key.value);
        if self.catalogue.people.contains_key(&key.value) {
            let help = format!(
                "a person has it; a holder needs records/holders/{}.toml",
                key.value
            );
            return self.push(Finding::new(Code::HolderUnknown, key.place, message).help(help));
        }
        let near = nearest(key.as_str(), self.catalogue.holders.keys().map(Key::as_str));
        let add = format!("add records/holders/{}.toml", key.value);
        self.unknown(Code::HolderUnknown, key.place, message, near, add);
    }

    fn person(&mut self, key: &Placed<Key>) {
        if self.catalogue.people.contains_key(&key.value) {
            return;
        }
        let message = format!("no person has the key `{}`", key.value);
        if self.catalogue.holders.contains_key(&key.value) {
            let help = format!(
                "a holder has it; a person needs records/people/{}.toml",
                key.value
            );
            return self.push(Finding::new(Code::PersonUnknown, key.place, message).help(help));
        }
        let near = nearest(key.as_str(), self.catalogue.people.keys().map(Key::as_str));
        let add = format!("add records/people/{}.toml", key.value);
        self.unknown(Code::PersonUnknown, key.place, message, near, add);
    }

    /// A person's or holder's key.
    fn party_key(&mut self, key: &Placed<Key>) {
        if self.catalogue.has_party(&key.value) {
            return;
        }
        let all = self
            .catalogue
            .people
            .keys()
            .chain(self.catalogue.holders.keys());
        let near = nearest(key.as_str(), all.map(Key::as_str));
        let add = format!(
            "add records/people/{0}.toml or records/holders/{0}.toml",
            key.value
        );
        let message = format!("neither a person nor a holder has the key `{}`", key.value);
        self.unknown(Code::PartyUnknown, key.place, message, near, add);
    }

    fn party(&mut self, party: &Party) {
        if let Party::Record(key) = party {
            self.party_key(key);
        }
    }

    fn work(&mut self, key: &Placed<Key>) {
        if self.catalogue.literature.contains_key(&key.value) {
            return;
        }
        let near = nearest(
            key.as_str(),
            self.catalogue.literature.keys().map(Key::as_str),
        );
        let add = format!(
            "add an entry with the key `{}` to records/literature.bib",
            key.value
        );
        let message = format!("the literature has no entry `{}`", key.value);
        self.unknown(Code::LiteratureUnknown, key.place, message, near, add);
    }

    fn exhibition(&mut self, key: &Placed<Key>) {
        if self.catalogue.exhibitions.contains_key(&key.value) {
            return;
        }
        let near = nearest(
            key.as_str(),
            self.catalogue.exhibitions.keys().map(Key::as_str),
        );
        let add = format!("add [{}] to records/exhibitions.toml", key.value);
        let message = format!("there is no exhibition `{}`", key.value);
        self.unknown(Code::ExhibitionUnknown, key.place, message, near, add);
    }

    fn page(&mut self, key: &Placed<Key>) {
        if self.catalogue.pages.contains_key(&key.value) {
            return;
        }
        let near = nearest(key.as_str(), self.catalogue.pages.keys().map(Key::as_str));
        let add = format!("add records/pages/{}.md", key.value);
        let message = format!("the catalogue has no page `{}`", key.value);
        self.unknown(Code::PageUnknown, key.place, message, near, add);
    }

    fn term(&mut self, list: List, key: &Placed<Key>) {
        if self
            .catalogue
            .vocabularies
            .term(list, key.as_str())
            .is_some()
        {
            return;
        }
        let terms = self.catalogue.vocabularies.terms(list);
        let near = nearest(key.as_str(), terms.map(|(key, _)| key.as_str()));
        let add = format!(
            "add [{}] with a label to records/vocabulary/{list}.toml",
            key.value
        );
        let message = format!(
            "`{}` is no {} that the vocabulary has",
            key.value,
            list.term_name()
        );
        self.unknown(Code::TermUnknown, key.place, message, near, add);
    }

    fn impression(&mut self, key: &Placed<ImpressionKey>) {
        if self.catalogue.impression(&key.value).is_some() {
            return;
        }
        let ImpressionKey { design, number } = &key.value;
        let help = match self.catalogue.designs.get(design) {
            Some(recorded) => match recorded.impressions.keys().next_back() {
                None => format!(
                    "design {design} has no impressions yet; add records/designs/{design}/impressions/{number}.toml"
                ),
                Some(last) => format!(
                    "the last impression recorded of design {design} is {design}.{last}; add records/designs/{design}/impressions/{number}.toml"
                ),
            },
            None => match nearest(
                design.as_str(),
                self.catalogue.designs.keys().map(Key::as_str),
            ) {
                Some(near) => format!("write `{near}.{number}`"),
                None => format!("there is no design `{design}` either"),
            },
        };
        let message = format!("there is no impression {}", key.value);
        self.push(Finding::new(Code::ImpressionUnknown, key.place, message).help(help));
    }

    fn picture(&mut self, key: &Placed<PictureKey>) {
        if self.catalogue.picture(&key.value).is_some() {
            return;
        }
        let pictures = match &key.owner {
            PictureOwner::Design(design) => self.catalogue.designs.get(design).map(|d| &d.pictures),
            PictureOwner::Impression(impression) => {
                self.catalogue.impression(impression).map(|i| &i.pictures)
            }
        };
        let owner = &key.owner;
        let help = match pictures {
            None => format!("there is no record `{owner}`"),
            Some(pictures) if pictures.is_empty() => {
                format!("{owner} has no pictures; add one to its record")
            }
            Some(pictures) => {
                let names: Vec<_> = pictures
                    .iter()
                    .map(|p| format!("`{owner}/{}`", p.name.value))
                    .collect();
                format!("{owner} has {}", names.join(", "))
            }
        };
        let message = format!("there is no picture {}", key.value);
        self.push(Finding::new(Code::PictureUnknown, key.place, message).help(help));
    }

    /// A part of a design: one of `parts`, each with its key and where it is recorded.
    fn part<'k>(
        &mut self,
        (code, name): (Code, &str),
        design: &Design,
        key: &Placed<Key>,
        parts: impl Iterator<Item = &'k Placed<Key>> + Clone,
    ) {
        if parts.clone().any(|part| part.value == key.value) {
            return;
        }
        let near = nearest(key.as_str(), parts.clone().map(|part| part.as_str()));
        let message = format!("design {} has no {name} `{}`", design.key, key.value);
        let finding = Finding::new(code, key.place, message);
        let near = parts.clone().find(|part| Some(part.as_str()) == near);
        let design_has_none = parts.clone().next().is_none();
        let all = || -> Vec<String> { parts.map(|part| format!("`{}`", part.value)).collect() };
        let written = &key.value;
        self.push(if let Some(near) = near {
            let add = format!("add a {name} with the key `{written}` to the design");
            finding
                .beside(near.place, format!("the nearest {name}"))
                .help(format!("write `{}`, or {add}", near.value))
        } else if design_has_none {
            finding.help(format!(
                "the design has none; add a {name} with the key `{written}` to it"
            ))
        } else {
            finding.help(format!("the design has {}", all().join(", ")))
        });
    }

    fn matrix(&mut self, design: &Design, key: &Placed<Key>) {
        self.part(
            (Code::MatrixUnknown, "matrix"),
            design,
            key,
            design.matrices.iter().map(|m| &m.key),
        );
    }

    fn state(&mut self, design: &Design, key: &Placed<Key>) {
        self.part(
            (Code::StateUnknown, "state"),
            design,
            key,
            design.states.iter().map(|s| &s.key),
        );
    }

    fn printing(&mut self, design: &Design, key: &Placed<Key>) {
        self.part(
            (Code::PrintingUnknown, "printing"),
            design,
            key,
            design.printings.iter().map(|p| &p.key),
        );
    }

    fn variant(&mut self, design: &Design, key: &Placed<Key>) {
        self.part(
            (Code::VariantUnknown, "variant"),
            design,
            key,
            design.variants.iter().map(|v| &v.key),
        );
    }

    fn claim(&mut self, claim: &Claim) {
        if let Some(by) = &claim.by {
            self.party_key(by);
        }
        if let Some(cite) = &claim.cite {
            self.work(cite);
        }
    }

    /// The claims of statements whose values refer to nothing.
    fn claims<T>(&mut self, statements: &Statements<T>) {
        for statement in statements {
            self.claim(&statement.claim);
        }
    }

    fn citations(&mut self, citations: &[Citation]) {
        for citation in citations {
            self.work(&citation.cite);
        }
    }

    fn stands(&mut self, stands: &Stands) {
        for see in &stands.see {
            match see.parse() {
                Ok(target) => text::target(self, &target, see.place),
                Err(_) => text::no_target(self, see.as_str(), see.place),
            }
        }
    }

    fn unknown(
        &mut self,
        code: Code,
        place: Place,
        message: String,
        near: Option<&str>,
        add: String,
    ) {
        let help = match near {
            Some(near) => format!("write `{near}`, or {add}"),
            None => add,
        };
        self.push(Finding::new(code, place, message).help(help));
    }
}
