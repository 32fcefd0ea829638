//! Links to impressions, pictures and documents that are not published.
//!
//! In: a catalogue without them. Out: the same without the links, in its records and in its texts.

use std::collections::BTreeSet;

use crate::catalogue::Catalogue;
use crate::design::Design;
use crate::document::{Document, EvidenceTarget};
use crate::impression::Impression;
use crate::key::{ImpressionKey, Key, PictureKey};
use crate::link::Target;
use crate::mark::MarkRecord;
use crate::note::Note;
use crate::occurrence::{Reference, Referent};
use crate::place::Placed;
use crate::readers_text::unlinked;
use crate::standing::RecordStanding;

/// The impressions, pictures and documents that a catalogue has.
pub(super) struct Present {
    impressions: BTreeSet<ImpressionKey>,
    pictures: BTreeSet<PictureKey>,
    documents: BTreeSet<Key>,
}

impl Present {
    pub(super) fn of(catalogue: &Catalogue) -> Present {
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

/// Removes every link to an impression, a picture or a document that is not there; whether there was one.
pub(super) fn remove_from_records(catalogue: &mut Catalogue, present: &Present) -> bool {
    let mut links = Links {
        present,
        has_removed: false,
    };
    for design in catalogue.designs.values_mut() {
        links.of_design(design);
        for impression in design.impressions.values_mut() {
            links.of_impression(impression);
        }
    }
    for mark in catalogue.marks.values_mut() {
        links.of_mark(mark);
    }
    for document in catalogue.documents.values_mut() {
        links.of_document(document);
    }
    for series in catalogue.series.values_mut() {
        links.standing(&mut series.standing);
    }
    for occurrences in catalogue.occurrences.values_mut() {
        links.references(&mut occurrences.references);
    }
    links.has_removed
}

/// Reduces every such link in texts to its words.
pub(super) fn remove_from_texts(catalogue: &mut Catalogue, present: &Present) {
    let former = catalogue.former.clone();
    let is_published = |target: &Target| match former.record(target) {
        Some(now) => present.has(&now),
        None => present.has(target),
    };
    for note in notes(catalogue) {
        if let Some(text) = unlinked(&note.text, is_published) {
            note.text = text;
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
