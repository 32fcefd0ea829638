//! The chronology: the dated events of a catalogue, in order.
//!
//! In: the dates of designs, states, printings, matrices, series, exhibitions, documents and people. Out: [`Event`]s
//! by the earliest day each can be. Only the catalogue's own view of a date is used.
//! Definitions: `docs/definitions.md, "Order of lists"` and `"Dates"`.
//!
//! ```
//! # mod literal { include!(concat!(env!("CARGO_MANIFEST_DIR"), "/../../tests/doc/catalogue.rs")); }
//! # use literal::catalogue;
//! # use keyblock::study::{chronology::chronology, order::Order};
//! let catalogue = catalogue(r#"
//! -- records/designs/1/design.toml
//! titles = [{ text = "The Ferry" }]
//! date = "1927"
//! states = [{ key = "only" }]
//! printings = [{ key = "own", kind = "artist", states = "all", date = "1926-05" }]
//! "#);
//! let events = chronology(&catalogue, &Order::of(&catalogue));
//! let dates: Vec<&str> = events.iter().map(|event| event.date.as_str()).collect();
//! assert_eq!(dates, ["1926-05", "1927"]);
//! ```

use super::order::Order;
use keyblock_model::catalogue::Catalogue;
use keyblock_model::design::Design;
use keyblock_model::edtf::{Date, Day};
use keyblock_model::key::Key;

/// A dated event.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Event {
    /// Its date.
    pub date: Date,
    /// The kind of event.
    pub what: EventKind,
}

/// The kind of an event.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum EventKind {
    /// Somebody was born.
    Born(Key),
    /// Somebody began, or was known, to work.
    Active(Key),
    /// A design was made.
    Design(Key),
    /// A state was made.
    State {
        /// Of which design.
        design: Key,
        /// Which.
        state: Key,
    },
    /// A printing was made.
    Printing {
        /// Of which design.
        design: Key,
        /// Which.
        printing: Key,
    },
    /// A matrix was cancelled or destroyed.
    Matrix {
        /// Of which design.
        design: Key,
        /// Which.
        matrix: Key,
    },
    /// A series was published, or its prints were made.
    Series(Key),
    /// An exhibition was shown.
    Exhibition(Key),
    /// A document was written.
    Document(Key),
    /// Somebody died.
    Died(Key),
}

impl EventKind {
    /// The rank among events of one day: births first, then works, deaths last.
    fn rank(&self) -> u8 {
        match self {
            EventKind::Born(_) => 0,
            EventKind::Active(_) => 1,
            EventKind::Design(_) => 2,
            EventKind::State { .. } => 3,
            EventKind::Printing { .. } => 4,
            EventKind::Matrix { .. } => 5,
            EventKind::Series(_) => 6,
            EventKind::Exhibition(_) => 7,
            EventKind::Document(_) => 8,
            EventKind::Died(_) => 9,
        }
    }

    /// The design that it is of; `None` for an event of no print.
    #[must_use]
    pub fn design(&self) -> Option<&Key> {
        match self {
            EventKind::Design(design)
            | EventKind::State { design, .. }
            | EventKind::Printing { design, .. }
            | EventKind::Matrix { design, .. } => Some(design),
            EventKind::Born(_)
            | EventKind::Active(_)
            | EventKind::Series(_)
            | EventKind::Exhibition(_)
            | EventKind::Document(_)
            | EventKind::Died(_) => None,
        }
    }
}

/// The events of a catalogue by the first day each can be; one with an open or unknown beginning
/// by the last. Events without any known day come last.
#[must_use]
pub fn chronology(catalogue: &Catalogue, order: &Order) -> Vec<Event> {
    let mut events = Vec::new();
    for (key, person) in &catalogue.people {
        let dates = [
            (&person.born, EventKind::Born as fn(Key) -> EventKind),
            (&person.active, EventKind::Active),
            (&person.died, EventKind::Died),
        ];
        for (date, what) in dates {
            push(
                &mut events,
                date.as_ref().map(|d| &d.value),
                what(key.clone()),
            );
        }
    }
    for design in order.keys().iter().filter_map(|k| catalogue.designs.get(k)) {
        if !design.standing.is_withdrawn() {
            of_design(&mut events, design);
        }
    }
    for (key, exhibition) in &catalogue.exhibitions {
        push(
            &mut events,
            exhibition.date.as_ref().map(|d| &d.value),
            EventKind::Exhibition(key.clone()),
        );
    }
    for (key, series) in &catalogue.series {
        if !series.standing.is_set_apart() {
            push(
                &mut events,
                series.date.own(),
                EventKind::Series(key.clone()),
            );
        }
    }
    for (key, document) in &catalogue.documents {
        push(
            &mut events,
            document.date.as_ref().map(|d| &d.value),
            EventKind::Document(key.clone()),
        );
    }
    // The sort is stable: the states of one design keep the order of the record.
    events.sort_by_cached_key(|event| {
        let (first, last) = days(&event.date);
        let design = event.what.design().map(|design| order.rank(design));
        (first.is_none(), first, last, event.what.rank(), design)
    });
    events
}

fn push(events: &mut Vec<Event>, date: Option<&Date>, what: EventKind) {
    events.extend(date.cloned().map(|date| Event { date, what }));
}

fn of_design(events: &mut Vec<Event>, design: &Design) {
    let key = || design.key.clone();
    push(events, design.date.own(), EventKind::Design(key()));
    for state in design.standing_states() {
        let what = EventKind::State {
            design: key(),
            state: state.key.value.clone(),
        };
        push(events, state.date.own(), what);
    }
    for printing in design.standing_printings() {
        let what = EventKind::Printing {
            design: key(),
            printing: printing.key.value.clone(),
        };
        push(events, printing.date.own(), what);
    }
    for matrix in &design.matrices {
        let what = EventKind::Matrix {
            design: key(),
            matrix: matrix.key.value.clone(),
        };
        let date = matrix.now.as_ref().and_then(|now| now.date.as_ref());
        push(events, date.map(|d| &d.value), what);
    }
}

fn days(date: &Date) -> (Option<Day>, Option<Day>) {
    let (earliest, latest) = (date.earliest().day(), date.latest().day());
    (earliest.or(latest), latest.or(earliest))
}
