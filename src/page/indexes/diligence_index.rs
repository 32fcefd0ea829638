//! The owners of sheets from 1933 to 1945, for all sheets that may have existed then. Worded without
//! accusation, and always with the caution.

use serde::Serialize;

use crate::model::design::Design;
use crate::model::impression::Impression;
use crate::page::lists::list::List;
use crate::page::lists::run_on::{self, RunOn};
use crate::page::setting::address::Address;
use crate::page::setting::book::Here;
use crate::page::setting::html::{CleanHtml, as_sentences, capitalised};
use crate::page::setting::leaf::Leaf;
use crate::page::sheet::diligence::{
    dealings, possibly_same, printed_later, see_the_sheet, silence, stretch,
};
use crate::study::diligence::{ChangeOfHands, Coverage, DiligenceYears, OwnerRecord};

#[derive(Serialize)]
struct View {
    title: String,
    brief: String,
    caution: CleanHtml,
    /// Sheets for which no owner is recorded in these years, by place.
    silent: RunOn,
    throughout: RunOn,
    partly: List,
    perhaps: List,
    uncertain: List,
    not_asked: String,
}

/// The page.
pub(crate) fn page(here: &Here<'_>) -> Leaf {
    let words = here.words();
    let title = words.word("overview-provenance").to_owned();
    let not_asked = here
        .sheets_in_order()
        .filter(|(_, i)| !here.book.studies.diligence.contains_key(&i.key))
        .count();
    let view = View {
        title: title.clone(),
        brief: words.word("provenance-years-brief").to_owned(),
        caution: here.with_cautions("years-caution"),
        silent: by_place(here, Coverage::Silent),
        throughout: by_place(here, Coverage::Throughout),
        partly: line_by_line(here, Coverage::Partly),
        perhaps: line_by_line(here, Coverage::Perhaps),
        uncertain: line_by_line(here, Coverage::Uncertain),
        not_asked: match not_asked {
            0 => String::new(),
            n => words.count("years-not-asked", n),
        },
    };
    Leaf::new(here.address, title, "pages/diligence.html", &view)
}

/// The published sheets of a status, in the order of the catalogue.
fn sheets<'a>(
    here: &'a Here<'_>,
    status: Coverage,
) -> impl Iterator<Item = (&'a Design, &'a Impression, &'a DiligenceYears)> {
    let all = &here.book.studies.diligence;
    here.sheets_in_order()
        .filter_map(|(design, i)| Some((design, i, all.get(&i.key)?)))
        .filter(move |(_, _, years)| years.coverage() == status)
}

fn heading(here: &Here<'_>, status: Coverage) -> CleanHtml {
    let word = match status {
        Coverage::Throughout => "years-head-throughout",
        Coverage::Perhaps => "years-head-perhaps",
        Coverage::Uncertain => "years-head-uncertain",
        Coverage::Partly => "years-head-partly",
        Coverage::Silent => "years-head-silent",
    };
    CleanHtml::text(here.words().word(word))
}

/// A handle with further facts that museums need: "14.7 (change of ownership recorded, may have been printed later; sale,
/// Mole & Pier, Northport, May 1938 | purchased by Harbour Museum, Northport, 1939)".
fn marked(here: &Here<'_>, impression: &Impression, years: &DiligenceYears) -> CleanHtml {
    let words = here.words();
    let change = match years.change {
        ChangeOfHands::None => "",
        ChangeOfHands::Possible => words.word("years-mark-change-possible"),
        ChangeOfHands::Recorded => words.word("years-mark-change-recorded"),
    };
    let later = printed_later(here, years, "years-mark").unwrap_or_default();
    let marks = CleanHtml::join([&CleanHtml::text(change), &later], ", ");
    let dealings = dealings(here, years).unwrap_or_default();
    let marks = CleanHtml::join([&marks, &dealings], "; ");
    let handle = here.impression(&impression.key);
    if marks.is_empty() {
        return handle;
    }
    let marks = CleanHtml::text("(").and(&marks).then(")");
    handle.then(" ").and(&CleanHtml::span("quiet", &marks))
}

/// Handles by place: "Northport, Harbour Museum 14.1, 14.7".
fn by_place(here: &Here<'_>, status: Coverage) -> RunOn {
    let items: Vec<(CleanHtml, CleanHtml)> = sheets(here, status)
        .map(|(_, impression, years)| {
            let place = CleanHtml::text(&here.whereabouts(impression));
            let lead = match &impression.holder {
                Some(holder) => here.link(&Address::Holder(holder.value.clone()), &place),
                None => capitalised(&place),
            };
            let name = marked(here, impression, years);
            let further = CleanHtml::join(&further(here, years), "; ");
            (lead, CleanHtml::join([&name, &further], ": "))
        })
        .collect();
    let n = items.len();
    RunOn {
        heading: heading(here, status),
        note: CleanHtml::text(&here.words().count("count-records", n)).some(),
        lines: run_on::by_lead(here, items),
    }
}

/// The records on either side of a gap, the other sheets that it may be, and where to read how it changed hands.
fn further(here: &Here<'_>, years: &DiligenceYears) -> Vec<CleanHtml> {
    let mut said: Vec<CleanHtml> = silence(here, years).into_iter().collect();
    said.extend(possibly_same(here, years));
    said.extend(see_the_sheet(here, years));
    said
}

/// A line for each sheet, with the days without a certain owner.
fn line_by_line(here: &Here<'_>, status: Coverage) -> List {
    let lines: Vec<CleanHtml> = sheets(here, status)
        .map(|(_, impression, years)| {
            let open = years
                .stretches
                .iter()
                .filter(|s| s.known != OwnerRecord::Certain);
            let open: Vec<CleanHtml> = open.map(|s| stretch(here, s)).collect();
            let open = CleanHtml::join(&open, "; ");
            let mut sentences = vec![open];
            sentences.extend(further(here, years));
            let sentences = as_sentences(&sentences);
            let place = CleanHtml::text(&here.whereabouts(impression));
            let name = CleanHtml::join([&marked(here, impression, years), &place], ", ");
            name.then(". ").and(&sentences)
        })
        .collect();
    let n = lines.len();
    let mut list = List::new(heading(here, status), lines);
    let words = here.words();
    let count = CleanHtml::text(&words.count("count-records", n));
    let only_open = CleanHtml::text(words.word("years-only-open-days"));
    list.note = (n > 0).then(|| as_sentences(&[count, only_open]));
    list
}
