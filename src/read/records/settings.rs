//! `catalogue.toml`.

use crate::model::key::Key;
use crate::model::picture::PictureDefaults;
use crate::model::place::{Place, Placed};
use crate::model::settings::{Ink, Settings};
use crate::read::records::pictures::picture_defaults;
use crate::read::table::fields::Fields;
use crate::read::values;

/// The longest published side of a picture where the catalogue sets none, in px: more than a wall
/// screen shows at once.
const LARGEST: u32 = 4000;

/// The JPEG quality where the catalogue sets none.
const QUALITY: u8 = 85;

/// The memory for pictures where the catalogue sets none, in MiB: enough for a JPEG of 200 million pixels, or for
/// six photographs of 24 million at once.
const PICTURE_MEMORY: u32 = 1024;

/// The settings of a catalogue that has no `catalogue.toml`.
pub(crate) fn blank(place: Place) -> Settings {
    let empty = Placed::new(String::new(), place);
    Settings {
        title: empty.clone(),
        siglum: empty.clone(),
        artist: None,
        editors: Vec::new(),
        pages: Vec::new(),
        edition: None,
        dated: None,
        language: Placed::new("en".to_owned(), place),
        address: empty,
        licence: None,
        work_rights: None,
        contact: None,
        oai_gateway: None,
        theme: Placed::new(Key::built_in_theme(), place),
        ink: Ink::default(),
        principles: Vec::new(),
        private_owner: None,
        largest: LARGEST,
        quality: QUALITY,
        pictures: PictureDefaults::default(),
        picture_memory: PICTURE_MEMORY,
        cautions: Vec::new(),
        place,
    }
}

/// Reads the settings.
pub(crate) fn settings(fields: &mut Fields<'_, '_>) -> Settings {
    let mut settings = blank(fields.at);
    if let Some(title) = fields.text("title") {
        settings.title = title;
    }
    if let Some(siglum) = fields.text("siglum") {
        settings.siglum = siglum;
    }
    settings.artist = fields.key("artist");
    settings.editors = fields.keys("editors");
    settings.pages = fields.keys("pages");
    settings.edition = fields.words("edition");
    settings.dated = fields.date("dated");
    if let Some(language) = fields.one("language", values::language) {
        settings.language = language;
    }
    if let Some(address) = fields.one("address", values::web) {
        settings.address = address.map(|address| address.trim_end_matches('/').to_owned());
    }
    settings.licence = fields.words("licence");
    settings.work_rights = fields.words("work_rights");
    settings.contact = fields.words("contact");
    settings.oai_gateway = fields
        .one("oai_gateway", values::web)
        .map(|gateway| gateway.map(|gateway| gateway.trim_end_matches('/').to_owned()));
    if let Some(theme) = fields.key("theme") {
        settings.theme = theme;
    }
    if let Some(ink) = fields.one("ink", values::colour) {
        settings.ink = ink.value;
    }
    settings.principles = headed(fields, "principles");
    let private_owner = fields.table("privacy", |fields| fields.words("private_owner"));
    settings.private_owner = private_owner.flatten();
    let pictures = fields.table("pictures", |fields| {
        let quality = fields
            .whole("quality")
            .and_then(|q| u8::try_from(q.value).ok());
        let largest = fields.whole("largest").map(|largest| largest.value);
        let memory = fields.whole("memory").map(|memory| memory.value);
        (quality, largest, memory, picture_defaults(fields))
    });
    let (quality, largest, memory, defaults) = pictures.unwrap_or_default();
    settings.pictures = defaults;
    settings.picture_memory = memory.unwrap_or(PICTURE_MEMORY);
    settings.quality = quality.unwrap_or(QUALITY);
    settings.largest = largest.unwrap_or(LARGEST);
    settings.cautions = headed(fields, "cautions");
    settings
}

/// Texts under headings of the catalogue's own.
fn headed(fields: &mut Fields<'_, '_>, name: &'static str) -> Vec<(String, String)> {
    fields.map(name, |faults, header, entry| {
        // Any heading is allowed here. But a heading that is the name of a required key which the catalogue
        // lacks is taken for that key.
        if (faults.is_wanted(entry.key.get_ref()) || !entry.node.get_ref().is_str())
            && faults.swallowed(entry.key, header, false)
        {
            return None;
        }
        let text = values::telling_text(faults, entry.node)?;
        Some((entry.key.get_ref().to_string(), text.value))
    })
}
