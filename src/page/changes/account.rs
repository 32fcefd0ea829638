//! The account of an edition as a part of a page: by entry, by holder, other records.

use serde::Serialize;

use super::wording::{self, Told};
use crate::model::issued_address::IssuedKind;
use crate::model::key::Key;
use crate::page::setting::book::Here;
use crate::page::setting::html::CleanHtml;
use crate::study::issued::account::EditionAccount;
use crate::study::issued::account::changes::{HolderChange, RecordAccount};

/// The account of an edition.
#[derive(Serialize)]
pub(crate) struct AccountView {
    /// The prefix of the ids of its parts: two accounts may stand on one page.
    id: String,
    heading: String,
    /// What it is the account of, in a sentence or two.
    about: Vec<CleanHtml>,
    entries: Vec<EntryView>,
    holders: Vec<EntryView>,
    others: Vec<CleanHtml>,
}

/// An entry, and its changes.
#[derive(Serialize)]
struct EntryView {
    id: String,
    /// What hangs in the margin: the number of a design, the town of a holder.
    hang: String,
    title: CleanHtml,
    lines: Vec<CleanHtml>,
}

/// The account of the edition that `told` names.
pub(crate) fn view(
    here: &Here<'_>,
    told: Told<'_>,
    account: &EditionAccount,
    id: &str,
    heading: String,
    about: Vec<CleanHtml>,
) -> AccountView {
    let order = &here.book.studies.order;
    let mut designs: Vec<_> = account.designs.iter().collect();
    designs.sort_by_key(|design| (order.rank(&design.design), design.design.clone()));
    let entries = designs.into_iter().map(|design| {
        let (hang, title) = wording::design_name(here, &design.design);
        let own = wording::of_design(here, told, design).some();
        let sheets = wording::of_sheets(here, told, design);
        EntryView {
            id: format!("{id}-design-{}", design.design),
            hang,
            title,
            lines: own.into_iter().chain(sheets).collect(),
        }
    });
    AccountView {
        entries: entries.collect(),
        holders: holders(here, account, id),
        others: others(here, account, id),
        id: id.to_owned(),
        heading,
        about,
    }
}

fn holders(here: &Here<'_>, account: &EditionAccount, id: &str) -> Vec<EntryView> {
    let mut holders: Vec<(String, &Key, &Vec<HolderChange>)> = account
        .holders
        .iter()
        .map(|(key, changes)| {
            let name = wording::present_holder(here, key);
            let name = name.map_or_else(|| key.to_string(), |h| here.holder_city_first(h));
            (name, key, changes)
        })
        .collect();
    holders.sort_by(|a, b| (&a.0, a.1).cmp(&(&b.0, b.1)));
    holders
        .into_iter()
        .map(|(_, key, changes)| EntryView {
            id: format!("{id}-holder-{key}"),
            hang: hang(here, key),
            title: wording::holder_name(here, key),
            lines: vec![wording::holder_line(here, changes)],
        })
        .collect()
}

/// What hangs beside a holder: its town, else what kind of holder it is; the place of private owners is in their names.
fn hang(here: &Here<'_>, key: &Key) -> String {
    let Some(holder) = wording::present_holder(here, key) else {
        return key.to_string();
    };
    let town = holder.town.as_ref().map(|town| town.value.clone());
    town.unwrap_or_else(|| here.words().listed("holder-kind", holder.kind).to_owned())
}

/// The other records, a line for each kind of change.
fn others(here: &Here<'_>, account: &EditionAccount, id: &str) -> Vec<CleanHtml> {
    let words = here.words();
    let mut lines = Vec::new();
    let kinds = [
        (IssuedKind::Holder, "changes-new-holders"),
        (IssuedKind::Person, "changes-new-people"),
        (IssuedKind::Work, "changes-new-literature"),
        (IssuedKind::Exhibition, "changes-new-exhibitions"),
        (IssuedKind::Mark, "changes-new-marks"),
        (IssuedKind::Document, "changes-new-documents"),
        (IssuedKind::Series, "changes-new-series"),
        (IssuedKind::Page, "changes-new-pages"),
    ];
    for (kind, word) in kinds {
        let new = account.records.iter();
        let new = new.filter(|record| record.address.kind() == kind && record.is_new());
        let names: Vec<CleanHtml> = new
            .map(|record| marked(record, id, &wording::record_name(here, &record.address)))
            .collect();
        if !names.is_empty() {
            let all = CleanHtml::join(&names, "; ");
            lines.push(words.html(word, Some(names.len()), &[("records", &all)]));
        }
    }
    lines.extend(
        account
            .records
            .iter()
            .filter(|record| !record.is_new())
            .map(|record| marked(record, id, &wording::of_record(here, record))),
    );
    lines
}

/// What is told of a record, with the place that the feed names.
fn marked(record: &RecordAccount, id: &str, told: &CleanHtml) -> CleanHtml {
    let place = format!("{id}-{}", wording::record_place(&record.address));
    CleanHtml::element("span", &[("id", place.as_str())], told)
}
