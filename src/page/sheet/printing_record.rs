//! What printings record of paper, inks, numbering and blocks, set beside what the sheet has, in words
//! (`docs/definitions.md`, "What a sheet's page adds").

use super::evidence_line::{LineView, line_weight};
use crate::model::design::Design;
use crate::model::impression::{BlockPrinted, Impression};
use crate::model::key::Key;
use crate::model::point::EvidenceKind;
use crate::model::printing::Printing;
use crate::model::vocabulary::List;
use crate::page::phrases::dates;
use crate::page::phrases::enumeration;
use crate::page::phrases::evidence_words;
use crate::page::phrases::matrices::matrix_name;
use crate::page::setting::book::Here;
use crate::page::setting::html::CleanHtml;
use crate::study::printing_record::{RecordedEvidence, RecordedKind};

/// The lines of the evidence for or against one printing.
pub(super) fn lines(
    here: &Here<'_>,
    design: &Design,
    impression: &Impression,
    found: &[RecordedEvidence],
    printing: &Key,
) -> Vec<LineView> {
    let Some(record) = design.printing(printing) else {
        return Vec::new();
    };
    let of_printing = found
        .iter()
        .filter(|evidence| evidence.printing == *printing);
    of_printing
        .map(|evidence| line(here, design, impression, record, evidence))
        .collect()
}

fn line(
    here: &Here<'_>,
    design: &Design,
    impression: &Impression,
    printing: &Printing,
    evidence: &RecordedEvidence,
) -> LineView {
    let words = here.words();
    let (kind, ask) = match evidence.kind {
        RecordedKind::PaperDate => (EvidenceKind::Paper, "evidence-of-paper-date"),
        RecordedKind::Blocks => (EvidenceKind::Blocks, "blocks-printed"),
        RecordedKind::Paper => (EvidenceKind::Paper, "paper"),
        RecordedKind::Inks => (EvidenceKind::Inking, "inks"),
        RecordedKind::Numbering => (EvidenceKind::Mark, "number"),
    };
    let paper = |key: &Key| here.term(List::Papers, key.as_str());
    let sheet = &impression.sheet;
    let (seen, recorded) = match evidence.kind {
        RecordedKind::PaperDate => (
            sheet
                .paper_date
                .as_ref()
                .map(|d| dates::once(&d.value, words)),
            printing.date.own().map(|d| dates::once(d, words)),
        ),
        RecordedKind::Blocks => (
            Some(printed_on(here, design, impression)),
            Some(all_of(
                here,
                printing
                    .matrices
                    .iter()
                    .map(|m| matrix_name(here, design, &m.value)),
            )),
        ),
        RecordedKind::Paper => {
            let papers: Vec<String> = printing.paper.iter().map(|p| paper(&p.value)).collect();
            let recorded = enumeration::either_text(words, &papers);
            (
                sheet.paper.as_ref().map(|p| paper(&p.value)),
                Some(recorded),
            )
        }
        RecordedKind::Inks => (
            Some(all_of(here, sheet.inks.iter().map(|i| i.value.clone()))),
            Some(all_of(here, printing.inks.iter().map(|i| i.value.clone()))),
        ),
        RecordedKind::Numbering => {
            let numbered = if printing.numbered == Some(true) {
                "numbered"
            } else {
                "not-numbered"
            };
            let number = impression.numbering.as_ref().map(|n| n.value.clone());
            (number, Some(words.word(numbered).to_owned()))
        }
    };
    LineView {
        point: None,
        bearing: evidence.bearing,
        bearing_word: evidence_words::bearing(words, evidence.bearing),
        kind: evidence_words::kind(words, kind),
        weight: line_weight(here, evidence.bearing, false),
        ask: CleanHtml::text(words.word(ask)).then(":"),
        seen: seen.unwrap_or_default(),
        recorded: recorded.unwrap_or_default(),
        detail: None,
    }
}

/// The blocks found printed on the sheet.
fn printed_on(here: &Here<'_>, design: &Design, impression: &Impression) -> String {
    let printed = impression.blocks.iter();
    let printed = printed.filter(|(_, printed)| printed.value == BlockPrinted::Printed);
    all_of(
        here,
        printed.map(|(matrix, _)| matrix_name(here, design, &matrix.value)),
    )
}

fn all_of(here: &Here<'_>, names: impl Iterator<Item = String>) -> String {
    let names: Vec<CleanHtml> = names.map(|name| CleanHtml::text(&name)).collect();
    enumeration::together(here, &names).plain()
}
