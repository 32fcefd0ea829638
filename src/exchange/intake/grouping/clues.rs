//! What a row says of its design: numbers and keys that name one, its title, size, date, series and makers.
//!
//! In: a row. Out: [`Clues`], made once a row and compared many times. Cells repeat, so each distinct name, reference, title
//! and list of makers is resolved once, and rows share what it tells ([`ClueReader`]).

use std::collections::{BTreeSet, HashMap};
use std::rc::Rc;
use std::sync::Arc;

use super::extent::Extent;
use super::series_names::SeriesNames;
use super::titles::title_key;
use crate::exchange::intake::columns::Holds;
use crate::exchange::intake::facts::{Facts, GivenMaker};
use crate::exchange::intake::known::{CatalogueNames, CitedEntry};
use crate::exchange::intake::proposal::{NamedParts, ProposedRow};
use crate::exchange::intake::reading::dates::Act;
use crate::exchange::intake::reading::states::CatalogueSaid;
use crate::model::catalogue::Catalogue;
use crate::model::edtf::Date;
use crate::model::key::Key;
use crate::study::search::words::{number_key, number_parts};

/// What a row says of its design.
#[derive(Clone, Debug, Default)]
pub(super) struct Clues {
    /// The designs that each number or key names, with the reason in words, the row's own first.
    pub named: Vec<Rc<NamedBy>>,
    /// Numbers that name no design yet, with their words: by whom, and which.
    pub numbers: Vec<Rc<NewNumber>>,
    /// The title as it is compared.
    pub title: Option<Rc<str>>,
    /// The size of what was printed.
    pub extent: Option<Extent>,
    /// The first and last year of the design.
    pub years: Option<(i64, i64)>,
    /// The series, folded.
    pub series: Option<String>,
    /// The words of the names of those who made the design.
    pub makers: Rc<BTreeSet<String>>,
    /// What is doubtful, in words.
    pub doubts: Vec<String>,
}

/// Designs that a number or key names.
#[derive(Clone, Debug)]
pub(super) struct NamedBy {
    pub designs: Vec<Key>,
    pub why: String,
}

/// A number that no design of the catalogue has.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct NewNumber {
    /// Whose number: the author, folded; empty for a number of this catalogue.
    pub of: String,
    /// The number, folded.
    pub number: String,
    /// The two in words.
    pub said: String,
}

/// Reads the clues of rows.
pub(super) struct ClueReader<'c> {
    names: CatalogueNames<'c>,
    series: SeriesNames,
    artist: BTreeSet<String>,
    artist_name: String,
    designs: HashMap<String, Clue>,
    cited: CitedEntries,
    titles: HashMap<String, Option<Rc<str>>>,
    makers: HashMap<Vec<Arc<GivenMaker>>, MakersClue>,
}

/// What a number or name tells.
#[derive(Clone, Default)]
struct Clue {
    named: Option<Rc<NamedBy>>,
    number: Option<Rc<NewNumber>>,
    doubts: Vec<String>,
}

/// What makers tell.
#[derive(Clone)]
struct MakersClue {
    /// The words of the names of those who made the design.
    words: Rc<BTreeSet<String>>,
    doubt: Option<String>,
}

impl Clues {
    fn add(&mut self, clue: &Clue) {
        self.named.extend(clue.named.clone());
        self.numbers.extend(clue.number.clone());
        self.doubts.extend(clue.doubts.iter().cloned());
    }
}

/// What each reference means that was cited, and what it tells of the design, by the reference without its state.
#[derive(Default)]
struct CitedEntries(HashMap<CatalogueSaid, (CitedEntry, Clue)>);

impl CitedEntries {
    fn entry(&mut self, names: &CatalogueNames<'_>, said: &CatalogueSaid) -> &(CitedEntry, Clue) {
        let reference = CatalogueSaid {
            author: said.author.clone(),
            number: said.number.clone(),
            state: None,
            is_not_in: said.is_not_in,
        };
        self.0.entry(reference).or_insert_with_key(|reference| {
            let entry = names.cited(reference);
            let clue = reference_clue(names, reference, &entry);
            (entry, clue)
        })
    }
}

impl<'c> ClueReader<'c> {
    pub(super) fn new(names: CatalogueNames<'c>, catalogue: &Catalogue) -> ClueReader<'c> {
        let artist = catalogue.settings.artist.as_ref();
        let person = artist.and_then(|key| catalogue.people.get(&key.value));
        let forms = person.into_iter().flat_map(|person| {
            let others = person.names.iter().map(|name| name.text.value.as_str());
            std::iter::once(person.name.value.as_str()).chain(others)
        });
        ClueReader {
            artist: forms.flat_map(words_of_name).collect(),
            artist_name: person.map_or(String::new(), |person| person.name.value.clone()),
            series: SeriesNames::of(catalogue),
            names,
            designs: HashMap::new(),
            cited: CitedEntries::default(),
            titles: HashMap::new(),
            makers: HashMap::new(),
        }
    }

    pub(super) fn names(&self) -> &CatalogueNames<'c> {
        &self.names
    }

    pub(super) fn clues(&mut self, row: &ProposedRow) -> Clues {
        let facts = &row.facts;
        let mut clues = Clues {
            extent: Extent::of_row(facts),
            years: years(facts),
            series: self.series.key_of(facts),
            ..Clues::default()
        };
        clues.title = facts
            .title
            .as_ref()
            .and_then(|title| self.title(&title.text));
        let impression = facts.texts.get(Holds::Impression);
        if let Some(text) = facts.own.design.as_deref().or(impression) {
            clues.add(self.own(text));
        }
        for said in &facts.references {
            clues.add(&self.cited.entry(&self.names, said).1);
        }
        if !facts.makers.is_empty() {
            let makers = self.makers(&facts.makers);
            clues.makers = Rc::clone(&makers.words);
            clues.doubts.extend(makers.doubt.clone());
        }
        clues
    }

    fn title(&mut self, title: &str) -> Option<Rc<str>> {
        if let Some(known) = self.titles.get(title) {
            return known.clone();
        }
        let key: Option<Rc<str>> = title_key(title).map(Rc::from);
        self.titles.insert(title.to_owned(), key.clone());
        key
    }

    fn own(&mut self, text: &str) -> &Clue {
        if !self.designs.contains_key(text) {
            let clue = own_clue(&self.names, text);
            self.designs.insert(text.to_owned(), clue);
        }
        &self.designs[text]
    }

    fn makers(&mut self, makers: &[Arc<GivenMaker>]) -> &MakersClue {
        if !self.makers.contains_key(makers) {
            let clue = self.makers_clue(makers);
            self.makers.insert(makers.to_vec(), clue);
        }
        &self.makers[makers]
    }

    fn makers_clue(&self, makers: &[Arc<GivenMaker>]) -> MakersClue {
        let makes_design = |role: &Key| ["artist", "designer", "after"].contains(&role.as_str());
        let designers: Vec<&str> = makers
            .iter()
            .filter(|maker| makes_design(&maker.role))
            .map(|maker| maker.name.as_str())
            .collect();
        let words: BTreeSet<String> = designers
            .iter()
            .flat_map(|name| words_of_name(name))
            .collect();
        let is_other =
            !self.artist.is_empty() && !words.is_empty() && words.is_disjoint(&self.artist);
        let doubt = is_other.then(|| {
            format!(
                "the maker is {}, not {}, the artist of this catalogue",
                designers.join(", "),
                self.artist_name
            )
        });
        MakersClue {
            words: Rc::new(words),
            doubt,
        }
    }

    /// The parts of a recorded design that a row names, with what is doubtful about them.
    pub(super) fn parts(&mut self, design: &Key, facts: &Facts) -> (NamedParts, Vec<String>) {
        let ClueReader { names, cited, .. } = self;
        names.parts_and_doubts(design, facts, |said| cited.entry(names, said).0.clone())
    }
}

/// What a number or key in this catalogue's own terms tells.
fn own_clue(names: &CatalogueNames<'_>, text: &str) -> Clue {
    let named = names.design(text);
    let mut clue = Clue {
        doubts: named.doubts,
        ..Clue::default()
    };
    if named.keys.is_empty() {
        let number = number_key(text).map(|number| NewNumber {
            of: String::new(),
            number,
            said: format!("no. {}", text.trim()),
        });
        clue.number = number.map(Rc::new);
        clue.doubts
            .push(format!("the catalogue has no design \"{}\"", text.trim()));
    } else {
        let designs: Vec<String> = named.keys.iter().map(|key| names.in_words(key)).collect();
        clue.named = Some(Rc::new(NamedBy {
            designs: named.keys,
            why: format!("the rows name {}", designs.join(" or ")),
        }));
    }
    clue
}

/// What a reference to an earlier catalogue tells of the design.
fn reference_clue(names: &CatalogueNames<'_>, said: &CatalogueSaid, entry: &CitedEntry) -> Clue {
    if said.number.is_none() || entry.is_not_in {
        // A state alone names no design; what is doubtful about it is told with the state.
        return Clue::default();
    }
    let mut clue = Clue {
        doubts: entry.doubts.clone(),
        ..Clue::default()
    };
    if entry.designs.is_empty() {
        let author = said.author.as_deref().map(number_parts).unwrap_or_default();
        let of = entry
            .work
            .as_ref()
            .map_or_else(|| author.join("."), Key::to_string);
        let number = entry.number.as_deref().or(said.number.as_deref());
        // A number that is not said after which catalogue names nothing.
        let number = number.and_then(number_key).filter(|_| !of.is_empty());
        let number = number.map(|number| NewNumber {
            of,
            number,
            said: entry.said.clone(),
        });
        clue.number = number.map(Rc::new);
    } else {
        let designs = entry.designs.iter().map(|key| names.in_words(key));
        let designs: Vec<String> = designs.collect();
        clue.named = Some(Rc::new(NamedBy {
            why: format!(
                "{} is {} in the concordance",
                entry.said,
                designs.join(" or ")
            ),
            designs: entry.designs.clone(),
        }));
    }
    clue
}

/// The words of a name that tell people apart: no initials, no numbers.
fn words_of_name(name: &str) -> Vec<String> {
    let parts = number_parts(name);
    let is_word =
        |part: &String| part.chars().nth(2).is_some() && part.chars().all(char::is_alphabetic);
    parts.into_iter().filter(is_word).collect()
}

/// The first and last year that the design is said to be of.
fn years(facts: &Facts) -> Option<(i64, i64)> {
    let date: &Date = facts.date_of(Act::Created)?.date()?;
    Some((date.first_named()?.year, date.last_named()?.year))
}
