//! The page of a comparison: two to four impressions side by side, then what was seen on each, point
//! by point, the points at which they differ first and marked in words.

use serde::Serialize;

use super::address::{Address, Fragment};
use super::book::Here;
use super::design::number_class;
use super::figures;
use super::frame::Leaf;
use super::html::CleanHtml;
use super::pictures::{Plate, Setting};
use super::readings;
use super::values;
use crate::model::design::{Comparison, Design};
use crate::model::impression::Impression;
use crate::model::point::{Observation, Point, Seen, Value};
use crate::study::allowed::is_seen_to_differ;

#[derive(Serialize)]
struct View {
    /// The page is as wide as the screen.
    wall: bool,
    number: String,
    number_class: &'static str,
    design: CleanHtml,
    title: String,
    brief: CleanHtml,
    plates: Vec<Plate>,
    heads: Vec<CleanHtml>,
    verdict: String,
    facts: Vec<Row>,
    rows: Vec<Row>,
    /// Points that nobody looked at on any of the sheets.
    unseen: Vec<String>,
}

#[derive(Serialize)]
struct Row {
    href: String,
    ask: String,
    rests: String,
    cells: Vec<CleanHtml>,
    verdict: Verdict,
    word: String,
}

/// What a row says of the sheets.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "kebab-case")]
enum Verdict {
    /// Two of them cannot be alike there.
    Differ,
    /// It was not seen on all of them, or not for certain enough to say.
    CannotBeTold,
    /// All show the same.
    Agree,
}

impl Verdict {
    fn word_id(self) -> &'static str {
        match self {
            Verdict::Differ => "verdict-differ",
            Verdict::CannotBeTold => "verdict-cannot-be-told",
            Verdict::Agree => "verdict-agree",
        }
    }
}

pub(super) fn page(here: &Here<'_>, design: &Design, comparison: &Comparison) -> Leaf {
    let words = here.words();
    let sheets: Vec<&Impression> = comparison
        .of
        .iter()
        .filter_map(|key| here.public().impression(&key.value))
        .collect();
    let mut rows = Vec::new();
    let mut unseen = Vec::new();
    for point in &design.points {
        match row(here, design, &sheets, point) {
            Some(row) => rows.push(row),
            None => unseen.push(point.ask.value.clone()),
        }
    }
    // A stable sort: among rows of one verdict the record's order stays.
    rows.sort_by_key(|row| row.verdict);
    let differing = rows.iter().filter(|r| r.verdict == Verdict::Differ).count();
    let verdict = if rows.is_empty() {
        words.word("nothing-observed").to_owned()
    } else {
        words.with(
            "count-differ",
            &[
                ("n", super::words::Given::Count(differing)),
                ("all", super::words::Given::Count(rows.len())),
            ],
        )
    };
    let view = View {
        wall: true,
        number: design.number.clone(),
        number_class: number_class(&design.number),
        design: here.design(&design.key),
        title: words.count("impressions-compared", sheets.len()),
        brief: CleanHtml::text(comparison.why.as_deref().unwrap_or_default()),
        plates: sheets.iter().map(|i| plate(here, design, i)).collect(),
        heads: sheets.iter().map(|i| here.impression(&i.key)).collect(),
        verdict,
        facts: facts(here, design, &sheets),
        rows,
        unseen,
    };
    let keys: Vec<String> = sheets.iter().map(|i| i.key.to_string()).collect();
    let keys = keys.join(", ");
    let title = words.with(
        "title-compared",
        &[("keys", super::words::Given::Text(&keys))],
    );
    let siglum = &here.public().settings.siglum.value;
    let described = match &comparison.why {
        Some(why) => format!("{title}. {why}"),
        None => title.clone(),
    };
    Leaf::new(here.address, title, "pages/comparison.html", &view)
        .described(described)
        .cited_as(format!("{siglum} {keys}"))
}

/// The plate of a sheet; where none may be shown, its caption alone.
fn plate(here: &Here<'_>, design: &Design, impression: &Impression) -> Plate {
    figures::leading_picture(here, impression)
        .and_then(|key| figures::plate(here, &key, None, Setting::Abreast))
        .unwrap_or_else(|| Plate {
            image: None,
            href: None,
            caption: figures::caption_of_sheet(here, design, impression),
            credit: None,
        })
}

/// State and printing, sheet by sheet; what the sheets are taken to be stands above what was seen.
fn facts(here: &Here<'_>, design: &Design, sheets: &[&Impression]) -> Vec<Row> {
    let words = here.words();
    let mut rows = Vec::new();
    let mut tell = |id: &str, cells: Vec<CleanHtml>| {
        if cells.iter().all(CleanHtml::is_empty) {
            return;
        }
        let has_gap = cells.iter().any(CleanHtml::is_empty);
        let is_alike = cells.windows(2).all(|pair| pair.first() == pair.last());
        let verdict = match (has_gap, is_alike) {
            (true, _) => Verdict::CannotBeTold,
            (false, true) => Verdict::Agree,
            (false, false) => Verdict::Differ,
        };
        rows.push(Row {
            href: String::new(),
            ask: words.word(id).to_owned(),
            rests: String::new(),
            cells,
            verdict,
            word: words.word(verdict.word_id()).to_owned(),
        });
    };
    let of_reading = |say: &dyn Fn(&crate::model::impression::Identification) -> CleanHtml| {
        sheets
            .iter()
            .map(|i| i.identified.as_ref().map_or_else(CleanHtml::empty, say))
            .collect::<Vec<_>>()
    };
    tell(
        "state",
        of_reading(&|r| readings::state_alone(here, design, r)),
    );
    tell(
        "printing",
        of_reading(&|r| CleanHtml::text(&readings::printing_alone(here, design, r))),
    );
    rows
}

/// A row for a point; `None` where nothing was recorded there on any sheet.
fn row(here: &Here<'_>, design: &Design, sheets: &[&Impression], point: &Point) -> Option<Row> {
    let seen: Vec<Option<&Observation>> = sheets
        .iter()
        .map(|i| i.observed.iter().find(|o| o.point.value == point.key.value))
        .collect();
    if seen.iter().all(Option::is_none) {
        return None;
    }
    let verdict = verdict(point, &seen);
    let address = Address::Design(design.key.clone());
    Some(Row {
        href: here.href_part(&address, Fragment::Point(&point.key.value)),
        ask: point.ask.value.clone(),
        rests: values::rests_on(here, design, point),
        cells: seen
            .iter()
            .map(|o| match o {
                Some(o) => {
                    let text = CleanHtml::text(&values::seen(here, point, &o.seen));
                    super::claims::doubted(here, text, &o.claim)
                }
                None => {
                    CleanHtml::span("quiet", &CleanHtml::text(here.words().word("not-recorded")))
                }
            })
            .collect(),
        verdict,
        word: here.words().word(verdict.word_id()).to_owned(),
    })
}

/// Whether the sheets differ at a point. What could not be seen tells nothing.
fn verdict(point: &Point, seen: &[Option<&Observation>]) -> Verdict {
    let told: Vec<Option<Vec<&Value>>> = seen
        .iter()
        .map(|observation| match observation.map(|o| &o.seen) {
            Some(Seen::OneOf(values)) => Some(values.iter().map(|v| &v.value).collect()),
            _ => None,
        })
        .collect();
    let known: Vec<&Vec<&Value>> = told.iter().flatten().collect();
    let differ = known.iter().enumerate().any(|(at, a)| {
        known
            .iter()
            .skip(at + 1)
            .any(|b| is_seen_to_differ(point, a, b))
    });
    if differ {
        Verdict::Differ
    } else if known.len() == seen.len() && known.iter().all(|values| values.len() == 1) {
        Verdict::Agree
    } else {
        Verdict::CannotBeTold
    }
}
