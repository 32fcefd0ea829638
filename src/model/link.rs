//! Links to records, as Markdown and `see` write them: `design:14`, `impression:14.7`, `lit:KEY`.

use std::fmt;
use std::str::FromStr;

use super::key::{ImpressionKey, Key, NotAKey, PictureKey};

/// The record a link leads to.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Target {
    /// `design:14`
    Design(Key),
    /// `impression:14.7`
    Impression(ImpressionKey),
    /// `holder:KEY`
    Holder(Key),
    /// `person:KEY`
    Person(Key),
    /// `lit:KEY`
    Work(Key),
    /// `exhibition:KEY`
    Exhibition(Key),
    /// `page:KEY`
    Page(Key),
    /// `picture:14.7/recto`
    Picture(PictureKey),
}

impl Target {
    /// The words before the colon, in the order in which help lists them.
    pub const KINDS: &'static [&'static str] = &[
        "design",
        "impression",
        "holder",
        "person",
        "lit",
        "exhibition",
        "page",
        "picture",
    ];
}

impl FromStr for Target {
    type Err = NotAKey;

    /// Reads `kind:key`.
    fn from_str(text: &str) -> Result<Target, NotAKey> {
        let (kind, key) = text.split_once(':').ok_or(NotAKey)?;
        Ok(match kind {
            "design" => Target::Design(key.parse()?),
            "impression" => Target::Impression(key.parse()?),
            "holder" => Target::Holder(key.parse()?),
            "person" => Target::Person(key.parse()?),
            "lit" => Target::Work(key.parse()?),
            "exhibition" => Target::Exhibition(key.parse()?),
            "page" => Target::Page(key.parse()?),
            "picture" => Target::Picture(key.parse()?),
            _ => return Err(NotAKey),
        })
    }
}

impl fmt::Display for Target {
    /// As a link writes it.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Target::Design(key) => write!(f, "design:{key}"),
            Target::Impression(key) => write!(f, "impression:{key}"),
            Target::Holder(key) => write!(f, "holder:{key}"),
            Target::Person(key) => write!(f, "person:{key}"),
            Target::Work(key) => write!(f, "lit:{key}"),
            Target::Exhibition(key) => write!(f, "exhibition:{key}"),
            Target::Page(key) => write!(f, "page:{key}"),
            Target::Picture(key) => write!(f, "picture:{key}"),
        }
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
