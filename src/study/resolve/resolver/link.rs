//! Links to records, and the addresses of their pages: "design:14", "https://…/impression/14/7/".

use super::index::Index;
use crate::resolve::lookup::Keyed;
use crate::resolve::part::{After, parts_of};
use crate::resolve::reading::{Meant, Rank, Reading, Why};

/// A link to a record, or an address of its page or of a place on it.
pub(super) fn by_link(
    index: &Index,
    kind: &'static str,
    parts: &[String],
    readings: &mut Vec<Reading>,
) {
    let certain = |meant, why| Reading::certain(meant, Rank::Address, why);
    match kind {
        "design" => {
            for (keyed, rest) in designs_by_key(index, parts) {
                let why = keyed.why();
                let rest = match rest.first().map(String::as_str) {
                    Some("state" | "printing") => &rest[1..],
                    _ => rest,
                };
                let design = (keyed.design, &index.references.designs[keyed.design]);
                let found = parts_of(&index.reader, design, After::Title, rest, None);
                let part = found.into_iter().next();
                // Any other page of the design.
                let (meant, of_part) = part.unwrap_or((Meant::Design(keyed.design), Why::Key));
                let is_former = of_part == Why::FormerKey;
                readings.push(certain(meant, if is_former { of_part } else { why }));
            }
        }
        "impression" => {
            let Some((number, key)) = parts.split_last() else {
                return;
            };
            for keyed in index.lookup.keys.get(&key.join(".")).into_iter().flatten() {
                let design = &index.references.designs[keyed.design];
                let number = number.parse().ok();
                let number = number.filter(|n| design.impressions.contains(n));
                if let Some(number) = number {
                    let meant = Meant::Impression(keyed.design, number);
                    readings.push(index.on_its_page(certain(meant, keyed.why())));
                }
            }
        }
        _ => {
            for end in 1..=parts.len() {
                let (key, rest) = parts.split_at(end);
                let found = index.lookup.records.get(&(kind, key.join(".")));
                for (meant, why) in found.into_iter().flatten() {
                    let place = match (meant, rest) {
                        (meant, []) => Some(*meant),
                        (Meant::Work(work), rest) => index.lookup.rows[*work]
                            .get(&rest.join("."))
                            .map(|row| Meant::Row(*work, *row)),
                        _ => None,
                    };
                    readings.extend(place.map(|meant| certain(meant, why.clone())));
                }
            }
        }
    }
}

/// The designs whose key begins `parts`, with the parts that follow.
fn designs_by_key<'p>(index: &Index, parts: &'p [String]) -> Vec<(Keyed, &'p [String])> {
    let longest_first = (1..=parts.len()).rev();
    let found = longest_first.filter_map(|end| {
        let (key, rest) = parts.split_at(end);
        let designs = index.lookup.keys.get(&key.join("."))?;
        Some(designs.iter().map(move |keyed| (*keyed, rest)))
    });
    found.take(1).flatten().collect()
}
