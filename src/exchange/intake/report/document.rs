//! The document for programs (docs/JSON.md, "`keyblock intake FILE --json`"). Its rows are made as they are written.

use indexmap::IndexMap;
use serde::{Serialize, Serializer};

use super::account::Account;
use super::reported::Reported;
use super::row;
use crate::exchange::intake::facts::{Facts, GivenSize};
use crate::exchange::intake::proposal::{Correction, DesignIs, ProposedRow, RowStanding};
use crate::exchange::intake::reading::dates::Act;
use crate::exchange::intake::reading::sizes::Measured;
use crate::exchange::intake::reading::states::SaidState;
use crate::model::edtf::Date;
use crate::model::key::Key;
use crate::model::words::ClosedList as _;

/// What `intake --json` prints.
#[derive(Serialize)]
pub struct IntakeDocument<'r> {
    name: &'r str,
    file: &'r str,
    columns: Vec<ColumnEntry>,
    rows: RowEntries<'r>,
    proposed: ProposedCounts,
}

#[derive(Serialize)]
struct ColumnEntry {
    column: String,
    holds: &'static str,
    sure: &'static str,
    why: String,
    cells: CellCounts,
    unread: Vec<UnreadEntry>,
}

#[derive(Serialize)]
struct CellCounts {
    whole: usize,
    part: usize,
    unread: usize,
    empty: usize,
    contradictory: usize,
}

#[derive(Serialize)]
struct UnreadEntry {
    text: String,
    rows: usize,
}

#[derive(Serialize)]
struct ProposedCounts {
    designs: usize,
    impressions: usize,
    unchanged: usize,
    corrected: usize,
    nothing: usize,
    left_out: usize,
    doubtful: usize,
    to_settle: usize,
}

/// The rows, each made when it is written.
struct RowEntries<'r> {
    reported: Reported<'r>,
    columns: Vec<String>,
}

#[derive(Serialize)]
struct RowEntry<'r> {
    row: u32,
    accession: Option<&'r str>,
    design: Option<&'r str>,
    /// The title of a design that the catalogue does not have.
    new_design: Option<&'r str>,
    one_of: Vec<&'r str>,
    impression: Option<String>,
    is: &'static str,
    read: ReadEntry<'r>,
    unread: IndexMap<&'r str, &'r str>,
    doubts: Vec<String>,
    may_be: Vec<MayBeEntry<'r>>,
    missing: Vec<&'static str>,
    photographs: Vec<&'r str>,
    changes: Vec<ChangeEntry<'r>>,
}

#[derive(Serialize)]
struct ReadEntry<'r> {
    title: Option<&'r str>,
    date: Option<&'r str>,
    dates: Vec<DateEntry<'r>>,
    sizes: SizeEntries,
    technique: Vec<&'r str>,
    paper: Option<&'r str>,
    papers: Vec<&'r str>,
    kind: Option<&'r str>,
    numbering: Option<&'r str>,
    edition: Option<u32>,
    state: Option<String>,
    printing: Option<&'r str>,
    states: Vec<&'r str>,
    printings: Vec<&'r str>,
    catalogues: Vec<CatalogueEntry<'r>>,
    makers: Vec<MakerEntry<'r>>,
    credit: CreditEntry<'r>,
}

#[derive(Serialize)]
struct DateEntry<'r> {
    act: &'static str,
    date: Option<&'r str>,
}

/// Sizes in millimetres, height before width; null where none was read.
#[derive(Serialize)]
struct SizeEntries {
    image: Option<[f64; 2]>,
    sheet: Option<[f64; 2]>,
    platemark: Option<[f64; 2]>,
    support: Option<[f64; 2]>,
    unsaid: Option<[f64; 2]>,
    block: Option<[f64; 2]>,
    mount: Option<[f64; 2]>,
    frame: Option<[f64; 2]>,
    displayed: Option<[f64; 2]>,
    object: Option<[f64; 2]>,
}

#[derive(Serialize)]
struct CatalogueEntry<'r> {
    author: Option<&'r str>,
    number: Option<&'r str>,
    state: Option<String>,
}

#[derive(Serialize)]
struct MakerEntry<'r> {
    name: &'r str,
    role: &'r str,
}

#[derive(Serialize)]
struct CreditEntry<'r> {
    how: Option<&'r str>,
    from: Option<&'r str>,
    through: Option<&'r str>,
    year: Option<u32>,
}

#[derive(Serialize)]
struct MayBeEntry<'r> {
    impression: String,
    why: &'r str,
}

#[derive(Serialize)]
struct ChangeEntry<'r> {
    key: &'r str,
    is: Option<&'r str>,
    would_be: Option<&'r str>,
    kept: bool,
}

impl<'r> IntakeDocument<'r> {
    /// The document of a file.
    #[must_use]
    pub fn of(reported: &Reported<'r>, account: &Account) -> IntakeDocument<'r> {
        let columns = account.columns.iter().map(|column| ColumnEntry {
            column: column.name.clone(),
            holds: column.holds.word(),
            sure: column.sure.word(),
            why: column.why.clone(),
            cells: CellCounts {
                whole: column.whole,
                part: column.part,
                unread: column.unread,
                empty: column.empty,
                contradictory: column.contradictory,
            },
            unread: column
                .commonest
                .iter()
                .map(|unread| UnreadEntry {
                    text: unread.text.clone(),
                    rows: unread.rows,
                })
                .collect(),
        });
        let rows = account.rows;
        IntakeDocument {
            name: reported.name.as_str(),
            file: reported.file,
            columns: columns.collect(),
            rows: RowEntries {
                reported: *reported,
                columns: reported.column_names(),
            },
            proposed: ProposedCounts {
                designs: account.designs.new,
                impressions: rows.new,
                unchanged: rows.unchanged,
                corrected: rows.corrected,
                nothing: rows.nothing,
                left_out: rows.left_out,
                doubtful: rows.doubtful,
                to_settle: account.designs.to_settle,
            },
        }
    }
}

impl Serialize for RowEntries<'_> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let rows = self.reported.proposal.rows.iter();
        let entries = rows.enumerate().map(|(place, row)| RowEntry {
            photographs: self.reported.photographs_of(place),
            ..entry(&self.reported, &self.columns, row)
        });
        serializer.collect_seq(entries)
    }
}

/// The word for what a row is in the census.
pub(super) fn standing_word(standing: &RowStanding) -> &'static str {
    match standing {
        RowStanding::New => "new",
        RowStanding::Unchanged(_) => "unchanged",
        RowStanding::Corrected(..) => "corrected",
        RowStanding::Nothing => "nothing",
        RowStanding::LeftOut => "left-out",
    }
}

fn entry<'r>(reported: &Reported<'r>, columns: &'r [String], row: &'r ProposedRow) -> RowEntry<'r> {
    let designs = &reported.proposal.designs;
    let design = row.design.and_then(|at| designs.get(at));
    let (recorded, one_of) = match design.map(|design| &design.is) {
        Some(DesignIs::Recorded(key)) => (Some(key.as_str()), Vec::new()),
        Some(DesignIs::OneOf(keys)) => (None, keys.iter().map(Key::as_str).collect()),
        Some(DesignIs::New) | None => (None, Vec::new()),
    };
    let new_design = design.filter(|design| design.is == DesignIs::New);
    let (impression, corrections): (_, &[Correction]) = match &row.standing {
        RowStanding::Unchanged(key) => (Some(key), &[]),
        RowStanding::Corrected(key, corrections) => (Some(key), corrections),
        RowStanding::New | RowStanding::Nothing | RowStanding::LeftOut => (None, &[]),
    };
    let unread = row.unread.iter().filter_map(|(column, text)| {
        let name = columns.get(*column)?;
        Some((name.as_str(), text.as_str()))
    });
    RowEntry {
        row: row.row,
        accession: row.accession.as_deref(),
        design: recorded,
        new_design: new_design.map(|design| design.title.as_deref().unwrap_or_default()),
        one_of,
        impression: impression.map(ToString::to_string),
        is: standing_word(&row.standing),
        read: read(row),
        unread: unread.collect(),
        doubts: row::doubts(row, columns),
        may_be: row
            .may_be
            .iter()
            .map(|other| MayBeEntry {
                impression: other.impression.to_string(),
                why: &other.why,
            })
            .collect(),
        photographs: Vec::new(),
        missing: row::missing(reported, row),
        changes: corrections
            .iter()
            .map(|correction| ChangeEntry {
                key: &correction.key,
                is: correction.is.as_deref(),
                would_be: correction.would_be.as_deref(),
                kept: correction.is_kept,
            })
            .collect(),
    }
}

fn read(row: &ProposedRow) -> ReadEntry<'_> {
    let (facts, named) = (&row.facts, &row.named);
    let stated = facts.references.iter().find_map(|said| said.state.as_ref());
    let own_state = only(&named.states).map(str::to_owned);
    let own_state = own_state.or_else(|| facts.own.state.clone());
    let own_printing = only(&named.printings).or(facts.own.printing.as_deref());
    let date = facts.date_of(Act::Created).and_then(|when| when.date());
    ReadEntry {
        title: facts.title.as_ref().map(|title| title.text.as_str()),
        date: date.map(Date::as_str),
        dates: facts
            .dates
            .iter()
            .map(|dated| DateEntry {
                act: dated.act.word(),
                date: dated.when.date().map(Date::as_str),
            })
            .collect(),
        sizes: sizes(facts),
        technique: facts.techniques.iter().map(Key::as_str).collect(),
        paper: facts.papers.first().map(Key::as_str),
        papers: facts.papers.iter().map(Key::as_str).collect(),
        kind: facts.kind.as_ref().map(Key::as_str),
        numbering: facts.numbering.as_deref(),
        edition: facts.edition,
        state: own_state.or_else(|| stated.map(SaidState::written)),
        printing: own_printing,
        states: named.states.iter().map(Key::as_str).collect(),
        printings: named.printings.iter().map(Key::as_str).collect(),
        catalogues: facts
            .references
            .iter()
            .map(|said| CatalogueEntry {
                author: said.author.as_deref(),
                number: said.number.as_deref(),
                state: said.state.as_ref().map(SaidState::written),
            })
            .collect(),
        makers: facts
            .makers
            .iter()
            .map(|maker| MakerEntry {
                name: &maker.name,
                role: maker.role.as_str(),
            })
            .collect(),
        credit: CreditEntry {
            how: facts.credit().how.as_ref().map(Key::as_str),
            from: facts.credit().from.as_deref(),
            through: facts.credit().through.as_deref(),
            year: facts.credit().year,
        },
    }
}

/// The key, where it is one.
fn only(keys: &[Key]) -> Option<&str> {
    match keys {
        [key] => Some(key.as_str()),
        _ => None,
    }
}

fn sizes(facts: &Facts) -> SizeEntries {
    let of = |of: Measured| {
        let mut sizes = facts.sizes.iter();
        sizes
            .find(|size| size.of == of)
            .map(|size| millimetres(size))
    };
    SizeEntries {
        image: of(Measured::Image),
        sheet: of(Measured::Sheet),
        platemark: of(Measured::Platemark),
        support: of(Measured::Support),
        unsaid: of(Measured::Unsaid),
        block: of(Measured::Block),
        mount: of(Measured::Mount),
        frame: of(Measured::Frame),
        displayed: of(Measured::Displayed),
        object: of(Measured::Object),
    }
}

/// Height and width to the hundredth: 25.4 times a fraction is no binary number.
fn millimetres(size: &GivenSize) -> [f64; 2] {
    [size.height.mm, size.width.mm].map(|mm| (mm * 100.0).round() / 100.0)
}
