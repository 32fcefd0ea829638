//! The documents: letters, ledgers and other papers, each drawn with the words of its own transcription.
//!
//! In: `KEY.transcription.md` beside a document's record, line by line. Out: the document's photograph. So what can be read in
//! the picture is what the record says. `alphabet` has the letters, `writing` the tools that write them, `leaf` the paper,
//! `papers` the written documents and `room` the photograph of the workshop.

mod alphabet;
mod leaf;
mod papers;
mod room;
mod writing;

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};

use keyblock::model::design::Design;
use keyblock::model::key::Key;
use rayon::prelude::*;

use crate::engine::photo::Photograph;
use crate::{designs, jobs};

/// A document that can be painted.
struct Document {
    key: &'static str,
    paint: fn(&Words) -> Photograph,
}

/// The document in which a known print is seen on a wall, and the design and the file of that sheet.
const ON_THE_WALL: (&str, &str, &str) = ("photograph-1939", "24", "pictures/1-recto.jpg");

const ALL: &[Document] = &[
    Document {
        key: "contract-1955",
        paint: papers::contract,
    },
    Document {
        key: "interview-1992",
        paint: papers::interview,
    },
    Document {
        key: "invoice-1938",
        paint: papers::invoice,
    },
    Document {
        key: "label-1927",
        paint: papers::label,
    },
    Document {
        key: "leaflet-1926",
        paint: papers::leaflet,
    },
    Document {
        key: "letter-1931",
        paint: papers::letter,
    },
    Document {
        key: "orle-leaf-1933",
        paint: papers::ledger,
    },
    Document {
        key: "photograph-1939",
        paint: room::photograph,
    },
];

/// The words of a document as its transcription has them.
pub struct Words {
    /// The document's key.
    pub key: &'static str,
    /// The lines.
    pub lines: Vec<String>,
    /// For the photograph of the workshop: the sheet of a known print that hangs on the wall.
    pub on_the_wall: Option<Photograph>,
}

impl Words {
    /// A line in its columns.
    pub fn columns(&self, line: usize) -> Vec<&str> {
        self.lines[line].split(" | ").map(str::trim).collect()
    }
}

/// Paints the documents of the catalogue in `site` whose keys are wanted (`all`: its designs), and hands each photograph to `keep`. Returns how many
/// there are and their size in bytes.
///
/// # Errors
/// A transcription that cannot be read, and the first error of `keep`.
pub fn paint(
    site: &Path,
    all: &BTreeMap<Key, Design>,
    wanted: impl Fn(&str) -> bool,
    keep: impl Fn(&Path, &Photograph) -> Result<usize, String> + Sync,
) -> Result<(usize, usize), String> {
    let wanted: Vec<&Document> = ALL.iter().filter(|d| wanted(d.key)).collect();
    let sizes: Result<Vec<usize>, String> = wanted
        .par_iter()
        .map(|document| {
            let mut words = words(site, document.key)?;
            words.on_the_wall = on_the_wall(site, all, document.key);
            let photograph = (document.paint)(&words);
            keep(
                &folder(site).join(format!("pictures/{}.jpg", document.key)),
                &photograph,
            )
        })
        .collect();
    let sizes = sizes?;
    Ok((sizes.len(), sizes.iter().sum()))
}

fn folder(site: &Path) -> PathBuf {
    site.join("records/documents")
}

fn words(site: &Path, key: &'static str) -> Result<Words, String> {
    let path = folder(site).join(format!("{key}.transcription.md"));
    let text = std::fs::read_to_string(&path).map_err(|e| format!("{}: {e}", path.display()))?;
    // A backslash keeps Markdown from making a list of a numbered clause.
    let lines = text.lines().map(|line| line.trim_end().replace('\\', ""));
    let lines = lines.filter(|line| !line.is_empty());
    Ok(Words {
        key,
        lines: lines.collect(),
        on_the_wall: None,
    })
}

/// The sheet that hangs on the wall in a document, painted as for its own record.
fn on_the_wall(site: &Path, all: &BTreeMap<Key, Design>, document: &str) -> Option<Photograph> {
    let (_, design, file) = Some(ON_THE_WALL).filter(|(key, ..)| *key == document)?;
    let design = all.values().find(|d| d.key.as_str() == design)?;
    jobs::one(site, design, designs::find(design.key.as_str())?, file)
}

#[cfg(test)]
mod tests {
    use std::collections::BTreeSet;

    use super::*;

    fn site() -> PathBuf {
        Path::new(env!("CARGO_MANIFEST_DIR")).join("..")
    }

    /// A sign without strokes would leave a gap that the transcription does not have.
    #[test]
    fn every_letter_of_the_transcriptions_can_be_written() {
        for document in ALL {
            let words = words(&site(), document.key).unwrap();
            for letter in words.lines.iter().flat_map(|line| line.chars()) {
                if letter != '|' {
                    let known = alphabet::upright(letter).is_some();
                    assert!(known, "{letter} in {}", document.key);
                }
            }
        }
    }

    #[test]
    fn every_document_of_the_catalogue_is_painted() {
        let entries = std::fs::read_dir(folder(&site())).unwrap();
        let records: BTreeSet<String> = entries
            .filter_map(|entry| {
                let name = entry.unwrap().file_name().into_string().unwrap();
                name.strip_suffix(".toml").map(str::to_owned)
            })
            .collect();
        let painted: BTreeSet<String> = ALL.iter().map(|d| d.key.to_owned()).collect();
        assert_eq!(records, painted);
    }

    /// The label is the smallest of them.
    #[test]
    fn a_repainted_document_is_the_committed_one_byte_for_byte() {
        let same = |path: &Path, photograph: &Photograph| {
            let bytes = crate::encoded(photograph)?;
            let committed = std::fs::read(path).map_err(|e| format!("{}: {e}", path.display()))?;
            if bytes == committed {
                Ok(bytes.len())
            } else {
                Err(format!("{} is painted otherwise", path.display()))
            }
        };
        let (count, _) = paint(&site(), &BTreeMap::new(), |key| key == "label-1927", same).unwrap();
        assert_eq!(count, 1);
    }
}
