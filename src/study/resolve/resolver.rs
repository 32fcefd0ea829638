//! The readings of a reference.
//!
//! In: the names of a catalogue, and a text. Out: [`Reading`]s, the likeliest first; none where the text names nothing.
//! The names are put in order once ([`Lookup`]), so that each reference costs a few look-ups, however large the
//! catalogue. Definition: `docs/definitions.md, "References"`. The theme's `references.js` does the same.
//!
//! ```
//! # mod literal { include!(concat!(env!("CARGO_MANIFEST_DIR"), "/tests/doc/catalogue.rs")); }
//! # use literal::catalogue;
//! # use keyblock::study::{Studies, resolve::{names::{QueryWords, References}, resolver::Resolver}};
//! let catalogue = catalogue(r#"
//! -- records/designs/14/design.toml
//! titles = [{ text = "The Ferry" }]
//! states = [{ key = "dark" }, { key = "moonlit" }]
//! "#);
//! let studies = Studies::of(&catalogue);
//! let names = References::of(&catalogue, &studies.order, &studies.concordance, &studies.joined, QueryWords::default());
//! let resolver = Resolver::new(names);
//! let readings = resolver.resolve("14 ii/ii");
//! let target = resolver.references().target(readings[0].meant).unwrap();
//! assert!(target.address.ends_with("/design/14/#state-moonlit"));
//! ```

use std::ops::Bound;

use super::asked::{Asked, Reader};
use super::lookup::{Keyed, Lookup};
use super::names::{Accession, EarlierRow, NumberKind, References};
use super::part::{After, parts_of};
use super::reading::{Meant, Rank, Reading, Why};
use super::settle::settle;
use crate::model::certainty::Certainty;
use crate::model::literature::Relation;
use crate::study::numerals::{from_roman, roman};
use crate::study::search::words::key_of_parts;

/// The most titles and names that may begin with a text: with more, the text is no reference.
const MOST_BEGINNINGS: usize = 20;

/// Reads the references to a catalogue.
#[derive(Clone, Debug)]
pub struct Resolver {
    references: References,
    reader: Reader,
    lookup: Lookup,
}

impl Resolver {
    /// A resolver for the names of a catalogue.
    #[must_use]
    pub fn new(references: References) -> Resolver {
        Resolver {
            reader: Reader::new(&references),
            lookup: Lookup::of(&references),
            references,
        }
    }

    /// The names.
    #[must_use]
    pub fn references(&self) -> &References {
        &self.references
    }

    /// The readings of a reference, the likeliest first.
    #[must_use]
    pub fn resolve(&self, text: &str) -> Vec<Reading> {
        let asked = self.reader.read(text);
        let mut readings = Vec::new();
        if let Some((kind, parts)) = &asked.link {
            self.link(kind, parts, &mut readings);
        }
        if readings.is_empty() && !asked.all.is_empty() {
            self.ours(&asked, &mut readings);
            self.earlier(&asked, &mut readings);
            self.accession(&asked, &mut readings);
            self.named(&asked, &mut readings);
        }
        if readings.is_empty() && !asked.all.is_empty() {
            self.not_there(&asked, &mut readings);
            self.beginning(&asked, &mut readings);
        }
        settle(readings)
    }

    /// A link to a record, or an address of its page or of a place on it.
    fn link(&self, kind: &'static str, parts: &[String], readings: &mut Vec<Reading>) {
        let certain = |meant, why| Reading::certain(meant, Rank::Address, why);
        match kind {
            "design" => {
                for (keyed, rest) in self.designs_by_key(parts) {
                    let why = why_of_key(keyed);
                    let rest = match rest.first().map(String::as_str) {
                        Some("state" | "printing") => &rest[1..],
                        _ => rest,
                    };
                    let design = (keyed.design, &self.references.designs[keyed.design]);
                    let found = parts_of(&self.reader, design, After::Title, rest, None);
                    let part = found.into_iter().next();
                    // Any other page of the design.
                    let (meant, of_part) = part.unwrap_or((Meant::Design(keyed.design), Why::Key));
                    let is_former = of_part == Why::FormerKey;
                    readings.push(certain(meant, if is_former { of_part } else { why }));
                }
            }
            "impression" => {
                let Some((number, key)) = parts.split_last() else {
                    return;
                };
                for keyed in self.lookup.keys.get(&key.join(".")).into_iter().flatten() {
                    let design = &self.references.designs[keyed.design];
                    let number = number.parse().ok();
                    let number = number.filter(|n| design.impressions.contains(n));
                    if let Some(number) = number {
                        let meant = Meant::Impression(keyed.design, number);
                        readings.push(self.on_its_page(certain(meant, why_of_key(*keyed))));
                    }
                }
            }
            _ => {
                for end in 1..=parts.len() {
                    let (key, rest) = parts.split_at(end);
                    let found = self.lookup.records.get(&(kind, key.join(".")));
                    for (meant, why) in found.into_iter().flatten() {
                        let place = match (meant, rest) {
                            (meant, []) => Some(*meant),
                            (Meant::Work(work), rest) => self.lookup.rows[*work]
                                .get(&rest.join("."))
                                .map(|row| Meant::Row(*work, *row)),
                            _ => None,
                        };
                        readings.extend(place.map(|meant| certain(meant, why.clone())));
                    }
                }
            }
        }
    }

    /// The designs whose key begins `parts`, with the parts that follow.
    fn designs_by_key<'p>(&self, parts: &'p [String]) -> Vec<(Keyed, &'p [String])> {
        let longest_first = (1..=parts.len()).rev();
        let found = longest_first.filter_map(|end| {
            let (key, rest) = parts.split_at(end);
            let designs = self.lookup.keys.get(&key.join("."))?;
            Some(designs.iter().map(move |keyed| (*keyed, rest)))
        });
        found.take(1).flatten().collect()
    }

    /// A number or key of the catalogue, with what follows it.
    fn ours(&self, asked: &Asked, readings: &mut Vec<Reading>) {
        let rank = if asked.names_catalogue {
            Rank::CitedNumber
        } else {
            Rank::Number
        };
        for end in 1..=asked.number.len() {
            let (number, rest) = asked.number.split_at(end);
            let key = number.join(".");
            let numbered = self.lookup.numbers.get(&key).into_iter().flatten();
            // A design that had another number in the edition that is cited is not meant by its present one.
            let had_other = |design: &usize| {
                let mut formerly = self.references.designs[*design].formerly.iter();
                formerly.any(|former| Some(&former.edition) == asked.edition.as_ref())
            };
            for design in numbered.filter(|design| !had_other(design)) {
                let after = After::Number;
                self.parts(*design, rest, after, asked, &Why::Number, rank, readings);
            }
            let formerly = self.lookup.former_numbers.get(&key).into_iter().flatten();
            for (design, edition) in formerly {
                let is_cited = asked.edition.as_ref().is_none_or(|cited| cited == edition);
                if !is_cited {
                    continue;
                }
                let from = readings.len();
                let why = Why::Edition(edition.clone());
                self.parts(*design, rest, After::Number, asked, &why, rank, readings);
                if asked.edition.is_none() {
                    for reading in &mut readings[from..] {
                        reading.rank = Rank::FormerNumeral;
                        reading.certainty = Certainty::Possible;
                    }
                }
            }
            let keyed = self.lookup.keys.get(&key).into_iter().flatten();
            for keyed in keyed.filter(|keyed| !had_other(&keyed.design)) {
                let why = why_of_key(*keyed);
                self.parts(
                    keyed.design,
                    rest,
                    After::Number,
                    asked,
                    &why,
                    rank,
                    readings,
                );
            }
        }
    }

    /// What stands after the number, key or title of a design. `why`: how the design was found.
    #[allow(
        clippy::too_many_arguments,
        reason = "each says one thing of the text, and three callers pass them on"
    )]
    fn parts(
        &self,
        design: usize,
        rest: &[String],
        after: After,
        asked: &Asked,
        why: &Why,
        rank: Rank,
        readings: &mut Vec<Reading>,
    ) {
        let names = (design, &self.references.designs[design]);
        let edition = asked.edition.as_deref();
        let found = parts_of(&self.reader, names, after, rest, edition);
        let was_renumbered = edition.is_none() && found.len() > 1;
        for (meant, of_part) in found {
            let is_former = edition.is_none() && matches!(of_part, Why::Edition(_));
            let certainty = match of_part {
                Why::OtherTotal => Certainty::Possible,
                _ if is_former => Certainty::Possible,
                _ if was_renumbered => Certainty::Probable,
                _ => Certainty::Certain,
            };
            let rank = if is_former { Rank::FormerNumeral } else { rank };
            let why = if of_part == Why::Number {
                why.clone()
            } else {
                of_part
            };
            let reading = Reading::certain(meant, rank, why).at_most(certainty);
            readings.push(self.on_its_page(reading));
        }
    }

    /// The same reading of the record whose page is that of the sheet.
    fn on_its_page(&self, reading: Reading) -> Reading {
        let Meant::Impression(design, number) = reading.meant else {
            return reading;
        };
        match self.references.designs[design].joined.get(&number) {
            Some(page) => Reading {
                meant: Meant::Impression(design, *page),
                record: Some(number),
                ..reading
            },
            None => reading,
        }
    }

    /// A number of an earlier catalogue, behind the name of that catalogue or alone.
    fn earlier(&self, asked: &Asked, readings: &mut Vec<Reading>) {
        for end in (1..asked.all.len()).rev() {
            let (name, number) = asked.all.split_at(end);
            let works = self.lookup.works.get(&name.join("."));
            let before = readings.len();
            for work in works.into_iter().flatten() {
                if let Some(row) = self.row(*work, number) {
                    self.row_readings(*work, row, Rank::Earlier, readings);
                }
            }
            if readings.len() > before {
                return;
            }
        }
        let lone = self.lookup.lone_rows.get(&asked.number.join("."));
        for (work, row) in lone.into_iter().flatten() {
            self.row_readings(*work, *row, Rank::EarlierAlone, readings);
        }
    }

    /// The number of a work, as it stands there or with another numeral or without the total: "III", "state 3",
    /// "iii/iv".
    fn row(&self, work: usize, number: &[String]) -> Option<usize> {
        let rows = self.lookup.rows.get(work)?;
        let words = self.reader.words();
        let mut number = number;
        while number.len() > 1 && words.number.contains(&number[0]) {
            number = &number[1..];
        }
        let find = |parts: &[String]| rows.get(&parts.join(".")).copied();
        if let Some(row) = find(number) {
            return Some(row);
        }
        let is_word = |part: &&String| words.state.contains(part);
        let plain: Vec<String> = number.iter().filter(|p| !is_word(p)).cloned().collect();
        let has_word = plain.len() < number.len();
        let other_numeral = |parts: &[String]| {
            let (last, before) = parts.split_last()?;
            let other = match from_roman(last) {
                Some(place) => place.to_string(),
                None => roman(last.parse().ok()?),
            };
            let parts = before.iter().cloned().chain([other]);
            find(&parts.collect::<Vec<_>>())
        };
        let without_total = match plain.as_slice() {
            [before @ .., numeral, _] if from_roman(numeral).is_some() => &plain[..=before.len()],
            _ => &[][..],
        };
        find(&plain)
            .or_else(|| {
                if has_word {
                    other_numeral(&plain)
                } else {
                    None
                }
            })
            .or_else(|| find(without_total))
    }

    /// Ours for a number of an earlier catalogue, and the number itself where it stands in the list of that.
    fn row_readings(&self, work: usize, row: usize, rank: Rank, readings: &mut Vec<Reading>) {
        let names = &self.references.works[work];
        let number: &EarlierRow = &names.rows[row];
        let own = if rank == Rank::Earlier {
            Certainty::Certain
        } else {
            Certainty::Probable
        };
        for ours in &number.ours {
            let meant = match (ours.state, ours.printing) {
                (Some(state), _) => Meant::State(ours.design, state),
                (None, Some(printing)) => Meant::Printing(ours.design, printing),
                (None, None) => Meant::Design(ours.design),
            };
            let certainty = match ours.relation {
                Relation::Same | Relation::PartOfOurs | Relation::NotAState => Certainty::Certain,
                Relation::CoversOurs if number.ours.len() == 1 => Certainty::Probable,
                Relation::CoversOurs | Relation::Error => Certainty::Possible,
            };
            let why = Why::Earlier(names.short.clone(), number.cited(), ours.relation);
            let reading = Reading::certain(meant, rank, why);
            readings.push(reading.at_most(own).at_most(certainty));
        }
        let itself = Reading::certain(Meant::Row(work, row), rank, Why::Row);
        readings.push(itself.at_most(own));
    }

    /// An accession number, alone or with its holder before or behind it.
    fn accession(&self, asked: &Asked, readings: &mut Vec<Reading>) {
        let all = self.without_accession_words(&asked.all);
        for accession in self.accessions(all) {
            readings.extend(self.sheet(accession, Rank::Accession, Certainty::Certain));
        }
        for at in 1..asked.all.len() {
            let (before, behind) = asked.all.split_at(at);
            for (holder, number) in [(before, behind), (behind, before)] {
                let fits = self.fitting_holders(holder);
                if fits.is_empty() {
                    continue;
                }
                for accession in self.accessions(self.without_accession_words(number)) {
                    let fit = fits.iter().find(|(place, _)| {
                        Some(&self.references.holders[*place].key) == accession.holder.as_ref()
                    });
                    if let Some((_, certainty)) = fit {
                        readings.extend(self.sheet(accession, Rank::HolderAccession, *certainty));
                    }
                }
            }
        }
    }

    fn accessions(&self, number: &[String]) -> &[Accession] {
        let found = self.references.accessions.get(&key_of_parts(number));
        found.map_or(&[], Vec::as_slice)
    }

    fn without_accession_words<'p>(&self, parts: &'p [String]) -> &'p [String] {
        let words = self.reader.words();
        let mut left = parts;
        while left.len() > 1
            && (words.accession.contains(&left[0]) || words.number.contains(&left[0]))
        {
            left = &left[1..];
        }
        left
    }

    /// The holders of whose names `parts` are words (certain) or beginnings of words (probable).
    fn fitting_holders(&self, parts: &[String]) -> Vec<(usize, Certainty)> {
        let is_telling = |part: &String| part.chars().nth(1).is_some() && is_of_letters(part);
        if !parts.iter().any(is_telling) {
            return Vec::new();
        }
        let fit = |words: &Vec<String>| {
            let mut fit = Certainty::Certain;
            for part in parts {
                let begins = |word: &String| word.starts_with(part.as_str());
                if words.contains(part) {
                    continue;
                }
                if !is_telling(part) || !words.iter().any(begins) {
                    return None;
                }
                fit = Certainty::Probable;
            }
            Some(fit)
        };
        let holders = self.lookup.holders.iter().enumerate();
        holders
            .filter_map(|(at, words)| Some((at, fit(words)?)))
            .collect()
    }

    fn sheet(&self, accession: &Accession, rank: Rank, certainty: Certainty) -> Option<Reading> {
        let design = self.lookup.keys.get(&super::lookup::name_key(
            accession.impression.design.as_str(),
        ))?;
        let design = design.iter().find(|keyed| !keyed.is_former)?.design;
        let holder = accession.holder.as_ref();
        let holder = holder.and_then(|key| {
            let holder = self.references.holders.iter().find(|h| h.key == *key)?;
            holder.names.first().cloned()
        });
        let why = match (accession.kind, accession.is_bare) {
            (NumberKind::Elsewhere, _) => Why::Elsewhere,
            (NumberKind::Former, _) => Why::FormerAccession(holder),
            (NumberKind::Present, true) => Why::BareAccession(holder),
            (NumberKind::Present, false) => Why::Accession(holder),
        };
        let of_form = if accession.is_bare {
            Certainty::Probable
        } else {
            Certainty::Certain
        };
        let meant = Meant::Impression(design, accession.impression.number);
        let reading = Reading::certain(meant, rank, why)
            .at_most(certainty)
            .at_most(of_form);
        Some(self.on_its_page(reading))
    }

    /// A title or name; a title with a state or printing behind it; the key of a state.
    fn named(&self, asked: &Asked, readings: &mut Vec<Reading>) {
        for end in 1..=asked.all.len() {
            let (name, rest) = asked.all.split_at(end);
            for named in self.lookup.names.get(&name.join(".")).into_iter().flatten() {
                match named.meant {
                    Meant::Design(design) => {
                        let (why, rank) = (&named.why, named.rank);
                        self.parts(design, rest, After::Title, asked, why, rank, readings);
                    }
                    meant if rest.is_empty() => {
                        readings.push(Reading::certain(meant, named.rank, named.why.clone()));
                    }
                    _ => {}
                }
            }
        }
        let states = self.lookup.states.get(&asked.all.join("."));
        for (design, state) in states.into_iter().flatten() {
            let meant = Meant::State(*design, *state);
            let reading = Reading::certain(meant, Rank::StateKey, Why::Key);
            readings.push(reading.at_most(Certainty::Probable));
        }
    }

    /// A number of ours or of an earlier catalogue with something behind it that is not recorded.
    fn not_there(&self, asked: &Asked, readings: &mut Vec<Reading>) {
        let possible =
            |meant, why| Reading::certain(meant, Rank::NotThere, why).at_most(Certainty::Possible);
        for end in (1..asked.number.len()).rev() {
            let (number, rest) = asked.number.split_at(end);
            let words = &self.reader.words().state;
            let is_numeral = from_roman(&rest[0]).is_some() || words.contains(&rest[0]);
            let designs = self.lookup.numbers.get(&number.join("."));
            if let Some(designs) = designs.filter(|_| asked.names_catalogue || is_numeral) {
                for design in designs {
                    let why = Why::NotThere(rest.join(" "));
                    readings.push(possible(Meant::Design(*design), why));
                }
                return;
            }
        }
        for end in (1..asked.all.len()).rev() {
            let (name, number) = asked.all.split_at(end);
            for work in self.lookup.works.get(&name.join(".")).into_iter().flatten() {
                for end in (1..number.len()).rev() {
                    let (number, rest) = number.split_at(end);
                    let Some(row) = self.row(*work, number) else {
                        continue;
                    };
                    let names = &self.references.works[*work];
                    let cited = names.rows[row].cited();
                    let why = Why::EarlierNotThere(names.short.clone(), cited, rest.join(" "));
                    for ours in &names.rows[row].ours {
                        readings.push(possible(Meant::Design(ours.design), why.clone()));
                    }
                    readings.push(possible(Meant::Row(*work, row), Why::Row));
                    break;
                }
            }
            if !readings.is_empty() {
                return;
            }
        }
    }

    /// The titles and names that begin so and go on with a further word.
    fn beginning(&self, asked: &Asked, readings: &mut Vec<Reading>) {
        let beginning = format!("{}.", asked.all.join("."));
        let from = (Bound::Included(beginning.as_str()), Bound::Unbounded);
        let names = self.lookup.names.range::<str, _>(from);
        let names = names.take_while(|(name, _)| name.starts_with(&beginning));
        let mut found: Vec<Meant> = names
            .flat_map(|(_, named)| named)
            .map(|n| n.meant)
            .collect();
        found.sort_unstable();
        found.dedup();
        let certainty = match found.len() {
            1 => Certainty::Probable,
            n if n > MOST_BEGINNINGS => return,
            _ => Certainty::Possible,
        };
        readings.extend(found.into_iter().map(|meant| {
            Reading::certain(meant, Rank::Beginning, Why::Beginning).at_most(certainty)
        }));
    }
}

fn why_of_key(keyed: Keyed) -> Why {
    if keyed.is_former {
        Why::FormerKey
    } else {
        Why::Key
    }
}

fn is_of_letters(part: &str) -> bool {
    part.chars().next().is_some_and(char::is_alphabetic)
}
