//! Addresses of records, and references to them.

use super::node::Node;
use crate::model::design::Design;
use crate::model::impression::Party;
use crate::model::key::{ImpressionKey, Key};
use crate::model::series_place::SeriesRef;
use crate::page::{Address, DesignPart, Here, Overview};

/// The name of the file of a record.
pub(super) const FILE: &str = "linked-art.json";

/// The name of the file of the words of a document.
pub(super) const WORDS: &str = "words.json";

/// The name of the file of a provenance.
pub(super) const PROVENANCE: &str = "provenance.json";

/// The media type of Linked Art (API 1.0, "JSON-LD").
pub(super) const MEDIA_TYPE: &str =
    "application/ld+json;profile=\"https://linked.art/ns/v1/linked-art.json\"";

/// The address of the record of a page: that of the page with the name of the file.
pub(in crate::exchange) fn record(here: &Here<'_>, page: &Address) -> String {
    format!("{}{FILE}", page_address(here, page))
}

/// The address of a page.
pub(super) fn page_address(here: &Here<'_>, page: &Address) -> String {
    page.absolute(&here.public().settings.address.value)
}

/// The address of the record of a part of a design.
pub(super) fn part(here: &Here<'_>, design: &Key, part: &DesignPart) -> String {
    let page = page_address(here, &Address::Design(design.clone()));
    format!("{page}{part}/{FILE}")
}

/// The address of the file of a sheet's provenance.
pub(super) fn provenance(here: &Here<'_>, sheet: &ImpressionKey) -> String {
    let page = page_address(here, &Address::Impression(sheet.clone()));
    format!("{page}{PROVENANCE}")
}

/// The address of the record of the words of a document.
pub(super) fn words(here: &Here<'_>, document: &Key) -> String {
    let page = page_address(here, &Address::Document(document.clone()));
    format!("{page}{WORDS}")
}

/// A design, as what its impressions show.
pub(super) fn design(here: &Here<'_>, design: &Design) -> Node {
    let id = record(here, &Address::Design(design.key.clone()));
    Node::at("VisualItem", id, here.design_name(design).plain())
}

/// A state, as what sheets of it show. Its name gives the numeral, which may change; its address does not.
pub(super) fn state(here: &Here<'_>, design: &Design, state: &Key) -> Node {
    let id = part(here, &design.key, &DesignPart::State(state.clone()));
    Node::at("VisualItem", id, here.state_of(&design.key, state).plain())
}

/// A printing.
pub(super) fn printing(here: &Here<'_>, design: &Design, printing: &Key) -> Node {
    let id = part(here, &design.key, &DesignPart::Printing(printing.clone()));
    Node::at("Activity", id, here.printing_name(design, printing))
}

/// A block, plate, stone or screen.
pub(super) fn matrix(here: &Here<'_>, design: &Design, matrix: &Key) -> Node {
    let id = part(here, &design.key, &DesignPart::Matrix(matrix.clone()));
    Node::at("HumanMadeObject", id, here.matrix_name(design, matrix))
}

/// A sheet, by the record whose page it has.
pub(super) fn sheet(here: &Here<'_>, record_of_sheet: &ImpressionKey) -> Node {
    let page = here.joined().page_of(record_of_sheet);
    let id = record(here, &Address::Impression(page.clone()));
    Node::at("HumanMadeObject", id, here.record_number(page))
}

/// A series, as a set: that of its record, else its place in the list of series. `None` for a mistaken key, and for a name
/// that has no form for an address.
pub(super) fn series(here: &Here<'_>, series: &SeriesRef) -> Option<Node> {
    let id = match series {
        SeriesRef::Record(key) => {
            here.public().series.get(key)?;
            record(here, &Address::Series(key.clone()))
        }
        SeriesRef::Named(name) => {
            let place = Key::nearest_form(name)?;
            let list = page_address(here, &Address::Overview(Overview::Series));
            format!("{list}#{place}")
        }
    };
    Some(Node::at("Set", id, here.series_name(series)))
}

/// A person or holder, by key; `None` for a mistaken key.
pub(super) fn agent(here: &Here<'_>, key: &Key) -> Option<Node> {
    let public = here.public();
    if let Some(holder) = public.holders.get(key) {
        let id = record(here, &Address::Holder(key.clone()));
        return Some(Node::at("Group", id, here.holder_name(holder)));
    }
    let person = public.people.get(key)?;
    let id = record(here, &Address::Person(key.clone()));
    Some(Node::at("Person", id, person.name.value.as_str()))
}

/// A place that records only name: `id` is an address within the record that names it. `None` without a name.
pub(super) fn place(id: String, name: impl Into<String>) -> Option<Node> {
    let name = name.into();
    (!name.is_empty()).then(|| Node::at("Place", id, name))
}

/// A person or holder, or somebody who is named without a record: a group, as the model advises where it is not known
/// whether a person is meant. `id` is the address that such a one gets, a place in the record that names them.
pub(super) fn party(here: &Here<'_>, party: &Party, id: String) -> Option<Node> {
    match party {
        Party::Record(key) => agent(here, &key.value),
        Party::Named(_) | Party::Undisclosed => {
            Some(Node::at("Group", id, here.party(party).plain()))
        }
    }
}
