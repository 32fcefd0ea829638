//! The diagnostic table of a design: its candidates down, its points across, and in each cell the values
//! that the candidate allows at the point.
//!
//! A sheet is examined against this table (`identify`), the next point is chosen by it (`next_point`),
//! and it shows which candidates no point separates (`separate`). It holds only keys and numbers, so
//! that it can be used without the records it was made from.
//!
//! In: a design. Out: a [`DiagnosticTable`].
//! Method: the diagnostic tables of identification keys (Payne and Preece 1980, Journal of the Royal
//! Statistical Society A 143). Every candidate begins alike: how many sheets of each are known in museums says
//! little of what turns up next. Definitions: `docs/definitions.md, "Candidates"` and `"What a candidate allows"`.
//!
//! ```
//! # mod literal { include!(concat!(env!("CARGO_MANIFEST_DIR"), "/../../tests/doc/catalogue.rs")); }
//! # use literal::{catalogue, key};
//! # use keyblock::study::table::DiagnosticTable;
//! let catalogue = catalogue(r#"
//! -- records/designs/1/design.toml
//! titles = [{ text = "The Ferry" }]
//! points = [{ key = "moon", ask = "A moon?", kind = "presence", rests_on = "matrix" }]
//! states = [{ key = "dark", shows = { moon = "absent" } }, { key = "moonlit", shows = { moon = "present" } }]
//! printings = [{ key = "own", kind = "artist", states = "all" }]
//! "#);
//! let table = DiagnosticTable::of(&catalogue.designs[&key("1")]);
//! assert_eq!((table.candidates.len(), table.states.len(), table.printings.len()), (2, 2, 1));
//! ```

use super::assumptions::straying;
use super::candidates::{Candidate, candidates};
use super::scale::{Allowed, Scale};
use crate::index::{CandidateAt, ClassAt, Indexed, PointAt};
use keyblock_model::design::Design;
use keyblock_model::key::Key;
use keyblock_model::point::{EvidenceKind, Point, RestsOn, ShownPoints};

/// The candidates of a design, and what each allows at each point.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct DiagnosticTable {
    /// The candidates, by state and printing in the record's order.
    pub candidates: Indexed<CandidateAt, CandidateRow>,
    /// The states that candidates have, in the record's order; no state last.
    pub states: Vec<AxisRow>,
    /// The printings that candidates have, in the record's order; no printing last.
    pub printings: Vec<AxisRow>,
    /// The points, in the record's order.
    pub points: Indexed<PointAt, PointColumn>,
}

/// A state with a printing that contains it, by their keys.
#[derive(Clone, Debug, PartialEq)]
pub struct CandidateRow {
    /// The state; `None` for a recut, a reproduction, and a printing of a design without states.
    pub state: Option<Key>,
    /// The printing; `None` for a state that no printing contains.
    pub printing: Option<Key>,
}

/// A state or a printing, and the candidates that have it.
#[derive(Clone, Debug, PartialEq)]
pub struct AxisRow {
    /// The state or printing; `None`: no state, no printing.
    pub key: Option<Key>,
    /// The candidates, in the table's order; at least one.
    pub candidates: Vec<CandidateAt>,
    /// The points at which its own record shows something, in the table's order.
    pub shown: Vec<PointAt>,
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
    /// The kind of evidence it gives.
    pub evidence: EvidenceKind,
    /// Whether a certain observation there excludes.
    pub is_deciding: bool,
    /// The chance that a sheet departs from what is recorded for it there.
    pub straying: f64,
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
    pub fn of(design: &Design) -> DiagnosticTable {
        let found = candidates(design);
        let states = design.states.iter().map(|s| (&s.key.value, &s.shows));
        let printings = design.printings.iter().map(|p| (&p.key.value, &p.shows));
        DiagnosticTable {
            states: axis(design, &found, states, Candidate::state_key),
            printings: axis(design, &found, printings, Candidate::printing_key),
            points: design
                .points
                .iter()
                .map(|point| column(design, &found, point))
                .collect(),
            candidates: found
                .iter()
                .map(|candidate| CandidateRow {
                    state: candidate.state_key().cloned(),
                    printing: candidate.printing_key().cloned(),
                })
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
    pub(crate) fn candidate_at(
        &self,
        state: Option<&Key>,
        printing: Option<&Key>,
    ) -> Option<CandidateAt> {
        self.candidates
            .position(|c| c.state.as_ref() == state && c.printing.as_ref() == printing)
    }
}

/// The rows of an axis: the keys in the record's order that candidates have, then none.
fn axis<'a>(
    design: &'a Design,
    candidates: &[Candidate<'a>],
    records: impl Iterator<Item = (&'a Key, &'a ShownPoints)>,
    key_of: impl Fn(&Candidate<'a>) -> Option<&'a Key>,
) -> Vec<AxisRow> {
    let shown_by = |shows: &ShownPoints| -> Vec<PointAt> {
        let points = design.points.iter().enumerate();
        points
            .filter(|(_, point)| shows.at(&point.key.value).is_some())
            .map(|(at, _)| PointAt::new(at))
            .collect()
    };
    let recorded = records.map(|(key, shows)| (Some(key), shown_by(shows)));
    let rows = recorded
        .chain([(None, Vec::new())])
        .map(|(key, shown)| AxisRow {
            key: key.cloned(),
            candidates: (0..candidates.len())
                .filter(|at| key_of(&candidates[*at]) == key)
                .map(CandidateAt::new)
                .collect(),
            shown,
        });
    rows.filter(|row| !row.candidates.is_empty()).collect()
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
        evidence: point.evidence(),
        is_deciding: point.is_deciding(),
        straying: straying(point),
        matrix: point.matrix.as_ref().map(|m| m.value.clone()),
        classes,
        class_of,
    }
}
