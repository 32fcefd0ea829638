//! How much of each column was understood, and how many rows and designs are what.

use std::collections::BTreeMap;

use super::reported::Reported;
use super::words;
use crate::exchange::intake::columns::{ColumnReading, Holds};
use crate::exchange::intake::proposal::{DesignIs, ProposedRow, RowDoubt, RowStanding};
use crate::exchange::intake::table::RowView;
use crate::model::certainty::Certainty;

/// The counts of a file.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Account {
    /// Every column, in order.
    pub columns: Vec<ColumnAccount>,
    /// The rows.
    pub rows: RowCounts,
    /// The designs.
    pub designs: DesignCounts,
}

/// How much of a column was understood.
#[derive(Clone, Debug, PartialEq)]
pub struct ColumnAccount {
    /// Its name.
    pub name: String,
    /// What it holds.
    pub holds: Holds,
    /// How sure that is.
    pub sure: Certainty,
    /// Why, in words.
    pub why: String,
    /// Cells of which every word was understood.
    pub whole: usize,
    /// Cells of which some words were.
    pub part: usize,
    /// Cells of which nothing was.
    pub unread: usize,
    /// Cells without a text.
    pub empty: usize,
    /// Cells that contradict another cell of their row; they are among the others too.
    pub contradictory: usize,
    /// The commonest words that were not understood.
    pub commonest: Vec<UnreadValue>,
    /// How many further ones there are.
    pub further: usize,
}

/// Words of cells that were not understood.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct UnreadValue {
    /// The words.
    pub text: String,
    /// In how many rows they stand.
    pub rows: usize,
}

/// How many rows are what.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct RowCounts {
    /// All.
    pub all: usize,
    /// Impressions that are not recorded.
    pub new: usize,
    /// Recorded impressions of which the row says something else or more.
    pub corrected: usize,
    /// Recorded impressions of which everything is recorded.
    pub unchanged: usize,
    /// Rows that say nothing which a record could hold.
    pub nothing: usize,
    /// Rows that an editor left out.
    pub left_out: usize,
    /// Rows of which something is doubtful; they are among the others too.
    pub doubtful: usize,
}

/// How many designs are what.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct DesignCounts {
    /// All to which rows belong.
    pub all: usize,
    /// Designs of the catalogue.
    pub recorded: usize,
    /// Designs that the catalogue does not have.
    pub new: usize,
    /// Designs of which an editor must say which they are.
    pub to_settle: usize,
    /// Rows of which nothing tells the design.
    pub rows_without: usize,
}

/// How many of the commonest unread words are told.
const MOST_TOLD: usize = 12;

impl Account {
    /// The counts of a file.
    #[must_use]
    pub fn of(reported: &Reported<'_>) -> Account {
        Account {
            columns: columns(reported),
            rows: rows(&reported.proposal.rows),
            designs: designs(reported),
        }
    }
}

/// Whether something about a row is doubtful.
pub(super) fn is_doubtful(row: &ProposedRow) -> bool {
    let keeps = |standing: &RowStanding| match standing {
        RowStanding::Corrected(_, corrections) => corrections.iter().any(|c| c.is_kept),
        _ => false,
    };
    !row.doubts.is_empty() || !row.may_be.is_empty() || keeps(&row.standing)
}

fn rows(rows: &[ProposedRow]) -> RowCounts {
    let mut counts = RowCounts {
        all: rows.len(),
        ..RowCounts::default()
    };
    for row in rows {
        match row.standing {
            RowStanding::New => counts.new += 1,
            RowStanding::Corrected(..) => counts.corrected += 1,
            RowStanding::Unchanged(_) => counts.unchanged += 1,
            RowStanding::Nothing => counts.nothing += 1,
            RowStanding::LeftOut => counts.left_out += 1,
        }
        counts.doubtful += usize::from(is_doubtful(row));
    }
    counts
}

fn designs(reported: &Reported<'_>) -> DesignCounts {
    let proposal = reported.proposal;
    let mut counts = DesignCounts {
        all: proposal.designs.len(),
        ..DesignCounts::default()
    };
    for design in &proposal.designs {
        match design.is {
            DesignIs::Recorded(_) => counts.recorded += 1,
            DesignIs::New => counts.new += 1,
            DesignIs::OneOf(_) => counts.to_settle += 1,
        }
    }
    let is_without = |row: &&ProposedRow| {
        let is_none = matches!(row.standing, RowStanding::Nothing | RowStanding::LeftOut);
        row.design.is_none() && !is_none
    };
    counts.rows_without = proposal.rows.iter().filter(is_without).count();
    counts
}

/// The counts of a column while its cells are gone over.
#[derive(Default)]
struct Counting<'t> {
    whole: usize,
    part: usize,
    unread: usize,
    empty: usize,
    contradictory: usize,
    /// In how many rows words were not understood.
    words: BTreeMap<&'t str, usize>,
}

fn columns(reported: &Reported<'_>) -> Vec<ColumnAccount> {
    let columns = &reported.proposal.columns;
    let mut counting: Vec<Counting<'_>> = columns.iter().map(|_| Counting::default()).collect();
    let mut rows = reported.proposal.rows.iter().peekable();
    for view in reported.table.rows() {
        // Both are in the order of the file; a row that proposes nothing may be left out.
        while rows.next_if(|row| row.row < view.number()).is_some() {}
        let row = rows.next_if(|row| row.row == view.number());
        for (column, counting) in columns.iter().zip(&mut counting) {
            count(column, view, row, counting);
        }
    }
    let names = reported.column_names();
    let told = columns.iter().zip(counting).zip(names);
    told.map(|((column, counting), name)| told_of(column, counting, name))
        .collect()
}

fn count<'t>(
    column: &ColumnReading,
    view: RowView<'t>,
    row: Option<&'t ProposedRow>,
    counting: &mut Counting<'t>,
) {
    let cell = view.cell(column.column);
    if cell.is_empty() {
        counting.empty += 1;
        return;
    }
    let left = row.and_then(|row| {
        let mut unread = row.unread.iter();
        unread.find(|(at, _)| *at == column.column)
    });
    let left = left.map(|(_, words)| words.as_str());
    // Of a column that is not known no cell is understood.
    let left = left.or((column.holds == Holds::Unknown).then_some(cell));
    match left {
        None => counting.whole += 1,
        Some(words) => {
            if letters(words) < letters(cell) {
                counting.part += 1;
            } else {
                counting.unread += 1;
            }
            *counting.words.entry(words).or_default() += 1;
        }
    }
    let contradicts = |doubt: &RowDoubt| match doubt {
        RowDoubt::Contradiction { column: at, .. } => *at == column.column,
        RowDoubt::Against { columns, .. } => columns.contains(&column.column),
        RowDoubt::Cell { .. } | RowDoubt::Said(_) => false,
    };
    let is_contradictory = row.is_some_and(|row| row.doubts.iter().any(contradicts));
    counting.contradictory += usize::from(is_contradictory);
}

/// How many letters and figures a text has: marks between words count as understood.
fn letters(text: &str) -> usize {
    text.chars().filter(|c| c.is_alphanumeric()).count()
}

fn told_of(column: &ColumnReading, counting: Counting<'_>, name: String) -> ColumnAccount {
    let mut unread: Vec<UnreadValue> = counting
        .words
        .into_iter()
        .map(|(text, rows)| UnreadValue {
            text: text.to_owned(),
            rows,
        })
        .collect();
    unread.sort_by(|a, b| b.rows.cmp(&a.rows).then_with(|| a.text.cmp(&b.text)));
    let further = unread.len().saturating_sub(MOST_TOLD);
    unread.truncate(MOST_TOLD);
    ColumnAccount {
        name,
        holds: column.holds,
        sure: column.sure,
        why: words::grounds(&column.why),
        whole: counting.whole,
        part: counting.part,
        unread: counting.unread,
        empty: counting.empty,
        contradictory: counting.contradictory,
        commonest: unread,
        further,
    }
}
