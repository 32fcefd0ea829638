//! The terms of the vocabularies, where each comes from, and the records that use it.
//!
//! In: a catalogue, and the built-in vocabularies. Out: a [`ListedTerm`] for each term, in the order of the lists; and those
//! that fit a text ([`sought`]). A record counts once for a term, however often it names it. Subjects may be free words; those
//! that are the key of a term count as the term.
//!
//! ```
//! # mod literal { include!(concat!(env!("CARGO_MANIFEST_DIR"), "/../../tests/doc/catalogue.rs")); }
//! # use keyblock::model::vocabulary::List;
//! # use keyblock::study::term_uses::{listed, sought};
//! let catalogue = literal::catalogue(r#"
//! -- records/designs/1/design.toml
//! titles = [{ text = "The Ferry" }]
//! technique = "screenprint"
//! "#);
//! let terms = listed(&catalogue, &catalogue.vocabularies);
//! let found = sought(&terms, "silkscreen");
//! assert_eq!((found[0].list, found[0].key.as_str()), (List::Techniques, "screenprint"));
//! assert_eq!(found[0].used_by.len(), 1);
//! ```

use std::collections::{BTreeMap, BTreeSet};

use crate::order::Order;
use crate::search::words::words;
use keyblock_model::catalogue::Catalogue;
use keyblock_model::key::Key;
use keyblock_model::occurrence::{RecordId, Referent};
use keyblock_model::vocabulary::{List, Term, Vocabularies};
use keyblock_model::words::{ClosedList as _, closed_list};

closed_list! {
    /// Where a term comes from.
    TermOrigin {
        /// It is built into the program.
        BuiltIn = "built-in",
        /// The catalogue adds it.
        Own = "own",
        /// It is built in, and the catalogue defines it anew.
        Redefined = "redefined",
    }
}

/// A term with the records that use it.
#[derive(Clone, Debug)]
pub struct ListedTerm<'c> {
    /// Its list.
    pub list: List,
    /// Its key.
    pub key: &'c Key,
    /// The term.
    pub term: &'c Term,
    /// Where it comes from.
    pub origin: TermOrigin,
    /// The records that use it: designs and impressions in readers' order, then the others.
    pub used_by: Vec<RecordId>,
}

/// Every term of a catalogue, list by list, in the order of each list. `built_in`: the vocabularies of the program alone.
#[must_use]
pub fn listed<'c>(catalogue: &'c Catalogue, built_in: &Vocabularies) -> Vec<ListedTerm<'c>> {
    let mut uses = uses(catalogue);
    let order = Order::of(catalogue);
    let mut all = Vec::new();
    for list in List::ALL {
        for (key, term) in catalogue.vocabularies.terms(*list) {
            let is_own = catalogue
                .occurrences
                .contains_key(&RecordId::Term(*list, key.clone()));
            let is_built_in = built_in.term(*list, key.as_str()).is_some();
            let mut used_by: Vec<RecordId> = uses
                .remove(&(*list, key.as_str()))
                .into_iter()
                .flatten()
                .cloned()
                .collect();
            used_by.sort_by_cached_key(|record| (rank(record, &order), record.clone()));
            all.push(ListedTerm {
                list: *list,
                key,
                term,
                origin: match (is_own, is_built_in) {
                    (false, _) => TermOrigin::BuiltIn,
                    (true, false) => TermOrigin::Own,
                    (true, true) => TermOrigin::Redefined,
                },
                used_by,
            });
        }
    }
    all
}

/// The records that use each term.
fn uses(catalogue: &Catalogue) -> BTreeMap<(List, &str), BTreeSet<&RecordId>> {
    let mut uses: BTreeMap<(List, &str), BTreeSet<&RecordId>> = BTreeMap::new();
    for (record, occurrences) in &catalogue.occurrences {
        for reference in &occurrences.references {
            if let Referent::Term(list, key) = &reference.to {
                uses.entry((*list, key.as_str()))
                    .or_default()
                    .insert(record);
            }
        }
        let RecordId::Design(design) = record else {
            continue;
        };
        let subjects = catalogue.designs.get(design).map(|design| &design.subjects);
        for subject in subjects.into_iter().flatten() {
            let used = uses.entry((List::Subjects, subject.as_str()));
            used.or_default().insert(record);
        }
    }
    uses
}

/// Designs in readers' order, each followed by its impressions; other records after them.
fn rank(record: &RecordId, order: &Order) -> (u8, usize, u32) {
    match record {
        RecordId::Design(design) => (0, order.rank(design), 0),
        RecordId::Impression(key) => (0, order.rank(&key.design), key.number),
        _ => (1, 0, 0),
    }
}

/// How well a term fits a text, the best first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
enum Fit {
    /// Its key, or a name of it, is the text.
    Same,
    /// Every word of the text begins one of its key or names.
    Named,
    /// Every word of the text begins one of its key, names or meanings.
    Explained,
}

/// The terms that fit a text, the best first; equally good ones in the order of `terms`. Capitals, accents and punctuation do
/// not count (docs/definitions.md, "Search").
#[must_use]
pub fn sought<'t, 'c>(terms: &'t [ListedTerm<'c>], text: &str) -> Vec<&'t ListedTerm<'c>> {
    let asked = folded(text);
    let mut found: Vec<(Fit, &ListedTerm<'_>)> = terms
        .iter()
        .filter_map(|term| Some((fit(term, &asked)?, term)))
        .collect();
    found.sort_by_key(|(fit, _)| *fit);
    found.into_iter().map(|(_, term)| term).collect()
}

fn fit(listed: &ListedTerm<'_>, asked: &[String]) -> Option<Fit> {
    if asked.is_empty() {
        return None;
    }
    let names = || listed.term.names().chain([listed.key.as_str()]);
    if names().any(|name| folded(name) == asked) {
        return Some(Fit::Same);
    }
    let has_all = |words: &[String]| {
        let mut asked = asked.iter();
        asked.all(|asked| words.iter().any(|word| word.starts_with(asked.as_str())))
    };
    let mut of_term: Vec<String> = names().flat_map(folded).collect();
    if has_all(&of_term) {
        return Some(Fit::Named);
    }
    of_term.extend(listed.term.notes.values().flat_map(|note| folded(note)));
    has_all(&of_term).then_some(Fit::Explained)
}

fn folded(text: &str) -> Vec<String> {
    words(text).into_iter().map(|word| word.folded).collect()
}
