//! Marks on a sheet in words: "Signature, pencil, “The Artist 27”, lower right, recto".

use crate::model::key::Key;
use crate::model::mark::{Mark, MarkRecord};
use crate::model::place::Placed;
use crate::page::phrases::claims;
use crate::page::phrases::dates;
use crate::page::setting::address::{Address, Fragment, Overview};
use crate::page::setting::book::Here;
use crate::page::setting::html::{CleanHtml, capitalised};
use crate::study::marks::interval;

/// One mark.
pub(crate) fn line(here: &Here<'_>, mark: &Mark) -> CleanHtml {
    let words = here.words();
    let described = here.public().described_mark(mark);
    let mark = described.as_ref();
    let record = mark.record.as_ref();
    let record = record.and_then(|key| here.public().marks.get(&key.value));
    let text = |text: &Option<String>| {
        text.as_ref()
            .map_or_else(CleanHtml::empty, |text| CleanHtml::text(text))
    };
    let kind = CleanHtml::text(
        mark.kind
            .as_ref()
            .map_or(words.word("mark"), |kind| words.listed("mark", kind.value)),
    );
    let kind = match record {
        Some(record) => here.link(&Address::Mark(record.key.clone()), &capitalised(&kind)),
        None => kind,
    };
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
    let key_of = |party: &Option<Placed<Key>>| party.as_ref().map(|key| key.value.clone());
    let (whose, applied) = whose_and_by(here, key_of(&mark.whose), key_of(&mark.applied_by));
    let when = mark.applied.as_ref().map_or_else(CleanHtml::empty, |date| {
        dates::once_html(&date.value, words)
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
            &when,
            &condition(here, mark, record),
            &text(&mark.note),
        ],
        ", ",
    );
    let line = claims::with_claim(here, line, &mark.claim);
    match others(here, mark) {
        Some(others) => line.then(". ").and(&others).then("."),
        None => line,
    }
}

/// Whose name the mark bears and who applied it; "by The Artist" where both are one.
fn whose_and_by(here: &Here<'_>, whose: Option<Key>, by: Option<Key>) -> (CleanHtml, CleanHtml) {
    let words = here.words();
    let phrase = |id: &str, key: Option<Key>| {
        key.map_or_else(CleanHtml::empty, |key| {
            words.html(id, None, &[("person", &here.person_or_holder(&key))])
        })
    };
    if whose.is_some() && whose == by {
        return (phrase("by-person", by), CleanHtml::empty());
    }
    (phrase("name-of", whose), phrase("applied-by", by))
}

/// The condition of the mark with its time, which limits when it was put on the sheet.
fn condition(here: &Here<'_>, mark: &Mark, record: Option<&MarkRecord>) -> CleanHtml {
    let named = mark.condition.as_ref();
    let Some((record, condition)) =
        record.and_then(|record| Some((record, record.condition(&named?.value)?)))
    else {
        return CleanHtml::empty();
    };
    let key = &condition.key.value;
    let name = match &condition.summary {
        Some(summary) => summary.trim_end_matches('.').to_owned(),
        None => key.as_str().replace('-', " "),
    };
    let to = here.href_part(&Address::Mark(record.key.clone()), Fragment::Condition(key));
    let time = interval(condition.from.as_ref(), condition.to.as_ref());
    let time = time.map_or_else(CleanHtml::empty, |time| {
        dates::throughout_html(&time, here.words())
    });
    let name = CleanHtml::link(&to, &CleanHtml::text(&name));
    let said = CleanHtml::join([&name, &time], ", ");
    here.words()
        .html("mark-in-condition", None, &[("condition", &said)])
}

/// The other users of the mark, where there are any.
fn others(here: &Here<'_>, mark: &Mark) -> Option<CleanHtml> {
    let shared = here.book.studies.shared_marks.iter().find(|s| s.is(mark))?;
    let users = shared
        .users
        .iter()
        .map(|user| here.person_or_holder(&user.key));
    let users: Vec<CleanHtml> = users.collect();
    let to = match &mark.record {
        Some(record) => format!("{}#users", here.href(&Address::Mark(record.value.clone()))),
        None => format!("{}#shared", here.href(&Address::Overview(Overview::Marks))),
    };
    let text = CleanHtml::text(here.words().word("mark-shared"));
    let link = CleanHtml::link(&to, &text);
    Some(link.then(": ").and(&CleanHtml::join(&users, "; ")))
}
