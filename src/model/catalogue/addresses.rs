//! What stands at the addresses that editions issued.
//!
//! In: an address. Out: whether the catalogue has something there, and where a former one leads.

use super::Catalogue;
use crate::former::Named;
use crate::issued_address::IssuedAddress;
use crate::key::Key;
use crate::link::Target;
use crate::occurrence::DesignPart;

impl Catalogue {
    /// Whether there is something at an address: the record, the part of it, the comparison.
    #[must_use]
    pub fn has_address(&self, address: &IssuedAddress) -> bool {
        let design = |key: &Key| self.designs.get(key);
        match address {
            IssuedAddress::Record(target) => match target {
                Target::Design(key) => self.designs.contains_key(key),
                Target::Impression(key) => self.impression(key).is_some(),
                Target::Holder(key) => self.holders.contains_key(key),
                Target::Person(key) => self.people.contains_key(key),
                Target::Work(key) => self.literature.contains_key(key),
                Target::Exhibition(key) => self.exhibitions.contains_key(key),
                Target::Mark(key) => self.marks.contains_key(key),
                Target::Document(key) => self.documents.contains_key(key),
                Target::Series(key) => self.series.contains_key(key),
                Target::Page(key) => self.pages.contains_key(key),
                Target::Picture(key) => self.picture(key).is_some(),
            },
            IssuedAddress::Part(key, part, name) => design(key).is_some_and(|design| match part {
                DesignPart::Matrix => design.matrix(name).is_some(),
                DesignPart::State => design.state(name).is_some(),
                DesignPart::Printing => design.printing(name).is_some(),
                DesignPart::Variant => design.variant(name).is_some(),
            }),
            IssuedAddress::Point(key, name) => {
                design(key).is_some_and(|design| design.point(name).is_some())
            }
            IssuedAddress::Comparison(key, place) => {
                design(key).is_some_and(|design| design.comparison(*place).is_some())
            }
            IssuedAddress::Condition(key, name) => self.marks.get(key).is_some_and(|mark| {
                let mut conditions = mark.conditions.iter();
                conditions.any(|condition| condition.key.value == *name)
            }),
        }
    }

    /// Whether an issued address has its record, or leads to the one that took its place.
    #[must_use]
    pub fn answers(&self, address: &IssuedAddress) -> bool {
        self.has_address(address) || self.leads(address).is_some()
    }

    /// The address that an issued address leads to, because its record has another key now (`was`); `None` where
    /// it is not a former one.
    #[must_use]
    pub fn leads(&self, address: &IssuedAddress) -> Option<IssuedAddress> {
        let former = &self.former;
        if former.is_empty() {
            return None;
        }
        let design_now = |key: &Key| match former.record(&Target::Design(key.clone())) {
            Some(Target::Design(now)) => now,
            _ => key.clone(),
        };
        let key_now = |was: Named| {
            let now = former.key_of(&was).cloned();
            now.unwrap_or_else(|| was.key().clone())
        };
        let to = match address {
            IssuedAddress::Record(target) => IssuedAddress::Record(former.record(target)?),
            IssuedAddress::Part(design, part, key) => {
                let design = design_now(design);
                let key = key_now(Named::Part(design.clone(), *part, key.clone()));
                IssuedAddress::Part(design, *part, key)
            }
            IssuedAddress::Point(design, key) => {
                let design = design_now(design);
                let key = key_now(Named::Point(design.clone(), key.clone()));
                IssuedAddress::Point(design, key)
            }
            IssuedAddress::Comparison(design, place) => {
                IssuedAddress::Comparison(design_now(design), *place)
            }
            IssuedAddress::Condition(mark, key) => {
                let mark = match former.record(&Target::Mark(mark.clone())) {
                    Some(Target::Mark(now)) => now,
                    _ => mark.clone(),
                };
                let key = key_now(Named::Condition(mark.clone(), key.clone()));
                IssuedAddress::Condition(mark, key)
            }
        };
        (to != *address && self.has_address(&to)).then_some(to)
    }
}
