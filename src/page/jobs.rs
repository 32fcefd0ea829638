//! Every page of a catalogue: where it stands, and what makes it.
//!
//! To add a kind of page: its address in `address`, a file with its view and a template of the same name, and a
//! line here or, for a page that gathers, in `overviews`.

use super::address::Address;
use super::book::{Book, Here};
use super::leaf::Leaf;
use super::{
    candidates, catalogue_page, chosen, comparison, comparison_links, design, design_census,
    examination, exhibition, holder, impression, key, opening, overviews, person, point, work,
};

/// What makes one page.
pub(super) type Make<'a> = Box<dyn Fn(&Here<'_>) -> Leaf + Send + Sync + 'a>;

/// Every page there will be: where it stands, and what makes it.
pub(super) fn jobs<'a>(book: &'a Book<'a>) -> Vec<(Address, Make<'a>)> {
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
        if comparison_links::has_chosen(book, design) {
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
        if candidates::has_key(design) {
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
            jobs.push((
                address,
                Box::new(move |here| catalogue_page::page(here, page)),
            ));
        }
    }
    jobs
}
