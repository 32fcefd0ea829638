//! Places in a page for the former keys of what stands there: `design/14/#state-OLD` still leads to the state.
//!
//! In: pages as text. Out: the same, with an empty element for each former key beside the element that has the present
//! key as its id. It is added to the text, so that it stands in every page, whatever template made it: also in those
//! of a catalogue's own theme. It says nothing and takes no room.

use std::collections::BTreeMap;

use crate::model::former::Named;
use crate::model::key::Key;
use crate::model::link::Target;
use crate::model::public::Public;
use crate::page::setting::address::{Address, Fragment};

/// The former ids of a catalogue.
pub(super) struct Landings {
    /// Those of the parts of each design, of all its pages: present id, former id.
    of_designs: BTreeMap<Key, Vec<(String, String)>>,
    /// Those of the conditions of each mark.
    of_marks: BTreeMap<Key, Vec<(String, String)>>,
    /// Those of rows that count by record, on every census.
    of_records: Vec<(String, String)>,
}

impl Landings {
    pub(super) fn of(public: &Public) -> Landings {
        let mut landings = Landings {
            of_designs: BTreeMap::new(),
            of_marks: BTreeMap::new(),
            of_records: Vec::new(),
        };
        for key in public.former.public() {
            let was = &key.was.value;
            match &key.of {
                Named::Part(design, part, now) => {
                    let ids = |key| Fragment::of_part(*part, key);
                    let pair = (ids(now).to_string(), ids(was).to_string());
                    landings
                        .of_designs
                        .entry(design.clone())
                        .or_default()
                        .push(pair);
                }
                Named::Point(design, now) => {
                    let ids = Fragment::Point;
                    let pair = (ids(now).to_string(), ids(was).to_string());
                    landings
                        .of_designs
                        .entry(design.clone())
                        .or_default()
                        .push(pair);
                }
                Named::Condition(mark, now) => {
                    let ids = Fragment::Condition;
                    let pair = (ids(now).to_string(), ids(was).to_string());
                    landings
                        .of_marks
                        .entry(mark.clone())
                        .or_default()
                        .push(pair);
                }
                Named::Record(Target::Holder(now)) => {
                    let id =
                        |key: &Key| Fragment::Counted("holder", Some(key.as_str())).to_string();
                    landings.of_records.push((id(now), id(was)));
                }
                // Pages are named by their addresses.
                Named::Record(_) => {}
            }
        }
        landings
    }

    /// The page at `address` with its former ids.
    pub(super) fn added(&self, address: &Address, page: String) -> String {
        let none = Vec::new();
        let of_design = |key| self.of_designs.get(key).unwrap_or(&none);
        let (own, counted) = match address {
            Address::DesignCensus(key) => (of_design(key), &self.of_records),
            Address::Overview(_) => (&none, &self.of_records),
            Address::Design(key)
            | Address::IdentificationKey(key)
            | Address::ExaminationSheet(key)
            | Address::ChosenComparison(key)
            | Address::Point(key, _)
            | Address::Comparison(key, _) => (of_design(key), &none),
            Address::Impression(key) => (of_design(&key.design), &none),
            Address::Mark(key) => (self.of_marks.get(key).unwrap_or(&none), &none),
            Address::Opening
            | Address::NotFound
            | Address::Edition(_)
            | Address::FieldNotes
            | Address::DesignList
            | Address::SheetsCompared(_)
            | Address::Holder(_)
            | Address::Person(_)
            | Address::Work(_)
            | Address::Exhibition(_)
            | Address::Document(_)
            | Address::Series(_)
            | Address::Page(_) => (&none, &none),
        };
        let mut page = page;
        for (id, former) in own.iter().chain(counted) {
            add(&mut page, id, former);
        }
        page
    }
}

/// Adds an empty element with the id `former` at the start of the element with the id `id`, if the page has one. In a row
/// of a table it stands in the first cell, where alone it may stand.
fn add(page: &mut String, id: &str, former: &str) {
    let attribute = |id: &str| format!(" id=\"{id}\"");
    // Texts are escaped, so only an element can have these characters.
    let (Some(at), false) = (page.find(&attribute(id)), page.contains(&attribute(former))) else {
        return;
    };
    let start = page.get(..at).and_then(|before| before.rfind('<'));
    let is_row =
        start.is_some_and(|start| page.get(start..).is_some_and(|tag| tag.starts_with("<tr")));
    let end = |from: usize| Some(from + page.get(from..)?.find('>')? + 1);
    let inside = match end(at) {
        Some(row) if is_row => end(row),
        inside => inside,
    };
    if let Some(inside) = inside {
        let landing = format!("<span class=\"landing\"{}></span>", attribute(former));
        page.insert_str(inside, &landing);
    }
}

#[cfg(test)]
mod tests {
    use super::add;

    #[test]
    fn a_former_id_stands_where_an_element_may_stand() {
        for (page, expected) in [
            (
                "<li id=\"state-cut\">Cut.</li>",
                "<li id=\"state-cut\"><span class=\"landing\" id=\"state-trimmed\"></span>Cut.</li>",
            ),
            (
                "<tr id=\"state-cut\"><th scope=\"row\">i</th></tr>",
                "<tr id=\"state-cut\"><th scope=\"row\"><span class=\"landing\" id=\"state-trimmed\"></span>i</th></tr>",
            ),
            ("<p>state-cut</p>", "<p>state-cut</p>"),
            (
                "<p id=\"state-cut\"><b id=\"state-trimmed\"></b></p>",
                "<p id=\"state-cut\"><b id=\"state-trimmed\"></b></p>",
            ),
        ] {
            let mut page = page.to_owned();
            add(&mut page, "state-cut", "state-trimmed");
            assert_eq!(page, expected);
        }
    }
}
