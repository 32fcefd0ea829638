//! Identification on a design of 40 states, 6 printings and 60 points.

use std::fmt::Write as _;
use std::fs;

use keyblock::model::certainty::Certainty;
use keyblock::model::key::Key;
use keyblock::read::read;
use keyblock::study::identify::{Observed, identify};
use keyblock::study::index::{PointAt, ValueAt};
use keyblock::study::next_point::next_points;
use keyblock::study::scale::{Answer, Scale};
use keyblock::study::separate::separability;
use keyblock::study::table::DiagnosticTable;

use super::{median, tell};

const STATES: usize = 40;
const PRINTINGS: usize = 6;
const POINTS: usize = 60;

/// A record in which each state differs from the next at a few points and every printing contains
/// every state.
fn record() -> String {
    let mut toml = String::from("titles = [{ text = \"Forty States\" }]\n");
    for point in 0..POINTS {
        let (kind, rests_on) = match point % 6 {
            0 => ("kind = \"presence\"", "matrix"),
            1 => ("kind = \"count\"", "matrix"),
            2 => (
                "kind = \"measure\"\nunit = \"mm\"\ntolerance = 1.5",
                "matrix",
            ),
            3 => (
                "kind = \"stage\"\nstages = [\"s0\", \"s1\", \"s2\", \"s3\"]",
                "matrix",
            ),
            4 => (
                "kind = \"choice\"\nvalues = { s0 = \"a\", s1 = \"b\", s2 = \"c\" }",
                "inking",
            ),
            _ => (
                "kind = \"choice\"\nvalues = { s0 = \"a\", s1 = \"b\", s2 = \"c\" }",
                "paper",
            ),
        };
        write!(
            toml,
            "[[points]]\nkey = \"p{point}\"\nask = \"?\"\nrests_on = \"{rests_on}\"\n{kind}\n"
        )
        .unwrap();
    }
    for state in 0..STATES {
        write!(toml, "[[states]]\nkey = \"s{state}\"\n[states.shows]\n").unwrap();
        for point in 0..POINTS {
            let step = (state + point) / 7;
            let value = match point % 6 {
                0 => format!("\"{}\"", ["absent", "present"][step % 2]),
                1 => format!("{}", 2 + step % 5),
                2 => format!("{}", 200 + 5 * (step % 6)),
                3 => format!("\"s{}\"", step % 4),
                _ => continue,
            };
            writeln!(toml, "p{point} = {value}").unwrap();
        }
    }
    for printing in 0..PRINTINGS {
        write!(
            toml,
            "[[printings]]\nkey = \"r{printing}\"\nkind = \"restrike\"\nstates = \"all\"\n[printings.shows]\n"
        )
        .unwrap();
        for point in (0..POINTS).filter(|p| p % 6 > 3) {
            writeln!(toml, "p{point} = \"s{}\"", (printing + point / 6) % 3).unwrap();
        }
    }
    toml
}

pub fn measure() {
    let folder = tempfile::tempdir().unwrap();
    let design = folder.path().join("records/designs/1");
    fs::create_dir_all(&design).unwrap();
    fs::write(
        folder.path().join("catalogue.toml"),
        "title = \"The Prints\"\nsiglum = \"TP\"\nartist = \"artist\"\nlanguage = \"en\"\naddress = \"https://prints.example.org\"\n",
    )
    .unwrap();
    fs::create_dir_all(folder.path().join("records/people")).unwrap();
    fs::write(
        folder.path().join("records/people/artist.toml"),
        "name = \"The Artist\"\n",
    )
    .unwrap();
    let record = record();
    fs::write(design.join("design.toml"), &record).unwrap();
    let catalogue = read(folder.path()).catalogue;
    let design = &catalogue.designs[&"1".parse::<Key>().unwrap()];
    let table = DiagnosticTable::of(design);
    assert_eq!(table.candidates.len(), STATES * PRINTINGS);
    let observed = [
        answer(&table, 0, 1),
        answer(&table, 4, 0),
        answer(&table, 3, 2),
    ];
    let time = median(21, || {
        let table = DiagnosticTable::of(design);
        let identified = identify(&table, &observed);
        let next = next_points(&table, &identified, &observed);
        (separability(&table), next, identified)
    });
    let floor = median(21, || read(folder.path()).catalogue.designs.len());
    tell(
        "identify (40 states, 6 printings, 60 points; smallest set included)",
        time,
        "reading the record",
        floor,
    );
    // 24 points are the most for which the smallest set is exact.
    let mut small = table.clone();
    small.points = table.points.iter().take(24).cloned().collect();
    let time = median(21, || separability(&small));
    tell(
        "the smallest set, exact, of 24 points",
        time,
        "reading the record",
        floor,
    );
}

fn answer(table: &DiagnosticTable, point: usize, place: usize) -> Observed {
    let point = PointAt::new(point);
    let answer = match &table.points[point].scale {
        Scale::Measure(_) => Answer::Number(205.0),
        _ => Answer::OneOf([ValueAt::new(place)].into()),
    };
    Observed {
        point,
        answer,
        certainty: Certainty::Certain,
    }
}
