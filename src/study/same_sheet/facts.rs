//! Facts that hold for every design of a catalogue: which holders have many sheets and keep them, who made the
//! prints, which two names are certainly two people, and which inscriptions are on sheets of several designs.
//!
//! In: the whole catalogue. Out: [`CatalogueFacts`], used while records are compared.

use std::collections::{BTreeMap, BTreeSet};

use super::reason::PartyIdentity;
use super::texts;
use crate::census::Groups;
use keyblock_model::catalogue::Catalogue;
use keyblock_model::design::Design;
use keyblock_model::holder::HolderKind;
use keyblock_model::key::Key;
use keyblock_model::mark::MarkKind;

/// Facts that hold for every design of a catalogue.
pub(super) struct CatalogueFacts<'a> {
    pub(super) catalogue: &'a Catalogue,
    pub(super) groups: &'a Groups,
    /// Inscriptions, each with the designs on whose sheets it is.
    inscribed: BTreeMap<String, BTreeSet<&'a Key>>,
}

impl<'a> CatalogueFacts<'a> {
    pub(super) fn of(catalogue: &'a Catalogue, groups: &'a Groups) -> CatalogueFacts<'a> {
        let mut inscribed: BTreeMap<String, BTreeSet<&Key>> = BTreeMap::new();
        for (design, impression) in catalogue.impressions() {
            let marks = impression.marks.iter();
            let inscriptions = marks
                .map(|mark| catalogue.described_mark(mark))
                .filter(|mark| {
                    let kind = mark.kind.as_ref().map(|kind| kind.value);
                    kind == Some(MarkKind::Inscription)
                });
            for text in inscriptions.filter_map(|mark| texts::inscribed(&mark)) {
                inscribed.entry(text).or_default().insert(&design.key);
            }
        }
        CatalogueFacts {
            catalogue,
            groups,
            inscribed,
        }
    }

    /// Whether an inscription is on sheets of several designs.
    pub(super) fn is_formula(&self, text: &str) -> bool {
        self.inscribed
            .get(text)
            .is_some_and(|designs| designs.len() > 1)
    }

    /// Whether a holder is one that has many sheets: a public one, or the trade.
    pub(super) fn is_public(&self, key: &Key) -> bool {
        let holder = self.catalogue.holders.get(key);
        holder.is_some_and(|h| !matches!(h.kind, HolderKind::Private | HolderKind::Unknown))
    }

    /// Whether a holder keeps what it has: a public one that no other took over.
    pub(super) fn is_lasting(&self, key: &Key) -> bool {
        let holder = self.catalogue.holders.get(key);
        self.is_public(key)
            && holder.is_some_and(|h| h.kind != HolderKind::Trade && h.successor.is_none())
    }

    /// Whether a person made a design or its printings, so that every sheet was once theirs.
    pub(super) fn is_maker(&self, design: &Design, key: &Key) -> bool {
        let artist = self.catalogue.settings.artist.iter().map(|k| &k.value);
        let makers = design.makers.iter().map(|maker| &maker.person.value);
        let printed = design.printings.iter().flat_map(|printing| {
            let people = printing.printer.iter().chain(&printing.publisher);
            people.map(|statement| &statement.is.value)
        });
        artist
            .chain(makers)
            .chain(printed)
            .any(|maker| maker == key)
    }

    /// Whether two are certainly not one: neither took over the other. Names without a record that
    /// share a word may be two spellings of one.
    pub(super) fn are_different(&self, one: &PartyIdentity, other: &PartyIdentity) -> bool {
        match (one, other) {
            (PartyIdentity::Record(one), PartyIdentity::Record(other)) => {
                !self.catalogue.are_one_house(one, other)
            }
            (PartyIdentity::Named(one), PartyIdentity::Named(other)) => {
                let words = |name: &str| -> BTreeSet<String> {
                    let words = name.split(|c: char| !c.is_alphanumeric());
                    let long = words.filter(|word| word.chars().count() > 3);
                    long.map(str::to_lowercase).collect()
                };
                one != other && words(one).is_disjoint(&words(other))
            }
            _ => false,
        }
    }
}
