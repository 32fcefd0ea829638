//! Claims: how sure a statement is, on what it rests, and who made it.
//!
//! A statement without a certainty is certain. Where sources disagree a value is a list of
//! statements, the catalogue's own view first.

use super::edtf::Date;
use super::key::Key;
use super::place::Placed;
use super::words::closed_list;

closed_list! {
    /// How sure a statement is.
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
    /// What a statement rests on.
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

/// Who says so, when, on what ground, and how sure they are.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Claim {
    /// How sure; [`Claim::certainty`] gives the default.
    pub certainty: Option<Placed<Certainty>>,
    /// On what it rests.
    pub basis: Option<Placed<Basis>>,
    /// The person or holder who says so.
    pub by: Option<Placed<Key>>,
    /// When it was said.
    pub date: Option<Placed<Date>>,
    /// The literature it is taken from.
    pub cite: Option<Placed<Key>>,
    /// Where in that literature.
    pub at: Option<String>,
}

impl Claim {
    /// How sure the statement is: certain unless it says otherwise.
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
    /// What is stated.
    pub is: Placed<T>,
    /// Who says so and how sure they are.
    pub claim: Claim,
}

/// What the sources say of one thing, the catalogue's own view first; empty where nothing is said.
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

    /// Whether nothing is said.
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
