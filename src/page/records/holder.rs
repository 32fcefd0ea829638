//! The page of a holder: checklists of the sheets that it keeps, owns and formerly had, and the work
//! still to be done there.

use std::collections::BTreeSet;

use serde::Serialize;

use super::holder_lists;
use crate::model::holder::Holder;
use crate::model::impression::Impression;
use crate::model::key::Key;
use crate::model::link::Target;
use crate::model::occurrence::{MentionRole, RecordId};
use crate::page::lists::checklist::{self, ChecklistHeads};
use crate::page::lists::custody::{HeldSheet, is_record, is_set_apart, kept_by, owned_elsewhere};
use crate::page::lists::facts::Fact;
use crate::page::lists::list::List;
use crate::page::lists::mentions;
use crate::page::lists::table::Table;
use crate::page::lists::wall::{self, Hung, Wall};
use crate::page::phrases::dates;
use crate::page::phrases::enumeration;
use crate::page::phrases::identifiers;
use crate::page::plates::figures;
use crate::page::setting::book::Here;
use crate::page::setting::export_links::ExportLink;
use crate::page::setting::html::CleanHtml;
use crate::page::setting::leaf::Leaf;
use crate::page::setting::words::Argument;
use crate::page::texts::markdown;
use crate::study::back_links::Mention;

#[derive(Serialize)]
struct View {
    title: String,
    kind: String,
    brief: String,
    /// Who took it over, where somebody did.
    standing: Option<CleanHtml>,
    facts: Vec<Fact>,
    text: Option<CleanHtml>,
    held: Option<Table>,
    owned: Option<Table>,
    /// The sheets that are there, by eye.
    hung: Option<Wall>,
    /// Who made their photographs, and the rights in them.
    credits: Vec<CleanHtml>,
    lists: Vec<List>,
    /// The sheets as files for other programs.
    files: Vec<ExportLink>,
    /// The same as a workbook, to be corrected and sent back.
    correct: Vec<ExportLink>,
}

pub(crate) fn page(here: &Here<'_>, holder: &Holder) -> Leaf {
    let words = here.words();
    let none = Vec::new();
    let links = &here.book.studies.back_links;
    let mentions = links.holders.get(&holder.key).unwrap_or(&none);
    let held = kept_by(here, holder);
    let owned = owned_elsewhere(here, mentions, &holder.key);
    let mut lists = Vec::from(holder_lists::formerly(here, holder, mentions));
    lists.extend([
        holder_lists::handled(here, holder, mentions),
        holder_lists::matrices(here, &holder.key, mentions),
        holder_lists::exhibitions(here, mentions),
    ]);
    lists.extend(holder_lists::named(here, mentions));
    lists.push(holder_lists::to_do(here, &held));
    lists.push(mentions::list(here, &Target::Holder(holder.key.clone())));
    let hung = held
        .iter()
        .map(|(design, impression)| wall::impression(here, design, impression))
        .filter(|hung| hung.image.is_some());
    let hung: Vec<Hung> = hung.collect();
    let heads = |remark| ChecklistHeads {
        number: "accession-number",
        remark,
    };
    let title = here.holder_name(holder);
    let view = View {
        kind: words.listed("holder-kind", holder.kind).to_owned(),
        brief: brief(here, holder, &held),
        standing: taken_over(here, holder),
        facts: facts(here, holder, mentions),
        text: markdown::note(here, holder.note.as_ref()),
        credits: credits(here, &held),
        hung: Wall::of(hung),
        owned: checklist::checklist(
            here,
            &heads("kept-at"),
            owned,
            |i| i.accession_and_part().unwrap_or_default(),
            |i| CleanHtml::text(&here.whereabouts(i)),
        ),
        held: checklist::checklist(
            here,
            &heads("remarks"),
            held,
            |i| i.accession_and_part().unwrap_or_default(),
            |i| remark(here, holder, i),
        ),
        lists: lists.into_iter().filter(List::has_lines).collect(),
        files: here.export_links_of(&["holder-csv", "holder-json"]),
        correct: here.export_links_of(&["holder-xlsx"]),
        title: title.clone(),
    };
    let whole = CleanHtml::text(&here.holder_city_first(holder)).plain();
    Leaf::new(here.address, title, "pages/holder.html", &view).described(whole)
}

/// The credits of the photographs in the wall, each once.
fn credits(here: &Here<'_>, held: &[HeldSheet<'_>]) -> Vec<CleanHtml> {
    let mut credits = Vec::new();
    for (_, impression) in held {
        let key = figures::leading_picture(here, impression);
        let picture = key.and_then(|key| here.public().picture(&key));
        let credit = picture.map(|picture| figures::credit(here, picture));
        credits.extend(credit.filter(|credit| !credits.contains(credit)));
    }
    credits
}

/// "Now part of the Harbour Museum, Northport, where the impressions once held here are listed."
fn taken_over(here: &Here<'_>, holder: &Holder) -> Option<CleanHtml> {
    let successor = holder.successor.as_ref()?;
    let name = here.holder_and_city(&successor.holder.value);
    let of = [("successor", &name)];
    Some(here.words().html("taken-over", None, &of))
}

/// "Northport, Netherlands. 12 impressions of 9 designs."
fn brief(here: &Here<'_>, holder: &Holder, held: &[HeldSheet<'_>]) -> String {
    let words = here.words();
    let town = holder.town.as_ref().map(|t| t.value.clone());
    let country = holder.country.as_ref().map(|c| here.country(c).to_owned());
    // The name of a private owner contains the country.
    let place: Vec<String> = [town, country.filter(|_| holder.town.is_some())]
        .into_iter()
        .flatten()
        .collect();
    let place = place.join(", ");
    // Two records of one sheet count once; rejected and withdrawn records are not counted.
    let accepted = held.iter().filter(|sheet| !is_set_apart(sheet));
    let groups = &here.book.studies.groups;
    let sheets: BTreeSet<_> = accepted
        .clone()
        .map(|(_, i)| groups.first_of(&i.key))
        .collect();
    let designs: BTreeSet<&Key> = accepted.map(|(design, _)| &design.key).collect();
    let count = match sheets.len() {
        0 => String::new(),
        n => words.with(
            "impressions-of-designs",
            &[
                (
                    "impressions",
                    Argument::Text(&words.count("count-impressions", n)),
                ),
                (
                    "designs",
                    Argument::Text(&words.count("count-of-designs", designs.len())),
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
    let mut fact = |term: &str, text: CleanHtml| facts.extend(Fact::one(words.word(term), text));
    let former: Vec<CleanHtml> = holder
        .formerly
        .iter()
        .map(|f| {
            let until = f.until.as_ref().map_or_else(String::new, |until| {
                let date = dates::once(until, words);
                words.with("date-until", &[("date", Argument::Text(&date))])
            });
            CleanHtml::join([&CleanHtml::text(&f.name), &CleanHtml::text(&until)], ", ")
        })
        .collect();
    fact("formerly-named", CleanHtml::join(&former, "; "));
    let before: Vec<CleanHtml> = mentions
        .iter()
        .filter(|m| m.role == MentionRole::Successor)
        .filter_map(|m| match &m.from {
            RecordId::Holder(key) => Some(here.holder(key)),
            _ => None,
        })
        .collect();
    fact("took-over", CleanHtml::join(&before, "; "));
    if let Some(successor) = &holder.successor {
        let since = successor.date.as_ref().map_or_else(String::new, |date| {
            let date = dates::once(date, words);
            words.with("date-from", &[("date", Argument::Text(&date))])
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
        fact("web", CleanHtml::web_address(web));
    }
    fact(
        "identifiers",
        CleanHtml::join(&identifiers::lines(&holder.ids), "; "),
    );
    fact("credit-line", text_of(holder.credit.as_deref()));
    facts
}

fn text_of(text: Option<&str>) -> CleanHtml {
    text.map_or_else(CleanHtml::empty, CleanHtml::text)
}

/// The owner of a sheet that is kept here, and the holder it is recorded with, where this one took that over.
fn remark(here: &Here<'_>, holder: &Holder, impression: &Impression) -> CleanHtml {
    let recorded = impression.holder.as_ref();
    let recorded = recorded.filter(|recorded| recorded.value != holder.key);
    let recorded = recorded.map_or_else(CleanHtml::empty, |recorded| {
        let before = here.holder(&recorded.value);
        here.words()
            .html("recorded-with", None, &[("holder", &before)])
    });
    let owned = owned_by(here, holder, impression);
    CleanHtml::join([&recorded, &owned], "; ")
}

fn owned_by(here: &Here<'_>, holder: &Holder, impression: &Impression) -> CleanHtml {
    let owners = &impression.owners;
    if owners.iter().all(|owner| is_record(owner, &holder.key)) {
        return CleanHtml::empty();
    }
    let owners: Vec<CleanHtml> = owners.iter().map(|owner| here.party(owner)).collect();
    let owners = enumeration::together(here, &owners);
    here.words().html("owned-by", None, &[("owner", &owners)])
}
