//! What documents tell of the states and printings that a sheet may be of, as the last kind of evidence.

use std::collections::BTreeSet;

use serde::Serialize;

use crate::model::document::EvidenceTarget;
use crate::model::impression::Impression;
use crate::model::key::ImpressionKey;
use crate::page::phrases::document_names::statement_line;
use crate::page::setting::book::Here;
use crate::page::setting::html::CleanHtml;
use crate::study::tellings::DocumentStatement;

/// A statement of a document, in the evidence on a sheet.
#[derive(Serialize)]
pub(super) struct DocumentLine {
    /// "Document"; another word where it tells of this very sheet too.
    bearing: String,
    text: CleanHtml,
    #[serde(skip)]
    pub(super) is_on_sheet: bool,
    #[serde(skip)]
    pub(super) statement: DocumentStatement,
}

/// What documents tell of a state or a printing; what they tell of the sheet too comes first.
pub(super) fn lines(
    here: &Here<'_>,
    impression: &Impression,
    of: &EvidenceTarget,
) -> Vec<DocumentLine> {
    let records = records(here, impression);
    let statements = here.book.studies.tellings.about(of).iter();
    let mut lines: Vec<DocumentLine> = statements
        .filter_map(|statement| {
            let (_, telling) = statement.read(here.public())?;
            let is_on_sheet = telling.of.iter().any(|of| match &of.value {
                EvidenceTarget::Impression(key) => records.contains(key),
                _ => false,
            });
            let word = if is_on_sheet {
                "evidence-document-for"
            } else {
                "evidence-document"
            };
            Some(DocumentLine {
                bearing: here.words().word(word).to_owned(),
                text: statement_line(here, statement)?,
                is_on_sheet,
                statement: statement.clone(),
            })
        })
        .collect();
    lines.sort_by_key(|line| !line.is_on_sheet);
    lines
}

/// What documents tell of a sheet, without the statements that stand in its evidence already.
pub(super) fn of_sheet(
    here: &Here<'_>,
    records: &[&Impression],
    shown: &[DocumentStatement],
) -> Vec<CleanHtml> {
    let mut lines = Vec::new();
    let mut told: Vec<&DocumentStatement> = shown.iter().collect();
    for record in records {
        let of = EvidenceTarget::Impression(record.key.clone());
        for statement in here.book.studies.tellings.about(&of) {
            if !told.contains(&statement) {
                told.push(statement);
                lines.extend(statement_line(here, statement));
            }
        }
    }
    lines
}

/// The records of the sheet.
fn records(here: &Here<'_>, impression: &Impression) -> BTreeSet<ImpressionKey> {
    let joined = here.joined();
    let others = joined.others_on(&impression.key);
    std::iter::once(&impression.key)
        .chain(others)
        .cloned()
        .collect()
}
