//! Every address of the catalogue as it is now, and how its entry reads.
//!
//! In: the catalogue as readers may know it, and its studies. Out: [`Present`], what the register would say of each
//! address. Nothing private can be in it, because the catalogue has nothing private.

use std::collections::BTreeMap;

use crate::Studies;
use crate::numerals::roman;
use keyblock_model::catalogue::Catalogue;
use keyblock_model::design::{Comparison, Design};
use keyblock_model::impression::Impression;
use keyblock_model::issued_address::IssuedAddress;
use keyblock_model::issued_reading::IssuedReadings;
use keyblock_model::key::{Key, PictureKey, PictureOwner};
use keyblock_model::link::Target;
use keyblock_model::note::Note;
use keyblock_model::occurrence::{DesignPart, RecordId};
use keyblock_model::register::{Aspect, Digest, Subject};
use keyblock_model::standing::RecordStanding;
use keyblock_model::words::{ClosedList as _, Standing};

use super::subjects::subject;

/// What the register would say of an address.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct PresentEntry {
    /// How its entry reads; what is empty is left out.
    pub said: BTreeMap<Aspect, String>,
    /// The digest of each subject.
    pub holds: BTreeMap<Subject, Digest>,
}

/// Every address of a catalogue.
#[derive(Clone, Debug, Default)]
pub struct Present(pub BTreeMap<IssuedAddress, PresentEntry>);

impl Present {
    /// The addresses of a catalogue that readers may know: of [`keyblock_model::public::Public`], with its studies.
    #[must_use]
    pub fn of(catalogue: &Catalogue, studies: &Studies) -> Present {
        let mut present = Present::default();
        for design in catalogue.designs.values() {
            present.design(catalogue, studies, design);
        }
        for (key, holder) in &catalogue.holders {
            let target = Target::Holder(key.clone());
            let note = holder.note.as_ref();
            let entry = present.record(catalogue, target, &RecordId::Holder(key.clone()), note);
            let successor = holder.successor.as_ref();
            let successor = successor.map_or("", |successor| successor.holder.value.as_str());
            entry.say(Aspect::Successor, successor);
        }
        for (key, person) in &catalogue.people {
            let target = Target::Person(key.clone());
            let note = person.note.as_ref();
            present.record(catalogue, target, &RecordId::Person(key.clone()), note);
        }
        for (key, mark) in &catalogue.marks {
            let target = Target::Mark(key.clone());
            let note = mark.note.as_ref();
            present.record(catalogue, target, &RecordId::Mark(key.clone()), note);
            for condition in &mark.conditions {
                let condition = condition.key.value.clone();
                present.add(IssuedAddress::Condition(key.clone(), condition));
            }
        }
        for (key, document) in &catalogue.documents {
            let target = Target::Document(key.clone());
            let note = document.note.as_ref();
            present.record(catalogue, target, &RecordId::Document(key.clone()), note);
            for picture in &document.pictures {
                present.picture(PictureOwner::Document(key.clone()), &picture.name.value);
            }
        }
        for (key, series) in &catalogue.series {
            let target = Target::Series(key.clone());
            let note = series.note.as_ref();
            let entry = present.record(catalogue, target, &RecordId::Series(key.clone()), note);
            entry.say_standing(&series.standing);
        }
        for key in catalogue.exhibitions.keys() {
            let target = Target::Exhibition(key.clone());
            present.record(catalogue, target, &RecordId::Exhibition(key.clone()), None);
        }
        for key in catalogue.literature.keys() {
            present.add(IssuedAddress::Record(Target::Work(key.clone())));
        }
        for (key, page) in &catalogue.pages {
            let target = Target::Page(key.clone());
            let note = Some(&page.note);
            present.record(catalogue, target, &RecordId::Page(key.clone()), note);
        }
        present
    }

    fn add(&mut self, address: IssuedAddress) -> &mut PresentEntry {
        self.0.entry(address).or_default()
    }

    /// Adds a record with the digests of its subjects.
    fn record(
        &mut self,
        catalogue: &Catalogue,
        target: Target,
        record: &RecordId,
        note: Option<&Note>,
    ) -> &mut PresentEntry {
        let holds = subject_digests(catalogue, record, note);
        let entry = self.0.entry(IssuedAddress::Record(target)).or_default();
        entry.holds = holds;
        entry
    }

    fn design(&mut self, catalogue: &Catalogue, studies: &Studies, design: &Design) {
        let key = &design.key;
        let target = Target::Design(key.clone());
        let record = RecordId::Design(key.clone());
        let entry = self.record(catalogue, target, &record, design.commentary.as_ref());
        entry.say(Aspect::Number, &design.number);
        entry.say_standing(&design.standing);
        let part = |part, name: &Key| IssuedAddress::Part(key.clone(), part, name.clone());
        for state in &design.states {
            let name = &state.key.value;
            let entry = self.add(part(DesignPart::State, name));
            entry.say_standing(&state.standing);
            if let Some(numeral) = studies.numeral(key, name) {
                let of = roman(numeral.of());
                entry.say(Aspect::Numeral, &format!("{}/{of}", numeral.roman()));
            }
        }
        for printing in &design.printings {
            let entry = self.add(part(DesignPart::Printing, &printing.key.value));
            entry.say_standing(&printing.standing);
        }
        for variant in &design.variants {
            let entry = self.add(part(DesignPart::Variant, &variant.key.value));
            entry.say_standing(&variant.standing);
        }
        for matrix in &design.matrices {
            self.add(part(DesignPart::Matrix, &matrix.key.value));
        }
        for point in &design.points {
            self.add(IssuedAddress::Point(key.clone(), point.key.value.clone()));
        }
        for comparison in &design.comparisons {
            let number = comparison.number;
            let entry = self.add(IssuedAddress::Comparison(key.clone(), number));
            entry.say(Aspect::Shows, &shown(comparison));
        }
        for picture in &design.pictures {
            self.picture(PictureOwner::Design(key.clone()), &picture.name.value);
        }
        for impression in design.impressions.values() {
            self.impression(catalogue, studies, impression);
        }
    }

    fn impression(&mut self, catalogue: &Catalogue, studies: &Studies, impression: &Impression) {
        let key = &impression.key;
        let target = Target::Impression(key.clone());
        let record = RecordId::Impression(key.clone());
        let entry = self.record(catalogue, target, &record, impression.note.as_ref());
        let readings = IssuedReadings::of(impression.identified.as_ref());
        entry.say(Aspect::Identified, &readings.to_string());
        let holder = impression.holder.as_ref();
        entry.say(Aspect::Holder, holder.map_or("", |key| key.value.as_str()));
        let page = studies.joined.page_of(key);
        if page != key {
            entry.say(Aspect::Sheet, &page.to_string());
        }
        entry.say_standing(&impression.standing);
        for picture in &impression.pictures {
            self.picture(PictureOwner::Impression(key.clone()), &picture.name.value);
        }
    }

    fn picture(&mut self, owner: PictureOwner, name: &Key) {
        let name = name.clone();
        let key = PictureKey { owner, name };
        self.add(IssuedAddress::Record(Target::Picture(key)));
    }
}

impl PresentEntry {
    fn say(&mut self, aspect: Aspect, value: &str) {
        if !value.is_empty() {
            self.said.insert(aspect, value.to_owned());
        }
    }

    fn say_standing(&mut self, standing: &RecordStanding) {
        if standing.standing != Standing::Accepted {
            self.say(Aspect::Standing, standing.standing.word());
        }
    }
}

/// The digest of each subject of a record, with the text beside it.
#[must_use]
pub fn subject_digests(
    catalogue: &Catalogue,
    record: &RecordId,
    note: Option<&Note>,
) -> BTreeMap<Subject, Digest> {
    let content = catalogue.contents.get(record);
    let mut hashers: BTreeMap<Subject, blake3::Hasher> = BTreeMap::new();
    for (key, digest) in content.into_iter().flatten() {
        let Some(subject) = subject(key) else {
            continue;
        };
        let hasher = hashers.entry(subject).or_default();
        hasher.update(format!("{key} {digest} ").as_bytes());
    }
    if let Some(note) = note {
        let hasher = hashers.entry(Subject::Text).or_default();
        hasher.update(note.text.as_bytes());
    }
    let digests = hashers.into_iter();
    digests
        .map(|(subject, hasher)| (subject, Digest::of(hasher.finalize().as_bytes())))
        .collect()
}

/// The impressions that a comparison shows, by key: "14.1 14.3".
#[must_use]
pub fn shown(comparison: &Comparison) -> String {
    let keys = comparison.of.iter().map(|key| key.value.to_string());
    keys.collect::<Vec<_>>().join(" ")
}
