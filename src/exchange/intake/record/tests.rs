//! Records from invented museums' tables. Tests only.

use std::collections::BTreeMap;
use std::path::Path;

use proptest::prelude::*;

use super::*;
use crate::exchange::intake::columns::columns;
use crate::exchange::intake::handing::HandingIn;
use crate::exchange::intake::proposal::{EarlierOpinion, ProposedRow, RowStanding};
use crate::exchange::intake::reading::Lexicon;
use crate::exchange::intake::rows::RowReader;
use crate::exchange::intake::table::{Table, tables};
use crate::exchange::intake::toml_text::{key_text, text_value};
use crate::exchange::intake::values::{SettledValues, Values};
use crate::model::catalogue::Catalogue;
use crate::model::edtf::Date;
use crate::model::impression::Impression;
use crate::model::key::{ImpressionKey, Key};
use crate::read::{Inputs, read, read_inputs};

const SETTINGS: &str = "title = \"Sheets\"\nsiglum = \"S\"\nartist = \"brook\"\nlanguage = \"en\"\n\
                        address = \"https://prints.example.org/\"\n";

/// A catalogue of these files, beside its settings, one design and a few holders and people.
pub(in crate::exchange::intake) fn catalogue(files: &[(String, String)]) -> Catalogue {
    read_inputs(Path::new(""), &Inputs::of_bytes(&bytes(files))).catalogue
}

fn bytes(files: &[(String, String)]) -> BTreeMap<String, Vec<u8>> {
    let fixed = [
        ("catalogue.toml", SETTINGS),
        (
            "records/designs/1/design.toml",
            "titles = [{ text = \"The Lock\" }]\ntechnique = [\"woodcut\"]\n",
        ),
        (
            "records/people/brook.toml",
            "name = \"Ada Brook\"\nroles = [\"artist\"]\n",
        ),
        (
            "records/holders/kelder.toml",
            "name = \"Kelder Museum\"\nkind = \"museum\"\n",
        ),
        (
            "records/holders/owner-1.toml",
            "name = \"Clara Mill\"\nkind = \"private\"\n",
        ),
    ];
    let fixed = fixed.map(|(path, text)| (path.to_owned(), text.to_owned()));
    let all = fixed.into_iter().chain(files.iter().cloned());
    all.map(|(path, text)| (path, text.into_bytes())).collect()
}

/// The impressions of the design that have these texts, with the errors of reading.
pub(in crate::exchange::intake) fn read_back(texts: &[String]) -> (Vec<Impression>, Vec<String>) {
    let files: Vec<_> = texts
        .iter()
        .zip(1..)
        .map(|(text, n)| {
            (
                format!("records/designs/1/impressions/{n}.toml"),
                text.clone(),
            )
        })
        .collect();
    let reading = read_inputs(Path::new(""), &Inputs::of_bytes(&bytes(&files)));
    let errors = reading
        .findings
        .iter()
        .filter(|finding| {
            reading
                .catalogue
                .sources
                .path(finding.at.place.file)
                .contains("impressions")
        })
        .map(|finding| finding.message.clone())
        .collect();
    let design = &reading.catalogue.designs[&key("1")];
    (design.impressions.values().cloned().collect(), errors)
}

/// An impression in full, but for where it is recorded.
pub(in crate::exchange::intake) fn in_full(impression: &Impression) -> String {
    let mut impression = impression.clone();
    impression.note = None;
    let written = format!("{impression:#?}");
    let mut lines: Vec<&str> = Vec::new();
    let mut closes: Option<usize> = None;
    for line in written.lines() {
        let indent = line.len() - line.trim_start().len();
        match closes {
            Some(at) if indent > at => {}
            Some(_) => closes = None,
            None if line.trim_start().starts_with("place: Place {") => closes = Some(indent),
            None => lines.push(line),
        }
    }
    lines.join("\n")
}

pub(in crate::exchange::intake) fn key(text: &str) -> Key {
    text.parse().unwrap()
}

fn number(number: u32) -> ImpressionKey {
    ImpressionKey {
        design: key("1"),
        number,
    }
}

pub(in crate::exchange::intake) fn handing() -> HandingIn {
    HandingIn {
        name: Some(key("kelder")),
        holder: Some(key("kelder")),
        by: Some(key("kelder")),
        source: Some("https://kelder.example.org/list".to_owned()),
        seen: Some(Date::parse("2026-01").unwrap()),
    }
}

/// Every row of a table with the record that it proposes.
fn drafts(table: &Table, handing: &HandingIn) -> Vec<(ProposedRow, RecordDraft)> {
    let catalogue = catalogue(&[]);
    let lexicon = Lexicon::of_catalogue(&catalogue);
    let proposal = columns(table, &lexicon);
    let columns = &proposal.columns;
    let values = Values::of(table, columns, &lexicon, &SettledValues::default());
    let reader = RowReader::of(columns, &proposal.doubts, &values, &lexicon);
    let maker = RecordMaker::of(columns, handing, &catalogue, &lexicon.names);
    let drafts = table.rows().zip(1..).map(|(view, n)| {
        let row = reader.row(view.number(), |column| view.cell(column));
        let cell = |column: usize| view.cell(column);
        let draft = maker.draft(&row, &cell, number(n), &[key("woodcut")]);
        (row, draft)
    });
    drafts.collect()
}

fn of_text(text: &str, handing: &HandingIn) -> Vec<(ProposedRow, RecordDraft)> {
    drafts(&tables(text.as_bytes()).unwrap().remove(0), handing)
}

const LISTING: &str = "Inv.-Nr.;Titel;Datierung;Technik;Maße;Erwerbung;Signatur;Wasserzeichen;Zustand;Lagerort;URL\n\
    KM 1970.12;Schleuse;um 1912, dieser Abzug 1925;Radierung auf Japanpapier;\"image: 9 1/2 x 7 in., Blatt: 24,9 x 19 cm\";\
    Schenkung Ada Brook, 1970;\"bez. u. r. \"\"Brook\"\"\";ohne Wasserzeichen;fleckig;Schrank 7;https://kelder.example.org/1970-12\n";

#[test]
fn a_row_becomes_a_record() {
    let drafts = of_text(LISTING, &handing());
    insta::assert_snapshot!(drafts[0].1.text(), @r##"
    # Impression 1.1, as its holder hands it in: [as_given] has the holder's own words.

    holder = "kelder"
    accession = "KM 1970.12"
    credit = "Schenkung Ada Brook, 1970"
    web = "https://kelder.example.org/1970-12"
    status = "located"
    technique = ["etching"]
    without = ["watermark"]
    condition = "fleckig"

    [sheet]
    size = [249, 190]
    image = [241.3, 177.8]
    said = "image: 9 1/2 x 7 in., Blatt: 24,9 x 19 cm"
    paper = "japan-paper"
    date = "1925"

    [as_given]
    seen = "2026-01"
    source = "https://kelder.example.org/list"
    private = ["Lagerort"]
    "Inv.-Nr." = "KM 1970.12"
    Titel = "Schleuse"
    Datierung = "um 1912, dieser Abzug 1925"
    Technik = "Radierung auf Japanpapier"
    "Maße" = "image: 9 1/2 x 7 in., Blatt: 24,9 x 19 cm"
    Erwerbung = "Schenkung Ada Brook, 1970"
    Signatur = 'bez. u. r. "Brook"'
    Wasserzeichen = "ohne Wasserzeichen"
    Zustand = "fleckig"
    Lagerort = "Schrank 7"
    URL = "https://kelder.example.org/1970-12"

    [[marks]]
    kind = "signature"
    note = 'bez. u. r. "Brook"'

    [[provenance]]
    owner = "brook"

    [[provenance]]
    owner = "kelder"
    from = "1970"
    how = "gift"
    direct = true

    [[sightings]]
    date = "2026-01"
    by = "kelder"
    basis = "report"
    "##);
    let (read, findings) = read_back(&[drafts[0].1.text()]);
    assert_eq!(findings, Vec::<String>::new());
    assert_eq!(in_full(&read[0]), in_full(&drafts[0].1.impression));
}

#[test]
fn nothing_that_may_name_a_private_owner_is_published() {
    let handing = HandingIn {
        holder: Some(key("owner-1")),
        by: None,
        ..handing()
    };
    let drafts = of_text(LISTING, &handing);
    let text = drafts[0].1.text();
    let private = text.lines().filter(|line| line.starts_with("private"));
    assert_eq!(
        private.collect::<Vec<_>>(),
        [
            "private = [\"credit\", \"web\", \"provenance\"]",
            "private = [\"Erwerbung\", \"Lagerort\", \"URL\"]"
        ]
    );
    let text =
        "accession,title,seen,seen by,remarks\nP1,Lock,12 May 2024,Dora Quay,insured for 4000\n";
    let text = of_text(text, &self::handing())[0].1.text();
    assert!(
        text.contains("private = [\"seen by\", \"remarks\"]"),
        "{text}"
    );
    assert!(
        text.contains("by = { name = \"Dora Quay\", private = [\"name\"] }"),
        "{text}"
    );
    assert!(text.contains("date = \"2024-05-12\""), "{text}");
    // What another cell says too is public with that other one.
    let text = "accession,title,object\nP1,Lock at night,\"Lock, at night\"\nP2,Weir,box 7\n";
    let drafts = of_text(text, &self::handing());
    assert_eq!(drafts[0].1.withheld.given, Vec::<String>::new());
    assert_eq!(drafts[1].1.withheld.given, ["object"]);
}

#[test]
fn a_heading_that_is_taken_gets_a_number() {
    let table = tables("Title,Title,,seen,private\na,b,c,d,e\n".as_bytes())
        .unwrap()
        .remove(0);
    let columns = columns(&table, &Lexicon::of_catalogue(&catalogue(&[]))).columns;
    let names: Vec<_> = GivenNames::of(&columns)
        .all()
        .map(|(_, name)| name.to_owned())
        .collect();
    assert_eq!(
        names,
        ["Title", "Title (2)", "column C", "seen (2)", "private (2)"]
    );
}

#[test]
fn what_a_contributor_takes_a_sheet_to_be_is_an_opinion() {
    let catalogue = catalogue(&[]);
    let lexicon = Lexicon::of_catalogue(&catalogue);
    let handing = handing();
    let table = tables("accession,state\nP1,ii/iii\n".as_bytes())
        .unwrap()
        .remove(0);
    let columns = columns(&table, &lexicon).columns;
    let view = table.rows().next().unwrap();
    let cell = |column: usize| view.cell(column);
    let values = Values::of(&table, &columns, &lexicon, &SettledValues::default());
    let reader = RowReader::of(&columns, &[], &values, &lexicon);
    let maker = RecordMaker::of(&columns, &handing, &catalogue, &lexicon.names);
    let mut row = reader.row(2, cell);
    let draft = maker.draft(&row, &cell, number(1), &[]);
    let said: Vec<_> = draft
        .impression
        .opinions
        .iter()
        .map(|o| o.said.as_deref())
        .collect();
    assert_eq!(said, [Some("ii/iii")]);
    row.named.opinions.push(EarlierOpinion {
        said: "ii/iii".to_owned(),
        after: key("first-list"),
        states: vec![key("dark")],
        printings: Vec::new(),
    });
    let draft = maker.draft(&row, &cell, number(1), &[]);
    let [opinion] = draft.impression.opinions.as_slice() else {
        panic!("{:?}", draft.impression.opinions)
    };
    assert_eq!(opinion.after.as_ref().unwrap().as_str(), "first-list");
    assert_eq!(opinion.reading.state, None);
    assert_eq!(draft.impression.identified, None);
}

#[test]
fn what_was_not_found_is_no_mark() {
    let text =
        "accession,signature,marks\nP1,unsigned,none\nP2,yes,Lugt 1234\nP3,\"\"\"A. Brook\"\"\",\n";
    let drafts = of_text(text, &handing());
    let marks = |at: usize| {
        let marks = drafts[at].1.impression.marks.iter();
        let told = marks.map(|mark| {
            let kind = mark.kind.as_ref().map(|kind| kind.value.to_string());
            (
                kind.unwrap_or_default(),
                mark.text.clone(),
                mark.note.clone(),
            )
        });
        told.collect::<Vec<_>>()
    };
    assert_eq!(drafts[0].1.impression.without.len(), 1);
    assert_eq!(marks(0), []);
    assert_eq!(
        marks(1),
        [
            ("signature".to_owned(), None, None),
            ("collector".to_owned(), None, Some("Lugt 1234".to_owned()))
        ]
    );
    assert_eq!(
        marks(2),
        [("signature".to_owned(), Some("A. Brook".to_owned()), None)]
    );
}

/// Every impression of the demonstration, written and read again, is the same.
#[test]
fn every_recorded_impression_is_the_same_when_it_is_written_and_read() {
    let dir = Path::new(env!("CARGO_MANIFEST_DIR")).join("demo-site");
    let catalogue = read(&dir).catalogue;
    let mut files: BTreeMap<String, Vec<u8>> = BTreeMap::new();
    for (file, path) in catalogue.sources.paths() {
        let text = catalogue.sources.text(file);
        files.insert(path.to_owned(), text.as_bytes().to_vec());
    }
    let mut count = 0;
    for design in catalogue.designs.values() {
        for impression in design.impressions.values() {
            let ImpressionKey { design, number } = &impression.key;
            let path = format!("records/designs/{design}/impressions/{number}.toml");
            files.insert(path, written(impression).into_bytes());
            count += 1;
        }
    }
    assert!(count > 50, "{count}");
    let again = read_inputs(Path::new(""), &Inputs::of_bytes(&files)).catalogue;
    for (key, design) in &catalogue.designs {
        for (number, impression) in &design.impressions {
            let again = &again.designs[key].impressions[number];
            assert_eq!(in_full(impression), in_full(again), "{}", impression.key);
        }
    }
}

/// Signs that a text of TOML must take care of.
fn signs() -> impl Strategy<Value = char> {
    prop_oneof![
        prop::sample::select(vec![
            '"',
            '\'',
            '\\',
            '\n',
            '\r',
            '\t',
            '\u{0}',
            '\u{1b}',
            '\u{7f}',
            '\u{85}',
            '\u{a0}',
            '\u{200f}',
            '\u{202e}',
            '\u{2028}',
            '\u{feff}',
            '#',
            '=',
            '[',
            '.',
            'א',
            'é',
            '刷',
            '\u{1F5BC}',
        ]),
        any::<char>(),
    ]
}

fn texts() -> impl Strategy<Value = String> {
    prop::collection::vec(signs(), 1..12).prop_map(|signs| signs.into_iter().collect())
}

fn cells() -> impl Strategy<Value = String> {
    prop_oneof![
        prop::sample::select(vec![
            "",
            " ",
            "12/50",
            "A.P. II/X",
            "um 1912",
            "1925, printed later",
            "24,1 x 17,8 cm",
            "sight 9 1/2 x 7\"",
            "support: 300 x 200 mm",
            "Presented by Ada Brook, 1970",
            "Ankauf 1912",
            "ii/iii",
            "B. 12 ii",
            "unsigned",
            "\"Brook\"",
            "https://kelder.example.org/7",
            "Etching on Japan paper",
            "Kelder Museum",
            "2024-05",
            "von fremder Hand",
            "KM 7; KM 8",
            "first-hand",
        ])
        .prop_map(str::to_owned),
        texts(),
    ]
}

const HEADINGS: [&str; 22] = [
    "accession",
    "former accession",
    "title",
    "artist",
    "date",
    "medium",
    "dimensions",
    "height",
    "width",
    "credit line",
    "inscription",
    "signature",
    "state",
    "numbering",
    "provenance",
    "marks",
    "condition",
    "url",
    "holder",
    "remarks",
    "watermark",
    "seen",
];

proptest! {
    #![proptest_config(ProptestConfig::with_cases(96))]

    /// Whatever a row says, its record reads as it was proposed, and every cell is found again in it or in the report.
    #[test]
    fn nothing_of_a_row_is_lost(cells in prop::collection::vec(cells(), HEADINGS.len())) {
        let mut text = HEADINGS.join(",");
        text.push('\n');
        let quoted: Vec<String> =
            cells.iter().map(|cell| format!("\"{}\"", cell.replace('"', "\"\""))).collect();
        text.push_str(&quoted.join(","));
        text.push('\n');
        let Ok(mut found) = tables(text.as_bytes()) else { return Ok(()) };
        let table = found.remove(0);
        let drafts = drafts(&table, &handing());
        for (view, (row, draft)) in table.rows().zip(&drafts) {
            let given = draft.impression.as_given.iter().flat_map(|given| &given.fields);
            let given: Vec<&str> = given.map(|field| field.text.value.as_str()).collect();
            for cell in view.cells().filter(|cell| !cell.trim().is_empty()) {
                let is_told = row.unread.iter().any(|(_, text)| text == cell);
                if row.standing == RowStanding::Nothing {
                    prop_assert!(is_told, "{cell:?}");
                }
                prop_assert!(given.contains(&cell) || is_told, "{cell:?}");
            }
        }
        let texts: Vec<String> = drafts.iter().map(|(_, draft)| draft.text()).collect();
        let (again, _) = read_back(&texts);
        for ((_, draft), again) in drafts.iter().zip(&again) {
            prop_assert_eq!(in_full(&draft.impression), in_full(again));
        }
    }

    /// A text in any key is the same when it is read.
    #[test]
    fn every_text_is_safe(text in texts(), heading in texts()) {
        prop_assume!(!text.trim().is_empty());
        let line = format!("{} = {}\n", key_text(&heading), text_value(&text));
        let table: toml::Table = line.parse().unwrap();
        prop_assert_eq!(table.get(&heading).and_then(toml::Value::as_str), Some(text.as_str()));
        prop_assert_eq!(line.lines().count(), 1);
    }
}
