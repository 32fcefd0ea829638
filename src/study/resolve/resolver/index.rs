//! The names of a catalogue in order, for every kind of reference.
//!
//! In: the names. Out: an [`Index`], and the readings of what stands after the number, key or title of a design.

use crate::resolve::asked::{Asked, Reader};
use crate::resolve::lookup::Lookup;
use crate::resolve::names::References;
use crate::resolve::part::{After, parts_of};
use crate::resolve::reading::{Meant, Rank, Reading, Why};
use keyblock_model::certainty::Certainty;

/// The names of a catalogue, with what reads and finds them.
#[derive(Clone, Debug)]
pub(super) struct Index {
    pub(super) references: References,
    pub(super) reader: Reader,
    pub(super) lookup: Lookup,
}

impl Index {
    pub(super) fn of(references: References) -> Index {
        Index {
            reader: Reader::new(&references),
            lookup: Lookup::of(&references),
            references,
        }
    }

    /// What stands after the number, key or title of a design. `why`: how the design was found.
    #[allow(
        clippy::too_many_arguments,
        reason = "each says one thing of the text, and three callers pass them on"
    )]
    pub(super) fn parts(
        &self,
        design: usize,
        rest: &[String],
        after: After,
        asked: &Asked,
        why: &Why,
        rank: Rank,
        readings: &mut Vec<Reading>,
    ) {
        let names = (design, &self.references.designs[design]);
        let edition = asked.edition.as_deref();
        let found = parts_of(&self.reader, names, after, rest, edition);
        let was_renumbered = edition.is_none() && found.len() > 1;
        for (meant, of_part) in found {
            let is_former = edition.is_none() && matches!(of_part, Why::Edition(_));
            let certainty = match of_part {
                Why::OtherTotal => Certainty::Possible,
                _ if is_former => Certainty::Possible,
                _ if was_renumbered => Certainty::Probable,
                _ => Certainty::Certain,
            };
            let rank = if is_former { Rank::FormerNumeral } else { rank };
            let why = if of_part == Why::Number {
                why.clone()
            } else {
                of_part
            };
            let reading = Reading::certain(meant, rank, why).at_most(certainty);
            readings.push(self.on_its_page(reading));
        }
    }

    /// The same reading of the record whose page is that of the sheet.
    pub(super) fn on_its_page(&self, reading: Reading) -> Reading {
        let Meant::Impression(design, number) = reading.meant else {
            return reading;
        };
        match self.references.designs[design].joined.get(&number) {
            Some(page) => Reading {
                meant: Meant::Impression(design, *page),
                record: Some(number),
                ..reading
            },
            None => reading,
        }
    }
}
