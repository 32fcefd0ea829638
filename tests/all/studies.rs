//! The studies of a catalogue, checked against docs/definitions.md.

use keyblock::model::key::{ImpressionKey, Key};
use keyblock::model::occurrence::{MentionRole, RecordId};
use keyblock::study::census::{Groups, Row, Sheets};
use keyblock::study::chronology::EventKind;
use keyblock::study::concordance;
use keyblock::study::occasions;

use crate::small::{studied, studied_for_readers};

fn key(text: &str) -> Key {
    text.parse().unwrap()
}

fn design(name: &str, toml: &str) -> String {
    format!("-- records/designs/{name}/design.toml\ntitles = [{{ text = \"A Quay\" }}]\n{toml}\n")
}

/// Impressions of design 1, each given as what follows its status.
fn sheets(records: &[&str]) -> String {
    let records: Vec<String> = (1..)
        .zip(records)
        .map(|(n, toml)| {
            format!("-- records/designs/1/impressions/{n}.toml\nstatus = \"located\"\n{toml}\n")
        })
        .collect();
    records.concat()
}

fn exactly(at_least: usize, at_most: usize) -> Sheets {
    Sheets {
        at_least,
        at_most,
        exact: true,
    }
}

// Order and numerals.

#[test]
fn designs_stand_by_number_as_readers_count() {
    let records: Vec<String> = [("c", "10"), ("b", "2a"), ("a", "2"), ("z", "1")]
        .into_iter()
        .map(|(name, number)| design(name, &format!("number = \"{number}\"")))
        .chain([design("q", "number = \"R 1\"\nsort = \"0\"")])
        .collect();
    let literals: Vec<&str> = records.iter().map(String::as_str).collect();
    let (_, studies) = studied(&literals);
    let order: Vec<&str> = studies.order.keys().iter().map(Key::as_str).collect();
    assert_eq!(order, ["q", "z", "a", "b", "c"]);
    assert_eq!(
        studies.order.neighbours(&key("z")),
        (Some(&key("q")), Some(&key("a")))
    );
}

fn numerals(states: &str) -> Vec<(String, String)> {
    let (_, studies) = studied(&[&design("1", &format!("states = [{states}]"))]);
    let numerals = &studies.designs[&key("1")].numerals;
    numerals
        .iter()
        .map(|(key, numeral)| (key.to_string(), numeral.to_string()))
        .collect()
}

fn pairs(expected: &[(&str, &str)]) -> Vec<(String, String)> {
    expected
        .iter()
        .map(|(a, b)| ((*a).to_owned(), (*b).to_owned()))
        .collect()
}

#[test]
fn inserting_a_state_moves_numerals_and_keeps_keys() {
    assert_eq!(numerals("{ key = \"a\" }"), pairs(&[("a", "only state")]));
    assert_eq!(
        numerals("{ key = \"a\" }, { key = \"c\" }"),
        pairs(&[("a", "i/ii"), ("c", "ii/ii")])
    );
    assert_eq!(
        numerals("{ key = \"a\" }, { key = \"b\" }, { key = \"c\" }"),
        pairs(&[("a", "i/iii"), ("b", "ii/iii"), ("c", "iii/iii")])
    );
}

#[test]
fn a_withdrawn_state_leaves_the_numerals() {
    assert_eq!(
        numerals("{ key = \"a\" }, { key = \"b\", standing = \"withdrawn\" }, { key = \"c\" }"),
        pairs(&[("a", "i/ii"), ("c", "ii/ii")])
    );
}

#[test]
fn what_a_state_changed_is_told_against_the_one_it_follows() {
    let (_, studies) = studied(&[&design(
        "1",
        "points = [{ key = \"moon\", ask = \"A moon?\", kind = \"presence\", rests_on = \"matrix\" },\n\
         { key = \"lamps\", ask = \"How many?\", kind = \"count\", rests_on = \"matrix\" }]\n\
         states = [{ key = \"a\", shows = { moon = \"absent\" } },\n\
         { key = \"gone\", standing = \"withdrawn\", shows = { moon = \"present\" } },\n\
         { key = \"b\", shows = { moon = \"present\", lamps = 3 } },\n\
         { key = \"c\", follows = [\"a\", \"b\"], shows = { moon = \"absent\" } }]",
    )]);
    let changes = &studies.designs[&key("1")].changes;
    let told = |state: &str| -> Vec<(String, Vec<String>)> {
        changes[&key(state)]
            .iter()
            .map(|c| {
                let points = c.changed.iter().map(|p| p.point.to_string()).collect();
                (c.follows.to_string(), points)
            })
            .collect()
    };
    assert_eq!(told("a"), []);
    let both = vec!["moon".to_owned(), "lamps".to_owned()];
    assert_eq!(told("b"), [("a".to_owned(), both)]);
    assert_eq!(
        told("c"),
        [
            ("a".to_owned(), vec![]),
            ("b".to_owned(), vec!["moon".to_owned()])
        ]
    );
    let new = &changes[&key("b")][0].changed[1];
    assert!(new.before.is_empty() && !new.tells_apart);
}

// The census.

fn sheets_of(records: &[&str]) -> Sheets {
    let (_, studies) = studied(&[&design("1", RUNS), &sheets(records)]);
    studies.designs[&key("1")].census.sheets
}

const RUNS: &str = "states = [{ key = \"a\" }, { key = \"b\" }]\n\
    printings = [{ key = \"own\", kind = \"artist\", states = \"all\" },\n\
    { key = \"copy\", kind = \"recut\", states = \"all\" },\n\
    { key = \"photo\", kind = \"reproduction\", states = \"all\" }]";

#[test]
fn records_of_one_sheet_are_counted_once() {
    assert_eq!(sheets_of(&["", "", ""]), exactly(3, 3));
    let same = "same_as = [{ impression = \"1.1\" }]";
    assert_eq!(sheets_of(&["", same, ""]), exactly(2, 2));
}

#[test]
fn withdrawn_records_recuts_and_reproductions_are_no_sheets() {
    assert_eq!(
        sheets_of(&[
            "standing = \"withdrawn\"",
            "identified = { printing = \"copy\" }",
            "identified = { printing = [\"copy\", \"photo\"] }",
            "identified = { printing = [\"own\", \"copy\"] }",
            "identified = { printing = \"copy\", or = [{ printing = \"own\" }] }",
        ]),
        exactly(2, 2)
    );
}

#[test]
fn two_records_join_through_a_third_that_was_withdrawn() {
    let same = "same_as = [{ impression = \"1.3\" }]";
    assert_eq!(
        sheets_of(&[same, same, "standing = \"withdrawn\""]),
        exactly(1, 1)
    );
}

#[test]
fn doubts_open_an_interval_and_a_denial_closes_it() {
    let maybe = "maybe_same_as = [{ impression = \"1.1\" }]";
    assert_eq!(sheets_of(&["", maybe]), exactly(1, 2));
    // Of three in a row the ends are not said to be one: two sheets at the least.
    let next = "maybe_same_as = [{ impression = \"1.2\" }]";
    assert_eq!(sheets_of(&["", maybe, next]), exactly(2, 3));
    let denied =
        "maybe_same_as = [{ impression = \"1.1\" }]\nnot_same_as = [{ impression = \"1.1\" }]";
    assert_eq!(sheets_of(&["", denied]), exactly(2, 2));
}

#[test]
fn a_denial_between_any_records_of_two_groups_holds_for_the_groups() {
    let records = [
        "",
        "same_as = [{ impression = \"1.1\" }]\nmaybe_same_as = [{ impression = \"1.3\" }]",
        "not_same_as = [{ impression = \"1.1\" }]",
    ];
    assert_eq!(sheets_of(&records), exactly(2, 2));
}

#[test]
fn a_sheet_that_is_one_of_two_states_stands_in_both_rows() {
    let (_, studies) = studied(&[
        &design("1", RUNS),
        &sheets(&[
            "identified = { state = [\"a\", \"b\"] }",
            "identified = { state = \"b\" }\nmaybe_same_as = [{ impression = \"1.3\" }]",
            "identified = { state = \"b\" }",
            "",
        ]),
    ]);
    assert_eq!(
        told(&studies.designs[&key("1")].census.by.state),
        [
            (Some("a"), exactly(0, 1)),
            (Some("b"), exactly(1, 3)),
            (None, exactly(1, 1))
        ]
    );
}

fn told(rows: &[Row<Key>]) -> Vec<(Option<&str>, Sheets)> {
    rows.iter()
        .map(|row| (row.key.as_ref().map(Key::as_str), row.sheets))
        .collect()
}

#[test]
fn states_and_printings_cross_where_they_can_be_one_sheet() {
    let runs = "states = [{ key = \"a\" }, { key = \"b\" }]\n\
        printings = [{ key = \"own\", kind = \"artist\", states = [\"a\"] },\n\
        { key = \"late\", kind = \"posthumous\", states = [\"b\"] }]";
    let (_, studies) = studied(&[
        &design("1", runs),
        &sheets(&[
            // Either state and either printing, but no own printing of the second state.
            "identified = { state = [\"a\", \"b\"], printing = [\"own\", \"late\"] }",
            "identified = { state = \"b\", printing = \"late\" }",
            // Contradicting statements of one record are shown as they are.
            "identified = { state = \"b\", printing = \"own\" }",
            // The second record of a sheet names the printing too.
            "identified = { state = \"a\" }",
            "identified = { state = \"a\", printing = \"own\" }\nsame_as = [{ impression = \"1.4\" }]",
            "identified = { state = \"a\", or = [{ state = \"b\", printing = \"late\" }] }",
            "",
        ]),
    ]);
    let crossing = &studies.designs[&key("1")].census.by.crossing;
    let told: Vec<(Option<&str>, Option<&str>, Sheets)> = crossing
        .iter()
        .map(|row| {
            let pair = row.key.as_ref().unwrap();
            let state = pair.state.as_ref().map(Key::as_str);
            (state, pair.printing.as_ref().map(Key::as_str), row.sheets)
        })
        .collect();
    assert_eq!(
        told,
        [
            (None, None, exactly(1, 1)),
            (Some("a"), None, exactly(0, 1)),
            (Some("a"), Some("own"), exactly(1, 2)),
            (Some("b"), Some("late"), exactly(1, 3)),
            (Some("b"), Some("own"), exactly(1, 1)),
        ]
    );
}

#[test]
fn rows_tell_nothing_that_a_record_keeps_private() {
    let museum =
        "-- records/holders/museum.toml\nname = \"Museum\"\nkind = \"museum\"\ncountry = \"NO\"\n";
    let (_, studies) = studied_for_readers(&[
        &design("1", RUNS),
        museum,
        &sheets(&[
            "holder = \"museum\"",
            "holder = \"museum\"\nprivate = [\"holder\"]",
        ]),
    ]);
    let census = &studies.designs[&key("1")].census;
    assert_eq!(
        told(&census.by.holder),
        [(Some("museum"), exactly(1, 1)), (None, exactly(1, 1))]
    );
    assert_eq!(census.sheets, exactly(2, 2));
    let mentions = &studies.back_links.holders[&key("museum")];
    assert_eq!(mentions.len(), 1);
}

// Occasions.

/// The years in which the sheets of design 1 were met.
fn years(records: &[&str], more: &str) -> Vec<Vec<i64>> {
    let (catalogue, _) = studied(&[&design("1", RUNS), &sheets(records), more]);
    let groups = Groups::of(&catalogue);
    let sheets = occasions::by_sheet(&catalogue, &groups, &catalogue.designs[&key("1")]);
    let years = |sheet: &occasions::SheetOccasions| sheet.years.iter().copied().collect();
    sheets.iter().map(years).collect()
}

#[test]
fn an_occasion_is_a_year_whatever_recorded_it() {
    let tower = "-- records/exhibitions.toml\n[tower]\ntitle = \"In the Tower\"\ndate = \"1938-06/1938-09\"\n\
        [undated]\ntitle = \"In the Hall\"\n";
    let sale = "{ agent = { name = \"A Saleroom\" }, from = \"1938-05-12\", how = \"sale\" }";
    let bought =
        "{ owner = { name = \"A Buyer\" }, from = \"1938\", to = \"1951\", how = \"purchase\" }";
    let of_one_year = format!(
        "provenance = [{sale}, {bought}]\nsightings = [{{ date = \"1938-05\" }}]\nexhibited = [{{ exhibition = \"tower\" }}]"
    );
    assert_eq!(years(&[&of_one_year], tower), [[1938]]);
    let provenance =
        |entry: &str| format!("provenance = [{{ owner = {{ name = \"A\" }}, {entry} }}]");
    for (entry, met) in [
        ("from = \"1938\", how = \"gift\"", vec![1938]),
        ("from = \"1938\"", vec![]),
        ("how = \"gift\"", vec![]),
        ("to = \"1940\", how = \"gift\"", vec![1940]),
        ("from = \"1931\", to = \"1940\", how = \"gift\"", vec![1931]),
        ("from = \"../1938\", to = \"1940\", how = \"gift\"", vec![]),
        ("to = \"../1938\", how = \"gift\"", vec![]),
        ("from = \"1938/..\", how = \"gift\"", vec![1938]),
        ("from = \"1935~/1938\", how = \"gift\"", vec![1935]),
        ("from = \"193X\", how = \"gift\"", vec![1930]),
        (
            "from = \"1938\", how = \"gift\", this_sheet = \"possible\"",
            vec![],
        ),
        (
            "from = \"1938\", how = \"gift\", this_sheet = \"probable\"",
            vec![1938],
        ),
        (
            "from = \"1938\", how = \"gift\", certainty = \"possible\"",
            vec![1938],
        ),
    ] {
        assert_eq!(years(&[&provenance(entry)], ""), [met], "{entry}");
    }
    assert_eq!(
        years(&["exhibited = [{ exhibition = \"undated\" }]"], tower),
        [Vec::<i64>::new()]
    );
    for (this_sheet, met) in [("possible", vec![]), ("probable", vec![1938])] {
        let shown =
            format!("exhibited = [{{ exhibition = \"tower\", this_sheet = \"{this_sheet}\" }}]");
        assert_eq!(years(&[&shown], tower), [met], "{this_sheet}");
    }
}

#[test]
fn two_records_of_a_sheet_share_their_occasions() {
    let seen = |date: &str| format!("sightings = [{{ date = \"{date}\" }}]");
    let same = "same_as = [{ impression = \"1.1\" }]";
    assert_eq!(
        years(
            &[
                &seen("1938"),
                &format!("{same}\n{}", seen("1938-02")),
                &format!("{same}\n{}", seen("1952")),
                &seen("1938")
            ],
            ""
        ),
        [vec![1938, 1952], vec![1938]]
    );
}

// Editions.

#[test]
fn a_printing_stands_among_the_editions_with_its_known_sheets() {
    let runs = "states = [{ key = \"a\" }]\nprintings = [\
        { key = \"own\", kind = \"artist\", states = \"all\", printed = 9 },\
        { key = \"late\", kind = \"posthumous\", states = \"all\", edition = 3, printed = [{ is = 4 }, { is = 5 }] },\
        { key = \"bare\", kind = \"posthumous\", states = \"all\" },\
        { key = \"none\", kind = \"posthumous\", states = \"all\", edition = 7 }]";
    let records = [
        "identified = { printing = \"own\" }",
        "identified = { printing = [\"own\", \"late\"] }",
        "identified = { printing = \"late\" }",
        "identified = { printing = \"late\" }\nmaybe_same_as = [{ impression = \"1.3\" }]",
        "identified = { printing = \"bare\" }",
    ];
    let (_, studies) = studied(&[&design("1", runs), &sheets(&records)]);
    let editions = &studies.designs[&key("1")].editions;
    let told: Vec<_> = editions
        .iter()
        .map(|e| (e.printing.as_str(), e.declared, e.printed, e.sheets))
        .collect();
    assert_eq!(
        told,
        [
            ("own", None, Some(9), exactly(1, 2)),
            ("late", Some(3), Some(4), exactly(1, 3)),
            ("none", Some(7), None, exactly(0, 0)),
        ]
    );
}

#[test]
fn numbers_met_are_set_against_every_claim() {
    let runs = "states = [{ key = \"a\" }]\n\
        printings = [{ key = \"late\", kind = \"posthumous\", states = \"all\", edition = [{ is = 3 }, { is = 5 }] }]";
    let met = |numbering: &str, more: &str| {
        format!("numbering = \"{numbering}\"\nidentified = {{ printing = \"late\" }}\n{more}")
    };
    let records = [
        met("2/5", ""),
        met("2/5", ""),
        met("4", ""),
        met("4", "same_as = [{ impression = \"1.3\" }]"),
        met("7/5", ""),
        met("AP 1/2", ""),
    ];
    let records: Vec<&str> = records.iter().map(String::as_str).collect();
    let (_, studies) = studied(&[&design("1", runs), &sheets(&records)]);
    let edition = &studies.designs[&key("1")].editions[0];
    assert_eq!(edition.declared, Some(3));
    assert_eq!(edition.claims, [3, 5]);
    assert_eq!(edition.located, [2, 4, 7]);
    assert_eq!(edition.repeated, [2]);
    assert_eq!(edition.outside, [7]);
    assert_eq!(edition.missing(), [1, 3]);
    // The declared size is the numbers found within it and those not found; numbers outside are listed apart.
    assert_eq!(edition.within().collect::<Vec<_>>(), [2]);
    assert_eq!(edition.above().collect::<Vec<_>>(), [4, 7]);
}

// Concordance, chronology, mentions.

const WORKS: &str = "-- records/literature.bib\n\
    @book{late, author = {Able, A.}, title = {Later List}, year = {1980}}\n\
    @book{early, author = {Baker, B.}, title = {First List}, year = {1950}}\n";

#[test]
fn the_concordance_runs_both_ways() {
    let one = design(
        "1",
        "literature = [{ cite = \"early\", number = \"12\" }, { cite = \"late\", at = \"p. 3\" }]\n\
         states = [{ key = \"a\" }, { key = \"b\", literature = [{ cite = \"early\", number = \"II\", relation = \"covers-ours\" }] }]",
    );
    let two = design(
        "2",
        "literature = [{ cite = \"early\", number = \"2\" }, { cite = \"late\", number = \"7\" }]",
    );
    let (_, studies) = studied(&[&one, &two, WORKS]);
    let table = &studies.concordance;
    assert_eq!(table.works, [key("early"), key("late")]);
    let ours: Vec<(&str, &concordance::DesignPart)> = table
        .rows
        .iter()
        .map(|r| (r.ours.design.as_str(), &r.ours.part))
        .collect();
    assert_eq!(
        ours,
        [
            ("1", &concordance::DesignPart::Whole),
            ("1", &concordance::DesignPart::State(key("b"))),
            ("2", &concordance::DesignPart::Whole)
        ]
    );
    let theirs: Vec<(Option<&str>, Option<&str>, &str)> = table.reverse[&key("early")]
        .iter()
        .map(|r| {
            (
                r.number.as_deref(),
                r.part.as_deref(),
                r.ours.design.as_str(),
            )
        })
        .collect();
    assert_eq!(
        theirs,
        [
            (Some("2"), None, "2"),
            (Some("12"), None, "1"),
            (Some("12"), Some("II"), "1")
        ]
    );
}

#[test]
fn events_stand_by_the_first_day_they_can_be() {
    let record = design(
        "1",
        "date = \"1927\"\nstates = [{ key = \"b\", date = \"1927-05\" }, { key = \"a\", date = \"1927-05\" }]\n\
         printings = [{ key = \"own\", kind = \"artist\", states = \"all\", date = \"../1926\" }]",
    );
    let (_, studies) = studied(&[&record]);
    let events: Vec<&EventKind> = studies.chronology.iter().map(|e| &e.what).collect();
    let state = |name: &str| EventKind::State {
        design: key("1"),
        state: key(name),
    };
    assert_eq!(
        events,
        [
            &EventKind::Born(key("artist")),
            &EventKind::Printing {
                design: key("1"),
                printing: key("own")
            },
            &EventKind::Design(key("1")),
            &state("b"),
            &state("a"),
            &EventKind::Died(key("artist")),
        ]
    );
}

#[test]
fn every_record_named_knows_who_names_it() {
    let museum = "-- records/holders/museum.toml\nname = \"Museum\"\nkind = \"museum\"\n";
    let (_, studies) = studied_for_readers(&[
        &design(
            "1",
            "related = [{ design = \"2\" }]\nmakers = [{ person = \"artist\" }]",
        ),
        &design("2", ""),
        museum,
        WORKS,
        &sheets(&[
            "holder = \"museum\"\nprovenance = [{ owner = \"artist\" }, { owner = \"museum\" }]",
            "maybe_same_as = [{ impression = \"1.1\" }]\nliterature = [{ cite = \"late\", at = \"p. 9\" }]",
            "publish = false\nholder = \"museum\"",
        ]),
    ]);
    let links = &studies.back_links;
    let impression = |n: u32| ImpressionKey {
        design: key("1"),
        number: n,
    };
    let parts =
        |mentions: &[keyblock::study::back_links::Mention]| -> Vec<(RecordId, MentionRole)> {
            mentions.iter().map(|m| (m.from.clone(), m.role)).collect()
        };
    assert_eq!(
        parts(&links.holders[&key("museum")]),
        [
            (RecordId::Impression(impression(1)), MentionRole::Holder),
            (RecordId::Impression(impression(1)), MentionRole::Owner)
        ]
    );
    assert_eq!(
        parts(&links.people[&key("artist")]),
        [
            (RecordId::Catalogue, MentionRole::Artist),
            (RecordId::Design(key("1")), MentionRole::Maker),
            (RecordId::Impression(impression(1)), MentionRole::Owner)
        ]
    );
    assert_eq!(
        parts(&links.designs[&key("2")]),
        [(RecordId::Design(key("1")), MentionRole::Related)]
    );
    assert_eq!(
        parts(&links.impressions[&impression(1)]),
        [(
            RecordId::Impression(impression(2)),
            MentionRole::MaybeSameSheet
        )]
    );
    assert_eq!(links.works[&key("late")][0].at.as_deref(), Some("p. 9"));
}

// Marks.

/// The users of a mark, with dates and sheets: "ada 1930/1940 1.1".
fn users(records: &[&str]) -> Vec<Vec<String>> {
    let people =
        "-- records/people/ada.toml\nname = \"Ada\"\n-- records/people/ben.toml\nname = \"Ben\"\n";
    let printing = "states = [{ key = \"only\" }]\nprintings = [{ key = \"late\", kind = \"posthumous\", date = \"1956\", printer = \"ben\", states = \"all\" }]";
    let (_, studies) = studied_for_readers(&[&design("1", printing), people, &sheets(records)]);
    let user = |user: &keyblock::study::marks::MarkUser| {
        let when = user.when.as_ref().map_or("-", |date| date.as_str());
        let sheets: Vec<String> = user.sheets.iter().map(ToString::to_string).collect();
        format!("{} {when} {}", user.key, sheets.join(" "))
    };
    let of_mark = |mark: &keyblock::study::marks::SharedMark| mark.users.iter().map(user).collect();
    studies.shared_marks.iter().map(of_mark).collect()
}

/// Common practice, no source: a stamp is still used after the death of the person it names.
#[test]
fn a_mark_that_several_used_is_told_with_each_user_and_time() {
    let stamp = |more: &str| format!("{{ kind = \"stamp\", text = \"A\", {more} }}");
    let of = |more: &str, rest: &str| format!("marks = [{}]\n{rest}", stamp(more));
    let had = "provenance = [{ owner = \"ada\", from = \"1930\", to = \"1940\" }]";
    let printed = "identified = { printing = \"late\" }";
    assert_eq!(
        users(&[
            &of("applied_by = \"ben\", applied = \"1960\"", ""),
            &of("applied_by = \"ada\"", had),
            &of("applied_by = \"ben\"", printed),
        ]),
        [["ada 1930/1940 1.2", "ben 1956/1960 1.1 1.3"]]
    );
    let apart = "{ kind = \"stamp\", text = \"B\", applied_by = \"ben\" }";
    let none: [Vec<String>; 0] = [];
    for other in [
        of("applied_by = \"ada\"", ""),
        of("whose = \"ben\"", ""),
        format!("marks = [{apart}]"),
        of("applied_by = \"ben\"", "publish = false"),
    ] {
        assert_eq!(
            users(&[&of("applied_by = \"ada\"", ""), &other]),
            none,
            "{other}"
        );
    }
}

#[test]
fn collectors_of_the_same_initials_share_no_mark() {
    let mark = |more: &str| format!("marks = [{{ kind = \"collector\", text = \"A\", {more} }}]");
    let found = |one: &str, two: &str| users(&[&mark(one), &mark(two)]).len();
    assert_eq!(found("whose = \"ada\"", "whose = \"ben\""), 0);
    assert_eq!(
        found("whose = \"ada\"", "whose = \"ada\", applied_by = \"ben\""),
        1
    );
    let number = "number = \"M. 1\"";
    assert_eq!(
        found(
            &format!("whose = \"ada\", {number}"),
            &format!("whose = \"ben\", {number}")
        ),
        1
    );
}
