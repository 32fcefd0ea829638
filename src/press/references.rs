//! The references to a catalogue, resolved without compiling it.
//!
//! The names are taken from the catalogue as readers may know it, with the words of its theme, so that the command gives
//! the readings that the page `resolve/` gives. Only the studies that references need are made.

use std::path::Path;

use crate::model::finding::Finding;
use crate::model::public::Concealed;
use crate::page::{self, ThemeFault, Words};
use crate::read;
use crate::study::census::Groups;
use crate::study::concordance::Concordance;
use crate::study::joined::JoinedSheets;
use crate::study::order::Order;
use crate::study::resolve::names::References;
use crate::study::resolve::reading::Reading;
use crate::study::resolve::resolver::Resolver;

/// The language in which commands say why.
const OF_COMMANDS: &str = "en";

/// A catalogue whose references can be resolved.
pub struct ResolvedCatalogue {
    /// Resolves references.
    pub resolver: Resolver,
    /// What is wrong or doubtful in the records.
    pub findings: Vec<Finding>,
    words: Words,
}

impl ResolvedCatalogue {
    /// Reads the catalogue in `dir`.
    ///
    /// # Errors
    /// [`ThemeFault`] where a file of words of its theme cannot be read.
    pub fn read(dir: &Path) -> Result<ResolvedCatalogue, ThemeFault> {
        let read::Reading {
            catalogue,
            mut findings,
        } = read::read(dir);
        let settings = catalogue.published_settings();
        let (theme, of_theme) = read::theme(dir, &settings.theme);
        findings.extend(of_theme);
        let words = Words::new(&theme, &settings.language.value)?;
        let private_owner = page::private_owner(&theme, settings);
        let concealed = Concealed::of(catalogue, &private_owner);
        let order = Order::of(&concealed);
        let concordance = Concordance::of(&concealed, &order);
        let joined = JoinedSheets::of(&concealed, &Groups::of(&concealed));
        let query_words = page::query_words(&words);
        let references = References::of(&concealed, &order, &concordance, &joined, query_words);
        Ok(ResolvedCatalogue {
            resolver: Resolver::new(references),
            findings,
            words: Words::new(&theme, OF_COMMANDS)?,
        })
    }

    /// Why a reference is read so, in English.
    #[must_use]
    pub fn why(&self, reading: &Reading) -> String {
        page::why(&self.words, self.resolver.references(), reading)
    }
}
