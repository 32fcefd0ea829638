//! The chronology: dated events, year by year (`docs/definitions.md`, "Order of lists").

use serde::Serialize;

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
    #[serde(skip)]
    begun: Vec<Hung>,
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
    let mut events = here.book.studies.chronology.iter().peekable();
    while let Some(event) = events.next() {
        let mut states = Vec::new();
        if let EventKind::State { design, state } = &event.what {
            // States of one design with the same date make one event.
            states.push(state);
            while let Some(next) = events.peek() {
                match &next.what {
                    EventKind::State {
                        design: other,
                        state,
                    } if other == design && next.date == event.date => {
                        states.push(state);
                        events.next();
                    }
                    _ => break,
                }
            }
        }
        let Some(told) = event_line(here, event, &states) else {
            continue;
        };
        let when = heading(here, &event.date);
        let whole = match event.what {
            EventKind::Active(_) | EventKind::Exhibition(_) | EventKind::Document(_) => {
                dates::throughout(&event.date, here.words())
            }
            _ => dates::once(&event.date, here.words()),
        };
        let told = if whole == when {
            told
        } else {
            told.then(" ").and(&CleanHtml::quiet(&format!("({whole})")))
        };
        if years.last().is_none_or(|year| year.when != when) {
            years.push(Year {
                when,
                events: Vec::new(),
                pictures: CleanHtml::empty(),
                begun: Vec::new(),
            });
        }
        if let Some(year) = years.last_mut() {
            year.events.push(told);
            if let EventKind::Design(key) = &event.what
                && year.begun.len() < PICTURES
            {
                let design = here.public().designs.get(key);
                year.begun.extend(design.map(|d| wall::design(here, d)));
            }
        }
    }
    for year in &mut years {
        year.pictures = wall::row(here, &year.begun);
    }
    years
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

/// An event in a line; `None` where its record is not published.
fn event_line(here: &Here<'_>, event: &Event, states: &[&Key]) -> Option<CleanHtml> {
    let words = here.words();
    let of_person = |id: &str, key: &Key| words.html(id, None, &[("person", &here.person(key))]);
    Some(match &event.what {
        EventKind::Born(key) => of_person("event-born", key),
        EventKind::Active(key) => of_person("event-active", key),
        EventKind::Died(key) => of_person("event-died", key),
        EventKind::Design(key) => {
            here.public().designs.get(key)?;
            here.design(key)
        }
        EventKind::State { design, .. } => {
            here.public().designs.get(design)?;
            let is_only = states.iter().any(|state| {
                let numeral = here.book.studies.numeral(design, state);
                numeral.is_some_and(Numeral::is_only)
            });
            if is_only {
                let design = here.design(design);
                return Some(words.html("event-only-state", None, &[("design", &design)]));
            }
            let numerals: Vec<CleanHtml> = states
                .iter()
                .map(|state| linked_numeral(here, design, state))
                .collect();
            words.html(
                "event-states",
                Some(states.len()),
                &[
                    ("states", &enumeration::together(here, &numerals)),
                    ("design", &here.design(design)),
                ],
            )
        }
        EventKind::Printing { design, printing } => {
            let record = here.public().designs.get(design)?;
            let to = here.href_part(
                &Address::Design(design.clone()),
                Fragment::Printing(printing),
            );
            let name = CleanHtml::text(&here.printing_name(record, printing));
            words.html(
                "event-printing",
                None,
                &[
                    ("printing", &CleanHtml::link(&to, &name)),
                    ("design", &here.design(design)),
                ],
            )
        }
        EventKind::Matrix { design, matrix } => {
            let record = here.public().designs.get(design)?;
            let matrix = record.matrix(matrix)?;
            let fate = matrix.now.as_ref()?.state.value;
            let to = here.href_part(
                &Address::Design(design.clone()),
                Fragment::Matrix(&matrix.key),
            );
            let name = CleanHtml::text(&here.matrix_name(record, &matrix.key));
            words.html(
                "event-matrix",
                None,
                &[
                    ("matrix", &CleanHtml::link(&to, &name)),
                    ("fate", &CleanHtml::text(words.listed("matrix-fate", fate))),
                    ("design", &here.design(design)),
                ],
            )
        }
        EventKind::Document(key) => {
            let document = here.public().documents.get(key)?;
            let link = here.link(
                &Address::Document(key.clone()),
                &here.document_name(document),
            );
            words.html("event-document", None, &[("document", &link)])
        }
        EventKind::Exhibition(key) => {
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
    })
}

/// A numeral as a link to its state; "only state" where a design has one.
fn linked_numeral(here: &Here<'_>, design: &Key, state: &Key) -> CleanHtml {
    let to = here.href_part(&Address::Design(design.clone()), Fragment::State(state));
    CleanHtml::link(&to, &here.numeral(design, state))
}
