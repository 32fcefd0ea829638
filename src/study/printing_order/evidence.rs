//! What places one sheet in the order of printing: the wear seen on it, its state, its dates.
//!
//! In: the records of a design. Out: the [`Evidence`] of each record, in the numbers of a [`Ground`], which compares two
//! of them.

use std::collections::{BTreeMap, BTreeSet};

use super::reason::{DatedBy, Reason, WearStep};
use super::unchanged::{Unchanged, ancestors, index_of, matrix_of, standing};
use crate::census::editions::only_printing;
use crate::census::{is_counted, readings};
use crate::identification::agree::contradiction;
use crate::identification::candidates::candidates;
use crate::identification::identify::is_printed;
use crate::index::ValueAt;
use keyblock_model::certainty::{Certainty, Statements};
use keyblock_model::design::Design;
use keyblock_model::edtf::{Date, Day};
use keyblock_model::impression::{Identification, Impression, StateReading};
use keyblock_model::key::Key;
use keyblock_model::point::{ObservedValue, Point, PointKind, RestsOn};

/// What the records of one design share: its points of wear, its states, the dates met.
pub(super) struct Ground<'a> {
    design: &'a Design,
    worn: Vec<WornPoint<'a>>,
    ancestors: BTreeMap<usize, BTreeSet<usize>>,
}

/// A point of wear.
struct WornPoint<'a> {
    point: &'a Point,
    matrix: Option<Key>,
    unchanged: Unchanged,
}

/// What places a record. Records with the same evidence stand at one place.
#[derive(Clone, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub(super) struct Evidence {
    /// What was seen at each point of wear, in the order of the ground.
    pub wear: Vec<Option<StageSeen>>,
    /// The one state that it is identified with for certain, by its index in the record.
    pub state: Option<usize>,
    /// Its own date.
    pub own_date: Option<DaysOf>,
    /// The date of the one printing that it is identified with for certain.
    pub printing: Option<DaysOf>,
}

/// A stage of wear, seen for certain.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) struct StageSeen {
    pub stage: ValueAt,
    /// Every state that the sheet can be in as to the matrix, by index in the record, rising.
    pub states: Vec<usize>,
}

/// A date that is neither loose nor open, as the days it covers.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) struct DaysOf {
    first: Day,
    last: Day,
    /// As recorded.
    text: String,
    /// The printing whose date it is.
    printing: Option<Key>,
}

impl DaysOf {
    /// The first of the statements, where it is certain and its date is neither loose nor open.
    fn own(dates: &Statements<Date>, printing: Option<&Key>) -> Option<DaysOf> {
        let own = dates.0.first()?;
        let date = &own.is.value;
        if own.claim.certainty() != Certainty::Certain || date.is_loose() {
            return None;
        }
        Some(DaysOf {
            first: date.earliest().day()?,
            last: date.latest().day()?,
            text: date.as_str().to_owned(),
            printing: printing.cloned(),
        })
    }

    /// The date, as recorded.
    pub fn dated(&self) -> Option<DatedBy> {
        Some(DatedBy {
            printing: self.printing.clone(),
            date: Date::parse(&self.text).ok()?,
        })
    }
}

impl Evidence {
    /// Whether nothing places the record.
    pub fn is_empty(&self) -> bool {
        self.state.is_none()
            && self.own_date.is_none()
            && self.printing.is_none()
            && self.wear.iter().all(Option::is_none)
    }
}

/// Why a record has no place in the order, or its evidence.
pub(super) enum Placing {
    /// It is withdrawn, or may be a recut or a reproduction.
    Outside,
    /// What was seen contradicts its identification.
    Contradicted,
    /// It has this evidence.
    By(Evidence),
}

impl<'a> Ground<'a> {
    pub fn of(design: &'a Design) -> Ground<'a> {
        let is_worn = |point: &&Point| {
            matches!(point.kind, PointKind::Stage(_)) && point.rests_on.value == RestsOn::Matrix
        };
        let worn = design.points.iter().filter(is_worn).map(|point| {
            let matrix = matrix_of(design, point);
            WornPoint {
                unchanged: Unchanged::of(design, matrix.as_ref()),
                matrix,
                point,
            }
        });
        Ground {
            worn: worn.collect(),
            ancestors: ancestors(design),
            design,
        }
    }

    /// The points of wear, in the record's order.
    pub fn points(&self) -> impl Iterator<Item = &Key> {
        self.worn.iter().map(|worn| &worn.point.key.value)
    }

    /// The key of a state.
    pub fn state_key(&self, at: usize) -> Option<&Key> {
        self.design.states.get(at).map(|state| &state.key.value)
    }

    /// What places a record.
    pub fn placing(&self, impression: &Impression) -> Placing {
        let design = self.design;
        if !is_counted(design, impression) || may_be_of_other_matrices(design, impression) {
            return Placing::Outside;
        }
        // Where its state is in doubt, a sheet does not show when a stage was reached.
        if contradiction(design, impression).is_some() {
            return Placing::Contradicted;
        }
        let wear = self.worn.iter().map(|worn| {
            Some(StageSeen {
                stage: stage(impression, worn.point)?,
                states: possible_states(design, impression, worn.matrix.as_ref())?,
            })
        });
        let own_date = DaysOf::own(&impression.sheet.date, None);
        // A sheet's own date within that of its printing gives every step that the printing gives.
        let lies_in = |own: &DaysOf, printing: &DaysOf| {
            printing.first <= own.first && own.last <= printing.last
        };
        let printing = printing_date(design, impression)
            .filter(|printing| !own_date.as_ref().is_some_and(|own| lies_in(own, printing)));
        Placing::By(Evidence {
            wear: wear.collect(),
            state: only_state(design, impression),
            own_date,
            printing,
        })
    }

    /// Whether the sheet of the one record was printed before that of the other.
    pub fn is_before(&self, one: &Evidence, other: &Evidence) -> bool {
        let mut points = 0..self.worn.len();
        points.any(|at| self.is_less_worn(at, one, other))
            || self.is_of_earlier_state(one, other)
            || ended_before(one, other).is_some()
    }

    /// Why the sheet of the one record was printed before that of the other; empty where nothing says so.
    pub fn reasons(&self, one: &Evidence, other: &Evidence) -> Vec<Reason> {
        let wear = self.wear_steps(one, other).map(Reason::Wear);
        let key = |state: Option<usize>| self.state_key(state?).cloned();
        let states = self
            .is_of_earlier_state(one, other)
            .then(|| Some((key(one.state)?, key(other.state)?)))
            .flatten();
        let dates = ended_before(one, other).and_then(|(before, after)| {
            Some(Reason::Dates {
                before: Box::new(before.dated()?),
                after: Box::new(after.dated()?),
            })
        });
        wear.chain(states.map(|(before, after)| Reason::States { before, after }))
            .chain(dates)
            .collect()
    }

    /// The points at which the one record shows a lower stage than the other.
    pub fn wear_steps(&self, one: &Evidence, other: &Evidence) -> impl Iterator<Item = WearStep> {
        let steps: Vec<WearStep> = (0..self.worn.len())
            .filter(|at| self.is_less_worn(*at, one, other))
            .filter_map(|at| {
                let worn = self.worn.get(at)?;
                let seen = |evidence: &Evidence| Some(evidence.wear.get(at)?.as_ref()?.stage);
                Some(WearStep {
                    matrix: worn.matrix.clone(),
                    point: worn.point.key.value.clone(),
                    before: seen(one)?,
                    after: seen(other)?,
                })
            })
            .collect();
        steps.into_iter()
    }

    /// Whether the one record shows a lower stage at a point of wear.
    pub fn is_less_worn(&self, at: usize, one: &Evidence, other: &Evidence) -> bool {
        let seen = |evidence: &'_ Evidence| evidence.wear.get(at).cloned().flatten();
        match (self.worn.get(at), seen(one), seen(other)) {
            (Some(worn), Some(one), Some(other)) => {
                one.stage < other.stage && worn.unchanged.between(&one.states, &other.states)
            }
            _ => false,
        }
    }

    /// Whether the state of the one record comes before that of the other.
    pub fn is_of_earlier_state(&self, one: &Evidence, other: &Evidence) -> bool {
        let (Some(one), Some(other)) = (one.state, other.state) else {
            return false;
        };
        let before = self.ancestors.get(&other);
        before.is_some_and(|before| before.contains(&one))
    }
}

/// The dates of which one ended before the other began; a sheet's own date is taken before that of its printing.
pub(super) fn ended_before<'e>(
    one: &'e Evidence,
    other: &'e Evidence,
) -> Option<(&'e DaysOf, &'e DaysOf)> {
    let dates = |evidence: &'e Evidence| {
        [&evidence.own_date, &evidence.printing]
            .into_iter()
            .flatten()
    };
    let mut pairs = dates(one).flat_map(|a| dates(other).map(move |b| (a, b)));
    pairs.find(|(a, b)| a.last < b.first)
}

/// Whether some reading of a sheet's identification names a recut or a reproduction.
fn may_be_of_other_matrices(design: &Design, impression: &Impression) -> bool {
    let mut named = impression
        .identified
        .iter()
        .flat_map(readings)
        .flat_map(|reading| &reading.printing);
    named.any(|key| design.printing(&key.value).is_some_and(|p| !p.is_counted()))
}

/// Whether every reading of an identification is certain.
fn is_certain(identified: &Identification) -> bool {
    readings(identified).all(|reading| reading.claim.certainty() == Certainty::Certain)
}

/// The one stage that was seen for certain.
fn stage(impression: &Impression, point: &Point) -> Option<ValueAt> {
    let PointKind::Stage(stages) = &point.kind else {
        return None;
    };
    if !is_printed(impression, point) {
        return None;
    }
    let mut observed = impression.observed.iter();
    let observation = observed.find(|o| o.point.value == point.key.value)?;
    let ObservedValue::OneOf(values) = &observation.seen else {
        return None;
    };
    let [one] = values.as_slice() else {
        return None;
    };
    if observation.claim.certainty() != Certainty::Certain {
        return None;
    }
    let seen = one.value.to_string();
    let at = stages.iter().position(|s| s.value.as_str() == seen);
    at.map(ValueAt::new)
}

/// The states that a sheet can be in as to one matrix, rising: those that its identification allows, else all. A
/// sheet of a design without states has none. `None` where a state is named that is withdrawn, or none is possible.
fn possible_states(
    design: &Design,
    impression: &Impression,
    matrix: Option<&Key>,
) -> Option<Vec<usize>> {
    let all: Vec<usize> = standing(design).map(|(at, _)| at).collect();
    let Some(identified) = &impression.identified else {
        return Some(all);
    };
    let mut states = BTreeSet::new();
    for reading in readings(identified) {
        let named: Vec<&Key> = match &reading.state {
            Some(StateReading::ByMatrix(by_matrix)) => by_matrix
                .iter()
                .filter(|(m, _)| matrix.is_none_or(|matrix| m.value == *matrix))
                .map(|(_, state)| &state.value)
                .collect(),
            Some(StateReading::OneOf(named)) => named.iter().map(|s| &s.value).collect(),
            None => Vec::new(),
        };
        if named.is_empty() {
            let fitting = candidates(design).into_iter().filter(|c| c.fits(reading));
            let keys = fitting.filter_map(|candidate| candidate.state_key());
            states.extend(keys.filter_map(|key| index_of(design, key)));
        } else {
            let named = named.into_iter().map(|key| index_of(design, key));
            states.extend(named.collect::<Option<Vec<usize>>>()?);
        }
    }
    let is_standing = |at: &usize| all.contains(at);
    let is_known = all.is_empty() || !states.is_empty();
    (is_known && states.iter().all(is_standing)).then(|| states.into_iter().collect())
}

/// The one state that a sheet is identified with for certain: every reading names it alone. Where a reading names a
/// state for each matrix, it names one only if it names every matrix and the same state for each.
fn only_state(design: &Design, impression: &Impression) -> Option<usize> {
    let identified = impression.identified.as_ref().filter(|i| is_certain(i))?;
    let mut named: BTreeSet<&Key> = BTreeSet::new();
    for reading in readings(identified) {
        match reading.state.as_ref()? {
            StateReading::OneOf(states) if !states.is_empty() => {
                named.extend(states.iter().map(|state| &state.value));
            }
            StateReading::ByMatrix(by_matrix) => {
                let names = |m: &Key| by_matrix.iter().any(|(named, _)| named.value == *m);
                if by_matrix.is_empty() || !design.matrices.iter().all(|m| names(&m.key.value)) {
                    return None;
                }
                named.extend(by_matrix.iter().map(|(_, state)| &state.value));
            }
            StateReading::OneOf(_) => return None,
        }
    }
    let mut named = named.into_iter();
    let only = named.next().filter(|_| named.next().is_none())?;
    let at = index_of(design, only)?;
    let is_standing = standing(design).any(|(standing, _)| standing == at);
    is_standing.then_some(at)
}

/// The date of the one printing that a sheet is identified with for certain.
fn printing_date(design: &Design, impression: &Impression) -> Option<DaysOf> {
    impression.identified.as_ref().filter(|i| is_certain(i))?;
    let key = only_printing(impression)?;
    let mut printings = design.standing_printings();
    let printing = printings.find(|printing| printing.key.value == *key)?;
    DaysOf::own(&printing.date, Some(key))
}
