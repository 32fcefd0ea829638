//! The page of a series: who published it and when, its designs in order and what is missing of them, its impressions, and
//! the impressions that are still together.

use std::collections::BTreeSet;

use serde::Serialize;

use crate::model::design::{Design, TitleKind};
use crate::model::document::EvidenceTarget;
use crate::model::key::{ImpressionKey, Key};
use crate::model::link::Target;
use crate::model::series::SeriesRecord;
use crate::model::series_place::SeriesRef;
use crate::page::lists::facts::Fact;
use crate::page::lists::list::List;
use crate::page::lists::mentions;
use crate::page::lists::series_members::{hung, missing};
use crate::page::lists::wall::Wall;
use crate::page::phrases::citations;
use crate::page::phrases::claims;
use crate::page::phrases::dates;
use crate::page::phrases::document_names::told_of;
use crate::page::phrases::series_names::published;
use crate::page::phrases::standing_note;
use crate::page::setting::address::{Address, Fragment, Overview};
use crate::page::setting::book::Here;
use crate::page::setting::html::{CleanHtml, capitalised};
use crate::page::setting::leaf::Leaf;
use crate::page::texts::markdown;
use crate::study::series::{SeriesMember, SeriesStudy};

#[derive(Serialize)]
struct View {
    kind: CleanHtml,
    title: CleanHtml,
    /// Its other titles.
    also: Vec<CleanHtml>,
    brief: CleanHtml,
    standing: Option<CleanHtml>,
    facts: Vec<Fact>,
    /// The remark of the record.
    remark: String,
    text: Option<CleanHtml>,
    /// Its designs, in its order.
    designs: Option<Wall>,
    /// What is missing of them; empty where nothing is known to be.
    missing: String,
    sheets: Option<SheetTable>,
    lists: Vec<List>,
}

/// The known impressions, design by design.
#[derive(Serialize)]
struct SheetTable {
    rows: Vec<SheetRow>,
    /// Whether printings that came out in the series are named.
    some_printings: bool,
    /// How the impressions are counted; empty where all of every design are.
    counted: String,
    /// Whether some of them declare an edition.
    some_declared: bool,
    /// Whether some design has a place.
    some_places: bool,
    /// All impressions.
    all: CleanHtml,
    /// "Located 30, untraced 4": where there are several statuses.
    statuses: CleanHtml,
}

#[derive(Serialize)]
struct SheetRow {
    place: String,
    design: CleanHtml,
    printings: CleanHtml,
    declared: CleanHtml,
    known: CleanHtml,
}

pub(crate) fn page(here: &Here<'_>, series: &SeriesRecord) -> Leaf {
    let words = here.words();
    let study = here
        .book
        .studies
        .series
        .get(&SeriesRef::Record(series.key.clone()));
    let kind = match &series.issued {
        Some(form) => words.listed("series-form", form.value),
        None => words.word("series-one"),
    };
    let title = here.series_title(series);
    let brief = published(here, series);
    let view = View {
        kind: here.link(&Address::Overview(Overview::Series), &CleanHtml::text(kind)),
        title: title.clone(),
        also: other_titles(here, series),
        brief: brief.clone(),
        standing: standing_note::note(here, &series.standing),
        facts: facts(here, series),
        remark: series.remark.clone().unwrap_or_default(),
        text: markdown::note(here, series.note.as_ref()),
        designs: study.and_then(|study| Wall::of(hung(here, study))),
        missing: study.map_or_else(String::new, |study| missing(here, study)),
        sheets: study.and_then(|study| sheets(here, series, study)),
        lists: lists(here, series, study),
    };
    let title = title.plain();
    let described = CleanHtml::join([&CleanHtml::text(&title), &brief], ". ").plain();
    let cited = citations::of_series(here, series).short;
    Leaf::new(here.address, title, "pages/one-series.html", &view)
        .described(described)
        .cited_as(cited)
}

/// The titles beside the one in use.
fn other_titles(here: &Here<'_>, series: &SeriesRecord) -> Vec<CleanHtml> {
    let in_use = series.title();
    let others = series.titles.iter();
    others
        .filter(|title| !in_use.is_some_and(|in_use| std::ptr::eq(in_use, *title)))
        .map(|title| {
            let name = claims::with_claim(here, here.title(title), &title.claim);
            match title.kind {
                TitleKind::Former => {
                    let given = [("title", &name)];
                    here.words().html("series-formerly", None, &given)
                }
                _ => name,
            }
        })
        .collect()
}

/// Publisher, date and number of designs, where something is to be said of them that the line below the title does not say:
/// a source, or another view.
fn facts(here: &Here<'_>, series: &SeriesRecord) -> Vec<Fact> {
    let words = here.words();
    let publisher = claims::stated(here, &series.publisher, |key| here.person_or_holder(key));
    let date = claims::stated(here, &series.date, |date| {
        dates::throughout_html(date, words)
    });
    let number = claims::stated(here, &series.number, |number| {
        CleanHtml::text(&number.to_string())
    });
    [
        Fact::stated(
            words.word("series-publisher"),
            publisher.filter(|s| !s.others.is_empty()),
        ),
        Fact::stated(
            words.word("date"),
            date.filter(|stated| !stated.others.is_empty() || has_claim(series)),
        ),
        Fact::stated(words.word("series-declared"), number),
    ]
    .into_iter()
    .flatten()
    .collect()
}

/// Whether the date has a source or is not certain.
fn has_claim(series: &SeriesRecord) -> bool {
    let own = series.date.0.first();
    own.is_some_and(|own| own.claim != crate::model::certainty::Claim::default())
}

/// The known impressions; `None` where none is known.
fn sheets(here: &Here<'_>, series: &SeriesRecord, study: &SeriesStudy) -> Option<SheetTable> {
    if study
        .members
        .iter()
        .all(|member| member.sheets.at_most == 0)
    {
        return None;
    }
    let words = here.words();
    let rows = study.members.iter().filter_map(|member| {
        let design = here.public().designs.get(&member.design)?;
        Some(row(here, design, member))
    });
    let rows: Vec<SheetRow> = rows.collect();
    let statuses = study.census.by.status.iter().filter_map(|row| {
        let status = CleanHtml::text(here.status(row.key?));
        Some(status.then(" ").and(&here.sheets(row.sheets)))
    });
    let statuses: Vec<CleanHtml> = statuses.collect();
    let all = here.sheets(study.census.sheets);
    let in_census = Fragment::Counted("series", Some(series.key.as_str()));
    Some(SheetTable {
        counted: counted(here, &rows),
        some_printings: rows.iter().any(|row| !row.printings.is_empty()),
        some_declared: rows.iter().any(|row| !row.declared.is_empty()),
        some_places: rows.iter().any(|row| !row.place.is_empty()),
        rows,
        all: if study.census.sheets.at_most == 0 {
            all
        } else {
            let page = Address::Overview(Overview::Census);
            CleanHtml::link(&here.href_part(&page, in_census), &all)
        },
        statuses: if statuses.len() > 1 {
            let all = CleanHtml::join(&statuses, ", ");
            words.html("series-by-status", None, &[("statuses", &all)])
        } else {
            CleanHtml::empty()
        },
    })
}

/// How the impressions are counted, where printings are named.
fn counted(here: &Here<'_>, rows: &[SheetRow]) -> String {
    let named = rows.iter().filter(|row| !row.printings.is_empty()).count();
    let id = match named {
        0 => return String::new(),
        all if all == rows.len() => "series-counted",
        _ => "series-counted-or-all",
    };
    here.words().word(id).to_owned()
}

fn row(here: &Here<'_>, design: &Design, member: &SeriesMember) -> SheetRow {
    let census = Address::DesignCensus(design.key.clone());
    let printings: Vec<_> = member
        .printings
        .iter()
        .filter_map(|key| design.printing(key))
        .collect();
    let names: Vec<CleanHtml> = printings
        .iter()
        .map(|printing| {
            let key = &printing.key.value;
            let to = here.href_part(
                &Address::Design(design.key.clone()),
                Fragment::Printing(key),
            );
            CleanHtml::link(&to, &CleanHtml::text(&here.printing_name(design, key)))
        })
        .collect();
    let declared: Vec<CleanHtml> = printings
        .iter()
        .filter_map(|printing| Some(CleanHtml::text(&printing.edition.own()?.to_string())))
        .collect();
    let known = here.sheets(member.sheets);
    let by_printing = match member.printings.as_slice() {
        [one] => Some(Fragment::Counted("printing", Some(one.as_str()))),
        _ => None,
    };
    SheetRow {
        place: member.position.clone().unwrap_or_default(),
        design: here.design(&design.key),
        printings: CleanHtml::join(&names, "; "),
        declared: CleanHtml::join(&declared, "; "),
        known: match by_printing {
            _ if member.sheets.at_most == 0 => known,
            Some(part) => CleanHtml::link(&here.href_part(&census, part), &known),
            None => here.link(&census, &known),
        },
    }
}

/// The impressions that are still together, what documents tell, and the texts that link to the series.
fn lists(here: &Here<'_>, series: &SeriesRecord, study: Option<&SeriesStudy>) -> Vec<List> {
    let words = here.words();
    let told = told_of(here, &EvidenceTarget::Series(series.key.clone()));
    [
        List::new(
            CleanHtml::text(words.word("series-sets")),
            study.map_or_else(Vec::new, |study| sets(here, study)),
        ),
        List::new(CleanHtml::text(words.word("documents")), told),
        mentions::list(here, &Target::Series(series.key.clone())),
    ]
    .into_iter()
    .filter(List::has_lines)
    .collect()
}

/// The sets whose impressions all belong to the series, a line each: "4.6, 7.13, 9.7: Complete. Kelder Museum".
fn sets(here: &Here<'_>, study: &SeriesStudy) -> Vec<CleanHtml> {
    let groups = &here.book.studies.groups;
    let of_series = study.sheets();
    let lines = here.book.studies.sets.iter().filter_map(|set| {
        let mut sheets: Vec<&ImpressionKey> = set.iter().collect();
        if !sheets
            .iter()
            .all(|key| of_series.contains(&groups.first_of(key)))
        {
            return None;
        }
        sheets.sort_by_key(|key| here.book.studies.order.impression_rank(key));
        let designs: BTreeSet<&Key> = sheets.iter().map(|key| &key.design).collect();
        let is_whole = designs.len() == study.known() && study.missing().is_none_or(|n| n == 0);
        let whole = if is_whole {
            here.words().word("series-set-whole")
        } else {
            ""
        };
        let holders = sheets.iter().map(|key| {
            let holder = here.public().impression(key)?.holder.as_ref()?;
            Some(&holder.value)
        });
        let holders: BTreeSet<Option<&Key>> = holders.collect();
        let holder = match holders.into_iter().collect::<Vec<_>>().as_slice() {
            [Some(one)] => here.holder_and_city(one),
            _ => CleanHtml::empty(),
        };
        let handles = here.handles(sheets.iter().copied());
        let said = CleanHtml::join([&CleanHtml::text(whole), &holder], ". ");
        Some(CleanHtml::join([&handles, &capitalised(&said)], ": "))
    });
    lines.collect()
}
