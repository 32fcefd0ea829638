//! States crossed with printings: the number of sheets of each pair, as a link to them in the gallery,
//! or with their records.

use serde::Serialize;

use super::census_figures;
use super::firmness;
use super::sheet_records::Records;
use crate::model::design::Design;
use crate::model::key::Key;
use crate::page::drawings::bars::{self, Square};
use crate::page::lists::filled::FilledColumns;
use crate::page::phrases::enumeration;
use crate::page::plates::gallery::{self, Gallery};
use crate::page::setting::address::{Address, Fragment};
use crate::page::setting::book::Here;
use crate::page::setting::html::CleanHtml;
use crate::page::setting::words::Argument;
use crate::study::census::{Census, Row};
use crate::study::crossing::{StateAndPrinting, can_be};

/// The table.
#[derive(Serialize)]
pub(crate) struct Crossing {
    /// The targets of the figures' links: ids beside the gallery.
    landings: Vec<String>,
    /// Why figures do not add up, what stands below them, and which printings have no column, since no impression of
    /// them is known; empty where there is nothing to say.
    remark: String,
    heads: Vec<CleanHtml>,
    rows: Vec<CrossingRow>,
    totals: Vec<CleanHtml>,
    all: CleanHtml,
}

#[derive(Serialize)]
struct CrossingRow {
    name: CleanHtml,
    cells: Vec<Cell>,
    all: CleanHtml,
}

#[derive(Serialize)]
struct Cell {
    /// The number of sheets; empty for none.
    figure: CleanHtml,
    /// Its records, where no gallery shows them.
    records: CleanHtml,
    /// "1 not certain, 2 contradicted"; empty where all are firm.
    not_firm: String,
    /// The number as a square.
    square: Option<Square>,
    /// Whether the printing was made in the state, or one of the two is not recorded.
    can_be: bool,
}

/// A state or a printing with its place in the record from 1; place 0 and no key where none is recorded.
type Side<'d> = (usize, Option<&'d Key>);

/// The target of the figures.
#[derive(Clone, Copy)]
pub(crate) enum FigureTarget<'g> {
    /// The sheets of a gallery on the same page.
    Gallery(Option<&'g Gallery>),
    /// The records, named beside each figure.
    Records(&'g Records<'g>),
}

/// The table of a design; `None` where it has fewer than two states or printings, or no sheet in either.
pub(crate) fn table(
    here: &Here<'_>,
    design: &Design,
    target: FigureTarget<'_>,
) -> Option<Crossing> {
    let study = here.book.studies.designs.get(&design.key)?;
    let census = &study.census;
    let states = design
        .states
        .iter()
        .map(|s| (&s.key.value, !s.standing.is_withdrawn()));
    let states = sides(states, &census.by.state);
    let printings = design.printings.iter();
    let printings = printings.map(|p| (&p.key.value, p.is_counted() && !p.standing.is_withdrawn()));
    let printings = sides(printings, &census.by.printing);
    let are_several =
        |sides: &[Side<'_>]| sides.iter().filter(|(_, key)| key.is_some()).count() > 1;
    if !are_several(&states) || !are_several(&printings) {
        return None;
    }
    let most = census
        .by
        .crossing
        .iter()
        .map(|row| row.sheets.at_most)
        .max();
    let most = most.unwrap_or(0);
    let page = Address::DesignCensus(design.key.clone());
    let mut landings = Vec::new();
    let mut rows = Vec::new();
    for state in &states {
        let mut cells = Vec::new();
        for printing in &printings {
            let row = row_of(census, *state, *printing);
            let mut figure = row.map_or_else(CleanHtml::empty, |row| here.sheets(row.sheets));
            let mut records = CleanHtml::empty();
            match (target, row) {
                (FigureTarget::Gallery(Some(gallery)), Some(_))
                    if gallery.has(state.0, printing.0) =>
                {
                    let choice = gallery::choice(state.0, printing.0);
                    figure = CleanHtml::link(&format!("#{choice}"), &figure);
                    landings.push(choice);
                }
                // Sheets that no gallery shows are on the census of the design.
                (FigureTarget::Gallery(_), Some(_)) => {
                    figure = CleanHtml::link(&format!("{}#crossing", here.href(&page)), &figure);
                }
                (FigureTarget::Records(of), Some(row)) => {
                    records = of.behind(here, &row.allowing, Fragment::Counts("status"));
                }
                _ => {}
            }
            cells.push(Cell {
                figure,
                records,
                not_firm: row.map_or_else(String::new, |row| {
                    firmness::in_words(here, study, &row.allowing)
                }),
                square: row.and_then(|row| bars::square(row.sheets, most)),
                can_be: match (state.1, printing.1) {
                    (Some(state), Some(printing)) => can_be(design, state, printing),
                    _ => true,
                },
            });
        }
        rows.push(CrossingRow {
            name: state_name(here, design, state.1),
            cells,
            all: census_figures::total(here, design, "state", &census.by.state, state.1),
        });
    }
    let heads = printings.iter();
    let mut heads: Vec<CleanHtml> = heads
        .map(|printing| printing_name(here, design, printing.1))
        .collect();
    let totals = printings.iter();
    let mut totals: Vec<CleanHtml> = totals
        .map(|printing| {
            let rows = &census.by.printing;
            census_figures::total(here, design, "printing", rows, printing.1)
        })
        .collect();
    let has_sheets = |cell: &Cell| !cell.figure.is_empty();
    let filled = FilledColumns::of(heads.len(), &rows, |row| &row.cells, has_sheets);
    if filled.is_none() {
        return None;
    }
    for row in &mut rows {
        filled.keep(&mut row.cells);
    }
    filled.keep(&mut totals);
    let without: Vec<String> = filled
        .keep(&mut heads)
        .iter()
        .map(CleanHtml::plain)
        .collect();
    let placed: usize = census.by.crossing.iter().map(|r| r.allowing.len()).sum();
    let is_open = placed > census.sheets.at_most;
    let mut cells = rows.iter().flat_map(|row: &CrossingRow| &row.cells);
    let remarks = [
        (is_open, "crossing-open"),
        (
            cells.any(|cell| !cell.not_firm.is_empty()),
            "crossing-not-firm",
        ),
    ];
    let remarks = remarks.into_iter().filter(|(holds, _)| *holds);
    let remarks = remarks.map(|(_, id)| here.words().word(id).to_owned());
    let mut remarks: Vec<String> = remarks.collect();
    if !without.is_empty() {
        let words = here.words();
        let printings = enumeration::together_text(words, &without);
        let given = [("printings", Argument::Text(&printings))];
        remarks.push(words.with("crossing-left-out", &given));
    }
    Some(Crossing {
        landings,
        remark: remarks.join(" "),
        heads,
        rows,
        totals,
        all: census_figures::all(here, &page, census),
    })
}

/// The heads of one side of the table: the states or printings that are not withdrawn or have sheets; then
/// *not recorded*, where some sheet has none.
fn sides<'d>(
    recorded: impl Iterator<Item = (&'d Key, bool)>,
    counted: &[Row<Key>],
) -> Vec<Side<'d>> {
    let has_sheets = |key: Option<&Key>| counted.iter().any(|row| row.key.as_ref() == key);
    let recorded = (1..).zip(recorded);
    let mut sides: Vec<Side<'d>> = recorded
        .filter(|(_, (key, stands))| *stands || has_sheets(Some(key)))
        .map(|(place, (key, _))| (place, Some(key)))
        .collect();
    if has_sheets(None) {
        sides.push((0, None));
    }
    sides
}

/// The sheets that can be of a state and a printing; `None` for none.
fn row_of<'c>(
    census: &'c Census,
    state: Side<'_>,
    printing: Side<'_>,
) -> Option<&'c Row<StateAndPrinting>> {
    let wanted = StateAndPrinting {
        state: state.1.cloned(),
        printing: printing.1.cloned(),
    };
    let mut rows = census.by.crossing.iter();
    rows.find(|row| row.key.as_ref() == Some(&wanted))
}

fn state_name(here: &Here<'_>, design: &Design, state: Option<&Key>) -> CleanHtml {
    let Some(state) = state else {
        return CleanHtml::text(here.words().word("not-said"));
    };
    let to = here.href_part(&Address::Design(design.key.clone()), Fragment::State(state));
    CleanHtml::link(&to, &here.numeral(&design.key, state))
}

fn printing_name(here: &Here<'_>, design: &Design, printing: Option<&Key>) -> CleanHtml {
    let Some(printing) = printing else {
        return CleanHtml::text(here.words().word("not-said"));
    };
    let to = here.href_part(
        &Address::Design(design.key.clone()),
        Fragment::Printing(printing),
    );
    CleanHtml::link(&to, &CleanHtml::text(&here.printing_name(design, printing)))
}
