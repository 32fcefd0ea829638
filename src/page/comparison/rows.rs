//! The rows of a comparison: one question, with an answer for each sheet and what they come to.
//!
//! A page prints the rows of its sheets. A page on which the reader chooses prints the rows of all sheets; its script
//! (`assets/compare.js`) comes to the same verdicts for those that were chosen, from [`Row::data`].

use serde::{Serialize, Serializer};

use crate::model::point::Value;
use crate::page::setting::book::Here;
use crate::page::setting::html::CleanHtml;

/// A row.
#[derive(Serialize)]
pub(super) struct Row {
    pub href: String,
    pub ask: String,
    pub rests: String,
    pub cells: Vec<CleanHtml>,
    pub verdict: Verdict,
    /// The verdict in words; of measurements with how far they lie apart.
    pub word: String,
    /// The cells as data, for comparing a choice of sheets.
    #[serde(skip)]
    pub data: RowData,
}

/// A row as data, for the script of a chosen comparison.
#[derive(Serialize)]
pub(super) struct RowData {
    /// Whether it is a fact about the sheets and no point, so that a gap leaves the verdict open.
    #[serde(skip_serializing_if = "std::ops::Not::not")]
    pub fact: bool,
    /// How far two measurements may lie apart.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub tolerance: Option<f64>,
    /// The same as a share of the larger, where that is more.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub share: Option<f64>,
    /// The unit in which the verdict says how far measurements lie apart.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub unit: Option<&'static str>,
    /// Sheet by sheet: `null` where nothing is recorded, an empty list where what is recorded decides nothing, else the
    /// possible values.
    pub seen: Vec<Option<Vec<DataValue>>>,
}

/// A value as JSON: a number, a word, or several lengths.
pub(super) enum DataValue {
    /// What was seen at a point, or the number of a text.
    Value(Value),
    /// Height and width, or one length.
    Lengths(Vec<f64>),
}

impl Serialize for DataValue {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        match self {
            DataValue::Value(value) => match value.number() {
                Some(number) => serializer.serialize_f64(number),
                None => serializer.serialize_str(&value.to_string()),
            },
            DataValue::Lengths(lengths) => lengths.serialize(serializer),
        }
    }
}

/// The verdict of a row.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "kebab-case")]
pub(super) enum Verdict {
    /// Two sheets differ for certain.
    Differ,
    /// Not known of all sheets, or not with enough certainty.
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

/// The cell of a sheet of which nothing is recorded.
pub(super) fn not_recorded(here: &Here<'_>) -> CleanHtml {
    CleanHtml::span("quiet", &CleanHtml::text(here.words().word("not-recorded")))
}

/// A row of texts, compared as printed; `None` where every cell is empty. `gap` stands in the empty ones.
pub(super) fn texts(
    here: &Here<'_>,
    ask: String,
    cells: Vec<CleanHtml>,
    gap: &CleanHtml,
) -> Option<Row> {
    if cells.iter().all(CleanHtml::is_empty) {
        return None;
    }
    let has_gap = cells.iter().any(CleanHtml::is_empty);
    let is_alike = cells.iter().all(|cell| Some(cell) == cells.first());
    let verdict = match (has_gap, is_alike) {
        (true, _) => Verdict::CannotBeTold,
        (false, true) => Verdict::Agree,
        (false, false) => Verdict::Differ,
    };
    let place = |cell: &CleanHtml| cells.iter().position(|known| known == cell);
    let number = |cell: &CleanHtml| {
        let place = u32::try_from(place(cell)?).ok()?;
        Some(vec![DataValue::Value(Value::Count(place))])
    };
    let seen = cells
        .iter()
        .map(|cell| number(cell).filter(|_| !cell.is_empty()));
    Some(Row {
        href: String::new(),
        ask,
        rests: String::new(),
        data: RowData {
            fact: true,
            tolerance: None,
            share: None,
            unit: None,
            seen: seen.collect(),
        },
        cells: cells
            .into_iter()
            .map(|cell| if cell.is_empty() { gap.clone() } else { cell })
            .collect(),
        verdict,
        word: here.words().word(verdict.word_id()).to_owned(),
    })
}

/// What is measured in a row: how far two measurements may lie apart, in its unit.
#[derive(Clone, Copy)]
pub(super) struct Measure {
    /// How far.
    pub tolerance: f64,
    /// The same as a share of the larger, where that is more.
    pub share: f64,
    /// The unit; empty for a count.
    pub unit: &'static str,
}

impl Measure {
    /// Absorbs the rounding of decimal fractions, as the script does.
    const ROUNDING: f64 = 1e-6;

    fn agree(self, one: &[f64], other: &[f64]) -> bool {
        let mut pairs = one.iter().zip(other);
        pairs.all(|(a, b)| {
            (a - b).abs() <= f64::max(self.tolerance, self.share * a.max(*b)) + Self::ROUNDING
        })
    }
}

/// A measurement of one sheet.
pub(super) enum Measured {
    /// Nothing is recorded.
    Nothing,
    /// Something is, and decides nothing: it was taken within a mount, or is not certain.
    Unsure(CleanHtml),
    /// Height and width, or one length.
    Lengths(CleanHtml, Vec<f64>),
}

/// A row of measurements; `None` where nothing is recorded of any sheet.
pub(super) fn measurements(
    here: &Here<'_>,
    ask: String,
    measure: Measure,
    sheets: Vec<Measured>,
) -> Option<Row> {
    if sheets
        .iter()
        .all(|sheet| matches!(sheet, Measured::Nothing))
    {
        return None;
    }
    let known: Vec<&Vec<f64>> = sheets
        .iter()
        .filter_map(|sheet| match sheet {
            Measured::Lengths(_, lengths) => Some(lengths),
            Measured::Nothing | Measured::Unsure(_) => None,
        })
        .collect();
    let differ = known.iter().enumerate().any(|(at, one)| {
        let mut others = known.iter().skip(at + 1);
        others.any(|other| !measure.agree(one, other))
    });
    let verdict = match (known.len() == sheets.len(), differ) {
        (false, _) => Verdict::CannotBeTold,
        (true, true) => Verdict::Differ,
        (true, false) => Verdict::Agree,
    };
    let word = here.words().word(verdict.word_id());
    let apart = apart(&known, measure.unit).filter(|_| verdict != Verdict::CannotBeTold);
    let word = apart.map_or_else(|| word.to_owned(), |apart| format!("{word} ({apart})"));
    let seen = sheets.iter().map(|sheet| match sheet {
        Measured::Nothing => None,
        Measured::Unsure(_) => Some(Vec::new()),
        Measured::Lengths(_, lengths) => Some(vec![DataValue::Lengths(lengths.clone())]),
    });
    Some(Row {
        href: String::new(),
        ask,
        rests: String::new(),
        data: RowData {
            fact: true,
            tolerance: Some(measure.tolerance),
            share: Some(measure.share),
            unit: Some(measure.unit),
            seen: seen.collect(),
        },
        cells: sheets
            .into_iter()
            .map(|sheet| match sheet {
                Measured::Nothing => not_recorded(here),
                Measured::Unsure(cell) | Measured::Lengths(cell, _) => cell,
            })
            .collect(),
        verdict,
        word,
    })
}

/// How far measurements lie apart at most, length by length: "3 × 1.5 mm"; `None` where they are the same.
fn apart(known: &[&Vec<f64>], unit: &str) -> Option<String> {
    let count = known.first()?.len();
    let spans: Vec<f64> = (0..count)
        .map(|at| {
            let lengths = known.iter().filter_map(|lengths| lengths.get(at));
            let least = lengths.clone().copied().fold(f64::INFINITY, f64::min);
            let most = lengths.copied().fold(f64::NEG_INFINITY, f64::max);
            ((most - least) * 100.0).round() / 100.0
        })
        .collect();
    if spans.iter().all(|span| *span == 0.0) {
        return None;
    }
    let spans: Vec<String> = spans.iter().map(f64::to_string).collect();
    let unit = if unit.is_empty() {
        String::new()
    } else {
        format!(" {unit}")
    };
    Some(format!("{}{unit}", spans.join(" × ")))
}
