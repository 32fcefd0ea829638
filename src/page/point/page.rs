//! The page of a point: the question and its answers, what each state and printing shows there, the
//! details of every sheet, what was seen on each, and what the point tells apart.

use serde::Serialize;

use super::tones::{self, Tones};
use crate::model::design::Design;
use crate::model::point::{Point, PointKind, RestsOn, Value};
use crate::page::design::point_table::PointTable;
use crate::page::design::printings;
use crate::page::design::states;
use crate::page::lists::facts::Fact;
use crate::page::phrases::enumeration;
use crate::page::phrases::readings;
use crate::page::phrases::values;
use crate::page::plates::strips::{self, Detail, Sitter};
use crate::page::setting::address::{Address, Fragment};
use crate::page::setting::book::Here;
use crate::page::setting::html::{CleanHtml, as_sentences, capitalised};
use crate::page::setting::leaf::Leaf;
use crate::page::setting::number_size::number_class;
use crate::page::setting::reading_order;
use crate::page::setting::words::Given;
use crate::page::sheet::observed::{self, SeenOnSheet};
use crate::study::allowed::{is_told_apart, shown_values};

#[derive(Serialize)]
struct View {
    number: String,
    number_class: &'static str,
    design: CleanHtml,
    ask: String,
    brief: CleanHtml,
    facts: Vec<Fact>,
    state_table: Option<PointTable>,
    printing_table: Option<PointTable>,
    /// What it tells apart, a line for each state or printing.
    separates: Vec<CleanHtml>,
    groups: Vec<Group>,
    credits: Vec<CleanHtml>,
    /// The photographed sheets that are not in the strip, with the reasons.
    not_shown: Vec<CleanHtml>,
    seen: Vec<SeenOnSheet>,
    disagreeing: usize,
    tones: Option<Tones>,
}

/// The details of one state.
#[derive(Serialize)]
struct Group {
    heading: CleanHtml,
    /// What the row is, for those who come to it by keyboard.
    label: String,
    details: Vec<Detail>,
}

pub(crate) fn page(here: &Here<'_>, design: &Design, point: &Point) -> Leaf {
    let words = here.words();
    let sitters = strips::sitters(here, design, point);
    let row = Fragment::Point(&point.key.value).to_string();
    let seen = observed::on_sheets(here, design, point);
    let title = words.with(
        "title-point",
        &[
            ("number", Given::Text(&design.number)),
            ("point", Given::Text(&name(point))),
        ],
    );
    let view = View {
        number: design.number.clone(),
        number_class: number_class(&design.number),
        design: here.design(&design.key),
        ask: point.ask.value.clone(),
        brief: brief(here, design, point),
        facts: facts(here, design, point),
        state_table: states::table(here, design).and_then(|table| table.only(&row)),
        printing_table: printings::table(here, design).and_then(|table| table.only(&row)),
        separates: separates(here, design, point),
        groups: groups(here, design, point, &sitters),
        credits: strips::credits(here, &sitters),
        not_shown: if point.area.is_some() {
            strips::not_shown(here, design, Some(point))
        } else {
            Vec::new()
        },
        disagreeing: seen.iter().filter(|sheet| sheet.disagrees).count(),
        seen,
        tones: tones::table(here, design, point, &sitters),
    };
    let described = format!("{title}. {}", point.ask.value);
    let siglum = &here.public().settings.siglum.value;
    let cited = format!("{siglum} {}, {}", design.number, name(point));
    Leaf::new(here.address, title, "pages/point.html", &view)
        .described(described)
        .cited_as(cited)
}

/// Its key in words: "image height".
fn name(point: &Point) -> String {
    point.key.value.as_str().replace('-', " ")
}

/// "Present or absent. Rests on the dusk block."
fn brief(here: &Here<'_>, design: &Design, point: &Point) -> CleanHtml {
    let words = here.words();
    let kind = match &point.kind {
        PointKind::Measure { unit, tolerance } => words.with(
            "point-kind-measure",
            &[
                ("unit", Given::Text(unit)),
                ("tolerance", Given::Text(&tolerance.to_string())),
            ],
        ),
        kind => words.listed("point-kind", kind.word()).to_owned(),
    };
    let rests = values::rests_on(here, design, point);
    let rests = words.with("point-rests-on", &[("ground", Given::Text(&rests))]);
    as_sentences(&[CleanHtml::text(&kind), CleanHtml::text(&rests)])
}

/// The answers it takes, and what variants show there.
fn facts(here: &Here<'_>, design: &Design, point: &Point) -> Vec<Fact> {
    let words = here.words();
    let answers: Vec<CleanHtml> = match &point.kind {
        PointKind::Choice(choices) => choices
            .iter()
            .map(|choice| {
                let said = values::value(here, point, &Value::Word(choice.key.value.clone()));
                CleanHtml::text(&said)
            })
            .collect(),
        PointKind::Stage(stages) => stages
            .iter()
            .map(|stage| {
                CleanHtml::text(&values::value(
                    here,
                    point,
                    &Value::Word(stage.value.clone()),
                ))
            })
            .collect(),
        PointKind::Presence | PointKind::Count | PointKind::Measure { .. } => Vec::new(),
    };
    let variants: Vec<CleanHtml> = design
        .variants
        .iter()
        .filter_map(|variant| {
            let shown = shown_values(&variant.shows, point)?;
            let shown = values::any_of(here, point, shown);
            let key = variant.key.value.as_str().replace('-', " ");
            Some(CleanHtml::text(&format!("{key}: {shown}")))
        })
        .collect();
    [
        Fact::of_lines(words.word("point-answers"), answers),
        Fact::of_lines(words.word("variants"), variants),
    ]
    .into_iter()
    .flatten()
    .collect()
}

/// What a point tells apart: states where it rests on the matrix, else printings, for what is chosen
/// for each sheet may recur in any state. "*i* from *iii* and *iv*".
fn separates(here: &Here<'_>, design: &Design, point: &Point) -> Vec<CleanHtml> {
    let things: Vec<(CleanHtml, Option<Vec<&Value>>)> = if point.rests_on.value == RestsOn::Matrix {
        design
            .standing_states()
            .map(|state| {
                let shown = shown_values(&state.shows, point);
                (here.numeral(&design.key, &state.key.value), shown)
            })
            .collect()
    } else {
        design
            .standing_printings()
            .map(|printing| {
                let shown = shown_values(&printing.shows, point);
                let name = here.printing_name(design, &printing.key.value);
                (CleanHtml::text(&name), shown)
            })
            .collect()
    };
    let lines = things.iter().enumerate().filter_map(|(at, (one, shown))| {
        let shown = shown.as_ref()?;
        let others: Vec<CleanHtml> = things
            .iter()
            .skip(at + 1)
            .filter(|(_, other)| {
                let other = other.as_ref();
                other.is_some_and(|other| is_told_apart(point, shown, other))
            })
            .map(|(name, _)| name.clone())
            .collect();
        (!others.is_empty()).then(|| {
            let others = enumeration::together(here, &others);
            let pair = [("one", one), ("others", &others)];
            here.words().html("separates-from", None, &pair)
        })
    });
    lines.collect()
}

/// The details, state by state.
fn groups(here: &Here<'_>, design: &Design, point: &Point, sitters: &[Sitter<'_>]) -> Vec<Group> {
    let states = |sitter: &Sitter<'_>| reading_order::rank(design, sitter.impression).0;
    sitters
        .chunk_by(|one, other| states(one) == states(other))
        .filter_map(|group| {
            let reading = group.first()?.impression.identified.as_ref();
            let state = reading.map(|reading| readings::state_alone(here, design, reading));
            let heading = state.and_then(CleanHtml::some).map_or_else(
                || CleanHtml::text(here.words().word("not-identified")),
                |state| {
                    here.words()
                        .html("state-reading", None, &[("state", &state)])
                },
            );
            let label = here.words().with(
                "strip-of-state",
                &[("state", Given::Text(&heading.plain()))],
            );
            Some(Group {
                label,
                heading: capitalised(&heading),
                details: strips::details(here, design, point, group),
            })
        })
        .collect()
}

/// Where the page of a point stands.
pub(crate) fn address(design: &Design, point: &Point) -> Address {
    Address::Point(design.key.clone(), point.key.value.clone())
}
