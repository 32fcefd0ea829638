//! Pages: from the public catalogue to the text of every page.
//!
//! In: the catalogue without what is private, its studies, its pictures and its theme. Out: a
//! [`Site`], the files of the compiled catalogue by path, the same for any number of threads.
//!
//! Reading order: [`address`] says where each page stands; [`html`] and `markdown` make the only
//! text that is printed unescaped; [`words`], [`dates`] and `names` say how things are called;
//! [`template`] and `frame` set a page; `book` holds all of it. Then one file a kind of page: a view
//! model (plain fields, words and numbers ready to show) beside a template of the same name in
//! `themes/laid/pages`. To add a kind: copy the shortest, and give it a line in [`jobs`].
//!
//! Not here: writing to disk (`issue`), open standards (`exchange`).

use std::collections::{BTreeMap, BTreeSet};
use std::sync::{Arc, Mutex, PoisonError};

use rayon::prelude::*;
use tera::Value;

use crate::model::link::Target;
use crate::model::occurrence::{MentionRole, Referent};
use crate::model::public::Public;
use crate::model::theme::Theme;
use crate::study::Studies;

mod about;
pub mod address;
mod appearances;
mod assets;
mod bars;
mod book;
mod calendar;
mod candidates;
mod catalogue_page;
mod catalogue_pages;
mod cautions;
mod census;
mod census_figures;
mod census_series;
mod checklist;
mod chosen;
mod chronology;
mod cite;
mod claims;
mod closer;
mod comparison;
mod comparison_links;
mod concordance;
mod counted;
mod counts;
mod crossing;
mod custody;
pub mod dates;
mod declared;
mod descent;
mod design;
mod design_brief;
mod design_census;
mod design_facts;
mod design_names;
mod design_sources;
mod designs;
mod diagram;
mod diligence;
mod diligence_index;
mod enumeration;
mod examination;
mod examined;
mod exhibition;
mod exhibitions;
mod exports;
mod facts;
mod figures;
mod frame;
mod gallery;
mod gathered;
mod glossary;
mod holder;
mod holder_lists;
mod holders;
mod holding_table;
mod holdings;
pub mod html;
mod impression;
mod imprint;
mod ink;
mod jobs;
mod key;
mod key_couplets;
mod key_data;
mod key_points;
mod laid;
mod leaf;
mod link_targets;
mod lists;
mod literature;
mod markdown;
mod marks;
mod marks_index;
mod matrices;
mod mentioned;
mod number;
mod observations;
mod observed;
mod open_pairs;
mod opening;
mod opinions;
mod overviews;
mod owners;
mod party_names;
mod people;
mod person;
pub mod pictures;
mod point;
mod point_table;
mod printings;
mod provenance;
mod reading_order;
mod readings;
mod refusals;
pub(crate) mod rights;
mod run_on;
mod said;
mod settled;
mod sheet_counts;
mod sheet_facts;
mod sheet_names;
mod sheet_records;
mod sizes;
mod source_names;
mod standing;
mod states;
mod strips;
mod survival;
pub mod template;
mod terms;
mod theme_fault;
mod titles;
mod told_apart;
mod tones;
mod values;
mod venues;
pub mod words;
mod work;
mod worn;

pub use address::{Address, Overview};
pub(crate) use book::{Book, Here};
pub use exports::{Export, ExportFormat, Exports, Subject};
pub use pictures::{Alignments, Pictures, PublishedPicture, PublishedSize, Tiles, Tone};
pub use theme_fault::ThemeFault;
pub use words::private_owner;

/// What pages are made from.
#[derive(Clone, Copy)]
pub struct Input<'a> {
    /// The catalogue, without what is private.
    pub public: &'a Public,
    /// What was computed from it.
    pub studies: &'a Studies,
    /// The pictures that may be shown.
    pub pictures: &'a Pictures,
    /// What alignment yields.
    pub alignments: &'a Alignments,
    /// The files for other programs that pages link to (`exchange`).
    pub exports: &'a Exports,
    /// The theme.
    pub theme: &'a Theme,
}

/// A compiled catalogue, as files.
#[derive(Clone, Debug, Default)]
pub struct Site {
    /// Each file's content, by path relative to the site.
    pub files: BTreeMap<String, Vec<u8>>,
}

/// Takes a file of the site, by its path, as soon as it is made: from several threads, in no order.
pub type Take<'a> = dyn Fn(String, Vec<u8>) + Sync + 'a;

impl Site {
    /// What `make` gives, and the site of all files that it hands out.
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
    let around =
        Value::from_serializable(&frame::Site::new(book.public, &book.words, &book.overviews));
    jobs::jobs(book)
        .par_iter()
        .try_for_each(|(address, make)| {
            let root = address.root();
            let here = Here {
                book,
                address,
                root: &root,
            };
            let text = frame::write(&make(&here), &around, book)?;
            take(address.file(), text.into_bytes());
            Ok(())
        })?;
    assets::assets(book.theme, book.public).for_each(|(path, bytes)| take(path, bytes));
    Ok(())
}

/// What every page of a catalogue is set from.
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
        overviews: overviews::present(input),
        mentions: mentions(input.public),
        concordance,
    })
}

/// Where texts mention each record.
fn mentions(public: &Public) -> BTreeMap<Target, BTreeSet<Address>> {
    let mut mentions: BTreeMap<Target, BTreeSet<Address>> = BTreeMap::new();
    for (record, occurrences) in &public.occurrences {
        let Some(address) = Address::of_record(record) else {
            continue;
        };
        for reference in &occurrences.references {
            if let Referent::Record(target, MentionRole::Linked) = &reference.to {
                let pages = mentions.entry(target.clone()).or_default();
                pages.insert(address.clone());
            }
        }
    }
    mentions
}
