//! The names, numbers and keys by which everything in a catalogue can be cited.
//!
//! Plain data, as `resolve/index.json` publishes it (`docs/JSON.md`); [`super::gather`] fills it.

use std::collections::BTreeMap;

use keyblock_model::key::{ImpressionKey, Key};
use keyblock_model::link::Target;
use keyblock_model::literature::Relation;
use keyblock_model::words::closed_list;

/// Everything that can be cited, each list in the order in which equally good readings stand.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct References {
    /// The short form of the catalogue: "OP".
    pub siglum: String,
    /// The address of the catalogue, without a slash at the end.
    pub address: String,
    /// The number of its edition.
    pub edition: Option<String>,
    /// The words that belong to no number.
    pub words: QueryWords,
    /// The designs, in readers' order.
    pub designs: Vec<DesignNames>,
    /// The works of the literature, by key.
    pub works: Vec<WorkNames>,
    /// The holders, by key.
    pub holders: Vec<Names>,
    /// The people, by key.
    pub people: Vec<Names>,
    /// The exhibitions, by key.
    pub exhibitions: Vec<Names>,
    /// The marks, by key.
    pub marks: Vec<Names>,
    /// The documents, by key.
    pub documents: Vec<Names>,
    /// The series, by key.
    pub series: Vec<Names>,
    /// The accession numbers and identifiers elsewhere by their keys ([`super::super::search::words::number_key`]), each with its sheets.
    pub accessions: BTreeMap<String, Vec<Accession>>,
    /// The records, states and printings that do not simply stand, by how they are named: "design:19", "state:19/cut",
    /// "printing:19/own", "impression:19.2", "holder:harbour-museum".
    pub stands: BTreeMap<String, Stands>,
}

/// What has become of a record.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Stands {
    /// What.
    pub how: Fate,
    /// The records to see in its place.
    pub see: Vec<Target>,
}

closed_list! {
    /// What has become of a record that does not simply stand.
    Fate {
        /// Its standing is doubtful.
        Doubtful = "doubtful",
        /// It was rejected.
        Rejected = "rejected",
        /// It was withdrawn.
        Withdrawn = "withdrawn",
        /// A holder that another continues.
        TakenOver = "taken-over",
    }
}

/// Words that people write beside numbers, in parts as numbers have them.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct QueryWords {
    /// Before the number of a design: "no.".
    pub number: Vec<String>,
    /// Before the numeral of a state, and before its total: "state", "of".
    pub state: Vec<String>,
    /// Before an accession number: "inv.".
    pub accession: Vec<String>,
    /// Before the number of an edition of the catalogue: "edition".
    pub edition: Vec<String>,
    /// What is written in place of the numeral of an only state: "only state".
    pub only_state: String,
}

/// A design with its parts.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct DesignNames {
    /// Its key.
    pub key: Key,
    /// Its number for readers.
    pub number: String,
    /// Its titles, the one that readers see first.
    pub titles: Vec<String>,
    /// Titles that are no longer used.
    pub former: Vec<String>,
    /// Identifiers elsewhere.
    pub ids: Vec<String>,
    /// Keys that it had before.
    pub was: Vec<String>,
    /// Its numbers in earlier editions of the catalogue, where they were others.
    pub formerly: Vec<FormerNumber>,
    /// Its states: those with a numeral in order, then withdrawn ones.
    pub states: Vec<StateNames>,
    /// Its printings, in order.
    pub printings: Vec<PrintingNames>,
    /// The numbers of its impressions.
    pub impressions: Vec<u32>,
    /// The impressions whose sheet has the page of another.
    pub joined: BTreeMap<u32, u32>,
}

/// The number of a design in an earlier edition of the catalogue.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct FormerNumber {
    /// The edition.
    pub edition: String,
    /// The number.
    pub number: String,
}

/// A state.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct StateNames {
    /// Its key.
    pub key: Key,
    /// Its place in the order, from 1; `None` for a withdrawn state.
    pub place: Option<u32>,
    /// Keys that it had before.
    pub was: Vec<String>,
    /// Its numerals in earlier editions of the catalogue, where they were others.
    pub formerly: Vec<FormerNumeral>,
}

/// The numeral of a state in an earlier edition of the catalogue.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct FormerNumeral {
    /// The edition.
    pub edition: String,
    /// The place in the order, from 1.
    pub place: u32,
}

/// A printing.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PrintingNames {
    /// Its key.
    pub key: Key,
    /// Its name for readers.
    pub name: Option<String>,
    /// Keys that it had before.
    pub was: Vec<String>,
}

/// A holder, person, exhibition, mark, document or series.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Names {
    /// Its key.
    pub key: Key,
    /// Its names, the one that readers see first.
    pub names: Vec<String>,
    /// Names that it had.
    pub former: Vec<String>,
    /// Keys that it had before.
    pub was: Vec<String>,
    /// The town of a holder.
    pub town: Option<String>,
    /// The ISIL of a holder.
    pub isil: Option<String>,
    /// Identifiers elsewhere.
    pub ids: Vec<String>,
}

/// A work of the literature, with its numbers where it is an earlier catalogue.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct WorkNames {
    /// Its key.
    pub key: Key,
    /// Its short form: "Dreyloft 1936".
    pub short: String,
    /// Its title.
    pub title: String,
    /// The family name of its first author, under which people cite its numbers.
    pub author: Option<String>,
    /// Keys that it had before.
    pub was: Vec<String>,
    /// Its numbers, in order.
    pub rows: Vec<EarlierRow>,
}

/// A number of an earlier catalogue, and what of this one it means.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct EarlierRow {
    /// The number of the design there; `None` where only a state or printing is cited.
    pub number: Option<String>,
    /// The number of the state or printing there.
    pub part: Option<String>,
    /// Its place on the page of the work: the part of the address after `#`.
    pub fragment: String,
    /// Ours.
    pub ours: Vec<OwnReading>,
}

/// What a number of an earlier catalogue means here.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct OwnReading {
    /// The place of the design in [`References::designs`].
    pub design: usize,
    /// The place of the state in [`DesignNames::states`].
    pub state: Option<usize>,
    /// The place of the printing in [`DesignNames::printings`].
    pub printing: Option<usize>,
    /// How theirs relates to ours.
    pub relation: Relation,
}

/// What a number by which a sheet is found is to it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NumberKind {
    /// Its accession number.
    Present,
    /// An accession number that it no longer has.
    Former,
    /// An identifier elsewhere, or the address of the holder's own page of it.
    Elsewhere,
}

/// A sheet with an accession number, or with an identifier elsewhere.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Accession {
    /// The sheet.
    pub impression: ImpressionKey,
    /// The holder whose number it is.
    pub holder: Option<Key>,
    /// Whose number it is, and whether the sheet still has it.
    pub kind: NumberKind,
    /// Whether the key is the number without its punctuation.
    pub is_bare: bool,
}

impl EarlierRow {
    /// The number as it is cited: "9", "9 I".
    #[must_use]
    pub fn cited(&self) -> String {
        let parts = [&self.number, &self.part].into_iter().flatten();
        parts.map(String::as_str).collect::<Vec<_>>().join(" ")
    }
}

impl References {
    /// The place of a design in the list, by key.
    #[must_use]
    pub fn design(&self, key: &Key) -> Option<usize> {
        self.designs.iter().position(|design| design.key == *key)
    }
}
