//! Settings: `catalogue.toml`.

use super::edtf::Date;
use super::key::Key;
use super::picture::PictureDefaults;
use super::place::{Place, Placed};

/// The settings of a catalogue.
#[derive(Clone, Debug, PartialEq)]
pub struct Settings {
    /// Its title.
    pub title: Placed<String>,
    /// Its short form in citations: "XY 14.7".
    pub siglum: Placed<String>,
    /// The artist, a person's key.
    pub artist: Option<Placed<Key>>,
    /// The editors, people's keys.
    pub editors: Vec<Placed<Key>>,
    /// The catalogue's own pages in the order of its lists; those not named follow.
    pub pages: Vec<Placed<Key>>,
    /// The edition, as text.
    pub edition: Option<String>,
    /// The date of the edition.
    pub dated: Option<Placed<Date>>,
    /// The language of its own text, BCP 47.
    pub language: Placed<String>,
    /// Where it is published, without a slash at the end.
    pub address: Placed<String>,
    /// The licence of the catalogue's own text and data.
    pub licence: Option<String>,
    /// The rights in the works themselves.
    pub work_rights: Option<String>,
    /// Where to write to.
    pub contact: Option<String>,
    /// The gateway through which harvesters read the OAI-PMH static repository, without a slash at the end.
    pub oai_gateway: Option<Placed<String>>,
    /// The theme.
    pub theme: Placed<Key>,
    /// The block ink: the colour of numerals, links and differences.
    pub ink: Ink,
    /// The principles of the catalogue (states, counting, measuring): heading key and text.
    pub principles: Vec<(String, String)>,
    /// The text that readers see in place of a private owner's name; `None`: the theme's text.
    pub private_owner: Option<String>,
    /// The longest published side of a picture, in px.
    pub largest: u32,
    /// The JPEG quality of published pictures, 1 to 100.
    pub quality: u8,
    /// What holds for every picture that says nothing of its own.
    pub pictures: PictureDefaults,
    /// The memory that pictures may take at once while they are made ready, in MiB.
    pub picture_memory: u32,
    /// The catalogue's own additions to the cautions: heading key and text.
    pub cautions: Vec<(String, String)>,
    /// Where it is recorded.
    pub place: Place,
}

/// A colour as red, green and blue, sRGB.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Ink(pub [u8; 3]);

impl Ink {
    /// Reads `#rrggbb`.
    #[must_use]
    pub fn parse(text: &str) -> Option<Ink> {
        let digits = text
            .strip_prefix('#')
            .filter(|d| d.len() == 6 && d.is_ascii())?;
        let part = |at: usize| u8::from_str_radix(digits.get(at..at + 2)?, 16).ok();
        Some(Ink([part(0)?, part(2)?, part(4)?]))
    }
}

impl Default for Ink {
    /// A blue-black, used where the catalogue sets no ink.
    fn default() -> Ink {
        Ink([0x1f, 0x3a, 0x4d])
    }
}

impl std::fmt::Display for Ink {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        let [r, g, b] = self.0;
        write!(f, "#{r:02x}{g:02x}{b:02x}")
    }
}
