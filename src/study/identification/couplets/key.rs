//! The types of a key for paper.

use crate::identification::leads::LeadCondition;
use crate::index::{CandidateAt, CoupletAt, Indexed, PointAt};

/// A key for paper.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Couplets {
    /// The couplets, in the order of their numbers; leads go on to later ones only. Empty where no
    /// point narrows the candidates.
    pub couplets: Indexed<CoupletAt, Couplet>,
}

/// A point with the leads from it.
#[derive(Clone, Debug, PartialEq)]
pub struct Couplet {
    /// The point.
    pub point: PointAt,
    /// The candidates that come to it, in the table's order.
    pub candidates: Vec<CandidateAt>,
    /// The leads; two at least, no two to the same candidates.
    pub leads: Vec<Lead>,
}

/// An observation that may be made, and the couplet or candidates it leads to.
#[derive(Clone, Debug, PartialEq)]
pub struct Lead {
    /// The observation under which a reader follows it.
    pub condition: LeadCondition,
    /// The candidates that agree with it, in the table's order; none where it leads to [`Goal::Nothing`].
    pub candidates: Vec<CandidateAt>,
    /// Where it leads.
    pub goal: Goal,
    /// At an end: the deciding points that would confirm it, those of most information first. None of them is
    /// asked on the way.
    pub confirm: Vec<PointAt>,
}

/// Where a lead leads.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Goal {
    /// On, to another couplet.
    Couplet(CoupletAt),
    /// To the lead's candidates, which no recorded point separates further.
    End,
    /// To the lead's candidates, which further points would tell apart; the key stops here, so as
    /// not to grow beyond what can be printed.
    Stop,
    /// To no candidate: nothing recorded agrees with this answer and those before it.
    Nothing,
}
