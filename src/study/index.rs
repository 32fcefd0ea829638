//! Typed indexes, and lists that take an index of one type only.
//!
//! Points, candidates, classes of a column and values of a scale are each identified by an index in some list.
//! Bare numbers could be confused; these types cannot, and a lookup needs no default for an index out of range.
//!
//! In: items. Out: [`Indexed`] lists and their indexes. An index made from one list must not be used with another
//! of the same type, unless both list the same things.
//!
//! ```
//! # use keyblock::study::index::{Indexed, PointAt};
//! let points: Indexed<PointAt, &str> = ["moon", "lamps"].into_iter().collect();
//! let lamps = points.position(|key| *key == "lamps").unwrap();
//! assert_eq!(lamps, PointAt::new(1));
//! assert_eq!(points[lamps], "lamps");
//! ```

use std::marker::PhantomData;
use std::ops;

/// A type of indexes, counted from 0.
pub trait Index: Copy + Ord {
    /// The index with a number, from 0.
    fn from_number(at: usize) -> Self;

    /// Its number, from 0.
    fn number(self) -> usize;
}

macro_rules! index_types {
    ($($(#[$about:meta])+ $name:ident;)+) => {$(
        $(#[$about])+
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
        pub struct $name(usize);

        impl $name {
            /// The index with a number, from 0.
            #[must_use]
            pub const fn new(at: usize) -> $name {
                $name(at)
            }

            /// Its number, from 0.
            #[must_use]
            pub const fn index(self) -> usize {
                self.0
            }
        }

        impl Index for $name {
            fn from_number(at: usize) -> $name {
                $name(at)
            }

            fn number(self) -> usize {
                self.0
            }
        }
    )+};
}

index_types! {
    /// A point of a diagnostic table, by its index among the table's points.
    PointAt;
    /// A candidate of a diagnostic table, by its index among the table's candidates.
    CandidateAt;
    /// A class of candidates that allow the same at one point, by its index in the point's column.
    ClassAt;
    /// A value that a point can take, by its index on the point's scale.
    ValueAt;
    /// A couplet of a printed key, by its index in the key; readers see the index + 1.
    CoupletAt;
    /// A sheet, by its index among the sheets that are counted or compared together.
    SheetAt;
    /// A place in the order of printing, by its index among the places of a design.
    PlaceAt;
    /// An entry of a provenance, by its index in the record.
    EntryAt;
    /// An observation, by its index in the record.
    ObservationAt;
}

/// A list that is indexed by `A`.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Indexed<A, T> {
    items: Vec<T>,
    of: PhantomData<A>,
}

impl<A, T> Default for Indexed<A, T> {
    fn default() -> Indexed<A, T> {
        Indexed {
            items: Vec::new(),
            of: PhantomData,
        }
    }
}

impl<A: Index, T> Indexed<A, T> {
    /// As many copies of `item` as `like` has items.
    #[must_use]
    pub fn filled<U>(like: &Indexed<A, U>, item: T) -> Indexed<A, T>
    where
        T: Clone,
    {
        vec![item; like.len()].into_iter().collect()
    }

    /// How many items there are.
    #[must_use]
    pub fn len(&self) -> usize {
        self.items.len()
    }

    /// Whether there are none.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.items.is_empty()
    }

    /// The items, in order.
    pub fn iter(&self) -> std::slice::Iter<'_, T> {
        self.items.iter()
    }

    /// The items, in order, each to be changed.
    pub fn iter_mut(&mut self) -> std::slice::IterMut<'_, T> {
        self.items.iter_mut()
    }

    /// The indexes, in order.
    pub fn indexes(&self) -> impl DoubleEndedIterator<Item = A> + Clone + use<A, T> {
        (0..self.items.len()).map(A::from_number)
    }

    /// The items with their indexes, in order.
    pub fn entries(&self) -> impl Iterator<Item = (A, &T)> {
        self.indexes().zip(&self.items)
    }

    /// The item at an index; `None` where the index is of a longer list.
    #[must_use]
    pub fn get(&self, at: A) -> Option<&T> {
        self.items.get(at.number())
    }

    /// The index of the first item of which `is_wanted` holds.
    pub fn position(&self, is_wanted: impl FnMut(&T) -> bool) -> Option<A> {
        self.items.iter().position(is_wanted).map(A::from_number)
    }

    /// Adds an item at the end, and gives its index.
    pub fn push(&mut self, item: T) -> A {
        self.items.push(item);
        A::from_number(self.items.len() - 1)
    }
}

/// # Panics
/// Where the index is of a longer list.
impl<A: Index, T> ops::Index<A> for Indexed<A, T> {
    type Output = T;

    fn index(&self, at: A) -> &T {
        &self.items[at.number()]
    }
}

/// # Panics
/// Where the index is of a longer list.
impl<A: Index, T> ops::IndexMut<A> for Indexed<A, T> {
    fn index_mut(&mut self, at: A) -> &mut T {
        &mut self.items[at.number()]
    }
}

impl<A, T> FromIterator<T> for Indexed<A, T> {
    fn from_iter<I: IntoIterator<Item = T>>(items: I) -> Indexed<A, T> {
        Indexed {
            items: items.into_iter().collect(),
            of: PhantomData,
        }
    }
}

impl<A, T> IntoIterator for Indexed<A, T> {
    type Item = T;
    type IntoIter = std::vec::IntoIter<T>;

    fn into_iter(self) -> Self::IntoIter {
        self.items.into_iter()
    }
}

impl<'a, A, T> IntoIterator for &'a Indexed<A, T> {
    type Item = &'a T;
    type IntoIter = std::slice::Iter<'a, T>;

    fn into_iter(self) -> Self::IntoIter {
        self.items.iter()
    }
}

impl<'a, A, T> IntoIterator for &'a mut Indexed<A, T> {
    type Item = &'a mut T;
    type IntoIter = std::slice::IterMut<'a, T>;

    fn into_iter(self) -> Self::IntoIter {
        self.items.iter_mut()
    }
}
