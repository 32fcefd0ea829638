//! The lists from which cells are chosen, as the sheets of a workbook to which its names refer.
//!
//! The terms are those of the vocabularies in the language of the catalogue. Designs, states and printings stand beside
//! each other in rows sorted by design, so that a formula finds the states of one.

use super::columns::Chosen;
use crate::exchange::workbook::{Column, DefinedName, Look, Sheet, cell_name};
use crate::model::certainty::Basis;
use crate::model::design::Design;
use crate::model::impression::Status;
use crate::model::key::Key;
use crate::model::vocabulary::List as Vocabulary;
use crate::model::words::ClosedList;
use crate::page::Here;

/// Lists as columns of a sheet, each with the name by which it is found.
pub(super) struct Lists {
    lists: Vec<(&'static str, Vec<String>)>,
}

/// The name of a list in the workbook.
pub(super) fn name(chosen: Chosen) -> &'static str {
    match chosen {
        Chosen::Design => "designs",
        Chosen::State => "states",
        Chosen::Printing => "printings",
        Chosen::Term(list) => list.word(),
        Chosen::Status => "whereabouts",
        Chosen::Basis => "ways_of_seeing",
        Chosen::YesNo => "yes_or_no",
    }
}

/// The lists that do not depend on designs.
pub(super) fn terms(here: &Here<'_>) -> Lists {
    let words = here.words();
    let vocabularies = [
        Vocabulary::Kinds,
        Vocabulary::Techniques,
        Vocabulary::Papers,
        Vocabulary::Transfers,
    ];
    let mut lists: Vec<_> = vocabularies
        .into_iter()
        .map(|list| {
            let keys = here.public().vocabularies.terms(list);
            let labels = keys.map(|(key, _)| here.term(list, key.as_str()));
            (name(Chosen::Term(list)), labels.collect::<Vec<_>>())
        })
        .collect();
    let status = Status::ALL
        .iter()
        .map(|status| here.status(*status).to_owned());
    lists.push((name(Chosen::Status), status.collect()));
    let bases = Basis::ALL
        .iter()
        .map(|basis| words.listed("basis", *basis).to_owned());
    lists.push((name(Chosen::Basis), bases.collect()));
    let answers = ["form-yes", "form-no"].map(|word| words.word(word).to_owned());
    lists.push((name(Chosen::YesNo), answers.to_vec()));
    Lists { lists }
}

/// The name of the column beside the states that has their designs.
pub(super) const STATE_DESIGNS: &str = "state_designs";
/// The name of the column beside the printings that has their designs.
pub(super) const PRINTING_DESIGNS: &str = "printing_designs";

/// The designs, and their states and printings.
pub(super) fn of_designs(here: &Here<'_>, designs: &[&Design]) -> Lists {
    let mut lists = [
        (name(Chosen::Design), Vec::new()),
        (STATE_DESIGNS, Vec::new()),
        (name(Chosen::State), Vec::new()),
        (PRINTING_DESIGNS, Vec::new()),
        (name(Chosen::Printing), Vec::new()),
    ];
    for design in designs {
        if design.standing.is_withdrawn() {
            continue;
        }
        let named = design_label(design);
        for state in design.standing_states() {
            lists[1].1.push(named.clone());
            lists[2].1.push(state_label(here, design, &state.key.value));
        }
        for printing in design.standing_printings() {
            lists[3].1.push(named.clone());
            lists[4]
                .1
                .push(printing_label(here, design, &printing.key.value));
        }
        lists[0].1.push(named);
    }
    Lists {
        lists: lists.into(),
    }
}

/// A design as lists name it: "14 – The Old Lock". What stands before the dash is its number.
pub(super) fn design_label(design: &Design) -> String {
    match design.title() {
        Some(title) => format!("{} – {}", design.number, title.text.value),
        None => design.number.clone(),
    }
}

/// A state as lists name it: "iii – moonlit", its numeral today and its key, which does not change; an only state by its key.
pub(super) fn state_label(here: &Here<'_>, design: &Design, state: &Key) -> String {
    let numeral = here.book.studies.numeral(&design.key, state);
    match numeral.filter(|numeral| !numeral.is_only()) {
        Some(numeral) => format!("{} – {state}", numeral.roman()),
        None => state.to_string(),
    }
}

/// A printing as lists name it: its name, and its key where the design has another of this name.
pub(super) fn printing_label(here: &Here<'_>, design: &Design, printing: &Key) -> String {
    let name = here.printing_name(design, printing);
    let namesakes = design.printings.iter();
    let namesakes = namesakes.filter(|other| here.printing_name(design, &other.key.value) == name);
    if namesakes.count() > 1 {
        format!("{name} – {printing}")
    } else {
        name
    }
}

impl Lists {
    /// The sheet that holds the lists. Its first cell says that it is not read.
    pub fn sheet(&self, not_read: &str) -> Sheet {
        let columns = self.lists.iter().enumerate().map(|(at, _)| Column {
            heading: if at == 0 {
                not_read.to_owned()
            } else {
                String::new()
            },
            width: 30,
            ..Column::default()
        });
        let height = self.lists.iter().map(|(_, list)| list.len()).max();
        let rows = (0..height.unwrap_or(0)).map(|row| {
            let cells = self.lists.iter();
            let cells = cells.map(|(_, list)| list.get(row).cloned().unwrap_or_default());
            cells.collect()
        });
        Sheet {
            look: Look::Lists,
            columns: columns.collect(),
            rows: rows.collect(),
        }
    }

    /// The names of the lists on the sheet of this name.
    pub fn names(&self, sheet: &str) -> Vec<DefinedName> {
        let quoted = sheet.replace('\'', "''");
        let lists = self.lists.iter().zip(0..);
        let names = lists.map(|((name, list), column)| {
            // An empty list is an empty cell, for a name must lead somewhere.
            let last = u32::try_from(list.len()).unwrap_or(u32::MAX - 1).max(1) + 1;
            let absolute = |row| {
                let cell = cell_name(column, row);
                let letters = cell.trim_end_matches(|c: char| c.is_ascii_digit());
                format!("${letters}${row}")
            };
            DefinedName {
                name: (*name).to_owned(),
                of_sheet: None,
                cells: format!("'{quoted}'!{}:{}", absolute(2), absolute(last)),
            }
        });
        names.collect()
    }
}
