//! Pages: from the public catalogue to the text of every page.
//!
//! In: the catalogue without private data, its studies, its pictures and its theme. Out: a
//! [`Site`], the files of the compiled catalogue by path, the same for any number of threads.
//!
//! Each kind of page has a folder with an outline at its head. No two files import each other, and a
//! folder imports only from those above it in this table.
//!
//! | part | subject |
//! |---|---|
//! | `setting` | the building blocks of every page: addresses, words, templates, the book |
//! | `phrases` | values in words, the same on every page: names, dates, claims, readings |
//! | `drawings` | inline SVG: bars, diagrams |
//! | `plates` | photographs with captions: figures, galleries, strips |
//! | `texts` | Markdown, the theme's longer texts, the catalogue's own pages |
//! | `lists` | forms that several pages share: indexes, checklists, mentions |
//! | `key` | the identification key of a design, and the sheet to take along |
//! | `comparison` | impressions side by side |
//! | `census` | how many sheets are known, of everything and of each design |
//! | `design` | the page of a design |
//! | `sheet` | the page of an impression |
//! | `point` | the page of a point |
//! | `indexes` | pages that gather records of one kind |
//! | `records` | pages of holders, people, works and exhibitions |
//! | `changes` | what each edition changed, and what changed since the last |
//! | `resolve` | references: the page that resolves them, and the words of readings |
//! | `search` | what of each record is searched; the search page, and the page for an address without one |
//! | `about` | the opening page, and pages about the catalogue itself |
//! | `preview` | what the head of a page says of it to other programs: Open Graph, schema.org |
//! | `input` | the data that pages are made from |
//! | `overviews` | which overviews a catalogue has, and the function that makes each |
//! | `vacated` | pages at issued addresses without content |
//! | `jobs` | every page of the catalogue, and the function that makes it |
//! | `neighbours` | the pages before and after a page |
//! | `sections` | the section that a page belongs to |
//! | `frame` | the head and foot of every page |
//! | `landings` | places in a page for the former keys of what stands there |
//! | `moved` | the pages at former addresses |
//! | `assets` | the theme's own files |
//!
//! A page is a view model (plain fields, words and numbers ready to show) and a template in
//! `themes/laid/pages`. To add a kind: copy the shortest, give it an address (`setting/address`) and a
//! line in `jobs` or, for an overview, in `overviews`.
//!
//! Not here: writing to disk (`issue`), files for other programs (`exchange`).

use std::collections::{BTreeMap, BTreeSet};
use std::sync::{Arc, Mutex, PoisonError};

use rayon::prelude::*;
use tera::Value;

use crate::model::link::Target;
use crate::model::occurrence::{MentionRole, RecordId, Referent};
use crate::model::public::Public;
use crate::study::issued::editions::Editions;
use crate::study::joined::JoinedSheets;

mod about;
mod assets;
mod census;
mod changes;
mod comparison;
mod design;
mod drawings;
mod frame;
mod indexes;
mod input;
mod jobs;
mod key;
mod landings;
mod lists;
mod moved;
mod neighbours;
mod overviews;
mod phrases;
mod plates;
mod point;
mod preview;
mod records;
mod resolve;
mod search;
mod sections;
mod setting;
mod sheet;
mod texts;
mod vacated;

pub(crate) use about::data::column_meaning;
pub(crate) use changes::wording as changes_in_words;
pub use input::Input;
pub(crate) use jobs::listed_pages;
pub(crate) use lists::checklist::unqualified_state;
pub(crate) use lists::custody;
pub(crate) use phrases::venues::venue;
pub(crate) use phrases::{
    citations, claims, dates, document_names, earlier_numbers, imprint, lots, papers, readings,
    rights, standing_note, values,
};
pub(crate) use plates::{canvas as places, figures};
pub(crate) use resolve::reasons::{query_words, why};
pub(crate) use search::entries::entries as search_entries;
pub(crate) use setting::address::Fragment;
pub use setting::address::{Address, Overview};
pub(crate) use setting::book::{Book, Here};
pub use setting::exports::{
    ColumnKind, ColumnNotes, DesignPart, Export, ExportFormat, Exports, Subject, TableNotes,
};
pub(crate) use setting::forms;
pub(crate) use setting::html;
pub(crate) use setting::html::escape_into;
pub use setting::pictures::{Alignments, Pictures, PublishedPicture, PublishedSize, Tiles, Tone};
use setting::redirects::Redirects;
pub(crate) use setting::redirects::{Extent, Redirect};
pub use setting::theme_fault::ThemeFault;
pub(crate) use setting::words::Argument;
pub use setting::words::{Words, private_owner};
use setting::{template, words};
pub(crate) use sheet::provenance::on_its_own as provenance_entry;
pub(crate) use sheet::{marks, opinions, provenance, provenance_of_records};
pub(crate) use texts::plain_text;

/// A compiled catalogue, as files.
#[derive(Clone, Debug, Default)]
pub struct Site {
    /// Each file's content, by path relative to the site.
    pub files: BTreeMap<String, Vec<u8>>,
}

/// Receives each file of the site with its path, as soon as it is made, from several threads and in no
/// particular order.
pub type Take<'a> = dyn Fn(String, Vec<u8>) + Sync + 'a;

impl Site {
    /// The result of `make`, and the site of all files that it hands out.
    ///
    /// # Errors
    /// As `make`.
    pub fn gathered<T, E>(make: impl FnOnce(&Take<'_>) -> Result<T, E>) -> Result<(T, Site), E> {
        let files = Mutex::new(BTreeMap::new());
        let made = make(&|path, bytes| {
            let mut files = files.lock().unwrap_or_else(PoisonError::into_inner);
            files.insert(path, bytes);
        })?;
        let files = files.into_inner().unwrap_or_else(PoisonError::into_inner);
        Ok((made, Site { files }))
    }
}

/// Makes every page of a catalogue and the theme's own files, and hands out each.
///
/// # Errors
/// [`ThemeFault`] where a template is broken. Some files may have been handed out by then.
pub(crate) fn each(book: &Book<'_>, take: &Take<'_>) -> Result<(), ThemeFault> {
    let around = Value::from_serializable(&frame::SiteFrame::new(book));
    let landings = landings::Landings::of(book.public);
    jobs::all(book).par_iter().try_for_each(|(address, make)| {
        let root = book.root_of(address);
        let here = Here {
            book,
            address,
            root: &root,
        };
        let leaf = make(&here);
        for former in book.redirects.former_paths(&address.file()) {
            let text = moved::write(&leaf, &former, book)?;
            take(former, text.into_bytes());
        }
        let text = frame::write(&leaf, &around, book)?;
        let text = landings.added(address, text);
        take(address.file(), text.into_bytes());
        Ok(())
    })?;
    assets::assets(book.theme, book.public).for_each(|(path, bytes)| take(path, bytes));
    Ok(())
}

/// The book of a catalogue: all data that pages are made from.
///
/// # Errors
/// [`ThemeFault`] where a file of words or a template of the theme is broken.
pub(crate) fn book<'a>(input: &Input<'a>) -> Result<Book<'a>, ThemeFault> {
    let words = Arc::new(words::Words::new(
        input.theme,
        &input.public.settings.language.value,
    )?);
    let templates = template::Templates::new(input.theme, &words)?;
    let mut concordance: BTreeMap<_, Vec<_>> = BTreeMap::new();
    for row in &input.studies.concordance.rows {
        let rows = concordance.entry(row.ours.design.clone()).or_default();
        rows.push(row);
    }
    Ok(Book {
        public: input.public,
        studies: input.studies,
        pictures: input.pictures,
        alignments: input.alignments,
        exports: input.exports,
        theme: input.theme,
        words,
        templates,
        editions: Editions::of(input.public, input.studies),
        overviews: overviews::present(input),
        mentions: mentions(input.public, &input.studies.joined),
        concordance,
        redirects: Redirects::of(input.public, &input.studies.joined, input.pictures),
        chosen: comparison::links::with_chosen(input.public, input.pictures),
    })
}

/// The pages whose texts mention each record. Those of one sheet are mentioned, and mention others, as one.
fn mentions(public: &Public, joined: &JoinedSheets) -> BTreeMap<Target, BTreeSet<Address>> {
    let mut mentions: BTreeMap<Target, BTreeSet<Address>> = BTreeMap::new();
    for (record, occurrences) in &public.occurrences {
        let address = match record {
            RecordId::Impression(key) => Address::Impression(joined.page_of(key).clone()),
            _ => match Address::of_record(record) {
                Some(address) => address,
                None => continue,
            },
        };
        for reference in &occurrences.references {
            if let Referent::Record(target, MentionRole::Linked) = &reference.to {
                let target = match target {
                    Target::Impression(key) => Target::Impression(joined.page_of(key).clone()),
                    target => target.clone(),
                };
                let pages = mentions.entry(target).or_default();
                pages.insert(address.clone());
            }
        }
    }
    mentions
}
