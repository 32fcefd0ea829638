//! Tables of the history of sheets: marks and watermarks, what was noted of their condition, provenance, sightings, earlier numbers, exhibitions.

use super::cell::Cell;
use super::rows::{SheetRow, numbered};
use super::shared::DateNames;
use super::table::{TableOf, Written};
use crate::exchange::format::Sources;
use crate::model::impression::{Exhibited, FormerAccession};
use crate::model::literature::Citation;
use crate::model::mark::Mark;
use crate::model::provenance::{Party, PartyRole, ProvenanceEntry, Sighting};
use crate::model::sheet::{ConditionNote, Watermark};
use crate::model::words::closed_list;

const FROM: DateNames = ["from", "from_earliest", "from_latest"];
const TO: DateNames = ["to", "to_earliest", "to_latest"];

closed_list! {
    /// In which role somebody had a sheet.
    Role {
        /// Owned it.
        Owner = "owner",
        /// Handled it.
        Agent = "agent",
        /// Kept it for its owner.
        Keeper = "keeper",
    }
}

pub(super) fn provenance(sources: Sources<'_>) -> Written {
    type Row<'s> = (SheetRow<'s>, usize, &'s ProvenanceEntry);
    let rows = sources
        .sheets()
        .flat_map(|sheet| numbered(sheet, &sheet.1.provenance));
    TableOf::new("provenance")
        .part_of("impression", "impressions", |row: &Row| {
            (&row.0.1.key).into()
        })
        .position(|row| row.1)
        .word("role", |row| {
            Some(match row.2.role {
                PartyRole::Owner => Role::Owner,
                PartyRole::Agent => Role::Agent,
                PartyRole::Keeper => Role::Keeper,
            })
        })
        .party(sources, ["person", "holder", "name"], |row| {
            Some(&row.2.party)
        })
        .boolean("name_withheld", |row| {
            (row.2.party == Party::Undisclosed).into()
        })
        .date(FROM, |row| row.2.from.as_ref().map(|date| &date.value))
        .date(TO, |row| row.2.to.as_ref().map(|date| &date.value))
        .text("how", |row| row.2.how.as_ref().into())
        .text("place", |row| row.2.at_place.as_ref().into())
        .text("lot", |row| row.2.lot.as_ref().into())
        .text("price", |row| row.2.price.as_ref().into())
        .boolean("direct", |row| row.2.direct.into())
        .boolean("sold", |row| row.2.sold.into())
        .word("this_sheet", |row| {
            let this_sheet = row.2.this_sheet.as_ref();
            this_sheet.map(|certainty| certainty.value)
        })
        .claim(sources, |row| &row.2.claim)
        .write(rows)
}

pub(super) fn sightings(sources: Sources<'_>) -> Written {
    type Row<'s> = (SheetRow<'s>, usize, &'s Sighting);
    let rows = sources
        .sheets()
        .flat_map(|sheet| numbered(sheet, &sheet.1.sightings));
    TableOf::new("sightings")
        .part_of("impression", "impressions", |row: &Row| {
            (&row.0.1.key).into()
        })
        .position(|row| row.1)
        .date(["date", "date_earliest", "date_latest"], |row| {
            Some(&row.2.date.value)
        })
        .party(sources, ["by_person", "by_holder", "by_name"], |row| {
            row.2.by.as_ref()
        })
        .word("basis", |row| row.2.basis.as_ref().map(|basis| basis.value))
        .cited(["source", "source_document"], |row| {
            row.2.cite.as_ref().map(|cite| &cite.value)
        })
        .text("source_at", |row| row.2.at.as_ref().into())
        .write(rows)
}

pub(super) fn former_numbers(sources: Sources<'_>) -> Written {
    type Row<'s> = (SheetRow<'s>, usize, &'s FormerAccession);
    let rows = sources
        .sheets()
        .flat_map(|sheet| numbered(sheet, &sheet.1.former_accessions));
    TableOf::new("former-numbers")
        .part_of("impression", "impressions", |row: &Row| {
            (&row.0.1.key).into()
        })
        .position(|row| row.1)
        .key_of("holder", "holders", |row| row.2.holder.as_ref().into())
        .text("accession", |row| (&row.2.number).into())
        .required()
        .plain_date("until", |row| row.2.until.as_ref().map(|date| &date.value))
        .write(rows)
}

pub(super) fn exhibited(sources: Sources<'_>) -> Written {
    type Row<'s> = (SheetRow<'s>, usize, &'s Exhibited);
    let rows = sources
        .sheets()
        .flat_map(|sheet| numbered(sheet, &sheet.1.exhibited));
    TableOf::new("exhibited")
        .part_of("impression", "impressions", |row: &Row| {
            (&row.0.1.key).into()
        })
        .position(|row| row.1)
        .key_of("exhibition", "exhibitions", |row| {
            (&row.2.exhibition).into()
        })
        .required()
        .text("at", |row| row.2.at.as_ref().into())
        .word("this_sheet", |row| Some(row.2.certainty()))
        .boolean("illustrated", |row| row.2.illustrated.into())
        .write(rows)
}

/// What was noted of the condition of sheets.
pub(super) fn conditions(sources: Sources<'_>) -> Written {
    type Row<'s> = (SheetRow<'s>, usize, &'s ConditionNote);
    let rows = sources
        .sheets()
        .flat_map(|sheet| numbered(sheet, &sheet.1.condition));
    TableOf::new("conditions")
        .part_of("impression", "impressions", |row: &Row| {
            (&row.0.1.key).into()
        })
        .position(|row| row.1)
        .text("what", |row| (&row.2.what).into())
        .required()
        .text("at", |row| row.2.at.as_ref().into())
        .text("how", |row| row.2.how.as_ref().into())
        .person_or_holder(sources, ["by_person", "by_holder"], |row| {
            row.2.by.as_ref().map(|by| &by.value)
        })
        .plain_date("stated", |row| row.2.date.as_ref().map(|date| &date.value))
        .write(rows)
}

/// The watermarks of sheets, each with its number in the first repertory that has it.
pub(super) fn watermarks(sources: Sources<'_>) -> Written {
    type Row<'s> = (SheetRow<'s>, usize, &'s Watermark);
    let rows = sources
        .sheets()
        .flat_map(|sheet| numbered(sheet, &sheet.1.sheet.watermark));
    TableOf::new("watermarks")
        .part_of("impression", "impressions", |row: &Row| {
            (&row.0.1.key).into()
        })
        .position(|row| row.1)
        .text("text", |row| row.2.text.as_ref().into())
        .text("at", |row| row.2.at.as_ref().into())
        .list("repertory_numbers", |row| {
            Cell::list(row.2.reference.iter().map(in_repertory))
        })
        .write(rows)
}

/// "briquet 40": the work or document, and its number.
fn in_repertory(citation: &Citation) -> String {
    let number = citation.number.as_deref().unwrap_or_default();
    format!("{} {number}", citation.cite.value)
        .trim()
        .to_owned()
}

pub(super) fn marks(sources: Sources<'_>) -> Written {
    type Row<'s> = (SheetRow<'s>, usize, &'s Mark);
    let rows = sources
        .sheets()
        .flat_map(|sheet| numbered(sheet, &sheet.1.marks));
    TableOf::new("marks")
        .part_of("impression", "impressions", |row: &Row| {
            (&row.0.1.key).into()
        })
        .position(|row| row.1)
        .key_of("mark", "shared-marks", |row| row.2.record.as_ref().into())
        .key_of("condition", "mark-conditions", |row| {
            let of = row.2.record.as_ref().zip(row.2.condition.as_ref());
            of.map(|(mark, condition)| format!("{}/{}", mark.value, condition.value))
                .into()
        })
        .word("kind", |row| {
            let mark = sources.public.described_mark(row.2);
            mark.kind.as_ref().map(|kind| kind.value)
        })
        .text("medium", |row| row.2.medium.as_ref().into())
        .text("text", |row| {
            sources.public.described_mark(row.2).text.as_ref().into()
        })
        .word("side", |row| row.2.side)
        .text("at", |row| row.2.at.as_ref().into())
        .text("colour", |row| {
            sources.public.described_mark(row.2).colour.as_ref().into()
        })
        .text("repertory_number", |row| {
            sources.public.described_mark(row.2).number.as_ref().into()
        })
        .person_or_holder(sources, ["whose_person", "whose_holder"], |row| {
            row.2.whose.as_ref().map(|whose| &whose.value)
        })
        .person_or_holder(sources, ["applied_by_person", "applied_by_holder"], |row| {
            row.2.applied_by.as_ref().map(|by| &by.value)
        })
        .plain_date("applied", |row| {
            row.2.applied.as_ref().map(|date| &date.value)
        })
        .text("remark", |row| row.2.note.as_ref().into())
        .claim(sources, |row| &row.2.claim)
        .write(rows)
}
