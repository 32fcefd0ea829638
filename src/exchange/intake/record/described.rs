//! The parts of a record that describe the sheet: sizes, paper, marks, what was looked for and not found.

use std::sync::LazyLock;

use crate::exchange::intake::columns::{ColumnReading, Holds};
use crate::exchange::intake::facts::{Facts, GivenSize};
use crate::exchange::intake::proposal::{ProposedRow, RowDoubt};
use crate::exchange::intake::reading::Doubt;
use crate::exchange::intake::reading::dates::Act;
use crate::exchange::intake::reading::phrases::Phrases;
use crate::exchange::intake::reading::sizes::Measured;
use crate::exchange::intake::reading::words::Words;
use crate::model::certainty::{Claim, Statement, Statements};
use crate::model::impression::Without;
use crate::model::mark::{Mark, MarkKind};
use crate::model::place::{Place, Placed};
use crate::model::sheet::{ConditionNote, Sheet, Watermark};
use crate::model::size::{Mm, Size};

/// A value without a place: it stands in no file yet.
pub(super) fn unplaced<T>(value: T) -> Placed<T> {
    Placed::new(value, Place::default())
}

/// One statement without a claim, where there is a value.
pub(super) fn stated<T>(value: Option<T>) -> Statements<T> {
    let statement = value.map(|value| Statement {
        is: unplaced(value),
        claim: Claim::default(),
    });
    Statements(statement.into_iter().collect())
}

/// The sheet of paper.
///
/// A size is recorded where the row gives exactly one of a thing. That of the "support" may be of the paper or of what it
/// is laid on, and that of the "object" of anything, so both are sizes of which it is not said what was measured. The
/// block is the design's, and the size as displayed is none of the sheet.
pub(super) fn sheet(row: &ProposedRow, columns: &[ColumnReading], cell: Cell<'_>) -> Sheet {
    let facts = &row.facts;
    let mut used: Vec<&GivenSize> = Vec::new();
    let mut size = |of: &[Measured]| {
        let given = of.iter().find_map(|of| facts.size_of(*of));
        let size = given.and_then(rounded);
        used.extend(given.filter(|_| size.is_some()));
        stated(size)
    };
    let mut sheet = Sheet {
        size: size(&[Measured::Sheet]),
        image: size(&[Measured::Image]),
        platemark: size(&[Measured::Platemark]),
        unsaid: size(&[Measured::Unsaid, Measured::Object, Measured::Support]),
        mount: size(&[Measured::Mount]),
        frame: size(&[Measured::Frame]),
        ..Sheet::default()
    };
    sheet.measuring.sight = used.iter().any(|size| size.is_sight);
    sheet.measuring.said = said(&used, columns, cell);
    sheet.paper = paper(row).map(unplaced);
    sheet.date = stated(
        facts
            .date_of(Act::Pulled)
            .and_then(|when| when.date())
            .cloned(),
    );
    if absent(facts, Holds::Watermark).is_none() {
        let watermark = facts.texts.get(Holds::Watermark);
        sheet.watermark = watermark
            .map(|text| Watermark {
                text: Some(text.to_owned()),
                ..Watermark::default()
            })
            .into_iter()
            .collect();
    }
    sheet
}

/// The text of a cell, by its column.
pub(super) type Cell<'c> = &'c dyn Fn(usize) -> &'c str;

/// A size to the hundredth of a millimetre: `9 1/16 in.` has no end in figures.
fn rounded(given: &GivenSize) -> Option<Size> {
    let length = |mm: f64| Mm::new((mm * 100.0).round() / 100.0);
    Some(Size {
        height: length(given.height.mm)?,
        width: length(given.width.mm)?,
    })
}

/// The words that the sizes were taken from: the cells with sizes in words, each with its heading where that says the
/// unit or what was measured; else the lengths of the columns of heights and widths.
fn said(used: &[&GivenSize], columns: &[ColumnReading], cell: Cell<'_>) -> Option<String> {
    let in_words = columns
        .iter()
        .filter(|column| column.holds == Holds::Dimensions);
    let mut said: Vec<String> = Vec::new();
    for column in in_words {
        let text = cell(column.column).trim();
        let is_of_it = used.iter().any(|size| text.contains(&size.said));
        if text.is_empty() || !is_of_it {
            continue;
        }
        let assumed = column.assumed;
        let heading = column.heading.trim();
        if heading.is_empty() || (assumed.unit.is_none() && assumed.of.is_none()) {
            said.push(text.to_owned());
        } else {
            said.push(format!("{heading}: {text}"));
        }
    }
    let of_columns = used
        .iter()
        .filter(|size| !said.iter().any(|text| text.contains(&size.said)))
        .map(|size| size.said.clone());
    let of_columns: Vec<String> = of_columns.collect();
    for size in of_columns {
        if !said.contains(&size) {
            said.push(size);
        }
    }
    (!said.is_empty()).then(|| said.join("; "))
}

/// The paper printed on. A short form, which may mean several papers, is told and not recorded.
fn paper(row: &ProposedRow) -> Option<crate::model::key::Key> {
    let is_short = row.doubts.iter().any(|doubt| {
        matches!(
            doubt,
            RowDoubt::Cell {
                doubt: Doubt::ShortForm,
                ..
            }
        )
    });
    let paper = row.facts.papers.first().cloned();
    paper.filter(|_| !is_short)
}

/// The condition in the words of the row.
pub(super) fn condition(facts: &Facts) -> Vec<ConditionNote> {
    let text = facts.texts.get(Holds::Condition);
    let note = text.map(|text| ConditionNote {
        what: text.to_owned(),
        at: None,
        how: None,
        by: None,
        date: None,
    });
    note.into_iter().collect()
}

/// The marks that a row tells of.
///
/// A cell about a signature or an inscription mostly describes it ("signed in pencil, lower right"), so it is what is to be
/// said of the mark (`note`); it is the mark's own text only where the whole cell stands in quotation marks.
pub(super) fn marks(facts: &Facts) -> Vec<Mark> {
    let mut marks = Vec::new();
    for holds in [Holds::Signature, Holds::Inscription, Holds::Marks] {
        let Some(text) = facts.texts.get(holds) else {
            continue;
        };
        if absent(facts, holds).is_some() {
            continue;
        }
        let kind = match holds {
            Holds::Signature => Some(MarkKind::Signature),
            Holds::Inscription => Some(MarkKind::Inscription),
            _ => kind_of_mark(text),
        };
        let mut mark = blank(kind);
        if holds != Holds::Signature || whole(&PRESENT, text).is_none() {
            match quoted(text) {
                Some(words) => mark.text = Some(words.to_owned()),
                None => mark.note = Some(text.to_owned()),
            }
        }
        marks.push(mark);
    }
    marks
}

fn blank(kind: Option<MarkKind>) -> Mark {
    Mark {
        record: None,
        condition: None,
        kind: kind.map(unplaced),
        medium: None,
        text: None,
        at: None,
        side: None,
        whose: None,
        applied_by: None,
        applied: None,
        colour: None,
        number: None,
        note: None,
        claim: Claim::default(),
        place: Place::default(),
    }
}

/// What was looked for and not found, as the row says it.
pub(super) fn without(facts: &Facts) -> Vec<Placed<Without>> {
    let features = [
        (Holds::Signature, Without::Signature),
        (Holds::Watermark, Without::Watermark),
    ];
    let said = features
        .into_iter()
        .filter(|(holds, _)| absent(facts, *holds) == Some(Absent::LookedFor))
        .map(|(_, without)| unplaced(without));
    said.collect()
}

/// How a cell says that there is nothing.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Absent {
    /// In words that say that it was looked for: "unsigned".
    LookedFor,
    /// With "none" or "no", which may mean that nobody looked.
    Nothing,
}

static ABSENT: LazyLock<Phrases<Absent>> = LazyLock::new(|| {
    Phrases::of(&[
        (
            Absent::LookedFor,
            "unsigned|not signed|no signature|unsigniert|nicht signiert|ohne signatur|unbezeichnet|non signé|\
             non signée|sans signature|ongesigneerd|niet gesigneerd|zonder signatuur|署名なし|no watermark|\
             without watermark|not watermarked|ohne wasserzeichen|kein wasserzeichen|sans filigrane|geen watermerk|\
             zonder watermerk|透かしなし",
        ),
        (
            Absent::Nothing,
            "none|no|nil|n/a|n.a.|-|–|—|not recorded|keine|keiner|kein|nein|ohne|nicht erfasst|aucun|aucune|non|néant|\
             geen|nee|なし|無",
        ),
    ])
});

static PRESENT: LazyLock<Phrases<()>> = LazyLock::new(|| {
    Phrases::of(&[(
        (),
        "yes|signed|x|ja|signiert|oui|signé|signée|gesigneerd|署名あり|有",
    )])
});

/// Kinds of marks (common practice, no source).
static MARK_KINDS: LazyLock<Phrases<MarkKind>> = LazyLock::new(|| {
    Phrases::of(&[
        (
            MarkKind::Collector,
            "collector's mark|collector's stamp|collectors' mark|collector's marks|lugt|sammlermarke|sammlerstempel|\
             marque de collection|marque de collectionneur|verzamelaarsmerk|蔵書印",
        ),
        (MarkKind::Seal, "seal|siegel|sceau|zegel|印|印章"),
        (
            MarkKind::Stamp,
            "stamp|stamped|blind stamp|blindstamp|stempel|gestempelt|blindstempel|prägestempel|cachet|timbre|timbre sec",
        ),
    ])
});

fn absent(facts: &Facts, holds: Holds) -> Option<Absent> {
    whole(&ABSENT, facts.texts.get(holds)?)
}

/// What a phrase means that is the whole text.
fn whole<T: Clone>(phrases: &Phrases<T>, text: &str) -> Option<T> {
    let words = Words::of(text);
    let found = phrases.at(&words, 0)?;
    let is_whole = (found.end..words.len()).all(|at| words.is_mark(at, &["."]));
    is_whole.then_some(found.is)
}

/// The kind of a mark that the words name; none where they name several or none.
fn kind_of_mark(text: &str) -> Option<MarkKind> {
    let words = Words::of(text);
    let found = (0..words.len()).filter_map(|at| MARK_KINDS.inflected_at(&words, at));
    let mut kinds: Vec<MarkKind> = found.map(|found| found.is).collect();
    kinds.dedup();
    // A collector's mark is often a stamp too.
    if kinds.contains(&MarkKind::Collector) {
        return Some(MarkKind::Collector);
    }
    match kinds.as_slice() {
        [only] => Some(*only),
        _ => None,
    }
}

/// What stands in quotation marks, where that is the whole text.
fn quoted(text: &str) -> Option<&str> {
    const QUOTES: [(char, char); 6] = [
        ('"', '"'),
        ('“', '”'),
        ('„', '“'),
        ('«', '»'),
        ('»', '«'),
        ('「', '」'),
    ];
    let text = text.trim();
    let within = QUOTES.iter().find_map(|(open, close)| {
        let within = text.strip_prefix(*open)?.strip_suffix(*close)?;
        (!within.contains([*open, *close])).then_some(within)
    });
    within.filter(|within| !within.trim().is_empty())
}
