//! Looks for all private names at once.
//!
//! In: the names, and a text. Out: which of them it contains, and where. The joined words of the text are searched
//! for the joined words of every form by one machine (Aho and Corasick, "Efficient string matching", 1975), so
//! the time does not grow with the number of names; a match counts where words begin and end.

use std::ops::Range;

use aho_corasick::{AhoCorasick, MatchKind};

use super::names::{Kind, PrivateName};
use super::patterns::{Form, may_stand_between};
use super::words::{Words, is_written_without_spaces};

/// A machine that finds private names in texts.
#[derive(Debug)]
pub struct NameSearch {
    names: Vec<PrivateName>,
    machine: AhoCorasick,
    sought: Vec<Sought>,
}

/// One form of one name.
#[derive(Debug)]
struct Sought {
    /// Which of the names.
    name: usize,
    form: Form,
    extent: Extent,
    /// Whether some word of the form is a single initial, which must stand alone in the text.
    has_initials: bool,
}

/// How much of a private name was found.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Extent {
    /// All that tells who is meant.
    Whole,
    /// The surname alone, the place, or a short text: somebody or something else may be meant.
    Part,
}

/// A private name found in a text.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Hit {
    /// Which of [`NameSearch::names`].
    pub name: usize,
    /// How much of it.
    pub extent: Extent,
    /// Where, in bytes of the text.
    pub at: Range<usize>,
}

/// From how many letters on two names written as one word are no other word by chance.
const LONG_WORD: usize = 9;

impl NameSearch {
    /// A search for `names`; `None` where there are none.
    pub(super) fn of(
        names: Vec<PrivateName>,
        says_nothing: impl Fn(&str) -> bool,
    ) -> Option<NameSearch> {
        let mut sought = Vec::new();
        for (at, name) in names.iter().enumerate() {
            let mut add = |form: Form, extent| {
                sought.push(Sought {
                    name: at,
                    has_initials: has_initials(&form),
                    form,
                    extent,
                });
            };
            match &name.kind {
                Kind::Name(words) => {
                    for form in words.forms() {
                        add(form, Extent::Whole);
                    }
                    if words.has_more()
                        && words.surname().len() >= 3
                        && !says_nothing(words.surname())
                    {
                        add(Form::of(&[words.surname()]), Extent::Part);
                    }
                }
                Kind::Phrase { words, is_short } => {
                    let words: Vec<&str> = words.iter().map(String::as_str).collect();
                    let form = Form::of(&words);
                    if !is_short {
                        add(form, Extent::Whole);
                    } else if !says_nothing(&form.text) {
                        add(form, Extent::Part);
                    }
                }
            }
        }
        if sought.is_empty() {
            return None;
        }
        let forms = sought.iter().map(|sought| sought.form.text.as_str());
        // Building fails only beyond two thousand million names.
        let machine = AhoCorasick::builder()
            .match_kind(MatchKind::Standard)
            .build(forms)
            .ok()?;
        Some(NameSearch {
            names,
            machine,
            sought,
        })
    }

    /// The names that are sought.
    #[must_use]
    pub fn names(&self) -> &[PrivateName] {
        &self.names
    }

    /// The names in a text: each once, where it stands first and most completely.
    #[must_use]
    pub fn hits(&self, text: &str) -> Vec<Hit> {
        let words = Words::of(text);
        let mut hits = Vec::new();
        self.collect(&words, &mut hits);
        if let Some(fewer) = words.without(may_stand_between) {
            self.collect(&fewer, &mut hits);
        }
        hits.sort_by_key(|hit| (hit.name, hit.extent, hit.at.start));
        hits.dedup_by_key(|hit| hit.name);
        hits
    }

    fn collect(&self, words: &Words<'_>, hits: &mut Vec<Hit>) {
        for found in self.machine.find_overlapping_iter(&words.folded) {
            if let Some(sought) = self.sought.get(found.pattern().as_usize())
                && is_written_so(words, found.range(), sought)
            {
                hits.push(Hit {
                    name: sought.name,
                    extent: sought.extent,
                    at: words.written(&found.range()),
                });
            }
        }
    }
}

/// Whether a form has a word of one letter that belongs to a longer name.
fn has_initials(form: &Form) -> bool {
    let mut start = 0;
    let ends = form.borders.iter().copied().chain([form.text.len()]);
    let mut words = ends.map(|end| {
        let word = &form.text[start..end];
        start = end;
        word
    });
    words.any(|word| word.chars().count() == 1 && !word.chars().all(is_written_without_spaces))
}

/// Whether a match begins and ends where words do, and its words are those of the form. Scripts without
/// spaces have no such ends; two names may be written as one long word.
fn is_written_so(words: &Words<'_>, range: Range<usize>, sought: &Sought) -> bool {
    if words.folded[range.clone()]
        .chars()
        .all(is_written_without_spaces)
    {
        return true;
    }
    let touched = words.touched(&range);
    let (Some(first), Some(last)) = (touched.first(), touched.last()) else {
        return false;
    };
    if first.folded.start != range.start || last.folded.end != range.end {
        return false;
    }
    let borders = &sought.form.borders;
    let begins = |border: &usize| {
        touched
            .iter()
            .any(|w| w.folded.start == range.start + border)
    };
    if borders.iter().all(begins) {
        // An initial is a word of its own, and so are the names beside it.
        let mut letters = touched
            .iter()
            .filter(|word| words.word(word).chars().count() == 1);
        return !sought.has_initials
            || (touched.len() == borders.len() + 1 && letters.all(|word| words.is_initial(word)));
    }
    touched.len() == 1 && !sought.has_initials && range.len() >= LONG_WORD
}
