//! Finds the files of a catalogue, recognises each by its path, and reads texts.
//!
//! A record's key is the name of its file or folder. Links that lead out of the catalogue are not
//! followed, nor are links to folders. Only plain files are opened: opening a pipe would wait until
//! something writes into it.
//!
//! In: the catalogue's folder. Out: its files in the order of their paths, each with its kind.

use std::collections::BTreeSet;
use std::fs::{self, FileType};
use std::io::Read as _;
use std::path::{Path, PathBuf};

use crate::model::key::{ImpressionKey, Key, impression_number};
use crate::model::vocabulary::List;
use crate::model::words::ClosedList;
use crate::read::limits::{DEEPEST_FOLDER, LARGEST_TEXT};

/// A file of the catalogue.
#[derive(Debug)]
pub(crate) struct File {
    /// Its path relative to the catalogue, with `/`.
    pub(crate) path: String,
    /// Its path on disk.
    pub(crate) full: PathBuf,
    /// Its kind.
    pub(crate) kind: FileKind,
}

/// The kind of a file, by its path.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum FileKind {
    /// `catalogue.toml`.
    Settings,
    /// `design.toml`.
    Design(Key),
    /// `design.md`.
    Commentary(Key),
    /// `impressions/N.toml`.
    Impression(ImpressionKey),
    /// `impressions/N.md`.
    ImpressionNote(ImpressionKey),
    /// Another file in a design's folder: a picture, if it lies in `pictures/`.
    OfDesign { design: Key, is_picture: bool },
    /// `holders/KEY.toml`.
    Holder(Key),
    /// `holders/KEY.md`.
    HolderNote(Key),
    /// `people/KEY.toml`.
    Person(Key),
    /// `people/KEY.md`.
    PersonNote(Key),
    /// `literature.bib`.
    Literature,
    /// `exhibitions.toml`.
    Exhibitions,
    /// `pages/KEY.md`.
    Page(Key),
    /// `vocabulary/LIST.toml`.
    Terms(List),
    /// A record whose file or folder name is not a valid key.
    NoKey { name: String, wanted: ExpectedName },
    /// A link that leads out of the catalogue.
    LeadsOut,
    /// A link to a folder of the catalogue, which is not followed.
    LinkedFolder,
    /// Something other than a file where a record, a text or a picture belongs.
    NotAFile(Nature),
    /// A folder among the pictures of a design, which may be there.
    PictureFolder,
    /// A folder that lies too deep, so that its files are not listed.
    TooDeep,
    /// A file that is neither a record nor a picture.
    Unexpected,
    /// A folder that cannot be listed.
    Unreadable(String),
}

/// Something in a folder that is not a file.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Nature {
    /// A folder.
    Folder,
    /// A pipe, through which one program writes to another.
    Pipe,
    /// A socket, through which programs talk.
    Socket,
    /// A device.
    Device,
}

impl Nature {
    fn of(file_type: FileType) -> Nature {
        if file_type.is_dir() {
            return Nature::Folder;
        }
        #[cfg(unix)]
        {
            use std::os::unix::fs::FileTypeExt as _;
            if file_type.is_fifo() {
                return Nature::Pipe;
            }
            if file_type.is_socket() {
                return Nature::Socket;
            }
        }
        Nature::Device
    }

    /// Its name with the article.
    pub(crate) fn name(self) -> &'static str {
        match self {
            Nature::Folder => "a folder",
            Nature::Pipe => "a pipe",
            Nature::Socket => "a socket",
            Nature::Device => "a device",
        }
    }
}

/// Where a file lies.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Location {
    /// In the catalogue.
    Inside,
    /// Outside it: the file is a symbolic link that leads out.
    Outside,
    /// In the catalogue, and not a file.
    NotAFile(Nature),
}

/// The form that a file or folder name should have.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum ExpectedName {
    /// A key.
    Key,
    /// A number from 1.
    Number,
}

impl FileKind {
    /// Whether its text is read.
    pub(crate) fn is_text(&self) -> bool {
        !matches!(
            self,
            FileKind::OfDesign { .. }
                | FileKind::NoKey { .. }
                | FileKind::LeadsOut
                | FileKind::LinkedFolder
                | FileKind::NotAFile(_)
                | FileKind::PictureFolder
                | FileKind::TooDeep
                | FileKind::Unexpected
                | FileKind::Unreadable(_)
        )
    }

    /// The kind of something other than a file at the path where a file would be of this kind.
    fn or_no_file(self, nature: Nature) -> FileKind {
        let is_picture = matches!(
            self,
            FileKind::OfDesign {
                is_picture: true,
                ..
            }
        );
        if self.is_text() || is_picture {
            FileKind::NotAFile(nature)
        } else {
            FileKind::Unexpected
        }
    }

    /// Where a file of this kind lies.
    pub(crate) fn location(&self) -> Location {
        match self {
            FileKind::LeadsOut => Location::Outside,
            FileKind::NotAFile(nature) => Location::NotAFile(*nature),
            FileKind::PictureFolder => Location::NotAFile(Nature::Folder),
            _ => Location::Inside,
        }
    }
}

/// The files of the catalogue in `dir`, in the order of their paths.
pub(crate) fn walk(dir: &Path) -> Vec<File> {
    let root = dir.canonicalize().unwrap_or_else(|_| dir.to_owned());
    let mut files = Vec::new();
    for path in ["catalogue.toml", "records"] {
        let full = dir.join(path);
        if let Ok(about) = fs::symlink_metadata(&full) {
            visit(&root, &full, path, about.file_type(), 0, &mut files);
        }
    }
    // A folder with an invalid name is reported once, at its record or else at its first file.
    let mut seen = BTreeSet::new();
    files.sort_by(|a, b| a.path.cmp(&b.path));
    files.retain(|file| match &file.kind {
        FileKind::NoKey { name, .. } if file.path.starts_with("records/designs/") => {
            file.path
                .split('/')
                .nth(2)
                .is_none_or(|folder| folder != name)
                || seen.insert(name.clone())
        }
        _ => true,
    });
    files
}

/// Adds the file at `path`, or every file below the folder there. `file_type` comes from the listing of
/// the parent folder, which saves a system call for each file.
fn visit(
    root: &Path,
    full: &Path,
    path: &str,
    file_type: FileType,
    depth: usize,
    files: &mut Vec<File>,
) {
    let mut add = |kind| {
        files.push(File {
            path: path.to_owned(),
            full: full.to_owned(),
            kind,
        });
    };
    if file_type.is_symlink() {
        // A linked folder is not followed, because links can form a circle. A link to a file inside the
        // catalogue is read.
        let target = full.canonicalize().ok();
        let target = target.filter(|target| target.starts_with(root));
        match target.and_then(|target| Some(fs::symlink_metadata(target).ok()?.file_type())) {
            Some(target) if target.is_file() => add(recognise(path)),
            Some(target) if target.is_dir() => add(FileKind::LinkedFolder),
            Some(target) => add(recognise(path).or_no_file(Nature::of(target))),
            None => add(FileKind::LeadsOut),
        }
    } else if file_type.is_file() {
        add(recognise(path));
    } else if file_type.is_dir() {
        let as_file = recognise(path);
        if as_file.is_text() {
            add(as_file.or_no_file(Nature::Folder));
            return;
        }
        if path == "records/inbox" {
            return;
        }
        if depth > DEEPEST_FOLDER {
            add(FileKind::TooDeep);
            return;
        }
        let is_picture = matches!(as_file, FileKind::OfDesign { is_picture, .. } if is_picture);
        if is_picture && !path.ends_with("/pictures") {
            add(FileKind::PictureFolder);
        }
        match fs::read_dir(full) {
            Ok(entries) => {
                let entries = entries.flatten();
                let types = entries.filter_map(|e| Some((e.file_name(), e.file_type().ok()?)));
                let mut below: Vec<_> = types.collect();
                below.sort_by(|(a, _), (b, _)| a.cmp(b));
                for (name, file_type) in below {
                    let shown = name.to_string_lossy();
                    if !is_ignored(&shown) {
                        let (full, path) = (full.join(&name), format!("{path}/{shown}"));
                        visit(root, &full, &path, file_type, depth + 1, files);
                    }
                }
            }
            Err(fault) => add(FileKind::Unreadable(fault.to_string())),
        }
    } else {
        add(recognise(path).or_no_file(Nature::of(file_type)));
    }
}

/// Whether a file is ignored: files that editors and systems leave behind, and files about the folder.
fn is_ignored(name: &str) -> bool {
    let lower = name.to_ascii_lowercase();
    name.starts_with('.')
        || name.starts_with('#')
        || name.ends_with('~')
        || lower.starts_with("readme")
        || [".bak", ".swp", ".swo", ".orig", ".tmp", ".schema.json"]
            .iter()
            .any(|end| lower.ends_with(end))
        || matches!(lower.as_str(), "thumbs.db" | "desktop.ini")
}

/// The kind of the file at a path.
pub(crate) fn recognise(path: &str) -> FileKind {
    let parts: Vec<&str> = path.split('/').collect();
    match parts.as_slice() {
        ["catalogue.toml"] => FileKind::Settings,
        ["records", "literature.bib"] => FileKind::Literature,
        ["records", "exhibitions.toml"] => FileKind::Exhibitions,
        ["records", "designs", folder, rest @ ..] if !rest.is_empty() => match folder.parse() {
            Ok(key) => of_design(key, rest),
            Err(_) => no_key(folder, ExpectedName::Key),
        },
        ["records", "holders", file] => keyed(file, FileKind::Holder, Some(FileKind::HolderNote)),
        ["records", "people", file] => keyed(file, FileKind::Person, Some(FileKind::PersonNote)),
        ["records", "pages", file] => match file.strip_suffix(".md") {
            Some(stem) => stem
                .parse()
                .map_or_else(|_| no_key(stem, ExpectedName::Key), FileKind::Page),
            None => FileKind::Unexpected,
        },
        ["records", "vocabulary", file] => file
            .strip_suffix(".toml")
            .and_then(List::from_word)
            .map_or(FileKind::Unexpected, FileKind::Terms),
        _ => FileKind::Unexpected,
    }
}

fn of_design(design: Key, rest: &[&str]) -> FileKind {
    match rest {
        ["design.toml"] => FileKind::Design(design),
        ["design.md"] => FileKind::Commentary(design),
        ["impressions", file] => {
            let (stem, is_note) = match (file.strip_suffix(".toml"), file.strip_suffix(".md")) {
                (Some(stem), _) => (stem, false),
                (None, Some(stem)) => (stem, true),
                (None, None) => {
                    return FileKind::OfDesign {
                        design,
                        is_picture: false,
                    };
                }
            };
            match impression_number(stem) {
                Ok(number) if number > 0 => {
                    let key = ImpressionKey { design, number };
                    if is_note {
                        FileKind::ImpressionNote(key)
                    } else {
                        FileKind::Impression(key)
                    }
                }
                _ => no_key(stem, ExpectedName::Number),
            }
        }
        _ => {
            let is_picture = rest.first() == Some(&"pictures");
            FileKind::OfDesign { design, is_picture }
        }
    }
}

fn keyed(file: &str, record: fn(Key) -> FileKind, note: Option<fn(Key) -> FileKind>) -> FileKind {
    let (stem, what) = match (file.strip_suffix(".toml"), file.strip_suffix(".md"), note) {
        (Some(stem), ..) => (stem, record),
        (None, Some(stem), Some(note)) => (stem, note),
        _ => return FileKind::Unexpected,
    };
    stem.parse()
        .map_or_else(|_| no_key(stem, ExpectedName::Key), what)
}

fn no_key(name: &str, wanted: ExpectedName) -> FileKind {
    FileKind::NoKey {
        name: name.to_owned(),
        wanted,
    }
}

/// The design whose folder contains a file.
pub(crate) fn folder_of(path: &str) -> Option<Key> {
    let below = path.strip_prefix("records/designs/")?;
    below.split('/').next()?.parse().ok()
}

/// The text of a file.
#[derive(Debug)]
pub(crate) enum Text {
    /// The whole text.
    Whole(String),
    /// The file is not UTF-8 from this byte on; invalid bytes were replaced.
    Mangled { text: String, from: usize },
    /// The file is larger than [`LARGEST_TEXT`] and was not read. Its size in bytes.
    TooLarge(u64),
    /// The file is UTF-16 and was not read.
    Utf16,
    /// Something other than a file is there, and was not opened.
    NotAFile(Nature),
    /// The file does not exist.
    Absent,
    /// The file cannot be read, for this reason.
    Unreadable(String),
}

/// Why a file was not read.
enum Refusal {
    NotAFile(Nature),
    TooLarge(u64),
}

/// Reads a text file.
pub(crate) fn read_text(full: &Path) -> Text {
    let read = || -> std::io::Result<Result<Vec<u8>, Refusal>> {
        let about = fs::metadata(full)?;
        if !about.is_file() {
            return Ok(Err(Refusal::NotAFile(Nature::of(about.file_type()))));
        }
        let size = about.len();
        if size > LARGEST_TEXT {
            return Ok(Err(Refusal::TooLarge(size)));
        }
        let mut bytes = Vec::with_capacity(usize::try_from(size).unwrap_or(0));
        // A file may grow while it is read.
        let file = fs::File::open(full)?;
        file.take(LARGEST_TEXT + 1).read_to_end(&mut bytes)?;
        let length = bytes.len() as u64;
        Ok(if length > LARGEST_TEXT {
            Err(Refusal::TooLarge(length))
        } else {
            Ok(bytes)
        })
    };
    match read() {
        Err(fault) if fault.kind() == std::io::ErrorKind::NotFound => Text::Absent,
        Err(fault) => Text::Unreadable(fault.to_string()),
        Ok(Err(Refusal::NotAFile(nature))) => Text::NotAFile(nature),
        Ok(Err(Refusal::TooLarge(size))) => Text::TooLarge(size),
        Ok(Ok(bytes)) => text_of(bytes),
    }
}

/// The text that some bytes are.
pub(crate) fn text_of(bytes: Vec<u8>) -> Text {
    if is_utf16(&bytes) {
        return Text::Utf16;
    }
    match String::from_utf8(bytes) {
        Ok(text) => Text::Whole(text),
        Err(fault) => Text::Mangled {
            from: fault.utf8_error().valid_up_to(),
            text: String::from_utf8_lossy(fault.as_bytes()).into_owned(),
        },
    }
}

/// Whether bytes are UTF-16: they begin with its mark, or one byte of most of the first pairs is zero,
/// as in every text of Latin letters, and the other byte never is. UTF-8 texts hold no zeros.
fn is_utf16(bytes: &[u8]) -> bool {
    if bytes.starts_with(&[0xff, 0xfe]) || bytes.starts_with(&[0xfe, 0xff]) {
        return true;
    }
    let begins = bytes.get(..512).unwrap_or(bytes);
    let zeros = |at: usize| {
        let bytes = begins
            .chunks_exact(2)
            .filter(|pair| pair.get(at) == Some(&0));
        bytes.count()
    };
    let (first, second) = (zeros(0), zeros(1));
    let most = (begins.len() / 2).div_ceil(2).max(2);
    (first == 0 && second >= most) || (second == 0 && first >= most)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_record_is_known_by_its_place() {
        let key = |text: &str| text.parse::<Key>().unwrap();
        assert_eq!(
            recognise("records/designs/14/design.toml"),
            FileKind::Design(key("14"))
        );
        assert_eq!(
            recognise("records/designs/14/impressions/7.md"),
            FileKind::ImpressionNote("14.7".parse().unwrap())
        );
        assert_eq!(
            recognise("records/holders/a-b.toml"),
            FileKind::Holder(key("a-b"))
        );
        assert_eq!(
            recognise("records/vocabulary/kinds.toml"),
            FileKind::Terms(List::Kinds)
        );
        assert_eq!(
            recognise("records/vocabulary/colours.toml"),
            FileKind::Unexpected
        );
        assert_eq!(
            recognise("records/pages/how-to-cite.md"),
            FileKind::Page(key("how-to-cite"))
        );
        assert_eq!(
            recognise("records/holders/notes/a.toml"),
            FileKind::Unexpected
        );
    }

    #[test]
    fn a_name_that_is_no_key_is_no_record() {
        for (path, wanted) in [
            ("records/holders/Harbour Museum.toml", ExpectedName::Key),
            ("records/designs/No 14/design.toml", ExpectedName::Key),
            (
                "records/designs/14/impressions/07.toml",
                ExpectedName::Number,
            ),
            (
                "records/designs/14/impressions/0.toml",
                ExpectedName::Number,
            ),
            ("records/designs/14/impressions/a.md", ExpectedName::Number),
        ] {
            assert!(
                matches!(recognise(path), FileKind::NoKey { wanted: w, .. } if w == wanted),
                "{path}"
            );
        }
    }

    #[test]
    fn utf_16_is_recognised_with_its_mark_and_without() {
        let text = "title = \"The Ferry\"\n";
        let little: Vec<u8> = text.encode_utf16().flat_map(u16::to_le_bytes).collect();
        let big: Vec<u8> = text.encode_utf16().flat_map(u16::to_be_bytes).collect();
        assert!(is_utf16(&little) && is_utf16(&big));
        assert!(is_utf16(b"\xff\xfe\x0e\x60") && is_utf16(b"\xfe\xff\x60\x0e"));
        for other in [
            "",
            "a",
            text,
            "title = \"\0\"",
            "\u{feff}title = \"\u{14d}\"",
        ] {
            assert!(!is_utf16(other.as_bytes()), "{other:?}");
        }
    }
}
