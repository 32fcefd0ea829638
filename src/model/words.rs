//! Closed lists: the words a key of a record may take.
//!
//! Each list is declared once, with its words; the reader, the JSON Schema and the help of a
//! finding are made from the same declaration.

/// A list of words that records may use, and no others.
pub trait ClosedList: Copy + Sized + 'static {
    /// Every value, in the order in which help lists them.
    const ALL: &'static [Self];

    /// The word written in records.
    fn word(self) -> &'static str;

    /// The value with that word.
    fn from_word(word: &str) -> Option<Self> {
        Self::ALL.iter().copied().find(|v| v.word() == word)
    }
}

/// Declares a closed list: an enum, the word of each value, and [`ClosedList`] for it.
#[macro_export]
macro_rules! closed_list {
    ($(#[$doc:meta])* $name:ident { $($(#[$item_doc:meta])* $item:ident = $word:literal,)* }) => {
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub enum $name { $($(#[$item_doc])* $item,)* }

        impl $crate::words::ClosedList for $name {
            const ALL: &'static [$name] = &[$($name::$item,)*];

            fn word(self) -> &'static str {
                match self { $($name::$item => $word,)* }
            }
        }

        impl std::fmt::Display for $name {
            fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
                f.write_str($crate::words::ClosedList::word(*self))
            }
        }
    };
}
pub use closed_list;

closed_list! {
    /// The standing of a record (docs/definitions.md, "Which records count").
    Standing {
        /// Accepted; the default.
        Accepted = "accepted",
        /// Doubtful: counted, with the doubt shown.
        Doubtful = "doubtful",
        /// No longer accepted: keeps its number and address.
        Rejected = "rejected",
        /// Withdrawn: leaves numerals and counts; its address explains.
        Withdrawn = "withdrawn",
    }
}

closed_list! {
    /// A side of the sheet.
    Side {
        /// The printed side.
        Recto = "recto",
        /// The back.
        Verso = "verso",
        /// The edge of the sheet.
        Edge = "edge",
        /// The mount it is laid on.
        Mount = "mount",
    }
}
