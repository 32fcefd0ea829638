//! The figures of the census as tables for other programs: comma-separated values (RFC 4180), UTF-8, one
//! figure a row.
//!
//! Columns: `design` (its key; empty for everything), `series`, `by` (`all`, `status`, `class`, `kind`,
//! `state`, `printing`, `country`, `city`, `holder`), `key`, `name` (as readers see it), `at_least`,
//! `at_most`, `exact`. What nobody recorded has neither key nor name.

use super::address::{Address, Overview};
use super::book::{Book, Here};
use crate::model::design::Design;
use crate::model::key::Key;
use crate::model::vocabulary::List as Vocabulary;
use crate::model::words::ClosedList as _;
use crate::study::census::{Census, Row, Sheets};

/// The file's name, in the folder of each census page.
const NAME: &str = "census.csv";

/// Path and content of every such table: one for each design, and one of everything.
pub(super) fn files(book: &Book<'_>) -> Vec<(String, Vec<u8>)> {
    let address = Address::Overview(Overview::Census);
    let here = Here {
        book,
        address: &address,
        root: "",
    };
    let mut everything = Table::new();
    everything.census(&here, None, "", &book.studies.census);
    for (name, census) in &book.studies.series {
        everything.census(&here, None, name, census);
    }
    let mut files = Vec::new();
    for design in here.designs_in_order() {
        let Some(study) = book.studies.designs.get(&design.key) else {
            continue;
        };
        everything.census(&here, Some(design), "", &study.census);
        let mut own = Table::new();
        own.census(&here, Some(design), "", &study.census);
        let page = Address::DesignCensus(design.key.clone());
        files.push((format!("{page}{NAME}"), own.bytes()));
    }
    files.push((format!("{address}{NAME}"), everything.bytes()));
    files
}

/// A table while it is written.
struct Table(csv::Writer<Vec<u8>>);

impl Table {
    fn new() -> Table {
        let mut table = Table(csv::Writer::from_writer(Vec::new()));
        table.row([
            "design", "series", "by", "key", "name", "at_least", "at_most", "exact",
        ]);
        table
    }

    /// Memory takes every row.
    fn row(&mut self, cells: [&str; 8]) {
        let _ = self.0.write_record(cells);
    }

    fn census(&mut self, here: &Here<'_>, design: Option<&Design>, series: &str, census: &Census) {
        let words = here.words();
        let of = Of { design, series };
        self.figure(&of, "all", ["", ""], census.sheets);
        let by = &census.by;
        self.rows(&of, "status", &by.status, |status| {
            (status.word().to_owned(), here.status(*status).to_owned())
        });
        self.rows(&of, "class", &by.class, |class| {
            let name = words.listed("class", *class);
            (class.word().to_owned(), name.to_owned())
        });
        self.rows(&of, "kind", &by.kind, |key| {
            (key.to_string(), here.term(Vocabulary::Kinds, key.as_str()))
        });
        if let Some(design) = design {
            self.rows(&of, "state", &by.state, |key| {
                (key.to_string(), here.state_of(&design.key, key).plain())
            });
            self.rows(&of, "printing", &by.printing, |key| {
                (key.to_string(), here.printing_name(design, key))
            });
        }
        self.rows(&of, "country", &by.country, |country| {
            (country.clone(), here.country(country).to_owned())
        });
        self.rows(&of, "city", &by.city, |city| (String::new(), city.clone()));
        self.rows(&of, "holder", &by.holder, |key: &Key| {
            (key.to_string(), here.holder(key).plain())
        });
    }

    fn rows<K>(
        &mut self,
        of: &Of<'_>,
        by: &str,
        rows: &[Row<K>],
        named: impl Fn(&K) -> (String, String),
    ) {
        for row in rows {
            let (key, name) = row.key.as_ref().map(&named).unwrap_or_default();
            self.figure(of, by, [&key, &name], row.sheets);
        }
    }

    fn figure(&mut self, of: &Of<'_>, by: &str, [key, name]: [&str; 2], sheets: Sheets) {
        let design = of.design.map_or("", |design| design.key.as_str());
        self.row([
            design,
            &harmless(of.series),
            by,
            &harmless(key),
            &harmless(name),
            &sheets.at_least.to_string(),
            &sheets.at_most.to_string(),
            if sheets.exact { "true" } else { "false" },
        ]);
    }

    fn bytes(self) -> Vec<u8> {
        self.0.into_inner().unwrap_or_default()
    }
}

/// What a census is of.
struct Of<'a> {
    design: Option<&'a Design>,
    series: &'a str,
}

/// A text that no spreadsheet takes for a formula: one that begins like a formula gets an apostrophe
/// before it (common practice, no source).
fn harmless(text: &str) -> String {
    if text.starts_with(['=', '+', '-', '@', '\t', '\r']) {
        format!("'{text}")
    } else {
        text.to_owned()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_name_is_never_a_formula() {
        assert_eq!(harmless("=HYPERLINK(\"x\")"), "'=HYPERLINK(\"x\")");
        assert_eq!(
            harmless("Harbour Museum - Annexe"),
            "Harbour Museum - Annexe"
        );
    }
}
