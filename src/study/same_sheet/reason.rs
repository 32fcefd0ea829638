//! Reasons for and against two records being one sheet, as values.
//!
//! Each holds the values it compares, those of the first record before those of the second. The comparisons
//! (`compare`) make these values. Not here: their words for editors (`audit::same_sheet`) and for programs (`kind`).

use crate::tolerance::PaperMeasure;
use keyblock_model::edtf::{Date, Day};
use keyblock_model::key::Key;
use keyblock_model::literature::Cited;
use keyblock_model::mark::MarkKind;
use keyblock_model::place::Place;
use keyblock_model::point::Value;
use keyblock_model::provenance::{Party, PartyRole};
use keyblock_model::size::Size;

/// The weight of a reason, from most for to most against.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Bearing {
    /// Proves it, if both records are right: a number, a collector's mark.
    Proves,
    /// Speaks for it: an owner whom only few sheets of the design share.
    Speaks,
    /// Agrees, as many sheets would: the same state, the same paper.
    Fits,
    /// Speaks against it, though one of the two may be mistaken.
    Weighs,
    /// Contradicts it, unless something recorded is wrong.
    Contradicts,
    /// Excludes it: were it one sheet, a record that is stated as certain would be false.
    Excludes,
}

impl Bearing {
    /// Whether it speaks for one sheet.
    #[must_use]
    pub fn is_for(self) -> bool {
        self < Bearing::Weighs
    }
}

/// One reason.
#[derive(Clone, Debug, PartialEq)]
pub struct Reason {
    /// How much it weighs.
    pub bearing: Bearing,
    /// The facts it rests on.
    pub evidence: Evidence,
    /// Where the one record says so, and where the other.
    pub places: [Place; 2],
    /// Whether it follows only from fields that a record keeps private.
    pub is_private: bool,
}

impl Reason {
    pub(super) fn new(bearing: Bearing, evidence: Evidence, places: [Place; 2]) -> Reason {
        Reason {
            bearing,
            evidence,
            places,
            is_private: false,
        }
    }
}

/// The two of a pair, in the other order where `turn` is set.
pub(super) fn turned<T: Copy>(turn: bool, [a, b]: [T; 2]) -> [T; 2] {
    if turn { [b, a] } else { [a, b] }
}

/// The identity of a party of a provenance, equal for two entries that name one party.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum PartyIdentity {
    /// The key of a person or holder.
    Record(Key),
    /// A name without a record.
    Named(String),
}

impl PartyIdentity {
    /// The identity of a party; `None` for one whose name is undisclosed.
    #[must_use]
    pub fn of(party: &Party) -> Option<PartyIdentity> {
        match party {
            Party::Record(key) => Some(PartyIdentity::Record(key.value.clone())),
            Party::Named(name) => Some(PartyIdentity::Named(name.value.trim().to_owned())),
            Party::Undisclosed => None,
        }
    }
}

/// A fact that both records state, word for word.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Tie {
    /// A number of an edition, and the size it declares.
    Number {
        /// Whether it is in roman numerals.
        is_roman: bool,
        /// The number.
        number: u32,
        /// Of how many; `None` where it is not said.
        of: Option<u32>,
    },
    /// A number that one holder gave to one thing.
    Accession {
        /// The holder.
        holder: Key,
        /// The number.
        number: String,
    },
    /// A collector's mark.
    Collector {
        /// Its owner, where known.
        whose: Option<Key>,
        /// Its number in a repertory, or else its text.
        mark: String,
    },
    /// Writing on the sheet.
    Inscription(String),
    /// One lot of one sale.
    Lot {
        /// The dealer or auction house.
        agent: PartyIdentity,
        /// The date as recorded.
        date: String,
        /// The lot.
        lot: String,
    },
    /// One sale, the lot unsaid on one side at least.
    Sale {
        /// The dealer or auction house.
        agent: PartyIdentity,
        /// The date as recorded.
        date: String,
    },
    /// One number of one exhibition.
    Exhibit {
        /// The exhibition.
        exhibition: Key,
        /// The number there.
        at: String,
    },
    /// One place in one work that reports a sighting.
    Page {
        /// The work.
        cite: Cited,
        /// Where in it.
        at: String,
    },
    /// A former owner.
    Owner(PartyIdentity),
    /// The present holder, where one of the two has no number there.
    Holder(Key),
}

/// A measured part that the matrix left on a sheet.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum MeasuredPart {
    /// The image.
    Image,
    /// The platemark.
    Platemark,
}

/// The facts that a reason rests on.
#[derive(Clone, Debug, PartialEq)]
pub enum Evidence {
    /// Both say the same.
    Shared(Tie),
    /// The last that is known of a lost sheet is an owner or a sale in the history of the other.
    LastKnown(Tie),
    /// The one is lost, and the last that is known of it comes before the first that is known of the
    /// other.
    Follows {
        /// The last day known of the lost one.
        ends: Day,
        /// The first day known of the other.
        begins: Day,
    },
    /// The sheets measure alike.
    SheetAlike {
        /// Both sizes.
        sizes: [Size; 2],
        /// Whether no other sheet of the design measures so.
        alone: bool,
    },
    /// The image or platemark measures alike.
    MatrixAlike(MeasuredPart, [Size; 2]),
    /// They are taken to be of the same state.
    SameState(Key),
    /// They are taken to be of the same printing.
    SamePrinting(Key),
    /// They are on the same paper.
    SamePaper(Key),
    /// The papers measure alike.
    PaperAlike(PaperMeasure, [f64; 2]),
    /// The same was seen at these points.
    SeenAlike(Vec<Key>),

    /// The sizes of image or platemark differ by what paper, which shrinks and stretches, can explain.
    MatrixNear(MeasuredPart, [Size; 2]),
    /// The sizes of image or platemark differ by more than paper explains.
    MatrixFar(MeasuredPart, [Size; 2]),
    /// The one measured later is larger than the other was.
    Grown {
        /// Both sizes.
        sizes: [Size; 2],
        /// Whether in height and width.
        both_ways: bool,
    },
    /// They are taken to be of different states.
    OtherState([Vec<Key>; 2]),
    /// They are taken to be of different printings.
    OtherPrinting([Vec<Key>; 2]),
    /// They are of different kinds.
    OtherKind([Key; 2]),
    /// They are on different papers.
    OtherPaper([Key; 2]),
    /// The papers measure otherwise than one paper can.
    PaperApart(PaperMeasure, [f64; 2]),
    /// The observations at a point cannot be of one sheet.
    SeenApart {
        /// The point.
        point: Key,
        /// The observed values.
        values: [Vec<Value>; 2],
    },
    /// The numbers differ.
    OtherNumber([String; 2]),
    /// The one has a number, and none was found later on the other.
    NumberGone(String),
    /// The one has a mark, and none was found later on the other.
    MarkGone {
        /// Its kind.
        kind: MarkKind,
        /// Its text.
        text: Option<String>,
    },
    /// One holder has given them two numbers.
    OtherAccession {
        /// The holder.
        holder: Key,
        /// The numbers.
        numbers: [String; 2],
    },
    /// They were two lots of one sale.
    OtherLot {
        /// The dealer or auction house.
        agent: PartyIdentity,
        /// When.
        date: Date,
        /// The lots.
        lots: [String; 2],
    },
    /// They were two numbers of one exhibition.
    OtherExhibit {
        /// The exhibition.
        exhibition: Key,
        /// The numbers.
        at: [String; 2],
    },
    /// They were shown in two places at one time.
    TwoPlaces([Key; 2]),
    /// Two owners, or two keepers, had them at one certain time.
    TwoHands {
        /// As owners or as keepers.
        role: PartyRole,
        /// The two.
        who: [PartyIdentity; 2],
    },
    /// The one no longer exists, the other does.
    Destroyed,
    /// The records themselves describe two sheets: on one paper or of one set, or the one was taken from the other.
    SaidBeside,
}
