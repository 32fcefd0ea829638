//! Private names and texts in text that is published.
//!
//! In: the names of private owners, the texts that records list as private, and every text that readers
//! see ([`super::published`]). Out: a finding where one of the former occurs in one of the latter, as
//! whole words, whatever the case, the spacing or the encoding of accents; and a finding on the key of a
//! private holder that shares a word with the name. All names are looked for at once (Aho and Corasick,
//! "Efficient string matching", 1975), so that the time does not grow with their number.

use std::collections::BTreeSet;

use aho_corasick::{AhoCorasick, MatchKind};
use icu_normalizer::DecomposingNormalizerBorrowed;
use rayon::prelude::*;

use crate::model::catalogue::Catalogue;
use crate::model::codes::Code;
use crate::model::finding::Finding;
use crate::model::holder::{Holder, HolderKind};
use crate::model::impression::Impression;
use crate::model::key::Key;
use crate::model::occurrence::TextAt;
use crate::model::place::{Place, Placed};
use crate::model::provenance::Party;
use crate::study::Studies;

use super::published::texts;

/// The key of a private holder shares a word with the name or place. Keys are parts of addresses, so
/// they are published.
pub(super) fn key_telling(catalogue: &Catalogue, _: &Studies, findings: &mut Vec<Finding>) {
    for holder in catalogue.holders.values() {
        let private = [
            (Some(&holder.name), "name"),
            (holder.town.as_ref(), "place"),
        ];
        for (text, field) in private {
            let Some(text) = text.filter(|_| !holder.may_publish(field)) else {
                continue;
            };
            if let Some(word) = shared_word(&holder.key, &text.value) {
                findings.push(
                    Finding::new(
                        Code::PrivateKeyTelling,
                        holder.place,
                        format!(
                            "the key of the private owner `{}` tells a word of the {field}: `{word}`",
                            holder.key
                        ),
                    )
                    .beside(text.place, format!("the {field}, which is not published"))
                    .help("rename the file to something that tells nothing, as `owner-a`, before the address is issued"),
                );
                break;
            }
        }
    }
}

/// Words of a key that do not identify a person.
const NEUTRAL: [&str; 8] = [
    "collection",
    "collector",
    "private",
    "owner",
    "holder",
    "family",
    "the",
    "and",
];

fn shared_word(key: &Key, text: &str) -> Option<String> {
    let folded = Folded::of(text).text;
    let plain = Key::nearest_form(text);
    let words: BTreeSet<&str> = folded
        .split(|c: char| !c.is_alphanumeric())
        .chain(plain.iter().flat_map(|k| k.as_str().split('-')))
        .collect();
    key.as_str()
        .split('-')
        .find(|word| word.len() >= 3 && !NEUTRAL.contains(word) && words.contains(word))
        .map(str::to_owned)
}

/// A private name or text occurs in a text that is published.
pub(super) fn name_published(catalogue: &Catalogue, _: &Studies, findings: &mut Vec<Finding>) {
    let sought = sought(catalogue);
    let patterns = sought.iter().map(|s| s.folded.as_str());
    // Building fails only beyond two thousand million names.
    let Ok(machine) = AhoCorasick::builder()
        .match_kind(MatchKind::Standard)
        .build(patterns)
    else {
        return;
    };
    if sought.is_empty() {
        return;
    }
    let found: Vec<Vec<Finding>> = texts(catalogue)
        .par_iter()
        .map(|text| in_text(catalogue, &machine, &sought, text))
        .collect();
    findings.extend(found.into_iter().flatten());
}

fn in_text(
    catalogue: &Catalogue,
    machine: &AhoCorasick,
    sought: &[Sought],
    text: &TextAt,
) -> Vec<Finding> {
    let folded = Folded::of(text.words(&catalogue.sources));
    let mut met = BTreeSet::new();
    let mut findings = Vec::new();
    for hit in machine.find_overlapping_iter(&folded.text) {
        let Some(name) = sought.get(hit.pattern().as_usize()) else {
            continue;
        };
        if !is_whole_word(&folded.text, hit.range()) || !met.insert((&name.what, name.place.start))
        {
            continue;
        }
        let place = place_of(catalogue, text, folded.original(hit.range()));
        findings.push(
            Finding::new(
                Code::PrivateNamePublished,
                place,
                format!("{} stands in text that is published", name.what),
            )
            .beside(name.place, "kept private")
            .help(name.help),
        );
    }
    findings
}

/// A text that must not occur in published text.
struct Sought {
    folded: String,
    /// A description without the text itself: "the name of the private owner `owner-a`".
    what: String,
    place: Place,
    help: &'static str,
}

fn sought(catalogue: &Catalogue) -> Vec<Sought> {
    let mut sought = Vec::new();
    let mut seek = |text: &str, what: String, place: Place, help| {
        if tells_somebody(text) && !is_the_public_word(catalogue, text) {
            for form in forms(text) {
                sought.push(Sought {
                    folded: form,
                    what: what.clone(),
                    place,
                    help,
                });
            }
        }
    };
    for holder in catalogue.holders.values() {
        if is_private(catalogue, holder) {
            let names =
                std::iter::once(&holder.name).chain(holder.formerly.iter().map(|f| &f.name));
            for name in names {
                let what = format!("the name of the private owner `{}`", holder.key);
                seek(&name.value, what, name.place, CONSENT);
            }
        }
    }
    for name in names_taken_out(catalogue) {
        seek(
            &name.value,
            "a name kept private".to_owned(),
            name.place,
            LIST,
        );
    }
    for private in &catalogue.redacted.texts {
        // A private text of one word may be a common word (a way of transfer, a town): only names are
        // searched for as single words (above).
        if private.text.split_whitespace().count() >= 2 {
            seek(
                &private.text,
                "a text kept private".to_owned(),
                private.place,
                LIST,
            );
        }
    }
    sought
}

const CONSENT: &str = "take the name out, or record the owner's consent";
const LIST: &str = "take it out of this text, or off the list of private fields";

fn is_private(catalogue: &Catalogue, holder: &Holder) -> bool {
    let is_listed = catalogue
        .redacted
        .holders
        .get(&holder.key)
        .is_some_and(|redacted| redacted.name.value != holder.name.value);
    is_listed || (holder.kind == HolderKind::Private && !holder.may_publish("name"))
}

/// The names of people and parties that records list as private.
fn names_taken_out(catalogue: &Catalogue) -> Vec<&Placed<String>> {
    let people = catalogue
        .redacted
        .people
        .iter()
        .filter_map(|(key, redacted)| {
            let name = &catalogue.people.get(key)?.name;
            (redacted.name.value != name.value).then_some(name)
        });
    let parties = catalogue
        .redacted
        .impressions
        .iter()
        .flat_map(|(key, redacted)| {
            let left: Vec<&str> = party_names(redacted).map(|n| n.value.as_str()).collect();
            let recorded = catalogue.impression(key).into_iter().flat_map(party_names);
            recorded.filter(move |name| !left.contains(&name.value.as_str()))
        });
    people.chain(parties).collect()
}

fn party_names(impression: &Impression) -> impl Iterator<Item = &Placed<String>> {
    impression
        .owner
        .iter()
        .chain(impression.provenance.iter().map(|entry| &entry.party))
        .chain(impression.sightings.iter().filter_map(|s| s.by.as_ref()))
        .filter_map(|party| match party {
            Party::Named(name) => Some(name),
            Party::Record(_) | Party::Undisclosed => None,
        })
}

/// Whether a text is long enough to identify somebody: two words, or four letters, or two characters of
/// a script that writes names in two.
fn tells_somebody(text: &str) -> bool {
    let letters = text.chars().filter(|c| c.is_alphabetic()).count();
    let is_dense = text.chars().any(is_written_without_spaces);
    text.split_whitespace().count() >= 2 || letters >= 4 || (is_dense && letters >= 2)
}

/// Whether a name is the text that readers see in place of a private name.
fn is_the_public_word(catalogue: &Catalogue, text: &str) -> bool {
    let folded = Folded::of(text).text;
    let chosen = catalogue.settings.private_owner.as_deref();
    chosen.is_some_and(|words| Folded::of(words).text == folded)
        || folded.starts_with("private collection")
        || folded.starts_with("private owner")
}

/// A name as it may be written: as recorded, and with the last word first ("Achterbeck, Cornelia").
fn forms(name: &str) -> Vec<String> {
    let folded = Folded::of(name).text;
    let reversed = match folded.rsplit_once(' ') {
        Some((first, last)) if !folded.contains(',') => Some(format!("{last}, {first}")),
        _ => None,
    };
    std::iter::once(folded).chain(reversed).collect()
}

/// A text as it is compared: lower case, compatibility forms decomposed, any white space one space,
/// without the signs of Markdown emphasis and without soft hyphens.
struct Folded<'a> {
    text: String,
    of: &'a str,
}

impl<'a> Folded<'a> {
    fn of(text: &'a str) -> Folded<'a> {
        let mut folded = String::with_capacity(text.len());
        fold(text, |_, c| folded.push(c));
        while folded.ends_with(' ') {
            folded.pop();
        }
        Folded {
            text: folded,
            of: text,
        }
    }

    /// The bytes of the text as written that a range of the folded text came from.
    fn original(&self, range: std::ops::Range<usize>) -> std::ops::Range<usize> {
        let mut at = 0;
        let (mut start, mut end) = (None, self.of.len());
        fold(self.of, |written_at, c| {
            if at == range.start {
                start = Some(written_at);
            }
            if at == range.end {
                end = written_at;
            }
            at += c.len_utf8();
        });
        start.unwrap_or(0)..end
    }
}

/// Calls `each` with every folded character and the byte of `text` that it came from.
fn fold(text: &str, mut each: impl FnMut(usize, char)) {
    let normalizer = DecomposingNormalizerBorrowed::new_nfkd();
    let mut after_space = true;
    let mut fold_one = |at, c: char| {
        if c.is_whitespace() {
            if !after_space {
                each(at, ' ');
            }
            after_space = true;
        } else {
            after_space = false;
            c.to_lowercase().for_each(|c| each(at, c));
        }
    };
    for (at, written) in text.char_indices() {
        if matches!(written, '*' | '_' | '`' | '\u{ad}') {
            continue;
        }
        // Most of most texts is ASCII, which decomposes into itself.
        if written.is_ascii() {
            fold_one(at, written);
        } else {
            let parts = normalizer.normalize_iter(std::iter::once(written));
            parts.for_each(|c| fold_one(at, c));
        }
    }
}

/// Whether a match begins and ends where words do. Scripts without spaces have no such ends.
fn is_whole_word(text: &str, range: std::ops::Range<usize>) -> bool {
    let joins = |a: Option<char>, b: Option<char>| {
        matches!((a, b), (Some(a), Some(b))
            if a.is_alphanumeric() && b.is_alphanumeric()
                && !is_written_without_spaces(a) && !is_written_without_spaces(b))
    };
    let (Some(before), Some(found), Some(after)) = (
        text.get(..range.start),
        text.get(range.clone()),
        text.get(range.end..),
    ) else {
        return false;
    };
    !joins(before.chars().next_back(), found.chars().next())
        && !joins(found.chars().next_back(), after.chars().next())
}

/// Han, kana, bopomofo and their neighbours; Thai, Lao, Khmer, Myanmar.
fn is_written_without_spaces(c: char) -> bool {
    matches!(c, '\u{0e00}'..='\u{0eff}' | '\u{1000}'..='\u{109f}' | '\u{1780}'..='\u{17ff}'
        | '\u{2e80}'..='\u{9fff}' | '\u{f900}'..='\u{faff}' | '\u{20000}'..='\u{3ffff}')
}

/// The place of a match, which is a range of the text. Where the file writes the text differently (with
/// escapes, or as an entry of the literature), the matching words are searched for in the value that
/// holds it; where they are not found there, the place is that of the whole text.
fn place_of(catalogue: &Catalogue, text: &TextAt, range: std::ops::Range<usize>) -> Place {
    let place = text.place;
    let at = |start: usize, length: usize| Place::new(place.file, start..start + length);
    let start = place.span().start;
    if text.is_as_written() {
        return at(start + range.start, range.len());
    }
    let source = catalogue.sources.text(place.file);
    let holds = match text.key {
        // An entry of the literature extends to the next one.
        "" => source
            .get(start..)
            .map(|rest| rest.split("\n@").next().unwrap_or(rest)),
        _ => source.get(place.span()),
    };
    let words = text
        .words(&catalogue.sources)
        .get(range)
        .unwrap_or_default();
    let found = holds.and_then(|holds| holds.find(words));
    found.map_or(place, |found| at(start + found, words.len()))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_folded_match_leads_back_to_the_text_as_written() {
        let text = "seen with *Jürgen*\n Müller, 1960";
        let folded = Folded::of(text);
        let name = Folded::of("Jürgen Müller").text;
        let at = folded.text.find(&name).unwrap();
        let written = folded.original(at..at + name.len());
        assert_eq!(&text[written], "Jürgen*\n Müller");
    }

    #[test]
    fn composed_and_decomposed_accents_are_one() {
        assert_eq!(
            Folded::of("M\u{fc}ller").text,
            Folded::of("Mu\u{308}ller").text
        );
    }

    #[test]
    fn a_name_inside_a_longer_word_is_another_word() {
        let text = "the mosely collection";
        let at = text.find("mose").unwrap();
        assert!(!is_whole_word(text, at..at + 4));
        assert!(is_whole_word(text, at..at + 6));
        let han = "東京の田中様";
        let at = han.find("田中").unwrap();
        assert!(is_whole_word(han, at..at + "田中".len()));
    }

    #[test]
    fn keys_that_share_a_word_with_a_name_tell_it() {
        let telling = |key: &str, name: &str| shared_word(&key.parse().unwrap(), name);
        assert_eq!(
            telling("owner-a", "A name that must never be published"),
            None
        );
        assert_eq!(
            telling("moulsworth", "Theodric Moulsworth").as_deref(),
            Some("moulsworth")
        );
        assert_eq!(telling("owner-private", "Private owner"), None);
    }
}
