//! A holder: what it keeps, owns and had, as a checklist, and what is still to be done there.

use serde::Serialize;

use super::address::{Address, Fragment};
use super::book::Here;
use super::checklist::{self, Checklist};
use super::dates;
use super::figures;
use super::frame::Leaf;
use super::html::CleanHtml;
use super::lists::List;
use super::markdown::{self, Standing};
use super::mentioned;
use super::pictures::{Plate, Setting};
use super::values;
use super::words::Given;
use crate::model::design::Design;
use crate::model::edtf::Date;
use crate::model::holder::Holder;
use crate::model::impression::Impression;
use crate::model::key::Key;
use crate::model::link::Target;
use crate::model::place::Placed;
use crate::model::provenance::{Party, PartyRole};
use crate::model::vocabulary::List as Vocabulary;
use crate::model::words::Side;
use crate::study::back_links::{Mention, Part, Source};

#[derive(Serialize)]
struct View {
    title: String,
    kind: String,
    brief: String,
    facts: Vec<Fact>,
    text: Option<CleanHtml>,
    held: Option<Checklist>,
    owned: Option<Checklist>,
    plates: Vec<Plate>,
    lists: Vec<List>,
}

#[derive(Serialize)]
struct Fact {
    term: String,
    text: CleanHtml,
}

type Sheet<'a> = (&'a Design, &'a Impression);

pub(super) fn page(here: &Here<'_>, holder: &Holder) -> Leaf {
    let words = here.words();
    let none = Vec::new();
    let links = &here.book.studies.back_links;
    let mentions = links.holders.get(&holder.key).unwrap_or(&none);
    let held = sheets(here, mentions, Part::Holder);
    let owned: Vec<Sheet<'_>> = sheets(here, mentions, Part::Owner)
        .into_iter()
        .filter(|(_, i)| is_owner(i, &holder.key) && !is_keeper(i, &holder.key))
        .collect();
    let mut lists = vec![
        formerly(here, holder, mentions),
        handled(here, holder, mentions),
        matrices(here, &holder.key, mentions),
        exhibitions(here, mentions),
    ];
    lists.extend(named(here, mentions));
    lists.push(to_do(here, &held));
    let mentioned = mentioned::in_texts(here, &Target::Holder(holder.key.clone()));
    lists.push(List::new(
        CleanHtml::text(words.word("mentioned-in")),
        mentioned,
    ));
    let title = here.holder_name(holder);
    let view = View {
        kind: words.listed("holder-kind", holder.kind).to_owned(),
        brief: brief(here, holder, &held),
        facts: facts(here, holder, mentions),
        text: holder
            .note
            .as_ref()
            .and_then(|note| markdown::html(&note.text, here, Standing::Part).some()),
        plates: held
            .iter()
            .filter_map(|(_, impression)| figures::leading_picture(here, impression))
            .filter_map(|key| figures::plate(here, &key, None, Setting::Gallery))
            .collect(),
        owned: checklist::checklist(
            here,
            owned,
            |i| {
                i.accession
                    .as_ref()
                    .map_or_else(String::new, |a| a.value.clone())
            },
            |i| CleanHtml::text(&here.whereabouts(i)),
        ),
        held: checklist::checklist(
            here,
            held,
            |i| {
                i.accession
                    .as_ref()
                    .map_or_else(String::new, |a| a.value.clone())
            },
            |i| remark(here, holder, i),
        ),
        lists: lists.into_iter().filter(List::has_lines).collect(),
        title: title.clone(),
    };
    let whole = CleanHtml::text(&here.holder_city_first(holder)).plain();
    Leaf::new(here.address, title, "pages/holder.html", &view).described(whole)
}

/// The published impressions that name the holder in a part, in readers' order.
fn sheets<'a>(here: &Here<'a>, mentions: &[Mention], part: Part) -> Vec<Sheet<'a>> {
    let mut sheets: Vec<Sheet<'a>> = Vec::new();
    for mention in mentions.iter().filter(|m| m.part == part) {
        let Source::Impression(key) = &mention.from else {
            continue;
        };
        let design = here.public().designs.get(&key.design);
        let found = design.and_then(|d| Some((d, d.impressions.get(&key.number)?)));
        if let Some(sheet) = found
            && sheets
                .last()
                .is_none_or(|(_, last)| last.key != sheet.1.key)
        {
            sheets.push(sheet);
        }
    }
    sheets
}

fn is_keeper(impression: &Impression, holder: &Key) -> bool {
    impression
        .holder
        .as_ref()
        .is_some_and(|h| h.value == *holder)
}

fn is_owner(impression: &Impression, holder: &Key) -> bool {
    impression
        .owner
        .as_ref()
        .is_some_and(|owner| is_record(owner, holder))
}

fn is_record(party: &Party, key: &Key) -> bool {
    matches!(party, Party::Record(record) if record.value == *key)
}

/// "Northport, Netherlands. 12 impressions of 9 designs."
fn brief(here: &Here<'_>, holder: &Holder, held: &[Sheet<'_>]) -> String {
    let words = here.words();
    let town = holder.town.as_ref().map(|t| t.value.clone());
    let country = holder.country.as_ref().map(|c| here.country(c).to_owned());
    // The name of a private owner's country is in their name already.
    let place: Vec<String> = [town, country.filter(|_| holder.town.is_some())]
        .into_iter()
        .flatten()
        .collect();
    let place = place.join(", ");
    let mut designs: Vec<&Key> = held.iter().map(|(d, _)| &d.key).collect();
    designs.dedup();
    let count = match held.len() {
        0 => String::new(),
        n => words.with(
            "impressions-of-designs",
            &[
                (
                    "impressions",
                    Given::Text(&words.count("count-impressions", n)),
                ),
                (
                    "designs",
                    Given::Text(&words.count("count-of-designs", designs.len())),
                ),
            ],
        ),
    };
    let sentences: Vec<String> = [place, count]
        .into_iter()
        .filter(|s| !s.is_empty())
        .map(|s| format!("{s}."))
        .collect();
    sentences.join(" ")
}

fn facts(here: &Here<'_>, holder: &Holder, mentions: &[Mention]) -> Vec<Fact> {
    let words = here.words();
    let mut facts = Vec::new();
    let mut fact = |term: &str, text: CleanHtml| {
        if !text.is_empty() {
            facts.push(Fact {
                term: words.word(term).to_owned(),
                text,
            });
        }
    };
    let former: Vec<CleanHtml> = holder
        .formerly
        .iter()
        .map(|f| {
            let until = f.until.as_ref().map_or_else(String::new, |until| {
                let date = dates::once(until, words);
                words.with("date-until", &[("date", Given::Text(&date))])
            });
            CleanHtml::join([&CleanHtml::text(&f.name), &CleanHtml::text(&until)], ", ")
        })
        .collect();
    fact("formerly-named", CleanHtml::join(&former, "; "));
    let before: Vec<CleanHtml> = mentions
        .iter()
        .filter(|m| m.part == Part::Successor)
        .filter_map(|m| match &m.from {
            Source::Holder(key) => Some(here.holder(key)),
            _ => None,
        })
        .collect();
    fact("took-over", CleanHtml::join(&before, "; "));
    if let Some(successor) = &holder.successor {
        let since = successor.date.as_ref().map_or_else(String::new, |date| {
            let date = dates::once(date, words);
            words.with("date-from", &[("date", Given::Text(&date))])
        });
        let name = here.holder_and_city(&successor.holder.value);
        fact(
            "continued-by",
            CleanHtml::join([&name, &CleanHtml::text(&since)], ", "),
        );
    }
    fact(
        "isil",
        text_of(holder.isil.as_ref().map(|isil| isil.as_str())),
    );
    if let Some(web) = &holder.web {
        fact("web", outward(web));
    }
    fact("credit-line", text_of(holder.credit.as_deref()));
    facts
}

fn text_of(text: Option<&str>) -> CleanHtml {
    text.map_or_else(CleanHtml::empty, CleanHtml::text)
}

/// A link out of the catalogue; plain text where it is no web address.
pub(super) fn outward(address: &str) -> CleanHtml {
    let text = CleanHtml::text(address);
    if address.starts_with("https://") || address.starts_with("http://") {
        let attributes = [
            ("class", "bare-address"),
            ("href", address),
            ("rel", "noopener noreferrer external"),
        ];
        CleanHtml::element("a", &attributes, &text)
    } else {
        text
    }
}

/// Who owns a sheet that is kept here, and that it was withdrawn.
fn remark(here: &Here<'_>, holder: &Holder, impression: &Impression) -> CleanHtml {
    let owner = impression
        .owner
        .as_ref()
        .filter(|owner| !is_record(owner, &holder.key))
        .map_or_else(CleanHtml::empty, |owner| {
            let owner = here.party(owner);
            here.words().html("owned-by", None, &[("owner", &owner)])
        });
    let withdrawn = if impression.standing.is_withdrawn() {
        CleanHtml::text(
            here.words()
                .listed("standing", impression.standing.standing),
        )
    } else {
        CleanHtml::empty()
    };
    CleanHtml::join([&owner, &withdrawn], ". ")
}

/// What the holder owned or kept, and no longer does.
fn formerly(here: &Here<'_>, holder: &Holder, mentions: &[Mention]) -> List {
    let mut had = sheets(here, mentions, Part::Owner);
    had.extend(sheets(here, mentions, Part::Keeper));
    had.extend(sheets(here, mentions, Part::FormerHolder));
    let order = &here.book.studies.order;
    had.sort_by_key(|(_, i)| order.impression_rank(&i.key));
    had.dedup_by_key(|(_, i)| &i.key);
    let lines = had
        .into_iter()
        .filter(|(_, i)| !is_keeper(i, &holder.key) && !is_owner(i, &holder.key))
        .map(|(_, impression)| {
            let numbers: Vec<&str> = impression
                .former_accessions
                .iter()
                .filter(|f| f.holder.as_ref().is_some_and(|h| h.value == holder.key))
                .map(|f| f.number.as_str())
                .collect();
            let times = times(here, holder, impression, |role| role != PartyRole::Agent);
            let now = now(here, impression);
            let said = CleanHtml::join([&CleanHtml::text(&numbers.join(", ")), &times, &now], "; ");
            here.impression_of(&impression.key).then(": ").and(&said)
        })
        .collect();
    List::new(CleanHtml::text(here.words().word("formerly-here")), lines)
}

/// "now Northport, Harbour Museum"; "untraced".
pub(super) fn now(here: &Here<'_>, impression: &Impression) -> CleanHtml {
    let place = here.whereabouts(impression);
    if impression.holder.is_none() {
        return CleanHtml::text(&place);
    }
    let now = here
        .words()
        .with("now-at", &[("where", Given::Text(&place))]);
    CleanHtml::text(&now)
}

/// What passed through the holder's hands as agent.
fn handled(here: &Here<'_>, holder: &Holder, mentions: &[Mention]) -> List {
    let lines = sheets(here, mentions, Part::Agent)
        .into_iter()
        .map(|(_, impression)| {
            let times = times(here, holder, impression, |role| role == PartyRole::Agent);
            let name = here.impression_of(&impression.key);
            CleanHtml::join([&name, &times], ": ")
        })
        .collect();
    List::new(CleanHtml::text(here.words().word("handled-here")), lines)
}

/// When and how the holder had a sheet: "1931 to 1987, purchase".
fn times(
    here: &Here<'_>,
    holder: &Holder,
    impression: &Impression,
    wanted: impl Fn(PartyRole) -> bool,
) -> CleanHtml {
    let words = here.words();
    let entries: Vec<CleanHtml> = impression
        .provenance
        .iter()
        .filter(|entry| wanted(entry.role) && is_record(&entry.party, &holder.key))
        .map(|entry| {
            let when = period(here, entry.from.as_ref(), entry.to.as_ref());
            let how = entry.how.as_ref().map_or_else(String::new, |how| {
                here.term(Vocabulary::Transfers, how.as_str())
            });
            let lot = entry.lot.as_ref().map_or_else(String::new, |lot| {
                words.with("lot", &[("lot", Given::Text(lot))])
            });
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
            &[("a", Given::Text(&a)), ("b", Given::Text(&b))],
        ),
        (Some(a), None) => words.with("date-from", &[("date", Given::Text(&a))]),
        (None, Some(b)) => words.with("date-until", &[("date", Given::Text(&b))]),
        (None, None) => String::new(),
    }
}

/// Blocks, plates and stones that somebody has.
pub(super) fn matrices(here: &Here<'_>, key: &Key, mentions: &[Mention]) -> List {
    let mut lines = Vec::new();
    for mention in mentions.iter().filter(|m| m.part == Part::MatrixHolder) {
        let Source::Design(design) = &mention.from else {
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
                let name = values::matrix_name(here, design, &matrix.key);
                CleanHtml::link(&to, &CleanHtml::text(&name))
            })
            .collect();
        let design = here.design(&design.key);
        lines.push(design.then(": ").and(&CleanHtml::join(&parts, ", ")));
    }
    lines.dedup();
    List::new(CleanHtml::text(here.words().word("matrices-here")), lines)
}

fn exhibitions(here: &Here<'_>, mentions: &[Mention]) -> List {
    let lines = mentions
        .iter()
        .filter(|m| m.part == Part::Exhibited)
        .filter_map(|m| match &m.from {
            Source::Exhibition(key) => {
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

/// What else records name somebody as, a list for each.
pub(super) fn named(here: &Here<'_>, mentions: &[Mention]) -> Vec<List> {
    let parts = [
        (Part::Printer, "named-printer"),
        (Part::Publisher, "named-publisher"),
        (Part::Mark, "named-mark"),
        (Part::AppliedMark, "named-applied-mark"),
        (Part::Sighting, "named-sighting"),
        (Part::Said, "named-said"),
    ];
    parts
        .into_iter()
        .map(|(part, word)| {
            let found = mentioned::by_records(here, mentions, |p| p == part);
            let lines = if found.is_empty() {
                Vec::new()
            } else {
                vec![CleanHtml::join(&found, "; ")]
            };
            List::new(CleanHtml::text(here.words().word(word)), lines)
        })
        .collect()
}

/// What nobody has done yet: measure, photograph, identify.
fn to_do(here: &Here<'_>, held: &[Sheet<'_>]) -> List {
    let without: [(&str, fn(&Impression) -> bool); 4] = [
        ("to-do-not-identified", |i| i.identified.is_none()),
        ("to-do-not-measured", |i| {
            let sheet = &i.sheet;
            sheet.size.is_empty() && sheet.image.is_empty() && sheet.platemark.is_empty()
        }),
        ("to-do-no-photograph", |i| i.pictures.is_empty()),
        ("to-do-no-verso", |i| {
            !i.pictures.is_empty() && i.pictures.iter().all(|p| p.side != Side::Verso)
        }),
    ];
    let lines = without
        .into_iter()
        .filter_map(|(word, wanting)| {
            let keys = held
                .iter()
                .map(|(_, i)| *i)
                .filter(|i| !i.standing.is_withdrawn() && wanting(i))
                .map(|i| &i.key);
            let handles = here.handles(keys).some()?;
            Some(
                CleanHtml::text(here.words().word(word))
                    .then(": ")
                    .and(&handles),
            )
        })
        .collect();
    List::new(CleanHtml::text(here.words().word("to-do")), lines)
}
