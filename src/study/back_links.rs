//! The mentions of each record: the references of all records, listed by the record they name.
//!
//! In: the references of every record ([`Reference`]). Out: for each holder, person, work, exhibition, design and
//! impression, the records that name it, and in which role.
//!
//! Not here: links in Markdown, which `page` lists by the page they are on.

use std::collections::BTreeMap;

use super::order::Order;
use keyblock_model::catalogue::Catalogue;
use keyblock_model::key::{ImpressionKey, Key, PictureOwner};
use keyblock_model::link::Target;
use keyblock_model::occurrence::{MentionRole, RecordId, Reference, Referent};

/// One mention.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Mention {
    /// The record that mentions it; of a design also its states, printings and matrices.
    pub from: RecordId,
    /// In which role.
    pub role: MentionRole,
    /// Where in a work, or in an exhibition.
    pub at: Option<Box<str>>,
}

/// Every mention, by the record that is mentioned; then by the mentioning record in readers' order, and
/// by role.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct BackLinks {
    /// Of holders.
    pub holders: BTreeMap<Key, Vec<Mention>>,
    /// Of people.
    pub people: BTreeMap<Key, Vec<Mention>>,
    /// Of works of the literature.
    pub works: BTreeMap<Key, Vec<Mention>>,
    /// Of exhibitions.
    pub exhibitions: BTreeMap<Key, Vec<Mention>>,
    /// Of documents.
    pub documents: BTreeMap<Key, Vec<Mention>>,
    /// Of marks.
    pub marks: BTreeMap<Key, Vec<Mention>>,
    /// Of designs.
    pub designs: BTreeMap<Key, Vec<Mention>>,
    /// Of impressions.
    pub impressions: BTreeMap<ImpressionKey, Vec<Mention>>,
}

impl BackLinks {
    /// The mentions in a catalogue.
    #[must_use]
    pub fn of(catalogue: &Catalogue, order: &Order) -> BackLinks {
        let mut links = BackLinks::default();
        for (record, occurrences) in &catalogue.occurrences {
            for reference in &occurrences.references {
                links.add(catalogue, record, reference);
            }
        }
        links.put_in_order(order);
        links
    }

    fn add(&mut self, catalogue: &Catalogue, from: &RecordId, reference: &Reference) {
        let Some(role) = reference.to.role() else {
            return;
        };
        let list = match &reference.to {
            Referent::Record(_, MentionRole::Linked) | Referent::Party(_, MentionRole::Settled) => {
                return;
            }
            Referent::Record(Target::Design(key), _) => self.designs.entry(key.clone()),
            Referent::Record(Target::Person(key), _) => self.people.entry(key.clone()),
            Referent::Record(Target::Work(key), _) => self.works.entry(key.clone()),
            Referent::Record(Target::Exhibition(key), _) => self.exhibitions.entry(key.clone()),
            Referent::Record(Target::Document(key), _) => self.documents.entry(key.clone()),
            Referent::Record(Target::Mark(key), _) => self.marks.entry(key.clone()),
            Referent::Party(key, _) if catalogue.people.contains_key(key) => {
                self.people.entry(key.clone())
            }
            Referent::Record(Target::Holder(key), _) | Referent::Party(key, _) => {
                self.holders.entry(key.clone())
            }
            _ => {
                self.add_to_impression(from, reference, role);
                return;
            }
        };
        list.or_default().push(mention(from, reference, role));
    }

    /// Adds a mention of an impression, or of a picture of one.
    fn add_to_impression(&mut self, from: &RecordId, reference: &Reference, role: MentionRole) {
        let key = match &reference.to {
            Referent::Record(Target::Impression(key), _) => key,
            Referent::Record(Target::Picture(picture), _) => match &picture.owner {
                PictureOwner::Impression(key) => key,
                PictureOwner::Design(_) | PictureOwner::Document(_) => return,
            },
            _ => return,
        };
        let list = self.impressions.entry(key.clone()).or_default();
        list.push(mention(from, reference, role));
    }

    fn put_in_order(&mut self, order: &Order) {
        let lists = self
            .holders
            .values_mut()
            .chain(self.people.values_mut())
            .chain(self.works.values_mut())
            .chain(self.exhibitions.values_mut())
            .chain(self.documents.values_mut())
            .chain(self.marks.values_mut())
            .chain(self.designs.values_mut())
            .chain(self.impressions.values_mut());
        for mentions in lists {
            mentions.sort_by_cached_key(|m| {
                let rank = match &m.from {
                    RecordId::Catalogue => (0, 0, 0),
                    RecordId::Design(design) => (1, order.rank(design), 0),
                    RecordId::Impression(key) => (1, order.rank(&key.design), key.number),
                    _ => (2, 0, 0),
                };
                (rank, m.from.clone(), m.role, m.at.clone())
            });
            mentions.dedup();
        }
    }
}

fn mention(from: &RecordId, reference: &Reference, role: MentionRole) -> Mention {
    Mention {
        from: from.clone(),
        role,
        at: reference.locator.clone(),
    }
}
