//! The observations of several sheets, point by point, and the points at which they differ; above them what else is
//! recorded of the sheets ([`super::sheets`]).

use serde::Serialize;

use super::rows::{self, DataValue, Row, RowData, Verdict};
use super::sheets::{self, ComparedSheet};
use crate::model::design::Design;
use crate::model::impression::Identification;
use crate::model::point::{Observation, ObservedValue, Point, PointKind, Value};
use crate::page::phrases::claims;
use crate::page::phrases::readings;
use crate::page::phrases::values;
use crate::page::setting::address::{Address, Fragment};
use crate::page::setting::book::Here;
use crate::page::setting::html::CleanHtml;
use crate::page::setting::words::Argument;
use crate::study::allowed::is_seen_to_differ;

/// The table of a comparison.
#[derive(Serialize)]
pub(super) struct Observations {
    /// State and printing of the sheets, their sizes, paper, marks and condition.
    pub facts: Vec<Row>,
    /// The observations.
    pub rows: Vec<Row>,
    /// Points without an observation of any of the sheets.
    pub unseen: Vec<String>,
    /// Whether all sheets are of one design.
    is_of_one_design: bool,
}

/// The design that all sheets are of; `None` where they are of several.
pub(super) fn one_design<'d>(sheets: &[ComparedSheet<'d>]) -> Option<&'d Design> {
    let (design, _) = sheets.first()?;
    let is_it = |(other, _): &ComparedSheet<'_>| other.key == design.key;
    sheets.iter().all(is_it).then_some(*design)
}

impl Observations {
    /// The observations of `sheets`, in the order of the record's points. Sheets of several designs have no point in
    /// common.
    pub fn of(here: &Here<'_>, sheets: &[ComparedSheet<'_>]) -> Observations {
        let mut rows = Vec::new();
        let mut unseen = Vec::new();
        let design = one_design(sheets);
        for point in design.into_iter().flat_map(|design| &design.points) {
            match design.and_then(|design| row(here, design, sheets, point)) {
                Some(row) => rows.push(row),
                None => unseen.push(point.ask.value.clone()),
            }
        }
        // States and printings of two designs have nothing to do with each other.
        let mut facts = match design {
            Some(_) => readings_of(here, sheets),
            None => Vec::new(),
        };
        facts.extend(sheets::rows(here, sheets));
        Observations {
            facts,
            rows,
            unseen,
            is_of_one_design: design.is_some(),
        }
    }

    /// The same with the rows that differ first; rows of one verdict keep their order.
    pub fn differing_first(mut self) -> Observations {
        self.rows.sort_by_key(|row| row.verdict);
        self
    }

    /// The word for a comparison without any point.
    pub fn without_points(&self) -> &'static str {
        if self.is_of_one_design {
            "nothing-observed"
        } else {
            "compared-across-designs"
        }
    }

    /// "They differ at 2 of the 9 points recorded."
    pub fn in_words(&self, here: &Here<'_>) -> String {
        let differing = self.rows.iter().filter(|r| r.verdict == Verdict::Differ);
        let all = self.rows.len().to_string();
        match self.rows.len() {
            0 => here.words().word(self.without_points()).to_owned(),
            _ => count_in_words(here, differing.count(), &all),
        }
    }
}

/// "They differ at 2 of the 9 points recorded", with the total as text.
pub(super) fn count_in_words(here: &Here<'_>, differing: usize, all: &str) -> String {
    let given = [
        ("n", Argument::Count(differing)),
        ("all", Argument::Text(all)),
    ];
    here.words().with("count-differ", &given)
}

/// The rows for state and printing, which stand above the others.
fn readings_of(here: &Here<'_>, sheets: &[ComparedSheet<'_>]) -> Vec<Row> {
    let row = |word: &str, say: &dyn Fn(&Design, &Identification) -> CleanHtml| {
        let cells = sheets.iter().map(|(design, sheet)| {
            let reading = sheet.identified.as_ref();
            reading.map_or_else(CleanHtml::empty, |reading| say(design, reading))
        });
        let ask = here.words().word(word).to_owned();
        rows::texts(here, ask, cells.collect(), &CleanHtml::empty())
    };
    [
        row("state", &|design, reading| {
            readings::state_alone(here, design, reading)
        }),
        row("printing", &|design, reading| {
            CleanHtml::text(&readings::printing_alone(here, design, reading))
        }),
    ]
    .into_iter()
    .flatten()
    .collect()
}

/// The row of a point; `None` without an observation of any sheet.
fn row(
    here: &Here<'_>,
    design: &Design,
    sheets: &[ComparedSheet<'_>],
    point: &Point,
) -> Option<Row> {
    let seen: Vec<Option<&Observation>> = sheets
        .iter()
        .map(|(_, i)| i.observed.iter().find(|o| o.point.value == point.key.value))
        .collect();
    if seen.iter().all(Option::is_none) {
        return None;
    }
    let verdict = verdict(point, &seen);
    let address = Address::Design(design.key.clone());
    Some(Row {
        href: here.href_part(&address, Fragment::Point(&point.key.value)),
        ask: point.ask.value.clone(),
        rests: values::rests_on(here, design, point),
        data: point_data(point, &seen),
        cells: seen.iter().map(|o| cell(here, point, *o)).collect(),
        verdict,
        word: here.words().word(verdict.word_id()).to_owned(),
    })
}

fn cell(here: &Here<'_>, point: &Point, observation: Option<&Observation>) -> CleanHtml {
    match observation {
        Some(o) => {
            let text = CleanHtml::text(&values::seen(here, point, &o.seen));
            claims::doubted(here, text, &o.claim)
        }
        None => rows::not_recorded(here),
    }
}

/// The possible values of a sheet at a point; `None` where the observation decides nothing.
fn known(observation: Option<&Observation>) -> Option<Vec<&Value>> {
    match observation.map(|o| &o.seen) {
        Some(ObservedValue::OneOf(values)) => Some(values.iter().map(|v| &v.value).collect()),
        _ => None,
    }
}

/// The verdict at a point. A point that could not be seen decides nothing.
fn verdict(point: &Point, seen: &[Option<&Observation>]) -> Verdict {
    let known: Vec<Vec<&Value>> = seen.iter().filter_map(|o| known(*o)).collect();
    let differ = known.iter().enumerate().any(|(at, a)| {
        let mut others = known.iter().skip(at + 1);
        others.any(|b| is_seen_to_differ(point, a, b))
    });
    if differ {
        Verdict::Differ
    } else if known.len() == seen.len() && known.iter().all(|values| values.len() == 1) {
        Verdict::Agree
    } else {
        Verdict::CannotBeTold
    }
}

fn point_data(point: &Point, seen: &[Option<&Observation>]) -> RowData {
    let values = |observation: &Observation| {
        let known = known(Some(observation)).unwrap_or_default();
        let known = known.into_iter().cloned();
        known.map(DataValue::Value).collect()
    };
    RowData {
        fact: false,
        tolerance: match point.kind {
            PointKind::Measure { tolerance, .. } => Some(tolerance),
            _ => None,
        },
        share: None,
        unit: None,
        seen: seen.iter().map(|o| o.map(values)).collect(),
    }
}
