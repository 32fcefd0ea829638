//! References and states, each with what is read of it.

use super::*;
use crate::exchange::intake::reading::Doubt;

fn said(text: &str) -> String {
    let references = states(text).is;
    let told = references.iter().map(|reference| {
        let mut parts = Vec::new();
        if reference.is_not_in {
            parts.push("not in".to_owned());
        }
        parts.extend(reference.author.clone());
        parts.extend(reference.number.clone().map(|n| format!("no. {n}")));
        parts.extend(reference.state.as_ref().map(SaidState::written));
        parts.join(" ")
    });
    told.collect::<Vec<_>>().join("; ")
}

#[test]
fn a_number_alone_is_one_where_the_column_holds_numbers() {
    let number = |text: &str| {
        let reading = catalogue_numbers(text);
        let number = reading.is.first().and_then(|said| said.number.clone());
        number.filter(|_| reading.left.is_empty())
    };
    assert_eq!(number(" 12a "), Some("12a".to_owned()));
    assert_eq!(number("9"), Some("9".to_owned()));
    for text in ["12ab", "1912 12", "123456", "a", ""] {
        assert_eq!(number(text), None, "{text}");
    }
    assert_eq!(states("9").is, []);
}

/// Forms of docs/trade.md, "Writing states", with invented catalogues.
#[test]
fn states_and_numbers_are_read_whole() {
    for (text, reading) in [
        ("B. 12 ii/iii", "B. no. 12 ii/iii"),
        ("Brook 1955, W 12 III", "Brook 1955 no. W 12 iii"),
        ("Brook 1955, 12 III", "Brook 1955 no. 12 iii"),
        ("non décrit par Brook", "not in Brook"),
        ("iii/v", "iii/v"),
        ("ii", "ii"),
        ("II (of IV)", "ii/iv"),
        ("II (v. III)", "ii/iii"),
        ("2nd of 3 states", "ii/iii"),
        ("3rd of 5 states", "iii/v"),
        ("2nd state", "ii"),
        ("second state", "ii"),
        ("state ii", "ii"),
        ("State II of IV", "ii/iv"),
        ("state 2/4", "ii/iv"),
        ("II. Zustand", "ii"),
        ("2. Zustand von 3", "ii/iii"),
        ("Zustand II von III", "ii/iii"),
        ("2e état sur 3", "ii/iii"),
        ("IIe état", "ii"),
        ("2de staat", "ii"),
        ("第2ステート", "ii"),
        ("only state", "only state"),
        ("einziger Zustand", "only state"),
        ("état unique", "only state"),
        ("enige staat", "only state"),
        ("ii or iii", "ii or iii"),
        ("undescribed", "undescribed"),
        ("undescribed state between II and III", "between ii and iii"),
        ("Brook 176/VII/b (of d)", "Brook no. 176 vii/b"),
        ("Mill 14 iii", "Mill no. 14 iii"),
        ("Mill 1955, 14 iii/v", "Mill 1955 no. 14 iii/v"),
        ("Mill, no. 12a", "Mill no. 12a"),
        ("B. 12; M. 7 ii", "B. no. 12; M. no. 7 ii"),
        ("not in Mill", "not in Mill"),
    ] {
        assert_eq!(said(text), reading, "{text}");
        let reading = states(text);
        assert_eq!(reading.left_over(text), [""; 0], "{text}");
    }
}

#[test]
fn a_state_above_their_number_is_doubtful() {
    assert_eq!(states("iv/iii").doubts, [Doubt::AboveStates]);
    assert_eq!(states("ii/iii").doubts, []);
}

#[test]
fn an_old_state_that_was_split_gives_either() {
    let pairs = [(1, vec!["i"]), (2, vec!["ii", "iii"]), (3, vec!["iv"])];
    let old = |text: &str| states(text).is[0].state.clone().unwrap();
    let now = |text: &str| translated(&old(text), &pairs);
    assert_eq!(now("ii/iii").may_be, ["ii", "iii"]);
    assert_eq!(now("iii/iii").may_be, ["iv"]);
    assert_eq!(now("ii or iii").may_be, ["ii", "iii", "iv"]);
    assert_eq!(now("only state").may_be, ["i"]);
    assert_eq!(now("iv").unknown, [4]);
    assert!(now("undescribed").may_be.is_empty());
}
