//! The catalogue as readers may know it, in two steps with a type each.
//!
//! [`Concealed`] is the catalogue in which everything private acts as if it were absent. Everything that is
//! computed for readers is computed from it. [`Public`] is the same without the sheets that are counted and not
//! shown; `page` and `exchange` accept no other catalogue.
//! Definitions: `docs/definitions.md, "Private and unpublished"`.
//!
//! In: everything recorded. Records whose files list `private` fields were read a second time without them
//! ([`super::redacted::Redacted`]) and take the place of the full ones, so no kind of record needs code of its own
//! here and none can be forgotten. Besides, [`Concealed::of`] removes the names and places of private holders without
//! consent, the impressions and pictures marked `publish = false`, every link to something that is no longer there
//! (`links`), what the register says of it (`issued`), and the source texts. Nothing else decides what is published.

mod issued;
mod links;

use std::collections::BTreeMap;

use super::catalogue::Catalogue;
use super::certainty::Claim;
use super::holder::Holder;
use super::impression::{CountedSheet, Identification, Impression};
use super::occurrence::{MentionRole, RecordId, Referent};
use super::picture_terms::PublishedTerms;
use super::place::{Placed, Sources};
use super::redacted::Redacted;
use issued::Recorded;
use links::Present;

/// A catalogue in which everything private acts as absent. Of an impression that is not published only a
/// [`CountedSheet`] remains.
#[derive(Clone, Debug)]
pub struct Concealed {
    catalogue: Catalogue,
    is_whole: bool,
}

/// A catalogue from which everything private was taken, and the sheets that are counted and not shown.
#[derive(Clone, Debug)]
pub struct Public(Catalogue);

impl Concealed {
    /// Conceals what is private. `private_owner` is what readers see in place of a name.
    #[must_use]
    pub fn of(catalogue: Catalogue, private_owner: &str) -> Concealed {
        let mut concealed = Concealed {
            catalogue,
            is_whole: true,
        };
        concealed.catalogue.sources = Sources::default();
        let recorded = Recorded::of(&concealed.catalogue);
        let terms = PublishedTerms::of(&concealed.catalogue);
        concealed.put_redacted_records_in_place(private_owner);
        terms.settle(&mut concealed.catalogue);
        concealed.remove_unpublished();
        concealed.remove_links_to_absent_records();
        if !concealed.is_whole {
            recorded.conceal(&mut concealed.catalogue);
        }
        concealed
    }

    /// Whether nothing was concealed: then it is the recorded catalogue, and everything computed from
    /// that holds for it too.
    #[must_use]
    pub fn is_whole(&self) -> bool {
        self.is_whole
    }

    /// The second step: without the sheets that are counted and not shown.
    #[must_use]
    pub fn into_public(self) -> Public {
        let mut catalogue = self.catalogue;
        for design in catalogue.designs.values_mut() {
            design.counted_only.clear();
        }
        Public(catalogue)
    }

    fn put_redacted_records_in_place(&mut self, private_owner: &str) {
        let catalogue = &mut self.catalogue;
        let redacted = std::mem::take(&mut catalogue.redacted);
        self.is_whole &= redacted.is_empty();
        let Redacted {
            settings,
            designs,
            impressions,
            mut holders,
            people,
            exhibitions,
            marks,
            documents,
            series,
            occurrences,
            texts: _,
        } = redacted;
        if let Some(settings) = settings {
            catalogue.settings = settings;
        }
        for (key, mut design) in designs {
            if let Some(recorded) = catalogue.designs.get_mut(&key) {
                design.impressions = std::mem::take(&mut recorded.impressions);
                *recorded = design;
            }
        }
        for (key, impression) in impressions {
            if let Some(design) = catalogue.designs.get_mut(&key.design) {
                design.impressions.insert(key.number, impression);
            }
        }
        catalogue.people.extend(people);
        catalogue.exhibitions.extend(exhibitions);
        catalogue.marks.extend(marks);
        catalogue.documents.extend(documents);
        catalogue.series.extend(series);
        for (record, published) in occurrences {
            catalogue.occurrences.insert(record, published);
        }
        for occurrences in catalogue.occurrences.values_mut() {
            // These texts are bytes of the sources, which are not public; pages take texts from the records.
            occurrences.texts = Vec::new();
        }
        for (key, holder) in &mut catalogue.holders {
            // The kind and the consent that decide may be private themselves, so both records are asked.
            let recorded = ["name", "place"].map(|field| holder.may_publish(field));
            if let Some(redacted) = holders.remove(key) {
                *holder = redacted;
            }
            let [name, place] = ["name", "place"].map(|field| holder.may_publish(field));
            let may_publish = [name && recorded[0], place && recorded[1]];
            self.is_whole &= may_publish == [true; 2];
            conceal_holder(holder, may_publish, private_owner);
            let record = RecordId::Holder(key.clone());
            if may_publish != [true; 2] {
                // A digest of the record would let a guess at the name be confirmed.
                catalogue.contents.remove(&record);
            }
            if holder.note.is_none()
                && let Some(occurrences) = catalogue.occurrences.get_mut(&record)
            {
                let is_linked = |to: &Referent| to.role() == Some(MentionRole::Linked);
                occurrences.references.retain(|r| !is_linked(&r.to));
            }
        }
    }

    /// Removes unpublished pictures, and leaves of unpublished impressions what still counts.
    fn remove_unpublished(&mut self) {
        let documents = &mut self.catalogue.documents;
        let all = documents.len();
        documents.retain(|_, document| document.publish);
        self.is_whole &= documents.len() == all;
        for document in documents.values_mut() {
            let all = document.pictures.len();
            document.pictures.retain(|p| !p.is_withheld());
            self.is_whole &= document.pictures.len() == all;
        }
        for design in self.catalogue.designs.values_mut() {
            let all = design.pictures.len() + design.impressions.len();
            design.pictures.retain(|p| !p.is_withheld());
            let impressions = std::mem::take(&mut design.impressions);
            let (shown, unpublished): (BTreeMap<_, _>, BTreeMap<_, _>) =
                impressions.into_iter().partition(|(_, i)| i.publish);
            design.impressions = shown;
            self.is_whole &= design.pictures.len() + design.impressions.len() == all;
            let counted = unpublished.into_values().filter_map(counted_sheet);
            design.counted_only = counted.collect();
            for impression in design.impressions.values_mut() {
                let all = impression.pictures.len();
                impression.pictures.retain(|p| !p.is_withheld());
                self.is_whole &= impression.pictures.len() == all;
            }
        }
    }

    /// Removes every link to an impression, a picture or a document that is not there, in texts too. In a sound
    /// catalogue these are the ones that were concealed, because a reference to nothing is an error.
    fn remove_links_to_absent_records(&mut self) {
        let present = Present::of(&self.catalogue);
        if !self.is_whole {
            links::remove_from_texts(&mut self.catalogue, &present);
        }
        self.is_whole &= !links::remove_from_records(&mut self.catalogue, &present);
    }
}

impl Public {
    /// Removes what is private. `private_owner` is what readers see in place of a name.
    #[must_use]
    pub fn from(catalogue: &Catalogue, private_owner: &str) -> Public {
        Concealed::of(catalogue.clone(), private_owner).into_public()
    }
}

impl std::ops::Deref for Concealed {
    type Target = Catalogue;

    fn deref(&self) -> &Catalogue {
        &self.catalogue
    }
}

impl std::ops::Deref for Public {
    type Target = Catalogue;

    fn deref(&self) -> &Catalogue {
        &self.0
    }
}

/// Removes the name and the place of a private holder, where they may not be published. A name that was listed as
/// private is empty here already, whatever the kind.
fn conceal_holder(holder: &mut Holder, [name, place]: [bool; 2], private_owner: &str) {
    if !name || holder.name.is_empty() {
        holder.name = Placed::new(private_owner.to_owned(), holder.name.place);
        holder.formerly.clear();
        holder.credit = None;
        holder.pictures.credit = None;
        holder.ids = Vec::new();
        holder.web = None;
        holder.isil = None;
        holder.note = None;
    }
    if !place {
        holder.town = None;
    }
}

/// What still counts of an impression that is not published; `None` where it was withdrawn.
fn counted_sheet(impression: Impression) -> Option<CountedSheet> {
    if impression.standing.is_withdrawn() {
        return None;
    }
    Some(CountedSheet {
        kind: impression.kind.own().cloned(),
        key: impression.key,
        identified: impression.identified.map(reading_alone),
    })
}

/// The state, printing and kind of a reading, and how certain it is.
fn reading_alone(reading: Identification) -> Identification {
    Identification {
        variant: None,
        why: None,
        claim: Claim {
            certainty: reading.claim.certainty,
            ..Claim::default()
        },
        or: reading.or.into_iter().map(reading_alone).collect(),
        ..reading
    }
}
