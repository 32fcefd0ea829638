//! Findings for programs: what `audit --json` prints (docs/JSON.md).

use serde::Serialize;

use crate::audit::settled::{SettledFinding, digest};
use crate::model::finding::{Finding, Tally};
use crate::model::place::Sources;

/// What `audit --json` prints.
#[derive(Debug, Serialize)]
pub(super) struct AuditDocument {
    findings: Vec<FindingEntry>,
    /// The findings that records say are settled.
    settled: Vec<SettledEntry>,
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
    /// The digest to write where the finding is settled; null where it cannot be.
    digest: Option<String>,
}

#[derive(Debug, Serialize)]
struct SettledEntry {
    #[serde(flatten)]
    finding: FindingEntry,
    why: Option<String>,
    /// The key of a person or holder.
    by: Option<String>,
    /// EDTF.
    date: Option<String>,
}

#[derive(Debug, Serialize)]
struct Counts {
    error: usize,
    doubt: usize,
    hint: usize,
    /// Counted apart: not among the others.
    settled: usize,
}

/// The document of `findings` and of those that are `settled`, each in the same order.
pub(super) fn audit_document(
    findings: &[&Finding],
    settled: &[&SettledFinding],
    sources: &Sources,
) -> AuditDocument {
    let tally = Tally::of(findings.iter().copied());
    AuditDocument {
        findings: findings.iter().map(|f| entry(f, sources)).collect(),
        settled: settled
            .iter()
            .map(|settled| SettledEntry {
                finding: entry(&settled.finding, sources),
                why: settled.entry.why.clone(),
                by: settled.entry.by.as_ref().map(|key| key.value.to_string()),
                date: settled.entry.date.as_ref().map(|d| d.value.to_string()),
            })
            .collect(),
        counts: Counts {
            error: tally.errors,
            doubt: tally.doubts,
            hint: tally.hints,
            settled: settled.len(),
        },
    }
}

fn entry(finding: &Finding, sources: &Sources) -> FindingEntry {
    let position = sources.position(finding.at.place);
    let code = finding.code;
    FindingEntry {
        severity: finding.severity().word(),
        code: code.as_str(),
        file: sources.path(finding.at.place.file).to_owned(),
        line: position.line,
        column: position.column,
        message: finding.message.clone(),
        help: finding.help.clone(),
        digest: code.can_be_settled().then(|| digest(finding, sources)),
    }
}
