//! Numbers with something behind them that is not recorded: "14 ix" of a design with four states.

use super::earlier::row;
use super::index::Index;
use crate::numerals::from_roman;
use crate::resolve::asked::Asked;
use crate::resolve::reading::{Meant, Rank, Reading, Why};
use keyblock_model::certainty::Certainty;

/// A number of ours or of an earlier catalogue with something behind it that is not recorded.
pub(super) fn not_there(index: &Index, asked: &Asked, readings: &mut Vec<Reading>) {
    let possible =
        |meant, why| Reading::certain(meant, Rank::NotThere, why).at_most(Certainty::Possible);
    for end in (1..asked.number.len()).rev() {
        let (number, rest) = asked.number.split_at(end);
        let words = &index.reader.words().state;
        let is_numeral = from_roman(&rest[0]).is_some() || words.contains(&rest[0]);
        let designs = index.lookup.numbers.get(&number.join("."));
        if let Some(designs) = designs.filter(|_| asked.names_catalogue || is_numeral) {
            for design in designs {
                let why = Why::NotThere(rest.join(" "));
                readings.push(possible(Meant::Design(*design), why));
            }
            return;
        }
    }
    for end in (1..asked.all.len()).rev() {
        let (name, number) = asked.all.split_at(end);
        for work in index
            .lookup
            .works
            .get(&name.join("."))
            .into_iter()
            .flatten()
        {
            for end in (1..number.len()).rev() {
                let (number, rest) = number.split_at(end);
                let Some(row) = row(index, *work, number) else {
                    continue;
                };
                let names = &index.references.works[*work];
                let cited = names.rows[row].cited();
                let why = Why::EarlierNotThere(names.short.clone(), cited, rest.join(" "));
                for ours in &names.rows[row].ours {
                    readings.push(possible(Meant::Design(ours.design), why.clone()));
                }
                readings.push(possible(Meant::Row(*work, row), Why::Row));
                break;
            }
        }
        if !readings.is_empty() {
            return;
        }
    }
}
