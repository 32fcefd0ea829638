//! The status of the newest reading, which an open page shows.
//!
//! In: what is served now, and the address of the page that asks. Out: a [`ProofStatus`], to be written as JSON: how many
//! findings there are, and those that are listed, the ones about the record of the page first.

use serde::Serialize;

use super::finding_page;
use super::served::Served;
use crate::model::bulk::{self, CodeGroup, Extent};
use crate::model::finding::{Finding, Severity};

/// The most faults of one code that are listed.
const MOST_FAULTS: usize = 5;

/// The status of the newest reading, which an open page requests as JSON.
#[derive(Serialize)]
pub(super) struct ProofStatus {
    /// The newest reading, counted from 1.
    number: u64,
    /// The reading that the pages were made in: an earlier one where the newest gave none; 0 where there
    /// are no pages yet.
    good: u64,
    /// Why no pages could be made.
    fault: Option<String>,
    /// How many findings of each severity there are.
    counts: Vec<(&'static str, usize)>,
    /// How many findings are about the record of the page that asks.
    here: usize,
    /// Those that are listed: first those about that record, then the others, in both at most three of a code that has
    /// more than ten.
    findings: Vec<FindingStatus>,
}

#[derive(Serialize)]
struct FindingStatus {
    severity: &'static str,
    /// Whether it is about the record of the page that asks.
    here: bool,
    place: String,
    /// The address of the page of its record, at the part that it is about.
    page: Option<String>,
    message: String,
    help: Option<String>,
    /// Those of its code that are not listed, where it is the last that is.
    others: Option<OthersStatus>,
}

#[derive(Serialize)]
struct OthersStatus {
    code: &'static str,
    count: usize,
    /// What is at fault in the findings of the code, and in how many, the most frequent first.
    faults: Vec<(String, usize)>,
    /// How many further faults there are.
    more_faults: usize,
}

impl ProofStatus {
    /// The status for the page at the address `page`.
    pub(super) fn of(served: &Served, page: &str) -> ProofStatus {
        let report = &served.newest.report;
        let is_here = |finding: &&Finding| {
            let path = report.sources.path(finding.at.place.file);
            finding_page::is_shown_at(path, page)
        };
        let (here, elsewhere): (Vec<&Finding>, Vec<&Finding>) =
            report.findings.iter().partition(is_here);
        let of_this_page = here.len();
        let mut findings = Vec::new();
        for (part, is_here) in [(here, true), (elsewhere, false)] {
            for group in bulk::groups(part, &report.sources, Extent::Short) {
                findings.extend(of_group(served, &group, is_here));
            }
        }
        let tally = report.tally();
        ProofStatus {
            number: served.number,
            good: served.good,
            fault: served.newest.fault.clone(),
            counts: vec![
                (Severity::Error.word(), tally.errors),
                (Severity::Doubt.word(), tally.doubts),
                (Severity::Hint.word(), tally.hints),
            ],
            here: of_this_page,
            findings,
        }
    }
}

/// The listed findings of a group; the last says how many others there are.
fn of_group(served: &Served, group: &CodeGroup<'_>, here: bool) -> Vec<FindingStatus> {
    let sources = &served.newest.report.sources;
    let status = |finding: &&Finding| {
        let position = sources.position(finding.at.place);
        let path = sources.path(finding.at.place.file);
        let text = sources.text(finding.at.place.file);
        FindingStatus {
            severity: finding.severity().word(),
            here,
            place: format!("{path}:{}:{}", position.line, position.column),
            page: finding_page::address(&served.site, path, text, position.line),
            message: finding.message.clone(),
            help: finding.help.clone(),
            others: None,
        }
    };
    let mut listed: Vec<FindingStatus> = group.listed.iter().map(status).collect();
    if let (Some(last), Some(first), Some(others)) =
        (listed.last_mut(), group.listed.first(), &group.others)
    {
        let faults = others.faults.iter().take(MOST_FAULTS);
        last.others = Some(OthersStatus {
            code: first.code.as_str(),
            count: others.count,
            faults: faults.map(|f| (f.text.clone(), f.count)).collect(),
            more_faults: others.faults.len().saturating_sub(MOST_FAULTS),
        });
    }
    listed
}
