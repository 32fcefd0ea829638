//! What `census --json` prints (docs/JSON.md).

use serde::Serialize;

use super::scope::ScopedCensus;
use crate::study::DesignStudy;
use crate::study::census::{Row, Sheets};
use crate::study::crossing::StateAndPrinting;
use crate::study::editions::EditionStudy;
use crate::study::survival::Survival;

/// What `census --json` prints.
#[derive(Debug, Serialize)]
pub(super) struct CensusDocument {
    /// The design's key; null for a series and for the whole catalogue.
    design: Option<String>,
    /// The key of the series, or its name where it has no record; null for a design and for the whole catalogue.
    series: Option<String>,
    sheets: SheetCount,
    by: CountsBy,
    /// The declared editions of a design; empty for the whole catalogue.
    editions: Vec<EditionEntry>,
    /// Null where nothing is estimated, and for the whole catalogue.
    survival: Option<SurvivalEntry>,
}

#[derive(Debug, Serialize)]
struct SheetCount {
    at_least: usize,
    at_most: usize,
    exact: bool,
}

#[derive(Debug, Serialize)]
struct CountsBy {
    holder: Vec<ValueCount>,
    country: Vec<ValueCount>,
    city: Vec<ValueCount>,
    state: Vec<ValueCount>,
    printing: Vec<ValueCount>,
    kind: Vec<ValueCount>,
    class: Vec<ValueCount>,
    status: Vec<ValueCount>,
    crossing: Vec<CrossedCount>,
}

#[derive(Debug, Serialize)]
struct ValueCount {
    /// Null for sheets of which this is not recorded.
    key: Option<String>,
    sheets: SheetCount,
}

/// The sheets of a state in a printing.
#[derive(Debug, Serialize)]
struct CrossedCount {
    state: Option<String>,
    printing: Option<String>,
    sheets: SheetCount,
    /// How many of them are identified as probable or possible only.
    uncertain: usize,
    /// Of how many what was seen contradicts the identification.
    contradicted: usize,
}

#[derive(Debug, Serialize)]
struct EditionEntry {
    printing: String,
    declared: Option<u32>,
    printed: Option<u32>,
    sheets: SheetCount,
    claims: Vec<u32>,
    located: Vec<u32>,
    repeated: Vec<u32>,
    outside: Vec<u32>,
}

#[derive(Debug, Serialize)]
struct SurvivalEntry {
    estimate: f64,
    low: f64,
    high: f64,
    sheets: usize,
    seen_once: usize,
    seen_twice: usize,
}

impl CensusDocument {
    /// The census of a design, a series or everything.
    pub(super) fn of(counted: &ScopedCensus<'_>) -> CensusDocument {
        let census = counted.census();
        let by = &census.by;
        let study = counted.design().map(|(_, study)| study);
        CensusDocument {
            design: counted.design().map(|(design, _)| design.key.to_string()),
            series: match counted {
                ScopedCensus::Series(of, _) => Some(of.as_str().to_owned()),
                _ => None,
            },
            sheets: count(census.sheets),
            by: CountsBy {
                holder: rows(&by.holder),
                country: rows(&by.country),
                city: rows(&by.city),
                state: rows(&by.state),
                printing: rows(&by.printing),
                kind: rows(&by.kind),
                class: rows(&by.class),
                status: rows(&by.status),
                crossing: study.map_or_else(Vec::new, |study| {
                    by.crossing.iter().map(|row| both(study, row)).collect()
                }),
            },
            editions: study
                .into_iter()
                .flat_map(|study| &study.editions)
                .map(edition)
                .collect(),
            survival: study.and_then(|study| survival(&study.survival)),
        }
    }
}

fn count(sheets: Sheets) -> SheetCount {
    SheetCount {
        at_least: sheets.at_least,
        at_most: sheets.at_most,
        exact: sheets.exact,
    }
}

fn rows<K: ToString>(rows: &[Row<K>]) -> Vec<ValueCount> {
    let row = |row: &Row<K>| ValueCount {
        key: row.key.as_ref().map(ToString::to_string),
        sheets: count(row.sheets),
    };
    rows.iter().map(row).collect()
}

fn both(study: &DesignStudy, row: &Row<StateAndPrinting>) -> CrossedCount {
    let not_firm = study.firmness.among(&row.allowing);
    let key = row.key.as_ref();
    CrossedCount {
        state: key.and_then(|k| Some(k.state.as_ref()?.to_string())),
        printing: key.and_then(|k| Some(k.printing.as_ref()?.to_string())),
        sheets: count(row.sheets),
        uncertain: not_firm.uncertain,
        contradicted: not_firm.contradicted,
    }
}

fn edition(study: &EditionStudy) -> EditionEntry {
    EditionEntry {
        printing: study.printing.to_string(),
        declared: study.declared,
        printed: study.printed,
        sheets: count(study.sheets),
        claims: study.claims.clone(),
        located: study.located.clone(),
        repeated: study.repeated.clone(),
        outside: study.outside.clone(),
    }
}

fn survival(survival: &Survival) -> Option<SurvivalEntry> {
    let estimate = survival.estimate.ok()?;
    let met = survival.met;
    Some(SurvivalEntry {
        estimate: estimate.sheets,
        low: estimate.low,
        high: estimate.high,
        sheets: met.sheets,
        seen_once: met.once,
        seen_twice: met.twice,
    })
}
