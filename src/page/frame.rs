//! The frame around every page: title and navigation at the head; citation, edition, licence, contact
//! and caution at the foot.
//!
//! The caution is in the frame and not in the pages. A catalogue can therefore omit it only by replacing
//! the frame.

use serde::Serialize;
use tera::Value;

use crate::model::words::ClosedList as _;
use crate::page::neighbours::{self, Neighbours};
use crate::page::phrases::imprint::{citation, correction_href, edition};
use crate::page::phrases::rights;
use crate::page::preview::open_graph::{self, LinkPreview};
use crate::page::preview::schema_org;
use crate::page::sections::{SECTIONS, section};
use crate::page::setting::address::{Address, Overview};
use crate::page::setting::book::{Book, Here, is_right_to_left};
use crate::page::setting::export_links::ExportLink;
use crate::page::setting::html::CleanHtml;
use crate::page::setting::leaf::Leaf;
use crate::page::setting::theme_fault::ThemeFault;
use crate::page::texts::catalogue_pages;

/// The parts of the frame that are the same on every page.
#[derive(Serialize)]
pub(super) struct SiteFrame {
    title: String,
    language: String,
    right_to_left: bool,
    siglum: String,
    nav: Vec<NavLink>,
    contents: Vec<NavLink>,
    edition: String,
    licence: Option<String>,
    work_rights: Option<String>,
    contact: Option<String>,
}

#[derive(Serialize)]
struct NavLink {
    address: String,
    text: String,
}

/// The parts of the frame that depend on the page.
#[derive(Serialize)]
pub(super) struct PageFrame {
    title: String,
    description: String,
    canonical: String,
    /// The citation of the page.
    cite: CleanHtml,
    /// The same in short; `None` for pages about the whole.
    short: Option<String>,
    /// The citations of parts of the page, with their addresses.
    parts: Vec<String>,
    /// The link for corrections, with address and edition.
    corrections: Option<String>,
    /// The address of the page.
    current: String,
    /// The address of the page that leads into its section; empty where it has none.
    section: String,
    /// The pages before and after it.
    neighbours: Option<Neighbours>,
    /// Every file for other programs that is made of the page.
    files: Vec<ExportLink>,
    /// The feed of changes, where this page is not the one that it stands beside and announces it all the same.
    feed: Option<ExportLink>,
    /// Those of them that describe the page to other programs: its citations.
    descriptions: Vec<ExportLink>,
    /// Those of them that are the record of the page in another form: linked data.
    data: Vec<ExportLink>,
    /// What a link to the page shows.
    preview: Option<LinkPreview>,
    /// The record of the page in the vocabulary of schema.org.
    record: Option<CleanHtml>,
}

impl SiteFrame {
    /// The frame of a catalogue.
    pub fn new(book: &Book<'_>) -> SiteFrame {
        let (public, words, overviews) = (book.public, &book.words, &book.overviews);
        let settings = &public.settings;
        let way = |overview: &Overview| NavLink {
            address: Address::Overview(*overview).to_string(),
            text: catalogue_pages::title(public, words, *overview).to_owned(),
        };
        let own = catalogue_pages::in_order(public)
            .into_iter()
            .map(|page| (Address::of_page(&page.key), page))
            .filter(|(address, _)| matches!(address, Address::Page(_)))
            .map(|(address, page)| NavLink {
                address: address.to_string(),
                text: page.title.clone(),
            });
        let mut contents: Vec<NavLink> = Overview::ALL
            .iter()
            .filter(|o| overviews.contains(o) && !o.is_about_the_catalogue())
            .map(way)
            .collect();
        contents.extend(own);
        contents.extend(
            Overview::ALL
                .iter()
                .filter(|o| overviews.contains(o) && o.is_about_the_catalogue())
                .map(way),
        );
        SiteFrame {
            title: settings.title.value.clone(),
            language: settings.language.value.clone(),
            right_to_left: is_right_to_left(&settings.language.value),
            siglum: settings.siglum.value.clone(),
            nav: SECTIONS
                .iter()
                .filter(|o| overviews.contains(o))
                .map(|overview| NavLink {
                    address: Address::Overview(*overview).to_string(),
                    text: words
                        .word(&format!("section-{}", overview.word()))
                        .to_owned(),
                })
                .collect(),
            contents,
            edition: edition(book),
            licence: settings.licence.as_deref().map(rights::in_words),
            work_rights: settings.work_rights.clone(),
            contact: settings.contact.clone(),
        }
    }
}

impl PageFrame {
    /// The frame of `leaf`, as seen from its page.
    fn new(leaf: &Leaf, here: &Here<'_>) -> PageFrame {
        let settings = &here.public().settings;
        let address = leaf.stands_at.as_ref().unwrap_or(&leaf.address);
        let canonical = address.absolute(&settings.address.value);
        let files = here.export_links();
        let title = if leaf.address == Address::Opening {
            settings.title.value.clone()
        } else {
            format!("{} · {}", leaf.title, settings.title.value)
        };
        PageFrame {
            title,
            description: leaf.description.clone(),
            cite: citation(leaf.cited.as_deref(), here.book, &canonical),
            short: leaf.cited.clone(),
            parts: leaf.cited_parts.clone(),
            corrections: settings.contact.as_deref().and_then(|contact| {
                let cited = leaf.cited.as_deref().unwrap_or(&leaf.title);
                correction_href(contact, cited, &edition(here.book), &canonical)
            }),
            canonical,
            current: leaf.address.to_string(),
            section: section(&leaf.address)
                .map_or_else(String::new, |o| Address::Overview(o).to_string()),
            neighbours: neighbours::of_page(here),
            feed: matches!(leaf.address, Address::Opening | Address::Edition(_))
                .then(|| here.feed_link())
                .flatten(),
            descriptions: files
                .iter()
                .filter(|file| file.describes() && !file.is_linked_data())
                .cloned()
                .collect(),
            data: files
                .iter()
                .filter(|file| file.is_linked_data())
                .cloned()
                .collect(),
            preview: open_graph::of_page(here, leaf),
            record: schema_org::of_page(here, leaf),
            files,
        }
    }
}

/// A page in its frame, as text.
///
/// # Errors
/// [`ThemeFault`] where its template uses a field that the page does not have.
pub(super) fn write(leaf: &Leaf, site: &Value, book: &Book<'_>) -> Result<String, ThemeFault> {
    let root = book.root_of(&leaf.address);
    let here = Here {
        book,
        address: &leaf.address,
        root: &root,
    };
    let around = PageFrame::new(leaf, &here);
    let mut context = tera::Context::new();
    context.insert_value("site", site.clone());
    context.insert_value("leaf", Value::from_serializable(&around));
    context.insert_value("root", Value::normal_string(&root));
    context.insert_value("page", leaf.view.clone());
    book.templates.render(leaf.template, &context)
}
