//! Rules of the trade. Each is common practice, without a source.

use keyblock::model::catalogue::Catalogue;
use keyblock::study::Studies;
use keyblock::study::identify::{Identified, identify};
use keyblock::study::index::CandidateAt;

use super::{certainly, design, key, left, table};
use crate::small::studied;

/// A design whose artist's printing and later printing carry one and the same seal.
const SEALED: &str = r#"
points = [
  { key = "seal", ask = "A seal?", kind = "presence", rests_on = "mark" },
  { key = "sky", ask = "The sky?", kind = "choice", rests_on = "inking", values = { even = "even", graded = "graded" } },
  { key = "moon", ask = "A moon?", kind = "presence", rests_on = "matrix" },
]
states = [{ key = "a", shows = { moon = "absent" } }, { key = "b", shows = { moon = "present" } }]
printings = [
  { key = "own", kind = "artist", states = "all", shows = { seal = ["present", "absent"], sky = "graded" } },
  { key = "later", kind = "posthumous", states = "all", shows = { seal = "present", sky = "even" } },
]
"#;

/// Common practice, no source: seals and stamps survive the artist and are used on later printings.
#[test]
fn a_stamp_alone_never_proves_the_artists_own_printing() {
    let table = table(&[&design(SEALED)]);
    let stamped = left(&table, &[certainly(&table, "seal", &["present"])]);
    assert_eq!(stamped, ["a/own", "a/later", "b/own", "b/later"]);
    let identified = identify(&table, &[certainly(&table, "seal", &["present"])]);
    let weight = |at| identified.candidates[CandidateAt::new(at)].weight;
    assert!(weight(0) < weight(1) && weight(2) < weight(3));
}

/// Common practice, no source: ink and paper are chosen for each sheet and may recur in any order.
#[test]
fn inking_never_separates_states() {
    let table = table(&[&design(SEALED)]);
    // What it tells of the printing is a matter of weight.
    let graded = [certainly(&table, "sky", &["graded"])];
    assert_eq!(
        left(&table, &graded),
        ["a/own", "a/later", "b/own", "b/later"]
    );
    let identified = identify(&table, &graded);
    let weight = |at| identified.candidates[CandidateAt::new(at)].weight;
    assert!(weight(0) > weight(1));
    assert!((weight(0) - weight(2)).abs() < 1e-12);
    // Two states of one printing are separated by nothing but the matrix, whatever is recorded.
    let wrongly = design(
        r#"
points = [{ key = "sky", ask = "The sky?", kind = "choice", rests_on = "inking", values = { even = "even", graded = "graded" } }]
states = [{ key = "a", shows = { sky = "even" } }, { key = "b", shows = { sky = "graded" } }]
printings = [{ key = "own", kind = "artist", states = "all" }]"#,
    );
    let (_, studies) = studied(&[&wrongly]);
    let study = &studies.designs[&key("1")];
    let pair = (CandidateAt::new(0), CandidateAt::new(1));
    assert_eq!(study.separability.inseparable, [pair]);
    assert!(study.separability.smallest_set.is_empty());
}

/// Common practice, no source: what is trimmed off or covered by mount or frame gives no information.
#[test]
fn a_trimmed_or_framed_place_never_counts_as_absent() {
    let sheets = "
-- records/designs/1/impressions/1.toml
status = \"located\"
observed = { moon = \"not-visible\", seal = \"not-visible\" }
-- records/designs/1/impressions/2.toml
status = \"located\"
observed = { moon = \"absent\" }
";
    let (catalogue, studies) = studied(&[&design(SEALED), sheets]);
    assert_eq!(record_left(&catalogue, &studies, 1), 4);
    assert_eq!(record_left(&catalogue, &studies, 2), 2);
}

/// Common practice, no source: a block that was not printed gives no information on its state.
#[test]
fn what_belongs_to_a_block_not_printed_tells_nothing() {
    let trial = design(
        r#"
matrices = [{ key = "key" }, { key = "sky" }]
points = [{ key = "moon", ask = "A moon?", kind = "presence", rests_on = "matrix", matrix = "sky" }]
states = [{ key = "a", shows = { moon = "absent" } }, { key = "b", shows = { moon = "present" } }]"#,
    );
    let sheet = "
-- records/designs/1/impressions/1.toml
status = \"located\"
observed = { moon = \"absent\" }
blocks = { sky = \"not-printed\" }
";
    let (catalogue, studies) = studied(&[&trial, sheet]);
    assert_eq!(record_left(&catalogue, &studies, 1), 2);
}

/// How many candidates the record of an impression of design 1 leaves.
fn record_left(catalogue: &Catalogue, studies: &Studies, impression: u32) -> usize {
    let design = &catalogue.designs[&key("1")];
    let table = &studies.designs[&key("1")].table;
    let impression = &design.impressions[&impression];
    let observed = keyblock::study::identify::observed_on(table, design, impression);
    let identified: Identified = identify(table, &observed);
    identified.left().count()
}
