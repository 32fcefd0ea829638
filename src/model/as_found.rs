//! As found: what others record of the same thing. A holder's own description of a sheet, in its words, and identifiers
//! under which a sheet, design, person or holder is known elsewhere.

use super::edtf::Date;
use super::place::{Place, Placed};

/// A holder's own description of a sheet, field by field.
#[derive(Clone, Debug, PartialEq)]
pub struct AsGiven {
    /// The fields, in the order of the record; their names are the holder's.
    pub fields: Vec<GivenField>,
    /// When the description was seen. Holders revise their records.
    pub seen: Option<Placed<Date>>,
    /// Where it was taken from: an address on the web, or words.
    pub source: Option<Placed<String>>,
    /// The language of its names and texts, BCP 47.
    pub lang: Option<Placed<String>>,
    /// Where it is recorded.
    pub place: Place,
}

/// A field of a holder's own description.
#[derive(Clone, Debug, PartialEq)]
pub struct GivenField {
    /// Its name: "Medium".
    pub name: Placed<String>,
    /// Its text.
    pub text: Placed<String>,
}

/// An identifier of a record elsewhere.
#[derive(Clone, Debug, PartialEq)]
pub struct OtherId {
    /// Who gives such identifiers: an authority file, a database, a union catalogue.
    pub scheme: Placed<String>,
    /// The identifier as it is written there.
    pub id: Placed<String>,
}

impl OtherId {
    /// The identifier as an address, where it is one (`http` or `https`).
    #[must_use]
    pub fn address(&self) -> Option<&str> {
        web_address(&self.id)
    }
}

impl AsGiven {
    /// The source as an address, where it is one.
    #[must_use]
    pub fn address(&self) -> Option<&str> {
        web_address(self.source.as_ref()?)
    }

    /// The tag of its language, where it is recorded.
    #[must_use]
    pub fn language(&self) -> Option<&str> {
        self.lang.as_ref().map(|lang| lang.value.as_str())
    }
}

/// A text that is nothing but an address on the web.
fn web_address(text: &str) -> Option<&str> {
    let text = text.trim();
    let rest = text
        .strip_prefix("https://")
        .or_else(|| text.strip_prefix("http://"))?;
    let is_whole = !rest.is_empty() && !text.contains(|c: char| c.is_whitespace());
    is_whole.then_some(text)
}

#[cfg(test)]
mod tests {
    use super::web_address;

    #[test]
    fn an_address_is_the_whole_text() {
        assert_eq!(
            web_address(" https://museum.example.org/object/7 "),
            Some("https://museum.example.org/object/7")
        );
        for text in [
            "1962.44",
            "https://",
            "see https://museum.example.org",
            "https://a b",
        ] {
            assert_eq!(web_address(text), None, "{text}");
        }
    }
}
