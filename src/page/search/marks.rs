//! Marks and watermarks as they are searched: one entry for those that are told alike on every sheet.

use std::collections::BTreeMap;

use crate::model::key::Key;
use crate::model::mark::MarkKind;
use crate::model::words::ClosedList as _;
use crate::page::phrases::papers;
use crate::page::setting::address::{Address, Overview};
use crate::page::setting::book::Here;
use crate::study::search::entry::{Entry, EntryKind, Field};

/// What a mark is told by.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
struct Told {
    kind: Option<MarkKind>,
    text: String,
    number: String,
    whose: Option<Key>,
}

/// The marks, by kind and text, then the watermarks.
pub(super) fn all(here: &Here<'_>) -> Vec<Entry> {
    let words = here.words();
    let mut marks: BTreeMap<Told, usize> = BTreeMap::new();
    let mut watermarks: BTreeMap<String, usize> = BTreeMap::new();
    for (_, impression) in here.impressions_in_order() {
        for mark in &impression.marks {
            let told = Told {
                kind: mark.kind.as_ref().map(|kind| kind.value),
                text: mark.text.clone().unwrap_or_default(),
                number: mark.number.clone().unwrap_or_default(),
                whose: mark.whose.as_ref().map(|key| key.value.clone()),
            };
            *marks.entry(told).or_default() += 1;
        }
        for watermark in &impression.sheet.watermark {
            let told = papers::watermark_alone(here, watermark).plain();
            *watermarks.entry(told).or_default() += 1;
        }
    }
    let address = Address::Overview(Overview::Marks);
    let has_name = |told: &Told| !(told.text.is_empty() && told.number.is_empty());
    let marks = marks.into_iter().filter(|(told, _)| has_name(told));
    let marks = marks.map(|(told, sheets)| {
        let kind = told
            .kind
            .map_or(words.word("mark"), |kind| words.listed("mark", kind));
        let place = told.kind.map_or("other", |kind| kind.word());
        let name = if told.text.is_empty() {
            &told.number
        } else {
            &told.text
        };
        let mut entry = Entry::new(EntryKind::Mark, name.clone(), format!("{address}#{place}"));
        let whose = told
            .whose
            .as_ref()
            .map(|key| here.person_or_holder(key).plain());
        let parts = [Some(kind), whose.as_deref()].into_iter().flatten();
        let count = words.count("count-sheets", sheets);
        entry.about = parts.chain([count.as_str()]).collect::<Vec<_>>().join(", ");
        entry.add(Field::Name, name);
        entry.add(Field::Number, &told.number);
        entry.add(Field::Fact, kind);
        entry.add_all(Field::Fact, whose);
        if !told.text.is_empty() {
            entry.number = told.number;
        }
        entry
    });
    let kind = words.word("marks-watermark");
    let watermarks = watermarks.into_iter().map(|(watermark, sheets)| {
        let href = format!("{address}#watermark");
        let mut entry = Entry::new(EntryKind::Mark, watermark.clone(), href);
        entry.about = format!("{kind}, {}", words.count("count-sheets", sheets));
        entry.add(Field::Name, watermark);
        entry.add(Field::Fact, kind);
        entry
    });
    marks.chain(watermarks).collect()
}
