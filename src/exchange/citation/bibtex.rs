//! Citations as BibTeX: entries `inreference` of biblatex, articles in a work of reference.

use biblatex::{Chunk, Chunks, Entry, EntryType, Spanned};

use super::item::{CitedItem, Name, items};
use super::{FOLDERS, RELATION, subjects};
use crate::exchange::format::Format;
use crate::page::{Here, Subject};

pub(in crate::exchange) const FORMAT: Format = Format {
    name: "bibtex",
    file: "citation.bib",
    folders: FOLDERS,
    media_type: "application/x-bibtex",
    relation: RELATION,
    subjects,
    write,
};

fn write(here: &Here<'_>, subject: &Subject) -> Option<Vec<u8>> {
    let items = items(here, subject);
    let entries: Vec<String> = items
        .iter()
        .map(|item| entry(item).to_biblatex_string() + "\n")
        .collect();
    (!entries.is_empty()).then(|| entries.join("\n").into_bytes())
}

fn entry(item: &CitedItem) -> Entry {
    let mut entry = Entry::new(item.id.clone(), EntryType::InReference);
    // In braces, so that no style changes the capitals of a title.
    entry.set("title", whole(&item.title));
    entry.set("shorttitle", whole(&item.short));
    entry.set("booktitle", whole(&item.catalogue));
    if !item.editors.is_empty() {
        entry.set("editor", names(&item.editors));
    }
    if let Some(edition) = &item.edition {
        entry.set("edition", whole(edition));
    }
    if let Some(revised) = &item.revised {
        entry.set("note", whole(revised));
    }
    if !item.date.is_empty() {
        let parts: Vec<String> = item.date.iter().map(|part| format!("{part:02}")).collect();
        entry.set("date", plain(parts.join("-")));
    }
    entry.set("url", plain(item.url.clone()));
    entry
}

fn plain(text: String) -> Chunks {
    vec![Spanned::detached(Chunk::Normal(text))]
}

fn whole(text: &str) -> Chunks {
    vec![Spanned::detached(Chunk::Verbatim(text.to_owned()))]
}

/// "Family, Given and {A Whole Name}".
fn names(names: &[Name]) -> Chunks {
    let mut chunks = Vec::new();
    for (at, name) in names.iter().enumerate() {
        if at > 0 {
            chunks.extend(plain(" and ".to_owned()));
        }
        match name {
            Name::Parts { family, given } => {
                chunks.extend(whole(family));
                chunks.extend(plain(", ".to_owned()));
                chunks.extend(whole(given));
            }
            Name::Whole(name) => chunks.extend(whole(name)),
        }
    }
    chunks
}
