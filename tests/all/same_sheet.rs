//! Which records may be one sheet, and why: each kind of evidence beside a near miss. The rules are those
//! of docs/trade.md, "Same sheet or two" (common practice, no source).

use keyblock::model::catalogue::Catalogue;
use keyblock::model::codes::Code;
use keyblock::study::Studies;
use keyblock::study::same_sheet::reason::{Bearing, Evidence, Tie};
use keyblock::study::same_sheet::{RecordPair, pairs};

use crate::small::{audited, studied};

const GROUND: &str = r#"
-- records/holders/museum.toml
name = "The Museum"
kind = "museum"
-- records/holders/old-museum.toml
name = "The Old Museum"
kind = "museum"
successor = { holder = "museum", date = "1987" }
-- records/holders/library.toml
name = "The Library"
kind = "library"
-- records/holders/house.toml
name = "The House"
kind = "trade"
-- records/holders/owner-a.toml
name = "Somebody"
kind = "private"
-- records/people/collector.toml
name = "The Collector"
-- records/people/other-collector.toml
name = "The Other Collector"
-- records/people/printer.toml
name = "The Printer"
-- records/exhibitions.toml
[first]
title = "First"
venue = "museum"
date = "1931-05-01/1931-06-30"
[second]
title = "Second"
venue = "library"
date = "1931-06-15/1931-08-01"
[third]
title = "Third"
venue = "library"
date = "1931"
-- records/designs/1/design.toml
titles = [{ text = "A Lighthouse" }]
points = [
  { key = "moon", ask = "A moon?", kind = "presence", rests_on = "matrix" },
  { key = "crack", ask = "How far?", kind = "stage", rests_on = "matrix", stages = ["none", "edge", "through"] },
  { key = "sky", ask = "How?", kind = "choice", rests_on = "inking", values = { even = "even", wiped = "wiped" } },
  { key = "height", ask = "How tall?", kind = "measure", unit = "mm", tolerance = 2, rests_on = "matrix" },
  { key = "seal", ask = "A seal?", kind = "presence", rests_on = "mark" },
]
states = [{ key = "dark" }, { key = "moonlit" }]
printings = [
  { key = "own", kind = "artist", states = "all", printer = "printer" },
  { key = "later", kind = "posthumous", states = ["moonlit"], edition = 50 },
]
"#;

fn records(of: &[&str]) -> String {
    let record = |(at, text): (usize, &&str)| {
        let status = if text.contains("status =") {
            ""
        } else {
            "status = \"located\"\n"
        };
        let at = at + 1;
        format!("-- records/designs/1/impressions/{at}.toml\n{status}{text}\n")
    };
    of.iter().enumerate().map(record).collect()
}

fn pairs_of(of: &[&str]) -> Vec<RecordPair> {
    let (catalogue, studies) = studied(&[GROUND, &records(of)]);
    all_pairs(&catalogue, &studies)
}

fn all_pairs(catalogue: &Catalogue, studies: &Studies) -> Vec<RecordPair> {
    let pairs = pairs(catalogue, &studies.groups);
    pairs.into_values().flatten().collect()
}

/// The two records as a pair, whether it would be suggested or not.
fn pair(one: &str, other: &str) -> RecordPair {
    let other = format!("maybe_same_as = [{{ impression = \"1.1\" }}]\n{other}");
    let mut pairs = pairs_of(&[one, &other]);
    assert_eq!(pairs.len(), 1);
    pairs.remove(0)
}

/// The bearing of the first evidence that `is` accepts, for the two records in either order.
fn bearing(one: &str, other: &str, is: fn(&Evidence) -> bool) -> Option<Bearing> {
    let of = |pair: &RecordPair| {
        let reason = pair.reasons.iter().find(|reason| is(&reason.evidence));
        reason.map(|reason| reason.bearing)
    };
    let there = of(&pair(one, other));
    assert_eq!(
        there,
        of(&pair(other, one)),
        "told otherwise in the other order"
    );
    there
}

fn is_suggested(one: &str, other: &str) -> bool {
    let suggested = !pairs_of(&[one, other]).is_empty();
    assert_eq!(suggested, !pairs_of(&[other, one]).is_empty());
    suggested
}

const LATER: &str = "identified = { state = \"moonlit\", printing = \"later\" }";

// Ties that prove.

#[test]
fn one_number_of_one_printing_ties_two_records() {
    let numbered = |number: &str| format!("numbering = \"{number}\"\n{LATER}");
    let shared = |a: &str, b: &str| {
        bearing(&numbered(a), &numbered(b), |e| {
            matches!(e, Evidence::Shared(Tie::Number { .. }))
        })
    };
    assert_eq!(shared("12/50", "12/50"), Some(Bearing::Proves));
    // The printing says of how many.
    assert_eq!(shared("12/50", "12"), Some(Bearing::Proves));
    assert_eq!(shared("12/50", "13/50"), None);
    assert_eq!(shared("12/50", "12/60"), None);
    assert_eq!(shared("12/50", "XII/L"), None);
    assert!(is_suggested(&numbered("12/50"), &numbered("12/50")));
    // Where the printing is not known, the number speaks for one sheet and proves nothing.
    let unknown = "numbering = \"12/50\"";
    let is = |e: &Evidence| matches!(e, Evidence::Shared(Tie::Number { .. }));
    assert_eq!(
        bearing(&numbered("12/50"), unknown, is),
        Some(Bearing::Speaks)
    );
}

#[test]
fn two_numbers_exclude_and_a_set_in_roman_numerals_does_not() {
    let other = |a: &str, b: &str| {
        let numbered = |number: &str| format!("numbering = \"{number}\"");
        bearing(&numbered(a), &numbered(b), |e| {
            matches!(e, Evidence::OtherNumber(_))
        })
    };
    assert_eq!(other("12/50", "13/50"), Some(Bearing::Excludes));
    assert_eq!(other("12/50", "12/60"), Some(Bearing::Excludes));
    assert_eq!(other("12/50", "AP 3/10"), Some(Bearing::Excludes));
    assert_eq!(other("12/50", "XII/L"), None);
    assert_eq!(other("12/50", "12"), None);
}

#[test]
fn a_collectors_mark_ties_two_sheets_and_not_four() {
    let marked = "marks = [{ kind = \"collector\", text = \"R T\", whose = \"collector\" }]";
    assert!(is_suggested(marked, marked));
    assert!(pairs_of(&[marked, marked, marked, marked]).is_empty());
    let another = "marks = [{ kind = \"collector\", text = \"R T\", whose = \"other-collector\" }]";
    assert!(!is_suggested(marked, another));
    // A museum stamps every sheet it has.
    let stamped = "marks = [{ kind = \"collector\", text = \"M\", whose = \"museum\" }]";
    assert!(!is_suggested(stamped, stamped));
    let perhaps = "marks = [{ kind = \"collector\", text = \"R T\", whose = \"collector\", certainty = \"possible\" }]";
    assert!(!is_suggested(marked, perhaps));
}

/// An owner who marked the sheet is one fact and one reason; a suggestion needs two.
#[test]
fn an_owner_and_the_owners_own_mark_are_one_reason() {
    let marked = "marks = [{ kind = \"collector\", text = \"R T\", whose = \"collector\" }]";
    let owned = |by: &str| format!("{marked}\nprovenance = [{{ owner = \"{by}\" }}]");
    let of_three = |by: &str| {
        let owned = owned(by);
        pairs_of(&[&owned, &owned, &owned]).len()
    };
    assert_eq!(of_three("collector"), 0);
    // A mark and another owner are two.
    assert_eq!(of_three("other-collector"), 3);
}

#[test]
fn an_inscription_ties_unless_it_is_what_many_sheets_bear() {
    let inscribed = |text: &str, more: &str| {
        format!("marks = [{{ kind = \"inscription\", text = \"{text}\"{more} }}]")
    };
    let ties = |one: &str, other: &str| is_suggested(&inscribed(one, ""), &inscribed(other, ""));
    assert!(ties("For Marta, at the window", "for Marta at the window."));
    assert!(!ties("For Marta, at the window", "For Marta, at the door"));
    // The title, a bare year, a text printed on the paper.
    assert!(!ties("A Lighthouse", "A lighthouse"));
    assert!(!ties("1927", "1927"));
    let printed = inscribed("HARBOUR OFFICE No.", ", medium = \"printed\"");
    assert!(!is_suggested(&printed, &printed));
    // A formula: it stands on another design too.
    let formula = inscribed("For the Widows' Fund", "");
    let elsewhere = format!(
        "-- records/designs/2/design.toml\ntitles = [{{ text = \"A Quay\" }}]\n\
         -- records/designs/2/impressions/1.toml\nstatus = \"located\"\n{formula}\n"
    );
    let two = records(&[&formula, &formula]);
    let (catalogue, studies) = studied(&[GROUND, &two]);
    assert_eq!(all_pairs(&catalogue, &studies).len(), 1);
    let (catalogue, studies) = studied(&[GROUND, &two, &elsewhere]);
    assert_eq!(all_pairs(&catalogue, &studies), []);
    // Signatures and seals are on every sheet.
    let sealed = "marks = [{ kind = \"seal\", text = \"the artist's seal\" }]";
    assert!(!is_suggested(sealed, sealed));
}

#[test]
fn one_accession_number_of_one_holder_ties_and_two_exclude() {
    let held =
        |holder: &str, number: &str| format!("holder = \"{holder}\"\naccession = \"{number}\"");
    assert!(is_suggested(
        &held("museum", "1951.7"),
        &held("museum", "1951.7")
    ));
    let other = |a: &str, b: &str| bearing(a, b, |e| matches!(e, Evidence::OtherAccession { .. }));
    let (seven, eight) = (held("museum", "1951.7"), held("museum", "1951.8"));
    assert_eq!(other(&seven, &eight), Some(Bearing::Excludes));
    // A dealer numbers a sheet anew each time.
    assert_eq!(other(&held("house", "7"), &held("house", "8")), None);
    // Renumbered; and an old report that gives the old number.
    let renumbered =
        format!("{eight}\nformer_accessions = [{{ holder = \"museum\", number = \"1951.7\" }}]");
    assert_eq!(other(&seven, &renumbered), None);
    assert!(is_suggested(&seven, &renumbered));
}

#[test]
fn one_lot_ties_and_two_lots_of_one_day_exclude() {
    let sold = |date: &str, lot: &str| {
        format!(
            "status = \"untraced\"\nprovenance = [{{ agent = \"house\", from = \"{date}\"{lot} }}]"
        )
    };
    let lot = |n: u32| format!(", lot = \"{n}\"");
    let (four, five) = (sold("1938-05-12", &lot(4)), sold("1938-05-12", &lot(5)));
    assert!(is_suggested(&four, &four));
    let other = |a: &str, b: &str| bearing(a, b, |e| matches!(e, Evidence::OtherLot { .. }));
    assert_eq!(other(&four, &five), Some(Bearing::Excludes));
    // A house holds many sales in a year, each with its lots.
    assert_eq!(other(&sold("1938", &lot(4)), &sold("1938", &lot(5))), None);
    assert_eq!(other(&four, &sold("1938-05-13", &lot(5))), None);
    // A sale that is in doubt, or may have been of another sheet, proves nothing.
    for doubt in ["certainty", "this_sheet"] {
        let perhaps = sold("1938-05-12", &format!("{}, {doubt} = \"probable\"", lot(5)));
        assert_eq!(other(&four, &perhaps), None, "{doubt}");
    }
    // Without the lot: the last trace of a lost sheet.
    assert!(is_suggested(&four, &sold("1938-05-12", "")));
    assert!(!is_suggested(&sold("1938", ""), &sold("1938", "")));
}

#[test]
fn one_exhibit_ties_and_two_numbers_or_two_towns_at_once_exclude() {
    let shown = |exhibition: &str, at: &str| {
        format!("exhibited = [{{ exhibition = \"{exhibition}\", at = \"{at}\" }}]")
    };
    assert!(is_suggested(
        &shown("first", "no. 7"),
        &shown("first", "no. 7")
    ));
    // One number, however it is written; a place in an exhibition is no number.
    assert!(is_suggested(
        &shown("first", "no. 71"),
        &shown("first", "71")
    ));
    for place in ["room 2", "hors catalogue"] {
        assert!(
            !is_suggested(&shown("first", place), &shown("first", place)),
            "{place}"
        );
    }
    let two = |a: &str, b: &str| bearing(a, b, |e| matches!(e, Evidence::OtherExhibit { .. }));
    assert_eq!(
        two(&shown("first", "no. 7"), &shown("first", "no. 8")),
        Some(Bearing::Excludes)
    );
    assert_eq!(
        two(&shown("first", "no. 7"), &shown("first", "no. 8, perhaps")),
        None
    );
    let places = |a: &str, b: &str| bearing(a, b, |e| matches!(e, Evidence::TwoPlaces(_)));
    let first = shown("first", "no. 7");
    assert_eq!(
        places(&first, &shown("second", "no. 1")),
        Some(Bearing::Excludes)
    );
    // Only the year of the third is known.
    assert_eq!(places(&first, &shown("third", "no. 1")), None);
}

#[test]
fn a_record_without_a_number_may_be_an_old_report_of_one_that_has_one() {
    let shared =
        |a: &str, b: &str| bearing(a, b, |e| matches!(e, Evidence::Shared(Tie::Holder(_))));
    let bare = "holder = \"museum\"";
    let numbered = "holder = \"museum\"\naccession = \"1951.7\"";
    assert_eq!(shared(bare, numbered), Some(Bearing::Speaks));
    assert_eq!(shared(bare, bare), Some(Bearing::Fits));
    assert_eq!(shared("holder = \"owner-a\"", "holder = \"owner-a\""), None);
    assert!(!is_suggested(bare, numbered));
}

// The chain of ownership.

#[test]
fn the_last_owner_of_a_lost_sheet_leads_to_another_record() {
    let lost = "status = \"untraced\"\nprovenance = [{ owner = \"collector\", to = \"1940\" }]";
    let found = |owner: &str| {
        format!(
            "provenance = [{{ owner = \"{owner}\", from = \"1935\", to = \"1950\" }}, {{ owner = \"owner-a\", from = \"1960\" }}]\nholder = \"owner-a\""
        )
    };
    assert!(is_suggested(lost, &found("collector")));
    assert!(!is_suggested(lost, &found("other-collector")));
    // One owner of both speaks for one sheet, but does not suffice where neither is lost.
    let kept = lost.replace("status = \"untraced\"", "");
    assert!(!is_suggested(&kept, &found("collector")));
    // The printer had every sheet, and museums have many.
    let printers = lost.replace("collector", "printer");
    assert!(!is_suggested(&printers, &found("printer")));
    let possible = lost.replace("to =", "this_sheet = \"possible\", to =");
    assert!(!is_suggested(&possible, &found("collector")));
    // A buyer of the whole edition.
    let all = [
        lost,
        &found("collector"),
        &found("collector"),
        &found("collector"),
    ];
    assert!(pairs_of(&all).is_empty());
}

#[test]
fn two_hands_at_one_certain_time_exclude_and_agents_never_do() {
    let had = |role: &str, who: &str, from: &str, to: &str, more: &str| {
        format!(
            "status = \"untraced\"\nprovenance = [{{ {role} = \"{who}\", from = \"{from}\", to = \"{to}\"{more} }}]"
        )
    };
    let hands = |a: &str, b: &str| bearing(a, b, |e| matches!(e, Evidence::TwoHands { .. }));
    let one = had("owner", "collector", "1930", "1940", "");
    let other = |from, to| had("owner", "other-collector", from, to, "");
    assert_eq!(hands(&one, &other("1935", "1945")), Some(Bearing::Excludes));
    // Hands change on a day of that year.
    assert_eq!(hands(&one, &other("1940", "1945")), None);
    assert_eq!(
        hands(&one, &had("owner", "collector", "1935", "1945", "")),
        None
    );
    assert_eq!(
        hands(&one, &had("agent", "house", "1935", "1945", "")),
        None
    );
    assert_eq!(
        hands(&one, &had("keeper", "museum", "1935", "1945", "")),
        None
    );
    assert_eq!(
        hands(&one, &had("owner", "other-collector", "1935~", "1945~", "")),
        None
    );
    let perhaps = had(
        "owner",
        "other-collector",
        "1935",
        "1945",
        ", this_sheet = \"probable\"",
    );
    assert_eq!(hands(&one, &perhaps), None);
    let keeper = |who| had("keeper", who, "1930", "1940", "");
    assert_eq!(
        hands(&keeper("museum"), &keeper("library")),
        Some(Bearing::Excludes)
    );
}

#[test]
fn two_public_holders_have_two_sheets_unless_the_one_took_over_the_other() {
    let held = |holder: &str| format!("holder = \"{holder}\"");
    let hands = |a: &str, b: &str| bearing(a, b, |e| matches!(e, Evidence::TwoHands { .. }));
    assert_eq!(
        hands(&held("museum"), &held("library")),
        Some(Bearing::Excludes)
    );
    assert_eq!(hands(&held("museum"), &held("old-museum")), None);
    // A sheet that a dealer had may now be in a museum.
    assert_eq!(hands(&held("museum"), &held("house")), None);
    let since = "holder = \"museum\"\nprovenance = [{ owner = \"museum\", from = \"1930\" }]";
    let until = "status = \"untraced\"\nprovenance = [{ owner = \"collector\", from = \"1935\", to = \"1936\" }]";
    assert_eq!(hands(since, until), Some(Bearing::Excludes));
    let before = until.replace("1935", "1925").replace("1936", "1930");
    assert_eq!(hands(since, &before), None);
    // Seen at a private owner's while the museum had its own; a photograph may be older than its date.
    let seen = |holder: &str, basis: &str| {
        format!(
            "{}\nsightings = [{{ date = \"2019\", basis = \"{basis}\" }}]",
            held(holder)
        )
    };
    assert_eq!(
        hands(since, &seen("owner-a", "first-hand")),
        Some(Bearing::Excludes)
    );
    assert_eq!(hands(since, &seen("owner-a", "photograph")), None);
    assert_eq!(hands(since, &seen("house", "first-hand")), None);
}

#[test]
fn a_destroyed_sheet_is_not_one_that_exists() {
    let destroyed = |a: &str, b: &str| bearing(a, b, |e| matches!(e, Evidence::Destroyed));
    let gone = "status = \"destroyed\"";
    assert_eq!(destroyed(gone, ""), Some(Bearing::Excludes));
    assert_eq!(destroyed(gone, "status = \"untraced\""), None);
    assert_eq!(destroyed("status = \"stolen\"", ""), None);
}

#[test]
fn records_that_name_each_other_as_beside_are_two() {
    let beside = |key: &str| pair("", &format!("{key} = [\"1.1\"]")).is_excluded();
    assert!(beside("shares_sheet"));
    assert!(beside("goes_with"));
    assert!(pair("", "taken_from = \"1.1\"").is_excluded());
    assert!(!pair("", "").is_excluded());
}

// Sizes.

#[test]
fn papers_measured_alike_fit_and_measured_apart_weigh() {
    // docs/trade.md, "Tolerances"; common practice, no source.
    let on = |lines: &str| format!("sheet = {{ {lines} }}");
    let alike =
        |a: &str, b: &str| bearing(&on(a), &on(b), |e| matches!(e, Evidence::PaperAlike(..)));
    let apart =
        |a: &str, b: &str| bearing(&on(a), &on(b), |e| matches!(e, Evidence::PaperApart(..)));
    let near = ("chain_lines = 25", "chain_lines = 26");
    assert_eq!(alike(near.0, near.1), Some(Bearing::Fits));
    assert_eq!(apart(near.0, near.1), None);
    let between = ("chain_lines = 25", "chain_lines = 26.5");
    assert_eq!(
        (alike(between.0, between.1), apart(between.0, between.1)),
        (None, None)
    );
    assert_eq!(
        apart("chain_lines = 25", "chain_lines = 28"),
        Some(Bearing::Weighs)
    );
    assert_eq!(
        apart("laid_lines = 8", "laid_lines = 11"),
        Some(Bearing::Weighs)
    );
    assert_eq!(
        alike("thickness = 0.1", "thickness = 0.11"),
        Some(Bearing::Fits)
    );
    assert_eq!(
        apart("thickness = 0.1", "thickness = 0.2"),
        Some(Bearing::Weighs)
    );
    assert_eq!(apart("chain_lines = 25", "laid_lines = 8"), None);
}

#[test]
fn what_shows_in_a_mount_is_the_least_that_a_sheet_measures() {
    let sheet = |keys: &str| format!("sheet = {{ {keys} }}");
    let is = |e: &Evidence| matches!(e, Evidence::Grown { .. } | Evidence::SheetAlike { .. });
    let framed = "size = [300, 400], sight = true, measured = \"1938\"";
    let whole = |size: &str, when: &str| sheet(&format!("size = {size}, measured = \"{when}\""));
    // In the mount it measured less than it does: it is no larger now.
    assert_eq!(
        bearing(&sheet(framed), &whole("[340, 440]", "2019"), is),
        None
    );
    assert_eq!(
        bearing(&sheet(framed), &whole("[300, 400]", "2019"), is),
        None
    );
    // What was seen in the mount was larger than the whole sheet had been.
    let grown = bearing(&sheet(framed), &whole("[290, 390]", "1930"), is);
    assert_eq!(grown, Some(Bearing::Excludes));
    // `measured` says which came first: without a mount, the later one has grown.
    let grown = bearing(
        &whole("[300, 400]", "1938"),
        &whole("[340, 440]", "2019"),
        is,
    );
    assert_eq!(grown, Some(Bearing::Excludes));
    let trimmed = bearing(
        &whole("[300, 400]", "2019"),
        &whole("[340, 440]", "1938"),
        is,
    );
    assert_eq!(trimmed, None);
}

#[test]
fn a_sheet_may_be_trimmed_but_not_grow() {
    let measured = |size: &str, seen: &str| {
        format!(
            "sheet = {{ size = {size} }}\nsightings = [{{ date = \"{seen}\", basis = \"first-hand\" }}]"
        )
    };
    let grown = |a: &str, b: &str| bearing(a, b, |e| matches!(e, Evidence::Grown { .. }));
    let early = measured("[340, 470]", "1938");
    assert_eq!(grown(&early, &measured("[300, 400]", "2019")), None);
    assert_eq!(grown(&early, &measured("[343, 473]", "2019")), None);
    // One length alone excludes nothing.
    assert_eq!(
        grown(&early, &measured("[344, 470]", "2019")),
        Some(Bearing::Contradicts)
    );
    assert_eq!(
        grown(&early, &measured("[344, 474]", "2019")),
        Some(Bearing::Excludes)
    );
    // Which was measured first is not known: the larger one may have been.
    assert_eq!(
        grown(
            "sheet = { size = [340, 470] }",
            "sheet = { size = [344, 474] }"
        ),
        None
    );
    assert_eq!(
        grown(
            "sheet = { size = [340, 470] }",
            "sheet = { size = [344, 460] }"
        ),
        Some(Bearing::Contradicts)
    );
}

#[test]
fn sheets_that_measure_alike_as_no_third_does_speak() {
    let size = |size: &str| format!("sheet = {{ size = {size} }}");
    let alike = |e: &Evidence| matches!(e, Evidence::SheetAlike { .. });
    let (one, two) = (size("[310, 425]"), size("[308, 424]"));
    assert_eq!(bearing(&one, &two, alike), Some(Bearing::Speaks));
    assert_eq!(bearing(&one, &size("[307, 424]"), alike), None);
    let stated = format!("maybe_same_as = [{{ impression = \"1.1\" }}]\n{two}");
    let third = size("[311, 424]");
    let pairs = pairs_of(&[&one, &stated, &third]);
    let reason = pairs[0]
        .reasons
        .iter()
        .find(|r| alike(&r.evidence))
        .unwrap();
    assert_eq!(reason.bearing, Bearing::Fits);
    // Alone it suggests nothing; with a provenance that may continue, it does.
    assert!(!is_suggested(&one, &two));
    let lost = format!("status = \"untraced\"\n{one}\nsightings = [{{ date = \"1938\" }}]");
    let found = format!("{two}\nsightings = [{{ date = \"1996\" }}]");
    assert!(is_suggested(&lost, &found));
    let known_before = format!("{two}\nsightings = [{{ date = \"1930\" }}, {{ date = \"1996\" }}]");
    assert!(!is_suggested(&lost, &known_before));
}

#[test]
fn an_image_of_another_size_contradicts_and_paper_explains_a_little() {
    let image = |size: &str| format!("sheet = {{ image = {size} }}");
    let of = |b: &str| {
        bearing(&image("[212, 301]"), &image(b), |e| {
            matches!(
                e,
                Evidence::MatrixAlike(..) | Evidence::MatrixNear(..) | Evidence::MatrixFar(..)
            )
        })
    };
    assert_eq!(of("[214, 299]"), Some(Bearing::Fits));
    assert_eq!(of("[212, 308]"), Some(Bearing::Weighs));
    assert_eq!(of("[212, 312]"), Some(Bearing::Contradicts));
    // Never on one number alone, nor on two of one measurement.
    assert_eq!(of("[240, 330]"), Some(Bearing::Contradicts));
}

// Identifications and observations.

#[test]
fn another_certain_state_or_printing_excludes_and_a_doubtful_one_weighs() {
    let state = |a: &str, b: &str| {
        let taken = |as_: &str| format!("identified = {{ {as_} }}");
        bearing(&taken(a), &taken(b), |e| {
            matches!(e, Evidence::OtherState(_) | Evidence::OtherPrinting(_))
        })
    };
    let (dark, moonlit) = ("state = \"dark\"", "state = \"moonlit\"");
    assert_eq!(state(dark, moonlit), Some(Bearing::Excludes));
    assert_eq!(state(dark, dark), None);
    assert_eq!(
        state(dark, "state = \"moonlit\", certainty = \"possible\""),
        Some(Bearing::Weighs)
    );
    assert_eq!(state(dark, "state = [\"dark\", \"moonlit\"]"), None);
    assert_eq!(
        state(dark, "state = \"moonlit\", or = [{ state = \"dark\" }]"),
        None
    );
    assert_eq!(
        state("printing = \"own\"", "printing = \"later\""),
        Some(Bearing::Excludes)
    );
    assert_eq!(state("printing = \"own\"", moonlit), None);
}

#[test]
fn what_was_printed_cannot_be_seen_otherwise_on_one_sheet() {
    let seen = |point: &str, a: &str, b: &str| {
        let observed = |value: &str| format!("observed = {{ {point} = {value} }}");
        bearing(&observed(a), &observed(b), |e| {
            matches!(e, Evidence::SeenApart { .. })
        })
    };
    let (present, absent) = ("\"present\"", "\"absent\"");
    assert_eq!(seen("moon", present, absent), Some(Bearing::Excludes));
    assert_eq!(seen("moon", present, present), None);
    assert_eq!(seen("moon", present, "\"not-visible\""), None);
    assert_eq!(
        seen(
            "moon",
            present,
            "{ is = \"absent\", certainty = \"probable\" }"
        ),
        Some(Bearing::Weighs)
    );
    // Wear: one sheet was pulled once.
    assert_eq!(
        seen("crack", "\"none\"", "\"through\""),
        Some(Bearing::Excludes)
    );
    assert_eq!(seen("crack", "\"none\"", "[\"none\", \"edge\"]"), None);
    // Ink fades, a length is measured wrong, a mark is added.
    assert_eq!(
        seen("sky", "\"even\"", "\"wiped\""),
        Some(Bearing::Contradicts)
    );
    assert_eq!(seen("height", "212", "220"), Some(Bearing::Contradicts));
    assert_eq!(seen("height", "212", "213.5"), None);
    assert_eq!(seen("seal", present, absent), None);
}

#[test]
fn a_mark_that_stays_is_not_missed_later() {
    let seen =
        |date: &str| format!("sightings = [{{ date = \"{date}\", basis = \"first-hand\" }}]");
    let with = |mark: &str| {
        format!(
            "marks = [{mark}]\nsheet = {{ size = [340, 470] }}\n{}",
            seen("1938")
        )
    };
    let without = |what: &str, size: &str, date: &str| {
        format!(
            "without = [\"{what}\"]\nsheet = {{ size = {size} }}\n{}",
            seen(date)
        )
    };
    let gone = |a: &str, b: &str| {
        bearing(a, b, |e| {
            matches!(e, Evidence::MarkGone { .. } | Evidence::NumberGone(_))
        })
    };
    let stamp = with("{ kind = \"stamp\", text = \"estate\" }");
    let whole = |date| without("stamp", "[340, 470]", date);
    assert_eq!(gone(&stamp, &whole("2019")), Some(Bearing::Excludes));
    // The mark was put on after the observation.
    assert_eq!(gone(&stamp, &whole("1930")), None);
    // In a margin that was cut off since.
    let cut = without("stamp", "[320, 450]", "2019");
    assert_eq!(gone(&stamp, &cut), Some(Bearing::Weighs));
    let pencil = with("{ kind = \"signature\", medium = \"pencil\" }");
    let unsigned = without("signature", "[340, 470]", "2019");
    assert_eq!(gone(&pencil, &unsigned), Some(Bearing::Weighs));
    assert_eq!(gone(&stamp, &unsigned), None);
    // By whole words: neither the German pencil nor a wash is ink, and an unknown medium may come off.
    for (medium, bearing) in [
        ("pen and brown ink", Bearing::Excludes),
        ("brush", Bearing::Excludes),
        ("Bleistift", Bearing::Weighs),
        ("pink wash", Bearing::Weighs),
        ("ink over pencil", Bearing::Weighs),
    ] {
        let signed = with(&format!(
            "{{ kind = \"signature\", medium = \"{medium}\" }}"
        ));
        assert_eq!(gone(&signed, &unsigned), Some(bearing), "{medium}");
    }
    let unknown = with("{ kind = \"stamp\", medium = \"Bleistift\" }");
    assert_eq!(gone(&unknown, &whole("2019")), Some(Bearing::Weighs));
    let numbered = format!("numbering = \"12/50\"\n{}", with(""));
    let unnumbered = without("numbering", "[340, 470]", "2019");
    assert_eq!(gone(&numbered, &unnumbered), Some(Bearing::Contradicts));
}

// Settled pairs, and the words of the findings.

#[test]
fn what_is_settled_is_not_suggested_and_what_is_stated_is_shown() {
    let twelve = format!("numbering = \"12/50\"\n{LATER}");
    let linked = |key: &str| format!("{key} = [{{ impression = \"1.1\" }}]\n{twelve}");
    assert!(pairs_of(&[&twelve, &linked("same_as")]).is_empty());
    assert!(pairs_of(&[&twelve, &linked("not_same_as")]).is_empty());
    let stated = pairs_of(&[&twelve, &linked("maybe_same_as")]);
    assert!(stated[0].is_stated && stated[0].is_suggested());
    // Settled for one record of a sheet, settled for all.
    let third = format!("same_as = [{{ impression = \"1.2\" }}]\n{twelve}");
    assert!(pairs_of(&[&twelve, &linked("not_same_as"), &third]).is_empty());
    // A withdrawn record is no sheet.
    let withdrawn = format!("standing = \"withdrawn\"\n{twelve}");
    assert!(pairs_of(&[&twelve, &withdrawn]).is_empty());
}

#[test]
fn what_one_record_of_a_sheet_excludes_is_excluded_for_all() {
    let mark = "marks = [{ kind = \"collector\", text = \"R T\", whose = \"collector\" }]";
    let held = format!("holder = \"museum\"\n{mark}");
    assert_eq!(pairs_of(&[&held, mark]).len(), 1);
    let elsewhere = "holder = \"library\"\nsame_as = [{ impression = \"1.2\" }]";
    assert!(pairs_of(&[&held, mark, elsewhere]).is_empty());
}

#[test]
fn the_audit_tells_a_suggestion_once() {
    let codes = |of: &[&str]| {
        let (_, findings) = audited(&[GROUND, &records(of)]);
        let codes: Vec<Code> = findings.iter().map(|f| f.code).collect();
        codes
    };
    let mark = "marks = [{ kind = \"collector\", text = \"R T\", whose = \"collector\" }]";
    assert!(codes(&[mark, mark]).contains(&Code::MayBeOneSheet));
    let stated = format!("maybe_same_as = [{{ impression = \"1.1\" }}]\n{mark}");
    assert!(!codes(&[mark, &stated]).contains(&Code::MayBeOneSheet));
    // A number met twice is a doubt of its own.
    let twelve = format!("numbering = \"12/50\"\n{LATER}");
    let told = codes(&[&twelve, &twelve]);
    assert!(told.contains(&Code::NumberTwice) && !told.contains(&Code::MayBeOneSheet));
}

/// Reasons name the record that gives them, whichever of a sheet's records come first.
#[test]
fn of_a_sheet_with_several_records_each_reason_is_told_of_the_right_one() {
    let of = [
        "same_as = [{ impression = \"1.4\" }]",
        "identified = { state = \"dark\" }",
        "",
        "identified = { state = \"moonlit\" }\nmaybe_same_as = [{ impression = \"1.2\" }]",
    ];
    let (catalogue, studies) = studied(&[GROUND, &records(&of)]);
    let pairs = all_pairs(&catalogue, &studies);
    let told = worded_pair(&catalogue, &studies, &pairs[0]);
    assert_eq!(told, "Excludes: 1.4 is taken to be state ii, 1.2 state i\n");
    // The first record of the first sheet is a withdrawn one, which counts for nothing.
    let numbered = "numbering = \"12/50\"\nidentified = { printing = \"later\" }\n";
    let of = [
        "standing = \"withdrawn\"\nsame_as = [{ impression = \"1.3\" }]",
        &format!("kind = \"edition\"\n{numbered}"),
        &format!("kind = \"counterproof\"\n{numbered}"),
    ];
    let (catalogue, studies) = studied(&[GROUND, &records(&of)]);
    let pairs = all_pairs(&catalogue, &studies);
    let [one, other] = pairs[0].records.each_ref().map(ToString::to_string);
    let told = worded_pair(&catalogue, &studies, &pairs[0]);
    let kind = |key: &str| {
        if key == "1.2" {
            "edition"
        } else {
            "counterproof"
        }
    };
    let right = format!(
        "{one} is recorded as `{}`, {other} as `{}`",
        kind(&one),
        kind(&other)
    );
    assert!(told.contains(&right), "{told}");
}

/// The finding on two records that may be one sheet.
fn message(of: &[&str], more: &str) -> String {
    let (_, findings) = audited(&[GROUND, &records(of), more]);
    let told = findings.iter().find(|f| f.code == Code::MayBeOneSheet);
    told.unwrap().message.clone()
}

#[test]
fn what_a_record_keeps_private_is_not_told_in_a_finding() {
    let owned = |owner: &str| format!("status = \"untraced\"\nprovenance = [{owner}]");
    let header =
        "status = \"untraced\"\n[[provenance]]\nowner = \"collector\"\nprivate = [\"owner\"]";
    let by_key = owned("{ owner = \"collector\", private = [\"owner\"] }");
    let by_name = owned("{ owner = { name = \"The Collector\", private = [\"name\"] } }");
    for record in [header, &by_key, &by_name] {
        let message = message(&[record, record], "");
        assert_eq!(
            message, "1.2 may be one sheet with 1.1: an owner kept private",
            "{record}"
        );
    }
    // Private in one of the two is private.
    let told = owned("{ owner = \"collector\" }");
    let of_one = message(&[&told, &by_key], "");
    assert!(!of_one.contains("Collector"), "{of_one}");
    let both = message(&[&told, &told], "");
    assert!(both.contains("The Collector"), "{both}");
    // Where another record of the sheet has it as public, the finding names it.
    let same = format!("same_as = [{{ impression = \"1.1\" }}]\n{told}");
    let openly = message(&[&by_key, &told, &same], "");
    assert!(openly.contains("The Collector"), "{openly}");
    // A name that the person's own record keeps private.
    let hidden = "-- records/people/collector.toml\nname = \"Bel\"\nprivate = [\"name\"]\n";
    let of_person = message(&[&told, &told], hidden);
    assert!(
        of_person.contains("(private)") && !of_person.contains("Bel"),
        "{of_person}"
    );
}

#[test]
fn a_private_inscription_is_told_in_no_form() {
    let inscribed = "marks = [{ kind = \"inscription\", text = \"For Marta, at the Window\", private = [\"text\"] }]";
    let told = message(&[inscribed, inscribed], "");
    assert_eq!(
        told,
        "1.2 may be one sheet with 1.1: an inscription kept private"
    );
    // The mark of a reason may be in any record of the sheet.
    let open = inscribed.replace(", private = [\"text\"]", "");
    let of = ["same_as = [{ impression = \"1.3\" }]", &open.clone(), &open];
    let told = message(&of, "");
    assert!(told.contains("\"For Marta, at the Window\""), "{told}");
    // A mark known by its number, of which only the text is private.
    let numbered = "marks = [{ kind = \"collector\", number = \"L 12\", text = \"Bell\", private = [\"text\"] }]";
    let told = message(&[numbered, numbered], "");
    assert!(!told.contains("Bell") && told.contains("l 12"), "{told}");
}

/// Private names of some records may occur in a public text of another, overlapping each other.
#[test]
fn private_texts_that_overlap_leave_no_part_behind() {
    let inscribed = "marks = [{ kind = \"inscription\", text = \"To Anna Bell of Quay House\" }]";
    let private = |name: &str| {
        format!(
            "status = \"untraced\"\nprovenance = [{{ owner = {{ name = \"{name}\", private = [\"name\"] }} }}]"
        )
    };
    let of = [
        inscribed,
        inscribed,
        &private("Bell"),
        &private("Anna Bell"),
        &private("Bell of Quay"),
    ];
    let told = message(&of, "");
    assert!(told.contains("\"To (private) House\""), "{told}");
}

/// Every reason that two records give, worded.
fn worded(one: &str, other: &str) -> String {
    let other = format!("maybe_same_as = [{{ impression = \"1.1\" }}]\n{other}");
    let (catalogue, studies) = studied(&[GROUND, &records(&[one, &other])]);
    let pairs = all_pairs(&catalogue, &studies);
    worded_pair(&catalogue, &studies, &pairs[0])
}

fn worded_pair(catalogue: &Catalogue, studies: &Studies, pair: &RecordPair) -> String {
    let reasons = pair.reasons.iter().map(|reason| {
        let words = keyblock::audit::same_sheet::reason(catalogue, studies, &pair.records, reason);
        format!("{:?}: {words}\n", reason.bearing)
    });
    reasons.collect()
}

#[test]
fn reasons_are_worded_for_a_cataloguer() {
    let seen =
        |date: &str| format!("sightings = [{{ date = \"{date}\", basis = \"first-hand\" }}]");
    let alike = r#"
kind = "edition"
exhibited = [{ exhibition = "first", at = "no. 7" }]
numbering = "12/50"
identified = { state = "moonlit", printing = "later" }
observed = { moon = "present", crack = "edge" }
sheet = { size = [310, 425], image = [212, 301], platemark = [220, 310], paper = "laid-paper" }
marks = [
  { kind = "collector", text = "R T", whose = "collector" },
  { kind = "inscription", text = "For Marta, at the window" },
]
former_accessions = [{ holder = "old-museum", number = "B 31" }]
provenance = [
  { owner = "other-collector", to = "1930" },
  { agent = "house", from = "1938-05-12", lot = "44" },
]
"#;
    insta::assert_snapshot!(worded(alike, alike), @r#"
    Proves: both are numbered 12 of 50
    Proves: both have the number B 31 with The Old Museum
    Proves: both bear the collector's mark of The Collector
    Proves: both are inscribed "For Marta, at the window"
    Proves: both were lot 44 at The House, 1938-05-12
    Proves: both were no. 7 in "First"
    Speaks: both belonged to The Other Collector
    Speaks: the sheets measure 310 × 425 mm on both, as no third does
    Fits: the image measures 212 × 301 mm on both
    Fits: the platemark measures 220 × 310 mm on both
    Fits: both are taken to be state ii
    Fits: both are taken to be of printing `later`
    Fits: both are on `laid-paper`
    Fits: the same was seen at `moon`, `crack`
    "#);
    let lost = "status = \"untraced\"\nprovenance = [{ owner = \"collector\", to = \"1940\" }]";
    let sale = "status = \"untraced\"\nprovenance = [{ agent = \"house\", from = \"1938-05-12\" }]";
    let later = format!(
        "holder = \"owner-a\"\nprovenance = [{{ agent = \"house\", from = \"1938-05-12\" }}, {{ owner = \"collector\" }}]\n{}",
        seen("1990")
    );
    let held = "holder = \"museum\"";
    insta::assert_snapshot!(
        [
            worded(lost, &later),
            worded(sale, &later),
            worded(sale, &format!("holder = \"owner-a\"\n{}", seen("1990"))),
            worded(held, &format!("{held}\naccession = \"1951.7\"")),
        ]
        .concat(),
        @r#"
    Proves: The Collector is the last who is known to have had 1.1, and had 1.2
    Proves: 1.1 was last heard of at The House, 1938-05-12, and 1.2 was there too
    Speaks: 1.1 is last heard of in 1938, 1.2 first in 1990
    Speaks: both are with The Museum, and only one of them has a number there
    "#
    );
    let one = format!(
        r#"
holder = "museum"
accession = "1951.7"
kind = "edition"
numbering = "12/50"
identified = {{ state = "dark", printing = "own" }}
observed = {{ moon = "absent", sky = "even", height = 212 }}
sheet = {{ size = [310, 425], image = [212, 301], platemark = [220, 310], paper = "laid-paper" }}
marks = [{{ kind = "stamp", text = "estate" }}, {{ kind = "collector", whose = "collector" }}]
exhibited = [{{ exhibition = "first", at = "no. 7" }}]
provenance = [{{ agent = "house", from = "1938-05-12", lot = "44" }}]
{}
"#,
        seen("1940")
    );
    let other = format!(
        r#"
holder = "museum"
accession = "1951.8"
kind = "counterproof"
identified = {{ state = "moonlit", printing = "later" }}
observed = {{ moon = "present", sky = "wiped", height = 220 }}
sheet = {{ size = [320, 435], image = [212, 308], platemark = [240, 310], paper = "wove-paper" }}
without = ["stamp", "collector", "numbering"]
exhibited = [{{ exhibition = "first", at = "no. 8" }}]
provenance = [{{ agent = "house", from = "1938-05-12", lot = "45" }}]
{}
"#,
        seen("2019")
    );
    insta::assert_snapshot!(worded(&one, &other), @r#"
    Speaks: both were at The House, 1938-05-12
    Weighs: the image measures 212 × 301 and 212 × 308 mm, no further apart than paper explains
    Weighs: 1.1 is recorded as `edition`, 1.2 as `counterproof`
    Weighs: 1.1 is on `laid-paper`, 1.2 on `wove-paper`
    Contradicts: the platemark measures 220 × 310 and 240 × 310 mm, further apart than paper explains
    Contradicts: at `sky` `even` was seen on 1.1, `wiped` on 1.2
    Contradicts: at `height` 212 mm was seen on 1.1, 220 mm on 1.2
    Contradicts: one is numbered 12/50, and the other, looked at later, is not
    Excludes: the sheets measure 310 × 425 and 320 × 435 mm, the one measured later larger in height and width
    Excludes: 1.1 is taken to be state i, 1.2 state ii
    Excludes: 1.1 is taken to be of printing `own`, 1.2 of printing `later`
    Excludes: at `moon` `absent` was seen on 1.1, `present` on 1.2
    Excludes: one bears the stamp "estate", and the other, looked at later, does not
    Excludes: one bears the collector's mark, and the other, looked at later, does not
    Excludes: The Museum has them under two numbers, 1951.7 and 1951.8
    Excludes: they were lots 44 and 45 at The House, 1938-05-12
    Excludes: they were nos. 7 and 8 in "First"
    "#);
    insta::assert_snapshot!(
        [
            worded("holder = \"museum\"", "holder = \"library\""),
            worded("status = \"destroyed\"", ""),
            worded("", "goes_with = [\"1.1\"]"),
            worded("numbering = \"1/50\"", "numbering = \"2/50\""),
            worded(
                "exhibited = [{ exhibition = \"first\" }]",
                "exhibited = [{ exhibition = \"second\" }]"
            ),
        ]
        .concat(),
        @r#"
    Excludes: 1.1 was owned by The Museum while 1.2 was owned by The Library
    Excludes: one of them is destroyed, the other is not
    Excludes: the records speak of them as two
    Excludes: 1.1 is numbered 1/50, 1.2 2/50
    Excludes: they were shown at the same time in "First" and in "Second"
    "#
    );
}

/// Numbers that look random and are the same at every run (Lehmer's generator, Park and Miller 1988).
struct Lehmer(u64);

impl Lehmer {
    fn below(&mut self, end: u64) -> u64 {
        self.0 = self.0 * 48_271 % 2_147_483_647;
        self.0 % end
    }

    fn pick<'a>(&mut self, of: &[&'a str]) -> &'a str {
        of[usize::try_from(self.below(of.len() as u64)).unwrap()]
    }

    /// A record of a few facts that others may share or contradict.
    fn record(&mut self) -> String {
        let facts = [
            self.pick(&["", "numbering = \"3/50\"\n", "numbering = \"4/50\"\n"]),
            self.pick(&[
                "",
                "",
                "holder = \"museum\"\n",
                "holder = \"library\"\n",
                "holder = \"owner-a\"\n",
            ]),
            self.pick(&[
                "",
                "identified = { state = \"dark\" }\n",
                "identified = { state = \"moonlit\", printing = \"later\" }\n",
            ]),
            self.pick(&[
                "",
                "sheet = { size = [310, 425] }\n",
                "sheet = { size = [340, 470] }\n",
            ]),
            self.pick(&[
                "",
                "",
                "marks = [{ kind = \"collector\", whose = \"collector\" }]\n",
            ]),
            self.pick(&[
                "",
                "provenance = [{ owner = \"collector\", from = \"1930\", to = \"1940\" }]\n",
                "provenance = [{ owner = \"other-collector\", from = \"1935\", to = \"1950\" }]\n",
            ]),
        ];
        let status = self.pick(&["located", "untraced", "destroyed"]);
        format!("status = \"{status}\"\n{}", facts.concat())
    }
}

/// The result for two records, computed without the study.
fn clash(one: &str, other: &str) -> bool {
    let both = |a: &str, b: &str| {
        one.contains(a) && other.contains(b) || one.contains(b) && other.contains(a)
    };
    both("\"3/50\"", "\"4/50\"")
        || both("\"dark\"", "\"moonlit\"")
        || both("\"destroyed\"", "\"located\"")
        || both("owner = \"collector\"", "owner = \"other-collector\"")
}

#[test]
fn no_suggestion_is_excluded_and_the_order_of_the_records_does_not_matter() {
    let mut chance = Lehmer(7);
    let mut suggested = 0;
    for _ in 0..12 {
        let of: Vec<String> = (0..8).map(|_| chance.record()).collect();
        let forwards: Vec<&str> = of.iter().map(String::as_str).collect();
        let backwards: Vec<&str> = forwards.iter().rev().copied().collect();
        let there = pairs_of(&forwards);
        assert_eq!(there, pairs_of(&forwards), "not the same twice");
        let back = pairs_of(&backwards);
        let bearings = |pair: &RecordPair| -> Vec<Bearing> {
            pair.reasons.iter().map(|r| r.bearing).collect()
        };
        let mut turned: Vec<([u32; 2], Vec<Bearing>)> = back
            .iter()
            .map(|pair| {
                let [a, b] = pair.records.each_ref().map(|key| 9 - key.number);
                ([b, a], bearings(pair))
            })
            .collect();
        turned.sort();
        let there: Vec<_> = there
            .iter()
            .map(|pair| {
                (
                    pair.records.each_ref().map(|key| key.number),
                    bearings(pair),
                )
            })
            .collect();
        assert_eq!(there, turned);
        for ([a, b], _) in &there {
            let record = |n: &u32| forwards[*n as usize - 1];
            assert!(!clash(record(a), record(b)), "{}\n{}", record(a), record(b));
            suggested += 1;
        }
    }
    assert!(
        suggested > 10,
        "only {suggested} suggestions: too few to mean anything"
    );
}

/// An edition of one size, bought from one dealer, given by one collector: nothing distinguishes its sheets,
/// and no two are compared.
#[test]
fn an_edition_is_not_compared_each_with_each() {
    let sheet = |n: usize| {
        format!(
            "numbering = \"{n}/900\"\nsheet = {{ size = [340, 470] }}\nidentified = {{ state = \"moonlit\" }}\n\
             provenance = [{{ owner = \"collector\", to = \"1938\" }}, {{ agent = \"house\", from = \"1938-05-12\" }}]"
        )
    };
    let of: Vec<String> = (1..=300).map(sheet).collect();
    let of: Vec<&str> = of.iter().map(String::as_str).collect();
    assert_eq!(pairs_of(&of), []);
}
