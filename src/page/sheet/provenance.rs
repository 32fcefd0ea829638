//! The provenance of a sheet: the line made from the entries in the usual punctuation, its sources as
//! notes, and the line as written by hand where the record keeps one.
//!
//! The punctuation is that of the AAM *Guide to Provenance Research* (`docs/trade.md`, "Writing
//! provenance"): earliest first; a semicolon means that the sheet passed directly to the next party, a
//! full stop that it did not, or that this is not known; dealers, auction houses and other agents stand
//! in round brackets, life dates in square ones; what is not certain is called probable or possible;
//! sources stand in notes. "Possibly this sheet" is an addition to the guide: prints are multiples, so an
//! entry may concern another sheet. After a full stop a capital begins, inside the brackets too; the article
//! of a name is small within the line; a dealer's list has numbers and an auction has lots (common practice,
//! no source).

use serde::Serialize;

use super::provenance_of_records::{self, UnitedEntry};
use crate::model::certainty::Certainty;
use crate::model::edtf::Date;
use crate::model::impression::{Impression, Status};
use crate::model::place::Placed;
use crate::model::provenance::{Party, PartyRole, ProvenanceEntry};
use crate::model::vocabulary::List;
use crate::page::phrases::claims;
use crate::page::phrases::dates;
use crate::page::phrases::lots;
use crate::page::setting::book::Here;
use crate::page::setting::html::{CleanHtml, capitalised, first_letter, sentence_start};

/// The provenance as a page shows it.
#[derive(Serialize)]
pub(crate) struct Provenance {
    /// The line as written by hand, paragraph by paragraph.
    written: Vec<CleanHtml>,
    /// The line made from the entries.
    line: Option<CleanHtml>,
    /// The sources of its entries.
    notes: Vec<Note>,
}

/// The source of an entry.
#[derive(Serialize)]
struct Note {
    /// Its number, from 1.
    number: usize,
    text: CleanHtml,
}

/// The provenance of a sheet by its records, the one whose page it has first; `None` where nothing is recorded.
pub(crate) fn of_sheet(here: &Here<'_>, records: &[&Impression]) -> Option<Provenance> {
    let page = records.first()?;
    let written = records.iter().flat_map(|record| {
        let text = record.provenance_line.as_ref();
        let paragraphs = text.map_or("", |text| &text.value).split("\n\n");
        let paragraphs = paragraphs.map(str::trim).filter(|text| !text.is_empty());
        paragraphs.map(|text| {
            let of_record = here.of_record(&page.key, [&record.key]);
            CleanHtml::join([&CleanHtml::text(text), &of_record], " ")
        })
    });
    let written = written.collect();
    let mut notes = Vec::new();
    let entries = provenance_of_records::united(records);
    let provenance = Provenance {
        written,
        line: line(here, page, &entries, &mut notes).some(),
        notes,
    };
    (!provenance.written.is_empty() || provenance.line.is_some()).then_some(provenance)
}

/// The line; empty without entries. Sources are added to `notes`. The line of a sheet that was destroyed says
/// so at its end, unless an entry does. `page` is the record whose page it is; where the sheet has others, each entry is
/// followed by the records it comes from.
fn line(
    here: &Here<'_>,
    page: &Impression,
    entries: &[UnitedEntry<'_>],
    notes: &mut Vec<Note>,
) -> CleanHtml {
    let mut out = CleanHtml::empty();
    for (at, UnitedEntry { entry, records }) in entries.iter().enumerate() {
        let next = entries.get(at + 1).map(|next| &*next.entry);
        let is_direct = |entry: &ProvenanceEntry| entry.direct == Some(true);
        let said = entry_in_line(here, entry, next);
        let follows = at > 0 && is_direct(entry);
        out.push(&if follows { said } else { sentence_start(&said) });
        if let Some(of) = here.of_record(&page.key, records.iter().copied()).some() {
            out.push_text(" ");
            out.push(&of);
        }
        out.push_text(match next {
            Some(next) if is_direct(next) => ";",
            _ => ".",
        });
        if let Some(text) = claims::ground(here, &entry.claim).some() {
            let number = notes.len() + 1;
            out.push(&reference(number));
            notes.push(Note {
                number,
                text: capitalised(&text).then("."),
            });
        }
        if next.is_some() {
            out.push_text(" ");
        }
    }
    let is_destroyed = page.status.value == Status::Destroyed;
    let is_told = entries.iter().any(|e| e.entry.is_destruction());
    if is_destroyed && !is_told && !entries.is_empty() {
        let destroyed = here.words().listed("status", Status::Destroyed);
        out.push_text(" ");
        out.push(&capitalised(&CleanHtml::text(destroyed)).then("."));
    }
    out
}

/// A name within an English line, its article small: "the Print Society". "The Hague" keeps its capital.
fn with_small_article(here: &Here<'_>, name: CleanHtml) -> CleanHtml {
    if here.language().split('-').next() != Some("en") {
        return name;
    }
    let (before, text) = name.as_str().split_at(first_letter(name.as_str()));
    match text.strip_prefix("The ") {
        Some(rest) if !rest.starts_with("Hague") => {
            CleanHtml::trusted(format!("{before}the {rest}"))
        }
        _ => name,
    }
}

/// The mark of a note, as a link to it.
fn reference(number: usize) -> CleanHtml {
    let (to, id) = (format!("#source-{number}"), format!("source-of-{number}"));
    let text = CleanHtml::text(&number.to_string());
    let link = CleanHtml::element("a", &[("href", &to), ("id", &id)], &text);
    CleanHtml::element("sup", &[("class", "noteref")], &link)
}

/// "possibly (sale, Dealer, London, 3 November 1971, lot 212, bought in)".
fn entry_in_line(
    here: &Here<'_>,
    entry: &ProvenanceEntry,
    next: Option<&ProvenanceEntry>,
) -> CleanHtml {
    let whole = told(here, entry, next);
    let whole = match entry.role {
        PartyRole::Agent => CleanHtml::text("(").and(&whole).then(")"),
        PartyRole::Owner | PartyRole::Keeper => whole,
    };
    with_certainty(here, entry, whole)
}

/// An entry on its own, without brackets: "possibly sale, Dealer, London, 3 November 1971, lot 212".
pub(crate) fn on_its_own(here: &Here<'_>, entry: &ProvenanceEntry) -> CleanHtml {
    with_certainty(here, entry, told(here, entry, None))
}

/// The same told on the page of another sheet, so that its own is named: "sale, Dealer, London, 1971, possibly 14.9".
pub(crate) fn of_other_sheet(
    here: &Here<'_>,
    entry: &ProvenanceEntry,
    sheet: &CleanHtml,
) -> CleanHtml {
    let word = match entry.this_sheet.as_ref().map(|certainty| certainty.value) {
        Some(Certainty::Probable) => Some("probably-that-sheet"),
        Some(Certainty::Possible) => Some("possibly-that-sheet"),
        Some(Certainty::Certain) | None => None,
    };
    let of = word.map_or_else(CleanHtml::empty, |word| {
        here.words().html(word, None, &[("sheet", sheet)])
    });
    with_certainty(here, entry, told_of(here, entry, None, &of))
}

/// How and when an owner acquired the sheet, without the end of the possession: "purchased by Museum, Northport, 1939".
pub(crate) fn acquisition(here: &Here<'_>, entry: &ProvenanceEntry) -> CleanHtml {
    let words = here.words();
    let from = entry.from.as_ref().map(|date| {
        let date = dates::once_html(&date.value, words);
        if entry.how.is_some() {
            date
        } else {
            words.html("date-from", None, &[("date", &date)])
        }
    });
    let this_sheet = CleanHtml::text(this_sheet(here, entry).unwrap_or_default());
    let said = [
        &came_to(here, entry),
        &from.unwrap_or_else(CleanHtml::empty),
        &this_sheet,
    ];
    with_certainty(here, entry, CleanHtml::join(said, ", "))
}

/// "sale, Dealer, London, 3 November 1971, lot 212, bought in".
fn told(here: &Here<'_>, entry: &ProvenanceEntry, next: Option<&ProvenanceEntry>) -> CleanHtml {
    let this_sheet = CleanHtml::text(this_sheet(here, entry).unwrap_or_default());
    told_of(here, entry, next, &this_sheet)
}

/// The same, with what is said of whether it was the sheet.
fn told_of(
    here: &Here<'_>,
    entry: &ProvenanceEntry,
    next: Option<&ProvenanceEntry>,
    this_sheet: &CleanHtml,
) -> CleanHtml {
    let words = here.words();
    let text = |text: Option<&str>| CleanHtml::text(text.unwrap_or_default());
    let lot = CleanHtml::text(&lots::number(here, entry));
    let was_bought_in = entry.sold == Some(false);
    CleanHtml::join(
        [
            &came_to(here, entry),
            &text(entry.at_place.as_deref()),
            &when(here, entry, next),
            &lot,
            &text(entry.price.as_deref()),
            &text(was_bought_in.then(|| words.word("bought-in"))),
            this_sheet,
        ],
        ", ",
    )
}

fn with_certainty(here: &Here<'_>, entry: &ProvenanceEntry, whole: CleanHtml) -> CleanHtml {
    let words = here.words();
    match entry.claim.certainty() {
        Certainty::Certain => whole,
        Certainty::Probable => CleanHtml::text(words.word("probably"))
            .then(" ")
            .and(&whole),
        Certainty::Possible => CleanHtml::text(words.word("possibly"))
            .then(" ")
            .and(&whole),
    }
}

/// The doubts of an entry: "possible, probably this sheet"; empty where it is certain.
pub(crate) fn doubts(here: &Here<'_>, entry: &ProvenanceEntry) -> CleanHtml {
    let certainty = match entry.claim.certainty() {
        Certainty::Certain => "",
        doubted => claims::certainty(here, doubted),
    };
    let this_sheet = this_sheet(here, entry).unwrap_or_default();
    CleanHtml::join(
        [&CleanHtml::text(certainty), &CleanHtml::text(this_sheet)],
        ", ",
    )
}

/// A note that an entry may concern another sheet.
fn this_sheet<'h>(here: &Here<'h>, entry: &ProvenanceEntry) -> Option<&'h str> {
    claims::this_sheet(here, entry.this_sheet.as_ref()?.value)
}

/// The party and the way of transfer: "by descent to Heir [1920–2003]", "sale, Dealer, London", "lent
/// to Museum, Northport". A way for which the theme has no phrase stands after the name.
fn came_to(here: &Here<'_>, entry: &ProvenanceEntry) -> CleanHtml {
    let words = here.words();
    let who = in_text(here, entry);
    let how = entry.how.as_ref().map(|how| how.value.as_str());
    let role = match entry.role {
        PartyRole::Owner => "owner",
        PartyRole::Agent => "agent",
        PartyRole::Keeper => "keeper",
    };
    let phrase = how.map(|how| format!("{role}-{how}"));
    if let Some(phrase) = phrase.filter(|phrase| words.has(phrase)) {
        return words.html(&phrase, None, &[("who", &who)]);
    }
    let kept = match entry.role {
        PartyRole::Keeper => CleanHtml::text(words.word("as-keeper")),
        PartyRole::Owner | PartyRole::Agent => CleanHtml::empty(),
    };
    let how = how.map_or_else(CleanHtml::empty, |how| {
        CleanHtml::text(&here.term(List::Transfers, how))
    });
    CleanHtml::join([&who, &kept, &how], ", ")
}

/// The party of an entry within a sentence: "an owner whose name is withheld", "a private collection,
/// Ukraine"; else as [`party`], with a small article.
pub(crate) fn in_text(here: &Here<'_>, entry: &ProvenanceEntry) -> CleanHtml {
    let words = here.words();
    match (&entry.party, entry.role) {
        (Party::Undisclosed, PartyRole::Owner) => CleanHtml::text(words.word("withheld-owner")),
        (Party::Undisclosed, _) => CleanHtml::text(words.word("withheld-somebody")),
        (Party::Record(key), _) => {
            let collection = here.unnamed_collection(&key.value);
            collection.unwrap_or_else(|| with_small_article(here, party(here, &entry.party)))
        }
        (Party::Named(_), _) => with_small_article(here, party(here, &entry.party)),
    }
}

/// A party; a person with life dates in square brackets.
pub(crate) fn party(here: &Here<'_>, party: &Party) -> CleanHtml {
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

/// The dates of an entry: "1962" where the way of transfer is given, else "from 1962"; "until 1958";
/// "1927 to 1958". The end is left out where the sheet then passed directly to the next party.
fn when(here: &Here<'_>, entry: &ProvenanceEntry, next: Option<&ProvenanceEntry>) -> CleanHtml {
    let words = here.words();
    let said = |date: &Placed<Date>| dates::once_html(&date.value, words);
    let passes_on = |to: &&Placed<Date>| {
        let next = next.filter(|next| next.direct == Some(true));
        let begins = next.and_then(|next| next.from.as_ref());
        begins.is_some_and(|from| from.value == to.value)
    };
    let from = entry.from.as_ref().map(said);
    let to = entry.to.as_ref().filter(|to| !passes_on(to)).map(said);
    let is_event = entry.how.is_some() || entry.role == PartyRole::Agent;
    let until = |to: &CleanHtml| words.html("date-until", None, &[("date", to)]);
    match (from, to) {
        (None, None) => CleanHtml::empty(),
        (Some(from), None) if is_event || entry.to.is_some() => from,
        (Some(from), None) => words.html("date-from", None, &[("date", &from)]),
        (None, Some(to)) => until(&to),
        (Some(from), Some(to)) if from == to => from,
        (Some(from), Some(to)) if is_event => CleanHtml::join([&from, &until(&to)], ", "),
        (Some(from), Some(to)) => words.html("date-throughout", None, &[("a", &from), ("b", &to)]),
    }
}
