//! The census of the whole catalogue: how many sheets are known, and where.

use serde::Serialize;

use super::census_figures;
use super::counting_notes::{CountingNotes, counting_notes};
use super::counts::{self, Table};
use super::declared_editions::{self, EditionRow};
use super::grouped_counts;
use super::occasions::{self, OccasionsPart};
use super::open_pairs::{self, RecordPair};
use super::series_census::{self, SeriesRow};
use super::sheet_records::Records;
use super::whole::{self, WholeRow};
use crate::model::design::Design;
use crate::model::impression::Status;
use crate::model::words::ClosedList as _;
use crate::page::setting::address::Address;
use crate::page::setting::book::Here;
use crate::page::setting::html::{CleanHtml, capitalised};
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
    /// The statuses that occur, as heads of columns.
    statuses: Vec<CleanHtml>,
    designs: Vec<DesignRow>,
    all: DesignRow,
    /// How many accepted designs have no row, since no impression of them is known; empty for none.
    without: String,
    /// Designs that are rejected or withdrawn, which no total includes (common practice, no source).
    set_apart: Vec<DesignRow>,
    series: Vec<SeriesRow>,
    tables: Vec<Table>,
    seen: Option<OccasionsPart>,
    pairs: Vec<RecordPair>,
    editions: Vec<EditionRow>,
    /// Whether the number printed is recorded of some.
    some_printed: bool,
    /// Whether some size is only reported, or given as probable or possible.
    some_perhaps: bool,
    /// Whether some number exceeds its declared size.
    some_above: bool,
}

#[derive(Serialize)]
struct DesignRow {
    number: CleanHtml,
    title: CleanHtml,
    statuses: Vec<CleanHtml>,
    known: CleanHtml,
}

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
    let rows_of = |is_set_apart: bool| -> Vec<DesignRow> {
        let designs = here.designs_in_order();
        let designs = designs.filter(|d| d.standing.is_set_apart() == is_set_apart);
        designs
            .filter_map(|design| {
                let census = &studies.designs.get(&design.key)?.census;
                (census.sheets.at_most > 0).then(|| row(here, design, census, &statuses, &records))
            })
            .collect()
    };
    let designs = rows_of(false);
    let sheets = words.with(
        "impressions-of-designs",
        &[
            (
                "impressions",
                Argument::Text(&here.impressions_in_words(studies.accepted.sheets)),
            ),
            (
                "designs",
                Argument::Text(&words.count("count-of-designs", designs.len())),
            ),
        ],
    );
    let accepted = here
        .designs_in_order()
        .filter(|d| !d.standing.is_set_apart());
    let without = accepted.count().saturating_sub(designs.len());
    let title = words.word("census").to_owned();
    let editions = declared_editions::editions(here);
    let view = View {
        brief: counts::date_line(here, &sheets),
        all: DesignRow {
            number: CleanHtml::empty(),
            title: CleanHtml::text(words.word("all")),
            statuses: statuses
                .iter()
                .map(|s| census_figures::of_status(here, here.address, &studies.accepted, *s))
                .collect(),
            known: census_figures::all_with_notes(
                here,
                here.address,
                &studies.accepted,
                &CleanHtml::empty(),
                records.not_shown(&studies.accepted),
            ),
        },
        without: match without {
            0 => String::new(),
            n => words.count("designs-of-no-impression", n),
        },
        statuses: statuses
            .iter()
            .map(|s| capitalised(&CleanHtml::text(here.status(*s))))
            .collect(),
        counted: counting_notes(here, &here.designs_in_order().collect::<Vec<_>>()),
        whole: whole::of_designs(here),
        series: series_census::all(here, &statuses, &records),
        tables: grouped_counts::tables(here, &studies.accepted, &records),
        seen: occasions::over_time(here, &studies.met, &records, studies.accepted.sheets),
        pairs: open_pairs::open_pairs(here, here.designs_in_order()),
        some_perhaps: editions.iter().any(EditionRow::has_uncertain_size),
        some_printed: editions.iter().any(EditionRow::has_printed),
        some_above: editions.iter().any(EditionRow::has_numbers_above),
        editions,
        designs,
        set_apart: rows_of(true),
        title: title.clone(),
    };
    Leaf::new(here.address, title, "pages/census.html", &view)
}

fn row(
    here: &Here<'_>,
    design: &Design,
    census: &Census,
    statuses: &[Status],
    records: &Records<'_>,
) -> DesignRow {
    let page = Address::DesignCensus(design.key.clone());
    DesignRow {
        number: CleanHtml::text(&design.number),
        title: title_with_standing(here, design),
        statuses: statuses
            .iter()
            .map(|s| census_figures::of_status(here, &page, census, *s))
            .collect(),
        known: census_figures::all_with_notes(
            here,
            &page,
            census,
            &records.not_accepted_of(here, &design.key),
            records.not_shown(census),
        ),
    }
}

/// The title, as a link to the design, with the standing of a design that is not accepted.
fn title_with_standing(here: &Here<'_>, design: &Design) -> CleanHtml {
    let to = here.href(&Address::Design(design.key.clone()));
    let title = CleanHtml::link(&to, &here.design_title(design));
    CleanHtml::join([&title, &here.standing(design)], " ")
}
