//! The pages above a page: the catalogue, the overview that lists it, the design that it belongs to.

use crate::model::key::Key;
use crate::page::setting::address::{Address, Overview};
use crate::page::setting::book::Here;
use crate::page::texts::catalogue_pages;

/// A page above another, by title and address.
pub(super) struct Step {
    pub name: String,
    pub address: Address,
}

/// The pages above this one, the opening page first; empty for the opening page itself, and for the page of an
/// address that leads to nothing.
pub(super) fn above(here: &Here<'_>) -> Vec<Step> {
    let mut steps = vec![Step {
        name: here.public().settings.title.value.clone(),
        address: Address::Opening,
    }];
    match here.address {
        Address::Opening | Address::NotFound => return Vec::new(),
        Address::Overview(_) | Address::Page(_) => {}
        Address::Design(_) | Address::DesignList => {
            steps.extend(overview(here, Overview::Designs));
        }
        Address::Impression(key) => of_design(here, &key.design, &mut steps),
        Address::DesignCensus(key)
        | Address::IdentificationKey(key)
        | Address::ExaminationSheet(key)
        | Address::ChosenComparison(key)
        | Address::Point(key, _)
        | Address::Comparison(key, _) => of_design(here, key, &mut steps),
        Address::Holder(_) => steps.extend(overview(here, Overview::Holders)),
        Address::Person(_) => steps.extend(overview(here, Overview::People)),
        Address::Work(_) => steps.extend(overview(here, Overview::Literature)),
        Address::Exhibition(_) => steps.extend(overview(here, Overview::Exhibitions)),
        Address::Series(_) => steps.extend(overview(here, Overview::Series)),
        Address::Document(_) => steps.extend(overview(here, Overview::Documents)),
        Address::Mark(_) | Address::SheetsCompared(_) => {
            steps.extend(overview(here, Overview::Marks));
        }
        Address::Edition(_) => steps.extend(overview(here, Overview::Changes)),
        Address::FieldNotes => steps.extend(overview(here, Overview::Data)),
    }
    steps
}

fn of_design(here: &Here<'_>, key: &Key, steps: &mut Vec<Step>) {
    steps.extend(overview(here, Overview::Designs));
    if let Some(design) = here.public().designs.get(key) {
        steps.push(Step {
            name: here.design_name(design).plain(),
            address: Address::Design(key.clone()),
        });
    }
}

fn overview(here: &Here<'_>, overview: Overview) -> Option<Step> {
    here.book.overviews.contains(&overview).then(|| Step {
        name: catalogue_pages::title(here.public(), here.words(), overview).to_owned(),
        address: Address::Overview(overview),
    })
}
