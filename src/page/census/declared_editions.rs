//! Declared editions and numbers printed, with the known impressions and the numbers recorded on them: one line for each
//! edition, on the census of the whole catalogue (`docs/definitions.md`, "Declared editions").

use super::census_figures;
use super::firmness;
use super::sheet_records;
use crate::model::certainty::{Basis, Certainty, Claim, Statement};
use crate::page::lists::table::{Column, Holds, Row, Table};
use crate::page::phrases::claims;
use crate::page::setting::address::Address;
use crate::page::setting::book::Here;
use crate::page::setting::html::CleanHtml;

/// One edition; every figure links to its sheets.
pub(super) struct EditionRow {
    design: CleanHtml,
    printing: CleanHtml,
    /// The declared size, "100?" where that is uncertain; empty where none is declared.
    declared: String,
    /// How many were printed, "34?" where that is uncertain; empty where it is not recorded.
    printed: CleanHtml,
    known: CleanHtml,
    met: CleanHtml,
    above: CleanHtml,
    repeated: CleanHtml,
}

impl EditionRow {
    /// Whether a size is only reported, or given as probable or possible.
    pub fn has_uncertain_size(&self) -> bool {
        self.declared.ends_with('?') || self.printed.as_str().contains('?')
    }
}

/// The editions as a table; `None` for none.
pub(super) fn table(here: &Here<'_>, editions: Vec<EditionRow>) -> Option<Table> {
    let columns = [
        (Holds::Name, "design"),
        (Holds::Words, "printing"),
        (Holds::Figure, "declared"),
        (Holds::Figure, "numbers-printed"),
        (Holds::Figure, "known"),
        (Holds::Figure, "numbers-met"),
        (Holds::Figure, "numbers-above"),
        (Holds::Figure, "numbers-repeated"),
    ];
    let columns = columns.map(|(holds, head)| Column::new(holds, here.words().word(head)));
    let rows = editions.into_iter().map(|edition| {
        Row::new(vec![
            edition.design,
            edition.printing,
            CleanHtml::text(&edition.declared),
            edition.printed,
            edition.known,
            edition.met,
            edition.above,
            edition.repeated,
        ])
    });
    Table::new(&columns, &rows.collect::<Vec<_>>())
}

/// Whether a size is only reported, or given as probable or possible.
pub(super) fn is_uncertain(claim: &Claim) -> bool {
    let basis = claim.basis.as_ref().map(|basis| basis.value);
    claim.certainty() != Certainty::Certain || basis == Some(Basis::Report)
}

/// "100", "100?" of an uncertain size; empty for no statement.
fn figure(size: Option<&Statement<u32>>) -> String {
    let mark = |claim| if is_uncertain(claim) { "?" } else { "" };
    size.map_or_else(String::new, |size| {
        format!("{}{}", size.is.value, mark(&size.claim))
    })
}

/// "34", with a note below it where no source is recorded.
fn printed_figure(here: &Here<'_>, printed: Option<&Statement<u32>>) -> CleanHtml {
    let note = match printed {
        Some(size) if claims::ground(here, &size.claim).is_empty() => {
            here.words().word("source-not-given")
        }
        _ => "",
    };
    CleanHtml::text(&figure(printed)).and(&census_figures::below(&CleanHtml::text(note)))
}

/// Every edition that is declared or of which the number printed is recorded, with the numbers recorded on its
/// impressions.
pub(super) fn editions(here: &Here<'_>) -> Vec<EditionRow> {
    let mut rows = Vec::new();
    for design in here.designs_in_order() {
        let Some(study) = here.book.studies.designs.get(&design.key) else {
            continue;
        };
        for edition in &study.editions {
            if edition.declared.is_none() && edition.printed.is_none() {
                continue;
            }
            let to = format!(
                "{}#edition-{}",
                here.href(&Address::DesignCensus(design.key.clone())),
                edition.printing
            );
            let name = CleanHtml::text(&here.printing_name(design, &edition.printing));
            let printings = &study.census.by.printing;
            let known =
                census_figures::total(here, design, "printing", printings, Some(&edition.printing));
            let row = printings
                .iter()
                .find(|row| row.key.as_ref() == Some(&edition.printing));
            let not_firm = row.map_or_else(String::new, |row| {
                let sheets: Vec<_> = row.allowing.iter().collect();
                let doubtful = sheet_records::not_accepted(here, &sheets).plain();
                let not_firm = firmness::in_words(here, study, &row.allowing);
                let parts = [not_firm, doubtful].into_iter();
                let parts: Vec<String> = parts.filter(|part| !part.is_empty()).collect();
                parts.join("; ")
            });
            let printing = design.printing(&edition.printing);
            let number = |n: usize| match n {
                _ if !edition.is_numbered() => CleanHtml::empty(),
                0 => CleanHtml::text("0"),
                n => CleanHtml::link(&to, &CleanHtml::text(&n.to_string())),
            };
            // A zero is left out in columns where most editions have it.
            let some = |n: usize| match n {
                0 => CleanHtml::empty(),
                n => number(n),
            };
            rows.push(EditionRow {
                design: here.design(&design.key),
                printing: CleanHtml::link(&to, &name),
                declared: figure(printing.and_then(|p| p.edition.0.first())),
                printed: printed_figure(here, printing.and_then(|p| p.printed.0.first())),
                known: if known.is_empty() {
                    CleanHtml::text("0")
                } else {
                    known.and(&census_figures::below(&CleanHtml::text(&not_firm)))
                },
                met: number(edition.within().count()),
                above: some(edition.above().count()),
                repeated: some(edition.repeated.len()),
            });
        }
    }
    rows
}
