//! The full form of a reference: author and date first, after The Chicago Manual of Style, 17th ed.,
//! chapter 15, and Turabian, 9th ed., chapter 19.
//!
//! The order: names, year, title; sort of work; editors and translators; the book or journal
//! that contains it; edition, volume, series; place and publisher; pages of an article; address.
//! Notes of an entry are not set. A repeated author is not replaced by a dash, so that no reference
//! depends on its neighbours.
//!
//! In: a [`Description`] and the words of a language. Out: a [`Line`].

use biblatex::Person;

use super::description::{Description, Edition, Genre, Head, Kind, joined};
use super::line::Line;
use super::names::{heading, in_line};
use super::pages::pages;
use super::words::{Words, capitalised, year};

/// The full reference. `letter` follows the year, as in the short form.
pub(super) fn set(work: &Description, letter: &str, words: &Words) -> Line {
    let mut line = Line::default();
    let head = work.head();
    line.sentence(&head_names(work, words));
    if head == Head::Title {
        title(work, words, &mut line);
    }
    line.sentence(&format!("{}{letter}", years(work, words)));
    line.head.clone_from(&line.html);
    if head != Head::Title {
        title(work, words, &mut line);
    }
    line.sentence(&genre(work, words));
    match work.kind {
        Kind::Part if !work.host.is_empty() => part_of_book(work, words, &mut line),
        _ => {
            for contributors in contributors(work, words) {
                line.sentence(&capitalised(&contributors));
            }
            match work.kind {
                Kind::Article => journal(work, words, &mut line),
                _ => book(work, words, &mut line),
            }
        }
    }
    if work.kind != Kind::Article {
        series(work, words, &mut line);
        line.sentence(&work.event);
    }
    if !matches!(work.kind, Kind::Article | Kind::Thesis) {
        line.sentence(&imprint(work));
    }
    address(work, words, &mut line);
    line.stop();
    line
}

/// The names at the head, with the role of those who are not authors ("ed.", "trans.").
fn head_names(work: &Description, words: &Words) -> String {
    let role = match work.head() {
        Head::Title => return String::new(),
        Head::Authors => return heading(&work.authors, words),
        Head::Editors => "bibliography-editors",
        Head::Compilers => "bibliography-compilers",
        Head::Translators => "bibliography-translators",
    };
    let people = work.names();
    let role = words.say(role, &[("n", people.len().into())]);
    format!("{}, {role}", heading(people, words))
}

/// The year, preceded by that of the first edition in brackets; or "forthcoming"; or "n.d."
fn years(work: &Description, words: &Words) -> String {
    let Some(date) = &work.date else {
        return if work.status.is_empty() {
            words.say("bibliography-no-date", &[])
        } else {
            capitalised(&work.status)
        };
    };
    match &work.original_date {
        Some(first) => format!("[{}] {}", year(first), year(date)),
        None => year(date),
    }
}

/// Books and reports in italics, everything else in quotation marks.
fn title(work: &Description, words: &Words, line: &mut Line) {
    if work.title.is_empty() {
        return;
    }
    line.next();
    if work.is_a_book_title {
        line.push_italic(&work.title);
    } else {
        line.push_stopped(&words.quoted(&work.title));
    }
}

/// "Papers of the Cabinet, no. 12".
fn series(work: &Description, words: &Words, line: &mut Line) {
    let number = match work.kind {
        Kind::Report => String::new(),
        _ => number(work, words),
    };
    if work.series.is_empty() {
        line.sentence(&capitalised(&number));
    } else {
        line.sentence(&joined(&[&work.series, &number], ", "));
    }
}

/// "no. 12".
fn number(work: &Description, words: &Words) -> String {
    words.with("bibliography-number", "number", &work.number)
}

/// "PhD diss., University of Northport", "Report No. 7", "Letter".
fn genre(work: &Description, words: &Words) -> String {
    let genre = match &work.genre {
        Genre::Unsaid => String::new(),
        Genre::Written(genre) => capitalised(genre),
        Genre::Word(id) => capitalised(&words.say(id, &[])),
    };
    match work.kind {
        Kind::Thesis => joined(&[&genre, &imprint(work)], ", "),
        Kind::Report => joined(&[&genre, &capitalised(&number(work, words))], " "),
        _ => genre,
    }
}

/// "Edited by Clara Ray. Translated by Jan Meer"; people under whom the work is listed are left out.
fn contributors(work: &Description, words: &Words) -> Vec<String> {
    let mut said = Vec::new();
    let mut say = |id, people: &[Person]| {
        if !people.is_empty() {
            said.push(words.with(id, "names", &in_line(people, words)));
        }
    };
    let editors = work.unless_at_head(Head::Editors, &work.editors);
    let translators = work.unless_at_head(Head::Translators, &work.translators);
    if editors == translators {
        say("bibliography-edited-and-translated-by", editors);
    } else {
        say("bibliography-edited-by", editors);
        say("bibliography-translated-by", translators);
    }
    let compilers = work.unless_at_head(Head::Compilers, &work.compilers);
    say("bibliography-compiled-by", compilers);
    said
}

/// "In *Papers on Prints*, 2nd ed., edited by Jan Meer, vol. 3 of *Prints*, 17–39"; "Chap. 4 in *Prints*".
fn part_of_book(work: &Description, words: &Words, line: &mut Line) {
    let comma = |part: &str, line: &mut Line| {
        if !part.is_empty() {
            line.push(", ");
            line.push(part);
        }
    };
    let chapter = words.with("bibliography-chapter", "chapter", &work.chapter);
    line.sentence(&capitalised(&if chapter.is_empty() {
        words.say("bibliography-in", &[])
    } else {
        chapter
    }));
    line.push(" ");
    line.push_italic(&work.host);
    comma(&edition(work, words), line);
    let authors = in_line(&work.host_authors, words);
    comma(&words.with("bibliography-by", "names", &authors), line);
    for contributors in contributors(work, words) {
        comma(&contributors, line);
    }
    if !work.volume.is_empty() {
        line.push(", ");
        push_volume(work, &volume(work, words), words, line);
    }
    comma(&pages(&work.pages), line);
}

/// "*The Print Cabinet* 11 (3): 102–18", "*The Print Cabinet* 11 (May 1978): 102–18", "*The Print
/// Cabinet*, May 1978, 102–18".
fn journal(work: &Description, words: &Words, line: &mut Line) {
    line.next();
    line.push_italic(&work.host);
    let date = work.date.as_ref();
    let date = date.map(|date| words.day(date)).unwrap_or_default();
    if work.series.is_empty() {
        line.push(&prefixed(" ", &work.volume));
    } else {
        line.push(&format!(", {}", work.series));
        line.push(&prefixed(", ", &volume(work, words)));
    }
    let issue = match (work.volume.is_empty(), work.number.is_empty()) {
        (false, false) => format!(" ({})", work.number),
        (false, true) if !date.is_empty() => format!(" ({date})"),
        (true, false) => format!(", {}", number(work, words)),
        (_, true) => prefixed(", ", &date),
    };
    line.push(&issue);
    if !work.pages.is_empty() {
        let is_numbered = !work.volume.is_empty() || !work.number.is_empty();
        line.push(if is_numbered { ": " } else { ", " });
        line.push(&pages(&work.pages));
    }
}

/// "2nd ed. Vol. 2 of *The Complete Prints*. 3 vols. Version 2"
fn book(work: &Description, words: &Words, line: &mut Line) {
    line.sentence(&capitalised(&edition(work, words)));
    if !work.volume.is_empty() {
        line.next();
        push_volume(work, &capitalised(&volume(work, words)), words, line);
    }
    line.sentence(&words.with("bibliography-volumes", "n", &work.volumes));
    let version = words.with("bibliography-version", "version", &work.version);
    line.sentence(&capitalised(&version));
}

/// "vol. 2".
fn volume(work: &Description, words: &Words) -> String {
    words.with("bibliography-volume", "volume", &work.volume)
}

/// Adds the volume, and the work of which it is a volume.
fn push_volume(work: &Description, volume: &str, words: &Words, line: &mut Line) {
    line.push(volume);
    if !work.main_title.is_empty() {
        line.push(&format!(" {} ", words.say("bibliography-of", &[])));
        line.push_italic(&work.main_title);
    }
}

fn edition(work: &Description, words: &Words) -> String {
    match &work.edition {
        Edition::Unsaid => String::new(),
        Edition::Nth(n) => words.edition(*n),
        Edition::Written(edition) => edition.clone(),
    }
}

/// "Northport: Quay Press".
fn imprint(work: &Description) -> String {
    joined(&[&work.place, &work.publisher], ": ")
}

/// The day of publication, for web pages and works of no other kind; the day of the last visit, for
/// undated works; the address.
fn address(work: &Description, words: &Words, line: &mut Line) {
    match (&work.date, &work.visited) {
        (Some(date), _) if matches!(work.kind, Kind::Online | Kind::Other) => {
            line.sentence(&words.day_of_year(date));
        }
        (None, Some(visited)) => {
            let accessed = words.with("bibliography-accessed", "date", &words.day(visited));
            line.sentence(&capitalised(&accessed));
        }
        _ => {}
    }
    line.sentence(&work.link);
}

/// `prefix` and `text`; empty where `text` is empty.
fn prefixed(prefix: &str, text: &str) -> String {
    joined(&[if text.is_empty() { "" } else { prefix }, text], "")
}
