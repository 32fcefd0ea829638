//! Recognises the files of a catalogue by their paths. A record's key is the name of its file or folder.

use super::nature::Nature;
use crate::model::key::{ImpressionKey, Key, impression_number};
use crate::model::register::REGISTER_FILE;
use crate::model::vocabulary::List;
use crate::model::words::ClosedList;
use crate::read::values::identifiers::language;

/// The kind of a file, by its path.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum FileKind {
    /// `catalogue.toml`.
    Settings,
    /// `register.toml`.
    Register,
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
    /// `marks/KEY.toml`.
    Mark(Key),
    /// `marks/KEY.md`.
    MarkNote(Key),
    /// `series/KEY.toml`.
    Series(Key),
    /// `series/KEY.md`.
    SeriesNote(Key),
    /// `documents/KEY.toml`.
    Document(Key),
    /// `documents/KEY.md`.
    DocumentNote(Key),
    /// `documents/KEY.transcription.md`.
    Transcription(Key),
    /// `documents/KEY.LANG.md`, with its language tag.
    Translation(Key, String),
    /// A file in `documents/pictures/`.
    DocumentPicture,
    /// `literature.bib`.
    Literature,
    /// `exhibitions.toml`.
    Exhibitions,
    /// `pages/KEY.md`.
    Page(Key),
    /// `pages/KEY.toml`.
    PageRecord(Key),
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
                | FileKind::DocumentPicture
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

    /// Whether it lies where pictures do.
    pub(super) fn is_picture(&self) -> bool {
        matches!(
            self,
            FileKind::DocumentPicture
                | FileKind::OfDesign {
                    is_picture: true,
                    ..
                }
        )
    }

    /// The kind of something other than a file at the path where a file would be of this kind.
    pub(super) fn or_no_file(self, nature: Nature) -> FileKind {
        if self.is_text() || self.is_picture() {
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

/// The kind of the file at a path.
pub(crate) fn recognise(path: &str) -> FileKind {
    let parts: Vec<&str> = path.split('/').collect();
    match parts.as_slice() {
        ["catalogue.toml"] => FileKind::Settings,
        [REGISTER_FILE] => FileKind::Register,
        ["records", "literature.bib"] => FileKind::Literature,
        ["records", "exhibitions.toml"] => FileKind::Exhibitions,
        ["records", "designs", folder, rest @ ..] if !rest.is_empty() => match folder.parse() {
            Ok(key) => of_design(key, rest),
            Err(_) => no_key(folder, ExpectedName::Key),
        },
        ["records", "holders", file] => keyed(file, FileKind::Holder, Some(FileKind::HolderNote)),
        ["records", "people", file] => keyed(file, FileKind::Person, Some(FileKind::PersonNote)),
        ["records", "marks", file] => keyed(file, FileKind::Mark, Some(FileKind::MarkNote)),
        ["records", "series", file] => keyed(file, FileKind::Series, Some(FileKind::SeriesNote)),
        ["records", "documents", "pictures", ..] => FileKind::DocumentPicture,
        ["records", "documents", file] => of_document(file),
        ["records", "pages", file] => keyed(file, FileKind::PageRecord, Some(FileKind::Page)),
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

/// The record of a document, or a text beside it.
fn of_document(file: &str) -> FileKind {
    let text = file
        .strip_suffix(".md")
        .and_then(|stem| stem.split_once('.'));
    let Some((stem, what)) = text else {
        return keyed(file, FileKind::Document, Some(FileKind::DocumentNote));
    };
    let Ok(key) = stem.parse() else {
        return no_key(stem, ExpectedName::Key);
    };
    if what == "transcription" {
        return FileKind::Transcription(key);
    }
    // A tag of another spelling would be a second translation into the same language.
    match language(what) {
        Ok(tag) if tag == what => FileKind::Translation(key, tag),
        _ => FileKind::Unexpected,
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
            recognise("records/documents/ledger.transcription.md"),
            FileKind::Transcription(key("ledger"))
        );
        assert_eq!(
            recognise("records/documents/ledger.uk.md"),
            FileKind::Translation(key("ledger"), "uk".to_owned())
        );
        for other in ["ledger.english.md", "ledger.EN.md", "ledger.txt"] {
            let path = format!("records/documents/{other}");
            assert_eq!(recognise(&path), FileKind::Unexpected, "{path}");
        }
        assert_eq!(
            recognise("records/documents/pictures/ledger-3.jpg"),
            FileKind::DocumentPicture
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
}
