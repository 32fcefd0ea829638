//! The census of everything: how many sheets are known, and where.

use serde::Serialize;

use super::address::{Address, Overview};
use super::book::Here;
use super::counted::{Counted, counted};
use super::counts::{self, Pair, Records, Table};
use super::frame::Leaf;
use super::html::{CleanHtml, capitalised};
use super::survival::{self, Seen};
use super::words::Given;
use crate::model::design::Design;
use crate::model::impression::Status;
use crate::model::words::{ClosedList as _, Standing};
use crate::study::census::Census;
use crate::study::order::Collator;

#[derive(Serialize)]
struct View {
    title: String,
    brief: String,
    counted: Counted,
    /// The statuses that some sheet has, as heads of columns.
    statuses: Vec<CleanHtml>,
    designs: Vec<DesignRow>,
    all: DesignRow,
    series: Vec<DesignRow>,
    tables: Vec<Table>,
    seen: Option<Seen>,
    pairs: Vec<Pair>,
    editions: Vec<EditionRow>,
    /// Whether some number was met above a declared size.
    some_above: bool,
}

#[derive(Serialize)]
struct DesignRow {
    number: CleanHtml,
    title: CleanHtml,
    statuses: Vec<CleanHtml>,
    known: CleanHtml,
}

#[derive(Serialize)]
struct EditionRow {
    design: CleanHtml,
    printing: CleanHtml,
    declared: String,
    known: CleanHtml,
    met: String,
    missing: String,
    above: String,
    repeated: String,
}

pub(super) fn page(here: &Here<'_>) -> Leaf {
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
    let designs: Vec<DesignRow> = here
        .designs_in_order()
        .filter_map(|design| {
            let census = &studies.designs.get(&design.key)?.census;
            (census.sheets.at_most > 0).then(|| row(here, design, census, &statuses))
        })
        .collect();
    let sheets = words.with(
        "sheets-of-designs",
        &[
            (
                "sheets",
                Given::Text(&here.sheets_in_words(studies.census.sheets)),
            ),
            (
                "designs",
                Given::Text(&words.count("count-of-designs", designs.len())),
            ),
        ],
    );
    let title = words.word("census").to_owned();
    let records = Records::of(here, here.designs_in_order()).by_design();
    let editions = editions(here);
    let view = View {
        brief: counts::date_line(here, &sheets),
        all: DesignRow {
            number: CleanHtml::empty(),
            title: CleanHtml::text(words.word("all")),
            statuses: statuses
                .iter()
                .map(|s| figure(here, &studies.census, *s))
                .collect(),
            known: here.sheets(studies.census.sheets),
        },
        statuses: statuses
            .iter()
            .map(|s| capitalised(&CleanHtml::text(here.status(*s))))
            .collect(),
        counted: counted(here, &here.designs_in_order().collect::<Vec<_>>()),
        series: series(here, &statuses),
        tables: counts::tables(here, &studies.census, &records),
        seen: survival::seen(here, &studies.seen),
        pairs: counts::open_pairs(here, here.designs_in_order()),
        some_above: editions.iter().any(|row| !row.above.is_empty()),
        editions,
        designs,
        title: title.clone(),
    };
    Leaf::new(here.address, title, "pages/census.html", &view)
}

/// The series, by name: how many sheets of its designs together.
fn series(here: &Here<'_>, statuses: &[Status]) -> Vec<DesignRow> {
    let collator = Collator::of_words(here.language());
    let mut series: Vec<(&String, &Census)> = here.book.studies.series.iter().collect();
    series.sort_by(|(a, _), (b, _)| collator.compare(a, b));
    let row = |(name, census): (&String, &Census)| DesignRow {
        number: CleanHtml::empty(),
        title: here.gathered(Overview::Series, name, name),
        statuses: statuses.iter().map(|s| figure(here, census, *s)).collect(),
        known: here.sheets(census.sheets),
    };
    series.into_iter().map(row).collect()
}

fn row(here: &Here<'_>, design: &Design, census: &Census, statuses: &[Status]) -> DesignRow {
    let to = here.href(&Address::DesignCensus(design.key.clone()));
    let linked = |figure: CleanHtml| {
        if figure.is_empty() {
            figure
        } else {
            CleanHtml::link(&to, &figure)
        }
    };
    DesignRow {
        number: CleanHtml::text(&design.number),
        title: title_with_standing(here, design),
        statuses: statuses
            .iter()
            .map(|s| linked(figure(here, census, *s)))
            .collect(),
        known: linked(here.sheets(census.sheets)),
    }
}

/// The title, leading to the design, and how it stands where it is not simply accepted.
fn title_with_standing(here: &Here<'_>, design: &Design) -> CleanHtml {
    let to = here.href(&Address::Design(design.key.clone()));
    let title = CleanHtml::link(&to, &here.design_title(design));
    let word = match design.standing.standing {
        Standing::Accepted => return title,
        standing => here.words().listed("standing", standing),
    };
    CleanHtml::join([&title, &Here::quiet(word)], ", ")
}

/// How many sheets have a status; nothing for none.
fn figure(here: &Here<'_>, census: &Census, status: Status) -> CleanHtml {
    let row = census.by.status.iter().find(|row| row.key == Some(status));
    row.map_or_else(CleanHtml::empty, |row| here.sheets(row.sheets))
}

/// A figure of something that is mostly not there; nothing for none.
fn some(n: usize) -> String {
    match n {
        0 => String::new(),
        n => n.to_string(),
    }
}

/// Every declared edition against the numbers met.
fn editions(here: &Here<'_>) -> Vec<EditionRow> {
    let mut rows = Vec::new();
    for design in here.designs_in_order() {
        let Some(study) = here.book.studies.designs.get(&design.key) else {
            continue;
        };
        for edition in &study.editions {
            let Some(declared) = edition.declared else {
                continue;
            };
            let to = format!(
                "{}#edition-{}",
                here.href(&Address::DesignCensus(design.key.clone())),
                edition.printing
            );
            let name = CleanHtml::text(&here.printing_name(design, &edition.printing));
            let known = study.census.by.printing.iter();
            let known = known
                .filter(|row| row.key.as_ref() == Some(&edition.printing))
                .map(|row| here.sheets(row.sheets))
                .next();
            // Where no number was ever met the edition was hardly numbered: a count of all that
            // are missing would say nothing.
            let is_numbered = !edition.located.is_empty();
            let figure = |n: usize| {
                if is_numbered {
                    n.to_string()
                } else {
                    String::new()
                }
            };
            rows.push(EditionRow {
                design: here.design(&design.key),
                printing: CleanHtml::link(&to, &name),
                declared: declared.to_string(),
                known: known.unwrap_or_else(|| CleanHtml::text("0")),
                met: figure(edition.within().count()),
                missing: figure(edition.missing().len()),
                above: some(edition.above().count()),
                repeated: some(edition.repeated.len()),
            });
        }
    }
    rows
}
