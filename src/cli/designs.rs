//! Finds the design that an argument names.

use super::outcome::Outcome;
use super::plural::counted;
use super::streams::say;
use crate::model::catalogue::Catalogue;
use crate::model::design::Design;
use crate::model::finding::{Finding, Tally};
use crate::model::key::Key;
use crate::read::names;
use crate::read::near::{either, meant};

/// The design with this key or, where there is none, the only one with this number. Where its key and number differ,
/// the user is told both; where the text is also the number of another design, that it was taken for the key.
///
/// # Errors
/// [`Outcome::Usage`] where there is none, after a message with the nearest key or all keys.
pub(super) fn named<'a>(catalogue: &'a Catalogue, name: &str) -> Result<&'a Design, Outcome> {
    let by_key = name.parse::<Key>().ok();
    let by_key = by_key.and_then(|key| catalogue.designs.get(&key));
    let mut numbered = catalogue.designs.values().filter(|d| d.number == name);
    let by_number = numbered.next().filter(|_| numbered.next().is_none());
    if let (Some(taken), Some(other)) = (by_key, by_number)
        && taken.key != other.key
    {
        say(format_args!(
            "keyblock: `{name}` is the key of a design and the number of design `{}`; taken for the key",
            other.key
        ));
    }
    let design = by_key
        .or(by_number)
        .ok_or_else(|| unknown(catalogue, name))?;
    if design.number != design.key.as_str() {
        say(format_args!(
            "keyblock: the design with the key `{}` has the number {}",
            design.key, design.number
        ));
    }
    Ok(design)
}

fn unknown(catalogue: &Catalogue, name: &str) -> Outcome {
    let numbered = catalogue.designs.values().filter(|d| d.number == name);
    let numbered: Vec<&str> = numbered.map(|design| design.key.as_str()).collect();
    if !numbered.is_empty() {
        say(format_args!(
            "keyblock: several designs have the number {name}"
        ));
        say(format_args!("  write the key: {}", either(&numbered)));
        return Outcome::Usage;
    }
    say(format_args!("keyblock: there is no design `{name}`"));
    let meant = meant(name, &names::of_designs(catalogue));
    if catalogue.designs.is_empty() {
        say("  the catalogue has no design; name its folder with --in");
    } else if meant.is_empty() {
        say(format_args!("  {}", listed(catalogue)));
    } else {
        let meant: Vec<String> = meant.iter().map(|key| told(catalogue, key)).collect();
        say(format_args!("  the nearest is {}", meant.join(" or ")));
    }
    Outcome::Usage
}

/// The most designs that are listed.
const MOST_LISTED: usize = 20;

/// The designs of a catalogue, the first of them if they are many.
fn listed(catalogue: &Catalogue) -> String {
    let keys = catalogue.designs.keys().map(Key::as_str);
    let first: Vec<&str> = keys.take(MOST_LISTED).collect();
    let more = match catalogue.designs.len().saturating_sub(MOST_LISTED) {
        0 => String::new(),
        more => format!(" and {more} more"),
    };
    format!("the designs are {}{more}", first.join(", "))
}

/// A design by its key, with its number where that differs: "`mill` (number 2)".
fn told(catalogue: &Catalogue, key: &str) -> String {
    let design = catalogue.designs.get(key);
    match design.filter(|design| design.number != key) {
        Some(design) => format!("`{key}` (number {})", design.number),
        None => format!("`{key}`"),
    }
}

/// Tells the user that records with errors were left out, where there are any.
pub(super) fn say_left_out(findings: &[Finding]) {
    let left_out = Tally::of(findings).errors;
    if left_out > 0 {
        let errors = counted(left_out, "error", "errors");
        say(format_args!(
            "keyblock: {errors} in the records; what they concern was left out (see `keyblock audit`)"
        ));
    }
}
