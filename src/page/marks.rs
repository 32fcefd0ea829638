//! Marks on a sheet in words: "Signature in pencil, “The Artist 27”, lower right, recto".

use super::book::Here;
use super::claims;
use super::html::{CleanHtml, capitalised};
use crate::model::mark::Mark;

/// One mark.
pub(super) fn line(here: &Here<'_>, mark: &Mark) -> CleanHtml {
    let words = here.words();
    let text = |text: &Option<String>| {
        text.as_ref()
            .map_or_else(CleanHtml::empty, |text| CleanHtml::text(text))
    };
    let kind = CleanHtml::text(
        mark.kind
            .as_ref()
            .map_or(words.word("mark"), |kind| words.listed("mark", kind.value)),
    );
    let kind = match &mark.medium {
        Some(medium) => words.html(
            "in-medium",
            None,
            &[("what", &kind), ("medium", &CleanHtml::text(medium))],
        ),
        None => kind,
    };
    let quoted = mark.text.as_ref().map_or_else(CleanHtml::empty, |said| {
        words.html("quoted", None, &[("text", &CleanHtml::text(said))])
    });
    let side = mark.side.map_or_else(CleanHtml::empty, |side| {
        CleanHtml::text(words.listed("on-side", side))
    });
    let number = mark
        .number
        .as_ref()
        .map_or_else(CleanHtml::empty, |number| {
            words.html(
                "cited-number",
                None,
                &[("number", &CleanHtml::text(number))],
            )
        });
    let whose = mark.whose.as_ref().map_or_else(CleanHtml::empty, |key| {
        let person = here.person_or_holder(&key.value);
        words.html("name-of", None, &[("person", &person)])
    });
    let applied = mark
        .applied_by
        .as_ref()
        .map_or_else(CleanHtml::empty, |key| {
            let person = here.person_or_holder(&key.value);
            words.html("applied-by", None, &[("person", &person)])
        });
    let line = CleanHtml::join(
        [
            &capitalised(&kind),
            &quoted,
            &text(&mark.colour),
            &text(&mark.at),
            &side,
            &number,
            &whose,
            &applied,
        ],
        ", ",
    );
    claims::with_claim(here, line, &mark.claim)
}
