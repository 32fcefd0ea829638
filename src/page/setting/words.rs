//! Words: the texts of pages, from the theme's Fluent files, one or several for each language.
//!
//! A language is the files `words/LANG.ftl` and `words/LANG-*.ftl`; no code names it. A catalogue's
//! theme may change a single word: its files override the built-in ones, which override the built-in
//! English, so that a word without a translation is English. The built-in files keep the terms of the
//! glossary, the longer texts and the names of countries apart (`LANG-terms.ftl`, `-texts`,
//! `-countries`); any word may stand in any of them. `words/und.ftl` (BCP 47: undetermined) holds words
//! that belong to no one language.
//!
//! Texts of records never enter a word as markup: [`Words::html`] puts finished [`CleanHtml`] into the
//! placeables of a word, and escapes the word itself.

use std::collections::{BTreeMap, BTreeSet};

use fluent_bundle::concurrent::FluentBundle;
use fluent_bundle::{FluentArgs, FluentResource, FluentValue};
use include_dir::{Dir, include_dir};
use unic_langid::LanguageIdentifier;

use super::html::CleanHtml;
use super::theme_fault::ThemeFault;
use crate::model::settings::Settings;
use crate::model::theme::Theme;
use crate::model::words::ClosedList;

/// The built-in words, file by file.
static BUILT_IN: Dir<'_> = include_dir!("$CARGO_MANIFEST_DIR/themes/laid/words");

/// The language that is used where the catalogue's language lacks a word.
const FALLBACK: &str = "en";

/// The tag of the files for words of no one language.
const UNDETERMINED: &str = "und";

/// Mark the beginning and end of a placeholder while a word is formatted: two characters of the private
/// use area, which records cannot contain.
const OPEN: char = '\u{f8f0}';
const CLOSE: char = '\u{f8f1}';

/// The words of one language, English where it lacks one.
pub struct Words {
    bundles: Vec<FluentBundle<FluentResource>>,
    plain: BTreeMap<String, String>,
}

/// An argument of a word.
#[derive(Clone, Copy, Debug)]
pub enum Argument<'a> {
    /// A text.
    Text(&'a str),
    /// A number, which selects the plural form.
    Count(usize),
}

impl Words {
    /// The words of `language` (BCP 47) as the theme has them.
    ///
    /// # Errors
    /// [`ThemeFault`] where a file of words cannot be read.
    pub fn new(theme: &Theme, language: &str) -> Result<Words, ThemeFault> {
        let primary = language.split('-').next().unwrap_or(FALLBACK);
        let primary = primary.to_lowercase();
        let mut tags = vec![primary.as_str(), FALLBACK, UNDETERMINED];
        tags.dedup();
        let mut bundles = Vec::new();
        let mut known = BTreeSet::new();
        for tag in tags {
            let id: LanguageIdentifier = tag.parse().unwrap_or_default();
            let mut bundle = FluentBundle::new_concurrent(vec![id]);
            bundle.set_use_isolating(false);
            for (path, text) in files(theme, tag) {
                let resource =
                    FluentResource::try_new(text.to_owned()).map_err(|(_, faults)| {
                        word_fault(&path, text, faults.first().map_or(0, |f| f.pos.start))
                    })?;
                bundle.add_resource_overriding(resource);
                known.extend(ids(text));
            }
            bundles.push(bundle);
        }
        let mut words = Words {
            bundles,
            plain: BTreeMap::new(),
        };
        for id in known {
            if let Some(text) = words.format(&id, None) {
                words.plain.insert(id, text);
            }
        }
        Ok(words)
    }

    /// The languages for which the theme has words, as primary tags.
    pub fn languages(theme: &Theme) -> BTreeSet<String> {
        let own = theme
            .files
            .keys()
            .filter_map(|path| path.strip_prefix("words/"));
        let built_in = BUILT_IN.files().filter_map(|file| file.path().to_str());
        let tags = built_in.chain(own).filter_map(|name| {
            let stem = name.strip_suffix(".ftl")?;
            stem.split('-').next()
        });
        tags.filter(|tag| *tag != UNDETERMINED)
            .map(str::to_owned)
            .collect()
    }

    /// A word without arguments; its id where no file has it.
    pub fn word<'a>(&'a self, id: &'a str) -> &'a str {
        self.plain.get(id).map_or(id, String::as_str)
    }

    /// A word without arguments; `None` where no file has it.
    pub fn find(&self, id: &str) -> Option<&str> {
        self.plain.get(id).map(String::as_str)
    }

    /// Whether some file has a word, with or without arguments.
    pub fn has(&self, id: &str) -> bool {
        self.bundles.iter().any(|bundle| bundle.has_message(id))
    }

    /// The ids of all words that begin with `prefix`, without it.
    pub fn beginning_with<'a>(&'a self, prefix: &'a str) -> impl Iterator<Item = &'a str> {
        self.plain
            .keys()
            .filter_map(move |id| id.strip_prefix(prefix))
    }

    /// The word for a value of a closed list: `side-recto` for the side recto; the value as records
    /// write it where no file has the word.
    pub fn listed<T: ClosedList>(&self, list: &str, value: T) -> &str {
        self.find(&format!("{list}-{}", value.word()))
            .unwrap_or(value.word())
    }

    /// A word that counts `n` things.
    pub fn count(&self, id: &str, n: usize) -> String {
        self.with(id, &[("n", Argument::Count(n))])
    }

    /// A word with its arguments.
    pub fn with(&self, id: &str, given: &[(&str, Argument<'_>)]) -> String {
        let mut args = FluentArgs::new();
        for (name, value) in given {
            match value {
                Argument::Text(text) => args.set((*name).to_owned(), FluentValue::from(*text)),
                Argument::Count(n) => args.set((*name).to_owned(), FluentValue::from(*n)),
            }
        }
        self.format(id, Some(&args))
            .unwrap_or_else(|| id.to_owned())
    }

    /// A word whose arguments stay open, each as its name in braces, for a script to fill.
    pub fn left_open(&self, id: &str, places: &[&str]) -> String {
        let marks: Vec<String> = places.iter().map(|place| format!("{{{place}}}")).collect();
        let given: Vec<(&str, Argument<'_>)> = places
            .iter()
            .zip(&marks)
            .map(|(place, mark)| (*place, Argument::Text(mark)))
            .collect();
        self.with(id, &given)
    }

    /// A word with finished HTML as arguments, and `n` as a number.
    pub fn html(&self, id: &str, n: Option<usize>, given: &[(&str, &CleanHtml)]) -> CleanHtml {
        let mut args = FluentArgs::new();
        if let Some(n) = n {
            args.set("n", FluentValue::from(n));
        }
        for (at, (name, _)) in given.iter().enumerate() {
            args.set(
                (*name).to_owned(),
                FluentValue::from(format!("{OPEN}{at}{CLOSE}")),
            );
        }
        let text = self
            .format(id, Some(&args))
            .unwrap_or_else(|| id.to_owned());
        let mut out = CleanHtml::empty();
        let mut rest = text.as_str();
        while let Some((before, after)) = rest.split_once(OPEN) {
            out.push_text(before);
            let (place, after) = after.split_once(CLOSE).unwrap_or((after, ""));
            if let Some((_, html)) = place.parse().ok().and_then(|at: usize| given.get(at)) {
                out.push(html);
            }
            rest = after;
        }
        out.push_text(rest);
        out
    }

    fn format(&self, id: &str, args: Option<&FluentArgs<'_>>) -> Option<String> {
        self.bundles.iter().find_map(|bundle| {
            let pattern = bundle.get_message(id)?.value()?;
            let mut faults = Vec::new();
            let text = bundle.format_pattern(pattern, args, &mut faults);
            // A word that lacks an argument is not a plain word.
            (faults.is_empty()).then(|| text.into_owned())
        })
    }
}

/// The text shown in place of a private owner's name: the catalogue's, else the theme's.
pub fn private_owner(theme: &Theme, settings: &Settings) -> String {
    settings.private_owner.clone().unwrap_or_else(|| {
        Words::new(theme, &settings.language.value).map_or_else(
            |_| "Private collection".to_owned(),
            |words| words.word("private-collection").to_owned(),
        )
    })
}

/// The files of words for a tag, each with its path in the theme: the built-in ones, then the theme's.
fn files<'t>(theme: &'t Theme, tag: &str) -> Vec<(String, &'t str)> {
    let is_of_tag = |name: &str| {
        let stem = name.strip_suffix(".ftl");
        stem.is_some_and(|stem| stem.split('-').next() == Some(tag))
    };
    let built_in = BUILT_IN.files().filter_map(|file| {
        let name = file.path().to_str().filter(|name| is_of_tag(name))?;
        Some((format!("words/{name}"), file.contents_utf8()?))
    });
    let mut files: Vec<(String, &'t str)> = built_in.collect();
    for path in theme.files.keys() {
        let name = path.strip_prefix("words/").unwrap_or_default();
        let text = theme.text(path).filter(|_| is_of_tag(name));
        // The built-in theme lists the built-in files again.
        let own = text.filter(|text| {
            !files
                .iter()
                .any(|(known, built_in)| known == path && built_in == text)
        });
        files.extend(own.map(|text| (path.clone(), text)));
    }
    files
}

/// The ids of the words of a file.
fn ids(text: &str) -> Vec<String> {
    text.lines()
        .filter_map(|line| line.split_once('='))
        .map(|(id, _)| id.trim_end())
        .filter(|id| id.starts_with(|c: char| c.is_ascii_alphabetic()) && !id.contains(' '))
        .map(str::to_owned)
        .collect()
}

/// A fault `at` bytes from the start of a file of words.
fn word_fault(path: &str, text: &str, at: usize) -> ThemeFault {
    let before = text.get(..at).unwrap_or(text);
    ThemeFault {
        file: path.to_owned(),
        line: before.bytes().filter(|b| *b == b'\n').count() + 1,
        message: "this is not a word as Fluent writes them (`id = text`)".to_owned(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn theme_with(path: &str, text: &str) -> Theme {
        let files = [(path.to_owned(), text.as_bytes().to_vec().into())];
        Theme {
            files: files.into_iter().collect(),
        }
    }

    #[test]
    fn every_built_in_language_has_every_word_of_english_and_no_other() {
        let theme = Theme::default();
        let all = |language: &str| {
            let mut all: Vec<String> = files(&theme, language)
                .iter()
                .flat_map(|(_, text)| ids(text))
                .collect();
            all.sort();
            all
        };
        let english = all(FALLBACK);
        let mut once = english.clone();
        once.dedup();
        assert_eq!(once, english, "a word stands twice");
        assert!(english.len() > 1000);
        let languages = Words::languages(&theme);
        assert!(languages.contains("en") && languages.len() > 1);
        for language in languages {
            let own = all(&language);
            let missing: Vec<_> = english.iter().filter(|id| !own.contains(id)).collect();
            let surplus: Vec<_> = own.iter().filter(|id| !english.contains(id)).collect();
            assert!(missing.is_empty(), "{language} lacks {missing:?}");
            assert!(surplus.is_empty(), "English lacks {surplus:?}");
        }
    }

    #[test]
    fn counts_follow_the_plural() {
        let words = Words::new(&Theme::default(), "en").unwrap();
        assert_eq!(words.count("count-impressions", 1), "1 impression");
        assert_eq!(words.count("count-impressions", 3), "3 impressions");
        let words = Words::new(&Theme::default(), "de-CH").unwrap();
        assert_eq!(words.count("count-impressions", 1), "1 Abzug");
        assert_eq!(words.count("count-impressions", 3), "3 Abzüge");
    }

    #[test]
    fn a_theme_changes_a_single_word_and_a_missing_one_is_english() {
        // ISO 639-2 reserves qaa for local use: never a built-in language.
        let theme = theme_with("words/qaa.ftl", "designs = Estampes\n");
        let words = Words::new(&theme, "qaa").unwrap();
        assert_eq!(words.word("designs"), "Estampes");
        assert_eq!(words.word("holders"), "Holders");
        let theme = theme_with("words/en.ftl", "designs = Prints\n");
        let words = Words::new(&theme, "en").unwrap();
        assert_eq!(words.word("designs"), "Prints");
        assert_eq!(words.word("holders"), "Holders");
    }

    #[test]
    fn a_broken_file_of_words_is_named_with_its_line() {
        let theme = theme_with("words/en.ftl", "designs = Prints\n\nholders = { $\n");
        let fault = Words::new(&theme, "en").err().unwrap();
        assert_eq!((fault.file.as_str(), fault.line), ("words/en.ftl", 3));
    }

    #[test]
    fn what_records_say_is_no_markup_in_a_word() {
        let words = Words::new(&Theme::default(), "en").unwrap();
        let hostile = CleanHtml::text("<b>x</b>");
        let html = words.html("by-person", None, &[("person", &hostile)]);
        assert_eq!(html.as_str(), "by &lt;b&gt;x&lt;/b&gt;");
    }
}
