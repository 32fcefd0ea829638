//! Makes the records of the rows that are accepted, and says why others stay.

use std::collections::{BTreeMap, BTreeSet};

use super::batch::{Acceptance, AcceptedRow, Accepting, LeftRow, RecordText, RowChoice};
use super::pictures::{NewPicture, free_name, table_of, with_pictures};
use crate::exchange::intake::corrections::{applied, changes_something};
use crate::exchange::intake::grouping::{NewDesignMaker, design_toml};
use crate::exchange::intake::handing::HandingIn;
use crate::exchange::intake::proposal::{DesignIs, Proposal, ProposedRow, RowDoubt, RowStanding};
use crate::exchange::intake::reading::Doubt;
use crate::model::key::{ImpressionKey, Key};
use crate::read::next_record::FreeImpressionKeys;
use crate::study::search::words::number_key;

/// What accepting the chosen rows writes.
///
/// # Errors
/// The rows that were named and cannot be accepted.
pub fn accepted(choice: &RowChoice, of: &Accepting<'_>) -> Result<Acceptance, Vec<LeftRow>> {
    let mut writing = Writing {
        of,
        new_designs: NewDesignMaker::of(of.catalogue),
        done: Acceptance::default(),
        free_keys: of.free_keys.clone(),
        changed: BTreeMap::new(),
        taken: BTreeSet::new(),
        by_number: BTreeMap::new(),
    };
    for row in &of.proposal.rows {
        if !matches!(row.standing, RowStanding::LeftOut | RowStanding::Nothing)
            && let Some(number) = sheet_number(row, of.handing)
        {
            writing.by_number.entry(number).or_default().push(row.row);
        }
    }
    let mut refused = Vec::new();
    for (place, row) in of.proposal.rows.iter().enumerate() {
        if !choice.includes(row.row) {
            continue;
        }
        if let Err(why) = writing.row(place, row, choice.names(row.row)) {
            let left = LeftRow { row: row.row, why };
            if choice.names(row.row) {
                refused.push(left);
            } else {
                writing.done.left.push(left);
            }
        }
    }
    if let RowChoice::Rows(rows) = choice {
        let known: BTreeSet<u32> = of.proposal.rows.iter().map(|row| row.row).collect();
        for row in rows.difference(&known) {
            let why = "the file has no such row with cells".to_owned();
            refused.push(LeftRow { row: *row, why });
        }
    }
    if refused.is_empty() {
        Ok(writing.done)
    } else {
        Err(refused)
    }
}

struct Writing<'w, 'a> {
    of: &'w Accepting<'a>,
    new_designs: NewDesignMaker<'a>,
    done: Acceptance,
    /// The keys that no record has yet.
    free_keys: FreeImpressionKeys,
    /// The row that changes each record that is there.
    changed: BTreeMap<ImpressionKey, u32>,
    /// The paths of the pictures that are to be copied.
    taken: BTreeSet<String>,
    /// The rows of each accession number.
    by_number: BTreeMap<SheetNumber, Vec<u32>>,
}

/// An accession number as it is compared, with its holder.
type SheetNumber = (Option<Key>, String);

fn sheet_number(row: &ProposedRow, handing: &HandingIn) -> Option<SheetNumber> {
    let number = number_key(row.accession.as_deref()?)?;
    Some((row.holder(handing).cloned(), number))
}

impl Writing<'_, '_> {
    /// Accepts a row.
    ///
    /// # Errors
    /// Why it stays in the inbox.
    fn row(&mut self, place: usize, row: &ProposedRow, is_named: bool) -> Result<(), String> {
        match &row.standing {
            RowStanding::New => self.new_row(place, row, is_named),
            RowStanding::Unchanged(key) | RowStanding::Corrected(key, _) => {
                self.recorded_row(place, row, key)
            }
            RowStanding::Nothing if is_named => {
                Err("it says nothing that a record could hold".to_owned())
            }
            RowStanding::LeftOut if is_named => Err("designs.toml leaves it out".to_owned()),
            RowStanding::Nothing | RowStanding::LeftOut => Ok(()),
        }
    }

    /// Adds a record.
    fn new_row(&mut self, place: usize, row: &ProposedRow, is_named: bool) -> Result<(), String> {
        let at = row
            .design
            .ok_or("its design is not known: add the row to a design in designs.toml")?;
        let design = &self.of.proposal.designs[at];
        let key = match &design.is {
            DesignIs::Recorded(key) => key.clone(),
            DesignIs::OneOf(keys) => {
                let keys: Vec<&str> = keys.iter().map(Key::as_str).collect();
                let several = keys.join(" or ");
                return Err(format!(
                    "it is of design {several}: say which in designs.toml"
                ));
            }
            DesignIs::New if !design.is_settled || design.added.contains(&place) => {
                return Err("its design would be a new one: settle it in designs.toml".to_owned());
            }
            DesignIs::New => design
                .key
                .clone()
                .ok_or("its design has no key: name it in designs.toml")?,
        };
        if !is_named {
            if !design.is_settled
                && let Some(doubt) = design.doubts.first()
            {
                return Err(format!(
                    "its design is doubtful: {doubt}; settle it in designs.toml"
                ));
            }
            let is_copy = |doubt: &RowDoubt| {
                matches!(
                    doubt,
                    RowDoubt::Cell {
                        doubt: Doubt::Copy,
                        ..
                    }
                )
            };
            if row.doubts.iter().any(is_copy) {
                return Err("it is called a copy, which is another print; name the row to accept it all the same".to_owned());
            }
            if let Some(other) = self.same_number(row) {
                return Err(format!(
                    "row {other} has the same number; name the row to accept it as another sheet"
                ));
            }
            if let Some(other) = row.may_be.first() {
                return Err(format!(
                    "it may be {}, which is recorded: {}; say in designs.toml whether it is, or name the row to accept it as \
                     another sheet",
                    other.impression, other.why
                ));
            }
            if row.holder(self.of.handing).is_none() {
                return Err("its holder is not known: name it in columns.toml, or name the row to accept it without".to_owned());
            }
        }
        let impression = self.free_keys.next_key(&key).ok_or_else(|| {
            format!("an impression of design {key} has the highest number that there can be")
        })?;
        self.add_design(at);
        let technique = self.of.techniques.get(at).map_or(&[][..], Vec::as_slice);
        let cells = (self.of.cells)(row.row);
        let cell = |column: usize| cells.map_or("", |cells| cells.cell(column));
        let mut text = self
            .of
            .maker
            .draft(row, &cell, impression.clone(), technique)
            .text();
        let photographs = self.photographs(place, row, &impression);
        for picture in &photographs {
            text.push_str(&picture.table);
        }
        self.done
            .records
            .insert(path_of(&impression), RecordText { text, is_new: true });
        self.copy(row, impression, true, 0, photographs);
        Ok(())
    }

    /// Corrects a record, and adds photographs that it does not have.
    fn recorded_row(
        &mut self,
        place: usize,
        row: &ProposedRow,
        key: &ImpressionKey,
    ) -> Result<(), String> {
        let photographs = self.photographs(place, row, key);
        let corrections = match &row.standing {
            RowStanding::Corrected(_, corrections) if changes_something(corrections) => {
                &corrections[..]
            }
            _ => &[],
        };
        if corrections.is_empty() && photographs.is_empty() {
            return Ok(());
        }
        if let Some(other) = self.changed.get(key) {
            return Err(format!(
                "row {other} is {key} too: say in designs.toml which of the two it is"
            ));
        }
        let catalogue = self.of.catalogue;
        let recorded = catalogue.impression(key).ok_or("its record is gone")?;
        let file = recorded.place.file;
        let before = catalogue.sources.text(file);
        let mut text = before.to_owned();
        if !corrections.is_empty() {
            let technique = row.design.and_then(|at| self.of.techniques.get(at));
            let technique = technique.map_or(&[][..], Vec::as_slice);
            let cells = (self.of.cells)(row.row);
            let cell = |column: usize| cells.map_or("", |cells| cells.cell(column));
            let draft = self.of.maker.draft(row, &cell, key.clone(), technique);
            text = applied(before, recorded, &draft, corrections)
                .map_err(|fault| format!("{fault}: correct {key} by hand"))?;
        }
        if !photographs.is_empty() {
            text = with_pictures(&text, &photographs).ok_or_else(|| {
                format!("{key} lists its pictures in one value: add the photograph by hand")
            })?;
        }
        let path = catalogue.sources.path(file).to_owned();
        self.done.records.insert(
            path,
            RecordText {
                text,
                is_new: false,
            },
        );
        self.changed.insert(key.clone(), row.row);
        let corrected = corrections
            .iter()
            .filter(|correction| !correction.is_kept)
            .count();
        self.copy(row, key.clone(), false, corrected, photographs);
        Ok(())
    }

    /// Another row with the accession number of a row and its holder.
    fn same_number(&self, row: &ProposedRow) -> Option<u32> {
        let number = sheet_number(row, self.of.handing)?;
        let rows = self.by_number.get(&number)?;
        rows.iter().copied().find(|other| *other != row.row)
    }

    /// Adds the record of a new design, once.
    fn add_design(&mut self, at: usize) {
        let Proposal { rows, designs, .. } = self.of.proposal;
        let Some(new) = self.new_designs.record(&designs[at], rows) else {
            return;
        };
        if !self.done.designs.contains(&new.key) {
            let path = format!("records/designs/{}/design.toml", new.key);
            let text = design_toml(&new);
            self.done
                .records
                .insert(path, RecordText { text, is_new: true });
            self.done.designs.push(new.key);
        }
    }

    /// The photographs of a row that its record does not have yet.
    fn photographs(
        &mut self,
        place: usize,
        row: &ProposedRow,
        key: &ImpressionKey,
    ) -> Vec<NewPicture> {
        let of = self.of;
        let matches = of
            .photographs
            .matches
            .iter()
            .filter(|found| found.row == place);
        let new = matches.filter(|found| !(of.has_photograph)(key, found.file));
        let recorded = of.catalogue.impression(key);
        let mut names: BTreeSet<String> = recorded
            .iter()
            .flat_map(|impression| &impression.pictures)
            .map(|picture| picture.name.value.to_string())
            .collect();
        let mut pictures = Vec::new();
        for found in new {
            let name = free_name(found, &mut names);
            let ending = of.names[found.file]
                .rsplit_once('.')
                .map_or("jpg", |(_, ending)| ending)
                .to_lowercase();
            let file = self.free_file(key, &name, &ending);
            pictures.push(NewPicture {
                place: found.file,
                table: table_of(found, &name, &file, row),
                path: format!("records/designs/{}/{file}", key.design),
            });
        }
        pictures
    }

    /// A path for a picture that no file has, relative to the folder of the design.
    fn free_file(&mut self, key: &ImpressionKey, name: &str, ending: &str) -> String {
        let mut number = 1;
        loop {
            let further = if number == 1 {
                String::new()
            } else {
                format!("-{number}")
            };
            let file = format!("pictures/{}-{name}{further}.{ending}", key.number);
            let path = format!("records/designs/{}/{file}", key.design);
            if !(self.of.has_file)(&path) && self.taken.insert(path) {
                return file;
            }
            number += 1;
        }
    }

    fn copy(
        &mut self,
        row: &ProposedRow,
        impression: ImpressionKey,
        is_new: bool,
        corrected: usize,
        photographs: Vec<NewPicture>,
    ) {
        self.done.rows.push(AcceptedRow {
            row: row.row,
            impression,
            is_new,
            corrected,
            photographs: photographs.len(),
        });
        let copies = photographs
            .into_iter()
            .map(|picture| (picture.place, picture.path));
        self.done.pictures.extend(copies);
    }
}

fn path_of(key: &ImpressionKey) -> String {
    format!(
        "records/designs/{}/impressions/{}.toml",
        key.design, key.number
    )
}
