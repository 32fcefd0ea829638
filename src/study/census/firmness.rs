//! How firm the identification of each sheet is: certain, only probable or possible, or contradicted by what was seen.
//!
//! In: the records of a design, grouped by sheet, and which of them are contradicted. Out: [`Firmness`] of each sheet
//! that is not firm. Definitions: `docs/definitions.md, "Rows of the census"`.
//! Not here: what contradicts an identification (`agree`), and the counts that a certainty does not change (`count`).

use std::collections::BTreeMap;

use super::groups::{Groups, is_counted, is_counted_only};
use keyblock_model::certainty::Certainty;
use keyblock_model::design::Design;
use keyblock_model::impression::Identification;
use keyblock_model::key::ImpressionKey;

/// Why a sheet's identification is not firm.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Firmness {
    /// No record of it is identified for certain.
    Uncertain,
    /// The observations of one of its records contradict its identification.
    Contradicted,
}

/// Of some sheets, how many are not firm.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct NotFirm {
    /// Those identified as probable or possible only.
    pub uncertain: usize,
    /// Those whose identification is contradicted; none of them is counted as uncertain too.
    pub contradicted: usize,
}

/// The sheets whose identification is not firm, by their first records. A sheet that is not identified has no place
/// here.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct FirmnessOfSheets(BTreeMap<ImpressionKey, Firmness>);

impl FirmnessOfSheets {
    /// The sheets of a design; `is_contradicted` says it of a record, by its number.
    #[must_use]
    pub(crate) fn of(
        groups: &Groups,
        design: &Design,
        is_contradicted: impl Fn(u32) -> bool,
    ) -> FirmnessOfSheets {
        let is_certain = |of: &Identification| of.claim.certainty() == Certainty::Certain;
        // For each sheet: whether some record is identified for certain, and whether some record is contradicted.
        let mut sheets: BTreeMap<ImpressionKey, (bool, bool)> = BTreeMap::new();
        for (number, impression) in &design.impressions {
            let counted = impression.identified.as_ref();
            if let Some(identified) = counted.filter(|_| is_counted(design, impression)) {
                let sheet = sheets.entry(groups.first_of(&impression.key)).or_default();
                sheet.0 |= is_certain(identified);
                sheet.1 |= is_contradicted(*number);
            }
        }
        for sheet in &design.counted_only {
            let counted = sheet.identified.as_ref();
            if let Some(identified) = counted.filter(|_| is_counted_only(design, sheet)) {
                sheets.insert(sheet.key.clone(), (is_certain(identified), false));
            }
        }
        let firmness = |(sheet, found): (ImpressionKey, (bool, bool))| match found {
            (_, true) => Some((sheet, Firmness::Contradicted)),
            (false, false) => Some((sheet, Firmness::Uncertain)),
            (true, false) => None,
        };
        FirmnessOfSheets(sheets.into_iter().filter_map(firmness).collect())
    }

    /// How many of some sheets, each by its first record, are not firm.
    #[must_use]
    pub fn among(&self, sheets: &[ImpressionKey]) -> NotFirm {
        let mut not_firm = NotFirm::default();
        for sheet in sheets {
            match self.0.get(sheet) {
                Some(Firmness::Uncertain) => not_firm.uncertain += 1,
                Some(Firmness::Contradicted) => not_firm.contradicted += 1,
                None => {}
            }
        }
        not_firm
    }
}
