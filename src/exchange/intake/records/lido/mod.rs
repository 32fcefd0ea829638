//! Records of LIDO 1.1 and 1.0 as rows.
//!
//! Source: the XML Schemas of the CIDOC Working Group LIDO (lido-v1.0.xsd and lido-v1.1.xsd, CC BY 4.0), whose elements
//! are in `tests/checks/lido_elements.csv`; numbers of kinds of events: LIDO Terminology.
//!
//! **Paths** are names of elements, without those that only wrap or carry ([`steps`]): `displayState`,
//! `repositorySet/workID`, `event[production]/eventDate`. In brackets stands the kind that an attribute or a concept says. A
//! display element is the cell of its set (`objectMeasurementsSet`); what is indexed stands beside it, and in its
//! place where there is none.
//!
//! | file | subject |
//! |---|---|
//! | `steps` | names in paths |
//! | `kinds` | kinds of events |
//! | `composed` | cells made of several elements: actors, dates, measurements, materials, acquisitions |

mod composed;
mod kinds;
mod steps;

use super::node::Node;
use super::reading::{Place, Standard, Step};
use super::row::Row;

/// The element of a record.
pub(super) const RECORD: &str = "lido";

/// The elements in which a document with records may begin: a record, several, and answers and static repositories of
/// OAI-PMH.
pub(super) const ROOTS: [&str; 4] = [RECORD, "lidoWrap", "OAI-PMH", "Repository"];

/// How one record is read.
pub(super) struct Lido {
    /// Whether descriptions stand in several languages, so that all their paths need one.
    has_languages: bool,
    /// Who keeps the sheet now, as the record names them.
    repositories: Vec<String>,
}

impl Lido {
    /// Looks at a record as a whole.
    pub fn of(record: &Node) -> Lido {
        let set = [
            "descriptiveMetadata",
            "objectIdentificationWrap",
            "repositoryWrap",
            "repositorySet",
        ];
        let sets = record.at(&set);
        let current = sets.into_iter().filter(|set| steps::is_current(set));
        let names = current
            .flat_map(|set| set.at(&["repositoryName", "legalBodyName", "appellationValue"]));
        Lido {
            has_languages: record.all("descriptiveMetadata").count() > 1
                || record.all("administrativeMetadata").count() > 1,
            repositories: names.map(|name| name.peek().to_owned()).collect(),
        }
    }
}

impl Standard for Lido {
    fn step(&self, node: &Node, parent: &Node) -> Step {
        steps::step(node, parent, self.has_languages)
    }

    fn read(&self, node: &Node, place: &Place, row: &mut Row) {
        composed::read(node, place, &self.repositories, row);
    }

    fn is_numbered(&self, path: &str) -> bool {
        let name = path.rsplit('/').next().unwrap_or(path);
        let name = name.split('[').next().unwrap_or(name);
        ["workID", "titleSet", "linkResource", "recordInfoLink"].contains(&name)
    }
}
