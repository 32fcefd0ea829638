//! The shape of `census --json` (DESIGN.md, appendix).

use serde::Serialize;

use super::Counted;
use crate::study::census::{Row, Sheets};
use crate::study::editions::EditionStudy;
use crate::study::survival::Survival;

/// What `census --json` prints.
#[derive(Debug, Serialize)]
pub(super) struct CensusDocument {
    /// The design's key; null for a series and for the whole catalogue.
    design: Option<String>,
    /// The name of the series; null for a design and for the whole catalogue.
    series: Option<String>,
    sheets: Count,
    by: By,
    /// The declared editions of a design; empty for the whole catalogue.
    editions: Vec<Edition>,
    /// Null where the appearances allow no estimate, and for the whole catalogue.
    survival: Option<Estimated>,
}

#[derive(Debug, Serialize)]
struct Count {
    at_least: usize,
    at_most: usize,
    exact: bool,
}

#[derive(Debug, Serialize)]
struct By {
    holder: Vec<OfValue>,
    country: Vec<OfValue>,
    city: Vec<OfValue>,
    state: Vec<OfValue>,
    printing: Vec<OfValue>,
    kind: Vec<OfValue>,
    class: Vec<OfValue>,
    status: Vec<OfValue>,
    crossing: Vec<OfBoth>,
}

#[derive(Debug, Serialize)]
struct OfValue {
    /// Null for sheets of which nothing is recorded.
    key: Option<String>,
    sheets: Count,
}

/// The sheets of a state in a printing.
#[derive(Debug, Serialize)]
struct OfBoth {
    state: Option<String>,
    printing: Option<String>,
    sheets: Count,
}

#[derive(Debug, Serialize)]
struct Edition {
    printing: String,
    declared: Option<u32>,
    claims: Vec<u32>,
    located: Vec<u32>,
    repeated: Vec<u32>,
    outside: Vec<u32>,
}

#[derive(Debug, Serialize)]
struct Estimated {
    estimate: f64,
    low: Option<f64>,
    high: Option<f64>,
    sheets: usize,
    seen_once: usize,
    seen_twice: usize,
}

impl CensusDocument {
    /// The census of a design, a series or everything.
    pub(super) fn of(counted: &Counted<'_>) -> CensusDocument {
        let census = counted.census();
        let by = &census.by;
        let study = counted.design().map(|(_, study)| study);
        CensusDocument {
            design: counted.design().map(|(design, _)| design.key.to_string()),
            series: match counted {
                Counted::Series(name, _) => Some((*name).to_owned()),
                _ => None,
            },
            sheets: count(census.sheets),
            by: By {
                holder: rows(&by.holder),
                country: rows(&by.country),
                city: rows(&by.city),
                state: rows(&by.state),
                printing: rows(&by.printing),
                kind: rows(&by.kind),
                class: rows(&by.class),
                status: rows(&by.status),
                crossing: by.crossing.iter().map(both).collect(),
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

fn count(sheets: Sheets) -> Count {
    Count {
        at_least: sheets.at_least,
        at_most: sheets.at_most,
        exact: sheets.exact,
    }
}

fn rows<K: ToString>(rows: &[Row<K>]) -> Vec<OfValue> {
    let row = |row: &Row<K>| OfValue {
        key: row.key.as_ref().map(ToString::to_string),
        sheets: count(row.sheets),
    };
    rows.iter().map(row).collect()
}

fn both(row: &Row<crate::study::crossing::StateAndPrinting>) -> OfBoth {
    let key = row.key.as_ref();
    OfBoth {
        state: key.and_then(|k| Some(k.state.as_ref()?.to_string())),
        printing: key.and_then(|k| Some(k.printing.as_ref()?.to_string())),
        sheets: count(row.sheets),
    }
}

fn edition(study: &EditionStudy) -> Edition {
    Edition {
        printing: study.printing.to_string(),
        declared: study.declared,
        claims: study.claims.clone(),
        located: study.located.clone(),
        repeated: study.repeated.clone(),
        outside: study.outside.clone(),
    }
}

fn survival(survival: &Survival) -> Option<Estimated> {
    let estimate = survival.estimate?;
    Some(Estimated {
        estimate: estimate.sheets,
        low: estimate.interval.map(|[low, _]| low),
        high: estimate.interval.map(|[_, high]| high),
        sheets: survival.sheets,
        seen_once: survival.seen_once,
        seen_twice: survival.seen_twice,
    })
}
