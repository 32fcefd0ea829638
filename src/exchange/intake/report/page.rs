//! One page to mail back to the registrar: what was understood of the file, column by column and row by row.
//!
//! One file that loads nothing and runs nothing. Everything from the file and the catalogue is escaped by the template,
//! which is part of the program: a theme cannot change it. Of records of the catalogue it shows only what readers may know
//! (`row`). A page of many thousand rows would be of no use, so it has the first rows of each kind, and the table
//! (`report.csv`) has all.

use serde::Serialize;
use tera::{Context, Tera};

use super::account::{Account, ColumnAccount};
use super::reported::Reported;
use super::row::{RowView, design_in_words, is_to_look_at, without_column};
use super::words::{self, counted, grouped};
use crate::exchange::intake::proposal::{DesignIs, ProposedDesign};
use crate::model::certainty::Certainty;

/// The most rows to look at that stand on the page.
const TO_LOOK_AT: usize = 500;
/// The most other rows.
const OTHERS: usize = 1_000;
/// The most columns; records of standards have some hundred.
const COLUMNS: usize = 500;
/// The most designs.
const DESIGNS: usize = 200;
/// The most rows that are named of one design.
const ROWS_OF_DESIGN: usize = 40;

#[derive(Serialize)]
struct ReportPage<'r> {
    catalogue: &'r str,
    contact: Option<&'r str>,
    file: &'r str,
    sums: Vec<Sum>,
    rows: String,
    cells: String,
    notes: Vec<String>,
    without_column: Vec<&'static str>,
    columns: Vec<ColumnView<'r>>,
    more_columns: Option<String>,
    designs: Vec<DesignView>,
    more_designs: Option<String>,
    to_look_at: Vec<RowView>,
    count_to_look_at: String,
    more_to_look_at: Option<String>,
    others: Vec<RowView>,
    count_of_others: String,
    more_others: Option<String>,
}

/// A number at the head of the page.
#[derive(Serialize)]
struct Sum {
    n: String,
    what: &'static str,
}

#[derive(Serialize)]
struct ColumnView<'a> {
    name: &'a str,
    holds: &'static str,
    /// How sure that is, where it is not certain.
    sure: Option<&'static str>,
    why: &'a str,
    is_known: bool,
    counts: [CountView; 5],
    bar: Bar,
    values: Vec<ValueView<'a>>,
    further: Option<String>,
}

/// How many cells are what.
#[derive(Serialize)]
struct CountView {
    label: &'static str,
    n: String,
}

/// Where the parts of the bar of a column begin, and how wide they are, in thousandths.
#[derive(Serialize)]
struct Bar {
    whole: usize,
    part: usize,
    unread: usize,
    part_at: usize,
    unread_at: usize,
}

#[derive(Serialize)]
struct ValueView<'a> {
    text: &'a str,
    rows: Option<String>,
}

#[derive(Serialize)]
struct DesignView {
    name: String,
    is_to_settle: bool,
    rows: String,
    joins: Vec<String>,
    splits: Vec<String>,
    doubts: Vec<String>,
}

/// The page as text.
///
/// # Errors
/// Where the template is broken, in words.
pub fn page(reported: &Reported<'_>, account: &Account) -> Result<String, String> {
    set(include_str!("page.html"), &view(reported, account))
}

/// Fills the template.
fn set(template: &str, page: &ReportPage<'_>) -> Result<String, String> {
    let mut tera = Tera::default();
    let filled = tera
        .add_raw_template("report.html", template)
        .and_then(|()| tera.render("report.html", &Context::from_serialize(page)?));
    filled.map_err(|fault| format!("the report for the registrar cannot be made: {fault}"))
}

fn view<'r>(reported: &Reported<'r>, account: &'r Account) -> ReportPage<'r> {
    let settings = reported.catalogue.published_settings();
    let names = reported.column_names();
    let proposal = reported.proposal;
    let (looked_at, others): (Vec<_>, Vec<_>) = proposal
        .rows
        .iter()
        .partition(|row| is_to_look_at(reported, row));
    let views = |rows: &[&_], most: usize| -> Vec<RowView> {
        let first = rows.iter().take(most);
        first
            .map(|row| RowView::of(reported, &names, row))
            .collect()
    };
    let designs = proposal.designs.iter();
    let designs: Vec<&ProposedDesign> = designs
        .filter(|design| !matches!(design.is, DesignIs::Recorded(_)))
        .collect();
    ReportPage {
        catalogue: &settings.title.value,
        contact: settings.contact.as_deref(),
        file: reported.file,
        sums: sums(account),
        rows: counted(account.rows.all, "row", "rows"),
        cells: counted(account.columns.len(), "column", "columns"),
        notes: reported.notes().iter().map(|note| begun(note)).collect(),
        without_column: without_column(reported),
        columns: account.columns.iter().take(COLUMNS).map(column).collect(),
        more_columns: beyond(account.columns.len(), COLUMNS),
        designs: designs
            .iter()
            .take(DESIGNS)
            .map(|design| design_view(reported, design))
            .collect(),
        more_designs: beyond(designs.len(), DESIGNS),
        to_look_at: views(&looked_at, TO_LOOK_AT),
        count_to_look_at: counted(looked_at.len(), "row", "rows"),
        more_to_look_at: beyond(looked_at.len(), TO_LOOK_AT),
        others: views(&others, OTHERS),
        count_of_others: counted(others.len(), "row", "rows"),
        more_others: beyond(others.len(), OTHERS),
    }
}

/// A sentence with a capital at its beginning.
fn begun(sentence: &str) -> String {
    let mut letters = sentence.chars();
    let first = letters.next().into_iter().flat_map(char::to_uppercase);
    first.chain(letters).collect()
}

/// How many there are beyond the most that stand on the page.
fn beyond(all: usize, most: usize) -> Option<String> {
    (all > most).then(|| grouped(all - most))
}

fn sums(account: &Account) -> Vec<Sum> {
    let rows = account.rows;
    let sums = [
        (rows.new, "not yet in the catalogue"),
        (rows.corrected, "in it, and your file differs"),
        (rows.unchanged, "in it, unchanged"),
        (rows.nothing, "with nothing to record"),
        (rows.left_out, "left out by us"),
    ];
    let there = sums.into_iter().filter(|(n, _)| *n > 0);
    there
        .map(|(n, what)| Sum {
            n: grouped(n),
            what,
        })
        .collect()
}

fn column(account: &ColumnAccount) -> ColumnView<'_> {
    let count = |label, n: usize| CountView {
        label,
        n: if n == 0 { "–".to_owned() } else { grouped(n) },
    };
    let all = account.whole + account.part + account.unread + account.empty;
    let thousandths = |n: usize| (n * 1_000).checked_div(all).unwrap_or(0);
    let (whole, part) = (thousandths(account.whole), thousandths(account.part));
    ColumnView {
        name: &account.name,
        holds: words::holds(account.holds),
        sure: match account.sure {
            Certainty::Certain => None,
            Certainty::Probable => Some("probably"),
            Certainty::Possible => Some("possibly"),
        },
        why: &account.why,
        is_known: account.holds != crate::exchange::intake::columns::Holds::Unknown,
        counts: [
            count("wholly", account.whole),
            count("in part", account.part),
            count("not", account.unread),
            count("empty", account.empty),
            count("against another", account.contradictory),
        ],
        bar: Bar {
            whole,
            part,
            unread: thousandths(account.unread),
            part_at: whole,
            unread_at: whole + part,
        },
        values: account
            .commonest
            .iter()
            .map(|unread| ValueView {
                text: &unread.text,
                rows: (unread.rows > 1).then(|| counted(unread.rows, "row", "rows")),
            })
            .collect(),
        further: (account.further > 0).then(|| grouped(account.further)),
    }
}

fn design_view(reported: &Reported<'_>, design: &ProposedDesign) -> DesignView {
    let rows = &reported.proposal.rows;
    let numbers = design.rows.iter().filter_map(|at| rows.get(*at));
    let mut numbers: Vec<String> = numbers
        .take(ROWS_OF_DESIGN)
        .map(|row| row.row.to_string())
        .collect();
    if let Some(more) = beyond(design.rows.len(), ROWS_OF_DESIGN) {
        numbers.push(format!("and {more} more"));
    }
    let word = if design.rows.len() == 1 {
        "row"
    } else {
        "rows"
    };
    DesignView {
        name: design_in_words(reported, design),
        is_to_settle: matches!(design.is, DesignIs::OneOf(_)),
        rows: format!("{word} {}", numbers.join(", ")),
        joins: design.joins.clone(),
        splits: design.splits.clone(),
        doubts: design.doubts.clone(),
    }
}
