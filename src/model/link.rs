//! Links to records, as Markdown and `see` write them: `design:14`, `impression:14.7`, `lit:KEY`.

use std::fmt;
use std::str::FromStr;

use super::key::{ImpressionKey, Key, NotAKey, PictureKey};

/// Declares the targets once: each with its word, as links and addresses write it, and its key.
macro_rules! targets {
    ($($(#[$doc:meta])* $name:ident($key:ty) = $word:literal,)*) => {
        /// The record a link leads to.
        #[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub enum Target {
            $($(#[$doc])* $name($key),)*
        }

        impl Target {
            /// The words before the colon, in the order in which help lists them.
            pub const KINDS: &'static [&'static str] = &[$($word),*];

            /// The word before the colon; the first folder of its page's address.
            #[must_use]
            pub fn kind(&self) -> &'static str {
                match self {
                    $(Target::$name(_) => $word,)*
                }
            }

            /// The text after the colon.
            #[must_use]
            pub fn key(&self) -> &dyn fmt::Display {
                match self {
                    $(Target::$name(key) => key,)*
                }
            }
        }

        impl FromStr for Target {
            type Err = NotAKey;

            /// Reads `kind:key`.
            fn from_str(text: &str) -> Result<Target, NotAKey> {
                let (kind, key) = text.split_once(':').ok_or(NotAKey)?;
                match kind {
                    $($word => Ok(Target::$name(key.parse()?)),)*
                    _ => Err(NotAKey),
                }
            }
        }
    };
}

targets! {
    /// `design:14`
    Design(Key) = "design",
    /// `impression:14.7`
    Impression(ImpressionKey) = "impression",
    /// `holder:KEY`
    Holder(Key) = "holder",
    /// `person:KEY`
    Person(Key) = "person",
    /// `lit:KEY`
    Work(Key) = "lit",
    /// `exhibition:KEY`
    Exhibition(Key) = "exhibition",
    /// `mark:KEY`
    Mark(Key) = "mark",
    /// `document:KEY`
    Document(Key) = "document",
    /// `series:KEY`
    Series(Key) = "series",
    /// `page:KEY`
    Page(Key) = "page",
    /// `picture:14.7/recto`
    Picture(PictureKey) = "picture",
}

impl fmt::Display for Target {
    /// As a link writes it.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}:{}", self.kind(), self.key())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn links_are_read_as_they_are_written() {
        for text in [
            "design:14",
            "impression:14.7",
            "holder:harbour-museum",
            "lit:first-list",
            "picture:14.7/recto",
            "document:ledger",
            "series:quays",
            "picture:document/ledger/leaf-3",
            "page:introduction",
        ] {
            assert_eq!(text.parse::<Target>().unwrap().to_string(), text);
        }
        for text in [
            "14",
            "design:",
            "design:14.7",
            "javascript:alert",
            "Design:14",
        ] {
            assert_eq!(text.parse::<Target>(), Err(NotAKey), "{text}");
        }
    }
}
