//! `documents/KEY.toml`, the texts beside it, and the pictures in `documents/pictures/`.

use std::collections::BTreeMap;

use crate::model::catalogue::Catalogue;
use crate::model::document::{Document, Telling};
use crate::model::finding::Finding;
use crate::model::key::Key;
use crate::model::note::Note;
use crate::model::occurrence::RecordId;
use crate::read::files::kind::{FileKind, Location};
use crate::read::files::load::Loaded;
use crate::read::records::parties::Kind;
use crate::read::records::pictures::{Folder, picture, pictures};
use crate::read::records::provenance::party;
use crate::read::references::note;
use crate::read::shape::DOCUMENT;
use crate::read::table::fields::Fields;
use crate::read::values;

/// The folder of documents, from which their records name pictures.
const FOLDER: &str = "records/documents";

/// Reads `documents/*.toml` and the texts beside them. Gives the keys of the documents with pictures that could not be
/// read.
pub(crate) fn documents(
    loaded: &[Loaded],
    locations: &BTreeMap<String, Location>,
    catalogue: &mut Catalogue,
    findings: &mut Vec<Finding>,
) -> bool {
    let folder = Folder {
        path: FOLDER.to_owned(),
        files: locations,
    };
    let files = Kind {
        shape: &DOCUMENT,
        is_record: |what| match what {
            FileKind::Document(key) => Some(key),
            _ => None,
        },
        is_note: |what| match what {
            FileKind::DocumentNote(key) => Some(key),
            _ => None,
        },
        read: &|fields, key| document(fields, key, &folder),
        add_note: |document: &mut ReadDocument, note| document.record.note = note,
    };
    let read = files.read(loaded, &catalogue.former);
    findings.extend(read.findings);
    catalogue.redacted.texts.extend(read.texts);
    let lacks_pictures = read.all.iter().any(|(_, document)| document.lacks_pictures);
    let texts = Texts::of(loaded);
    let with_texts = |(key, read): (Key, ReadDocument)| {
        let mut document = read.record;
        let (transcription, translations) = texts.of_document(&key);
        document.transcription = transcription;
        document.translations = translations;
        (key, document)
    };
    let public: Vec<_> = read.public.into_iter().map(&with_texts).collect();
    catalogue.redacted.documents.extend(public);
    let all: Vec<_> = read.all.into_iter().map(&with_texts).collect();
    catalogue.documents.extend(all);
    for (key, mut occurrences) in read.occurrences {
        let (transcription, translations) = texts.of_document(&key);
        let translations = translations.iter().map(|(_, text)| text);
        for text in transcription.iter().chain(translations) {
            let (found, faults) = note::read(text, &catalogue.former);
            occurrences.extend(found);
            findings.extend(faults);
        }
        occurrences.add_to(catalogue, RecordId::Document(key));
    }
    lacks_pictures
}

/// A document, and whether some of its pictures could not be read.
struct ReadDocument {
    record: Document,
    lacks_pictures: bool,
}

/// The transcriptions and translations of all documents.
struct Texts<'l> {
    transcriptions: BTreeMap<&'l Key, &'l Loaded>,
    translations: BTreeMap<&'l Key, Vec<(&'l str, &'l Loaded)>>,
}

impl<'l> Texts<'l> {
    fn of(loaded: &'l [Loaded]) -> Texts<'l> {
        let mut texts = Texts {
            transcriptions: BTreeMap::new(),
            translations: BTreeMap::new(),
        };
        for file in loaded {
            match &file.kind {
                FileKind::Transcription(key) => {
                    texts.transcriptions.insert(key, file);
                }
                FileKind::Translation(key, language) => {
                    let of_document = texts.translations.entry(key).or_default();
                    of_document.push((language, file));
                }
                _ => {}
            }
        }
        texts
    }

    fn of_document(&self, key: &Key) -> (Option<Note>, Vec<(String, Note)>) {
        let transcription = self.transcriptions.get(key).and_then(|file| file.note());
        let translations = self.translations.get(key).into_iter().flatten();
        let translations = translations
            .filter_map(|(language, file)| Some(((*language).to_owned(), file.note()?)));
        (transcription, translations.collect())
    }
}

fn document(fields: &mut Fields<'_, '_>, key: &Key, folder: &Folder<'_>) -> ReadDocument {
    let kind = fields.term("kind");
    let title = fields.text("title");
    let date = fields.date("date");
    let by = fields.several("by", party);
    let to = fields.several("to", party);
    let holder = fields.key("holder");
    let shelfmark = fields.text("shelfmark");
    let lang = fields.several("lang", values::language);
    let pictures = pictures(fields, |fields| picture(fields, folder));
    let record = Document {
        kind,
        title,
        date,
        by,
        to,
        holder,
        shelfmark,
        lang,
        pictures: pictures.all,
        rights: fields.words("rights"),
        tells: tells(fields),
        publish: fields.flag("publish").unwrap_or(true),
        note: None,
        transcription: None,
        translations: Vec::new(),
        place: fields.at,
        key: key.clone(),
    };
    ReadDocument {
        record,
        lacks_pictures: pictures.lacks_some,
    }
}

fn tells(fields: &mut Fields<'_, '_>) -> Vec<Telling> {
    fields.tables("tells", |fields| {
        let of = fields.several("of", values::evidence_target);
        let says = fields.text("says");
        let at = fields.words("at");
        let certainty = fields.word("certainty");
        let telling = Telling {
            says: says?,
            at,
            certainty,
            of,
        };
        (!telling.of.is_empty()).then_some(telling)
    })
}
