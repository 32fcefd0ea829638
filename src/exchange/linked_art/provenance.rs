//! The provenance of a sheet: an activity for each entry.
//!
//! An owner's entry has an `Acquisition` as its part, a keeper's or a loan a `TransferOfCustody`. Whoever handled a
//! sheet without having owned it (a dealer, an auction house) carried the activity out. The time is that of the
//! change of hands, `from`; where only the end is recorded, it happened at the latest then. `from` of one entry and
//! `to` of the one before are joined only where the record says that the sheet came straight (`direct`).
//!
//! A recorded price is a `Payment`, a recorded place where it `took_place_at`.
//!
//! An entry that is not certain, or not certainly of this sheet, states nothing of it: it has no part, and the sheet
//! is assigned to it with the words of the doubt.

use serde::Serialize;

use super::concepts::{self, LOT_NUMBER, NOTE, PROVENANCE};
use super::node::Node;
use super::{ids, parts};
use crate::model::design::Design;
use crate::model::impression::Impression;
use crate::model::key::ImpressionKey;
use crate::model::provenance::{PartyRole, ProvenanceEntry};
use crate::model::vocabulary::List;
use crate::page::html::{CleanHtml, capitalised};
use crate::page::{Here, lots, provenance, provenance_of_records};

/// The file of a sheet's provenance.
#[derive(Serialize)]
pub(super) struct Histories {
    #[serde(rename = "@context")]
    pub context: &'static str,
    #[serde(rename = "@graph")]
    pub graph: Vec<Node>,
}

/// The provenance in words: as written by hand, then as recorded, one sentence an entry.
pub(super) fn in_words(here: &Here<'_>, records: &[&Impression]) -> String {
    let written = records.iter().filter_map(|record| {
        let line = record.provenance_line.as_ref()?;
        Some(line.value.trim().to_owned())
    });
    let entries = provenance_of_records::united(records);
    let recorded = entries.iter().map(|united| {
        let said = provenance::on_its_own(here, &united.entry);
        let said = capitalised(&CleanHtml::text(&said.plain())).plain();
        format!("{}.", said.trim_end_matches('.'))
    });
    written.chain(recorded).collect::<Vec<_>>().join(" ")
}

/// The activities, earliest first.
pub(super) fn entries(here: &Here<'_>, design: &Design, sheet: &Impression) -> Vec<Node> {
    let records = here.joined().on_page(design, sheet);
    let united = provenance_of_records::united(&records);
    let entries: Vec<&ProvenanceEntry> = united.iter().map(|united| &*united.entry).collect();
    let all = entries.iter().enumerate();
    all.map(|(at, entry)| {
        let before = at.checked_sub(1).and_then(|before| entries.get(before));
        activity(here, &sheet.key, at + 1, entry, before.copied())
    })
    .collect()
}

fn activity(
    here: &Here<'_>,
    sheet: &ImpressionKey,
    place: usize,
    entry: &ProvenanceEntry,
    before: Option<&ProvenanceEntry>,
) -> Node {
    let file = ids::provenance(here, sheet);
    let id = format!("{file}#{place}");
    let party = |place: usize, entry: &ProvenanceEntry| {
        ids::party(here, &entry.party, format!("{file}#{place}-party"))
    };
    let said = provenance::on_its_own(here, entry).plain();
    let number = lots::number(here, entry);
    let number = (!number.is_empty()).then(|| parts::identifier(number, LOT_NUMBER));
    let how = entry.how.as_ref();
    let how = how.map(|how| concepts::term(here, "Type", List::Transfers, how.as_str()));
    let this = ids::sheet(here, sheet);
    let is_certain = entry.is_certain() && entry.sold != Some(false);
    let to = party(place, entry);
    // Whoever had it just before, where the record says that it came straight from them.
    let from = before.filter(|before| entry.direct == Some(true) && before.is_certain());
    let from = from.filter(|before| before.role == PartyRole::Owner);
    let from = from.and_then(|before| party(place - 1, before));
    let payment = is_certain
        .then(|| payment(entry, from.clone(), to.clone()))
        .flatten();
    let transfer = (is_certain && !entry.is_destruction())
        .then(|| transfer(entry, &this, from, to.clone()))
        .flatten();
    let at = entry.at_place.clone().filter(|_| entry.is_certain());
    let at = at.and_then(|name| ids::place(format!("{file}#{place}-place"), name));
    let doubt = provenance::doubts(here, entry).plain();
    let doubted = (!entry.is_certain()).then(|| Node {
        identified_by: vec![parts::display(doubt)],
        assigned: vec![this.clone()],
        ..Node::new("AttributeAssignment")
    });
    let is_agent = entry.role == PartyRole::Agent;
    let used = is_agent && entry.is_certain();
    Node {
        classified_as: [PROVENANCE.node()].into_iter().chain(how).collect(),
        identified_by: std::iter::once(parts::primary_name(said.as_str()))
            .chain(number)
            .collect(),
        referred_to_by: entry
            .claim
            .cite
            .as_ref()
            .and_then(|cite| {
                let source = here.cited(&cite.value, entry.claim.at.as_deref());
                parts::statement(NOTE, source.plain())
            })
            .into_iter()
            .collect(),
        timespan: when(here, entry),
        carried_out_by: to.filter(|_| is_agent).into_iter().collect(),
        used_specific_object: used.then_some(this).into_iter().collect(),
        took_place_at: at.into_iter().collect(),
        part: transfer.into_iter().chain(payment).collect(),
        attributed_by: doubted.into_iter().collect(),
        ..Node::at("Activity", id, said.as_str())
    }
}

/// The transfer that an entry tells of; `None` of an agent, who neither owned nor kept it.
fn transfer(
    entry: &ProvenanceEntry,
    sheet: &Node,
    from: Option<Node>,
    to: Option<Node>,
) -> Option<Node> {
    let how = entry.how.as_ref().map(|how| how.value.as_str());
    let is_of_custody = match entry.role {
        PartyRole::Owner => matches!(how, Some("theft" | "looting")),
        PartyRole::Keeper => true,
        PartyRole::Agent => return None,
    };
    let (of, from, to) = (
        vec![sheet.clone()],
        from.into_iter().collect(),
        to.into_iter().collect(),
    );
    Some(if is_of_custody {
        Node {
            transferred_custody_of: of,
            transferred_custody_from: from,
            transferred_custody_to: to,
            ..Node::new("TransferOfCustody")
        }
    } else {
        Node {
            transferred_title_of: of,
            transferred_title_from: from,
            transferred_title_to: to,
            ..Node::new("Acquisition")
        }
    })
}

/// The price, in words: records give it as a text, from which no amount and currency can be taken for certain. An owner
/// paid it; to whom is known where the sheet came straight from the one before. Of an agent it is not said who paid.
fn payment(entry: &ProvenanceEntry, from: Option<Node>, to: Option<Node>) -> Option<Node> {
    let price = parts::statement(NOTE, entry.price.as_deref().unwrap_or_default())?;
    let is_owner = entry.role == PartyRole::Owner;
    Some(Node {
        referred_to_by: vec![price],
        paid_from: to.filter(|_| is_owner).into_iter().collect(),
        paid_to: from.filter(|_| is_owner).into_iter().collect(),
        ..Node::new("Payment")
    })
}

/// When the sheet changed hands: at `from`; where only the end is known, at the latest then.
fn when(here: &Here<'_>, entry: &ProvenanceEntry) -> Option<Box<Node>> {
    match (&entry.from, &entry.to) {
        (Some(from), _) => parts::timespan(here, &from.value),
        (None, Some(to)) => parts::at_the_latest(here, &to.value),
        (None, None) => None,
    }
}
