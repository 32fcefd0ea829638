//! Short citations, each with its permanent address: of a design, its states and printings, of an impression, of a
//! document and of a series.

use crate::model::design::Design;
use crate::model::document::Document;
use crate::model::key::ImpressionKey;
use crate::model::series::SeriesRecord;
use crate::page::setting::address::{Address, Fragment};
use crate::page::setting::book::Here;

/// What is cited.
pub(crate) struct CitedEntry {
    /// Its permanent key: "7", "7-state-beam", "7.5".
    pub key: String,
    /// The short citation: "OP 7 iii/v".
    pub short: String,
    /// What it is: the short citation with the title of the design, or a title of its own.
    pub title: String,
    /// The permanent address.
    pub url: String,
}

/// The citation of a design, then those of its states, where it has several, and of its printings.
pub(crate) fn of_design(here: &Here<'_>, design: &Design) -> Vec<CitedEntry> {
    let settings = &here.public().settings;
    let url = Address::Design(design.key.clone()).absolute(&settings.address.value);
    let number = format!("{} {}", settings.siglum.value, design.number);
    let design_title = here.design_title(design).plain();
    let part = |fragment: Fragment<'_>, short: String| CitedEntry {
        key: format!("{}-{fragment}", design.key),
        title: format!("{short}, {design_title}"),
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
        title: format!("{number}, {design_title}"),
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
    let short = format!("{} {}", settings.siglum.value, here.sheet_number(key));
    let design = here.public().designs.get(&key.design);
    let title = design.map_or_else(
        || short.clone(),
        |design| format!("{short}, {}", here.design_title(design).plain()),
    );
    CitedEntry {
        key: key.to_string(),
        short,
        title,
        url: Address::Impression(key.clone()).absolute(&settings.address.value),
    }
}

/// The citation of a document.
pub(crate) fn of_document(here: &Here<'_>, document: &Document) -> CitedEntry {
    let title = here.document_name(document).plain();
    let address = Address::Document(document.key.clone());
    titled(here, format!("document-{}", document.key), title, &address)
}

/// The citation of a series.
pub(crate) fn of_series(here: &Here<'_>, series: &SeriesRecord) -> CitedEntry {
    let title = here.series_title(series).plain();
    let address = Address::Series(series.key.clone());
    titled(here, format!("series-{}", series.key), title, &address)
}

/// The citation of what has a title and no number: "OP, *Estuary Weather*".
fn titled(here: &Here<'_>, key: String, title: String, address: &Address) -> CitedEntry {
    let settings = &here.public().settings;
    CitedEntry {
        key,
        short: format!("{}, {title}", settings.siglum.value),
        title,
        url: address.absolute(&settings.address.value),
    }
}
