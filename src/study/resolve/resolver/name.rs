//! Titles and names, whole or begun.

use std::ops::Bound;

use super::index::Index;
use crate::resolve::asked::Asked;
use crate::resolve::part::After;
use crate::resolve::reading::{Meant, Rank, Reading, Why};
use keyblock_model::certainty::Certainty;

/// The most titles and names that may begin with a text: with more, the text is no reference.
const MOST_BEGINNINGS: usize = 20;
/// A title or name; a title with a state or printing behind it; the key of a state.
pub(super) fn by_name(index: &Index, asked: &Asked, readings: &mut Vec<Reading>) {
    for end in 1..=asked.all.len() {
        let (name, rest) = asked.all.split_at(end);
        for named in index
            .lookup
            .names
            .get(&name.join("."))
            .into_iter()
            .flatten()
        {
            match named.meant {
                Meant::Design(design) => {
                    let (why, rank) = (&named.why, named.rank);
                    index.parts(design, rest, After::Title, asked, why, rank, readings);
                }
                meant if rest.is_empty() => {
                    readings.push(Reading::certain(meant, named.rank, named.why.clone()));
                }
                _ => {}
            }
        }
    }
    let states = index.lookup.states.get(&asked.all.join("."));
    for (design, state) in states.into_iter().flatten() {
        let meant = Meant::State(*design, *state);
        let reading = Reading::certain(meant, Rank::StateKey, Why::Key);
        readings.push(reading.at_most(Certainty::Probable));
    }
}

/// The titles and names that begin so and go on with a further word.
pub(super) fn by_beginning(index: &Index, asked: &Asked, readings: &mut Vec<Reading>) {
    let beginning = format!("{}.", asked.all.join("."));
    let from = (Bound::Included(beginning.as_str()), Bound::Unbounded);
    let names = index.lookup.names.range::<str, _>(from);
    let names = names.take_while(|(name, _)| name.starts_with(&beginning));
    let mut found: Vec<Meant> = names
        .flat_map(|(_, named)| named)
        .map(|n| n.meant)
        .collect();
    found.sort_unstable();
    found.dedup();
    let certainty = match found.len() {
        1 => Certainty::Probable,
        n if n > MOST_BEGINNINGS => return,
        _ => Certainty::Possible,
    };
    readings.extend(
        found.into_iter().map(|meant| {
            Reading::certain(meant, Rank::Beginning, Why::Beginning).at_most(certainty)
        }),
    );
}
