//! The stages of intake in order: tables, columns, values, rows, designs, the census.

use std::path::Path;

use super::fault::{IntakeFault, SettingsFault};
use super::handed_in::HandedIn;
use super::inbox::Inbox;
use super::photographs::HandedPhotographs;
use super::private::PrivateNameSearch;
use crate::audit::same_sheet;
use crate::exchange::intake::columns;
use crate::exchange::intake::corrections::Reintake;
use crate::exchange::intake::grouping::settings::SettledSheets;
use crate::exchange::intake::grouping::{self, grouped, keyed, technique_of_rows};
use crate::exchange::intake::known::{CatalogueNames, Comparison, Wording, compare};
use crate::exchange::intake::open;
use crate::exchange::intake::proposal::{
    DesignIs, Proposal, ProposedDesign, ProposedRow, RowStanding,
};
use crate::exchange::intake::reading::Lexicon;
use crate::exchange::intake::record::RecordMaker;
use crate::exchange::intake::report::{Account, IntakeDocument, Reported, text};
use crate::exchange::intake::rows::{RowReader, rows};
use crate::exchange::intake::settings::{SettingFault, columns as of_columns, values as of_values};
use crate::exchange::intake::table::{RowView, Table};
use crate::exchange::intake::values::Values;
use crate::model::catalogue::Catalogue;
use crate::model::finding::Finding;
use crate::model::impression::Impression;
use crate::model::key::{ImpressionKey, Key};
use crate::page::Words;
use crate::read;
use crate::read::next_record::{FreeDesignKeys, FreeImpressionKeys};
use crate::study::Studies;

/// How many steps [`Proposed::of`] tells.
const STEPS: usize = 7;

/// A file that was handed in, with everything that was computed of it.
pub struct Proposed {
    /// The folder of the house.
    pub inbox: Inbox,
    /// The file.
    pub handed_in: HandedIn,
    /// The catalogue, with everything private.
    pub catalogue: Catalogue,
    /// What is wrong or doubtful in its records.
    pub findings: Vec<Finding>,
    /// The table that was read.
    pub table: Table,
    /// The other tables of the file, with how many rows each has.
    pub others: Vec<(String, usize)>,
    /// What its columns hold, and who hands in.
    pub columns: of_columns::ColumnSettings,
    /// Its distinct values.
    pub values: Values,
    /// What editors settled of designs.
    pub settled: grouping::settings::DesignSettings,
    /// What the file proposes.
    pub proposal: Proposal,
    /// The technique of each proposed design, recorded or as its rows have it.
    pub techniques: Vec<Vec<Key>>,
    /// The keys that new impressions get.
    pub free_keys: FreeImpressionKeys,
    private: PrivateNameSearch,
    /// The photographs that came with it.
    pub photographs: HandedPhotographs,
    /// The terms and names of the catalogue.
    pub lexicon: Lexicon,
    /// What is doubtful in the files that editors correct.
    pub faults: Vec<SettingsFault>,
    /// What these files held when they were read.
    pub(super) texts: SettingsTexts,
    words: Words,
}

/// What the files that editors correct hold.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(super) struct SettingsTexts {
    columns: Option<String>,
    values: Option<String>,
    designs: Option<String>,
}

/// The file of the columns.
pub(super) const COLUMNS: &str = "columns.toml";
/// The file of the values.
pub(super) const VALUES: &str = "values.toml";
/// The file of the designs.
pub(super) const DESIGNS: &str = "designs.toml";

impl SettingsTexts {
    /// Reads the files in the folder of a house.
    pub fn of(inbox: &Inbox) -> Result<SettingsTexts, IntakeFault> {
        Ok(SettingsTexts {
            columns: inbox.text(COLUMNS)?,
            values: inbox.text(VALUES)?,
            designs: inbox.text(DESIGNS)?,
        })
    }
}

impl Proposed {
    /// Reads a file that was handed in against the catalogue in `dir`, whose files are `inputs`. `photographs` is
    /// the folder of those that come with it; without one, those that the inbox keeps are matched. `progress` is called with
    /// the number of steps done and the total.
    ///
    /// # Errors
    /// [`IntakeFault`] where the file or the folder of the house cannot be read, or what editors corrected has errors.
    pub fn of(
        dir: &Path,
        inputs: &read::Inputs,
        handed_in: HandedIn,
        photographs: Option<&Path>,
        progress: &dyn Fn(usize, usize),
    ) -> Result<Proposed, IntakeFault> {
        let inbox = Inbox::of(dir, &handed_in.name)?;
        Proposed::in_inbox(inbox, inputs, handed_in, photographs, progress)
    }

    /// The same, in the folder of the house, which this run has already.
    pub(super) fn in_inbox(
        inbox: Inbox,
        inputs: &read::Inputs,
        handed_in: HandedIn,
        photographs: Option<&Path>,
        progress: &dyn Fn(usize, usize),
    ) -> Result<Proposed, IntakeFault> {
        let step = |done| progress(done, STEPS);
        let texts = SettingsTexts::of(&inbox)?;
        let mut faults = Faults::default();
        let (reading, tables) = rayon::join(
            || read::read_inputs(inbox.dir(), inputs),
            || open::tables(&handed_in.bytes),
        );
        let read::Reading {
            catalogue,
            findings,
        } = reading;
        let lexicon = Lexicon::of_catalogue(&catalogue);
        step(1);

        let tables = tables.map_err(|fault| {
            let message = format!("{}: {}", handed_in.file, fault.message());
            IntakeFault::not_done(message, fault.help())
        })?;
        step(2);

        let is_first = texts.columns.is_none();
        let (mut said, told) = of_columns::read(texts.columns.as_deref().unwrap_or_default());
        faults.add(&inbox, COLUMNS, told);
        if is_first && catalogue.holders.contains_key(&handed_in.name) {
            // The house is named like a holder: its own sheets, until an editor says otherwise.
            said.handing.holder = Some(handed_in.name.clone());
            said.handing.by = Some(handed_in.name.clone());
        }
        let (table, others) = chosen(tables, said.table.as_deref())?;
        let studies = Studies::of(&catalogue);
        let names = CatalogueNames::of(&catalogue, &studies);
        let mut told_by_table = columns::columns(&table, &lexicon);
        names.name_columns(&mut told_by_table.columns);
        let (columns, told) = of_columns::joined(said, &table, told_by_table);
        faults.add(&inbox, COLUMNS, told);
        faults.add(&inbox, COLUMNS, columns.unknown_keys(&catalogue));
        step(3);

        let values = texts.values.as_deref().unwrap_or_default();
        let (settled, told) = of_values::read(values, &lexicon);
        faults.add(&inbox, VALUES, told);
        let values = Values::of(&table, &columns.columns, &lexicon, &settled);
        step(4);

        let reader = RowReader::of(&columns.columns, &columns.doubts, &values, &lexicon);
        let mut rows = rows(&table, &reader);
        names.name_references(&mut rows, &table, &columns.columns);
        step(5);

        let designs = texts.designs.as_deref().unwrap_or_default();
        let (settled, told) = grouping::settings::read(designs);
        faults.add(&inbox, DESIGNS, told);
        let handing = &columns.handing;
        let mut designs = grouped(&mut rows, &catalogue, &studies, handing, &settled);
        keyed(&mut designs, &mut FreeDesignKeys::of(&catalogue, inputs));
        faults.add(&inbox, DESIGNS, settled.check(&rows, &catalogue));
        step(6);

        let private = PrivateNameSearch::of(&catalogue);
        let maker = RecordMaker::of(&columns.columns, handing, &catalogue, &lexicon.names)
            .after(&settled.sheets)
            .keeping(&private);
        let cells = Cells::of(&table);
        let techniques = techniques(&designs, &rows, &catalogue);
        let technique = |row: &ProposedRow| {
            let technique = row.design.and_then(|at| techniques.get(at));
            technique.map_or(&[][..], Vec::as_slice)
        };
        let as_record = |row: &ProposedRow, key: ImpressionKey| -> Impression {
            let of_row = cells.row(row.row);
            let cell = |column: usize| of_row.map_or("", |of_row| of_row.cell(column));
            maker.impression(row, &cell, key, technique(row))
        };
        let as_compared = |row: &ProposedRow, key: ImpressionKey| -> Impression {
            let of_row = cells.row(row.row);
            let cell = |column: usize| of_row.map_or("", |of_row| of_row.cell(column));
            maker.compared(row, &cell, key, technique(row))
        };
        let reintake = Reintake {
            reader: &reader,
            maker: &maker,
            names: &names,
        };
        let corrections =
            |recorded: &Impression, proposed: &Impression| reintake.corrections(recorded, proposed);
        let comparison = Comparison {
            catalogue: &catalogue,
            studies: &studies,
            handing,
            settled: &SettledSheets::of(&settled.sheets),
            as_record: &as_record,
            as_compared: &as_compared,
            corrections: &corrections,
            wording: Wording {
                in_full: &same_sheet::reason_in_full,
                public: &same_sheet::reason,
            },
        };
        compare(&mut rows, &designs, &comparison);
        faults.add(
            &inbox,
            DESIGNS,
            settled.check_sheets(&rows, &catalogue, handing),
        );
        step(STEPS);

        faults.errors()?;
        let photographs = HandedPhotographs::of(&inbox, photographs, &rows)?;
        let (theme, _) = read::theme(inbox.dir(), &catalogue.published_settings().theme);
        let words = Words::new(&theme, "en");
        let words = words.map_err(|fault| IntakeFault::not_done(fault.to_string(), ""))?;
        let proposal = Proposal {
            columns: columns.columns.clone(),
            column_doubts: columns.doubts.clone(),
            notes: table.notes.clone(),
            rows,
            designs,
        };
        let free_keys = FreeImpressionKeys::of(&catalogue, inputs);
        Ok(Proposed {
            inbox,
            handed_in,
            free_keys,
            catalogue,
            findings,
            table,
            others,
            columns,
            values,
            settled,
            proposal,
            techniques,
            photographs,
            private,
            lexicon,
            faults: faults.0,
            texts,
            words,
        })
    }

    /// What the reports are made of.
    #[must_use]
    pub fn reported(&self) -> Reported<'_> {
        Reported {
            name: self.inbox.name(),
            file: &self.handed_in.file,
            table: &self.table,
            others: &self.others,
            proposal: &self.proposal,
            photographs: &self.photographs.found,
            photograph_names: &self.photographs.names,
            handing: &self.columns.handing,
            catalogue: &self.catalogue,
            words: &self.words,
        }
    }

    /// The counts of its columns, rows and designs.
    #[must_use]
    pub fn account(&self) -> Account {
        Account::of(&self.reported())
    }

    /// The report for people; `heading` sets off the heads of its parts.
    #[must_use]
    pub fn text(&self, account: &Account, heading: &dyn Fn(&str) -> String) -> String {
        text(&self.reported(), account, heading)
    }

    /// The document for programs.
    #[must_use]
    pub fn document(&self, account: &Account) -> IntakeDocument<'_> {
        IntakeDocument::of(&self.reported(), account)
    }

    /// How many new rows may be recorded impressions: `designs.toml` asks about them.
    #[must_use]
    pub fn asked_about(&self) -> usize {
        let rows = self.proposal.rows.iter();
        let new = rows.filter(|row| row.standing == RowStanding::New);
        new.filter(|row| !row.may_be.is_empty()).count()
    }

    /// What makes records of the rows.
    #[must_use]
    pub fn record_maker(&self) -> RecordMaker<'_> {
        let columns = &self.columns;
        RecordMaker::of(
            &columns.columns,
            &columns.handing,
            &self.catalogue,
            &self.lexicon.names,
        )
        .after(&self.settled.sheets)
        .keeping(&self.private)
    }

    /// The cells of the table by the number of their row.
    #[must_use]
    pub fn cells(&self) -> Cells<'_> {
        Cells::of(&self.table)
    }
}

/// The cells of a table by the number of their row.
pub struct Cells<'t>(Vec<RowView<'t>>);

impl<'t> Cells<'t> {
    fn of(table: &'t Table) -> Cells<'t> {
        Cells(table.rows().collect())
    }

    /// The cells of a row; none where the row is empty.
    #[must_use]
    pub fn row(&self, number: u32) -> Option<RowView<'t>> {
        let place = self.0.binary_search_by_key(&number, |view| view.number());
        place.ok().map(|place| self.0[place])
    }
}

fn techniques(
    designs: &[ProposedDesign],
    rows: &[ProposedRow],
    catalogue: &Catalogue,
) -> Vec<Vec<Key>> {
    let of = |design: &ProposedDesign| match &design.is {
        DesignIs::Recorded(key) => technique_of(catalogue, key),
        DesignIs::OneOf(_) => Vec::new(),
        DesignIs::New => technique_of_rows(design, rows),
    };
    designs.iter().map(of).collect()
}

fn technique_of(catalogue: &Catalogue, design: &Key) -> Vec<Key> {
    let recorded = catalogue.designs.get(design);
    let keys = recorded.into_iter().flat_map(|design| &design.technique);
    keys.map(|key| key.value.clone()).collect()
}

/// The table that is read: the one that is named, else the one with most rows, of several the first.
fn chosen(
    mut tables: Vec<Table>,
    named: Option<&str>,
) -> Result<(Table, Vec<(String, usize)>), IntakeFault> {
    let named = named.filter(|_| tables.len() > 1);
    let place = if let Some(name) = named {
        tables.iter().position(|table| table.name == name)
    } else {
        let most = tables.iter().map(|table| table.rows().len()).max();
        tables
            .iter()
            .position(|table| Some(table.rows().len()) == most)
    };
    let Some(place) = place else {
        let names: Vec<String> = tables.iter().map(|t| format!("`{}`", t.name)).collect();
        let message = format!(
            "the file has no sheet `{}`, which columns.toml names",
            named.unwrap_or_default()
        );
        let help = format!(
            "its sheets are {}; name one as `table` in columns.toml",
            names.join(", ")
        );
        return Err(IntakeFault::not_done(message, help));
    };
    let table = tables.remove(place);
    let others = tables
        .into_iter()
        .map(|other| (other.name.clone(), other.rows().len()));
    Ok((table, others.collect()))
}

/// What is wrong in the files that editors correct.
#[derive(Default)]
struct Faults(Vec<SettingsFault>);

impl Faults {
    fn add(&mut self, inbox: &Inbox, file: &str, faults: Vec<SettingFault>) {
        let file = inbox.path(file);
        self.0.extend(faults.into_iter().map(|fault| SettingsFault {
            file: file.clone(),
            fault,
        }));
        self.0.sort();
        self.0.dedup();
    }

    /// # Errors
    /// All of them, where one is an error.
    fn errors(&self) -> Result<(), IntakeFault> {
        if self.0.iter().any(|fault| fault.fault.is_error) {
            return Err(IntakeFault::of_settings(self.0.clone()));
        }
        Ok(())
    }
}
