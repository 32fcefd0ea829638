//! What the arguments of `add` ask for.

use std::path::Path;

use super::kinds::{self, RecordKind};
use super::options::{Added, OwnKey};
use crate::cli::designs::{named, say_left_out};
use crate::cli::outcome::Outcome;
use crate::model::key::Key;
use crate::read;
use crate::read::next_record::{Given, IN_SERIES, NewRecord, POSITION};
use crate::read::refusal::Refusal;
use crate::study::search::folding::{fold, normalised};

/// What the arguments ask for.
pub(super) struct Request {
    /// The kind of the record.
    pub kind: &'static RecordKind,
    /// The record.
    pub new: NewRecord,
    /// What is known of it.
    pub given: Vec<Given>,
    /// Whether the rest is asked for in a terminal: no option says anything of the record.
    pub asks: bool,
}

/// Why the arguments cannot be used.
pub(super) enum Unusable {
    /// The user was told.
    Said(Outcome),
    /// For this reason.
    Refused(Refusal),
}

impl Request {
    /// The request of the arguments, for the catalogue in `dir`.
    pub(super) fn of(dir: &Path, what: &Added) -> Result<Request, Unusable> {
        let options = |kind: &'static RecordKind, values: &[(&str, &Option<String>)]| {
            let given = kind.questions.iter().filter_map(|question| {
                let (_, value) = values.iter().find(|(key, _)| *key == question.key)?;
                question.given(value.as_deref()?)
            });
            given.collect::<Vec<Given>>()
        };
        let (kind, new, own, options) = match what {
            Added::Impression {
                design,
                holder,
                accession,
                status,
                kind,
                ..
            } => {
                let reading = read::read(dir);
                let design = named(&reading.catalogue, design).map_err(Unusable::Said)?;
                say_left_out(&reading.findings);
                let given = [
                    ("holder", holder),
                    ("accession", accession),
                    ("status", status),
                    ("kind", kind),
                ];
                let new = NewRecord::Impression {
                    design: design.key.clone(),
                };
                (
                    &kinds::IMPRESSION,
                    new,
                    None,
                    options(&kinds::IMPRESSION, &given),
                )
            }
            Added::Design {
                number,
                title,
                date,
                technique,
                series,
                position,
                ..
            } => {
                let given = [
                    ("titles", title),
                    ("date", date),
                    ("technique", technique),
                    (IN_SERIES, series),
                    (POSITION, position),
                ];
                let new = NewRecord::Design {
                    number: number.clone(),
                };
                (&kinds::DESIGN, new, None, options(&kinds::DESIGN, &given))
            }
            Added::Holder {
                name,
                kind,
                place,
                country,
                named,
                ..
            } => {
                let given = [("kind", kind), ("place", place), ("country", country)];
                let new = NewRecord::Holder {
                    key: named.key.clone(),
                    of_name: key_of(name),
                };
                let own = Given::text("name", name);
                (
                    &kinds::HOLDER,
                    new,
                    Some(own),
                    options(&kinds::HOLDER, &given),
                )
            }
            Added::Person {
                name,
                roles,
                born,
                died,
                named,
                ..
            } => {
                let given = [("roles", roles), ("born", born), ("died", died)];
                let key = key_or_refusal(named, name)?;
                let own = Given::text("name", name);
                let options = options(&kinds::PERSON, &given);
                (
                    &kinds::PERSON,
                    NewRecord::Person { key },
                    Some(own),
                    options,
                )
            }
            Added::Document {
                title,
                kind,
                date,
                holder,
                shelfmark,
                named,
                ..
            } => {
                let given = [
                    ("kind", kind),
                    ("date", date),
                    ("holder", holder),
                    ("shelfmark", shelfmark),
                ];
                let key = key_or_refusal(named, title)?;
                let own = Given::text("title", title);
                let options = options(&kinds::DOCUMENT, &given);
                (
                    &kinds::DOCUMENT,
                    NewRecord::Document { key },
                    Some(own),
                    options,
                )
            }
            Added::Mark {
                name, kind, text, ..
            } => {
                let given = [("kind", kind), ("text", text)];
                let key = key_or_refusal(&OwnKey { key: None }, name)?;
                let options = options(&kinds::MARK, &given);
                (&kinds::MARK, NewRecord::Mark { key }, None, options)
            }
            Added::Series {
                title,
                issued,
                date,
                publisher,
                named,
                ..
            } => {
                let given = [("issued", issued), ("date", date), ("publisher", publisher)];
                let key = key_or_refusal(named, title)?;
                let own = Given::text("title", title);
                let options = options(&kinds::SERIES, &given);
                (
                    &kinds::SERIES,
                    NewRecord::Series { key },
                    Some(own),
                    options,
                )
            }
        };
        Ok(Request {
            kind,
            new,
            asks: options.is_empty(),
            given: own.into_iter().chain(options).collect(),
        })
    }
}

/// The key that a name gives: "Ōsaka Museum" is `osaka-museum`. `None` for a name without Latin letters and figures.
fn key_of(name: &str) -> Option<Key> {
    Key::nearest_form(&fold(&normalised(name)))
}

fn key_or_refusal(named: &OwnKey, name: &str) -> Result<Key, Unusable> {
    let key = named.key.clone().or_else(|| key_of(name));
    key.ok_or_else(|| {
        Unusable::Refused(Refusal {
            message: format!("“{name}” gives no key"),
            help: "name one with --key: lower-case letters and digits, joined by single hyphens"
                .to_owned(),
            is_usage: true,
        })
    })
}
