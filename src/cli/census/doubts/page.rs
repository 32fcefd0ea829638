//! The page for the editors: each pair with both records and photographs side by side, the reasons, and
//! what to write to settle it.
//!
//! One file that loads nothing: its photographs are in it, small. Everything from a record is escaped by
//! the template.
//!
//! It is made here and not in `page`, because it shows private fields and unpublished photographs, and
//! `page` accepts the public catalogue alone. Its template is part of the program; a theme has no part in
//! it.

use std::fmt::Write as _;
use std::io;
use std::path::{Component, Path};

use serde::Serialize;
use tera::{Context, Tera};

use super::facts::{Row, rows};
use super::{OfDesign, bearing_word, page_file, stated_why, text, verdict};
use crate::audit::same_sheet;
use crate::model::catalogue::Catalogue;
use crate::model::impression::Impression;
use crate::model::key::ImpressionKey;
use crate::model::picture::{Picture, View};
use crate::model::words::Side;
use crate::picture::{Plan, small};
use crate::study::Studies;
use crate::study::same_sheet::RecordPair;

/// The longest side in px of a photograph on the page.
const LONGEST: u32 = 900;

#[derive(Serialize)]
struct Page {
    mark: &'static str,
    language: &'static str,
    title: String,
    counted: String,
    designs: Vec<OnPage>,
}

#[derive(Serialize)]
struct OnPage {
    number: String,
    title: String,
    pairs: Vec<PairOnPage>,
}

#[derive(Serialize)]
struct PairOnPage {
    id: String,
    one: RecordOnPage,
    other: RecordOnPage,
    verdict: &'static str,
    is_stated: bool,
    why: Option<String>,
    /// What speaks for, against, and excludes; empty ones left out.
    reasons: Vec<Weighed>,
    rows: Vec<Row>,
    /// Where to write what settles it.
    file: String,
    settling: Vec<Settling>,
}

#[derive(Serialize)]
struct RecordOnPage {
    key: String,
    file: String,
    picture: Option<PictureOnPage>,
    /// Why its photograph is not shown.
    no_picture: Option<String>,
}

#[derive(Serialize)]
struct PictureOnPage {
    address: String,
    width: u32,
    height: u32,
    credit: Option<String>,
}

#[derive(Serialize)]
struct Weighed {
    word: &'static str,
    /// Whether it speaks for one sheet.
    is_for: bool,
    says: Vec<ReasonOnPage>,
}

#[derive(Serialize)]
struct ReasonOnPage {
    text: String,
    /// "7.toml:14", of both records.
    places: [String; 2],
}

#[derive(Serialize)]
struct Settling {
    when: &'static str,
    line: String,
}

/// The page as text.
///
/// # Errors
/// Where the template is broken or asks for what the page does not hold.
pub(super) fn page(
    dir: &Path,
    catalogue: &Catalogue,
    studies: &Studies,
    found: &[OfDesign<'_>],
) -> io::Result<String> {
    let on_page = |of: &OfDesign<'_>| OnPage {
        number: of.design.number.clone(),
        title: of
            .design
            .title()
            .map_or_else(String::new, |t| t.text.value.clone()),
        pairs: of
            .pairs
            .iter()
            .filter_map(|pair| pair_on_page(dir, catalogue, studies, pair))
            .collect(),
    };
    let page = Page {
        mark: page_file::MARK,
        language: "en",
        title: catalogue.settings.title.value.clone(),
        counted: text::counted_pairs(found),
        designs: found.iter().map(on_page).collect(),
    };
    set(include_str!("page.html"), &page)
}

/// Fills the template.
fn set(template: &str, page: &Page) -> io::Result<String> {
    let mut tera = Tera::default();
    let filled = tera
        .add_raw_template("doubts.html", template)
        .and_then(|()| tera.render("doubts.html", &Context::from_serialize(page)?));
    filled.map_err(|fault| {
        let message = format!("the page of open doubts cannot be made: {fault}");
        io::Error::other(message)
    })
}

fn pair_on_page(
    dir: &Path,
    catalogue: &Catalogue,
    studies: &Studies,
    pair: &RecordPair,
) -> Option<PairOnPage> {
    let [one, other] = pair.records.each_ref().map(|key| catalogue.impression(key));
    let (one, other) = (one?, other?);
    let mut reasons: Vec<Weighed> = Vec::new();
    for reason in &pair.reasons {
        let word = bearing_word(reason.bearing);
        let said = ReasonOnPage {
            text: same_sheet::reason_in_full(catalogue, studies, &pair.records, reason)
                .replace('`', ""),
            places: reason.places.map(|place| {
                let line = catalogue.sources.position(place).line;
                format!("{}:{line}", file_of(catalogue.sources.path(place.file)))
            }),
        };
        match reasons.iter_mut().find(|weighed| weighed.word == word) {
            Some(weighed) => weighed.says.push(said),
            None => reasons.push(Weighed {
                word,
                is_for: reason.bearing.is_for(),
                says: vec![said],
            }),
        }
    }
    let (file, settling) = settling(catalogue, pair);
    Some(PairOnPage {
        id: format!("{}-{}", pair.records[0], pair.records[1]).replace('.', "-"),
        one: record(dir, catalogue, one),
        other: record(dir, catalogue, other),
        verdict: verdict(pair),
        is_stated: pair.is_stated,
        why: stated_why(catalogue, &pair.records).map(str::to_owned),
        reasons,
        rows: rows(catalogue, one, other),
        file,
        settling,
    })
}

/// A file's name, without the folders that all records of a design share.
fn file_of(path: &str) -> &str {
    path.rsplit('/').next().unwrap_or(path)
}

/// In which record to write what: in the one that says that they may be one, else in the later one.
fn settling(catalogue: &Catalogue, pair: &RecordPair) -> (String, Vec<Settling>) {
    let [one, other] = &pair.records;
    let says = |from: &ImpressionKey, to: &ImpressionKey| {
        catalogue.impression(from).is_some_and(|record| {
            record
                .maybe_same_as
                .iter()
                .any(|o| o.impression.value == *to)
        })
    };
    let (from, to) = if says(one, other) {
        (one, other)
    } else {
        (other, one)
    };
    let file = catalogue
        .impression(from)
        .map_or("", |record| catalogue.sources.path(record.place.file));
    let line = |key: &str| format!("{key} = [{{ impression = \"{to}\", why = \"…\" }}]");
    let mut settling = vec![
        Settling {
            when: "They are one",
            line: line("same_as"),
        },
        Settling {
            when: "They are two",
            line: line("not_same_as"),
        },
    ];
    if !pair.is_stated {
        settling.push(Settling {
            when: "It stays open",
            line: line("maybe_same_as"),
        });
    }
    (file.to_owned(), settling)
}

fn record(dir: &Path, catalogue: &Catalogue, impression: &Impression) -> RecordOnPage {
    let shown = best(&impression.pictures).map(|picture| shown(dir, picture));
    let (picture, no_picture) = match shown {
        None => (None, Some("no photograph is recorded".to_owned())),
        Some(Ok(picture)) => (Some(picture), None),
        Some(Err(why)) => (None, Some(why)),
    };
    RecordOnPage {
        key: impression.key.to_string(),
        file: catalogue.sources.path(impression.place.file).to_owned(),
        picture,
        no_picture,
    }
}

/// The photograph that shows most: the whole recto, or else the first.
fn best(pictures: &[Picture]) -> Option<&Picture> {
    let whole = |p: &&Picture| p.side == Side::Recto && p.view == View::Whole;
    pictures.iter().find(whole).or_else(|| pictures.first())
}

fn shown(dir: &Path, picture: &Picture) -> Result<PictureOnPage, String> {
    let path = Path::new(&picture.path);
    if !path.components().all(|c| matches!(c, Component::Normal(_))) {
        return Err("its photograph lies outside the catalogue".to_owned());
    }
    let small = small(&dir.join(path), LONGEST, Plan::default().pixel_limit)
        .map_err(|fault| format!("its photograph cannot be shown: {fault}"))?;
    Ok(PictureOnPage {
        address: format!("data:image/jpeg;base64,{}", base64(&small.jpeg)),
        width: small.width,
        height: small.height,
        credit: picture.credit.clone(),
    })
}

/// Bytes as text (RFC 4648, section 4).
fn base64(bytes: &[u8]) -> String {
    const LETTERS: &[u8; 64] = b"ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";
    let mut text = String::with_capacity(bytes.len().div_ceil(3) * 4);
    for three in bytes.chunks(3) {
        let byte = |at: usize| u32::from(three.get(at).copied().unwrap_or(0));
        let bits = byte(0) << 16 | byte(1) << 8 | byte(2);
        for letter in 0..4_u32 {
            let at = usize::try_from(bits >> (18 - 6 * letter) & 63).unwrap_or(0);
            if usize::try_from(letter).unwrap_or(4) <= three.len() {
                let _ = write!(text, "{}", char::from(LETTERS[at]));
            } else {
                text.push('=');
            }
        }
    }
    text
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_template_that_cannot_be_filled_makes_no_page() {
        let page = Page {
            mark: page_file::MARK,
            language: "en",
            title: "Prints".to_owned(),
            counted: String::new(),
            designs: Vec::new(),
        };
        assert_eq!(set("{{ title }}", &page).unwrap(), "Prints");
        for broken in ["{{ heading }}", "{% if title %}"] {
            let message = set(broken, &page).unwrap_err().to_string();
            let begins = "the page of open doubts cannot be made: ";
            assert!(message.starts_with(begins), "{message}");
            assert!(message.contains("doubts.html:1"), "{message}");
        }
    }

    /// RFC 4648, section 10.
    #[test]
    fn bytes_are_written_as_the_standard_writes_them() {
        for (bytes, text) in [
            ("", ""),
            ("f", "Zg=="),
            ("fo", "Zm8="),
            ("foo", "Zm9v"),
            ("foob", "Zm9vYg=="),
            ("fooba", "Zm9vYmE="),
            ("foobar", "Zm9vYmFy"),
        ] {
            assert_eq!(base64(bytes.as_bytes()), text);
        }
    }
}
