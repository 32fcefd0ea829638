//! A reading of a reference: what is meant, how certainly, and why.

use super::names::{DesignNames, Names, References, Stands};
use crate::numerals::roman;
use keyblock_model::certainty::Certainty;
use keyblock_model::key::Key;
use keyblock_model::link::Target as Link;
use keyblock_model::literature::Relation;

/// What a reference means: places in the lists of [`References`]. The order is that of readings that are equally good.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Meant {
    /// A design.
    Design(usize),
    /// A design and the place of one of its states.
    State(usize, usize),
    /// A design and the place of one of its printings.
    Printing(usize, usize),
    /// A design and the number of one of its impressions.
    Impression(usize, u32),
    /// A holder.
    Holder(usize),
    /// A person.
    Person(usize),
    /// A mark.
    Mark(usize),
    /// An exhibition.
    Exhibition(usize),
    /// A document.
    Document(usize),
    /// A series.
    Series(usize),
    /// A work of the literature.
    Work(usize),
    /// A work and one of its numbers.
    Row(usize, usize),
}

/// How a reference was understood, the closest first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Rank {
    /// An address of the catalogue, or a link to a record.
    Address,
    /// A number or key of the catalogue, behind its siglum.
    CitedNumber,
    /// An accession number with its holder.
    HolderAccession,
    /// A number of an earlier catalogue that is named.
    Earlier,
    /// A number or key of the catalogue.
    Number,
    /// A numeral of an earlier edition of the catalogue, which was not named.
    FormerNumeral,
    /// A title or name.
    Name,
    /// A title or name that is no longer used.
    FormerName,
    /// An accession number alone.
    Accession,
    /// A number of an earlier catalogue alone.
    EarlierAlone,
    /// The key of a state alone.
    StateKey,
    /// A numeral or number that is not there.
    NotThere,
    /// The beginning of a title or name.
    Beginning,
}

impl Rank {
    /// Whether the reference itself says which of several readings is meant.
    #[must_use]
    pub fn is_explicit(self) -> bool {
        self <= Rank::Earlier
    }
}

/// Why a reference is read so.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Why {
    /// It is a number of this catalogue.
    Number,
    /// It is a key, or an address.
    Key,
    /// It is a key that the record had before.
    FormerKey,
    /// The numeral of the state in an edition of this catalogue.
    Edition(String),
    /// The numeral of a state, with a total that is not ours.
    OtherTotal,
    /// What follows the number is not recorded.
    NotThere(String),
    /// It is an accession number; of which holder.
    Accession(Option<String>),
    /// The same without its punctuation.
    BareAccession(Option<String>),
    /// It is a former accession number; of which holder.
    FormerAccession(Option<String>),
    /// A number of an earlier catalogue: the work, the number, and how it relates to ours.
    Earlier(String, String, Relation),
    /// A number of an earlier catalogue, and what follows it that the concordance does not have.
    EarlierNotThere(String, String, String),
    /// The number itself, in the list of the earlier catalogue.
    Row,
    /// It is a title.
    Title,
    /// It is a title that is no longer used.
    FormerTitle,
    /// It is a name.
    Name,
    /// It is a former name.
    FormerName,
    /// It is an ISIL.
    Isil,
    /// It is an identifier elsewhere.
    Elsewhere,
    /// A title or name begins so.
    Beginning,
}

impl Why {
    /// The end of the id of its word (`resolve-why-…`).
    #[must_use]
    pub fn word(&self) -> &'static str {
        match self {
            Why::Number => "number",
            Why::Key => "key",
            Why::FormerKey => "former-key",
            Why::Edition(_) => "edition",
            Why::OtherTotal => "other-total",
            Why::NotThere(_) => "not-there",
            Why::Accession(_) => "accession",
            Why::BareAccession(_) => "bare-accession",
            Why::FormerAccession(_) => "former-accession",
            Why::Earlier(..) => "earlier",
            Why::EarlierNotThere(..) => "earlier-not-there",
            Why::Row => "row",
            Why::Title => "title",
            Why::FormerTitle => "former-title",
            Why::Name => "name",
            Why::FormerName => "former-name",
            Why::Isil => "isil",
            Why::Elsewhere => "elsewhere",
            Why::Beginning => "beginning",
        }
    }

    /// The arguments of its word.
    #[must_use]
    pub fn arguments(&self) -> Vec<(&'static str, &str)> {
        match self {
            Why::Edition(edition) => vec![("edition", edition)],
            Why::NotThere(text) => vec![("text", text)],
            Why::Earlier(work, number, _) => vec![("work", work), ("number", number)],
            Why::EarlierNotThere(work, number, text) => {
                vec![("work", work), ("number", number), ("text", text)]
            }
            _ => Vec::new(),
        }
    }

    /// The holder whose number it is.
    #[must_use]
    pub fn holder(&self) -> Option<&str> {
        match self {
            Why::Accession(holder) | Why::BareAccession(holder) | Why::FormerAccession(holder) => {
                holder.as_deref()
            }
            _ => None,
        }
    }

    /// How the number of an earlier catalogue relates to ours, where it is not the same.
    #[must_use]
    pub fn relation(&self) -> Option<Relation> {
        match self {
            Why::Earlier(_, _, relation) if *relation != Relation::Same => Some(*relation),
            _ => None,
        }
    }
}

/// A reading of a reference.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Reading {
    /// What is meant.
    pub meant: Meant,
    /// How it was understood.
    pub rank: Rank,
    /// How certainly it is meant.
    pub certainty: Certainty,
    /// Why.
    pub why: Why,
    /// The record that was named, where its sheet has the page of another.
    pub record: Option<u32>,
}

impl Reading {
    /// A reading that is certain by itself.
    #[must_use]
    pub fn certain(meant: Meant, rank: Rank, why: Why) -> Reading {
        Reading {
            meant,
            rank,
            certainty: Certainty::Certain,
            why,
            record: None,
        }
    }

    /// The same, no more certain than `certainty`.
    #[must_use]
    pub fn at_most(mut self, certainty: Certainty) -> Reading {
        self.certainty = self.certainty.max(certainty);
        self
    }
}

/// What a reading leads to, in the terms of `resolve --json`.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Target {
    /// `design`, `impression`, `holder`, `person`, `mark`, `exhibition`, `document`, `series` or `literature`.
    pub kind: &'static str,
    /// The key of the record.
    pub key: String,
    /// The key of the state.
    pub state: Option<String>,
    /// The key of the printing.
    pub printing: Option<String>,
    /// The permanent address, absolute.
    pub address: String,
    /// Its short name: "OP 7 iii/v".
    pub label: String,
}

impl References {
    /// What has become of what a reading means; `None` where it simply stands.
    #[must_use]
    pub fn stands(&self, meant: Meant) -> Option<&Stands> {
        let of_design = |design: usize, part: Option<String>| {
            let key = &self.designs.get(design)?.key;
            let own = part.and_then(|part| self.stands.get(&part));
            own.or_else(|| self.stands.get(&format!("design:{key}")))
        };
        match meant {
            Meant::Design(design) => of_design(design, None),
            Meant::State(design, state) => {
                let names = self.designs.get(design)?;
                let state = &names.states.get(state)?.key;
                of_design(design, Some(format!("state:{}/{state}", names.key)))
            }
            Meant::Printing(design, printing) => {
                let names = self.designs.get(design)?;
                let printing = &names.printings.get(printing)?.key;
                of_design(design, Some(format!("printing:{}/{printing}", names.key)))
            }
            Meant::Impression(design, number) => {
                let names = self.designs.get(design)?;
                of_design(design, Some(format!("impression:{}.{number}", names.key)))
            }
            Meant::Holder(at) => {
                let key = &self.holders.get(at)?.key;
                self.stands.get(&format!("holder:{key}"))
            }
            _ => None,
        }
    }

    /// The name of a record by which a reader is sent on: "OP 15", "OP 15.2", "Harbour Museum".
    #[must_use]
    pub fn short_name(&self, record: &Link) -> String {
        let cited = |key: &Key| {
            let design = self.designs.iter().find(|design| design.key == *key)?;
            Some(self.cited(design))
        };
        let name = match record {
            Link::Design(key) => cited(key),
            Link::Impression(key) => {
                cited(&key.design).map(|design| format!("{design}.{}", key.number))
            }
            Link::Holder(key) => {
                let holder = self.holders.iter().find(|holder| holder.key == *key);
                holder.and_then(|holder| holder.names.first().cloned())
            }
            _ => None,
        };
        name.unwrap_or_else(|| record.key().to_string())
    }

    /// The absolute address of the page of a record.
    #[must_use]
    pub fn page_of(&self, record: &Link) -> String {
        format!("{}/{}/{}/", self.address, record.kind(), record.key())
    }

    /// What a reading leads to.
    #[must_use]
    pub fn target(&self, meant: Meant) -> Option<Target> {
        let target = |kind, key: &dyn ToString, path: String, label: String| Target {
            kind,
            key: key.to_string(),
            state: None,
            printing: None,
            address: format!("{}/{path}", self.address),
            label,
        };
        let named = |kind, folder: &str, names: &[Names], at: usize| {
            let names = names.get(at)?;
            let label = names.names.first().cloned().unwrap_or_default();
            let label = match &names.town {
                Some(town) if !label.contains(town.as_str()) => format!("{label}, {town}"),
                _ => label,
            };
            let path = format!("{folder}/{}/", names.key);
            Some(target(kind, &names.key, path, label))
        };
        match meant {
            Meant::Design(design) => {
                let design = self.designs.get(design)?;
                let title = design.titles.first();
                let label = match title {
                    Some(title) => format!("{}, {title}", self.cited(design)),
                    None => self.cited(design),
                };
                Some(target("design", &design.key, path_of(design), label))
            }
            Meant::State(design, state) => {
                let design = self.designs.get(design)?;
                let state = design.states.get(state)?;
                let path = format!("{}#state-{}", path_of(design), state.key);
                let of = design.states.iter().filter(|s| s.place.is_some()).count();
                let label = match state.place {
                    Some(_) if of == 1 => {
                        format!("{}, {}", self.cited(design), self.words.only_state)
                    }
                    Some(place) => {
                        let of = roman(u32::try_from(of).unwrap_or(u32::MAX));
                        format!("{} {}/{of}", self.cited(design), roman(place))
                    }
                    None => format!("{} ({})", self.cited(design), state.key),
                };
                Some(Target {
                    state: Some(state.key.to_string()),
                    ..target("design", &design.key, path, label)
                })
            }
            Meant::Printing(design, printing) => {
                let design = self.designs.get(design)?;
                let printing = design.printings.get(printing)?;
                let path = format!("{}#printing-{}", path_of(design), printing.key);
                let name = printing.name.as_deref();
                let name = name.unwrap_or(printing.key.as_str());
                let label = format!("{} ({name})", self.cited(design));
                Some(Target {
                    printing: Some(printing.key.to_string()),
                    ..target("design", &design.key, path, label)
                })
            }
            Meant::Impression(design, number) => {
                let design = self.designs.get(design)?;
                let key = format!("{}.{number}", design.key);
                let path = format!("impression/{key}/");
                let label = format!("{}.{number}", self.cited(design));
                Some(target("impression", &key, path, label))
            }
            Meant::Holder(at) => named("holder", "holder", &self.holders, at),
            Meant::Person(at) => named("person", "person", &self.people, at),
            Meant::Mark(at) => named("mark", "mark", &self.marks, at),
            Meant::Exhibition(at) => named("exhibition", "exhibition", &self.exhibitions, at),
            Meant::Document(at) => named("document", "document", &self.documents, at),
            Meant::Series(at) => named("series", "series", &self.series, at),
            Meant::Work(at) => {
                let work = self.works.get(at)?;
                let path = format!("lit/{}/", work.key);
                Some(target("literature", &work.key, path, work.short.clone()))
            }
            Meant::Row(work, row) => {
                let work = self.works.get(work)?;
                let row = work.rows.get(row)?;
                let path = format!("lit/{}/#{}", work.key, encoded(&row.fragment));
                let label = format!("{}, {}", work.short, row.cited());
                Some(target("literature", &work.key, path, label))
            }
        }
    }

    /// "OP 7".
    fn cited(&self, design: &DesignNames) -> String {
        format!("{} {}", self.siglum, design.number)
    }
}

fn path_of(design: &DesignNames) -> String {
    format!("design/{}/", design.key)
}

/// A fragment as it stands in an address (RFC 3986): what is not ASCII in percent-encoded UTF-8.
fn encoded(fragment: &str) -> String {
    percent_encoding::utf8_percent_encode(fragment, percent_encoding::CONTROLS).to_string()
}
