//! Every page of a catalogue: its address, and the function that makes it.
//!
//! To add a kind of page: an address in `setting/address`, a file with its view, a template of the same
//! name, and a line here or, for an overview, in `overviews`.

use crate::page::comparison::{chosen, groups, recorded};
use crate::page::setting::address::{Address, ComparedBy, Overview};
use crate::page::setting::book::{Book, Here};
use crate::page::setting::leaf::Leaf;
use crate::page::{
    about, census, changes, design, indexes, key, overviews, point, records, search, sheet, texts,
    vacated,
};
use crate::study::issued::editions::Editions;

/// Makes one page.
pub(super) type PageMaker<'a> = Box<dyn Fn(&Here<'_>) -> Leaf + Send + Sync + 'a>;

/// The addresses of the pages that search engines may list: not those that only lead to another page, nor those that
/// hold nothing of the catalogue.
pub(crate) fn listed_pages(book: &Book<'_>) -> Vec<Address> {
    let addresses = jobs(book).into_iter().map(|(address, _)| address);
    addresses
        .filter(|address| match address {
            Address::NotFound | Address::Overview(Overview::Search) => false,
            Address::Impression(key) => book.studies.joined.has_page(key),
            _ => true,
        })
        .collect()
}

/// Every page of the site: those of the catalogue, and those at issued addresses without content.
pub(super) fn all<'a>(book: &'a Book<'a>) -> Vec<(Address, PageMaker<'a>)> {
    let mut jobs = jobs(book);
    let written = jobs.iter().flat_map(|(address, _)| {
        let file = address.file();
        let mut files = book.redirects.former_paths(&file);
        files.insert(file);
        files
    });
    for (address, vacancy) in vacated::addresses(book, &written.collect()) {
        let make = move |here: &Here<'_>| vacated::page(here, vacancy);
        jobs.push((address, Box::new(make)));
    }
    jobs
}

/// Every page of the catalogue: its address, and the function that makes it.
fn jobs<'a>(book: &'a Book<'a>) -> Vec<(Address, PageMaker<'a>)> {
    let mut jobs: Vec<(Address, PageMaker<'a>)> = Vec::new();
    let public = book.public;
    jobs.push((Address::Opening, Box::new(about::opening::page)));
    jobs.push((Address::NotFound, Box::new(search::not_found::page)));
    jobs.push((Address::FieldNotes, Box::new(about::field_notes::page)));
    for design in public.designs.values() {
        let address = Address::Design(design.key.clone());
        jobs.push((
            address,
            Box::new(move |here| design::page::page(here, design)),
        ));
        for comparison in &design.comparisons {
            let address = Address::Comparison(design.key.clone(), comparison.number);
            let make = move |here: &Here<'_>| recorded::page(here, design, comparison);
            jobs.push((address, Box::new(make)));
        }
        for point in &design.points {
            let address = point::page::address(design, point);
            let make = move |here: &Here<'_>| point::page::page(here, design, point);
            jobs.push((address, Box::new(make)));
        }
        let chosen = Address::ChosenComparison(design.key.clone());
        if book.chosen.contains(&design.key) {
            jobs.push((chosen, Box::new(move |here| chosen::page(here, design))));
        }
        for impression in design.impressions.values() {
            let address = Address::Impression(impression.key.clone());
            if book.studies.joined.has_page(&impression.key) {
                let make = move |here: &Here<'_>| sheet::page::page(here, design, impression);
                jobs.push((address, Box::new(make)));
            } else {
                let make = move |here: &Here<'_>| sheet::joined_record::page(here, impression);
                jobs.push((address, Box::new(make)));
            }
        }
        let census = Address::DesignCensus(design.key.clone());
        let make = move |here: &Here<'_>| census::design_census::page(here, design);
        jobs.push((census, Box::new(make)));
        if key::candidates::has_key(design) {
            let address = Address::IdentificationKey(design.key.clone());
            jobs.push((address, Box::new(move |here| key::page::page(here, design))));
            let sheet = Address::ExaminationSheet(design.key.clone());
            let make = move |here: &Here<'_>| key::examination_sheet::page(here, design);
            jobs.push((sheet, Box::new(make)));
        }
    }
    for overview in book.overviews.iter().copied() {
        let make = move |here: &Here<'_>| overviews::page(here, overview);
        jobs.push((Address::Overview(overview), Box::new(make)));
    }
    if book.overviews.contains(&Overview::Designs) {
        let make = |here: &Here<'_>| indexes::designs::list(here);
        jobs.push((Address::DesignList, Box::new(make)));
    }
    for holder in public.holders.values() {
        let address = Address::Holder(holder.key.clone());
        jobs.push((
            address,
            Box::new(move |here| records::holder::page(here, holder)),
        ));
    }
    for person in public.people.values() {
        let address = Address::Person(person.key.clone());
        jobs.push((
            address,
            Box::new(move |here| records::person::page(here, person)),
        ));
    }
    for work in public.literature.values() {
        let address = Address::Work(work.key.clone());
        jobs.push((
            address,
            Box::new(move |here| records::work::page(here, work)),
        ));
    }
    for exhibition in public.exhibitions.values() {
        let address = Address::Exhibition(exhibition.key.clone());
        let make = move |here: &Here<'_>| records::exhibition::page(here, exhibition);
        jobs.push((address, Box::new(make)));
    }
    for mark in public.marks.values() {
        let address = Address::Mark(mark.key.clone());
        let make = move |here: &Here<'_>| records::mark::page(here, mark);
        jobs.push((address, Box::new(make)));
    }
    for series in public.series.values() {
        let address = Address::Series(series.key.clone());
        let make = move |here: &Here<'_>| records::series::page(here, series);
        jobs.push((address, Box::new(make)));
    }
    let groups = public.marks.keys().cloned().map(ComparedBy::Mark);
    for by in groups.chain([ComparedBy::Watermark]) {
        if groups::has_page(book, &by) {
            let address = Address::SheetsCompared(by.clone());
            let make = move |here: &Here<'_>| chosen::of_group(here, &by);
            jobs.push((address, Box::new(make)));
        }
    }
    for document in public.documents.values() {
        let address = Address::Document(document.key.clone());
        let make = move |here: &Here<'_>| records::document::page(here, document);
        jobs.push((address, Box::new(make)));
    }
    let editions = book.editions.as_ref().map(Editions::register);
    for (edition, place) in editions.iter().flat_map(|r| &r.editions).zip(0..) {
        let address = Address::Edition(edition.key(place));
        let make = move |here: &Here<'_>| changes::edition::page(here, place);
        jobs.push((address, Box::new(make)));
    }
    for page in public.pages.values() {
        let address = Address::of_page(&page.key);
        if let Address::Page(_) = address {
            jobs.push((
                address,
                Box::new(move |here| texts::catalogue_page::page(here, page)),
            ));
        }
    }
    jobs
}
