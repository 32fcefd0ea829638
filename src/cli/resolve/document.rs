//! What `resolve --json` prints (docs/JSON.md).

use serde::Serialize;

use crate::model::words::ClosedList as _;
use crate::press::references::ResolvedCatalogue;
use crate::study::resolve::reading::Reading;

/// What `resolve --json` prints.
#[derive(Debug, Serialize)]
pub(super) struct ResolveDocument<'a> {
    results: Vec<Resolved<'a>>,
}

#[derive(Debug, Serialize)]
struct Resolved<'a> {
    asked: &'a str,
    /// The likeliest first; empty where nothing is meant.
    readings: Vec<ReadingEntry>,
}

/// A reading with what it leads to.
#[derive(Debug, Serialize)]
pub(super) struct ReadingEntry {
    pub kind: &'static str,
    pub key: String,
    pub state: Option<String>,
    pub printing: Option<String>,
    pub address: String,
    pub label: String,
    pub certainty: &'static str,
    pub why: String,
    /// What has become of it, where it does not simply stand.
    pub standing: Option<&'static str>,
    /// The addresses of the records to see in its place.
    pub see: Vec<String>,
}

impl<'a> ResolveDocument<'a> {
    /// The readings of each reference.
    pub(super) fn of(
        catalogue: &ResolvedCatalogue,
        results: &[(&'a str, Vec<Reading>)],
    ) -> ResolveDocument<'a> {
        let resolved = results.iter().map(|(asked, readings)| Resolved {
            asked,
            readings: entries(catalogue, readings),
        });
        ResolveDocument {
            results: resolved.collect(),
        }
    }
}

/// The readings of a reference with what they lead to.
pub(super) fn entries(catalogue: &ResolvedCatalogue, readings: &[Reading]) -> Vec<ReadingEntry> {
    let references = catalogue.resolver.references();
    let entry = |reading: &Reading| {
        let target = references.target(reading.meant)?;
        let stands = references.stands(reading.meant);
        Some(ReadingEntry {
            kind: target.kind,
            key: target.key,
            state: target.state,
            printing: target.printing,
            address: target.address,
            label: target.label,
            certainty: reading.certainty.word(),
            why: catalogue.why(reading),
            standing: stands.map(|stands| stands.how.word()),
            see: stands.map_or_else(Vec::new, |stands| {
                let see = stands.see.iter();
                see.map(|record| references.page_of(record)).collect()
            }),
        })
    };
    readings.iter().filter_map(entry).collect()
}
