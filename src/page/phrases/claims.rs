//! Claims in words: certainty, basis, author and source of a statement.

use serde::Serialize;

use super::dates;
use crate::model::certainty::{Certainty, Claim, Statement, Statements};
use crate::page::setting::book::Here;
use crate::page::setting::html::CleanHtml;

/// The statements on one thing: the catalogue's own, and others with their authors.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub(crate) struct Stated {
    /// The catalogue's own view.
    pub value: CleanHtml,
    /// Other views.
    pub others: Vec<CleanHtml>,
}

/// Statements in words; `None` where there are none.
pub(crate) fn stated<T>(
    here: &Here<'_>,
    statements: &Statements<T>,
    say: impl Fn(&T) -> CleanHtml,
) -> Option<Stated> {
    let one = |s: &Statement<T>| with_claim(here, say(&s.is.value), &s.claim);
    Some(Stated {
        value: one(statements.iter().next()?),
        others: statements.others().iter().map(one).collect(),
    })
}

/// A note that a statement may concern another sheet; `None` where it certainly concerns this one.
pub(crate) fn this_sheet<'h>(here: &Here<'h>, certainty: Certainty) -> Option<&'h str> {
    match certainty {
        Certainty::Probable => Some(here.words().word("probably-this-sheet")),
        Certainty::Possible => Some(here.words().word("possibly-this-sheet")),
        Certainty::Certain => None,
    }
}

/// `value` followed by the claim in brackets.
pub(crate) fn with_claim(here: &Here<'_>, value: CleanHtml, claim: &Claim) -> CleanHtml {
    let remark = remark(here, claim);
    if remark.is_empty() {
        value
    } else {
        value.then(" (").and(&remark).then(")")
    }
}

/// The same, with a note where neither a source nor a basis is recorded.
pub(crate) fn with_source(here: &Here<'_>, value: CleanHtml, claim: &Claim) -> CleanHtml {
    if !ground(here, claim).is_empty() {
        return with_claim(here, value, claim);
    }
    let not_given = CleanHtml::text(here.words().word("source-not-given"));
    let remark = CleanHtml::join([&remark(here, claim), &not_given], ", ");
    value.then(" (").and(&remark).then(")")
}

/// Statements in words, the catalogue's own view with a note where no source of it is recorded; `None` where there
/// are none.
pub(crate) fn stated_with_source<T>(
    here: &Here<'_>,
    statements: &Statements<T>,
    say: impl Fn(&T) -> CleanHtml,
) -> Option<Stated> {
    let own = statements.iter().next()?;
    let stated = stated(here, statements, &say)?;
    Some(Stated {
        value: with_source(here, say(&own.is.value), &own.claim),
        ..stated
    })
}

/// `value` followed by its certainty, where it is not certain.
pub(crate) fn doubted(here: &Here<'_>, value: CleanHtml, claim: &Claim) -> CleanHtml {
    match claim.certainty() {
        Certainty::Certain => value,
        doubted => value.then(" (").then(certainty(here, doubted)).then(")"),
    }
}

/// "probable, from a photograph, The Editor, April 2025, Verhoeven 1961, p. 12"; empty for a plain
/// statement, which is certain.
pub(crate) fn remark(here: &Here<'_>, claim: &Claim) -> CleanHtml {
    let certainty = match claim.certainty() {
        Certainty::Certain => CleanHtml::empty(),
        doubted => CleanHtml::text(certainty(here, doubted)),
    };
    CleanHtml::join([&certainty, &ground(here, claim)], ", ")
}

/// Basis, author, date and source of a claim, without its certainty.
pub(crate) fn ground(here: &Here<'_>, claim: &Claim) -> CleanHtml {
    let words = here.words();
    let basis = claim.basis.as_ref().map_or_else(CleanHtml::empty, |b| {
        CleanHtml::text(words.listed("basis", b.value))
    });
    let by = claim
        .by
        .as_ref()
        .map_or_else(CleanHtml::empty, |by| here.person_or_holder(&by.value));
    let date = claim
        .date
        .as_ref()
        .map_or_else(CleanHtml::empty, |d| dates::once_html(d, words));
    let cite = claim.cite.as_ref().map_or_else(CleanHtml::empty, |c| {
        here.cited(&c.value, claim.at.as_deref())
    });
    CleanHtml::join([&basis, &by, &date, &cite], ", ")
}

/// The word for a certainty.
pub(crate) fn certainty<'h>(here: &Here<'h>, certainty: Certainty) -> &'h str {
    here.words().listed("certainty", certainty)
}
