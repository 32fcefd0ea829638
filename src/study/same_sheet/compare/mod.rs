//! Compares two records: every reason for and against their being one sheet, one file for each
//! subject.
//!
//! | file | subject |
//! |---|---|
//! | `shared` | facts that both state word for word; the trace of a lost sheet |
//! | `sizes` | sheet, image and platemark |
//! | `observed` | state, printing, kind, paper, and observations at points |
//! | `removed` | numbers and marks that the later inspection did not find |
//! | `exclusions` | two numbers, two lots, two places at one time, a loss |
//! | `custody` | two owners or keepers at one time |

mod custody;
mod exclusions;
mod observed;
mod removed;
mod shared;
mod sizes;

use crate::index::SheetAt;
use crate::same_sheet::facts::CatalogueFacts;
use crate::same_sheet::reason::Reason;
use crate::same_sheet::record::ComparedRecord;
use crate::same_sheet::size_index::SizeIndex;
use crate::same_sheet::tie_index::TieIndex;
use keyblock_model::design::Design;

/// Gathers every reason, for and against. `sheets` are those of the two records.
pub(super) fn compare(
    facts: &CatalogueFacts<'_>,
    design: &Design,
    tie_index: &TieIndex,
    size_index: &SizeIndex,
    sheets: [SheetAt; 2],
    [one, other]: [&ComparedRecord<'_>; 2],
) -> Vec<Reason> {
    let mut reasons = Vec::new();
    shared::compare(facts, tie_index, one, other, &mut reasons);
    sizes::compare(size_index, sheets, one, other, &mut reasons);
    observed::compare(design, one, other, &mut reasons);
    removed::compare(facts, one, other, &mut reasons);
    exclusions::compare(facts, one, other, &mut reasons);
    custody::compare(facts, one, other, &mut reasons);
    reasons
}
