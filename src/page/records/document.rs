//! The page of a document: facsimile, who wrote it to whom and when, where it is kept, what it tells and of what, and its
//! words with their translations.

use serde::Serialize;

use crate::model::document::{Document, Telling};
use crate::model::link::Target;
use crate::model::occurrence::{MentionRole, RecordId};
use crate::model::vocabulary::List as Vocabulary;
use crate::page::lists::facts::Fact;
use crate::page::lists::list::List;
use crate::page::lists::mentions;
use crate::page::phrases::citations;
use crate::page::phrases::document_names::{brief, doubted, kept, target_name};
use crate::page::phrases::enumeration;
use crate::page::plates::figures;
use crate::page::setting::address::{Address, Overview};
use crate::page::setting::book::Here;
use crate::page::setting::html::{CleanHtml, as_sentences, capitalised};
use crate::page::setting::leaf::Leaf;
use crate::page::setting::pictures::{Plate, Setting};
use crate::page::setting::words::Argument;
use crate::page::texts::lines::{self, Parallel, TextColumn};
use crate::page::texts::markdown;
use crate::study::back_links::Mention;

#[derive(Serialize)]
struct View {
    kind: CleanHtml,
    title: CleanHtml,
    brief: CleanHtml,
    plate: Option<Plate>,
    facts: Vec<Fact>,
    /// What it tells: of what, and the statement.
    tells: Vec<CleanHtml>,
    text: Option<CleanHtml>,
    /// Its words, beside their translations.
    words: Option<Parallel>,
    /// The rights in its words.
    rights: String,
    pictures: Vec<Plate>,
    lists: Vec<List>,
}

pub(crate) fn page(here: &Here<'_>, document: &Document) -> Leaf {
    let words = here.words();
    let pictures = figures::document_pictures(here.book.pictures, document);
    let mut pictures = pictures.iter();
    let leading = pictures.next();
    let kind = document.kind.as_ref().map_or_else(
        || words.word("document").to_owned(),
        |kind| here.term(Vocabulary::Documents, kind.as_str()),
    );
    let kind = capitalised(&CleanHtml::text(&kind));
    let title = here.document_name(document);
    let brief = brief(here, document);
    let text = texts(here, document);
    let view = View {
        kind: here.link(&Address::Overview(Overview::Documents), &kind),
        title: title.clone(),
        brief: brief.clone(),
        plate: leading.and_then(|key| figures::plate(here, key, None, Setting::Leading)),
        facts: facts(here, document),
        tells: tells(here, document),
        text: markdown::note(here, document.note.as_ref()),
        rights: document
            .rights
            .as_ref()
            .filter(|_| text.is_some())
            .map(|rights| figures::rights_in_words(here, rights))
            .unwrap_or_default(),
        words: text,
        pictures: pictures
            .filter_map(|key| figures::plate(here, key, None, Setting::Gallery))
            .collect(),
        lists: lists(here, document),
    };
    let title = title.plain();
    let described = CleanHtml::join([&CleanHtml::text(&title), &brief], ". ").plain();
    let cited = citations::of_document(here, document).short;
    Leaf::new(here.address, title, "pages/document.html", &view)
        .described(described)
        .cited_as(cited)
}

/// Where it is kept, and its languages.
fn facts(here: &Here<'_>, document: &Document) -> Vec<Fact> {
    let words = here.words();
    let languages = document.lang.iter();
    let languages: Vec<CleanHtml> = languages
        .map(|tag| CleanHtml::text(&here.language_name(&tag.value)))
        .collect();
    [
        Fact::one(words.word("document-kept"), kept(here, document)),
        Fact::one(
            words.word("document-language"),
            enumeration::together(here, &languages),
        ),
    ]
    .into_iter()
    .flatten()
    .collect()
}

/// "14, *The Last Ferry*: Forty sheets were printed (leaf 3)."
fn tells(here: &Here<'_>, document: &Document) -> Vec<CleanHtml> {
    let line = |telling: &Telling| {
        let of: Vec<CleanHtml> = telling.of.iter().map(|of| target_name(here, of)).collect();
        let of = CleanHtml::join(&of, "; ");
        let says = telling.says.value.trim_end_matches('.');
        let says = match &telling.at {
            Some(at) => CleanHtml::text(&format!("{says} ({at})")),
            None => CleanHtml::text(says),
        };
        as_sentences(&[of.then(": ").and(&doubted(here, says, telling))])
    };
    document.tells.iter().map(line).collect()
}

/// The transcription and the translations.
fn texts(here: &Here<'_>, document: &Document) -> Option<Parallel> {
    let language = match document.lang.as_slice() {
        [only] => Some(only.value.as_str()),
        _ => None,
    };
    let transcription = document.transcription.iter().map(|text| TextColumn {
        heading: here.words().word("document-transcription").to_owned(),
        language,
        text: &text.text,
    });
    let translations = document.translations.iter().map(|(tag, text)| TextColumn {
        heading: here.words().with(
            "document-translation",
            &[("language", Argument::Text(&here.language_name(tag)))],
        ),
        language: Some(tag),
        text: &text.text,
    });
    let columns: Vec<TextColumn<'_>> = transcription.chain(translations).collect();
    lines::parallel(here, &columns)
}

/// The records that cite the document, and the texts that link to it.
fn lists(here: &Here<'_>, document: &Document) -> Vec<List> {
    let none = Vec::new();
    let links = &here.book.studies.back_links;
    let mentions = links.documents.get(&document.key).unwrap_or(&none);
    let cited = |wanted: fn(&RecordId) -> bool| {
        let wanted: Vec<Mention> = mentions
            .iter()
            .filter(|mention| wanted(&mention.from))
            .cloned()
            .collect();
        mentions::by_records(here, &wanted, |role| role == MentionRole::Cited)
    };
    let is_other = |from: &RecordId| !matches!(from, RecordId::Design(_) | RecordId::Impression(_));
    [
        (
            "cited-in-designs",
            cited(|from| matches!(from, RecordId::Design(_))),
        ),
        (
            "cited-in-impressions",
            cited(|from| matches!(from, RecordId::Impression(_))),
        ),
        ("cited-in-exhibitions", cited(is_other)),
    ]
    .into_iter()
    .map(|(heading, lines)| List::new(CleanHtml::text(here.words().word(heading)), lines))
    .chain([mentions::list(
        here,
        &Target::Document(document.key.clone()),
    )])
    .filter(List::has_lines)
    .collect()
}
