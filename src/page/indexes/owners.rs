//! Former owners by letter, with the sheets each had; agents and keepers, who owned nothing, apart; and
//! former inventory numbers.

use std::collections::BTreeMap;

use serde::Serialize;

use crate::model::certainty::Certainty;
use crate::model::holder::Holder;
use crate::model::impression::Impression;
use crate::model::key::ImpressionKey;
use crate::model::provenance::{Party, PartyRole, ProvenanceEntry};
use crate::page::lists::custody::{is_keeper, is_owner, stolen_from};
use crate::page::lists::list::{self, List};
use crate::page::lists::run_on::{self, RunOn};
use crate::page::phrases::party_names::sorted_name;
use crate::page::setting::address::Address;
use crate::page::setting::book::Here;
use crate::page::setting::html::{CleanHtml, capitalised};
use crate::page::setting::leaf::Leaf;
use crate::page::sheet::provenance;
use crate::study::filing::filed_under;
use crate::study::order::Collator;

#[derive(Serialize)]
struct View {
    title: String,
    /// Parts stand close together, as in an index.
    index: bool,
    brief: CleanHtml,
    letters: Vec<List>,
    apart: Vec<List>,
    numbers: Option<RunOn>,
}

/// Whether a record names a former owner, an agent, a keeper or a former number.
pub(crate) fn has_any(impression: &Impression) -> bool {
    let mut entries = impression.provenance.iter();
    !impression.former_accessions.is_empty()
        || entries.any(|entry| entry.role != PartyRole::Owner || !has_it_now(impression, entry))
}

pub(crate) fn page(here: &Here<'_>) -> Leaf {
    let words = here.words();
    let owners = lines(here, PartyRole::Owner);
    let title = words.word("owners").to_owned();
    let view = View {
        index: true,
        title: title.clone(),
        brief: here.with_cautions("owners-brief"),
        letters: list::by_letter(here, owners),
        apart: [
            (PartyRole::Agent, "owners-agents"),
            (PartyRole::Keeper, "owners-keepers"),
        ]
        .into_iter()
        .map(|(role, heading)| {
            let collator = Collator::of_words(here.language());
            let mut lines = lines(here, role);
            lines.sort_by(|a, b| collator.compare(&a.0, &b.0));
            let lines = lines.into_iter().map(|(_, line)| line).collect();
            List::new(CleanHtml::text(words.word(heading)), lines)
        })
        .filter(List::has_lines)
        .collect(),
        numbers: Some(numbers(here)).filter(|numbers| !numbers.lines.is_empty()),
    };
    Leaf::new(here.address, title, "pages/owners.html", &view)
}

/// Whether an owner still has the sheet, or would have it if it had not been stolen.
fn has_it_now(impression: &Impression, entry: &ProvenanceEntry) -> bool {
    if stolen_from(impression).contains(&&entry.party) {
        return true;
    }
    match &entry.party {
        Party::Record(key) if impression.owners.is_empty() => is_keeper(impression, &key.value),
        Party::Record(key) => is_owner(impression, &key.value),
        party => impression.owners.contains(party),
    }
}

/// A line for each party that had sheets in a role and no longer has them, with the text by which it is
/// sorted.
fn lines(here: &Here<'_>, role: PartyRole) -> Vec<(String, CleanHtml)> {
    let of_names = former_names(here);
    let mut had: BTreeMap<(String, CleanHtml), Vec<(Certainty, &ImpressionKey)>> = BTreeMap::new();
    for (_, impression) in here.impressions_in_order() {
        let entries = impression.provenance.iter().filter(|e| e.role == role);
        for entry in entries.filter(|e| role != PartyRole::Owner || !has_it_now(impression, e)) {
            let name = named(here, &of_names, &entry.party);
            let sheets = had.entry(name).or_default();
            let surer = entry.certainty();
            let page = here.joined().page_of(&impression.key);
            let known = if here.joined().is_joined(page) {
                sheets.iter_mut().find(|(_, key)| *key == page)
            } else {
                sheets.last_mut().filter(|(_, key)| *key == page)
            };
            match known {
                Some((said, _)) => *said = surer.min(*said),
                None => sheets.push((surer, page)),
            }
        }
    }
    let line =
        |((sorted, name), sheets): ((String, CleanHtml), Vec<(Certainty, &ImpressionKey)>)| {
            let handles = sheets.into_iter().map(|(certainty, key)| {
                let handle = here.impression(key);
                let doubt = match certainty {
                    Certainty::Certain => return handle,
                    Certainty::Probable => here.words().word("probably"),
                    Certainty::Possible => here.words().word("possibly"),
                };
                handle
                    .then(" ")
                    .and(&CleanHtml::quiet(&format!("({doubt})")))
            });
            let handles: Vec<CleanHtml> = handles.collect();
            (
                sorted,
                name.then(": ").and(&CleanHtml::join(&handles, ", ")),
            )
        };
    had.into_iter().map(line).collect()
}

/// Holders by their former names; the first of several with the same.
type FormerNames<'a> = BTreeMap<&'a str, &'a Holder>;

fn former_names<'a>(here: &Here<'a>) -> FormerNames<'a> {
    let mut found = FormerNames::new();
    for holder in here.public().holders.values() {
        for former in &holder.formerly {
            found.entry(&former.name).or_insert(holder);
        }
    }
    found
}

/// The text by which a party is sorted, and its name; a person's name is inverted and has life dates.
fn named(here: &Here<'_>, of_names: &FormerNames<'_>, party: &Party) -> (String, CleanHtml) {
    let person = match party {
        Party::Record(key) => here.public().people.get(&key.value),
        Party::Named(_) | Party::Undisclosed => None,
    };
    let Some(person) = person else {
        let name = capitalised(&provenance::party(here, party));
        let sorted = match party {
            Party::Named(name) => filed_under(name),
            Party::Record(_) | Party::Undisclosed => name.plain(),
        };
        return (
            sorted,
            CleanHtml::join([&name, &now(here, of_names, party)], ", "),
        );
    };
    let sorted = sorted_name(person);
    let link = here.link(
        &Address::Person(person.key.clone()),
        &CleanHtml::text(sorted),
    );
    let life = CleanHtml::text(&here.life(person));
    (sorted.to_owned(), CleanHtml::join([&link, &life], ", "))
}

/// The present form of a holder: "now part of Harbour Museum", or "see Harbour Museum" for a former
/// name.
fn now(here: &Here<'_>, of_names: &FormerNames<'_>, party: &Party) -> CleanHtml {
    match party {
        Party::Record(key) => {
            let holder = here.public().holders.get(&key.value);
            let next = holder.and_then(|holder| holder.successor.as_ref());
            next.map_or_else(CleanHtml::empty, |next| {
                let name = here.holder(&next.holder.value);
                here.words().html("now-part-of", None, &[("holder", &name)])
            })
        }
        Party::Named(name) => {
            let holder = of_names.get(name.as_str());
            holder.map_or_else(CleanHtml::empty, |holder| {
                let name = here.holder(&holder.key);
                here.words().html("see-record", None, &[("record", &name)])
            })
        }
        Party::Undisclosed => CleanHtml::empty(),
    }
}

/// Former numbers of sheets, by the holder that gave them.
fn numbers(here: &Here<'_>) -> RunOn {
    let words = here.words();
    let mut found: Vec<(CleanHtml, &str, &ImpressionKey)> = Vec::new();
    for (_, impression) in here.impressions_in_order() {
        for former in &impression.former_accessions {
            let holder = former.holder.as_ref().map(|holder| &holder.value);
            let lead = holder.map_or_else(
                || CleanHtml::text(words.word("owners-numbers-elsewhere")),
                |key| here.holder_and_city(key),
            );
            found.push((lead, &former.number, &impression.key));
        }
    }
    let numbers = Collator::of_numbers(here.language());
    found.sort_by(|a, b| numbers.compare(a.1, b.1));
    let items = found.into_iter().map(|(lead, number, key)| {
        let number = CleanHtml::span("accession", &CleanHtml::text(number));
        (lead, number.then(" ").and(&here.impression(key)))
    });
    RunOn {
        heading: CleanHtml::text(words.word("owners-numbers")),
        note: None,
        lines: run_on::by_lead(here, items.collect()),
    }
}
