//! Columns that no row of a table fills: left out of the census by series, of the tables of points, of states crossed with
//! printings and of holders crossed with states. Where that says something of a state or a printing, a line below says it.

use std::collections::BTreeMap;

use crate::concealed::site_of;

/// Three states, of which the second shows nothing; three printings, of one of which no impression is known; and a state
/// whose only sheet is not published. The only destroyed sheet is of a design in no series.
const QUAYS: &str = r#"
-- records/holders/museum.toml
name = "Harbour Museum"
kind = "museum"
-- records/holders/library.toml
name = "Town Library"
kind = "library"
-- records/series/quays.toml
title = "The Quays"
-- records/designs/1/design.toml
titles = [{ text = "The Ferry" }]
series = { series = "quays" }
points = [{ key = "lamp", ask = "Is there a lamp?", kind = "presence", rests_on = "matrix" }]
states = [
  { key = "dark", shows = { lamp = "absent" } },
  { key = "dusk" },
  { key = "lit", shows = { lamp = "present" } },
]
printings = [
  { key = "own", name = "Own printing", states = "all" },
  { key = "late", name = "Late printing", states = "all" },
  { key = "poster", name = "Poster", kind = "reproduction" },
  { key = "memorial", name = "Memorial printing", states = ["lit"] },
]
-- records/designs/1/impressions/1.toml
holder = "museum"
status = "located"
identified = { state = "dark", printing = "own" }
-- records/designs/1/impressions/2.toml
holder = "library"
status = "located"
identified = { state = "lit", printing = "late" }
-- records/designs/1/impressions/3.toml
status = "located"
publish = false
identified = { state = "dusk", printing = "own" }
-- records/designs/2/design.toml
titles = [{ text = "The Crane" }]
-- records/designs/2/impressions/1.toml
status = "destroyed"
-- records/designs/2/impressions/2.toml
holder = "museum"
status = "located"
"#;

fn page<'s>(site: &'s BTreeMap<String, Vec<u8>>, address: &str) -> &'s str {
    let path = format!("{address}index.html");
    let file = site.get(&path).unwrap_or_else(|| panic!("no {path}"));
    std::str::from_utf8(file).unwrap()
}

/// The part of a page from a text on to the end of the next table, and the line below it.
fn table<'p>(page: &'p str, from: &str) -> &'p str {
    let at = page
        .find(from)
        .unwrap_or_else(|| panic!("no {from} in {page}"));
    let rest = &page[at..];
    let end = rest.find("</table>").unwrap();
    let end = rest[end..]
        .find("<section")
        .map_or(rest.len(), |more| end + more);
    &rest[..end]
}

/// The heads of its columns.
fn heads(table: &str) -> Vec<String> {
    let head = table.split("</thead>").next().unwrap();
    let cells = head.split("<th").skip(2);
    let texts = cells.map(|cell| {
        let inner = cell.split_once('>').unwrap().1;
        let inner = inner.split("</th>").next().unwrap();
        let mut text = String::new();
        let mut is_tag = false;
        for c in inner.chars() {
            match c {
                '<' => is_tag = true,
                '>' => is_tag = false,
                c if !is_tag => text.push(c),
                _ => {}
            }
        }
        text
    });
    texts.filter(|text| !text.is_empty()).collect()
}

/// How many cells each row of its body has, the head of the row included.
fn widths(table: &str) -> Vec<usize> {
    let body = table.split("<tbody>").nth(1).unwrap();
    let body = body.split("</tbody>").next().unwrap();
    let rows = body.split("<tr").skip(1);
    rows.map(|row| row.matches("</td>").count() + row.matches("</th>").count())
        .collect()
}

#[test]
fn a_status_that_no_sheet_of_a_series_has_is_no_column_of_series() {
    let site = site_of(&[QUAYS]);
    let census = page(&site, "census/");
    let of_designs = heads(table(census, "id=\"by-design\""));
    assert_eq!(
        of_designs,
        ["No.", "Title", "Known", "Located", "Destroyed"]
    );
    let of_series = table(census, "id=\"by-series\"");
    assert_eq!(heads(of_series), ["Series", "Known", "Located"]);
    assert_eq!(widths(of_series), [3]);
}

#[test]
fn a_state_that_shows_nothing_is_named_below_the_table_of_points() {
    let site = site_of(&[QUAYS]);
    for address in ["design/1/", "design/1/point/lamp/"] {
        let of_states = table(page(&site, address), "table class=\"points");
        assert_eq!(heads(of_states), ["Point", "i", "iii"], "{address}");
        assert_eq!(widths(of_states), [3], "{address}");
        assert!(of_states.contains("across-2"), "{address}");
        let said = "Nothing is recorded here for <a href=";
        assert!(of_states.contains(said), "{address}: {of_states}");
        let named = of_states.split(said).nth(1).unwrap();
        assert!(
            named.contains("#state-dusk\">ii</a>."),
            "{address}: {named}"
        );
    }
}

#[test]
fn a_printing_without_a_sheet_is_named_below_the_crossed_table() {
    let site = site_of(&[QUAYS]);
    for address in ["design/1/", "design/1/census/"] {
        let crossing = table(page(&site, address), "table class=\"crossing");
        let columns = heads(crossing);
        assert_eq!(
            columns,
            ["State", "Own printing", "Late printing", "All"],
            "{address}"
        );
        assert_eq!(widths(crossing), [4, 4, 4], "{address}");
        let foot = crossing.split("<tfoot>").nth(1).unwrap();
        let foot = foot.split("</tfoot>").next().unwrap();
        assert_eq!(foot.matches("</td>").count(), 3, "{address}");
        let said = "No impression is known of: Memorial printing.";
        assert!(crossing.contains(said), "{address}: {crossing}");
    }
}

#[test]
fn a_state_of_which_no_holder_has_a_sheet_is_no_column_of_holders() {
    let site = site_of(&[QUAYS]);
    let holding = table(page(&site, "design/1/census/"), "id=\"holding\"");
    let columns = heads(holding);
    assert_eq!(columns, ["Holder", "i/iii", "iii/iii", "All"]);
    assert_eq!(widths(holding), [4, 4]);
}
