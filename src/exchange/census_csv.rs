//! The figures of the census as a table (CSV), one figure a row.
//!
//! Columns: `design` (its key; empty for several), `series` (its key, or the name of one without a record), `by` (`all`, `status`, `class`, `kind`,
//! `state`, `printing`, `country`, `city`, `holder`; two properties together: `state-printing`,
//! `holder-state`; when sheets were met: `first-met`, `met-again` by decade, `undated-reports`),
//! `key`, `name` (as on pages), `at_least`, `at_most`, `exact`, `and_key`, `and_name` (of the second
//! property), `standing` (of the design; figures of several designs leave out rejected and withdrawn ones),
//! `uncertain` and `contradicted` (two properties together: how many of the sheets are identified as probable or possible
//! only, and of how many what was seen contradicts the identification; else empty). Key and name are empty in the row of sheets for which the property is not recorded.

use super::format::{Format, Sources};
use super::spreadsheet::Spreadsheet;
use crate::model::design::Design;
use crate::model::key::Key;
use crate::model::vocabulary::List as Vocabulary;
use crate::model::words::ClosedList as _;
use crate::page::{Address, Here, Overview, Subject, dates};
use crate::study::census::{Census, Row, Sheets};
use crate::study::firmness::NotFirm;
use crate::study::occasions::OccasionsByDecade;

/// One table of the whole catalogue, and one for each design, in the folders of their census pages.
pub(super) const FORMAT: Format = Format {
    name: "census-csv",
    file: "census.csv",
    folders: &["census/", "design/…/census/"],
    media_type: "text/csv",
    relation: "alternate",
    subjects,
    write,
};

fn subjects(sources: &Sources<'_>) -> Vec<Subject> {
    let designs = sources.public.designs.keys();
    let designs = designs.filter(|key| sources.studies.designs.contains_key(*key));
    designs
        .map(|key| Address::DesignCensus(key.clone()))
        .chain([Address::Overview(Overview::Census)])
        .map(Subject::Page)
        .collect()
}

fn write(here: &Here<'_>, subject: &Subject) -> Option<Vec<u8>> {
    let studies = here.book.studies;
    let mut table = CensusTable::new();
    let designs: Vec<&Design> = match subject {
        Subject::Page(Address::Overview(Overview::Census)) => {
            table.census(here, None, "", &studies.accepted);
            table.met(here, None, &studies.met);
            for (of, study) in studies.series.iter().filter(|(_, study)| study.known() > 0) {
                table.census(here, None, of.as_str(), &study.census);
            }
            here.designs_in_order().collect()
        }
        Subject::Page(Address::DesignCensus(key)) => vec![here.public().designs.get(key)?],
        _ => return None,
    };
    for design in designs {
        if let Some(study) = studies.designs.get(&design.key) {
            table.census(here, Some(design), "", &study.census);
            table.met(here, Some(design), &study.met);
        }
    }
    Some(table.0.bytes())
}

/// The cells of a row beside its figure.
#[derive(Default)]
struct RowLabels<'a> {
    design: Option<&'a Design>,
    series: &'a str,
    by: &'a str,
    named: Label,
    and: Label,
    not_firm: Option<NotFirm>,
}

/// A key and its name; both empty where the property is not recorded.
#[derive(Default)]
struct Label {
    key: String,
    name: String,
}

impl Label {
    fn new(key: &(impl ToString + ?Sized), name: impl Into<String>) -> Label {
        Label {
            key: key.to_string(),
            name: name.into(),
        }
    }
}

/// A table that is being written.
struct CensusTable(Spreadsheet<13>);

impl CensusTable {
    fn new() -> CensusTable {
        CensusTable(Spreadsheet::new([
            "design",
            "series",
            "by",
            "key",
            "name",
            "at_least",
            "at_most",
            "exact",
            "and_key",
            "and_name",
            "standing",
            "uncertain",
            "contradicted",
        ]))
    }

    fn census(&mut self, here: &Here<'_>, design: Option<&Design>, series: &str, census: &Census) {
        let words = here.words();
        let by = &census.by;
        let of = |by| RowLabels {
            design,
            series,
            by,
            ..RowLabels::default()
        };
        self.figure(&of("all"), census.sheets);
        self.rows(&of, "status", &by.status, |status| {
            Label::new(status.word(), here.status(*status))
        });
        self.rows(&of, "class", &by.class, |class| {
            Label::new(class.word(), words.listed("class", *class))
        });
        self.rows(&of, "kind", &by.kind, |key| {
            Label::new(key, here.term(Vocabulary::Kinds, key.as_str()))
        });
        let holder = |key: &Key| Label::new(key, here.holder(key).plain());
        if let Some(design) = design {
            let state = |key: &Key| Label::new(key, here.state_of(&design.key, key).plain());
            let printing = |key: &Key| Label::new(key, here.printing_name(design, key));
            self.rows(&of, "state", &by.state, state);
            self.rows(&of, "printing", &by.printing, printing);
            self.pairs(here, &of, "state-printing", &by.crossing, |both| {
                let known = (both.state.as_ref(), both.printing.as_ref());
                (known.0.map(state), known.1.map(printing))
            });
            self.pairs(here, &of, "holder-state", &by.holding, |both| {
                let known = (both.holder.as_ref(), both.state.as_ref());
                (known.0.map(holder), known.1.map(state))
            });
        }
        self.rows(&of, "country", &by.country, |country| {
            Label::new(country, here.country(country))
        });
        self.rows(&of, "city", &by.city, |city| Label::new("", city));
        self.rows(&of, "holder", &by.holder, holder);
    }

    fn rows<'a, K>(
        &mut self,
        of: &impl Fn(&'a str) -> RowLabels<'a>,
        by: &'a str,
        rows: &[Row<K>],
        named: impl Fn(&K) -> Label,
    ) {
        for row in rows {
            let named = row.key.as_ref().map(&named).unwrap_or_default();
            self.figure(&RowLabels { named, ..of(by) }, row.sheets);
        }
    }

    /// Rows of two properties together.
    fn pairs<'a, K>(
        &mut self,
        here: &Here<'_>,
        of: &impl Fn(&'a str) -> RowLabels<'a>,
        by: &'a str,
        rows: &[Row<K>],
        named: impl Fn(&K) -> (Option<Label>, Option<Label>),
    ) {
        let studies = &here.book.studies.designs;
        let study = of(by).design.and_then(|design| studies.get(&design.key));
        for row in rows {
            let (named, and) = row.key.as_ref().map(&named).unwrap_or_default();
            let of = RowLabels {
                named: named.unwrap_or_default(),
                and: and.unwrap_or_default(),
                not_firm: study.map(|study| study.firmness.among(&row.allowing)),
                ..of(by)
            };
            self.figure(&of, row.sheets);
        }
    }

    /// When sheets were met.
    fn met(&mut self, here: &Here<'_>, design: Option<&Design>, met: &OccasionsByDecade) {
        let mut row = |by, named, n| {
            let of = RowLabels {
                design,
                by,
                named,
                ..RowLabels::default()
            };
            let counted = Sheets {
                at_least: n,
                at_most: n,
                exact: true,
            };
            self.figure(&of, counted);
        };
        let years = |from: i64| Label::new(&from, dates::decade(here.words(), from));
        for decade in met.decades.iter().filter(|decade| decade.has_any()) {
            row("first-met", years(decade.from), decade.first.len());
            row("met-again", years(decade.from), decade.again.len());
        }
        if met.undated > 0 {
            row("undated-reports", Label::default(), met.undated);
        }
    }

    fn figure(&mut self, of: &RowLabels<'_>, sheets: Sheets) {
        let not_firm = |count: fn(NotFirm) -> usize| {
            let n = of.not_firm.map(count);
            n.map_or_else(String::new, |n| n.to_string())
        };
        self.0.row([
            of.design.map_or("", |design| design.key.as_str()),
            of.series,
            of.by,
            &of.named.key,
            &of.named.name,
            &sheets.at_least.to_string(),
            &sheets.at_most.to_string(),
            if sheets.exact { "true" } else { "false" },
            &of.and.key,
            &of.and.name,
            of.design.map_or("", |d| d.standing.standing.word()),
            &not_firm(|n| n.uncertain),
            &not_firm(|n| n.contradicted),
        ]);
    }
}
