//! The types of the table of formats: a format, and the data from which its files are made.

use crate::model::public::Public;
use crate::page::{Address, Book, Here, Pictures, Subject, Take};
use crate::study::Studies;

/// A format for other programs: the place and type of its files, and the functions that list and write
/// them.
pub struct Format {
    /// Its name, which is also part of the ids of its words.
    pub name: &'static str,
    /// The name of its files.
    pub file: &'static str,
    /// Their folders, relative to the catalogue, with a slash at the end; `…` is a placeholder for the key
    /// of a record or picture.
    pub folders: &'static [&'static str],
    /// The media type of its files (RFC 6838).
    pub media_type: &'static str,
    /// The relation of a file to the page or picture from which it is made (RFC 8288).
    pub relation: &'static str,
    /// Lists the subjects that have a file.
    pub(super) subjects: fn(&Sources<'_>) -> Vec<Subject>,
    /// The content of a subject's file, written as seen from the page that links to it; `None` for a
    /// subject that the format does not list.
    pub(super) write: fn(&Here<'_>, &Subject) -> Option<Vec<u8>>,
}

/// A format of files that one pass over the whole catalogue makes.
pub struct WholeFormat {
    /// Its name.
    pub name: &'static str,
    /// The paths of its files, relative to the catalogue; `…` is a placeholder.
    pub paths: &'static [&'static str],
    /// Makes the files, and passes each to `Take`.
    pub(super) each: fn(&Book<'_>, &Take<'_>),
}

/// The data from which subjects are listed.
#[derive(Clone, Copy)]
pub(super) struct Sources<'a> {
    /// The catalogue, without private data.
    pub public: &'a Public,
    /// The studies: everything computed from it.
    pub studies: &'a Studies,
    /// The pictures that may be shown.
    pub pictures: &'a Pictures,
}

impl<'a> Sources<'a> {
    /// The same data, from a book.
    pub fn of(book: &'a Book<'_>) -> Sources<'a> {
        Sources {
            public: book.public,
            studies: book.studies,
            pictures: book.pictures,
        }
    }
}

impl Format {
    /// The path of the file of a subject, relative to the catalogue; `None` for a picture that is not
    /// published.
    pub(super) fn path(&self, subject: &Subject, pictures: &Pictures) -> Option<String> {
        Some(match subject {
            Subject::Page(address) => format!("{address}{}", self.file),
            Subject::Part(design, part) => {
                format!("{}{part}/{}", Address::Design(design.clone()), self.file)
            }
            Subject::Picture(key) => format!("{}/{}", pictures.get(key)?.tiles.address, self.file),
        })
    }

    /// The file of a subject. `root` is empty: links in a file are relative to the catalogue.
    pub(super) fn bytes(&self, book: &Book<'_>, subject: &Subject) -> Option<Vec<u8>> {
        let of_part;
        let address = match subject {
            Subject::Page(address) => address,
            Subject::Part(design, _) => {
                of_part = Address::Design(design.clone());
                &of_part
            }
            Subject::Picture(_) => &Address::Opening,
        };
        let here = Here {
            book,
            address,
            root: "",
        };
        (self.write)(&here, subject)
    }
}
