//! Numbers and keys of the catalogue itself: "14", "14 iii", "14.7".

use super::index::Index;
use crate::resolve::asked::Asked;
use crate::resolve::part::After;
use crate::resolve::reading::{Rank, Reading, Why};
use keyblock_model::certainty::Certainty;

/// A number or key of the catalogue, with what follows it.
pub(super) fn by_number(index: &Index, asked: &Asked, readings: &mut Vec<Reading>) {
    let rank = if asked.names_catalogue {
        Rank::CitedNumber
    } else {
        Rank::Number
    };
    for end in 1..=asked.number.len() {
        let (number, rest) = asked.number.split_at(end);
        let key = number.join(".");
        let numbered = index.lookup.numbers.get(&key).into_iter().flatten();
        // A design that had another number in the edition that is cited is not meant by its present one.
        let had_other = |design: &usize| {
            let mut formerly = index.references.designs[*design].formerly.iter();
            formerly.any(|former| Some(&former.edition) == asked.edition.as_ref())
        };
        for design in numbered.filter(|design| !had_other(design)) {
            let after = After::Number;
            index.parts(*design, rest, after, asked, &Why::Number, rank, readings);
        }
        let formerly = index.lookup.former_numbers.get(&key).into_iter().flatten();
        for (design, edition) in formerly {
            let is_cited = asked.edition.as_ref().is_none_or(|cited| cited == edition);
            if !is_cited {
                continue;
            }
            let from = readings.len();
            let why = Why::Edition(edition.clone());
            index.parts(*design, rest, After::Number, asked, &why, rank, readings);
            if asked.edition.is_none() {
                for reading in &mut readings[from..] {
                    reading.rank = Rank::FormerNumeral;
                    reading.certainty = Certainty::Possible;
                }
            }
        }
        let keyed = index.lookup.keys.get(&key).into_iter().flatten();
        for keyed in keyed.filter(|keyed| !had_other(&keyed.design)) {
            let why = keyed.why();
            index.parts(
                keyed.design,
                rest,
                After::Number,
                asked,
                &why,
                rank,
                readings,
            );
        }
    }
}
