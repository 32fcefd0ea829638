//! Literature: reads the works that can be cited from `records/literature.bib`.
//!
//! The crate `biblatex` parses, and stops at the first fault. The file is therefore read entry by
//! entry, so that one broken entry hides neither the others nor their faults. [`super::reference`]
//! words the references.
//!
//! [`blocks`] cuts the file, [`family`] finds the entries from which an entry takes fields, and
//! [`words`] words the faults.

mod blocks;
mod entry;
mod family;
mod words;

use std::collections::BTreeMap;
use std::ops::Range;

use biblatex::{RawBibliography, RawEntry, Spanned};

use self::blocks::{Parsed, blocks, parse_blocks};
use self::entry::{Entry, shifted, visible};
use self::family::{entries_in_circles, family};
use self::words::{words_for_syntax, words_for_type};
use super::reference;
use crate::model::codes::Code;
use crate::model::finding::Finding;
use crate::model::key::Key;
use crate::model::literature::Work;
use crate::model::place::{FileId, Place};

/// The works of a BibTeX file, worded in the language of `words`, and findings about those that are
/// left out.
pub(super) fn read(
    text: &str,
    file: FileId,
    words: &reference::Words,
) -> (BTreeMap<Key, Work>, Vec<Finding>) {
    let (described, findings) = entries(text, file);
    (reference::works(described, words), findings)
}

/// An entry that could be understood, with its key and the place of the key.
type Described = (Key, Place, reference::Description);

/// The entries that can be understood, and findings about the others.
fn entries(text: &str, file: FileId) -> (Vec<Described>, Vec<Finding>) {
    let mut findings = Vec::new();
    let blocks = blocks(text);
    let parsed = parse_blocks(&blocks, file, &mut findings);
    let entries = keyed_entries(&parsed, file, &mut findings);
    let circular = entries_in_circles(&entries);
    let mut described = Vec::new();
    for (key, entry) in &entries {
        if circular.contains(key) {
            let message =
                format!("`{key}` takes its fields from an entry that takes them from `{key}`");
            findings.push(
                Finding::new(Code::BibtexSyntax, entry.key_place(file), message)
                    .help("remove `crossref` or `xdata` from one of the entries"),
            );
            continue;
        }
        match describe(key, &entries, &parsed) {
            Ok(work) => described.push((key.clone(), entry.key_place(file), work)),
            Err(fault) => findings.push(fault.into_finding(text, file, entry)),
        }
    }
    (described, findings)
}

/// Why an entry could not be understood, and where, counted from the start of its block.
struct Fault {
    span: Range<usize>,
    message: String,
    help: &'static str,
}

impl Fault {
    /// A fault with no place of its own stands at the entry's key.
    fn into_finding(self, text: &str, file: FileId, entry: &Entry) -> Finding {
        let block = entry.raw.span.start..entry.raw.span.end;
        let has_place =
            self.span.start >= block.start && self.span.end <= block.end && self.span != (0..0);
        let span = if has_place {
            self.span
        } else {
            entry.raw.v.key.span.clone()
        };
        let place = Place::new(file, visible(text, shifted(&span, entry.start)));
        Finding::new(Code::BibtexSyntax, place, self.message).help(self.help)
    }
}

/// The entries by key, in the order of the file. Entries with an invalid key, or with a key that
/// another has already, are reported.
fn keyed_entries<'p, 't>(
    parsed: &'p [Parsed<'t>],
    file: FileId,
    findings: &mut Vec<Finding>,
) -> indexmap::IndexMap<Key, Entry<'p, 't>> {
    let mut entries = indexmap::IndexMap::<Key, Entry>::new();
    for block in parsed {
        for raw in &block.raw.entries {
            let entry = Entry {
                start: block.start,
                raw,
            };
            let written = raw.v.key.v;
            let Ok(key) = written.parse::<Key>() else {
                findings.push(not_a_key(written, &entry, file));
                continue;
            };
            if let Some(first) = entries.get(&key) {
                findings.push(
                    Finding::new(
                        Code::KeyTwice,
                        entry.key_place(file),
                        format!("the literature has two entries with the key `{key}`"),
                    )
                    .saying("the second")
                    .beside(first.key_place(file), "the first")
                    .help("give one of them another key, or remove it"),
                );
                continue;
            }
            entries.insert(key, entry);
        }
    }
    entries
}

fn not_a_key(written: &str, entry: &Entry, file: FileId) -> Finding {
    if written.is_empty() {
        let place = Place::new(file, shifted(&entry.raw.v.kind.span, entry.start));
        return Finding::new(
            Code::KeyForm,
            place,
            "an entry of the literature has no key",
        )
        .help("write a key after the opening brace: @book{verhoeven-1961,");
    }
    let message = format!("`{written}` is no key: lower-case letters and digits joined by hyphens");
    let finding = Finding::new(Code::KeyForm, entry.key_place(file), message);
    match Key::nearest_form(written) {
        Some(key) => finding.help(format!("write `{key}`")),
        None => finding,
    }
}

/// The description of one entry, with the fields that it takes from others.
fn describe(
    key: &Key,
    entries: &indexmap::IndexMap<Key, Entry>,
    parsed: &[Parsed],
) -> Result<reference::Description, Fault> {
    let abbreviations = parsed
        .iter()
        .flat_map(|block| block.raw.abbreviations.iter().cloned());
    let raw = RawBibliography {
        preamble: String::new(),
        entries: family(key, entries)
            .iter()
            .filter_map(|key| entries.get(key))
            .map(|e| e.raw.clone())
            .collect(),
        abbreviations: abbreviations.collect(),
    };
    let bibliography = biblatex::Bibliography::from_raw(raw).map_err(|error| {
        let (message, help) = words_for_syntax(&error.kind);
        Fault {
            span: error.span,
            message,
            help,
        }
    })?;
    let entry = bibliography.get(key.as_str()).ok_or_else(|| Fault {
        span: 0..0,
        message: format!("the entry `{key}` cannot be read"),
        help: "compare it with an entry that can",
    })?;
    let mut entry = entry.clone();
    if entries
        .get(key)
        .is_some_and(|own| borrows_its_subtitle(own.raw))
    {
        entry.remove("subtitle");
    }
    reference::Description::read(&entry).map_err(|error| {
        let (message, help) = words_for_type(&error.kind);
        Fault {
            span: error.span,
            message: message.to_owned(),
            help,
        }
    })
}

/// Whether the entry got its subtitle from the entry that it refers to. `biblatex` inherits the
/// subtitle through `crossref`; BibLaTeX (manual, appendix B) makes it the `booksubtitle`.
fn borrows_its_subtitle(entry: &Spanned<RawEntry<'_>>) -> bool {
    let has = |name: &str| {
        entry
            .v
            .fields
            .iter()
            .any(|f| f.key.v.eq_ignore_ascii_case(name))
    };
    has("crossref") && !has("subtitle") && !has("xdata")
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::model::place::Sources;

    fn keys_and_findings(text: &str) -> (Vec<String>, Vec<String>) {
        let mut sources = Sources::default();
        let file = sources.add("records/literature.bib", text);
        let (works, mut findings) = read(text, file, &reference::Words::built_in("en"));
        crate::model::finding::sort(&mut findings, &sources);
        let line = |f: &Finding| {
            let at = sources.position(f.at.place);
            format!(
                "{}:{} {} {}",
                at.line,
                at.column,
                f.code.as_str(),
                f.message
            )
        };
        (
            works.keys().map(ToString::to_string).collect(),
            findings.iter().map(line).collect(),
        )
    }

    #[test]
    fn a_broken_entry_does_not_hide_the_others() {
        let (works, findings) = keys_and_findings(
            "@book{one, title = {One}, year = 1961}\n@book{two, title = {Two\n@book{three title = {Three}}\n@book{four, title = {Four}}\n@book{five, title {Five}}\n",
        );
        assert_eq!(works, ["four", "one"]);
        assert_eq!(
            findings,
            [
                "2:1 bibtex-syntax this entry of the literature is never closed",
                "3:13 bibtex-syntax a comma is missing before this",
                "5:19 bibtex-syntax an equals sign is missing before this",
            ]
        );
    }

    #[test]
    fn a_key_that_is_no_key_or_used_twice_is_reported() {
        let (works, findings) = keys_and_findings(
            "@book{Verhoeven:1961, title={A}}\n@book{a, title={A}}\n@book{a, title={B}}\n@book{, title={C}}\n",
        );
        assert_eq!(works, ["a"]);
        assert_eq!(
            findings,
            [
                "1:7 key-form `Verhoeven:1961` is no key: lower-case letters and digits joined by hyphens",
                "3:7 key-twice the literature has two entries with the key `a`",
                "4:2 key-form an entry of the literature has no key",
            ]
        );
    }

    #[test]
    fn an_entry_that_takes_fields_from_itself_is_reported_and_left_out() {
        let (works, findings) = keys_and_findings(
            "@inbook{a, title={A}, crossref={b}}\n@book{b, title={B}, crossref={a}}\n@book{c, crossref={c}}\n@book{d, title={D}}",
        );
        assert_eq!(works, ["d"]);
        assert_eq!(findings.len(), 3);
    }

    #[test]
    fn an_entry_takes_fields_from_another() {
        let (works, findings) = keys_and_findings(
            "@inbook{a, title={A}, crossref={b}}\n@collection{b, title={B}, year={1961}}\n@string{np = {Northport}}\n@book{c, title={C}, address=np}\n",
        );
        assert_eq!(works, ["a", "b", "c"]);
        assert!(findings.is_empty(), "{findings:?}");
    }

    #[test]
    fn an_undeclared_abbreviation_is_reported_at_its_place() {
        let (_, findings) =
            keys_and_findings("@book{a, title = {A}, address = np}\n@book{b, title = {B}}");
        assert_eq!(
            findings,
            ["1:33 bibtex-syntax `np` is no abbreviation that the file declares"]
        );
    }

    /// Every prefix of a file, and every file with one character changed, is read without a panic.
    #[test]
    fn a_mangled_file_is_read_without_a_panic() {
        let sound = "@string{np = {Northport}}\n@inbook{a, title={A \\\"o {B}} # np, author=\"Ray, C. and others\", date={1961-05/..}, crossref={b}, pages={1--2}}\n@collection{b, title={B}, editor={M\u{fc}ller, J.}, month = jan, volume={2}, edition=2}\n";
        let file = FileId::default();
        let words = reference::Words::built_in("de-CH");
        for (at, _) in sound.char_indices() {
            let _ = entries(&sound[..at], file);
            let rest = &sound[at..];
            let width = rest.chars().next().map_or(0, char::len_utf8);
            for sign in [
                "", "{", "}", "\"", "@", "\\", "#", "=", ",", "~", "\u{e9}", "\n@",
            ] {
                let mangled = format!("{}{sign}{}", &sound[..at], &rest[width..]);
                let (described, findings) = entries(&mangled, file);
                let _ = reference::works(described, &words);
                for finding in findings {
                    let span = finding.at.place.span();
                    assert!(
                        span.end <= mangled.len() && mangled.get(span).is_some(),
                        "{mangled}"
                    );
                }
            }
        }
    }
}
