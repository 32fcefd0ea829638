//! Names of authors, editors and translators in a reference.

use biblatex::Person;

use super::description::joined;
use super::line::isolated;
use super::words::Words;

/// The largest number of names that are all printed: The Chicago Manual of Style, 17th ed., 14.76.
const MOST: usize = 10;
/// The number of names printed where there are more than [`MOST`] (same source).
const SHOWN: usize = 7;

/// Names at the head of a reference, the first with the family name first: "Ray, Clara, and Jan Meer".
pub(super) fn heading(people: &[Person], words: &Words) -> String {
    list(people, words, true)
}

/// Names in the line: "Clara Ray and Jan Meer".
pub(super) fn in_line(people: &[Person], words: &Words) -> String {
    list(people, words, false)
}

/// Whether this is the entry's "and others", for people it does not name.
pub(super) fn is_others(person: &Person) -> bool {
    person.name == "others" && person.given_name.is_empty() && person.prefix.is_empty()
}

/// The family name with its particle: "van der Meer".
pub(super) fn family(person: &Person) -> String {
    [person.prefix.as_str(), person.name.as_str()]
        .join(" ")
        .trim()
        .to_owned()
}

/// The name with the family name first, for sorting: "van der Meer, Jan".
pub(super) fn sorted(person: &Person) -> String {
    if person.given_name.is_empty() {
        family(person)
    } else {
        format!("{}, {}", family(person), person.given_name)
    }
}

fn list(people: &[Person], words: &Words, is_heading: bool) -> String {
    let named: Vec<&Person> = people.iter().filter(|person| !is_others(person)).collect();
    let shown = if named.len() > MOST {
        SHOWN
    } else {
        named.len()
    };
    let is_cut = shown < named.len() || named.len() < people.len();
    let mut line = String::new();
    for (at, person) in named.iter().take(shown).enumerate() {
        if at > 0 {
            let is_last = at + 1 == shown && !is_cut;
            line.push_str(if is_last && !is_heading && at == 1 {
                " "
            } else {
                ", "
            });
            if is_last {
                line.push_str(words.and());
                line.push(' ');
            }
        }
        line.push_str(&isolated(&if is_heading && at == 0 {
            family_first(person)
        } else {
            given_first(person)
        }));
    }
    if is_cut {
        line.push_str(if shown > 1 || is_heading { ", " } else { " " });
        line.push_str(&words.say("bibliography-et-al", &[]));
    }
    line
}

/// "Meer, Jan van der", "King, Martin, Jr."
fn family_first(person: &Person) -> String {
    if is_east_asian(person) {
        return given_first(person);
    }
    let given = joined(&[&person.given_name, &person.prefix], " ");
    joined(&[&person.name, &given, &person.suffix], ", ")
}

/// "Jan van der Meer", "Martin King Jr."; Chinese, Japanese and Korean names have the family name first
/// and no space.
fn given_first(person: &Person) -> String {
    if is_east_asian(person) {
        return format!("{}{}", person.name, person.given_name);
    }
    joined(
        &[
            &person.given_name,
            &person.prefix,
            &person.name,
            &person.suffix,
        ],
        " ",
    )
}

/// Whether the name is written in Chinese, Japanese or Korean characters.
fn is_east_asian(person: &Person) -> bool {
    let is_one = |c| matches!(c, '\u{3040}'..='\u{30ff}' | '\u{3400}'..='\u{9fff}' | '\u{ac00}'..='\u{d7a3}');
    person
        .name
        .chars()
        .chain(person.given_name.chars())
        .any(is_one)
}
