//! Holders crossed with states: the number of sheets of each state at each holder.

use serde::Serialize;

use super::census_figures;
use super::counts::city_first;
use super::firmness;
use super::sheet_records::Records;
use crate::model::design::Design;
use crate::model::key::Key;
use crate::page::lists::filled::FilledColumns;
use crate::page::setting::address::Fragment;
use crate::page::setting::book::Here;
use crate::page::setting::html::CleanHtml;
use crate::study::DesignStudy;
use crate::study::census::HolderAndState;
use crate::study::order::Collator;

/// The table.
#[derive(Serialize)]
pub(super) struct HoldingTable {
    heads: Vec<CleanHtml>,
    rows: Vec<HoldingRow>,
    /// What stands below the figures; empty where all sheets are firm.
    remark: String,
}

#[derive(Serialize)]
struct HoldingRow {
    name: CleanHtml,
    cells: Vec<Cell>,
    all: CleanHtml,
}

#[derive(Default, Serialize)]
struct Cell {
    /// The number of sheets; empty for none.
    figure: CleanHtml,
    /// Its records.
    records: CleanHtml,
    /// "1 not certain, 2 contradicted"; empty where all are firm.
    not_firm: String,
}

/// The table of a design; `None` where it has fewer than two states or holders.
pub(super) fn table(
    here: &Here<'_>,
    design: &Design,
    study: &DesignStudy,
    records: &Records<'_>,
) -> Option<HoldingTable> {
    let census = &study.census;
    let not_recorded = || CleanHtml::text(here.words().word("not-recorded"));
    let states: Vec<Option<&Key>> = census.by.state.iter().map(|row| row.key.as_ref()).collect();
    if states.iter().flatten().count() < 2 || census.by.holder.len() < 2 {
        return None;
    }
    let mut rows: Vec<(bool, HoldingRow)> = census
        .by
        .holder
        .iter()
        .map(|holder| {
            let cell = |state: Option<&Key>| {
                let wanted = HolderAndState {
                    holder: holder.key.clone(),
                    state: state.cloned(),
                };
                let mut rows = census.by.holding.iter();
                let row = rows.find(|row| row.key.as_ref() == Some(&wanted));
                row.map_or_else(Cell::default, |row| Cell {
                    figure: here.sheets(row.sheets),
                    records: records.behind(here, &row.allowing, Fragment::Counts("status")),
                    not_firm: firmness::in_words(here, study, &row.allowing),
                })
            };
            let name = holder.key.as_ref().map(|key| city_first(here, key));
            let not_told = || CleanHtml::text(here.words().word("not-told"));
            let row = HoldingRow {
                name: name.unwrap_or_else(not_told),
                cells: states.iter().copied().map(cell).collect(),
                all: census_figures::total(
                    here,
                    design,
                    "holder",
                    &census.by.holder,
                    holder.key.as_ref(),
                ),
            };
            (holder.key.is_none(), row)
        })
        .collect();
    let collator = Collator::of_words(here.language());
    rows.sort_by(|(a_last, a), (b_last, b)| {
        let names = || collator.compare(&a.name.plain(), &b.name.plain());
        a_last.cmp(b_last).then_with(names)
    });
    let head = |state: Option<&Key>| match state {
        Some(state) => here.state_of(&design.key, state),
        None => not_recorded(),
    };
    let mut cells = rows.iter().flat_map(|(_, row)| &row.cells);
    let is_open = cells.any(|cell| !cell.not_firm.is_empty());
    let mut heads: Vec<CleanHtml> = states.iter().copied().map(head).collect();
    let mut rows: Vec<HoldingRow> = rows.into_iter().map(|(_, row)| row).collect();
    let has_sheets = |cell: &Cell| !cell.figure.is_empty();
    let filled = FilledColumns::of(heads.len(), &rows, |row| &row.cells, has_sheets);
    for row in &mut rows {
        filled.keep(&mut row.cells);
    }
    // Sheets that are not published have a state and no holder.
    filled.keep(&mut heads);
    Some(HoldingTable {
        remark: if is_open {
            here.words().word("crossing-not-firm").to_owned()
        } else {
            String::new()
        },
        heads,
        rows,
    })
}
