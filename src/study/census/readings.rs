//! The readings of an identification: the main one and each alternative.
//!
//! In: an identification as recorded. Out: its readings, and the states and printings each names.

use keyblock_model::impression::{Identification, StateReading};
use keyblock_model::key::Key;

/// A reading and its alternatives (`or`), however deeply they are nested, in the record's order.
pub(crate) fn readings(identified: &Identification) -> impl Iterator<Item = &Identification> {
    let mut to_visit = vec![identified];
    std::iter::from_fn(move || {
        let next = to_visit.pop()?;
        to_visit.extend(next.or.iter().rev());
        Some(next)
    })
}

/// The states that one reading allows; `None` alone where it names none.
pub(super) fn states_of(reading: &Identification) -> Vec<Option<Key>> {
    match &reading.state {
        None => vec![None],
        Some(StateReading::OneOf(states)) => {
            or_nothing(states.iter().map(|s| s.value.clone()).collect())
        }
        Some(StateReading::ByMatrix(by_matrix)) => or_nothing(
            by_matrix
                .iter()
                .map(|(_, state)| state.value.clone())
                .collect(),
        ),
    }
}

/// The keys; `None` alone where there are none.
pub(super) fn or_nothing(keys: Vec<Key>) -> Vec<Option<Key>> {
    if keys.is_empty() {
        vec![None]
    } else {
        keys.into_iter().map(Some).collect()
    }
}
