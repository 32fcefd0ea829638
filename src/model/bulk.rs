//! Findings in bulk: what is listed where one mistake was made in a thousand records.
//!
//! In: findings in their order. Out: the same as [`CodeGroup`]s. Of a code with more than [`MOST_LISTED`] findings, the
//! first [`SHOWN`] stand in one group, with the number of the others and the values at fault by frequency ([`Others`]).
//! Every other finding is a group by itself. Printing is elsewhere (`cli::report`, `proof::answer`).

use std::cmp::Reverse;
use std::collections::BTreeMap;

use super::codes::Code;
use super::finding::Finding;
use super::natural::natural_order;
use super::place::Sources;

/// The most findings of one code that are all listed.
pub const MOST_LISTED: usize = 10;

/// How many are listed of a code that has more.
pub const SHOWN: usize = 3;

/// The most characters of a value at fault.
const LONGEST_VALUE: usize = 60;

/// How much is listed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Extent {
    /// Of a code with more than [`MOST_LISTED`] findings, the first [`SHOWN`].
    Short,
    /// Every finding.
    Whole,
}

/// Findings that are listed together: one, or the first of many of one code.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct CodeGroup<'f> {
    /// The findings that are listed, at least one, in their order.
    pub listed: Vec<&'f Finding>,
    /// The other findings of the code; `None` where every finding is listed.
    pub others: Option<Others>,
}

/// The findings of a code that are not listed.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Others {
    /// How many there are.
    pub count: usize,
    /// What is at fault in all findings of the code, those that are listed included, the most frequent first.
    pub faults: Vec<Fault>,
}

/// What is at fault in some findings of a code.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Fault {
    /// In how many.
    pub count: usize,
    /// The value as it is written in the record; the message where something is missing, or where the finding is about a
    /// whole file. On one line, cut after 60 characters.
    pub text: String,
    /// Whether that is the value, not the message.
    pub is_value: bool,
}

/// The groups of `findings`. A group stands where its first finding stood.
#[must_use]
pub fn groups<'f>(
    findings: impl IntoIterator<Item = &'f Finding>,
    sources: &Sources,
    extent: Extent,
) -> Vec<CodeGroup<'f>> {
    let findings: Vec<&Finding> = findings.into_iter().collect();
    let mut of_code: BTreeMap<Code, Vec<&Finding>> = BTreeMap::new();
    if extent == Extent::Short {
        for finding in &findings {
            of_code.entry(finding.code).or_default().push(finding);
        }
        of_code.retain(|_, all| all.len() > MOST_LISTED);
    }
    let bulk: Vec<Code> = of_code.keys().copied().collect();
    let mut groups = Vec::new();
    for finding in findings {
        if !bulk.contains(&finding.code) {
            groups.push(CodeGroup {
                listed: vec![finding],
                others: None,
            });
        } else if let Some(all) = of_code.remove(&finding.code) {
            groups.push(CodeGroup {
                listed: all.iter().take(SHOWN).copied().collect(),
                others: Some(Others {
                    count: all.len() - SHOWN,
                    faults: by_frequency(&all, sources),
                }),
            });
        }
    }
    groups
}

/// The codes of findings, each with its number of findings: errors before doubts and doubts before hints, then the most
/// frequent first.
#[must_use]
pub fn counts_by_code<'f>(findings: impl IntoIterator<Item = &'f Finding>) -> Vec<(Code, usize)> {
    let mut counts: BTreeMap<Code, usize> = BTreeMap::new();
    for finding in findings {
        *counts.entry(finding.code).or_default() += 1;
    }
    let mut counts: Vec<(Code, usize)> = counts.into_iter().collect();
    counts.sort_by_key(|(code, count)| (code.severity(), Reverse(*count), code.as_str()));
    counts
}

fn by_frequency(findings: &[&Finding], sources: &Sources) -> Vec<Fault> {
    let mut counts: BTreeMap<(String, bool), usize> = BTreeMap::new();
    for finding in findings {
        *counts.entry(at_fault(finding, sources)).or_default() += 1;
    }
    let faults = counts.into_iter().map(|((text, is_value), count)| Fault {
        count,
        text,
        is_value,
    });
    let mut faults: Vec<Fault> = faults.collect();
    faults.sort_by(|a, b| {
        let by_count = b.count.cmp(&a.count);
        by_count.then_with(|| natural_order(&a.text, &b.text))
    });
    faults
}

/// The value at fault, or the message, and whether it is the value.
fn at_fault(finding: &Finding, sources: &Sources) -> (String, bool) {
    let place = finding.at.place;
    let written = sources.text(place.file).get(place.span());
    let written = written.map(str::trim).unwrap_or_default();
    // The place of what is missing is the table that lacks it.
    let is_value = !written.is_empty() && finding.code != Code::KeyMissing;
    let text = if is_value { written } else { &finding.message };
    (on_one_line(text), is_value)
}

/// The words of a text on one line, cut after [`LONGEST_VALUE`] characters.
fn on_one_line(text: &str) -> String {
    let mut line = String::new();
    let mut length = 0;
    // A place may be a whole file.
    for word in text.split_whitespace() {
        if length > LONGEST_VALUE {
            break;
        }
        if !line.is_empty() {
            line.push(' ');
        }
        let cut: String = word.chars().take(LONGEST_VALUE + 1).collect();
        length += cut.chars().count() + 1;
        line.push_str(&cut);
    }
    match line.char_indices().nth(LONGEST_VALUE) {
        None => line,
        Some((at, _)) => format!("{}…", line.get(..at).unwrap_or_default()),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::place::Place;

    /// `count` findings of `code`, each on a value of its own file; every third value is "lost".
    fn findings(code: Code, count: usize, sources: &mut Sources) -> Vec<Finding> {
        let one = |n: usize| {
            let value = if n % 3 == 2 { "\"lost\"" } else { "\"extnat\"" };
            let file = sources.add(format!("{n}.toml"), format!("status = {value}\n"));
            let place = Place::new(file, 9..9 + value.len());
            Finding::new(code, place, format!("message {n}"))
        };
        (0..count).map(one).collect()
    }

    #[test]
    fn ten_of_a_code_are_all_listed_and_eleven_are_not() {
        let mut sources = Sources::default();
        let ten = findings(Code::ValueUnknown, MOST_LISTED, &mut sources);
        let listed = groups(&ten, &sources, Extent::Short);
        assert_eq!(listed.len(), 10);
        assert!(listed.iter().all(|group| group.others.is_none()));

        let eleven = findings(Code::ValueUnknown, MOST_LISTED + 1, &mut sources);
        let listed = groups(&eleven, &sources, Extent::Short);
        let [group] = listed.as_slice() else {
            panic!("{listed:?}");
        };
        assert_eq!(group.listed, eleven.iter().take(3).collect::<Vec<_>>());
        let others = group.others.as_ref().unwrap();
        assert_eq!(others.count, 8);
        let faults = others.faults.iter();
        let faults: Vec<(&str, usize)> = faults.map(|f| (f.text.as_str(), f.count)).collect();
        assert_eq!(faults, [("\"extnat\"", 8), ("\"lost\"", 3)]);
        assert_eq!(groups(&eleven, &sources, Extent::Whole).len(), 11);
    }

    #[test]
    fn a_group_stands_where_its_first_finding_stood() {
        let mut sources = Sources::default();
        let mut all = findings(Code::FileUnexpected, 1, &mut sources);
        all.extend(findings(Code::ValueUnknown, 20, &mut sources));
        all.extend(findings(Code::PictureOrphan, 2, &mut sources));
        all.extend(findings(Code::ValueUnknown, 20, &mut sources));
        let listed = groups(&all, &sources, Extent::Short);
        let codes: Vec<&str> = listed.iter().map(|g| g.listed[0].code.as_str()).collect();
        assert_eq!(
            codes,
            [
                "file-unexpected",
                "value-unknown",
                "picture-orphan",
                "picture-orphan"
            ]
        );
        assert_eq!(listed[1].others.as_ref().unwrap().count, 37);
        assert_eq!(
            counts_by_code(&all),
            [
                (Code::ValueUnknown, 40),
                (Code::PictureOrphan, 2),
                (Code::FileUnexpected, 1)
            ]
        );
    }

    #[test]
    fn what_is_missing_is_named_by_its_message() {
        let mut sources = Sources::default();
        let mut all = findings(Code::KeyMissing, 11, &mut sources);
        for finding in &mut all {
            finding.message = "an impression needs `status`".to_owned();
        }
        let listed = groups(&all, &sources, Extent::Short);
        let faults = &listed[0].others.as_ref().unwrap().faults;
        let expected = Fault {
            count: 11,
            text: "an impression needs `status`".to_owned(),
            is_value: false,
        };
        assert_eq!(*faults, [expected]);
    }

    #[test]
    fn a_long_value_is_cut_and_stands_on_one_line() {
        assert_eq!(on_one_line("[\n  1,\n  2,\n]"), "[ 1, 2, ]");
        let long = on_one_line(&"ab ".repeat(100_000));
        assert_eq!(long.chars().count(), LONGEST_VALUE + 1);
        assert!(long.ends_with('…'), "{long}");
        let word = on_one_line(&"x".repeat(100_000));
        assert_eq!(word.chars().count(), LONGEST_VALUE + 1);
    }
}
