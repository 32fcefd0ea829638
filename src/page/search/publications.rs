//! The literature, the numbers of earlier catalogues, the exhibitions, the series and the documents, as they are searched.

use super::designs::as_cited;
use super::former;
use super::parties::by_title;
use crate::model::exhibition::Venue;
use crate::model::link::Target;
use crate::model::literature::Relation;
use crate::model::vocabulary::List;
use crate::page::phrases::dates;
use crate::page::phrases::document_names::{date, kept};
use crate::page::phrases::earlier_numbers::relation;
use crate::page::phrases::series_names::published;
use crate::page::setting::address::{Address, Fragment};
use crate::page::setting::book::Here;
use crate::page::texts::plain_text;
use crate::study::concordance::{DesignPart, ReverseRow};
use crate::study::search::entry::{Entry, EntryKind, Field};

/// The works of the literature, by short form.
pub(super) fn works(here: &Here<'_>) -> Vec<Entry> {
    let works = here.public().literature.values().map(|work| {
        let href = Address::Work(work.key.clone()).to_string();
        let mut entry = Entry::new(EntryKind::Work, work.short.clone(), href);
        entry.about.clone_from(&work.title);
        entry.add(Field::Name, &work.short);
        former::add(here, Target::Work(work.key.clone()), &mut entry);
        entry.add(Field::Name, &work.title);
        entry.add(Field::Fact, &work.full);
        entry.add(Field::Text, plain_text::note(here, work.note.as_ref()));
        entry
    });
    by_title(here, works.collect())
}

/// The numbers of the earlier catalogues, each with what it stands for here: by work, then in its order.
pub(super) fn earlier_numbers(here: &Here<'_>) -> Vec<Entry> {
    let concordance = &here.book.studies.concordance;
    let mut entries = Vec::new();
    for work in &concordance.works {
        let Some(work) = here.public().literature.get(work) else {
            continue;
        };
        for number in concordance.numbers_of(&work.key) {
            if number.fragment.is_empty() {
                continue;
            }
            let address = Address::Work(work.key.clone());
            let href = format!("{address}#{}", Fragment::EarlierNumber(&number.fragment));
            let mut entry = Entry::new(EntryKind::Earlier, work.short.clone(), href);
            entry.number = number.cited();
            let ours = number.rows.iter().map(|row| ours(here, row));
            let ours = ours.collect::<Vec<_>>().join("; ");
            entry.about = format!("{}: {ours}", here.words().word("our-number"));
            // A number of a state alone is cited with that of its design.
            if number.number.is_some() {
                entry.add_all(Field::Number, as_cited(work, number.cited()));
            }
            entries.push(entry);
        }
    }
    entries
}

/// "7 iii/v (includes this state)".
fn ours(here: &Here<'_>, row: &ReverseRow) -> String {
    let ours = &row.ours;
    let Some(design) = here.public().designs.get(&ours.design) else {
        return String::new();
    };
    let part = match &ours.part {
        DesignPart::Whole => String::new(),
        DesignPart::State(state) => here.state_of(&design.key, state).plain(),
        DesignPart::Printing(printing) => here.printing_name(design, printing),
    };
    let mut told = format!("{} {part}", design.number).trim_end().to_owned();
    if row.relation != Relation::Same {
        let relation = relation(here.words(), row.relation, (&ours.part).into());
        told = format!("{told} ({relation})");
    }
    told
}

/// The exhibitions, by title.
pub(super) fn exhibitions(here: &Here<'_>) -> Vec<Entry> {
    let exhibitions = here.public().exhibitions.values().map(|exhibition| {
        let href = Address::Exhibition(exhibition.key.clone()).to_string();
        let title = exhibition.title.value.clone();
        let mut entry = Entry::new(EntryKind::Exhibition, title, href);
        entry.add(Field::Name, &exhibition.title.value);
        former::add(here, Target::Exhibition(exhibition.key.clone()), &mut entry);
        let venue = exhibition.venue.as_ref().map(|venue| match venue {
            Venue::Holder(key) => here.holder_and_city(&key.value).plain(),
            Venue::Named(name) => name.clone(),
        });
        let date = exhibition.date.as_ref();
        let date = date.map(|date| dates::throughout(&date.value, here.words()));
        let facts: Vec<String> = venue
            .into_iter()
            .chain(exhibition.town.clone())
            .chain(date)
            .collect();
        entry.about = facts.join(", ");
        entry.add_all(Field::Fact, facts);
        entry
    });
    by_title(here, exhibitions.collect())
}

/// The series that have records, by title.
pub(super) fn series(here: &Here<'_>) -> Vec<Entry> {
    let series = here.public().series.values().map(|series| {
        let href = Address::Series(series.key.clone()).to_string();
        let name = here.series_title(series).plain();
        let mut entry = Entry::new(EntryKind::Series, name.clone(), href);
        let titles = series.titles.iter().map(|title| title.text.value.clone());
        let others: Vec<String> = titles.filter(|title| *title != name).collect();
        entry.add(Field::Name, name);
        entry.add_all(Field::Name, others);
        former::add(here, Target::Series(series.key.clone()), &mut entry);
        let facts = published(here, series).plain();
        if !facts.is_empty() {
            entry.about.clone_from(&facts);
            entry.add(Field::Fact, facts);
        }
        if let Some(remark) = &series.remark {
            entry.add(Field::Text, remark);
        }
        if let Some(note) = &series.note {
            entry.add(Field::Text, plain_text::note(here, Some(note)));
        }
        entry
    });
    by_title(here, series.collect())
}

/// The documents, by title.
pub(super) fn documents(here: &Here<'_>) -> Vec<Entry> {
    let documents = here.public().documents.values().map(|document| {
        let href = Address::Document(document.key.clone()).to_string();
        let name = here.document_name(document).plain();
        let mut entry = Entry::new(EntryKind::Document, name.clone(), href);
        entry.add(Field::Name, name);
        former::add(here, Target::Document(document.key.clone()), &mut entry);
        let kind = document.kind.as_ref().filter(|_| document.title.is_some());
        let kind = kind.map(|kind| here.term(List::Documents, kind.as_str()));
        let date = date(here, document).plain();
        let kept = kept(here, document).plain();
        let parties = document.by.iter().chain(&document.to);
        let parties = parties.map(|party| here.party(party).plain());
        let facts: Vec<String> = kind
            .into_iter()
            .chain(parties)
            .chain([date, kept])
            .filter(|fact| !fact.is_empty())
            .collect();
        entry.about = facts.join(", ");
        entry.add_all(Field::Fact, facts);
        if let Some(kind) = &document.kind {
            entry.add_all(Field::Fact, here.synonyms(List::Documents, kind.as_str()));
        }
        let says = document.tells.iter().map(|telling| &telling.says.value);
        for text in says {
            entry.add(Field::Text, text);
        }
        let texts = document.note.iter().chain(&document.transcription);
        let translations = document.translations.iter().map(|(_, text)| text);
        for text in texts.chain(translations) {
            entry.add(Field::Text, plain_text::note(here, Some(text)));
        }
        entry
    });
    by_title(here, documents.collect())
}
