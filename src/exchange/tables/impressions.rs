//! Tables of impressions: what each sheet is, how it was identified, and what was observed on it.

use super::cell::{Cell, DELIMITER};
use super::rows::{SheetRow, numbered, part, parts, some_part};
use super::table::{TableOf, Written};
use crate::exchange::format::Sources;
use crate::model::design::Design;
use crate::model::impression::{BlockPrinted, Identification, Impression, Opinion, StateReading};
use crate::model::key::{ImpressionKey, Key};
use crate::model::place::Placed;
use crate::model::point::{Observation, ObservedValue};
use crate::model::sheet::ConditionNote;
use crate::model::words::closed_list;
use crate::page::Address;

pub(super) fn impressions(sources: Sources<'_>) -> Written {
    fn reading<'r>(row: &'r SheetRow<'_>) -> Option<&'r Identification> {
        row.1.identified.as_ref()
    }
    let joined = &sources.studies.joined;
    TableOf::new("impressions")
        .id("impression", |row: &SheetRow| (&row.1.key).into())
        .key_of("design", "designs", |row| (&row.0.key).into())
        .required()
        .text("number", |row| row.0.sheet_number(row.1).into())
        .required()
        .key_of("sheet", "impressions", |row| {
            joined.page_of(&row.1.key).into()
        })
        .required()
        .word("status", |row| Some(row.1.status.value))
        .key_of("holder", "holders", |row| row.1.holder.as_ref().into())
        .text("accession", |row| row.1.accession.as_ref().into())
        .text("part", |row| row.1.part.as_ref().into())
        .text("credit", |row| row.1.credit.as_ref().into())
        .address("web", |row| row.1.web.as_ref().into())
        .parties(
            sources,
            ["owner_person", "owner_holder", "owner_name"],
            |row| &row.1.owners,
        )
        .text("kind", |row| row.1.kind.own().into())
        .certainty_of("kind_certainty", |row| &row.1.kind)
        .text("numbering", |row| row.1.numbering.as_ref().into())
        .list("technique", |row| Cell::placed(&row.1.technique))
        .keys_of("states", "states", |row| states(row.0, reading(row)))
        .text("numerals", |row| {
            numerals(sources, row.0, reading(row)).into()
        })
        .keys_of("printings", "printings", |row| match reading(row) {
            Some(reading) => parts(row.0, &reading.printing),
            None => Cell::Empty,
        })
        .key_of("variant", "variants", |row| {
            some_part(row.0, reading(row).and_then(|r| r.variant.as_ref()))
        })
        .word("identified_certainty", |row| {
            reading(row).map(|reading| reading.claim.certainty())
        })
        .boolean("contradicted", |row| {
            let study = sources.studies.designs.get(&row.0.key);
            let number = row.1.key.number;
            reading(row)
                .and(study)
                .map(|study| study.contradictions.contains_key(&number))
                .into()
        })
        .size(
            ["sheet_height_mm", "sheet_width_mm", "sheet_certainty"],
            |row| &row.1.sheet.size,
        )
        .size(
            ["image_height_mm", "image_width_mm", "image_certainty"],
            |row| &row.1.sheet.image,
        )
        .size(
            [
                "platemark_height_mm",
                "platemark_width_mm",
                "platemark_certainty",
            ],
            |row| &row.1.sheet.platemark,
        )
        .size(
            ["unsaid_height_mm", "unsaid_width_mm", "unsaid_certainty"],
            |row| &row.1.sheet.unsaid,
        )
        .size(
            ["support_height_mm", "support_width_mm", "support_certainty"],
            |row| &row.1.sheet.support,
        )
        .size(
            ["mount_height_mm", "mount_width_mm", "mount_certainty"],
            |row| &row.1.sheet.mount,
        )
        .size(
            ["frame_height_mm", "frame_width_mm", "frame_certainty"],
            |row| &row.1.sheet.frame,
        )
        .person_or_holder(
            sources,
            ["measured_by_person", "measured_by_holder"],
            |row| row.1.sheet.measuring.by.as_ref().map(|by| &by.value),
        )
        .plain_date("measured", |row| {
            let date = row.1.sheet.measuring.date.as_ref();
            date.map(|date| &date.value)
        })
        .text("measured_with", |row| {
            row.1.sheet.measuring.how.as_ref().into()
        })
        .boolean("measured_in_sight", |row| {
            row.1.sheet.measuring.sight.into()
        })
        .text("sizes_given_as", |row| {
            row.1.sheet.measuring.said.as_ref().into()
        })
        .text("paper", |row| row.1.sheet.paper.as_ref().into())
        .text("paper_colour", |row| row.1.sheet.colour.as_ref().into())
        .number("chain_lines_mm", |row| {
            row.1.sheet.chain_lines.as_deref().copied().into()
        })
        .number("laid_lines_per_cm", |row| {
            row.1.sheet.laid_lines.as_deref().copied().into()
        })
        .number("thickness_mm", |row| {
            row.1.sheet.thickness.as_deref().copied().into()
        })
        .plain_date("paper_date", |row| {
            row.1.sheet.paper_date.as_ref().map(|date| &date.value)
        })
        .list("watermark", |row| {
            let texts = row.1.sheet.watermark.iter();
            Cell::list(texts.filter_map(|watermark| watermark.text.as_ref()))
        })
        .text("margins", |row| row.1.sheet.margins.as_ref().into())
        .text("mounted_on", |row| row.1.sheet.mounted_on.as_ref().into())
        .list("inks", |row| Cell::placed(&row.1.sheet.inks))
        .word("printed_side", |row| row.1.sheet.side)
        .date(["date", "date_earliest", "date_latest"], |row| {
            row.1.sheet.date.own()
        })
        .certainty_of("date_certainty", |row| &row.1.sheet.date)
        .list("without", |row| Cell::placed(&row.1.without))
        .text("condition", |row| {
            let notes = row.1.condition.iter().map(condition_in_words);
            notes.collect::<Vec<_>>().join("; ").into()
        })
        .text("provenance_line", |row| {
            row.1.provenance_line.as_ref().into()
        })
        .key_of("taken_from", "impressions", |row| {
            row.1.taken_from.as_ref().into()
        })
        .standing(|row| &row.1.standing)
        .address("address", |row| {
            sources.address(&Address::Impression(row.1.key.clone()))
        })
        .required()
        .write(sources.sheets())
}

/// "Foxing, lower margin": what was found and where.
fn condition_in_words(note: &ConditionNote) -> String {
    match &note.at {
        Some(at) => format!("{}, {at}", note.what),
        None => note.what.clone(),
    }
}

/// The states that a reading allows; of a sheet whose matrices are in different conditions, each of theirs.
pub(super) fn states(design: &Design, reading: Option<&Identification>) -> Cell {
    match reading.and_then(|reading| reading.state.as_ref()) {
        None => Cell::Empty,
        Some(StateReading::OneOf(states)) => parts(design, states),
        Some(StateReading::ByMatrix(pairs)) => parts(design, pairs.iter().map(|(_, state)| state)),
    }
}

/// The numerals of the same: "iii/v", "ii/v or iii/v".
pub(super) fn numerals(
    sources: Sources<'_>,
    design: &Design,
    reading: Option<&Identification>,
) -> String {
    let Some(StateReading::OneOf(states)) = reading.and_then(|r| r.state.as_ref()) else {
        return String::new();
    };
    let numerals = states.iter().filter_map(|state| {
        let numeral = sources.studies.numeral(&design.key, &state.value)?;
        Some(format!("{}/{}", numeral.roman(), numeral.of()))
    });
    numerals.collect::<Vec<_>>().join(DELIMITER)
}

closed_list! {
    /// Whose reading a row gives.
    View {
        /// The catalogue's own.
        Own = "own",
        /// Another that the catalogue, or the author of an opinion, thinks possible too.
        Alternative = "alternative",
        /// Somebody else's.
        Opinion = "opinion",
    }
}

/// A reading of a sheet.
struct Reading<'s> {
    sheet: SheetRow<'s>,
    position: usize,
    view: View,
    /// The position of the reading beside which it is possible.
    beside: Option<usize>,
    said: Option<&'s String>,
    after: Option<&'s Placed<Key>>,
    reading: &'s Identification,
}

pub(super) fn identifications(sources: Sources<'_>) -> Written {
    TableOf::new("identifications")
        .part_of("impression", "impressions", |row: &Reading| {
            (&row.sheet.1.key).into()
        })
        .position(|row| row.position)
        .word("view", |row| Some(row.view))
        .integer("beside", |row| row.beside.into())
        .text("said", |row| row.said.into())
        .key_of("after", "literature", |row| row.after.into())
        .keys_of("states", "states", |row| {
            states(row.sheet.0, Some(row.reading))
        })
        .list("by_matrix", |row| by_matrix(row.sheet.0, row.reading))
        .keys_of("printings", "printings", |row| {
            parts(row.sheet.0, &row.reading.printing)
        })
        .key_of("variant", "variants", |row| {
            some_part(row.sheet.0, row.reading.variant.as_ref())
        })
        .text("kind", |row| row.reading.kind.as_ref().into())
        .text("why", |row| row.reading.why.as_ref().into())
        .claim(sources, |row| &row.reading.claim)
        .write(sources.sheets().flat_map(readings))
}

/// Each matrix and the state that it is in: `14/key-block=14/moonlit`.
fn by_matrix(design: &Design, reading: &Identification) -> Cell {
    match &reading.state {
        Some(StateReading::ByMatrix(pairs)) => Cell::list(pairs.iter().map(|(matrix, state)| {
            let key = &design.key;
            format!("{key}/{}={key}/{}", matrix.value, state.value)
        })),
        _ => Cell::Empty,
    }
}

fn readings<'s>(sheet: SheetRow<'s>) -> Vec<Reading<'s>> {
    let mut all = Vec::new();
    let mut add = |view, opinion: Option<&'s Opinion>, reading: &'s Identification| {
        let position = all.len() + 1;
        let row = |reading, view, position, beside| Reading {
            sheet,
            position,
            view,
            beside,
            said: None,
            after: None,
            reading,
        };
        all.push(Reading {
            said: opinion.and_then(|opinion| opinion.said.as_ref()),
            after: opinion.and_then(|opinion| opinion.after.as_ref()),
            ..row(reading, view, position, None)
        });
        let others = reading.or.iter().zip(position + 1..);
        all.extend(others.map(|(other, at)| row(other, View::Alternative, at, Some(position))));
    };
    if let Some(reading) = &sheet.1.identified {
        add(View::Own, None, reading);
    }
    for opinion in &sheet.1.opinions {
        add(View::Opinion, Some(opinion), &opinion.reading);
    }
    all
}

closed_list! {
    /// How an observation is to be read.
    Seen {
        /// One of the values was seen.
        Values = "values",
        /// None of the values was seen.
        Not = "not",
        /// The place cannot be seen.
        NotVisible = "not-visible",
        /// The question makes no sense for this sheet.
        NotApplicable = "not-applicable",
    }
}

pub(super) fn observations(sources: Sources<'_>) -> Written {
    type Row<'s> = (SheetRow<'s>, usize, &'s Observation);
    let rows = sources
        .sheets()
        .flat_map(|sheet| numbered(sheet, &sheet.1.observed));
    TableOf::new("observations")
        .part_of("impression", "impressions", |row: &Row| {
            (&row.0.1.key).into()
        })
        .part_of("point", "points", |row| part(row.0.0, &row.2.point))
        .word("seen", |row| {
            Some(match row.2.seen {
                ObservedValue::OneOf(_) => Seen::Values,
                ObservedValue::NoneOf(_) => Seen::Not,
                ObservedValue::NotVisible => Seen::NotVisible,
                ObservedValue::NotApplicable => Seen::NotApplicable,
            })
        })
        .list("values", |row| match &row.2.seen {
            ObservedValue::OneOf(values) | ObservedValue::NoneOf(values) => Cell::placed(values),
            ObservedValue::NotVisible | ObservedValue::NotApplicable => Cell::Empty,
        })
        .claim(sources, |row| &row.2.claim)
        .write(rows)
}

pub(super) fn blocks(sources: Sources<'_>) -> Written {
    type Row<'s> = (SheetRow<'s>, usize, &'s (Placed<Key>, Placed<BlockPrinted>));
    let rows = sources
        .sheets()
        .flat_map(|sheet| numbered(sheet, &sheet.1.blocks));
    TableOf::new("blocks")
        .part_of("impression", "impressions", |row: &Row| {
            (&row.0.1.key).into()
        })
        .part_of("matrix", "matrices", |row| part(row.0.0, &row.2.0))
        .word("printed", |row| Some(row.2.1.value))
        .write(rows)
}

/// Other records that the record of a sheet names: of the same sheet, of its paper, of its set.
pub(super) fn other_sheets(sources: Sources<'_>) -> Written {
    TableOf::new("other-sheets")
        .part_of("impression", "impressions", |row: &OtherRow| {
            (&row.sheet.key).into()
        })
        .position(|row| row.position)
        .word("relation", |row| Some(row.relation))
        .key_of("other", "impressions", |row| row.other.into())
        .required()
        .text("why", |row| row.why.into())
        .write(sources.sheets().flat_map(|(_, sheet)| others(sheet)))
}

closed_list! {
    /// How another record is related to a sheet.
    SheetRelation {
        /// It is of the same sheet.
        Same = "same-as",
        /// It may be of the same sheet.
        MaybeSame = "maybe-same-as",
        /// It is certainly of another sheet.
        NotSame = "not-same-as",
        /// It is printed on the same paper.
        SharesSheet = "shares-sheet",
        /// It belongs to the same set.
        GoesWith = "goes-with",
    }
}

/// Another record that a sheet's record names.
struct OtherRow<'s> {
    sheet: &'s Impression,
    position: usize,
    relation: SheetRelation,
    other: &'s ImpressionKey,
    why: Option<&'s String>,
}

fn others(sheet: &Impression) -> Vec<OtherRow<'_>> {
    let claimed = [
        (SheetRelation::Same, &sheet.same_as),
        (SheetRelation::MaybeSame, &sheet.maybe_same_as),
        (SheetRelation::NotSame, &sheet.not_same_as),
    ];
    let claimed = claimed.into_iter().flat_map(|(relation, list)| {
        let others = list.iter();
        others.map(move |other| (relation, &other.impression.value, other.why.as_ref()))
    });
    let named = [
        (SheetRelation::SharesSheet, &sheet.shares_sheet),
        (SheetRelation::GoesWith, &sheet.goes_with),
    ];
    let named = named
        .into_iter()
        .flat_map(|(relation, list)| list.iter().map(move |key| (relation, &key.value, None)));
    let all = claimed.chain(named).zip(1..);
    all.map(|((relation, other, why), position)| OtherRow {
        sheet,
        position,
        relation,
        other,
        why,
    })
    .collect()
}
