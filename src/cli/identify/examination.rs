//! The examination of one sheet: the observations, and the conclusions that the study draws from them.

use crate::model::design::Design;
use crate::study::evidence::{Evidence, Overturning, overturning};
use crate::study::identify::{Identified, Observed, identify};
use crate::study::next_point::{NextPoint, next_points};
use crate::study::separate::Separability;
use crate::study::table::DiagnosticTable;

/// A design, the observations on a sheet of it, and the conclusions.
pub(super) struct Examination<'a> {
    pub(super) design: &'a Design,
    pub(super) table: &'a DiagnosticTable,
    pub(super) separability: &'a Separability,
    /// What was seen, in the order of the arguments or answers.
    pub(super) observed: &'a [Observed],
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
        observed: &'a [Observed],
    ) -> Examination<'a> {
        let identified = identify(table, observed);
        Examination {
            design,
            table,
            separability,
            observed,
            next: next_points(table, &identified, observed),
            identified,
        }
    }

    /// The evidence for each state and printing.
    pub(super) fn evidence(&self) -> Evidence {
        Evidence::of(self.table, self.observed, &self.identified)
    }

    /// The points that could overturn the best candidate.
    pub(super) fn overturning(&self, evidence: &Evidence) -> Vec<Overturning> {
        overturning(self.table, self.observed, evidence, &self.next)
    }
}
