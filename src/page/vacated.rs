//! Pages at issued addresses without content: records that are not published any more, pages of a design that have
//! nothing to show, and overviews without an entry (docs/definitions.md, "Addresses").
//!
//! In: the addresses that editions issued, and the files of all other pages. Out: a page for each address of a page that
//! has none. It says what is no longer here and where to go, and nothing of a record that is not published. No page
//! links to one, search engines may not list them, and a catalogue without an edition has none.

use std::collections::{BTreeMap, BTreeSet};

use serde::Serialize;

use crate::model::issued_address::IssuedAddress;
use crate::model::key::{ImpressionKey, Key, PictureOwner};
use crate::model::link::Target;
use crate::model::register::{IssuedEntry, Subject};
use crate::model::words::ClosedList as _;
use crate::page::changes::wording;
use crate::page::setting::address::{Address, ComparedBy, Overview};
use crate::page::setting::book::{Book, Here};
use crate::page::setting::html::CleanHtml;
use crate::page::setting::leaf::Leaf;
use crate::page::texts::catalogue_pages;

/// Why a page has no content.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Vacancy {
    /// What stood here is not published any more; the last edition that published it, by its place.
    Unpublished(usize),
    /// The design has no identification key.
    NoKey,
    /// Fewer than two sheets of the design can be compared.
    NothingToCompare,
    /// The overview has no entry.
    NoEntry,
}

/// The issued addresses of pages that none of the files `written` answers.
pub(super) fn addresses(book: &Book<'_>, written: &BTreeSet<String>) -> BTreeMap<Address, Vacancy> {
    let mut vacant = BTreeMap::new();
    let register = book.public.register.as_ref();
    let Some((register, (last, _))) = register.and_then(|r| Some((r, r.last()?))) else {
        return vacant;
    };
    let issued = register.entries.keys().map(|address| (address, last));
    let unpublished = &book.public.unpublished;
    let unpublished = unpublished.iter().map(|(address, last)| (address, *last));
    for (address, last) in issued.chain(unpublished) {
        if let Some(page) = page_of(address) {
            vacant.insert(page, Vacancy::Unpublished(last));
        }
    }
    let once = OncePossible::of(book);
    for design in once.with_points {
        vacant.insert(Address::IdentificationKey(design.clone()), Vacancy::NoKey);
        vacant.insert(Address::ExaminationSheet(design), Vacancy::NoKey);
    }
    for (design, sheets) in once.compared {
        if sheets.len() > 1 {
            vacant.insert(Address::ChosenComparison(design), Vacancy::NothingToCompare);
        }
    }
    let marks = book.public.marks.keys().cloned().map(ComparedBy::Mark);
    for by in marks.chain([ComparedBy::Watermark]) {
        vacant.insert(Address::SheetsCompared(by), Vacancy::NothingToCompare);
    }
    for overview in Overview::ALL {
        vacant.insert(Address::Overview(*overview), Vacancy::NoEntry);
    }
    vacant.retain(|address, _| !written.contains(&address.file()));
    // The former addresses of these pages lead to them.
    let former = vacant
        .keys()
        .flat_map(|address| book.redirects.former_paths(&address.file()));
    let former: BTreeSet<String> = former.collect();
    vacant.retain(|address, _| !former.contains(&address.file()));
    vacant
}

/// The page at an issued address; `None` for places in pages and for pictures.
fn page_of(address: &IssuedAddress) -> Option<Address> {
    Some(match address {
        IssuedAddress::Record(target) => return Address::of_target(target),
        IssuedAddress::Point(design, key) => Address::Point(design.clone(), key.clone()),
        IssuedAddress::Comparison(design, place) => Address::Comparison(design.clone(), *place),
        IssuedAddress::Part(..) | IssuedAddress::Condition(..) => return None,
    })
}

/// What the editions issued of each design, by its present key, that made pages of it possible.
#[derive(Default)]
struct OncePossible {
    /// The designs that had points.
    with_points: BTreeSet<Key>,
    /// The sheets that may have had something to compare.
    compared: BTreeMap<Key, BTreeSet<ImpressionKey>>,
}

impl OncePossible {
    fn of(book: &Book<'_>) -> OncePossible {
        let mut once = OncePossible::default();
        let public = book.public;
        let issued = public.register.iter().flat_map(|r| &r.entries);
        let issued = issued.map(|(address, entry)| (address, Some(entry)));
        let unpublished = public.unpublished.keys().map(|address| (address, None));
        for (address, entry) in issued.chain(unpublished) {
            let now = public.leads(address);
            once.add(now.as_ref().unwrap_or(address), entry);
        }
        let has_page = |design: &Key| public.designs.contains_key(design);
        once.with_points.retain(has_page);
        once.compared.retain(|design, _| has_page(design));
        once
    }

    /// Adds an issued address; without an entry where it is not published any more.
    fn add(&mut self, address: &IssuedAddress, entry: Option<&IssuedEntry>) {
        let sheet = match address {
            IssuedAddress::Point(design, _) => {
                self.with_points.insert(design.clone());
                return;
            }
            IssuedAddress::Record(Target::Picture(picture)) => match &picture.owner {
                PictureOwner::Impression(sheet) => sheet,
                PictureOwner::Design(_) | PictureOwner::Document(_) => return,
            },
            IssuedAddress::Record(Target::Impression(sheet))
                if entry.is_none_or(had_observations) =>
            {
                sheet
            }
            _ => return,
        };
        let sheets = self.compared.entry(sheet.design.clone()).or_default();
        sheets.insert(sheet.clone());
    }
}

fn had_observations(entry: &IssuedEntry) -> bool {
    let revised = entry.revised.values().flatten();
    let mut subjects = entry.holds.keys().chain(revised);
    subjects.any(|subject| *subject == Subject::Observations)
}

#[derive(Serialize)]
struct View {
    title: String,
    brief: CleanHtml,
    /// Search engines must not list it.
    unlisted: bool,
    /// Where to go instead.
    ways: Vec<CleanHtml>,
}

/// The page at an address without content.
pub(super) fn page(here: &Here<'_>, vacancy: Vacancy) -> Leaf {
    let words = here.words();
    let said = |id: &str| CleanHtml::text(words.word(id));
    let (title, brief) = match vacancy {
        Vacancy::Unpublished(last) => {
            let edition = edition(here, last);
            let brief = words.html("unpublished-since", None, &[("edition", &edition)]);
            (words.word("unpublished").to_owned(), brief)
        }
        Vacancy::NoKey => (
            words.word("identification-key").to_owned(),
            said("no-key-now"),
        ),
        Vacancy::NothingToCompare => {
            let title = words.word("comparison-chosen").to_owned();
            (title, said("nothing-to-compare-now"))
        }
        Vacancy::NoEntry => {
            let title = match here.address {
                Address::Overview(overview) => {
                    catalogue_pages::title(here.public(), words, *overview)
                }
                _ => words.word("unpublished"),
            };
            (title.to_owned(), said("no-entry-now"))
        }
    };
    let view = View {
        title: title.clone(),
        brief: brief.clone(),
        unlisted: true,
        ways: ways(here),
    };
    Leaf::new(here.address, title, "pages/vacated.html", &view).described(brief.plain())
}

/// An edition as a link to its page.
fn edition(here: &Here<'_>, place: usize) -> CleanHtml {
    let register = here.public().register.as_ref();
    let edition = register.and_then(|register| register.editions.get(place));
    edition.map_or_else(CleanHtml::empty, |edition| {
        let name = wording::edition_and_date(here.words(), edition);
        here.link(
            &Address::Edition(edition.key(place)),
            &CleanHtml::text(&name),
        )
    })
}

/// The design that an address lies within, where that is published, and the overviews that a reader may look in.
fn ways(here: &Here<'_>) -> Vec<CleanHtml> {
    let design = match here.address {
        Address::Impression(key) => Some(&key.design),
        Address::IdentificationKey(key)
        | Address::ExaminationSheet(key)
        | Address::ChosenComparison(key)
        | Address::Point(key, _)
        | Address::Comparison(key, _) => Some(key),
        _ => None,
    };
    let public = here.public();
    let design = design.filter(|key| public.designs.contains_key(*key));
    let overviews = [Overview::Designs, Overview::Search, Overview::Changes];
    let overviews = overviews
        .into_iter()
        .filter(|overview| here.book.overviews.contains(overview))
        .map(|overview| {
            let title = catalogue_pages::title(public, here.words(), overview);
            here.link(&Address::Overview(overview), &CleanHtml::text(title))
        });
    let design = design.map(|key| here.design(key));
    design.into_iter().chain(overviews).collect()
}
