//! The catalogue as readers may know it, in two steps with a type each.
//!
//! [`Concealed`] is the catalogue in which everything private acts as if it were absent. Everything that is
//! computed for readers is computed from it. [`Public`] is the same without the sheets that are counted and not
//! shown; `page` and `exchange` accept no other catalogue.
//! Definitions: `docs/definitions.md, "Private and unpublished"`.
//!
//! In: everything recorded. Records whose files list `private` fields were read a second time without them
//! ([`super::catalogue::Redacted`]) and take the place of the full ones, so no kind of record needs code of its own
//! here and none can be forgotten. Besides, [`Concealed::of`] removes the names and places of private holders without
//! consent, the impressions and pictures marked `publish = false`, every link to something that is no longer there,
//! and the source texts. Nothing else decides what is published.

use std::collections::{BTreeMap, BTreeSet};

use super::catalogue::{Catalogue, Redacted};
use super::certainty::Claim;
use super::design::Design;
use super::document::{Document, EvidenceTarget};
use super::holder::Holder;
use super::impression::{CountedSheet, Identification, Impression};
use super::issued_address::{IssuedAddress, IssuedKind};
use super::key::{ImpressionKey, Key, PictureKey};
use super::link::Target;
use super::mark::MarkRecord;
use super::note::Note;
use super::occurrence::{MentionRole, RecordId, Reference, Referent};
use super::picture_terms::PublishedTerms;
use super::place::{Placed, Sources};
use super::readers_text::unlinked;
use super::register::Aspect;
use super::standing::RecordStanding;

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
            self.remove_links_in_texts(&present);
        }
        let mut links = Links {
            present: &present,
            has_removed: false,
        };
        for design in self.catalogue.designs.values_mut() {
            links.of_design(design);
            for impression in design.impressions.values_mut() {
                links.of_impression(impression);
            }
        }
        for mark in self.catalogue.marks.values_mut() {
            links.of_mark(mark);
        }
        for document in self.catalogue.documents.values_mut() {
            links.of_document(document);
        }
        for series in self.catalogue.series.values_mut() {
            links.standing(&mut series.standing);
        }
        for occurrences in self.catalogue.occurrences.values_mut() {
            links.references(&mut occurrences.references);
        }
        self.is_whole &= !links.has_removed;
    }

    fn remove_links_in_texts(&mut self, present: &Present) {
        let former = self.catalogue.former.clone();
        let is_published = |target: &Target| match former.record(target) {
            Some(now) => present.has(&now),
            None => present.has(target),
        };
        for note in notes(&mut self.catalogue) {
            if let Some(text) = unlinked(&note.text, is_published) {
                note.text = text;
            }
        }
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

/// What of the issued addresses is recorded, before anything is concealed.
struct Recorded {
    /// The addresses that have their record, with the address of that where its key is another now.
    present: BTreeMap<IssuedAddress, Option<IssuedAddress>>,
    identified: BTreeSet<ImpressionKey>,
    held: BTreeSet<ImpressionKey>,
    joined: BTreeSet<ImpressionKey>,
    /// The holders that were taken over.
    taken_over: BTreeSet<Key>,
}

impl Recorded {
    fn of(catalogue: &Catalogue) -> Recorded {
        let addresses = catalogue.register.iter().flat_map(|r| r.entries.keys());
        let present = addresses.filter_map(|address| {
            let to = catalogue.leads(address);
            let is_recorded = to.is_some() || catalogue.has_address(address);
            is_recorded.then(|| (address.clone(), to))
        });
        let present: BTreeMap<IssuedAddress, Option<IssuedAddress>> = present.collect();
        let issued = |has: fn(&Impression) -> bool| {
            let sheets = catalogue.impressions();
            let sheets = sheets.filter(|(_, sheet)| !present.is_empty() && has(sheet));
            sheets.map(|(_, sheet)| sheet.key.clone()).collect()
        };
        Recorded {
            identified: issued(|sheet| sheet.identified.is_some()),
            held: issued(|sheet| sheet.holder.is_some()),
            joined: joined(catalogue),
            taken_over: taken_over(catalogue),
            present,
        }
    }

    /// Whether the record of an address is there and not published.
    fn is_concealed(&self, catalogue: &Catalogue, address: &IssuedAddress) -> bool {
        self.present.contains_key(address) && !catalogue.answers(address)
    }

    /// Takes out of the register what is recorded and not published, and keeps the addresses: editions before may have
    /// published it.
    fn conceal(&self, catalogue: &mut Catalogue) {
        let Some(mut register) = catalogue.register.take() else {
            return;
        };
        let last = register.editions.len().saturating_sub(1);
        let mut unpublished = BTreeMap::new();
        register.entries.retain(|address, entry| {
            if !self.is_concealed(catalogue, address) {
                return true;
            }
            let edition = entry.last_published(last);
            // Rules of servers lead from a former address to this one.
            if let Some(Some(to)) = self.present.get(address) {
                unpublished.entry(to.clone()).or_insert(edition);
            }
            unpublished.insert(address.clone(), edition);
            false
        });
        let joined = joined(catalogue);
        let taken_over = taken_over(catalogue);
        let is_concealed_sheet = |key: &str| {
            IssuedAddress::parse(IssuedKind::Impression, key)
                .is_ok_and(|address| self.is_concealed(catalogue, &address))
        };
        for (address, entry) in &mut register.entries {
            let now = self.present.get(address).and_then(Option::as_ref);
            let key = match now.unwrap_or(address) {
                IssuedAddress::Record(Target::Impression(key)) => key,
                IssuedAddress::Record(Target::Holder(key)) => {
                    if self.taken_over.contains(key) && !taken_over.contains(key) {
                        entry.said.remove(&Aspect::Successor);
                    }
                    continue;
                }
                _ => continue,
            };
            let sheet = catalogue.impression(key);
            let is_concealed = |recorded: &BTreeSet<ImpressionKey>,
                                has: fn(&Impression) -> bool| {
                recorded.contains(key) && !sheet.is_some_and(has)
            };
            if is_concealed(&self.identified, |sheet| sheet.identified.is_some()) {
                entry.said.remove(&Aspect::Identified);
            }
            if is_concealed(&self.held, |sheet| sheet.holder.is_some()) {
                entry.said.remove(&Aspect::Holder);
            }
            let said = entry.said.get(&Aspect::Sheet);
            let names_concealed =
                said.is_some_and(|said| said.iter().any(|(_, sheet)| is_concealed_sheet(sheet)));
            let is_parted = self.joined.contains(key) && !joined.contains(key);
            if names_concealed || is_parted {
                entry.said.remove(&Aspect::Sheet);
            }
        }
        catalogue.register = Some(register);
        catalogue.unpublished = unpublished;
    }
}

/// The holders that were taken over by another.
fn taken_over(catalogue: &Catalogue) -> BTreeSet<Key> {
    let holders = catalogue.holders.values();
    let holders = holders.filter(|holder| holder.successor.is_some());
    holders.map(|holder| holder.key.clone()).collect()
}

/// The impressions that `same_as` joins to another: those that say so, and those of which it is said.
fn joined(catalogue: &Catalogue) -> BTreeSet<ImpressionKey> {
    let saying = catalogue.impressions();
    let saying = saying.filter(|(_, sheet)| !sheet.same_as.is_empty());
    saying
        .flat_map(|(_, sheet)| {
            let others = sheet
                .same_as
                .iter()
                .map(|other| other.impression.value.clone());
            others.chain([sheet.key.clone()])
        })
        .collect()
}

/// The impressions, pictures and documents that a catalogue has.
struct Present {
    impressions: BTreeSet<ImpressionKey>,
    pictures: BTreeSet<PictureKey>,
    documents: BTreeSet<Key>,
}

impl Present {
    fn of(catalogue: &Catalogue) -> Present {
        Present {
            impressions: catalogue
                .impressions()
                .map(|(_, impression)| impression.key.clone())
                .collect(),
            pictures: catalogue.pictures().map(|(key, _)| key).collect(),
            documents: catalogue.documents.keys().cloned().collect(),
        }
    }

    fn has(&self, target: &Target) -> bool {
        match target {
            Target::Impression(key) => self.impressions.contains(key),
            Target::Picture(key) => self.pictures.contains(key),
            Target::Document(key) => self.documents.contains(key),
            _ => true,
        }
    }
}

/// Every text beside a record, and the catalogue's own pages.
fn notes(catalogue: &mut Catalogue) -> impl Iterator<Item = &mut Note> {
    let designs = catalogue.designs.values_mut().flat_map(|design| {
        let sheets = design.impressions.values_mut();
        let of_sheets = sheets.filter_map(|sheet| sheet.note.as_mut());
        design.commentary.as_mut().into_iter().chain(of_sheets)
    });
    let holders = catalogue.holders.values_mut();
    let people = catalogue.people.values_mut();
    let works = catalogue.literature.values_mut();
    let marks = catalogue.marks.values_mut();
    let documents = catalogue.documents.values_mut().flat_map(|document| {
        let translations = document.translations.iter_mut().map(|(_, note)| note);
        let own = document.note.as_mut().into_iter();
        own.chain(&mut document.transcription).chain(translations)
    });
    let pages = catalogue.pages.values_mut();
    designs
        .chain(holders.filter_map(|holder| holder.note.as_mut()))
        .chain(people.filter_map(|person| person.note.as_mut()))
        .chain(works.filter_map(|work| work.note.as_mut()))
        .chain(marks.filter_map(|mark| mark.note.as_mut()))
        .chain(documents)
        .chain(pages.map(|page| &mut page.note))
}

/// Removes links to what is not present.
struct Links<'a> {
    present: &'a Present,
    has_removed: bool,
}

impl Links<'_> {
    fn retain<T>(&mut self, list: &mut Vec<T>, is_present: impl Fn(&T) -> bool) {
        let all = list.len();
        list.retain(is_present);
        self.has_removed |= list.len() != all;
    }

    fn impressions(&mut self, list: &mut Vec<Placed<ImpressionKey>>) {
        let present = self.present;
        self.retain(list, |key| present.impressions.contains(&key.value));
    }

    fn of_design(&mut self, design: &mut Design) {
        let present = self.present;
        let reference = design.reference_picture.as_ref();
        if reference.is_some_and(|key| !present.pictures.contains(&key.value)) {
            design.reference_picture = None;
            self.has_removed = true;
        }
        for comparison in &mut design.comparisons {
            self.impressions(&mut comparison.of);
        }
        // One impression alone is no comparison.
        self.retain(&mut design.comparisons, |comparison| {
            comparison.of.len() > 1
        });
        self.standing(&mut design.standing);
        for state in &mut design.states {
            self.standing(&mut state.standing);
        }
        for printing in &mut design.printings {
            self.standing(&mut printing.standing);
        }
        for variant in &mut design.variants {
            self.standing(&mut variant.standing);
        }
    }

    fn of_impression(&mut self, impression: &mut Impression) {
        let present = self.present;
        let taken_from = impression.taken_from.as_ref();
        if taken_from.is_some_and(|key| !present.impressions.contains(&key.value)) {
            impression.taken_from = None;
            self.has_removed = true;
        }
        for sheets in [
            &mut impression.same_as,
            &mut impression.maybe_same_as,
            &mut impression.not_same_as,
        ] {
            self.retain(sheets, |other| {
                present.impressions.contains(&other.impression.value)
            });
        }
        self.impressions(&mut impression.shares_sheet);
        self.impressions(&mut impression.goes_with);
        self.standing(&mut impression.standing);
    }

    fn of_mark(&mut self, mark: &mut MarkRecord) {
        let picture = mark.picture.as_ref();
        if picture.is_some_and(|key| !self.present.pictures.contains(&key.value)) {
            mark.picture = None;
            self.has_removed = true;
        }
    }

    /// A statement of a document that concerns only impressions that are not there goes.
    fn of_document(&mut self, document: &mut Document) {
        let present = self.present;
        for telling in &mut document.tells {
            self.retain(&mut telling.of, |of| match &of.value {
                EvidenceTarget::Impression(key) => present.impressions.contains(key),
                _ => true,
            });
        }
        self.retain(&mut document.tells, |telling| !telling.of.is_empty());
    }

    fn standing(&mut self, standing: &mut RecordStanding) {
        let present = self.present;
        self.retain(&mut standing.see, |link| {
            link.value
                .parse()
                .map_or(true, |target| present.has(&target))
        });
    }

    fn references(&mut self, references: &mut Vec<Reference>) {
        let present = self.present;
        self.retain(references, |reference| match &reference.to {
            Referent::Record(target, _) => present.has(target),
            _ => true,
        });
    }
}
