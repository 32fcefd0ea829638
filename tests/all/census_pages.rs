//! The census on pages: counts as intervals everywhere, the effect of a merger of museums, classes, editions,
//! survival, and the same figures as a table for other programs.

use std::collections::BTreeMap;

use keyblock::exchange::FORMATS;
use keyblock::page::Site;

use crate::pages::{page, site, site_of};
use crate::program::{copy_of, edit, keyblock, text};
use crate::small::lay_down;

/// A design with sheets that count, sheets that count apart, and records that do not count.
pub const FERRY: &str = r#"
-- records/designs/1/design.toml
titles = [{ text = "The Ferry" }]
series = { name = "=The Quays" }
states = [{ key = "dark" }, { key = "moonlit" }]
[[printings]]
key = "own"
kind = "artist"
states = "all"
edition = [{ is = 50, cite = "dorn-1927", at = "p. 4" }, { is = 40, by = "museum" }]
[[printings]]
key = "poster"
kind = "reproduction"
states = "all"
-- records/literature.bib
@book{dorn-1927, author = {Dorn, A.}, title = {Prints}, date = {1927}}
-- records/designs/1/impressions/1.toml
holder = "museum"
status = "located"
kind = "edition"
numbering = "12/50"
identified = { state = "dark", printing = "own" }
sightings = [{ date = "1931" }, { date = "1952" }]
-- records/designs/1/impressions/2.toml
holder = "library"
status = "located"
kind = "trial-proof"
identified = { state = "moonlit" }
sightings = [{ date = "1938-05" }]
shares_sheet = ["1.3"]
-- records/designs/1/impressions/3.toml
holder = "museum"
status = "located"
kind = "counterproof"
sightings = [{ date = "1961" }]
-- records/designs/1/impressions/4.toml
status = "untraced"
numbering = "3/60"
identified = { state = "moonlit", printing = "own" }
maybe_same_as = [{ impression = "1.2" }]
sightings = [{ date = "1938" }]
-- records/designs/1/impressions/5.toml
status = "located"
holder = "library"
identified = { printing = "poster" }
sightings = [{ date = "1990" }]
-- records/designs/1/impressions/6.toml
status = "located"
kind = "on-silk"
holder = "museum"
publish = false
sightings = [{ date = "2001" }, { date = "2003" }]
-- records/vocabulary/kinds.toml
[on-silk]
label = "on silk"
class = "proof"
-- records/holders/museum.toml
name = "Harbour Museum"
kind = "museum"
-- records/holders/library.toml
name = "Town Library"
kind = "library"
"#;

/// The text of a part of a page, without its tags.
pub fn part<'s>(page: &'s str, id: &str) -> &'s str {
    let begins = page
        .find(&format!("id=\"{id}\""))
        .unwrap_or_else(|| panic!("no part {id}"));
    let rest = &page[begins..];
    &rest[..rest.find("</section>").unwrap()]
}

#[test]
fn classes_stand_apart_and_what_does_not_count_is_named() {
    let site = site_of(&[FERRY]);
    let census = page(&site, "design/1/census/");
    assert!(
        census.contains("4 to 5 impressions; 1 counted but not published"),
        "{census}"
    );
    let classes = part(census, "by-class");
    for (class, figure) in [
        ("edition impressions", "1"),
        ("proofs", "2"),
        ("counterproofs", "1"),
    ] {
        let row = format!("<th scope=\"row\">{class}</th><td class=\"figure\">{figure}</td>");
        assert!(classes.contains(&row), "{class}: {classes}");
    }
    // An unpublished sheet is counted, by class among others, and stands in no row of holder or status.
    assert!(classes.contains("1 counted but not published"));
    for id in ["by-holder", "by-status"] {
        let rows = part(census, id).split("</tbody>").next().unwrap();
        assert!(!rows.contains("counted but not published"), "{rows}");
    }
    let apart = part(census, "not-counted");
    assert!(apart.contains("1.5") && !apart.contains("1.1"), "{apart}");
    let together = part(census, "on-one-paper");
    assert!(together.contains("1.2") && together.contains("1.3"));
}

#[test]
fn beyond_an_exact_count_the_lower_end_is_said_to_be_a_bound() {
    let mut records =
        String::from("-- records/designs/1/design.toml\ntitles = [{ text = \"A Row\" }]\n");
    for number in 1..=26 {
        let record =
            format!("-- records/designs/1/impressions/{number}.toml\nstatus = \"located\"\n");
        records.push_str(&record);
        if number > 1 {
            let before = number - 1;
            let link = format!("maybe_same_as = [{{ impression = \"1.{before}\" }}]\n");
            records.push_str(&link);
        }
    }
    let site = site_of(&[&records]);
    let census = page(&site, "design/1/census/");
    assert!(
        census.contains("13 or more, at most 26 impressions"),
        "{census}"
    );
    assert!(part(census, "by-status").contains("≥13–26"));
    assert!(page(&site, "design/1/").contains("13 or more, at most 26 impressions known"));
}

#[test]
fn holders_stand_by_state_and_designs_by_series() {
    let site = site_of(&[FERRY]);
    let holding = part(page(&site, "design/1/census/"), "holding");
    let row = &holding[holding.find("Town Library").unwrap()..];
    let row = &row[..row.find("</tr>").unwrap()];
    let figures = row.split("<td class=\"figure\">").skip(1);
    // Dark, moonlit, not recorded, all; the last leads to the row of the holder.
    let figures: Vec<&str> = figures
        .map(|f| f.trim_start_matches("<a href=\"#holder-library\">"))
        .map(|f| f.split('<').next().unwrap())
        .collect();
    assert_eq!(figures, ["", "1", "", "1"]);
    assert!(row.contains(">1.2</a>"), "{row}");
    let series = part(page(&site, "census/"), "by-series");
    assert!(
        series.contains("=The Quays") && series.contains("4–5"),
        "{series}"
    );
}

#[test]
fn what_is_private_tells_nothing_beside_the_counts() {
    let private = FERRY
        .replace("series = {", "private = [\"series\"]\nseries = {")
        .replace(
            "shares_sheet =",
            "private = [\"shares_sheet\"]\nshares_sheet =",
        )
        .replace(
            "sightings = [{ date = \"1961\" }]",
            "exhibited = [{ exhibition = \"tower\" }]",
        );
    let tower = "-- records/exhibitions.toml\n[tower]\ntitle = \"In the Tower\"\ndate = \"1973\"\n\
                 private = [\"date\"]\n";
    let site = site_of(&[&private, tower]);
    for address in ["census/", "design/1/census/"] {
        let text = page(&site, address);
        for told in ["The Quays", "on-one-paper", "1970–1979"] {
            assert!(!text.contains(told), "{address} tells {told}");
        }
    }
    let all = table(&site, "census/census.csv");
    assert!(all.keys().all(|[_, series, ..]| series.is_empty()));
}

#[test]
fn what_a_catalogue_settles_stands_beside_the_counts_and_in_the_glossary() {
    let settled = "-- catalogue.toml\ntitle = \"The Prints\"\nsiglum = \"TP\"\nartist = \"artist\"\n\
         language = \"en\"\naddress = \"https://prints.example.org\"\n\
         [principles]\ncounts = \"A set counts as one.\"\nframes = \"Frames <are> not measured.\"\n";
    let site = site_of(&[FERRY, settled]);
    for address in ["census/", "design/1/census/", "glossary/"] {
        assert!(
            page(&site, address).contains("A set counts as one."),
            "{address}"
        );
    }
    let principles = part(page(&site, "glossary/"), "principles");
    assert!(
        principles.contains("What is counted")
            && principles.contains("Frames &lt;are&gt; not measured.")
    );
    assert!(!page(&site_of(&[FERRY]), "glossary/").contains("id=\"principles\""));
}

#[test]
fn an_edition_stands_beside_its_sources_and_the_sizes_that_nobody_declares() {
    let site = site_of(&[FERRY]);
    let editions = part(page(&site, "design/1/census/"), "declared-editions");
    assert!(
        editions.contains("<p class=\"small\">Source: ") && editions.contains("p. 4"),
        "{editions}"
    );
    assert!(
        editions.contains("According to other sources: 40"),
        "{editions}"
    );
    let known =
        "<p>Known: <a href=\"#printing-own\">2</a> of 50 declared. 2 of 50 numbers are recorded. ";
    assert!(editions.contains(known), "{editions}");
    let other = &editions[editions.find("Numbered out of a different total").unwrap()..];
    assert!(other.starts_with("Numbered out of a different total: 60: "));
    assert!(other.contains("impression/1.4/"));
}

/// The ferry with all its sheets published and no declared edition.
fn undeclared() -> String {
    let edition = FERRY.lines().find(|line| line.starts_with("edition = ["));
    let shown = FERRY.replace("publish = false\n", "");
    shown.replace(edition.unwrap(), "")
}

#[test]
fn survival_is_estimated_or_the_reason_is_said() {
    // Five sheets: met 2, 1, 1, 1, 2 times; Chao1 = 5 + 3 · 2 / (2 · 3) = 6. The interval begins at 5.1.
    let site = site_of(&[&undeclared()]);
    let survival = part(page(&site, "design/1/census/"), "survival");
    assert!(
        survival.contains(
            "An estimated 6 or more impressions existed to be recorded, including any since destroyed (95% interval: 5 to "
        ),
        "{survival}"
    );
    assert!(
        survival.contains("This does not show that any is missing."),
        "{survival}"
    );
    let ground =
        "Based on 5 impressions recorded on at least one occasion, of which 3 on one and 2 on two.";
    assert!(survival.contains(ground), "{survival}");
    assert!(survival.contains("gives a lower bound"));
    let own = "key = \"own\"\n";
    let copies = "key = \"poster\"\n";
    let six = "sightings = [{ date = \"2001\" }, { date = \"2003\" }]";
    let without = |from: &str, to: &str| undeclared().replace(from, to);
    for (literal, why) in [
        (
            FERRY.to_owned(),
            "because a size is declared or recorded for at least one printing",
        ),
        (
            without(own, &format!("{own}edition = 50\n")),
            "because a size is declared or recorded for at least one printing",
        ),
        (
            without(own, &format!("{own}printed = 48\n")),
            "because a size is declared or recorded for at least one printing",
        ),
        // Readers know nothing of when an unpublished sheet was met.
        (
            without(six, &format!("{six}\npublish = false")),
            "one known impression has no recorded occasion",
        ),
        (
            without(
                six,
                "standing = \"withdrawn\"\nwhy = \"A print of another design.\"",
            ),
            "at least five impressions with a recorded occasion are needed",
        ),
        (
            without("{ date = \"1931\" }, ", "").replace(", { date = \"2003\" }", ""),
            "no impression is recorded on a second occasion",
        ),
        (
            without(
                "sightings = [{ date = \"1938",
                "sightings = [{ date = \"1920\" }, { date = \"1938",
            ),
            "at least two impressions recorded on one occasion only are needed",
        ),
    ] {
        let site = site_of(&[&literal]);
        let survival = part(page(&site, "design/1/census/"), "survival");
        assert!(survival.contains(why), "{why}: {survival}");
        assert!(!survival.contains("An estimated"), "{survival}");
    }
    // What is printed from other matrices, and a printing that was withdrawn, say nothing of the design's own sheets.
    for other in [
        without(copies, &format!("{copies}edition = 500\n")),
        without(
            copies,
            "key = \"second\"\nkind = \"lifetime\"\nstates = \"all\"\nedition = 20\nstanding = \"withdrawn\"\nwhy = \"Never made.\"\n[[printings]]\nkey = \"poster\"\n",
        ),
    ] {
        let site = site_of(&[&other]);
        let survival = part(page(&site, "design/1/census/"), "survival");
        assert!(
            survival.contains("An estimated 6 or more impressions"),
            "{survival}"
        );
    }
}

#[test]
fn known_impressions_stand_against_the_number_printed_with_its_source() {
    let bare = undeclared().replace("numbering = \"12/50\"\n", "");
    let bare = bare.replace("numbering = \"3/60\"\n", "");
    let own = "key = \"own\"\n";
    let printed = |printed: &str| bare.replace(own, &format!("{own}printed = {printed}\n"));
    let editions = |site: &Site| {
        part(page(site, "design/1/census/"), "declared-editions")
            .replace("id=\"declared-editions\"", "")
    };
    let site = site_of(&[&printed("1")]);
    assert!(
        editions(&site).contains(" of one printed (source not given)."),
        "{}",
        editions(&site)
    );
    let all = part(page(&site, "census/"), "declared-editions");
    assert!(
        all.contains("1<span class=\"of-cell\">source not given</span>"),
        "{all}"
    );
    let design = page(&site, "design/1/");
    assert!(
        design.contains("One impression printed (source not given)"),
        "{design}"
    );
    let site = site_of(&[&printed(
        "[{ is = 48, cite = \"dorn-1927\", at = \"p. 9\" }, { is = 45, by = \"museum\" }]",
    )]);
    let shown = editions(&site);
    let known = &shown[shown.find(" of 48 printed (").expect(&shown)..];
    assert!(
        known.split("</p>").next().unwrap().contains("p. 9") && !known.contains("not given"),
        "{shown}"
    );
    assert!(
        shown.contains("Number printed, according to other sources: 45, "),
        "{shown}"
    );
    assert!(
        !shown.contains("declared") && !shown.contains("numbers"),
        "{shown}"
    );
    let all = part(page(&site, "census/"), "declared-editions");
    assert!(
        all.contains("scope=\"col\">Printed</th>") && all.contains("<td class=\"figure\">48</td>"),
        "{all}"
    );
    let design = page(&site, "design/1/");
    assert!(design.contains("48 impressions printed ("), "{design}");
    // Where neither is recorded and no number was met, the printing has no place among the editions.
    assert!(!page(&site_of(&[&bare]), "design/1/census/").contains("id=\"declared-editions\""));
}

#[test]
fn sheets_are_shown_over_time_as_a_drawing_and_as_a_table() {
    let site = site_of(&[FERRY]);
    for address in ["design/1/census/", "census/"] {
        let seen = part(page(&site, address), "seen");
        assert!(seen.contains("<svg"), "{seen}");
        let row = |years: &str, figures: [&str; 2], records: &[&str]| {
            let row = seen
                .split(&format!("<th scope=\"row\">{years}</th>"))
                .nth(1);
            let row = row.and_then(|row| row.split("</tr>").next()).unwrap();
            let shown: Vec<&str> = row
                .split("<td class=\"figure\">")
                .skip(1)
                .map(|cell| cell.split('<').next().unwrap())
                .collect();
            assert_eq!(shown, figures, "{years}: {seen}");
            for record in records {
                assert!(
                    row.contains(&format!(">{record}</a>")),
                    "{years} {record}: {row}"
                );
            }
        };
        row("1930–1939", ["3", "0"], &["1.1", "1.2", "1.4"]);
        row("1950–1959", ["0", "1"], &["1.1"]);
        row("1960–1969", ["1", "0"], &["1.3"]);
        // 1.6, which is not shown, was seen in 2001.
        assert!(!seen.contains("2000–2009"), "{seen}");
    }
}

/// The rows of a table for other programs, by design, series, what they are by, and key.
fn table(site: &Site, path: &str) -> BTreeMap<[String; 4], [String; 4]> {
    let bytes = &site.files[path];
    let mut reader = csv::Reader::from_reader(bytes.as_slice());
    let rows = reader.records().map(|row| {
        let row = row.unwrap();
        let cell = |at: usize| row[at].to_owned();
        ([0, 1, 2, 3].map(cell), [4, 5, 6, 7].map(cell))
    });
    rows.collect()
}

#[test]
fn the_table_for_other_programs_holds_the_figures_and_no_formula() {
    let site = site_of(&[FERRY]);
    let all = table(&site, "census/census.csv");
    let at = |key: [&str; 4]| all[&key.map(str::to_owned)].each_ref().map(String::as_str);
    assert_eq!(at(["1", "", "all", ""]), ["", "4", "5", "true"]);
    assert_eq!(at(["", "", "all", ""]), ["", "4", "5", "true"]);
    assert_eq!(at(["", "'=The Quays", "all", ""]), ["", "4", "5", "true"]);
    assert_eq!(
        at(["1", "", "holder", "museum"]),
        ["Harbour Museum", "2", "2", "true"]
    );
    assert_eq!(at(["1", "", "class", "proof"])[0], "proofs");
    let own = table(&site, "design/1/census/census.csv");
    assert!(own.iter().all(|(key, value)| all.get(key) == Some(value)));
    assert!(own.keys().all(|key| key[0] == "1"));
}

#[test]
fn the_command_counts_a_series_as_its_pages_do() {
    let folder = lay_down(&[FERRY]);
    let dir = text(folder.path());
    let counted = keyblock(&["census", "--series", "=The Quays", "--in", dir, "--json"]);
    assert_eq!(counted.code, Some(0), "{}", counted.err);
    let document: serde_json::Value = serde_json::from_str(&counted.out).unwrap();
    assert_eq!(document["series"], "=The Quays");
    assert_eq!(document["design"], serde_json::Value::Null);
    assert_eq!(document["sheets"]["at_least"], 4);
    assert_eq!(document["sheets"]["at_most"], 5);
    let unknown = keyblock(&["census", "--series", "=The Quay", "--in", dir]);
    assert_eq!(unknown.code, Some(2));
    assert!(
        unknown.err.contains("the nearest is “=The Quays”"),
        "{}",
        unknown.err
    );
}

/// 7.8 and 7.9, like 7.4 and 7.24, may be one sheet.
#[test]
fn merging_two_records_changes_every_figure_and_leaves_both_addresses_alive() {
    let folder = copy_of("demo-site");
    let before = site(folder.path());
    for (record, other) in [(8, "7.9"), (4, "7.24")] {
        let file = format!("records/designs/7/impressions/{record}.toml");
        let link = format!("same_as = [{{ impression = \"{other}\"");
        edit(&folder.path().join(file), &format!("maybe_{link}"), &link);
    }
    let after = site(folder.path());
    let open = ["21–23", "21 to 23"];
    for address in ["design/7/", "design/7/census/", "census/"] {
        for words in open {
            assert!(page(&before, address).contains(words), "{address}: {words}");
        }
        assert!(page(&before, address).contains("21"), "{address}");
    }
    for (path, bytes) in &after.files {
        if path.ends_with(".html") {
            let text = std::str::from_utf8(bytes).unwrap();
            assert!(open.iter().all(|words| !text.contains(words)), "{path}");
        }
    }
    let all = |site: &Site, design: &str| {
        let key = [design, "", "all", ""].map(str::to_owned);
        let [_, least, most, _] = table(site, "census/census.csv").remove(&key).unwrap();
        [least, most].map(|n| n.parse::<usize>().unwrap())
    };
    assert_eq!((all(&before, "7"), all(&after, "7")), ([21, 23], [21, 21]));
    let ([least, most], [merged_least, merged_most]) = (all(&before, ""), all(&after, ""));
    assert_eq!((merged_least, merged_most), (least, most - 2));
    for (one, other) in [("7.8", "7.9"), ("7.4", "7.24")] {
        let leads = |at: &str, to: &str| {
            page(&after, &format!("impression/{at}/"))
                .contains(&format!("url=../../impression/{to}/"))
        };
        let (sheet, record) = match (leads(one, other), leads(other, one)) {
            (true, false) => (other, one),
            (false, true) => (one, other),
            leading => panic!("{one} and {other}: {leading:?}"),
        };
        let page = page(&after, &format!("impression/{sheet}/"));
        assert!(page.contains(&format!("id=\"record-{}\"", record.replace('.', "-"))));
    }
}

#[test]
fn a_page_links_to_its_tables_by_their_relation_and_media_type() {
    let site = site_of(&[FERRY]);
    let mut formats = FORMATS.iter();
    let format = formats.find(|format| format.name == "census-csv").unwrap();
    let (relation, kind) = (format.relation, format.media_type);
    for address in ["census/", "design/1/census/"] {
        let (head, body) = page(&site, address).split_once("</head>").unwrap();
        let link =
            format!("<link rel=\"{relation}\" type=\"{kind}\" href=\"./census.csv\" title=\"");
        assert!(head.contains(&link), "{address}: {head}");
        let link = format!("<a href=\"./census.csv\" type=\"{kind}\">");
        assert!(body.contains(&link), "{address}");
    }
    assert!(!page(&site, "design/1/").contains("census.csv"));
}

/// A sheet of which doubt says whether it is a print at all: it is counted, and named wherever it is.
#[test]
fn a_doubtful_impression_is_named_wherever_it_is_counted_or_listed() {
    let third = "-- records/designs/1/impressions/3.toml\n";
    let doubtful = FERRY.replace(
        third,
        &format!("{third}standing = \"doubtful\"\nwhy = \"Flat lines.\"\n"),
    );
    let site = site_of(&[&doubtful]);
    let named = "1 of them doubtful (<a class=\"handle\" href=\"";
    let all = part(page(&site, "census/"), "by-design");
    let row = all.split("<tbody>").nth(1).unwrap();
    assert!(
        row.contains(&format!("<span class=\"of-cell\">{named}")) && row.contains(">1.3</a>)"),
        "{row}"
    );
    let own = page(&site, "design/1/census/");
    assert!(
        own.contains("4 to 5 impressions; 1 of them doubtful (1.3)"),
        "{own}"
    );
    for id in ["by-status", "by-class", "by-holder"] {
        assert!(part(own, id).contains(named), "{id}");
    }
    let without = |address: &str| !page(&site_of(&[FERRY]), address).contains("doubtful (");
    assert!(without("census/") && without("design/1/census/"));
    let listed = page(&site, "design/1/");
    let sheet = listed
        .split(">1.3</a>")
        .find(|rest| rest.contains("counterproof, doubtful"));
    assert!(sheet.is_some(), "{listed}");
    let holder = page(&site, "holder/museum/");
    let row = holder.split(">1.3</a>").nth(1).unwrap();
    let row = row.split("</tr>").next().unwrap();
    assert!(row.contains("<td>doubtful</td>"), "{row}");
}

#[test]
fn an_impression_that_is_not_shown_is_told_beside_the_rows_that_do_not_add_up() {
    let site = site_of(&[FERRY]);
    for address in ["census/", "design/1/census/"] {
        let status = part(page(&site, address), "by-status");
        let below = status.split("</tbody>").nth(1).unwrap();
        assert!(
            below.contains("1 counted but not published; it is in no row of this table."),
            "{below}"
        );
    }
    let all = part(page(&site, "census/"), "by-design");
    let told = "<span class=\"of-cell\">1 counted but not published</span>";
    // In the row of its design and in the row of all.
    assert_eq!(all.matches(told).count(), 2, "{all}");
    let shown = site_of(&[&FERRY.replace("publish = false\n", "")]);
    assert!(!page(&shown, "census/").contains("not shown"));
}

#[test]
fn a_design_without_a_known_impression_is_said_to_have_no_row() {
    let bare = "-- records/designs/2/design.toml\ntitles = [{ text = \"The Crane\" }]\n";
    let said = "One further design is not in this table: no impression of it is known.";
    let site = site_of(&[FERRY, bare]);
    let all = part(page(&site, "census/"), "by-design");
    assert!(all.contains(said) && !all.contains("The Crane"), "{all}");
    // A rejected design stands apart and is not missed here.
    let rejected = format!("{bare}standing = \"rejected\"\nwhy = \"By another hand.\"\n");
    for literals in [&[FERRY][..], &[FERRY, &rejected]] {
        assert!(!page(&site_of(literals), "census/").contains("is not in this table"));
    }
}

#[test]
fn an_open_doubt_is_said_to_count_as_two_where_occasions_are_counted() {
    let said = "Records that may describe one impression are counted separately here.";
    let open = site_of(&[&undeclared()]);
    let census = page(&open, "design/1/census/");
    assert!(part(census, "survival").contains(said));
    assert!(part(census, "seen").contains(said));
    let settled = undeclared().replace("maybe_same_as", "not_same_as");
    assert!(!page(&site_of(&[&settled]), "design/1/census/").contains(said));
}

#[test]
fn an_uncertain_declared_size_is_said_to_be_perhaps_that_size() {
    let own = "edition = [{ is = 50, cite = \"dorn-1927\", at = \"p. 4\"";
    let of = |more: &str| site_of(&[&FERRY.replace(own, &format!("{own}, {more}"))]);
    for more in [
        "certainty = \"possible\"",
        "certainty = \"probable\"",
        "basis = \"report\"",
    ] {
        let site = of(more);
        let editions = part(page(&site, "design/1/census/"), "declared-editions");
        let heading = editions.split("</h3>").next().unwrap();
        assert!(heading.contains(": perhaps 50 declared (<a "), "{heading}");
        assert!(!heading.contains("p. 4"), "{heading}");
        assert!(
            editions.contains("of perhaps 50 declared. 2 of perhaps 50 numbers are recorded."),
            "{editions}"
        );
        let all = part(page(&site, "census/"), "declared-editions");
        assert!(all.contains("<td class=\"figure\">50?</td>"), "{all}");
        assert!(all.contains("?: the size is only reported"), "{all}");
        // The study and its tables keep the number.
        let file = String::from_utf8(site.files["census/editions.csv"].clone()).unwrap();
        assert!(file.contains(",50,"), "{file}");
    }
    let certain = of("basis = \"literature\"");
    let all = part(page(&certain, "census/"), "declared-editions");
    assert!(
        all.contains("<td class=\"figure\">50</td>") && !all.contains('?'),
        "{all}"
    );
}

#[test]
fn the_known_impressions_of_a_printing_are_said_to_include_its_proofs() {
    let of = |literal: &str| {
        let site = site_of(&[literal]);
        part(page(&site, "design/1/census/"), "declared-editions").to_owned()
    };
    let second = "identified = { state = \"moonlit\" }";
    let proof = FERRY.replace(
        second,
        "identified = { state = \"moonlit\", printing = \"own\" }",
    );
    assert!(
        of(&proof).contains("</a> (proofs included) of 50 declared."),
        "{}",
        of(&proof)
    );
    assert!(!of(FERRY).contains("proofs included"));
}

#[test]
fn a_withdrawn_record_of_a_reproduction_is_said_to_be_one() {
    let fifth = "-- records/designs/1/impressions/5.toml\n";
    let withdrawn = |literal: &str| {
        let record = format!("{fifth}standing = \"withdrawn\"\nwhy = \"Cut from a calendar.\"\n");
        let site = site_of(&[&literal.replace(fifth, &record)]);
        part(page(&site, "design/1/census/"), "not-counted").to_owned()
    };
    let told = withdrawn(FERRY);
    assert!(
        told.contains("1.5</a>, withdrawn, reproduction</li>"),
        "{told}"
    );
    let bare = withdrawn(&FERRY.replace("identified = { printing = \"poster\" }\n", ""));
    assert!(bare.contains("1.5</a>, withdrawn</li>"), "{bare}");
}

/// "Rope Walk, Evening" has no declared edition, and each of its five sheets was met: 1, 1, 2, 3 and 4 times, so
/// Chao1 = 5 + 2 · 1 / (2 · 2) = 5.5.
#[test]
fn one_design_of_the_demonstration_shows_an_estimate() {
    let folder = copy_of("demo-site");
    let site = site(folder.path());
    let census = page(&site, "design/5/census/");
    let survival = part(census, "survival");
    assert!(
        survival.contains(
            "Based on 5 impressions recorded on at least one occasion, of which 2 on one and 1 on two."
        ),
        "{survival}"
    );
    assert!(
        survival.contains("An estimated 5 to 6 or more impressions existed to be recorded, including any since destroyed (95% interval: 5 to 13). This does not show"),
        "{survival}"
    );
    let counted = keyblock(&["census", "5", "--in", text(folder.path()), "--json"]);
    let document: serde_json::Value = serde_json::from_str(&counted.out).unwrap();
    let estimate = document["survival"]["estimate"].as_f64().unwrap();
    assert!((estimate - 5.5).abs() < 1e-12, "{estimate}");
    // Where a size is declared, nothing is estimated.
    let with_size = page(&site, "design/7/census/");
    assert!(!part(with_size, "survival").contains("could have been met"));
}
