//! The words in which points, values, states and printings stand in the terminal.

use super::see_option::{NOT_APPLICABLE, NOT_VISIBLE, OTHER};
use crate::model::certainty::Certainty;
use crate::model::design::Design;
use crate::model::key::Key;
use crate::model::point::PointKind;
use crate::study::identify::Observed;
use crate::study::index::{CandidateAt, PointAt};
use crate::study::numerals::numerals;
use crate::study::scale::{Allowed, Answer, ValueSet};
use crate::study::table::{DiagnosticTable, PointColumn};

/// A design and its diagnostic table, for naming what stands in it.
#[derive(Clone, Copy)]
pub(super) struct Names<'a> {
    pub(super) design: &'a Design,
    pub(super) table: &'a DiagnosticTable,
}

impl Names<'_> {
    /// "iii/v buoy-gone"; "no state of this design" for a recut or a reproduction.
    pub(super) fn state(self, key: Option<&Key>) -> String {
        let Some(key) = key else {
            return "no state of this design".to_owned();
        };
        match numerals(self.design).get(key) {
            Some(numeral) => format!("{numeral} {key}"),
            None => key.to_string(),
        }
    }

    /// "Printed by the artist"; "no recorded printing".
    pub(super) fn printing(self, key: Option<&Key>) -> String {
        let Some(key) = key else {
            return "no recorded printing".to_owned();
        };
        let name = self.design.printing(key).and_then(|p| p.name.clone());
        name.unwrap_or_else(|| format!("printing {key}"))
    }

    /// "iii/v buoy-gone, Printed by the artist".
    pub(super) fn candidate(self, at: CandidateAt) -> String {
        let row = &self.table.candidates[at];
        match (&row.state, &row.printing) {
            (Some(state), Some(printing)) => format!(
                "{}, {}",
                self.state(Some(state)),
                self.printing(Some(printing))
            ),
            (Some(state), None) => self.state(Some(state)),
            (None, printing) => self.printing(printing.as_ref()),
        }
    }

    /// The question asked at a point.
    pub(super) fn question(self, point: PointAt) -> String {
        let key = &self.table.points[point].key;
        let point = self.design.point(key);
        point.map_or_else(|| key.to_string(), |p| p.ask.value.clone())
    }

    /// "present", "even or wiped (probable)".
    pub(super) fn seen(self, observed: &Observed) -> String {
        let column = &self.table.points[observed.point];
        let certainty = match observed.certainty {
            Certainty::Certain => String::new(),
            uncertain => format!(" ({uncertain})"),
        };
        let words = match &observed.answer {
            Answer::OneOf(values) => values_words(column, values),
            Answer::Number(number) => self.with_unit(column, *number),
            Answer::NotVisible => NOT_VISIBLE.to_owned(),
            Answer::NotApplicable => NOT_APPLICABLE.to_owned(),
        };
        format!("{words}{certainty}")
    }

    /// What a candidate allows at a point.
    pub(super) fn allowed(self, point: PointAt, allowed: &Allowed) -> String {
        let column = &self.table.points[point];
        match allowed {
            Allowed::AnyOf(values) => values_words(column, values),
            Allowed::Number(number) => self.with_unit(column, *number),
        }
    }

    fn with_unit(self, column: &PointColumn, number: f64) -> String {
        match self.design.point(&column.key).map(|p| &p.kind) {
            Some(PointKind::Measure { unit, .. }) => format!("{number} {unit}"),
            _ => number.to_string(),
        }
    }
}

fn values_words(column: &PointColumn, values: &ValueSet) -> String {
    let words: Vec<String> = values
        .iter()
        .map(|at| match column.scale.value(*at) {
            Some(value) => value.to_string(),
            None => format!("{OTHER} number"),
        })
        .collect();
    words.join(" or ")
}
