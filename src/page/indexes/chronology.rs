//! The chronology: dated events, year by year (`docs/definitions.md`, "Order of lists").

use std::collections::BTreeSet;

use serde::Serialize;

use crate::model::design::Design;
use crate::model::edtf::Date;
use crate::model::exhibition::Venue;
use crate::model::key::Key;
use crate::page::lists::wall::{self, Hung};
use crate::page::phrases::dates;
use crate::page::phrases::enumeration;
use crate::page::setting::address::{Address, Fragment};
use crate::page::setting::book::Here;
use crate::page::setting::html::CleanHtml;
use crate::page::setting::leaf::Leaf;
use crate::page::setting::words::Words;
use crate::study::chronology::{Event, EventKind};
use crate::study::numerals::Numeral;

#[derive(Serialize)]
struct View {
    title: String,
    years: Vec<Year>,
}

#[derive(Serialize)]
struct Year {
    /// "1927".
    when: String,
    /// The events.
    events: Vec<CleanHtml>,
    /// Small pictures of the designs that were begun.
    pictures: CleanHtml,
}

/// How many pictures stand for a year.
const PICTURES: usize = 8;

pub(crate) fn page(here: &Here<'_>) -> Leaf {
    let title = here.words().word("chronology").to_owned();
    let view = View {
        title: title.clone(),
        years: years(here),
    };
    Leaf::new(here.address, title, "pages/chronology.html", &view)
}

fn years(here: &Here<'_>) -> Vec<Year> {
    let mut years: Vec<Year> = Vec::new();
    let events = &here.book.studies.chronology;
    for of_year in events.chunk_by(|a, b| heading(here, &a.date) == heading(here, &b.date)) {
        let Some(first) = of_year.first() else {
            continue;
        };
        let when = heading(here, &first.date);
        let lines = lines(here, &when, of_year);
        let begun = of_year.iter().filter_map(|event| match &event.what {
            EventKind::Design(key) => here.public().designs.get(key),
            _ => None,
        });
        let begun: Vec<Hung> = begun
            .take(PICTURES)
            .map(|design| wall::design(here, design))
            .collect();
        years.push(Year {
            when,
            events: lines,
            pictures: wall::row(here, &begun),
        });
    }
    years.retain(|year| !year.events.is_empty());
    years
}

/// The events of a year, a line each; all that happened to one print stands in one line, at the place of the first.
fn lines(here: &Here<'_>, when: &str, events: &[Event]) -> Vec<CleanHtml> {
    let mut seen: BTreeSet<&Key> = BTreeSet::new();
    let lines = events.iter().filter_map(|event| {
        let Some(design) = event.what.design() else {
            return event_line(here, when, event);
        };
        if !seen.insert(design) {
            return None;
        }
        let own = events
            .iter()
            .filter(|event| event.what.design() == Some(design));
        design_line(here, when, design, &own.collect::<Vec<_>>())
    });
    lines.collect()
}

/// "14, *The Last Ferry* (1927–1928): states *i* and *ii*; printed by the artist (May 1927)".
fn design_line(here: &Here<'_>, when: &str, key: &Key, events: &[&Event]) -> Option<CleanHtml> {
    let design = here.public().designs.get(key)?;
    let begun = events
        .iter()
        .find(|event| matches!(event.what, EventKind::Design(_)))
        .map(|event| &event.date);
    let name = here.design(key);
    let name = match begun.and_then(|date| exact(here, when, date, dates::once)) {
        Some(exact) => name.then(" ").and(&exact),
        None => name,
    };
    // States in the order of the record, then printings, then what became of matrices.
    let mut events = events.to_vec();
    events.sort_by_key(|event| match &event.what {
        EventKind::State { state, .. } => {
            let place = design.states.iter().position(|s| s.key.value == *state);
            (0, place)
        }
        EventKind::Printing { .. } => (1, None),
        _ => (2, None),
    });
    let mut parts = Vec::new();
    // States of one date make one part.
    let is_state = |event: &Event| matches!(event.what, EventKind::State { .. });
    let alike = |a: &&Event, b: &&Event| is_state(a) && is_state(b) && a.date == b.date;
    for alike in events.chunk_by(alike) {
        let Some(first) = alike.first() else { continue };
        // The date stands once: after the name, or here.
        let date = Some(&first.date).filter(|date| Some(*date) != begun);
        let part = match &first.what {
            EventKind::State { .. } => states(here, design, begun, alike),
            EventKind::Printing { printing, .. } => {
                let to =
                    here.href_part(&Address::Design(key.clone()), Fragment::Printing(printing));
                let name = CleanHtml::text(&here.printing_name(design, printing));
                Some(CleanHtml::link(&to, &name))
            }
            EventKind::Matrix { matrix, .. } => matrix_line(here, design, matrix),
            _ => None,
        };
        let exact = date.and_then(|date| exact(here, when, date, dates::once));
        parts.extend(part.map(|part| match exact {
            Some(exact) => part.then(" ").and(&exact),
            None => part,
        }));
    }
    Some(CleanHtml::join(
        [&name, &CleanHtml::join(&parts, "; ")],
        ": ",
    ))
}

/// "states *i* and *ii*"; `None` for the only state of a print that was begun in the year, which says nothing new.
fn states(
    here: &Here<'_>,
    design: &Design,
    begun: Option<&Date>,
    events: &[&Event],
) -> Option<CleanHtml> {
    let states = events.iter().filter_map(|event| match &event.what {
        EventKind::State { state, .. } => Some(state),
        _ => None,
    });
    let states: Vec<&Key> = states.collect();
    let first = states.first()?;
    let numeral = here.book.studies.numeral(&design.key, first);
    if numeral.is_some_and(Numeral::is_only) {
        let only = CleanHtml::text(here.words().word("only-state"));
        return Some(only).filter(|_| begun.is_none());
    }
    let numerals: Vec<CleanHtml> = states
        .iter()
        .map(|state| linked_numeral(here, &design.key, state))
        .collect();
    let all = enumeration::together(here, &numerals);
    let words = here.words();
    Some(words.html("event-states", Some(states.len()), &[("states", &all)]))
}

/// "key block destroyed".
fn matrix_line(here: &Here<'_>, design: &Design, matrix: &Key) -> Option<CleanHtml> {
    let matrix = design.matrix(matrix)?;
    let fate = matrix.now.as_ref()?.state.value;
    let to = here.href_part(
        &Address::Design(design.key.clone()),
        Fragment::Matrix(&matrix.key),
    );
    let name = CleanHtml::text(&here.matrix_name(design, &matrix.key));
    let words = here.words();
    let fate = CleanHtml::text(words.listed("matrix-fate", fate));
    let given = [("matrix", &CleanHtml::link(&to, &name)), ("fate", &fate)];
    Some(words.html("event-matrix", None, &given))
}

/// "(May 1927)": a date in brackets, in quiet ink; `None` where the heading says it all.
fn exact(
    here: &Here<'_>,
    when: &str,
    date: &Date,
    say: fn(&Date, &Words) -> String,
) -> Option<CleanHtml> {
    let said = say(date, here.words());
    (said != when).then(|| CleanHtml::quiet(&format!("({said})")))
}

/// The heading of a date: the year of its first day, or of its last where the beginning is open or
/// unknown. A date without a year is its own heading.
fn heading(here: &Here<'_>, date: &Date) -> String {
    let day = date.earliest().day().or(date.latest().day());
    match day {
        Some(day) if day.year > 0 => day.year.to_string(),
        _ => dates::once(date, here.words()),
    }
}

/// An event of no print in a line; `None` where its record is not published.
fn event_line(here: &Here<'_>, when: &str, event: &Event) -> Option<CleanHtml> {
    let words = here.words();
    let of_person = |id: &str, key: &Key| words.html(id, None, &[("person", &here.person(key))]);
    let mut say: fn(&Date, &Words) -> String = dates::once;
    let line = match &event.what {
        EventKind::Born(key) => of_person("event-born", key),
        EventKind::Died(key) => of_person("event-died", key),
        EventKind::Active(key) => {
            say = dates::throughout;
            of_person("event-active", key)
        }
        EventKind::Series(key) => {
            say = dates::throughout;
            let record = here.public().series.get(key)?;
            let series = here.series_record(key);
            // A form says that it was published; without one the date may be that of its prints.
            let id = match record.issued {
                Some(_) => "event-series-published",
                None => "event-series",
            };
            words.html(id, None, &[("series", &series)])
        }
        EventKind::Document(key) => {
            say = dates::throughout;
            let document = here.public().documents.get(key)?;
            let link = here.link(
                &Address::Document(key.clone()),
                &here.document_name(document),
            );
            words.html("event-document", None, &[("document", &link)])
        }
        EventKind::Exhibition(key) => {
            say = dates::throughout;
            let exhibition = here.public().exhibitions.get(key)?;
            let venue =
                exhibition
                    .venue
                    .as_ref()
                    .map_or_else(CleanHtml::empty, |venue| match venue {
                        Venue::Holder(holder) => here.holder_and_city(&holder.value),
                        Venue::Named(name) => CleanHtml::text(name),
                    });
            let place = exhibition.town.as_deref().unwrap_or_default();
            let whole = CleanHtml::join(
                [&here.exhibition(key), &venue, &CleanHtml::text(place)],
                ", ",
            );
            words.html("event-exhibition", None, &[("exhibition", &whole)])
        }
        EventKind::Design(_)
        | EventKind::State { .. }
        | EventKind::Printing { .. }
        | EventKind::Matrix { .. } => return None,
    };
    Some(match exact(here, when, &event.date, say) {
        Some(exact) => line.then(" ").and(&exact),
        None => line,
    })
}

/// A numeral as a link to its state; "only state" where a design has one.
fn linked_numeral(here: &Here<'_>, design: &Key, state: &Key) -> CleanHtml {
    let to = here.href_part(&Address::Design(design.clone()), Fragment::State(state));
    CleanHtml::link(&to, &here.numeral(design, state))
}
