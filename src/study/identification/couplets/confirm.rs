//! The points that would confirm the end of a key.

use std::collections::BTreeSet;

use super::deciding::could_be_against;
use super::key::{Couplet, Goal};
use crate::identification::table::DiagnosticTable;
use crate::index::{CoupletAt, Indexed, PointAt};

/// The most points that an end names to confirm it.
const MOST_CONFIRMING: usize = 3;

/// Names at each end the deciding points that would confirm it: those at which something is recorded of its
/// candidates and that no way to it has asked.
pub(super) fn confirm(
    deciding: &[PointAt],
    table: &DiagnosticTable,
    couplets: &mut Indexed<CoupletAt, Couplet>,
) {
    // Leads go forward only, so every way to a couplet is known when it is reached.
    let mut asked: Indexed<CoupletAt, BTreeSet<PointAt>> =
        Indexed::filled(couplets, BTreeSet::new());
    for at in couplets.indexes() {
        let couplet = &mut couplets[at];
        let mut by_here = asked[at].clone();
        by_here.insert(couplet.point);
        for lead in &mut couplet.leads {
            if let Goal::Couplet(next) = lead.goal {
                asked[next].extend(by_here.iter().copied());
                continue;
            }
            let is_recorded = |point: &PointAt| {
                let column = &table.points[*point];
                lead.candidates.iter().any(|c| could_be_against(column, *c))
            };
            let unasked = deciding.iter().filter(|point| !by_here.contains(point));
            lead.confirm = unasked
                .copied()
                .filter(is_recorded)
                .take(MOST_CONFIRMING)
                .collect();
        }
    }
}
