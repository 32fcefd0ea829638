//! Figures: a picture of the catalogue, with a caption that gives its subject, holder and number.

use tera::Context;

use super::canvas;
use crate::model::design::Design;
use crate::model::document::Document;
use crate::model::impression::Impression;
use crate::model::key::{ImpressionKey, Key, PictureKey, PictureOwner};
use crate::model::picture::{Picture, View};
use crate::model::words::Side;
use crate::page::phrases::dates;
use crate::page::phrases::document_names::kept;
use crate::page::phrases::holding;
use crate::page::phrases::readings;
use crate::page::phrases::rights;
use crate::page::setting::address::Address;
use crate::page::setting::book::Here;
use crate::page::setting::html::{CleanHtml, as_sentences, capitalised};
use crate::page::setting::pictures::{Image, Pictures, Plate, Setting, SmallImage};
use crate::page::setting::words::Argument;

/// A picture as a plate for a template. `alt` is its alternative text, where a text of the catalogue
/// gives one. `None` where the picture may not be shown.
pub(crate) fn plate(
    here: &Here<'_>,
    key: &PictureKey,
    alt: Option<String>,
    setting: Setting,
) -> Option<Plate> {
    let published = here.book.pictures.get(key)?;
    let picture = here.public().picture(key)?;
    let mut credits = Vec::new();
    let (caption, address, what) = match &key.owner {
        PictureOwner::Impression(impression_key) => {
            let design = here.public().designs.get(&impression_key.design)?;
            // A record that shares the page of its sheet is told of as the sheet: where it is, and under which number.
            let page = here.joined().page_of(impression_key);
            let impression = here.public().impression(page)?;
            credits.extend(impression.credit.as_ref().map(|c| CleanHtml::text(c)));
            (
                caption(here, design, impression, impression_key, picture),
                Address::Impression(impression_key.clone()),
                describe(here, design, impression, picture),
            )
        }
        PictureOwner::Document(key) => {
            let document = here.public().documents.get(key)?;
            let what = page_of_document(document, picture);
            let name = here.document_name(document).plain();
            let alt = what
                .clone()
                .map_or_else(|| name.clone(), |what| format!("{name}: {what}"));
            let address = Address::Document(key.clone());
            let shown = if *here.address == address {
                CleanHtml::text(&what.unwrap_or(name))
            } else {
                let what = CleanHtml::text(&what.unwrap_or_default());
                CleanHtml::join([&here.document(key), &what], ", ")
            };
            (two_lines(&shown, &kept(here, document)), address, alt)
        }
        PictureOwner::Design(design_key) => {
            let design = here.public().designs.get(design_key)?;
            let of = || {
                picture.of.map_or_else(
                    || here.words().word("picture-of-illustration").to_owned(),
                    |of| here.words().listed("picture-of", of).to_owned(),
                )
            };
            let what = picture.caption.clone().unwrap_or_else(of);
            let mut caption = CleanHtml::text(&what);
            if let Some(cite) = &picture.cite {
                caption = caption
                    .then(". ")
                    .and(&here.cited(&cite.value, picture.at.as_deref()));
            }
            let title = here.design_title(design).plain();
            let what = format!("{what}: {title}");
            (caption, Address::Design(design_key.clone()), what)
        }
    };
    let is_here = *here.page_at(&address) == *here.address;
    let largest = published.sizes.last()?;
    let alt = alt.unwrap_or(what);
    let small = here.book.alignments.small.get(key);
    let small = small.filter(|_| setting == Setting::Gallery);
    let image = match small {
        Some(small) => Image::of_size(small, here.root, alt, setting),
        None => Image::new(published, here.root, alt, setting)?,
    };
    Some(Plate {
        image: Some(image),
        stands_alone: small.is_some() || here.book.alignments.on_ground.contains(key),
        href: Some(if is_here {
            format!("{}{}", here.root, largest.address)
        } else {
            here.href(&address)
        }),
        viewer: match setting {
            Setting::Leading => canvas::attribute(here, key),
            // The viewer of the leading plate opens the page's other pictures at a place that a link names.
            Setting::Gallery if is_here => canvas::attribute(here, key),
            _ => None,
        },
        caption,
        credit: {
            credits.push(taken(here, picture));
            credits.push(credit(here, picture));
            as_sentences(&credits).some()
        },
    })
}

/// What a picture of a document shows: its caption; else, where the document has several, its name in words: "Leaf 3".
fn page_of_document(document: &Document, picture: &Picture) -> Option<String> {
    let name = || {
        let name = picture.name.value.as_str().replace('-', " ");
        (document.pictures.len() > 1).then(|| capitalised(&CleanHtml::text(&name)).plain())
    };
    picture.caption.clone().or_else(name)
}

/// A picture for walls and lists, in its smallest file.
pub(crate) fn small(here: &Here<'_>, key: &PictureKey) -> Option<SmallImage> {
    let smallest = here.book.pictures.get(key)?.sizes.first()?;
    let small = here.book.alignments.small.get(key).unwrap_or(smallest);
    Some(SmallImage::new(small, here.root))
}

/// A picture as a whole figure, for texts.
pub(crate) fn figure(
    here: &Here<'_>,
    key: &PictureKey,
    alt: Option<String>,
    setting: Setting,
) -> Option<CleanHtml> {
    let plate = plate(here, key, alt, setting)?;
    let mut context = Context::new();
    context.insert("plate", &plate);
    here.book.templates.part("part.plate", &context).ok()
}

/// The picture that represents a sheet: its whole recto, else its first; of the records of one sheet, that of the
/// first that has one.
pub(crate) fn leading_picture(here: &Here<'_>, impression: &Impression) -> Option<PictureKey> {
    pictures_of_sheet(here, impression).into_iter().next()
}

/// The pictures of a sheet that may be shown, of all its records: first the one that represents it.
pub(crate) fn pictures_of_sheet(here: &Here<'_>, impression: &Impression) -> Vec<PictureKey> {
    let records = match here.public().designs.get(&impression.key.design) {
        Some(design) => here.joined().on_page(design, impression),
        None => vec![impression],
    };
    let all: Vec<(&Impression, &Picture)> = records
        .into_iter()
        .flat_map(|record| record.pictures.iter().map(move |picture| (record, picture)))
        .filter(|(record, picture)| {
            here.book
                .pictures
                .contains_key(&key_of(record, &picture.name))
        })
        .collect();
    let is_leading = |p: &Picture| p.side == Side::Recto && p.view == View::Whole && !p.mirrored;
    let leading = all.iter().position(|(_, picture)| is_leading(picture));
    let mut keys: Vec<PictureKey> = all
        .iter()
        .map(|(record, picture)| key_of(record, &picture.name))
        .collect();
    if let Some(leading) = leading {
        let leading = keys.remove(leading);
        keys.insert(0, leading);
    }
    keys
}

/// What a picture of a sheet shows: its caption, else its side and view.
pub(crate) fn shown(here: &Here<'_>, picture: &Picture) -> String {
    let caption = picture.caption.clone();
    caption.unwrap_or_else(|| side_and_view(here, picture))
}

/// The picture that represents a design: the reference picture; else that of the first impression that has
/// one; else one of the design's own.
pub(crate) fn design_picture(here: &Here<'_>, design: &Design) -> Option<PictureKey> {
    let reference = design
        .reference_picture
        .as_ref()
        .map(|key| key.value.clone())
        .filter(|key| here.book.pictures.contains_key(key));
    reference
        .or_else(|| {
            design
                .impressions
                .values()
                .filter(|i| !i.standing.is_withdrawn())
                .find_map(|i| leading_picture(here, i))
        })
        .or_else(|| {
            design
                .pictures
                .iter()
                .map(|p| PictureKey {
                    owner: PictureOwner::Design(design.key.clone()),
                    name: p.name.value.clone(),
                })
                .find(|key| here.book.pictures.contains_key(key))
        })
}

/// The published pictures of a document, in the order of its pages.
pub(crate) fn document_pictures(pictures: &Pictures, document: &Document) -> Vec<PictureKey> {
    let keys = document.pictures.iter().map(|picture| PictureKey {
        owner: PictureOwner::Document(document.key.clone()),
        name: picture.name.value.clone(),
    });
    keys.filter(|key| pictures.contains_key(key)).collect()
}

/// The key of one of an impression's pictures.
pub(crate) fn key_of(impression: &Impression, name: &Key) -> PictureKey {
    PictureKey {
        owner: PictureOwner::Impression(impression.key.clone()),
        name: name.clone(),
    }
}

/// Handle, state and printing, holder and accession; on the sheet's own page, which side it is, and from which `record`. A
/// caption of the record stands in place of the side and view, on every page, and before what the sheet is.
fn caption(
    here: &Here<'_>,
    design: &Design,
    impression: &Impression,
    record: &ImpressionKey,
    picture: &Picture,
) -> CleanHtml {
    let is_own = *here.address == Address::Impression(impression.key.clone());
    let is_whole =
        picture.side == Side::Recto && picture.view == View::Whole && picture.caption.is_none();
    let what = picture.caption.clone();
    let what = what.unwrap_or_else(|| side_and_view(here, picture));
    if is_own {
        let record = here.of_record(&impression.key, [record]);
        two_lines(
            &CleanHtml::join([&CleanHtml::text(&what), &record], " "),
            &holder_and_number(here, impression),
        )
    } else if is_whole {
        caption_of_sheet(here, design, impression)
    } else if picture.caption.is_some() {
        // It may say that the photograph shows something else than the sheet, so it comes first.
        CleanHtml::element("p", &[], &CleanHtml::text(&what))
            .and(&caption_of_sheet(here, design, impression))
    } else {
        two_lines(
            &sheet_and_reading(here, design, impression)
                .then(". ")
                .then(&what),
            &holder_and_number(here, impression),
        )
    }
}

/// Handle, state and printing; below, holder and accession.
pub(crate) fn caption_of_sheet(
    here: &Here<'_>,
    design: &Design,
    impression: &Impression,
) -> CleanHtml {
    two_lines(
        &sheet_and_reading(here, design, impression),
        &holder_and_number(here, impression),
    )
}

fn sheet_and_reading(here: &Here<'_>, design: &Design, impression: &Impression) -> CleanHtml {
    let handle = here.impression(&impression.key);
    let reading = readings::short(here, design, impression);
    if reading.is_empty() {
        handle
    } else {
        handle.then(" ").and(&reading)
    }
}

fn two_lines(first: &CleanHtml, second: &CleanHtml) -> CleanHtml {
    let paragraph = |html: &CleanHtml| CleanHtml::element("p", &[], html);
    let mut out = paragraph(first);
    if !second.is_empty() {
        out.push(&paragraph(second));
    }
    out
}

/// "Harbour Museum, Northport (1962.44)".
pub(crate) fn holder_and_number(here: &Here<'_>, impression: &Impression) -> CleanHtml {
    let holder = match &impression.holder {
        Some(holder) => here.holder_and_city(&holder.value),
        None => CleanHtml::text(here.status(impression.status.value)),
    };
    match holding::accession(impression) {
        Some(number) => holder.then(" (").and(&number).then(")"),
        None => holder,
    }
}

/// "Recto", "Verso", "Detail", "Recto, in raking light".
pub(crate) fn side_and_view(here: &Here<'_>, picture: &Picture) -> String {
    let words = here.words();
    let side = words.listed("side", picture.side);
    match picture.view {
        View::Whole => side.to_owned(),
        view => {
            let view = words.listed("view", view);
            format!("{side}, {view}")
        }
    }
}

/// The alternative text of a picture; the caption of the record, where it has one, and the sheet's number.
fn describe(
    here: &Here<'_>,
    design: &Design,
    impression: &Impression,
    picture: &Picture,
) -> String {
    let key = here.sheet_number(&impression.key);
    if let Some(caption) = &picture.caption {
        return here.words().with(
            "alt-captioned",
            &[
                ("key", Argument::Text(&key)),
                ("caption", Argument::Text(caption)),
            ],
        );
    }
    let title = here.design_title(design).plain();
    here.words().with(
        "alt-impression",
        &[
            ("key", Argument::Text(&key)),
            ("side", Argument::Text(&side_and_view(here, picture))),
            ("title", Argument::Text(&title)),
            ("where", Argument::Text(&here.whereabouts(impression))),
        ],
    )
}

/// Who took a picture, when and in which light: "By Anna Tolle, May 1939, raking light from the left".
pub(crate) fn taken(here: &Here<'_>, picture: &Picture) -> CleanHtml {
    let words = here.words();
    let by = picture.by.as_ref().map_or_else(CleanHtml::empty, |by| {
        words.html("by-person", None, &[("person", &here.party(by))])
    });
    let date = picture.date.as_ref().map_or_else(CleanHtml::empty, |date| {
        dates::once_html(&date.value, words)
    });
    let light = CleanHtml::text(picture.light.as_deref().unwrap_or_default());
    capitalised(&CleanHtml::join([&by, &date, &light], ", "))
}

/// "Photograph: Harbour Museum. CC0-1.0".
pub(crate) fn credit(here: &Here<'_>, picture: &Picture) -> CleanHtml {
    let rights = rights_in_words(here, picture.rights_text());
    match &picture.credit {
        Some(credit) => CleanHtml::text(
            &here
                .words()
                .with("photograph-by", &[("credit", Argument::Text(credit))]),
        )
        .then(" ")
        .then(&rights),
        None => CleanHtml::text(&rights),
    }
}

/// The rights in a picture, as a sentence: "CC0 1.0.".
pub(crate) fn rights_in_words(here: &Here<'_>, rights: &str) -> String {
    let text = rights::statement_code(rights)
        .and_then(|code| here.words().find(&format!("rights-{code}")))
        .map_or_else(|| rights::in_words(rights), str::to_owned);
    if text.ends_with('.') {
        text
    } else {
        format!("{text}.")
    }
}
