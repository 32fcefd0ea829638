//! A row as it is told to the registrar: what was understood, what not, what is doubtful or missing, what it seems to be in
//! the census, what would change.
//!
//! The page and the table that may be mailed are made of it: of records of the catalogue it shows only what readers may
//! know. A record that is not published is not named, and of a record with private fields no value is shown.

use serde::Serialize;

use super::account::is_doubtful;
use super::facts::{Understood, title, understood};
use super::reported::Reported;
use super::words;
use crate::exchange::intake::columns::Holds;
use crate::exchange::intake::proposal::{
    Correction, DesignIs, ProposedDesign, ProposedRow, RowStanding,
};
use crate::model::key::{ImpressionKey, Key};

/// A row.
#[derive(Clone, Debug, Serialize)]
pub(super) struct RowView {
    /// Its number in the file.
    pub row: u32,
    /// Its accession number.
    pub accession: String,
    /// Its title as it was understood.
    pub title: String,
    /// Its design.
    pub design: String,
    /// What it is in the census.
    pub standing: String,
    /// What was understood.
    pub understood: Vec<Understood>,
    /// The words that were not, by column.
    pub unread: Vec<Understood>,
    /// What is doubtful.
    pub doubts: Vec<String>,
    /// Records that it may be.
    pub may_be: Vec<String>,
    /// What the columns of the file have for other rows.
    pub missing: Vec<&'static str>,
    /// What would change in the record.
    pub changes: Vec<Change>,
    /// Where the record says something else and stays.
    pub differences: Vec<Change>,
}

/// What would change in a record.
#[derive(Clone, Debug, Serialize)]
pub(super) struct Change {
    /// Of what.
    pub label: String,
    /// What is recorded.
    pub is: String,
    /// What the row says.
    pub would_be: String,
}

/// What a description of a sheet usually has.
struct Expected {
    name: &'static str,
    columns: &'static [Holds],
    is_there: fn(&ProposedRow) -> bool,
}

const EXPECTED: [Expected; 6] = [
    Expected {
        name: "accession number",
        columns: &[Holds::Accession],
        is_there: |row| row.accession.is_some(),
    },
    Expected {
        name: "title",
        columns: &[Holds::Title, Holds::Design, Holds::CatalogueNumber],
        is_there: |row| {
            let facts = &row.facts;
            facts.title.is_some() || facts.own.design.is_some() || !facts.references.is_empty()
        },
    },
    Expected {
        name: "date",
        columns: &[Holds::Date],
        is_there: |row| !row.facts.dates.is_empty(),
    },
    Expected {
        name: "technique",
        columns: &[Holds::Medium],
        is_there: |row| !row.facts.techniques.is_empty(),
    },
    Expected {
        name: "size",
        columns: &[Holds::Dimensions, Holds::Height],
        is_there: |row| !row.facts.sizes.is_empty(),
    },
    Expected {
        name: "credit line",
        columns: &[Holds::Credit],
        is_there: |row| row.facts.credit.is_some(),
    },
];

/// What a description of a sheet usually has and no column of the file holds.
pub(super) fn without_column(reported: &Reported<'_>) -> Vec<&'static str> {
    let absent = EXPECTED.iter().filter(|of| !has_column(reported, of));
    absent.map(|of| of.name).collect()
}

fn has_column(reported: &Reported<'_>, expected: &Expected) -> bool {
    let mut columns = reported.proposal.columns.iter();
    columns.any(|column| column.filled > 0 && expected.columns.contains(&column.holds))
}

/// What a row lacks of what other rows of the file have.
pub(super) fn missing(reported: &Reported<'_>, row: &ProposedRow) -> Vec<&'static str> {
    if matches!(row.standing, RowStanding::Nothing | RowStanding::LeftOut) {
        return Vec::new();
    }
    let missing = EXPECTED
        .iter()
        .filter(|of| has_column(reported, of) && !(of.is_there)(row));
    missing.map(|of| of.name).collect()
}

/// Whether there is something to look at.
pub(super) fn is_to_look_at(reported: &Reported<'_>, row: &ProposedRow) -> bool {
    if row.standing == RowStanding::LeftOut {
        return false;
    }
    is_doubtful(row)
        || !row.unread.is_empty()
        || matches!(row.standing, RowStanding::Corrected(..))
        || !missing(reported, row).is_empty()
}

impl RowView {
    /// A row, with the names of the columns.
    pub fn of(reported: &Reported<'_>, columns: &[String], row: &ProposedRow) -> RowView {
        RowView {
            row: row.row,
            accession: row.accession.clone().unwrap_or_default(),
            title: title(&row.facts),
            design: design_of(reported, row),
            standing: standing(reported, &row.standing),
            understood: understood(reported, &row.facts),
            unread: unread(row, columns),
            doubts: doubts(row, columns),
            may_be: may_be(reported, row),
            missing: missing(reported, row),
            changes: changes(reported, &row.standing, |correction| !correction.is_kept),
            differences: changes(reported, &row.standing, |correction| correction.is_kept),
        }
    }
}

/// The words of a row that were not understood, by the names of the columns.
pub(super) fn unread(row: &ProposedRow, columns: &[String]) -> Vec<Understood> {
    let unread = row.unread.iter().map(|(column, text)| Understood {
        label: columns.get(*column).cloned().unwrap_or_default(),
        text: text.clone(),
    });
    unread.collect()
}

/// Records that a row may be, with the reasons, as far as the house may know of them.
pub(super) fn may_be(reported: &Reported<'_>, row: &ProposedRow) -> Vec<String> {
    let told = row.may_be.iter().filter(|other| !other.is_private);
    let told = told.filter_map(|other| {
        let number = published_number(reported, &other.impression)?;
        Some(format!("{number}: {}", other.why))
    });
    told.collect()
}

/// What is doubtful about a row, each doubt once.
pub(super) fn doubts(row: &ProposedRow, columns: &[String]) -> Vec<String> {
    let mut told: Vec<String> = Vec::new();
    for doubt in &row.doubts {
        let doubt = words::doubt(doubt, columns);
        if !told.contains(&doubt) {
            told.push(doubt);
        }
    }
    told
}

/// The number of an impression as readers cite it; `None` where they may not know of it.
fn published_number(reported: &Reported<'_>, key: &ImpressionKey) -> Option<String> {
    let catalogue = reported.catalogue;
    let record = catalogue.published_impression(catalogue.impression(key)?);
    record.publish.then(|| catalogue.sheet_number(key))
}

/// What a row is in the census, in words.
pub(super) fn standing(reported: &Reported<'_>, standing: &RowStanding) -> String {
    let recorded = |key: &ImpressionKey| {
        published_number(reported, key)
            .map_or_else(|| "recorded".to_owned(), |n| format!("recorded as {n}"))
    };
    match standing {
        RowStanding::New => "not yet recorded".to_owned(),
        RowStanding::Unchanged(key) => format!("{}, unchanged", recorded(key)),
        RowStanding::Corrected(key, _) => format!("{}, and the row differs", recorded(key)),
        RowStanding::Nothing => "nothing that a record could hold".to_owned(),
        RowStanding::LeftOut => "left out by the editors".to_owned(),
    }
}

/// The corrections of a kind. Words of the holder that the record did not have yet are not told: every record gets them.
pub(super) fn changes(
    reported: &Reported<'_>,
    standing: &RowStanding,
    is_asked: impl Fn(&Correction) -> bool,
) -> Vec<Change> {
    let RowStanding::Corrected(key, corrections) = standing else {
        return Vec::new();
    };
    let catalogue = reported.catalogue;
    let is_shown = !catalogue.redacted.impressions.contains_key(key)
        && published_number(reported, key).is_some();
    let change = |correction: &Correction| Change {
        label: key_in_words(&correction.key),
        is: match &correction.is {
            None => "nothing".to_owned(),
            Some(_) if !is_shown => "something else".to_owned(),
            Some(text) => value_in_words(text),
        },
        would_be: correction
            .would_be
            .as_deref()
            .map_or_else(|| "nothing".to_owned(), value_in_words),
    };
    let is_new_word =
        |correction: &Correction| correction.is.is_none() && correction.key.starts_with("as_given");
    let asked = corrections
        .iter()
        .filter(|correction| is_asked(correction) && !is_new_word(correction));
    asked.map(change).collect()
}

/// A value of a record in words: `[212, 301]` is 212 × 301 mm, and lists and tables lose their marks.
fn value_in_words(value: &str) -> String {
    let list = value
        .strip_prefix('[')
        .and_then(|rest| rest.strip_suffix(']'));
    let Some(list) = list else {
        return value.to_owned();
    };
    if let Some((height, width)) = list.split_once(',')
        && let (Ok(_), Ok(_)) = (height.trim().parse::<f64>(), width.trim().parse::<f64>())
    {
        return format!("{} × {} mm", height.trim(), width.trim());
    }
    let plain = list.replace(['"', '{', '}'], "").replace(" = ", ": ");
    plain.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// A key of a record in words: `sheet.image` is the image of the sheet.
fn key_in_words(key: &str) -> String {
    let known = match key {
        "credit" => "credit line",
        "accession" => "accession number",
        "former_accessions" => "former numbers",
        "sheet.size" => "size of the sheet",
        "sheet.image" => "size of the image",
        "sheet.platemark" => "size of the platemark",
        "sheet.date" => "when it was pulled",
        "sheet.paper" => "paper",
        "sheet.unsaid" => "size, not said of what",
        "status" => "where it is",
        "sheet.said" => "sizes as written",
        "web" => "the holder’s own page",
        "ids" => "identifiers",
        "numbering" => "number",
        "kind" => "kind of impression",
        _ => "",
    };
    if !known.is_empty() {
        return known.to_owned();
    }
    match key.strip_prefix("as_given.") {
        Some(field) => format!("your words in {}", field.trim_matches('"')),
        None => key.replace(['.', '_', '-'], " "),
    }
}

/// The design of a row, in words.
pub(super) fn design_of(reported: &Reported<'_>, row: &ProposedRow) -> String {
    let designs = &reported.proposal.designs;
    match row.design.and_then(|at| designs.get(at)) {
        Some(design) => design_in_words(reported, design),
        None if matches!(row.standing, RowStanding::Nothing | RowStanding::LeftOut) => {
            String::new()
        }
        None => "nothing tells which design".to_owned(),
    }
}

/// A design by its number and title.
pub(super) fn design_in_words(reported: &Reported<'_>, design: &ProposedDesign) -> String {
    match &design.is {
        DesignIs::Recorded(key) => recorded_design(reported, key),
        DesignIs::OneOf(keys) => {
            let each: Vec<String> = keys.iter().map(|k| recorded_design(reported, k)).collect();
            format!("{}: not settled", each.join(" or "))
        }
        DesignIs::New => match &design.title {
            Some(title) => format!("{title}: not in the catalogue"),
            None => "a design that is not in the catalogue".to_owned(),
        },
    }
}

fn recorded_design(reported: &Reported<'_>, key: &Key) -> String {
    let catalogue = reported.catalogue;
    let redacted = catalogue.redacted.designs.get(key);
    let Some(design) = redacted.or_else(|| catalogue.designs.get(key)) else {
        return key.to_string();
    };
    match design.title() {
        Some(title) => format!("{}. {}", design.number, title.text.value),
        None => design.number.clone(),
    }
}
