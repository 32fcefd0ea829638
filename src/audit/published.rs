//! Every text of a catalogue that readers get to see, with where it stands.
//!
//! Made from the records as they may be published: fields listed as private, impressions and
//! pictures that are not published, and the names of private owners are not among them. A field
//! that is added to the model and shown to readers belongs here too.

use crate::model::catalogue::Catalogue;
use crate::model::certainty::{Claim, Statements};
use crate::model::design::Design;
use crate::model::exhibition::Venue;
use crate::model::holder::Holder;
use crate::model::impression::{Identification, Impression};
use crate::model::literature::Citation;
use crate::model::note::Note;
use crate::model::person::Person;
use crate::model::picture::Picture;
use crate::model::place::{Place, Placed};
use crate::model::point::PointKind;
use crate::model::provenance::Party;
use crate::model::state::Stands;

/// A text that readers see.
#[derive(Clone, Copy, Debug)]
pub(super) struct Text<'a> {
    /// What it says.
    pub(super) says: &'a str,
    /// Where it stands; for a field whose place is not kept, the record it belongs to.
    pub(super) place: Place,
    /// Whether `place` is the text's own.
    pub(super) is_exact: bool,
}

/// Every text that readers see, record by record.
pub(super) fn texts(catalogue: &Catalogue) -> Vec<Text<'_>> {
    let mut texts = Texts(Vec::new());
    texts.settings(catalogue);
    texts.terms(catalogue);
    for design in catalogue.designs.values() {
        texts.design(catalogue.published_design(design));
        for impression in design.impressions.values().filter(|i| i.publish) {
            texts.impression(catalogue.published_impression(impression));
        }
    }
    for holder in catalogue.holders.keys() {
        if let Some(holder) = catalogue.published_holder(holder) {
            texts.holder(holder);
        }
    }
    for person in catalogue.people.keys() {
        if let Some(person) = catalogue.published_person(person) {
            texts.person(person);
        }
    }
    for key in catalogue.exhibitions.keys() {
        if let Some(exhibition) = catalogue.published_exhibition(key) {
            texts.placed(&exhibition.title);
            texts.maybe(exhibition.town.as_ref(), exhibition.place);
            if let Some(Venue::Named(venue)) = &exhibition.venue {
                texts.unplaced(venue, exhibition.place);
            }
        }
    }
    for work in catalogue.literature.values() {
        for text in [&work.full, &work.short, &work.title, &work.authors] {
            texts.unplaced(text, work.place);
        }
        texts.note(work.note.as_ref());
    }
    for page in catalogue.pages.values() {
        texts.note(Some(&page.note));
    }
    texts.0
}

struct Texts<'a>(Vec<Text<'a>>);

impl<'a> Texts<'a> {
    fn placed(&mut self, text: &'a Placed<String>) {
        self.0.push(Text {
            says: &text.value,
            place: text.place,
            is_exact: true,
        });
    }

    fn unplaced(&mut self, text: &'a str, record: Place) {
        self.0.push(Text {
            says: text,
            place: record,
            is_exact: false,
        });
    }

    fn maybe(&mut self, text: Option<&'a String>, record: Place) {
        if let Some(text) = text {
            self.unplaced(text, record);
        }
    }

    fn maybe_placed(&mut self, text: Option<&'a Placed<String>>) {
        if let Some(text) = text {
            self.placed(text);
        }
    }

    fn note(&mut self, note: Option<&'a Note>) {
        if let Some(note) = note {
            self.unplaced(&note.text, Place::start_of(note.file));
        }
    }

    fn settings(&mut self, catalogue: &'a Catalogue) {
        let settings = &catalogue.settings;
        self.placed(&settings.title);
        self.placed(&settings.siglum);
        self.placed(&settings.address);
        for text in [
            &settings.edition,
            &settings.licence,
            &settings.work_rights,
            &settings.contact,
        ] {
            self.maybe(text.as_ref(), settings.place);
        }
        for (_, text) in settings.principles.iter().chain(&settings.cautions) {
            self.unplaced(text, settings.place);
        }
    }

    fn claim(&mut self, claim: &'a Claim, record: Place) {
        self.maybe(claim.at.as_ref(), record);
    }

    fn claims<T>(&mut self, statements: &'a Statements<T>) {
        for statement in &statements.0 {
            self.claim(&statement.claim, statement.is.place);
        }
    }

    fn terms(&mut self, catalogue: &'a Catalogue) {
        for term in catalogue.vocabularies.0.values().flatten() {
            let (_, term) = term;
            for text in term.labels.values().chain(term.notes.values()) {
                self.unplaced(text, catalogue.settings.place);
            }
        }
    }

    fn literature(&mut self, literature: &'a [Citation]) {
        for citation in literature {
            self.maybe(citation.at.as_ref(), citation.place);
            self.maybe(citation.number.as_ref(), citation.place);
        }
    }

    fn stands(&mut self, stands: &'a Stands, record: Place) {
        self.maybe(stands.why.as_ref(), record);
    }

    fn pictures(&mut self, pictures: &'a [Picture]) {
        for picture in pictures.iter().filter(|p| p.publish) {
            self.placed(&picture.rights);
            self.maybe(picture.credit.as_ref(), picture.place);
            self.maybe(picture.at.as_ref(), picture.place);
        }
    }

    fn design(&mut self, design: &'a Design) {
        let record = design.place;
        self.unplaced(&design.number, record);
        for title in &design.titles {
            self.placed(&title.text);
            self.claim(&title.claim, title.text.place);
        }
        for maker in &design.makers {
            self.claim(&maker.claim, maker.person.place);
        }
        self.claims(&design.date);
        self.claims(&design.image);
        self.claims(&design.matrix_size);
        if let Some(series) = &design.series {
            self.placed(&series.name);
        }
        for subject in &design.subjects {
            self.placed(subject);
        }
        for matrix in &design.matrices {
            for text in [&matrix.material, &matrix.carries, &matrix.colour] {
                self.maybe(text.as_ref(), matrix.place);
            }
        }
        for point in &design.points {
            self.placed(&point.ask);
            if let PointKind::Choice(values) = &point.kind {
                for value in values {
                    self.unplaced(&value.description, value.key.place);
                }
            }
        }
        for state in &design.states {
            self.maybe(state.summary.as_ref(), state.place);
            self.claims(&state.date);
            self.literature(&state.literature);
            self.stands(&state.standing, state.place);
        }
        for printing in &design.printings {
            self.maybe(printing.name.as_ref(), printing.place);
            self.claims(&printing.kind);
            self.claims(&printing.printer);
            self.claims(&printing.publisher);
            self.claims(&printing.date);
            self.claims(&printing.edition);
            self.literature(&printing.literature);
            self.stands(&printing.standing, printing.place);
        }
        for variant in &design.variants {
            self.maybe(variant.summary.as_ref(), variant.place);
            self.stands(&variant.standing, variant.place);
        }
        for comparison in &design.comparisons {
            self.maybe(comparison.why.as_ref(), comparison.place);
        }
        self.literature(&design.literature);
        self.literature(&design.known_from);
        self.pictures(&design.pictures);
        self.stands(&design.standing, record);
        self.note(design.commentary.as_ref());
    }

    fn impression(&mut self, impression: &'a Impression) {
        let record = impression.place;
        self.maybe_placed(impression.accession.as_ref());
        self.maybe_placed(impression.numbering.as_ref());
        self.maybe(impression.credit.as_ref(), record);
        self.maybe(impression.condition.as_ref(), record);
        self.maybe(impression.provenance_line.as_ref(), record);
        self.maybe(impression.sheet.watermark.as_ref(), record);
        self.maybe(impression.sheet.margins.as_ref(), record);
        self.claims(&impression.kind);
        self.claims(&impression.sheet.size);
        self.claims(&impression.sheet.image);
        self.claims(&impression.sheet.platemark);
        self.claims(&impression.sheet.date);
        for observation in &impression.observed {
            self.claim(&observation.claim, observation.place);
        }
        if let Some(owner) = &impression.owner {
            self.party(owner);
        }
        for former in &impression.former_accessions {
            self.unplaced(&former.number, record);
        }
        if let Some(identified) = &impression.identified {
            self.reading(identified);
        }
        for opinion in &impression.opinions {
            self.maybe(opinion.said.as_ref(), opinion.reading.place);
            self.reading(&opinion.reading);
        }
        for mark in &impression.marks {
            self.claim(&mark.claim, mark.place);
            for text in [
                &mark.text,
                &mark.medium,
                &mark.at,
                &mark.colour,
                &mark.number,
            ] {
                self.maybe(text.as_ref(), mark.place);
            }
        }
        for entry in &impression.provenance {
            self.party(&entry.party);
            self.claim(&entry.claim, entry.place);
            for text in [&entry.at_place, &entry.lot, &entry.price] {
                self.maybe(text.as_ref(), entry.place);
            }
        }
        for sighting in &impression.sightings {
            if let Some(by) = &sighting.by {
                self.party(by);
            }
            self.maybe(sighting.at.as_ref(), sighting.place);
        }
        for shown in &impression.exhibited {
            self.maybe(shown.at.as_ref(), record);
        }
        let others = impression
            .same_as
            .iter()
            .chain(&impression.maybe_same_as)
            .chain(&impression.not_same_as);
        for other in others {
            self.maybe(other.why.as_ref(), other.impression.place);
        }
        self.literature(&impression.literature);
        self.pictures(&impression.pictures);
        self.stands(&impression.standing, record);
        self.note(impression.note.as_ref());
    }

    fn party(&mut self, party: &'a Party) {
        if let Party::Named(name) = party {
            self.placed(name);
        }
    }

    fn reading(&mut self, identified: &'a Identification) {
        for reading in crate::study::census::readings(identified) {
            self.maybe(reading.why.as_ref(), reading.place);
            self.claim(&reading.claim, reading.place);
        }
    }

    fn holder(&mut self, holder: &'a Holder) {
        if holder.may_publish("place") {
            self.maybe_placed(holder.town.as_ref());
        }
        // A holder whose name is not published publishes little else (`model::public`).
        if !holder.may_publish("name") || holder.name.is_empty() {
            return;
        }
        self.placed(&holder.name);
        self.maybe(holder.credit.as_ref(), holder.place);
        self.maybe_placed(holder.web.as_ref());
        for former in &holder.formerly {
            self.placed(&former.name);
        }
        self.note(holder.note.as_ref());
    }

    fn person(&mut self, person: &'a Person) {
        self.placed(&person.name);
        self.maybe(person.sort.as_ref(), person.place);
        for name in &person.names {
            self.placed(&name.text);
        }
        for address in &person.authority {
            self.placed(address);
        }
        self.note(person.note.as_ref());
    }
}
