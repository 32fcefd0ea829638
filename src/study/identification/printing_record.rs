//! What the records of printings say of paper, inks, numbering and blocks, set beside what a sheet has.
//!
//! A printing's record is evidence too, though no point asks for it: the papers and inks used, whether its sheets
//! are numbered, and the matrices printed. It speaks for or against the printing without weight, because paper is
//! mixed, inks fade, numbers are added and blocks are left out. A paper that was not made before a printing had ended excludes
//! that printing.
//!
//! In: a design and one of its impressions. Out: [`RecordedEvidence`], printing by printing.
//! Definitions: `docs/definitions.md, "What a sheet's page adds"`. Not here: what points say (`evidence`).
//!
//! ```
//! # mod literal { include!(concat!(env!("CARGO_MANIFEST_DIR"), "/../../tests/doc/catalogue.rs")); }
//! # use literal::{catalogue, key};
//! # use keyblock::study::printing_record::{Bearing, RecordedKind, recorded_evidence};
//! let catalogue = catalogue(r#"
//! -- records/designs/1/design.toml
//! titles = [{ text = "The Ferry" }]
//! printings = [
//!   { key = "own", kind = "artist", date = "1927", paper = ["laid-paper"] },
//!   { key = "late", kind = "restrike", date = "1962", paper = ["wove-paper"] },
//! ]
//! -- records/designs/1/impressions/1.toml
//! status = "located"
//! sheet = { paper = "wove-paper", paper_date = "1950/.." }
//! "#);
//! let design = &catalogue.designs[&key("1")];
//! let found = recorded_evidence(design, &design.impressions[&1]);
//! let of = |printing: &str| -> Vec<_> {
//!     found.iter().filter(|e| e.printing.as_str() == printing).map(|e| (e.kind, e.bearing)).collect()
//! };
//! assert_eq!(of("own"), [(RecordedKind::PaperDate, Bearing::Excludes), (RecordedKind::Paper, Bearing::Against)]);
//! assert_eq!(of("late"), [(RecordedKind::Paper, Bearing::For)]);
//! ```

pub use super::grades::Bearing;
use keyblock_model::certainty::Certainty;
use keyblock_model::design::Design;
use keyblock_model::impression::{BlockPrinted, Impression};
use keyblock_model::key::Key;
use keyblock_model::printing::Printing;

/// What the record of a printing says for or against it, given a sheet.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct RecordedEvidence {
    /// The printing.
    pub printing: Key,
    /// What is compared.
    pub kind: RecordedKind,
    /// What follows.
    pub bearing: Bearing,
}

/// What of a printing's record is compared with a sheet.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum RecordedKind {
    /// When the paper was made, against when the printing ended.
    PaperDate,
    /// The blocks printed.
    Blocks,
    /// The paper.
    Paper,
    /// The inks.
    Inks,
    /// The number.
    Numbering,
}

/// The evidence of the printings' records on a sheet, in the record's order, the strongest kind first.
#[must_use]
pub fn recorded_evidence(design: &Design, impression: &Impression) -> Vec<RecordedEvidence> {
    const KINDS: [RecordedKind; 5] = [
        RecordedKind::PaperDate,
        RecordedKind::Blocks,
        RecordedKind::Paper,
        RecordedKind::Inks,
        RecordedKind::Numbering,
    ];
    let printings: Vec<&Printing> = design.standing_printings().collect();
    let mut found = Vec::new();
    for printing in &printings {
        for kind in KINDS {
            let is_for_another = || {
                let mut others = printings.iter();
                others.any(|other| agrees(other, impression, kind) == Some(false))
            };
            let bearing = match agrees(printing, impression, kind) {
                Some(false) if kind == RecordedKind::PaperDate => Bearing::Excludes,
                Some(false) => Bearing::Against,
                Some(true) if is_for_another() => Bearing::For,
                _ => continue,
            };
            found.push(RecordedEvidence {
                printing: printing.key.value.clone(),
                kind,
                bearing,
            });
        }
    }
    found
}

/// Whether a sheet agrees with the record of a printing; `None` where one of the two says nothing.
fn agrees(printing: &Printing, impression: &Impression, kind: RecordedKind) -> Option<bool> {
    match kind {
        RecordedKind::PaperDate => {
            let paper = impression.sheet.paper_date.as_ref()?;
            let run = printing.date.0.first()?;
            let is_firm = run.claim.certainty() == Certainty::Certain
                && !run.is.value.is_loose()
                && !paper.value.is_loose();
            // That a paper existed already tells nothing: old paper was used for long.
            (is_firm && run.is.value.certainly_before(&paper.value)).then_some(false)
        }
        RecordedKind::Blocks => blocks_agree(printing, impression),
        RecordedKind::Paper => {
            let paper = impression.sheet.paper.as_ref()?;
            let is_used = printing.paper.iter().any(|used| used.value == paper.value);
            (!printing.paper.is_empty()).then_some(is_used)
        }
        RecordedKind::Inks => inks_agree(printing, impression),
        RecordedKind::Numbering => {
            // A sheet without a number tells nothing: it may be outside the edition, or trimmed.
            impression.numbering.as_ref()?;
            printing.numbered
        }
    }
}

/// Whether the blocks found on a sheet are those that the printing used.
fn blocks_agree(printing: &Printing, impression: &Impression) -> Option<bool> {
    if printing.matrices.is_empty() {
        return None;
    }
    let is_used = |matrix: &Key| printing.matrices.iter().any(|used| used.value == *matrix);
    let told = impression
        .blocks
        .iter()
        .filter_map(|(matrix, printed)| match printed.value {
            BlockPrinted::Printed => Some(is_used(&matrix.value)),
            BlockPrinted::NotPrinted => Some(!is_used(&matrix.value)),
            BlockPrinted::NotVisible => None,
        });
    told.reduce(|all, one| all && one)
}

/// Whether every ink named of a sheet is one that the printing used. An ink of the printing that is not named of the
/// sheet tells nothing: nothing says that the sheet's are all named.
fn inks_agree(printing: &Printing, impression: &Impression) -> Option<bool> {
    let on_sheet = &impression.sheet.inks;
    if printing.inks.is_empty() || on_sheet.is_empty() {
        return None;
    }
    let used: Vec<String> = printing.inks.iter().map(|ink| plain(&ink.value)).collect();
    Some(on_sheet.iter().all(|ink| used.contains(&plain(&ink.value))))
}

/// The words of an ink, in lower case and without hyphens: "Blue-grey" is "blue grey".
fn plain(ink: &str) -> String {
    let words = ink.split(|c: char| c.is_whitespace() || c == '-');
    let words = words.filter(|word| !word.is_empty());
    words.map(str::to_lowercase).collect::<Vec<_>>().join(" ")
}

/// Whether two printings were made in inks of which none is the same, as far as their records say.
#[must_use]
pub fn inks_differ(one: &Printing, other: &Printing) -> bool {
    let used = |printing: &Printing| -> Vec<String> {
        printing.inks.iter().map(|ink| plain(&ink.value)).collect()
    };
    let (first, second) = (used(one), used(other));
    !first.is_empty() && !second.is_empty() && first.iter().all(|ink| !second.contains(ink))
}
