//! Opinions in another catalogue's numbers, translated into ours.
//!
//! A museum's "state III" may follow an older catalogue that counts differently: a numeral means nothing
//! without the catalogue it follows (`docs/trade.md, "Writing states"`). The number that an opinion gives
//! after a work is looked up among the numbers that our states and printings have in that work.
//!
//! In: a design and an opinion. Out: [`InOurTerms`]; nothing where the opinion names no work, or the work's
//! number is not in the concordance. Definitions: `docs/definitions.md, "Older numbers"`.
//!
//! ```
//! # mod literal { include!(concat!(env!("CARGO_MANIFEST_DIR"), "/../../tests/doc/catalogue.rs")); }
//! # use literal::{catalogue, key};
//! # use keyblock::study::opinions::in_our_terms;
//! let catalogue = catalogue(r#"
//! -- records/designs/1/design.toml
//! titles = [{ text = "The Ferry" }]
//! [[states]]
//! key = "dark"
//! [[states]]
//! key = "moonlit"
//! literature = [{ cite = "first-list", number = "III" }]
//! -- records/designs/1/impressions/1.toml
//! status = "located"
//! opinions = [{ said = "State 3", after = "first-list" }]
//! "#);
//! let design = &catalogue.designs[&key("1")];
//! let ours = in_our_terms(design, &design.impressions[&1].opinions[0]).unwrap();
//! assert_eq!(ours.states[0].as_str(), "moonlit");
//! ```

use super::numerals::from_roman;
use keyblock_model::design::Design;
use keyblock_model::impression::Opinion;
use keyblock_model::key::Key;
use keyblock_model::literature::{Citation, Relation};

/// Our states and printings that another catalogue's number means.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct InOurTerms {
    /// Our states with that number, in the record's order. Several: theirs covers several of ours.
    pub states: Vec<Key>,
    /// Our printings with that number, in the record's order.
    pub printings: Vec<Key>,
    /// How theirs relates to the first of ours.
    pub relation: Relation,
}

/// An opinion in our terms. `None` where it gives no number of another catalogue.
#[must_use]
pub fn in_our_terms(design: &Design, opinion: &Opinion) -> Option<InOurTerms> {
    let work = &opinion.after.as_ref()?.value;
    let said = opinion.said.as_deref()?;
    let relation = |literature: &[Citation]| {
        let cited = literature.iter().find(|citation| {
            let number = citation.number.as_deref();
            citation.cite.work() == Some(work) && number.is_some_and(|n| is_same_number(n, said))
        });
        cited.map(|citation| citation.relation)
    };
    let states: Vec<(Key, Relation)> = design
        .standing_states()
        .filter_map(|s| Some((s.key.value.clone(), relation(&s.literature)?)))
        .collect();
    let printings: Vec<(Key, Relation)> = design
        .standing_printings()
        .filter_map(|p| Some((p.key.value.clone(), relation(&p.literature)?)))
        .collect();
    let relation = states.iter().chain(&printings).map(|(_, r)| *r).next()?;
    Some(InOurTerms {
        states: states.into_iter().map(|(key, _)| key).collect(),
        printings: printings.into_iter().map(|(key, _)| key).collect(),
        relation,
    })
}

/// Whether two texts name the same number: "III", "iii/IV" (of four), "State 3".
fn is_same_number(one: &str, other: &str) -> bool {
    let (one, other) = (plain(one), plain(other));
    let is_numbered_alike =
        || matches!((number(&one), number(&other)), (Some(a), Some(b)) if a == b);
    one == other || is_numbered_alike()
}

/// Lower case, without a leading "state" and a total.
fn plain(text: &str) -> String {
    let lower = text.trim().to_lowercase();
    let bare = lower
        .strip_prefix("state")
        .map_or(lower.as_str(), str::trim);
    let bare = bare.split(['/', '(']).next().unwrap_or(bare);
    bare.trim().trim_end_matches('.').to_owned()
}

/// The place that a text gives a state or printing: 3 for "III", "State 3", "iii/IV".
#[must_use]
pub fn number_of_part(text: &str) -> Option<u32> {
    number(&plain(text))
}

fn number(text: &str) -> Option<u32> {
    text.parse().ok().or_else(|| from_roman(text))
}

#[cfg(test)]
mod tests {
    use super::is_same_number;

    #[test]
    fn one_number_is_written_in_several_ways() {
        for (one, other) in [
            ("III", "iii"),
            ("III", "iii/IV"),
            ("II", "State 2"),
            ("c", "C"),
            ("II (of IV)", "ii."),
        ] {
            assert!(is_same_number(one, other), "{one} is {other}");
        }
        for (one, other) in [
            ("III", "II"),
            ("II/III", "III"),
            ("c", "d"),
            ("W 4", "4"),
            ("six", "6"),
        ] {
            assert!(!is_same_number(one, other), "{one} is not {other}");
        }
    }
}
