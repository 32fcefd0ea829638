//! The size that the image or matrix of a design has in each state and printing.
//!
//! A plate that is cut down has one size before and another after. A state or printing records its own size where it
//! differs from the design's; a candidate has the sizes that its state and its printing record, and those of the
//! design where neither records any.
//!
//! In: a design, and an impression of it. Out: the statements that apply, or the states that share a size.
//! Definitions: `docs/definitions.md, "Measurements"`.
//! Not here: how far two measurements may lie apart ([`super::tolerance`]).
//!
//! ```
//! # mod literal { include!(concat!(env!("CARGO_MANIFEST_DIR"), "/../../tests/doc/catalogue.rs")); }
//! # use literal::{catalogue, key};
//! # use keyblock::model::size::Sizes;
//! # use keyblock::study::sizes::by_state;
//! let catalogue = catalogue(r#"
//! -- records/designs/1/design.toml
//! titles = [{ text = "The Ferry" }]
//! size = { image = [246, 362] }
//! states = [{ key = "whole" }, { key = "cut-down", size = { image = [232, 362] } }]
//! "#);
//! let sizes = by_state(&catalogue.designs[&key("1")], |sizes| &sizes.image);
//! let told: Vec<_> = sizes.iter().map(|s| s.own.is.value.to_string()).collect();
//! assert_eq!(told, ["246 × 362", "232 × 362"]);
//! ```

use crate::candidates::{Candidate, allowed_by, candidates};
use crate::census::is_counted;
use crate::tolerance::{SizeAgreement, compare_sizes};
use keyblock_model::certainty::{Certainty, Statement, Statements};
use keyblock_model::design::Design;
use keyblock_model::impression::Impression;
use keyblock_model::key::Key;
use keyblock_model::size::{Size, Sizes};

/// The part of [`Sizes`] that is asked for: the image or the matrix.
pub type Part = fn(&Sizes) -> &Statements<Size>;

/// The part of a sheet that is measured against it: its image or its platemark.
pub type MeasuredPart = fn(&Impression) -> &Statements<Size>;

/// States that share a size.
#[derive(Clone, Debug, PartialEq)]
pub struct StatesOfSize<'a> {
    /// The states, in order.
    pub states: Vec<&'a Key>,
    /// The catalogue's own statement of their size.
    pub own: &'a Statement<Size>,
    /// The other statements on it.
    pub others: &'a [Statement<Size>],
}

/// The standing states by size, in the order of the first state of each; states of no recorded size are left out.
#[must_use]
pub fn by_state(design: &Design, part: Part) -> Vec<StatesOfSize<'_>> {
    let mut found: Vec<StatesOfSize<'_>> = Vec::new();
    for state in design.standing_states() {
        let own = part(&state.size);
        let recorded = if own.is_empty() {
            part(&design.size)
        } else {
            own
        };
        let Some(own) = recorded.0.first() else {
            continue;
        };
        let others = recorded.others();
        match found
            .iter_mut()
            .find(|known| known.own == own && known.others == others)
        {
            Some(known) => known.states.push(&state.key.value),
            None => found.push(StatesOfSize {
                states: vec![&state.key.value],
                own,
                others,
            }),
        }
    }
    found
}

/// The standing states of which a figure is the size: those whose own recorded size agrees with it.
#[must_use]
pub fn states_of<'a>(design: &'a Design, part: Part, figure: &Size) -> Vec<&'a Key> {
    by_state(design, part)
        .into_iter()
        .filter(|known| compare_sizes(&known.own.is.value, figure) == SizeAgreement::Agree)
        .flat_map(|known| known.states)
        .collect()
}

/// The statements on the size of a sheet: those of every candidate that its identification allows, or of all
/// candidates where it has none. Each set of statements comes once.
#[must_use]
pub fn of_sheet<'a>(
    design: &'a Design,
    impression: &Impression,
    part: Part,
) -> Vec<&'a Statements<Size>> {
    let allowed = impression
        .identified
        .as_ref()
        .map(|identified| allowed_by(design, identified))
        .filter(|allowed| !allowed.is_empty())
        .unwrap_or_else(|| candidates(design));
    let mut found: Vec<&Statements<Size>> = Vec::new();
    for candidate in &allowed {
        for recorded in of_candidate(design, candidate, part) {
            if !found.contains(&recorded) {
                found.push(recorded);
            }
        }
    }
    if allowed.is_empty() && !part(&design.size).is_empty() {
        found.push(part(&design.size));
    }
    found
}

/// The statements on the size of a candidate.
fn of_candidate<'a>(
    design: &'a Design,
    candidate: &Candidate<'a>,
    part: Part,
) -> impl Iterator<Item = &'a Statements<Size>> + use<'a> {
    let of_state = candidate.state.map(|state| part(&state.size));
    let of_printing = candidate.printing.map(|printing| part(&printing.size));
    let own = [of_state, of_printing].map(|s| s.filter(|said| !said.is_empty()));
    let of_design =
        Some(part(&design.size)).filter(|said| !said.is_empty() && own.iter().all(Option::is_none));
    own.into_iter().flatten().chain(of_design)
}

/// The measured parts of a sheet, each with the part of the design that it should agree with and its name.
#[must_use]
pub fn measured_parts(impression: &Impression) -> [(&Statements<Size>, Part, &'static str); 2] {
    let sheet = &impression.sheet;
    [
        (&sheet.image, |sizes| &sizes.image, "image"),
        (&sheet.platemark, |sizes| &sizes.matrix, "platemark"),
    ]
}

/// The range of the sizes measured on the sheets of a design.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct MeasuredRange {
    /// The smallest height and the smallest width, which need not be of one sheet.
    pub least: Size,
    /// The largest height and the largest width.
    pub most: Size,
    /// How many sheets were measured.
    pub sheets: usize,
}

/// The range of the catalogue's own certain measurements of a part over the counted sheets of a design, fragments
/// and sheets measured within a mount left out; `None` where none was measured.
#[must_use]
pub fn measured(design: &Design, part: MeasuredPart) -> Option<MeasuredRange> {
    design
        .impressions
        .values()
        .filter(|sheet| is_counted(design, sheet) && !is_fragment(sheet))
        .filter(|sheet| !sheet.sheet.measuring.sight)
        .filter_map(|sheet| part(sheet).0.first())
        .filter(|own| own.claim.certainty() == Certainty::Certain)
        .map(|own| own.is.value)
        .fold(None, |range: Option<MeasuredRange>, size| {
            Some(match range {
                None => MeasuredRange {
                    least: size,
                    most: size,
                    sheets: 1,
                },
                Some(known) => MeasuredRange {
                    least: known.least.least(&size),
                    most: known.most.most(&size),
                    sheets: known.sheets + 1,
                },
            })
        })
}

/// Whether a sheet is recorded as a fragment, whose measurements say nothing about the whole.
#[must_use]
pub fn is_fragment(impression: &Impression) -> bool {
    let kind = impression.kind.own();
    kind.is_some_and(|kind| kind.as_str() == "fragment")
}
