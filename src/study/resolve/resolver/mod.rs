//! The readings of a reference.
//!
//! In: the names of a catalogue, and a text. Out: [`Reading`]s, the likeliest first; none where the text names nothing.
//! The names are put in order once (`Index`), so that each reference costs a few look-ups, however large the
//! catalogue. Definition: `docs/definitions.md, "References"`. The theme's `references.js` does the same.
//!
//! ```
//! # mod literal { include!(concat!(env!("CARGO_MANIFEST_DIR"), "/../../tests/doc/catalogue.rs")); }
//! # use literal::catalogue;
//! # use keyblock::study::{Studies, resolve::{names::{QueryWords, References}, resolver::Resolver}};
//! let catalogue = catalogue(r#"
//! -- records/designs/14/design.toml
//! titles = [{ text = "The Ferry" }]
//! states = [{ key = "dark" }, { key = "moonlit" }]
//! "#);
//! let studies = Studies::of(&catalogue);
//! let names = References::of(&catalogue, &studies.order, &studies.concordance, &studies.joined, QueryWords::default());
//! let resolver = Resolver::new(names);
//! let readings = resolver.resolve("14 ii/ii");
//! let target = resolver.references().target(readings[0].meant).unwrap();
//! assert!(target.address.ends_with("/design/14/#state-moonlit"));
//! ```
//!
//! | file | finds |
//! |---|---|
//! | `index` | everything: the names, and what stands after a design's number, key or title |
//! | `link` | links and addresses |
//! | `number` | our numbers and keys |
//! | `earlier` | numbers of earlier catalogues |
//! | `accession` | accession numbers |
//! | `name` | titles and names, whole or begun |
//! | `not_there` | numbers with something behind them that is not recorded |

mod accession;
mod earlier;
mod index;
mod link;
mod name;
mod not_there;
mod number;

use super::names::References;
use super::reading::Reading;
use super::settle::settle;
use accession::by_accession;
use earlier::by_earlier_number;
use index::Index;
use link::by_link;
use name::{by_beginning, by_name};
use not_there::not_there;
use number::by_number;

/// Reads the references to a catalogue.
#[derive(Clone, Debug)]
pub struct Resolver {
    index: Index,
}

impl Resolver {
    /// A resolver for the names of a catalogue.
    #[must_use]
    pub fn new(references: References) -> Resolver {
        Resolver {
            index: Index::of(references),
        }
    }

    /// The names.
    #[must_use]
    pub fn references(&self) -> &References {
        &self.index.references
    }

    /// The readings of a reference, the likeliest first.
    #[must_use]
    pub fn resolve(&self, text: &str) -> Vec<Reading> {
        let index = &self.index;
        let asked = index.reader.read(text);
        let mut readings = Vec::new();
        if let Some((kind, parts)) = &asked.link {
            by_link(index, kind, parts, &mut readings);
        }
        if readings.is_empty() && !asked.all.is_empty() {
            by_number(index, &asked, &mut readings);
            by_earlier_number(index, &asked, &mut readings);
            by_accession(index, &asked, &mut readings);
            by_name(index, &asked, &mut readings);
        }
        if readings.is_empty() && !asked.all.is_empty() {
            not_there(index, &asked, &mut readings);
            by_beginning(index, &asked, &mut readings);
        }
        settle(readings)
    }
}
