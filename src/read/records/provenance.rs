//! Provenance, sightings, and the parties that they name.

use toml::de::DeValue;

use crate::model::codes::Code;
use crate::model::finding::Finding;
use crate::model::place::Placed;
use crate::model::provenance::{Party, PartyRole, ProvenanceEntry, Sighting};
use crate::read::faults::{Faults, Node};
use crate::read::shape::PARTY;
use crate::read::table::fields::{Fields, read_table};

/// Reads `[[provenance]]`.
pub(crate) fn provenance(fields: &mut Fields<'_, '_>) -> Vec<ProvenanceEntry> {
    fields.tables("provenance", |fields| {
        let who = holder_of_the_sheet(fields);
        let entry = ProvenanceEntry {
            from: fields.date("from"),
            to: fields.date("to"),
            how: fields.term("how"),
            at_place: fields.words("place"),
            lot: fields.words("lot"),
            price: fields.words("price"),
            direct: fields.flag("direct"),
            sold: fields.flag("sold"),
            this_sheet: fields.word("this_sheet"),
            claim: fields.claim(),
            place: fields.at,
            role: who.as_ref()?.0,
            party: who?.1,
        };
        Some(entry)
    })
}

/// One of `owner`, `agent` and `keeper`.
fn holder_of_the_sheet(fields: &mut Fields<'_, '_>) -> Option<(PartyRole, Party)> {
    const ROLES: [(&str, PartyRole); 3] = [
        ("owner", PartyRole::Owner),
        ("agent", PartyRole::Agent),
        ("keeper", PartyRole::Keeper),
    ];
    let mut named: Vec<_> = ROLES
        .iter()
        .filter_map(|(name, _)| Some((fields.key_place(name)?, *name)))
        .collect();
    named.sort_by_key(|(place, _)| *place);
    match named.as_slice() {
        [] => fields.missing(
            &["owner", "agent", "keeper"],
            "`owner`, `agent` or `keeper`",
            "add `owner`, `agent` (a dealer or auction house) or `keeper` (a loan or deposit)",
        ),
        [_] => {}
        [(first, one), rest @ ..] => {
            for (place, other) in rest {
                let finding = Finding::new(
                    Code::KeyTwice,
                    *place,
                    format!("one entry names both `{one}` and `{other}`"),
                )
                .beside(*first, "the first")
                .help("make two entries of it");
                fields.faults.push(finding);
            }
        }
    }
    let mut who = None;
    for (name, role) in ROLES {
        let party = fields.one(name, party);
        who = who.or(party.map(|party| (role, party)));
    }
    who
}

/// The key of a person or holder, or `{ name = "…" }`.
pub(crate) fn party<'t>(faults: &mut Faults<'t>, node: &'t Node<'t>) -> Option<Party> {
    match node.get_ref() {
        DeValue::Table(table) => {
            let at = faults.of(node);
            let name = read_table(faults, &PARTY, table, at, |fields| fields.text("name"));
            match name {
                Some(name) if !name.value.trim().is_empty() => Some(Party::Named(name)),
                _ if faults.redacted => Some(Party::Undisclosed),
                _ => None,
            }
        }
        DeValue::String(text) => {
            let place = faults.of(node);
            if let Ok(key) = text.parse() {
                return Some(Party::Record(Placed::new(key, place)));
            }
            let finding = Finding::new(Code::KeyForm, place, format!("\"{text}\" is not a key"));
            faults.push(finding.help(format!(
                "write the key of a person or holder, or {{ name = \"{text}\" }} for someone without a record"
            )));
            None
        }
        _ => {
            faults.wrong_type(
                node,
                "the key of a person or holder in quotes, or { name = \"…\" }",
            );
            None
        }
    }
}

/// Reads `[[sightings]]`.
pub(crate) fn sightings(fields: &mut Fields<'_, '_>) -> Vec<Sighting> {
    fields.tables("sightings", |fields| {
        let date = fields.date("date");
        let sighting = Sighting {
            by: fields.one("by", party),
            basis: fields.word("basis"),
            cite: fields.cite(),
            at: fields.words("at"),
            place: fields.at,
            date: date?,
        };
        Some(sighting)
    })
}
