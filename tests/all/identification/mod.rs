//! Which state and printing a sheet can be, checked against independent computations.
//!
//! The definitions are those of docs/definitions.md. The computations here are written from the definitions
//! alone, candidate by candidate, and use nothing of the library but the record.

use keyblock::model::certainty::Certainty;
use keyblock::model::key::Key;
use keyblock::study::identify::{Observed, identify};
use keyblock::study::index::ValueAt;
use keyblock::study::scale::{Answer, Scale};
use keyblock::study::table::DiagnosticTable;

use crate::small::studied;

/// Properties that every identification has.
mod always;
/// Made-up designs, computed from the text of the definitions.
mod brute;
/// A design of every kind of point, worked through by hand and with a reference library.
mod by_hand;
/// Published keys, tables and trees carried through the couplets.
mod couplets;
/// The evidence as it is put to people.
mod evidence;
/// The information that the next point is expected to give.
mod information;
/// Small designs made up at random.
pub mod made_up;
/// The points that separate candidates, and the smallest sets of them.
mod separability;
/// Rules of the trade.
mod trade;

pub fn key(text: &str) -> Key {
    text.parse().unwrap()
}

pub fn design(toml: &str) -> String {
    format!("-- records/designs/1/design.toml\ntitles = [{{ text = \"A Quay\" }}]\n{toml}\n")
}

/// The table of the one design of a literal.
pub fn table(literals: &[&str]) -> DiagnosticTable {
    let (_, studies) = studied(literals);
    studies.designs[&key("1")].table.clone()
}

/// "a/own", "b/–".
pub fn names(table: &DiagnosticTable) -> Vec<String> {
    let name = |at: &keyblock::study::table::CandidateRow| {
        let printing = at.printing.as_ref().map_or("–", Key::as_str);
        let state = at.state.as_ref().map_or("–", Key::as_str);
        format!("{state}/{printing}")
    };
    table.candidates.iter().map(name).collect()
}

pub fn seen(
    table: &DiagnosticTable,
    point: &str,
    words: &[&str],
    certainty: Certainty,
) -> Observed {
    let at = table.points.position(|p| p.key.as_str() == point).unwrap();
    let answer = match &table.points[at].scale {
        Scale::Measure(_) => Answer::Number(words[0].parse().unwrap()),
        Scale::Words(of) => {
            let place = |word: &&str| of.iter().position(|w| w.as_str() == *word).unwrap();
            Answer::OneOf(words.iter().map(place).map(ValueAt::new).collect())
        }
        Scale::Counts(counts) => {
            let place = |word: &&str| {
                let n: u32 = word.parse().unwrap();
                counts.binary_search(&n).unwrap_or(counts.len())
            };
            Answer::OneOf(words.iter().map(place).map(ValueAt::new).collect())
        }
    };
    Observed {
        point: at,
        answer,
        certainty,
    }
}

pub fn certainly(table: &DiagnosticTable, point: &str, words: &[&str]) -> Observed {
    seen(table, point, words, Certainty::Certain)
}

pub fn left(table: &DiagnosticTable, observed: &[Observed]) -> Vec<String> {
    let names = names(table);
    let identified = identify(table, observed);
    let left = identified.left();
    left.map(|at| names[at.index()].clone()).collect()
}

#[track_caller]
pub fn assert_near(a: f64, b: f64) {
    assert!((a - b).abs() < 1e-9, "{a} is not {b}");
}
