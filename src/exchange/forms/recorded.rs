//! What is recorded of a sheet, in the words of the columns.
//!
//! Cells are empty where nothing is recorded, where a record says more than a cell can (states by matrix), and in the columns
//! for what a sender adds: photograph, sighting, remarks.

use super::columns::FormColumn;
use super::lists::{design_label, printing_label, state_label};
use crate::exchange::intake::columns::Holds;
use crate::model::certainty::Statements;
use crate::model::design::Design;
use crate::model::impression::{Impression, StateReading};
use crate::model::mark::{Mark, MarkKind};
use crate::model::provenance::Party;
use crate::model::size::Size;
use crate::model::vocabulary::List as Vocabulary;
use crate::page::{Here, marks, provenance_entry};

/// What stands between several values of a cell.
const BETWEEN: &str = "; ";

/// The cell of a sheet in a column.
pub(super) fn cell(
    here: &Here<'_>,
    column: &FormColumn,
    design: &Design,
    sheet: &Impression,
) -> String {
    let text = |text: Option<&str>| text.unwrap_or_default().to_owned();
    let paper = &sheet.sheet;
    match column.holds {
        Holds::Impression => sheet.key.to_string(),
        Holds::Accession => text(sheet.accession.as_ref().map(|number| number.value.as_str())),
        Holds::FormerAccession => joined(
            sheet
                .former_accessions
                .iter()
                .map(|former| former.number.clone()),
        ),
        Holds::Design => design_label(design),
        Holds::Title => text(design.title().map(|title| title.text.as_str())),
        Holds::OwnState => states(here, design, sheet),
        Holds::Printing => {
            let printings = sheet
                .identified
                .iter()
                .flat_map(|reading| &reading.printing);
            joined(printings.map(|key| printing_label(here, design, &key.value)))
        }
        Holds::Kind => sheet.kind.own().map_or_else(String::new, |kind| {
            here.term(Vocabulary::Kinds, kind.as_str())
        }),
        Holds::Numbering => text(sheet.numbering.as_ref().map(|number| number.value.as_str())),
        Holds::Medium => {
            let terms = sheet.technique.iter();
            let terms = terms.map(|key| here.term(Vocabulary::Techniques, key.value.as_str()));
            terms.collect::<Vec<_>>().join(", ")
        }
        Holds::Paper => paper.paper.as_ref().map_or_else(String::new, |key| {
            here.term(Vocabulary::Papers, key.value.as_str())
        }),
        Holds::Watermark => {
            let watermarks = paper.watermark.iter();
            joined(watermarks.filter_map(|watermark| watermark.text.clone()))
        }
        Holds::Dimensions => match column.name {
            "image" => size(&paper.image),
            "sheet" => size(&paper.size),
            "platemark" => size(&paper.platemark),
            _ => String::new(),
        },
        Holds::Signature => marked(here, sheet, |kind| kind == Some(MarkKind::Signature)),
        Holds::Inscription => marked(here, sheet, |kind| kind == Some(MarkKind::Inscription)),
        Holds::Marks => marked(here, sheet, |kind| {
            !matches!(kind, Some(MarkKind::Signature | MarkKind::Inscription))
        }),
        Holds::Condition => joined(sheet.condition.iter().map(|note| match &note.at {
            Some(at) => format!("{}, {at}", note.what),
            None => note.what.clone(),
        })),
        Holds::Holder => sheet.holder.as_ref().map_or_else(String::new, |holder| {
            here.holder_and_city(&holder.value).plain()
        }),
        Holds::Status => here.status(sheet.status.value).to_owned(),
        Holds::Acquisition => acquired(here, sheet),
        Holds::Credit => text(sheet.credit.as_deref()),
        Holds::Provenance => {
            if let Some(line) = &sheet.provenance_line {
                line.value.clone()
            } else {
                let entries = sheet.provenance.iter();
                joined(entries.map(|entry| provenance_entry(here, entry).plain()))
            }
        }
        Holds::Web => text(sheet.web.as_ref().map(|address| address.value.as_str())),
        _ => String::new(),
    }
}

fn joined(texts: impl Iterator<Item = String>) -> String {
    texts.collect::<Vec<_>>().join(BETWEEN)
}

/// The states that the identification allows.
fn states(here: &Here<'_>, design: &Design, sheet: &Impression) -> String {
    match sheet
        .identified
        .as_ref()
        .and_then(|reading| reading.state.as_ref())
    {
        Some(StateReading::OneOf(states)) => joined(
            states
                .iter()
                .map(|state| state_label(here, design, &state.value)),
        ),
        Some(StateReading::ByMatrix(_)) | None => String::new(),
    }
}

/// A size as the catalogue's own view has it: "166 × 243".
fn size(size: &Statements<Size>) -> String {
    size.own().map_or_else(String::new, |size| {
        format!("{} × {}", size.height_mm(), size.width_mm())
    })
}

/// The marks of some kinds, as pages describe them.
fn marked(
    here: &Here<'_>,
    sheet: &Impression,
    is_one: impl Fn(Option<MarkKind>) -> bool,
) -> String {
    let kind = |mark: &Mark| {
        let described = here.public().described_mark(mark);
        described.kind.as_ref().map(|kind| kind.value)
    };
    let marked = sheet.marks.iter().filter(|mark| is_one(kind(mark)));
    joined(marked.map(|mark| marks::line(here, mark).plain()))
}

/// How the present holder acquired the sheet.
fn acquired(here: &Here<'_>, sheet: &Impression) -> String {
    let Some(holder) = &sheet.holder else {
        return String::new();
    };
    let is_holder =
        |party: &Party| matches!(party, Party::Record(key) if key.value == holder.value);
    let entries = sheet.provenance.iter().rev();
    let how = entries
        .filter(|entry| is_holder(&entry.party))
        .find_map(|entry| entry.how.as_ref());
    how.map_or_else(String::new, |how| {
        here.term(Vocabulary::Transfers, how.value.as_str())
    })
}
