//! The page of a mark that several sheets share: picture and size, its numbers in repertories, who used it and when, its
//! conditions, the printings and dates of the sheets that bear it, and all these sheets.

use serde::Serialize;

use crate::model::design::Design;
use crate::model::impression::Impression;
use crate::model::key::{ImpressionKey, Key};
use crate::model::link::Target;
use crate::model::mark::{Mark, MarkRecord};
use crate::page::comparison::groups;
use crate::page::lists::checklist::{self, ChecklistHeads};
use crate::page::lists::facts::Fact;
use crate::page::lists::list::List;
use crate::page::lists::mentions;
use crate::page::lists::table::{Row, Table};
use crate::page::phrases::claims;
use crate::page::phrases::dates;
use crate::page::phrases::earlier_numbers::{self, NumberedPart};
use crate::page::phrases::sizes;
use crate::page::plates::figures;
use crate::page::setting::address::{Address, ComparedBy, Fragment, Overview};
use crate::page::setting::book::Here;
use crate::page::setting::html::{CleanHtml, capitalised};
use crate::page::setting::leaf::Leaf;
use crate::page::setting::pictures::{Plate, Setting};
use crate::page::texts::markdown;
use crate::study::census::editions::only_printing;
use crate::study::marks::{MarkUser, interval, users_of};

#[derive(Serialize)]
struct View {
    kind: CleanHtml,
    title: CleanHtml,
    plate: Option<Plate>,
    facts: Vec<Fact>,
    text: Option<CleanHtml>,
    users: Option<Table>,
    /// That a mark of several users proves none of them.
    caution: Option<CleanHtml>,
    conditions: Option<Table>,
    printings: Option<Table>,
    sheets: Option<Table>,
    /// The link to the comparison of the sheets.
    compare: Option<String>,
    lists: Vec<List>,
}

/// A sheet that bears the mark, and the mark as its record has it.
type Bearer<'a> = (&'a Design, &'a Impression, &'a Mark);

pub(crate) fn page(here: &Here<'_>, mark: &MarkRecord) -> Leaf {
    let words = here.words();
    let bearers: Vec<Bearer<'_>> = here
        .impressions_in_order()
        .filter_map(|(design, sheet)| {
            let is_it = |on: &&Mark| on.record.as_ref().is_some_and(|key| key.value == mark.key);
            Some((design, sheet, sheet.marks.iter().find(is_it)?))
        })
        .collect();
    let users = users_of(here.public(), &mark.key);
    let picture = mark.picture.as_ref();
    let title = capitalised(&here.mark_name(mark));
    let sheets = bearers.iter().map(|(design, sheet, _)| (*design, *sheet));
    let accession = |sheet: &Impression| sheet.accession_and_part().unwrap_or_default();
    let heads = ChecklistHeads {
        number: "accession-number",
        remark: "now-kept",
    };
    let kind = mark.kind.as_ref();
    let lists = [mentions::list(here, &Target::Mark(mark.key.clone()))];
    let view = View {
        kind: here.link(
            &Address::Overview(Overview::Marks),
            &CleanHtml::text(kind.map_or(words.word("mark"), |k| words.listed("mark", k.value))),
        ),
        plate: picture.and_then(|key| figures::plate(here, &key.value, None, Setting::Leading)),
        facts: facts(here, mark),
        text: markdown::note(here, mark.note.as_ref()),
        caution: (users.len() > 1).then(|| caution(here)),
        users: users_table(here, mark, &users),
        conditions: conditions(here, mark, &bearers),
        printings: printings(here, mark, &bearers),
        sheets: checklist::checklist(here, &heads, sheets, accession, |sheet| {
            CleanHtml::text(&here.whereabouts(sheet))
        }),
        compare: groups::href(here, &ComparedBy::Mark(mark.key.clone())),
        lists: lists.into_iter().filter(List::has_lines).collect(),
        title: title.clone(),
    };
    let described = title.plain();
    Leaf::new(here.address, described.clone(), "pages/mark.html", &view).described(described)
}

/// The size, the colour and the numbers in repertories.
fn facts(here: &Here<'_>, mark: &MarkRecord) -> Vec<Fact> {
    let words = here.words();
    let numbers = mark.reference.iter();
    let numbers = numbers.map(|r| earlier_numbers::citation(here, r, NumberedPart::Design));
    [
        Fact::stated(
            words.word("size"),
            claims::stated(here, &mark.size, sizes::size),
        ),
        Fact::one(
            words.word("mark-colour"),
            CleanHtml::text(mark.colour.as_deref().unwrap_or_default()),
        ),
        Fact::of_lines(words.word("mark-repertory"), numbers.collect()),
    ]
    .into_iter()
    .flatten()
    .collect()
}

fn caution(here: &Here<'_>) -> CleanHtml {
    CleanHtml::text(here.words().word("mark-caution"))
}

/// Everybody who used the mark, with the years that the record gives, and the sheets that they are said to have put it
/// on.
fn users_table(here: &Here<'_>, mark: &MarkRecord, users: &[MarkUser]) -> Option<Table> {
    let row = |user: &MarkUser| {
        let recorded: Vec<CleanHtml> = mark
            .users
            .iter()
            .filter(|recorded| recorded.person.value == user.key)
            .map(|recorded| {
                let years = years(
                    here,
                    interval(recorded.from.as_ref(), recorded.to.as_ref()).as_ref(),
                );
                let years = if years.is_empty() {
                    CleanHtml::text(here.words().word("mark-years-unknown"))
                } else {
                    years
                };
                claims::with_claim(here, years, &recorded.claim)
            })
            .collect();
        let when = if recorded.is_empty() {
            years(here, user.when.as_ref())
        } else {
            CleanHtml::join(&recorded, "; ")
        };
        Row::new(vec![
            here.person_or_holder(&user.key),
            when,
            handles(here, user.sheets.iter().collect()),
        ])
    };
    table(
        here,
        &["mark-user", "mark-used", "mark-put-on"],
        &users.iter().map(row).collect::<Vec<_>>(),
    )
}

fn years(here: &Here<'_>, date: Option<&crate::model::edtf::Date>) -> CleanHtml {
    date.map_or_else(CleanHtml::empty, |date| {
        dates::throughout_html(date, here.words())
    })
}

/// The conditions of the mark, with the time of each and the sheets that show it.
fn conditions(here: &Here<'_>, mark: &MarkRecord, bearers: &[Bearer<'_>]) -> Option<Table> {
    let row = |condition: &crate::model::mark::MarkCondition| {
        let shows = |on: &Mark| {
            let shown = on.condition.as_ref();
            shown.is_some_and(|key| key.value == condition.key.value)
        };
        let sheets = bearers.iter().filter(|(_, _, on)| shows(on));
        let time = interval(condition.from.as_ref(), condition.to.as_ref());
        Row {
            id: Fragment::Condition(&condition.key.value).to_string(),
            cells: vec![
                condition_name(condition),
                years(here, time.as_ref()),
                handles(here, sheets.map(|(_, sheet, _)| &sheet.key).collect()),
            ],
        }
    };
    table(
        here,
        &["mark-condition", "mark-condition-when", "mark-seen-on"],
        &mark.conditions.iter().map(row).collect::<Vec<_>>(),
    )
}

/// A condition by its summary, or its key in words.
fn condition_name(condition: &crate::model::mark::MarkCondition) -> CleanHtml {
    match &condition.summary {
        Some(summary) => CleanHtml::text(summary.trim_end_matches('.')),
        None => CleanHtml::text(&condition.key.value.as_str().replace('-', " ")),
    }
}

/// The printings of the sheets that bear the mark, with the date of each, when it was put on them, and its conditions.
fn printings(here: &Here<'_>, mark: &MarkRecord, bearers: &[Bearer<'_>]) -> Option<Table> {
    let mut groups: Vec<((&Key, Option<&Key>), Vec<&Bearer<'_>>)> = Vec::new();
    for bearer in bearers {
        let group = (&bearer.0.key, only_printing(bearer.1));
        match groups.iter_mut().find(|(known, _)| *known == group) {
            Some((_, sheets)) => sheets.push(bearer),
            None => groups.push((group, vec![bearer])),
        }
    }
    let rows = groups.into_iter().map(|((design, printing), sheets)| {
        let (name, printed) = printing_named(here, design, printing);
        let distinct = |texts: Vec<CleanHtml>| {
            let mut all: Vec<CleanHtml> = Vec::new();
            for text in texts {
                if !text.is_empty() && !all.contains(&text) {
                    all.push(text);
                }
            }
            all
        };
        let applied = sheets.iter().map(|(_, _, on)| {
            let applied = on.applied.as_ref();
            applied.map_or_else(CleanHtml::empty, |date| {
                dates::once_html(&date.value, here.words())
            })
        });
        // A condition is told of the sheets alone on which it is recorded.
        let conditions = mark.conditions.iter().filter_map(|condition| {
            let shown = sheets.iter().filter(|(_, _, on)| {
                let shown = on.condition.as_ref();
                shown.is_some_and(|key| key.value == condition.key.value)
            });
            let shown: Vec<&ImpressionKey> = shown.map(|(_, sheet, _)| &sheet.key).collect();
            (!shown.is_empty()).then(|| {
                let sheets = handles(here, shown);
                condition_name(condition).then(" (").and(&sheets).then(")")
            })
        });
        let applied = distinct(applied.collect());
        let conditions: Vec<CleanHtml> = conditions.collect();
        let keys = sheets.iter().map(|(_, sheet, _)| &sheet.key).collect();
        Row::new(vec![
            name,
            printed,
            CleanHtml::join(&applied, "; "),
            CleanHtml::join(&conditions, "; "),
            handles(here, keys),
        ])
    });
    let heads = [
        "mark-printing",
        "mark-printed",
        "mark-applied",
        "mark-condition",
        "mark-seen-on",
    ];
    table(here, &heads, &rows.collect::<Vec<_>>())
}

/// A printing with its design, as links, and its date.
fn printing_named(here: &Here<'_>, design: &Key, printing: Option<&Key>) -> (CleanHtml, CleanHtml) {
    let named = here.design(design);
    let record = here.public().designs.get(design);
    let Some((record, printing)) =
        record.and_then(|record| Some((record, record.printing(printing?)?)))
    else {
        let unknown = CleanHtml::quiet(here.words().word("mark-printing-unknown"));
        return (
            CleanHtml::join([&named, &unknown], ", "),
            CleanHtml::empty(),
        );
    };
    let key = &printing.key.value;
    let to = here.href_part(&Address::Design(design.clone()), Fragment::Printing(key));
    let name = CleanHtml::text(&here.printing_name(record, key));
    let date = printing.date.own();
    let date = date.map_or_else(CleanHtml::empty, |date| {
        dates::once_html(date, here.words())
    });
    (
        CleanHtml::join([&named, &CleanHtml::link(&to, &name)], ", "),
        date,
    )
}

/// Sheets by their numbers, in the order of the catalogue.
fn handles(here: &Here<'_>, mut sheets: Vec<&ImpressionKey>) -> CleanHtml {
    sheets.sort_by_key(|key| here.book.studies.order.impression_rank(key));
    here.handles(sheets)
}

/// A table whose heads are words; `None` without rows.
fn table(here: &Here<'_>, heads: &[&str], rows: &[Row]) -> Option<Table> {
    let heads = heads.iter().map(|head| here.words().word(head));
    Table::of_named_rows(&heads.collect::<Vec<_>>(), rows)
}
