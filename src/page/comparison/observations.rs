//! The observations of several sheets, point by point, and the points at which they differ.
//!
//! The page of a recorded comparison prints the rows of its sheets. The page on which the reader
//! chooses prints the rows of all sheets; its script shows those that were chosen (`Row::data`).

use serde::{Serialize, Serializer};

use crate::model::design::Design;
use crate::model::impression::{Identification, Impression};
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
    /// State and printing of the sheets.
    pub facts: Vec<Row>,
    /// The observations.
    pub rows: Vec<Row>,
    /// Points without an observation of any of the sheets.
    pub unseen: Vec<String>,
}

/// A row: one question, with an answer for each sheet.
#[derive(Serialize)]
pub(super) struct Row {
    href: String,
    ask: String,
    rests: String,
    cells: Vec<CleanHtml>,
    pub verdict: Verdict,
    word: String,
    /// The cells as data, for comparing a choice of sheets.
    #[serde(skip)]
    pub data: RowData,
}

/// A row as data, for the script of a chosen comparison.
#[derive(Serialize)]
pub(super) struct RowData {
    /// Whether it is the row of the state or the printing, where a gap leaves the verdict open.
    #[serde(skip_serializing_if = "std::ops::Not::not")]
    fact: bool,
    /// The tolerance of a measure.
    #[serde(skip_serializing_if = "Option::is_none")]
    tolerance: Option<f64>,
    /// Sheet by sheet: `null` where nothing is recorded, an empty list where the observation decides
    /// nothing, else the possible values.
    seen: Vec<Option<Vec<DataValue>>>,
}

/// A value as JSON: a number, or a word.
struct DataValue(Value);

impl Serialize for DataValue {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        match self.0.number() {
            Some(number) => serializer.serialize_f64(number),
            None => serializer.serialize_str(&self.0.to_string()),
        }
    }
}

/// The verdict of a row.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "kebab-case")]
pub(super) enum Verdict {
    /// Two sheets differ for certain.
    Differ,
    /// Not observed on all sheets, or not with enough certainty.
    CannotBeTold,
    /// All sheets agree.
    Agree,
}

impl Verdict {
    /// Every verdict, in the order of their rows.
    pub const ALL: [Verdict; 3] = [Verdict::Differ, Verdict::CannotBeTold, Verdict::Agree];

    /// The id of the word.
    pub fn word_id(self) -> &'static str {
        match self {
            Verdict::Differ => "verdict-differ",
            Verdict::CannotBeTold => "verdict-cannot-be-told",
            Verdict::Agree => "verdict-agree",
        }
    }
}

impl Observations {
    /// The observations of `sheets`, in the order of the record's points.
    pub fn of(here: &Here<'_>, design: &Design, sheets: &[&Impression]) -> Observations {
        let mut rows = Vec::new();
        let mut unseen = Vec::new();
        for point in &design.points {
            match row(here, design, sheets, point) {
                Some(row) => rows.push(row),
                None => unseen.push(point.ask.value.clone()),
            }
        }
        Observations {
            facts: facts(here, design, sheets),
            rows,
            unseen,
        }
    }

    /// The same with the rows that differ first; rows of one verdict keep their order.
    pub fn differing_first(mut self) -> Observations {
        self.rows.sort_by_key(|row| row.verdict);
        self
    }

    /// "They differ at 2 of the 9 points recorded."
    pub fn in_words(&self, here: &Here<'_>) -> String {
        let differing = self.rows.iter().filter(|r| r.verdict == Verdict::Differ);
        let all = self.rows.len().to_string();
        match self.rows.len() {
            0 => here.words().word("nothing-observed").to_owned(),
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

/// The rows for state and printing, which stand above the observations.
fn facts(here: &Here<'_>, design: &Design, sheets: &[&Impression]) -> Vec<Row> {
    let words = here.words();
    let mut rows = Vec::new();
    let mut tell = |id: &str, say: &dyn Fn(&Identification) -> CleanHtml| {
        let cells: Vec<CleanHtml> = sheets
            .iter()
            .map(|i| i.identified.as_ref().map_or_else(CleanHtml::empty, say))
            .collect();
        if cells.iter().all(CleanHtml::is_empty) {
            return;
        }
        let has_gap = cells.iter().any(CleanHtml::is_empty);
        let is_alike = cells.windows(2).all(|pair| pair.first() == pair.last());
        let verdict = match (has_gap, is_alike) {
            (true, _) => Verdict::CannotBeTold,
            (false, true) => Verdict::Agree,
            (false, false) => Verdict::Differ,
        };
        rows.push(Row {
            href: String::new(),
            ask: words.word(id).to_owned(),
            rests: String::new(),
            data: reading_data(&cells),
            cells,
            verdict,
            word: words.word(verdict.word_id()).to_owned(),
        });
    };
    tell("state", &|r| readings::state_alone(here, design, r));
    tell("printing", &|r| {
        CleanHtml::text(&readings::printing_alone(here, design, r))
    });
    rows
}

/// A row of readings as data. Readings are compared as printed; each distinct one has a number.
fn reading_data(cells: &[CleanHtml]) -> RowData {
    let place = |cell: &CleanHtml| cells.iter().position(|known| known == cell);
    let number = |cell: &CleanHtml| {
        let place = u32::try_from(place(cell)?).ok()?;
        Some(vec![DataValue(Value::Count(place))])
    };
    RowData {
        fact: true,
        tolerance: None,
        seen: cells
            .iter()
            .map(|cell| number(cell).filter(|_| !cell.is_empty()))
            .collect(),
    }
}

/// The row of a point; `None` without an observation of any sheet.
fn row(here: &Here<'_>, design: &Design, sheets: &[&Impression], point: &Point) -> Option<Row> {
    let seen: Vec<Option<&Observation>> = sheets
        .iter()
        .map(|i| i.observed.iter().find(|o| o.point.value == point.key.value))
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
        None => CleanHtml::span("quiet", &CleanHtml::text(here.words().word("not-recorded"))),
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
        known.into_iter().cloned().map(DataValue).collect()
    };
    RowData {
        fact: false,
        tolerance: match point.kind {
            PointKind::Measure { tolerance, .. } => Some(tolerance),
            _ => None,
        },
        seen: seen.iter().map(|o| o.map(values)).collect(),
    }
}
