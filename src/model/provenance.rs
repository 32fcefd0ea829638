//! Provenance and sightings: where a sheet was, and who saw it.

use super::certainty::{Basis, Certainty, Claim};
use super::edtf::Date;
use super::key::Key;
use super::literature::Cited;
use super::place::{Place, Placed};

/// A person or institution, as a record or by name only.
#[derive(Clone, Debug, PartialEq)]
pub enum Party {
    /// The key of a person or holder.
    Record(Placed<Key>),
    /// A name without a record.
    Named(Placed<String>),
    /// Somebody whose name is kept private.
    Undisclosed,
}

/// In which role somebody had the sheet.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum PartyRole {
    /// Owned it.
    Owner,
    /// Handled it: a dealer or auction house.
    Agent,
    /// Kept it for its owner: a loan or deposit.
    Keeper,
}

/// One entry in the history of a sheet.
#[derive(Clone, Debug, PartialEq)]
pub struct ProvenanceEntry {
    /// Owner, agent or keeper.
    pub role: PartyRole,
    /// The person or institution.
    pub party: Party,
    /// From when.
    pub from: Option<Placed<Date>>,
    /// Until when.
    pub to: Option<Placed<Date>>,
    /// The way of transfer: a key of the vocabulary of transfers.
    pub how: Option<Placed<Key>>,
    /// Where.
    pub at_place: Option<String>,
    /// The lot number.
    pub lot: Option<String>,
    /// The price, as published.
    pub price: Option<String>,
    /// Whether it came straight from the entry before; `None`: not said.
    pub direct: Option<bool>,
    /// Whether the lot was sold; `false`: bought in.
    pub sold: Option<bool>,
    /// The certainty that it was this sheet.
    pub this_sheet: Option<Placed<Certainty>>,
    /// The source and certainty of the statement.
    pub claim: Claim,
    /// Where it is recorded.
    pub place: Place,
}

impl ProvenanceEntry {
    /// The certainty that this party had this sheet: the lesser of the two statements that an entry
    /// makes, that somebody had a sheet (its claim) and that it was this one (`this_sheet`). Every
    /// rule about an entry uses this. Its dates may still be loose.
    #[must_use]
    pub fn certainty(&self) -> Certainty {
        let this_sheet = self.this_sheet.as_ref().map(|c| c.value);
        this_sheet
            .unwrap_or(Certainty::Certain)
            .max(self.claim.certainty())
    }

    /// Whether the entry says how the sheet was destroyed with its owner, not how it came to one.
    #[must_use]
    pub fn is_destruction(&self) -> bool {
        let how = self.how.as_ref().map(|how| how.value.as_str());
        matches!(how, Some("destruction" | "fire"))
    }

    /// Whether the entry is certain, and certainly of this sheet.
    #[must_use]
    pub fn is_certain(&self) -> bool {
        self.certainty() == Certainty::Certain
    }
}

/// One time the sheet was seen or reported.
#[derive(Clone, Debug, PartialEq)]
pub struct Sighting {
    /// When.
    pub date: Placed<Date>,
    /// By whom.
    pub by: Option<Party>,
    /// On what ground.
    pub basis: Option<Placed<Basis>>,
    /// The literature that reports it.
    pub cite: Option<Placed<Cited>>,
    /// Where in it.
    pub at: Option<String>,
    /// Where it is recorded.
    pub place: Place,
}
