//! The order in which couplets are printed.

use super::key::{Couplet, Goal};
use crate::index::{CoupletAt, Indexed};

/// The couplets numbered so that every lead goes on to a later one, and a first lead to the next one where
/// possible: the reverse of the order in which a depth-first walk, leads last to first, leaves them.
pub(super) fn in_reading_order(grown: Indexed<CoupletAt, Couplet>) -> Indexed<CoupletAt, Couplet> {
    let mut is_met = Indexed::filled(&grown, false);
    let mut done: Vec<CoupletAt> = Vec::new();
    // Each couplet with how many of its leads, the last first, are still to be walked.
    let mut walked: Vec<(CoupletAt, usize)> = Vec::new();
    if let Some((head, couplet)) = grown.entries().next() {
        is_met[head] = true;
        walked.push((head, couplet.leads.len()));
    }
    while let Some((at, left)) = walked.pop() {
        let Some(lead) = left.checked_sub(1) else {
            done.push(at);
            continue;
        };
        walked.push((at, lead));
        if let Goal::Couplet(next) = grown[at].leads[lead].goal
            && !is_met[next]
        {
            is_met[next] = true;
            walked.push((next, grown[next].leads.len()));
        }
    }
    debug_assert_eq!(done.len(), grown.len(), "some lead goes to every couplet");
    done.reverse();
    let mut renumbered = Indexed::filled(&grown, CoupletAt::new(0));
    for (new, old) in done.iter().enumerate() {
        renumbered[*old] = CoupletAt::new(new);
    }
    let mut numbered: Vec<(CoupletAt, Couplet)> = renumbered.iter().copied().zip(grown).collect();
    for (_, couplet) in &mut numbered {
        for lead in &mut couplet.leads {
            if let Goal::Couplet(next) = &mut lead.goal {
                *next = renumbered[*next];
            }
        }
    }
    numbered.sort_by_key(|(at, _)| *at);
    numbered.into_iter().map(|(_, couplet)| couplet).collect()
}
