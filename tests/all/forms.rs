//! The forms that readers fill in and send: what is filled in is read back, for certain and whole.
//!
//! `tests/reference/forms.py` opens the workbooks with openpyxl (PyPI), which others wrote.

use std::collections::BTreeMap;
use std::io::Read as _;
use std::sync::LazyLock;

use flate2::read::DeflateDecoder;
use keyblock::exchange::intake::columns::{Holds, columns};
use keyblock::exchange::intake::reading::{
    Lexicon, choices, credit, kinds, media, sightings, sizes, words,
};
use keyblock::exchange::intake::sighting_form::sighting_forms;
use keyblock::exchange::intake::table::{Table, tables};
use keyblock::model::certainty::{Basis, Certainty, Statements};
use keyblock::model::impression::{Impression, StateReading, Status};
use keyblock::model::size::Size;
use keyblock::model::vocabulary::List;
use keyblock::model::words::ClosedList as _;
use keyblock::page::Site;

use crate::data_tables::SITE;
use crate::pages::{FERRY, page, site_of};
use crate::program::copy_of;

/// What the columns of an empty table hold, in their order, with a cell that may stand there in English and German.
const FILLED: [(Holds, &str, &str); 31] = [
    (Holds::Accession, "012.5", "012.5"),
    (Holds::Design, "1 – The Ferry", "1 – The Ferry"),
    (Holds::Title, "The Ferry", "Die Fähre"),
    (Holds::OwnState, "ii – moonlit", "ii – moonlit"),
    (Holds::Printing, "artist’s printing", "Druck"),
    (Holds::Kind, "proof", "Probedruck"),
    (Holds::Numbering, "12/50", "12/50"),
    (Holds::Medium, "etching", "Radierung"),
    (Holds::Paper, "laid paper", "Büttenpapier"),
    (Holds::Watermark, "crown", "Krone"),
    (Holds::Dimensions, "166 x 243", "166 x 243"),
    (Holds::Dimensions, "212,5 × 301", "212,5 × 301"),
    (Holds::Dimensions, "7 1/2 x 10 in.", "18 x 25,5 cm"),
    (
        Holds::Signature,
        "pencil, lower right",
        "Bleistift, unten rechts",
    ),
    (Holds::Inscription, "=1+1", "=1+1"),
    (Holds::Marks, "red stamp", "roter Stempel"),
    (Holds::Condition, "foxed", "stockfleckig"),
    (Holds::Holder, "Harbour Museum", "Hafenmuseum"),
    (Holds::Status, "located", "nachgewiesen"),
    (Holds::FormerAccession, "K. 7", "K. 7"),
    (Holds::Acquisition, "bequest", "Vermächtnis"),
    (
        Holds::Credit,
        "Bequest of Ida Wray, 1920",
        "Vermächtnis Ida Wray, 1920",
    ),
    (Holds::Provenance, "The artist", "Künstler"),
    (
        Holds::Web,
        "https://m.example.org/1",
        "https://m.example.org/1",
    ),
    (Holds::Photograph, "1-recto.tif", "1-recto.tif"),
    (Holds::Publish, "yes", "ja"),
    (Holds::Rights, "CC BY 4.0", "CC BY 4.0"),
    (Holds::Seen, "1920-01", "1920-01"),
    (Holds::SeenBy, "A. Reader", "A. Leser"),
    (Holds::Basis, "at first hand", "nach Augenschein"),
    (Holds::Remarks, "–", "–"),
];

const SHEET: &str = "xl/worksheets/sheet1.xml";

/// The parts of a workbook by name.
pub fn parts(workbook: &[u8]) -> BTreeMap<String, Vec<u8>> {
    let mut parts = BTreeMap::new();
    let mut rest = workbook;
    let number = |bytes: &[u8]| {
        bytes
            .iter()
            .rev()
            .fold(0, |sum, b| sum << 8 | usize::from(*b))
    };
    while rest.starts_with(b"PK\x03\x04") {
        let (packed, name) = (number(&rest[18..22]), number(&rest[26..28]));
        let name_end = 30 + name + number(&rest[28..30]);
        let bytes = &rest[name_end..name_end + packed];
        let mut unpacked = bytes.to_vec();
        if number(&rest[8..10]) == 8 {
            unpacked.clear();
            DeflateDecoder::new(bytes)
                .read_to_end(&mut unpacked)
                .unwrap();
        }
        assert_eq!(unpacked.len(), number(&rest[22..26]));
        let name = String::from_utf8(rest[30..30 + name].to_vec()).unwrap();
        parts.insert(name, unpacked);
        rest = &rest[name_end + packed..];
    }
    parts
}

fn part(workbook: &[u8], name: &str) -> String {
    String::from_utf8(parts(workbook)[name].clone()).unwrap()
}

/// The archive of parts, none of them packed (APPNOTE 4.3, PKWARE).
fn archive(parts: &BTreeMap<String, Vec<u8>>) -> Vec<u8> {
    let (mut file, mut directory) = (Vec::new(), Vec::new());
    let four = |n: usize| u32::try_from(n).unwrap().to_le_bytes();
    for (name, bytes) in parts {
        let at = file.len();
        let mut crc = flate2::Crc::new();
        crc.update(bytes);
        let mut header = vec![20, 0, 0, 0, 0, 0, 0, 0, 33, 0];
        header.extend(crc.sum().to_le_bytes());
        header.extend(four(bytes.len()));
        header.extend(four(bytes.len()));
        header.extend(four(name.len()));
        file.extend(b"PK\x03\x04");
        file.extend(&header);
        file.extend(name.as_bytes());
        file.extend(bytes);
        directory.extend(b"PK\x01\x02\x14\0");
        directory.extend(&header);
        directory.extend([0; 10]);
        directory.extend(four(at));
        directory.extend(name.as_bytes());
    }
    let at = file.len();
    file.extend(&directory);
    file.extend(b"PK\x05\x06\0\0\0\0");
    let count = u16::try_from(parts.len()).unwrap().to_le_bytes();
    file.extend(count);
    file.extend(count);
    file.extend(four(directory.len()));
    file.extend(four(at));
    file.extend([0, 0]);
    file
}

/// A workbook with a further row.
fn filled_in(workbook: &[u8], row: &[&str]) -> Vec<u8> {
    let mut parts = parts(workbook);
    let sheet = String::from_utf8(parts[SHEET].clone()).unwrap();
    let cells = row.iter().map(|text| {
        let text = text.replace('&', "&amp;").replace('<', "&lt;");
        format!("<c t=\"inlineStr\"><is><t>{text}</t></is></c>")
    });
    let row = format!(
        "<row r=\"7\">{}</row></sheetData>",
        cells.collect::<String>()
    );
    let sheet = sheet.replacen("</sheetData>", &row, 1);
    parts.insert(SHEET.to_owned(), sheet.into_bytes());
    archive(&parts)
}

fn only_table(bytes: &[u8]) -> Table {
    let mut tables = tables(bytes).unwrap();
    assert_eq!(tables.len(), 1, "the sheets that help are no tables");
    tables.remove(0)
}

/// The terms of a new catalogue.
fn lexicon(folder: &std::path::Path) -> Lexicon {
    Lexicon::of(&keyblock::read::read(folder).catalogue.vocabularies)
}

const GERMAN: &str = r#"
-- catalogue.toml
title = "Die Graphik"
siglum = "DG"
artist = "artist"
language = "de"
address = "https://prints.example.org"
licence = "CC-BY-4.0"
"#;

static ENGLISH_SITE: LazyLock<Site> = LazyLock::new(|| site_of(&[FERRY]));
static GERMAN_SITE: LazyLock<Site> = LazyLock::new(|| site_of(&[GERMAN, FERRY]));

#[test]
fn what_is_filled_in_is_read_back_for_certain() {
    let folder = crate::small::lay_down(&[FERRY]);
    let lexicon = lexicon(folder.path());
    for (site, is_german) in [(&ENGLISH_SITE, false), (&GERMAN_SITE, true)] {
        let row = FILLED.map(|(_, english, german)| if is_german { german } else { english });
        for path in ["contribute/listing.xlsx", "design/1/listing.xlsx"] {
            let empty = &site.files[path];
            assert_eq!(only_table(empty).rows().len(), 0, "{path} has rows");
            let table = only_table(&filled_in(empty, &row));
            assert_eq!(table.rows().len(), 1);
            let read = table.rows().next().unwrap();
            assert_eq!(read.cells().collect::<Vec<_>>(), row, "{path}");
            let proposal = columns(&table, &lexicon);
            assert_eq!(proposal.columns.len(), FILLED.len());
            for (column, (holds, _, _)) in proposal.columns.iter().zip(FILLED) {
                let heading = &column.heading;
                assert_eq!(
                    (column.holds, column.sure),
                    (holds, Certainty::Certain),
                    "{heading}"
                );
            }
            let of: Vec<_> = proposal.columns[10..13]
                .iter()
                .map(|column| column.assumed)
                .collect();
            let measured = [
                sizes::Measured::Image,
                sizes::Measured::Sheet,
                sizes::Measured::Platemark,
            ];
            for (assumed, measured) in of.iter().zip(measured) {
                assert_eq!(assumed.of, Some(measured));
                assert_eq!(assumed.unit, Some(sizes::Unit::Millimetre));
                assert_eq!(assumed.order, Some(sizes::Order::HeightFirst));
            }
        }
    }
}

/// The texts of the cells of a sheet, in its order.
fn texts(sheet: &str) -> Vec<&str> {
    let cells = sheet.split("<t>").skip(1);
    cells
        .map(|rest| rest.split("</t>").next().unwrap())
        .collect()
}

#[test]
fn every_term_that_is_offered_leads_back_to_itself() {
    for (site, language) in [(&ENGLISH_SITE, "en"), (&GERMAN_SITE, "de")] {
        let folder = crate::small::lay_down(&[FERRY]);
        let vocabularies = keyblock::read::read(folder.path()).catalogue.vocabularies;
        let lexicon = Lexicon::of(&vocabularies);
        let sheet = part(
            &site.files["contribute/listing.xlsx"],
            "xl/worksheets/sheet3.xml",
        );
        let offered = texts(&sheet);
        for list in [List::Kinds, List::Techniques, List::Papers, List::Transfers] {
            for (key, term) in vocabularies.terms(list) {
                let label = term.label(language).unwrap();
                let escaped = label.replace('\'', "&apos;");
                assert!(offered.contains(&escaped.as_str()), "{label}");
                let words = words::Words::of(label);
                let found = lexicon.at(list, &words, 0);
                assert_eq!(
                    found.map(|found| found.is.key),
                    Some(key.clone()),
                    "{label}"
                );
            }
        }
        let says = |answer: fn(&str) -> bool| offered.iter().any(|text| answer(text));
        assert!(says(|text| choices::yes(text) == Some(true)));
        assert!(says(|text| choices::yes(text) == Some(false)));
        for status in Status::ALL {
            assert!(
                offered
                    .iter()
                    .any(|text| choices::status(text) == Some(*status))
            );
        }
        for basis in Basis::ALL {
            assert!(
                offered
                    .iter()
                    .any(|text| sightings::basis(text) == Some(*basis))
            );
        }
    }
}

#[test]
fn the_table_of_a_design_offers_its_own_states_and_printings() {
    let workbook = &SITE.files["design/7/listing.xlsx"];
    let lists = part(workbook, "xl/worksheets/sheet4.xml");
    let names = part(workbook, "xl/workbook.xml");
    let general = part(
        &SITE.files["contribute/listing.xlsx"],
        "xl/worksheets/sheet4.xml",
    );
    let catalogue = keyblock::read::read(copy_of("demo-site").path()).catalogue;
    let design = &catalogue.designs["7"];
    let named = texts(&lists);
    for state in design.standing_states() {
        let is_it = |text: &&str| {
            choices::named(text).any(|named| named.key == Some(state.key.value.as_str()))
        };
        assert!(named.iter().any(is_it), "{}", state.key.value);
    }
    assert!(names.contains("name=\"states\""));
    assert!(general.len() > 3 * lists.len());
    assert!(!lists.contains(&catalogue.designs["8"].title().unwrap().text.value));
}

/// The limit is our own; the demonstration has the longest lists that a design is likely to have.
#[test]
fn a_table_is_small_and_the_same_each_time() {
    let mut met = 0;
    for (path, bytes) in &SITE.files {
        if path.ends_with("listing.xlsx") && path.starts_with("design/") {
            met += 1;
            assert!(bytes.len() < 20_000, "{path} has {} bytes", bytes.len());
        }
    }
    assert!(met > 10);
    let again = site_of(&[FERRY]);
    for path in [
        "contribute/listing.xlsx",
        "design/1/listing.xlsx",
        "holder/museum/sheets.xlsx",
    ] {
        assert_eq!(again.files[path], ENGLISH_SITE.files[path], "{path}");
    }
}

#[test]
fn pages_offer_the_forms() {
    let contribute = page(&ENGLISH_SITE, "contribute/");
    assert!(contribute.contains("href=\"./listing.xlsx\""));
    assert!(contribute.contains("href=\"./sighting.txt\""));
    let design = page(&GERMAN_SITE, "design/1/");
    assert!(
        design.contains("href=\"./listing.xlsx\"") && design.contains("href=\"./sighting.txt\"")
    );
    let holder = page(&ENGLISH_SITE, "holder/museum/");
    assert!(holder.contains("href=\"./sheets.xlsx\""));
    let withdrawn = FERRY.replacen(
        "titles =",
        "standing = \"withdrawn\"\nwhy = \"a copy\"\ntitles =",
        1,
    );
    let site = site_of(&[&withdrawn]);
    let kept = &site.files["design/1/listing.xlsx"];
    assert!(!part(kept, "xl/worksheets/sheet4.xml").contains("Ferry"));
    assert!(!page(&site, "design/1/").contains("listing.xlsx"));
}

#[test]
fn a_form_for_a_mail_is_read_back_whole() {
    let folder = crate::small::lay_down(&[FERRY]);
    let lexicon = lexicon(folder.path());
    let samples: BTreeMap<&str, (&str, &str)> = FILLED
        .map(|(holds, english, german)| (holds.word(), (english, german)))
        .into();
    for (site, is_german) in [(&ENGLISH_SITE, false), (&GERMAN_SITE, true)] {
        for (path, is_prefilled) in [
            ("contribute/sighting.txt", false),
            ("design/1/sighting.txt", true),
        ] {
            let form = std::str::from_utf8(&site.files[path]).unwrap();
            assert_eq!(sighting_forms(form).is_some(), is_prefilled, "{path}");
            assert!(
                form.lines().all(|line| line.chars().count() <= 72),
                "a mail would break a line"
            );
            let labels: Vec<&str> = form
                .lines()
                .filter(|line| line.contains([':', '?']) && !line.starts_with('#'))
                .collect();
            assert_eq!(labels.len(), 22, "{form}");
            // Filled in as whatever each line is for.
            let read = |filled: &str| sighting_forms(filled).unwrap();
            let with_anything = labels.iter().map(|line| format!("> {line}x\n"));
            let with_anything = with_anything.collect::<Vec<_>>().concat();
            let holds: Vec<Holds> = columns(&read(&with_anything), &lexicon)
                .columns
                .iter()
                .map(|c| c.holds)
                .collect();
            let filled: Vec<String> = labels
                .iter()
                .zip(&holds)
                .map(|(line, holds)| {
                    let (english, german) = samples[holds.word()];
                    let value = if is_german { german } else { english };
                    format!("> {} {value}\r\n", &line[..=line.find([':', '?']).unwrap()])
                })
                .collect();
            let table = read(&filled.concat());
            let proposal = columns(&table, &lexicon);
            assert_eq!(proposal.columns.len(), 22, "a label is not known");
            for column in &proposal.columns {
                assert_eq!(column.sure, Certainty::Certain, "{}", column.heading);
                assert_ne!(column.holds, Holds::Unknown);
            }
            if is_prefilled {
                let table = read(form);
                assert_eq!(table.rows().next().unwrap().cell(0), "1");
            }
        }
    }
}

/// A holder's own sheets as a workbook: with no cell changed, every cell reads as what the record says.
#[test]
fn the_sheets_of_a_holder_read_back_as_they_are_recorded() {
    let folder = copy_of("demo-site");
    let catalogue = keyblock::read::read(folder.path()).catalogue;
    let lexicon = Lexicon::of(&catalogue.vocabularies);
    let mut met: BTreeMap<Holds, usize> = BTreeMap::new();
    let workbooks = SITE
        .files
        .iter()
        .filter(|(path, _)| path.ends_with("/sheets.xlsx"));
    for (path, bytes) in workbooks {
        let table = only_table(bytes);
        let proposal = columns(&table, &lexicon);
        let csv = path.replace(".xlsx", ".csv");
        let csv = std::str::from_utf8(&SITE.files[&csv]).unwrap();
        let rows = csv
            .matches("https://perelaz.example.org/prints/impression/")
            .count();
        assert_eq!(table.rows().len(), rows, "{path}");
        for row in table.rows() {
            let of = |wanted: Holds| {
                let column = proposal
                    .columns
                    .iter()
                    .position(|column| column.holds == wanted);
                row.cell(column.unwrap_or_else(|| panic!("{path}: no {wanted:?}")))
            };
            let key: keyblock::model::key::ImpressionKey = of(Holds::Impression).parse().unwrap();
            let design = &catalogue.designs[&key.design];
            let sheet = &design.impressions[&key.number];
            for column in &proposal.columns {
                let cell = row.cell(column.column);
                if cell.is_empty() {
                    continue;
                }
                *met.entry(column.holds).or_default() += 1;
                assert!(
                    reads_as_recorded(column.holds, cell, column.assumed, &lexicon, sheet),
                    "{key} {}: {cell}",
                    column.heading
                );
            }
            assert_eq!(choices::design(of(Holds::Design)), design.number);
            let recorded = sheet
                .identified
                .iter()
                .flat_map(|reading| &reading.printing);
            let printings = choices::named(of(Holds::Printing)).zip(recorded);
            for (named, key) in printings {
                let printing = design.printing(&key.value).unwrap();
                let is_it = named.key.is_none_or(|named| named == key.value.as_str())
                    && printing
                        .name
                        .as_deref()
                        .is_none_or(|name| name == named.shown);
                assert!(is_it, "{}: {named:?}", sheet.key);
            }
        }
    }
    for holds in [
        Holds::Accession,
        Holds::OwnState,
        Holds::Kind,
        Holds::Medium,
        Holds::Paper,
        Holds::Watermark,
        Holds::Printing,
        Holds::Dimensions,
        Holds::Credit,
        Holds::Acquisition,
        Holds::Marks,
        Holds::Status,
    ] {
        assert!(met.contains_key(&holds), "{holds:?}: {met:?}");
    }
}

/// Whether a cell reads as what the record of the sheet says.
fn reads_as_recorded(
    holds: Holds,
    cell: &str,
    assumed: sizes::Assumed,
    lexicon: &Lexicon,
    sheet: &Impression,
) -> bool {
    let is_term = |list: List, key: &str| {
        let words = words::Words::of(cell);
        lexicon
            .at(list, &words, 0)
            .is_some_and(|found| found.is.key.as_str() == key)
    };
    match holds {
        Holds::Accession => sheet
            .accession
            .as_ref()
            .is_some_and(|number| number.value == cell),
        Holds::FormerAccession => {
            let numbers = cell.split("; ");
            numbers.eq(sheet
                .former_accessions
                .iter()
                .map(|former| former.number.as_str()))
        }
        Holds::Status => choices::status(cell) == Some(sheet.status.value),
        Holds::Kind => {
            let words = words::Words::of(cell);
            let kind = kinds::kind(&words, 0, lexicon);
            kind.map(|kind| kind.is) == sheet.kind.own().cloned()
        }
        Holds::OwnState => {
            let reading = sheet
                .identified
                .as_ref()
                .and_then(|reading| reading.state.as_ref());
            let Some(StateReading::OneOf(states)) = reading else {
                return false;
            };
            let keys = choices::named(cell).map(|named| named.key.unwrap_or(named.shown));
            keys.eq(states.iter().map(|state| state.value.as_str()))
        }
        Holds::Paper => {
            let medium = media::medium(cell, lexicon).is;
            let recorded = sheet.sheet.paper.as_ref().map(|key| &key.value);
            medium.papers.iter().any(|paper| Some(paper) == recorded)
        }
        Holds::Dimensions => {
            let read = sizes::sizes(cell, assumed).is;
            let recorded: &Statements<Size> = match assumed.of {
                Some(sizes::Measured::Image) => &sheet.sheet.image,
                Some(sizes::Measured::Sheet) => &sheet.sheet.size,
                Some(sizes::Measured::Platemark) => &sheet.sheet.platemark,
                _ => return false,
            };
            read.len() == 1 && read[0].size().as_ref() == recorded.own()
        }
        Holds::Medium => {
            let techniques = media::medium(cell, lexicon).is.techniques;
            techniques
                .iter()
                .eq(sheet.technique.iter().map(|key| &key.value))
        }
        Holds::Watermark => {
            let texts = sheet.sheet.watermark.iter();
            cell.split("; ")
                .eq(texts.filter_map(|watermark| watermark.text.as_deref()))
        }
        Holds::Credit => sheet.credit.as_deref() == Some(cell),
        Holds::Acquisition => {
            let entries = sheet
                .provenance
                .iter()
                .filter_map(|entry| entry.how.as_ref());
            entries
                .into_iter()
                .any(|how| is_term(List::Transfers, how.value.as_str()))
                && credit::credit(cell, lexicon).is.how.is_some()
        }
        Holds::Numbering => sheet
            .numbering
            .as_ref()
            .is_some_and(|number| number.value == cell),
        Holds::Web => sheet.web.as_ref().is_some_and(|web| web.value == cell),
        _ => true,
    }
}
