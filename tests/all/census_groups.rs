//! The census in groups: holders in their countries and towns, kinds in their classes, and every sheet as a square.

use crate::census_figures::shown;
use crate::census_pages::{FERRY, part};
use crate::pages::{page, site_of};

/// Holders of two countries, a town with two of them, and one that is not told.
const PLACES: &str = r#"
-- records/designs/1/design.toml
titles = [{ text = "The Ferry" }]
[[printings]]
key = "own"
kind = "artist"
[[printings]]
key = "late"
kind = "posthumous"
-- records/designs/1/impressions/1.toml
holder = "museum"
status = "located"
kind = "edition"
identified = { printing = "own" }
-- records/designs/1/impressions/2.toml
holder = "library"
status = "located"
kind = "trial-proof"
identified = { printing = "own", certainty = "probable" }
-- records/designs/1/impressions/3.toml
holder = "archive"
status = "located"
kind = "artists-proof"
identified = { printing = "late" }
-- records/designs/1/impressions/4.toml
status = "untraced"
identified = { printing = "own", or = [{ printing = "late" }] }
-- records/designs/1/impressions/5.toml
holder = "museum"
status = "located"
-- records/holders/museum.toml
name = "Harbour Museum"
kind = "museum"
place = "Northport"
country = "GB"
-- records/holders/library.toml
name = "Town Library"
kind = "library"
place = "Northport"
country = "GB"
-- records/holders/archive.toml
name = "Sea Archive"
kind = "archive"
place = "Tarn"
country = "FR"
"#;

/// The rows of a table: class, name, figure, and the text of the records.
fn rows(table: &str) -> Vec<(String, String, String, String)> {
    let body = table.split("<tbody>").nth(1).unwrap();
    let rows = body.split("<tr").skip(1);
    rows.map(|row| {
        let (head, cells) = row.split_once('>').unwrap();
        let class = head.split("class=\"").nth(1).unwrap_or_default();
        let class = class.split('"').next().unwrap();
        let cell = |begin: &str| {
            let cell = cells.split(begin).nth(1).unwrap();
            let cell = cell.split("</t").next().unwrap();
            shown(cell)
        };
        (
            class.to_owned(),
            cell("<th scope=\"row\">"),
            cell("<td class=\"figure\">"),
            cell("<td class=\"records\">"),
        )
    })
    .collect()
}

fn row(class: &str, name: &str, figure: &str, records: &str) -> (String, String, String, String) {
    (class.into(), name.into(), figure.into(), records.into())
}

#[test]
fn holders_stand_in_their_countries_and_towns() {
    let site = site_of(&[PLACES]);
    let census = page(&site, "design/1/census/");
    assert_eq!(
        rows(part(census, "by-country")),
        [
            row("group", "France", "1", ""),
            row("within", "Tarn, Sea Archive", "1", "1.3"),
            row("group", "United Kingdom", "3", ""),
            row("within", "Northport", "3", ""),
            row("inner", "Harbour Museum", "2", "1.1, 1.5"),
            row("inner", "Town Library", "1", "1.2"),
            row("", "not recorded or withheld", "1", "1.4"),
        ]
    );
    // Figures elsewhere lead to each of the three.
    for id in ["by-holder", "by-city", "country-GB", "holder-museum"] {
        assert!(census.contains(&format!("id=\"{id}\"")), "{id}");
    }
}

/// A town of one name in two countries has no figure of its own.
#[test]
fn two_towns_of_one_name_are_not_added_up() {
    let two = PLACES.replace("place = \"Tarn\"", "place = \"Northport\"");
    let site = site_of(&[&two]);
    let places = rows(part(page(&site, "design/1/census/"), "by-country"));
    assert!(places.iter().all(|(_, name, ..)| name != "Northport"));
    assert!(places.contains(&row("within", "Northport, Harbour Museum", "2", "1.1, 1.5")));
    assert!(places.contains(&row("within", "Northport, Sea Archive", "1", "1.3")));
}

#[test]
fn kinds_stand_in_the_classes_in_which_they_count() {
    let site = site_of(&[PLACES]);
    let kinds = rows(part(page(&site, "design/1/census/"), "by-class"));
    let classes: Vec<(&str, &str)> = kinds.iter().map(|r| (r.0.as_str(), r.1.as_str())).collect();
    assert_eq!(
        classes,
        [
            ("group", "edition impressions"),
            ("within", "edition impression"),
            ("group", "proofs"),
            ("within", "artist’s proof"),
            ("within", "trial proof"),
            ("", "not recorded"),
        ]
    );
    assert_eq!(kinds[2].2, "2");
    assert_eq!(kinds[5].3, "1.4, 1.5");
}

/// The lines of squares of the rows of the picture: the class of each with the number of its squares.
fn squares(page: &str) -> Vec<Vec<(String, usize)>> {
    let whole = part(page, "whole");
    let list = whole.split("</ol>").next().unwrap();
    let rows = list.split("<li>").skip(1);
    rows.map(|row| {
        let paths = row.split("<path class=\"").skip(1);
        let paths = paths.filter(|path| !path.starts_with("hole"));
        paths
            .map(|path| {
                let (class, rest) = path.split_once('"').unwrap();
                let drawn = rest.split(" d=\"").nth(1).unwrap();
                let drawn = drawn.split('"').next().unwrap();
                let lengths = drawn.split('h').skip(1);
                let lengths = lengths.map(|l| l.split('M').next().unwrap());
                let squares = lengths.map(|l| (l.parse::<usize>().unwrap() + 2) / 10);
                (class.to_owned(), squares.sum())
            })
            .collect()
    })
    .collect()
}

#[test]
fn every_sheet_is_a_square_by_printing_and_certainty() {
    let site = site_of(&[PLACES]);
    let is = |class: &str, n: usize| (class.to_owned(), n);
    let all = page(&site, "census/");
    // One certain and one probable of the artist's own, one late, one of either, one of no printing.
    assert_eq!(
        squares(all),
        [[
            is("filled first", 1),
            is("hollow first", 1),
            is("filled", 1),
            is("hollow", 1),
            is("point", 1),
        ]]
    );
    let said = "aria-label=\"Printed by the artist: 2, 1 uncertain; Posthumous printing: 1; \
                One of several printings: 1, 1 uncertain; No printing recorded: 1\"";
    assert!(part(all, "whole").contains(said), "{}", part(all, "whole"));
    // Of one design, a row for each printing.
    let own = squares(page(&site, "design/1/census/"));
    assert_eq!(own.len(), 4);
    assert_eq!(own[0], [is("filled first", 1), is("hollow first", 1)]);
    // What is counted and not shown is a square as well.
    let ferry = squares(page(&site_of(&[FERRY]), "census/"));
    assert_eq!(ferry, [[is("filled first", 2), is("point", 3)]]);
}

/// A picture of 20,000 sheets is no heavier than its rows.
#[test]
fn the_picture_of_many_sheets_is_light() {
    let mut records = PLACES.to_owned();
    for number in 6..=900 {
        let record = format!(
            "-- records/designs/1/impressions/{number}.toml\nstatus = \"located\"\nidentified = {{ printing = \"own\" }}\n"
        );
        records.push_str(&record);
    }
    let site = site_of(&[&records]);
    let census = page(&site, "census/");
    assert_eq!(squares(census)[0][0].1, 896);
    let picture = part(census, "whole").split("</ol>").next().unwrap();
    assert!(picture.len() < 2000, "{} bytes", picture.len());
}

/// The counts come first and how they were made last.
#[test]
fn states_printings_and_editions_come_first_and_the_method_last() {
    let site = site_of(&[FERRY]);
    let order = |address: &str, ids: &[&str]| {
        let text = page(&site, address);
        let places: Vec<usize> = ids
            .iter()
            .map(|id| {
                text.find(&format!("id=\"{id}\""))
                    .unwrap_or_else(|| panic!("no {id}"))
            })
            .collect();
        assert!(places.is_sorted(), "{address}: {ids:?} at {places:?}");
    };
    order(
        "design/1/census/",
        &[
            "whole",
            "by-state",
            "by-printing",
            "declared-editions",
            "by-status",
            "by-kind",
            "by-holder",
            "holding",
            "how-counted",
        ],
    );
    order(
        "census/",
        &[
            "whole",
            "by-design",
            "declared-editions",
            "by-series",
            "by-status",
            "by-kind",
            "by-holder",
            "how-counted",
        ],
    );
}
