//! The forms in which a name may be written.
//!
//! In: a name as recorded. Out: its words, and every order of them that tells who is meant: whole or with
//! initials, surname first or last, with or without the names between. Titles ("Mrs", "Graf") and words such as
//! "von" may be there or not. The rules are ours (common practice, no source).

use icu_normalizer::ComposingNormalizerBorrowed;

use super::words::{Words, is_written_without_spaces};

/// A form in which a name may be written: its words without anything between them.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) struct Form {
    /// The words, joined.
    pub text: String,
    /// Where each word but the first begins.
    pub borders: Vec<usize>,
}

impl Form {
    pub(super) fn of(words: &[&str]) -> Form {
        let mut form = Form {
            text: String::new(),
            borders: Vec::new(),
        };
        for word in words {
            if !form.text.is_empty() {
                form.borders.push(form.text.len());
            }
            form.text.push_str(word);
        }
        form
    }
}

/// A name as its words.
#[derive(Clone, Debug)]
pub(super) struct NameWords {
    /// The words that tell who is meant, the surname last. One of them may hold several, joined by hyphens in
    /// the name as recorded.
    words: Vec<String>,
}

impl NameWords {
    /// The words of a name, in each spelling of its umlauts; none where nothing of it tells who is meant.
    pub(super) fn spellings(name: &str) -> Vec<NameWords> {
        let plain = NameWords::of(name);
        let expanded = expanded(name).and_then(|name| NameWords::of(&name));
        plain.into_iter().chain(expanded).collect()
    }

    /// The words of a name; `None` where nothing of it tells who is meant.
    fn of(name: &str) -> Option<NameWords> {
        let name = match name.split_once(',') {
            Some((last, first)) if !last.trim().is_empty() => format!("{first} {last}"),
            _ => name.to_owned(),
        };
        let mut words: Vec<String> = name
            .split_whitespace()
            .map(|word| Words::of(word).folded)
            .filter(|word| !word.is_empty())
            .collect();
        // A title that comes last is a surname.
        if let Some(last) = words.pop() {
            words.retain(|word| !is_title(word));
            words.push(last);
        }
        // The last word that can be a surname comes last; what follows it ("… Collection") comes before.
        if let Some(at) = words.iter().rposition(|word| !is_neutral(word)) {
            let surname = words.remove(at);
            words.push(surname);
        }
        (!words.is_empty()).then_some(NameWords { words })
    }

    /// The surname, or the one word that there is.
    pub(super) fn surname(&self) -> &str {
        self.words.last().map_or("", String::as_str)
    }

    /// Whether the surname is only a part of the name.
    pub(super) fn has_more(&self) -> bool {
        self.words.len() > 1
    }

    /// The words that could tell the owner when one of them stands alone in a key.
    pub(super) fn telling(&self) -> impl Iterator<Item = &str> {
        let words = self.words.iter().map(String::as_str);
        words.filter(|word| is_long(word) && !is_neutral(word))
    }

    /// Every form that tells who is meant.
    pub(super) fn forms(&self) -> Vec<Form> {
        let Some((surname, others)) = self.words.split_last() else {
            return Vec::new();
        };
        if others.is_empty() {
            return vec![Form::of(&[surname])];
        }
        let mut forms = Vec::new();
        for chosen in chosen(others) {
            for spelled in spelled(&chosen) {
                let mut words = spelled;
                words.push(surname);
                for order in orders(&words) {
                    forms.push(Form::of(&order));
                }
            }
        }
        forms.sort();
        forms.dedup();
        forms
    }
}

/// A name with its umlauts written in two letters; `None` where it has none.
fn expanded(name: &str) -> Option<String> {
    let composed = ComposingNormalizerBorrowed::new_nfc()
        .normalize(name)
        .to_lowercase();
    let mut expanded = String::with_capacity(composed.len());
    for sign in composed.chars() {
        match sign {
            'ä' => expanded.push_str("ae"),
            'ö' | 'ø' => expanded.push_str("oe"),
            'ü' => expanded.push_str("ue"),
            'å' => expanded.push_str("aa"),
            sign => expanded.push(sign),
        }
    }
    (expanded != composed).then_some(expanded)
}

/// The names before the surname that may be written together: each choice of up to three, and all.
fn chosen(others: &[String]) -> Vec<Vec<&str>> {
    let all: Vec<&str> = others.iter().map(String::as_str).collect();
    if all.len() > 3 {
        let mut few: Vec<Vec<&str>> = all.iter().map(|word| vec![*word]).collect();
        few.push(all);
        return few;
    }
    (1..1_u32 << all.len())
        .map(|choice| {
            let is_in = |at: &usize| choice & (1 << at) != 0;
            (0..all.len()).filter(is_in).map(|at| all[at]).collect()
        })
        .collect()
}

/// The same names with some of them as initials. More than three are written whole, or all as initials.
fn spelled<'n>(names: &[&'n str]) -> Vec<Vec<&'n str>> {
    let initial = |name: &'n str| match name.chars().next() {
        Some(first) if !is_neutral(name) && !is_written_without_spaces(first) => {
            &name[..first.len_utf8()]
        }
        _ => name,
    };
    if names.len() > 3 {
        return vec![names.to_vec(), names.iter().map(|n| initial(n)).collect()];
    }
    (0..1_u32 << names.len())
        .map(|short| {
            let spell = |(at, name): (usize, &&'n str)| match short & (1 << at) {
                0 => *name,
                _ => initial(name),
            };
            names.iter().enumerate().map(spell).collect()
        })
        .collect()
}

/// The orders of some words: each of up to four; of more, as they are and with the last first.
fn orders<'n>(words: &[&'n str]) -> Vec<Vec<&'n str>> {
    if words.len() > 4 {
        let mut turned = words.to_vec();
        turned.rotate_right(1);
        return vec![words.to_vec(), turned];
    }
    let Some((first, rest)) = words.split_first() else {
        return vec![Vec::new()];
    };
    let mut all = Vec::new();
    for order in orders(rest) {
        for at in 0..=order.len() {
            let mut order = order.clone();
            order.insert(at, first);
            all.push(order);
        }
    }
    all
}

/// Whether a word is long enough to tell somebody: three letters, or one sign of a script that needs few.
fn is_long(word: &str) -> bool {
    word.chars().any(is_written_without_spaces) || word.chars().count() >= 3
}

/// Words that stand before or within a name, and that a text may leave out.
pub(super) fn is_title(word: &str) -> bool {
    const TITLES: [&str; 44] = [
        "mr",
        "mrs",
        "ms",
        "miss",
        "dr",
        "prof",
        "professor",
        "sir",
        "dame",
        "lady",
        "lord",
        "rev",
        "hon",
        "herr",
        "frau",
        "graf",
        "grafin",
        "graefin",
        "freiherr",
        "freifrau",
        "baron",
        "baronin",
        "baroness",
        "furst",
        "furstin",
        "prinz",
        "prinzessin",
        "mme",
        "mlle",
        "de",
        "du",
        "la",
        "le",
        "van",
        "von",
        "zu",
        "vom",
        "zum",
        "der",
        "den",
        "the",
        "and",
        "und",
        "of",
    ];
    TITLES.contains(&word)
}

/// Words of a name that many owners share.
fn is_neutral(word: &str) -> bool {
    const NEUTRAL: [&str; 17] = [
        "collection",
        "collections",
        "collector",
        "collectors",
        "private",
        "owner",
        "owners",
        "holder",
        "holders",
        "family",
        "estate",
        "trust",
        "foundation",
        "sammlung",
        "familie",
        "nachlass",
        "stiftung",
    ];
    NEUTRAL.contains(&word)
}

/// Words that a text may hold between the words of a name: titles, and what is left of entities that were not
/// resolved.
pub(super) fn may_stand_between(word: &str) -> bool {
    is_title(word) || matches!(word, "nbsp" | "shy" | "amp" | "zwnj" | "zwj" | "wbr")
}

#[cfg(test)]
mod tests {
    use super::*;

    fn forms(name: &str) -> Vec<String> {
        let name = NameWords::of(name).unwrap();
        name.forms().into_iter().map(|form| form.text).collect()
    }

    #[test]
    fn a_name_has_every_order_and_its_initials() {
        assert_eq!(
            forms("Querlin Zabeldorn"),
            [
                "querlinzabeldorn",
                "qzabeldorn",
                "zabeldornq",
                "zabeldornquerlin"
            ]
        );
        assert_eq!(forms("Zabeldorn, Querlin"), forms("Mrs Querlin Zabeldorn"));
        assert_eq!(forms("Querlin von Zabeldorn"), forms("Querlin Zabeldorn"));
        for form in [
            "querlinzabeldorn",
            "querlinmzabeldorn",
            "qmzabeldorn",
            "zabeldornqm",
            "mzabeldorn",
        ] {
            assert!(
                forms("Querlin Mar Zabeldorn").contains(&form.to_owned()),
                "{form}"
            );
        }
    }

    #[test]
    fn a_word_that_many_owners_share_is_neither_surname_nor_initial() {
        let name = NameWords::of("The Zabeldorn Family Collection").unwrap();
        assert_eq!(name.surname(), "zabeldorn");
        assert!(name.telling().eq(["zabeldorn"]));
        assert!(!forms("The Zabeldorn Family").contains(&"fzabeldorn".to_owned()));
        assert_eq!(forms("Zabeldorn"), ["zabeldorn"]);
    }

    #[test]
    fn a_title_at_the_end_is_a_surname() {
        assert!(forms("Querlin Graf").contains(&"grafquerlin".to_owned()));
        assert_eq!(forms("Graf"), ["graf"]);
    }

    #[test]
    fn umlauts_are_written_in_one_letter_or_two() {
        let names = NameWords::spellings("Jo\u{308}rn Sømme");
        let surnames: Vec<&str> = names.iter().map(NameWords::surname).collect();
        assert_eq!(surnames, ["somme", "soemme"]);
    }
}
