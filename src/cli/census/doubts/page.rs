//! The page for the editors: each pair with both records and photographs side by side, the reasons, and
//! what to write to settle it.
//!
//! One file that loads nothing: its photographs are in it, small. Everything from a record is escaped by
//! the template.
//!
//! It is made here and not in `page`, because it shows private fields and unpublished photographs, and
//! `page` accepts the public catalogue alone. Its template is part of the program and cannot be
//! overridden by a theme.

use std::fmt::Write as _;
use std::io;
use std::path::{Component, Path};

use serde::Serialize;
use tera::{Context, Tera};

use super::facts::{Row, rows};
use super::pairs::{DesignPairs, bearing_word, stated_why, verdict};
use super::{page_file, text};
use crate::audit::same_sheet;
use crate::model::catalogue::Catalogue;
use crate::model::impression::Impression;
use crate::model::key::{ImpressionKey, PictureOwner};
use crate::model::picture::{Picture, View};
use crate::model::words::Side;
use crate::picture::{Limits, small};
use crate::study::Studies;
use crate::study::same_sheet::RecordPair;

/// The longest side in px of a photograph on the page.
const LONGEST: u32 = 900;

#[derive(Serialize)]
struct DoubtsPage {
    mark: &'static str,
    language: &'static str,
    title: String,
    counted: String,
    designs: Vec<DesignSection>,
}

#[derive(Serialize)]
struct DesignSection {
    number: String,
    title: String,
    pairs: Vec<PairSection>,
}

#[derive(Serialize)]
struct PairSection {
    id: String,
    one: RecordView,
    other: RecordView,
    verdict: &'static str,
    is_stated: bool,
    why: Option<String>,
    /// The reasons, grouped by their bearing; groups without reasons are left out.
    reasons: Vec<ReasonGroup>,
    rows: Vec<Row>,
    /// The record to write one of the lines in.
    file: String,
    lines: Vec<SettlingLine>,
}

#[derive(Serialize)]
struct RecordView {
    /// As readers cite it.
    number: String,
    file: String,
    picture: Option<PictureView>,
    /// Why its photograph is not shown.
    no_picture: Option<String>,
}

#[derive(Serialize)]
struct PictureView {
    address: String,
    width: u32,
    height: u32,
    credit: Option<String>,
}

#[derive(Serialize)]
struct ReasonGroup {
    word: &'static str,
    /// Whether they speak for one sheet.
    is_for: bool,
    reasons: Vec<ReasonView>,
}

#[derive(Serialize)]
struct ReasonView {
    text: String,
    /// "7.toml:14", of both records.
    places: [String; 2],
}

#[derive(Serialize)]
struct SettlingLine {
    when: &'static str,
    line: String,
}

/// The page as text.
///
/// # Errors
/// Where the template is broken, or uses a field that the page does not have.
pub(super) fn page(
    dir: &Path,
    catalogue: &Catalogue,
    studies: &Studies,
    found: &[DesignPairs<'_>],
) -> io::Result<String> {
    let on_page = |of: &DesignPairs<'_>| DesignSection {
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
    let page = DoubtsPage {
        mark: page_file::MARK,
        language: "en",
        title: catalogue.settings.title.value.clone(),
        counted: text::counted_pairs(found),
        designs: found.iter().map(on_page).collect(),
    };
    set(include_str!("page.html"), &page)
}

/// Fills the template.
fn set(template: &str, page: &DoubtsPage) -> io::Result<String> {
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
) -> Option<PairSection> {
    let [one, other] = pair.records.each_ref().map(|key| catalogue.impression(key));
    let (one, other) = (one?, other?);
    let mut reasons: Vec<ReasonGroup> = Vec::new();
    for reason in &pair.reasons {
        let word = bearing_word(reason.bearing);
        let view = ReasonView {
            text: same_sheet::reason_in_full(catalogue, studies, &pair.records, reason)
                .replace('`', ""),
            places: reason.places.map(|place| {
                let line = catalogue.sources.position(place).line;
                format!("{}:{line}", file_of(catalogue.sources.path(place.file)))
            }),
        };
        match reasons.iter_mut().find(|group| group.word == word) {
            Some(group) => group.reasons.push(view),
            None => reasons.push(ReasonGroup {
                word,
                is_for: reason.bearing.is_for(),
                reasons: vec![view],
            }),
        }
    }
    let (file, lines) = settling_lines(catalogue, pair);
    Some(PairSection {
        id: format!("{}-{}", pair.records[0], pair.records[1]).replace('.', "-"),
        one: record(dir, catalogue, one),
        other: record(dir, catalogue, other),
        verdict: verdict(pair),
        is_stated: pair.is_stated,
        why: stated_why(catalogue, &pair.records).map(str::to_owned),
        reasons,
        rows: rows(catalogue, one, other),
        file,
        lines,
    })
}

/// A file's name, without the folders that all records of a design share.
fn file_of(path: &str) -> &str {
    path.rsplit('/').next().unwrap_or(path)
}

/// The lines that settle a pair, and the file to write one in: the record that states that they may be one
/// sheet, or else the later one.
fn settling_lines(catalogue: &Catalogue, pair: &RecordPair) -> (String, Vec<SettlingLine>) {
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
        SettlingLine {
            when: "They are one",
            line: line("same_as"),
        },
        SettlingLine {
            when: "They are two",
            line: line("not_same_as"),
        },
    ];
    if !pair.is_stated {
        settling.push(SettlingLine {
            when: "It stays open",
            line: line("maybe_same_as"),
        });
    }
    (file.to_owned(), settling)
}

fn record(dir: &Path, catalogue: &Catalogue, impression: &Impression) -> RecordView {
    let owner = PictureOwner::Impression(impression.key.clone());
    let view = best(&impression.pictures).map(|picture| {
        let terms = catalogue.picture_terms(&owner, picture);
        picture_view(dir, picture, terms.credit)
    });
    let (picture, no_picture) = match view {
        None => (None, Some("no photograph is recorded".to_owned())),
        Some(Ok(picture)) => (Some(picture), None),
        Some(Err(why)) => (None, Some(why)),
    };
    RecordView {
        number: catalogue.sheet_number(&impression.key),
        file: catalogue.sources.path(impression.place.file).to_owned(),
        picture,
        no_picture,
    }
}

/// The photograph to show: one of the whole recto, or else the first.
fn best(pictures: &[Picture]) -> Option<&Picture> {
    let whole = |p: &&Picture| p.side == Side::Recto && p.view == View::Whole;
    pictures.iter().find(whole).or_else(|| pictures.first())
}

fn picture_view(
    dir: &Path,
    picture: &Picture,
    credit: Option<&str>,
) -> Result<PictureView, String> {
    let path = Path::new(&picture.path);
    if !path.components().all(|c| matches!(c, Component::Normal(_))) {
        return Err("its photograph lies outside the catalogue".to_owned());
    }
    let small = small(&dir.join(path), LONGEST, Limits::default())
        .map_err(|fault| format!("its photograph cannot be shown: {fault}"))?;
    Ok(PictureView {
        address: format!("data:image/jpeg;base64,{}", base64(&small.jpeg)),
        width: small.width,
        height: small.height,
        credit: credit.map(str::to_owned),
    })
}

/// Encodes bytes in base 64 (RFC 4648, section 4).
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
        let page = DoubtsPage {
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
