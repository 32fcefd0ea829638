//! What one sheet shows, point by point.
//!
//! In: a design and one of its impressions, as the library reads them. Out: a [`Look`]. A point's
//! value is the sheet's own observation where that is a single value, else what its state shows,
//! else what its printing shows.
//!
//! Not here: paper, condition and marks (`sheets`), sizes (`layout`).

use std::collections::BTreeMap;
use std::fmt::Write as _;

use keyblock::model::design::Design;
use keyblock::model::impression::{BlockPrinted, Impression, StateReading};
use keyblock::model::key::Key;
use keyblock::model::point::{ObservedValue, Point, PointKind, RestsOn, ShownPoints, Value};

/// What one sheet shows.
#[derive(Clone, Debug)]
pub struct Look {
    /// Place of the state in the design's order, from 0; 0 where no state is recorded.
    pub state: usize,
    /// Number of the impression.
    pub number: u32,
    state_key: Option<Key>,
    printing: Option<Key>,
    kind: Option<Key>,
    values: BTreeMap<Key, Value>,
    stages: BTreeMap<Key, usize>,
    unprinted: Vec<Key>,
}

impl Look {
    /// Reads what an impression shows. Of several possible states or printings the first is taken.
    pub fn of(design: &Design, impression: &Impression) -> Self {
        let identified = impression.identified.as_ref();
        let printing = identified.and_then(|i| i.printing.first());
        let state = identified.and_then(|i| i.state.as_ref()).and_then(first);
        let state = state.or(match design.states.as_slice() {
            [only] => Some(&only.key.value),
            _ => None,
        });
        let mut look = Self {
            state: design
                .states
                .iter()
                .position(|s| Some(&s.key.value) == state)
                .unwrap_or(0),
            number: impression.key.number,
            state_key: state.cloned(),
            printing: printing.map(|p| p.value.clone()),
            kind: impression.kind.own().cloned(),
            values: BTreeMap::new(),
            stages: BTreeMap::new(),
            unprinted: unprinted(impression),
        };
        for point in &design.points {
            if let Some(value) = look.shown(design, impression, point) {
                look.add(point, value);
            }
        }
        look
    }

    fn shown(&self, design: &Design, impression: &Impression, point: &Point) -> Option<Value> {
        let mut observed = impression.observed.iter();
        let seen = observed.find(|o| o.point == point.key).map(|o| &o.seen);
        match seen {
            Some(ObservedValue::NotApplicable) => return None,
            Some(ObservedValue::OneOf(values)) => {
                if let [only] = values.as_slice() {
                    return Some(only.value.clone());
                }
            }
            _ => {}
        }
        let state = self.state_key.as_ref().and_then(|key| design.state(key));
        let printing = self.printing.as_ref().and_then(|key| design.printing(key));
        let by_state = state.and_then(|s| one_of(&s.shows, point, 0));
        by_state.or_else(|| one_of(&printing?.shows, point, self.number as usize))
    }

    fn add(&mut self, point: &Point, value: Value) {
        if let (PointKind::Stage(stages), Value::Word(word)) = (&point.kind, &value)
            && let Some(at) = stages.iter().position(|stage| stage.value == *word)
        {
            self.stages.insert(point.key.value.clone(), at);
        }
        self.values.insert(point.key.value.clone(), value);
    }

    /// Key of the printing, or the empty word.
    pub fn printing(&self) -> &str {
        self.printing.as_ref().map_or("", Key::as_str)
    }

    /// The sheet's kind (edition, trial-proof, counterproof …), or the empty word.
    pub fn kind(&self) -> &str {
        self.kind.as_ref().map_or("", Key::as_str)
    }

    /// Whether a feature is there; `false` where the records say nothing.
    pub fn has(&self, point: &str) -> bool {
        self.has_or(point, false)
    }

    /// Whether a feature is there, or `default` where the records say nothing.
    pub fn has_or(&self, point: &str, default: bool) -> bool {
        match self.values.get(point) {
            Some(_) => self.choice(point) == "present",
            None => default,
        }
    }

    /// A count, or the default.
    pub fn count(&self, point: &str, default: usize) -> usize {
        match self.values.get(point) {
            Some(Value::Count(count)) => *count as usize,
            _ => default,
        }
    }

    /// A measure in the point's unit, where one is recorded.
    pub fn measure(&self, point: &str) -> Option<f32> {
        Some(self.values.get(point)?.number()? as f32)
    }

    /// A choice, or the empty word.
    pub fn choice(&self, point: &str) -> &str {
        match self.values.get(point) {
            Some(Value::Word(word)) => word.as_str(),
            _ => "",
        }
    }

    /// The stage that wear has reached: 0 is the first.
    pub fn stage(&self, point: &str) -> usize {
        self.stages.get(point).copied().unwrap_or(0)
    }

    /// Whether the block was printed on this sheet.
    pub fn printed(&self, matrix: &str) -> bool {
        !self.unprinted.iter().any(|key| key.as_str() == matrix)
    }

    /// A text that is the same for all sheets of a design whose matrices were in one condition:
    /// the state, and the value of each point that rests on a matrix.
    pub fn condition_of_matrices(&self, design: &Design) -> String {
        let mut text = self.state_key.as_ref().map_or("", Key::as_str).to_owned();
        for point in &design.points {
            if point.rests_on.value == RestsOn::Matrix {
                text.push('|');
                if let Some(value) = self.values.get(&point.key.value) {
                    let _ = write!(text, "{value}");
                }
            }
        }
        text
    }
}

/// The first state of a reading.
fn first(reading: &StateReading) -> Option<&Key> {
    match reading {
        StateReading::OneOf(states) => states.first().map(|state| &state.value),
        StateReading::ByMatrix(states) => states.first().map(|(_, state)| &state.value),
    }
}

/// One of the values shown at a point: the one that `turn` falls on, counted round and round.
fn one_of(shows: &ShownPoints, point: &Point, turn: usize) -> Option<Value> {
    let values = &shows.at(&point.key.value)?.values;
    Some(values.get(turn % values.len().max(1))?.value.clone())
}

fn unprinted(impression: &Impression) -> Vec<Key> {
    let blocks = impression.blocks.iter();
    let missing = blocks.filter(|(_, printed)| printed.value == BlockPrinted::NotPrinted);
    missing.map(|(matrix, _)| matrix.value.clone()).collect()
}
