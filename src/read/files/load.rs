//! Loads the texts of the files, gives each file its id, and reports files that cannot be read.

use std::collections::BTreeMap;
use std::ops::Range;
use std::path::Path;
use std::sync::Arc;

use rayon::prelude::*;

use crate::model::codes::Code;
use crate::model::finding::Finding;
use crate::model::key::Key;
use crate::model::note::Note;
use crate::model::place::{FileId, Place, Sources};
use crate::read::files::conflict::conflict_mark;
use crate::read::files::kind::FileKind;
use crate::read::files::nature::Nature;
use crate::read::files::text::{Text, read_text};
use crate::read::files::walk::File;
use crate::read::limits::{LARGEST_REGISTER, LARGEST_TEXT, megabytes};

/// A file with its text.
pub(crate) struct Loaded {
    /// Its kind.
    pub(crate) kind: FileKind,
    /// Its id.
    pub(crate) file: FileId,
    text: Arc<str>,
    mangled: bool,
    /// Whether it could be read.
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
    let texts = files
        .par_iter()
        .map(|file| {
            file.kind
                .is_text()
                .then(|| read_text(&file.full, largest(&file.kind)))
        })
        .collect();
    load_texts(files, texts, sources, findings)
}

/// How many bytes a text file of a kind may have.
fn largest(kind: &FileKind) -> u64 {
    match kind {
        FileKind::Register => LARGEST_REGISTER,
        _ => LARGEST_TEXT,
    }
}

/// Gives every file its id, in the order of their paths, with the texts that were read from them.
pub(crate) fn load_texts(
    files: Vec<File>,
    texts: Vec<Option<Text>>,
    sources: &mut Sources,
    findings: &mut Vec<Finding>,
) -> Vec<Loaded> {
    let mut all = Vec::with_capacity(files.len());
    for (file, text) in files.into_iter().zip(texts) {
        let (text, fault): (Arc<str>, _) = match text {
            Some(Text::Utf16) => (Arc::default(), Some(Fault::Utf16)),
            Some(Text::NotAFile(nature)) => (Arc::default(), Some(Fault::NotAFile(nature))),
            None => (Arc::default(), None),
            Some(Text::Whole(text)) => (text.into(), None),
            Some(Text::Mangled { text, from }) => (text.into(), Some(Fault::Mangled(from))),
            Some(Text::TooLarge(size)) => (Arc::default(), Some(Fault::TooLarge(size))),
            Some(Text::Absent) => (Arc::default(), Some(Fault::Absent)),
            Some(Text::Unreadable(why)) => (Arc::default(), Some(Fault::Unreadable(why))),
        };
        // A text with marks of a merge is two texts in one, so neither is read.
        let conflict = conflict_mark(&text, &file.kind).map(Fault::Conflict);
        let fault = conflict.or(fault);
        let id = sources.add(file.path.clone(), text.clone());
        let mangled = matches!(fault, Some(Fault::Mangled(_)));
        let is_there = !matches!(
            file.kind,
            FileKind::LeadsOut | FileKind::LinkedFolder | FileKind::NotAFile(_) | FileKind::TooDeep
        );
        let readable = is_there && (fault.is_none() || mangled);
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
    Utf16,
    Conflict(Range<usize>),
    TooLarge(u64),
    Absent,
    NotAFile(Nature),
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
            Fault::Utf16 => Finding::new(
                Code::TextNotUtf8,
                start,
                "the file is UTF-16, an encoding that is not read",
            )
            .help("save it as UTF-8; editors ask for the encoding where they save under a name"),
            Fault::Conflict(mark) => Finding::new(
                Code::MergeUnfinished,
                Place::new(id, mark.clone()),
                "here begin the marks of a merge that was not finished, so the file is not read",
            )
            .help("keep what is right between the marks, and delete the lines <<<<<<<, ======= and >>>>>>>"),
            Fault::TooLarge(size) => Finding::new(
                Code::FileTooLarge,
                start,
                format!(
                    "the file has {} MB; a record or text may have {} MB",
                    megabytes(*size),
                    megabytes(largest(&file.kind))
                ),
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
            Fault::NotAFile(nature) => not_a_file(&file.path, *nature, start),
            Fault::Unreadable(why) => Finding::new(
                Code::FileUnreadable,
                start,
                format!("the file cannot be read: {why}"),
            )
            .help("check that it is a file, and that it may be read"),
        }
    }
}

/// Reports that something other than a file is where a record, a text or a picture belongs.
pub(crate) fn not_a_file(path: &str, nature: Nature, here: Place) -> Finding {
    let message = format!("{path} is {}, where a file belongs", nature.name());
    Finding::new(Code::FileUnreadable, here, message).help("put the file itself here")
}
