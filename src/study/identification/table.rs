//! The diagnostic table of a design: its candidates down, its points across, and in each cell the values
//! that the candidate allows at the point.
//!
//! A sheet is examined against this table (`identify`), the next point is chosen by it (`next_point`),
//! and it shows which candidates no point separates (`separate`). It holds only keys and numbers, so
//! that it can be used without the records it was made from.
//!
//! In: a design, and the sheets of the census. Out: a [`DiagnosticTable`].
//! Method: the diagnostic tables of identification keys (Payne and Preece 1980, Journal of the Royal
//! Statistical Society A 143), with a prior from the census: one more than the number of known sheets that
//! are identified as exactly the candidate. Definitions: `docs/definitions.md, "Candidates"` and
//! `"What a candidate allows"`.
//!
//! ```
//! # mod literal { include!(concat!(env!("CARGO_MANIFEST_DIR"), "/tests/doc/catalogue.rs")); }
//! # use literal::{catalogue, key};
//! # use keyblock::study::{census::Groups, table::DiagnosticTable};
//! let catalogue = catalogue(r#"
//! -- records/designs/1/design.toml
//! titles = [{ text = "The Ferry" }]
//! points = [{ key = "moon", ask = "A moon?", kind = "presence", rests_on = "matrix" }]
//! states = [{ key = "dark", shows = { moon = "absent" } }, { key = "moonlit", shows = { moon = "present" } }]
//! -- records/designs/1/impressions/1.toml
//! status = "located"
//! identified = { state = "moonlit" }
//! "#);
//! let design = &catalogue.designs[&key("1")];
//! let table = DiagnosticTable::of(&Groups::of(&catalogue), design);
//! let priors: Vec<f64> = table.candidates.iter().map(|row| row.prior).collect();
//! assert_eq!(priors, [1.0, 2.0]);
//! ```

use std::collections::BTreeMap;

use super::candidates::{Candidate, candidates};
use super::scale::{Allowed, Scale};
use crate::model::certainty::Certainty;
use crate::model::design::Design;
use crate::model::impression::{Identification, StateReading};
use crate::model::key::{ImpressionKey, Key};
use crate::model::point::{Point, RestsOn};
use crate::study::census::{Groups, is_counted, is_counted_only};
use crate::study::index::{CandidateAt, ClassAt, Indexed, PointAt};

/// The candidates of a design, and what each allows at each point.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct DiagnosticTable {
    /// The candidates, by state and printing in the record's order.
    pub candidates: Indexed<CandidateAt, CandidateRow>,
    /// The points, in the record's order.
    pub points: Indexed<PointAt, PointColumn>,
}

/// A state with a printing that contains it, by their keys.
#[derive(Clone, Debug, PartialEq)]
pub struct CandidateRow {
    /// The state.
    pub state: Key,
    /// The printing; `None` for a state that no printing names.
    pub printing: Option<Key>,
    /// One more than the number of known sheets that are identified as exactly this.
    pub prior: f64,
}

/// A point, and what the candidates allow at it.
#[derive(Clone, Debug, PartialEq)]
pub struct PointColumn {
    /// The point.
    pub key: Key,
    /// The values it can take.
    pub scale: Scale,
    /// The thing it rests on. Only a point on the matrix separates two states of one printing.
    pub rests_on: RestsOn,
    /// The matrix, where it is recorded.
    pub matrix: Option<Key>,
    /// The different sets of values that candidates allow here; `None`: not known.
    pub classes: Indexed<ClassAt, Option<Allowed>>,
    /// The class of each candidate.
    pub class_of: Indexed<CandidateAt, ClassAt>,
}

impl PointColumn {
    /// The values that a candidate allows; `None` where they are not known.
    #[must_use]
    pub fn allows(&self, candidate: CandidateAt) -> Option<&Allowed> {
        self.classes[self.class_of[candidate]].as_ref()
    }

    /// The number that a candidate shows at a measure; `None` where it is not known.
    #[must_use]
    pub(super) fn number(&self, candidate: CandidateAt) -> Option<f64> {
        match self.allows(candidate) {
            Some(Allowed::Number(number)) => Some(*number),
            Some(Allowed::AnyOf(_)) | None => None,
        }
    }

    /// Whether the point tells two candidates apart by what they allow, whatever it rests on.
    #[must_use]
    pub(super) fn classes_apart(&self, one: ClassAt, other: ClassAt) -> bool {
        match (&self.classes[one], &self.classes[other]) {
            (Some(one), Some(other)) => self.scale.tells_apart(one, other),
            _ => false,
        }
    }
}

impl DiagnosticTable {
    /// The table of a design.
    #[must_use]
    pub fn of(groups: &Groups, design: &Design) -> DiagnosticTable {
        let found = candidates(design);
        let sheets = sheets_settled(groups, design);
        let rows = found.iter().map(|candidate| {
            let state = candidate.state.key.value.clone();
            let printing = candidate.printing.map(|p| p.key.value.clone());
            let settled = sheets.get(&(state.clone(), printing.clone()));
            CandidateRow {
                state,
                printing,
                prior: 1.0 + settled.copied().unwrap_or(0.0),
            }
        });
        DiagnosticTable {
            candidates: rows.collect(),
            points: design
                .points
                .iter()
                .map(|point| column(design, &found, point))
                .collect(),
        }
    }

    /// The column of a point.
    #[must_use]
    pub fn point(&self, key: &Key) -> Option<&PointColumn> {
        self.points.iter().find(|p| p.key == *key)
    }

    /// The index of a point.
    #[must_use]
    pub(crate) fn point_at(&self, key: &Key) -> Option<PointAt> {
        self.points.position(|p| p.key == *key)
    }

    /// The index of a candidate.
    #[must_use]
    pub(crate) fn candidate_at(&self, state: &Key, printing: Option<&Key>) -> Option<CandidateAt> {
        self.candidates
            .position(|c| c.state == *state && c.printing.as_ref() == printing)
    }
}

fn column(design: &Design, candidates: &[Candidate<'_>], point: &Point) -> PointColumn {
    let scale = Scale::of(design, point);
    let mut classes: Indexed<ClassAt, Option<Allowed>> = Indexed::default();
    let class_of = candidates.iter().map(|candidate| {
        let allowed = candidate
            .allows(point)
            .and_then(|values| scale.allowed(&values));
        let known = classes.position(|class| *class == allowed);
        known.unwrap_or_else(|| classes.push(allowed))
    });
    let class_of = class_of.collect();
    PointColumn {
        key: point.key.value.clone(),
        scale,
        rests_on: point.rests_on.value,
        matrix: point.matrix.as_ref().map(|m| m.value.clone()),
        classes,
        class_of,
    }
}

/// How many sheets are identified as exactly one state and printing: every record of the sheet
/// says so, for certain or probably.
fn sheets_settled(groups: &Groups, design: &Design) -> BTreeMap<(Key, Option<Key>), f64> {
    let mut sheets: BTreeMap<ImpressionKey, Vec<Option<&Identification>>> = BTreeMap::new();
    for impression in design.impressions.values() {
        if is_counted(design, impression) {
            let records = sheets.entry(groups.first_of(&impression.key)).or_default();
            records.push(impression.identified.as_ref());
        }
    }
    for sheet in &design.counted_only {
        if is_counted_only(design, sheet) {
            sheets.insert(sheet.key.clone(), vec![sheet.identified.as_ref()]);
        }
    }
    let mut settled = BTreeMap::new();
    for records in sheets.into_values() {
        let mut readings = records
            .iter()
            .map(|identified| identified.and_then(exactly_one));
        let first = readings.next().flatten();
        if let Some(as_what) = first
            && readings.all(|other| other.as_ref() == Some(&as_what))
        {
            *settled.entry(as_what).or_insert(0.0) += 1.0;
        }
    }
    settled
}

/// The one state and printing that an identification names for certain or probably; no printing
/// recorded is `None`.
fn exactly_one(identified: &Identification) -> Option<(Key, Option<Key>)> {
    if !identified.or.is_empty() || identified.claim.certainty() == Certainty::Possible {
        return None;
    }
    let Some(StateReading::OneOf(states)) = &identified.state else {
        return None;
    };
    let [state] = states.as_slice() else {
        return None;
    };
    let printing = match identified.printing.as_slice() {
        [] => None,
        [one] => Some(one.value.clone()),
        _ => return None,
    };
    Some((state.value.clone(), printing))
}
