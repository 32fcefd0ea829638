//! The series of a new design, and its number there.
//!
//! In: the catalogue, and what names the series: its key, a title, or the name by which designs have it. Out: the lines of
//! `[series]`, and what there is to say of the number. A number in a series is stated by a wrapper, a sheet or a list, so it is
//! never made by counting on.

use super::planned::quoted;
use super::template::Part;
use crate::model::catalogue::Catalogue;
use crate::model::design::Design;
use crate::model::key::Key;
use crate::model::natural::natural_order;
use crate::model::series_place::{SeriesPlace, SeriesRef};
use crate::read::refusal::Refusal;
use crate::read::values::near;

/// The most numbers of other designs that are named.
const MOST_NAMED: usize = 12;

/// The place of a new design in a series.
pub(super) struct PlannedPlace {
    /// The table of the record.
    pub part: Part,
    /// What there is to say of its number there; `None` for nothing.
    pub remark: Option<String>,
}

/// Plans the place in the series that `name` names.
///
/// # Errors
/// [`Refusal`] where there is no such series.
pub(super) fn place(
    catalogue: &Catalogue,
    name: &str,
    position: Option<&str>,
) -> Result<PlannedPlace, Refusal> {
    let series = named(catalogue, name).ok_or_else(|| unknown(catalogue, name))?;
    let key = match &series {
        SeriesRef::Record(_) => "series",
        SeriesRef::Named(_) => "name",
    };
    let named = format!("{key} = {}", quoted(series.as_str()));
    let position_line = position.map(|position| format!("position = {}", quoted(position)));
    Ok(PlannedPlace {
        part: Part {
            table: "series",
            is_given: true,
            notes: Vec::new(),
            examples: Vec::new(),
            keys: Some(std::iter::once(named).chain(position_line).collect()),
        },
        remark: remark(catalogue, &series, position),
    })
}

/// The series that a key, a title or a name means.
fn named(catalogue: &Catalogue, name: &str) -> Option<SeriesRef> {
    let records = || catalogue.series.values();
    let by_key = records().find(|series| series.key.as_str() == name);
    let is_titled = |text: &str| is_same(text, name);
    let record = by_key.or_else(|| {
        records().find(|series| series.titles.iter().any(|title| is_titled(&title.text)))
    });
    if let Some(record) = record {
        return Some(SeriesRef::Record(record.key.clone()));
    }
    let mut of_designs = catalogue.designs.values().flat_map(places);
    let found = of_designs.find(|place| match &place.of.value {
        SeriesRef::Named(own) => is_same(own, name),
        SeriesRef::Record(_) => false,
    });
    Some(found?.of.value.clone())
}

fn unknown(catalogue: &Catalogue, name: &str) -> Refusal {
    let records: Vec<(&str, Vec<String>)> = catalogue
        .series
        .values()
        .map(|series| {
            let titles = series.titles.iter();
            let titles = titles.filter_map(|title| Key::nearest_form(&title.text));
            let titles = titles.map(|title| title.to_string());
            (series.key.as_str(), titles.collect())
        })
        .collect();
    let message = format!("no series is called “{name}”");
    match near::meant(name, &records).as_slice() {
        [] => Refusal::usage(
            message,
            format!("add it first: keyblock add series {}", quoted(name)),
        ),
        meant => Refusal::usage(message, format!("did you mean {}?", near::either(meant))),
    }
}

/// What there is to say of the number of a new design in a series, from those of its other designs.
fn remark(catalogue: &Catalogue, series: &SeriesRef, position: Option<&str>) -> Option<String> {
    let others: Vec<(&Design, Option<&str>)> = catalogue
        .designs
        .values()
        .filter(|design| !design.standing.is_set_apart())
        .filter_map(|design| {
            let mut all = places(design).filter(|place| place.of.value == *series);
            let first = all.next()?;
            let position = std::iter::once(first).chain(all);
            let mut position = position.filter_map(|place| place.position.as_ref());
            Some((design, position.next().map(|p| p.value.trim())))
        })
        .collect();
    let mut taken: Vec<&str> = others
        .iter()
        .filter_map(|(_, position)| *position)
        .collect();
    taken.sort_by(|a, b| natural_order(a, b));
    let of = series.as_str();
    if let Some(position) = position {
        let same = others
            .iter()
            .find(|(_, taken)| taken.is_some_and(|taken| is_same(taken, position)));
        return match same {
            Some((other, _)) => Some(format!(
                "design {} has no. {position} of “{of}” too: correct one of the two",
                other.number
            )),
            None if taken.is_empty() && !others.is_empty() => {
                Some(format!("no other design of “{of}” has a number there"))
            }
            None => None,
        };
    }
    Some(if !taken.is_empty() {
        format!(
            "its number in “{of}” is not known; its other designs have {}: write its own as `position`",
            list(&taken)
        )
    } else if others.is_empty() {
        format!(
            "it is the first design of “{of}”: write its number there, if it has one, as `position`"
        )
    } else {
        format!("it has no number in “{of}”, as no other design of it has one")
    })
}

/// "1, 2, 3"; of many the first and how many more there are.
fn list(numbers: &[&str]) -> String {
    let named = numbers.get(..MOST_NAMED).unwrap_or(numbers);
    let all = named.join(", ");
    match numbers.len() - named.len() {
        0 => all,
        more => format!("{all} and {more} more"),
    }
}

/// The places of a design in series: its own, then those of its printings.
fn places(design: &Design) -> impl Iterator<Item = &SeriesPlace> {
    let of_printings = design
        .printings
        .iter()
        .flat_map(|printing| &printing.series);
    design.series.iter().chain(of_printings)
}

fn is_same(one: &str, other: &str) -> bool {
    one.trim().to_lowercase() == other.trim().to_lowercase()
}
