//! 1933 to 1945: the recorded owners of a sheet.
//!
//! The days are those of Military Government Law No. 59 (see `study::history::diligence`). The rules for
//! what a date proves and what it only allows are common practice, no source.

use keyblock::model::key::ImpressionKey;
use keyblock::study::diligence::{
    ChangeOfHands, Coverage, DiligenceYears, EntryDate, EntryRef, Event, FIRST, LAST, Manner,
    OwnerRecord, PrintedLater, ProbableDate,
};

use crate::small::{studied, studied_for_readers};

const DESIGN: &str = "-- records/designs/1/design.toml\ntitles = [{ text = \"A Quay\" }]\n\
                      date = \"1927\"\nmakers = [{ person = \"artist\" }]\n";

const MUSEUM: &str = "-- records/holders/museum.toml\nname = \"Museum\"\nkind = \"museum\"\n";

fn key(text: &str) -> ImpressionKey {
    text.parse().unwrap()
}

/// The result for impression 1.1, in the museum, with `toml` in its record.
fn years(toml: &str) -> Option<DiligenceYears> {
    let record = format!(
        "-- records/designs/1/impressions/1.toml\nstatus = \"located\"\nholder = \"museum\"\n{toml}\n"
    );
    let (_, studies) = studied_for_readers(&[DESIGN, MUSEUM, &record]);
    studies.diligence.get(&key("1.1")).cloned()
}

/// The same for a sheet of 1930 with these provenance entries, one period a line: "1933-01-30 to 1945-05-08
/// owner 0 1".
fn of_entries(entries: &str) -> Vec<String> {
    let toml = format!("sheet = {{ date = \"1930\" }}\nprovenance = [{entries}]");
    lines(&years(&toml).unwrap())
}

fn lines(years: &DiligenceYears) -> Vec<String> {
    let line = |stretch: &keyblock::study::diligence::Stretch| {
        let known = match stretch.known {
            OwnerRecord::Certain => "owner",
            OwnerRecord::Uncertain => "perhaps",
            OwnerRecord::Missing => "nobody",
        };
        let time = format!("{} to {}", stretch.first, stretch.last);
        let owners = stretch
            .owners
            .iter()
            .map(|owner| owner.entry.1.index().to_string());
        let words: Vec<String> = [time, known.to_owned()].into_iter().chain(owners).collect();
        words.join(" ")
    };
    years.stretches.iter().map(line).collect()
}

#[test]
fn an_owner_of_the_whole_time_is_recorded_throughout() {
    for entries in [
        "{ owner = { name = \"One\" }, from = \"1931\", to = \"1950\" }",
        "{ owner = \"artist\", to = \"1950\" }",
        "{ owner = \"museum\", from = \"1931\" }",
        "{ owner = { name = \"One\" }, from = \"1933-01-30\", to = \"1945-05-08\" }",
    ] {
        assert_eq!(
            of_entries(entries),
            ["1933-01-30 to 1945-05-08 owner 0"],
            "{entries}"
        );
    }
    let found = years(
        "sheet = { date = \"1930\" }\nprovenance = [{ owner = \"museum\", from = \"1931\" }]",
    );
    let found = found.unwrap();
    assert_eq!(found.coverage(), Coverage::Throughout);
    assert!(found.change == ChangeOfHands::None && found.later == PrintedLater::No);
}

#[test]
fn the_first_and_last_day_are_asked_for_and_no_other() {
    assert_eq!(
        (FIRST.to_string(), LAST.to_string()),
        ("1933-01-30".into(), "1945-05-08".into())
    );
    assert_eq!(
        of_entries("{ owner = { name = \"One\" }, from = \"1933-01-31\", to = \"1945-05-07\" }"),
        [
            "1933-01-30 to 1933-01-30 nobody",
            "1933-01-31 to 1945-05-07 owner 0",
            "1945-05-08 to 1945-05-08 nobody",
        ]
    );
}

#[test]
fn a_year_in_which_hands_changed_is_certain_of_nobody() {
    assert_eq!(
        of_entries("{ owner = { name = \"One\" }, from = \"1934\", to = \"1940\" }"),
        [
            "1933-01-30 to 1933-12-31 nobody",
            "1934-01-01 to 1934-12-31 perhaps 0",
            "1935-01-01 to 1939-12-31 owner 0",
            "1940-01-01 to 1940-12-31 perhaps 0",
            "1941-01-01 to 1945-05-08 nobody",
        ]
    );
}

#[test]
fn an_approximate_date_may_be_five_years_off() {
    assert_eq!(
        of_entries("{ owner = { name = \"One\" }, from = \"1932~\", to = \"1950\" }"),
        [
            "1933-01-30 to 1937-12-31 perhaps 0",
            "1938-01-01 to 1945-05-08 owner 0",
        ]
    );
}

/// An approximate, uncertain or open date covers no day that it may not reach: the margin of five years narrows what
/// is certain and widens nothing.
#[test]
fn a_loose_or_open_end_covers_no_day_that_it_may_not_reach() {
    let until = |to: &str| {
        of_entries(&format!(
            "{{ owner = {{ name = \"One\" }}, from = \"1931\", to = \"{to}\" }}"
        ))
    };
    for loose in ["1940~", "1940?", "1940%"] {
        assert_eq!(
            until(loose),
            [
                "1933-01-30 to 1934-12-31 owner 0",
                "1935-01-01 to 1940-12-31 perhaps 0",
                "1941-01-01 to 1945-05-08 nobody",
            ],
            "{loose}"
        );
    }
    for open in ["1940/..", "1940/", "[1940..]"] {
        assert_eq!(
            until(open),
            [
                "1933-01-30 to 1939-12-31 owner 0",
                "1940-01-01 to 1940-12-31 perhaps 0",
                "1941-01-01 to 1945-05-08 nobody",
            ],
            "{open}"
        );
    }
    let since = of_entries("{ owner = { name = \"One\" }, from = \"1936~\", to = \"1950\" }");
    assert_eq!(since[0], "1933-01-30 to 1935-12-31 nobody");
    assert_eq!(since[1], "1936-01-01 to 1941-12-31 perhaps 0");
    // An end that is not recorded is bounded by what the next date says, not by what it may be off.
    let bounded = of_entries(
        "{ owner = { name = \"One\" }, from = \"1931\" }, { owner = { name = \"Two\" }, from = \"1940~\", to = \"1941\" }",
    );
    assert_eq!(bounded.last().unwrap(), "1942-01-01 to 1945-05-08 nobody");
}

#[test]
fn the_silence_at_the_end_is_told_with_the_entries_on_either_side() {
    let silence = |entries: &str| {
        let toml = format!("sheet = {{ date = \"1930\" }}\nprovenance = [{entries}]");
        let found = years(&toml).unwrap().silence?;
        let at = |event: Event| event.entry.1.index();
        Some((at(found.after), found.until.map(at)))
    };
    let one = "{ owner = { name = \"One\" }, from = \"1931\", to = \"1940~\" }";
    let none = "{ owner = { name = \"One\" }, from = \"1931\" }, { agent = { name = \"A\" }, from = \"1938\" }";
    assert_eq!(silence(one), Some((0, None)));
    assert_eq!(
        silence(&format!("{one}, {{ owner = \"museum\", from = \"1978\" }}")),
        Some((0, Some(1)))
    );
    assert_eq!(silence(none), Some((1, None)), "the agent's date ends it");
    let throughout = "{ owner = \"museum\", from = \"1931\" }";
    assert_eq!(silence(throughout), None);
    assert_eq!(silence(""), None, "nobody is recorded before");
}

/// A sale is an event as an owner's date is: the first one after the gap is named, whichever it is, and an agent's date
/// may be the last before it.
#[test]
fn the_next_event_after_a_gap_is_a_sale_or_an_owner_whichever_is_first() {
    let silence = |entries: &str| {
        let toml = format!("sheet = {{ date = \"1930\" }}\nprovenance = [{entries}]");
        let found = years(&toml).unwrap().silence?;
        let at = |event: Event| (event.entry.1.index(), event.date);
        Some((at(found.after), found.until.map(at)))
    };
    let one = "{ owner = { name = \"One\" }, to = \"1942\" }";
    let sale = "{ agent = { name = \"A\" }, from = \"1949-06-08\", how = \"sale\" }";
    let now = "{ owner = \"museum\", from = \"2005~\" }";
    let after = (0, EntryDate::To);
    assert_eq!(
        silence(&format!("{one}, {sale}, {now}")),
        Some((after, Some((1, EntryDate::From))))
    );
    assert_eq!(
        silence(&format!("{one}, {now}")),
        Some((after, Some((1, EntryDate::From))))
    );
    let kept = "{ keeper = \"museum\", from = \"1946\" }";
    assert_eq!(
        silence(&format!("{one}, {kept}")),
        Some((after, None)),
        "a keeper is neither"
    );
    // What an agent had for years that reach beyond the gap is one event.
    let long = "{ agent = { name = \"A\" }, from = \"1944\", to = \"1951\" }";
    assert_eq!(
        silence(&format!("{one}, {long}")),
        Some(((1, EntryDate::From), None))
    );
    let unsure = "{ owner = { name = \"One\" }, to = \"1937\", this_sheet = \"possible\" }";
    let early = "{ agent = { name = \"A\" }, from = \"1938-05\", how = \"sale\" }";
    assert_eq!(
        silence(&format!("{unsure}, {early}")),
        Some(((1, EntryDate::From), None))
    );
    assert_eq!(silence(early), Some(((0, EntryDate::From), None)));
    assert_eq!(silence(sale), None, "it is later");
}

/// Whichever of the two states it, and by the entries of all records of the other sheet.
#[test]
fn a_sheet_that_may_be_another_has_its_entries_of_these_years() {
    let record = |n: u32, toml: &str| {
        format!(
            "-- records/designs/1/impressions/{n}.toml\nstatus = \"untraced\"\nsheet = {{ date = \"1930\" }}\n{toml}\n"
        )
    };
    let first = record(
        1,
        "maybe_same_as = [{ impression = \"1.2\", why = \"The tear.\" }]\nprovenance = [\
         { owner = { name = \"One\" }, from = \"1931\", to = \"1937\" }, \
         { agent = { name = \"A\" }, from = \"1938-05\", how = \"sale\" }, \
         { keeper = \"museum\", from = \"1946\" }]",
    );
    let second = record(
        2,
        "provenance = [{ owner = { name = \"Two\" }, from = \"1996\" }]",
    );
    let same = record(
        3,
        "same_as = [{ impression = \"1.1\" }]\nprovenance = [{ keeper = \"museum\", from = \"1940\" }]",
    );
    let found = |literals: &[&str], of: &str| -> Vec<(String, Vec<String>)> {
        let (_, studies) = studied_for_readers(literals);
        let others = &studies.diligence[&key(of)].possibly_same;
        let entries = |entries: &[EntryRef]| {
            let entries = entries.iter();
            entries
                .map(|(record, at)| format!("{record} {}", at.index()))
                .collect()
        };
        let told = others.iter();
        told.map(|o| (o.record.to_string(), entries(&o.entries)))
            .collect()
    };
    let told = |record: &str, entries: &[&str]| {
        let entries = entries.iter().map(|e| (*e).to_owned()).collect();
        vec![(record.to_owned(), entries)]
    };
    let all = [DESIGN, MUSEUM, &first, &second, &same];
    let entries = told("1.1", &["1.1 0", "1.1 1", "1.3 0"]);
    assert_eq!(found(&all, "1.2"), entries);
    assert_eq!(found(&all, "1.1"), told("1.2", &[]));
    assert_eq!(found(&all, "1.3"), told("1.2", &[]));
    let noted = "-- records/designs/1/impressions/2.md\nA way that is not known.\n";
    let (_, studies) = studied(&[DESIGN, MUSEUM, &first, &second, noted]);
    let manner = |of: &str| studies.diligence[&key(of)].manner;
    assert_eq!(manner("1.2"), Manner::Noted, "by the entries of the other");
    assert_eq!(manner("1.1"), Manner::Plain);
    // A sheet that is not published acts as absent, and so does a link that is private.
    let hidden = first.replace("status =", "publish = false\nstatus =");
    assert_eq!(found(&[DESIGN, MUSEUM, &hidden, &second], "1.2"), []);
    let private = first.replace("status =", "private = [\"maybe_same_as\"]\nstatus =");
    assert_eq!(found(&[DESIGN, MUSEUM, &private, &second], "1.2"), []);
}

/// A way of transfer that is not known counts for more than a note, and neither counts without a change.
#[test]
fn the_manner_of_a_change_of_hands_is_unknown_or_told_in_a_note() {
    let manner = |entries: &str, more: &str, note: &str| {
        let record = format!(
            "-- records/designs/1/impressions/1.toml\nstatus = \"untraced\"\nsheet = {{ date = \"1930\" }}\n\
             {more}\nprovenance = [{entries}]\n{note}"
        );
        let (_, studies) = studied(&[DESIGN, MUSEUM, &record]);
        studies.diligence[&key("1.1")].manner
    };
    let note = "-- records/designs/1/impressions/1.md\nIn what manner is under research.\n";
    let line = "provenance_line = \"The customs office, 1939.\"";
    let changed = "{ owner = \"museum\", from = \"1939\", how = \"transfer\" }";
    let unknown = "{ owner = \"museum\", from = \"1939\", how = \"unknown\" }";
    for (entries, more, note, expected) in [
        (changed, "", "", Manner::Plain),
        (changed, "", note, Manner::Noted),
        (changed, line, "", Manner::Written),
        (changed, line, note, Manner::Noted),
        (unknown, "", "", Manner::Unknown),
        (unknown, line, note, Manner::Unknown),
        (
            "{ owner = \"museum\", from = \"1931\", how = \"unknown\" }",
            line,
            note,
            Manner::Plain,
        ),
        (
            "{ owner = { name = \"One\" }, to = \"1937\" }, { owner = \"museum\", from = \"1950\", how = \"unknown\" }",
            "",
            "",
            Manner::Plain,
        ),
    ] {
        assert_eq!(
            manner(entries, more, note),
            expected,
            "{entries} {more} {note}"
        );
    }
}

/// The printings of a design whose state `whole` was cut down in 1955, to be printed once more.
const TWO_PRINTINGS: &str = "points = [{ key = \"gulls\", ask = \"How many gulls?\", kind = \"count\", rests_on = \"matrix\" }]\n\
     states = [{ key = \"whole\", shows = { gulls = 9 } }, { key = \"cut-down\", shows = { gulls = 5 } }]\n\
     printings = [{ key = \"own\", kind = \"artist\", date = \"1927/1936\", states = [\"whole\"] }, \
     { key = \"late\", kind = \"posthumous\", date = \"1956\", states = [\"cut-down\"] }]\n";

/// It is said only where a recorded printing that can have ended later is still possible for the sheet.
#[test]
fn a_sheet_may_be_printed_later_only_by_a_recorded_printing_that_is_still_possible() {
    let is_later = |design: &str, toml: &str| {
        let record =
            format!("-- records/designs/1/impressions/1.toml\nstatus = \"untraced\"\n{toml}\n");
        let (_, studies) = studied(&[&format!("{DESIGN}{design}"), &record]);
        let found = studies.diligence.get(&key("1.1"));
        found.expect("a sheet that is concerned").later != PrintedLater::No
    };
    let probable =
        "identified = { state = \"whole\", printing = \"own\", certainty = \"probable\" }\n";
    let contradicted =
        "identified = { state = \"cut-down\", printing = \"late\" }\nobserved = { gulls = 9 }";
    for (toml, expected) in [
        ("", true),
        (probable, true),
        (&format!("{probable}observed = {{ gulls = 9 }}"), false),
        ("observed = { gulls = 9 }", false),
        (contradicted, false),
        ("observed = { gulls = 5 }", true),
        (
            "observed = { gulls = { is = 9, certainty = \"probable\" } }",
            true,
        ),
        ("observed = { gulls = \"not-visible\" }", true),
        // Everything is excluded: then nothing is.
        ("observed = { gulls = 7 }", true),
        ("identified = { printing = \"own\" }", false),
        // The sheet's own date, though it is not certain.
        (
            "observed = { gulls = 9 }\nsheet = { date = { is = \"1950\", certainty = \"possible\" } }",
            true,
        ),
        ("sheet = { date = \"1930\" }", false),
        (
            "observed = { gulls = 5 }\nsightings = [{ date = \"1940\" }]",
            false,
        ),
    ] {
        assert_eq!(is_later(TWO_PRINTINGS, toml), expected, "{toml}");
    }
    for open in [
        "\"1927/..\"",
        "\"1927/\"",
        "{ is = \"1930\", certainty = \"possible\" }",
    ] {
        let design = TWO_PRINTINGS.replace("\"1927/1936\"", open);
        assert!(is_later(&design, "observed = { gulls = 9 }"), "{open}");
    }
    let undated = TWO_PRINTINGS.replace("date = \"1927/1936\", ", "");
    assert!(is_later(&undated, "observed = { gulls = 9 }"));
    // A paper of 1930 is not that of a printing that ended before.
    let paper = "printings = [{ key = \"own\", kind = \"artist\", date = \"1927/1929\" }, { key = \"late\", kind = \"posthumous\", date = \"1956\" }]\n";
    assert!(is_later(paper, "sheet = { paper_date = \"1930/..\" }"));
    // Where no printing is recorded, the states and the design say when it can have been printed.
    assert!(!is_later("", ""));
    assert!(!is_later("states = [{ key = \"only\" }]\n", ""));
    assert!(is_later(
        "states = [{ key = \"only\", date = \"1944/1950\" }]\n",
        ""
    ));
}

/// "May have been printed later" would say less than the record of a sheet that is probably of a late printing.
#[test]
fn a_sheet_is_probably_printed_later_where_its_record_takes_a_later_printing_to_be_probable() {
    let later = |toml: &str| {
        let record =
            format!("-- records/designs/1/impressions/1.toml\nstatus = \"untraced\"\n{toml}\n");
        let (_, studies) = studied(&[&format!("{DESIGN}{TWO_PRINTINGS}"), &record]);
        studies.diligence[&key("1.1")].later.clone()
    };
    let of = |by: ProbableDate| PrintedLater::Probably(key("1.1"), by);
    let late = || ProbableDate::Printings(vec!["late".parse().unwrap()]);
    let probable = "identified = { printing = \"late\", certainty = \"probable\" }";
    let possible = "identified = { printing = \"late\", certainty = \"possible\" }";
    let either = "identified = { printing = [\"own\", \"late\"], certainty = \"probable\" }";
    let or_own = "identified = { printing = \"late\", certainty = \"probable\", or = [{ printing = \"own\", certainty = \"possible\" }] }";
    let contradicted = format!("{probable}\nobserved = {{ gulls = 9 }}");
    let dated = "sheet = { date = { is = \"1950\", certainty = \"probable\" } }";
    let dated_early = "sheet = { date = { is = \"1930\", certainty = \"probable\" } }";
    assert_eq!(later(probable), of(late()));
    assert_eq!(later(or_own), of(late()));
    assert_eq!(later(dated), of(ProbableDate::OfSheet));
    for perhaps in [possible, either, &format!("{probable}\n{dated_early}")] {
        assert_eq!(later(perhaps), PrintedLater::Perhaps, "{perhaps}");
    }
    assert_eq!(later(&contradicted), PrintedLater::No);
}

/// The owner may be certain where only a date is open, so both are told apart.
#[test]
fn what_is_open_of_an_owner_is_the_entry_or_the_beginning_or_the_end() {
    let open = |entries: &str| {
        let toml = format!("sheet = {{ date = \"1930\" }}\nprovenance = [{entries}]");
        let years = years(&toml).unwrap();
        let owners = years.stretches.iter().flat_map(|stretch| &stretch.owners);
        let told = owners.map(|owner| {
            let is = |is_so: bool, word: &'static str| if is_so { word } else { "" };
            [
                is(!owner.is_firm, "entry "),
                is(!owner.has_begun, "beginning "),
                is(!owner.is_kept, "end "),
                is(owner.is_ever_certain, "(elsewhere certain)"),
            ]
            .concat()
        });
        told.collect::<Vec<String>>()
    };
    for (entries, expected) in [
        (
            "{ owner = \"museum\", from = \"1936\" }",
            vec!["beginning (elsewhere certain)", "(elsewhere certain)"],
        ),
        (
            "{ owner = { name = \"One\" }, from = \"1931\", to = \"1940~\" }",
            vec!["(elsewhere certain)", "end (elsewhere certain)"],
        ),
        (
            "{ owner = { name = \"One\" }, to = \"1950\" }",
            vec!["beginning "],
        ),
        (
            "{ owner = { name = \"One\" }, from = \"1931\" }",
            vec!["end "],
        ),
        (
            "{ owner = { name = \"One\" }, from = \"1931\", to = \"1950\", certainty = \"probable\" }",
            vec!["entry beginning end "],
        ),
    ] {
        assert_eq!(open(entries), expected, "{entries}");
    }
}

#[test]
fn dealings_of_these_years_are_found_by_their_date_as_written() {
    let dealings = |entries: &str| {
        let toml = format!("sheet = {{ date = \"1930\" }}\nprovenance = [{entries}]");
        years(&toml).unwrap().dealings.len()
    };
    for (date, n) in [
        ("from = \"1938\"", 1),
        ("from = \"1933\"", 1),
        ("to = \"1945~\"", 1),
        ("from = \"1946~\"", 0),
        ("from = \"1931?\"", 0),
        ("how = \"sale\"", 0),
    ] {
        let entry = format!("{{ agent = {{ name = \"A\" }}, {date} }}");
        assert_eq!(dealings(&entry), n, "{date}");
    }
    for (date, n) in [
        ("from = \"1938\"", 1),
        ("from = \"1946\"", 0),
        ("to = \"1938\"", 0),
    ] {
        let owner = format!("{{ owner = \"museum\", {date} }}");
        assert_eq!(dealings(&owner), n, "an owner, {date}");
        let keeper = format!("{{ keeper = \"museum\", {date} }}");
        assert_eq!(dealings(&keeper), 0, "a keeper, {date}");
    }
}

/// What burnt went to nobody, and its owner got it from nobody then.
#[test]
fn an_entry_may_say_how_the_sheet_was_destroyed() {
    let record = "-- records/designs/1/impressions/1.toml\nstatus = \"destroyed\"\nsheet = { date = \"1930\" }\n\
         provenance = [{ owner = \"museum\", from = \"1931\" }, { owner = \"museum\", from = \"1944-10-04\", how = \"fire\", direct = true }]\n";
    let (_, studies) = studied(&[DESIGN, MUSEUM, record]);
    let found = &studies.diligence[&key("1.1")];
    assert_eq!(lines(found).last().unwrap().get(14..24), Some("1944-10-04"));
    assert_eq!(found.change, ChangeOfHands::None);
    assert_eq!(found.coverage(), Coverage::Throughout);
}

/// A printing is the candidate of a design without states, so that its date counts for its sheets.
#[test]
fn a_dated_printing_of_a_design_without_states_dates_its_sheets() {
    let found = |identified: &str| {
        let design = format!(
            "{DESIGN}printings = [{{ key = \"own\", kind = \"artist\", date = \"1927/1935\" }}, {{ key = \"later\", kind = \"posthumous\", date = \"1956\" }}]\n"
        );
        let record = format!(
            "-- records/designs/1/impressions/1.toml\nstatus = \"untraced\"\n{identified}\n"
        );
        let (_, studies) = studied(&[&design, &record]);
        studies
            .diligence
            .get(&key("1.1"))
            .map(|y| y.later != PrintedLater::No)
    };
    assert_eq!(found("identified = { printing = \"own\" }"), Some(false));
    assert_eq!(found("identified = { printing = \"later\" }"), None);
    let both = "identified = { printing = [\"own\", \"later\"] }";
    assert_eq!(found(both), Some(true));
    let unsure = "identified = { printing = \"own\", certainty = \"probable\" }";
    assert_eq!(found(unsure), Some(true));
    assert_eq!(found(""), Some(true));
}

#[test]
fn what_passed_directly_leaves_no_time_between() {
    let two = |second: &str| {
        of_entries(&format!(
            "{{ owner = {{ name = \"One\" }}, from = \"1931\", to = \"1937\" }}, {second}"
        ))
    };
    assert_eq!(
        two("{ owner = \"museum\", from = \"1938\", direct = true }"),
        ["1933-01-30 to 1945-05-08 owner 0 1"]
    );
    assert_eq!(
        two(
            "{ agent = { name = \"A\" }, from = \"1937\", direct = true }, { owner = \"museum\", from = \"1938\", direct = true }"
        ),
        ["1933-01-30 to 1945-05-08 owner 0 2"]
    );
    // Near misses: no way of transfer recorded, a break at the agent, an agent who may have had another
    // sheet.
    let agent = |said: &str| {
        format!(
            "{{ agent = {{ name = \"A\" }}, from = \"1937\"{said} }}, {{ owner = \"museum\", from = \"1938\", direct = true }}"
        )
    };
    for open in [
        "{ owner = \"museum\", from = \"1938\" }".to_owned(),
        agent(""),
        agent(", direct = true, this_sheet = \"possible\""),
    ] {
        let found = two(&open);
        assert_eq!(found[0], "1933-01-30 to 1936-12-31 owner 0", "{open}");
        // The first had it until some day of 1937, the museum from some day of 1938: neither in the other's year.
        assert_eq!(found[1], "1937-01-01 to 1937-12-31 perhaps 0", "{open}");
        let museum = if open.contains("agent") { 2 } else { 1 };
        let second = format!("1938-01-01 to 1938-12-31 perhaps {museum}");
        assert_eq!(found[2], second, "{open}");
    }
}

#[test]
fn nothing_is_asked_of_a_sheet_after_it_was_destroyed() {
    let found = |status: &str| {
        let record = format!(
            "-- records/designs/1/impressions/1.toml\nstatus = \"{status}\"\nsheet = {{ date = \"1930\" }}\n\
             provenance = [{{ owner = {{ name = \"One\" }}, from = \"1931\", to = \"1944-10\" }}]\n"
        );
        let (_, studies) = studied(&[DESIGN, &record]);
        lines(&studies.diligence[&key("1.1")])
    };
    assert_eq!(found("destroyed"), ["1933-01-30 to 1944-10-31 owner 0"]);
    assert_eq!(
        found("stolen"),
        [
            "1933-01-30 to 1944-09-30 owner 0",
            "1944-10-01 to 1944-10-31 perhaps 0",
            "1944-11-01 to 1945-05-08 nobody",
        ]
    );
}

#[test]
fn entries_that_are_not_certain_are_never_more_than_possible() {
    for doubt in ["this_sheet = \"probable\"", "certainty = \"possible\""] {
        assert_eq!(
            of_entries(&format!(
                "{{ owner = {{ name = \"One\" }}, from = \"1931\", to = \"1950\", {doubt} }}"
            )),
            ["1933-01-30 to 1945-05-08 perhaps 0"],
            "{doubt}"
        );
    }
}

#[test]
fn an_end_that_is_not_recorded_is_bounded_by_the_neighbours() {
    assert_eq!(
        of_entries(
            "{ owner = { name = \"One\" }, from = \"1931\" }, { owner = \"museum\", from = \"1938-06-01\" }"
        ),
        [
            "1933-01-30 to 1938-05-31 perhaps 0",
            "1938-06-01 to 1945-05-08 owner 1",
        ]
    );
    assert_eq!(
        of_entries("{ owner = { name = \"One\" }, to = \"1940-01-01\" }"),
        [
            "1933-01-30 to 1940-01-01 perhaps 0",
            "1940-01-02 to 1945-05-08 nobody",
        ]
    );
}

#[test]
fn keepers_and_agents_own_nothing() {
    assert_eq!(
        of_entries("{ keeper = \"museum\", from = \"1931\" }"),
        ["1933-01-30 to 1945-05-08 nobody"]
    );
    assert_eq!(
        of_entries("{ agent = { name = \"A\" }, from = \"1931\", to = \"1950\" }"),
        ["1933-01-30 to 1945-05-08 nobody"]
    );
    // A loan to the holder does not make the holder the owner; the lender remains the owner.
    let found = years(
        "owner = { name = \"One\" }\nsheet = { date = \"1930\" }\n\
         provenance = [{ owner = { name = \"One\" }, from = \"1931\" }, { keeper = \"museum\", from = \"1966\" }]",
    );
    assert_eq!(lines(&found.unwrap()), ["1933-01-30 to 1945-05-08 owner 0"]);
}

#[test]
fn silence_is_its_own_answer() {
    let found = years("sheet = { date = \"1930\" }").unwrap();
    assert_eq!(found.coverage(), Coverage::Silent);
    assert_eq!(found.gaps().count(), 1);
    let later = years(
        "sheet = { date = \"1930\" }\nprovenance = [{ owner = \"museum\", from = \"1978\" }]",
    );
    assert_eq!(later.unwrap().coverage(), Coverage::Silent);
}

#[test]
fn a_sheet_printed_later_is_not_concerned() {
    for (date, is_concerned) in [
        ("1946", false),
        ("1945-05-09", false),
        ("1952", false),
        ("1950~", true),
        ("1951~", false),
        ("1945", true),
        ("1945-05-08", true),
    ] {
        let found = years(&format!("sheet = {{ date = \"{date}\" }}"));
        assert_eq!(found.is_some(), is_concerned, "{date}");
    }
    let is_later = |toml: &str| years(toml).unwrap().later != PrintedLater::No;
    assert!(!is_later("sheet = { date = \"1930\" }"));
    assert!(is_later("sheet = { date = \"1945\" }"));
    assert!(
        !is_later(""),
        "no printing is recorded, and the design is of 1927"
    );
}

#[test]
fn the_printing_tells_when_a_sheet_was_printed_where_the_identification_is_certain() {
    let printing = "states = [{ key = \"only\" }]\nprintings = [{ key = \"late\", kind = \"posthumous\", date = \"1956\", states = \"all\" }]\n";
    let found = |identified: &str| {
        let record = format!(
            "-- records/designs/1/impressions/1.toml\nstatus = \"located\"\nidentified = {{ printing = \"late\"{identified} }}\n"
        );
        let design = format!("{DESIGN}{printing}");
        let (_, studies) = studied(&[&design, &record]);
        studies.diligence.contains_key(&key("1.1"))
    };
    assert!(!found(""));
    assert!(found(", certainty = \"probable\""));
}

#[test]
fn nothing_is_asked_of_days_before_a_sheet_was_printed() {
    let found = |printed: &str, from: &str| {
        lines(&years(&format!(
            "sheet = {{ date = \"{printed}\" }}\nprovenance = [{{ owner = \"museum\", from = \"{from}\" }}]"
        )).unwrap())
    };
    assert_eq!(found("1938", "1938"), ["1938-01-01 to 1945-05-08 owner 0"]);
    assert_eq!(
        found("1938", "1940"),
        [
            "1938-01-01 to 1939-12-31 nobody",
            "1940-01-01 to 1940-12-31 perhaps 0",
            "1941-01-01 to 1945-05-08 owner 0",
        ]
    );
    // A run of several years does not date a single sheet.
    assert_eq!(
        found("1934/1951", "1938"),
        [
            "1934-01-01 to 1937-12-31 nobody",
            "1938-01-01 to 1938-12-31 perhaps 0",
            "1939-01-01 to 1945-05-08 owner 0",
        ]
    );
}

#[test]
fn records_of_one_sheet_are_read_together() {
    let record = |n: u32, toml: &str| {
        format!("-- records/designs/1/impressions/{n}.toml\nstatus = \"untraced\"\n{toml}\n")
    };
    let early = record(
        1,
        "sheet = { date = \"1930\" }\nprovenance = [{ owner = { name = \"One\" }, from = \"1931\", to = \"1940-01-01\" }]",
    );
    let late = |same: &str| {
        record(
            2,
            &format!(
                "{same}\nprovenance = [{{ owner = {{ name = \"Two\" }}, from = \"1940-01-02\", to = \"1950\" }}]"
            ),
        )
    };
    let status = |same: &str, of: &str| {
        let (_, studies) = studied(&[DESIGN, &early, &late(same)]);
        studies.diligence[&key(of)].coverage()
    };
    let same = "same_as = [{ impression = \"1.1\" }]";
    assert_eq!(status(same, "1.1"), Coverage::Throughout);
    assert_eq!(status(same, "1.2"), Coverage::Throughout);
    assert_eq!(status("", "1.1"), Coverage::Partly);
}

#[test]
fn a_change_of_hands_is_recorded_where_its_date_is_certain_and_else_possible() {
    let change = |entries: &str| {
        let toml = format!("sheet = {{ date = \"1930\" }}\nprovenance = [{entries}]");
        years(&toml).unwrap().change
    };
    for (entries, expected) in [
        (
            "{ owner = \"museum\", from = \"1938\" }",
            ChangeOfHands::Recorded,
        ),
        (
            "{ owner = { name = \"One\" }, to = \"1942\" }",
            ChangeOfHands::Recorded,
        ),
        (
            "{ agent = { name = \"A\" }, from = \"1938\", sold = true }",
            ChangeOfHands::Recorded,
        ),
        // Some of the year, or of what a loose date allows, lies outside.
        (
            "{ owner = \"museum\", from = \"1933\" }",
            ChangeOfHands::Possible,
        ),
        (
            "{ owner = \"museum\", from = \"1945\" }",
            ChangeOfHands::Possible,
        ),
        (
            "{ owner = \"museum\", from = \"1942~\" }",
            ChangeOfHands::Possible,
        ),
        (
            "{ owner = \"museum\", from = \"1938\", this_sheet = \"probable\" }",
            ChangeOfHands::Possible,
        ),
        // Who offered it may not have sold it.
        (
            "{ agent = { name = \"A\" }, from = \"1938\" }",
            ChangeOfHands::Possible,
        ),
        (
            "{ agent = { name = \"A\" }, from = \"1938\", sold = false }",
            ChangeOfHands::None,
        ),
        (
            "{ owner = \"museum\", from = \"1932\" }",
            ChangeOfHands::None,
        ),
        (
            "{ owner = \"museum\", from = \"1946\" }",
            ChangeOfHands::None,
        ),
        (
            "{ keeper = \"museum\", from = \"1938\" }",
            ChangeOfHands::None,
        ),
        // The artist had the sheet first, from no earlier owner.
        (
            "{ owner = \"artist\", from = \"1938\" }",
            ChangeOfHands::None,
        ),
    ] {
        assert_eq!(change(entries), expected, "{entries}");
    }
}

#[test]
fn a_destruction_is_no_change_of_hands() {
    let change = |status: &str| {
        let record = format!(
            "-- records/designs/1/impressions/1.toml\nstatus = \"{status}\"\n\
             provenance = [{{ owner = {{ name = \"One\" }}, from = \"1931\", to = \"1944-10\" }}]\n"
        );
        let (_, studies) = studied(&[DESIGN, &record]);
        studies.diligence[&key("1.1")].change
    };
    assert_eq!(change("destroyed"), ChangeOfHands::None);
    assert_eq!(change("untraced"), ChangeOfHands::Recorded);
}

#[test]
fn what_was_had_seen_or_shown_in_time_was_not_printed_later() {
    let show = "-- records/exhibitions.toml\n[show]\ntitle = \"A Show\"\ndate = \"1931\"\n";
    let is_later = |toml: &str| {
        let record =
            format!("-- records/designs/1/impressions/1.toml\nstatus = \"untraced\"\n{toml}\n");
        let design = format!("{DESIGN}{TWO_PRINTINGS}");
        let (_, studies) = studied(&[&design, MUSEUM, show, &record]);
        studies.diligence[&key("1.1")].later != PrintedLater::No
    };
    for earlier in [
        "provenance = [{ owner = \"museum\", from = \"1929\" }]",
        "provenance = [{ keeper = \"museum\", to = \"1945-05-08\" }]",
        "provenance = [{ agent = { name = \"A\" }, from = \"1938-05\", sold = false }]",
        "sightings = [{ date = \"1940\" }]",
        "exhibited = [{ exhibition = \"show\" }]",
    ] {
        assert!(!is_later(earlier), "{earlier}");
    }
    for nothing in [
        "",
        "provenance = [{ owner = \"museum\", from = \"1945\" }]",
        "provenance = [{ owner = \"museum\", from = \"1929\", this_sheet = \"possible\" }]",
        "sightings = [{ date = \"1941~\" }]",
    ] {
        assert!(is_later(nothing), "{nothing}");
    }
    // A date that the provenance contradicts does not count: the sheet is listed.
    assert!(!is_later(
        "sheet = { date = \"1952\" }\nsightings = [{ date = \"1940\" }]"
    ));
}

#[test]
fn a_contradicted_identification_tells_nothing_of_the_printing() {
    let design = format!(
        "{DESIGN}points = [{{ key = \"gulls\", ask = \"How many gulls?\", kind = \"count\", rests_on = \"matrix\" }}]\n\
         states = [{{ key = \"only\", shows = {{ gulls = 9 }} }}]\n\
         printings = [{{ key = \"late\", kind = \"posthumous\", date = \"1938\", states = \"all\" }}]\n"
    );
    let first = |gulls: u8| {
        let record = format!(
            "-- records/designs/1/impressions/1.toml\nstatus = \"located\"\n\
             identified = {{ printing = \"late\" }}\nobserved = {{ gulls = {gulls} }}\n"
        );
        let (_, studies) = studied(&[&design, &record]);
        let years = &studies.diligence[&key("1.1")];
        (
            years.stretches[0].first.to_string(),
            years.later != PrintedLater::No,
        )
    };
    assert_eq!(first(9), ("1938-01-01".to_owned(), false));
    // That printing is the only one recorded, so that none of later years is.
    assert_eq!(first(5), ("1933-01-30".to_owned(), false));
}

#[test]
fn what_a_record_keeps_private_is_not_counted() {
    let found = |private: &str| {
        years(&format!(
            "sheet = {{ date = \"1930\" }}\nprovenance = [{{ owner = {{ name = \"One\" }}, from = \"1931\", to = \"1950\", private = [{private}] }}]"
        ))
        .unwrap()
        .coverage()
    };
    // Readers may learn that there was an owner, but neither the name nor the date.
    assert_eq!(found("\"owner\""), Coverage::Throughout);
    assert_eq!(found("\"from\", \"to\""), Coverage::Uncertain);
    assert!(years("publish = false\nsheet = { date = \"1930\" }").is_none());
}
