//! Literature: reads the works that can be cited from `records/literature.bib`.
//!
//! The crate `biblatex` parses, and stops at the first fault. The file is therefore read entry by
//! entry, so that one broken entry hides neither the others nor their faults. [`super::reference`]
//! words the references.
//!
//! [`bounds`] refuses what would exhaust the parser, [`blocks`] cuts the file, [`family`] finds the entries from which an entry takes fields,
//! [`ids`] the further keys of an entry, and [`words`] words the faults.

mod blocks;
mod bounds;
mod entry;
mod family;
mod ids;
mod words;

use std::collections::BTreeMap;
use std::ops::Range;

use biblatex::{RawBibliography, RawEntry, Spanned};

use self::blocks::{Parsed, blocks, parse_blocks};
use self::bounds::{Abbreviations, Unusable};
use self::entry::{Entry, shifted, visible};
use self::family::{all_parents, entries_in_circles, family};
pub(crate) use self::ids::{other_keys, references};
use self::words::{words_for_syntax, words_for_type};
use super::reference;
use crate::model::codes::Code;
use crate::model::finding::Finding;
use crate::model::key::Key;
use crate::model::literature::Work;
use crate::model::place::{FileId, Place};
use crate::read::faults::bounded;
use crate::read::limits::{DEEPEST_NESTING, LONGEST_ABBREVIATION, MOST_WAYS};

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
    if let Some(at) = bounds::too_deep(text) {
        let message = format!(
            "braces are nested more than {DEEPEST_NESTING} deep here, so the file is not read"
        );
        let finding = Finding::new(Code::NestedTooDeep, Place::new(file, at), message)
            .help("remove the braces that only repeat others");
        return (Vec::new(), vec![finding]);
    }
    let mut findings = Vec::new();
    let blocks = blocks(text);
    let parsed = parse_blocks(&blocks, file, &mut findings);
    let abbreviations = abbreviations(&parsed, file, &mut findings);
    let entries = keyed_entries(&parsed, file, &mut findings);
    let parents = all_parents(&entries);
    let circular = entries_in_circles(&parents);
    let too_many = {
        let mut parents = parents.clone();
        parents.retain(|key, _| !circular.contains(key));
        bounds::in_too_many_ways(&parents)
    };
    let mut described = Vec::new();
    for (key, entry) in &entries {
        let of_links = |message: String, help: &'static str| {
            Finding::new(Code::BibtexSyntax, entry.key_place(file), message).help(help)
        };
        if circular.contains(key) {
            findings.push(of_links(
                format!("`{key}` takes its fields from an entry that takes them from `{key}`"),
                "remove `crossref` or `xdata` from one of the entries",
            ));
            continue;
        }
        if too_many.contains(key) {
            findings.push(of_links(
                format!("`{key}` takes fields from other entries in more than {MOST_WAYS} ways"),
                "remove `crossref` or `xdata` from some of the entries, and write the fields themselves",
            ));
            continue;
        }
        match describe(key, &entries, &parents, &abbreviations) {
            Ok(work) => described.push((key.clone(), entry.key_place(file), work)),
            Err(fault) => findings.push(fault.into_finding(text, file, entry)),
        }
    }
    (described, bounded(findings))
}

/// The abbreviations of all blocks; those that cannot be used are reported.
fn abbreviations<'p, 't>(
    parsed: &'p [Parsed<'t>],
    file: FileId,
    findings: &mut Vec<Finding>,
) -> Abbreviations<'p, 't> {
    let pairs = || {
        let blocks = parsed.iter();
        blocks.flat_map(|block| {
            block
                .raw
                .abbreviations
                .iter()
                .map(|pair| (block.start, pair))
        })
    };
    let all = Abbreviations::of(pairs().map(|(_, pair)| pair));
    let starts: BTreeMap<*const biblatex::Pair<'t>, usize> = pairs()
        .map(|(start, pair)| (std::ptr::from_ref(pair), start))
        .collect();
    for (pair, why) in all.unusable() {
        let start = starts.get(&std::ptr::from_ref(pair)).copied().unwrap_or(0);
        let place = Place::new(file, shifted(&pair.key.span, start));
        let name = pair.key.v;
        let (message, help) = match why {
            Unusable::Circular => (
                format!("the abbreviation `{name}` stands for itself, or for one that does"),
                "write in braces what it stands for",
            ),
            Unusable::TooLong => (
                format!(
                    "the abbreviation `{name}` stands for more than {LONGEST_ABBREVIATION} letters"
                ),
                "write in braces what it stands for, without other abbreviations",
            ),
        };
        findings.push(Finding::new(Code::BibtexSyntax, place, message).help(help));
    }
    all
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
    let message =
        format!("`{written}` is not a key: lower-case letters and digits joined by hyphens");
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
    parents: &BTreeMap<Key, Vec<Key>>,
    abbreviations: &Abbreviations,
) -> Result<reference::Description, Fault> {
    let family: Vec<&Entry> = family(key, parents)
        .iter()
        .filter_map(|key| entries.get(key))
        .collect();
    let fields = family.iter().flat_map(|entry| &entry.raw.v.fields);
    let raw = RawBibliography {
        preamble: String::new(),
        abbreviations: abbreviations.used_by(fields),
        entries: family.iter().map(|entry| entry.raw.clone()).collect(),
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
                "1:7 key-form `Verhoeven:1961` is not a key: lower-case letters and digits joined by hyphens",
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
    fn braces_nested_too_deep_are_reported_and_nothing_is_read() {
        let deep = format!("@book{{a, title = {{{}}}}}", "\\a{".repeat(100_000));
        let (works, findings) = keys_and_findings(&deep);
        assert!(works.is_empty());
        assert_eq!(
            findings,
            [
                "1:111 nested-too-deep braces are nested more than 32 deep here, so the file is not read"
            ]
        );
        let never_closed = "@book{a, title = {A\n".repeat(100);
        let (_, findings) = keys_and_findings(&never_closed);
        assert_eq!(findings.len(), 100, "{findings:?}");
    }

    #[test]
    fn an_abbreviation_that_stands_for_itself_is_reported_where_it_is_declared() {
        let (works, findings) = keys_and_findings(
            "@string{a = b}\n@string{b = \"x\" # a}\n@string{c = a}\n@string{d = {D}}\n@book{e, title = a # d, author = c}\n",
        );
        assert_eq!(works, ["e"]);
        assert_eq!(findings.len(), 3, "{findings:?}");
        assert_eq!(
            findings[0],
            "1:9 bibtex-syntax the abbreviation `a` stands for itself, or for one that does"
        );
    }

    fn writeln_into(text: &mut String, line: std::fmt::Arguments<'_>) {
        use std::fmt::Write as _;
        text.write_fmt(line).unwrap();
    }

    /// Each abbreviation stands twice in the next, so that sixty of them would fill the memory.
    #[test]
    fn abbreviations_that_grow_without_end_are_reported() {
        let mut text = "@string{a0 = {many words}}\n".to_owned();
        for n in 1..60 {
            writeln_into(
                &mut text,
                format_args!("@string{{a{n} = a{0} # a{0}}}\n", n - 1),
            );
        }
        text += "@book{one, title = a59}\n@book{two, title = a2}\n";
        let (works, findings) = keys_and_findings(&text);
        assert_eq!(works, ["one", "two"]);
        assert_eq!(findings.len(), 60 - 13, "{findings:?}");
        assert!(
            findings[0].ends_with("stands for more than 65536 letters"),
            "{findings:?}"
        );
    }

    /// Each entry takes fields from the next by two ways, so that there would be 2^30 of them.
    #[test]
    fn an_entry_that_takes_fields_in_too_many_ways_is_reported() {
        let mut text = String::new();
        for n in 0..30 {
            writeln_into(
                &mut text,
                format_args!("@xdata{{a{n}, xdata = {{b{n}, c{n}}}}}\n"),
            );
            for name in ["b", "c"] {
                writeln_into(
                    &mut text,
                    format_args!("@xdata{{{name}{n}, xdata = {{a{}}}}}\n", n + 1),
                );
            }
        }
        text += "@xdata{a30, title = {A}}\n@book{z, title = {Z}}\n";
        let (_, findings) = keys_and_findings(&text);
        assert_eq!(findings.len(), 76, "{findings:?}");
        assert!(findings[0].contains("in more than 64 ways"), "{findings:?}");
    }

    #[test]
    fn a_chain_of_entries_and_many_abbreviations_take_no_longer_than_their_length() {
        let mut text = String::new();
        for n in 0..5_000 {
            writeln_into(
                &mut text,
                format_args!("@book{{b{n}, title = s{n}, crossref = {{b{}}}}}\n", n + 1),
            );
            writeln_into(&mut text, format_args!("@string{{s{n} = {{Title {n}}}}}\n"));
        }
        text += "@book{b5000, title = {The last}}\n";
        let (works, findings) = keys_and_findings(&text);
        assert_eq!(works.len(), 64);
        assert!(
            findings.iter().any(|f| f.contains("findings-untold")),
            "{}",
            findings.len()
        );
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
            ["1:33 bibtex-syntax `np` is not an abbreviation that the file declares"]
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
