//! The holder's own description of a sheet, beside that of the catalogue.

use serde::Serialize;

use crate::model::as_found::AsGiven;
use crate::model::impression::Impression;
use crate::page::lists::facts::Fact;
use crate::page::phrases::dates;
use crate::page::setting::book::Here;
use crate::page::setting::html::{CleanHtml, as_sentences, capitalised};

/// The fields as the holder names and words them, in the holder's language, and where and when they were taken from it.
#[derive(Serialize)]
pub(super) struct AsGivenView {
    facts: Vec<Fact>,
    source: Option<CleanHtml>,
}

/// The description in the record of a sheet; `None` where it has none.
pub(super) fn of_record(here: &Here<'_>, impression: &Impression) -> Option<AsGivenView> {
    let given = impression.as_given.as_ref()?;
    let fields = given.fields.iter();
    let in_its_language =
        |text: &str| here.in_language("span", &CleanHtml::text(text), given.language());
    let facts = fields.filter_map(|field| {
        let text = in_its_language(&field.text);
        Fact::under(in_its_language(&field.name), text)
    });
    let facts: Vec<Fact> = facts.collect();
    (!facts.is_empty()).then(|| AsGivenView {
        facts,
        source: source(here, impression, given).some(),
    })
}

/// "The description of the Harbour Museum, seen in May 2024. Source: …".
fn source(here: &Here<'_>, impression: &Impression, given: &AsGiven) -> CleanHtml {
    let words = here.words();
    let holder = impression.holder.as_ref();
    let holder = holder.map_or_else(CleanHtml::empty, |holder| here.holder(&holder.value));
    let seen = given.seen.as_ref().map_or_else(CleanHtml::empty, |seen| {
        let date = dates::once_html(&seen.value, words);
        words.html("as-given-seen", None, &[("date", &date)])
    });
    let from = match (given.address(), &given.source) {
        (Some(address), _) => CleanHtml::web_address(address),
        (None, Some(source)) => CleanHtml::text(source),
        (None, None) => CleanHtml::empty(),
    };
    let from = if from.is_empty() {
        from
    } else {
        words.html("as-given-from", None, &[("source", &from)])
    };
    let said = CleanHtml::join([&holder, &seen], ", ");
    as_sentences(&[capitalised(&said), from])
}
