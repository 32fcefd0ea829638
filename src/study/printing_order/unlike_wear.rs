//! Sheets that have one number of one edition and unlike wear, and so cannot be one sheet.
//!
//! In: a design, and which of its records are one sheet. Out: [`UnlikeWear`].
//! Not here: that a number is met twice (`editions`), and whether two records may be one sheet (`same_sheet`).

use super::evidence::{Evidence, Ground, Placing};
use super::reason::WearStep;
use crate::census::Groups;
use crate::census::editions::{MetNumber, numbers_met};
use keyblock_model::design::Design;
use keyblock_model::key::{ImpressionKey, Key};

/// Two sheets of one printing that have one number, and wear that orders them.
#[derive(Clone, Debug, PartialEq)]
pub struct UnlikeWear {
    /// The printing.
    pub printing: Key,
    /// The number that both have.
    pub number: MetNumber,
    /// The two records. Of them the one with less wear at the first point that tells them apart comes first.
    pub records: [ImpressionKey; 2],
    /// Where the first of the records shows less wear, in the order of the points; at least one.
    pub wear: Vec<WearStep>,
}

/// The sheets of a design that have one number of one printing and unlike wear, by printing, number and record: for
/// each record the first before it from which it differs.
#[must_use]
pub fn unlike_wear(groups: &Groups, design: &Design) -> Vec<UnlikeWear> {
    let twice: Vec<_> = numbers_met(design)
        .into_iter()
        .flat_map(|(printing, met)| met.into_iter().map(move |met| (printing, met)))
        .filter(|(_, (_, records))| records.len() > 1)
        .collect();
    if twice.is_empty() {
        return Vec::new();
    }
    let ground = Ground::of(design);
    let evidence =
        |record: &ImpressionKey| match ground.placing(design.impressions.get(&record.number)?) {
            Placing::By(evidence) => Some(evidence),
            Placing::Outside | Placing::Contradicted => None,
        };
    let mut found = Vec::new();
    for (printing, (number, records)) in twice {
        let placed: Vec<(ImpressionKey, Evidence)> = records
            .into_iter()
            .filter_map(|record| Some((record.clone(), evidence(&record)?)))
            .collect();
        for (at, other) in placed.iter().enumerate() {
            let before = placed.get(..at).unwrap_or_default().iter();
            let mut apart = before
                .filter(|one| groups.first_of(&one.0) != groups.first_of(&other.0))
                .filter_map(|one| differing(&ground, one, other));
            found.extend(apart.next().map(|(records, wear)| UnlikeWear {
                printing: printing.clone(),
                number,
                records,
                wear,
            }));
        }
    }
    found
}

/// Two records by their wear, the less worn first; `None` where no wear tells them apart.
fn differing(
    ground: &Ground<'_>,
    one: &(ImpressionKey, Evidence),
    other: &(ImpressionKey, Evidence),
) -> Option<([ImpressionKey; 2], Vec<WearStep>)> {
    let told = [(one, other), (other, one)].map(|(less, more)| {
        let wear: Vec<WearStep> = ground.wear_steps(&less.1, &more.1).collect();
        ([less.0.clone(), more.0.clone()], wear)
    });
    let order = |step: &WearStep| ground.points().position(|point| *point == step.point);
    let told = told.into_iter().filter(|(_, wear)| !wear.is_empty());
    told.min_by_key(|(_, wear)| wear.first().and_then(order))
}
