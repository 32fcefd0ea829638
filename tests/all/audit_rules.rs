//! The rules of the audit, each on the smallest catalogue that breaks it and on one that does not.

use keyblock::audit::audit;
use keyblock::model::codes::Code;
use keyblock::model::finding::Severity;
use keyblock::read::read;
use keyblock::study::Studies;

use crate::small::{audit_lines, audited, codes, lay_down};

/// A design with two states that differ in a moon, points of inking, mark and measure, and two printings.
const FERRY: &str = r#"
-- records/designs/14/design.toml
titles = [{ text = "The Last Ferry" }]
date = "1927"
size = { image = [212, 301] }
[[matrices]]
key = "line"
kind = "block"
[[matrices]]
key = "dusk"
kind = "block"
[[points]]
key = "moon"
ask = "Is there a moon?"
kind = "presence"
rests_on = "matrix"
matrix = "dusk"
[[points]]
key = "lamps"
ask = "How many lamps?"
kind = "count"
rests_on = "matrix"
matrix = "line"
[[points]]
key = "image-height"
ask = "How tall is the image?"
kind = "measure"
unit = "mm"
tolerance = 2.0
rests_on = "matrix"
[[points]]
key = "sky"
ask = "How is the sky printed?"
kind = "choice"
rests_on = "inking"
values = { even = "one tone", graded = "darker above" }
[[points]]
key = "stamp"
ask = "Is there a studio stamp?"
kind = "presence"
rests_on = "mark"
[[states]]
key = "before-moon"
date = "1927"
shows = { moon = "absent", lamps = 3, image-height = 212 }
[[states]]
key = "with-moon"
date = "1929"
shows = { moon = "present", lamps = 3, image-height = 204 }
[[printings]]
key = "own"
kind = "artist"
date = "1927/1935"
states = "all"
shows = { sky = ["even", "graded"], stamp = ["present", "absent"], paper = "laid" }
[[printings]]
key = "memorial"
kind = "posthumous"
date = "1962"
edition = [{ is = 40 }, { is = 50, basis = "report" }]
numbered = true
states = ["with-moon"]
shows = { sky = "even", stamp = "present", paper = "wove" }
[[points]]
key = "paper"
ask = "What paper is it on?"
kind = "choice"
rests_on = "paper"
values = { laid = "laid", wove = "wove" }
"#;

fn sheet(toml: &str) -> String {
    format!("-- records/designs/14/impressions/1.toml\nstatus = \"untraced\"\n{toml}\n")
}

fn two_sheets(first: &str, second: &str) -> String {
    let second =
        format!("-- records/designs/14/impressions/2.toml\nstatus = \"untraced\"\n{second}\n");
    sheet(first) + &second
}

fn codes_of(sheets: &str) -> Vec<Code> {
    codes(&[FERRY, sheets])
}

fn lines_of(sheets: &str) -> Vec<String> {
    audit_lines(&[FERRY, sheets])
}

#[test]
fn a_sound_catalogue_raises_nothing() {
    let observed = "identified = { state = \"with-moon\", printing = \"own\" }\n\
                    observed = { moon = \"present\", lamps = 3, image-height = 205 }\n\
                    sheet = { date = \"1930\", image = [204, 301], size = [250, 340] }\n";
    assert_eq!(lines_of(&sheet(observed)), Vec::<String>::new());
}

// States.

fn design(toml: &str) -> String {
    format!("-- records/designs/1/design.toml\ntitles = [{{ text = \"A Quay\" }}]\n{toml}\n")
}

#[test]
fn a_state_that_shows_an_inking_is_an_error() {
    let record = design(
        "points = [{ key = \"sky\", ask = \"How?\", kind = \"presence\", rests_on = \"inking\" }]\n\
         states = [{ key = \"a\", shows = { sky = \"present\" } }]",
    );
    assert_eq!(
        audit_lines(&[&record]),
        [
            "records/designs/1/design.toml:3:34 state-shows-other: the only state of design 1 shows `sky`, which rests on inking, not on the matrix"
        ]
    );
}

const MOON: &str = "points = [{ key = \"moon\", ask = \"A moon?\", kind = \"presence\", rests_on = \"matrix\" }]\n";

#[test]
fn a_state_and_its_printing_that_share_no_value_are_an_error() {
    let record = design(&format!(
        "{MOON}states = [{{ key = \"a\", shows = {{ moon = \"absent\" }} }}]\n\
         printings = [{{ key = \"own\", kind = \"artist\", states = \"all\", shows = {{ moon = \"present\" }} }}]"
    ));
    assert_eq!(codes(&[&record]), [Code::ShowsConflict]);
}

#[test]
fn a_state_without_a_matrix_difference_from_the_one_before_is_doubted() {
    let states = |second: &str| {
        design(&format!(
            "{MOON}states = [{{ key = \"a\", shows = {{ moon = \"absent\" }} }}, {second}]"
        ))
    };
    let same = "{ key = \"b\", shows = { moon = \"absent\" } }";
    assert_eq!(codes(&[&states(same)]), [Code::StateNoDifference]);
    let other = "{ key = \"b\", shows = { moon = \"present\" } }";
    assert_eq!(codes(&[&states(other)]), []);
    let silent = "{ key = \"b\", summary = \"The moon added.\" }";
    assert_eq!(
        audit_lines(&[&states(silent)]),
        [
            "records/designs/1/design.toml:3:63 state-no-difference: state ii of design 1 says at no point what it shows, so nothing tells it from state i"
        ]
    );
}

#[test]
fn a_first_state_needs_no_difference_and_branches_are_compared_with_what_they_follow() {
    let record = design(&format!(
        "{MOON}states = [{{ key = \"a\", shows = {{ moon = \"absent\" }} }},\n\
         {{ key = \"b\", shows = {{ moon = \"present\" }} }},\n\
         {{ key = \"c\", follows = [\"a\"], shows = {{ moon = \"present\" }} }}]"
    ));
    // Each differs from a, which it follows; that b and c do not differ is another finding.
    assert_eq!(codes(&[&record]), [Code::StatesInseparable]);
}

#[test]
fn a_statement_new_with_a_state_is_asked_of_the_state_before() {
    let record = design(&format!(
        "{MOON}states = [{{ key = \"a\" }}, {{ key = \"b\", shows = {{ moon = \"present\" }} }}]"
    ));
    let (_, findings) = audited(&[&record]);
    assert_eq!(findings.len(), 1);
    assert_eq!(
        findings[0].help.as_deref(),
        Some("say what state i shows at `moon`")
    );
}

// Identification.

#[test]
fn observations_that_contradict_every_candidate_are_told_with_both_statements() {
    let record = sheet(
        "observed = { moon = { is = \"absent\", basis = \"first-hand\", date = \"2025-04\" } }\n\
         [identified]\nstate = \"with-moon\"\nbasis = \"photograph\"\ndate = \"2019\"",
    );
    let (catalogue, findings) = audited(&[FERRY, &record]);
    assert_eq!(findings.len(), 1);
    let finding = &findings[0];
    assert_eq!(finding.code, Code::IdentificationContradicted);
    assert_eq!(
        finding.message,
        "14.1 is identified as state ii, but at `moon`, where state ii shows `present`, `absent` was seen"
    );
    assert_eq!(finding.at.text, "identified (from a photograph, 2019)");
    assert_eq!(finding.also[0].text, "seen (first-hand, 2025-04)");
    let at = catalogue.sources.position(finding.at.place);
    assert_eq!((at.line, at.column), (4, 9));
}

#[test]
fn one_candidate_that_agrees_is_enough() {
    let either = "identified = { state = [\"before-moon\", \"with-moon\"] }\nobserved = { moon = \"absent\" }";
    assert_eq!(codes_of(&sheet(either)), [Code::CouldBeSettled]);
    let or = "identified = { state = \"with-moon\", or = [{ state = \"before-moon\" }] }\nobserved = { moon = \"absent\" }";
    assert_eq!(codes_of(&sheet(or)), [Code::CouldBeSettled]);
}

#[test]
fn a_possible_observation_contradicts_nobody_and_a_probable_one_does() {
    let seen = |certainty: &str| {
        sheet(&format!(
            "identified = {{ state = \"with-moon\" }}\n\
             observed = {{ moon = {{ is = \"absent\", certainty = \"{certainty}\" }} }}"
        ))
    };
    assert_eq!(codes_of(&seen("possible")), []);
    assert_eq!(
        codes_of(&seen("probable")),
        [Code::IdentificationContradicted]
    );
}

/// Common practice, no source: what was trimmed off or is covered by a frame counts as not visible, not as
/// absent.
#[test]
fn a_trimmed_or_framed_place_is_never_read_as_absent() {
    for told in ["not-visible", "not-applicable"] {
        let record =
            format!("identified = {{ state = \"with-moon\" }}\nobserved = {{ moon = \"{told}\" }}");
        assert_eq!(codes_of(&sheet(&record)), [], "{told}");
    }
}

#[test]
fn a_block_that_was_not_printed_tells_nothing_of_its_points() {
    let record = "identified = { state = \"with-moon\" }\nobserved = { moon = \"absent\" }\nblocks = { dusk = \"not-printed\" }";
    assert_eq!(codes_of(&sheet(record)), []);
}

#[test]
fn a_measure_contradicts_beyond_two_tolerances() {
    let measured = |mm: &str| {
        sheet(&format!(
            "identified = {{ state = \"before-moon\" }}\nobserved = {{ image-height = {mm} }}"
        ))
    };
    assert_eq!(codes_of(&measured("208.0")), []);
    assert_eq!(
        codes_of(&measured("207.5")),
        [Code::IdentificationContradicted]
    );
}

#[test]
fn what_was_not_seen_contradicts_a_state_that_shows_nothing_else() {
    let seen = |not: &str| {
        sheet(&format!(
            "identified = {{ state = \"with-moon\" }}\nobserved = {{ moon = {{ not = \"{not}\" }} }}"
        ))
    };
    assert_eq!(codes_of(&seen("absent")), []);
    assert_eq!(
        codes_of(&seen("present")),
        [Code::IdentificationContradicted]
    );
}

#[test]
fn blocks_in_different_conditions_are_judged_each_by_its_own_state() {
    let record = |dusk: &str, moon: &str| {
        sheet(&format!(
            "identified = {{ state = {{ line = \"before-moon\", dusk = \"{dusk}\" }} }}\n\
             observed = {{ moon = \"{moon}\", lamps = 3 }}"
        ))
    };
    assert_eq!(codes_of(&record("with-moon", "present")), []);
    assert_eq!(
        codes_of(&record("with-moon", "absent")),
        [Code::IdentificationContradicted]
    );
}

/// Common practice, no source: stamps survive the artist and are put on later printings too.
#[test]
fn a_stamp_alone_never_proves_the_artists_own_printing() {
    let record = "identified = { state = \"with-moon\", printing = \"memorial\" }\nobserved = { stamp = \"present\" }";
    assert_eq!(codes_of(&sheet(record)), []);
}

/// Common practice, no source: ink is chosen for each sheet, so it can separate printings but never two
/// states; and a sheet inked otherwise than the others of its printing contradicts nothing.
#[test]
fn inking_never_separates_states() {
    for state in ["before-moon", "with-moon"] {
        for sky in ["even", "graded"] {
            let record = format!(
                "identified = {{ state = \"{state}\", printing = \"own\" }}\nobserved = {{ sky = \"{sky}\" }}"
            );
            assert_eq!(codes_of(&sheet(&record)), [], "{state} {sky}");
        }
    }
    let departing = "identified = { state = \"with-moon\", printing = \"memorial\" }\nobserved = { sky = \"graded\" }";
    assert_eq!(codes_of(&sheet(departing)), []);
}

#[test]
fn a_state_that_its_printing_does_not_contain_is_doubted() {
    let record = "identified = { state = \"before-moon\", printing = \"memorial\" }";
    assert_eq!(
        lines_of(&sheet(record)),
        [
            "records/designs/14/impressions/1.toml:2:24 state-not-in-printing: 14.1 is identified as state i in printing `memorial`, which does not contain that state"
        ]
    );
}

#[test]
fn a_sheet_identified_with_a_withdrawn_state_is_doubted() {
    let record = design("states = [{ key = \"a\", standing = \"withdrawn\" }, { key = \"b\" }]")
        + "-- records/designs/1/impressions/1.toml\nstatus = \"untraced\"\nidentified = { state = \"a\" }\n";
    assert_eq!(codes(&[&record]), [Code::IdentifiedWithdrawn]);
}

#[test]
fn a_sheet_identified_before_a_neighbour_was_described_is_to_be_looked_at_again() {
    let record = |date: &str| {
        design(&format!(
            "{MOON}states = [{{ key = \"a\", shows = {{ moon = \"absent\" }} }},\n\
             {{ key = \"b\", described = \"2019\", shows = {{ moon = \"present\" }} }}]"
        )) + &format!(
            "-- records/designs/1/impressions/1.toml\nstatus = \"untraced\"\nidentified = {{ state = \"a\", date = \"{date}\" }}\n"
        )
    };
    assert_eq!(codes(&[&record("2012")]), [Code::LookAgain]);
    assert_eq!(codes(&[&record("2019-05")]), []);
    assert_eq!(codes(&[&record("2021")]), []);
}

// Dates.

#[test]
fn a_sheet_pulled_before_its_state_was_made_is_doubted() {
    let record = |date: &str| {
        sheet(&format!(
            "identified = {{ state = \"with-moon\" }}\nsheet = {{ date = \"{date}\" }}"
        ))
    };
    assert_eq!(
        lines_of(&record("1927")),
        [
            "records/designs/14/impressions/1.toml:3:18 dated-before-state: 14.1 is dated 1927, but state ii was made in 1929"
        ]
    );
    for loose_or_later in ["1927~", "1927?", "1927/1930", "1929", "192X", "1927-21"] {
        assert_eq!(codes_of(&record(loose_or_later)), [], "{loose_or_later}");
    }
}

#[test]
fn a_state_without_a_date_comes_after_the_state_it_follows() {
    let record = design(&format!(
        "{MOON}states = [{{ key = \"a\", date = \"1930\", shows = {{ moon = \"absent\" }} }},\n\
         {{ key = \"b\", shows = {{ moon = \"present\" }} }}]"
    )) + "-- records/designs/1/impressions/1.toml\nstatus = \"untraced\"\nidentified = { state = \"b\" }\nsheet = { date = \"1928\" }\n";
    assert_eq!(codes(&[&record]), [Code::DatedBeforeState]);
}

#[test]
fn a_sheet_dated_outside_its_printing_is_doubted() {
    let record = |date: &str| {
        sheet(&format!(
            "identified = {{ state = \"with-moon\", printing = \"memorial\" }}\nsheet = {{ date = \"{date}\" }}"
        ))
    };
    assert_eq!(codes_of(&record("1970")), [Code::DatedBeforePrinting]);
    assert_eq!(codes_of(&record("1948")), [Code::DatedBeforePrinting]);
    assert_eq!(codes_of(&record("1962-03")), []);
    assert_eq!(codes_of(&record("1970~")), []);
}

#[test]
fn a_sheet_with_no_printing_named_may_be_of_any() {
    let record = "identified = { state = \"with-moon\" }\nsheet = { date = \"1962\" }";
    assert_eq!(codes_of(&sheet(record)), []);
}

#[test]
fn paper_younger_than_the_printing_is_doubted_and_older_paper_proves_nothing() {
    let record = |paper: &str| {
        sheet(&format!(
            "identified = {{ state = \"with-moon\", printing = \"own\" }}\nsheet = {{ paper_date = \"{paper}\" }}"
        ))
    };
    assert_eq!(codes_of(&record("1950/..")), [Code::PaperTooLate]);
    assert_eq!(codes_of(&record("1880/..")), []);
    assert_eq!(codes_of(&record("1950~/..")), []);
}

#[test]
fn nothing_is_printed_from_a_block_that_was_destroyed() {
    let record = |kind: &str, fate: &str, blocks: &str| {
        design(&format!(
            "matrices = [{{ key = \"line\", kind = \"block\", now = {{ state = \"{fate}\", date = \"1940\" }} }}]\n\
             states = [{{ key = \"a\" }}]"
        )) + &format!(
            "-- records/designs/1/impressions/1.toml\nstatus = \"untraced\"\nkind = \"{kind}\"\n{blocks}\nsheet = {{ date = \"1948\" }}\nidentified = {{ state = \"a\" }}\n"
        )
    };
    assert_eq!(
        codes(&[&record("proof", "destroyed", "")]),
        [Code::DatedAfterDestruction]
    );
    assert_eq!(
        codes(&[&record(
            "proof",
            "destroyed",
            "blocks = { line = \"not-printed\" }"
        )]),
        []
    );
    assert_eq!(
        codes(&[&record("proof", "cancelled", "")]),
        [Code::DatedAfterDestruction]
    );
    // Impressions of a cancelled matrix exist and are listed apart (docs/trade.md,
    // "Cancelled and destroyed matrices").
    assert_eq!(codes(&[&record("cancelled", "cancelled", "")]), []);
    assert_eq!(
        codes(&[&record("cancelled", "destroyed", "")]),
        [Code::DatedAfterDestruction]
    );
}

#[test]
fn a_printing_after_its_plate_was_cancelled_is_doubted() {
    let record = design(
        "matrices = [{ key = \"copper\", kind = \"plate\", now = { state = \"cancelled\", date = \"1940\" } }]\n\
         states = [{ key = \"a\" }]\n\
         printings = [{ key = \"late\", kind = \"restrike\", date = \"1955\", states = \"all\" }]",
    );
    assert_eq!(
        audit_lines(&[&record]),
        [
            "records/designs/1/design.toml:4:56 dated-after-destruction: printing `late` of design 1 is dated 1955, but the plate `copper` was cancelled in 1940"
        ]
    );
}

#[test]
fn what_ends_before_it_begins_is_doubted() {
    let record = "provenance = [{ owner = \"artist\", from = \"1930\", to = \"1928\" }]";
    assert_eq!(codes_of(&sheet(record)), [Code::DatesBackwards]);
    let states = design(&format!(
        "{MOON}states = [{{ key = \"a\", date = \"1930\", shows = {{ moon = \"absent\" }} }},\n\
         {{ key = \"b\", date = \"1928\", shows = {{ moon = \"present\" }} }}]"
    ));
    assert_eq!(codes(&[&states]), [Code::DatesBackwards]);
}

#[test]
fn nobody_prints_after_death() {
    let record = |kind: &str, date: &str| {
        design(&format!(
            "printings = [{{ key = \"p\", kind = \"{kind}\", date = \"{date}\", states = \"all\" }}]"
        ))
    };
    assert_eq!(codes(&[&record("artist", "1955")]), [Code::LifeDates]);
    assert_eq!(codes(&[&record("lifetime", "1955")]), [Code::LifeDates]);
    assert_eq!(codes(&[&record("posthumous", "1945")]), [Code::LifeDates]);
    for sound in [
        "artist/1950",
        "artist/1955~",
        "posthumous/1950",
        "restrike/1980",
    ] {
        let (kind, date) = sound.split_once('/').unwrap();
        assert_eq!(codes(&[&record(kind, date)]), [], "{sound}");
    }
}

#[test]
fn a_design_dated_after_its_makers_death_is_doubted() {
    let record = design("date = \"1951\"\nmakers = [{ person = \"artist\", role = \"designer\" }]");
    assert_eq!(codes(&[&record]), [Code::LifeDates]);
}

// Editions.

fn numbered(printing: &str, numbering: &str) -> String {
    format!(
        "numbering = \"{numbering}\"\nidentified = {{ state = \"with-moon\", printing = \"{printing}\" }}"
    )
}

#[test]
fn a_number_above_the_largest_declared_edition_is_doubted() {
    // The artist's list says 40, a report 50: both must be passed.
    assert_eq!(codes_of(&sheet(&numbered("memorial", "45/50"))), []);
    assert_eq!(
        lines_of(&sheet(&numbered("memorial", "51/50"))),
        [
            "records/designs/14/impressions/1.toml:2:13 number-above-edition: 14.1 is numbered 51, but printing `memorial` is declared to be of 50"
        ]
    );
}

#[test]
fn a_proof_number_is_not_of_the_edition() {
    assert_eq!(codes_of(&sheet(&numbered("memorial", "AP 60/60"))), []);
}

#[test]
fn a_number_of_an_edition_that_nobody_declares_is_doubted() {
    assert_eq!(
        codes_of(&sheet(&numbered("memorial", "12/60"))),
        [Code::NumberOfOtherEdition]
    );
}

#[test]
fn a_numbering_that_cannot_be_counted_is_a_hint() {
    assert_eq!(
        codes_of(&sheet(&numbered("memorial", "the twelfth"))),
        [Code::NumberingForm]
    );
}

#[test]
fn a_number_where_none_is_expected_is_doubted() {
    let record = design(
        "states = [{ key = \"a\" }]\nprintings = [{ key = \"own\", kind = \"artist\", states = \"all\", numbered = false }]",
    ) + "-- records/designs/1/impressions/1.toml\nstatus = \"untraced\"\nnumbering = \"3/10\"\nidentified = { printing = \"own\" }\n";
    assert_eq!(codes(&[&record]), [Code::NumberUnexpected]);
}

#[test]
fn one_number_on_two_sheets_is_doubted_and_on_two_records_of_one_sheet_is_not() {
    let twelve = numbered("memorial", "12/50");
    assert_eq!(
        lines_of(&two_sheets(&twelve, &twelve)),
        [
            "records/designs/14/impressions/2.toml:2:13 number-twice: 14.2 has the same number of printing `memorial` as 14.1"
        ]
    );
    let same = format!("same_as = [{{ impression = \"14.1\" }}]\n{twelve}");
    assert_eq!(codes_of(&two_sheets(&twelve, &same)), []);
    let roman = numbered("memorial", "XII/L");
    assert_eq!(codes_of(&two_sheets(&twelve, &roman)), []);
}

// The census.

#[test]
fn two_records_said_to_be_one_sheet_and_two_are_doubted() {
    let record = two_sheets(
        "same_as = [{ impression = \"14.2\" }]",
        "not_same_as = [{ impression = \"14.1\" }]",
    );
    assert_eq!(codes_of(&record), [Code::SameAndNot]);
}

// Sizes.

#[test]
fn an_image_of_another_size_than_the_design_is_doubted_unless_the_block_was_cut() {
    let measured = |state: &str, image: &str| {
        sheet(&format!(
            "identified = {{ state = \"{state}\" }}\nsheet = {{ image = {image} }}"
        ))
    };
    assert_eq!(codes_of(&measured("before-moon", "[211, 300]")), []);
    assert_eq!(
        codes_of(&measured("before-moon", "[208, 301]")),
        [Code::SizesNear]
    );
    assert_eq!(
        codes_of(&measured("before-moon", "[190, 301]")),
        [Code::SizesDisagree]
    );
    // The later state is shown to be 204 mm tall.
    assert_eq!(codes_of(&measured("with-moon", "[204, 301]")), []);
}

#[test]
fn an_image_larger_than_its_sheet_is_doubted() {
    let record = "sheet = { size = [200, 340], image = [212, 301] }";
    assert_eq!(codes_of(&sheet(record)), [Code::ImageLargerThanSheet]);
}

#[test]
fn a_sheet_trimmed_within_the_image_is_no_other_size() {
    let record = "sheet = { size = [190, 280], image = [190, 280] }";
    assert_eq!(codes_of(&sheet(record)), []);
}

// Provenance.

#[test]
fn two_owners_at_one_time_are_doubted() {
    let record = |entries: &str| sheet(&format!("provenance = [{entries}]"));
    let first = "{ owner = { name = \"One\" }, from = \"1950\", to = \"1960\" }";
    let overlapping = format!("{first}, {{ owner = {{ name = \"Two\" }}, from = \"1955\" }}");
    assert_eq!(codes_of(&record(&overlapping)), [Code::ProvenanceOverlap]);
    for sound in [
        "{ owner = { name = \"Two\" }, from = \"1960\" }",
        "{ owner = { name = \"Two\" }, from = \"1955~\" }",
        "{ agent = { name = \"Two\" }, from = \"1955\" }",
        "{ keeper = { name = \"Two\" }, from = \"1955\" }",
        "{ owner = { name = \"Two\" }, from = \"1955\", this_sheet = \"possible\" }",
        "{ owner = { name = \"One\" }, from = \"1955\" }",
    ] {
        assert_eq!(
            codes_of(&record(&format!("{first}, {sound}"))),
            [],
            "{sound}"
        );
    }
}

/// The town museum was taken over by the county museum, and that by the state museum. Both records are of one
/// sheet.
#[test]
fn a_museum_that_took_another_over_is_no_second_owner_on_any_record_of_a_sheet() {
    let records = |second_owner: &str| {
        format!(
            r#"
-- records/holders/town.toml
name = "Town Museum"
kind = "museum"
successor = {{ holder = "county", date = "1955" }}
-- records/holders/county.toml
name = "County Museum"
kind = "museum"
successor = {{ holder = "land", date = "1980" }}
-- records/holders/land.toml
name = "Museum of the Land"
kind = "museum"
-- records/holders/elsewhere.toml
name = "Museum Elsewhere"
kind = "museum"
-- records/designs/14/impressions/1.toml
status = "untraced"
provenance = [{{ owner = "town", from = "1930", to = "1970" }}]
-- records/designs/14/impressions/2.toml
status = "untraced"
same_as = [{{ impression = "14.1" }}]
provenance = [{{ owner = "{second_owner}", from = "1950", to = "1960" }}]
"#
        )
    };
    assert_eq!(codes_of(&records("land")), []);
    // Told of the sheet's history, and of the link that joins its records.
    let mut found = codes_of(&records("elsewhere"));
    found.sort_unstable();
    assert_eq!(
        found,
        [Code::SameSheetContradicted, Code::ProvenanceOverlap]
    );
}

/// A text written by hand may not say of 1933 to 1945, or of whom, what no entry says: pages compute from entries.
#[test]
fn a_hand_written_provenance_that_goes_beyond_the_entries_is_a_doubt() {
    let people = "-- records/people/mole.toml\nname = \"Pier Mole\"\n-- records/people/quire.toml\nname = \"Ada Quire\"\n";
    let found = |text: &str, entries: &str| {
        let record = format!(
            "-- records/designs/14/impressions/9.toml\nstatus = \"untraced\"\nprovenance_line = \"{text}\"\nprovenance = [{entries}]\n"
        );
        let found = codes(&[FERRY, people, &record]);
        found.contains(&Code::ProvenanceTextApart)
    };
    let quire = "{ owner = \"quire\", from = \"1931\", to = \"1940~\" }";
    for (text, is_beyond) in [
        ("Ada Quire, 1936.", false),
        ("Ada Quire, 1936; sold 1940.", false),
        ("Ada Quire, 1931; sold 1941.", true),
        ("Ada Quire, 1931; sold by Pier Mole.", true),
        ("Ada Quire, 1931; sold by Pier Molen, 1950.", false),
    ] {
        assert_eq!(found(text, quire), is_beyond, "{text}");
    }
    assert!(found("Sold 1938.", ""), "no entry at all");
    assert!(!found("Sold 1949.", ""));
}

/// A note and the status of a sheet in these years would say two things.
#[test]
fn a_note_that_names_a_year_of_1933_to_1945_beyond_the_entries_is_a_doubt() {
    let found = |note: &str, record: &str| {
        let record = format!(
            "-- records/designs/14/impressions/9.toml\nstatus = \"untraced\"\n{record}\n-- records/designs/14/impressions/9.md\n{note}\n"
        );
        let work = "-- records/literature.bib\n@book{list-1938, title = {List}, year = {1938}}\n";
        let found = codes(&[FERRY, work, &record]);
        found.contains(&Code::ProvenanceTextApart)
    };
    let entry = "provenance = [{ owner = { name = \"One\" }, from = \"1931\", to = \"1940~\" }]";
    for (note, record, is_beyond) in [
        ("In a shop in 1938.", "", true),
        ("In a shop in 1938.", entry, false),
        ("Sold in 1941.", entry, true),
        ("Sold in 1949, or 1932.", "", false),
        ("See [the list](lit:list-1938).", "", false),
        (
            "Shown in 1938.",
            "sightings = [{ date = \"1938-05\" }]",
            false,
        ),
        ("In a shop in 1938.", "sheet = { date = \"1956\" }", false),
    ] {
        assert_eq!(found(note, record), is_beyond, "{note} {record}");
    }
}

/// Readers cite by number, and commands take numbers and keys.
#[test]
fn a_number_names_one_design() {
    let found = |number: &str, other: &str| {
        let design = |key: &str, number: &str| {
            format!(
                "-- records/designs/{key}/design.toml\nnumber = \"{number}\"\ntitles = [{{ text = \"A\" }}]\n"
            )
        };
        let found = codes(&[&design("r1", number), &design("r2", other)]);
        let twice = found.iter().filter(|c| **c == Code::DesignNumberTwice);
        twice.count()
    };
    assert_eq!(found("R 1", "R 2"), 0);
    assert_eq!(found("R 1", "r1"), 1, "the key of the first");
    assert_eq!(found("12", "12"), 1);
    assert_eq!(found("12 A", "12a"), 1, "case and spaces do not matter");
    assert_eq!(found("R2", "7"), 1, "the key of the other");
}

#[test]
fn one_number_on_sheets_of_no_settled_printing_is_doubted_unless_they_cannot_be_of_one() {
    let twice = |first: &str, second: &str| {
        let sheet = |n: u32, toml: &str| {
            format!("-- records/designs/1/impressions/{n}.toml\nstatus = \"untraced\"\n{toml}\n")
        };
        let design = "-- records/designs/1/design.toml\ntitles = [{ text = \"A\" }]\n\
            printings = [{ key = \"own\", kind = \"artist\" }, { key = \"late\", kind = \"posthumous\" }, { key = \"bare\", kind = \"artist\", numbered = false }]\n";
        let found = codes(&[design, &sheet(1, first), &sheet(2, second)]);
        found.contains(&Code::NumberTwice)
    };
    let (own, late, bare) = (
        "identified = { printing = \"own\" }",
        "identified = { printing = \"late\" }",
        "identified = { printing = \"bare\" }",
    );
    let number = |text: &str, of: &str| format!("numbering = \"{text}\"\n{of}");
    for (first, second, is_twice) in [
        (number("12/40", ""), number("12/40", ""), true),
        (number("12/40", ""), number("12", ""), true),
        (number("12/40", own), number("12/40", ""), true),
        (number("12/40", own), number("12/40", late), false),
        (number("12/40", ""), number("12/60", ""), false),
        (number("12/40", ""), number("XII/40", ""), false),
        (number("12/40", bare), number("12/40", ""), false),
        (number("12/40", ""), number("13/40", ""), false),
    ] {
        assert_eq!(twice(&first, &second), is_twice, "{first} and {second}");
    }
    let same = number("12/40", "same_as = [{ impression = \"1.1\" }]");
    assert!(!twice(&number("12/40", ""), &same), "one sheet");
}

#[test]
fn the_status_of_a_sheet_agrees_with_who_has_it() {
    let found = |toml: &str| {
        let holder = "-- records/holders/cabinet.toml\nname = \"Cabinet\"\nkind = \"museum\"\n";
        let record = format!("-- records/designs/14/impressions/9.toml\n{toml}\n");
        codes(&[FERRY, holder, &record])
            .into_iter()
            .filter(|c| matches!(c, Code::LocatedNowhere | Code::DestroyedWithHolder))
            .collect::<Vec<_>>()
    };
    assert_eq!(found("status = \"located\""), [Code::LocatedNowhere]);
    assert_eq!(
        found("status = \"destroyed\"\nholder = \"cabinet\""),
        [Code::DestroyedWithHolder]
    );
    for sound in [
        "status = \"located\"\nholder = \"cabinet\"",
        "status = \"located\"\nowner = { name = \"A reader\" }",
        "status = \"untraced\"",
        "status = \"destroyed\"",
    ] {
        assert_eq!(found(sound), [], "{sound}");
    }
}

/// Records that name each other as successors are an error, and no search for a successor runs forever.
#[test]
fn successors_in_a_circle_are_one_house() {
    let records = r#"
-- records/holders/one.toml
name = "Museum One"
kind = "museum"
successor = { holder = "two" }
-- records/holders/two.toml
name = "Museum Two"
kind = "museum"
successor = { holder = "one" }
-- records/holders/third.toml
name = "Museum Three"
kind = "museum"
-- records/designs/14/impressions/1.toml
status = "untraced"
provenance = [{ owner = "one", from = "1930", to = "1970" }, { owner = "third", from = "1950" }]
"#;
    let folder = lay_down(&[FERRY, records]);
    let reading = read(folder.path());
    let errors = reading
        .findings
        .iter()
        .filter(|f| f.severity() == Severity::Error);
    let errors: Vec<Code> = errors.map(|f| f.code).collect();
    assert_eq!(errors, [Code::SuccessorCircle]);
    let studies = Studies::of(&reading.catalogue);
    let doubts = audit(&reading.catalogue, &studies);
    assert!(doubts.iter().any(|f| f.code == Code::ProvenanceOverlap));
}

#[test]
fn provenance_out_of_order_is_doubted() {
    let record = "provenance = [{ owner = { name = \"One\" }, from = \"1960\" }, { owner = { name = \"Two\" }, from = \"1950\" }]";
    assert_eq!(codes_of(&sheet(record)), [Code::ProvenanceOrder]);
}

#[test]
fn owners_of_whom_only_the_end_is_known_stand_in_the_order_of_their_ends() {
    let record = |first: &str, second: &str| {
        sheet(&format!(
            "provenance = [{{ owner = {{ name = \"One\" }}, to = \"{first}\" }}, {{ owner = {{ name = \"Two\" }}, {second} }}]"
        ))
    };
    let codes = |second: &str| codes_of(&record("1960", second));
    assert_eq!(codes("to = \"1950\""), [Code::ProvenanceOrder]);
    for sound in [
        "to = \"1970\"",
        "to = \"1960\"",
        "to = \"1950~\"",
        "to = \"1950\", this_sheet = \"possible\"",
    ] {
        assert_eq!(codes(sound), [], "{sound}");
    }
}

#[test]
fn two_owners_at_one_time_are_doubted_on_two_records_of_one_sheet() {
    let other = |link: &str| {
        format!(
            "-- records/designs/14/impressions/2.toml\nstatus = \"untraced\"\n{link}\n\
             provenance = [{{ owner = {{ name = \"Two\" }}, from = \"1955\" }}]\n"
        )
    };
    let one =
        sheet("provenance = [{ owner = { name = \"One\" }, from = \"1950\", to = \"1960\" }]");
    let same = "same_as = [{ impression = \"14.1\" }]";
    let found = audit_lines(&[FERRY, &one, &other(same)]);
    let told = "14.2, the same sheet as 14.1, is said to have been owned by One and by Two at the same time";
    assert!(found.iter().any(|line| line.contains(told)), "{found:?}");
    assert_eq!(codes(&[FERRY, &one, &other("")]), []);
}

#[test]
fn what_is_known_of_a_sheet_before_it_was_printed_is_doubted() {
    let found = |record: &str| codes_of(&sheet(record));
    let printed = "sheet = { date = \"1935\" }\nidentified = { state = \"with-moon\" }\n";
    for early in [
        "provenance = [{ owner = { name = \"One\" }, from = \"1930\" }]",
        "provenance = [{ owner = { name = \"One\" }, to = \"1930\" }]",
        "provenance = [{ agent = { name = \"One\" }, from = \"1934\" }]",
        "sightings = [{ date = \"1934\" }]",
    ] {
        assert_eq!(
            found(&format!("{printed}{early}")),
            [Code::KnownBeforePrint],
            "{early}"
        );
    }
    for sound in [
        "provenance = [{ owner = { name = \"One\" }, from = \"1935\" }]",
        "provenance = [{ owner = { name = \"One\" }, from = \"1930~\" }]",
        "provenance = [{ owner = { name = \"One\" }, from = \"1930\", this_sheet = \"possible\" }]",
        "provenance = [{ owner = { name = \"One\" }, from = \"1930\", certainty = \"probable\" }]",
        "sightings = [{ date = \"1935\" }]",
    ] {
        assert_eq!(found(&format!("{printed}{sound}")), [], "{sound}");
    }
    // Where the sheet has no date, that of its printing counts, or else that of the design (1927).
    let owner = "provenance = [{ owner = { name = \"One\" }, from = \"1920\" }]";
    assert_eq!(found(owner), [Code::KnownBeforePrint]);
    let loose = format!("sheet = {{ date = \"1935~\" }}\n{owner}");
    assert_eq!(found(&loose), [], "an approximate date contradicts nobody");
}

#[test]
fn a_sheet_shown_before_it_was_printed_is_doubted_at_its_date() {
    let show = "-- records/exhibitions.toml\n[show]\ntitle = \"A Show\"\ndate = \"1934-05\"\n";
    let record = |date: &str| {
        sheet(&format!(
            "sheet = {{ date = \"{date}\" }}\nexhibited = [{{ exhibition = \"show\" }}]"
        ))
    };
    assert_eq!(
        codes(&[FERRY, show, &record("1935")]),
        [Code::KnownBeforePrint]
    );
    assert_eq!(codes(&[FERRY, show, &record("1934")]), []);
    let perhaps = sheet(
        "sheet = { date = \"1935\" }\nexhibited = [{ exhibition = \"show\", this_sheet = \"probable\" }]",
    );
    assert_eq!(
        codes(&[FERRY, show, &perhaps]),
        [],
        "it may have been another sheet"
    );
}

#[test]
fn a_holder_that_another_took_over_has_nothing_and_gets_nothing() {
    let holders = "-- records/holders/old.toml\nname = \"Old\"\nkind = \"museum\"\nsuccessor = { holder = \"new\", date = \"1987\" }\n\
                   -- records/holders/new.toml\nname = \"New\"\nkind = \"museum\"\n";
    let found = |record: &str| codes(&[FERRY, holders, &sheet(record)]);
    assert_eq!(found("holder = \"old\""), [Code::HolderSucceeded]);
    let entry = |from: &str| format!("provenance = [{{ owner = \"old\", from = \"{from}\" }}]");
    assert_eq!(found(&entry("1990")), [Code::HolderSucceeded]);
    for from in ["1980", "1987", "1990~"] {
        assert_eq!(found(&entry(from)), [], "{from}");
    }
    assert_eq!(found("holder = \"new\""), []);
}

#[test]
fn nobody_has_a_sheet_before_birth_though_a_firm_may_outlive_its_name() {
    let person =
        "-- records/people/dealer.toml\nname = \"Dealer\"\nborn = \"1940\"\ndied = \"1960\"\n";
    let found = |entry: &str| {
        codes(&[
            FERRY,
            person,
            &sheet(&format!("provenance = [{{ {entry} }}]")),
        ])
    };
    for early in [
        "owner = \"dealer\", from = \"1935\"",
        "owner = \"dealer\", to = \"1935\"",
        "agent = \"dealer\", from = \"1935\"",
        "keeper = \"dealer\", to = \"1935\"",
    ] {
        assert_eq!(found(early), [Code::LifeDates], "{early}");
    }
    assert_eq!(
        found("owner = \"dealer\", from = \"1965\""),
        [Code::LifeDates]
    );
    for sound in [
        "agent = \"dealer\", from = \"1965\"",
        "owner = \"dealer\", to = \"1965\"",
        "owner = \"dealer\", from = \"1940\"",
    ] {
        assert_eq!(found(sound), [], "{sound}");
    }
}

// Privacy.

const OWNER: &str = "-- records/holders/owner-a.toml\nname = \"Anna Müller\"\nkind = \"private\"\n";

#[test]
fn a_private_name_in_a_published_text_is_an_error_at_the_words() {
    let record = sheet("condition = \"Seen with Anna Müller in her flat.\"");
    assert_eq!(
        audit_lines(&[FERRY, OWNER, &record]),
        [
            "records/designs/14/impressions/1.toml:2:24 private-name-published: the name of the private owner `owner-a` stands in text that is published"
        ]
    );
}

#[test]
fn a_private_name_is_found_in_notes_marks_parties_and_settings() {
    let places = [
        "-- records/designs/14/design.md\nLent by *Anna*\nMüller.\n",
        "-- records/designs/14/impressions/1.md\nMÜLLER, Anna\n",
        "-- records/pages/thanks.md\n# Thanks\n\nTo Anna Mu\u{308}ller.\n",
        "-- records/exhibitions.toml\n[show]\ntitle = \"The Anna Müller Collection\"\n",
    ];
    for place in places {
        let found = codes(&[FERRY, OWNER, &sheet(""), place]);
        assert_eq!(found, [Code::PrivateNamePublished], "{place}");
    }
    let fields = [
        "credit = \"Collection of Anna Müller\"",
        "provenance_line = \"The artist; gift to Anna Müller.\"",
        "marks = [{ kind = \"collector\", text = \"ex libris Anna Müller\" }]",
        "provenance = [{ owner = { name = \"Anna Müller\" } }]",
        "identified = { state = \"with-moon\", why = \"Anna Müller says so\" }",
        "maybe_same_as = []\nopinions = [{ said = \"Anna Müller's state\" }]",
    ];
    for field in fields {
        let found = codes(&[FERRY, OWNER, &sheet(field)]);
        assert_eq!(found, [Code::PrivateNamePublished], "{field}");
    }
}

#[test]
fn a_name_is_not_found_in_other_words_nor_where_it_is_not_published() {
    for text in [
        "condition = \"Hannah Anna Müllerin.\"",
        "publish = false\ncondition = \"Anna Müller\"",
        "private = [\"condition\"]\ncondition = \"Anna Müller\"",
    ] {
        assert_eq!(codes(&[FERRY, OWNER, &sheet(text)]), [], "{text}");
    }
    let consenting = format!("{OWNER}consent = {{ date = \"2024\", covers = [\"name\"] }}\n");
    let named = sheet("condition = \"Anna Müller\"");
    assert_eq!(codes(&[FERRY, &consenting, &named]), []);
    let withdrawn = format!(
        "{OWNER}consent = {{ date = \"2024\", covers = [\"name\"], withdrawn = \"2025\" }}\n"
    );
    assert_eq!(
        codes(&[FERRY, &withdrawn, &named]),
        [Code::PrivateNamePublished]
    );
}

#[test]
fn a_name_that_a_record_keeps_private_may_not_stand_elsewhere() {
    let record = sheet(
        "condition = \"Framed by Quire.\"\nprovenance = [{ owner = { name = \"Quire\", private = [\"name\"] } }]",
    );
    assert_eq!(
        audit_lines(&[FERRY, &record]),
        [
            "records/designs/14/impressions/1.toml:2:24 private-name-published: a name kept private stands in text that is published"
        ]
    );
}

#[test]
fn a_word_that_a_record_keeps_private_may_be_said_of_others() {
    let record = two_sheets(
        "provenance = [{ owner = \"artist\", how = \"gift\", place = \"Northport\", private = [\"how\", \"place\"] }]",
        "condition = \"A gift, framed at Northport.\"",
    );
    assert_eq!(codes_of(&record), []);
}

#[test]
fn a_private_key_that_tells_the_name_is_doubted() {
    let telling =
        "-- records/holders/anna-mueller.toml\nname = \"Anna Müller\"\nkind = \"private\"\n";
    assert_eq!(codes(&[telling]), [Code::PrivateKeyTelling]);
    assert_eq!(codes(&[OWNER]), []);
}

// Rights.

#[test]
fn a_catalogue_without_a_licence_is_told_so() {
    let settings = "-- catalogue.toml\ntitle = \"The Prints\"\nsiglum = \"TP\"\nartist = \"artist\"\nlanguage = \"en\"\naddress = \"https://prints.example.org\"\n";
    assert_eq!(codes(&[settings]), [Code::RightsUnsaid]);
}
