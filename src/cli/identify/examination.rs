//! The examination of one sheet: the observations, and the conclusions that the study draws from them.

use crate::model::design::Design;
use crate::study::identify::{Identified, Observed, identify};
use crate::study::index::PointAt;
use crate::study::next_point::{NextPoint, next_points};
use crate::study::separate::Separability;
use crate::study::table::DiagnosticTable;

/// What was seen on a sheet.
#[derive(Debug, Default)]
pub(super) struct SheetObservations {
    /// What was seen, in the order of the arguments or answers.
    pub(super) observed: Vec<Observed>,
    /// The points that cannot be seen.
    pub(super) not_visible: Vec<PointAt>,
}

/// A design, the observations on a sheet of it, and the conclusions.
pub(super) struct Examination<'a> {
    pub(super) design: &'a Design,
    pub(super) table: &'a DiagnosticTable,
    pub(super) separability: &'a Separability,
    /// What was seen, in the order of the arguments or answers.
    pub(super) observed: &'a [Observed],
    /// The points that cannot be seen on the sheet.
    pub(super) not_visible: &'a [PointAt],
    pub(super) identified: Identified,
    /// What to look at next, the most informative first.
    pub(super) next: Vec<NextPoint>,
}

impl<'a> Examination<'a> {
    /// Identifies the sheet.
    pub(super) fn of(
        design: &'a Design,
        table: &'a DiagnosticTable,
        separability: &'a Separability,
        observations: &'a SheetObservations,
    ) -> Examination<'a> {
        let SheetObservations {
            observed,
            not_visible,
        } = observations;
        let identified = identify(table, observed);
        Examination {
            design,
            table,
            separability,
            observed,
            not_visible,
            next: next_points(table, &identified, observed),
            identified,
        }
    }
}
