//! The account of an edition as a part of a page: by entry, by holder, other records.

use serde::Serialize;

use super::wording::{self, Told};
use crate::model::key::Key;
use crate::model::register::IssuedKind;
use crate::page::setting::book::Here;
use crate::page::setting::html::CleanHtml;
use crate::study::issued::account::{
    EditionAccount, HolderChange, HolderChangeKind, RecordAccount, RecordChange,
};

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
        others: others(here, account),
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
            let name = here.public().holders.get(key);
            let name = name.map_or_else(|| key.to_string(), |h| here.holder_city_first(h));
            (name, key, changes)
        })
        .collect();
    holders.sort_by(|a, b| (&a.0, a.1).cmp(&(&b.0, b.1)));
    holders
        .into_iter()
        .map(|(_, key, changes)| {
            let town = here.public().holders.get(key);
            let town = town.and_then(|holder| holder.town.as_ref());
            EntryView {
                id: format!("{id}-holder-{key}"),
                hang: town.map_or_else(String::new, |town| town.value.clone()),
                title: wording::holder_name(here, key),
                lines: vec![holder_line(here, changes)],
            }
        })
        .collect()
}

/// "New: 14.7, 14.8. Identified otherwise: 3.2."
fn holder_line(here: &Here<'_>, changes: &[HolderChange]) -> CleanHtml {
    let kinds = [
        (HolderChangeKind::New, "holder-change-new"),
        (HolderChangeKind::Came, "holder-change-came"),
        (HolderChangeKind::Left, "holder-change-left"),
        (HolderChangeKind::Identified, "holder-change-identified"),
        (HolderChangeKind::Standing, "holder-change-standing"),
        (HolderChangeKind::Revised, "holder-change-revised"),
    ];
    let mut sentences = Vec::new();
    for (kind, word) in kinds {
        let mut sheets: Vec<_> = changes
            .iter()
            .filter(|change| change.kind == kind)
            .collect();
        sheets.sort_by_key(|change| here.book.studies.order.impression_rank(&change.sheet));
        let links: Vec<CleanHtml> = sheets
            .into_iter()
            .map(|change| wording::sheet_link(here, &change.sheet))
            .collect();
        if !links.is_empty() {
            let all = CleanHtml::join(&links, ", ");
            sentences.push(here.words().html(word, None, &[("sheets", &all)]));
        }
    }
    CleanHtml::join(&sentences, " ")
}

/// The other records, a line for each kind of change.
fn others(here: &Here<'_>, account: &EditionAccount) -> Vec<CleanHtml> {
    let words = here.words();
    let mut lines = Vec::new();
    let kinds = [
        (IssuedKind::Holder, "changes-new-holders"),
        (IssuedKind::Person, "changes-new-people"),
        (IssuedKind::Work, "changes-new-literature"),
        (IssuedKind::Exhibition, "changes-new-exhibitions"),
        (IssuedKind::Mark, "changes-new-marks"),
        (IssuedKind::Page, "changes-new-pages"),
    ];
    for (kind, word) in kinds {
        let new = account.records.iter();
        let new = new
            .filter(|record| record.address.kind() == kind && record.change == RecordChange::New);
        let names: Vec<CleanHtml> = new
            .map(|record| wording::record_name(here, &record.address))
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
            .filter_map(|record| other(here, record)),
    );
    lines
}

fn other(here: &Here<'_>, record: &RecordAccount) -> Option<CleanHtml> {
    let name = wording::record_name(here, &record.address);
    match &record.change {
        RecordChange::New => None,
        RecordChange::Leads(to) => {
            let was = CleanHtml::text(&record.address.key().replace('-', " "));
            let now = wording::record_name(here, to);
            let both = [("was", &was), ("now", &now)];
            Some(here.words().html("change-record-leads", None, &both))
        }
        RecordChange::Revised(subjects) => {
            let revised = wording::record_revised(here, subjects);
            Some(name.then(": ").and(&revised).then("."))
        }
    }
}
