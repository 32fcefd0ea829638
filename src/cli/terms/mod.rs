//! `keyblock terms`: the terms of the vocabularies, with what uses them.
//!
//! In: a catalogue or none, and perhaps a list and a text to search for. Out: the terms, for people ([`text`]) or for
//! programs ([`document`]). The selection is in `study::term_uses`.

mod document;
mod text;

use std::io::{self, Write};
use std::path::{Path, PathBuf};

use super::catalogue_folder::is_catalogue;
use super::designs::say_left_out;
use super::outcome::Outcome;
use super::streams::{say, wants_colour};
use crate::model::vocabulary::List;
use crate::model::words::ClosedList as _;
use crate::read;
use crate::read::near::nearest;
use crate::study::term_uses::{ListedTerm, listed, sought};
use document::TermsDocument;

pub(super) const ABOUT: &str = "\
Prints the terms that records may use, with their names in each language, synonyms, meaning, number in the Art & Architecture \
Thesaurus, and the records that use them. Only the key of a term is written in records; the synonyms are for finding it.

Without a list it prints every term in a line; with one, each term of it in full. A text is searched in keys, names, \
synonyms and meanings, in every language: keyblock terms techniques silkscreen.

Outside a catalogue it prints the built-in terms. In a catalogue its own terms (records/vocabulary) are among them and are \
marked as such; every record counts, including what is private or not published.";

/// The arguments of `terms`.
#[derive(Debug, clap::Args)]
pub(super) struct TermsArguments {
    /// The list: techniques, papers, kinds, transfers, roles, documents, relations or subjects
    list: Option<String>,
    /// What to search for in it
    text: Vec<String>,
    /// The catalogue's folder; this folder, or the nearest catalogue above, where none is named
    #[arg(long = "in", value_name = "DIR")]
    pub(super) dir: Option<PathBuf>,
    /// Print one JSON document on standard output
    #[arg(long)]
    json: bool,
}

/// Prints the terms of the catalogue in `dir`, or the built-in ones where it is none.
pub(super) fn run(
    dir: &Path,
    arguments: &TermsArguments,
    out: &mut impl Write,
) -> io::Result<Outcome> {
    let reading = read::read(dir);
    let catalogue = &reading.catalogue;
    let all = listed(catalogue, &read::built_in_terms());
    let list = match &arguments.list {
        None => None,
        Some(word) => match List::from_word(word) {
            Some(list) => Some(list),
            None => return Ok(unknown_list(word, &arguments.text, &all)),
        },
    };
    if is_catalogue(dir) {
        say_left_out(&reading.findings);
    } else if catalogue.occurrences.is_empty() {
        say("keyblock: there is no catalogue here; these are the built-in terms");
    }
    let of_list: Vec<ListedTerm<'_>> = all
        .into_iter()
        .filter(|term| list.is_none_or(|list| term.list == list))
        .collect();
    let text = arguments.text.join(" ");
    let terms: Vec<&ListedTerm<'_>> = if arguments.text.is_empty() {
        of_list.iter().collect()
    } else {
        sought(&of_list, &text)
    };
    let language = catalogue.settings.language.as_str();
    if arguments.json {
        serde_json::to_writer_pretty(&mut *out, &TermsDocument::of(&terms, language))?;
        writeln!(out)?;
    } else if let Some(list) = list {
        if terms.is_empty() {
            say(format_args!("keyblock: no term of {list} has “{text}”"));
        }
        text::in_full(&terms, language, wants_colour(&io::stdout()), out)?;
    } else {
        text::in_lines(&terms, language, wants_colour(&io::stdout()), out)?;
    }
    Ok(Outcome::Done)
}

/// Says that there is no such list, which there are, and where what was asked for stands.
fn unknown_list(word: &str, text: &[String], all: &[ListedTerm<'_>]) -> Outcome {
    say(format_args!("keyblock: there is no list `{word}`"));
    let lists: Vec<&str> = List::ALL.iter().map(|list| list.word()).collect();
    let near = nearest(word, lists.iter().copied());
    let asked = std::iter::once(word).chain(text.iter().map(String::as_str));
    let asked = asked.collect::<Vec<_>>().join(" ");
    match (near, sought(all, &asked).first()) {
        (Some(near), _) => say(format_args!("  write `{near}`")),
        (None, Some(found)) => say(format_args!(
            "  name the list first: `keyblock terms {} {asked}`",
            found.list
        )),
        (None, None) => {}
    }
    say(format_args!("  the lists are {}", lists.join(", ")));
    Outcome::Usage
}
