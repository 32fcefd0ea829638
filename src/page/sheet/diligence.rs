//! The owners of a sheet from 1933 to 1945 on its page, for sheets that may have existed then
//! (`docs/definitions.md`, "The years 1933 to 1945"). Worded without accusation, and always with the
//! caution.

use serde::Serialize;

use super::provenance;
use crate::model::edtf::parts::{CalendarDate, Edtf, Precision};
use crate::model::edtf::{Date, Day};
use crate::model::impression::Impression;
use crate::model::key::ImpressionKey;
use crate::model::provenance::{PartyRole, ProvenanceEntry};
use crate::page::phrases::dates;
use crate::page::phrases::enumeration;
use crate::page::setting::book::Here;
use crate::page::setting::html::{CleanHtml, as_sentences, capitalised};
use crate::study::diligence::{
    ChangeOfHands, Coverage, DiligenceYears, EntryRef, Event, FIRST, LAST, Manner, OwnerRecord,
    PrintedLater, ProbableDate, Stretch, StretchOwner,
};

/// The part on its own page.
#[derive(Serialize)]
pub(crate) struct Diligence {
    /// A summary in sentences.
    said: CleanHtml,
    /// The stretches of time, where there are several.
    stretches: Vec<CleanHtml>,
    /// The caution.
    caution: CleanHtml,
}

/// The part for a sheet; `None` where it was printed later, destroyed before, or is not counted.
pub(crate) fn of_sheet(here: &Here<'_>, impression: &Impression) -> Option<Diligence> {
    let years = here.book.studies.diligence.get(&impression.key)?;
    let is_one = years.stretches.len() == 1 && years.coverage() != Coverage::Uncertain;
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
        Coverage::Uncertain => "years-uncertain",
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
    if years.manner == Manner::Unknown {
        sentences.push(CleanHtml::text(words.word("years-manner-unknown")));
    }
    if let Some(sales) = handled(here, years) {
        sentences.push(words.html("years-handled", None, &[("entries", &sales)]));
    }
    sentences.extend(possibly_same(here, years));
    sentences.extend(printed_later(here, years, "years"));
    // A text written by hand is not computed with, so that it may say what the summary does not.
    if impression.provenance_line.is_some() {
        sentences.push(CleanHtml::text(words.word("years-entries-only")));
    }
    as_sentences(&sentences)
}

/// "last recorded 1942; then no owner recorded until the sale of 8 June 1949 (Mole & Pier)", where these years end
/// without an owner; each date in the form in which it is recorded.
pub(crate) fn silence(here: &Here<'_>, years: &DiligenceYears) -> Option<CleanHtml> {
    let silence = years.silence.as_ref()?;
    let words = here.words();
    let last = last_recorded(here, &silence.after)?;
    let next = silence
        .until
        .as_ref()
        .and_then(|next| next_recorded(here, next));
    Some(match next {
        Some(next) => words.html("years-then-next", None, &[("last", &last), ("next", &next)]),
        None => words.html("years-then-none", None, &[("last", &last)]),
    })
}

/// "last recorded 1942", "perhaps last recorded in the trade, May 1938".
fn last_recorded(here: &Here<'_>, event: &Event) -> Option<CleanHtml> {
    let words = here.words();
    let entry = entry(here, &event.entry)?;
    let date = dates::once_html(event.date.of(entry)?, words);
    let word = match entry.role {
        PartyRole::Agent => "years-last-in-trade",
        PartyRole::Owner | PartyRole::Keeper => "years-last",
    };
    let said = words.html(word, None, &[("date", &date)]);
    Some(if entry.is_certain() {
        said
    } else {
        words.html("years-perhaps-last", None, &[("last", &said)])
    })
}

/// "no owner recorded until the sale of 8 June 1949 (Mole & Pier)": the next dated entry, be it of an owner or of an
/// agent, with who it names.
fn next_recorded(here: &Here<'_>, event: &Event) -> Option<CleanHtml> {
    let words = here.words();
    let entry = entry(here, &event.entry)?;
    let date = event.date.of(entry)?;
    let is_day = matches!(date.edtf(), Edtf::Date(d) if d.precision() == Precision::Day);
    let is_one_date = matches!(date.edtf(), Edtf::Date(_));
    let is_sale = entry
        .how
        .as_ref()
        .is_some_and(|how| how.value.as_str() == "sale");
    let word = match entry.role {
        PartyRole::Agent if entry.sold == Some(false) => "years-next-bought-in",
        PartyRole::Agent if is_sale && is_day && !date.is_loose() => "years-next-sale-of-day",
        PartyRole::Agent if is_sale => "years-next-sale",
        PartyRole::Agent => "years-next-in-trade",
        PartyRole::Owner | PartyRole::Keeper if is_one_date => "years-next-owner",
        PartyRole::Owner | PartyRole::Keeper => "years-next-owner-between",
    };
    let who = [
        provenance::in_text(here, entry),
        provenance::doubts(here, entry),
    ];
    let who = CleanHtml::join(&who, ", ");
    let date = dates::once_html(date, words);
    Some(words.html(word, None, &[("date", &date), ("who", &who)]))
}

/// "it was probably printed later, between 1974 and 1979, Estate edition"; `place` names the form of the words: `years`
/// in a sentence, `years-mark` behind the handle of the sheet.
pub(crate) fn printed_later(
    here: &Here<'_>,
    years: &DiligenceYears,
    place: &str,
) -> Option<CleanHtml> {
    let words = here.words();
    match &years.later {
        PrintedLater::No => None,
        PrintedLater::Perhaps => Some(CleanHtml::text(
            words.word(&format!("{place}-may-be-later")),
        )),
        PrintedLater::Probably(record, by) => {
            let by = probable_date(here, record, by)?;
            let word = format!("{place}-probably-later");
            Some(words.html(&word, None, &[("by", &by)]))
        }
    }
}

/// "between 1974 and 1979, Estate edition".
fn probable_date(here: &Here<'_>, record: &ImpressionKey, by: &ProbableDate) -> Option<CleanHtml> {
    let design = here.public().designs.get(&record.design)?;
    let impression = here.public().impression(record)?;
    let once = |date: &Date| dates::once_html(date, here.words());
    match by {
        ProbableDate::OfSheet => impression.sheet.date.own().map(once),
        ProbableDate::Printings(keys) => {
            let printings = keys.iter().filter_map(|key| {
                let date = once(design.printing(key)?.date.own()?);
                let name = here.printing_name(design, key);
                Some(date.then(", ").then(&name))
            });
            let printings: Vec<CleanHtml> = printings.collect();
            enumeration::either(here, &printings).some()
        }
    }
}

/// "perhaps the same impression as 7.8: sale, Mole & Pier, May 1938", one for each other sheet that it may be.
pub(crate) fn possibly_same(here: &Here<'_>, years: &DiligenceYears) -> Vec<CleanHtml> {
    let words = here.words();
    let said = years.possibly_same.iter().map(|other| {
        let entries = other.entries.iter().filter_map(|of| entry(here, of));
        let sheet = here.impression(&other.record);
        let entries: Vec<CleanHtml> = entries
            .map(|e| provenance::of_other_sheet(here, e, &sheet))
            .collect();
        match CleanHtml::join(&entries, "; ").some() {
            Some(entries) => words.html(
                "years-perhaps-same",
                None,
                &[("other", &sheet), ("entries", &entries)],
            ),
            None => words.html("years-perhaps-same-alone", None, &[("other", &sheet)]),
        }
    });
    said.collect()
}

/// Where the sheet's page may tell how it changed hands: "see the note on the impression".
pub(crate) fn see_the_sheet(here: &Here<'_>, years: &DiligenceYears) -> Option<CleanHtml> {
    let word = match years.manner {
        Manner::Plain => return None,
        Manner::Written => "years-see-written",
        Manner::Noted => "years-see-note",
        Manner::Unknown => "years-see-sheet",
    };
    Some(CleanHtml::text(here.words().word(word)))
}

/// The entries of agents in these years, with name and date: "sale, Mole & Pier, Northport, May 1938".
fn handled(here: &Here<'_>, years: &DiligenceYears) -> Option<CleanHtml> {
    let entries = years.dealings.iter().filter_map(|of| entry(here, of));
    let agents = entries.filter(|e| e.role == PartyRole::Agent);
    let said: Vec<CleanHtml> = agents.map(|e| provenance::on_its_own(here, e)).collect();
    CleanHtml::join(&said, "; ").some()
}

/// The same with the owners who acquired it: "sale, Mole & Pier, Northport, May 1938 | purchased by Harbour Museum,
/// Northport, 1939".
pub(crate) fn dealings(here: &Here<'_>, years: &DiligenceYears) -> Option<CleanHtml> {
    let entries = years.dealings.iter().filter_map(|of| entry(here, of));
    let said = entries.map(|e| match e.role {
        PartyRole::Owner => provenance::acquisition(here, e),
        PartyRole::Agent | PartyRole::Keeper => provenance::on_its_own(here, e),
    });
    // A semicolon would say that it passed directly from one to the next.
    CleanHtml::join(&said.collect::<Vec<_>>(), " | ").some()
}

fn entry<'h>(here: &Here<'h>, (record, entry): &EntryRef) -> Option<&'h ProvenanceEntry> {
    let impression = here.public().impression(record)?;
    impression.provenance.get(entry.index())
}

/// "1939 to 8 May 1945: no owner recorded", "1938: Harbour Museum, Northport (acquired 1938, the day is not recorded)".
pub(crate) fn stretch(here: &Here<'_>, stretch: &Stretch) -> CleanHtml {
    let words = here.words();
    let time = CleanHtml::text(&time(here, stretch.first, stretch.last));
    let said = |say: &dyn Fn(&StretchOwner, &ProvenanceEntry) -> CleanHtml| {
        let mut names: Vec<CleanHtml> = Vec::new();
        for owner in &stretch.owners {
            let name = entry(here, &owner.entry).map(|entry| say(owner, entry));
            names.extend(name.filter(|name| !names.contains(name)));
        }
        names
    };
    let who = match stretch.known {
        OwnerRecord::Missing => CleanHtml::text(words.word("years-nobody")),
        OwnerRecord::Certain => CleanHtml::join(&said(&|_, e| provenance::in_text(here, e)), "; "),
        // A semicolon would say that it passed directly from one to the next.
        OwnerRecord::Uncertain => enumeration::either(here, &said(&|o, e| uncertain(here, o, e))),
    };
    capitalised(&time).then(": ").and(&who)
}

/// An owner who is not certain at the time: "perhaps Ada Quire", where the entry is not certain; else with what is open
/// about the dates, "Ada Quire (since when is not recorded; until 1938, the day is not recorded)".
fn uncertain(here: &Here<'_>, owner: &StretchOwner, entry: &ProvenanceEntry) -> CleanHtml {
    let words = here.words();
    let name = provenance::in_text(here, entry);
    if !owner.is_firm {
        return words.html("years-perhaps-owner", None, &[("owner", &name)]);
    }
    let ends = [
        (&entry.from, owner.has_begun, "acquired"),
        (&entry.to, owner.is_kept, "held"),
    ];
    let ends = ends.map(|(date, is_settled, end)| {
        let date = date.as_ref().map(|date| &date.value);
        match (date, is_settled) {
            (Some(date), false) => {
                let open = if is_short_of_a_day(date) {
                    "-some-day"
                } else {
                    ""
                };
                dated(here, &format!("years-{end}{open}"), date)
            }
            // The dates that stand with other days of the same owner are not repeated.
            (Some(date), true) if !owner.is_ever_certain => {
                dated(here, &format!("years-{end}"), date)
            }
            (None, false) => CleanHtml::text(words.word(&format!("years-{end}-not-recorded"))),
            (_, true) => CleanHtml::empty(),
        }
    });
    match CleanHtml::join(&ends, "; ").some() {
        Some(ends) => name.then(" (").and(&ends).then(")"),
        None => name,
    }
}

fn dated(here: &Here<'_>, word: &str, date: &Date) -> CleanHtml {
    let date = dates::once_html(date, here.words());
    here.words().html(word, None, &[("date", &date)])
}

/// Whether a date is one plain month or year, so that only the day is not recorded.
fn is_short_of_a_day(date: &Date) -> bool {
    let is_part =
        |date: &CalendarDate| date.precision() != Precision::Day && !date.has_unspecified();
    !date.is_loose() && matches!(date.edtf(), Edtf::Date(d) if is_part(d))
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
