//! The index: every word and number that a reader may type, with the entries that have it.
//!
//! In: the entries, in the order in which equally good ones are found. Out: [`Term`]s, sorted as browsers sort
//! text (by UTF-16 units), each with the entries of each [`Class`].

use std::collections::HashMap;

use rayon::prelude::*;

use super::entry::{Entry, Field};
use super::words::{number_key, without_stops, words};

/// How a term belongs to an entry, the closest first. An entry counts under the closest of its classes alone.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Class {
    /// It is a number of the entry.
    Number,
    /// It is the whole title or name of the entry.
    Name,
    /// It is a word of the title or name.
    NameWord,
    /// It is a word of what the record says in short.
    Fact,
    /// It is a word of a longer text.
    Text,
}

impl Class {
    /// Every class, the closest first.
    pub const ALL: [Class; 5] = [
        Class::Number,
        Class::Name,
        Class::NameWord,
        Class::Fact,
        Class::Text,
    ];
}

/// A word or number, and the entries that have it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Term {
    /// As it is compared.
    pub folded: String,
    /// As it is shown where that differs: as the first entry that has it writes it. `None` where some entry
    /// writes it as it is compared.
    pub written: Option<String>,
    /// The places of the entries in the list of all entries, ascending, by class.
    pub entries: [Vec<u32>; 5],
}

/// A term of one entry.
struct Use {
    folded: String,
    written: String,
    class: Class,
}

/// The terms of all entries, sorted by UTF-16 units.
#[must_use]
pub fn terms(entries: &[Entry]) -> Vec<Term> {
    // A block at a time, so that the words of a large catalogue are not all held at once.
    const BLOCK: usize = 1 << 12;
    let mut places: HashMap<String, usize> = HashMap::new();
    let mut terms: Vec<Term> = Vec::new();
    for (block, first) in entries.chunks(BLOCK).zip((0_u32..).step_by(BLOCK)) {
        let uses: Vec<Vec<Use>> = block.par_iter().map(uses).collect();
        for (uses, at) in uses.into_iter().zip(first..) {
            for found in uses {
                let place = *places.entry(found.folded).or_insert_with_key(|folded| {
                    terms.push(Term {
                        folded: folded.clone(),
                        written: Some(found.written.clone()),
                        entries: Default::default(),
                    });
                    terms.len() - 1
                });
                let term = &mut terms[place];
                if found.written == term.folded {
                    term.written = None;
                }
                term.entries[found.class as usize].push(at);
            }
        }
    }
    terms.par_sort_unstable_by(|a, b| a.folded.encode_utf16().cmp(b.folded.encode_utf16()));
    terms
}

/// The terms of an entry, each once, in its closest class.
fn uses(entry: &Entry) -> Vec<Use> {
    let mut uses = Vec::new();
    let mut add = |folded: String, written: String, class: Class| {
        uses.push(Use {
            folded,
            written,
            class,
        });
    };
    for field in &entry.fields {
        let (text, class) = match field {
            Field::Number(text) | Field::Accession(text) => {
                if let Some(key) = number_key(text) {
                    if matches!(field, Field::Accession(_)) && key.contains('.') {
                        add(without_stops(&key), text.clone(), Class::Number);
                    }
                    add(key, text.clone(), Class::Number);
                }
                (text, Class::Fact)
            }
            Field::Name(text) => {
                if let Some(key) = number_key(text) {
                    add(key, text.clone(), Class::Name);
                }
                (text, Class::NameWord)
            }
            Field::Fact(text) => (text, Class::Fact),
            Field::Text(text) => (text, Class::Text),
        };
        for word in words(text) {
            add(word.folded, word.written, class);
        }
    }
    // The sort is stable: of equal terms the one that was written first stays.
    uses.sort_by(|a, b| a.folded.cmp(&b.folded).then(a.class.cmp(&b.class)));
    uses.dedup_by(|b, a| {
        let is_same = a.folded == b.folded;
        if is_same && b.written == b.folded {
            a.written.clone_from(&b.written);
        }
        is_same
    });
    uses
}

#[cfg(test)]
mod tests {
    use super::super::entry::EntryKind;
    use super::*;

    fn entry(fields: &[Field]) -> Entry {
        let mut entry = Entry::new(EntryKind::Design, "x".to_owned(), "design/x/".to_owned());
        entry.fields = fields.to_vec();
        entry
    }

    fn find<'t>(terms: &'t [Term], folded: &str) -> &'t Term {
        let found = terms.iter().find(|term| term.folded == folded);
        found.unwrap_or_else(|| panic!("no term {folded}"))
    }

    #[test]
    fn an_entry_counts_under_the_closest_of_its_classes() {
        let terms = terms(&[
            entry(&[
                Field::Text("The harbour of 1962.".to_owned()),
                Field::Name("Harbour, night".to_owned()),
            ]),
            entry(&[Field::Accession("1962.44".to_owned())]),
        ]);
        let harbour = find(&terms, "harbour");
        assert_eq!(harbour.entries[Class::NameWord as usize], [0]);
        assert!(harbour.entries[Class::Text as usize].is_empty());
        assert_eq!(
            find(&terms, "harbour.night").entries[Class::Name as usize],
            [0]
        );
        for key in ["1962.44", "196244"] {
            assert_eq!(
                find(&terms, key).entries[Class::Number as usize],
                [1],
                "{key}"
            );
        }
        let year = find(&terms, "1962");
        assert_eq!(year.entries[Class::Fact as usize], [1]);
        assert_eq!(year.entries[Class::Text as usize], [0]);
    }

    #[test]
    fn a_term_is_shown_as_it_was_first_written_unless_it_needs_no_other_form() {
        let terms = terms(&[
            entry(&[Field::Name("Ōsaka Pilots".to_owned())]),
            entry(&[Field::Text("Osaka, and the pilots".to_owned())]),
        ]);
        assert_eq!(find(&terms, "osaka").written.as_deref(), Some("Ōsaka"));
        assert_eq!(find(&terms, "pilots").written, None);
        assert_eq!(
            find(&terms, "osaka.pilots").written.as_deref(),
            Some("Ōsaka Pilots")
        );
    }

    #[test]
    fn terms_are_sorted_as_browsers_sort_them() {
        // By code points U+10000 comes after U+FA0E; by UTF-16 units before it.
        let terms = terms(&[entry(&[Field::Text("b a \u{fa0e} \u{10400}".to_owned())])]);
        let folded: Vec<&str> = terms.iter().map(|term| term.folded.as_str()).collect();
        assert_eq!(folded, ["a", "b", "\u{10428}", "\u{fa0e}"]);
    }
}
