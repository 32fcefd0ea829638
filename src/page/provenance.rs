//! The provenance of a sheet: the line of text in the usual punctuation, and its entries.
//!
//! Earliest first. A semicolon says that the sheet passed directly to the next, a full stop that it
//! did not, or that this is not known; dealers, auction houses and other agents stand in round
//! brackets, life dates in square ones; "possibly" and "probably" are said of entries that may be of
//! another sheet (AAM *Guide to Provenance Research*, as quoted in TRADE.md section 5).

use super::book::Here;
use super::claims;
use super::dates;
use super::html::{CleanHtml, capitalised};
use crate::model::certainty::Certainty;
use crate::model::impression::Impression;
use crate::model::provenance::{Party, PartyRole, ProvenanceEntry};
use crate::model::vocabulary::List;

/// The line; nothing where no entry is recorded.
pub(super) fn line(here: &Here<'_>, impression: &Impression) -> CleanHtml {
    let mut out = CleanHtml::empty();
    for entry in &impression.provenance {
        let said = said(here, entry);
        if out.is_empty() {
            out = capitalised(&said);
        } else if entry.direct == Some(true) {
            out = out.then("; ").and(&said);
        } else {
            out = out.then(". ").and(&capitalised(&said));
        }
    }
    if out.is_empty() { out } else { out.then(".") }
}

/// The remarks on entries that carry a claim, one each: who says so, and where.
pub(super) fn remarks(here: &Here<'_>, impression: &Impression) -> Vec<CleanHtml> {
    impression
        .provenance
        .iter()
        .filter_map(|entry| {
            let remark = claims::remark(here, &entry.claim).some()?;
            Some(here.party(&entry.party).then(": ").and(&remark))
        })
        .collect()
}

/// "possibly (Dealer, sale, London, 3 November 1971, lot 212, bought in)".
fn said(here: &Here<'_>, entry: &ProvenanceEntry) -> CleanHtml {
    let words = here.words();
    let text = |text: &Option<String>| {
        text.as_ref()
            .map_or_else(CleanHtml::empty, |text| CleanHtml::text(text))
    };
    let how = entry.how.as_ref().map_or_else(CleanHtml::empty, |how| {
        CleanHtml::text(&here.term(List::Transfers, how.value.as_str()))
    });
    let lot = entry.lot.as_ref().map_or_else(CleanHtml::empty, |lot| {
        words.html("lot", None, &[("lot", &CleanHtml::text(lot))])
    });
    let outcome = match entry.sold {
        Some(false) => CleanHtml::text(words.word("bought-in")),
        Some(true) | None => CleanHtml::empty(),
    };
    let kept = match entry.role {
        PartyRole::Keeper => CleanHtml::text(words.word("as-keeper")),
        PartyRole::Owner | PartyRole::Agent => CleanHtml::empty(),
    };
    let whole = CleanHtml::join(
        [
            &party(here, &entry.party),
            &kept,
            &how,
            &text(&entry.at_place),
            &when(here, entry),
            &lot,
            &text(&entry.price),
            &outcome,
        ],
        ", ",
    );
    let whole = match entry.role {
        PartyRole::Agent => CleanHtml::text("(").and(&whole).then(")"),
        PartyRole::Owner | PartyRole::Keeper => whole,
    };
    let doubt = match entry.this_sheet.as_ref().map(|c| c.value) {
        Some(Certainty::Probable) => words.word("probably"),
        Some(Certainty::Possible) => words.word("possibly"),
        Some(Certainty::Certain) | None => return whole,
    };
    CleanHtml::text(doubt).then(" ").and(&whole)
}

/// A party; a person with life dates in square brackets.
pub(super) fn party(here: &Here<'_>, party: &Party) -> CleanHtml {
    let name = here.party(party);
    let Party::Record(key) = party else {
        return name;
    };
    match here.public().people.get(&key.value) {
        Some(person) if person.born.is_some() || person.died.is_some() => {
            name.then(" [").then(&here.life(person)).then("]")
        }
        _ => name,
    }
}

/// "1962" where it says how the sheet came, "from 1962" where not, "until 1958", "1927 to 1958".
fn when(here: &Here<'_>, entry: &ProvenanceEntry) -> CleanHtml {
    let words = here.words();
    let from = entry
        .from
        .as_ref()
        .map(|d| dates::once_html(&d.value, words));
    let to = entry.to.as_ref().map(|d| dates::once_html(&d.value, words));
    match (from, to) {
        (None, None) => CleanHtml::empty(),
        (Some(from), None) if entry.how.is_some() || entry.role == PartyRole::Agent => from,
        (Some(from), None) => words.html("date-from", None, &[("date", &from)]),
        (None, Some(to)) => words.html("date-until", None, &[("date", &to)]),
        (Some(from), Some(to)) => words.html("date-throughout", None, &[("a", &from), ("b", &to)]),
    }
}
