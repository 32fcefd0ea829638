//! The catalogue: every record, and how to find one.

use std::borrow::Cow;
use std::collections::{BTreeMap, BTreeSet};

use super::design::Design;
use super::document::Document;
use super::exhibition::Exhibition;
use super::former::{FormerKeys, Named};
use super::holder::Holder;
use super::impression::Impression;
use super::issued_address::IssuedAddress;
use super::key::{ImpressionKey, Key, PictureKey, PictureOwner};
use super::link::Target;
use super::literature::Work;
use super::mark::{Mark, MarkRecord};
use super::note::Page;
use super::occurrence::{DesignPart, Occurrences, RecordId};
use super::person::Person;
use super::picture::Picture;
use super::place::Sources;
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
    /// by [`super::public`] and by the functions for published records below.
    pub redacted: Redacted,
}

/// The digest of the value of each key of a record, without what the record keeps private.
pub type RecordContent = Vec<(Box<str>, Digest)>;

/// Records as they may be published, where that is less than what is recorded.
#[derive(Clone, Debug, Default)]
pub struct Redacted {
    /// The settings.
    pub settings: Option<super::settings::Settings>,
    /// Designs (without their impressions).
    pub designs: BTreeMap<Key, Design>,
    /// Impressions.
    pub impressions: BTreeMap<ImpressionKey, Impression>,
    /// Holders.
    pub holders: BTreeMap<Key, Holder>,
    /// People.
    pub people: BTreeMap<Key, Person>,
    /// Exhibitions.
    pub exhibitions: BTreeMap<Key, Exhibition>,
    /// Marks.
    pub marks: BTreeMap<Key, MarkRecord>,
    /// Documents.
    pub documents: BTreeMap<Key, Document>,
    /// Series.
    pub series: BTreeMap<Key, SeriesRecord>,
    /// The texts and references of records that keep something from readers: a field listed as
    /// private, or a table marked `publish = false`.
    pub occurrences: BTreeMap<RecordId, Occurrences>,
    /// Every text that a record keeps private, with its place. None of them may appear in published
    /// text.
    pub texts: Vec<PrivateText>,
}

impl Redacted {
    /// Whether no record keeps anything from readers by a list of private fields, or in a table marked
    /// `publish = false`.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        let Redacted {
            settings,
            designs,
            impressions,
            holders,
            people,
            exhibitions,
            marks,
            documents,
            series,
            occurrences,
            texts,
        } = self;
        settings.is_none()
            && designs.is_empty()
            && impressions.is_empty()
            && holders.is_empty()
            && people.is_empty()
            && exhibitions.is_empty()
            && marks.is_empty()
            && documents.is_empty()
            && series.is_empty()
            && occurrences.is_empty()
            && texts.is_empty()
    }
}

/// A text that must not be published, and where it is recorded.
#[derive(Clone, Debug, PartialEq)]
pub struct PrivateText {
    /// The text.
    pub text: String,
    /// Where it is recorded.
    pub place: super::place::Place,
}

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

/// Single records as readers may see them: without the fields that a record keeps private. Findings need these
/// beside the full records, and so does the work on pictures, which begins before anything is concealed. Whatever is
/// computed for readers is made from [`super::public::Concealed`].
impl Catalogue {
    /// The settings without their private fields.
    #[must_use]
    pub fn published_settings(&self) -> &Settings {
        self.redacted.settings.as_ref().unwrap_or(&self.settings)
    }

    /// An impression without its private fields.
    #[must_use]
    pub fn published_impression<'a>(&'a self, impression: &'a Impression) -> &'a Impression {
        self.redacted
            .impressions
            .get(&impression.key)
            .unwrap_or(impression)
    }

    /// A design without its private fields. Its impressions are not filtered, and those of a
    /// redacted design are not there: take them from the design itself.
    fn published_design<'a>(&'a self, design: &'a Design) -> &'a Design {
        self.redacted.designs.get(&design.key).unwrap_or(design)
    }

    /// Every picture that may be published, with its key: those of [`super::public::Concealed`].
    pub fn published_pictures(&self) -> impl Iterator<Item = (PictureKey, &Picture)> {
        let all = self.designs.values().flat_map(|design| {
            let sheets = design.impressions.values();
            let published = sheets
                .map(|sheet| self.published_impression(sheet))
                .filter(|sheet| sheet.publish);
            pictures_of_design(self.published_design(design))
                .chain(published.flat_map(pictures_of_sheet))
        });
        let documents = self.documents.keys();
        let documents = documents.filter_map(|key| self.published_document(key));
        all.chain(documents.flat_map(pictures_of_document))
            .filter(|(key, picture)| self.publishes(&key.owner, picture))
    }

    /// The texts and references that may be published, record by record: none of an impression or
    /// picture marked `publish = false`. A private holder's name is still among them; whether it may
    /// be published depends on consent ([`Holder::may_publish`]).
    pub fn published_occurrences(&self) -> impl Iterator<Item = (&RecordId, &Occurrences)> {
        self.occurrences.iter().map(|(record, recorded)| {
            let redacted = self.redacted.occurrences.get(record);
            (record, redacted.unwrap_or(recorded))
        })
    }

    /// A holder without its private fields.
    #[must_use]
    pub fn published_holder(&self, key: &Key) -> Option<&Holder> {
        let recorded = self.holders.get(key)?;
        Some(self.redacted.holders.get(key).unwrap_or(recorded))
    }

    /// A person without their private fields.
    #[must_use]
    pub fn published_person(&self, key: &Key) -> Option<&Person> {
        let recorded = self.people.get(key)?;
        Some(self.redacted.people.get(key).unwrap_or(recorded))
    }

    /// A mark without its private fields.
    #[must_use]
    pub fn published_mark(&self, key: &Key) -> Option<&MarkRecord> {
        let recorded = self.marks.get(key)?;
        Some(self.redacted.marks.get(key).unwrap_or(recorded))
    }

    /// A document without its private fields; `None` also where it is not published.
    #[must_use]
    pub fn published_document(&self, key: &Key) -> Option<&Document> {
        let recorded = self.documents.get(key)?;
        let published = self.redacted.documents.get(key).unwrap_or(recorded);
        published.publish.then_some(published)
    }

    /// A series without its private fields.
    #[must_use]
    pub fn published_series(&self, key: &Key) -> Option<&SeriesRecord> {
        let recorded = self.series.get(key)?;
        Some(self.redacted.series.get(key).unwrap_or(recorded))
    }

    /// An exhibition without its private fields.
    #[must_use]
    pub fn published_exhibition(&self, key: &Key) -> Option<&Exhibition> {
        let recorded = self.exhibitions.get(key)?;
        Some(self.redacted.exhibitions.get(key).unwrap_or(recorded))
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
