//! Prints terms for people.

use std::collections::BTreeMap;
use std::io::{self, Write};

use crate::cli::plural::counted;
use crate::model::occurrence::RecordId;
use crate::model::vocabulary::List;
use crate::study::term_uses::{ListedTerm, TermOrigin};

/// The most records that are named for a term.
const MOST_NAMED: usize = 5;

/// Prints each term in a line below the head of its list: key, names, how often it is used.
pub(super) fn in_lines(
    terms: &[&ListedTerm<'_>],
    language: &str,
    colour: bool,
    out: &mut impl Write,
) -> io::Result<()> {
    let width = |text: &str| text.chars().count();
    let key = terms.iter().map(|term| width(term.key.as_str())).max();
    let key = key.unwrap_or_default();
    let names: Vec<String> = terms.iter().map(|term| labels(term, language)).collect();
    let name = names.iter().map(|names| width(names)).max().unwrap_or(0);
    let mut before = None;
    for (term, names) in terms.iter().zip(names) {
        head(term.list, &mut before, terms, colour, out)?;
        let used = match term.used_by.len() {
            0 => String::new(),
            n => counted(n, "record", "records"),
        };
        let origin = origin(term);
        let notes: Vec<&str> = [origin, used.as_str()]
            .into_iter()
            .filter(|note| !note.is_empty())
            .collect();
        let line = format!("  {:key$}  {names:name$}  {}", term.key, notes.join("; "));
        writeln!(out, "{}", line.trim_end())?;
    }
    Ok(())
}

/// Prints each term in full below the head of its list.
pub(super) fn in_full(
    terms: &[&ListedTerm<'_>],
    language: &str,
    colour: bool,
    out: &mut impl Write,
) -> io::Result<()> {
    let mut before = None;
    for term in terms {
        head(term.list, &mut before, terms, colour, out)?;
        let origin = match origin(term) {
            "" => String::new(),
            origin => format!("  ({origin})"),
        };
        writeln!(out, "\n  {}{origin}", bold(term.key.as_str(), colour))?;
        for (tag, label) in &term.term.labels {
            let synonyms = term.term.synonyms.get(tag);
            let also = synonyms.map(|all| format!("; also {}", all.join(", ")));
            let tag = tag_or(tag, language);
            writeln!(out, "    {tag:3} {label}{}", also.unwrap_or_default())?;
        }
        for (tag, synonyms) in &term.term.synonyms {
            if !term.term.labels.contains_key(tag) {
                let tag = tag_or(tag, language);
                writeln!(out, "    {tag:3} also {}", synonyms.join(", "))?;
            }
        }
        if let Some(note) = term.term.note(language) {
            writeln!(out, "    {note}")?;
        }
        if let Some(number) = term.term.aat {
            writeln!(out, "    AAT {number}")?;
        }
        if !term.used_by.is_empty() {
            writeln!(out, "    {}", used_by(&term.used_by))?;
        }
    }
    Ok(())
}

/// The head of a list, where another begins: its name and how many terms are printed.
fn head(
    list: List,
    before: &mut Option<List>,
    terms: &[&ListedTerm<'_>],
    colour: bool,
    out: &mut impl Write,
) -> io::Result<()> {
    if *before == Some(list) {
        return Ok(());
    }
    if before.replace(list).is_some() {
        writeln!(out)?;
    }
    let of_list = terms.iter().filter(|term| term.list == list).count();
    let terms = counted(of_list, "term", "terms");
    writeln!(out, "{} ({terms})", bold(&list.to_string(), colour))
}

/// "screenprint, Siebdruck": the names in the language of the catalogue, then the others.
fn labels(term: &ListedTerm<'_>, language: &str) -> String {
    let labels: BTreeMap<_, _> = term
        .term
        .labels
        .iter()
        .map(|(tag, label)| ((tag_or(tag, language) != language, tag.as_str()), label))
        .collect();
    let mut names: Vec<&str> = labels.into_values().map(String::as_str).collect();
    names.dedup();
    names.join(", ")
}

fn origin(term: &ListedTerm<'_>) -> &'static str {
    match term.origin {
        TermOrigin::BuiltIn => "",
        TermOrigin::Own => "own",
        TermOrigin::Redefined => "redefined",
    }
}

/// A language tag; the language of the catalogue where a record names none.
pub(super) fn tag_or<'t>(tag: &'t str, language: &'t str) -> &'t str {
    if tag.is_empty() { language } else { tag }
}

/// "used in 7 records: design:4, impression:4.1 … and 5 more"
fn used_by(records: &[RecordId]) -> String {
    let named: Vec<String> = records.iter().take(MOST_NAMED).map(name_of).collect();
    let more = match records.len().saturating_sub(MOST_NAMED) {
        0 => String::new(),
        more => format!(" and {more} more"),
    };
    format!(
        "used in {}: {}{more}",
        counted(records.len(), "record", "records"),
        named.join(", ")
    )
}

/// A record as links name it.
pub(super) fn name_of(record: &RecordId) -> String {
    match record {
        RecordId::Term(list, key) => format!("{list}:{key}"),
        // Only the settings are no record that links name.
        _ => record
            .target()
            .map_or_else(|| "catalogue.toml".to_owned(), |target| target.to_string()),
    }
}

fn bold(text: &str, colour: bool) -> String {
    if colour {
        format!("\u{1b}[1m{text}\u{1b}[0m")
    } else {
        text.to_owned()
    }
}
