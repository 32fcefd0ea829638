//! Findings for programs: what `audit --json` prints (docs/JSON.md).

use serde::Serialize;

use crate::model::finding::{Finding, Tally};
use crate::model::place::Sources;

/// What `audit --json` prints.
#[derive(Debug, Serialize)]
pub(super) struct AuditDocument {
    findings: Vec<FindingEntry>,
    counts: Counts,
}

#[derive(Debug, Serialize)]
struct FindingEntry {
    severity: &'static str,
    code: &'static str,
    /// Relative to the catalogue.
    file: String,
    /// From 1.
    line: usize,
    /// From 1, in characters.
    column: usize,
    message: String,
    /// Null where there is no advice.
    help: Option<String>,
}

#[derive(Debug, Serialize)]
struct Counts {
    error: usize,
    doubt: usize,
    hint: usize,
}

/// The document of `findings`, in the same order.
pub(super) fn audit_document(findings: &[Finding], sources: &Sources) -> AuditDocument {
    let entries = findings.iter().map(|finding| {
        let position = sources.position(finding.at.place);
        FindingEntry {
            severity: finding.severity().word(),
            code: finding.code.as_str(),
            file: sources.path(finding.at.place.file).to_owned(),
            line: position.line,
            column: position.column,
            message: finding.message.clone(),
            help: finding.help.clone(),
        }
    });
    let tally = Tally::of(findings);
    AuditDocument {
        findings: entries.collect(),
        counts: Counts {
            error: tally.errors,
            doubt: tally.doubts,
            hint: tally.hints,
        },
    }
}
