//! The sheet of paper in words: its sizes, how they were taken, what the paper is, its watermarks, its condition.

use super::dates;
use super::earlier_numbers::{self, NumberedPart};
use crate::model::certainty::Statements;
use crate::model::impression::Impression;
use crate::model::sheet::{ConditionNote, Sheet, Watermark};
use crate::model::size::Size;
use crate::model::vocabulary::List;
use crate::page::setting::book::Here;
use crate::page::setting::html::{CleanHtml, capitalised};
use crate::page::setting::words::Argument;

/// One of the sizes of a sheet.
pub(crate) type SizeOf = fn(&Sheet) -> &Statements<Size>;

/// The sizes that a sheet can have, each after the word for what was measured.
pub(crate) const SIZES: [(&str, SizeOf); 7] = [
    ("of-sheet", |sheet| &sheet.size),
    ("of-platemark", |sheet| &sheet.platemark),
    ("of-image", |sheet| &sheet.image),
    ("of-unsaid", |sheet| &sheet.unsaid),
    ("of-support", |sheet| &sheet.support),
    ("of-mount", |sheet| &sheet.mount),
    ("of-frame", |sheet| &sheet.frame),
];

/// The sizes of a sheet, each with the word for what was measured.
pub(crate) fn sizes(sheet: &Sheet) -> [(&Statements<Size>, &'static str); 7] {
    SIZES.map(|(word, of)| (of(sheet), word))
}

/// How the sizes were taken: "Measured: The Editor, May 2024, a steel rule"; "Given as “9 × 12 in.”".
pub(crate) fn measuring(here: &Here<'_>, sheet: &Sheet) -> Vec<CleanHtml> {
    let words = here.words();
    let measuring = &sheet.measuring;
    let by = measuring
        .by
        .as_ref()
        .map_or_else(CleanHtml::empty, |by| here.person_or_holder(&by.value));
    let date = measuring
        .date
        .as_ref()
        .map_or_else(CleanHtml::empty, |date| {
            dates::once_html(&date.value, words)
        });
    let how = CleanHtml::text(measuring.how.as_deref().unwrap_or_default());
    let sight = if measuring.sight {
        CleanHtml::text(words.word("measured-sight"))
    } else {
        CleanHtml::empty()
    };
    let how = CleanHtml::join([&by, &date, &how, &sight], ", ");
    let measured = how
        .some()
        .map(|how| words.html("sizes-measured", None, &[("how", &how)]));
    let said = measuring.said.as_ref().map(|said| {
        let said = CleanHtml::text(said);
        words.html("sizes-given-as", None, &[("said", &said)])
    });
    measured.into_iter().chain(said).collect()
}

/// "Laid paper".
pub(crate) fn paper(here: &Here<'_>, sheet: &Sheet) -> CleanHtml {
    sheet.paper.as_ref().map_or_else(CleanHtml::empty, |paper| {
        CleanHtml::text(&here.term(List::Papers, paper.value.as_str()))
    })
}

/// The colour of the paper.
pub(crate) fn colour(sheet: &Sheet) -> CleanHtml {
    CleanHtml::text(sheet.colour.as_deref().unwrap_or_default())
}

/// "Chain lines 25 mm apart".
pub(crate) fn chain_lines(here: &Here<'_>, sheet: &Sheet) -> CleanHtml {
    measured(here, "chain-lines", sheet.chain_lines.as_deref())
}

/// "9 laid lines to the centimetre".
pub(crate) fn laid_lines(here: &Here<'_>, sheet: &Sheet) -> CleanHtml {
    measured(here, "laid-lines", sheet.laid_lines.as_deref())
}

/// "0.12 mm thick".
pub(crate) fn thickness(here: &Here<'_>, sheet: &Sheet) -> CleanHtml {
    measured(here, "paper-thickness", sheet.thickness.as_deref())
}

fn measured(here: &Here<'_>, word: &str, value: Option<&f64>) -> CleanHtml {
    value.map_or_else(CleanHtml::empty, |value| {
        let value = value.to_string();
        CleanHtml::text(
            &here
                .words()
                .with(word, &[("value", Argument::Text(&value))]),
        )
    })
}

/// "Laid down on grey card".
pub(crate) fn mounted_on(here: &Here<'_>, sheet: &Sheet) -> CleanHtml {
    let on = sheet.mounted_on.as_ref();
    on.map_or_else(CleanHtml::empty, |on| {
        let on = CleanHtml::text(on);
        here.words().html("mounted-on", None, &[("support", &on)])
    })
}

/// "An anchor in a circle, lower left (Verhoeven 1961, p. 12: 40)".
pub(crate) fn watermark(here: &Here<'_>, watermark: &Watermark) -> CleanHtml {
    let place = watermark.at.as_deref().unwrap_or_default();
    told(here, watermark, &CleanHtml::text(place))
}

/// The same without its place on the sheet, by which two sheets of one mould may differ.
pub(crate) fn watermark_alone(here: &Here<'_>, watermark: &Watermark) -> CleanHtml {
    told(here, watermark, &CleanHtml::empty())
}

fn told(here: &Here<'_>, watermark: &Watermark, place: &CleanHtml) -> CleanHtml {
    let text = CleanHtml::text(watermark.text.as_deref().unwrap_or_default());
    let shown = CleanHtml::join([&text, place], ", ");
    let cited = watermark.reference.iter();
    let cited =
        cited.map(|citation| earlier_numbers::citation(here, citation, NumberedPart::Design));
    let cited = CleanHtml::join(&cited.collect::<Vec<_>>(), "; ");
    match (shown.is_empty(), cited.is_empty()) {
        (_, true) => shown,
        (true, false) => cited,
        (false, false) => shown.then(" (").and(&cited).then(")"),
    }
}

/// All that was noted of the condition, a line each: "Foxing, lower margin (in raking light, The Editor, 2024)".
pub(crate) fn condition(here: &Here<'_>, impression: &Impression) -> Vec<CleanHtml> {
    let notes = impression.condition.iter();
    notes.map(|note| condition_note(here, note)).collect()
}

fn condition_note(here: &Here<'_>, note: &ConditionNote) -> CleanHtml {
    let text = |text: &Option<String>| CleanHtml::text(text.as_deref().unwrap_or_default());
    let what = CleanHtml::join([&CleanHtml::text(&note.what), &text(&note.at)], ", ");
    let by = note
        .by
        .as_ref()
        .map_or_else(CleanHtml::empty, |by| here.person_or_holder(&by.value));
    let date = note.date.as_ref().map_or_else(CleanHtml::empty, |date| {
        dates::once_html(&date.value, here.words())
    });
    let source = CleanHtml::join([&text(&note.how), &by, &date], ", ");
    let what = capitalised(&what);
    if source.is_empty() {
        what
    } else {
        what.then(" (").and(&source).then(")")
    }
}

/// The condition as one text, for files and searches.
pub(crate) fn condition_in_words(here: &Here<'_>, impression: &Impression) -> String {
    let lines = condition(here, impression);
    let lines: Vec<String> = lines.iter().map(CleanHtml::plain).collect();
    lines.join("; ")
}
