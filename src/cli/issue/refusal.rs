//! Why an edition is not issued: every reason at once, each with what to do.

use super::committed::Committed;
use crate::cli::report;
use crate::model::codes::Code;
use crate::model::finding::Finding;
use crate::model::place::Placed;
use crate::model::register::{IssuedEdition, Register};
use crate::press::Judged;

/// A reason why an edition is not issued.
pub(super) struct Refusal {
    /// The reason.
    pub(super) why: String,
    /// What to do.
    pub(super) help: String,
    /// What it rests on, a line each.
    pub(super) lines: Vec<String>,
}

/// How many files that differ are named, and how many findings.
const NAMED: usize = 10;

/// Every reason why the edition of a catalogue cannot be issued. `reason` is the one for which records may differ from
/// what is committed.
pub(super) fn refusals(
    judged: &Judged,
    committed: &Committed,
    reason: Option<&str>,
) -> Vec<Refusal> {
    let mut refusals = Vec::new();
    let tally = judged.tally();
    if tally.errors > 0 {
        let of_addresses = [Code::AddressVanished, Code::AddressReused];
        let breaking = judged.findings.iter();
        let breaking = breaking.filter(|finding| of_addresses.contains(&finding.code));
        let lines = messages(breaking);
        refusals.push(Refusal {
            why: format!("there are findings: {}", report::tally(tally)),
            help: "correct the errors above; `keyblock audit` shows them again".to_owned(),
            lines,
        });
    }
    let replaced = judged.findings.iter();
    let replaced = messages(replaced.filter(|finding| finding.code == Code::EntryReplaced));
    if !replaced.is_empty() {
        refusals.push(Refusal {
            why: "issued addresses may have come to mean other things".to_owned(),
            help: "record other things under keys of their own, or settle the doubt in the record"
                .to_owned(),
            lines: replaced,
        });
    }
    of_edition(judged, &mut refusals);
    match (committed, reason) {
        (Committed::Differs(files), None) => {
            let lines = first_of(files.clone());
            refusals.push(Refusal {
                why: "the catalogue differs from what is committed, so the edition could not be made again".to_owned(),
                help: "commit it, or say why not with --uncommitted REASON".to_owned(),
                lines,
            });
        }
        (Committed::Refused(why), None) => refusals.push(Refusal {
            why: format!("git does not say whether the catalogue is committed: {why}"),
            help: "let git read the folder, or say why not with --uncommitted REASON".to_owned(),
            lines: Vec::new(),
        }),
        _ => {}
    }
    refusals
}

/// The messages of findings.
fn messages<'f>(findings: impl Iterator<Item = &'f Finding>) -> Vec<String> {
    first_of(findings.map(|finding| finding.message.clone()).collect())
}

/// The first [`NAMED`] lines, and how many more there are.
fn first_of(mut lines: Vec<String>) -> Vec<String> {
    if let more @ 1.. = lines.len().saturating_sub(NAMED) {
        lines.truncate(NAMED);
        lines.push(format!("and {more} more"));
    }
    lines
}

/// Reasons in the settings: the edition and its date.
fn of_edition(judged: &Judged, refusals: &mut Vec<Refusal>) {
    let settings = &judged.catalogue.settings;
    let none = Register::default();
    let register = judged.catalogue.register.as_ref().unwrap_or(&none);
    let last = register.last();
    let mut refuse = |why: String, help: &str| {
        refusals.push(Refusal {
            why,
            help: help.to_owned(),
            lines: Vec::new(),
        });
    };
    let is_dated = settings
        .dated
        .as_ref()
        .is_some_and(|dated| IssuedEdition::can_be_dated(&dated.value));
    match &settings.dated {
        None => refuse(
            "catalogue.toml does not date the edition".to_owned(),
            "add `dated`, the day of the edition: dated = \"2027-03-01\"",
        ),
        Some(dated) if !IssuedEdition::can_be_dated(&dated.value) => refuse(
            format!(
                "the date of the edition, {}, is not a day",
                dated.value.as_str()
            ),
            "write the whole date, as in dated = \"2027-03-01\": citations and the feed give it",
        ),
        Some(dated) => {
            if let Some((_, last)) = last
                && dated.value.as_str() < last.dated.value.as_str()
            {
                refuse(
                    format!(
                        "the edition is dated {}, before edition {} ({})",
                        dated.value.as_str(),
                        last.edition.value,
                        last.dated.value.as_str()
                    ),
                    "correct `dated` in catalogue.toml",
                );
            }
        }
    }
    let Some(name) = settings
        .edition
        .as_ref()
        .filter(|name| !name.trim().is_empty())
    else {
        refuse(
            "catalogue.toml does not name the edition".to_owned(),
            "add `edition`: edition = \"1\"",
        );
        return;
    };
    let mut editions = register.editions.iter();
    if let Some(issued) = editions.find(|edition| edition.edition.value == *name) {
        refuse(
            format!(
                "edition {name} was issued already, dated {}",
                issued.dated.value.as_str()
            ),
            "name the next one in catalogue.toml with `edition`, and give its date with `dated`",
        );
        return;
    }
    if !is_dated {
        return;
    }
    let Some(dated) = settings.dated.clone() else {
        return;
    };
    let this = IssuedEdition {
        edition: Placed::new(name.clone(), settings.place),
        dated,
        address: String::new(),
        uncommitted: None,
    };
    let key = this.key(register.editions.len());
    let mut others = register.editions.iter().enumerate();
    if let Some((_, other)) = others.find(|(place, other)| other.key(*place) == key) {
        refuse(
            format!(
                "the page of edition {name} would have the address of edition {}",
                other.edition.value
            ),
            "give the edition a name that differs in letters or figures",
        );
    }
}
