//! The sheet of paper: `[sheet]` and `condition`.

use crate::model::sheet::{ConditionNote, Measuring, Sheet, Watermark};
use crate::read::records::citations;
use crate::read::table::fields::Fields;
use crate::read::values;

/// Reads `[sheet]`; an empty sheet where the record has none.
pub(crate) fn sheet(fields: &mut Fields<'_, '_>) -> Sheet {
    let sheet = fields.table("sheet", |fields| Sheet {
        size: fields.statements("size", values::size),
        image: fields.statements("image", values::size),
        platemark: fields.statements("platemark", values::size),
        unsaid: fields.statements("unsaid", values::size),
        support: fields.statements("support", values::size),
        mount: fields.statements("mount", values::size),
        frame: fields.statements("frame", values::size),
        measuring: Measuring {
            by: fields.key("by"),
            date: fields.date("measured"),
            how: fields.words("how"),
            sight: fields.flag("sight").unwrap_or(false),
            said: fields.words("said"),
        },
        side: fields.word("side").map(|side| side.value),
        paper: fields.term("paper"),
        colour: fields.words("colour"),
        chain_lines: fields.fraction("chain_lines"),
        laid_lines: fields.fraction("laid_lines"),
        thickness: fields.fraction("thickness"),
        inks: fields.several("inks", values::telling_text),
        paper_date: fields.date("paper_date"),
        watermark: watermark(fields),
        margins: fields.words("margins"),
        mounted_on: fields.words("mounted_on"),
        date: fields.statements("date", values::date),
    });
    sheet.unwrap_or_default()
}

fn watermark(fields: &mut Fields<'_, '_>) -> Vec<Watermark> {
    let in_words = |text| Watermark {
        text: Some(text),
        ..Watermark::default()
    };
    fields.text_or_tables("watermark", in_words, |fields| {
        let watermark = Watermark {
            text: fields.words("text"),
            reference: citations::numbered(fields, "reference"),
            at: fields.words("place"),
        };
        // A table of which everything is private is no watermark.
        (watermark != Watermark::default()).then_some(watermark)
    })
}

/// Reads `condition`: text, or tables.
pub(crate) fn condition(fields: &mut Fields<'_, '_>) -> Vec<ConditionNote> {
    let in_words = |text| ConditionNote {
        what: text,
        at: None,
        how: None,
        by: None,
        date: None,
    };
    fields.text_or_tables("condition", in_words, |fields| {
        let what = fields.words("what");
        let note = ConditionNote {
            at: fields.words("where"),
            how: fields.words("how"),
            by: fields.key("by"),
            date: fields.date("date"),
            what: what?,
        };
        Some(note)
    })
}
