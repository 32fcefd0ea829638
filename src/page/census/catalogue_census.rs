//! The census of the whole catalogue: how many sheets are known, and where.

use std::collections::BTreeSet;

use serde::Serialize;

use super::census_figures;
use super::counting_notes::{CountingNotes, counting_notes};
use super::counts;
use super::declared_editions::{self, EditionRow};
use super::grouped_counts;
use super::occasions::{self, OccasionsPart};
use super::one_sheet;
use super::open_pairs::{self, RecordPair};
use super::series_census::{self, SeriesTable};
use super::sheet_records::Records;
use super::whole::{self, WholeRow};
use crate::model::design::Design;
use crate::model::impression::Status;
use crate::model::key::Key;
use crate::model::words::ClosedList as _;
use crate::page::lists::run_on::RunOnLine;
use crate::page::lists::table::{Column, Holds, Row, Table};
use crate::page::setting::address::Address;
use crate::page::setting::book::Here;
use crate::page::setting::html::CleanHtml;
use crate::page::setting::leaf::Leaf;
use crate::page::setting::words::Argument;
use crate::study::census::Census;

#[derive(Serialize)]
struct View {
    title: String,
    brief: String,
    counted: CountingNotes,
    /// Every sheet as a square, by design.
    whole: Vec<WholeRow>,
    /// Whether these rows stand in columns.
    whole_is_dense: bool,
    designs: Option<Table>,
    /// The sheets of designs of one sheet, where these are too many for a row each.
    ones: Vec<RunOnLine>,
    /// How many accepted designs have no row, since no impression of them is known; empty for none.
    without: String,
    /// Designs that are rejected or withdrawn, which no total includes (common practice, no source).
    set_apart: Option<Table>,
    series: Option<SeriesTable>,
    tables: Vec<counts::Table>,
    seen: Option<OccasionsPart>,
    pairs: Vec<RecordPair>,
    editions: Option<Table>,
    /// Whether some size is only reported, or given as probable or possible.
    some_perhaps: bool,
}

/// The id of the list of the sheets of designs of one sheet.
const ONES: &str = "one-each";

pub(crate) fn page(here: &Here<'_>) -> Leaf {
    let words = here.words();
    let studies = here.book.studies;
    let statuses: Vec<Status> = Status::ALL
        .iter()
        .copied()
        .filter(|s| {
            studies
                .census
                .by
                .status
                .iter()
                .any(|row| row.key == Some(*s))
        })
        .collect();
    let records = Records::of(here, here.designs_in_order()).by_design();
    let ones = one_sheet::run_on(here, &records);
    let known = |is_set_apart: bool| {
        here.designs_in_order().filter_map(move |design| {
            let census = &studies.designs.get(&design.key)?.census;
            let is_here = design.standing.is_set_apart() == is_set_apart;
            (is_here && census.sheets.at_most > 0).then_some((design, census))
        })
    };
    let rows_of = |is_set_apart: bool| -> Vec<Row> {
        known(is_set_apart)
            .filter(|(design, _)| !ones.contains(&design.key))
            .map(|(design, census)| row(here, design, census, &statuses, &records))
            .collect()
    };
    let mut rows = rows_of(false);
    if !ones.is_empty() {
        rows.push(row_of_ones(here, &ones, &statuses));
    }
    let designs = known(false).count();
    let sheets = words.with(
        "impressions-of-designs",
        &[
            (
                "impressions",
                Argument::Text(&here.impressions_in_words(studies.accepted.sheets)),
            ),
            (
                "designs",
                Argument::Text(&words.count("count-of-designs", designs)),
            ),
        ],
    );
    let accepted = here
        .designs_in_order()
        .filter(|d| !d.standing.is_set_apart());
    let without = accepted.count().saturating_sub(designs);
    let title = words.word("census").to_owned();
    let editions = declared_editions::editions(here);
    let columns = columns(here, &statuses);
    let whole = whole::of_designs(here, &ones);
    let view = View {
        brief: counts::date_line(here, &sheets),
        designs: Table::with_foot(&columns, &rows, all(here, &statuses, &records)),
        ones: one_sheet::lines(here, &ones, &records),
        without: match without {
            0 => String::new(),
            n => words.count("designs-of-no-impression", n),
        },
        counted: counting_notes(here, &here.designs_in_order().collect::<Vec<_>>()),
        whole_is_dense: whole::is_dense(whole.iter().filter(|row| !row.is_wide).count()),
        whole,
        series: series_census::table(here, &records),
        tables: grouped_counts::tables(here, &studies.accepted, &records),
        seen: occasions::over_time(here, &studies.met, &records, studies.accepted.sheets),
        pairs: open_pairs::open_pairs(here, here.designs_in_order()),
        some_perhaps: editions.iter().any(EditionRow::has_uncertain_size),
        editions: declared_editions::table(here, editions),
        set_apart: Table::new(&columns, &rows_of(true)),
        title: title.clone(),
    };
    Leaf::new(here.address, title, "pages/census.html", &view)
}

/// Number, title, sheets known, and those of each status.
fn columns(here: &Here<'_>, statuses: &[Status]) -> Vec<Column> {
    let word = |holds, id: &str| Column::new(holds, here.words().word(id));
    let figures = statuses.iter().map(|status| Column {
        head: series_census::head(here, *status),
        holds: Holds::Figure,
    });
    let first = [
        word(Holds::Words, "number-short"),
        word(Holds::Name, "title"),
        word(Holds::Figure, "known"),
    ];
    first.into_iter().chain(figures).collect()
}

/// The sums of all accepted designs.
fn all(here: &Here<'_>, statuses: &[Status], records: &Records<'_>) -> Row {
    let accepted = &here.book.studies.accepted;
    let known = census_figures::all_with_notes(
        here,
        here.address,
        accepted,
        &CleanHtml::empty(),
        records.not_shown(accepted),
    );
    let of_status = |s: &Status| census_figures::of_status(here, here.address, accepted, *s);
    let title = CleanHtml::text(here.words().word("all"));
    let first = [CleanHtml::empty(), title, known];
    Row::new(
        first
            .into_iter()
            .chain(statuses.iter().map(of_status))
            .collect(),
    )
}

/// The designs that run on below the table, as one of its rows.
fn row_of_ones(here: &Here<'_>, designs: &BTreeSet<Key>, statuses: &[Status]) -> Row {
    let title = CleanHtml::text(&here.words().count("designs-of-one", designs.len()));
    let number = |n: usize| match n {
        0 => CleanHtml::empty(),
        n => CleanHtml::text(&n.to_string()),
    };
    let first = [
        CleanHtml::empty(),
        CleanHtml::link(&format!("#{ONES}"), &title),
        number(designs.len()),
    ];
    let of_status = |s: &Status| number(one_sheet::of_status(here, designs, *s));
    Row::new(
        first
            .into_iter()
            .chain(statuses.iter().map(of_status))
            .collect(),
    )
}

fn row(
    here: &Here<'_>,
    design: &Design,
    census: &Census,
    statuses: &[Status],
    records: &Records<'_>,
) -> Row {
    let page = Address::DesignCensus(design.key.clone());
    let first = [
        CleanHtml::text(&design.number),
        title_with_standing(here, design),
        census_figures::all_with_notes(
            here,
            &page,
            census,
            &records.not_accepted_of(here, &design.key),
            records.not_shown(census),
        ),
    ];
    let of_status = |s: &Status| census_figures::of_status(here, &page, census, *s);
    Row::new(
        first
            .into_iter()
            .chain(statuses.iter().map(of_status))
            .collect(),
    )
}

/// The title, as a link to the design, with the standing of a design that is not accepted.
fn title_with_standing(here: &Here<'_>, design: &Design) -> CleanHtml {
    let to = here.href(&Address::Design(design.key.clone()));
    let title = CleanHtml::link(&to, &here.design_title(design));
    CleanHtml::join([&title, &here.standing(design)], " ")
}
