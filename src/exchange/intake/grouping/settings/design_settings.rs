//! What `designs.toml` says: the designs to which the sheets of a house belong, as proposed and as an editor settled them.

use std::collections::{BTreeMap, BTreeSet, HashMap};

use crate::exchange::intake::proposal::ProposedRow;
use crate::exchange::intake::settings::{SettingFault, text::digest};
use crate::model::catalogue::Catalogue;
use crate::model::key::Key;
use crate::study::search::words::number_key;

/// What `designs.toml` says.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct DesignSettings {
    /// The designs, in the order of the file.
    pub designs: Vec<SettledDesign>,
    /// Sheets of which no record is to be made.
    pub leave_out: Vec<Written>,
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

/// A text with its place in the file.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Written {
    /// The text.
    pub text: String,
    /// Its line, from 1; 0 where it stands in no file.
    pub line: usize,
    /// Its column in characters, from 1.
    pub column: usize,
}

impl Written {
    /// A text that stands in no file.
    #[must_use]
    pub fn new(text: &str) -> Written {
        Written {
            text: text.to_owned(),
            line: 0,
            column: 0,
        }
    }
}

/// What names a sheet in `designs.toml`, for comparing.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
enum SheetName {
    Row(u32),
    Number(String),
}

impl SheetName {
    fn of(text: &str) -> Option<SheetName> {
        if let Some(row) = text.trim().strip_prefix("row ")
            && let Ok(row) = row.trim().parse()
        {
            return Some(SheetName::Row(row));
        }
        number_key(text).map(SheetName::Number)
    }
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
        let by_row = self.by_name.get(&SheetName::Row(row.row));
        let number = row
            .accession
            .as_deref()
            .and_then(number_key)
            .map(SheetName::Number);
        let place = by_row.or_else(|| self.by_name.get(&number?));
        place.copied()
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

    /// What is wrong or doubtful in the settings, against the rows of the file and the catalogue: unknown designs, sheets
    /// that stand twice, sheets that the file lacks (they are kept for the next file).
    #[must_use]
    pub fn check(&self, rows: &[ProposedRow], catalogue: &Catalogue) -> Vec<SettingFault> {
        let mut faults = Vec::new();
        for design in self.designs.iter().filter(|design| design.is_settled) {
            let keys = match &design.is {
                SettledIs::Recorded(key) => std::slice::from_ref(key),
                SettledIs::OneOf(keys) => keys.as_slice(),
                SettledIs::New => &[],
            };
            for key in keys
                .iter()
                .filter(|key| !catalogue.designs.contains_key(*key))
            {
                faults.push(unknown_design(&design.at, key, catalogue));
            }
        }
        let known: BTreeSet<String> = rows
            .iter()
            .flat_map(|row| {
                let accession = row.accession.as_deref().and_then(number_key);
                accession.into_iter().chain([format!("row {}", row.row)])
            })
            .collect();
        let mut first: BTreeMap<String, &Written> = BTreeMap::new();
        let settled = self.designs.iter().filter(|design| design.is_settled);
        for sheet in settled
            .flat_map(|design| &design.sheets)
            .chain(&self.leave_out)
        {
            let name = match SheetName::of(&sheet.text) {
                Some(SheetName::Row(row)) => format!("row {row}"),
                Some(SheetName::Number(number)) => number,
                None => String::new(),
            };
            if let Some(earlier) = first.get(&name) {
                faults.push(SettingFault {
                    line: sheet.line,
                    column: sheet.column,
                    message: format!(
                        "the sheet {} stands twice, first in line {}",
                        sheet.text, earlier.line
                    ),
                    help: Some("take it out of one of the two".to_owned()),
                    is_error: true,
                });
                continue;
            }
            if !known.contains(&name) {
                faults.push(SettingFault {
                    line: sheet.line,
                    column: sheet.column,
                    message: format!("this file has no sheet {}", sheet.text),
                    help: Some(
                        "it is kept for the next file of this house; take it out if it is a slip"
                            .to_owned(),
                    ),
                    is_error: false,
                });
            }
            first.insert(name, sheet);
        }
        faults.sort();
        faults
    }
}

fn unknown_design(at: &Written, key: &Key, catalogue: &Catalogue) -> SettingFault {
    let by_number = catalogue
        .designs
        .values()
        .find(|design| number_key(&design.number) == number_key(key.as_str()));
    let help = match by_number {
        Some(design) => format!("write its key, \"{}\"", design.key),
        None => "write the key of a design of the catalogue, or \"new\"".to_owned(),
    };
    SettingFault {
        line: at.line,
        column: at.column,
        message: format!("the catalogue has no design `{key}`"),
        help: Some(help),
        is_error: true,
    }
}
