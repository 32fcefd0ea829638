//! Overviews: which of them a catalogue has, and the function that makes each.

use std::collections::BTreeSet;

use crate::model::design::Design;
use crate::model::impression::Impression;
use crate::model::public::Public;
use crate::model::register::Aspect;
use crate::model::words::ClosedList as _;
use crate::page::Input;
use crate::page::about::{catalogue_notes, cite, contents, data};
use crate::page::census::catalogue_census;
use crate::page::changes::latest;
use crate::page::indexes::{
    chronology, concordance, designs, diligence_index, documents, exhibitions, gathered, glossary,
    holders, literature, marks_index, owners, people, titles,
};
use crate::page::key::{candidates, choose};
use crate::page::resolve;
use crate::page::search;
use crate::page::setting::address::Overview;
use crate::page::setting::book::Here;
use crate::page::setting::leaf::Leaf;

/// The overviews that have an entry.
pub(super) fn present(input: &Input<'_>) -> BTreeSet<Overview> {
    Overview::ALL
        .iter()
        .copied()
        .filter(|overview| has_something(input, *overview))
        .collect()
}

fn has_something(input: &Input<'_>, overview: Overview) -> bool {
    let public = input.public;
    let some_design = |wanted: fn(&Design) -> bool| public.designs.values().any(wanted);
    let some_sheet = |wanted: fn(&Impression) -> bool| public.impressions().any(|(_, i)| wanted(i));
    match overview {
        Overview::Designs => !public.designs.is_empty(),
        Overview::Identify => some_design(candidates::has_key),
        Overview::Titles => some_design(|d| !d.titles.is_empty()),
        Overview::Series => !input.studies.series.is_empty(),
        Overview::Subjects => some_design(|d| !d.subjects.is_empty()),
        Overview::Techniques => some_design(|d| !d.technique.is_empty()),
        Overview::Papers => some_sheet(|i| i.sheet.paper.is_some()),
        Overview::Census => input.studies.census.sheets.at_most > 0,
        Overview::Holders => !public.holders.is_empty(),
        Overview::People => !public.people.is_empty(),
        Overview::Owners => some_sheet(owners::has_any),
        Overview::Marks => !public.marks.is_empty() || some_sheet(marks_index::has_any),
        Overview::Provenance => !input.studies.diligence.is_empty(),
        Overview::Chronology => !input.studies.chronology.is_empty(),
        Overview::Exhibitions => !public.exhibitions.is_empty(),
        Overview::Literature => !public.literature.is_empty(),
        Overview::Documents => !public.documents.is_empty(),
        Overview::Concordance => {
            !input.studies.concordance.works.is_empty() || has_former_numbers(public)
        }
        Overview::Search
        | Overview::Glossary
        | Overview::About
        | Overview::Changes
        | Overview::Cite
        | Overview::Contribute
        | Overview::Resolve
        | Overview::Cautions
        | Overview::Data => true,
    }
}

/// Whether the number of a design or the numeral of a state was another in some edition.
fn has_former_numbers(public: &Public) -> bool {
    let register = public.register.iter();
    let mut said = register
        .flat_map(|register| register.entries.values())
        .flat_map(|entry| {
            let aspects = [Aspect::Number, Aspect::Numeral];
            aspects.map(|aspect| entry.said.get(&aspect))
        });
    said.any(|said| said.is_some_and(|said| said.iter().count() > 1))
}

/// Makes an overview.
pub(super) fn page(here: &Here<'_>, overview: Overview) -> Leaf {
    match overview {
        Overview::Search => search::page::page(here),
        Overview::Designs => designs::page(here),
        Overview::Identify => choose::page(here),
        Overview::Titles => titles::page(here),
        Overview::Series => gathered::series(here),
        Overview::Subjects => gathered::subjects(here),
        Overview::Techniques => gathered::techniques(here),
        Overview::Papers => gathered::papers(here),
        Overview::Census => catalogue_census::page(here),
        Overview::Holders => holders::page(here),
        Overview::People => people::page(here),
        Overview::Owners => owners::page(here),
        Overview::Marks => marks_index::page(here),
        Overview::Provenance => diligence_index::page(here),
        Overview::Chronology => chronology::page(here),
        Overview::Exhibitions => exhibitions::page(here),
        Overview::Literature => literature::page(here),
        Overview::Documents => documents::page(here),
        Overview::Concordance => concordance::page(here),
        Overview::Glossary => glossary::page(here),
        Overview::About => contents::page(here),
        Overview::Changes => latest::page(here),
        Overview::Cite => cite::page(here),
        Overview::Resolve => resolve::page::page(here),
        Overview::Contribute => catalogue_notes::contribute(here),
        Overview::Cautions => catalogue_notes::cautions(here),
        Overview::Data => data::page(here),
    }
}
