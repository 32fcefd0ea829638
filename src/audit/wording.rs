//! Words for findings: names of records, values, and who made a statement.

use crate::model::catalogue::Catalogue;
use crate::model::certainty::{Basis, Claim};
use crate::model::design::Design;
use crate::model::impression::{Identification, StateReading};
use crate::model::key::Key;
use crate::model::literature::Cited;
use crate::model::place::Place;
use crate::model::point::{ObservedValue, Point, PointKind, Value};
use crate::model::provenance::Party;
use crate::study::Studies;

/// "state iii", "the only state", or the key where a state has no numeral.
pub(super) fn state(studies: &Studies, design: &Design, key: &Key) -> String {
    match studies.numeral(&design.key, key) {
        Some(numeral) if numeral.is_only() => "the only state".to_owned(),
        Some(numeral) => format!("state {}", numeral.roman()),
        None => format!("state `{key}`"),
    }
}

/// "printing `own`".
pub(super) fn printing(key: &Key) -> String {
    format!("printing `{key}`")
}

/// An identification in words: "state iii or iv in printing `own`".
pub(super) fn reading(studies: &Studies, design: &Design, identified: &Identification) -> String {
    let states = match &identified.state {
        None => None,
        Some(StateReading::ByMatrix(_)) => Some("of blocks in different conditions".to_owned()),
        Some(StateReading::OneOf(states)) => Some(either(
            states.iter().map(|s| state(studies, design, &s.value)),
        )),
    };
    let printings = either(identified.printing.iter().map(|p| printing(&p.value)));
    match (states, printings.is_empty()) {
        (Some(states), true) => states,
        (Some(states), false) => format!("{states} in {printings}"),
        (None, false) => format!("of {printings}"),
        (None, true) => "a sheet of this design".to_owned(),
    }
}

/// The place of an identification to underline: that of the state, or else of the printing.
pub(super) fn place_of_reading(identified: &Identification) -> Place {
    let state = match &identified.state {
        Some(StateReading::OneOf(states)) => states.first().map(|s| s.place),
        Some(StateReading::ByMatrix(by_matrix)) => by_matrix.first().map(|(_, s)| s.place),
        None => None,
    };
    state
        .or_else(|| identified.printing.first().map(|p| p.place))
        .unwrap_or(identified.place)
}

/// Texts joined by "or", each once.
pub(super) fn either(words: impl Iterator<Item = String>) -> String {
    let mut distinct: Vec<String> = Vec::new();
    for word in words {
        if !distinct.contains(&word) {
            distinct.push(word);
        }
    }
    distinct.join(" or ")
}

/// Values as they are recorded, a measure with its unit: "`present`", "3 or 4", "246 mm".
pub(super) fn values<'a>(point: &Point, values: impl Iterator<Item = &'a Value>) -> String {
    either(values.map(|value| match (&point.kind, value) {
        (_, Value::Word(word)) => format!("`{word}`"),
        (PointKind::Measure { unit, .. }, number) => format!("{number} {unit}"),
        (_, number) => number.to_string(),
    }))
}

/// An observed value in words: "`absent`", "not `even`".
pub(super) fn seen(point: &Point, seen: &ObservedValue) -> String {
    match seen {
        ObservedValue::OneOf(of) => values(point, of.iter().map(|v| &v.value)),
        ObservedValue::NoneOf(of) => format!("not {}", values(point, of.iter().map(|v| &v.value))),
        ObservedValue::NotVisible => "nothing".to_owned(),
        ObservedValue::NotApplicable => "no such thing".to_owned(),
    }
}

/// The person, basis and date of a statement: "from a photograph, The Editor, 2019". Empty where none of
/// this is recorded. A private owner is named by key.
pub(super) fn who(catalogue: &Catalogue, claim: &Claim) -> String {
    let mut parts = Vec::new();
    if let Some(basis) = &claim.basis {
        let words = match basis.value {
            Basis::FirstHand => "first-hand",
            Basis::Photograph => "from a photograph",
            Basis::Literature => "from literature",
            Basis::Report => "reported",
        };
        parts.push(words.to_owned());
    }
    if let Some(by) = &claim.by {
        parts.push(person_or_holder(catalogue, &by.value));
    }
    if let Some(cite) = &claim.cite {
        parts.push(cited(catalogue, &cite.value));
    }
    if let Some(date) = &claim.date {
        parts.push(date.value.to_string());
    }
    parts.join(", ")
}

/// A work by its short form, a document by its title; the key where there is none.
pub(super) fn cited(catalogue: &Catalogue, cited: &Cited) -> String {
    let name = match cited {
        Cited::Work(key) => catalogue.literature.get(key).map(|work| work.short.clone()),
        Cited::Document(key) => {
            let document = catalogue.published_document(key);
            let title = document.and_then(|document| document.title.as_ref());
            title.map(|title| title.value.clone())
        }
    };
    name.unwrap_or_else(|| format!("`{cited}`"))
}

/// `what`, followed by who says so in parentheses, where that is recorded.
pub(super) fn attributed(catalogue: &Catalogue, claim: &Claim, what: &str) -> String {
    let who = who(catalogue, claim);
    if who.is_empty() {
        what.to_owned()
    } else {
        format!("{what} ({who})")
    }
}

/// The name of a person or holder; the key where the name is not known or may not be published.
pub(super) fn person_or_holder(catalogue: &Catalogue, key: &Key) -> String {
    if let Some(person) = catalogue.people.get(key) {
        return person.name.value.clone();
    }
    match catalogue.holders.get(key) {
        Some(holder) if holder.may_publish("name") => holder.name.value.clone(),
        _ => format!("`{key}`"),
    }
}

/// The name of a party to a provenance.
pub(super) fn party(catalogue: &Catalogue, party: &Party) -> String {
    match party {
        Party::Record(key) => person_or_holder(catalogue, &key.value),
        Party::Named(name) => name.value.clone(),
        Party::Undisclosed => "someone undisclosed".to_owned(),
    }
}
