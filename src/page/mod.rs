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
mod bars;
mod book;
mod calendar;
mod census;
mod census_series;
mod census_words;
mod checklist;
mod chosen;
mod chronology;
mod cite;
mod claims;
mod closer;
mod comparison;
mod concordance;
mod counted;
mod counts;
mod crossing;
pub mod dates;
mod declared;
mod descent;
mod design;
mod design_census;
mod design_facts;
mod design_sources;
mod designs;
mod diagram;
mod diligence;
mod examination;
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
mod ink;
mod key;
mod key_couplets;
mod key_data;
mod key_points;
mod laid;
mod lists;
mod literature;
mod markdown;
mod marks;
mod marks_index;
mod mentioned;
mod names;
mod observations;
mod observed;
mod opening;
mod opinions;
mod overviews;
mod own_pages;
mod owners;
mod people;
mod person;
pub mod pictures;
mod point;
mod printings;
mod provenance;
mod readings;
pub(crate) mod rights;
mod run_on;
mod said;
mod settled;
mod sheet_facts;
mod sizes;
mod standing;
mod states;
mod strips;
mod survival;
pub mod template;
mod titles;
mod told_apart;
mod tones;
mod values;
pub mod words;
mod work;
mod worn;

pub use address::{Address, Overview};
pub(crate) use book::{Book, Here};
pub use exports::{Export, ExportFormat, Exports, Subject};
use frame::Leaf;
pub use pictures::{Alignments, Pictures, PublishedPicture, PublishedSize, Tiles, Tone};
pub(crate) use survival::decade;
pub use template::ThemeFault;
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
    jobs(book).par_iter().try_for_each(|(address, make)| {
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
    assets(book.theme, book.public).for_each(|(path, bytes)| take(path, bytes));
    Ok(())
}

/// What makes one page.
type Make<'a> = Box<dyn Fn(&Here<'_>) -> Leaf + Send + Sync + 'a>;

/// Every page there will be: where it stands, and what makes it.
fn jobs<'a>(book: &'a Book<'a>) -> Vec<(Address, Make<'a>)> {
    let mut jobs: Vec<(Address, Make<'a>)> = Vec::new();
    let public = book.public;
    jobs.push((Address::Opening, Box::new(opening::page)));
    for design in public.designs.values() {
        let address = Address::Design(design.key.clone());
        jobs.push((address, Box::new(move |here| design::page(here, design))));
        for (comparison, place) in design.comparisons.iter().zip(1..) {
            let address = Address::Comparison(design.key.clone(), place);
            let make = move |here: &Here<'_>| comparison::page(here, design, comparison);
            jobs.push((address, Box::new(make)));
        }
        for point in &design.points {
            let address = point::address(design, point);
            let make = move |here: &Here<'_>| point::page(here, design, point);
            jobs.push((address, Box::new(make)));
        }
        let chosen = Address::ChosenComparison(design.key.clone());
        if chosen::has_page(book, design) {
            jobs.push((chosen, Box::new(move |here| chosen::page(here, design))));
        }
        for impression in design.impressions.values() {
            let address = Address::Impression(impression.key.clone());
            let make = move |here: &Here<'_>| impression::page(here, design, impression);
            jobs.push((address, Box::new(make)));
        }
        let census = Address::DesignCensus(design.key.clone());
        let make = move |here: &Here<'_>| design_census::page(here, design);
        jobs.push((census, Box::new(make)));
        if key::has_key(design) {
            let address = Address::IdentificationKey(design.key.clone());
            jobs.push((address, Box::new(move |here| key::page(here, design))));
            let sheet = Address::ExaminationSheet(design.key.clone());
            let make = move |here: &Here<'_>| examination::page(here, design);
            jobs.push((sheet, Box::new(make)));
        }
    }
    for overview in book.overviews.iter().copied() {
        let make = move |here: &Here<'_>| overviews::page(here, overview);
        jobs.push((Address::Overview(overview), Box::new(make)));
    }
    for holder in public.holders.values() {
        let address = Address::Holder(holder.key.clone());
        jobs.push((address, Box::new(move |here| holder::page(here, holder))));
    }
    for person in public.people.values() {
        let address = Address::Person(person.key.clone());
        jobs.push((address, Box::new(move |here| person::page(here, person))));
    }
    for work in public.literature.values() {
        let address = Address::Work(work.key.clone());
        jobs.push((address, Box::new(move |here| work::page(here, work))));
    }
    for exhibition in public.exhibitions.values() {
        let address = Address::Exhibition(exhibition.key.clone());
        let make = move |here: &Here<'_>| exhibition::page(here, exhibition);
        jobs.push((address, Box::new(make)));
    }
    for page in public.pages.values() {
        let address = Address::of_page(&page.key);
        if let Address::Page(_) = address {
            jobs.push((address, Box::new(move |here| own_pages::page(here, page))));
        }
    }
    jobs
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

/// The theme's own files, its drawings in the block ink, and the style sheet of that ink, whatever the
/// theme has under its name.
fn assets(theme: &Theme, public: &Public) -> impl Iterator<Item = (String, Vec<u8>)> {
    const STYLE_SHEET: &str = "assets/ink.css";
    let ink = public.settings.ink;
    let own = theme
        .files
        .iter()
        .filter(|(path, _)| path.starts_with("assets/") && *path != STYLE_SHEET)
        .map(move |(path, content)| {
            let inked = match std::str::from_utf8(content) {
                Ok(svg) if path.ends_with(".svg") => ink::inked(svg, ink).into_bytes(),
                _ => content.to_vec(),
            };
            (path.clone(), inked)
        });
    let style_sheet = ink::style_sheet(ink).into_bytes();
    own.chain(std::iter::once((STYLE_SHEET.to_owned(), style_sheet)))
}
