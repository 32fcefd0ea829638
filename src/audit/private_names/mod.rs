//! Private names: what must not be published, and where it would be.
//!
//! Names are sought twice. The audit looks in the records (`sources`), so that an error has its line; and every
//! file is searched once more before it is written ([`NameSearch::in_file`]), so that what the first search
//! does not reach is not published either. Definition: `docs/definitions.md, "Private and unpublished"`.
//!
//! | file | subject |
//! |---|---|
//! | `words` | a text as words that can be compared |
//! | `patterns` | the forms in which a name may be written |
//! | `names` | what is kept private |
//! | `search` | all names at once in one text |
//! | `sources` | the rule about the records |
//! | `written` | the texts of a file as its readers see them |

use std::collections::BTreeSet;

mod names;
mod patterns;
mod search;
mod sources;
mod words;
mod written;

use names::Kind;
pub use names::PrivateName;
pub use search::{Extent, Hit, NameSearch};
pub(super) use sources::name_published;
use words::Words;

use crate::model::catalogue::Catalogue;
use crate::model::holder::HolderKind;

impl NameSearch {
    /// A search for everything that a catalogue keeps private; `None` where that is nothing.
    ///
    /// A surname that a public person or holder has too, and a town where one of them is, tell nobody alone.
    #[must_use]
    pub fn of_catalogue(catalogue: &Catalogue) -> Option<NameSearch> {
        let names = names::of(catalogue);
        if names.is_empty() {
            return None;
        }
        let public = public_words(catalogue);
        NameSearch::of(names, |word| public.contains(word))
    }

    /// The names that a file of the site tells whole: its path, and everything that its readers see. Places and
    /// private texts are sought in the records alone, since the program's own words may hold the same phrase.
    #[must_use]
    pub fn in_file(&self, path: &str, bytes: &[u8]) -> BTreeSet<usize> {
        let is_name = |at: usize| {
            let name = self.names().get(at);
            name.is_some_and(|name| matches!(name.kind, Kind::Name(_)))
        };
        let mut found = BTreeSet::new();
        written::texts(path, bytes, &mut |text| {
            let hits = self.hits(text).into_iter();
            let told = hits.filter(|hit| hit.extent == Extent::Whole && is_name(hit.name));
            found.extend(told.map(|hit| hit.name));
        });
        found
    }
}

/// The words of published names of people and holders, and the towns of holders.
fn public_words(catalogue: &Catalogue) -> BTreeSet<String> {
    let people = catalogue
        .people
        .keys()
        .filter_map(|key| catalogue.published_person(key));
    let holders = catalogue
        .holders
        .keys()
        .filter_map(|key| catalogue.published_holder(key));
    let holders: Vec<_> = holders
        .filter(|holder| holder.kind != HolderKind::Private || holder.may_publish("name"))
        .collect();
    let names = people.map(|person| person.name.value.as_str());
    let names = names.chain(holders.iter().map(|holder| holder.name.value.as_str()));
    let mut public: BTreeSet<String> = names
        .flat_map(|name| {
            let words = Words::of(name);
            let list: Vec<String> = words
                .words
                .iter()
                .map(|w| words.word(w).to_owned())
                .collect();
            list
        })
        .collect();
    let towns = holders.iter().filter_map(|holder| holder.town.as_ref());
    public.extend(towns.map(|town| Words::of(&town.value).folded));
    public
}
