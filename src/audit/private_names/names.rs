//! The names, places and texts that must not be published.
//!
//! In: the catalogue with everything private. Out: each name, place or text that is kept private, with a
//! description that does not contain it, and its place in the records.

use std::collections::BTreeSet;

use super::patterns::NameWords;
use super::words::{Words, is_written_without_spaces};
use crate::model::catalogue::Catalogue;
use crate::model::holder::{Holder, HolderKind};
use crate::model::impression::Impression;
use crate::model::key::Key;
use crate::model::place::{Place, Placed};
use crate::model::provenance::Party;

/// Something that must not be published.
#[derive(Clone, Debug)]
pub struct PrivateName {
    /// A description without the name: "the name of the private owner `owner-a`".
    pub what: String,
    /// Where it is recorded.
    pub place: Place,
    /// What to do where it was found.
    pub help: &'static str,
    /// The private owner's key, where it is the name or place of one.
    pub owner: Option<Key>,
    pub(super) kind: Kind,
}

/// How a name, place or text is sought.
#[derive(Clone, Debug)]
pub(super) enum Kind {
    /// In every form in which the name may be written.
    Name(NameWords),
    /// As these words, one after another. A short text may also be a common phrase: then it is only a doubt.
    Phrase {
        /// The words, joined.
        words: Vec<String>,
        /// Whether it is too short to be sure that it is this one.
        is_short: bool,
    },
}

const CONSENT: &str = "take the name out, or record the owner's consent";
const PLACE: &str = "take the place out if it tells who the owner is";
const LIST: &str = "take it out of this text, or off the list of private fields";

/// Everything that must not be published.
pub(super) fn of(catalogue: &Catalogue) -> Vec<PrivateName> {
    let mut sought = Sought {
        catalogue,
        names: Vec::new(),
    };
    for holder in catalogue.holders.values() {
        sought.holder(holder);
    }
    for name in names_taken_out(catalogue) {
        sought.name(name, "a name kept private", LIST, None);
    }
    let names: BTreeSet<Place> = sought.names.iter().map(|name| name.place).collect();
    for private in &catalogue.redacted.texts {
        if !names.contains(&private.place) {
            let text = Placed::new(private.text.clone(), private.place);
            sought.phrase(&text, "a text kept private", LIST, None);
        }
    }
    sought.names
}

struct Sought<'a> {
    catalogue: &'a Catalogue,
    names: Vec<PrivateName>,
}

impl Sought<'_> {
    fn holder(&mut self, holder: &Holder) {
        let key = Some(&holder.key);
        if is_private(self.catalogue, holder) {
            let what = format!("the name of the private owner `{}`", holder.key);
            let former = holder.formerly.iter().map(|former| &former.name);
            for name in std::iter::once(&holder.name).chain(former) {
                self.name(name, &what, CONSENT, key);
            }
        }
        if holder.kind == HolderKind::Private
            && !holder.may_publish("place")
            && let Some(town) = &holder.town
        {
            let what = format!("the place of the private owner `{}`", holder.key);
            self.place(town, &what, key);
        }
    }

    fn name(&mut self, name: &Placed<String>, what: &str, help: &'static str, owner: Option<&Key>) {
        if !tells_somebody(&name.value) || is_the_public_word(self.catalogue, &name.value) {
            return;
        }
        for words in NameWords::spellings(&name.value) {
            self.push(Kind::Name(words), name.place, what, help, owner);
        }
    }

    /// The place of an owner is a doubt wherever it stands: somebody else may live there too.
    fn place(&mut self, town: &Placed<String>, what: &str, owner: Option<&Key>) {
        if let Some(words) = phrase(&town.value) {
            let kind = Kind::Phrase {
                words,
                is_short: true,
            };
            self.push(kind, town.place, what, PLACE, owner);
        }
    }

    fn phrase(
        &mut self,
        text: &Placed<String>,
        what: &str,
        help: &'static str,
        owner: Option<&Key>,
    ) {
        if is_the_public_word(self.catalogue, &text.value) {
            return;
        }
        let count = text.value.split_whitespace().count();
        // One word kept private may be any common word: a way of transfer, a month.
        if let Some(words) = phrase(&text.value).filter(|_| count >= 2) {
            let is_short = count < LONG_TEXT;
            self.push(
                Kind::Phrase { words, is_short },
                text.place,
                what,
                help,
                owner,
            );
        }
    }

    fn push(
        &mut self,
        kind: Kind,
        place: Place,
        what: &str,
        help: &'static str,
        owner: Option<&Key>,
    ) {
        self.names.push(PrivateName {
            what: what.to_owned(),
            place,
            help,
            owner: owner.cloned(),
            kind,
        });
    }
}

/// From how many words on a private text is no common phrase.
const LONG_TEXT: usize = 4;

/// The words of a text; `None` where it has none.
fn phrase(text: &str) -> Option<Vec<String>> {
    let words = Words::of(text);
    let list: Vec<String> = words
        .words
        .iter()
        .map(|w| words.word(w).to_owned())
        .collect();
    (!list.is_empty()).then_some(list)
}

/// Whether readers see something else in place of the holder's name.
fn is_private(catalogue: &Catalogue, holder: &Holder) -> bool {
    let is_listed = catalogue
        .redacted
        .holders
        .get(&holder.key)
        .is_some_and(|redacted| redacted.name.value != holder.name.value);
    is_listed || (holder.kind == HolderKind::Private && !holder.may_publish("name"))
}

/// The names of people and parties that records list as private.
fn names_taken_out(catalogue: &Catalogue) -> Vec<&Placed<String>> {
    let people = catalogue
        .redacted
        .people
        .iter()
        .filter_map(|(key, redacted)| {
            let name = &catalogue.people.get(key)?.name;
            (redacted.name.value != name.value).then_some(name)
        });
    let parties = catalogue
        .redacted
        .impressions
        .iter()
        .flat_map(|(key, redacted)| {
            let left: Vec<&str> = party_names(redacted).map(|n| n.value.as_str()).collect();
            let recorded = catalogue.impression(key).into_iter().flat_map(party_names);
            recorded.filter(move |name| !left.contains(&name.value.as_str()))
        });
    people.chain(parties).collect()
}

fn party_names(impression: &Impression) -> impl Iterator<Item = &Placed<String>> {
    impression
        .owners
        .iter()
        .chain(impression.provenance.iter().map(|entry| &entry.party))
        .chain(impression.sightings.iter().filter_map(|s| s.by.as_ref()))
        .filter_map(|party| match party {
            Party::Named(name) => Some(name),
            Party::Record(_) | Party::Undisclosed => None,
        })
}

/// Whether a text is long enough to identify somebody: two words, or four letters, or two characters of
/// a script that writes names in two.
fn tells_somebody(text: &str) -> bool {
    let letters = text.chars().filter(|c| c.is_alphabetic()).count();
    let is_dense = text.chars().any(is_written_without_spaces);
    text.split_whitespace().count() >= 2 || letters >= 4 || (is_dense && letters >= 2)
}

/// Whether a name is the text that readers see in place of a private name.
fn is_the_public_word(catalogue: &Catalogue, text: &str) -> bool {
    let folded = |text: &str| Words::of(text).folded;
    let text = folded(text);
    let chosen = catalogue.settings.private_owner.as_deref();
    chosen.is_some_and(|words| folded(words) == text)
        || text.starts_with("privatecollection")
        || text.starts_with("privateowner")
}
