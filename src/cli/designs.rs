//! Finds the design that an argument names.

use super::outcome::Outcome;
use super::plural::counted;
use super::streams::say;
use crate::model::catalogue::Catalogue;
use crate::model::design::Design;
use crate::model::finding::{Finding, Tally};
use crate::model::key::Key;
use crate::read::near::nearest;

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
    say(format_args!("keyblock: there is no design `{name}`"));
    let keys: Vec<&str> = catalogue.designs.keys().map(Key::as_str).collect();
    match nearest(name, keys.iter().copied()) {
        Some(near) => say(format_args!("  the nearest is `{near}`")),
        None if keys.is_empty() => {
            say("  the catalogue has no design; name its folder with --in");
        }
        None => say(format_args!("  the designs are {}", keys.join(", "))),
    }
    Outcome::Usage
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
