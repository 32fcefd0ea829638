//! The sheets of a design by size: the pairs that agree in size and with no third sheet.
//!
//! In: the certain sizes of whole sheets, in mm. Out: pairs. Method: sizes are sorted into square cells as wide as
//! the tolerance, so that only neighbouring cells are compared.

use std::collections::BTreeMap;

use crate::index::SheetAt;
use crate::tolerance::{SHEET_ALIKE_MM, sheets_agree};
use keyblock_model::certainty::{Certainty, Statement, Statements};
use keyblock_model::impression::Impression;
use keyblock_model::size::Size;

/// The sheets of a design by size.
pub(super) struct SizeIndex {
    by_cell: BTreeMap<(i64, i64), Vec<(SheetAt, Size)>>,
}

impl SizeIndex {
    /// Gathers the first size of each record; a sheet's records come one after the other.
    pub(super) fn of<'a>(records: impl Iterator<Item = (SheetAt, &'a Impression)>) -> SizeIndex {
        let mut by_cell: BTreeMap<(i64, i64), Vec<(SheetAt, Size)>> = BTreeMap::new();
        for (sheet, impression) in records {
            // What shows in a mount says nothing of the sheet behind it.
            if let Some(size) =
                own(&impression.sheet.size).filter(|_| !impression.sheet.measuring.sight)
            {
                let measured = by_cell.entry(cell(&size.is.value)).or_default();
                measured.push((sheet, size.is.value));
            }
        }
        SizeIndex { by_cell }
    }

    /// The only other sheet whose size agrees with this one's; `None` where there is none, or more than one.
    fn partner(&self, sheet: SheetAt, size: &Size) -> Option<SheetAt> {
        let (row, column) = cell(size);
        let mut partner = None;
        for near in (row - 1..=row + 1).flat_map(|r| (column - 1..=column + 1).map(move |c| (r, c)))
        {
            for (other, measured) in self.by_cell.get(&near).into_iter().flatten() {
                if *other == sheet || !sheets_agree(size, measured) {
                    continue;
                }
                if partner.is_some_and(|known| known != *other) {
                    return None;
                }
                partner = Some(*other);
            }
        }
        partner
    }

    /// The pairs of sheets that agree in size, and with no third sheet.
    pub(super) fn pairs(&self) -> impl Iterator<Item = (SheetAt, SheetAt)> {
        self.by_cell.values().flatten().filter_map(|(sheet, size)| {
            let other = self.partner(*sheet, size)?;
            Some((*sheet.min(&other), *sheet.max(&other)))
        })
    }

    pub(super) fn are_alone(&self, sheets: [SheetAt; 2], sizes: [&Size; 2]) -> bool {
        self.partner(sheets[0], sizes[0]) == Some(sheets[1])
            && self.partner(sheets[1], sizes[1]) == Some(sheets[0])
    }
}

/// Sizes that agree lie in one cell or in two that touch.
fn cell(size: &Size) -> (i64, i64) {
    #[allow(
        clippy::cast_possible_truncation,
        reason = "sizes are at most 20,000 mm"
    )]
    let step = |mm: f64| (mm / SHEET_ALIKE_MM).floor() as i64;
    (step(size.height_mm()), step(size.width_mm()))
}

pub(super) fn own(sizes: &Statements<Size>) -> Option<&Statement<Size>> {
    let own = sizes.0.first()?;
    (own.claim.certainty() == Certainty::Certain).then_some(own)
}
