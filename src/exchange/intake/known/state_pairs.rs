//! The states and printings of a design beside those of an earlier catalogue.
//!
//! In: a design and a work. Out: [`StatePairs`], from the `literature` of its states and printings
//! (`docs/definitions.md, "Older numbers"`). A state that was split from another after the work appeared (`split_from`,
//! `described`), and that the work does not number, was still part of that other: the number of the one stands for both.

use std::collections::BTreeMap;

use crate::exchange::intake::reading::states::{SaidState, StateRemark, states, translated};
use crate::model::design::Design;
use crate::model::key::Key;
use crate::model::literature::{Citation, Relation};
use crate::model::state::State;
use crate::study::opinions::number_of_part;
use crate::study::search::words::number_key;

/// The numbers of an earlier catalogue for the states and printings of a design.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct StatePairs {
    /// Its states, each with what it is here, in the order of the record.
    pub states: Vec<(u32, Vec<Key>)>,
    /// Its states that are printings here.
    pub printings: Vec<(u32, Vec<Key>)>,
    /// Its numbers for printings, by their keys (`number_key`).
    lettered: Vec<(String, Key)>,
    /// Its states that are errors.
    pub errors: Vec<u32>,
    /// The standing states, in order.
    order: Vec<Key>,
}

/// What an earlier state is here.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct PartsMeant {
    /// The states.
    pub states: Vec<Key>,
    /// The printings.
    pub printings: Vec<Key>,
    /// The earlier states that the concordance does not have.
    pub unknown: Vec<u32>,
}

impl StatePairs {
    /// The pairs of a design and a work. `year`: that of the work.
    #[must_use]
    pub fn of(design: &Design, work: &Key, year: Option<i32>) -> StatePairs {
        let mut pairs = StatePairs::default();
        let mut by_number: BTreeMap<u32, Vec<Key>> = BTreeMap::new();
        let mut printings: BTreeMap<u32, Vec<Key>> = BTreeMap::new();
        let standing: Vec<&State> = design.standing_states().collect();
        for state in &standing {
            let key = &state.key.value;
            pairs.order.push(key.clone());
            let sources = [Some(*state), unnumbered_source(design, state, work, year)];
            for citation in sources
                .into_iter()
                .flatten()
                .flat_map(|s| cited(&s.literature, work))
            {
                let number = citation.number.as_deref().and_then(number_in);
                match (number, citation.relation) {
                    (Some(number), Relation::Error) => pairs.errors.push(number),
                    (Some(number), _) => add(&mut by_number, number, key),
                    (None, _) => {}
                }
            }
        }
        for printing in design.standing_printings() {
            let key = &printing.key.value;
            for citation in cited(&printing.literature, work) {
                let Some(said) = citation.number.as_deref() else {
                    continue;
                };
                // A lone letter names a printing within a state, also where it is a numeral: `VII/c`.
                if let Some(number) = number_in(said) {
                    add(&mut printings, number, key);
                }
                pairs
                    .lettered
                    .extend(number_key(said).map(|said| (said, key.clone())));
            }
        }
        pairs.states = by_number.into_iter().collect();
        pairs.printings = printings.into_iter().collect();
        pairs
    }

    /// Whether the work numbers no state and no printing of the design.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.states.is_empty() && self.printings.is_empty() && self.lettered.is_empty()
    }

    /// What a state as the work counts it is here.
    #[must_use]
    pub fn meant(&self, said: &SaidState) -> PartsMeant {
        if said.remark == Some(StateRemark::Between) {
            return PartsMeant {
                states: self.between(&said.states),
                ..PartsMeant::default()
            };
        }
        let states = translated(said, &self.states);
        let printings = translated(said, &self.printings);
        let mut meant = PartsMeant {
            states: states.may_be,
            printings: printings.may_be,
            unknown: states.unknown,
        };
        meant
            .unknown
            .retain(|number| printings.unknown.contains(number));
        // Letters of printings go beyond the state: `VII/b`.
        if let Some(letter) = said.printing.as_deref() {
            let whole = said
                .states
                .first()
                .map(|state| format!("{}/{letter}", crate::study::numerals::roman(*state)));
            let is_it = |known: &String| {
                Some(known) == number_key(letter).as_ref()
                    || whole.as_deref().and_then(number_key).as_ref() == Some(known)
            };
            let lettered = self.lettered.iter().filter(|(known, _)| is_it(known));
            for (_, key) in lettered {
                if !meant.printings.contains(key) {
                    meant.printings.push(key.clone());
                }
            }
        }
        meant
    }

    /// The states that stand after the first of two earlier ones and before the second.
    fn between(&self, states: &[u32]) -> Vec<Key> {
        let [first, second] = states else {
            return Vec::new();
        };
        let places = |number: &u32| {
            let known = self.states.iter().find(|(known, _)| known == number);
            let keys = known.into_iter().flat_map(|(_, keys)| keys);
            let places = keys.filter_map(|key| self.order.iter().position(|k| k == key));
            places.collect::<Vec<_>>()
        };
        match (places(first).iter().max(), places(second).iter().min()) {
            (Some(after), Some(before)) if after < before => {
                self.order[after + 1..*before].to_vec()
            }
            _ => Vec::new(),
        }
    }
}

/// The place of a state in a citation; that of the only state of a work is the first.
fn number_in(said: &str) -> Option<u32> {
    number_of_part(said).or_else(|| {
        let mut states = states(said).is.into_iter().filter_map(|said| said.state);
        let is_only = states.next()?.remark == Some(StateRemark::Only);
        is_only.then_some(1)
    })
}

fn add(pairs: &mut BTreeMap<u32, Vec<Key>>, number: u32, key: &Key) {
    let keys = pairs.entry(number).or_default();
    if !keys.contains(key) {
        keys.push(key.clone());
    }
}

fn cited<'l>(literature: &'l [Citation], work: &'l Key) -> impl Iterator<Item = &'l Citation> {
    literature
        .iter()
        .filter(move |citation| citation.cite.work() == Some(work))
}

/// The state from which a state was split, where the work does not number the state itself and appeared before it was
/// described, or it is not said when that was.
fn unnumbered_source<'d>(
    design: &'d Design,
    state: &State,
    work: &Key,
    year: Option<i32>,
) -> Option<&'d State> {
    let source = design.state(&state.split_from.as_ref()?.value)?;
    let is_numbered = cited(&state.literature, work).any(|citation| citation.number.is_some());
    let described = state
        .described
        .as_ref()
        .and_then(|date| date.value.first_named());
    let is_later = match (described, year) {
        (Some(described), Some(year)) => described.year >= i64::from(year),
        _ => true,
    };
    (!is_numbered && is_later).then_some(source)
}
