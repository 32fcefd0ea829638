//! Short citations, each with its permanent address: of a design, its states and printings, and of an
//! impression.

use crate::model::design::Design;
use crate::model::key::ImpressionKey;
use crate::page::setting::address::{Address, Fragment};
use crate::page::setting::book::Here;

/// What is cited.
pub(crate) struct CitedEntry {
    /// Its permanent key: "7", "7-state-beam", "7.5".
    pub key: String,
    /// The short citation: "OP 7 iii/v".
    pub short: String,
    /// The permanent address.
    pub url: String,
}

/// The citation of a design, then those of its states, where it has several, and of its printings.
pub(crate) fn of_design(here: &Here<'_>, design: &Design) -> Vec<CitedEntry> {
    let settings = &here.public().settings;
    let url = Address::Design(design.key.clone()).absolute(&settings.address.value);
    let number = format!("{} {}", settings.siglum.value, design.number);
    let part = |fragment: Fragment<'_>, short: String| CitedEntry {
        key: format!("{}-{fragment}", design.key),
        short,
        url: format!("{url}#{fragment}"),
    };
    let states = design.standing_states().filter_map(|state| {
        let numeral = here.book.studies.numeral(&design.key, &state.key)?;
        let short = format!("{number} {numeral}");
        (!numeral.is_only()).then(|| part(Fragment::State(&state.key), short))
    });
    let printings = design.standing_printings().map(|printing| {
        let name = here.printing_name(design, &printing.key);
        let short = format!("{number} ({name})");
        part(Fragment::Printing(&printing.key), short)
    });
    let whole = CitedEntry {
        key: design.key.to_string(),
        short: number.clone(),
        url: url.clone(),
    };
    std::iter::once(whole)
        .chain(states)
        .chain(printings)
        .collect()
}

/// The citation of an impression.
pub(crate) fn of_impression(here: &Here<'_>, key: &ImpressionKey) -> CitedEntry {
    let settings = &here.public().settings;
    CitedEntry {
        key: key.to_string(),
        short: format!("{} {}", settings.siglum.value, here.sheet_number(key)),
        url: Address::Impression(key.clone()).absolute(&settings.address.value),
    }
}
