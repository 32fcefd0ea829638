//! The rows of the census against docs/definitions.md, "Distinct sheets" and "Rows of the census": small catalogues
//! made by chance, counted by trying every way to resolve their doubts.

use std::collections::{BTreeMap, BTreeSet};
use std::fmt::Write as _;

use crate::census_pages::part;
use crate::pages::{page, site_of};
use crate::program::{keyblock, text};
use crate::small::lay_down;

/// Pseudo-random numbers, the same at every run (Lehmer's generator, Park and Miller 1988).
struct Lehmer(u64);

impl Lehmer {
    fn below(&mut self, n: usize) -> usize {
        self.0 = self.0 * 48_271 % 2_147_483_647;
        usize::try_from(self.0 / 7).unwrap() % n
    }

    fn chance(&mut self, percent: usize) -> bool {
        self.below(100) < percent
    }
}

/// What a record says of one kind of row: the values it allows; none where it says nothing.
type Said = BTreeSet<String>;

/// The kinds of rows that are compared.
const ROWS: [&str; 4] = ["status", "state", "printing", "holder"];

/// A record: what it says, and its links to records before it.
struct Record {
    said: BTreeMap<&'static str, Said>,
    same: Option<usize>,
    maybe: Vec<usize>,
    not: Vec<usize>,
}

fn some(numbers: &mut Lehmer, of: &[&str]) -> Said {
    let mut said = Said::new();
    for value in of {
        if numbers.chance(40) {
            said.insert((*value).to_owned());
        }
    }
    said
}

fn record(numbers: &mut Lehmer, number: usize) -> Record {
    let status = ["located", "untraced", "untraced", "destroyed"][numbers.below(4)];
    let holder = ["", "museum", "library"][numbers.below(3)];
    let said = BTreeMap::from([
        ("status", Said::from([status.to_owned()])),
        ("state", some(numbers, &["a", "b", "c"])),
        ("printing", some(numbers, &["late", "own"])),
        (
            "holder",
            Some(holder.to_owned())
                .filter(|h| !h.is_empty())
                .into_iter()
                .collect(),
        ),
    ]);
    let before = |numbers: &mut Lehmer, percent| -> Vec<usize> {
        (0..number).filter(|_| numbers.chance(percent)).collect()
    };
    let same = numbers.chance(20).then(|| numbers.below(number.max(1)));
    Record {
        said,
        same: same.filter(|other| *other < number),
        maybe: before(numbers, 35),
        not: before(numbers, 8),
    }
}

fn toml(number: usize, record: &Record) -> String {
    let mut text = format!("-- records/designs/1/impressions/{}.toml\n", number + 1);
    let list = |said: &Said| {
        let values: Vec<String> = said.iter().map(|v| format!("\"{v}\"")).collect();
        format!("[{}]", values.join(", "))
    };
    let one = |of: &str| record.said[of].first().cloned();
    let _ = writeln!(text, "status = \"{}\"", one("status").unwrap());
    if let Some(holder) = one("holder") {
        let _ = writeln!(text, "holder = \"{holder}\"");
    }
    let same: Vec<usize> = record.same.into_iter().collect();
    for (link, others) in [
        ("same_as", &same),
        ("maybe_same_as", &record.maybe),
        ("not_same_as", &record.not),
    ] {
        if !others.is_empty() {
            let others = others
                .iter()
                .map(|o| format!("{{ impression = \"1.{}\" }}", o + 1));
            let _ = writeln!(text, "{link} = [{}]", others.collect::<Vec<_>>().join(", "));
        }
    }
    let (state, printing) = (&record.said["state"], &record.said["printing"]);
    if !state.is_empty() || !printing.is_empty() {
        text.push_str("[identified]\n");
        for (of, said) in [("state", state), ("printing", printing)] {
            if !said.is_empty() {
                let _ = writeln!(text, "{of} = {}", list(said));
            }
        }
    }
    text
}

/// The values of a sheet of which there are these records: what all that say anything allow; where they share none,
/// everything any of them allows. `untraced` says nothing where another says more. None: nothing is recorded.
fn values(of: &str, records: &[&Record]) -> BTreeSet<Option<String>> {
    let mut said: Vec<&Said> = records
        .iter()
        .map(|r| &r.said[of])
        .filter(|s| !s.is_empty())
        .collect();
    let untraced = Said::from(["untraced".to_owned()]);
    if of == "status" && said.iter().any(|s| **s != untraced) {
        said.retain(|s| **s != untraced);
    }
    let Some(first) = said.first() else {
        return BTreeSet::from([None]);
    };
    let all = first.iter().filter(|v| said.iter().all(|s| s.contains(*v)));
    let all: BTreeSet<Option<String>> = all.cloned().map(Some).collect();
    if all.is_empty() {
        said.into_iter().flatten().cloned().map(Some).collect()
    } else {
        all
    }
}

/// The groups of records, each the sheet that `same_as` makes of them.
fn groups(records: &[Record]) -> Vec<Vec<usize>> {
    let mut group: Vec<usize> = (0..records.len()).collect();
    for (at, record) in records.iter().enumerate() {
        if let Some(other) = record.same {
            let (from, to) = (group[at], group[other]);
            group
                .iter_mut()
                .filter(|g| **g == from)
                .for_each(|g| *g = to);
        }
    }
    let mut groups: BTreeMap<usize, Vec<usize>> = BTreeMap::new();
    for (at, group) in group.iter().enumerate() {
        groups.entry(*group).or_default().push(at);
    }
    groups.into_values().collect()
}

/// Every way to make sheets of the groups: each a list of sheets, each of these a list of groups every two of which
/// may be one.
fn resolutions(may_be_one: &dyn Fn(usize, usize) -> bool, groups: usize) -> Vec<Vec<Vec<usize>>> {
    let mut ways: Vec<Vec<Vec<usize>>> = vec![Vec::new()];
    for group in 0..groups {
        let mut next = Vec::new();
        for way in ways {
            for (at, sheet) in way.iter().enumerate() {
                if sheet.iter().all(|other| may_be_one(*other, group)) {
                    let mut joined = way.clone();
                    joined[at].push(group);
                    next.push(joined);
                }
            }
            let mut alone = way;
            alone.push(vec![group]);
            next.push(alone);
        }
        ways = next;
    }
    ways
}

/// A figure: at least and at most.
type Figure = (u64, u64);

/// All sheets, and each row by kind and value; null: nothing recorded.
fn counted(records: &[Record]) -> (Figure, BTreeMap<(&'static str, Option<String>), Figure>) {
    let groups = groups(records);
    let some_pair = |a: &[usize], b: &[usize], links: &dyn Fn(&Record) -> &Vec<usize>| {
        a.iter().any(|x| {
            b.iter()
                .any(|y| links(&records[*x]).contains(y) || links(&records[*y]).contains(x))
        })
    };
    let may_be_one = |a: usize, b: usize| {
        let (a, b) = (&groups[a], &groups[b]);
        some_pair(a, b, &|r| &r.maybe) && !some_pair(a, b, &|r| &r.not)
    };
    let of_sheet = |of: &str, sheet: &[usize]| {
        let records: Vec<&Record> = sheet
            .iter()
            .flat_map(|group| &groups[*group])
            .map(|at| &records[*at])
            .collect();
        values(of, &records)
    };
    let number = |n: usize| u64::try_from(n).unwrap();
    let ways = resolutions(&may_be_one, groups.len());
    let fewest = ways.iter().map(Vec::len).min().unwrap();
    let mut rows = BTreeMap::new();
    for of in ROWS {
        let of_groups: Vec<_> = (0..groups.len())
            .map(|group| of_sheet(of, &[group]))
            .collect();
        let all: BTreeSet<Option<String>> = of_groups.iter().flatten().cloned().collect();
        for value in all {
            let at_most = of_groups
                .iter()
                .filter(|values| values.contains(&value))
                .count();
            let alone = BTreeSet::from([value.clone()]);
            let only = |way: &Vec<Vec<usize>>| {
                way.iter()
                    .filter(|sheet| of_sheet(of, sheet) == alone)
                    .count()
            };
            let at_least = ways.iter().map(only).min().unwrap();
            rows.insert((of, value), (number(at_least), number(at_most)));
        }
    }
    ((number(fewest), number(groups.len())), rows)
}

/// The figures that `census --json` gives of the same records.
fn said_by_the_program(
    records: &[Record],
) -> (Figure, BTreeMap<(&'static str, Option<String>), Figure>) {
    let design = "-- records/designs/1/design.toml\ntitles = [{ text = \"The Ferry\" }]\n\
        states = [{ key = \"a\" }, { key = \"b\" }, { key = \"c\" }]\n\
        printings = [{ key = \"own\", kind = \"artist\", states = \"all\" }, { key = \"late\", kind = \"posthumous\", states = \"all\" }]\n\
        -- records/holders/museum.toml\nname = \"Harbour Museum\"\nkind = \"museum\"\n\
        -- records/holders/library.toml\nname = \"Town Library\"\nkind = \"library\"\n";
    let records: String = records
        .iter()
        .enumerate()
        .map(|(at, r)| toml(at, r))
        .collect();
    let folder = lay_down(&[design, &records]);
    let counted = keyblock(&["census", "1", "--in", text(folder.path()), "--json"]);
    assert_eq!(counted.code, Some(0), "{}\n{records}", counted.err);
    let document: serde_json::Value = serde_json::from_str(&counted.out).unwrap();
    let figure = |sheets: &serde_json::Value| {
        assert_eq!(sheets["exact"], true, "{records}");
        (
            sheets["at_least"].as_u64().unwrap(),
            sheets["at_most"].as_u64().unwrap(),
        )
    };
    let mut rows = BTreeMap::new();
    for of in ROWS {
        for row in document["by"][of].as_array().unwrap() {
            let key = row["key"].as_str().map(str::to_owned);
            rows.insert((of, key), figure(&row["sheets"]));
        }
    }
    (figure(&document["sheets"]), rows)
}

#[test]
fn rows_are_those_of_every_way_to_resolve_the_doubts() {
    let mut numbers = Lehmer(14);
    let (mut open, mut spared) = (0, 0);
    for _ in 0..150 {
        let size = 2 + numbers.below(6);
        let records: Vec<Record> = (0..size).map(|at| record(&mut numbers, at)).collect();
        let (expected, found) = (counted(&records), said_by_the_program(&records));
        let shown: String = records
            .iter()
            .enumerate()
            .map(|(at, r)| toml(at, r))
            .collect();
        assert_eq!(found, expected, "{shown}");
        open += usize::from(expected.0.0 < expected.0.1);
        spared += expected.1.values().filter(|(least, _)| *least == 0).count();
    }
    assert!(open > 50 && spared > 100, "{open} {spared}");
}

/// The row of one status, from the status and the other fields of each record.
fn of_status(records: &[&str], status: &str) -> (u64, u64) {
    let design =
        "-- records/designs/1/design.toml\ntitles = [{ text = \"The Ferry\" }]\n".to_owned();
    let records = (1..)
        .zip(records)
        .map(|(n, record)| format!("-- records/designs/1/impressions/{n}.toml\n{record}\n"));
    let folder = lay_down(&[&records.fold(design, |all, one| all + &one)]);
    let counted = keyblock(&["census", "1", "--in", text(folder.path()), "--json"]);
    let document: serde_json::Value = serde_json::from_str(&counted.out).unwrap();
    let rows = document["by"]["status"].as_array().unwrap();
    let row = rows.iter().find(|row| row["key"] == status).unwrap();
    let sheets = &row["sheets"];
    (
        sheets["at_least"].as_u64().unwrap(),
        sheets["at_most"].as_u64().unwrap(),
    )
}

#[test]
fn an_untraced_record_that_may_be_a_located_sheet_is_perhaps_no_untraced_sheet() {
    let lost = "status = \"untraced\"\nmaybe_same_as = [{ impression = \"1.1\" }]";
    let also = "status = \"untraced\"\nmaybe_same_as = [{ impression = \"1.2\" }]";
    let known = "status = \"located\"";
    // Two sheets are located; each lost record may be one of them.
    let records = [known, known, lost, also];
    assert_eq!(of_status(&records, "untraced"), (0, 2));
    // The located sheets are located whatever becomes of the doubts.
    assert_eq!(of_status(&records, "located"), (2, 2));
    // Both may be the one sheet, and not each other: one of the two stays lost.
    assert_eq!(of_status(&[known, lost, lost], "untraced"), (1, 2));
    // Two records joined: the sheet is located.
    let same = "status = \"untraced\"\nsame_as = [{ impression = \"1.1\" }]";
    assert_eq!(of_status(&[known, same], "located"), (1, 1));
}

#[test]
fn tables_by_state_and_printing_tell_firm_probable_and_contradicted_apart() {
    let quay = r#"
-- records/designs/1/design.toml
titles = [{ text = "A Quay" }]
points = [{ key = "moon", ask = "A moon?", kind = "presence", rests_on = "matrix" }]
states = [
  { key = "dark", shows = { moon = "absent" } },
  { key = "moonlit", shows = { moon = "present" } },
]
printings = [
  { key = "own", kind = "artist", states = "all" },
  { key = "late", kind = "posthumous", states = "all" },
]
-- records/holders/museum.toml
name = "Harbour Museum"
kind = "museum"
-- records/holders/library.toml
name = "Town Library"
kind = "library"
"#;
    let sheet = |n: u32, state: &str, certainty: &str, more: &str| {
        format!(
            "-- records/designs/1/impressions/{n}.toml\nstatus = \"located\"\nholder = \"{}\"\n{more}\n\
             identified = {{ state = \"{state}\", printing = \"own\", certainty = \"{certainty}\" }}\n",
            if n == 1 { "library" } else { "museum" }
        )
    };
    let records = [
        sheet(1, "dark", "certain", ""),
        sheet(2, "dark", "probable", ""),
        sheet(3, "dark", "possible", ""),
        sheet(4, "dark", "probable", "observed = { moon = \"present\" }"),
        sheet(5, "moonlit", "certain", "observed = { moon = \"absent\" }"),
        // A second record of a sheet identifies it for certain.
        sheet(6, "dark", "certain", "same_as = [{ impression = \"1.2\" }]"),
    ]
    .concat();
    let folder = lay_down(&[quay, &records]);
    let counted = keyblock(&["census", "1", "--in", text(folder.path()), "--json"]);
    let document: serde_json::Value = serde_json::from_str(&counted.out).unwrap();
    let rows = document["by"]["crossing"].as_array().unwrap();
    let told = |state: &str| {
        let row = rows.iter().find(|row| row["state"] == state).unwrap();
        ["uncertain", "contradicted"].map(|of| row[of].as_u64().unwrap())
    };
    assert_eq!(told("dark"), [1, 1]);
    assert_eq!(told("moonlit"), [0, 1]);

    let site = site_of(&[quay, &records]);
    let census = page(&site, "design/1/census/");
    for table in ["crossing", "holding"] {
        let table = part(census, table);
        assert!(
            table.contains("<span class=\"of-cell\">1 not certain, 1 contradicted</span>"),
            "{table}"
        );
        assert!(
            table.contains("<span class=\"of-cell\">1 contradicted</span>"),
            "{table}"
        );
        assert!(table.contains("Below a figure: how many"), "{table}");
    }
    assert!(page(&site, "design/1/").contains("1 not certain, 1 contradicted"));
    for table in ["by-state", "by-printing"] {
        let table = part(census, table);
        assert!(
            table.contains("; <span class=\"quiet\">1 not certain, "),
            "{table}"
        );
        assert!(
            table.contains("Not certain: identified only as probable"),
            "{table}"
        );
    }
    let file = String::from_utf8(site.files["design/1/census/census.csv"].clone()).unwrap();
    let rows: Vec<&str> = file
        .lines()
        .filter(|l| l.contains("state-printing") || l.contains("holder-state"))
        .collect();
    assert!(
        rows.iter().any(|row| row.trim_end().ends_with(",1,1")),
        "{rows:?}"
    );
    let sized = quay.replace("kind = \"artist\",", "kind = \"artist\", edition = 20,");
    let sized = site_of(&[&sized, &records]);
    let known = "(1 not certain, 2 contradicted) of 20 declared.";
    assert!(part(page(&sized, "design/1/census/"), "declared-editions").contains(known));
    let beside = "<span class=\"of-cell\">1 not certain, 2 contradicted</span>";
    assert!(part(page(&sized, "census/"), "declared-editions").contains(beside));
    let firm = sheet(1, "dark", "certain", "") + &sheet(2, "moonlit", "certain", "");
    assert!(!page(&site_of(&[quay, &firm]), "design/1/census/").contains("Below a figure stands"));
}
