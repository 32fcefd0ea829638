//! The sections of the catalogue: the words in the head of every page, and the section that each page belongs to.

use crate::page::setting::address::{Address, Overview};

/// The sections, each named by the page that leads into it. The rest is in the contents at the foot of every page and on
/// the page about the catalogue.
pub(super) const SECTIONS: [Overview; 5] = [
    Overview::Designs,
    Overview::Identify,
    Overview::Census,
    Overview::Holders,
    Overview::About,
];

/// The section of a page; `None` for the opening page, the search, and the page for an address that leads to nothing.
pub(super) fn section(address: &Address) -> Option<Overview> {
    Some(match address {
        Address::Opening | Address::NotFound => return None,
        Address::Overview(overview) => return of_overview(*overview),
        Address::DesignList
        | Address::Design(_)
        | Address::ChosenComparison(_)
        | Address::Comparison(..)
        | Address::Point(..)
        | Address::Series(_)
        | Address::Impression(_) => Overview::Designs,
        Address::IdentificationKey(_) | Address::ExaminationSheet(_) => Overview::Identify,
        Address::DesignCensus(_) => Overview::Census,
        Address::Holder(_) | Address::Mark(_) | Address::SheetsCompared(_) => Overview::Holders,
        Address::Person(_)
        | Address::Work(_)
        | Address::Exhibition(_)
        | Address::Document(_)
        | Address::Edition(_)
        | Address::Page(_)
        | Address::FieldNotes => Overview::About,
    })
}

fn of_overview(overview: Overview) -> Option<Overview> {
    Some(match overview {
        Overview::Search => return None,
        Overview::Designs
        | Overview::Titles
        | Overview::Series
        | Overview::Subjects
        | Overview::Techniques
        | Overview::Papers => Overview::Designs,
        Overview::Identify | Overview::Resolve => Overview::Identify,
        Overview::Census => Overview::Census,
        Overview::Holders | Overview::Owners | Overview::Marks | Overview::Provenance => {
            Overview::Holders
        }
        Overview::People
        | Overview::Chronology
        | Overview::Exhibitions
        | Overview::Literature
        | Overview::Documents
        | Overview::Concordance
        | Overview::Glossary
        | Overview::About
        | Overview::Changes
        | Overview::Cite
        | Overview::Contribute
        | Overview::Cautions
        | Overview::Data => Overview::About,
    })
}
