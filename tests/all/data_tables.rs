//! The tables of the data: CSV and JSON say the same, values have the types that are declared, keys lead to rows, every
//! address is a page, and the description is valid.
//!
//! The profile of Data Package 2.0 is that of the package dplib-py (PyPI); the values of the tables are checked here,
//! since the library that does so (frictionless, PyPI) brings some thirty packages.

use std::collections::{BTreeMap, BTreeSet};
use std::sync::LazyLock;

use keyblock::page::Site;
use serde_json::Value;

use crate::pages::{FERRY, page, site, site_of};
use crate::program::copy_of;

/// The site of the demonstration.
pub static SITE: LazyLock<Site> = LazyLock::new(|| site(copy_of("demo-site").path()));

/// The address of the demonstration.
const BASE: &str = "https://perelaz.example.org/prints/";

fn json(site: &Site, path: &str) -> Value {
    let bytes = site.files.get(path).unwrap_or_else(|| panic!("no {path}"));
    serde_json::from_slice(bytes).unwrap()
}

fn text<'v>(value: &'v Value, key: &str) -> &'v str {
    value[key].as_str().unwrap_or_default()
}

/// A table: its declaration, and its rows as cells by column.
struct Table {
    schema: Value,
    rows: Vec<BTreeMap<String, String>>,
}

fn list(value: &Value) -> &[Value] {
    value.as_array().map_or(&[][..], Vec::as_slice)
}

impl Table {
    fn fields(&self) -> &[Value] {
        list(&self.schema["fields"])
    }

    /// The values of a column, the items of lists each by itself; without empty cells.
    fn values(&self, column: &str) -> Vec<&str> {
        let field = self.fields().iter().find(|f| text(f, "name") == column);
        let delimiter = field.and_then(|field| field["delimiter"].as_str());
        let cells = self.rows.iter().map(|row| row[column].as_str());
        let cells = cells.filter(|cell| !cell.is_empty());
        match delimiter {
            Some(delimiter) => cells.flat_map(|cell| cell.split(delimiter)).collect(),
            None => cells.collect(),
        }
    }
}

fn read_csv(bytes: &[u8]) -> Vec<BTreeMap<String, String>> {
    let mut reader = csv::Reader::from_reader(bytes);
    let heads = reader.headers().unwrap().clone();
    let rows = reader.records().map(|row| {
        let row = row.unwrap();
        let cells = heads.iter().zip(row.iter());
        cells
            .map(|(head, cell)| (head.to_owned(), cell.to_owned()))
            .collect()
    });
    rows.collect()
}

fn package(site: &Site) -> Value {
    json(site, "data/datapackage.json")
}

fn tables(site: &Site) -> BTreeMap<String, Table> {
    let package = package(site);
    let resources = list(&package["resources"]).iter();
    let tables = resources.map(|resource| {
        let table = Table {
            schema: resource["schema"].clone(),
            rows: read_csv(&site.files[&format!("data/{}", text(resource, "path"))]),
        };
        (text(resource, "name").to_owned(), table)
    });
    tables.collect()
}

/// Source: `tests/checks/datapackage-2.0.json`.
#[test]
fn the_description_is_a_data_package() {
    let profile: Value =
        serde_json::from_str(include_str!("../checks/datapackage-2.0.json")).unwrap();
    let validator = jsonschema::validator_for(&profile).unwrap();
    for site in [&*SITE, &site_of(&[FERRY])] {
        let package = package(site);
        let faults: Vec<String> = validator
            .iter_errors(&package)
            .map(|fault| format!("{} {fault}", fault.instance_path()))
            .collect();
        assert!(faults.is_empty(), "{faults:#?}");
    }
    let mut broken = package(&SITE);
    broken["resources"][0]["schema"]["fields"][0]["type"] = "txt".into();
    assert!(!validator.is_valid(&broken));
    let package = package(&SITE);
    assert_eq!(text(&package, "version"), "2");
    assert_eq!(text(&package, "created"), "2026-10-15T00:00:00Z");
    assert_eq!(text(&package["licenses"][0], "name"), "CC-BY-4.0");
    assert_eq!(text(&package["sources"][0], "path"), BASE);
}

#[test]
fn size_and_hash_of_every_table_are_those_of_its_file() {
    let package = package(&SITE);
    let resources = list(&package["resources"]);
    assert!(resources.len() > 30);
    for resource in resources {
        let file = &SITE.files[&format!("data/{}", text(resource, "path"))];
        assert_eq!(resource["bytes"], file.len());
        let hash = hmac_sha256::Hash::hash(file);
        let hash = hash
            .iter()
            .fold(String::new(), |hex, byte| format!("{hex}{byte:02x}"));
        assert_eq!(text(resource, "hash"), format!("sha256:{hash}"));
    }
    // FIPS 180-4, the example of one block: the library hashes as the standard says.
    let abc = hmac_sha256::Hash::hash(b"abc");
    assert_eq!(abc[..4], [0xba, 0x78, 0x16, 0xbf]);
}

#[test]
fn csv_and_json_hold_the_same_rows() {
    for (name, table) in tables(&SITE) {
        let rows = json(&SITE, &format!("data/{name}.json"));
        let rows = list(&rows);
        assert_eq!(rows.len(), table.rows.len(), "{name}");
        for (ours, theirs) in table.rows.iter().zip(rows) {
            let filled = ours.iter().filter(|(_, cell)| !cell.is_empty());
            assert_eq!(filled.count(), theirs.as_object().unwrap().len(), "{name}");
            for (column, value) in theirs.as_object().unwrap() {
                let cell = &ours[column];
                match value {
                    Value::Array(items) => {
                        let items: Vec<&str> = items.iter().filter_map(Value::as_str).collect();
                        assert_eq!(*cell, items.join("|"), "{name} {column}");
                    }
                    Value::String(text) => {
                        // What a spreadsheet would take for a formula has an apostrophe before it.
                        let is_guarded = text.starts_with(['=', '+', '-', '@']);
                        let bare = if is_guarded { &cell[1..] } else { cell };
                        assert_eq!(bare, text, "{name} {column}");
                    }
                    other => assert_eq!(*cell, other.to_string(), "{name} {column}"),
                }
            }
        }
    }
}

/// Whether a cell is a value of a type of Table Schema 2.0.
fn is_of(kind: &str, format: &str, cell: &str) -> bool {
    let is_digits =
        |text: &str, n: usize| text.len() == n && text.bytes().all(|b| b.is_ascii_digit());
    match (kind, format) {
        ("integer", _) => cell.parse::<i64>().is_ok(),
        ("number", _) => cell.parse::<f64>().is_ok_and(f64::is_finite),
        ("boolean", _) => ["true", "false"].contains(&cell),
        ("date", _) => {
            let parts: Vec<&str> = cell.split('-').collect();
            matches!(parts[..], [y, m, d] if is_digits(y, 4) && is_digits(m, 2) && is_digits(d, 2))
        }
        ("string", "uri") => url::Url::parse(cell).is_ok(),
        ("string", _) => true,
        _ => false,
    }
}

#[test]
fn every_cell_is_of_the_type_of_its_column() {
    let mut met = BTreeSet::new();
    for (name, table) in tables(&SITE) {
        let columns: BTreeSet<&str> = table.fields().iter().map(|f| text(f, "name")).collect();
        assert_eq!(
            columns.len(),
            table.fields().len(),
            "{name}: a column stands twice"
        );
        for field in table.fields() {
            let column = text(field, "name");
            let meaning = text(field, "description");
            let is_told = !meaning.starts_with("field-") && meaning.ends_with(['.', '…']);
            assert!(is_told, "{name} {column}");
            let (kind, format) = (text(field, "type"), text(field, "format"));
            let constraints = &field["constraints"];
            if constraints["required"] == true {
                let empty = table.rows.iter().filter(|row| row[column].is_empty());
                assert_eq!(empty.count(), 0, "{name} {column}");
            }
            let words: Vec<&str> = list(&constraints["enum"])
                .iter()
                .filter_map(Value::as_str)
                .collect();
            for cell in table.values(column) {
                assert!(is_of(kind, format, cell), "{name} {column} {cell}");
                assert!(
                    words.is_empty() || words.contains(&cell),
                    "{name} {column} {cell}"
                );
                met.insert(kind.to_owned());
            }
            if field["rdfType"].is_string() {
                for cell in table.values(column) {
                    assert!(
                        keyblock::model::edtf::Date::parse(cell).is_ok(),
                        "{name} {column} {cell}"
                    );
                }
            }
        }
    }
    let kinds = ["boolean", "date", "integer", "number", "string"];
    assert_eq!(met, kinds.map(str::to_owned).into());
}

#[test]
fn rows_are_named_by_their_keys_and_keys_lead_to_rows() {
    let tables = tables(&SITE);
    let mut followed = 0;
    for (name, table) in &tables {
        let key: Vec<&str> = list(&table.schema["primaryKey"])
            .iter()
            .filter_map(Value::as_str)
            .collect();
        if !key.is_empty() {
            let keys: BTreeSet<Vec<&str>> = table
                .rows
                .iter()
                .map(|row| key.iter().map(|column| row[*column].as_str()).collect())
                .collect();
            assert_eq!(keys.len(), table.rows.len(), "{name}: {key:?}");
        }
        for foreign in list(&table.schema["foreignKeys"]) {
            let other = foreign["reference"]["resource"].as_str().unwrap_or(name);
            let theirs = &tables[other];
            let key = foreign["reference"]["fields"][0].as_str().unwrap();
            let theirs: BTreeSet<&str> = theirs.values(key).into_iter().collect();
            for value in table.values(foreign["fields"][0].as_str().unwrap()) {
                followed += 1;
                assert!(theirs.contains(value), "{name}: {value} is not in {other}");
            }
        }
    }
    assert!(followed > 2000, "{followed}");
    // The standard has no foreign keys of lists.
    let lists = [
        ("printings", "states", "states", "state"),
        ("printings", "matrices", "matrices", "matrix"),
        ("impressions", "states", "states", "state"),
        ("impressions", "printings", "printings", "printing"),
        ("identifications", "states", "states", "state"),
        ("comparisons", "impressions", "impressions", "impression"),
        ("variants", "states", "states", "state"),
        ("states", "follows", "states", "state"),
    ];
    for (table, column, other, key) in lists {
        let theirs: BTreeSet<&str> = tables[other].values(key).into_iter().collect();
        for value in tables[table].values(column) {
            assert!(theirs.contains(value), "{table} {column} {value}");
        }
    }
}

#[test]
fn every_address_is_a_page_and_every_part_stands_on_it() {
    let mut met = 0;
    for (name, table) in tables(&SITE) {
        if !table
            .fields()
            .iter()
            .any(|field| text(field, "name") == "address")
        {
            continue;
        }
        for address in table.values("address") {
            met += 1;
            let path = address.strip_prefix(BASE).unwrap();
            let (folder, id) = path
                .split_once('#')
                .map_or((path, None), |(f, id)| (f, Some(id)));
            let page = page(&SITE, folder);
            if let Some(id) = id {
                assert!(page.contains(&format!("id=\"{id}\"")), "{name} {address}");
            }
        }
    }
    assert!(met > 300, "{met}");
}

/// What sources disagree on stands whole in the statements, and the catalogue's own view in the table of its record.
#[test]
fn every_view_of_a_date_is_a_row_and_the_first_is_the_catalogues() {
    let design = "-- records/designs/2/design.toml\n\
        titles = [{ text = \"=SUM(1)\" }]\n\
        date = [{ is = \"1927~\", certainty = \"probable\" }, { is = \"-0044/..\", basis = \"report\" }]\n\
        size.image = [212, 301]\n";
    let site = site_of(&[FERRY, design]);
    let tables = tables(&site);
    let row = |name: &str, column: &str, value: &str| {
        let rows = tables[name].rows.iter();
        let rows: Vec<_> = rows.filter(|row| row[column] == value).collect();
        rows.into_iter().cloned().collect::<Vec<_>>()
    };
    let designs = row("designs", "design", "2");
    let cell = |column: &str| designs[0][column].as_str();
    assert_eq!(
        [cell("date"), cell("date_earliest"), cell("date_latest")],
        ["1927~", "1927-01-01", "1927-12-31"]
    );
    assert_eq!(cell("date_certainty"), "probable");
    assert_eq!(
        [cell("image_height_mm"), cell("image_width_mm")],
        ["212", "301"]
    );
    assert_eq!(cell("title"), "'=SUM(1)");
    let exact = json(&site, "data/designs.json");
    let exact = list(&exact)
        .iter()
        .find(|row| row["design"] == "2")
        .unwrap();
    assert_eq!(exact["title"], "=SUM(1)");
    assert_eq!(exact["image_height_mm"], 212);
    assert_eq!(exact.get("series"), None);
    let views = row("statements", "of", "design:2");
    let told: Vec<[&str; 4]> = views
        .iter()
        .map(|row| ["about", "position", "value", "certainty"].map(|column| row[column].as_str()))
        .collect();
    assert_eq!(
        told,
        [
            ["date", "1", "1927~", "probable"],
            ["date", "2", "'-0044/..", "certain"],
            ["image", "1", "", "certain"]
        ]
    );
    assert_eq!(views[2]["height_mm"], "212");
}

/// The sheets of a holder: those on its page, each once, with its accession number.
#[test]
fn the_table_of_a_holder_has_exactly_the_sheets_of_its_page() {
    let mut met = 0;
    let holders = SITE
        .files
        .keys()
        .filter_map(|path| path.strip_suffix("/index.html"));
    let holders: Vec<&str> = holders.filter(|path| path.starts_with("holder/")).collect();
    assert!(holders.len() > 10);
    for holder in holders {
        let page = page(&SITE, &format!("{holder}/"));
        let tables: Vec<&str> = page.split("<table class=\"checklist\"").skip(1).collect();
        let shown: Vec<&str> = tables
            .iter()
            .flat_map(|table| {
                let table = table.split("</table>").next().unwrap();
                let links = table.split("href=\"../../impression/").skip(1);
                links.map(|rest| rest.split('/').next().unwrap())
            })
            .collect();
        let is_linked = page.contains("href=\"./sheets.csv\"");
        assert_eq!(is_linked, !shown.is_empty(), "{holder}");
        // At a former address, and at that of a holder that was taken over, stands a copy for programs, without a link.
        if !is_linked {
            continue;
        }
        let rows = read_csv(&SITE.files[&format!("{holder}/sheets.csv")]);
        let told: Vec<&str> = rows
            .iter()
            .map(|row| {
                let address = row["address"].strip_prefix(BASE).unwrap();
                address
                    .strip_prefix("impression/")
                    .unwrap()
                    .trim_end_matches('/')
            })
            .collect();
        assert_eq!(told, shown, "{holder}");
        for row in &rows {
            met += 1;
            assert!(
                page.contains(&row["accession"].replace('&', "&amp;")),
                "{holder} {row:?}"
            );
            assert!(row["number"].starts_with("OP "));
        }
        let same = json(&SITE, &format!("{holder}/sheets.json"));
        assert_eq!(list(&same).len(), rows.len());
    }
    assert!(met > 100, "{met}");
}

#[test]
fn the_pages_about_the_data_name_every_table_and_column() {
    let data = page(&SITE, "data/");
    let fields = page(&SITE, "data/fields/");
    let package = package(&SITE);
    for resource in list(&package["resources"]) {
        let name = text(resource, "name");
        for told in ["title", "description"] {
            assert!(
                !text(resource, told).starts_with("table-"),
                "{name} has no words"
            );
        }
        for ending in ["csv", "json"] {
            assert!(
                data.contains(&format!("href=\"./{name}.{ending}\"")),
                "{name}"
            );
        }
        let part = fields
            .split(&format!("id=\"table-{name}\""))
            .nth(1)
            .unwrap();
        let part = part.split("</section>").next().unwrap();
        for field in list(&resource["schema"]["fields"]) {
            let column = format!("<code>{}</code>", text(field, "name"));
            assert!(part.contains(&column), "{name} {column}");
        }
    }
    assert!(fields.contains("id=\"table-sheets\""));
}
