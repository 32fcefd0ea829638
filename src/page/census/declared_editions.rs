//! Editions declared or really printed against the numbers met, one line for each edition, on the census of the whole
//! catalogue (`docs/definitions.md`, "Declared editions").

use serde::Serialize;

use super::census_figures;
use crate::page::setting::address::Address;
use crate::page::setting::book::Here;
use crate::page::setting::html::CleanHtml;

/// One edition; every figure links to its sheets.
#[derive(Serialize)]
pub(super) struct EditionRow {
    design: CleanHtml,
    printing: CleanHtml,
    /// The declared size; empty where none is declared.
    declared: String,
    /// How many were really printed; empty where that is not recorded.
    printed: String,
    known: CleanHtml,
    met: CleanHtml,
    missing: CleanHtml,
    above: CleanHtml,
    repeated: CleanHtml,
}

impl EditionRow {
    /// Whether the number really printed is recorded.
    pub fn has_printed(&self) -> bool {
        !self.printed.is_empty()
    }

    /// Whether some number exceeds the declared size.
    pub fn has_numbers_above(&self) -> bool {
        !self.above.is_empty()
    }
}

/// Every edition that is declared or of which the number printed is recorded, against the numbers met.
pub(super) fn editions(here: &Here<'_>) -> Vec<EditionRow> {
    let number = |n: Option<u32>| n.map_or_else(String::new, |n| n.to_string());
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
            let figure = |n: usize| match n {
                _ if !edition.is_numbered() => CleanHtml::empty(),
                0 => CleanHtml::text("0"),
                n => CleanHtml::link(&to, &CleanHtml::text(&n.to_string())),
            };
            // A zero is left out in columns where most editions have it.
            let some = |n: usize| match n {
                0 => CleanHtml::empty(),
                n => figure(n),
            };
            rows.push(EditionRow {
                design: here.design(&design.key),
                printing: CleanHtml::link(&to, &name),
                declared: number(edition.declared),
                printed: number(edition.printed),
                known: if known.is_empty() {
                    CleanHtml::text("0")
                } else {
                    known
                },
                met: figure(edition.within().count()),
                missing: if edition.declared.is_some() {
                    figure(edition.missing().len())
                } else {
                    CleanHtml::empty()
                },
                above: some(edition.above().count()),
                repeated: some(edition.repeated.len()),
            });
        }
    }
    rows
}
