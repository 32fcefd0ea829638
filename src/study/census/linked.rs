//! Impressions that are linked without being one sheet: those on the same paper, and sheets of one set.
//!
//! In: the links `shares_sheet` and `goes_with`, stated on one record and valid for both. Out: the groups they
//! join. Each impression still counts by itself: two designs uncut on one
//! sheet are one sheet of paper and two impressions, a triptych is three sheets (`docs/trade.md, "Counting
//! sheets"`).
//!
//! ```
//! # mod literal { include!(concat!(env!("CARGO_MANIFEST_DIR"), "/../../tests/doc/catalogue.rs")); }
//! # use literal::catalogue;
//! # use keyblock::study::linked::on_one_paper;
//! let catalogue = catalogue(r#"
//! -- records/designs/1/design.toml
//! titles = [{ text = "The Ferry" }]
//! -- records/designs/1/impressions/1.toml
//! status = "located"
//! shares_sheet = ["1.2"]
//! -- records/designs/1/impressions/2.toml
//! status = "located"
//! "#);
//! let groups = on_one_paper(&catalogue);
//! assert_eq!((groups.len(), groups[0].len()), (1, 2));
//! ```

use std::collections::{BTreeMap, BTreeSet};

use keyblock_model::catalogue::Catalogue;
use keyblock_model::impression::Impression;
use keyblock_model::key::ImpressionKey;
use keyblock_model::place::Placed;

/// Impressions that are linked with each other, two or more.
pub type ImpressionGroup = BTreeSet<ImpressionKey>;

/// Impressions on one sheet of paper, a group each, by their first impressions.
#[must_use]
pub fn on_one_paper(catalogue: &Catalogue) -> Vec<ImpressionGroup> {
    joined(catalogue, |impression| &impression.shares_sheet)
}

/// Sheets of one set, a group each, by their first sheets.
#[must_use]
pub fn sets(catalogue: &Catalogue) -> Vec<ImpressionGroup> {
    joined(catalogue, |impression| &impression.goes_with)
}

fn joined(
    catalogue: &Catalogue,
    links: impl Fn(&Impression) -> &Vec<Placed<ImpressionKey>>,
) -> Vec<ImpressionGroup> {
    let stands = |key: &ImpressionKey| {
        let impression = catalogue.impression(key);
        impression.is_some_and(|i| !i.standing.is_withdrawn())
    };
    let mut neighbours: BTreeMap<&ImpressionKey, BTreeSet<&ImpressionKey>> = BTreeMap::new();
    for (_, impression) in catalogue.impressions() {
        for other in links(impression) {
            let (a, b) = (&impression.key, &other.value);
            if a != b && stands(a) && stands(b) {
                neighbours.entry(a).or_default().insert(b);
                neighbours.entry(b).or_default().insert(a);
            }
        }
    }
    let mut seen: BTreeSet<&ImpressionKey> = BTreeSet::new();
    let mut groups = Vec::new();
    for first in neighbours.keys() {
        let mut group = ImpressionGroup::new();
        let mut to_visit = vec![*first];
        while let Some(at) = to_visit.pop() {
            if seen.insert(at) {
                group.insert(at.clone());
                to_visit.extend(neighbours.get(at).into_iter().flatten());
            }
        }
        if !group.is_empty() {
            groups.push(group);
        }
    }
    groups
}
