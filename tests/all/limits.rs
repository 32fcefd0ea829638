//! What large catalogues cost, and what is refused because it would cost too much.

use std::fmt::Write as _;
use std::fs;
use std::path::Path;
use std::time::{Duration, Instant};

use keyblock::study::Studies;
use keyblock::study::couplets::couplets;
use keyblock::study::identify::identify;
use keyblock::study::next_point::next_points;

use crate::findings::judged;
use crate::program;
use crate::small::{lay_down, sound};

/// A number that seems to be drawn by chance, below `most`, the same for the same place.
fn drawn(state: u32, point: u32, most: u32) -> u32 {
    let mixed = (state * 7919 + point * 104_729 + 1).wrapping_mul(2_654_435_761);
    ((mixed ^ (mixed >> 15)).wrapping_mul(2_246_822_519) >> 8) % most
}

/// A design of which every state shows something at every point.
fn design(states: u32, points: u32, kind: &str) -> String {
    let mut record = String::from("titles = [{ text = \"The Ferry\" }]\n");
    for point in 0..points {
        let scale = match kind {
            "measure" => "unit = \"mm\"\ntolerance = 0.01\n",
            "choice" => {
                "values = { a = \"a\", b = \"b\", c = \"c\", d = \"d\", e = \"e\", f = \"f\" }\n"
            }
            _ => "",
        };
        write!(
            record,
            "[[points]]\nkey = \"p{point}\"\nask = \"?\"\nkind = \"{kind}\"\nrests_on = \"matrix\"\n{scale}"
        )
        .unwrap();
    }
    for state in 0..states {
        write!(record, "[[states]]\nkey = \"s{state}\"\n[states.shows]\n").unwrap();
        // One in eight is not recorded, which costs most: such a state follows every lead.
        for point in (0..points).filter(|point| drawn(state, *point, 8) > 0) {
            let shown = match kind {
                "presence" => ["\"present\"", "\"absent\""][drawn(state, point, 2) as usize].into(),
                "count" => drawn(state, point, 200).to_string(),
                "measure" => format!("{}.{}", 10 + drawn(state, point, 2000), state % 10),
                _ => format!(
                    "\"{}\"",
                    ["a", "b", "c", "d", "e", "f"][drawn(state, point, 6) as usize]
                ),
            };
            writeln!(record, "p{point} = {shown}").unwrap();
        }
    }
    record
}

/// 200 states at 200 points took 11 s to compile where all are presences and minutes where they are
/// measures with a fine tolerance, when each step of a measure was weighed for each state.
#[test]
fn two_hundred_states_at_two_hundred_points_are_compared_in_bounded_time() {
    for kind in ["presence", "count", "measure", "choice"] {
        let record = design(200, 200, kind);
        let folder = lay_down(&[&format!("-- records/designs/1/design.toml\n{record}")]);
        let catalogue = sound(folder.path());
        let begun = Instant::now();
        let studies = Studies::of(&catalogue);
        let study = studies.designs.values().next().unwrap();
        let key = couplets(&study.table);
        let next = next_points(&study.table, &identify(&study.table, &[]), &[]);
        let took = begun.elapsed();
        println!("{kind}: {took:.1?}, {} couplets", key.couplets.len());
        assert_eq!((study.table.candidates.len(), next.len()), (200, 200));
        assert!(next[0].bits > 0.5, "{kind}: {next:?}");
        assert!(key.couplets.len() > 10, "{kind}");
        assert!(took < Duration::from_secs(120), "{kind} took {took:?}");
    }
}

/// Every finding on a catalogue with this design and a sheet that refers to its parts, as text.
fn told(record: &str) -> Vec<String> {
    let sheet =
        "status = \"untraced\"\nidentified = { state = \"s1\" }\nobserved = { p0 = \"present\" }\n";
    let folder = lay_down(&[&format!(
        "-- records/designs/1/design.toml\n{record}\n-- records/designs/1/impressions/1.toml\n{sheet}"
    )]);
    let judged = judged(folder.path());
    let findings = judged.findings.iter();
    let told = findings.map(|finding| {
        let at = judged.catalogue.sources.position(finding.at.place);
        format!("{}:{} {}", at.line, finding.code.as_str(), finding.message)
    });
    told.collect()
}

/// A catalogue with a list that is too long.
pub fn list_too_long() -> tempfile::TempDir {
    let followed = "\"s0\", ".repeat(1001);
    let record = format!("{}follows = [{followed}]\n", design(1, 0, "presence"));
    let record = record.replace("[states.shows]\n", "");
    lay_down(&[&format!("-- records/designs/1/design.toml\n{record}")])
}

/// A catalogue with a design of which too much would be compared.
pub fn design_too_large() -> tempfile::TempDir {
    let record = design(101, 1, "presence") + &printings(10);
    lay_down(&[&format!("-- records/designs/1/design.toml\n{record}")])
}

/// Printings that contain all states.
fn printings(count: u32) -> String {
    let printing =
        |n| format!("[[printings]]\nkey = \"r{n}\"\nkind = \"artist\"\nstates = \"all\"\n");
    (0..count).map(printing).collect()
}

#[test]
fn a_list_longer_than_any_is_told_once_and_the_file_is_not_read() {
    let folder = list_too_long();
    let judged = judged(folder.path());
    let codes: Vec<&str> = judged.findings.iter().map(|f| f.code.as_str()).collect();
    assert_eq!(codes, ["list-too-long"], "{:?}", judged.findings);
    let of_states = told(&design(1001, 0, "presence"));
    assert_eq!(
        of_states,
        ["3002:list-too-long this list has more than 1000 items, so the file is not read"]
    );
}

#[test]
fn more_states_and_points_than_can_be_compared_are_told_once() {
    let large = [
        (101, 1, 10, "1010 states, each counted once"),
        (500, 101, 0, "101 points for 500 states, each counted once"),
    ];
    for (states, points, of_printing, begins) in large {
        let told = told(&(design(states, points, "presence") + &printings(of_printing)));
        assert_eq!(told.len(), 1, "{told:#?}");
        assert!(
            told[0].contains("design-too-large") && told[0].contains(begins),
            "{told:?}"
        );
    }
    // The largest that is compared.
    let told = told(&(design(100, 50, "presence") + &printings(10)));
    let refused = told.iter().filter(|told| told.contains("design-too-large"));
    assert_eq!(refused.count(), 0, "{told:#?}");
}

/// A catalogue with `count` records of one sheet.
fn records_of_one_sheet(count: u32) -> tempfile::TempDir {
    let folder = lay_down(&[&format!(
        "-- records/designs/1/design.toml\n{}",
        design(1, 0, "")
    )]);
    let impressions = folder.path().join("records/designs/1/impressions");
    fs::create_dir_all(&impressions).unwrap();
    for n in 1..=count {
        let link = match n {
            1 => String::new(),
            _ => format!("same_as = [{{ impression = \"1.{}\" }}]\n", n - 1),
        };
        let text = format!("status = \"untraced\"\n{link}");
        fs::write(impressions.join(format!("{n}.toml")), text).unwrap();
    }
    folder
}

/// A catalogue with a sheet that has more records than any.
pub fn sheet_too_often() -> tempfile::TempDir {
    records_of_one_sheet(101)
}

#[test]
fn more_records_of_one_sheet_than_any_has_are_refused() {
    let codes = |folder: &tempfile::TempDir| -> Vec<&str> {
        let judged = judged(folder.path());
        judged.findings.iter().map(|f| f.code.as_str()).collect()
    };
    assert_eq!(codes(&records_of_one_sheet(100)), [""; 0]);
    assert_eq!(codes(&sheet_too_often()), ["sheet-too-often"]);
}

/// Impressions of one design with all that is compared between them: holders, numbers, sizes, owners, dates
/// of sightings, and doubts whether two are one sheet.
fn impressions(folder: &Path, count: u32) {
    let write = |path: String, text: &str| {
        let path = folder.join(path);
        fs::create_dir_all(path.parent().unwrap()).unwrap();
        fs::write(path, text).unwrap();
    };
    for holder in 0..300 {
        let text =
            format!("name = \"Museum {holder}\"\nkind = \"museum\"\nplace = \"Town {holder}\"\n");
        write(format!("records/holders/museum-{holder}.toml"), &text);
    }
    for n in 1..=count {
        let mut text = format!(
            "holder = \"museum-{}\"\naccession = \"1.{n}\"\nstatus = \"located\"\nkind = \"edition\"\n\
             numbering = \"{}/60\"\nobserved = {{ p0 = \"present\" }}\n\
             identified = {{ state = \"s{}\", printing = \"r{}\", certainty = \"probable\", basis = \"photograph\" }}\n\
             sheet = {{ size = [{}, {}] }}\n\
             sightings = [{{ date = \"{}\" }}, {{ date = \"1990\", basis = \"literature\" }}]\n",
            n * 13 % 300,
            1 + n % 60,
            n % 4,
            n % 2,
            300 + n % 20,
            200 + n % 20,
            1930 + n % 60
        );
        match n % 100 {
            2..=5 | 12..=41 => {
                writeln!(text, "maybe_same_as = [{{ impression = \"1.{}\" }}]", n - 1).unwrap();
            }
            50..=55 => writeln!(text, "same_as = [{{ impression = \"1.{}\" }}]", n - 1).unwrap(),
            _ => {}
        }
        write!(
            text,
            "[[provenance]]\nowner = {{ name = \"Owner {}\" }}\nfrom = \"{}\"\nhow = \"purchase\"\n",
            n % 40,
            1950 + n % 30
        )
        .unwrap();
        write(format!("records/designs/1/impressions/{n}.toml"), &text);
    }
}

/// `KEYBLOCK_IMPRESSIONS=50000` compiles so many; see SECURITY.md for the time of the program as it is
/// released. What takes a time that grows with their square shows already at the number here.
#[test]
fn thousands_of_impressions_of_one_design_are_compiled_and_counted() {
    let count = std::env::var("KEYBLOCK_IMPRESSIONS").map_or(1500, |n| n.parse().unwrap());
    let record = design(4, 4, "presence") + &printings(2);
    let folder = lay_down(&[&format!("-- records/designs/1/design.toml\n{record}")]);
    impressions(folder.path(), count);
    let begun = Instant::now();
    let summary = program::compile(folder.path());
    let compiled = begun.elapsed();
    assert!(
        summary.contains(&format!(" {count} impressions,")),
        "{summary}"
    );
    let page = folder
        .path()
        .join(format!("web/impression/1.{count}/index.html"));
    let page = fs::read_to_string(page).unwrap();
    assert!(page.contains(&format!("1.{count}")), "{page}");
    let records = program::text(folder.path());
    let counted = program::keyblock(&["census", "1", "--in", records]);
    assert_eq!(counted.code, Some(0), "{}", counted.err);
    let took = begun.elapsed();
    println!("{count} impressions: compiled in {compiled:.1?}, counted after {took:.1?}");
    assert!(took < Duration::from_secs(180), "{took:?}");
}
