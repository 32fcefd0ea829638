//! The page of a point: question and answers, the values of each state and printing, the details of
//! every sheet, the observations, and what the point separates.

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
use crate::page::plates::strips::{self, DetailSource, SheetDetail};
use crate::page::setting::address::Address;
use crate::page::setting::book::Here;
use crate::page::setting::html::{CleanHtml, as_sentences, capitalised};
use crate::page::setting::leaf::Leaf;
use crate::page::setting::number_size::number_class;
use crate::page::setting::reading_order;
use crate::page::setting::words::Argument;
use crate::page::sheet::observed::{self, SheetObservation};
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
    /// The states or printings that it separates, a line for each.
    separates: Vec<CleanHtml>,
    groups: Vec<Group>,
    credits: Vec<CleanHtml>,
    /// The photographed sheets that are not in the strip, with the reasons.
    not_shown: Vec<CleanHtml>,
    seen: Vec<SheetObservation>,
    disagreeing: usize,
    tones: Option<Tones>,
}

/// The details of one state.
#[derive(Serialize)]
struct Group {
    heading: CleanHtml,
    /// The name of the row, for screen readers and keyboards.
    label: String,
    details: Vec<SheetDetail>,
}

pub(crate) fn page(here: &Here<'_>, design: &Design, point: &Point) -> Leaf {
    let words = here.words();
    let sources = strips::detail_sources(here, design, point);
    let alone = std::slice::from_ref(point);
    let seen = observed::on_sheets(here, design, point);
    let title = words.with(
        "title-point",
        &[
            ("number", Argument::Text(&design.number)),
            ("point", Argument::Text(&name(point))),
        ],
    );
    let view = View {
        number: design.number.clone(),
        number_class: number_class(&design.number),
        design: here.design(&design.key),
        ask: point.ask.value.clone(),
        brief: brief(here, design, point),
        facts: facts(here, design, point),
        state_table: states::table(here, design, alone),
        printing_table: printings::table(here, design, alone),
        separates: separates(here, design, point),
        groups: groups(here, design, point, &sources),
        credits: strips::credits(here, &sources),
        not_shown: if point.area.is_some() {
            strips::not_shown(here, design, Some(point))
        } else {
            Vec::new()
        },
        disagreeing: seen.iter().filter(|sheet| sheet.disagrees).count(),
        seen,
        tones: tones::table(here, design, point, &sources),
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
                ("unit", Argument::Text(unit)),
                ("tolerance", Argument::Text(&tolerance.to_string())),
            ],
        ),
        kind => words.listed("point-kind", kind.word()).to_owned(),
    };
    let rests = values::rests_on(here, design, point);
    let rests = words.with("point-rests-on", &[("ground", Argument::Text(&rests))]);
    as_sentences(&[CleanHtml::text(&kind), CleanHtml::text(&rests)])
}

/// What follows from an answer, where the record says it: why it excludes, or how often sheets depart from what is
/// recorded.
fn bearing(here: &Here<'_>, point: &Point) -> CleanHtml {
    let words = here.words();
    if let Some(why) = &point.decides {
        let given = [("why", &CleanHtml::text(&why.value))];
        return words.html("point-decides", None, &given);
    }
    let Some(strays) = &point.strays else {
        return CleanHtml::empty();
    };
    let (departing, of) = of_sheets(strays.value);
    let given = [
        ("n", Argument::Text(&departing)),
        ("of", Argument::Text(&of)),
    ];
    CleanHtml::text(&words.with("point-strays", &given))
}

/// A rate as so many of a hundred, or of as many more as make it a whole number: 0.125 is 125 of 1000.
fn of_sheets(rate: f64) -> (String, String) {
    let mut of = 100_u32;
    let counted = |of: u32| rate * f64::from(of);
    while of < 1_000_000 && (counted(of) - counted(of).round()).abs() > 1e-6 {
        of *= 10;
    }
    (counted(of).round().to_string(), of.to_string())
}

/// The answers it takes, what follows from them, and the values of variants.
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
        Fact::one(words.word("point-bearing"), bearing(here, point)),
        Fact::of_lines(words.word("variants"), variants),
    ]
    .into_iter()
    .flatten()
    .collect()
}

/// The states that a point separates if it rests on the matrix, else the printings: a feature chosen for
/// each sheet may recur in any state. "*i* from *iii* and *iv*".
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
fn groups(
    here: &Here<'_>,
    design: &Design,
    point: &Point,
    sources: &[DetailSource<'_>],
) -> Vec<Group> {
    let states = |source: &DetailSource<'_>| reading_order::rank(design, source.impression).0;
    sources
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
                &[("state", Argument::Text(&heading.plain()))],
            );
            Some(Group {
                label,
                heading: capitalised(&heading),
                details: strips::placed_details(here, design, point, group),
            })
        })
        .collect()
}

/// The address of the page of a point.
pub(crate) fn address(design: &Design, point: &Point) -> Address {
    Address::Point(design.key.clone(), point.key.value.clone())
}
