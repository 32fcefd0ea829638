//! Series: their pages, a design in several, what is missing, the sheets by the printing's series, and what is private.

use std::collections::BTreeMap;

use keyblock::model::codes::Code;
use keyblock::model::series_place::SeriesRef;
use keyblock::study::census::Sheets;

use crate::concealed::site_of;
use crate::program::keyblock;
use crate::small::{audit_lines, codes, lay_down, studied};

const HARBOUR: &str = r#"
-- records/people/publisher.toml
name = "Petra Publisher"
-- records/series/quays.toml
titles = [
  { text = "The Quays", lang = "en" },
  { text = "Набережні", lang = "uk", kind = "original" },
  { text = "Harbour Views", lang = "en", kind = "former" },
]
date = "1924/1930"
number = [{ is = 4, cite = "document:prospectus", at = "p. 1" }, { is = 5, basis = "report" }]
-- records/series/quays.md
Named by [the publisher](person:publisher).
-- records/series/portfolio.toml
title = "Two Woodcuts"
publisher = "publisher"
date = "1956"
issued = "portfolio"
number = 2
note = "The case is grey."
-- records/documents/prospectus.toml
kind = "leaflet"
title = "Prospectus"
tells = [{ of = "series:quays", says = "Four prints were announced." }]
-- records/designs/1/design.toml
titles = [{ text = "The Ferry" }]
series = { series = "quays", position = "1" }
states = [{ key = "only" }]
printings = [
  { key = "own", name = "Own printing", kind = "artist", states = "all" },
  { key = "late", name = "Late printing", states = "all", edition = 65, series = { series = "portfolio", position = "2" } },
]
-- records/designs/1/design.md
Part of [](series:quays).
-- records/designs/1/impressions/1.toml
status = "located"
identified = { state = "only", printing = "own" }
-- records/designs/1/impressions/2.toml
status = "located"
identified = { state = "only", printing = "late" }
goes_with = ["2.1"]
-- records/designs/1/impressions/3.toml
status = "untraced"
identified = { state = "only", printing = ["own", "late"] }
-- records/designs/1/impressions/4.toml
status = "untraced"
-- records/designs/2/design.toml
titles = [{ text = "The Crane" }]
series = [{ series = "quays", position = "3" }, { name = "Tall Things", position = "A" }]
printings = [{ key = "late", name = "Late printing", kind = "posthumous", series = { series = "portfolio", position = "1" } }]
-- records/designs/2/impressions/1.toml
status = "located"
identified = { printing = "late" }
"#;

fn page<'s>(site: &'s BTreeMap<String, Vec<u8>>, address: &str) -> &'s str {
    text(site, &format!("{address}index.html"))
}

fn text<'s>(site: &'s BTreeMap<String, Vec<u8>>, path: &str) -> &'s str {
    let file = site.get(path).unwrap_or_else(|| panic!("no {path}"));
    std::str::from_utf8(file).unwrap()
}

fn all_in(html: &str, told: &[&str]) {
    for told in told {
        assert!(html.contains(told), "no {told:?} in {html}");
    }
}

#[test]
fn a_series_has_a_page_with_its_order_and_what_is_missing() {
    let site = site_of(&[HARBOUR]);
    let html = page(&site, "series/quays/");
    all_in(
        html,
        &[
            "<i>The Quays</i>",
            "Набережні",
            "formerly <i>Harbour Views</i>",
            "1924 to 1930",
            "2 of 4 designs known. Nos 2 and 4 are not known.",
            "Prospectus",
            "Four prints were announced.",
            ">the publisher</a>",
            "href=\"../../series/\"",
        ],
    );
    let places = ["<bdi>1.</bdi>", "<bdi>3.</bdi>"].map(|place| html.find(place).unwrap());
    assert!(places[0] < places[1]);
    let of_design = page(&site, "design/1/");
    all_in(
        of_design,
        &[
            "href=\"../../series/quays/\"",
            "The Quays</i></a>, no. 1",
            "Published in <a href=\"../../series/portfolio/\"><i>Two Woodcuts</i></a>, no. 2",
        ],
    );
    all_in(
        page(&site, "design/2/"),
        &["The Quays</i></a>, no. 3", "Tall Things</a></i>, no. A"],
    );
    all_in(
        page(&site, "person/publisher/"),
        &["Series published", "href=\"../../series/portfolio/\""],
    );
    all_in(page(&site, "chronology/"), &["Series published"]);
}

/// Of the portfolio only the impressions of its printings count: by hand, 1.2 and 2.1 for certain, 1.3 perhaps; 1.1 is of
/// another printing, and of 1.4 no printing is known. The series by designs alone counts all five.
#[test]
fn the_sheets_of_a_series_are_those_of_the_printings_that_came_out_in_it() {
    let series = studied(&[HARBOUR]).1.series;
    let of = |key: &str| &series[&SeriesRef::Record(key.parse().unwrap())];
    let sheets = |at_least, at_most| Sheets {
        at_least,
        at_most,
        exact: true,
    };
    let portfolio = of("portfolio");
    assert_eq!(portfolio.census.sheets, sheets(2, 3));
    let by_design = portfolio
        .members
        .iter()
        .map(|m| (m.design.as_str(), m.sheets));
    assert_eq!(
        by_design.collect::<Vec<_>>(),
        [("2", sheets(1, 1)), ("1", sheets(1, 2))]
    );
    let statuses = portfolio.census.by.status.iter().map(|row| row.sheets);
    assert_eq!(statuses.collect::<Vec<_>>(), [sheets(2, 2), sheets(0, 1)]);
    assert_eq!(of("quays").census.sheets, sheets(5, 5));
    let named = &series[&SeriesRef::Named("Tall Things".to_owned())];
    assert_eq!(named.census.sheets, sheets(1, 1));

    let site = site_of(&[HARBOUR]);
    let html = page(&site, "series/portfolio/");
    all_in(
        html,
        &[
            "Portfolio",
            "Petra Publisher",
            "The case is grey.",
            "#printing-late\">Late printing</a>",
            "<td class=\"figure\">65</td>",
            "2–3",
            "Sets kept together",
            "Complete",
        ],
    );
    assert!(!html.contains("designs known"), "nothing is missing");
    let counted = |name: &str| {
        let dir = lay_down(&[HARBOUR]);
        let dir = dir.path().to_str().unwrap();
        let done = keyblock(&["census", "--series", name, "--in", dir, "--json"]);
        serde_json::from_str::<serde_json::Value>(&done.out).unwrap()
    };
    for name in ["portfolio", "Two Woodcuts"] {
        let census = counted(name);
        assert_eq!(census["series"], "portfolio");
        assert_eq!(census["sheets"]["at_least"], 2);
        assert_eq!(census["sheets"]["at_most"], 3);
    }
    let table = text(&site, "census/census.csv");
    assert!(table.contains(",portfolio,all,"), "{table}");
}

/// One sheet may be another: where it is, the portfolio has one impression, not two.
#[test]
fn doubts_on_one_sheet_lower_the_count_of_a_series() {
    let doubted = HARBOUR.replace(
        "identified = { state = \"only\", printing = [\"own\", \"late\"] }",
        "identified = { state = \"only\", printing = \"late\" }\nmaybe_same_as = [{ impression = \"1.2\" }]",
    );
    let series = studied(&[&doubted]).1.series;
    let portfolio = &series[&SeriesRef::Record("portfolio".parse().unwrap())];
    let sheets = portfolio.census.sheets;
    assert_eq!((sheets.at_least, sheets.at_most), (2, 3));
}

#[test]
fn a_series_is_found_cited_and_given_as_data() {
    let site = site_of(&[HARBOUR]);
    let record: serde_json::Value =
        serde_json::from_str(text(&site, "series/quays/linked-art.json")).unwrap();
    assert_eq!(record["type"], "Set");
    let design: serde_json::Value =
        serde_json::from_str(text(&site, "design/1/linked-art.json")).unwrap();
    let member_of = design["member_of"].as_array().unwrap();
    let ids = member_of.iter().map(|set| set["id"].as_str().unwrap());
    let ids: Vec<&str> = ids.collect();
    assert_eq!(ids.len(), 2);
    assert!(ids.contains(&record["id"].as_str().unwrap()));
    let table = text(&site, "data/series.csv");
    assert!(table.contains("quays,The Quays,"), "{table}");
    let places = text(&site, "data/series-places.csv");
    assert!(places.contains("1/late"), "{places}");
    assert!(text(&site, "sitemap.xml").contains("/series/quays/"));
    let index = text(&site, "resolve/index.json");
    assert!(index.contains("Two Woodcuts"), "{index}");

    let dir = lay_down(&[HARBOUR]);
    let dir = dir.path().to_str().unwrap();
    let found = keyblock(&["resolve", "Two Woodcuts", "--in", dir, "--json"]);
    let found: serde_json::Value = serde_json::from_str(&found.out).unwrap();
    let reading = &found["results"][0]["readings"][0];
    assert_eq!(
        (&reading["kind"], &reading["key"]),
        (&"series".into(), &"portfolio".into())
    );
}

#[test]
fn a_series_is_renamed_with_everything_that_names_it() {
    let dir = lay_down(&[HARBOUR]);
    let at = dir.path();
    let done = keyblock(&[
        "rename",
        "series",
        "quays",
        "wharves",
        "--in",
        at.to_str().unwrap(),
    ]);
    assert_eq!(done.code, Some(0), "{}", done.err);
    let read = |path: &str| std::fs::read_to_string(at.join(path)).unwrap();
    assert!(read("records/series/wharves.toml").contains("was = [\"quays\"]"));
    assert!(at.join("records/series/wharves.md").exists());
    assert!(
        read("records/designs/1/design.toml").contains("series = \"wharves\", position = \"1\"")
    );
    assert!(read("records/designs/1/design.md").contains("series:wharves"));
    assert!(read("records/documents/prospectus.toml").contains("series:wharves"));
}

#[test]
fn places_and_numbers_that_clash_are_doubts() {
    let quays = |designs: &str, number: u32| {
        let record =
            format!("-- records/series/quays.toml\ntitle = \"The Quays\"\nnumber = {number}\n");
        codes(&[&record, designs])
    };
    let design = |key: u32, series: &str| {
        format!(
            "-- records/designs/{key}/design.toml\ntitles = [{{ text = \"Print {key}\" }}]\nseries = {series}\n"
        )
    };
    let in_place = |key, place: &str| {
        design(
            key,
            &format!("{{ series = \"quays\", position = \"{place}\" }}"),
        )
    };
    let two = |a: &str, b: &str| in_place(1, a) + &in_place(2, b);
    assert_eq!(quays(&two("1", "2"), 2), []);
    assert_eq!(quays(&two("1", "I"), 2), [Code::SeriesPositionTwice]);
    assert_eq!(
        quays(&two("title", "Title"), 2),
        [Code::SeriesPositionTwice]
    );
    assert_eq!(quays(&two("1", "2"), 1), [Code::SeriesAboveDeclared]);
    let rejected = in_place(2, "1") + "standing = \"rejected\"\nwhy = \"By another hand.\"\n";
    assert_eq!(quays(&(in_place(1, "1") + &rejected), 1), []);
    let named = |name: &str| quays(&design(1, &format!("{{ name = \"{name}\" }}")), 2);
    assert_eq!(named("the quays"), [Code::SeriesNamedByTitle]);
    assert_eq!(named("The Quay"), []);
    let lines = audit_lines(&[
        "-- records/series/quays.toml\ntitle = \"The Quays\"\n",
        &design(1, "{ name = \"The Quays\" }"),
    ]);
    assert!(lines[0].contains("`quays`"), "{lines:?}");
}

/// A print after a painter who died long before is no impossible date; one by him is.
#[test]
fn those_after_whose_works_prints_were_made_may_be_dead() {
    let made = |role: &str| {
        codes(&[&format!(
            "-- records/people/painter.toml\nname = \"A Painter\"\nborn = \"1602\"\ndied = \"1661\"\n\
             -- records/designs/1/design.toml\ntitles = [{{ text = \"The Ferry\" }}]\ndate = \"1803\"\n\
             makers = [{{ person = \"painter\", role = \"{role}\" }}]\n"
        )])
    };
    assert_eq!(made("after"), []);
    assert_eq!(made("designer"), [Code::LifeDates]);
}

/// A printing whose kind is not known is a printing like others, and is named by its name or its key, never by a word for
/// what is not known.
#[test]
fn a_printing_may_be_of_no_known_kind() {
    let site = site_of(&[
        "-- records/designs/1/design.toml\ntitles = [{ text = \"The Ferry\" }]\n\
         printings = [{ key = \"early\", date = \"1927\" }, { key = \"late\", name = \"Late sheets\" }]\n\
         -- records/designs/1/impressions/1.toml\nstatus = \"located\"\nidentified = { printing = \"early\" }\n\
         marks = [{ kind = \"stamp\", note = \"Rubbed; three letters, none of them legible.\" }]\n",
    ]);
    all_in(page(&site, "design/1/"), &["early", "Late sheets"]);
    all_in(
        page(&site, "impression/1.1/"),
        &["early", "Rubbed; three letters, none of them legible."],
    );
    for (path, bytes) in &site {
        if path.ends_with(".html") {
            let html = String::from_utf8_lossy(bytes);
            assert!(!html.contains("kind not recorded"), "{path}");
        }
    }
}
