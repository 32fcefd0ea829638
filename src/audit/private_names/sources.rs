//! Private names in the records: in texts that readers see, and in keys, which become addresses.
//!
//! In: the texts and keys of every record as it may be published ([`crate::audit::published`]), and the paths
//! of the records. Out: an error where a private name stands whole, or in the private owner's own key; a doubt where
//! a surname stands alone, the private place, or one word of the name in another key.

use std::collections::BTreeSet;

use rayon::prelude::*;

use super::search::{Extent, Hit, NameSearch};
use super::words::Words;
use super::{Kind, PrivateName, written};
use crate::audit::published::texts;
use crate::model::catalogue::Catalogue;
use crate::model::codes::Code;
use crate::model::finding::Finding;
use crate::model::key::Key;
use crate::model::occurrence::TextAt;
use crate::model::place::{FileId, Place};
use crate::study::Studies;

/// A private name occurs in the records, where readers will see it.
pub(in crate::audit) fn name_published(
    catalogue: &Catalogue,
    _: &Studies,
    findings: &mut Vec<Finding>,
) {
    let Some(search) = NameSearch::of_catalogue(catalogue) else {
        return;
    };
    let in_texts: Vec<Vec<Finding>> = texts(catalogue)
        .par_iter()
        .map(|text| in_text(catalogue, &search, text))
        .collect();
    findings.extend(in_texts.into_iter().flatten());
    for (file, path) in catalogue.sources.paths() {
        findings.extend(in_path(catalogue, &search, file, path));
    }
}

fn in_text(catalogue: &Catalogue, search: &NameSearch, text: &TextAt) -> Vec<Finding> {
    let words = text.words(&catalogue.sources);
    let mut hits = search.hits(words);
    if text.is_own_key {
        hits.extend(words_in_key(search, words, &hits));
    } else if words.contains(['&', '<', '[', '\\']) {
        for hit in as_rendered(search, words) {
            if !hits
                .iter()
                .any(|h| h.name == hit.name && h.extent <= hit.extent)
            {
                hits.retain(|h| h.name != hit.name);
                hits.push(hit);
            }
        }
    }
    let mut met = BTreeSet::new();
    let mut findings = Vec::new();
    for hit in hits {
        let Some(name) = search.names().get(hit.name) else {
            continue;
        };
        if met.insert((&name.what, name.place.start)) {
            let place = place_of(catalogue, text, hit.at);
            findings.push(finding(name, hit.extent, place, text.is_own_key));
        }
    }
    findings
}

/// The names in Markdown as its readers see it, whose markup may interrupt a name. The place is that of the paragraph.
fn as_rendered(search: &NameSearch, markdown: &str) -> Vec<Hit> {
    let mut hits = Vec::new();
    let mut end = 0;
    for paragraph in markdown.split_inclusive("\n\n") {
        let start = end;
        end += paragraph.len();
        let mut html = String::new();
        pulldown_cmark::html::push_html(&mut html, pulldown_cmark::Parser::new(paragraph));
        written::markup(html.as_bytes(), &mut |line| {
            let blank = paragraph.len() - paragraph.trim_start().len();
            let at = start + blank..start + paragraph.trim_end().len();
            hits.extend(search.hits(line).into_iter().map(|hit| Hit {
                at: at.clone(),
                ..hit
            }));
        });
    }
    hits.sort_by_key(|hit| (hit.name, hit.extent, hit.at.start));
    hits.dedup_by_key(|hit| hit.name);
    hits
}

/// The names that share a word with a key, those in `found` excepted.
fn words_in_key(search: &NameSearch, key: &str, found: &[Hit]) -> Vec<Hit> {
    let words = Words::of(key);
    let in_key: BTreeSet<&str> = words.words.iter().map(|word| words.word(word)).collect();
    let names = search.names().iter().enumerate();
    let sharing = names.filter(|(at, name)| match &name.kind {
        Kind::Name(parts) => {
            found.iter().all(|hit| hit.name != *at)
                && parts.telling().any(|word| in_key.contains(word))
        }
        Kind::Phrase { .. } => false,
    });
    sharing
        .map(|(at, _)| Hit {
            name: at,
            extent: Extent::Part,
            at: 0..key.len(),
        })
        .collect()
}

/// Private names in the path of a record or page, which becomes part of an address.
fn in_path(catalogue: &Catalogue, search: &NameSearch, file: FileId, path: &str) -> Vec<Finding> {
    // The folders and endings are the program's own words. A photograph is published under its picture's name.
    let Some(key) = path
        .strip_suffix(".toml")
        .or_else(|| path.strip_suffix(".md"))
    else {
        return Vec::new();
    };
    let mut hits = search.hits(key);
    hits.extend(words_in_key(search, key, &hits));
    let place = Place::start_of(file);
    let mut met = BTreeSet::new();
    let mut findings = Vec::new();
    for hit in hits {
        let Some(name) = search.names().get(hit.name) else {
            continue;
        };
        let is_own = |owner: &Key| {
            let owner = catalogue.holders.get(owner);
            owner.is_some_and(|owner| owner.place.file == file)
        };
        if !met.insert((&name.what, name.place.start)) {
            continue;
        }
        findings.push(match &name.owner {
            Some(owner) if is_own(owner) => own_key_telling(name, owner, place),
            _ => finding(name, hit.extent, place, true),
        });
    }
    findings
}

fn own_key_telling(name: &PrivateName, owner: &Key, place: Place) -> Finding {
    Finding::new(
        Code::PrivateKeyTelling,
        place,
        format!("the key of the private owner `{owner}` contains a word that is kept private"),
    )
    .beside(name.place, "kept private")
    .help("rename the file to something that reveals nothing, such as `owner-a`, before the address is issued")
}

/// The finding of a name at a place.
fn finding(name: &PrivateName, extent: Extent, place: Place, is_key: bool) -> Finding {
    let what = &name.what;
    let stands = if is_key {
        "a key, which is part of an address"
    } else {
        "text that is published"
    };
    let found = match extent {
        Extent::Whole => Finding::new(
            Code::PrivateNamePublished,
            place,
            format!("{what} stands in {stands}"),
        ),
        Extent::Part => Finding::new(
            Code::PrivateNamePart,
            place,
            match &name.kind {
                Kind::Name(_) => format!("a word of {what} stands in {stands}"),
                Kind::Phrase { .. } => format!("{what} stands in {stands}"),
            },
        ),
    };
    let help = match extent {
        Extent::Whole => name.help,
        Extent::Part => {
            "remove it if it reveals who is meant; leave it where someone or something else is meant"
        }
    };
    found.beside(name.place, "kept private").help(help)
}

/// The place of a match, which is a range of the text. Where the file writes the text differently (with
/// escapes, or as an entry of the literature), the matching words are searched for in the value that
/// holds it; where they are not found there, the place is that of the whole text.
fn place_of(catalogue: &Catalogue, text: &TextAt, range: std::ops::Range<usize>) -> Place {
    let place = text.place;
    let at = |start: usize, length: usize| Place::new(place.file, start..start + length);
    let start = place.span().start;
    if text.is_as_written() {
        return at(start + range.start, range.len());
    }
    let source = catalogue.sources.text(place.file);
    let holds = match text.key {
        // An entry of the literature extends to the next one.
        "" => source
            .get(start..)
            .map(|rest| rest.split("\n@").next().unwrap_or(rest)),
        _ => source.get(place.span()),
    };
    let words = text
        .words(&catalogue.sources)
        .get(range)
        .unwrap_or_default();
    let found = holds.and_then(|holds| holds.find(words));
    found.map_or(place, |found| at(start + found, words.len()))
}
