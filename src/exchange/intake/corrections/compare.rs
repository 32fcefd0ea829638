//! Which keys of a record a row changes.

use super::flat::{Flat, KeyPath, said};
use crate::exchange::intake::proposal::Correction;
use crate::exchange::intake::record::{Entry, written_inline};
use crate::model::as_found::AsGiven;
use crate::model::impression::Impression;
use crate::study::search::words::number_key;

/// The lists of tables that intake writes.
const LISTS: [&str; 3] = ["opinions", "marks", "provenance"];

/// What a row changes in a record: nothing where the holder's words are those that the record has.
///
/// `earlier`: the record that intake makes of the holder's words in the record, with the columns and settings of now;
/// `None` for a record without them. `proposed`: that of the row.
#[must_use]
pub fn corrections(
    recorded: &Impression,
    earlier: Option<&Impression>,
    proposed: &Impression,
) -> Vec<Correction> {
    let given = of_given(
        recorded.as_given.as_ref(),
        proposed.as_given.as_ref(),
        earlier.and_then(|earlier| earlier.as_given.as_ref()),
    );
    if given.iter().all(|correction| correction.is_kept) {
        return given;
    }
    let before = earlier.map(Flat::of).unwrap_or_default();
    let now = Flat::of(proposed);
    let has = Flat::of(recorded);
    let mut all = Vec::new();
    for path in paths(&before, &now) {
        let (was, would_be, is) = (before.value(&path), now.value(&path), has.value(&path));
        if was == would_be || is == would_be || is_same(&path, is, would_be) {
            continue;
        }
        // The words that sizes were taken from are not those of sizes that a hand wrote.
        if is_about_sizes(&path) && has_sizes_by_hand(&before, &has) {
            continue;
        }
        if is_size_recorded_otherwise(&path, would_be, &has) {
            continue;
        }
        all.push(Correction {
            key: path.text(),
            is: is.map(plain),
            would_be: would_be.map(plain),
            is_kept: is != was || would_be.is_none(),
        });
    }
    for list in LISTS {
        all.extend(of_list(list, &before, &now, &has));
    }
    all.extend(of_sightings(&now, &has));
    all.extend(given);
    all
}

/// Whether some correction would change the record; the others only tell.
#[must_use]
pub fn changes_something(corrections: &[Correction]) -> bool {
    corrections.iter().any(|correction| !correction.is_kept)
}

/// The keys that the old or the new words give, but for the words themselves.
fn paths(before: &Flat, now: &Flat) -> Vec<KeyPath> {
    let is_words = |path: &KeyPath| path.table == Some("as_given");
    let mut paths: Vec<KeyPath> = Vec::new();
    for (path, _) in now.values.iter().chain(&before.values) {
        if !is_words(path) && !paths.contains(path) {
            paths.push(path.clone());
        }
    }
    paths
}

/// Whether two values are one, written otherwise: an accession number with other punctuation, a size rounded to the
/// millimetre, the place of a sheet that is known to be lost.
fn is_same(path: &KeyPath, is: Option<&str>, would_be: Option<&str>) -> bool {
    let (Some(is), Some(would_be)) = (is, would_be) else {
        return false;
    };
    match (path.table, path.key.as_str()) {
        (None, "accession") => number_key(is) == number_key(would_be),
        (Some("sheet"), _) => match (lengths(is), lengths(would_be)) {
            (Some(one), Some(other)) => {
                let mut pairs = one.iter().zip(&other);
                pairs.all(|(one, other)| (one - other).abs() <= 0.5)
            }
            _ => false,
        },
        _ => false,
    }
}

/// Whether a size of which it is not said what was measured is recorded as that of something.
fn is_size_recorded_otherwise(path: &KeyPath, would_be: Option<&str>, has: &Flat) -> bool {
    if path.table != Some("sheet") || path.key != "unsaid" {
        return false;
    }
    let Some(unsaid) = would_be.and_then(lengths) else {
        return false;
    };
    let mut sizes = has
        .values
        .iter()
        .filter(|(known, _)| known.table == Some("sheet") && known.key != "unsaid");
    sizes.any(|(_, value)| {
        lengths(value).is_some_and(|known| {
            let mut pairs = known.iter().zip(&unsaid);
            pairs.all(|(one, other)| (one - other).abs() <= 0.5)
        })
    })
}

/// Whether a key says how all sizes of the sheet were taken.
fn is_about_sizes(path: &KeyPath) -> bool {
    path.table == Some("sheet") && matches!(path.key.as_str(), "said" | "sight")
}

/// Whether the record has a size that is not what the old words read.
fn has_sizes_by_hand(before: &Flat, has: &Flat) -> bool {
    let is_size = |path: &KeyPath, value: &str| {
        path.table == Some("sheet") && value.starts_with(['[', '{']) && path.key != "inks"
    };
    let mut sizes = has
        .values
        .iter()
        .filter(|(path, value)| is_size(path, value));
    sizes.any(|(path, value)| before.value(path) != Some(value))
}

fn lengths(value: &str) -> Option<[f64; 2]> {
    let (height, width) = value
        .strip_prefix('[')?
        .strip_suffix(']')?
        .split_once(", ")?;
    Some([height.parse().ok()?, width.parse().ok()?])
}

/// A value as a reader of the report sees it: a text without its quotes.
fn plain(value: &str) -> String {
    let parsed: Option<toml::Table> = format!("value = {value}").parse().ok();
    let text = parsed.and_then(|table| table.get("value")?.as_str().map(str::to_owned));
    text.unwrap_or_else(|| value.to_owned())
}

/// What changes in the words themselves.
fn of_given(
    recorded: Option<&AsGiven>,
    proposed: Option<&AsGiven>,
    known: Option<&AsGiven>,
) -> Vec<Correction> {
    let text = |given: Option<&AsGiven>, name: &str| {
        let mut fields = given.iter().flat_map(|given| &given.fields);
        let found = fields.find(|field| field.name.value == name)?;
        Some(found.text.value.clone())
    };
    let correction = |name: &str, is: Option<String>, would_be: Option<String>, is_kept| {
        let path = KeyPath {
            table: Some("as_given"),
            key: name.to_owned(),
        };
        Correction {
            key: path.text(),
            is,
            would_be,
            is_kept,
        }
    };
    let mut all = Vec::new();
    for field in proposed.iter().flat_map(|given| &given.fields) {
        let (name, now) = (&field.name.value, &field.text.value);
        let is = text(recorded, name);
        if is.as_deref().map(str::trim) != Some(now.trim()) {
            all.push(correction(name, is, Some(now.clone()), false));
        }
    }
    for field in recorded.iter().flat_map(|given| &given.fields) {
        let name = &field.name.value;
        if text(proposed, name).is_none() {
            // A column that is there, with an empty cell: the holder took the words back. Without the column they stay.
            let has_column = text(known, name).is_some();
            all.push(correction(
                name,
                Some(field.text.value.clone()),
                None,
                !has_column,
            ));
        }
    }
    if all.iter().any(|correction| !correction.is_kept) {
        let of_both = |key: &str, is: Option<String>, would_be: Option<String>| {
            let differs = would_be.is_some() && is != would_be;
            differs.then(|| correction(key, is, would_be, false))
        };
        let seen = |given: Option<&AsGiven>| Some(given?.seen.as_ref()?.value.to_string());
        let source = |given: Option<&AsGiven>| Some(given?.source.as_ref()?.value.clone());
        let of_table = [
            of_both("seen", seen(recorded), seen(proposed)),
            of_both("source", source(recorded), source(proposed)),
        ];
        all.splice(0..0, of_table.into_iter().flatten());
    }
    all
}

/// What changes in a list of tables. A table of the old words that has another in its place in the new ones is corrected,
/// one without is kept and told; one of the new words alone is added.
fn of_list(list: &'static str, before: &Flat, now: &Flat, has: &Flat) -> Vec<Correction> {
    let not_in = |one: &Flat, other: &Flat| -> Vec<Vec<Entry>> {
        let others: Vec<Vec<Entry>> = other.list(list).iter().map(|t| said(list, t)).collect();
        let tables = one.list(list).iter();
        tables
            .filter(|table| !others.contains(&said(list, table)))
            .cloned()
            .collect()
    };
    let is_recorded = |table: &[Entry]| {
        let mut recorded = has.list(list).iter();
        recorded.any(|known| {
            said(list, known) == said(list, table)
                || list == "opinions" && is_same_opinion(known, table)
        })
    };
    let gone = not_in(before, now);
    let mut new = not_in(now, before).into_iter();
    let mut all = Vec::new();
    let correction = |is: Option<&Vec<Entry>>, would_be: Option<&Vec<Entry>>, is_kept| Correction {
        key: list.to_owned(),
        is: is.map(|table| written_inline(&said(list, table))),
        would_be: would_be.map(|table| written_inline(&said(list, table))),
        is_kept,
    };
    for old in &gone {
        let new = new.next();
        if new.as_ref().is_some_and(|new| is_recorded(new)) {
            continue;
        }
        let is_kept = new.is_none() || !is_recorded(old);
        all.push(correction(Some(old), new.as_ref(), is_kept));
    }
    // What a hand wrote in the list stands for what the file says: where it has anything, a difference is told.
    let is_by_hand = has.list(list).iter().any(|table| {
        let of_file = before.list(list).iter().chain(now.list(list));
        !of_file
            .into_iter()
            .any(|known| said(list, known) == said(list, table))
    });
    for table in new.filter(|table| !is_recorded(table)) {
        let is_kept = is_by_hand && list != "opinions";
        all.push(correction(None, Some(&table), is_kept));
    }
    all
}

/// Whether a recorded opinion says what one of the file says: the same number after the same catalogue by the same house,
/// whatever its capitals.
fn is_same_opinion(known: &[Entry], of_file: &[Entry]) -> bool {
    let value = |table: &[Entry], key: &str| {
        let entry = table.iter().find(|entry| entry.key == key)?;
        Some(entry.value.to_lowercase())
    };
    ["said", "after", "by"].iter().all(|key| {
        let is_there = value(of_file, key);
        is_there.is_some() && value(known, key) == is_there
    })
}

/// That it was seen again is added.
fn of_sightings(now: &Flat, has: &Flat) -> Vec<Correction> {
    let list = "sightings";
    let new = now.list(list).iter().filter(|table| {
        let mut known = has.list(list).iter();
        !known.any(|known| known == *table)
    });
    let all = new.map(|table| Correction {
        key: list.to_owned(),
        is: None,
        would_be: Some(written_inline(&said(list, table))),
        is_kept: false,
    });
    all.collect()
}
