//! Sizes: whether two records can measure one sheet, and its one image or platemark.
//!
//! The tolerances are [`tolerance`](crate::study::tolerance)'s. No length excludes alone: a sheet that
//! measured larger later, in height and in width, is another; in one of the two, somebody may have erred,
//! or measured the first in its frame.

use std::collections::BTreeMap;

use super::reason::{Bearing, Evidence, Part, Reason};
use super::record::Record;
use super::time::{days, inspected};
use crate::model::certainty::{Certainty, Statement, Statements};
use crate::model::edtf::Day;
use crate::model::impression::Impression;
use crate::model::size::Size;
use crate::study::tolerance::{Apart, SHEET_ALIKE_MM, grown, sheets_agree, sizes_apart};

/// The sheets of a design by what they measure, to tell which measures like no third.
pub(super) struct Alike {
    by_cell: BTreeMap<(i64, i64), Vec<(usize, Size)>>,
}

impl Alike {
    /// Gathers the first size of each record; a sheet's records come one after the other.
    pub(super) fn of<'a>(records: impl Iterator<Item = (usize, &'a Impression)>) -> Alike {
        let mut by_cell: BTreeMap<(i64, i64), Vec<(usize, Size)>> = BTreeMap::new();
        for (sheet, impression) in records {
            if let Some(size) = own(&impression.sheet.size) {
                let measured = by_cell.entry(cell(&size.is.value)).or_default();
                measured.push((sheet, size.is.value));
            }
        }
        Alike { by_cell }
    }

    /// The only other sheet that measures as this one does; `None` where there is none, or more.
    fn partner(&self, sheet: usize, size: &Size) -> Option<usize> {
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

    /// The pairs of sheets that measure alike as no third does.
    pub(super) fn pairs(&self) -> impl Iterator<Item = (usize, usize)> {
        self.by_cell.values().flatten().filter_map(|(sheet, size)| {
            let other = self.partner(*sheet, size)?;
            Some((*sheet.min(&other), *sheet.max(&other)))
        })
    }

    fn are_alone(&self, sheets: [usize; 2], sizes: [&Size; 2]) -> bool {
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

fn own(sizes: &Statements<Size>) -> Option<&Statement<Size>> {
    let own = sizes.0.first()?;
    (own.claim.certainty() == Certainty::Certain).then_some(own)
}

/// Compares what the two records measure.
pub(super) fn compare(
    alike: &Alike,
    sheets: [usize; 2],
    one: &Record<'_>,
    other: &Record<'_>,
    reasons: &mut Vec<Reason>,
) {
    let (a, b) = (&one.impression.sheet, &other.impression.sheet);
    reasons.extend(whole_sheets(alike, sheets, one, other));
    for (part, a, b) in [
        (Part::Image, &a.image, &b.image),
        (Part::Platemark, &a.platemark, &b.platemark),
    ] {
        if let (Some(a), Some(b)) = (own(a), own(b)) {
            let sizes = [a.is.value, b.is.value];
            let (bearing, evidence) = match sizes_apart(&sizes[0], &sizes[1]) {
                Apart::Agree => (Bearing::Fits, Evidence::MatrixAlike(part, sizes)),
                Apart::Near => (Bearing::Weighs, Evidence::MatrixNear(part, sizes)),
                Apart::Far => (Bearing::Contradicts, Evidence::MatrixFar(part, sizes)),
            };
            let places = [a.is.place, b.is.place];
            reasons.push(Reason::new(bearing, evidence, places));
        }
    }
}

/// A sheet cannot have grown; where it is not known which was measured first, either may have been.
fn whole_sheets(
    alike: &Alike,
    sheets: [usize; 2],
    one: &Record<'_>,
    other: &Record<'_>,
) -> Option<Reason> {
    let (a, b) = (
        own(&one.impression.sheet.size)?,
        own(&other.impression.sheet.size)?,
    );
    let sizes = [a.is.value, b.is.value];
    let places = [a.is.place, b.is.place];
    let reason = |bearing, evidence| Some(Reason::new(bearing, evidence, places));
    if sheets_agree(&sizes[0], &sizes[1]) {
        let alone = alike.are_alone(sheets, [&sizes[0], &sizes[1]]);
        let bearing = if alone {
            Bearing::Speaks
        } else {
            Bearing::Fits
        };
        return reason(bearing, Evidence::SheetAlike { sizes, alone });
    }
    let when = [measured(one.impression, a), measured(other.impression, b)];
    let lengths = match when {
        [Some((_, first)), Some((then, _))] if first < then => grown(&sizes[0], &sizes[1]),
        [Some((then, _)), Some((_, first))] if first < then => grown(&sizes[1], &sizes[0]),
        _ => grown(&sizes[0], &sizes[1]).min(grown(&sizes[1], &sizes[0])),
    };
    if lengths == 0 {
        return None;
    }
    let both_ways = lengths > 1;
    let bearing = if both_ways {
        Bearing::Excludes
    } else {
        Bearing::Contradicts
    };
    reason(bearing, Evidence::Grown { sizes, both_ways })
}

/// When a size was taken: as it says itself, or when the sheet was last looked at.
fn measured(impression: &Impression, size: &Statement<Size>) -> Option<(Day, Day)> {
    let said = size.claim.date.as_ref().and_then(|date| days(&date.value));
    said.or_else(|| inspected(impression))
}
