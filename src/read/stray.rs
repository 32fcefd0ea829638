//! Files that are not records, or that no record names.

use std::collections::BTreeSet;

use crate::model::catalogue::Catalogue;
use crate::model::codes::Code;
use crate::model::finding::Finding;
use crate::model::key::Key;
use crate::model::place::Place;
use crate::model::vocabulary::List;
use crate::model::words::ClosedList;
use crate::read::files::kind::{ExpectedName, FileKind, folder_of};
use crate::read::files::load::{Loaded, not_a_file};
use crate::read::limits::DEEPEST_FOLDER;
use crate::read::references::echoes::Unread;
use crate::read::values::key_help;

/// Reports files that are not records, or that no record names.
pub(crate) fn stray_files(
    loaded: &[Loaded],
    catalogue: &Catalogue,
    unread: &Unread,
    findings: &mut Vec<Finding>,
) {
    let used: BTreeSet<&str> = catalogue
        .pictures()
        .map(|(_, picture)| picture.path.as_str())
        .collect();
    let misses_picture_of_document = findings.iter().any(|finding| {
        let path = catalogue.sources.path(finding.at.place.file);
        finding.code == Code::PictureMissing && path.starts_with("records/documents/")
    });
    let told_to_leave: BTreeSet<Key> = findings
        .iter()
        .filter(|finding| finding.code == Code::PathLeaves)
        .filter_map(|finding| folder_of(catalogue.sources.path(finding.at.place.file)))
        .collect();
    // Where a record misspells the name of a picture, the file it names is missing and the file that
    // exists is named by no record. Only the first is reported.
    let misses_one: BTreeSet<Key> = findings
        .iter()
        .filter(|finding| finding.code == Code::PictureMissing)
        .filter_map(|finding| folder_of(catalogue.sources.path(finding.at.place.file)))
        .collect();
    for file in loaded {
        let path = catalogue.sources.path(file.file);
        let here = Place::start_of(file.file);
        let unexpected = |help: &str| {
            Finding::new(
                Code::FileUnexpected,
                here,
                format!("no record belongs at {path}"),
            )
            .help(help.to_owned())
        };
        let finding = match &file.kind {
            FileKind::Unexpected => unexpected(&expected_near(path)),
            FileKind::OfDesign {
                is_picture: false, ..
            } if !used.contains(path) => unexpected(
                "a design's folder holds design.toml, design.md, impressions/ and pictures/",
            ),
            FileKind::OfDesign {
                design,
                is_picture: true,
            } if !used.contains(path)
                && !unread.pictures.contains(design)
                && !misses_one.contains(design) =>
            {
                let name = path.rsplit('/').next().unwrap_or(path);
                Finding::new(
                    Code::PictureOrphan,
                    here,
                    format!("no record of design {design} names the picture {name}"),
                )
                .help("name it in the record of what it shows, or take it out of the folder")
            }
            FileKind::DocumentPicture
                if !used.contains(path)
                    && !unread.pictures_of_documents
                    && !misses_picture_of_document =>
            {
                let name = path.rsplit('/').next().unwrap_or(path);
                let message = format!("no record of a document names the picture {name}");
                Finding::new(Code::PictureOrphan, here, message)
                    .help("name it in the record of what it shows, or take it out of the folder")
            }
            FileKind::NoKey { name, wanted } => no_key(name, *wanted, here),
            FileKind::LeadsOut if folder_of(path).is_none_or(|d| !told_to_leave.contains(&d)) => {
                Finding::new(
                    Code::PathLeaves,
                    here,
                    format!("{path} is a link that leads out of the catalogue, so it is not read"),
                )
                .help("put the file or folder itself here")
            }
            FileKind::LinkedFolder => Finding::new(
                Code::FileUnreadable,
                here,
                format!("{path} is a link to a folder, and such links are not followed"),
            )
            .help("put the folder itself here"),
            FileKind::TooDeep => Finding::new(
                Code::FileUnreadable,
                here,
                format!(
                    "{path} lies more than {DEEPEST_FOLDER} folders deep, so it is not looked into"
                ),
            )
            .help("keep it nearer to records/"),
            FileKind::NotAFile(nature) => not_a_file(path, *nature, here),
            FileKind::Unreadable(why) => Finding::new(
                Code::FileUnreadable,
                here,
                format!("the folder {path} cannot be looked into: {why}"),
            )
            .help("check its permissions"),
            FileKind::ImpressionNote(key) if catalogue.impression(key).is_none() => {
                lonely(here, path)
            }
            FileKind::HolderNote(key) if !catalogue.holders.contains_key(key) => lonely(here, path),
            FileKind::PersonNote(key) if !catalogue.people.contains_key(key) => lonely(here, path),
            FileKind::MarkNote(key) if !catalogue.marks.contains_key(key) => lonely(here, path),
            FileKind::SeriesNote(key) if !catalogue.series.contains_key(key) => lonely(here, path),
            FileKind::DocumentNote(key)
            | FileKind::Transcription(key)
            | FileKind::Translation(key, _)
                if !catalogue.documents.contains_key(key) =>
            {
                lonely_of_document(here, key)
            }
            FileKind::PageRecord(key) if !catalogue.pages.contains_key(key) => {
                let message = format!("this record is of no page: there is no {key}.md beside it");
                Finding::new(Code::FileUnexpected, here, message)
                    .help("write the page beside it, or remove the record")
            }
            _ => continue,
        };
        findings.push(finding);
    }
}

fn lonely(here: Place, path: &str) -> Finding {
    let record = path.replace(".md", ".toml");
    Finding::new(
        Code::FileUnexpected,
        here,
        format!("this text belongs to no record: there is no {record}"),
    )
    .help("write the record beside it, or remove the text")
}

fn lonely_of_document(here: Place, key: &Key) -> Finding {
    let record = format!("records/documents/{key}.toml");
    let message = format!("this text belongs to no document: there is no {record}");
    Finding::new(Code::FileUnexpected, here, message)
        .help("write the record beside it, or take the text away")
}

fn no_key(name: &str, wanted: ExpectedName, here: Place) -> Finding {
    let finding = Finding::new(
        Code::KeyForm,
        here,
        match wanted {
            ExpectedName::Key => format!("\"{name}\" is not a key, so this is not a record"),
            ExpectedName::Number => {
                format!("\"{name}\" is not the number of an impression, so this is not a record")
            }
        },
    );
    finding.help(match wanted {
        ExpectedName::Key => format!("rename it; {}", key_help(name)),
        ExpectedName::Number => {
            "impressions are numbered from 1 in the order of recording, without leading zeros: 7.toml".to_owned()
        }
    })
}

/// The files that are expected in the folder of a file, for the help.
fn expected_near(path: &str) -> String {
    let folder = path
        .strip_prefix("records/")
        .and_then(|p| p.split('/').next());
    match folder {
        Some("vocabulary") => {
            let lists: Vec<_> = List::ALL.iter().map(|list| format!("{}.toml", list.word())).collect();
            format!("the vocabularies are {}", lists.join(", "))
        }
        Some("pages") => "pages are Markdown files: records/pages/introduction.md".to_owned(),
        Some("holders") => "holders are records/holders/KEY.toml".to_owned(),
        Some("people") => "people are records/people/KEY.toml".to_owned(),
        Some("series") => "series are records/series/KEY.toml".to_owned(),
        Some("marks") => "marks are records/marks/KEY.toml".to_owned(),
        Some("documents") => {
            "documents are records/documents/KEY.toml, beside them KEY.md, KEY.transcription.md, translations as KEY.en.md, and pictures/".to_owned()
        }
        Some("designs") => "designs are records/designs/KEY/design.toml".to_owned(),
        _ => "records/ holds designs, holders, people, marks, series, documents, pages, vocabulary, literature.bib and exhibitions.toml"
            .to_owned(),
    }
}
