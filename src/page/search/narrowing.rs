//! The values by which readers narrow a search: state, printing, holder, technique, decade.

use std::collections::BTreeMap;

use crate::model::design::Design;
use crate::model::edtf::Date;
use crate::model::impression::{Identification, StateReading};
use crate::model::key::Key;
use crate::model::printing::PrintingKind;
use crate::model::vocabulary::List as Vocabulary;
use crate::model::words::ClosedList as _;
use crate::page::phrases::dates;
use crate::page::setting::book::Here;
use crate::study::order::Collator;
use crate::study::search::entry::{Narrowing, NarrowingValue};

/// The order of holders and techniques in the lists of values.
pub(super) struct Ranks {
    holders: BTreeMap<Key, (u32, String)>,
    techniques: BTreeMap<Key, (u32, String)>,
}

impl Ranks {
    /// The order in the catalogue's language.
    pub fn of(here: &Here<'_>) -> Ranks {
        let holders = here.public().holders.values();
        let holders = holders.map(|h| (h.key.clone(), here.holder_city_first(h)));
        let techniques = here.public().vocabularies.terms(Vocabulary::Techniques);
        let techniques = techniques
            .map(|(key, _)| (key.clone(), here.term(Vocabulary::Techniques, key.as_str())));
        Ranks {
            holders: ranked(here, holders.collect()),
            techniques: ranked(here, techniques.collect()),
        }
    }

    /// A holder.
    pub fn holder(&self, key: &Key) -> Option<NarrowingValue> {
        value(&self.holders, Narrowing::Holder, key)
    }

    /// The techniques of a design.
    pub fn techniques(&self, design: &Design) -> Vec<NarrowingValue> {
        let keys = design.technique.iter();
        keys.filter_map(|key| value(&self.techniques, Narrowing::Technique, &key.value))
            .collect()
    }
}

fn ranked(here: &Here<'_>, mut named: Vec<(Key, String)>) -> BTreeMap<Key, (u32, String)> {
    let collator = Collator::of_words(here.language());
    named.sort_by(|a, b| collator.compare(&a.1, &b.1).then_with(|| a.0.cmp(&b.0)));
    let ranked = named.into_iter().zip(0..);
    ranked
        .map(|((key, name), rank)| (key, (rank, name)))
        .collect()
}

fn value(known: &BTreeMap<Key, (u32, String)>, by: Narrowing, key: &Key) -> Option<NarrowingValue> {
    let (rank, label) = known.get(key)?;
    Some(NarrowingValue {
        by,
        rank: *rank,
        key: key.to_string(),
        label: label.clone(),
    })
}

/// A state, by its place in the order of its design: "iii".
pub(super) fn state(here: &Here<'_>, design: &Design, state: &Key) -> Option<NarrowingValue> {
    let numeral = here.book.studies.numeral(&design.key, state)?;
    Some(NarrowingValue {
        by: Narrowing::State,
        rank: numeral.place(),
        key: numeral.place().to_string(),
        label: numeral.roman(),
    })
}

/// The kind of a printing; `None` where it is not recorded.
pub(super) fn printing(here: &Here<'_>, design: &Design, key: &Key) -> Option<NarrowingValue> {
    let kind = *design.printing(key)?.kind.own()?;
    let place = PrintingKind::ALL.iter().position(|k| *k == kind)?;
    Some(NarrowingValue {
        by: Narrowing::Printing,
        rank: u32::try_from(place).ok()?,
        key: kind.word().to_owned(),
        label: here.words().listed("printing", kind).to_owned(),
    })
}

/// The states and printings that a reading of a sheet names.
pub(super) fn reading(
    here: &Here<'_>,
    design: &Design,
    reading: &Identification,
) -> Vec<NarrowingValue> {
    let states: Vec<&Key> = match &reading.state {
        None => Vec::new(),
        Some(StateReading::OneOf(states)) => states.iter().map(|s| &s.value).collect(),
        Some(StateReading::ByMatrix(pairs)) => pairs.iter().map(|(_, s)| &s.value).collect(),
    };
    let states = states.into_iter().filter_map(|s| state(here, design, s));
    let printings = reading.printing.iter();
    states
        .chain(printings.filter_map(|p| printing(here, design, &p.value)))
        .collect()
}

/// The decade in which a date begins.
pub(super) fn decade(here: &Here<'_>, date: Option<&Date>) -> Option<NarrowingValue> {
    let year = date?.first_named()?.year;
    let from = year.div_euclid(10) * 10;
    Some(NarrowingValue {
        by: Narrowing::Decade,
        rank: u32::try_from(from).ok()?,
        key: from.to_string(),
        label: dates::decade(here.words(), from),
    })
}
