//! Agreement: whether the observations on a sheet agree with its identification.
//!
//! An impression is *contradicted* where every candidate that its identification allows has a certain or probable
//! observation against it at a deciding point. It *departs* where it is not contradicted, but every such candidate
//! has an observation against it at some point. A part that is not visible, or that belongs to a block that was not
//! printed, gives no information and is never read as absent.
//!
//! In: a design and one of its impressions. Out: a [`Contradiction`] or none; the clashes of a departure.
//! Definitions: `docs/definitions.md, "Contradiction and departure"`.
//!
//! ```
//! # mod literal { include!(concat!(env!("CARGO_MANIFEST_DIR"), "/../../tests/doc/catalogue.rs")); }
//! # use literal::{catalogue, key};
//! # use keyblock::study::agree::{ShownBy, contradiction};
//! let catalogue = catalogue(r#"
//! -- records/designs/1/design.toml
//! titles = [{ text = "The Ferry" }]
//! points = [{ key = "moon", ask = "A moon?", kind = "presence", rests_on = "matrix" }]
//! states = [{ key = "dark", shows = { moon = "absent" } }, { key = "moonlit", shows = { moon = "present" } }]
//! -- records/designs/1/impressions/1.toml
//! status = "located"
//! identified = { state = "dark" }
//! observed = { moon = "present" }
//! "#);
//! let design = &catalogue.designs[&key("1")];
//! let found = contradiction(design, &design.impressions[&1]).unwrap();
//! assert_eq!(found.clashes[0].point.as_str(), "moon");
//! assert_eq!(found.clashes[0].shown_by, [ShownBy::State("dark".parse().unwrap())]);
//! ```

use super::allowed::{both, is_against, shown_values};
use super::candidates::candidates;
use super::identify::is_printed;
use crate::census::readings;
use crate::index::ObservationAt;
use keyblock_model::certainty::Certainty;
use keyblock_model::design::Design;
use keyblock_model::impression::{Identification, Impression, StateReading};
use keyblock_model::key::Key;
use keyblock_model::point::{Observation, Point, Value};
use keyblock_model::printing::Printing;
use keyblock_model::state::{State, Variant};

/// The observations contradict every candidate that the identification allows.
#[derive(Clone, Debug, PartialEq)]
pub struct Contradiction {
    /// The clashes with the candidate that has the fewest, the first in the record's order among
    /// equals; in the order of the observations, at least one.
    pub clashes: Vec<Clash>,
}

/// An observation and a statement that cannot both be true.
#[derive(Clone, Debug, PartialEq)]
pub struct Clash {
    /// The point.
    pub point: Key,
    /// Which of the impression's observations.
    pub observation: ObservationAt,
    /// The values that the candidate allows there, in the record's order.
    pub allowed: Vec<Value>,
    /// The records that show that.
    pub shown_by: Vec<ShownBy>,
}

/// A record that shows something at a point.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum ShownBy {
    /// A state.
    State(Key),
    /// A printing.
    Printing(Key),
    /// A variant.
    Variant(Key),
}

/// The contradiction between an impression's identification and its observations, if any. An
/// impression that is not identified, or only with records that the design does not have, is not contradicted.
#[must_use]
pub fn contradiction(design: &Design, impression: &Impression) -> Option<Contradiction> {
    let decides = |observation: &Observation, point: &Point| {
        point.is_deciding() && observation.claim.certainty() != Certainty::Possible
    };
    let clashes = fewest_clashes(design, impression, decides)?;
    (!clashes.is_empty()).then_some(Contradiction { clashes })
}

/// The clashes of an impression that departs from its identification: those with the candidate that has the
/// fewest. Empty where it does not depart, or is contradicted.
#[must_use]
pub fn departure(design: &Design, impression: &Impression) -> Vec<Clash> {
    if contradiction(design, impression).is_some() {
        return Vec::new();
    }
    fewest_clashes(design, impression, |_, _| true).unwrap_or_default()
}

/// Of the candidates that the identification allows, the clashes of the one that has the fewest, at the
/// observations that `is_counted` admits; the first in the record's order among equals. `None` where it
/// allows no candidate.
fn fewest_clashes(
    design: &Design,
    impression: &Impression,
    is_counted: impl Fn(&Observation, &Point) -> bool,
) -> Option<Vec<Clash>> {
    let identified = impression.identified.as_ref()?;
    let mut telling = telling_observations(design, impression);
    telling.retain(|(_, observation, point)| is_counted(observation, point));
    let of_readings = readings(identified).flat_map(|reading| taken_as(design, reading));
    of_readings
        .map(|taken_as| -> Vec<Clash> {
            telling
                .iter()
                .filter_map(|(at, observation, point)| taken_as.clash(*at, observation, point))
                .collect()
        })
        .min_by_key(Vec::len)
}

/// The observations that can clash: of a point of the design, on a block that was printed.
fn telling_observations<'a>(
    design: &'a Design,
    impression: &'a Impression,
) -> Vec<(ObservationAt, &'a Observation, &'a Point)> {
    impression
        .observed
        .iter()
        .enumerate()
        .filter_map(|(at, o)| Some((ObservationAt::new(at), o, design.point(&o.point.value)?)))
        .filter(|(_, _, point)| is_printed(impression, point))
        .collect()
}

/// The identification of a sheet by one reading: a state (or a state for each matrix), a printing, a
/// variant.
struct TakenAs<'a> {
    state: TakenState<'a>,
    printing: Option<&'a Printing>,
    variant: Option<&'a Variant>,
}

enum TakenState<'a> {
    /// A state; `None` for a recut, a reproduction, and a printing of a design without states.
    One(Option<&'a State>),
    /// Blocks in different conditions: each matrix (by key) in a state of its own.
    ByMatrix(Vec<(&'a Key, &'a State)>),
}

/// The candidates that a reading allows. None where it names a state with a printing that does not
/// contain it, or one that was withdrawn: that is another finding, not a contradiction.
fn taken_as<'a>(design: &'a Design, reading: &'a Identification) -> Vec<TakenAs<'a>> {
    let variant = reading
        .variant
        .as_ref()
        .and_then(|v| design.variant(&v.value));
    let allows_printing = |printing: Option<&Printing>| {
        reading.printing.is_empty()
            || printing.is_some_and(|p| reading.printing.iter().any(|r| r.value == p.key.value))
    };
    if let Some(StateReading::ByMatrix(by_matrix)) = &reading.state {
        let states: Vec<(&Key, &State)> = by_matrix
            .iter()
            .filter_map(|(matrix, state)| {
                let state = design.state(&state.value)?;
                (!state.standing.is_withdrawn()).then_some((&matrix.value, state))
            })
            .collect();
        if states.len() < by_matrix.len() || states.is_empty() {
            return Vec::new();
        }
        // A sheet from blocks in different conditions belongs to a printing that contains the
        // states met on it.
        let contains_all =
            |p: &Printing| states.iter().all(|(_, s)| p.states.contains(&s.key.value));
        let printings: Vec<Option<&Printing>> = design
            .standing_printings()
            .filter(|p| contains_all(p) && allows_printing(Some(p)))
            .map(Some)
            .collect();
        let printings = if printings.is_empty() && reading.printing.is_empty() {
            vec![None]
        } else {
            printings
        };
        return printings
            .into_iter()
            .map(|printing| TakenAs {
                state: TakenState::ByMatrix(states.clone()),
                printing,
                variant,
            })
            .collect();
    }
    candidates(design)
        .into_iter()
        .filter(|c| c.fits(reading))
        .map(|c| TakenAs {
            state: TakenState::One(c.state),
            printing: c.printing,
            variant,
        })
        .collect()
}

impl<'a> TakenAs<'a> {
    /// The states that decide what is shown at a point: with blocks in different conditions, that of
    /// the point's own matrix; where the point names no matrix, all of them.
    fn states_at(&self, point: &Point) -> Vec<&'a State> {
        match &self.state {
            TakenState::One(state) => state.iter().copied().collect(),
            TakenState::ByMatrix(by_matrix) => by_matrix
                .iter()
                .filter(|(matrix, _)| point.matrix.as_ref().is_none_or(|m| m.value == **matrix))
                .map(|(_, state)| *state)
                .collect(),
        }
    }

    /// The values the sheet should show at a point, and the records that give them; `None` where not known.
    fn allows(&self, point: &Point) -> Option<(Vec<&'a Value>, Vec<ShownBy>)> {
        // A variant departs from its state and printing, so its values take precedence over theirs.
        if let Some(variant) = self.variant
            && let Some(values) = shown_values(&variant.shows, point)
        {
            return Some((values, vec![ShownBy::Variant(variant.key.value.clone())]));
        }
        let mut shown_by = Vec::new();
        let states = self.states_at(point);
        let of_each: Vec<Option<Vec<&Value>>> = states
            .iter()
            .map(|state| shown_values(&state.shows, point))
            .collect();
        // Where one of several states gives no value, any value may be shown.
        let of_states: Option<Vec<&Value>> = if of_each.is_empty() {
            None
        } else {
            of_each
                .into_iter()
                .collect::<Option<Vec<_>>>()
                .map(|values| values.into_iter().flatten().collect())
        };
        if of_states.is_some() {
            shown_by.extend(
                states
                    .iter()
                    .map(|state| ShownBy::State(state.key.value.clone())),
            );
        }
        let of_printing = self.printing.and_then(|p| shown_values(&p.shows, point));
        if let (Some(_), Some(printing)) = (&of_printing, self.printing) {
            shown_by.push(ShownBy::Printing(printing.key.value.clone()));
        }
        let values = both(of_states, of_printing)?;
        // A state and a printing that share no value are an error of the record, and contradict no
        // sheet.
        (!values.is_empty()).then_some((values, shown_by))
    }

    fn clash(&self, at: ObservationAt, observation: &Observation, point: &Point) -> Option<Clash> {
        let (allowed, shown_by) = self.allows(point)?;
        is_against(point, &observation.seen, &allowed).then(|| Clash {
            point: point.key.value.clone(),
            observation: at,
            allowed: allowed.into_iter().cloned().collect(),
            shown_by,
        })
    }
}
