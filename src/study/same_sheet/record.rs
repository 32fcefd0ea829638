//! A record made ready for comparing: its ties, the possessions of its sheet, and its first and last days.
//!
//! In: an impression, as recorded and as published. Out: a [`ComparedRecord`].

use std::collections::BTreeSet;

use super::days;
use super::facts::CatalogueFacts;
use super::possession::{Possession, possessions};
use super::reason::{PartyIdentity, Tie};
use super::ties::ties;
use keyblock_model::design::Design;
use keyblock_model::edtf::Day;
use keyblock_model::impression::{Impression, Status};
use keyblock_model::place::Place;

/// A record of a design that counts.
pub(super) struct ComparedRecord<'a> {
    pub impression: &'a Impression,
    /// The facts that another record may state word for word, with their places; each once.
    pub ties: Vec<(Tie, Place)>,
    /// The times for which an owner or keeper is certain.
    pub possessions: Vec<Possession>,
    /// The first and the last day of which anything is known.
    pub known: Option<(Day, Day)>,
    /// Whether the place of the sheet is not known.
    pub is_lost: bool,
    /// The tie of the last entry of its provenance, where it gives one: the end of a lost sheet's trace.
    pub last: Option<Tie>,
    /// The record without what it keeps private, where it keeps something.
    pub public: Option<Box<ComparedRecord<'a>>>,
}

impl<'a> ComparedRecord<'a> {
    pub(super) fn of(
        facts: &CatalogueFacts<'a>,
        design: &'a Design,
        impression: &'a Impression,
    ) -> ComparedRecord<'a> {
        let public = facts.catalogue.published_impression(impression);
        let has_private = !std::ptr::eq(public, impression);
        ComparedRecord {
            public: has_private.then(|| Box::new(ComparedRecord::as_given(facts, design, public))),
            ..ComparedRecord::as_given(facts, design, impression)
        }
    }

    fn as_given(
        facts: &CatalogueFacts<'_>,
        design: &'a Design,
        impression: &'a Impression,
    ) -> ComparedRecord<'a> {
        let (ties, last) = ties(facts, design, impression);
        let mut seen = BTreeSet::new();
        ComparedRecord {
            impression,
            ties: ties
                .into_iter()
                .filter(|(tie, _)| seen.insert(tie.clone()))
                .collect(),
            possessions: possessions(facts, impression),
            is_lost: impression.status.value != Status::Located,
            known: days::known(facts.catalogue, impression),
            last,
            public: None,
        }
    }

    /// The record as it may be published.
    pub(super) fn published(&self) -> &ComparedRecord<'a> {
        self.public.as_deref().unwrap_or(self)
    }

    /// Whether a party has the sheet now.
    pub(super) fn is_with(&self, who: &PartyIdentity) -> bool {
        let holder = self.impression.holder.as_ref();
        !self.is_lost
            && matches!(who, PartyIdentity::Record(key) if holder.is_some_and(|h| h.value == *key))
    }

    /// Where the record says what came last.
    pub(super) fn end_place(&self) -> Place {
        let last = self.impression.provenance.last().map(|entry| entry.place);
        let seen = self.impression.sightings.last().map(|seen| seen.place);
        last.or(seen).unwrap_or(self.impression.place)
    }

    /// Where the record says what came first.
    pub(super) fn start_place(&self) -> Place {
        let first = self.impression.provenance.first().map(|entry| entry.place);
        let seen = self.impression.sightings.first().map(|seen| seen.place);
        first.or(seen).unwrap_or(self.impression.place)
    }

    pub(super) fn place_of(&self, tie: &Tie) -> Option<Place> {
        let known = self.ties.iter().find(|(known, _)| known == tie);
        known.map(|(_, place)| *place)
    }
}
