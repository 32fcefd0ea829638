//! What `designs.toml` says: the designs to which the sheets of a house belong, as proposed and as an editor settled them, and
//! which recorded impressions single sheets are.

use std::collections::HashMap;

use super::settled_sheets::SettledSheet;
use super::sheet_name::{SheetName, Written};
use crate::exchange::intake::proposal::ProposedRow;
use crate::exchange::intake::settings::text::digest;
use crate::model::key::Key;

/// What `designs.toml` says.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct DesignSettings {
    /// The designs, in the order of the file.
    pub designs: Vec<SettledDesign>,
    /// Sheets of which no record is to be made.
    pub leave_out: Vec<Written>,
    /// What is said of single sheets: which recorded impression each is, or is not.
    pub sheets: Vec<SettledSheet>,
}

/// A design of `designs.toml`.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SettledDesign {
    /// Which it is.
    pub is: SettledIs,
    /// Where that stands.
    pub at: Written,
    /// The number that a new design is to get; `None`: the next whole number.
    pub number: Option<String>,
    /// Its title, where an editor gives another than the rows.
    pub title: Option<String>,
    /// Its sheets: accession numbers, or rows ("row 7").
    pub sheets: Vec<Written>,
    /// Whether an editor settled it: wrote so, or changed what was proposed. What is not settled is proposed anew by each
    /// run.
    pub is_settled: bool,
}

impl SettledDesign {
    /// The program's mark on a design that it wrote. One that does not fit it was changed by an editor, and is settled.
    pub(super) fn mark(&self) -> String {
        let is: Vec<&str> = match &self.is {
            SettledIs::Recorded(key) => vec![key.as_str()],
            SettledIs::OneOf(keys) => keys.iter().map(Key::as_str).collect(),
            SettledIs::New => vec!["new"],
        };
        let of = [self.number.as_deref(), self.title.as_deref()];
        let mut words = vec!["design"];
        words.extend(is);
        words.extend(of.iter().map(|text| text.unwrap_or("\u{0}")));
        words.extend(self.sheets.iter().map(|sheet| sheet.text.as_str()));
        digest(&words)
    }
}

/// Which design a settled one is.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum SettledIs {
    /// A design of the catalogue.
    Recorded(Key),
    /// One of these.
    OneOf(Vec<Key>),
    /// A new one.
    New,
}

/// Where an editor placed a row.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(in super::super) enum SettledPlace {
    /// In a design, by its place in the settings.
    In(usize),
    /// In none: no record is to be made.
    LeftOut,
}

/// The places that an editor gave, by the names of sheets.
pub(in super::super) struct SettledPlaces {
    by_name: HashMap<SheetName, SettledPlace>,
}

impl SettledPlaces {
    /// Where an editor placed a row.
    pub(in super::super) fn of(&self, row: &ProposedRow) -> Option<SettledPlace> {
        if self.by_name.is_empty() {
            return None;
        }
        SheetName::all_of(row).find_map(|name| self.by_name.get(&name).copied())
    }
}

impl DesignSettings {
    /// The places of the settled sheets. A sheet that stands twice is where it stands first.
    pub(in super::super) fn places(&self) -> SettledPlaces {
        let mut by_name = HashMap::new();
        let settled = self
            .designs
            .iter()
            .enumerate()
            .filter(|(_, design)| design.is_settled);
        let placed = settled.flat_map(|(at, design)| {
            design
                .sheets
                .iter()
                .map(move |sheet| (sheet, SettledPlace::In(at)))
        });
        let left_out = self
            .leave_out
            .iter()
            .map(|sheet| (sheet, SettledPlace::LeftOut));
        for (sheet, place) in left_out.chain(placed) {
            if let Some(name) = SheetName::of(&sheet.text) {
                by_name.entry(name).or_insert(place);
            }
        }
        SettledPlaces { by_name }
    }
}
