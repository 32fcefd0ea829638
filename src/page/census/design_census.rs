//! The census of a design: its known sheets by state, printing, kind, place and holder, and its editions.

use serde::Serialize;

use super::contradicted;
use super::counting_notes::{CountingNotes, counting_notes};
use super::counts::{self, Table};
use super::crossing::{self, Crossing, FigureTarget};
use super::design_editions::{self, Edition};
use super::grouped_counts;
use super::holding_table::{self, HoldingTable};
use super::occasions::{self, OccasionsPart};
use super::open_pairs::{self, RecordPair};
use super::sheet_records::Records;
use super::survival::{self, Surviving};
use super::whole::{self, WholeRow};
use crate::model::design::Design;
use crate::model::key::Key;
use crate::page::lists::facts::Line;
use crate::page::phrases::enumeration;
use crate::page::setting::address::{Address, Fragment};
use crate::page::setting::book::Here;
use crate::page::setting::html::CleanHtml;
use crate::page::setting::leaf::Leaf;
use crate::page::setting::words::Argument;
use crate::study::census::Census;

#[derive(Serialize)]
struct View {
    design: CleanHtml,
    title: String,
    brief: String,
    /// For a design that no total includes, a note that says so.
    set_apart: String,
    counted: CountingNotes,
    /// Every sheet as a square, by printing.
    whole: Vec<WholeRow>,
    /// By state and by printing.
    own_tables: Vec<Table>,
    /// By status, kind and place.
    tables: Vec<Table>,
    /// The same of an only sheet, run on.
    only_sheet: Option<OnlySheet>,
    crossing: Option<Crossing>,
    holding: Option<HoldingTable>,
    seen: Option<OccasionsPart>,
    surviving: Option<Surviving>,
    same: Vec<CleanHtml>,
    pairs: Vec<RecordPair>,
    editions: Vec<Edition>,
}

/// What the census counts of an only sheet: one line in place of tables of one row.
#[derive(Serialize)]
struct OnlySheet {
    /// The targets of figures elsewhere: the ids of the tables.
    landings: Vec<String>,
    /// Its record.
    record: CleanHtml,
    /// The values it is counted under, with the target of each.
    values: Vec<Line>,
    /// What stands below the tables.
    notes: Vec<CleanHtml>,
}

impl OnlySheet {
    /// Whether a table counts a sheet under one value only.
    fn is_of_one(table: &Table) -> bool {
        let counted = table.rows.iter().filter(|row| !row.records.is_empty());
        counted.count() == 1
    }

    fn of(tables: Vec<Table>) -> OnlySheet {
        let rows = tables.iter().flat_map(|table| &table.rows);
        let record = rows.clone().find(|row| !row.records.is_empty());
        let record = record.map_or_else(CleanHtml::empty, |row| row.records.clone());
        let values = rows.map(|row| Line {
            id: row.id.clone(),
            text: row.name.clone(),
        });
        OnlySheet {
            values: values.collect(),
            record,
            notes: tables
                .iter()
                .filter_map(|table| table.note.clone().some())
                .collect(),
            landings: tables
                .into_iter()
                .flat_map(|table| std::iter::once(table.id).chain(table.landings))
                .collect(),
        }
    }
}

pub(crate) fn page(here: &Here<'_>, design: &Design) -> Leaf {
    let words = here.words();
    let nothing = Census::default();
    let study = here.book.studies.designs.get(&design.key);
    let census = study.map_or(&nothing, |s| &s.census);
    let records = Records::of(here, std::iter::once(design));
    let states = counts::table(here, "state", &census.by.state, &records, |key| {
        (key.to_string(), here.state_of(&design.key, key))
    });
    let printings = counts::table(here, "printing", &census.by.printing, &records, |key| {
        (key.to_string(), printing(here, design, key))
    });
    let mut own_tables = match study {
        Some(study) => {
            let mut states = states.with_firmness(here, study, &census.by.state);
            let contradicted = contradicted::in_words(here, design, study);
            states.note = CleanHtml::join([&states.note, &contradicted], " ");
            let printings = printings.with_firmness(here, study, &census.by.printing);
            vec![states, printings]
        }
        None => vec![states, printings],
    };
    own_tables.retain(|table| !table.rows.is_empty());
    let mut tables = grouped_counts::tables(here, census, &records);
    let has_one = census.sheets.at_most == 1
        && records.not_shown(census) == 0
        && own_tables.iter().chain(&tables).all(OnlySheet::is_of_one);
    let only_sheet = has_one.then(|| {
        let all = own_tables.drain(..).chain(tables.drain(..));
        OnlySheet::of(all.collect())
    });
    let title = words.word("census").to_owned();
    let name = here.design_name(design).plain();
    let view = View {
        design: here.design(&design.key),
        brief: counts::date_line(here, &known_in_words(here, design, census, &records)),
        set_apart: if design.standing.is_set_apart() {
            words.word("set-apart-own").to_owned()
        } else {
            String::new()
        },
        counted: counting_notes(here, &[design]),
        whole: if only_sheet.is_some() {
            Vec::new()
        } else {
            whole::of_design(here, design)
        },
        own_tables,
        tables,
        only_sheet,
        crossing: crossing::table(here, design, FigureTarget::Records(&records)),
        holding: study.and_then(|study| holding_table::table(here, design, study, &records)),
        seen: study
            .and_then(|study| occasions::over_time(here, &study.met, &records, census.sheets)),
        surviving: study.and_then(|study| survival::surviving(here, study)),
        same: same_sheets(here, design),
        pairs: open_pairs::open_pairs(here, std::iter::once(design)),
        editions: study.map_or_else(Vec::new, |study| {
            design_editions::editions(here, design, study)
        }),
        title: title.clone(),
    };
    let leaf_title = words.with("census-of", &[("design", Argument::Text(&name))]);
    Leaf::new(here.address, leaf_title, "pages/design-census.html", &view)
}

/// "6 impressions, 1 of them doubtful (1.6), 1 counted but not published".
fn known_in_words(
    here: &Here<'_>,
    design: &Design,
    census: &Census,
    records: &Records<'_>,
) -> String {
    let known = here.impressions_in_words(census.sheets);
    let not_accepted = records.not_accepted_of(here, &design.key).plain();
    let not_shown = match records.not_shown(census) {
        0 => String::new(),
        n => here.words().count("counted-not-shown", n),
    };
    let parts = [known, not_accepted, not_shown];
    let parts: Vec<String> = parts.into_iter().filter(|part| !part.is_empty()).collect();
    parts.join("; ")
}

fn printing(here: &Here<'_>, design: &Design, key: &Key) -> CleanHtml {
    let to = here.href_part(
        &Address::Design(design.key.clone()),
        Fragment::Printing(key),
    );
    CleanHtml::link(&to, &CleanHtml::text(&here.printing_name(design, key)))
}

/// Records found to be one sheet: "14.2 and 14.19", the one whose page it has first.
fn same_sheets(here: &Here<'_>, design: &Design) -> Vec<CleanHtml> {
    let joined = here.joined();
    let sheets = design.impressions.values().filter_map(|impression| {
        let others = joined.others_on(&impression.key);
        if others.is_empty() {
            return None;
        }
        let others = others.iter().map(|key| here.record(key));
        let all: Vec<CleanHtml> = std::iter::once(here.impression(&impression.key))
            .chain(others)
            .collect();
        Some(enumeration::together(here, &all))
    });
    sheets.collect()
}
