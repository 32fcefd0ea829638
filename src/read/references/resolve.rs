//! Reports references to nothing: keys that a record names and the catalogue does not have.
//!
//! In: the references of every record ([`Occurrences`](crate::model::occurrence::Occurrences)). Out: a
//! finding at the place of each that leads nowhere. [`missing`] holds the code, the message and the help
//! for each kind of target, [`terms`] for terms; [`circles`] reports states that follow themselves, [`leading`]
//! records that lead to each other in a circle, [`conditions`] conditions that a mark does not have.
//!
//! Messages contain keys only, never names of people, so nothing private can appear in one.
//!
//! Not here: points and their values (`points` checks them while it reads), and contradictions between
//! records (`audit`).

mod circles;
mod conditions;
mod leading;
mod missing;
mod terms;

use std::collections::BTreeSet;

use self::missing::Known;
use crate::model::catalogue::Catalogue;
use crate::model::codes::Code;
use crate::model::finding::{Finding, Severity};
use crate::model::link;
use crate::model::occurrence::{MentionRole, RecordId, Reference, Referent};
use crate::model::place::Place;

/// A finding for every reference to nothing in the whole catalogue, in no particular order. `themes` are
/// the themes that the catalogue may name. Where `found` already has an error at the place of a
/// reference, there is no second one: the key was not read as the reference that its table declares.
pub(crate) fn resolve(catalogue: &Catalogue, themes: &[String], found: &[Finding]) -> Vec<Finding> {
    let errors = found.iter().filter(|f| f.severity() == Severity::Error);
    let faulty: BTreeSet<Place> = errors.map(|finding| finding.at.place).collect();
    let known = Known::of(catalogue, themes);
    let mut findings = Vec::new();
    for (record, occurrences) in &catalogue.occurrences {
        for reference in &occurrences.references {
            if !faulty.contains(&reference.place) {
                findings.extend(
                    to_itself(record, reference).or_else(|| known.missing(record, reference)),
                );
            }
        }
    }
    findings.extend(conditions::unknown(catalogue));
    findings.extend(leading::circles(catalogue));
    findings.extend(catalogue.designs.values().flat_map(circles::circles));
    findings
}

/// Reports an impression whose record ties it to itself.
fn to_itself(record: &RecordId, reference: &Reference) -> Option<Finding> {
    let (RecordId::Impression(key), Referent::Record(link::Target::Impression(named), role)) =
        (record, &reference.to)
    else {
        return None;
    };
    let tie = tie(*role).filter(|_| named == key)?;
    let message = format!("{key} is said to be {tie}");
    Some(
        Finding::new(Code::SameAsItself, reference.place, message)
            .help("name the other impression, or remove this"),
    )
}

/// The relation that a role states between two impressions, for the message; `None` for a role in which
/// an impression may name itself.
fn tie(role: MentionRole) -> Option<&'static str> {
    match role {
        MentionRole::SameSheet => Some("the same sheet as itself"),
        MentionRole::MaybeSameSheet => Some("perhaps the same sheet as itself"),
        MentionRole::OtherSheet => Some("another sheet than itself"),
        MentionRole::SharesSheet => Some("on the same paper as itself"),
        MentionRole::GoesWith => Some("of one set with itself"),
        MentionRole::TakenFrom => Some("taken from itself"),
        _ => None,
    }
}
