//! The catalogue without what is private.
//!
//! `page` and `exchange` accept only a [`Public`]. One function makes it, by leaving data out. Records whose files
//! list `private` fields were read a second time without them ([`super::catalogue::Redacted`]) and take the place of
//! the full ones, so no kind of record needs code of its own here and none can be forgotten. The function itself
//! removes the name and place of private holders without consent, impressions and pictures marked `publish = false`,
//! and the source texts (docs/definitions.md, "Private and unpublished").

use super::catalogue::{Catalogue, Redacted};
use super::holder::Holder;
use super::occurrence::{MentionRole, RecordId, Referent};
use super::place::{Placed, Sources};

/// A catalogue from which everything private was taken.
#[derive(Clone, Debug)]
pub struct Public(Catalogue);

impl Public {
    /// Removes what is private. `private_owner` is what readers see in place of a name.
    #[must_use]
    pub fn from(catalogue: &Catalogue, private_owner: &str) -> Public {
        Public::of(catalogue.clone(), private_owner)
    }

    /// The same from a catalogue that is consumed, which saves a copy.
    #[must_use]
    pub fn of(catalogue: Catalogue, private_owner: &str) -> Public {
        let mut public = catalogue;
        public.sources = Sources::default();
        let redacted = std::mem::take(&mut public.redacted);
        public.redacted = Redacted::default();
        if let Some(settings) = redacted.settings {
            public.settings = settings;
        }
        for (key, mut design) in redacted.designs {
            if let Some(recorded) = public.designs.get_mut(&key) {
                design.impressions = std::mem::take(&mut recorded.impressions);
                *recorded = design;
            }
        }
        for (key, impression) in redacted.impressions {
            if let Some(design) = public.designs.get_mut(&key.design) {
                design.impressions.insert(key.number, impression);
            }
        }
        public.holders.extend(redacted.holders);
        public.people.extend(redacted.people);
        public.exhibitions.extend(redacted.exhibitions);
        for (record, published) in redacted.occurrences {
            public.occurrences.insert(record, published);
        }
        for occurrences in public.occurrences.values_mut() {
            // These texts are bytes of the sources, which are not public; pages take texts from the records.
            occurrences.texts = Vec::new();
        }
        for (key, holder) in &mut public.holders {
            conceal_holder(holder, private_owner);
            let record = RecordId::Holder(key.clone());
            if holder.note.is_none()
                && let Some(occurrences) = public.occurrences.get_mut(&record)
            {
                let is_linked = |to: &Referent| to.role() == Some(MentionRole::Linked);
                occurrences.references.retain(|r| !is_linked(&r.to));
            }
        }
        for design in public.designs.values_mut() {
            design.pictures.retain(|p| p.publish);
            design.impressions.retain(|_, i| i.publish);
            for impression in design.impressions.values_mut() {
                impression.pictures.retain(|p| p.publish);
            }
        }
        Public(public)
    }
}

impl std::ops::Deref for Public {
    type Target = Catalogue;

    fn deref(&self) -> &Catalogue {
        &self.0
    }
}

/// Removes the name and place of a private holder, unless a standing consent covers them. A name that
/// was listed as private is empty here already, whatever the kind.
fn conceal_holder(holder: &mut Holder, private_owner: &str) {
    if !holder.may_publish("name") || holder.name.is_empty() {
        holder.name = Placed::new(private_owner.to_owned(), holder.name.place);
        holder.formerly.clear();
        holder.credit = None;
        holder.web = None;
        holder.isil = None;
        holder.note = None;
    }
    if !holder.may_publish("place") {
        holder.town = None;
    }
}
