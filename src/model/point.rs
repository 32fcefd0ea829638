//! Points: the features by which states and printings are distinguished.

use super::boxes::PercentBox;
use super::certainty::Claim;
use super::key::Key;
use super::place::{Place, Placed};
use super::words::closed_list;

closed_list! {
    /// The thing that a point rests on. Only differences of the matrix make states.
    RestsOn {
        /// The printing surface of a block, plate, stone or screen.
        Matrix = "matrix",
        /// Which of the blocks were printed.
        Blocks = "blocks",
        /// How the matrix was inked and wiped.
        Inking = "inking",
        /// The paper.
        Paper = "paper",
        /// A mark put on the sheet by hand or stamp.
        Mark = "mark",
    }
}

closed_list! {
    /// The words for the kinds of points.
    PointKindWord {
        /// Present or absent.
        Presence = "presence",
        /// One of several described values.
        Choice = "choice",
        /// A number of things.
        Count = "count",
        /// A measured length.
        Measure = "measure",
        /// Wear that can only advance.
        Stage = "stage",
    }
}

/// A feature to look at on a sheet.
#[derive(Clone, Debug, PartialEq)]
pub struct Point {
    /// Its key within the design.
    pub key: Placed<Key>,
    /// The question: "Is there a moon above the mast?".
    pub ask: Placed<String>,
    /// The kind of answer it takes.
    pub kind: PointKind,
    /// The thing that the difference rests on.
    pub rests_on: Placed<RestsOn>,
    /// The matrix, where it is recorded.
    pub matrix: Option<Placed<Key>>,
    /// Where it is on the reference picture.
    pub area: Option<PercentBox>,
    /// Why what is seen there excludes, though the point does not rest on the matrix or is a stage of wear.
    pub decides: Option<Placed<String>>,
    /// The chance, above 0 and at most 0.5, that a sheet departs from what is recorded for it there, though
    /// it was observed rightly.
    pub strays: Option<Placed<f64>>,
}

impl Point {
    /// Whether a certain observation there excludes what does not show it: the editor says why it decides, or
    /// it rests on the matrix, is no stage of wear, and is not said to stray
    /// (`docs/definitions.md`, "Deciding and straying").
    #[must_use]
    pub fn is_deciding(&self) -> bool {
        let is_of_matrix = self.rests_on.value == RestsOn::Matrix;
        let is_stage = matches!(self.kind, PointKind::Stage(_));
        self.decides.is_some() || (is_of_matrix && !is_stage && self.strays.is_none())
    }

    /// The kind of evidence that it gives.
    #[must_use]
    pub fn evidence(&self) -> EvidenceKind {
        match self.rests_on.value {
            RestsOn::Matrix if matches!(self.kind, PointKind::Stage(_)) => EvidenceKind::Wear,
            RestsOn::Matrix => EvidenceKind::Matrix,
            RestsOn::Blocks => EvidenceKind::Blocks,
            RestsOn::Paper => EvidenceKind::Paper,
            RestsOn::Inking => EvidenceKind::Inking,
            RestsOn::Mark => EvidenceKind::Mark,
        }
    }
}

closed_list! {
    /// The kinds of evidence that points give, the strongest first.
    EvidenceKind {
        /// What was cut, etched or drawn on the matrix.
        Matrix = "matrix",
        /// Wear of the matrix.
        Wear = "wear",
        /// Which of the blocks were printed.
        Blocks = "blocks",
        /// The paper.
        Paper = "paper",
        /// The inking and wiping.
        Inking = "inking",
        /// A mark put on the sheet.
        Mark = "mark",
    }
}

/// The kind of answer a point takes.
#[derive(Clone, Debug, PartialEq)]
pub enum PointKind {
    /// `present` or `absent`.
    Presence,
    /// One of these, each with its description.
    Choice(Vec<PointValue>),
    /// A whole number.
    Count,
    /// A length.
    Measure {
        /// The unit, usually `mm`.
        unit: String,
        /// How far two measurements of one thing may lie apart, in that unit; above 0.
        tolerance: f64,
    },
    /// One of these, in the order of wear.
    Stage(Vec<Placed<Key>>),
}

/// One value of a choice.
#[derive(Clone, Debug, PartialEq)]
pub struct PointValue {
    /// Its key.
    pub key: Placed<Key>,
    /// Its description.
    pub description: String,
}

impl PointKind {
    /// The word for the kind.
    #[must_use]
    pub fn word(&self) -> PointKindWord {
        match self {
            PointKind::Presence => PointKindWord::Presence,
            PointKind::Choice(_) => PointKindWord::Choice,
            PointKind::Count => PointKindWord::Count,
            PointKind::Measure { .. } => PointKindWord::Measure,
            PointKind::Stage(_) => PointKindWord::Stage,
        }
    }

    /// The words that an answer may be, in the point's order; `None` for counts and measures, which
    /// take numbers.
    #[must_use]
    pub fn words(&self) -> Option<Vec<&str>> {
        match self {
            PointKind::Presence => Some(vec!["present", "absent"]),
            PointKind::Choice(values) => Some(values.iter().map(|v| v.key.as_str()).collect()),
            PointKind::Stage(stages) => Some(stages.iter().map(|s| s.as_str()).collect()),
            PointKind::Count | PointKind::Measure { .. } => None,
        }
    }

    /// Whether `value` can be an answer to a point of this kind.
    #[must_use]
    pub fn takes(&self, value: &Value) -> bool {
        match (self.words(), value) {
            (Some(words), Value::Word(word)) => words.contains(&word.as_str()),
            (None, Value::Count(_)) => true,
            (None, Value::Measure(_)) => matches!(self, PointKind::Measure { .. }),
            _ => false,
        }
    }
}

/// An answer to a point. A measure may be written as a whole number and is then a count of units;
/// [`Value::number`] reads both.
#[derive(Clone, Debug, PartialEq)]
pub enum Value {
    /// A word: `present`, or a key of the point's values or stages.
    Word(Key),
    /// A whole number.
    Count(u32),
    /// A measured number, in the point's unit.
    Measure(f64),
}

impl Value {
    /// The number, where it is one.
    #[must_use]
    pub fn number(&self) -> Option<f64> {
        match self {
            Value::Word(_) => None,
            Value::Count(n) => Some(f64::from(*n)),
            Value::Measure(x) => Some(*x),
        }
    }
}

impl std::fmt::Display for Value {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self {
            Value::Word(word) => word.fmt(f),
            Value::Count(n) => n.fmt(f),
            Value::Measure(x) => x.fmt(f),
        }
    }
}

/// The values that a state, printing or variant may show at one point.
#[derive(Clone, Debug, PartialEq)]
pub struct ShownAtPoint {
    /// The point.
    pub point: Placed<Key>,
    /// The values; at least one.
    pub values: Vec<Placed<Value>>,
    /// Where it is recorded.
    pub place: Place,
}

/// The values that a state, printing or variant shows, point by point in the order recorded. A point
/// that is not named is unknown.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct ShownPoints(pub Vec<ShownAtPoint>);

impl ShownPoints {
    /// The values shown at a point, where any are recorded.
    #[must_use]
    pub fn at(&self, point: &Key) -> Option<&ShownAtPoint> {
        self.0.iter().find(|shown| shown.point.value == *point)
    }
}

/// An observation at a point of one impression.
#[derive(Clone, Debug, PartialEq)]
pub struct Observation {
    /// The point.
    pub point: Placed<Key>,
    /// The observed value.
    pub seen: ObservedValue,
    /// The observer, the date and the certainty.
    pub claim: Claim,
    /// Where it is recorded.
    pub place: Place,
}

/// The value of an observation. "Not visible" and "not applicable" give no information and are never
/// read as absent.
#[derive(Clone, Debug, PartialEq)]
pub enum ObservedValue {
    /// One of these values.
    OneOf(Vec<Placed<Value>>),
    /// None of these values.
    NoneOf(Vec<Placed<Value>>),
    /// Trimmed, mounted or framed there.
    NotVisible,
    /// The block was not printed, or the question makes no sense for this sheet.
    NotApplicable,
}
