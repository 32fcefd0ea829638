//! What the records of one sheet say together, each line with the records that it comes from.
//!
//! Sightings, exhibitions and literature are one list, in the order of time where they have dates; a line that several
//! records have is given once. What a record says of the sheet itself (numbers, sizes, marks, its identification, what
//! was seen) is not united with what another says: each other record keeps a part of its own.

use serde::Serialize;

use super::apparatus;
use super::as_given::{self, AsGivenView};
use super::observed::{self, ObservedTable};
use super::opinions;
use super::reading::{ReadingView, reading_view};
use crate::model::design::Design;
use crate::model::edtf::Day;
use crate::model::impression::Impression;
use crate::model::key::ImpressionKey;
use crate::page::lists::facts::{Fact, FactsPlace};
use crate::page::phrases::standing_note;
use crate::page::setting::book::Here;
use crate::page::setting::html::CleanHtml;
use crate::page::setting::words::Argument;
use crate::page::texts::markdown;

/// What another record of the sheet says of the sheet itself.
#[derive(Serialize)]
pub(super) struct RecordPart {
    /// The fragment of the part: "record-7-23".
    id: String,
    heading: String,
    /// That the record is doubtful or rejected, and why.
    standing: Option<CleanHtml>,
    facts: Vec<Fact>,
    as_given: Option<AsGivenView>,
    identification: Option<ReadingView>,
    opinions: Vec<CleanHtml>,
    observed: Option<ObservedTable>,
    notes: Option<CleanHtml>,
}

/// The parts of the other records of a sheet.
pub(super) fn others(here: &Here<'_>, design: &Design, records: &[&Impression]) -> Vec<RecordPart> {
    let others = records.iter().skip(1);
    let part = |record: &&Impression| {
        let number = here.record_number(&record.key);
        let identified = record.identified.as_ref();
        RecordPart {
            id: format!("record-{}-{}", record.key.design, record.key.number),
            heading: here.words().with(
                "record-of-this-sheet",
                &[("record", Argument::Text(&number))],
            ),
            standing: standing_note::note(here, &record.standing),
            facts: apparatus::facts(here, design, record, FactsPlace::Apart),
            as_given: as_given::of_record(here, record),
            identification: identified.map(|reading| reading_view(here, design, reading)),
            opinions: opinions::all(here, design, record),
            observed: observed::table(here, design, record),
            notes: markdown::note(here, record.note.as_ref()),
        }
    };
    others.map(part).collect()
}

/// A line of a list, and when it was, where it has a date.
pub(super) struct DatedLine {
    pub day: Option<Day>,
    pub line: CleanHtml,
}

/// The lines of all records as one list, each with the records it comes from. Where all have days, it is in the order of
/// these; a line without one follows the line before it in its record.
pub(super) fn united(
    here: &Here<'_>,
    records: &[&Impression],
    lines: impl Fn(&Impression) -> Vec<DatedLine>,
) -> Vec<CleanHtml> {
    let mut all: Vec<(Option<Day>, CleanHtml, Vec<&ImpressionKey>)> = Vec::new();
    for record in records {
        let mut last = None;
        for DatedLine { day, line } in lines(record) {
            last = day.or(last);
            match all.iter_mut().find(|(_, known, _)| *known == line) {
                Some((_, _, of)) if of.last() != Some(&&record.key) => of.push(&record.key),
                Some(_) if records.len() > 1 => {}
                _ => all.push((last, line, vec![&record.key])),
            }
        }
    }
    if let [page, _, ..] = records {
        all.sort_by_key(|(day, ..)| *day);
        let tagged = all
            .into_iter()
            .map(|(_, line, of)| CleanHtml::join([&line, &here.of_record(&page.key, of)], " "));
        return tagged.collect();
    }
    all.into_iter().map(|(_, line, _)| line).collect()
}
