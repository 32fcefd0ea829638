//! Counts the doubts that records say are settled apart, and says where such an entry no longer fits.
//!
//! A finding may be settled by a record that it has a place in: in the record's file or in the text beside it. The
//! settings of the catalogue settle what is about its own pages and its literature, which are not records of TOML.
//! An entry names the code and the *digest* of what the finding rested on when it was judged ([`digest`]). Once any of
//! that changes, the digest differs, and the doubt is raised again.
//!
//! In: all findings, and the entries of all records. Out: the findings that remain, and those that are settled.

use std::collections::BTreeSet;

use super::wording;
use crate::model::catalogue::Catalogue;
use crate::model::codes::{Code, Severity};
use crate::model::finding::{self, Finding};
use crate::model::place::{FileId, Sources};
use crate::model::settled::SettledDoubt;

/// A finding that a record says is settled.
#[derive(Clone, Debug, PartialEq)]
pub struct SettledFinding {
    /// The finding.
    pub finding: Finding,
    /// The entry that settles it.
    pub entry: SettledDoubt,
    /// The name of the person or holder that judged it, where the entry says.
    pub by: Option<String>,
}

/// Findings, divided by what records say is settled.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Divided {
    /// Those that remain, and one for each entry that settles nothing or does not say what; in their order.
    pub open: Vec<Finding>,
    /// Those that are settled, in their order.
    pub settled: Vec<SettledFinding>,
}

/// The digest of what a finding rests on: 8 hexadecimal digits.
///
/// It covers the code, the message, and for each place of the finding what is said of it and the value that stands
/// there, however it is spaced. It covers no file name, line or advice: a record that is moved, or changed elsewhere,
/// keeps the digests of its findings. The first 32 bits of BLAKE3.
#[must_use]
pub fn digest(finding: &Finding, sources: &Sources) -> String {
    let mut hasher = blake3::Hasher::new();
    let mut part = |text: &str| {
        for word in text.split_whitespace() {
            hasher.update(word.as_bytes());
            hasher.update(b" ");
        }
        hasher.update(b"\0");
    };
    part(finding.code.as_str());
    part(&finding.message);
    for label in std::iter::once(&finding.at).chain(&finding.also) {
        part(&label.text);
        let text = sources.text(label.place.file);
        part(text.get(label.place.span()).unwrap_or_default());
    }
    let hash = hasher.finalize().to_hex();
    hash.chars().take(8).collect()
}

/// Divides `findings`, which are in their order ([`finding::sort`]), by what the records say is settled.
///
/// While there are errors, no entry is said to settle nothing: what it settles may be hidden by one.
#[must_use]
pub fn divide(findings: Vec<Finding>, catalogue: &Catalogue) -> Divided {
    let sources = &catalogue.sources;
    if catalogue.settled.is_empty() {
        return Divided {
            open: findings,
            settled: Vec::new(),
        };
    }
    let codes: BTreeSet<Code> = catalogue.settled.iter().map(|e| e.code.value).collect();
    let is_sound = findings.iter().all(|f| f.severity() != Severity::Error);
    let mut waiting: Vec<Waiting> = findings
        .into_iter()
        .map(|finding| Waiting {
            digest: if codes.contains(&finding.code) {
                digest(&finding, sources)
            } else {
                String::new()
            },
            finding,
            settled_by: None,
        })
        .collect();
    // Entries with a digest come first, so that one without is left with what no other settles.
    let (precise, open): (Vec<_>, Vec<_>) =
        catalogue.settled.iter().partition(|e| e.digest.is_some());
    let mut unfit = Vec::new();
    for entry in precise.into_iter().chain(open) {
        let record = RecordFiles::of(entry, sources);
        let about: Vec<usize> = (0..waiting.len())
            .filter(|at| waiting[*at].is_about(entry, &record, sources))
            .collect();
        let told = apply(entry, &about, &mut waiting);
        unfit.extend(told.filter(|finding| is_sound || finding.code == Code::SettledWithoutDigest));
    }
    let mut divided = Divided::default();
    for one in waiting {
        match one.settled_by {
            Some(entry) => divided.settled.push(SettledFinding {
                by: entry
                    .by
                    .as_ref()
                    .map(|key| wording::person_or_holder(catalogue, &key.value)),
                entry,
                finding: one.finding,
            }),
            None => divided.open.push(one.finding),
        }
    }
    divided.open.extend(unfit);
    finding::sort(&mut divided.open, sources);
    divided
}

/// A finding, before every entry was looked at.
struct Waiting {
    finding: Finding,
    /// Its digest, where some entry is for its code.
    digest: String,
    settled_by: Option<SettledDoubt>,
}

impl Waiting {
    fn is_about(&self, entry: &SettledDoubt, record: &RecordFiles, sources: &Sources) -> bool {
        let places = std::iter::once(&self.finding.at).chain(&self.finding.also);
        self.finding.code == entry.code.value
            && places
                .into_iter()
                .any(|label| record.has(label.place.file, sources))
    }
}

/// Marks what `entry` settles among the findings `about` its record, and returns what is wrong with the entry.
fn apply(entry: &SettledDoubt, about: &[usize], waiting: &mut [Waiting]) -> Option<Finding> {
    let code = entry.code.value.as_str();
    let Some(digest) = &entry.digest else {
        let left: Vec<usize> = about
            .iter()
            .copied()
            .filter(|at| waiting[*at].settled_by.is_none())
            .collect();
        let message = |what: &str| format!("this entry does not say {what}");
        return match left[..] {
            [] => Some(nothing(entry)),
            [only] => {
                let digest = waiting[only].digest.clone();
                waiting[only].settled_by = Some(entry.clone());
                let what = format!("what `{code}` rested on when it was judged");
                Some(
                    Finding::new(Code::SettledWithoutDigest, entry.place, message(&what)).help(
                        format!(
                            "add `digest = \"{digest}\"`: then the doubt is raised again when what it rests on changes"
                        ),
                    ),
                )
            }
            _ => {
                let what = format!("which of {} findings `{code}` it settles", left.len());
                let mut finding =
                    Finding::new(Code::SettledWithoutDigest, entry.place, message(&what));
                for at in &left {
                    let one = &waiting[*at];
                    let text = format!("digest \"{}\"", one.digest);
                    finding = finding.beside(one.finding.at.place, text);
                }
                let digests: Vec<&str> =
                    left.iter().map(|at| waiting[*at].digest.as_str()).collect();
                Some(finding.help(format!(
                    "write an entry for each that is settled, with its digest: {}",
                    digests.join(", ")
                )))
            }
        };
    };
    let fits = |one: &Waiting| one.digest == digest.value;
    if about.iter().any(|at| fits(&waiting[*at])) {
        for at in about {
            let one = &mut waiting[*at];
            if fits(one) && one.settled_by.is_none() {
                one.settled_by = Some(entry.clone());
            }
        }
        return None;
    }
    if about.is_empty() {
        return Some(nothing(entry));
    }
    let mut finding = Finding::new(
        Code::SettledChanged,
        digest.place,
        format!("what `{code}` rests on is no longer what it was when the doubt was settled"),
    );
    for at in about {
        let one = &waiting[*at];
        finding = finding.beside(
            one.finding.at.place,
            format!("digest \"{}\" now", one.digest),
        );
    }
    let digests: Vec<String> = about
        .iter()
        .map(|at| format!("`digest = \"{}\"`", waiting[*at].digest))
        .collect();
    Some(finding.help(format!(
        "judge it again; if it is still settled, write {}, else remove this entry",
        digests.join(" or ")
    )))
}

fn nothing(entry: &SettledDoubt) -> Finding {
    let code = entry.code.value.as_str();
    let message = format!("there is no `{code}` about this record to settle");
    Finding::new(Code::SettledNothing, entry.place, message)
        .help("remove this entry, or move it to the record that the doubt is about")
}

/// The files that findings about one record stand in.
struct RecordFiles<'s> {
    file: FileId,
    /// The path of the record without its ending; the text beside it has the same.
    stem: &'s str,
    /// Whether the record is the settings of the catalogue.
    is_settings: bool,
}

impl<'s> RecordFiles<'s> {
    fn of(entry: &SettledDoubt, sources: &'s Sources) -> RecordFiles<'s> {
        let file = entry.place.file;
        let path = sources.path(file);
        RecordFiles {
            file,
            stem: path.strip_suffix(".toml").unwrap_or(path),
            is_settings: path == "catalogue.toml",
        }
    }

    fn has(&self, file: FileId, sources: &Sources) -> bool {
        let path = sources.path(file);
        file == self.file
            || path.strip_suffix(".md") == Some(self.stem)
            || self.is_settings && (path.starts_with("records/pages/") || path.ends_with(".bib"))
    }
}
