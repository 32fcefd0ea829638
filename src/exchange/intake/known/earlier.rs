//! References to earlier catalogues, resolved through the concordance.
//!
//! In: a number and state as a cell gives them ([`CatalogueSaid`]). Out: [`CitedEntry`]: the work, and every design, state
//! and printing of this catalogue that the number may mean. Nothing is chosen silently: several are all given, and what was
//! taken for granted is told.
//!
//! The work is the one that the author, the title or the key names; else the only one whose author begins with the
//! abbreviation; without an author the only one that numbers designs; else the only one that has a number with such a
//! letter ("W 4"). Definitions: `docs/definitions.md, "References"` and `"Older numbers"`.

use super::names::CatalogueNames;
use super::state_pairs::StatePairs;
use crate::exchange::intake::proposal::EarlierOpinion;
use crate::exchange::intake::reading::states::CatalogueSaid;
use crate::model::key::Key;
use crate::model::literature::Relation;
use crate::study::resolve::names::{EarlierRow, OwnReading};
use crate::study::search::words::number_parts;

/// What a reference to an earlier catalogue means.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct CitedEntry {
    /// The work, where it is known which.
    pub work: Option<Key>,
    /// The reference in words: "Dreyloft 1936, 12".
    pub said: String,
    /// The number of the design, or of a state that is numbered like designs, as its parts.
    pub number: Option<String>,
    /// The designs that the number may mean, in readers' order.
    pub designs: Vec<Key>,
    /// The states and printings that the number itself means.
    pub parts: Vec<CitedPart>,
    /// Whether the row says that the work does not have it.
    pub is_not_in: bool,
    /// What is doubtful, in words.
    pub doubts: Vec<String>,
}

/// A state or printing that has a number of its own in an earlier catalogue.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct CitedPart {
    /// The design.
    pub design: Key,
    /// The state.
    pub state: Option<Key>,
    /// The printing.
    pub printing: Option<Key>,
}

/// A work with the number that a reference gives in it.
struct Candidate {
    work: usize,
    number: Vec<String>,
    /// Whether the author was taken for an abbreviation.
    is_abbreviated: bool,
}

impl CatalogueNames<'_> {
    /// What a reference means.
    #[must_use]
    pub fn cited(&self, said: &CatalogueSaid) -> CitedEntry {
        let author = said.author.as_deref().map(number_parts).unwrap_or_default();
        let number = said.number.as_deref().map(number_parts).unwrap_or_default();
        let mut entry = CitedEntry {
            is_not_in: said.is_not_in,
            said: in_words(said),
            ..CitedEntry::default()
        };
        let mut candidates = self.by_name(&author, &number);
        if candidates.is_empty() {
            candidates = self.by_abbreviation(said.author.as_deref(), &author, &number);
            candidates.extend(self.by_number(&author, &number));
        }
        self.settle(&candidates, said, &mut entry);
        entry
    }

    /// The works of whose names the author is one, with the rest of the author before the number: "Ambry W", 4.
    fn by_name(&self, author: &[String], number: &[String]) -> Vec<Candidate> {
        for end in (1..=author.len()).rev() {
            let (name, rest) = author.split_at(end);
            let works = self.lookup.works.get(&name.join("."));
            let works: Vec<usize> = works.into_iter().flatten().copied().collect();
            if !works.is_empty() {
                let number = [rest, number].concat();
                let candidate = |work| Candidate {
                    work,
                    number: number.clone(),
                    is_abbreviated: false,
                };
                return works.into_iter().map(candidate).collect();
            }
        }
        Vec::new()
    }

    /// The works with numbers whose first author's name begins with the abbreviation: "D.", "Dreyl.".
    fn by_abbreviation(
        &self,
        written: Option<&str>,
        author: &[String],
        number: &[String],
    ) -> Vec<Candidate> {
        let Some((short, rest)) = author.split_first() else {
            return Vec::new();
        };
        let written = written.unwrap_or_default();
        let is_short = short.chars().count() <= 2 || written.contains('.');
        if !is_short {
            return Vec::new();
        }
        let begins = |work: &&usize| {
            let author = self
                .references
                .works
                .get(**work)
                .and_then(|w| w.author.as_deref());
            let author = author.map(number_parts).unwrap_or_default();
            author
                .first()
                .is_some_and(|name| name.starts_with(short.as_str()))
        };
        let number = [rest, number].concat();
        let works = self.numbered.iter().filter(begins);
        let candidates = works.map(|work| Candidate {
            work: *work,
            number: number.clone(),
            is_abbreviated: true,
        });
        candidates.collect()
    }

    /// The works that may be meant where no author is named: the only one with numbers, else those that have the number.
    fn by_number(&self, author: &[String], number: &[String]) -> Vec<Candidate> {
        let whole = [author, number].concat();
        let candidate = |work: &usize| Candidate {
            work: *work,
            number: whole.clone(),
            is_abbreviated: false,
        };
        if let ([only], true) = (&self.numbered[..], author.is_empty()) {
            return vec![candidate(only)];
        }
        let has = |work: &&usize| self.row(**work, &whole).is_some();
        self.numbered.iter().filter(has).map(candidate).collect()
    }

    fn row(&self, work: usize, number: &[String]) -> Option<&EarlierRow> {
        let row = self.lookup.rows.get(work)?.get(&number.join("."))?;
        self.references.works.get(work)?.rows.get(*row)
    }

    /// Takes the only candidate, or the only one that has the number.
    fn settle(&self, candidates: &[Candidate], said: &CatalogueSaid, entry: &mut CitedEntry) {
        let is_named = said.author.is_some();
        let has_row = |c: &Candidate| self.row(c.work, &c.number).is_some();
        let fitting: Vec<&Candidate> = candidates.iter().filter(|c| has_row(c)).collect();
        let numbered: Vec<&Candidate> = candidates
            .iter()
            .filter(|c| self.numbered.contains(&c.work))
            .collect();
        let chosen = match (&fitting[..], &numbered[..], candidates) {
            ([one], _, _) | ([], [one], _) => *one,
            ([], [], [one]) => one,
            ([], [], []) => {
                entry.doubts.push(if is_named {
                    format!(
                        "\"{}\": no work of the literature has that name",
                        entry.said
                    )
                } else {
                    format!("\"{}\": it is not said after which catalogue", entry.said)
                });
                return;
            }
            (several, others, _) => {
                let several = if several.is_empty() { others } else { several };
                let works: Vec<&str> = several.iter().map(|c| self.short(c.work)).collect();
                let works = if works.is_empty() {
                    "several works".to_owned()
                } else {
                    works.join(" or ")
                };
                entry
                    .doubts
                    .push(format!("\"{}\" may be of {works}", entry.said));
                // The designs of all: the title of the row may tell which of them it is.
                let rows = several.iter().filter(|_| is_named);
                for row in rows.filter_map(|c| self.row(c.work, &c.number)) {
                    self.add_row(row, entry);
                }
                entry.parts.clear();
                return;
            }
        };
        if chosen.is_abbreviated {
            let author = said.author.as_deref().unwrap_or_default();
            let work = self.short(chosen.work);
            entry
                .doubts
                .push(format!("\"{author}\" was taken for {work}"));
        }
        let is_lettered = chosen
            .number
            .iter()
            .any(|part| part.chars().any(char::is_alphabetic));
        if !is_named && self.numbered.len() > 1 && !is_lettered {
            // Of several catalogues one may have the figure only because the others are not yet in the concordance.
            entry.doubts.push(format!(
                "\"{}\": it is not said after which catalogue",
                entry.said
            ));
            return;
        }
        let Some(work) = self.references.works.get(chosen.work) else {
            return;
        };
        entry.work = Some(work.key.clone());
        let cited = said.number.is_some().then(|| chosen.number.join(" "));
        entry.said = match &cited {
            Some(number) => format!("{}, {}", work.short, number.to_uppercase()),
            None => work.short.clone(),
        };
        entry.number = cited;
        if entry.number.is_none() {
            return;
        }
        match self.row(chosen.work, &chosen.number) {
            Some(row) => self.add_row(row, entry),
            None => entry.doubts.push(format!(
                "{}: the concordance has no such number",
                entry.said
            )),
        }
    }

    fn add_row(&self, row: &EarlierRow, entry: &mut CitedEntry) {
        for ours in &row.ours {
            let Some(design) = self.references.designs.get(ours.design) else {
                continue;
            };
            if ours.relation == Relation::Error {
                let words = self.in_words(&design.key);
                entry
                    .doubts
                    .push(format!("{} is an error, recorded with {words}", entry.said));
            }
            if !entry.designs.contains(&design.key) {
                entry.designs.push(design.key.clone());
            }
            let OwnReading {
                state, printing, ..
            } = *ours;
            if state.is_some() || printing.is_some() {
                let state = state.and_then(|at| design.states.get(at));
                let printing = printing.and_then(|at| design.printings.get(at));
                entry.parts.push(CitedPart {
                    design: design.key.clone(),
                    state: state.map(|state| state.key.clone()),
                    printing: printing.map(|printing| printing.key.clone()),
                });
            }
        }
        if entry.designs.len() > 1 {
            let designs: Vec<String> = entry.designs.iter().map(|key| self.in_words(key)).collect();
            entry
                .doubts
                .push(format!("{} is {} here", entry.said, designs.join(" or ")));
        }
    }

    /// What a reference says of the state or printing of a sheet of a design, and what is doubtful about it. `None` where it
    /// says nothing of either, or it is not known after which work.
    #[must_use]
    pub fn opinion(
        &self,
        design: &Key,
        said: &CatalogueSaid,
        entry: &CitedEntry,
    ) -> (Option<EarlierOpinion>, Vec<String>) {
        let mut doubts = Vec::new();
        let parts = entry.parts.iter().filter(|part| part.design == *design);
        let Some(after) = entry.work.clone() else {
            return (None, doubts);
        };
        let Some(state) = &said.state else {
            // The number itself is that of a state or printing.
            let mut opinion = EarlierOpinion {
                said: entry.number.clone().unwrap_or_default().to_uppercase(),
                after,
                states: Vec::new(),
                printings: Vec::new(),
            };
            for part in parts {
                opinion.states.extend(part.state.clone());
                opinion.printings.extend(part.printing.clone());
            }
            let is_nothing = opinion.states.is_empty() && opinion.printings.is_empty();
            return ((!is_nothing).then_some(opinion), doubts);
        };
        let mut opinion = EarlierOpinion {
            said: state.written(),
            after,
            states: Vec::new(),
            printings: Vec::new(),
        };
        let Some(recorded) = self.catalogue.designs.get(design) else {
            return (Some(opinion), doubts);
        };
        let work = self.catalogue.literature.get(&opinion.after);
        let short = work.map_or(opinion.after.as_str(), |work| work.short.as_str());
        let pairs = StatePairs::of(recorded, &opinion.after, work.and_then(|work| work.year));
        let words = self.in_words(design);
        if pairs.is_empty() {
            doubts.push(format!(
                "{short} {}: the concordance has no state of {words}",
                opinion.said
            ));
            return (Some(opinion), doubts);
        }
        let meant = pairs.meant(state);
        let many = |what: &str, keys: &[Key]| {
            let keys: Vec<String> = keys
                .iter()
                .map(|key| self.state_in_words(design, key))
                .collect();
            format!(
                "{short} {} is {what} {} here",
                opinion.said,
                keys.join(" or ")
            )
        };
        match &meant.states[..] {
            [] | [_] => {}
            several => doubts.push(many("state", several)),
        }
        for number in &meant.unknown {
            let number = crate::study::numerals::roman(*number);
            let message = if pairs.errors.contains(&from(&number)) {
                format!("{short} {number} of {words} is recorded as an error")
            } else {
                format!("{short} has no state {number} of {words} in the concordance")
            };
            doubts.push(message);
        }
        opinion.states = meant.states;
        opinion.printings = meant.printings;
        (Some(opinion), doubts)
    }

    /// A state by its numeral: "iii".
    fn state_in_words(&self, design: &Key, state: &Key) -> String {
        let names = self.named(design).map(|(_, names, _)| names);
        let states = names.into_iter().flat_map(|names| &names.states);
        let place = states
            .into_iter()
            .find(|s| s.key == *state)
            .and_then(|s| s.place);
        place.map_or_else(|| format!("`{state}`"), crate::study::numerals::roman)
    }
}

fn from(roman: &str) -> u32 {
    crate::study::numerals::from_roman(roman).unwrap_or_default()
}

/// A reference as a cell gives it: "Dreyloft 12 ii/iii".
fn in_words(said: &CatalogueSaid) -> String {
    let state = said
        .state
        .as_ref()
        .map(crate::exchange::intake::reading::states::SaidState::written);
    let parts = [said.author.clone(), said.number.clone(), state];
    parts.into_iter().flatten().collect::<Vec<_>>().join(" ")
}
