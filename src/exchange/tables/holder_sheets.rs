//! The sheets of a holder as a table, in names and in keys, for its own database: first those that it keeps, then those
//! that it owns and others keep.
//!
//! The rows are those of the checklists on its page, in their order.

use std::collections::BTreeSet;

use super::cell::Cell;
use super::impressions::{numerals, states};
use super::rows::{SheetRow, parts};
use super::table::{TableOf, Written};
use crate::exchange::format::{Format, Sources};
use crate::exchange::issued::IssuedSheets;
use crate::model::certainty::Certainty;
use crate::model::holder::Holder;
use crate::model::impression::Status;
use crate::model::key::Key;
use crate::model::provenance::Party;
use crate::model::vocabulary::List as Vocabulary;
use crate::model::words::{Standing, closed_list};
use crate::page::{Address, ColumnNotes, Here, Subject, custody};

/// One table for each holder that keeps or owns a sheet.
pub(in crate::exchange) const CSV: Format = Format {
    name: "holder-csv",
    file: "sheets.csv",
    folders: &["holder/…/"],
    media_type: "text/csv",
    relation: "alternate",
    subjects,
    write: |here, subject| table_of(here, subject).map(|written| written.csv),
};

/// The same as JSON.
pub(in crate::exchange) const JSON: Format = Format {
    name: "holder-json",
    file: "sheets.json",
    folders: &["holder/…/"],
    media_type: "application/json",
    relation: "alternate",
    subjects,
    write: |here, subject| table_of(here, subject).map(|written| written.json),
};

closed_list! {
    /// What a holder has to do with a sheet.
    Custody {
        /// It keeps the sheet, its own or another's.
        Keeps = "keeps",
        /// It owns the sheet, which is kept elsewhere.
        Owns = "owns",
    }
}

/// A row of the table.
struct Row {
    custody: Custody,
    accession: Cell,
    part: Cell,
    web: Cell,
    key: Cell,
    number: Cell,
    design: Cell,
    title: Cell,
    numerals: Cell,
    states: Cell,
    printing: Cell,
    printings: Cell,
    certainty: Option<Certainty>,
    kind: Cell,
    numbering: Cell,
    status: Status,
    other: Cell,
    credit: Cell,
    standing: Standing,
    address: Cell,
}

fn table<'s>() -> TableOf<'s, Row> {
    TableOf::new("sheets")
        .text("accession", |row: &Row| row.accession.clone())
        .text("part", |row| row.part.clone())
        .key_of("impression", "impressions", |row| row.key.clone())
        .required()
        .text("number", |row| row.number.clone())
        .required()
        .word("custody", |row| Some(row.custody))
        .key_of("design", "designs", |row| row.design.clone())
        .required()
        .text("title", |row| row.title.clone())
        .text("numerals", |row| row.numerals.clone())
        .keys_of("states", "states", |row| row.states.clone())
        .list("printing_names", |row| row.printing.clone())
        .keys_of("printings", "printings", |row| row.printings.clone())
        .word("identified_certainty", |row| row.certainty)
        .text("kind_name", |row| row.kind.clone())
        .text("numbering", |row| row.numbering.clone())
        .word("status", |row| Some(row.status))
        .text("other_party", |row| row.other.clone())
        .text("credit", |row| row.credit.clone())
        .address("web", |row| row.web.clone())
        .word("standing", |row| Some(row.standing))
        .address("address", |row| row.address.clone())
        .required()
}

/// Its columns.
pub(in crate::exchange) fn columns() -> Vec<ColumnNotes> {
    table().write([]).columns
}

/// The holders that have such a table.
pub(in crate::exchange) fn subjects(sources: &Sources<'_>) -> Vec<Subject> {
    let public = sources.public;
    let mut keepers: BTreeSet<&Key> = BTreeSet::new();
    let mut owners: BTreeSet<&Key> = BTreeSet::new();
    for (_, sheet) in public.impressions() {
        keepers.extend(sheet.holder.as_ref().map(|holder| &holder.value));
        owners.extend(sheet.owners.iter().filter_map(|owner| match owner {
            Party::Record(owner) => Some(&owner.value),
            Party::Named(_) | Party::Undisclosed => None,
        }));
    }
    // What a holder kept that was taken over is with its successor.
    let keeps = |holder: &Holder| {
        let was = |key: &Key| *key == holder.key || public.became(key, &holder.key);
        holder.successor.is_none() && keepers.iter().any(|key| was(key))
    };
    let holders = public.holders.values();
    // The table that an edition issued stays, though it may be empty.
    let issued = IssuedSheets::of(public).holders;
    let is_issued = |holder: &Holder| holder.successor.is_none() && issued.contains(&holder.key);
    let holders =
        holders.filter(|holder| keeps(holder) || owners.contains(&holder.key) || is_issued(holder));
    holders
        .map(|holder| Subject::Page(Address::Holder(holder.key.clone())))
        .collect()
}

fn table_of(here: &Here<'_>, subject: &Subject) -> Option<Written> {
    let Subject::Page(Address::Holder(holder)) = subject else {
        return None;
    };
    let (kept, owned) = kept_and_owned(here, holder)?;
    let kept = kept.into_iter();
    let rows = kept.map(|sheet| row(here, Custody::Keeps, sheet)).chain(
        owned
            .into_iter()
            .map(|sheet| row(here, Custody::Owns, sheet)),
    );
    Some(table().write(rows))
}

/// The sheets that a holder keeps, and those that it owns and others keep.
fn kept_and_owned<'b>(
    here: &Here<'b>,
    holder: &Key,
) -> Option<(Vec<SheetRow<'b>>, Vec<SheetRow<'b>>)> {
    let mentions = here.book.studies.back_links.holders.get(holder);
    let mentions = mentions.map_or(&[][..], Vec::as_slice);
    let kept = custody::kept_by(here, here.public().holders.get(holder)?);
    Some((kept, custody::owned_elsewhere(here, mentions, holder)))
}

/// The same, in the order of the rows.
pub(in crate::exchange) fn held_and_owned<'b>(
    here: &Here<'b>,
    holder: &Key,
) -> Option<Vec<SheetRow<'b>>> {
    let (mut kept, owned) = kept_and_owned(here, holder)?;
    kept.extend(owned);
    Some(kept)
}

fn row(here: &Here<'_>, custody: Custody, (design, sheet): SheetRow<'_>) -> Row {
    let settings = &here.public().settings;
    let reading = sheet.identified.as_ref();
    let printings = reading.map_or(&[][..], |reading| &reading.printing);
    let names = printings
        .iter()
        .map(|key| here.printing_name(design, &key.value));
    let other = match custody {
        Custody::Keeps => {
            let owners = sheet.owners.iter().map(|owner| here.party(owner).plain());
            let owners: Vec<String> = owners.collect();
            (!owners.is_empty()).then(|| owners.join("; "))
        }
        Custody::Owns => sheet
            .holder
            .as_ref()
            .map(|keeper| here.holder_and_city(&keeper.value).plain()),
    };
    let kind = sheet.kind.own();
    let kind = kind.map(|kind| here.term(Vocabulary::Kinds, kind.as_str()));
    let number = design.sheet_number(sheet);
    let page = Address::Impression(here.joined().page_of(&sheet.key).clone());
    Row {
        custody,
        accession: sheet.accession.as_ref().into(),
        part: sheet.part.as_ref().into(),
        web: sheet.web.as_ref().into(),
        key: (&sheet.key).into(),
        number: format!("{} {number}", settings.siglum.value).into(),
        design: (&design.key).into(),
        title: design.title().map(|title| &title.text).into(),
        numerals: numerals(Sources::of(here.book), design, reading).into(),
        states: states(design, reading),
        printing: Cell::list(names),
        printings: parts(design, printings),
        certainty: reading.map(|reading| reading.claim.certainty()),
        kind: kind.into(),
        numbering: sheet.numbering.as_ref().into(),
        status: sheet.status.value,
        other: other.into(),
        credit: sheet.credit.as_ref().into(),
        standing: sheet.standing.standing,
        address: page.absolute(&settings.address.value).into(),
    }
}
