//! The observations of a sheet, point by point, beside the values of its state and printing.

use serde::Serialize;

use crate::model::design::Design;
use crate::model::impression::{Identification, Impression, StateReading};
use crate::model::point::{Observation, ObservedValue, Point, Value};
use crate::page::phrases::claims;
use crate::page::phrases::readings;
use crate::page::phrases::values;
use crate::page::setting::address::Address;
use crate::page::setting::book::Here;
use crate::page::setting::html::CleanHtml;
use crate::page::setting::reading_order;
use crate::study::allowed::{both, is_against, shown_values};

/// The table.
#[derive(Serialize)]
pub(crate) struct ObservedTable {
    /// The head of the last column: "state *iii* shows"; `None` where the sheet is not identified with
    /// one state or printing, and there is no such column.
    expected: Option<CleanHtml>,
    rows: Vec<Row>,
    /// How many rows disagree.
    disagreeing: usize,
}

#[derive(Serialize)]
struct Row {
    href: String,
    ask: String,
    rests: String,
    seen: String,
    /// Its certainty where it is not certain, and its basis.
    remark: CleanHtml,
    expected: String,
    disagrees: bool,
}

/// The observation of one point on one sheet.
#[derive(Serialize)]
pub(crate) struct SheetObservation {
    sheet: CleanHtml,
    reading: CleanHtml,
    seen: String,
    remark: CleanHtml,
    /// The values that its state and printing show; empty where they record none.
    expected: String,
    /// Whether the observation contradicts them.
    pub disagrees: bool,
}

/// The observations of a point, by state, then printing, then key. Sheets without one are left out.
pub(crate) fn on_sheets(here: &Here<'_>, design: &Design, point: &Point) -> Vec<SheetObservation> {
    let mut sheets: Vec<&Impression> = design
        .impressions
        .values()
        .filter(|impression| !impression.standing.is_withdrawn())
        .collect();
    sheets.sort_by_cached_key(|impression| {
        (
            reading_order::rank(design, impression),
            impression.key.clone(),
        )
    });
    let seen = sheets.into_iter().filter_map(|impression| {
        let mut observed = impression.observed.iter();
        let observation = observed.find(|o| o.point.value == point.key.value)?;
        let row = row(
            here,
            design,
            point,
            observation,
            impression.identified.as_ref(),
        );
        Some(SheetObservation {
            sheet: here.impression_by(&impression.key),
            reading: readings::short(here, design, impression),
            seen: row.seen,
            remark: row.remark,
            expected: row.expected,
            disagrees: row.disagrees,
        })
    });
    seen.collect()
}

/// The table of a sheet; `None` where nothing was observed.
pub(crate) fn table(
    here: &Here<'_>,
    design: &Design,
    impression: &Impression,
) -> Option<ObservedTable> {
    if impression.observed.is_empty() {
        return None;
    }
    let reading = impression.identified.as_ref();
    let rows: Vec<Row> = impression
        .observed
        .iter()
        .filter_map(|observation| {
            let point = design.point(&observation.point.value)?;
            Some(row(here, design, point, observation, reading))
        })
        .collect();
    let has_expected = rows.iter().any(|row| !row.expected.is_empty());
    let disagreeing = rows.iter().filter(|row| row.disagrees).count();
    Some(ObservedTable {
        expected: reading
            .filter(|_| has_expected)
            .map(|reading| expected_by(here, design, reading)),
        rows,
        disagreeing,
    })
}

fn row(
    here: &Here<'_>,
    design: &Design,
    point: &Point,
    observation: &Observation,
    reading: Option<&Identification>,
) -> Row {
    let tells = matches!(
        observation.seen,
        ObservedValue::OneOf(_) | ObservedValue::NoneOf(_)
    );
    let expected = reading.and_then(|reading| expected(design, point, reading));
    let disagrees = tells
        && expected.as_ref().is_some_and(|allowed| {
            !allowed.is_empty() && is_against(point, &observation.seen, allowed)
        });
    let address = Address::Point(design.key.clone(), point.key.value.clone());
    Row {
        href: here.href(&address),
        ask: point.ask.value.clone(),
        rests: values::rests_on(here, design, point),
        seen: values::seen(here, point, &observation.seen),
        remark: if tells {
            claims::remark(here, &observation.claim)
        } else {
            claims::ground(here, &observation.claim)
        },
        expected: expected
            .map(|values| values::any_of(here, point, values))
            .unwrap_or_default(),
        disagrees,
    }
}

/// The values of a reading's state and printing at a point; `None` where the reading names several, or
/// neither records a value.
fn expected<'d>(
    design: &'d Design,
    point: &Point,
    reading: &Identification,
) -> Option<Vec<&'d Value>> {
    let state = match &reading.state {
        Some(StateReading::OneOf(states)) => match states.as_slice() {
            [one] => design.state(&one.value),
            _ => None,
        },
        // Blocks in different conditions: the state of the block that the point rests on.
        Some(StateReading::ByMatrix(by_matrix)) => by_matrix
            .iter()
            .find(|(matrix, _)| point.matrix.as_ref() == Some(matrix))
            .and_then(|(_, state)| design.state(&state.value)),
        None => None,
    };
    let printing = match reading.printing.as_slice() {
        [one] => design.printing(&one.value),
        _ => None,
    };
    both(
        state.and_then(|s| shown_values(&s.shows, point)),
        printing.and_then(|p| shown_values(&p.shows, point)),
    )
}

/// "*iii*. Printed by the artist".
fn expected_by(here: &Here<'_>, design: &Design, reading: &Identification) -> CleanHtml {
    CleanHtml::join(
        [
            &readings::state_alone(here, design, reading),
            &CleanHtml::text(&readings::printing_alone(here, design, reading)),
        ],
        ". ",
    )
}
