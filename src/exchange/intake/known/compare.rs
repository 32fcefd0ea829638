//! What each row is in the census: its standing, and the records that it may be.
//!
//! In: the rows with their designs, the catalogue. Sets [`RowStanding`], [`MayBe`] and doubts. A row is a record where its
//! house keeps the record under the same number, where it names the record, or where an editor says so; everything else is
//! only a record that it may be, with the reason. What an editor says that a row is not, it neither is nor may be.

use std::collections::{BTreeMap, BTreeSet, HashMap};

use super::numbers::{NumberFit, NumberedSheet, SheetNumbers};
use super::same_sheet::{SheetOf, SheetPair, Wording, sheet_pairs};
use crate::exchange::intake::columns::Holds;
use crate::exchange::intake::grouping::settings::{SettledSheet, SettledSheets};
use crate::exchange::intake::handing::HandingIn;
use crate::exchange::intake::proposal::{
    Correction, DesignIs, MayBe, ProposedDesign, ProposedRow, RowDoubt, RowStanding,
};
use crate::model::catalogue::Catalogue;
use crate::model::impression::Impression;
use crate::model::key::{ImpressionKey, Key};
use crate::study::Studies;
use crate::study::search::words::number_key;

/// What rows are compared with, and how.
pub struct Comparison<'a> {
    /// The catalogue, with everything private: the report is for its editors.
    pub catalogue: &'a Catalogue,
    /// Its studies.
    pub studies: &'a Studies,
    /// Who hands in.
    pub handing: &'a HandingIn,
    /// What editors say of sheets.
    pub settled: &'a SettledSheets<'a>,
    /// Makes a row a record with a key.
    pub as_record: &'a dyn Fn(&ProposedRow, ImpressionKey) -> Impression,
    /// The same without the holder's words (`[as_given]`), which no reason rests on.
    pub as_compared: &'a dyn Fn(&ProposedRow, ImpressionKey) -> Impression,
    /// What a proposed record changes in a recorded one.
    pub corrections: &'a dyn Fn(&Impression, &Impression) -> Vec<Correction>,
    /// The words of reasons.
    pub wording: Wording<'a>,
}

/// Sets the standing of each row, the records that it may be, and what is doubtful about its number.
pub fn compare(rows: &mut [ProposedRow], designs: &[ProposedDesign], with: &Comparison<'_>) {
    let numbers = SheetNumbers::of(with.catalogue);
    let repeated = repeated(rows, with.handing);
    for row in rows.iter_mut().filter(|row| is_compared(row)) {
        by_number(row, designs, with, &numbers, &repeated);
    }
    by_reasons(rows, designs, with);
    for row in rows.iter_mut().filter(|row| !row.may_be.is_empty()) {
        if let Some(settled) = with.settled.row(row) {
            row.may_be
                .retain(|other| !settled.excludes(&other.impression));
        }
    }
}

fn is_compared(row: &ProposedRow) -> bool {
    !matches!(row.standing, RowStanding::LeftOut | RowStanding::Nothing)
}

/// The number of a row as it is compared, with its holder.
type RowNumber = (Option<Key>, String);

/// The numbers that several rows have, with those rows.
fn repeated(rows: &[ProposedRow], handing: &HandingIn) -> HashMap<RowNumber, Vec<u32>> {
    let mut all: HashMap<RowNumber, Vec<u32>> = HashMap::new();
    for row in rows.iter().filter(|row| is_compared(row)) {
        if let Some(number) = number_of(row, handing) {
            all.entry(number).or_default().push(row.row);
        }
    }
    all.retain(|_, rows| rows.len() > 1);
    all
}

fn number_of(row: &ProposedRow, handing: &HandingIn) -> Option<RowNumber> {
    let key = number_key(row.accession.as_deref()?)?;
    Some((row.holder(handing).cloned(), key))
}

fn by_number(
    row: &mut ProposedRow,
    designs: &[ProposedDesign],
    with: &Comparison<'_>,
    numbers: &SheetNumbers,
    repeated: &HashMap<RowNumber, Vec<u32>>,
) {
    let settled = with.settled.row(row);
    let own = number_of(row, with.handing);
    let others = own.as_ref().and_then(|own| repeated.get(own));
    let is_said = settled.is_some_and(|settled| settled.is.is_some());
    if let (Some(others), Some(accession), false) = (others, &row.accession, is_said) {
        let others: Vec<String> = others
            .iter()
            .filter(|at| **at != row.row)
            .take(6)
            .map(u32::to_string)
            .collect();
        row.doubts.push(RowDoubt::Said(format!(
            "the number {accession} stands in row {} too: sheets of one number need their part, such as \"sheet 2\", or one \
             number is wrong",
            others.join(", ")
        )));
    }
    let holder = row.holder(with.handing).cloned();
    let accession = row.accession.clone().unwrap_or_default();
    let mut found = numbers.with(&accession);
    found.retain(|sheet| !settled.is_some_and(|settled| settled.excludes(&sheet.impression)));
    let whole = kept(with.catalogue, &found, holder.as_ref(), NumberFit::Whole);
    let whole = of_design(whole, row, designs, others.is_some());
    let by_editor = settled.and_then(|settled| settled.is.as_ref());
    let by_editor = by_editor.filter(|named| with.catalogue.impression(&named.key).is_some());
    if let Some(named) = by_editor {
        set_standing(row, &named.key, with);
    } else if let Some(record) = named_record(row, holder.as_ref(), settled, with.catalogue) {
        set_standing(row, &record, with);
    } else if let [record] = &whole[..] {
        set_standing(row, record, with);
    }
    let recorded = match &row.standing {
        RowStanding::Unchanged(key) | RowStanding::Corrected(key, _) => Some(key.clone()),
        _ => None,
    };
    for sheet in &found {
        let why = match (sheet.fit, is_theirs(with.catalogue, sheet, holder.as_ref())) {
            _ if Some(&sheet.impression) == recorded.as_ref() => continue,
            (_, Some(false)) | (NumberFit::Former | NumberFit::Unpunctuated, None) => continue,
            (NumberFit::Whole, Some(true)) => {
                format!(
                    "the same holder keeps it under the number {}, and several have it",
                    sheet.number
                )
            }
            (NumberFit::OfParts, Some(true)) => {
                format!(
                    "it is a part of the number {} of the same holder, and the row does not say which",
                    sheet.number
                )
            }
            (NumberFit::Former, Some(true)) => {
                format!(
                    "the number of the row, {accession}, is a former number of it with the same holder"
                )
            }
            (NumberFit::Unpunctuated, Some(true)) => {
                format!(
                    "the same holder keeps it under the number {}, which is written otherwise",
                    sheet.number
                )
            }
            (NumberFit::Whole | NumberFit::OfParts, None) => {
                format!(
                    "it has the number {}, and it is not known whether the holder is the same",
                    sheet.number
                )
            }
        };
        add(row, sheet, why);
    }
    if let Some(former) = row
        .facts
        .texts
        .get(Holds::FormerAccession)
        .map(str::to_owned)
    {
        by_former_number(
            row,
            &former,
            holder.as_ref(),
            recorded.as_ref(),
            with.catalogue,
            numbers,
        );
    }
}

/// The record that a row names by its key in this catalogue, as our own lists of a holder's sheets have it. A record of
/// another house is none: then the row is wrong, or the sheet has moved.
fn named_record(
    row: &mut ProposedRow,
    holder: Option<&Key>,
    settled: Option<&SettledSheet>,
    catalogue: &Catalogue,
) -> Option<ImpressionKey> {
    let text = row.facts.texts.get(Holds::Impression)?.trim().to_owned();
    let key: Option<ImpressionKey> = text.parse().ok();
    if key
        .as_ref()
        .is_some_and(|key| settled.is_some_and(|settled| settled.excludes(key)))
    {
        return None;
    }
    let Some(record) = key.as_ref().and_then(|key| catalogue.impression(key)) else {
        let doubt = format!("the catalogue has no impression \"{text}\"");
        row.doubts.push(RowDoubt::Said(doubt));
        return None;
    };
    let is_theirs = match (record.holder.as_ref(), holder) {
        (Some(theirs), Some(holder)) => catalogue.are_one_house(&theirs.value, holder),
        _ => true,
    };
    if is_theirs {
        return key;
    }
    let doubt = format!("the row names {text}, which is recorded with another holder");
    row.doubts.push(RowDoubt::Said(doubt));
    None
}

/// The row says that the sheet had another number before: one that a record has or had.
fn by_former_number(
    row: &mut ProposedRow,
    former: &str,
    holder: Option<&Key>,
    recorded: Option<&ImpressionKey>,
    catalogue: &Catalogue,
    numbers: &SheetNumbers,
) {
    for number in former.split([';', '|', '\n']).map(str::trim) {
        for sheet in numbers.with(number) {
            let is_theirs = is_theirs(catalogue, &sheet, holder);
            if is_theirs == Some(false) || Some(&sheet.impression) == recorded {
                continue;
            }
            let why = match sheet.fit {
                NumberFit::Whole | NumberFit::OfParts => {
                    format!(
                        "the row gives {number} as a former number, and it is recorded under it"
                    )
                }
                NumberFit::Former => format!("{number} is a former number of the row and of it"),
                NumberFit::Unpunctuated => continue,
            };
            add(row, &sheet, why);
        }
    }
}

fn add(row: &mut ProposedRow, sheet: &NumberedSheet, why: String) {
    match row
        .may_be
        .iter_mut()
        .find(|known| known.impression == sheet.impression)
    {
        Some(known) => {
            known.why = format!("{}; {why}", known.why);
            known.is_private |= sheet.is_private;
        }
        None => row.may_be.push(MayBe {
            impression: sheet.impression.clone(),
            why,
            is_private: sheet.is_private,
        }),
    }
}

/// Whether a number is of the holder of the row; `None` where it is not known of one of the two.
fn is_theirs(catalogue: &Catalogue, sheet: &NumberedSheet, holder: Option<&Key>) -> Option<bool> {
    Some(catalogue.are_one_house(sheet.holder.as_ref()?, holder?))
}

/// The records that the holder of the row has with a number.
fn kept(
    catalogue: &Catalogue,
    found: &[NumberedSheet],
    holder: Option<&Key>,
    fit: NumberFit,
) -> Vec<ImpressionKey> {
    let theirs = found
        .iter()
        .filter(|sheet| sheet.fit == fit && is_theirs(catalogue, sheet, holder) == Some(true));
    let keys: BTreeSet<ImpressionKey> = theirs.map(|sheet| sheet.impression.clone()).collect();
    keys.into_iter().collect()
}

/// Where several rows or records have one number, those of the design of the row.
fn of_design(
    mut records: Vec<ImpressionKey>,
    row: &ProposedRow,
    designs: &[ProposedDesign],
    is_repeated: bool,
) -> Vec<ImpressionKey> {
    if !is_repeated && records.len() < 2 {
        return records;
    }
    let design = row.design.and_then(|at| designs.get(at));
    match design.map(|design| &design.is) {
        Some(DesignIs::Recorded(key)) => records.retain(|record| record.design == *key),
        _ => records.clear(),
    }
    let rows_of_design = design.map_or(0, |design| design.rows.len());
    if is_repeated && rows_of_design > 1 {
        records.clear();
    }
    records
}

fn set_standing(row: &mut ProposedRow, record: &ImpressionKey, with: &Comparison<'_>) {
    let Some(recorded) = with.catalogue.impression(record) else {
        return;
    };
    let proposed = (with.as_record)(row, record.clone());
    let corrections = (with.corrections)(recorded, &proposed);
    row.standing = if corrections.is_empty() {
        RowStanding::Unchanged(record.clone())
    } else {
        RowStanding::Corrected(record.clone(), corrections)
    };
}

/// The records and rows that may be the sheet of a row by the reasons of `census --doubts`. A row that is a record is not
/// compared again: the census does that.
fn by_reasons(rows: &mut [ProposedRow], designs: &[ProposedDesign], with: &Comparison<'_>) {
    let mut by_design: BTreeMap<Key, Vec<usize>> = BTreeMap::new();
    for design in designs {
        let keys: Vec<&Key> = match &design.is {
            DesignIs::Recorded(key) => vec![key],
            DesignIs::OneOf(keys) => keys.iter().collect(),
            DesignIs::New => design.key.iter().collect(),
        };
        let new = design.rows.iter().copied().filter(|at| {
            rows.get(*at)
                .is_some_and(|row| row.standing == RowStanding::New)
        });
        let new: Vec<usize> = new.collect();
        for key in keys {
            by_design.entry(key.clone()).or_default().extend(&new);
        }
    }
    let seen: &[ProposedRow] = rows;
    // Nothing to compare with: a lone row of a design without records.
    by_design.retain(|key, new| {
        let recorded = with
            .catalogue
            .designs
            .get(key)
            .map_or(0, |design| design.impressions.len());
        !new.is_empty() && new.len() + recorded > 1
    });
    let as_record = |at: usize, key| (with.as_compared)(&seen[at], key);
    let number = |at: usize| seen.get(at).map_or(0, |row| row.row);
    let pairs = sheet_pairs(
        with.catalogue,
        with.studies,
        &by_design,
        &as_record,
        &number,
        with.wording,
    );
    let numbers: Vec<u32> = seen.iter().map(|row| row.row).collect();
    for pair in pairs {
        tell(rows, &numbers, pair);
    }
}

fn tell(rows: &mut [ProposedRow], numbers: &[u32], pair: SheetPair) {
    match pair.other {
        SheetOf::Record(impression) => {
            let Some(row) = rows.get_mut(pair.row) else {
                return;
            };
            match row
                .may_be
                .iter_mut()
                .find(|known| known.impression == impression)
            {
                Some(known) => {
                    known.why = format!("{}; {}", known.why, pair.why);
                    known.is_private |= pair.is_private;
                }
                None => row.may_be.push(MayBe {
                    impression,
                    why: pair.why,
                    is_private: pair.is_private,
                }),
            }
        }
        SheetOf::Row(other) => {
            let number = |at: usize| {
                let row: &ProposedRow = rows.get(at)?;
                number_key(row.accession.as_deref()?)
            };
            // That two rows have one number is told already.
            if number(pair.row).is_some() && number(pair.row) == number(other) {
                return;
            }
            for (at, beside) in [(pair.row, other), (other, pair.row)] {
                let (Some(row), Some(number)) = (rows.get_mut(at), numbers.get(beside)) else {
                    continue;
                };
                let why = &pair.why;
                row.doubts.push(RowDoubt::Said(format!(
                    "row {number} may be the same sheet: {why}"
                )));
            }
        }
    }
}
