//! Which sheets of a design share a tie, and how many: a rare tie is distinctive, a common one is not.
//!
//! Only records that share a distinctive tie are compared, so hundreds of sheets of one design need not be
//! compared each with each.

use std::collections::BTreeMap;

use super::reason::Tie;
use crate::index::SheetAt;

/// Which sheets of a design share a tie.
pub(super) struct TieIndex {
    by_tie: BTreeMap<Tie, Vec<SheetAt>>,
}

/// The most sheets that may share a number, an accession, a lot or an exhibit. Where more do, the records
/// are faulty, and other rules report that.
const FEW: usize = 6;

/// The most sheets of one design that may share an owner, a sale or a page. Where more do, sharing it does
/// not distinguish sheets.
pub(super) const RARE: usize = 3;

impl TieIndex {
    /// Gathers the ties of all sheets. Sheets come in rising order.
    pub(super) fn of<'a>(ties: impl Iterator<Item = (SheetAt, &'a Tie)>) -> TieIndex {
        let mut by_tie: BTreeMap<Tie, Vec<SheetAt>> = BTreeMap::new();
        for (sheet, tie) in ties {
            let sheets = by_tie.entry(tie.clone()).or_default();
            if sheets.last() != Some(&sheet) {
                sheets.push(sheet);
            }
            // A sheet numbered by a holder may be the one that a record without a number describes.
            if let Tie::Accession { holder, .. } = tie {
                let sheets = by_tie.entry(Tie::Holder(holder.clone())).or_default();
                if sheets.last() != Some(&sheet) {
                    sheets.push(sheet);
                }
            }
        }
        TieIndex { by_tie }
    }

    /// How many sheets share a tie; 0 where only a record without its private fields has it.
    pub(super) fn count(&self, tie: &Tie) -> usize {
        self.by_tie.get(tie).map_or(0, Vec::len)
    }

    /// The pairs of sheets that share a distinctive tie.
    pub(super) fn pairs(&self) -> impl Iterator<Item = (SheetAt, SheetAt)> {
        let telling = self.by_tie.iter().filter(|(tie, sheets)| {
            let most = match tie {
                Tie::Number { .. }
                | Tie::Accession { .. }
                | Tie::Lot { .. }
                | Tie::Exhibit { .. } => FEW,
                _ => RARE,
            };
            (2..=most).contains(&sheets.len())
        });
        telling.flat_map(|(_, sheets)| {
            let before_others = sheets.iter().zip(1..);
            before_others
                .flat_map(|(one, next)| sheets.iter().skip(next).map(|other| (*one, *other)))
        })
    }
}
