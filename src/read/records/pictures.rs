//! Pictures: the tables in which records describe them, and whether their files exist.
//!
//! Files are named relative to the design's folder and may not lie outside it. The picture stage checks
//! whether a file can be decoded.

use std::collections::BTreeMap;

use crate::model::codes::Code;
use crate::model::finding::Finding;
use crate::model::key::Key;
use crate::model::picture::{Picture, PictureDefaults, View};
use crate::model::place::{Place, Placed};
use crate::model::provenance::Party;
use crate::model::words::Side;
use crate::read::faults::{Faults, Node};
use crate::read::files::kind::Location;
use crate::read::files::load::not_a_file;
use crate::read::files::nature::Nature;
use crate::read::records::provenance::party;
use crate::read::shape::Takes;
use crate::read::table::fields::Fields;
use crate::read::values;
use crate::read::values::near::nearest;

/// A folder of records, for finding the files that they name: a design's, or that of the documents.
pub(crate) struct Folder<'a> {
    /// Its path: `records/designs/14`.
    pub(crate) path: String,
    /// Every file of the catalogue by path, with its location.
    pub(crate) files: &'a BTreeMap<String, Location>,
}

/// Reads the keys that all pictures have; the further keys of a design's pictures are read elsewhere.
pub(crate) fn picture(fields: &mut Fields<'_, '_>, folder: &Folder<'_>) -> Option<Picture> {
    let name = fields.key("name");
    let side = fields.word::<Side>("side");
    let view = fields.word("view").map_or(View::Whole, |view| view.value);
    let caption = fields.words("caption");
    let date = fields.date("date");
    // A picture by somebody whose name is withheld is one by nobody.
    let by = fields
        .one("by", party)
        .filter(|by| *by != Party::Undisclosed);
    let light = fields.words("light");
    let px_per_mm = fields.one("px_per_mm", values::above_0);
    let area = fields
        .one("box", values::percent_box)
        .map(|area| area.value);
    let mirrored = fields.flag("mirrored").unwrap_or(false);
    let ties = fields.one("ties", ties).unwrap_or_default();
    let bare_paper = fields
        .one("bare_paper", values::percent_box)
        .map(|part| part.value);
    let largest = fields.whole("largest").map(|largest| largest.value);
    let rights = fields.one("rights", values::telling_text);
    // A key that is misspelt, misplaced or hidden by a fault of syntax has a finding of its own.
    let rights = match rights {
        None if fields.has("rights") || fields.seems_to_have("rights") => {
            Some(Placed::new(String::new(), fields.at))
        }
        rights => rights,
    };
    let credit = fields.words("credit");
    let publish = fields.flag("publish");
    let found = fields.one("file", |faults, node| file(faults, node, folder));
    let (file, path) = found?;
    let side_place = side.as_ref().map_or(file.place, |side| side.place);
    let side = side.map_or(Side::Recto, |side| side.value);
    let name = match name {
        Some(name) => name,
        // Every word for a side has the form of a key.
        None => Placed::new(side.to_string().parse::<Key>().ok()?, side_place),
    };
    Some(Picture {
        name,
        file,
        path,
        side,
        view,
        caption,
        date,
        by,
        light,
        px_per_mm: px_per_mm.map(|scale| scale.value),
        area,
        mirrored,
        ties,
        bare_paper,
        largest,
        rights,
        credit,
        publish,
        of: None,
        cite: None,
        at: None,
        place: fields.at,
    })
}

/// Reads what holds for pictures that say nothing of their own.
pub(crate) fn picture_defaults(fields: &mut Fields<'_, '_>) -> PictureDefaults {
    PictureDefaults {
        rights: fields.text("rights"),
        credit: fields.text("credit"),
        publish: fields.one("publish", values::flag),
    }
}

/// The pictures of one record.
pub(crate) struct Pictures {
    /// Those that could be read.
    pub(crate) all: Vec<Picture>,
    /// Whether some could not be read: then a picture that seems to be missing may be one of those.
    pub(crate) lacks_some: bool,
}

/// Reads `[[pictures]]`, calling `read` for each.
pub(crate) fn pictures<'t>(
    fields: &mut Fields<'_, 't>,
    read: impl FnMut(&mut Fields<'_, 't>) -> Option<Picture>,
) -> Pictures {
    let written = fields.take("pictures").map_or(0, |node| {
        node.get_ref().as_array().map_or(1, |list| list.len())
    });
    let all = fields.tables("pictures", read);
    distinct_names(fields.faults, &all);
    Pictures {
        lacks_some: all.len() < written || fields.is_misspelt("pictures"),
        all,
    }
}

/// Reports pictures of one record that have the same name.
fn distinct_names(faults: &mut Faults<'_>, pictures: &[Picture]) {
    let mut first: BTreeMap<&Key, Place> = BTreeMap::new();
    for picture in pictures {
        let name = &picture.name;
        if let Some(earlier) = first.get(&name.value) {
            let finding = Finding::new(
                Code::KeyTwice,
                name.place,
                format!("there are two pictures `{}`", name.value),
            )
            .beside(*earlier, "the first")
            .help("give one of the two a `name` of its own; without one a picture is named after its side");
            faults.push(finding);
        } else {
            first.insert(&name.value, name.place);
        }
    }
}

/// `[x, y, x, y]` in percent, four or more, or none.
fn ties<'t>(faults: &mut Faults<'t>, node: &'t Node<'t>) -> Option<Vec<[f64; 4]>> {
    let Some(list) = node.get_ref().as_array() else {
        faults.wrong_form(node, "a list of ties", &Takes::Ties.example());
        return None;
    };
    let ties: Vec<_> = list
        .iter()
        .filter_map(|node| values::four_percent(faults, node))
        .map(|tie| tie.value)
        .collect();
    if !list.is_empty() && list.len() < 4 {
        let finding = Finding::new(
            Code::ValueRange,
            faults.of(node),
            "fewer than four ties fix no picture",
        );
        faults.push(finding.help("tie four points or more, or none"));
        return None;
    }
    (ties.len() == list.len()).then_some(ties)
}

/// The file of a picture as the record names it, and its path relative to the catalogue.
fn file<'t>(
    faults: &mut Faults<'t>,
    node: &'t Node<'t>,
    folder: &Folder<'_>,
) -> Option<(Placed<String>, String)> {
    let named = values::telling_text(faults, node)?;
    if named.value.trim().is_empty() {
        return None;
    }
    let Some(path) = below(&folder.path, &named.value) else {
        leaves(faults, &named, "leads out of the folder of its record");
        return None;
    };
    let ancestors = path.match_indices('/').filter_map(|(at, _)| path.get(..at));
    let leads_out = ancestors
        .chain(std::iter::once(path.as_str()))
        .any(|path| folder.files.get(path) == Some(&Location::Outside));
    if leads_out {
        leaves(faults, &named, "is a link that leads out of the catalogue");
        return None;
    }
    match folder.files.get(&path) {
        // A folder may lie among the pictures where no record takes it for one. Anything else that is not a
        // file is reported where it is.
        Some(Location::NotAFile(Nature::Folder)) => {
            faults.push(not_a_file(&named.value, Nature::Folder, named.place));
        }
        Some(_) => {}
        None => missing(faults, &named, folder),
    }
    Some((named, path))
}

/// The path of `named` below `folder`, with `.` and `..` resolved; `None` where it leads out of the
/// folder, or where another operating system might read it as another path.
fn below(folder: &str, named: &str) -> Option<String> {
    let strange = |c: char| c == '\\' || c == ':' || c.is_control();
    if named.starts_with('/') || named.contains(strange) {
        return None;
    }
    let mut parts: Vec<&str> = Vec::new();
    for part in named.split('/') {
        match part {
            "" | "." => {}
            ".." => {
                parts.pop()?;
            }
            part => parts.push(part),
        }
    }
    (!parts.is_empty()).then(|| format!("{folder}/{}", parts.join("/")))
}

fn leaves(faults: &mut Faults<'_>, named: &Placed<String>, how: &str) {
    let message = format!("\"{}\" {how}", named.value);
    let finding = Finding::new(Code::PathLeaves, named.place, message);
    faults.push(finding.help(
        "keep the picture in the folder of its record and name it from there, with strokes: \"pictures/1-recto.jpg\"",
    ));
}

fn missing(faults: &mut Faults<'_>, named: &Placed<String>, folder: &Folder<'_>) {
    let message = format!("there is no picture \"{}\"", named.value);
    let finding = Finding::new(Code::PictureMissing, named.place, message);
    let prefix = format!("{}/", folder.path);
    let pictures = format!("{prefix}pictures/");
    let there = folder
        .files
        .range(pictures.clone()..)
        .take_while(|(path, _)| path.starts_with(&pictures))
        .filter_map(|(path, _)| path.strip_prefix(&prefix));
    let help = match nearest(&named.value, there) {
        Some(near) => format!("did you mean \"{near}\"?"),
        None => format!("put the file into {prefix}pictures/, or correct its name"),
    };
    faults.push(finding.help(help));
}

#[cfg(test)]
mod tests {
    use super::below;

    #[test]
    fn ok_a_path_below_the_folder() {
        for (named, path) in [
            ("pictures/1.jpg", "f/pictures/1.jpg"),
            ("./pictures//1.jpg", "f/pictures/1.jpg"),
            ("pictures/../pictures/1.jpg", "f/pictures/1.jpg"),
        ] {
            assert_eq!(below("f", named).as_deref(), Some(path), "{named}");
        }
    }

    #[test]
    fn err_a_path_that_leads_out_or_may_be_read_in_two_ways() {
        for named in [
            "/etc/passwd",
            "../15/pictures/1.jpg",
            "pictures/../../15/1.jpg",
            "pictures\\1.jpg",
            "C:/1.jpg",
            "..",
            ".",
            "a\0b",
        ] {
            assert_eq!(below("f", named), None, "{named}");
        }
    }
}
