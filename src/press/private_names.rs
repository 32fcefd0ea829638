//! Searches every file of a site for what is kept private, before the file is published.
//!
//! In: the files as they are made. Out: findings that forbid publishing, each at the record that the words
//! come from, where that is found. The audit has searched the records already ([`crate::audit::private_names`]);
//! what is found here came together only on a page, or came from a theme.

use std::collections::{BTreeMap, BTreeSet};
use std::sync::{Mutex, PoisonError};

use crate::audit::private_names::{Extent, NameSearch};
use crate::model::catalogue::Catalogue;
use crate::model::codes::Code;
use crate::model::finding::Finding;
use crate::model::place::{Place, Sources};

/// The search of a site's files for what its catalogue keeps private.
#[derive(Debug, Default)]
pub(super) struct NameCheck {
    /// `None` where nothing is private.
    search: Option<NameSearch>,
    /// The files that tell each name, by its index in [`NameSearch::names`].
    told: Mutex<BTreeMap<usize, BTreeSet<String>>>,
}

/// How many files a finding names.
const FILES_NAMED: usize = 3;

impl NameCheck {
    pub(super) fn of(catalogue: &Catalogue) -> NameCheck {
        NameCheck {
            search: NameSearch::of_catalogue(catalogue),
            told: Mutex::default(),
        }
    }

    /// Searches a file. May be called from several threads.
    pub(super) fn look_at(&self, path: &str, bytes: &[u8]) {
        let Some(search) = &self.search else { return };
        let found = search.in_file(path, bytes);
        if !found.is_empty() {
            let mut told = self.told.lock().unwrap_or_else(PoisonError::into_inner);
            for name in found {
                told.entry(name).or_default().insert(path.to_owned());
            }
        }
    }

    /// A finding for each name that was found.
    pub(super) fn findings(&self, sources: &Sources) -> Vec<Finding> {
        let Some(search) = &self.search else {
            return Vec::new();
        };
        let told = self.told.lock().unwrap_or_else(PoisonError::into_inner);
        let found = by_name(search, &told).into_iter().map(|((kept, what), files)| {
            let at = in_sources(search, sources, kept).unwrap_or(kept);
            let message = format!("{what} would stand in {}", in_words(&files));
            let finding = Finding::new(Code::PrivateNamePublished, at, message);
            let finding = if at == kept {
                finding
            } else {
                finding.beside(kept, "kept private")
            };
            finding.help(
                "take it out of the record, page or theme that the words come from, or record the owner's consent",
            )
        });
        found.collect()
    }

    /// A sentence for each name that stood in files of the site before this compile. `outdated`: path and bytes
    /// of each file that the site no longer has, or has otherwise.
    pub(super) fn formerly_told(
        &self,
        outdated: impl Iterator<Item = (String, Vec<u8>)>,
    ) -> Vec<String> {
        let Some(search) = &self.search else {
            return Vec::new();
        };
        let mut told: BTreeMap<usize, BTreeSet<String>> = BTreeMap::new();
        for (path, bytes) in outdated {
            for name in search.in_file(&path, &bytes) {
                told.entry(name).or_default().insert(path.clone());
            }
        }
        let names = by_name(search, &told).into_iter();
        let sentence =
            |((_, what), files)| format!("until now, {what} stood in {}", in_words(&files));
        names.map(sentence).collect()
    }
}

/// The files that tell each name, by its place and description: the spellings of one name together.
fn by_name<'s>(
    search: &'s NameSearch,
    told: &BTreeMap<usize, BTreeSet<String>>,
) -> BTreeMap<(Place, &'s str), BTreeSet<String>> {
    let mut by_name: BTreeMap<_, BTreeSet<String>> = BTreeMap::new();
    for (name, paths) in told {
        if let Some(name) = search.names().get(*name) {
            let files = by_name.entry((name.place, name.what.as_str())).or_default();
            files.extend(paths.iter().cloned());
        }
    }
    by_name
}

/// Where a record or page has the name recorded at `kept` itself; the first place of several.
fn in_sources(search: &NameSearch, sources: &Sources, kept: Place) -> Option<Place> {
    let private: BTreeSet<Place> = search.names().iter().map(|name| name.place).collect();
    sources.paths().find_map(|(file, _)| {
        let text = sources.text(file);
        let lines = text.split_inclusive('\n').scan(0, |at, line| {
            let start = *at;
            *at += line.len();
            Some((start, line))
        });
        lines.into_iter().find_map(|(start, line)| {
            let hits = search.hits(line).into_iter();
            let mut hits = hits.filter(|hit| {
                let name = search.names().get(hit.name);
                hit.extent == Extent::Whole && name.is_some_and(|name| name.place == kept)
            });
            let places = hits
                .by_ref()
                .map(|hit| Place::new(file, start + hit.at.start..start + hit.at.end));
            let mut elsewhere = places.filter(|place| {
                let is_within = |kept: &Place| {
                    kept.file == place.file && kept.start <= place.start && place.end <= kept.end
                };
                !private.iter().any(is_within)
            });
            elsewhere.next()
        })
    })
}

/// The paths of some files, the first few by name: "`a`, `b`, `c` and 12 more files".
fn in_words(files: &BTreeSet<String>) -> String {
    let mut words: Vec<String> = files
        .iter()
        .take(FILES_NAMED)
        .map(|path| format!("`{path}`"))
        .collect();
    match files.len().saturating_sub(FILES_NAMED) {
        0 => {}
        1 => words.push("1 more file".to_owned()),
        more => words.push(format!("{more} more files")),
    }
    match words.split_last() {
        Some((last, rest)) if !rest.is_empty() => format!("{} and {last}", rest.join(", ")),
        _ => words.concat(),
    }
}
