//! Loads the texts of the files, gives each file its id, and reports files that cannot be read.

use std::collections::BTreeMap;
use std::path::Path;
use std::sync::Arc;

use rayon::prelude::*;

use crate::model::codes::Code;
use crate::model::finding::Finding;
use crate::model::key::Key;
use crate::model::note::Note;
use crate::model::place::{FileId, Place, Sources};
use crate::read::files::walk::{File, FileKind, Text, read_text};

/// A file with its text.
pub(crate) struct Loaded {
    /// Its kind.
    pub(crate) kind: FileKind,
    /// Its id.
    pub(crate) file: FileId,
    text: Arc<str>,
    mangled: bool,
    /// Whether its text could be read.
    pub(crate) readable: bool,
}

impl Loaded {
    /// The file as a source of records, where it can be read.
    pub(crate) fn source(&self) -> Option<Source<'_>> {
        self.readable.then_some(Source {
            file: self.file,
            text: &self.text,
            mangled: self.mangled,
        })
    }

    /// The file as a text, where it can be read.
    pub(crate) fn note(&self) -> Option<Note> {
        self.readable.then(|| Note {
            file: self.file,
            text: self.text.to_string(),
        })
    }
}

/// A text file that holds records.
#[derive(Clone, Copy)]
pub(crate) struct Source<'t> {
    /// The file.
    pub(crate) file: FileId,
    /// Its text.
    pub(crate) text: &'t str,
    /// Whether some bytes were not UTF-8 and were replaced.
    pub(crate) mangled: bool,
}

/// The files, together with required files that do not exist.
pub(crate) fn with_missing(dir: &Path, mut files: Vec<File>) -> Vec<File> {
    let has_settings = files.iter().any(|file| file.path == "catalogue.toml");
    let mut designs: BTreeMap<Key, bool> = BTreeMap::new();
    for file in &files {
        let (design, is_record) = match &file.kind {
            FileKind::Design(key) => (key, true),
            FileKind::Commentary(key) | FileKind::OfDesign { design: key, .. } => (key, false),
            FileKind::Impression(key) | FileKind::ImpressionNote(key) => (&key.design, false),
            _ => continue,
        };
        *designs.entry(design.clone()).or_default() |= is_record;
    }
    let mut add = |path: String, kind| {
        let full = dir.join(&path);
        files.push(File { path, full, kind });
    };
    if !has_settings {
        add("catalogue.toml".to_owned(), FileKind::Settings);
    }
    for (key, _) in designs.into_iter().filter(|(_, has_record)| !has_record) {
        add(
            format!("records/designs/{key}/design.toml"),
            FileKind::Design(key),
        );
    }
    files.sort_by(|a, b| a.path.cmp(&b.path));
    files.dedup_by(|later, earlier| later.path == earlier.path);
    files
}

/// Reads the texts and gives every file its id, in the order of their paths.
pub(crate) fn load(
    files: Vec<File>,
    sources: &mut Sources,
    findings: &mut Vec<Finding>,
) -> Vec<Loaded> {
    let texts: Vec<Option<Text>> = files
        .par_iter()
        .map(|file| file.kind.is_text().then(|| read_text(&file.full)))
        .collect();
    let mut all = Vec::with_capacity(files.len());
    for (file, text) in files.into_iter().zip(texts) {
        let (text, fault): (Arc<str>, _) = match text {
            None => (Arc::default(), None),
            Some(Text::Whole(text)) => (text.into(), None),
            Some(Text::Mangled { text, from }) => (text.into(), Some(Fault::Mangled(from))),
            Some(Text::TooLarge(size)) => (Arc::default(), Some(Fault::TooLarge(size))),
            Some(Text::Absent) => (Arc::default(), Some(Fault::Absent)),
            Some(Text::Unreadable(why)) => (Arc::default(), Some(Fault::Unreadable(why))),
        };
        let id = sources.add(file.path.clone(), text.clone());
        let mangled = matches!(fault, Some(Fault::Mangled(_)));
        let readable = fault.is_none() || mangled;
        if let Some(fault) = fault {
            findings.push(fault.finding(id, &file));
        }
        all.push(Loaded {
            kind: file.kind,
            file: id,
            text,
            mangled,
            readable,
        });
    }
    all
}

/// Why a file cannot be read, or only in part.
enum Fault {
    Mangled(usize),
    TooLarge(u64),
    Absent,
    Unreadable(String),
}

impl Fault {
    fn finding(&self, id: FileId, file: &File) -> Finding {
        let start = Place::start_of(id);
        match self {
            Fault::Mangled(from) => Finding::new(
                Code::TextNotUtf8,
                Place::new(id, *from..*from),
                "from here on the file is not UTF-8",
            )
            .help("save the file as UTF-8"),
            Fault::TooLarge(size) => Finding::new(
                Code::FileTooLarge,
                start,
                format!("the file has {} MB, more than any record", size / 1_000_000),
            )
            .help("keep pictures and data in files of their own"),
            Fault::Absent if file.kind == FileKind::Settings => {
                Finding::new(Code::FileMissing, start, "there is no catalogue.toml here")
                    .help("name the folder of a catalogue, or begin one with `keyblock start`")
            }
            Fault::Absent => Finding::new(
                Code::FileMissing,
                start,
                format!("there is no {}", file.path),
            )
            .help("write the design's record, or remove its folder"),
            Fault::Unreadable(why) => Finding::new(
                Code::FileUnreadable,
                start,
                format!("the file cannot be read: {why}"),
            )
            .help("check that it is a file, and that it may be read"),
        }
    }
}
