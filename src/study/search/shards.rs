//! The terms cut into shards: files of which a reader's browser loads one for each word that is typed.
//!
//! A reader types the beginning of a word, and all terms with that beginning must then stand in one shard. So
//! terms are taken together by their beginnings: a beginning whose terms fit into a shard is never cut. One whose
//! terms do not fit is: its longer beginnings follow one by one. Only those who stop typing there need it whole, and
//! for them the shard has one more term, the beginning with `*`, with the closest [`FIRST`] of the entries that
//! have any word with that beginning. Then neighbours are put together into shards as long as they fit.
//!
//! The shard of a word is the last whose start does not sort after the word.

use std::fmt::Write as _;

use rayon::prelude::*;

use super::index::{Class, Term};
use super::sets::encode;

/// The most bytes of a shard, and of a part of the rest of a term.
pub const MOST_BYTES: usize = 28_000;

/// The most bytes of the sets of one term in its shard; the rest stands in parts of its own. It leaves room for the term of
/// a beginning in the same shard.
pub const MOST_BESIDE: usize = 20_000;

/// How many entries are kept for a beginning whose terms stand in several shards.
pub const FIRST: usize = 100;

/// What stands behind a beginning in its own term; no word has it.
pub const BEGINNING: char = '*';

/// A part of the index.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Shard {
    /// The beginning that it starts with; empty for the first.
    pub start: String,
    /// Its terms: the fields of a JSON object, with commas between them. The value of a term is an array: its
    /// written form, or `0` where that is the term itself; then the entries of each class
    /// ([`encode`]), without `0` at the end; then, where these are not all, an object `{"more":[FIRST,COUNT]}`: the
    /// parts that have the others.
    pub terms: String,
}

/// The terms in files.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Shards {
    /// The shards, by their starts.
    pub shards: Vec<Shard>,
    /// The parts of the terms that do not fit into a shard, one after the other: items of a JSON array with commas between
    /// them, each a class and entries of it that come after those before.
    pub more: Vec<String>,
}

/// Terms that belong into one shard.
struct Unit<'t> {
    /// Their common beginning.
    start: &'t str,
    terms: &'t [Written<'t>],
    /// The term of the beginning itself, as JSON.
    beginning: Option<String>,
}

/// A term, and the same as JSON.
struct Written<'t> {
    term: &'t Term,
    json: String,
}

/// Cuts the terms, which are sorted by UTF-16 units.
#[must_use]
pub fn shards(terms: &[Term]) -> Shards {
    let sets: Vec<TermSets> = terms
        .par_iter()
        .map(|term| TermSets::of(&term.entries))
        .collect();
    let mut more: Vec<String> = Vec::new();
    let mut written = Vec::with_capacity(terms.len());
    for (term, sets) in terms.iter().zip(sets) {
        let rest = (!sets.more.is_empty()).then_some((more.len(), sets.more.len()));
        more.extend(sets.more);
        written.push(Written {
            term,
            json: json(&term.folded, term.written.as_deref(), &sets.beside, rest),
        });
    }
    let mut units = Vec::new();
    cut(&written, 0, &mut units);
    let mut shards: Vec<Shard> = Vec::new();
    for unit in units {
        let mut fields: Vec<&str> = unit.terms.iter().map(|term| term.json.as_str()).collect();
        fields.extend(unit.beginning.as_deref());
        let text = fields.join(",");
        match shards.last_mut() {
            Some(shard) if shard.terms.len() + 1 + text.len() <= MOST_BYTES => {
                if !shard.terms.is_empty() && !text.is_empty() {
                    shard.terms.push(',');
                }
                shard.terms.push_str(&text);
            }
            _ => shards.push(Shard {
                start: unit.start.to_owned(),
                terms: text,
            }),
        }
    }
    if let Some(first) = shards.first_mut() {
        // A word that sorts before every term is looked up in the first shard, and is not there.
        first.start.clear();
    }
    Shards { shards, more }
}

/// The entries of a term as JSON.
#[derive(Default)]
struct TermSets {
    /// The sets of the classes, in order, as many as fit; the last may be cut.
    beside: Vec<String>,
    /// The rest in parts.
    more: Vec<String>,
}

impl TermSets {
    fn of(entries: &[Vec<u32>; Class::ALL.len()]) -> TermSets {
        let mut sets = TermSets::default();
        let mut room = MOST_BESIDE;
        let last = entries.iter().rposition(|places| !places.is_empty());
        let classes = entries.iter().take(last.map_or(0, |last| last + 1));
        for (class, places) in classes.enumerate() {
            let mut left = places.as_slice();
            if sets.more.is_empty() {
                let (fitting, text) = fitting(left, room);
                room = room.saturating_sub(text.len() + 1);
                sets.beside.push(text);
                left = &left[fitting..];
            }
            while !left.is_empty() {
                sets.add_rest(class, &mut left);
            }
        }
        sets
    }

    /// Adds some of `left` to the last part, or to a new one.
    fn add_rest(&mut self, class: usize, left: &mut &[u32]) {
        // `[4,` and `],`.
        const AROUND: usize = 5;
        let taken = self.more.last().map_or(MOST_BYTES, String::len);
        let room = MOST_BYTES.saturating_sub(taken + AROUND);
        let (count, text) = fitting(left, room);
        if count == 0 && room < MOST_BYTES - AROUND {
            self.more.push(String::new());
            return;
        }
        if let Some(part) = self.more.last_mut() {
            if !part.is_empty() {
                part.push(',');
            }
            let _ = write!(part, "[{class},{text}]");
        }
        *left = left.get(count.max(1)..).unwrap_or_default();
    }
}

/// How many of the first places take at most `room` bytes, and these as JSON.
fn fitting(places: &[u32], room: usize) -> (usize, String) {
    let whole = encode(places);
    if whole.len() <= room {
        return (places.len(), whole);
    }
    let (mut fits, mut not) = (0, places.len());
    while not - fits > 1 {
        let middle = fits.midpoint(not);
        if encode(&places[..middle]).len() <= room {
            fits = middle;
        } else {
            not = middle;
        }
    }
    (fits, encode(&places[..fits]))
}

/// Cuts terms with a common beginning of `length` bytes.
fn cut<'t>(terms: &'t [Written<'t>], length: usize, units: &mut Vec<Unit<'t>>) {
    let Some(first) = terms.first() else { return };
    let start = &first.term.folded[..length];
    let bytes: usize = terms.iter().map(|term| term.json.len() + 1).sum();
    if bytes <= MOST_BYTES || terms.len() == 1 {
        units.push(Unit {
            start,
            terms,
            beginning: None,
        });
        return;
    }
    // The term that is the beginning itself sorts first.
    let (itself, longer) = terms.split_at(usize::from(first.term.folded.len() == length));
    if length > 0 {
        units.push(Unit {
            start,
            terms: itself,
            beginning: Some(beginning(start, terms)),
        });
    }
    let next = |term: &Written<'_>| term.term.folded[length..].chars().next();
    for terms in longer.chunk_by(|a, b| next(a) == next(b)) {
        let letter = terms.first().and_then(next).map_or(0, char::len_utf8);
        cut(terms, length + letter, units);
    }
}

/// The term for a beginning: the closest entries that have any of `terms`.
fn beginning(start: &str, terms: &[Written<'_>]) -> String {
    let mut closest: Vec<(usize, u32)> = Vec::new();
    for term in terms {
        let mut left = FIRST;
        for (class, places) in term.term.entries.iter().enumerate() {
            closest.extend(places.iter().take(left).map(|place| (class, *place)));
            left = left.saturating_sub(places.len());
        }
    }
    closest.sort_unstable();
    let mut seen = std::collections::BTreeSet::new();
    let kept = closest.into_iter().filter(|(_, place)| seen.insert(*place));
    let mut entries: [Vec<u32>; Class::ALL.len()] = Default::default();
    for (class, place) in kept.take(FIRST) {
        if let Some(places) = entries.get_mut(class) {
            places.push(place);
        }
    }
    let sets = TermSets::of(&entries).beside;
    json(&format!("{start}{BEGINNING}"), None, &sets, None)
}

/// A term as a field of a JSON object. `rest`: the first of the parts with its other entries, and their number.
fn json(
    folded: &str,
    written: Option<&str>,
    sets: &[String],
    rest: Option<(usize, usize)>,
) -> String {
    let text = |text: &str| serde_json::to_string(text).unwrap_or_default();
    let mut out = text(folded);
    out.push_str(":[");
    match written {
        Some(written) => out.push_str(&text(written)),
        None => out.push('0'),
    }
    for set in sets {
        let _ = write!(out, ",{set}");
    }
    if let Some((first, count)) = rest {
        let _ = write!(out, ",{{\"more\":[{first},{count}]}}");
    }
    out.push(']');
    out
}

#[cfg(test)]
mod tests {
    use std::collections::BTreeMap;

    use super::*;

    /// As many terms as fill many shards, each with some entries.
    fn many() -> Vec<Term> {
        let words = (0..30_000_u32).map(|n| {
            let mixed = n.wrapping_mul(2_654_435_761);
            let letter =
                |at: u32| char::from(b'a' + u8::try_from((mixed >> (at * 5)) % 26).unwrap());
            let word: String = (0..2 + n % 5).map(letter).collect();
            (word, n)
        });
        let terms = words.collect::<BTreeMap<String, u32>>().into_iter();
        terms
            .map(|(folded, n)| {
                let mut entries: [Vec<u32>; 5] = Default::default();
                entries[n as usize % 5] = (0..20).map(|k| n + 3 * k).collect();
                Term {
                    folded,
                    written: None,
                    entries,
                }
            })
            .collect()
    }

    /// A shard's start and its terms.
    type ReadShard = (String, serde_json::Map<String, serde_json::Value>);

    fn read(shards: &[Shard]) -> Vec<ReadShard> {
        let terms = |shard: &Shard| serde_json::from_str(&format!("{{{}}}", shard.terms));
        shards
            .iter()
            .map(|shard| (shard.start.clone(), terms(shard).unwrap()))
            .collect()
    }

    fn shard_of(shards: &[ReadShard], word: &str) -> usize {
        shards.partition_point(|(start, _)| start.as_str() <= word) - 1
    }

    #[test]
    fn every_shard_is_small_and_every_term_in_the_one_that_is_looked_up() {
        let terms = many();
        let Shards { shards, more } = shards(&terms);
        assert!(more.is_empty());
        assert!(shards.len() > 30, "{}", shards.len());
        for shard in &shards {
            assert!(shard.terms.len() <= MOST_BYTES, "{}", shard.terms.len());
        }
        let read = read(&shards);
        for term in &terms {
            let (_, there) = &read[shard_of(&read, &term.folded)];
            assert!(there.contains_key(&term.folded), "{}", term.folded);
        }
        let all = read.iter().flat_map(|(_, terms)| terms.keys());
        let all = all.filter(|term| !term.ends_with(BEGINNING));
        assert_eq!(all.count(), terms.len());
    }

    #[test]
    fn all_terms_with_a_beginning_stand_in_its_shard_or_its_first_entries_do() {
        let terms = many();
        let read = read(&shards(&terms).shards);
        let mut cut = std::collections::BTreeSet::new();
        for term in &terms {
            for end in 1..=term.folded.len() {
                let beginning = &term.folded[..end];
                let (_, there) = &read[shard_of(&read, beginning)];
                let of_itself = format!("{beginning}{BEGINNING}");
                if there.contains_key(&of_itself) {
                    cut.insert(of_itself);
                } else {
                    assert!(
                        there.contains_key(&term.folded),
                        "{} for {beginning}",
                        term.folded
                    );
                }
            }
        }
        assert!(cut.len() >= 20, "{cut:?}");
    }

    #[test]
    fn a_beginning_that_is_cut_keeps_the_closest_entries() {
        let terms = many();
        let read = read(&shards(&terms).shards);
        let (_, there) = &read[shard_of(&read, "a")];
        let first = there.get("a*").and_then(|value| value.as_array()).unwrap();
        // The written form, and one class: there are a hundred entries of which a term is a number.
        assert_eq!(first.len(), 2);
        let of_a = terms.iter().filter(|term| term.folded.starts_with('a'));
        let mut numbers: Vec<u32> = of_a.flat_map(|t| t.entries[0].iter().copied()).collect();
        numbers.sort_unstable();
        numbers.dedup();
        numbers.truncate(FIRST);
        assert_eq!(first[1].to_string(), encode(&numbers));
    }

    /// In each class every second, every third … of a quarter of a million entries, but for those of the classes before.
    fn in_most_entries(folded: &str) -> Term {
        let mut entries: [Vec<u32>; 5] = Default::default();
        for place in 0..250_000_u32 {
            let mixed = place.wrapping_mul(2_654_435_761) >> 16;
            match mixed % 100 {
                0 => entries[2].push(place),
                1..=50 => entries[3].push(place),
                51..=80 => entries[4].push(place),
                _ => {}
            }
        }
        Term {
            folded: folded.to_owned(),
            written: None,
            entries,
        }
    }

    /// A set as `encode` writes it, read again.
    fn places(set: &serde_json::Value) -> Vec<u32> {
        const SIGNS: &str = "!#$()*+,-./:;=?@";
        let Some(parts) = set.as_array() else {
            return Vec::new();
        };
        let number = |value: &serde_json::Value| value.as_i64().unwrap();
        let mut last = 0;
        let mut places = Vec::new();
        if let Some(signs) = parts.get(1).and_then(serde_json::Value::as_str) {
            for (at, sign) in (0..).zip(signs.chars()) {
                let value = SIGNS.find(sign).unwrap();
                let bits = (0..4).filter(|bit| value & (8 >> bit) != 0);
                places.extend(bits.map(|bit| number(&parts[0]) + 4 * at + bit));
            }
        } else {
            for part in parts.iter().map(number) {
                for _ in 0..(-part).max(1) {
                    last += part.max(1) * i64::from(part > 0) + i64::from(part < 0);
                    places.push(last);
                }
            }
        }
        places
            .into_iter()
            .map(|place| u32::try_from(place).unwrap())
            .collect()
    }

    #[test]
    fn a_word_of_most_entries_has_its_closest_in_a_small_shard_and_all_in_small_parts() {
        let mut terms = many();
        let common = [in_most_entries("paper"), in_most_entries("print")];
        terms.retain(|term| !common.iter().any(|one| one.folded == term.folded));
        terms.extend(common.iter().cloned());
        terms.sort_by(|a, b| a.folded.cmp(&b.folded));
        let Shards { shards, more } = shards(&terms);
        for text in shards.iter().map(|shard| &shard.terms).chain(&more) {
            assert!(text.len() <= MOST_BYTES, "{}", text.len());
        }
        let read = read(&shards);
        for term in &common {
            let (_, there) = &read[shard_of(&read, &term.folded)];
            let value = there[&term.folded].as_array().unwrap();
            let (rest, sets) = value[1..].split_last().unwrap();
            let mut found: Vec<Vec<u32>> = sets.iter().map(places).collect();
            assert!(
                found.len() == 4 && found[3].len() > 15_000,
                "{:?}",
                found[3].len()
            );
            let [first, count] =
                [0, 1].map(|at| usize::try_from(rest["more"][at].as_u64().unwrap()).unwrap());
            found.push(Vec::new());
            for part in &more[first..first + count] {
                let part: Vec<serde_json::Value> =
                    serde_json::from_str(&format!("[{part}]")).unwrap();
                for set in part {
                    found[usize::try_from(set[0].as_u64().unwrap()).unwrap()]
                        .extend(places(&set[1]));
                }
            }
            assert_eq!(found, term.entries);
        }
    }

    #[test]
    fn a_small_catalogue_has_one_shard_and_an_empty_one_none() {
        assert_eq!(shards(&[]), Shards::default());
        let terms: Vec<Term> = many().into_iter().take(3).collect();
        let [shard] = shards(&terms).shards.try_into().unwrap();
        assert_eq!(shard.start, "");
    }
}
