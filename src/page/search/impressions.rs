//! Impressions as they are searched.

use super::designs::{add_term, of_design, smallest, titles_as_facts};
use super::former;
use super::narrowing::{self, Ranks};
use crate::model::design::Design;
use crate::model::impression::{Impression, Party};
use crate::model::vocabulary::List as Vocabulary;
use crate::page::phrases::{dates, identifiers, papers, readings, standing_note};
use crate::page::plates::figures;
use crate::page::setting::address::Address;
use crate::page::setting::book::Here;
use crate::page::texts::plain_text;
use crate::study::search::entry::{Entry, EntryKind, Field};

/// The impressions of a design. A sheet with several records has one entry, with the words of all of them.
pub(super) fn all(here: &Here<'_>, design: &Design, ranks: &Ranks) -> Vec<Entry> {
    let impressions = design.impressions.values();
    impressions
        .filter(|impression| here.joined().has_page(&impression.key))
        .map(|impression| one(here, design, impression, ranks))
        .collect()
}

fn one(here: &Here<'_>, design: &Design, impression: &Impression, ranks: &Ranks) -> Entry {
    let mut entry = of_design(here, design, EntryKind::Impression, "");
    entry.href = Address::Impression(impression.key.clone()).to_string();
    entry.number = here.sheet_number(&impression.key);
    let reading = readings::short(here, design, impression).plain();
    let place = figures::holder_and_number(here, impression).plain();
    entry.about = match (reading.is_empty(), reading.ends_with('.')) {
        (true, _) => place,
        (false, true) => format!("{reading} {place}"),
        (false, false) => format!("{reading}. {place}"),
    };
    titles_as_facts(&mut entry, design);
    entry.add(Field::Fact, reading);
    for record in here.joined().on_page(design, impression) {
        numbers(here, record, &mut entry);
        what_it_is(here, record, &mut entry);
        where_it_was(here, record, &mut entry);
        texts(here, record, &mut entry);
    }
    entry.picture = figures::leading_picture(here, impression).and_then(|key| smallest(here, &key));
    entry.values = ranks.techniques(design);
    let holder = impression.holder.as_ref();
    entry
        .values
        .extend(holder.and_then(|key| ranks.holder(&key.value)));
    if let Some(reading) = &impression.identified {
        entry
            .values
            .extend(narrowing::reading(here, design, reading));
    }
    let date = impression.sheet.date.own().or(design.date.own());
    entry.values.extend(narrowing::decade(here, date));
    entry
}

fn numbers(here: &Here<'_>, impression: &Impression, entry: &mut Entry) {
    entry.add(Field::Number, here.record_number(&impression.key));
    former::add_of_sheet(here, &impression.key, entry);
    let accession = impression.accession.as_ref();
    entry.add_all(Field::Accession, accession.map(|number| number.as_str()));
    let part = impression.part.as_ref();
    entry.add_all(Field::Fact, part.map(|part| part.as_str()));
    entry.add_all(Field::Accession, identifiers::searched(&impression.ids));
    let former = impression.former_accessions.iter();
    entry.add_all(
        Field::Accession,
        former.map(|former| former.number.as_str()),
    );
}

fn what_it_is(here: &Here<'_>, impression: &Impression, entry: &mut Entry) {
    let words = here.words();
    for kind in &impression.kind {
        add_term(here, entry, Vocabulary::Kinds, kind.is.value.as_str());
    }
    entry.add(Field::Fact, here.status(impression.status.value));
    let techniques = impression.technique.iter();
    entry.add_all(
        Field::Fact,
        techniques.map(|key| here.term(Vocabulary::Techniques, key.as_str())),
    );
    entry.add_all(
        Field::Fact,
        impression
            .numbering
            .as_ref()
            .map(|numbering| numbering.as_str()),
    );
    let sheet = &impression.sheet;
    if let Some(key) = &sheet.paper {
        add_term(here, entry, Vocabulary::Papers, key.as_str());
    }
    let watermarks = sheet.watermark.iter();
    let watermarks = watermarks.map(|watermark| papers::watermark(here, watermark).plain());
    entry.add_all(Field::Fact, watermarks);
    entry.add_all(
        Field::Fact,
        [&sheet.colour, &sheet.mounted_on].into_iter().flatten(),
    );
    entry.add_all(
        Field::Fact,
        sheet.date.own().map(|date| dates::once(date, words)),
    );
    for mark in &impression.marks {
        let kind = mark.kind.as_ref();
        entry.add_all(
            Field::Fact,
            kind.map(|kind| words.listed("mark", kind.value)),
        );
        let texts = [&mark.text, &mark.medium, &mark.colour, &mark.number];
        entry.add_all(Field::Fact, texts.into_iter().flatten());
        for key in [&mark.whose, &mark.applied_by].into_iter().flatten() {
            entry.add(Field::Fact, here.person_or_holder(&key.value).plain());
        }
    }
}

fn where_it_was(here: &Here<'_>, impression: &Impression, entry: &mut Entry) {
    let public = here.public();
    let mut party = |party: &Party| match party {
        Party::Undisclosed => {}
        known => entry.add(Field::Fact, here.party(known).plain()),
    };
    impression.owners.iter().for_each(&mut party);
    for step in &impression.provenance {
        party(&step.party);
    }
    if let Some(key) = &impression.holder {
        entry.add(Field::Fact, here.holder_and_city(&key.value).plain());
        let country = public
            .holders
            .get(&key.value)
            .and_then(|h| h.country.as_ref());
        entry.add_all(Field::Fact, country.map(|code| here.country(code)));
    }
    entry.add_all(Field::Fact, &impression.credit);
    for step in &impression.provenance {
        entry.add_all(
            Field::Fact,
            [&step.at_place, &step.lot].into_iter().flatten(),
        );
    }
    for shown in &impression.exhibited {
        let exhibition = public.exhibitions.get(&shown.exhibition.value);
        entry.add_all(Field::Fact, exhibition.map(|e| e.title.as_str()));
    }
}

fn texts(here: &Here<'_>, impression: &Impression, entry: &mut Entry) {
    let sheet = &impression.sheet;
    entry.add(Field::Text, papers::condition_in_words(here, impression));
    let texts = [&sheet.margins, &sheet.measuring.said];
    entry.add_all(Field::Text, texts.into_iter().flatten());
    for picture in &impression.pictures {
        entry.add_all(
            Field::Text,
            [&picture.caption, &picture.light].into_iter().flatten(),
        );
        entry.add_all(
            Field::Text,
            picture.by.as_ref().map(|by| here.party(by).plain()),
        );
    }
    let line = impression.provenance_line.as_ref();
    entry.add_all(Field::Text, line.map(|line| line.as_str()));
    if let Some(reading) = &impression.identified {
        let readings = readings::all(reading).into_iter();
        entry.add_all(
            Field::Text,
            readings.filter_map(|reading| reading.why.as_ref()),
        );
    }
    for opinion in &impression.opinions {
        entry.add_all(
            Field::Text,
            [&opinion.said, &opinion.reading.why].into_iter().flatten(),
        );
    }
    for field in impression.as_given.iter().flat_map(|given| &given.fields) {
        entry.add(Field::Text, field.text.as_str());
    }
    let standing = standing_note::note(here, &impression.standing);
    entry.add_all(Field::Text, standing.map(|note| note.plain()));
    entry.add(
        Field::Text,
        plain_text::note(here, impression.note.as_ref()),
    );
}
