//! Rows grouped into designs, each group with the reasons of its joins and splits.
//!
//! In: the rows, the catalogue, who hands in, what an editor settled. Out: the designs in the order of their first rows;
//! sets of each row its design, the parts of it that it names, and what is doubtful. What an editor settled comes first, then
//! a sheet that is recorded, a number, the title with size, date and series (module comment of `grouping`).

use std::collections::{BTreeMap, HashMap};
use std::sync::Arc;

use super::clues::{ClueReader, Clues};
use super::clusters::NewDesigns;
use super::placement::{Group, Placement};
use super::recorded::{KnownRecord, RecordedDesigns};
use super::settings::{
    DesignSettings, SettledDesign, SettledIs, SettledPlace, SettledPlaces, SettledSheets,
};
use crate::exchange::intake::handing::HandingIn;
use crate::exchange::intake::known::{CatalogueNames, SheetNumbers};
use crate::exchange::intake::proposal::{
    DesignIs, NamedParts, ProposedDesign, ProposedRow, RowDoubt, RowStanding,
};
use crate::exchange::intake::reading::states::CatalogueSaid;
use crate::model::catalogue::Catalogue;
use crate::model::design::Design;
use crate::model::key::{ImpressionKey, Key};
use crate::study::Studies;

/// Groups the rows.
pub fn grouped(
    rows: &mut [ProposedRow],
    catalogue: &Catalogue,
    studies: &Studies,
    handing: &HandingIn,
    settled: &DesignSettings,
) -> Vec<ProposedDesign> {
    let places = settled.places();
    for row in rows.iter_mut() {
        row.design = None;
        row.named = NamedParts::default();
        if places.of(row) == Some(SettledPlace::LeftOut) {
            row.standing = RowStanding::LeftOut;
        }
    }
    let mut reader = ClueReader::new(CatalogueNames::of(catalogue, studies), catalogue);
    let clues: Vec<Clues> = rows.iter().map(|row| reader.clues(row)).collect();
    let numbers = SheetNumbers::of(catalogue);
    let sheets = SettledSheets::of(&settled.sheets);
    let records: Vec<Option<KnownRecord>> = rows
        .iter()
        .map(|row| {
            let by_editor = sheets.impression(row);
            let by_editor = by_editor.filter(|key| catalogue.impression(key).is_some());
            match by_editor {
                Some(key) => Some(KnownRecord::ByEditor(key.clone())),
                None => record_of(row, catalogue, handing, &numbers)
                    .filter(|key| !sheets.excludes(row, key))
                    .map(KnownRecord::ByNumber),
            }
        })
        .collect();
    let known = Known {
        recorded: RecordedDesigns::of(catalogue),
        settled,
        groups: settled_groups(settled, rows, &places, &records, catalogue),
    };
    let placements = known.placements(rows, &clues, &places, &records, reader.names());
    let mut designs = assembled(rows, &clues, placements, &known);
    for design in &mut designs {
        if let DesignIs::Recorded(key) = &design.is {
            let title = catalogue.designs.get(key).and_then(Design::title);
            design.title = title.map(|title| title.text.value.clone());
        }
    }
    let mut cache = HashMap::new();
    for row in rows.iter_mut() {
        let design = row.design.and_then(|at| designs.get(at));
        if let Some(DesignIs::Recorded(key)) = design.map(|design| &design.is) {
            name_parts(row, key, &mut reader, &mut cache);
        }
    }
    designs
}

/// What the parts that a row names are read from.
#[derive(PartialEq, Eq, Hash)]
struct PartsSaid {
    design: Key,
    state: Option<String>,
    printing: Option<String>,
    references: Vec<Arc<CatalogueSaid>>,
}

fn name_parts(
    row: &mut ProposedRow,
    design: &Key,
    reader: &mut ClueReader<'_>,
    cache: &mut HashMap<PartsSaid, (NamedParts, Vec<String>)>,
) {
    let facts = &row.facts;
    let own = &facts.own;
    if facts.references.is_empty() && own.state.is_none() && own.printing.is_none() {
        return;
    }
    let said = PartsSaid {
        design: design.clone(),
        state: own.state.clone(),
        printing: own.printing.clone(),
        references: facts.references.clone(),
    };
    let parts = cache.entry(said);
    let (named, doubts) = parts.or_insert_with(|| reader.parts(design, facts)).clone();
    row.named = named;
    row.doubts.extend(doubts.into_iter().map(RowDoubt::Said));
}

/// The record that the holder of a row has under its number.
fn record_of(
    row: &ProposedRow,
    catalogue: &Catalogue,
    handing: &HandingIn,
    numbers: &SheetNumbers,
) -> Option<ImpressionKey> {
    let accession = row.accession.as_deref()?;
    numbers.kept_as(catalogue, row.holder(handing)?, accession)
}

/// The group of each design of the settings. A new one whose sheets are recorded by now is the design under which they are.
fn settled_groups(
    settled: &DesignSettings,
    rows: &[ProposedRow],
    places: &SettledPlaces,
    records: &[Option<KnownRecord>],
    catalogue: &Catalogue,
) -> Vec<Group> {
    let mut recorded_in: BTreeMap<usize, Vec<&Key>> = BTreeMap::new();
    for (row, record) in rows.iter().zip(records) {
        if let (Some(SettledPlace::In(at)), Some(record)) = (places.of(row), record) {
            let designs = recorded_in.entry(at).or_default();
            let design = &record.key().design;
            if !designs.contains(&design) {
                designs.push(design);
            }
        }
    }
    let group = |(at, design): (usize, &SettledDesign)| match &design.is {
        SettledIs::Recorded(key) if catalogue.designs.contains_key(key) => {
            Group::Recorded(key.clone())
        }
        SettledIs::OneOf(keys) => Group::OneOf(keys.clone()),
        SettledIs::Recorded(_) | SettledIs::New => match recorded_in.get(&at).map(Vec::as_slice) {
            Some([one]) => Group::Recorded((*one).clone()),
            _ => Group::Settled(at),
        },
    };
    settled.designs.iter().enumerate().map(group).collect()
}

/// What the rows are placed among.
struct Known<'k> {
    recorded: RecordedDesigns,
    settled: &'k DesignSettings,
    /// The group of each design of the settings.
    groups: Vec<Group>,
}

/// A row with its placement, and whether an editor placed it.
struct Placed {
    placement: Placement,
    is_by_editor: bool,
}

impl Known<'_> {
    fn placements(
        &self,
        rows: &[ProposedRow],
        clues: &[Clues],
        places: &SettledPlaces,
        records: &[Option<KnownRecord>],
        names: &CatalogueNames<'_>,
    ) -> Vec<Option<Placed>> {
        let mut new = NewDesigns::default();
        let mut placed: Vec<Option<Placed>> = Vec::new();
        for ((row, clues), record) in rows.iter().zip(clues).zip(records) {
            placed.push(match (places.of(row), record) {
                _ if row.standing == RowStanding::Nothing => None,
                (Some(SettledPlace::LeftOut), _) => None,
                (_, Some(record @ KnownRecord::ByEditor(_))) => Some(Placed {
                    placement: self.recorded.by_record(record, clues, names),
                    is_by_editor: true,
                }),
                (Some(SettledPlace::In(at)), _) => {
                    let group = self.groups.get(at).cloned().unwrap_or(Group::Settled(at));
                    if matches!(group, Group::Settled(_)) {
                        new.seed(&group, clues, row.row);
                    }
                    Some(Placed {
                        placement: Placement::of(group),
                        is_by_editor: true,
                    })
                }
                (None, record) => self
                    .recorded
                    .place(clues, record.as_ref(), names)
                    .map(by_rules),
            });
        }
        // Rows with numbers come first: what they tell is surer than what titles tell.
        for with_number in [true, false] {
            for ((row, clues), placed) in rows.iter().zip(clues).zip(&mut placed) {
                if clues.numbers.is_empty() == with_number || is_passed_over(row) {
                    continue;
                }
                let splits = match placed {
                    None => Vec::new(),
                    Some(known) if known.placement.group == Group::Undecided => {
                        std::mem::take(&mut known.placement.splits)
                    }
                    Some(_) => continue,
                };
                let says_nothing = row.facts.title.is_none() && clues.numbers.is_empty();
                if says_nothing {
                    *placed = None;
                    continue;
                }
                let mut placement = new.place(clues, row.row);
                placement.splits.splice(0..0, splits);
                *placed = Some(by_rules(placement));
            }
        }
        placed
    }
}

/// Whether no record is made of a row.
fn is_passed_over(row: &ProposedRow) -> bool {
    matches!(row.standing, RowStanding::LeftOut | RowStanding::Nothing)
}

fn by_rules(placement: Placement) -> Placed {
    Placed {
        placement,
        is_by_editor: false,
    }
}

/// The designs, in the order of their first rows.
fn assembled(
    rows: &mut [ProposedRow],
    clues: &[Clues],
    placements: Vec<Option<Placed>>,
    known: &Known<'_>,
) -> Vec<ProposedDesign> {
    let mut designs: Vec<ProposedDesign> = Vec::new();
    let mut at_group: HashMap<Group, usize> = HashMap::new();
    let settled = by_group(known);
    for (at, ((row, clues), placed)) in rows.iter_mut().zip(clues).zip(placements).enumerate() {
        if is_passed_over(row) {
            continue;
        }
        let mut doubts = clues.doubts.clone();
        let Some(Placed {
            placement,
            is_by_editor,
        }) = placed
        else {
            doubts.push("nothing tells its design: it has neither a number nor a title".to_owned());
            row.doubts.extend(doubts.into_iter().map(RowDoubt::Said));
            continue;
        };
        let place = *at_group.entry(placement.group.clone()).or_insert_with(|| {
            designs.push(design_of(&placement.group, known, &settled));
            designs.len() - 1
        });
        row.design = Some(place);
        let Some(design) = designs.get_mut(place) else {
            continue;
        };
        design.rows.push(at);
        if design.is_settled && !is_by_editor {
            design.added.push(at);
        }
        let title = row.facts.title.as_ref().map(|title| title.text.clone());
        design.title = design.title.take().or(title);
        if design.number.is_none() && design.is == DesignIs::New {
            let own = clues.numbers.iter().find(|number| number.of.is_empty());
            design.number = own.and(row.facts.own.design.clone());
        }
        add_each(&mut design.joins, placement.joins);
        add_each(&mut design.splits, placement.splits);
        doubts.extend(placement.doubts);
        let of_row = doubts
            .iter()
            .map(|doubt| format!("row {}: {doubt}", row.row));
        add_each(&mut design.doubts, of_row.collect());
        row.doubts.extend(doubts.into_iter().map(RowDoubt::Said));
    }
    designs
}

/// The settled designs of each group, by their places.
fn by_group<'k>(known: &'k Known<'_>) -> HashMap<&'k Group, Vec<usize>> {
    let mut groups: HashMap<&Group, Vec<usize>> = HashMap::new();
    for ((at, design), group) in known.settled.designs.iter().enumerate().zip(&known.groups) {
        if design.is_settled {
            groups.entry(group).or_default().push(at);
        }
    }
    groups
}

fn design_of(
    group: &Group,
    known: &Known<'_>,
    by_group: &HashMap<&Group, Vec<usize>>,
) -> ProposedDesign {
    let settled = by_group.get(group).cloned().unwrap_or_default();
    let first = settled
        .first()
        .and_then(|at| known.settled.designs.get(*at));
    ProposedDesign {
        is: match group {
            Group::Recorded(key) => DesignIs::Recorded(key.clone()),
            Group::OneOf(keys) => DesignIs::OneOf(keys.clone()),
            Group::Settled(_) | Group::New(_) | Group::Undecided => DesignIs::New,
        },
        title: first.and_then(|design| design.title.clone()),
        number: first.and_then(|design| design.number.clone()),
        is_settled: !settled.is_empty(),
        settled,
        ..ProposedDesign::default()
    }
}

/// How many reasons of one kind are told of a design. Its rows tell what is doubtful of each.
const MOST_TOLD: usize = 60;

/// Adds each text that is not there yet; the last says that there are more than are told.
fn add_each(known: &mut Vec<String>, others: Vec<String>) {
    const MORE: &str = "and more of the kind";
    for other in others {
        if known.len() > MOST_TOLD {
            return;
        }
        if !known.contains(&other) {
            let is_last = known.len() == MOST_TOLD;
            known.push(if is_last { MORE.to_owned() } else { other });
        }
    }
}
