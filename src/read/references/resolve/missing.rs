//! Findings on references to nothing: code, message and help for each kind of target.

use std::cell::RefCell;
use std::collections::BTreeMap;

use super::terms;
use crate::model::catalogue::Catalogue;
use crate::model::codes::Code;
use crate::model::design::Design;
use crate::model::finding::Finding;
use crate::model::key::{ImpressionKey, Key, PictureKey, PictureOwner};
use crate::model::link::Target;
use crate::model::occurrence::{DesignPart, RecordId, Reference, Referent};
use crate::model::place::{Place, Placed};
use crate::model::vocabulary::List;
use crate::read::theme::BUILT_IN_THEME;
use crate::read::values::names;
use crate::read::values::near::{either, meant, nearest};
use crate::read::values::numbered::{number_of, state_by_number};

/// Everything that a reference may name.
pub(super) struct Known<'c> {
    catalogue: &'c Catalogue,
    /// Its own themes, beside the built-in one.
    themes: &'c [String],
    /// What was probably meant by each key that is unknown. One slip may stand in a thousand records.
    meant: RefCell<BTreeMap<(Code, String), Vec<&'c str>>>,
    /// The help for each text that stands in place of a term of a list.
    help_for_terms: RefCell<BTreeMap<(List, String), String>>,
}

impl<'c> Known<'c> {
    /// What the references of a catalogue with these themes may name.
    pub(super) fn of(catalogue: &'c Catalogue, themes: &'c [String]) -> Known<'c> {
        Known {
            catalogue,
            themes,
            meant: RefCell::default(),
            help_for_terms: RefCell::default(),
        }
    }

    /// The finding on a reference of `record`; `None` where its target exists.
    pub(super) fn missing(&self, record: &RecordId, reference: &Reference) -> Option<Finding> {
        let place = reference.place;
        match &reference.to {
            Referent::Record(target, _) => self.record(target, place),
            Referent::Party(key, _) => self.party(key, place),
            Referent::Term(list, key) => self.term(*list, key, place),
            Referent::TermInWords(list) => Some(self.term_in_words(*list, place)),
            Referent::Theme(key) => self.theme(key, place),
            Referent::PartOf(design, part, key) => {
                let of_design = self.record(&Target::Design(design.clone()), place);
                of_design.or_else(|| {
                    let design = self.catalogue.designs.get(design)?;
                    missing_part(design, *part, key, place)
                })
            }
            Referent::Part(part, key) => {
                let design = match record {
                    RecordId::Design(design) => design,
                    RecordId::Impression(impression) => &impression.design,
                    _ => return None,
                };
                let design = self.catalogue.designs.get(design)?;
                missing_part(design, *part, key, place)
            }
        }
    }

    fn record(&self, target: &Target, place: Place) -> Option<Finding> {
        let catalogue = self.catalogue;
        match target {
            Target::Design(key) => self.design(key, place),
            Target::Impression(key) => self.impression(key, place),
            Target::Holder(key) => self.holder(key, place),
            Target::Person(key) => self.person(key, place),
            Target::Work(key) => absent(
                (&catalogue.literature, key, place),
                Code::LiteratureUnknown,
                format!("the literature has no entry `{key}`"),
                &format!("add an entry with the key `{key}` to records/literature.bib"),
            ),
            Target::Exhibition(key) => absent(
                (&catalogue.exhibitions, key, place),
                Code::ExhibitionUnknown,
                format!("there is no exhibition `{key}`"),
                &format!("add [{key}] to records/exhibitions.toml"),
            ),
            Target::Mark(key) => absent(
                (&catalogue.marks, key, place),
                Code::MarkUnknown,
                format!("no mark has the key `{key}`"),
                &format!("add records/marks/{key}.toml"),
            ),
            Target::Series(key) => absent(
                (&catalogue.series, key, place),
                Code::SeriesUnknown,
                format!("no series has the key `{key}`"),
                &format!(
                    "add records/series/{key}.toml, or write `name` for a series without a record"
                ),
            ),
            Target::Document(key) => absent(
                (&catalogue.documents, key, place),
                Code::DocumentUnknown,
                format!("no document has the key `{key}`"),
                &format!("add records/documents/{key}.toml"),
            ),
            Target::Page(key) => absent(
                (&catalogue.pages, key, place),
                Code::PageUnknown,
                format!("the catalogue has no page `{key}`"),
                &format!("add records/pages/{key}.md"),
            ),
            Target::Picture(key) => self.picture(key, place),
        }
    }

    /// The keys that were probably meant by one that is unknown; empty where none suggests itself.
    fn meant(
        &self,
        code: Code,
        key: &Key,
        records: impl FnOnce() -> Vec<(&'c str, Vec<String>)>,
    ) -> Vec<&'c str> {
        let about = (code, key.to_string());
        if let Some(found) = self.meant.borrow().get(&about) {
            return found.clone();
        }
        let found = meant(key.as_str(), &records());
        self.meant.borrow_mut().insert(about, found.clone());
        found
    }

    fn design(&self, key: &Key, place: Place) -> Option<Finding> {
        let designs = &self.catalogue.designs;
        if designs.contains_key(key) {
            return None;
        }
        let finding = Finding::new(
            Code::DesignUnknown,
            place,
            format!("no design has the key `{key}`"),
        );
        let add = format!("add records/designs/{key}/design.toml");
        Some(match numbered(self.catalogue, key.as_str()) {
            Some(design) => finding.help(format!("number {key} is `{design}`: write `{design}`")),
            None => suggested(finding, &self.meant_design(key), &add),
        })
    }

    fn meant_design(&self, key: &Key) -> Vec<&'c str> {
        let designs = || names::of_designs(self.catalogue);
        self.meant(Code::DesignUnknown, key, designs)
    }

    fn holder(&self, key: &Key, place: Place) -> Option<Finding> {
        if self.catalogue.holders.contains_key(key) {
            return None;
        }
        let message = format!("no holder has the key `{key}`");
        let finding = Finding::new(Code::HolderUnknown, place, message);
        let file = format!("records/holders/{key}.toml");
        if self.catalogue.people.contains_key(key) {
            return Some(finding.help(format!("a person has it; a holder needs {file}")));
        }
        let holders = || names::of_holders(self.catalogue);
        let meant = self.meant(Code::HolderUnknown, key, holders);
        Some(suggested(finding, &meant, &format!("add {file}")))
    }

    fn person(&self, key: &Key, place: Place) -> Option<Finding> {
        if self.catalogue.people.contains_key(key) {
            return None;
        }
        let message = format!("no person has the key `{key}`");
        let finding = Finding::new(Code::PersonUnknown, place, message);
        let file = format!("records/people/{key}.toml");
        if self.catalogue.holders.contains_key(key) {
            return Some(finding.help(format!("a holder has it; a person needs {file}")));
        }
        let people = || names::of_people(self.catalogue);
        let meant = self.meant(Code::PersonUnknown, key, people);
        Some(suggested(finding, &meant, &format!("add {file}")))
    }

    /// A person's or holder's key.
    fn party(&self, key: &Key, place: Place) -> Option<Finding> {
        if self.catalogue.has_party(key) {
            return None;
        }
        let all = || {
            let mut all = names::of_people(self.catalogue);
            all.extend(names::of_holders(self.catalogue));
            all
        };
        let message = format!("neither a person nor a holder has the key `{key}`");
        Some(suggested(
            Finding::new(Code::PartyUnknown, place, message),
            &self.meant(Code::PartyUnknown, key, all),
            &format!("add records/people/{key}.toml or records/holders/{key}.toml"),
        ))
    }

    fn term(&self, list: List, key: &Key, place: Place) -> Option<Finding> {
        let vocabularies = &self.catalogue.vocabularies;
        if vocabularies.term(list, key.as_str()).is_some() {
            return None;
        }
        let help = self.helped((list, key.to_string()), || {
            terms::help_for_key(vocabularies, list, key)
        });
        Some(terms::unknown(list, key, place, help))
    }

    fn term_in_words(&self, list: List, place: Place) -> Finding {
        let written = self.catalogue.sources.text(place.file).get(place.span());
        let words = written.unwrap_or_default().trim_matches(['"', '\'']);
        let help = self.helped((list, words.to_owned()), || {
            terms::help_for_words(&self.catalogue.vocabularies, list, words)
        });
        terms::in_words(place, words, help)
    }

    /// The help that `seek` gives for a text in place of a term, sought once for each.
    fn helped(&self, about: (List, String), seek: impl FnOnce() -> String) -> String {
        if let Some(help) = self.help_for_terms.borrow().get(&about) {
            return help.clone();
        }
        let help = seek();
        self.help_for_terms.borrow_mut().insert(about, help.clone());
        help
    }

    fn theme(&self, key: &Key, place: Place) -> Option<Finding> {
        let name = key.as_str();
        let mut all = self
            .themes
            .iter()
            .map(String::as_str)
            .chain([BUILT_IN_THEME]);
        if all.clone().any(|theme| theme == name) {
            return None;
        }
        let help = match nearest(name, &mut all) {
            Some(near) => format!("did you mean \"{near}\"?"),
            None => format!("write \"{BUILT_IN_THEME}\", or make the folder themes/{name}"),
        };
        let message = format!("there is no theme `{name}`");
        Some(Finding::new(Code::ThemeUnknown, place, message).help(help))
    }

    fn impression(&self, key: &ImpressionKey, place: Place) -> Option<Finding> {
        let catalogue = self.catalogue;
        if catalogue.impression(key).is_some() {
            return None;
        }
        let ImpressionKey { design, number } = key;
        let add = format!("add records/designs/{design}/impressions/{number}.toml");
        let help = match catalogue.designs.get(design) {
            Some(recorded) => match recorded.impressions.keys().next_back() {
                None => format!("design {design} has no impressions yet; {add}"),
                Some(last) => format!(
                    "the last impression recorded of design {design} is {design}.{last}; {add}"
                ),
            },
            None => match numbered(catalogue, design.as_str()) {
                Some(meant) => {
                    format!("number {design} is `{meant}`: write `{meant}.{number}`")
                }
                None => match self.meant_design(design).as_slice() {
                    [] => format!("there is no design `{design}` either"),
                    [meant] => format!("write `{meant}.{number}`"),
                    several => format!(
                        "there is no design `{design}` either; the nearest are {}",
                        either(several)
                    ),
                },
            },
        };
        let message = format!("there is no impression {key}");
        Some(Finding::new(Code::ImpressionUnknown, place, message).help(help))
    }

    fn picture(&self, key: &PictureKey, place: Place) -> Option<Finding> {
        let catalogue = self.catalogue;
        if catalogue.picture(key).is_some() {
            return None;
        }
        let owner = &key.owner;
        let pictures = match owner {
            PictureOwner::Design(design) => catalogue.designs.get(design).map(|d| &d.pictures),
            PictureOwner::Impression(impression) => {
                catalogue.impression(impression).map(|i| &i.pictures)
            }
            PictureOwner::Document(key) => catalogue.documents.get(key).map(|d| &d.pictures),
        };
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
        let message = format!("there is no picture {key}");
        Some(Finding::new(Code::PictureUnknown, place, message).help(help))
    }
}

/// The key of the only design with a number; `None` where it is the key of another design too.
fn numbered<'c>(catalogue: &'c Catalogue, number: &str) -> Option<&'c Key> {
    let mut designs = catalogue.designs.values().filter(|d| d.number == number);
    let design = designs.next()?;
    designs.next().is_none().then_some(&design.key)
}

/// The finding with its help: what was probably meant, or the file to add.
fn suggested(finding: Finding, meant: &[&str], add: &str) -> Finding {
    finding.help(match meant {
        [] => add.to_owned(),
        meant => format!("write {}, or {add}", either(meant)),
    })
}

/// The finding on a record named by key, where `records` lack the key. `add`: the file or table to add.
fn absent<V>(
    (records, key, place): (&BTreeMap<Key, V>, &Key, Place),
    code: Code,
    message: String,
    add: &str,
) -> Option<Finding> {
    if records.contains_key(key) {
        return None;
    }
    let near = nearest(key.as_str(), records.keys().map(Key::as_str));
    Some(unknown(Finding::new(code, place, message), near, add))
}

/// The finding with its help: the nearest key, or the file or table to add.
fn unknown(finding: Finding, near: Option<&str>, add: &str) -> Finding {
    finding.help(match near {
        Some(near) => format!("write `{near}`, or {add}"),
        None => add.to_owned(),
    })
}

/// The finding on a part of a design, where the design has no such part with the key.
fn missing_part(design: &Design, part: DesignPart, key: &Key, place: Place) -> Option<Finding> {
    let (code, name, parts): (_, _, Vec<&Placed<Key>>) = match part {
        DesignPart::Matrix => (
            Code::MatrixUnknown,
            "matrix",
            design.matrices.iter().map(|m| &m.key).collect(),
        ),
        DesignPart::State => (
            Code::StateUnknown,
            "state",
            design.states.iter().map(|s| &s.key).collect(),
        ),
        DesignPart::Printing => (
            Code::PrintingUnknown,
            "printing",
            design.printings.iter().map(|p| &p.key).collect(),
        ),
        DesignPart::Variant => (
            Code::VariantUnknown,
            "variant",
            design.variants.iter().map(|v| &v.key).collect(),
        ),
    };
    if parts.iter().any(|part| part.value == *key) {
        return None;
    }
    let message = format!("design {} has no {name} `{key}`", design.number);
    let finding = Finding::new(code, place, message);
    let near = nearest(key.as_str(), parts.iter().map(|part| part.as_str()));
    let near = near.and_then(|near| parts.iter().find(|part| part.as_str() == near));
    Some(if let Some(near) = near {
        let add = format!("add a {name} with the key `{key}` to the design");
        finding
            .beside(near.place, format!("the nearest {name}"))
            .help(format!("write `{}`, or {add}", near.value))
    } else if parts.is_empty() {
        finding.help(format!(
            "the design has none; add a {name} with the key `{key}` to it"
        ))
    } else {
        let all: Vec<String> = parts.iter().map(|p| format!("`{}`", p.value)).collect();
        let all = format!("the design has {}", all.join(", "));
        finding.help(match number_of(key.as_str()) {
            Some(number) if part == DesignPart::State && (1..=parts.len()).contains(&number) => {
                let states = parts.iter().map(|part| part.as_str());
                format!("{}; {all}", state_by_number(Some(number), states))
            }
            _ => all,
        })
    })
}
