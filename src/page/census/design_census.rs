//! The census of a design: its known sheets by state, printing, kind, place and holder, and its
//! declared editions against the numbers met.

use serde::Serialize;

use super::census_figures;
use super::counting_notes::{CountingNotes, counting_notes};
use super::counts::{self, Table};
use super::crossing::{self, Crossing, FigureTarget};
use super::holding_table::{self, HoldingTable};
use super::occasions::{self, OccasionsPart};
use super::open_pairs::{self, RecordPair};
use super::sheet_records::Records;
use super::survival::{self, Surviving};
use crate::model::certainty::Statement;
use crate::model::design::Design;
use crate::model::key::{ImpressionKey, Key};
use crate::page::phrases::claims;
use crate::page::phrases::enumeration;
use crate::page::setting::address::{Address, Fragment};
use crate::page::setting::book::Here;
use crate::page::setting::html::CleanHtml;
use crate::page::setting::leaf::Leaf;
use crate::page::setting::words::Argument;
use crate::study::census::Census;
use crate::study::editions::{EditionStudy, MetNumber};

#[derive(Serialize)]
struct View {
    design: CleanHtml,
    title: String,
    brief: String,
    /// For a design that no total includes, a note that says so.
    set_apart: String,
    counted: CountingNotes,
    tables: Vec<Table>,
    crossing: Option<Crossing>,
    holding: Option<HoldingTable>,
    seen: Option<OccasionsPart>,
    surviving: Option<Surviving>,
    same: Vec<CleanHtml>,
    pairs: Vec<RecordPair>,
    editions: Vec<Edition>,
}

#[derive(Serialize)]
struct Edition {
    id: String,
    heading: CleanHtml,
    /// How many sheets are known, of how many declared or really printed.
    known: Vec<CleanHtml>,
    /// How many numbers were met.
    said: String,
    /// Who declares the size, where that is recorded.
    source: CleanHtml,
    /// Other declared sizes, with their sources.
    others: Vec<CleanHtml>,
    /// Other numbers of sheets printed, with their sources.
    printed_others: Vec<CleanHtml>,
    /// Sizes in numberings that no source declares, with the sheets.
    of_other_size: Vec<CleanHtml>,
    repeated: Vec<CleanHtml>,
    above: Vec<CleanHtml>,
    numbers: Vec<Number>,
}

#[derive(Serialize)]
struct Number {
    text: String,
    href: Option<String>,
}

/// For an edition larger than this, only the numbers met are listed.
const NUMBERS_SHOWN: u32 = 500;

pub(crate) fn page(here: &Here<'_>, design: &Design) -> Leaf {
    let words = here.words();
    let nothing = Census::default();
    let study = here.book.studies.designs.get(&design.key);
    let census = study.map_or(&nothing, |s| &s.census);
    let records = Records::of(here, std::iter::once(design));
    let mut tables = vec![
        counts::table(here, "state", &census.by.state, &records, |key| {
            (key.to_string(), here.state_of(&design.key, key))
        }),
        counts::table(here, "printing", &census.by.printing, &records, |key| {
            (key.to_string(), printing(here, design, key))
        }),
    ];
    tables.retain(|table| !table.rows.is_empty());
    tables.extend(counts::tables(here, census, &records));
    let title = words.word("census").to_owned();
    let name = here.design_name(design).plain();
    let view = View {
        design: here.design(&design.key),
        brief: counts::date_line(here, &here.sheets_in_words(census.sheets)),
        set_apart: if design.standing.is_set_apart() {
            words.word("set-apart-own").to_owned()
        } else {
            String::new()
        },
        counted: counting_notes(here, &[design]),
        tables,
        crossing: crossing::table(here, design, FigureTarget::Records(&records)),
        holding: study.and_then(|study| holding_table::table(here, design, study, &records)),
        seen: study.and_then(|study| occasions::over_time(here, &study.met, &records)),
        surviving: study.and_then(|study| survival::surviving(here, study)),
        same: same_sheets(here, design),
        pairs: open_pairs::open_pairs(here, std::iter::once(design)),
        editions: study
            .into_iter()
            .flat_map(|s| &s.editions)
            .map(|e| edition(here, design, e))
            .collect(),
        title: title.clone(),
    };
    let leaf_title = words.with("census-of", &[("design", Argument::Text(&name))]);
    Leaf::new(here.address, leaf_title, "pages/design-census.html", &view)
}

fn printing(here: &Here<'_>, design: &Design, key: &Key) -> CleanHtml {
    let to = here.href_part(
        &Address::Design(design.key.clone()),
        Fragment::Printing(key),
    );
    CleanHtml::link(&to, &CleanHtml::text(&here.printing_name(design, key)))
}

/// Records found to be one sheet: "14.2 and 14.19".
fn same_sheets(here: &Here<'_>, design: &Design) -> Vec<CleanHtml> {
    let groups = &here.book.studies.groups;
    let mut sheets: Vec<(ImpressionKey, Vec<CleanHtml>)> = Vec::new();
    for impression in design.impressions.values() {
        let first = groups.first_of(&impression.key);
        let handle = here.impression(&impression.key);
        match sheets.iter_mut().find(|(key, _)| *key == first) {
            Some((_, handles)) => handles.push(handle),
            None => sheets.push((first, vec![handle])),
        }
    }
    sheets
        .into_iter()
        .filter(|(_, handles)| handles.len() > 1)
        .map(|(_, handles)| enumeration::together(here, &handles))
        .collect()
}

fn edition(here: &Here<'_>, design: &Design, study: &EditionStudy) -> Edition {
    let words = here.words();
    let name = CleanHtml::text(&here.printing_name(design, &study.printing));
    let heading = match study.declared {
        Some(declared) => words.html(
            "edition-declared",
            usize::try_from(declared).ok(),
            &[("printing", &name)],
        ),
        None => name,
    };
    let printing = design.printing(&study.printing);
    let is_unnumbered = printing.is_some_and(|p| p.numbered == Some(false));
    let said = match study.declared {
        _ if is_unnumbered && study.located.is_empty() => {
            words.word("edition-unnumbered").to_owned()
        }
        Some(declared) => words.with(
            "edition-met-of",
            &[
                ("n", Argument::Count(study.within().count())),
                ("declared", Argument::Text(&declared.to_string())),
                (
                    "missing",
                    Argument::Text(&study.missing().len().to_string()),
                ),
            ],
        ),
        None if study.located.is_empty() => String::new(),
        None => words.count("edition-met", study.located.len()),
    };
    let others = |of: &[Statement<u32>]| -> Vec<CleanHtml> {
        let other = |claim: &Statement<u32>| {
            let size = CleanHtml::text(&claim.is.value.to_string());
            CleanHtml::join([&size, &claims::remark(here, &claim.claim)], ", ")
        };
        of.iter().map(other).collect()
    };
    let own = printing.and_then(|p| p.edition.0.first());
    let of_other_size = study.of_other_size.iter().filter_map(|(of, keys)| {
        let is_published = |key: &&ImpressionKey| here.public().impression(key).is_some();
        let handles = here.handles(keys.iter().filter(is_published));
        (!handles.is_empty()).then(|| CleanHtml::text(&format!("{of}: ")).and(&handles))
    });
    let with_sheets = |number: u32| {
        let sheets = sheets_with(here, study, number);
        let number = CleanHtml::text(&number.to_string());
        number.then(": ").and(&here.handles(sheets))
    };
    Edition {
        id: format!("edition-{}", study.printing),
        heading,
        known: known_of(here, design, study),
        said,
        source: own.map_or_else(CleanHtml::empty, |claim| claims::remark(here, &claim.claim)),
        others: printing.map_or_else(Vec::new, |p| others(p.edition.others())),
        printed_others: printing.map_or_else(Vec::new, |p| others(p.printed.others())),
        of_other_size: of_other_size.collect(),
        repeated: study.repeated.iter().copied().map(with_sheets).collect(),
        above: study.above().map(with_sheets).collect(),
        numbers: numbers(here, study),
    }
}

/// "Known: 12–13 of 34 really printed (the ledger, leaf 4)." The number declared and the number really printed each
/// make a line; where neither is recorded, the sheets stand alone.
fn known_of(here: &Here<'_>, design: &Design, study: &EditionStudy) -> Vec<CleanHtml> {
    let words = here.words();
    let rows = &here.book.studies.designs.get(&design.key);
    let rows = rows.map_or(&[][..], |study| &study.census.by.printing);
    let known = census_figures::total(here, design, "printing", rows, Some(&study.printing));
    let known = if known.is_empty() {
        CleanHtml::text("0")
    } else {
        known
    };
    let line = |id: &str, n: Option<u32>| {
        let n = n.and_then(|n| usize::try_from(n).ok());
        words.html(id, n, &[("known", &known)])
    };
    let mut lines = Vec::new();
    if study.declared.is_some() {
        lines.push(line("known-of-declared", study.declared).then("."));
    }
    let printing = design.printing(&study.printing);
    if let Some(printed) = printing.and_then(|p| p.printed.0.first()) {
        let of = line("known-of-printed", Some(printed.is.value));
        lines.push(claims::with_claim(here, of, &printed.claim).then("."));
    }
    if lines.is_empty() {
        lines.push(line("known-of-printing", None).then("."));
    }
    lines
}

/// The published records with a number, arabic or roman.
fn sheets_with<'s>(
    here: &Here<'_>,
    study: &'s EditionStudy,
    number: u32,
) -> impl Iterator<Item = &'s ImpressionKey> {
    let public = here.public();
    [false, true]
        .into_iter()
        .filter_map(move |is_roman| study.met.get(&MetNumber { is_roman, number }))
        .flatten()
        .filter(move |key| public.impression(key).is_some())
}

/// The numbers of an edition up to its size; those met are links to their sheets.
fn numbers(here: &Here<'_>, study: &EditionStudy) -> Vec<Number> {
    let href = |number: u32| {
        sheets_with(here, study, number)
            .next()
            .map(|key| here.href(&Address::Impression(key.clone())))
    };
    let declared = study
        .declared
        .filter(|declared| *declared <= NUMBERS_SHOWN && !study.located.is_empty());
    let mut shown: Vec<u32> = match declared {
        Some(declared) => (1..=declared).collect(),
        None => Vec::new(),
    };
    if declared.is_none() {
        shown.extend(study.within());
    }
    shown
        .into_iter()
        .map(|number| Number {
            text: number.to_string(),
            href: href(number),
        })
        .collect()
}
