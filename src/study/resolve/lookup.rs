//! The names by key, made once for a catalogue, so that each reference is looked up and not searched for.

use std::collections::{BTreeMap, HashMap};

use super::names::{Names, References};
use super::reading::{Meant, Rank, Why};
use crate::search::words::number_parts;

/// The names of a catalogue by their keys.
#[derive(Clone, Debug, Default)]
pub struct Lookup {
    /// The designs by number.
    pub numbers: HashMap<String, Vec<usize>>,
    /// The designs by number in an earlier edition, with that.
    pub former_numbers: HashMap<String, Vec<(usize, String)>>,
    /// The designs by key, former keys too.
    pub keys: HashMap<String, Vec<Keyed>>,
    /// The other records by kind and key.
    pub records: HashMap<(&'static str, String), Vec<(Meant, Why)>>,
    /// Everything that has a title or name, by that.
    pub names: BTreeMap<String, Vec<Named>>,
    /// The works by the names under which their numbers are cited.
    pub works: HashMap<String, Vec<usize>>,
    /// The numbers of each work.
    pub rows: Vec<HashMap<String, usize>>,
    /// The numbers of all works that tell which work they belong to: those with a letter.
    pub lone_rows: HashMap<String, Vec<(usize, usize)>>,
    /// The states by key alone.
    pub states: HashMap<String, Vec<(usize, usize)>>,
    /// The words of each holder's names and place.
    pub holders: Vec<Vec<String>>,
}

/// A design by a key.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Keyed {
    /// The design.
    pub design: usize,
    /// Whether it no longer has this key.
    pub is_former: bool,
}

impl Keyed {
    /// How a design that has or had this key was found.
    #[must_use]
    pub fn why(self) -> Why {
        if self.is_former {
            Why::FormerKey
        } else {
            Why::Key
        }
    }
}

/// Something that has a title or name.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Named {
    /// What.
    pub meant: Meant,
    /// How closely the name fits.
    pub rank: Rank,
    /// What the name is.
    pub why: Why,
}

/// The key of a whole name.
#[must_use]
pub fn name_key(text: &str) -> String {
    number_parts(text).join(".")
}

impl Lookup {
    /// The names of a catalogue.
    #[must_use]
    pub fn of(references: &References) -> Lookup {
        let mut lookup = Lookup::default();
        for (at, design) in references.designs.iter().enumerate() {
            lookup
                .numbers
                .entry(name_key(&design.number))
                .or_default()
                .push(at);
            for former in &design.formerly {
                let numbers = lookup.former_numbers.entry(name_key(&former.number));
                numbers.or_default().push((at, former.edition.clone()));
            }
            let former = design.was.iter().map(|key| (key.as_str(), true));
            for (key, is_former) in std::iter::once((design.key.as_str(), false)).chain(former) {
                lookup.keys.entry(name_key(key)).or_default().push(Keyed {
                    design: at,
                    is_former,
                });
            }
            let meant = Meant::Design(at);
            lookup.name(&design.titles, meant, Rank::Name, &Why::Title);
            lookup.name(&design.former, meant, Rank::FormerName, &Why::FormerTitle);
            lookup.name(&design.ids, meant, Rank::Name, &Why::Elsewhere);
            for (state, names) in design.states.iter().enumerate() {
                let key = name_key(names.key.as_str());
                lookup.states.entry(key).or_default().push((at, state));
            }
        }
        lookup.kind("holder", &references.holders, Meant::Holder);
        lookup.kind("person", &references.people, Meant::Person);
        lookup.kind("mark", &references.marks, Meant::Mark);
        lookup.kind("exhibition", &references.exhibitions, Meant::Exhibition);
        lookup.kind("document", &references.documents, Meant::Document);
        lookup.kind("series", &references.series, Meant::Series);
        for holder in &references.holders {
            let texts = holder.names.iter().chain(&holder.former);
            let texts = texts.chain(&holder.town).chain(&holder.isil);
            let mut words: Vec<String> = texts.flat_map(|text| number_parts(text)).collect();
            words.extend(number_parts(holder.key.as_str()));
            lookup.holders.push(words);
        }
        lookup.works_of(references);
        lookup
    }

    fn kind(&mut self, kind: &'static str, names: &[Names], meant: fn(usize) -> Meant) {
        for (at, names) in names.iter().enumerate() {
            let meant = meant(at);
            self.name(&names.names, meant, Rank::Name, &Why::Name);
            self.name(&names.former, meant, Rank::FormerName, &Why::FormerName);
            self.name(names.isil.as_slice(), meant, Rank::Name, &Why::Isil);
            self.name(&names.ids, meant, Rank::Name, &Why::Elsewhere);
            self.record(kind, names.key.as_str(), &names.was, meant);
        }
    }

    fn works_of(&mut self, references: &References) {
        for (at, work) in references.works.iter().enumerate() {
            let meant = Meant::Work(at);
            let names = [work.short.clone(), work.title.clone()];
            self.name(&names, meant, Rank::Name, &Why::Name);
            self.record("lit", work.key.as_str(), &work.was, meant);
            let main_title = work.title.split(':').next().unwrap_or_default();
            let keys = [
                work.short.as_str(),
                &work.title,
                main_title,
                work.key.as_str(),
            ];
            let keys = keys.into_iter().chain(work.author.as_deref());
            for key in keys.map(name_key).filter(|key| !key.is_empty()) {
                let works = self.works.entry(key).or_default();
                if !works.contains(&at) {
                    works.push(at);
                }
            }
            let mut rows = HashMap::new();
            for (row, number) in work.rows.iter().enumerate() {
                let key = name_key(&number.cited());
                let has_letter = |text: &String| text.chars().any(char::is_alphabetic);
                if number.number.as_ref().is_some_and(has_letter) {
                    self.lone_rows
                        .entry(key.clone())
                        .or_default()
                        .push((at, row));
                }
                rows.insert(key, row);
            }
            self.rows.push(rows);
        }
    }

    fn name(&mut self, names: &[String], meant: Meant, rank: Rank, why: &Why) {
        for key in names.iter().map(|name| name_key(name)) {
            if !key.is_empty() {
                let why = why.clone();
                self.names
                    .entry(key)
                    .or_default()
                    .push(Named { meant, rank, why });
            }
        }
    }

    fn record(&mut self, kind: &'static str, key: &str, was: &[String], meant: Meant) {
        let former = was.iter().map(|key| (key.as_str(), Why::FormerKey));
        for (key, why) in std::iter::once((key, Why::Key)).chain(former) {
            let records = self.records.entry((kind, name_key(key))).or_default();
            records.push((meant, why));
        }
    }
}
