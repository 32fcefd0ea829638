//! What `terms --json` prints (docs/JSON.md).

use std::collections::BTreeMap;

use serde::Serialize;

use super::text::{name_of, tag_or};
use crate::model::vocabulary::List;
use crate::model::words::ClosedList;
use crate::study::term_uses::ListedTerm;

/// What `terms --json` prints.
#[derive(Debug, Serialize)]
pub(super) struct TermsDocument<'a> {
    lists: Vec<ListEntry<'a>>,
}

#[derive(Debug, Serialize)]
struct ListEntry<'a> {
    list: &'static str,
    terms: Vec<TermEntry<'a>>,
}

#[derive(Debug, Serialize)]
struct TermEntry<'a> {
    key: &'a str,
    origin: &'static str,
    labels: BTreeMap<&'a str, &'a String>,
    synonyms: BTreeMap<&'a str, &'a Vec<String>>,
    meanings: BTreeMap<&'a str, &'a String>,
    aat: Option<u32>,
    class: Option<&'static str>,
    used_by: Vec<String>,
}

impl<'a> TermsDocument<'a> {
    /// The terms, list by list. `language`: that of the catalogue.
    pub(super) fn of(terms: &[&'a ListedTerm<'a>], language: &'a str) -> TermsDocument<'a> {
        let lists = List::ALL.iter().filter_map(|list| {
            let of_list = terms.iter().filter(|term| term.list == *list);
            let terms: Vec<_> = of_list.map(|term| entry(term, language)).collect();
            let list = list.word();
            (!terms.is_empty()).then_some(ListEntry { list, terms })
        });
        TermsDocument {
            lists: lists.collect(),
        }
    }
}

fn entry<'a>(listed: &'a ListedTerm<'a>, language: &'a str) -> TermEntry<'a> {
    let term = listed.term;
    TermEntry {
        key: listed.key.as_str(),
        origin: listed.origin.word(),
        labels: by_tag(&term.labels, language),
        synonyms: by_tag(&term.synonyms, language),
        meanings: by_tag(&term.notes, language),
        aat: term.aat,
        class: term.class.map(ClosedList::word),
        used_by: listed.used_by.iter().map(name_of).collect(),
    }
}

fn by_tag<'a, T>(values: &'a BTreeMap<String, T>, language: &'a str) -> BTreeMap<&'a str, &'a T> {
    let tagged = values.iter();
    tagged
        .map(|(tag, value)| (tag_or(tag, language), value))
        .collect()
}
