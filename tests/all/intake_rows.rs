//! Rows made from cells, a small catalogue for them, and what they propose. For tests of intake.

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};

use crate::intake_comparable::comparable;
use keyblock::audit::same_sheet::{reason, reason_in_full};
use keyblock::exchange::intake::cell::{CellContext, cell};
use keyblock::exchange::intake::columns::Holds;
use keyblock::exchange::intake::grouping::settings::{DesignSettings, SettledSheets};
use keyblock::exchange::intake::grouping::{grouped, keyed};
use keyblock::exchange::intake::handing::HandingIn;
use keyblock::exchange::intake::known::{Comparison, Wording, compare};
use keyblock::exchange::intake::proposal::{DesignIs, ProposedDesign, ProposedRow, RowDoubt};
use keyblock::exchange::intake::reading::Lexicon;
use keyblock::exchange::intake::reading::sizes::Assumed;
use keyblock::model::catalogue::Catalogue;
use keyblock::model::key::Key;
use keyblock::read::Inputs;
use keyblock::read::next_record::FreeDesignKeys;
use keyblock::study::Studies;

use crate::small::studied;

/// The folder of the demonstration.
pub fn demonstration() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("demo-site")
}

/// A row from the cells of a listing.
pub fn row(number: u32, lexicon: &Lexicon, cells: &[(Holds, &str)]) -> ProposedRow {
    let mut row = ProposedRow {
        row: number,
        ..ProposedRow::default()
    };
    let context = CellContext {
        assumed: Assumed::default(),
        lexicon,
    };
    for (holds, text) in cells {
        match holds {
            Holds::Accession => row.accession = (!text.is_empty()).then(|| (*text).to_owned()),
            Holds::Holder => row.facts.holder = Some(text.parse().unwrap()),
            _ => {
                row.facts.add(cell(*holds, text, context).facts.into_list());
                if *holds == Holds::Series {
                    row.facts.texts.add(Holds::Series, (*text).into());
                }
            }
        }
    }
    row
}

/// Rows of titles and sizes, with the accession numbers A 1, A 2 …
pub fn listing(lexicon: &Lexicon, rows: &[&[(Holds, &str)]]) -> Vec<ProposedRow> {
    let rows = rows.iter().zip(1..).map(|(cells, number)| {
        let accession = format!("A {number}");
        let mut all = vec![(Holds::Accession, accession.as_str())];
        all.extend_from_slice(cells);
        row(number, lexicon, &all)
    });
    rows.collect()
}

/// A file of one holder.
pub fn handing(holder: &str) -> HandingIn {
    HandingIn {
        holder: Some(holder.parse().unwrap()),
        ..HandingIn::default()
    }
}

/// Groups the rows and compares them with the census.
pub fn proposed(
    rows: &mut [ProposedRow],
    catalogue: &Catalogue,
    studies: &Studies,
    handing: &HandingIn,
    settled: &DesignSettings,
) -> Vec<ProposedDesign> {
    let mut designs = grouped(rows, catalogue, studies, handing, settled);
    let inputs = Inputs::of_bytes(&BTreeMap::new());
    keyed(&mut designs, &mut FreeDesignKeys::of(catalogue, &inputs));
    let with = Comparison {
        catalogue,
        studies,
        handing,
        settled: &SettledSheets::of(&settled.sheets),
        as_record: &|row, key| comparable(row, handing, key),
        as_compared: &|row, key| comparable(row, handing, key),
        corrections: &|_, _| Vec::new(),
        wording: Wording {
            in_full: &reason_in_full,
            public: &reason,
        },
    };
    compare(rows, &designs, &with);
    designs
}

/// Each design with its rows: "14: 1 2", "new: 3".
pub fn groups(designs: &[ProposedDesign], rows: &[ProposedRow]) -> Vec<String> {
    let told = designs.iter().map(|design| {
        let is = match &design.is {
            DesignIs::Recorded(key) => key.to_string(),
            DesignIs::OneOf(keys) => {
                let keys: Vec<&str> = keys.iter().map(Key::as_str).collect();
                keys.join("|")
            }
            DesignIs::New => "new".to_owned(),
        };
        let of: Vec<String> = design
            .rows
            .iter()
            .map(|at| rows[*at].row.to_string())
            .collect();
        format!("{is}: {}", of.join(" "))
    });
    told.collect()
}

/// What is doubtful about a row, in words.
pub fn doubts(row: &ProposedRow) -> Vec<&str> {
    let said = row.doubts.iter().filter_map(|doubt| match doubt {
        RowDoubt::Said(text) => Some(text.as_str()),
        _ => None,
    });
    said.collect()
}

/// Three designs, with earlier catalogues that count their states otherwise.
pub const HARBOUR: &str = r#"
-- records/literature.bib
@book{first-list, author = {Willem, Ada}, title = {First List: the Prints}, year = {1950}}
@book{second, author = {Orme, Pia}, title = {The Woodcuts}, year = {1969}}
-- records/holders/museum.toml
name = "Harbour Museum"
kind = "museum"
-- records/holders/gallery.toml
name = "Town Gallery"
kind = "museum"
-- records/holders/owner-a.toml
name = "Somebody"
kind = "private"
-- records/people/mill.toml
name = "Cora Mill"
sort = "Mill, Cora"
-- records/series/harbour-views.toml
title = "Harbour Views"
-- records/designs/12/design.toml
titles = [{ text = "The Lock", lang = "en" }, { text = "Die Schleuse", lang = "de", kind = "translated" }]
date = "1925"
literature = [{ cite = "first-list", number = "3" }, { cite = "second", number = "W 4" }]
states = [
  { key = "dark", literature = [{ cite = "first-list", number = "I" }] },
  { key = "lamps", literature = [{ cite = "first-list", number = "II", relation = "covers-ours" }] },
  { key = "moonlit", described = "2016", split_from = "lamps", literature = [{ cite = "first-list", number = "II", relation = "covers-ours" }, { cite = "second", number = "II" }] },
  { key = "cut-down", literature = [{ cite = "first-list", number = "III" }, { cite = "second", number = "IV" }] },
]
printings = [
  { key = "own", name = "Printed by the artist", kind = "artist", states = "all" },
  { key = "late", name = "The late edition", kind = "posthumous", states = ["cut-down"], edition = 50, literature = [{ cite = "second", number = "b", relation = "not-a-state" }] },
]
[size]
image = [166, 243]
-- records/designs/12/impressions/1.toml
holder = "museum"
accession = "1962.44"
status = "located"
former_accessions = [{ holder = "museum", number = "P 207" }]
-- records/designs/12/impressions/2.toml
holder = "museum"
accession = "1962.45"
part = "sheet 2"
status = "located"
-- records/designs/12/impressions/3.toml
holder = "owner-a"
status = "located"
numbering = "12/50"
identified = { printing = "late" }
private = ["numbering"]
-- records/designs/14/design.toml
titles = [{ text = "The Crossing" }]
literature = [{ cite = "first-list", number = "4" }]
[size]
image = [300, 200]
-- records/designs/15/design.toml
titles = [{ text = "The Crossing" }]
literature = [{ cite = "first-list", number = "4" }]
[size]
image = [150, 100]
"#;

/// That catalogue, read.
pub struct Ground {
    pub catalogue: Catalogue,
    pub studies: Studies,
    pub lexicon: Lexicon,
}

/// Reads it.
pub fn ground() -> Ground {
    let (catalogue, studies) = studied(&[HARBOUR]);
    let lexicon = Lexicon::of(&catalogue.vocabularies);
    Ground {
        catalogue,
        studies,
        lexicon,
    }
}

impl Ground {
    pub fn proposed(&self, rows: &mut [ProposedRow]) -> Vec<ProposedDesign> {
        self.settled(rows, &DesignSettings::default())
    }

    pub fn settled(
        &self,
        rows: &mut [ProposedRow],
        settled: &DesignSettings,
    ) -> Vec<ProposedDesign> {
        proposed(
            rows,
            &self.catalogue,
            &self.studies,
            &handing("museum"),
            settled,
        )
    }
}
