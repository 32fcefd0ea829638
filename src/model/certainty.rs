//! Claims: how sure a statement is, what it rests on, and who made it.
//!
//! A statement without a certainty is certain. Where sources disagree a value is a list of
//! statements, the catalogue's own view first.

use super::cited::Cited;
use super::edtf::Date;
use super::key::Key;
use super::place::Placed;
use super::words::closed_list;

closed_list! {
    /// The certainty of a statement.
    Certainty {
        /// Certain; the default.
        Certain = "certain",
        /// Probable.
        Probable = "probable",
        /// Possible.
        Possible = "possible",
    }
}

closed_list! {
    /// The basis of a statement.
    Basis {
        /// The sheet itself was examined.
        FirstHand = "first-hand",
        /// A photograph was examined.
        Photograph = "photograph",
        /// It is taken from literature.
        Literature = "literature",
        /// Somebody reported it.
        Report = "report",
    }
}

/// Who makes a statement, when, on what basis, and how sure they are.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Claim {
    /// The certainty; [`Claim::certainty`] gives the default.
    pub certainty: Option<Placed<Certainty>>,
    /// The basis.
    pub basis: Option<Placed<Basis>>,
    /// The person or holder who makes the statement.
    pub by: Option<Placed<Key>>,
    /// The date of the statement.
    pub date: Option<Placed<Date>>,
    /// The literature or the document it is taken from.
    pub cite: Option<Placed<Cited>>,
    /// Where in that.
    pub at: Option<String>,
}

impl Claim {
    /// The certainty of the statement: certain where none is recorded.
    #[must_use]
    pub fn certainty(&self) -> Certainty {
        self.certainty
            .as_ref()
            .map_or(Certainty::Certain, |c| c.value)
    }
}

/// A value with the claim that states it.
#[derive(Clone, Debug, PartialEq)]
pub struct Statement<T> {
    /// The value.
    pub is: Placed<T>,
    /// The source and certainty of the statement.
    pub claim: Claim,
}

/// The statements about one thing, the catalogue's own view first; empty where the record says
/// nothing.
#[derive(Clone, Debug, PartialEq)]
pub struct Statements<T>(pub Vec<Statement<T>>);

impl<T> Default for Statements<T> {
    fn default() -> Statements<T> {
        Statements(Vec::new())
    }
}

impl<T> Statements<T> {
    /// The catalogue's own view.
    #[must_use]
    pub fn own(&self) -> Option<&T> {
        self.0.first().map(|s| &s.is.value)
    }

    /// The other views.
    #[must_use]
    pub fn others(&self) -> &[Statement<T>] {
        self.0.get(1..).unwrap_or_default()
    }

    /// Whether there is no statement.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.0.is_empty()
    }

    /// All of them, the catalogue's own view first.
    pub fn iter(&self) -> std::slice::Iter<'_, Statement<T>> {
        self.0.iter()
    }
}

impl<'a, T> IntoIterator for &'a Statements<T> {
    type Item = &'a Statement<T>;
    type IntoIter = std::slice::Iter<'a, Statement<T>>;

    fn into_iter(self) -> Self::IntoIter {
        self.iter()
    }
}
