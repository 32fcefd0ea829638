//! Marks: signatures, stamps, seals, collectors' marks, inscriptions and watermarks, each with its
//! sheets.

use std::collections::BTreeMap;

use serde::Serialize;

use crate::model::impression::Impression;
use crate::model::key::{ImpressionKey, Key};
use crate::model::mark::{Mark, MarkKind};
use crate::model::place::Placed;
use crate::model::words::ClosedList as _;
use crate::page::comparison::groups;
use crate::page::lists::list::List;
use crate::page::phrases::dates;
use crate::page::phrases::earlier_numbers::{self, NumberedPart};
use crate::page::phrases::papers;
use crate::page::setting::address::ComparedBy;
use crate::page::setting::book::Here;
use crate::page::setting::html::{CleanHtml, capitalised};
use crate::page::setting::leaf::Leaf;
use crate::page::setting::words::Argument;
use crate::study::marks::{self, MarkUser};
use crate::study::order::Collator;

#[derive(Serialize)]
struct View {
    title: String,
    brief: String,
    lists: Vec<List>,
}

/// The identity of a mark: everything but the place on the sheet. Two marks with the same identity are
/// one (`docs/definitions.md`, "Marks with several users").
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
struct MarkIdentity {
    /// The record of the mark; then everything else is empty here, and its record says it.
    record: Option<Key>,
    text: String,
    whose: Option<Key>,
    applied_by: Option<Key>,
    medium: String,
    colour: String,
    number: String,
}

pub(crate) fn page(here: &Here<'_>) -> Leaf {
    let words = here.words();
    let kinds = MarkKind::ALL.iter().map(|kind| list(here, Some(*kind)));
    let mut lists: Vec<List> = std::iter::once(shared(here)).chain(kinds).collect();
    lists.push(list(here, None));
    lists.push(watermarks(here));
    let title = words.word("marks").to_owned();
    let view = View {
        title: title.clone(),
        brief: words.word("marks-brief").to_owned(),
        lists: lists.into_iter().filter(List::has_lines).collect(),
    };
    Leaf::new(here.address, title, "pages/marks.html", &view)
}

/// Whether a sheet bears a mark or a watermark.
pub(crate) fn has_any(impression: &Impression) -> bool {
    !impression.marks.is_empty() || !impression.sheet.watermark.is_empty()
}

/// The marks that several people used, with the users, their times and the sheets.
fn shared(here: &Here<'_>) -> List {
    let words = here.words();
    let lines = here.book.studies.shared_marks.iter().map(|mark| {
        let whole = match &mark.identity {
            marks::MarkIdentity::Record(key) => here.mark(key),
            marks::MarkIdentity::Described(kind, name, _) => {
                let kind = CleanHtml::text(words.listed("mark", *kind));
                let name = words.with("quoted", &[("text", Argument::Text(name))]);
                CleanHtml::join([&kind, &CleanHtml::text(&name)], " ")
            }
        };
        let users: Vec<CleanHtml> = mark.users.iter().map(|user| used(here, user)).collect();
        capitalised(&whole)
            .then(". ")
            .and(&CleanHtml::join(&users, "; "))
            .then(".")
    });
    let lines = lines.collect();
    let mut list = List::new(CleanHtml::text(words.word("marks-shared")), lines);
    list.note = CleanHtml::text(words.word("marks-shared-note")).some();
    list.at(Some("shared".to_owned()))
}

/// "Rosalind Teape, about 1932 to 1968: 7.7, 9.3".
fn used(here: &Here<'_>, user: &MarkUser) -> CleanHtml {
    let when = user.when.as_ref().map_or_else(CleanHtml::empty, |date| {
        dates::throughout_html(date, here.words())
    });
    let name = CleanHtml::join([&here.person_or_holder(&user.key), &when], ", ");
    let mut sheets: Vec<&ImpressionKey> = user.sheets.iter().collect();
    sheets.sort_by_key(|key| here.book.studies.order.impression_rank(key));
    name.then(": ").and(&here.handles(sheets))
}

/// The marks of one kind.
fn list(here: &Here<'_>, kind: Option<MarkKind>) -> List {
    let mut met: BTreeMap<MarkIdentity, Vec<&ImpressionKey>> = BTreeMap::new();
    let is_of_kind = |of: Option<&Placed<MarkKind>>| of.map(|k| k.value) == kind;
    let records = here.public().marks.values();
    for record in records.filter(|record| is_of_kind(record.kind.as_ref())) {
        met.insert(of_record(&record.key), Vec::new());
    }
    for (_, impression) in here.impressions_in_order() {
        for mark in &impression.marks {
            let record = mark.record.as_ref();
            let record = record.and_then(|key| here.public().marks.get(&key.value));
            let own_kind = record.map_or(mark.kind.as_ref(), |record| record.kind.as_ref());
            if !is_of_kind(own_kind) {
                continue;
            }
            let sheets = met.entry(identity(mark)).or_default();
            if sheets.last() != Some(&&impression.key) {
                sheets.push(&impression.key);
            }
        }
    }
    let collator = Collator::of_words(here.language());
    let mut met: Vec<_> = met.into_iter().collect();
    met.sort_by(|(a, _), (b, _)| collator.compare(&a.text, &b.text).then_with(|| a.cmp(b)));
    let lines = met
        .into_iter()
        .map(|(mark, sheets)| {
            CleanHtml::join([&described(here, &mark), &here.handles(sheets)], ": ")
        })
        .collect();
    let word = kind.map_or("marks-other".to_owned(), |k| format!("marks-{}", k.word()));
    let id = kind.map_or("other".to_owned(), |k| k.word().to_owned());
    List::new(CleanHtml::text(here.words().word(&word)), lines).at(Some(id))
}

/// The identity of a mark that has a record.
fn of_record(key: &Key) -> MarkIdentity {
    MarkIdentity {
        record: Some(key.clone()),
        text: String::new(),
        whose: None,
        applied_by: None,
        medium: String::new(),
        colour: String::new(),
        number: String::new(),
    }
}

fn identity(mark: &Mark) -> MarkIdentity {
    if let Some(record) = &mark.record {
        return of_record(&record.value);
    }
    let text = |t: &Option<String>| t.clone().unwrap_or_default();
    MarkIdentity {
        record: None,
        text: text(&mark.text),
        whose: mark.whose.as_ref().map(|k| k.value.clone()),
        applied_by: mark.applied_by.as_ref().map(|k| k.value.clone()),
        medium: text(&mark.medium),
        colour: text(&mark.colour),
        number: text(&mark.number),
    }
}

/// "“O. Perelaz”, pencil; name of Oryna Perelaz; applied by Pavlo Perelaz; L. 1852".
fn described(here: &Here<'_>, mark: &MarkIdentity) -> CleanHtml {
    let words = here.words();
    if let Some(record) = mark
        .record
        .as_ref()
        .and_then(|k| here.public().marks.get(k))
    {
        let colour = CleanHtml::text(record.colour.as_deref().unwrap_or_default());
        let numbers = record.reference.iter();
        let numbers = numbers.map(|r| earlier_numbers::citation(here, r, NumberedPart::Design));
        let numbers = CleanHtml::join(&numbers.collect::<Vec<_>>(), "; ");
        let name = capitalised(&here.mark(&record.key));
        return CleanHtml::join([&name, &colour, &numbers], ", ");
    }
    let text = if mark.text.is_empty() {
        CleanHtml::empty()
    } else {
        CleanHtml::text(&words.with("quoted", &[("text", Argument::Text(&mark.text))]))
    };
    let what = CleanHtml::join(
        [
            &text,
            &CleanHtml::text(&mark.medium),
            &CleanHtml::text(&mark.colour),
        ],
        ", ",
    );
    let whose = mark.whose.as_ref().map_or_else(CleanHtml::empty, |whose| {
        let person = here.person_or_holder(whose);
        match &mark.applied_by {
            Some(by) if by == whose => person,
            _ => words.html("name-of", None, &[("person", &person)]),
        }
    });
    let by = match (&mark.whose, &mark.applied_by) {
        (_, None) => CleanHtml::empty(),
        (Some(whose), Some(by)) if whose == by => CleanHtml::text(words.word("mark-own-hand")),
        (_, Some(by)) => {
            let name = here.person_or_holder(by);
            words.html("mark-applied-by", None, &[("name", &name)])
        }
    };
    let whole = CleanHtml::join([&what, &whose, &by, &CleanHtml::text(&mark.number)], "; ");
    if whole.is_empty() {
        CleanHtml::text(words.word("mark-not-described"))
    } else {
        whole
    }
}

fn watermarks(here: &Here<'_>) -> List {
    let mut met: BTreeMap<String, (CleanHtml, Vec<&ImpressionKey>)> = BTreeMap::new();
    for (_, impression) in here.impressions_in_order() {
        for watermark in &impression.sheet.watermark {
            let told = papers::watermark_alone(here, watermark);
            let known = met.entry(told.plain());
            known.or_insert((told, Vec::new())).1.push(&impression.key);
        }
    }
    let by = ComparedBy::Watermark;
    let compared = groups::sheets(here.book, &by);
    let lines = met
        .into_values()
        .map(|(watermark, sheets)| {
            let compare = groups::chosen_href(here, &by, &compared, &sheets);
            let line = watermark.then(": ").and(&here.handles(sheets));
            match compare {
                Some(href) => {
                    let text = CleanHtml::text(here.words().word("compare"));
                    line.then(". ").and(&CleanHtml::link(&href, &text))
                }
                None => line,
            }
        })
        .collect();
    List::new(CleanHtml::text(here.words().word("marks-watermark")), lines)
        .at(Some("watermark".to_owned()))
}
