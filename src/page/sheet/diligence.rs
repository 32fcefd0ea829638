//! The owners of a sheet from 1933 to 1945 on its page, for sheets that may have existed then
//! (`docs/definitions.md`, "The years 1933 to 1945"). Worded without accusation, and always with the
//! caution.

use serde::Serialize;

use super::provenance;
use crate::model::edtf::{Date, Day};
use crate::model::impression::Impression;
use crate::model::provenance::{PartyRole, ProvenanceEntry};
use crate::page::phrases::dates;
use crate::page::setting::book::Here;
use crate::page::setting::html::{CleanHtml, as_sentences, capitalised};
use crate::study::diligence::{
    ChangeOfHands, Coverage, DiligenceYears, EntryRef, FIRST, LAST, OwnerRecord, Stretch,
};

/// The part on its own page.
#[derive(Serialize)]
pub(crate) struct Diligence {
    /// A summary of one to six sentences.
    said: CleanHtml,
    /// The stretches of time, where there are several.
    stretches: Vec<CleanHtml>,
    /// The caution.
    caution: CleanHtml,
}

/// The part for a sheet; `None` where it was printed later, destroyed before, or is not counted.
pub(crate) fn of_sheet(here: &Here<'_>, impression: &Impression) -> Option<Diligence> {
    let years = here.book.studies.diligence.get(&impression.key)?;
    let is_one = years.stretches.len() == 1 && years.coverage() != Coverage::Perhaps;
    Some(Diligence {
        said: summary(here, impression, years),
        stretches: if is_one {
            Vec::new()
        } else {
            let lines = years.stretches.iter().map(|s| stretch(here, s));
            lines.map(|line| line.then(".")).collect()
        },
        caution: here.with_cautions("years-caution"),
    })
}

fn summary(here: &Here<'_>, impression: &Impression, years: &DiligenceYears) -> CleanHtml {
    let words = here.words();
    let first = years.stretches.first().map_or(FIRST, |s| s.first);
    let last = years.stretches.last().map_or(LAST, |s| s.last);
    let status = match years.coverage() {
        Coverage::Throughout => "years-throughout",
        Coverage::Perhaps => "years-perhaps",
        Coverage::Partly => "years-partly",
        Coverage::Silent => "years-silent",
    };
    let time = CleanHtml::text(&time(here, first, last));
    let mut sentences = vec![words.html(status, None, &[("time", &time)])];
    sentences.extend(silence(here, years));
    match years.change {
        ChangeOfHands::None => {}
        ChangeOfHands::Possible => {
            sentences.push(CleanHtml::text(words.word("years-change-possible")));
        }
        ChangeOfHands::Recorded => {
            sentences.push(CleanHtml::text(words.word("years-change-recorded")));
        }
    }
    if let Some(sales) = handled(here, years) {
        sentences.push(words.html("years-handled", None, &[("entries", &sales)]));
    }
    if years.may_be_later {
        sentences.push(CleanHtml::text(words.word("years-may-be-later")));
    }
    // A text written by hand is not computed with, so that it may say what the summary does not.
    if impression.provenance_line.is_some() {
        sentences.push(CleanHtml::text(words.word("years-entries-only")));
    }
    as_sentences(&sentences)
}

/// "last recorded about 1940; then none recorded; next recorded 1978", where these years end without an owner;
/// each date in the form in which it is recorded.
pub(crate) fn silence(here: &Here<'_>, years: &DiligenceYears) -> Option<CleanHtml> {
    let silence = years.silence.as_ref()?;
    let words = here.words();
    let dated = |of: &EntryRef, is_end: bool| {
        let entry = entry(here, of)?;
        let (first, second) = if is_end && is_owner(entry) {
            (&entry.to, &entry.from)
        } else {
            (&entry.from, &entry.to)
        };
        let date = first.as_ref().or(second.as_ref())?;
        Some(dates::once_html(&date.value, words))
    };
    let last = dated(&silence.after, true)?;
    let next = silence.until.as_ref().and_then(|next| dated(next, false));
    let said = match next {
        Some(next) => words.html(
            "years-last-and-next",
            None,
            &[("date", &last), ("next", &next)],
        ),
        None => words.html("years-last", None, &[("date", &last)]),
    };
    let is_certain = entry(here, &silence.after).is_some_and(ProvenanceEntry::is_certain);
    Some(if is_certain {
        said
    } else {
        words.html("years-perhaps-last", None, &[("last", &said)])
    })
}

/// The entries of agents in these years, with name and date: "sale, Mole & Pier, Northport, May 1938".
pub(crate) fn handled(here: &Here<'_>, years: &DiligenceYears) -> Option<CleanHtml> {
    let entries = years.handled.iter().filter_map(|of| entry(here, of));
    let said: Vec<CleanHtml> = entries.map(|e| provenance::on_its_own(here, e)).collect();
    CleanHtml::join(&said, "; ").some()
}

fn is_owner(entry: &ProvenanceEntry) -> bool {
    entry.role == PartyRole::Owner
}

fn entry<'h>(here: &Here<'h>, (record, entry): &EntryRef) -> Option<&'h ProvenanceEntry> {
    let impression = here.public().impression(record)?;
    impression.provenance.get(entry.index())
}

/// "1938 to 8 May 1945: no owner is recorded".
pub(crate) fn stretch(here: &Here<'_>, stretch: &Stretch) -> CleanHtml {
    let words = here.words();
    let time = CleanHtml::text(&time(here, stretch.first, stretch.last));
    let names = owners(here, &stretch.owners);
    let who = match stretch.known {
        OwnerRecord::Missing => CleanHtml::text(words.word("years-nobody")),
        OwnerRecord::Certain => names,
        OwnerRecord::Uncertain => words.html("years-perhaps-owner", None, &[("owner", &names)]),
    };
    capitalised(&time).then(": ").and(&who)
}

/// The parties of the entries, each once.
fn owners(here: &Here<'_>, entries: &[EntryRef]) -> CleanHtml {
    let mut names: Vec<CleanHtml> = Vec::new();
    for of in entries {
        let name = entry(here, of).map(|entry| provenance::in_text(here, entry));
        names.extend(name.filter(|name| !names.contains(name)));
    }
    CleanHtml::join(&names, "; ")
}

/// A span of time in words: "1938 to 8 May 1945".
fn time(here: &Here<'_>, first: Day, last: Day) -> String {
    let text = span_of(first, last);
    Date::parse(&text).map_or_else(|_| text, |date| dates::throughout(&date, here.words()))
}

/// A span of time as EDTF, to the year or month where it consists of whole ones.
fn span_of(first: Day, last: Day) -> String {
    let begins_year = (first.month, first.day) == (1, 1);
    let ends_year = (last.month, last.day) == (12, 31);
    let (begins_month, ends_month) = (first.day == 1, last.following().day == 1);
    // Two ends in one year, or one month, are given with the same precision: "30 January to 31 December
    // 1933".
    let in_one_year = first.year == last.year && !(begins_year && ends_year);
    let to_the_day = in_one_year && !(begins_month && ends_month);
    let end = |day: Day, is_year: bool, is_month: bool| match (is_year, is_month) {
        (true, _) if !in_one_year => format!("{:04}", day.year),
        (_, true) if !to_the_day => format!("{:04}-{:02}", day.year, day.month),
        _ => day.to_string(),
    };
    let start = end(first, begins_year, begins_month);
    let until = end(last, ends_year, ends_month);
    if start == until {
        start
    } else {
        format!("{start}/{until}")
    }
}

#[cfg(test)]
mod tests {
    use super::span_of;
    use crate::model::edtf::Day;

    #[test]
    fn a_time_is_told_to_the_year_where_it_is_made_of_whole_years() {
        let day = |text: &str| {
            let parts: Vec<i64> = text.split('-').map(|p| p.parse().unwrap()).collect();
            Day {
                year: parts[0],
                month: u8::try_from(parts[1]).unwrap(),
                day: u8::try_from(parts[2]).unwrap(),
            }
        };
        for (first, last, told) in [
            ("1933-01-30", "1945-05-08", "1933-01-30/1945-05-08"),
            ("1938-01-01", "1945-05-08", "1938/1945-05-08"),
            ("1938-01-01", "1938-12-31", "1938"),
            ("1934-01-01", "1937-12-31", "1934/1937"),
            ("1933-01-30", "1937-12-31", "1933-01-30/1937"),
            ("1933-01-30", "1933-12-31", "1933-01-30/1933-12-31"),
            ("1945-01-01", "1945-05-08", "1945-01-01/1945-05-08"),
            ("1937-11-01", "1937-12-31", "1937-11/1937-12"),
            ("1937-04-01", "1937-04-30", "1937-04"),
            ("1937-11-23", "1937-11-30", "1937-11-23/1937-11-30"),
            ("1944-11-01", "1945-05-08", "1944-11/1945-05-08"),
            ("1940-02-29", "1940-02-29", "1940-02-29"),
        ] {
            assert_eq!(span_of(day(first), day(last)), told);
        }
    }
}
