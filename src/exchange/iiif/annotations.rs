//! Annotations: points on the canvases on which they are seen, and the words of a document.

use super::types::{Comment, Page, SpecificResource, SvgSelector, Target, TextBody};
use super::words;
use crate::model::design::Design;
use crate::model::document::Document;
use crate::model::impression::Impression;
use crate::model::key::PictureKey;
use crate::model::point::Point;
use crate::page::{Here, claims, places, plain_text, values};

/// The points that are seen on a picture; `None` where there are none. `sheets` are the records of the sheet that it
/// shows.
pub(super) fn of_picture(
    here: &Here<'_>,
    design: &Design,
    sheets: &[&Impression],
    key: &PictureKey,
) -> Option<Page<Comment>> {
    let canvas = places::canvas_id(here, key);
    let points = design.points.iter();
    let items: Vec<Comment> = points
        .filter_map(|point| {
            let region = places::region(here, design, point, key)?;
            let target = match region.outline() {
                Some(outline) => Target::Outline(SpecificResource {
                    r#type: "SpecificResource",
                    source: canvas.clone(),
                    selector: SvgSelector {
                        r#type: "SvgSelector",
                        value: outline,
                    },
                }),
                None => Target::Rectangle(format!("{canvas}#xywh={}", region.xywh())),
            };
            Some(Comment {
                id: format!("{canvas}/points/{}", point.key.value),
                r#type: "Annotation",
                motivation: "commenting",
                body: TextBody {
                    r#type: "TextualBody",
                    value: said(here, point, sheets),
                    language: vec![here.language().to_owned()],
                    format: "text/plain",
                },
                target,
            })
        })
        .collect();
    (!items.is_empty()).then(|| Page {
        id: format!("{canvas}/points"),
        r#type: "AnnotationPage",
        label: words::own(here, here.words().word("points")),
        items,
    })
}

/// The transcription of a document and its translations; `None` where it has none. They are of the whole document: no record
/// says which line stands on which page. So they annotate one canvas, as a whole.
pub(super) fn of_words(
    here: &Here<'_>,
    document: &Document,
    key: &PictureKey,
) -> Option<Page<Comment>> {
    let canvas = places::canvas_id(here, key);
    let own: Vec<String> = document.lang.iter().map(|tag| tag.value.clone()).collect();
    let transcription = document.transcription.iter();
    let transcription = transcription.map(|text| ("transcription".to_owned(), own.clone(), text));
    let translations = document.translations.iter();
    let translations =
        translations.map(|(tag, text)| (tag.to_lowercase(), vec![tag.clone()], text));
    let items: Vec<Comment> = transcription
        .chain(translations)
        .map(|(name, language, text)| Comment {
            id: format!("{canvas}/words/{name}"),
            r#type: "Annotation",
            motivation: "supplementing",
            body: TextBody {
                r#type: "TextualBody",
                value: plain_text::by_lines(here, text),
                language,
                format: "text/plain",
            },
            target: Target::Rectangle(canvas.clone()),
        })
        .filter(|words| !words.body.value.is_empty())
        .collect();
    (!items.is_empty()).then(|| Page {
        id: format!("{canvas}/words"),
        r#type: "AnnotationPage",
        label: words::own(here, here.words().word("document-words")),
        items,
    })
}

/// The question, and what was seen on this sheet: "How many gulls? 5 (probable)".
fn said(here: &Here<'_>, point: &Point, sheets: &[&Impression]) -> String {
    let ask = &point.ask.value;
    let mut observed = sheets.iter().flat_map(|sheet| &sheet.observed);
    match observed.find(|observation| observation.point.value == point.key.value) {
        Some(observation) => {
            let seen = values::seen(here, point, &observation.seen);
            let seen = crate::page::html::CleanHtml::text(&seen);
            let seen = claims::doubted(here, seen, &observation.claim).plain();
            format!("{ask} {seen}")
        }
        None => ask.clone(),
    }
}
