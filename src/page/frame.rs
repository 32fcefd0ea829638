//! The frame: what stands around every page. Title and ways to everything at the head, citation,
//! edition, licence, contact and caution at the foot.
//!
//! The caution is part of the frame and not of any page, so that no catalogue leaves it out without
//! writing its own frame.

use std::collections::BTreeSet;

use serde::Serialize;
use tera::Value;

use super::address::{Address, Overview};
use super::dates;
use super::html::CleanHtml;
use super::own_pages;
use super::template::ThemeFault;
use super::words::{Given, Words};
use crate::model::public::Public;
use crate::model::words::ClosedList as _;

/// One page, ready to be framed and written.
pub(super) struct Leaf {
    /// Where it stands.
    pub address: Address,
    /// Its title, for the browser.
    pub title: String,
    /// What it tells, in a sentence, for those who find it elsewhere.
    pub description: String,
    /// What is cited: "CP 14.7"; nothing for pages about the whole.
    pub cited: Option<String>,
    /// The template.
    pub template: &'static str,
    /// What the template is told.
    pub view: Value,
}

impl Leaf {
    /// A leaf with `view` as its template sees it.
    pub fn new<V: Serialize>(
        address: &Address,
        title: String,
        template: &'static str,
        view: &V,
    ) -> Leaf {
        Leaf {
            address: address.clone(),
            description: title.clone(),
            title,
            cited: None,
            template,
            view: Value::from_serializable(view),
        }
    }

    /// The same, described in `text`.
    pub fn described(mut self, text: String) -> Leaf {
        self.description = text;
        self
    }

    /// The same, cited as `text`.
    pub fn cited_as(mut self, text: String) -> Leaf {
        self.cited = Some(text);
        self
    }
}

/// What the frame says on every page alike.
#[derive(Serialize)]
pub(super) struct Site {
    title: String,
    language: String,
    siglum: String,
    nav: Vec<Way>,
    contents: Vec<Way>,
    edition: String,
    licence: Option<String>,
    work_rights: Option<String>,
    contact: Option<Contact>,
}

#[derive(Serialize)]
struct Way {
    address: String,
    text: String,
}

#[derive(Serialize)]
struct Contact {
    text: String,
    href: Option<String>,
}

/// What the frame says on one page.
#[derive(Serialize)]
pub(super) struct Around {
    title: String,
    description: String,
    canonical: String,
    cite: CleanHtml,
    current: String,
}

/// The pages named in the line at the head.
const NAV: [Overview; 7] = [
    Overview::Designs,
    Overview::Holders,
    Overview::People,
    Overview::Census,
    Overview::Chronology,
    Overview::Concordance,
    Overview::Literature,
];

impl Site {
    /// The frame of a catalogue.
    pub fn new(public: &Public, words: &Words, overviews: &BTreeSet<Overview>) -> Site {
        let settings = &public.settings;
        let way = |overview: &Overview| Way {
            address: Address::Overview(*overview).to_string(),
            text: own_pages::title(public, words, *overview).to_owned(),
        };
        let own = own_pages::in_order(public)
            .into_iter()
            .map(|page| (Address::of_page(&page.key), page))
            .filter(|(address, _)| matches!(address, Address::Page(_)))
            .map(|(address, page)| Way {
                address: address.to_string(),
                text: page.title.clone(),
            });
        let mut contents: Vec<Way> = Overview::ALL
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
        Site {
            title: settings.title.value.clone(),
            language: settings.language.value.clone(),
            siglum: settings.siglum.value.clone(),
            nav: NAV
                .iter()
                .filter(|o| overviews.contains(o))
                .map(way)
                .collect(),
            contents,
            edition: edition(public, words),
            licence: settings.licence.as_deref().map(super::rights::in_words),
            work_rights: settings.work_rights.clone(),
            contact: settings.contact.as_ref().map(|contact| Contact {
                href: contact_href(contact),
                text: contact.clone(),
            }),
        }
    }
}

/// "edition 0.1, 1 November 2026"; only what is recorded.
pub(super) fn edition(public: &Public, words: &Words) -> String {
    let settings = &public.settings;
    let edition = settings
        .edition
        .as_ref()
        .map(|e| words.with("edition", &[("edition", Given::Text(e))]));
    let dated = settings.dated.as_ref().map(|d| dates::once(d, words));
    [edition, dated]
        .into_iter()
        .flatten()
        .collect::<Vec<_>>()
        .join(", ")
}

/// An address to write to, where the contact is one.
pub(super) fn contact_href(contact: &str) -> Option<String> {
    let has_space = contact.contains(char::is_whitespace);
    if contact.starts_with("https://") || contact.starts_with("http://") {
        Some(contact.to_owned())
    } else if !has_space && contact.split('@').filter(|part| !part.is_empty()).count() == 2 {
        Some(format!("mailto:{contact}"))
    } else {
        None
    }
}

impl Around {
    /// What stands around `leaf`.
    pub fn new(leaf: &Leaf, public: &Public, words: &Words) -> Around {
        let settings = &public.settings;
        let canonical = leaf.address.absolute(&settings.address.value);
        let title = if leaf.address == Address::Opening {
            settings.title.value.clone()
        } else {
            format!("{} · {}", leaf.title, settings.title.value)
        };
        Around {
            title,
            description: leaf.description.clone(),
            cite: citation(leaf.cited.as_deref(), public, words, &canonical),
            canonical,
            current: leaf.address.to_string(),
        }
    }
}

/// "CP 14.7, in The Editor (ed.), *The Colour Prints*, edition 0.1, 1 November 2026, https://…".
pub(super) fn citation(
    cited: Option<&str>,
    public: &Public,
    words: &Words,
    canonical: &str,
) -> CleanHtml {
    let settings = &public.settings;
    let editors: Vec<&str> = settings
        .editors
        .iter()
        .filter_map(|key| public.people.get(&key.value))
        .map(|person| person.name.value.as_str())
        .collect();
    let editors = match editors.len() {
        0 => CleanHtml::empty(),
        n => words.html(
            "cited-editors",
            Some(n),
            &[("names", &CleanHtml::text(&editors.join(", ")))],
        ),
    };
    let title = CleanHtml::element("cite", &[], &CleanHtml::text(&settings.title));
    let whole = CleanHtml::join(
        [
            &editors,
            &title,
            &CleanHtml::text(&edition(public, words)),
            &CleanHtml::text(canonical),
        ],
        ", ",
    );
    match cited {
        Some(cited) => words.html(
            "cited-in",
            None,
            &[("cited", &CleanHtml::text(cited)), ("whole", &whole)],
        ),
        None => whole,
    }
}

/// A page framed and written.
///
/// # Errors
/// [`ThemeFault`] where its template asks for what it does not have.
pub(super) fn write(
    leaf: &Leaf,
    site: &Value,
    book: &super::book::Book<'_>,
) -> Result<String, ThemeFault> {
    let around = Around::new(leaf, book.public, &book.words);
    let mut context = tera::Context::new();
    context.insert_value("site", site.clone());
    context.insert_value("leaf", Value::from_serializable(&around));
    context.insert_value("root", Value::normal_string(&leaf.address.root()));
    context.insert_value("page", leaf.view.clone());
    book.templates.render(leaf.template, &context)
}
