//! Lists on the page of a holder, some of them also on that of a person: sheets formerly held, sheets
//! handled, matrices, exhibitions, other roles, and the work still to be done.

use crate::model::design::Design;
use crate::model::edtf::Date;
use crate::model::holder::Holder;
use crate::model::impression::Impression;
use crate::model::key::Key;
use crate::model::occurrence::{MentionRole, RecordId};
use crate::model::place::Placed;
use crate::model::provenance::PartyRole;
use crate::model::vocabulary::List as Vocabulary;
use crate::model::words::Side;
use crate::page::lists::custody::{
    HeldSheet, is_keeper, is_owner, is_record, is_set_apart, sheets, stolen_from,
};
use crate::page::lists::list::List;
use crate::page::lists::mentions;
use crate::page::phrases::dates;
use crate::page::phrases::lots;
use crate::page::phrases::matrices;
use crate::page::phrases::standing_note;
use crate::page::setting::address::{Address, Fragment, Overview};
use crate::page::setting::book::Here;
use crate::page::setting::html::CleanHtml;
use crate::page::setting::words::Argument;
use crate::page::sheet::provenance;
use crate::study::back_links::Mention;

/// The sheets that the holder formerly owned, that were stolen from it, that it kept for others, and that
/// are recorded only under its former number, which does not show whether it owned or kept them.
pub(super) fn formerly(here: &Here<'_>, holder: &Holder, mentions: &[Mention]) -> [List; 4] {
    let has_none = |sheet: &HeldSheet<'_>| {
        let joined = here.joined();
        let page = here.public().impression(joined.page_of(&sheet.1.key));
        !has_now(page.unwrap_or(sheet.1), &holder.key) && !has_now(sheet.1, &holder.key)
    };
    let gone = |part| sheets(here, mentions, part).into_iter().filter(has_none);
    let is_stolen = |sheet: &HeldSheet<'_>| {
        let from = stolen_from(sheet.1);
        from.iter().any(|from| is_record(from, &holder.key))
    };
    let (stolen, owned): (Vec<HeldSheet<'_>>, Vec<HeldSheet<'_>>) =
        gone(MentionRole::Owner).partition(is_stolen);
    let kept: Vec<HeldSheet<'_>> = gone(MentionRole::Keeper).collect();
    let is_told = |sheet: &HeldSheet<'_>| {
        let mut told = owned.iter().chain(&stolen).chain(&kept);
        told.any(|(_, i)| i.key == sheet.1.key)
    };
    let numbered = gone(MentionRole::FormerHolder).filter(|sheet| !is_told(sheet));
    let numbered: Vec<HeldSheet<'_>> = numbered.collect();
    let list = |heading: &str, sheets: &[HeldSheet<'_>], role: PartyRole| {
        let lines = sheets
            .iter()
            .map(|(_, impression)| had(here, holder, impression, role));
        List::new(CleanHtml::text(here.words().word(heading)), lines.collect())
    };
    [
        list("formerly-owned", &owned, PartyRole::Owner),
        list("stolen-from-here", &stolen, PartyRole::Owner),
        list("formerly-kept", &kept, PartyRole::Keeper),
        list("formerly-here", &numbered, PartyRole::Owner),
    ]
}

fn has_now(impression: &Impression, holder: &Key) -> bool {
    is_keeper(impression, holder) || is_owner(impression, holder)
}

/// "14.2, *The Last Ferry*: N 198; 1931 to 1987, purchase; now Northport, Harbour Museum".
fn had(here: &Here<'_>, holder: &Holder, impression: &Impression, role: PartyRole) -> CleanHtml {
    let numbers = impression
        .former_accessions
        .iter()
        .filter(|f| f.holder.as_ref().is_some_and(|h| h.value == holder.key))
        .map(|f| CleanHtml::span("accession", &CleanHtml::text(&f.number)));
    let numbers: Vec<CleanHtml> = numbers.collect();
    let times = times(here, holder, impression, role);
    let now = now(here, impression);
    let said = CleanHtml::join([&CleanHtml::join(&numbers, ", "), &times, &now], "; ");
    named_with_standing(here, impression).then(": ").and(&said)
}

/// "14.2, *The Last Ferry*", and "(doubtful)" after it for a record of that standing.
fn named_with_standing(here: &Here<'_>, impression: &Impression) -> CleanHtml {
    let name = here.impression_of(&impression.key);
    match standing_note::remark(here, &impression.standing) {
        "" => name,
        standing => name.then(" (").then(standing).then(")"),
    }
}

/// "now Northport, Harbour Museum"; "untraced".
pub(super) fn now(here: &Here<'_>, impression: &Impression) -> CleanHtml {
    let place = here.whereabouts(impression);
    if impression.holder.is_none() {
        return CleanHtml::text(&place);
    }
    let now = here
        .words()
        .with("now-at", &[("where", Argument::Text(&place))]);
    CleanHtml::text(&now)
}

/// The sheets that the holder handled as agent.
pub(super) fn handled(here: &Here<'_>, holder: &Holder, mentions: &[Mention]) -> List {
    let lines = sheets(here, mentions, MentionRole::Agent)
        .into_iter()
        .map(|(_, impression)| {
            let times = times(here, holder, impression, PartyRole::Agent);
            let name = named_with_standing(here, impression);
            CleanHtml::join([&name, &times], ": ")
        })
        .collect();
    List::new(CleanHtml::text(here.words().word("handled-here")), lines)
}

/// When and how the holder had a sheet: "1931 to 1987, purchase".
fn times(here: &Here<'_>, holder: &Holder, impression: &Impression, role: PartyRole) -> CleanHtml {
    let words = here.words();
    let entries: Vec<CleanHtml> = impression
        .provenance
        .iter()
        .filter(|entry| entry.role == role && is_record(&entry.party, &holder.key))
        .map(|entry| {
            let when = period(here, entry.from.as_ref(), entry.to.as_ref());
            let how = entry.how.as_ref().map_or_else(String::new, |how| {
                here.term(Vocabulary::Transfers, how.as_str())
            });
            let lot = lots::number(here, entry);
            let bought_in = if entry.sold == Some(false) {
                words.word("bought-in")
            } else {
                ""
            };
            let parts = [
                CleanHtml::text(&when),
                CleanHtml::text(&how),
                CleanHtml::text(&lot),
                CleanHtml::text(bought_in),
                provenance::doubts(here, entry),
            ];
            CleanHtml::join(&parts, ", ")
        })
        .collect();
    CleanHtml::join(&entries, "; ")
}

/// "1931 to 1987", "from 1931", "until 1987".
pub(super) fn period(
    here: &Here<'_>,
    from: Option<&Placed<Date>>,
    to: Option<&Placed<Date>>,
) -> String {
    let words = here.words();
    let date = |d: &Placed<Date>| dates::once(d, words);
    match (from.map(date), to.map(date)) {
        (Some(a), Some(b)) if a == b => a,
        (Some(a), Some(b)) => words.with(
            "date-throughout",
            &[("a", Argument::Text(&a)), ("b", Argument::Text(&b))],
        ),
        (Some(a), None) => words.with("date-from", &[("date", Argument::Text(&a))]),
        (None, Some(b)) => words.with("date-until", &[("date", Argument::Text(&b))]),
        (None, None) => String::new(),
    }
}

/// The matrices that a party has.
pub(super) fn matrices(here: &Here<'_>, key: &Key, mentions: &[Mention]) -> List {
    let mut lines = Vec::new();
    for mention in mentions
        .iter()
        .filter(|m| m.role == MentionRole::MatrixHolder)
    {
        let RecordId::Design(design) = &mention.from else {
            continue;
        };
        let Some(design) = here.public().designs.get(design) else {
            continue;
        };
        let of_holder = design.matrices.iter().filter(|m| {
            let holder = m.now.as_ref().and_then(|now| now.holder.as_ref());
            holder.is_some_and(|h| h.value == *key)
        });
        let parts: Vec<CleanHtml> = of_holder
            .map(|matrix| {
                let to = here.href_part(
                    &Address::Design(design.key.clone()),
                    Fragment::Matrix(&matrix.key),
                );
                let name = matrices::matrix_name(here, design, &matrix.key);
                CleanHtml::link(&to, &CleanHtml::text(&name))
            })
            .collect();
        let design = here.design(&design.key);
        lines.push(design.then(": ").and(&CleanHtml::join(&parts, ", ")));
    }
    lines.dedup();
    List::new(CleanHtml::text(here.words().word("matrices-here")), lines)
}

pub(super) fn exhibitions(here: &Here<'_>, mentions: &[Mention]) -> List {
    let lines = mentions
        .iter()
        .filter(|m| m.role == MentionRole::Exhibited)
        .filter_map(|m| match &m.from {
            RecordId::Exhibition(key) => {
                let exhibition = here.public().exhibitions.get(key)?;
                let date = exhibition
                    .date
                    .as_ref()
                    .map_or_else(String::new, |d| dates::throughout(d, here.words()));
                Some(CleanHtml::join(
                    [&here.exhibition(key), &CleanHtml::text(&date)],
                    ", ",
                ))
            }
            _ => None,
        })
        .collect();
    List::new(
        CleanHtml::text(here.words().word("exhibitions-here")),
        lines,
    )
}

/// The other roles in which records name a party, a list for each.
pub(super) fn named(here: &Here<'_>, mentions: &[Mention]) -> Vec<List> {
    let parts = [
        (MentionRole::Printer, "named-printer"),
        (MentionRole::Publisher, "named-publisher"),
        (MentionRole::SeriesPublisher, "named-series-publisher"),
        (MentionRole::Mark, "named-mark"),
        (MentionRole::AppliedMark, "named-applied-mark"),
        (MentionRole::MarkUser, "named-mark-user"),
        (MentionRole::Sighting, "named-sighting"),
        (MentionRole::Said, "named-said"),
        (MentionRole::Photographed, "named-photographed"),
        (MentionRole::WroteDocument, "documents-by-them"),
        (MentionRole::ReceivedDocument, "documents-to-them"),
        (MentionRole::KeepsDocument, "documents-kept"),
    ];
    parts
        .into_iter()
        .map(|(part, word)| {
            let found = mentions::by_records(here, mentions, |p| p == part);
            let lines = if found.is_empty() {
                Vec::new()
            } else {
                vec![CleanHtml::join(&found, "; ")]
            };
            List::new(CleanHtml::text(here.words().word(word)), lines)
        })
        .collect()
}

/// A task of more sheets than this is counted, and its list folded.
const LISTED: usize = 60;

/// Sheets still to be identified, measured or photographed, or with gaps from 1933 to 1945.
pub(super) fn to_do(here: &Here<'_>, held: &[HeldSheet<'_>]) -> List {
    let line = |said: CleanHtml, is_wanting: &dyn Fn(&Design, &Impression) -> bool| {
        let accepted = held.iter().filter(|sheet| !is_set_apart(sheet));
        let wanting = accepted
            .clone()
            .filter(|sheet| is_wanting(sheet.0, sheet.1));
        let keys = wanting.map(|(_, i)| &i.key);
        let wanting = here.sheets_of(keys.clone()).len();
        let all = here.sheets_of(accepted.map(|(_, i)| &i.key)).len();
        let handles = here.handles(keys).some()?;
        if wanting <= LISTED {
            return Some(said.then(": ").and(&handles));
        }
        let id = if wanting == all {
            "to-do-all"
        } else {
            "to-do-some"
        };
        let count = CleanHtml::text(&here.words().count(id, wanting));
        let said = said.then(": ").and(&count);
        if wanting == all {
            return Some(said);
        }
        let summary = CleanHtml::element("summary", &[], &said);
        Some(CleanHtml::element("details", &[], &summary.and(&handles)))
    };
    let word = |word: &str| CleanHtml::text(here.words().word(word));
    let years = here.href(&Address::Overview(Overview::Provenance));
    let has_no_size = |_: &Design, i: &Impression| {
        let sheet = &i.sheet;
        sheet.size.is_empty() && sheet.image.is_empty() && sheet.platemark.is_empty()
    };
    let has_no_verso = |_: &Design, i: &Impression| {
        !i.pictures.is_empty() && i.pictures.iter().all(|p| p.side != Side::Verso)
    };
    let has_a_gap = |_: &Design, i: &Impression| {
        let years = here.book.studies.diligence.get(&i.key);
        years.is_some_and(|years| years.gaps().next().is_some())
    };
    let lines = [
        line(word("to-do-not-identified"), &|design, i| {
            design.has_choice() && i.identified.is_none()
        }),
        line(word("to-do-not-measured"), &has_no_size),
        line(word("to-do-no-photograph"), &|_, i| i.pictures.is_empty()),
        line(word("to-do-no-verso"), &has_no_verso),
        line(CleanHtml::link(&years, &word("to-do-years")), &has_a_gap),
    ];
    let lines = lines.into_iter().flatten().collect();
    List::new(CleanHtml::text(here.words().word("to-do")), lines)
}
