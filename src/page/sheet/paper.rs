//! The sheet itself in the apparatus of an impression: its sizes and how they were taken, its paper, its inks, when it
//! was pulled.

use crate::model::impression::Impression;
use crate::model::sheet::Sheet;
use crate::page::lists::facts::{Fact, Line};
use crate::page::phrases::claims;
use crate::page::phrases::dates;
use crate::page::phrases::enumeration;
use crate::page::phrases::papers;
use crate::page::phrases::sizes;
use crate::page::setting::book::Here;
use crate::page::setting::html::{CleanHtml, capitalised};

pub(super) fn facts(here: &Here<'_>, impression: &Impression) -> Vec<Option<Fact>> {
    let words = here.words();
    let sheet = &impression.sheet;
    let inks = sheet.inks.iter().map(|ink| CleanHtml::text(&ink.value));
    let inks = capitalised(&enumeration::together(here, &inks.collect::<Vec<_>>()));
    vec![
        sizes_fact(here, sheet),
        Fact::one(words.word("paper"), capitalised(&paper(here, sheet))),
        Fact::one(words.word("inks"), inks),
        Fact::stated(
            words.word("pulled"),
            claims::stated(here, &sheet.date, |d| dates::once_html(d, words)),
        ),
    ]
}

/// Every size, a line each; then how they were taken.
fn sizes_fact(here: &Here<'_>, sheet: &Sheet) -> Option<Fact> {
    let line = |text| Line {
        id: String::new(),
        text,
    };
    let mut lines = Vec::new();
    let mut others = Vec::new();
    for (statements, of) in papers::sizes(sheet) {
        if let Some(stated) = sizes::stated(here, statements, of) {
            lines.push(line(stated.value));
            others.extend(stated.others);
        }
    }
    lines.extend(papers::measuring(here, sheet).into_iter().map(line));
    (!lines.is_empty()).then(|| Fact {
        term: CleanHtml::text(here.words().word("size")),
        lines,
        others,
    })
}

/// "Laid paper; not before 1920; cream; chain lines 25 mm apart; watermark: an anchor; margins: full; laid down on card".
fn paper(here: &Here<'_>, sheet: &Sheet) -> CleanHtml {
    let words = here.words();
    let paper_date = sheet
        .paper_date
        .as_ref()
        .map_or_else(CleanHtml::empty, |d| dates::once_html(&d.value, words));
    let side = sheet.side.map_or_else(CleanHtml::empty, |side| {
        CleanHtml::text(words.listed("printed-side", side))
    });
    let margins = sheet.margins.as_ref().map_or_else(CleanHtml::empty, |m| {
        words.html("margins", None, &[("margins", &CleanHtml::text(m))])
    });
    let watermarks = sheet.watermark.iter().map(|watermark| {
        let shown = papers::watermark(here, watermark);
        words.html("watermark", None, &[("watermark", &shown)])
    });
    let mut parts = vec![
        papers::paper(here, sheet),
        paper_date,
        papers::colour(sheet),
        papers::chain_lines(here, sheet),
        papers::laid_lines(here, sheet),
        papers::thickness(here, sheet),
    ];
    parts.extend(watermarks);
    parts.extend([side, margins, papers::mounted_on(here, sheet)]);
    CleanHtml::join(&parts, "; ")
}
