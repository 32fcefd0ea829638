//! What is wrong or doubtful in `designs.toml`, against the rows of the file and the catalogue.

use std::collections::{BTreeMap, HashMap};

use super::design_settings::{DesignSettings, SettledIs, SettledPlace};
use super::settled_sheets::{NamedImpression, SettledSheet};
use super::sheet_name::{SheetName, Written};
use crate::exchange::intake::handing::HandingIn;
use crate::exchange::intake::proposal::{ProposedRow, RowStanding};
use crate::exchange::intake::settings::SettingFault;
use crate::model::catalogue::Catalogue;
use crate::model::key::{ImpressionKey, Key};
use crate::study::search::words::number_key;

impl DesignSettings {
    /// What is wrong or doubtful in the designs: unknown ones, sheets that stand twice, sheets that the file lacks (they
    /// are kept for the next file).
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
        let rows = rows_by_name(rows);
        let mut first = FirstPlaces::default();
        let settled = self.designs.iter().filter(|design| design.is_settled);
        for sheet in settled
            .flat_map(|design| &design.sheets)
            .chain(&self.leave_out)
        {
            first.check(sheet, &rows, &mut faults);
        }
        faults.sort();
        faults
    }

    /// What is wrong or doubtful in what is said of single sheets, once it is known what each row is in the census:
    /// impressions that the catalogue does not have, two sheets that would be one impression, sheets that stand twice or are
    /// put elsewhere too, sheets that the file lacks (they are kept for the next file).
    #[must_use]
    pub fn check_sheets(
        &self,
        rows: &[ProposedRow],
        catalogue: &Catalogue,
        handing: &HandingIn,
    ) -> Vec<SettingFault> {
        let said: Vec<&SettledSheet> = self
            .sheets
            .iter()
            .filter(|settled| settled.says_something())
            .collect();
        if said.is_empty() {
            return Vec::new();
        }
        let mut faults = Vec::new();
        let (by_name, places) = (rows_by_name(rows), self.places());
        let mut first = FirstPlaces::default();
        let mut taken: HashMap<&ImpressionKey, &SettledSheet> = HashMap::new();
        let rows_of = rows_by_record(rows);
        for settled in said {
            first.check(&settled.sheet, &by_name, &mut faults);
            for named in settled.is.iter().chain(&settled.is_not) {
                faults.extend(unknown_impression(named, catalogue));
            }
            let Some(named) = &settled.is else {
                continue;
            };
            if settled.excludes(&named.key) {
                let message = format!("the sheet is said to be {0} and not to be {0}", named.key);
                let help = "take it out of `is` or out of `is_not`";
                faults.push(error(&named.at, message, help));
            }
            if let Some(earlier) = taken.get(&named.key) {
                let message = format!(
                    "{} is said of two sheets, of {} in line {} first",
                    named.key, earlier.sheet.text, earlier.sheet.line
                );
                let help = "an impression is one sheet: correct one of the two";
                faults.push(error(&named.at, message, help));
                continue;
            }
            taken.insert(&named.key, settled);
            let rows_of = rows_of.get(&named.key).map_or(&[][..], Vec::as_slice);
            faults.extend(two_rows(settled, named, rows_of));
            let row = SheetName::of(&settled.sheet.text).and_then(|name| by_name.get(&name));
            if let Some(row) = row {
                let place = places.of(row);
                faults.extend(place.and_then(|place| self.against_the_designs(named, place)));
                faults.extend(against_the_record(named, row, catalogue, handing));
            }
        }
        faults.sort();
        faults
    }

    /// A sheet that is said to be an impression is of the design of that impression.
    fn against_the_designs(
        &self,
        named: &NamedImpression,
        place: SettledPlace,
    ) -> Option<SettingFault> {
        let SettledPlace::In(at) = place else {
            let message = format!("the sheet is said to be {}, and is left out", named.key);
            let help = "take it out of `leave_out`, or say nothing of it here";
            return Some(error(&named.at, message, help));
        };
        let design = self.designs.get(at)?;
        let keys = match &design.is {
            SettledIs::Recorded(key) => std::slice::from_ref(key),
            SettledIs::OneOf(keys) => keys.as_slice(),
            // A new design whose sheets are recorded by now is the design under which they are.
            SettledIs::New => return None,
        };
        if keys.contains(&named.key.design) {
            return None;
        }
        let keys: Vec<&str> = keys.iter().map(Key::as_str).collect();
        let message = format!(
            "the sheet is said to be {}, and line {} puts it into design {}",
            named.key,
            design.at.line,
            keys.join(" or ")
        );
        let help = "take the sheet out of the design there, or correct the impression here";
        Some(error(&named.at, message, help))
    }
}

/// The rows by their names; the first of several that have one name.
fn rows_by_name(rows: &[ProposedRow]) -> HashMap<SheetName, &ProposedRow> {
    let mut by_name = HashMap::with_capacity(rows.len() * 2);
    for row in rows {
        for name in SheetName::all_of(row) {
            by_name.entry(name).or_insert(row);
        }
    }
    by_name
}

/// The rows that are each record.
fn rows_by_record(rows: &[ProposedRow]) -> HashMap<&ImpressionKey, Vec<u32>> {
    let mut by_record: HashMap<&ImpressionKey, Vec<u32>> = HashMap::new();
    for row in rows {
        if let Some(record) = row.recorded() {
            by_record.entry(record).or_default().push(row.row);
        }
    }
    by_record
}

/// How many rows between the first and the last are told of an impression that several would be.
const MOST_TOLD: usize = 4;

/// Several rows of the file are the impression that a sheet is said to be.
fn two_rows(settled: &SettledSheet, named: &NamedImpression, rows: &[u32]) -> Option<SettingFault> {
    let (first, others) = rows.split_first()?;
    let (last, between) = others.split_last()?;
    let shown = std::iter::once(first).chain(between.iter().take(MOST_TOLD));
    let shown: Vec<String> = shown.map(u32::to_string).collect();
    let message = format!(
        "rows {} and {last} would be one impression, {}",
        shown.join(", "),
        named.key
    );
    let by_number = matches!(
        SheetName::of(&settled.sheet.text),
        Some(SheetName::Number(_))
    );
    let help = if by_number {
        format!(
            "name the row that it is, as in sheet = \"row {first}\", and write is_not = [\"{}\"] of the others",
            named.key
        )
    } else {
        format!(
            "write is_not = [\"{}\"] of the rows that are another sheet",
            named.key
        )
    };
    Some(error(&named.at, message, &help))
}

fn unknown_impression(named: &NamedImpression, catalogue: &Catalogue) -> Option<SettingFault> {
    let NamedImpression { key, at } = named;
    if catalogue.impression(key).is_some() {
        return None;
    }
    let design = catalogue.designs.get(&key.design);
    let numbers = design.map(|design| {
        let mut numbers = design.impressions.keys();
        (numbers.next(), numbers.next_back())
    });
    let design = &key.design;
    let help = match numbers {
        None => format!(
            "the catalogue has no design `{design}`; write the key of a recorded impression, such as \"14.7\""
        ),
        Some((None, _)) => format!("no impression of design {design} is recorded"),
        Some((Some(only), None)) => {
            format!("the only impression of design {design} is {design}.{only}")
        }
        Some((Some(first), Some(last))) => {
            format!("those of design {design} are {design}.{first} to {design}.{last}")
        }
    };
    Some(error(
        at,
        format!("the catalogue has no impression {key}"),
        &help,
    ))
}

/// What an editor should know who says that a row is a record: nothing can be corrected, it is withdrawn, or recorded with
/// another holder.
fn against_the_record(
    named: &NamedImpression,
    row: &ProposedRow,
    catalogue: &Catalogue,
    handing: &HandingIn,
) -> Option<SettingFault> {
    let key = &named.key;
    let recorded = catalogue.impression(key)?;
    let (message, help) = if row.standing == RowStanding::Nothing {
        (
            format!("row {} says nothing that {key} could hold", row.row),
            "look at what its columns hold, in columns.toml",
        )
    } else if recorded.standing.is_withdrawn() {
        (
            format!("{key} is withdrawn"),
            "write the impression that stands for it",
        )
    } else {
        let (theirs, holder) = (recorded.holder.as_ref()?, row.holder(handing)?);
        if catalogue.are_one_house(&theirs.value, holder) {
            return None;
        }
        (
            format!(
                "{key} is recorded with the holder `{}`, and the sheet is of `{holder}`",
                theirs.value
            ),
            "where the sheet has moved, correct the holder in the record; intake leaves it as it is",
        )
    };
    Some(SettingFault {
        is_error: false,
        ..error(&named.at, message, help)
    })
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
    error(at, format!("the catalogue has no design `{key}`"), &help)
}

/// Where each sheet stands first.
#[derive(Default)]
struct FirstPlaces<'s>(BTreeMap<Option<SheetName>, &'s Written>);

impl<'s> FirstPlaces<'s> {
    /// Tells a sheet that stands here a second time, and one that the file lacks.
    fn check(
        &mut self,
        sheet: &'s Written,
        rows: &HashMap<SheetName, &ProposedRow>,
        faults: &mut Vec<SettingFault>,
    ) {
        let name = SheetName::of(&sheet.text);
        if let Some(earlier) = self.0.get(&name) {
            let message = format!(
                "the sheet {} stands twice, first in line {}",
                sheet.text, earlier.line
            );
            faults.push(error(sheet, message, "take it out of one of the two"));
            return;
        }
        if name.as_ref().is_none_or(|name| !rows.contains_key(name)) {
            let message = format!("this file has no sheet {}", sheet.text);
            let help = "it is kept for the next file of this house; take it out if it is a slip";
            faults.push(SettingFault {
                is_error: false,
                ..error(sheet, message, help)
            });
        }
        self.0.insert(name, sheet);
    }
}

fn error(at: &Written, message: String, help: &str) -> SettingFault {
    SettingFault {
        line: at.line,
        column: at.column,
        message,
        help: Some(help.to_owned()),
        is_error: true,
    }
}
