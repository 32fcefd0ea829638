//! Keys: the permanent names of records, which are also their addresses.
//!
//! A design's key is its folder's name, an impression's is `DESIGN.N`, a picture's is its owner's
//! key and its own name (`14.7/recto`). What readers see (catalogue number, state numeral, holder)
//! may change; keys may not.

use std::borrow::Borrow;
use std::fmt;
use std::str::FromStr;
use std::sync::Arc;

/// The permanent name of a record or of a part of one (a state, a point, a matrix).
///
/// Invariant: `[a-z0-9]+(-[a-z0-9]+)*`, so a key needs no escaping in an address or a file name.
#[derive(Clone, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Key(Arc<str>);

/// The text is not a key: a key has only lower-case letters and digits, joined by single hyphens.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct NotAKey;

impl Key {
    /// The key as written in records and addresses.
    #[must_use]
    pub fn as_str(&self) -> &str {
        &self.0
    }

    /// The name of the theme that the program carries.
    #[must_use]
    pub fn built_in_theme() -> Key {
        Key("laid".into())
    }

    /// The nearest text that is a key: lower case, everything else a single hyphen. `None` where
    /// nothing is left.
    #[must_use]
    pub fn nearest_form(text: &str) -> Option<Key> {
        let mut out = String::new();
        for c in text.chars().flat_map(char::to_lowercase) {
            if c.is_ascii_lowercase() || c.is_ascii_digit() {
                out.push(c);
            } else if !out.is_empty() && !out.ends_with('-') {
                out.push('-');
            }
        }
        out.trim_end_matches('-').parse().ok()
    }
}

impl FromStr for Key {
    type Err = NotAKey;

    fn from_str(text: &str) -> Result<Key, NotAKey> {
        let part_is_sound = |part: &str| {
            !part.is_empty()
                && part
                    .bytes()
                    .all(|b| b.is_ascii_lowercase() || b.is_ascii_digit())
        };
        if text.split('-').all(part_is_sound) {
            Ok(Key(text.into()))
        } else {
            Err(NotAKey)
        }
    }
}

impl fmt::Display for Key {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(&self.0)
    }
}

impl fmt::Debug for Key {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "Key({})", self.0)
    }
}

impl Borrow<str> for Key {
    fn borrow(&self) -> &str {
        &self.0
    }
}

/// The key of an impression: `14.7`, the seventh recorded sheet of design 14.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct ImpressionKey {
    /// The design it is an impression of.
    pub design: Key,
    /// Its number, counting up from 1 in the order of recording.
    pub number: u32,
}

impl FromStr for ImpressionKey {
    type Err = NotAKey;

    fn from_str(text: &str) -> Result<ImpressionKey, NotAKey> {
        let (design, number) = text.rsplit_once('.').ok_or(NotAKey)?;
        Ok(ImpressionKey {
            design: design.parse()?,
            number: impression_number(number)?,
        })
    }
}

/// An impression's number as its file name gives it: 1 and up, without leading zeros.
///
/// # Errors
/// [`NotAKey`] for anything else.
pub fn impression_number(text: &str) -> Result<u32, NotAKey> {
    if text.starts_with('0') || !text.bytes().all(|b| b.is_ascii_digit()) {
        return Err(NotAKey);
    }
    text.parse().map_err(|_| NotAKey)
}

impl fmt::Display for ImpressionKey {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}.{}", self.design, self.number)
    }
}

/// The record that a picture belongs to.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum PictureOwner {
    /// A drawing, block or illustration recorded with the design.
    Design(Key),
    /// A photograph of an impression.
    Impression(ImpressionKey),
    /// A picture of a document.
    Document(Key),
}

/// What stands before the key of a document in the key of a picture, because a design may have the same key.
const DOCUMENT: &str = "document/";

impl FromStr for PictureOwner {
    type Err = NotAKey;

    fn from_str(text: &str) -> Result<PictureOwner, NotAKey> {
        if let Some(document) = text.strip_prefix(DOCUMENT) {
            return Ok(PictureOwner::Document(document.parse()?));
        }
        match text.parse() {
            Ok(impression) => Ok(PictureOwner::Impression(impression)),
            Err(NotAKey) => Ok(PictureOwner::Design(text.parse()?)),
        }
    }
}

impl fmt::Display for PictureOwner {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            PictureOwner::Design(key) => key.fmt(f),
            PictureOwner::Impression(key) => key.fmt(f),
            PictureOwner::Document(key) => write!(f, "{DOCUMENT}{key}"),
        }
    }
}

/// The key of a picture: `14.7/recto`, `14/drawing` for one of the design's own, `document/ledger/leaf-3` for one of a
/// document.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct PictureKey {
    /// The record it belongs to.
    pub owner: PictureOwner,
    /// Its name within that record.
    pub name: Key,
}

impl FromStr for PictureKey {
    type Err = NotAKey;

    fn from_str(text: &str) -> Result<PictureKey, NotAKey> {
        let (owner, name) = text.rsplit_once('/').ok_or(NotAKey)?;
        Ok(PictureKey {
            owner: owner.parse()?,
            name: name.parse()?,
        })
    }
}

impl fmt::Display for PictureKey {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}/{}", self.owner, self.name)
    }
}

/// The key of a design and that of one of its parts: `14/cut-down`.
///
/// # Errors
/// [`NotAKey`] where the text is not two keys with a stroke between them.
pub(crate) fn split_part(text: &str) -> Result<(Key, Key), NotAKey> {
    let (design, part) = text.split_once('/').ok_or(NotAKey)?;
    Ok((design.parse()?, part.parse()?))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn ok_keys_are_lower_case_words_joined_by_single_hyphens() {
        for text in ["14", "12a", "the-last-ferry", "0"] {
            assert_eq!(
                text.parse::<Key>().map(|k| k.to_string()),
                Ok(text.to_owned())
            );
        }
    }

    #[test]
    fn err_keys_with_anything_else() {
        for text in ["", "-a", "a-", "a--b", "A", "ä", "a b", "a/b", "..", "a.b"] {
            assert_eq!(text.parse::<Key>(), Err(NotAKey), "{text:?}");
        }
    }

    #[test]
    fn the_nearest_form_of_a_title_is_a_key() {
        assert_eq!(
            Key::nearest_form("The Last Ferry!").unwrap().as_str(),
            "the-last-ferry"
        );
        assert_eq!(Key::nearest_form("???"), None);
    }

    #[test]
    fn a_picture_belongs_to_an_impression_or_to_a_design() {
        let of_sheet: PictureKey = "14.7/recto".parse().unwrap();
        assert!(matches!(of_sheet.owner, PictureOwner::Impression(ref k) if k.number == 7));
        let of_design: PictureKey = "14/drawing".parse().unwrap();
        assert!(matches!(of_design.owner, PictureOwner::Design(_)));
        assert_eq!(of_sheet.to_string(), "14.7/recto");
        let of_document: PictureKey = "document/ledger/leaf-3".parse().unwrap();
        assert!(matches!(of_document.owner, PictureOwner::Document(_)));
        assert_eq!(of_document.to_string(), "document/ledger/leaf-3");
        assert_eq!("ledger/leaf/3".parse::<PictureKey>(), Err(NotAKey));
    }

    #[test]
    fn impressions_count_from_one_without_leading_zeros() {
        assert!("14.7".parse::<ImpressionKey>().is_ok());
        for text in ["14.0", "14.07", "14.", "14", "14.-1", "14.99999999999"] {
            assert!(text.parse::<ImpressionKey>().is_err(), "{text:?}");
        }
    }
}
