//! The catalogue: every record, and how to find one.
//!
//! `addresses` says what stands at issued addresses, `published` gives single records without what they keep private.

mod addresses;
mod published;

use std::borrow::Cow;
use std::collections::{BTreeMap, BTreeSet};

use super::design::Design;
use super::document::Document;
use super::exhibition::Exhibition;
use super::former::FormerKeys;
use super::holder::Holder;
use super::impression::Impression;
use super::issued_address::IssuedAddress;
use super::key::{ImpressionKey, Key, PictureKey, PictureOwner};
use super::link::Target;
use super::literature::Work;
use super::mark::{Mark, MarkRecord};
use super::note::Page;
use super::occurrence::{Occurrences, RecordId};
use super::person::Person;
use super::picture::Picture;
use super::place::Sources;
use super::redacted::Redacted;
use super::register::{Digest, Register};
use super::series::SeriesRecord;
use super::settings::Settings;
use super::settled::SettledDoubt;
use super::standing::RecordStanding;
use super::vocabulary::Vocabularies;

/// Everything a catalogue records. Designs are in the order of their keys; `study::order` gives the
/// order readers see.
#[derive(Clone, Debug)]
pub struct Catalogue {
    /// The files it was read from.
    pub sources: Sources,
    /// The settings: title, editors, language, address.
    pub settings: Settings,
    /// The designs, with their impressions.
    pub designs: BTreeMap<Key, Design>,
    /// The holders.
    pub holders: BTreeMap<Key, Holder>,
    /// The people.
    pub people: BTreeMap<Key, Person>,
    /// The literature.
    pub literature: BTreeMap<Key, Work>,
    /// The exhibitions.
    pub exhibitions: BTreeMap<Key, Exhibition>,
    /// The marks that several sheets share.
    pub marks: BTreeMap<Key, MarkRecord>,
    /// The documents.
    pub documents: BTreeMap<Key, Document>,
    /// The series that have records.
    pub series: BTreeMap<Key, SeriesRecord>,
    /// The vocabularies.
    pub vocabularies: Vocabularies,
    /// The catalogue's own pages, by key.
    pub pages: BTreeMap<Key, Page>,
    /// The texts and references of each record, with those of the Markdown beside it.
    pub occurrences: BTreeMap<RecordId, Occurrences>,
    /// The digest of what readers may know of each record, for each of its keys.
    pub contents: BTreeMap<RecordId, RecordContent>,
    /// The addresses that were issued; `None` before the first edition.
    pub register: Option<Register>,
    /// The issued addresses of records, and of parts of records, that are not published any more, each with the last
    /// edition that published it, as a place in [`Register::editions`]. Only [`super::public`] fills it.
    pub unpublished: BTreeMap<IssuedAddress, usize>,
    /// The keys that records had before, by which they can still be named.
    pub former: FormerKeys,
    /// The doubts that records say are settled, in the order of reading. Only the audit uses them.
    pub settled: Vec<SettledDoubt>,
    /// The records whose files list private fields, read again without those fields. Used
    /// by [`super::public`] and by the functions for published records.
    pub redacted: Redacted,
}

/// The digest of the value of each key of a record, without what the record keeps private.
pub type RecordContent = Vec<(Box<str>, Digest)>;

impl Catalogue {
    /// An impression, by key.
    #[must_use]
    pub fn impression(&self, key: &ImpressionKey) -> Option<&Impression> {
        self.designs.get(&key.design)?.impressions.get(&key.number)
    }

    /// The number of an impression as readers cite it, with that of its design: "R 1.2"; the key of an impression
    /// whose design is not there.
    #[must_use]
    pub fn sheet_number(&self, key: &ImpressionKey) -> String {
        match self.designs.get(&key.design) {
            Some(design) => format!("{}.{}", design.number, key.number),
            None => key.to_string(),
        }
    }

    /// A picture as readers cite it: "R 1.2/recto", "R 1/drawing".
    #[must_use]
    pub fn picture_number(&self, key: &PictureKey) -> String {
        let owner = match &key.owner {
            PictureOwner::Impression(sheet) => self.sheet_number(sheet),
            PictureOwner::Design(design) => {
                let number = self.designs.get(design).map(|design| &design.number);
                number.map_or_else(|| design.to_string(), Clone::clone)
            }
            document @ PictureOwner::Document(_) => document.to_string(),
        };
        format!("{owner}/{}", key.name)
    }

    /// Every impression, by design and number.
    pub fn impressions(&self) -> impl Iterator<Item = (&Design, &Impression)> {
        self.designs
            .values()
            .flat_map(|d| d.impressions.values().map(move |i| (d, i)))
    }

    /// A picture, by key.
    #[must_use]
    pub fn picture(&self, key: &PictureKey) -> Option<&Picture> {
        let pictures = match &key.owner {
            PictureOwner::Design(design) => &self.designs.get(design)?.pictures,
            PictureOwner::Impression(impression) => &self.impression(impression)?.pictures,
            PictureOwner::Document(document) => &self.documents.get(document)?.pictures,
        };
        pictures.iter().find(|p| p.name.value == key.name)
    }

    /// The pictures of one record; none where there is no such record.
    #[must_use]
    pub fn pictures_of(&self, owner: &PictureOwner) -> &[Picture] {
        let pictures = match owner {
            PictureOwner::Design(design) => self.designs.get(design).map(|d| &d.pictures),
            PictureOwner::Impression(key) => self.impression(key).map(|i| &i.pictures),
            PictureOwner::Document(key) => self.documents.get(key).map(|d| &d.pictures),
        };
        pictures.map_or(&[], Vec::as_slice)
    }

    /// Every picture with its key.
    pub fn pictures(&self) -> impl Iterator<Item = (PictureKey, &Picture)> {
        let of_designs = self.designs.values().flat_map(|design| {
            let of_sheets = design.impressions.values().flat_map(pictures_of_sheet);
            pictures_of_design(design).chain(of_sheets)
        });
        of_designs.chain(self.documents.values().flat_map(pictures_of_document))
    }

    /// The same, to be changed, in the same order.
    pub(super) fn pictures_mut(&mut self) -> impl Iterator<Item = &mut Picture> {
        let of_designs = self.designs.values_mut().flat_map(|design| {
            let sheets = design.impressions.values_mut();
            let of_sheets = sheets.flat_map(|sheet| &mut sheet.pictures);
            design.pictures.iter_mut().chain(of_sheets)
        });
        let documents = self.documents.values_mut();
        of_designs.chain(documents.flat_map(|document| &mut document.pictures))
    }

    /// A mark on a sheet with what its record says of it ([`Mark::described`]).
    #[must_use]
    pub fn described_mark<'a>(&self, mark: &'a Mark) -> Cow<'a, Mark> {
        let record = mark.record.as_ref();
        mark.described(record.and_then(|key| self.marks.get(&key.value)))
    }

    /// Whether a person or holder has the key.
    #[must_use]
    pub fn has_party(&self, key: &Key) -> bool {
        self.people.contains_key(key) || self.holders.contains_key(key)
    }

    /// Whether two keys name the same holder, or one holder succeeded the other, directly or through others:
    /// a successor has what its predecessor had.
    #[must_use]
    pub fn are_one_house(&self, one: &Key, other: &Key) -> bool {
        self.became(one, other) || self.became(other, one)
    }

    /// The records to see in place of a record. One that was withdrawn itself and names others is passed over, so that no
    /// reader is sent on twice.
    #[must_use]
    pub fn to_see_instead(&self, standing: &RecordStanding) -> Vec<Target> {
        let mut found = Vec::new();
        let mut passed = BTreeSet::new();
        self.follow(standing, &mut passed, &mut found);
        found
    }

    fn follow(
        &self,
        standing: &RecordStanding,
        passed: &mut BTreeSet<Target>,
        found: &mut Vec<Target>,
    ) {
        let named = standing.see.iter();
        for target in named.filter_map(|to| to.value.parse::<Target>().ok()) {
            // Faulty records may name each other: each is followed once.
            if !passed.insert(target.clone()) {
                continue;
            }
            let further = match &target {
                Target::Design(key) => self.designs.get(key).map(|design| &design.standing),
                Target::Impression(key) => self.impression(key).map(|sheet| &sheet.standing),
                Target::Series(key) => self.series.get(key).map(|series| &series.standing),
                _ => None,
            };
            match further.filter(|further| further.is_withdrawn() && !further.see.is_empty()) {
                Some(further) => self.follow(further, passed, found),
                None => found.push(target),
            }
        }
    }

    /// The last of the holders that took over a holder; `None` where none did.
    #[must_use]
    pub fn last_successor<'c>(&'c self, holder: &'c Key) -> Option<&'c Key> {
        let mut last = holder;
        // Successors in a circle are an error; there are no more steps than holders, so that none is followed for ever.
        for _ in &self.holders {
            let successor = self.holders.get(last).and_then(|h| h.successor.as_ref());
            match successor.filter(|next| self.holders.contains_key(&next.holder.value)) {
                Some(next) => last = &next.holder.value,
                None => break,
            }
        }
        (last != holder).then_some(last)
    }

    /// Whether the holder `from` is the holder `to`, or was taken over by it, directly or through others.
    #[must_use]
    pub fn became(&self, from: &Key, to: &Key) -> bool {
        let mut seen = BTreeSet::new();
        let mut at = from;
        // Faulty records may name each other as successors: `seen` ends the loop.
        while at != to && seen.insert(at) {
            let successor = self.holders.get(at).and_then(|h| h.successor.as_ref());
            match successor {
                Some(successor) => at = &successor.holder.value,
                None => break,
            }
        }
        at == to
    }
}

fn pictures_of_design(design: &Design) -> impl Iterator<Item = (PictureKey, &Picture)> {
    with_keys(PictureOwner::Design(design.key.clone()), &design.pictures)
}

fn pictures_of_document(document: &Document) -> impl Iterator<Item = (PictureKey, &Picture)> {
    let owner = PictureOwner::Document(document.key.clone());
    with_keys(owner, &document.pictures)
}

fn pictures_of_sheet(impression: &Impression) -> impl Iterator<Item = (PictureKey, &Picture)> {
    let owner = PictureOwner::Impression(impression.key.clone());
    with_keys(owner, &impression.pictures)
}

fn with_keys(
    owner: PictureOwner,
    pictures: &[Picture],
) -> impl Iterator<Item = (PictureKey, &Picture)> {
    pictures.iter().map(move |picture| {
        let key = PictureKey {
            owner: owner.clone(),
            name: picture.name.value.clone(),
        };
        (key, picture)
    })
}
