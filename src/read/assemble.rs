//! From the files of a folder to a catalogue.

use std::collections::BTreeMap;
use std::path::Path;

use rayon::prelude::*;

use super::designs::{self, DesignFiles, ReadDesign};
use super::echoes::Unread;
use super::exhibitions::exhibition;
use super::inputs::Inputs;
use super::load::Loaded;
use super::near::nearest;
use super::pictures::Leads;
use super::record;
use super::settings::{BUILT_IN_THEME, blank, settings};
use super::shape::{CATALOGUE, EXHIBITION, TERM};
use super::stray::stray_files;
use super::terms::term;
use super::theme::own_themes;
use super::walk::What;
use super::{bibtex, note, parties, resolve, vocabulary};
use crate::model::catalogue::{Catalogue, Redacted};
use crate::model::codes::Code;
use crate::model::finding::Finding;
use crate::model::key::Key;
use crate::model::place::{Place, Sources};
use crate::model::settings::Settings;

/// A catalogue as it was read, and what is wrong with it.
#[derive(Debug)]
pub struct Reading {
    /// Everything that could be read.
    pub catalogue: Catalogue,
    /// What is wrong, in no particular order (see `model::finding::sort`).
    pub findings: Vec<Finding>,
}

/// Reads the catalogue in `dir`. Never fails: a folder without a catalogue gives an empty one and a
/// finding.
#[must_use]
pub fn read(dir: &Path) -> Reading {
    read_inputs(dir, &Inputs::of(dir))
}

/// Reads the catalogue in `dir` from its files as they stood when they were looked through.
#[must_use]
pub fn read_inputs(dir: &Path, inputs: &Inputs) -> Reading {
    let Inputs { leads, loaded, .. } = inputs;
    let mut findings = inputs.findings.clone();
    let (settings, mut redacted) = read_settings(dir, loaded, &mut findings);

    let (designs, mut unread) = read_designs(loaded, leads, &mut redacted, &mut findings);
    let mut catalogue = Catalogue {
        sources: Sources::default(),
        settings,
        designs,
        holders: BTreeMap::new(),
        people: BTreeMap::new(),
        literature: BTreeMap::new(),
        exhibitions: BTreeMap::new(),
        vocabularies: vocabulary::built_in(),
        pages: BTreeMap::new(),
        redacted,
    };
    parties::holders(loaded, &mut catalogue, &mut findings);
    parties::people(loaded, &mut catalogue, &mut findings);
    read_the_rest(loaded, &mut catalogue, &mut findings);
    catalogue.sources = inputs.sources.clone();
    unread.add_misnamed(loaded, &catalogue.sources);
    stray_files(loaded, &catalogue, &unread, &mut findings);
    unread.add_faulty(loaded, &catalogue.sources, &findings);
    let references = resolve::resolve(&catalogue).into_iter();
    findings.extend(references.filter(|finding| !unread.explains(finding, &catalogue.sources)));
    Reading {
        catalogue,
        findings,
    }
}

fn read_settings(
    dir: &Path,
    loaded: &[Loaded],
    findings: &mut Vec<Finding>,
) -> (Settings, Redacted) {
    let mut redacted = Redacted::default();
    let own = loaded.iter().find(|file| file.what == What::Settings);
    let place = own.map_or(Place::default(), |file| Place::start_of(file.file));
    let record = own
        .and_then(Loaded::source)
        .map(|source| record::one(source, &CATALOGUE, settings));
    let settings = match record {
        Some(record) => {
            findings.extend(record.findings);
            redacted.texts.extend(record.texts);
            redacted.settings = record.public;
            record.value
        }
        None => blank(place),
    };
    let theme = &settings.theme;
    let themes = own_themes(dir);
    if theme.value.as_str() != BUILT_IN_THEME && !themes.iter().any(|t| t == theme.value.as_str()) {
        let finding = Finding::new(
            Code::ThemeUnknown,
            theme.place,
            format!("there is no theme `{}`", theme.value),
        );
        let known = themes.iter().map(String::as_str).chain([BUILT_IN_THEME]);
        let help = match nearest(theme.value.as_str(), known) {
            Some(near) => format!("did you mean \"{near}\"?"),
            None => format!(
                "write \"{BUILT_IN_THEME}\", or make the folder themes/{}",
                theme.value
            ),
        };
        findings.push(finding.help(help));
    }
    (settings, redacted)
}

fn read_designs(
    loaded: &[Loaded],
    leads: &BTreeMap<String, Leads>,
    redacted: &mut Redacted,
    findings: &mut Vec<Finding>,
) -> (BTreeMap<Key, crate::model::design::Design>, Unread) {
    let mut folders: BTreeMap<Key, DesignFiles<'_>> = BTreeMap::new();
    for file in loaded {
        let design = match &file.what {
            What::Design(key) | What::Commentary(key) => key,
            What::Impression(key) | What::ImpressionNote(key) => &key.design,
            _ => continue,
        };
        let folder = folders
            .entry(design.clone())
            .or_insert_with(|| DesignFiles {
                place: Place::start_of(file.file),
                record: None,
                commentary: None,
                impressions: BTreeMap::new(),
                notes: BTreeMap::new(),
            });
        match &file.what {
            What::Design(_) => {
                folder.place = Place::start_of(file.file);
                folder.record = file.source();
            }
            What::Commentary(_) => folder.commentary = file.note(),
            What::Impression(key) => {
                if let Some(source) = file.source() {
                    folder.impressions.insert(key.number, source);
                }
            }
            What::ImpressionNote(key) => {
                folder
                    .notes
                    .extend(file.note().map(|note| (key.number, note)));
            }
            _ => {}
        }
    }
    let folders: Vec<_> = folders.into_iter().collect();
    let read: Vec<ReadDesign> = folders
        .par_iter()
        .map(|(key, files)| designs::read(key, files, leads))
        .collect();
    let mut designs = BTreeMap::new();
    let mut unread = Unread::default();
    for read in read {
        let key = read.design.key.clone();
        findings.extend(read.findings);
        redacted.texts.extend(read.texts);
        redacted.impressions.extend(read.public_impressions);
        if let Some(public) = read.public {
            redacted.designs.insert(key.clone(), public);
        }
        if read.lacks_pictures {
            unread.pictures.insert(key.clone());
        }
        unread.parts.insert(key.clone(), read.unjudged);
        designs.insert(key, read.design);
    }
    (designs, unread)
}

/// Literature, exhibitions, pages and terms.
fn read_the_rest(loaded: &[Loaded], catalogue: &mut Catalogue, findings: &mut Vec<Finding>) {
    for file in loaded {
        let Some(source) = file.source() else {
            continue;
        };
        match &file.what {
            What::Literature => {
                let language = &catalogue.settings.language.value;
                let (works, found) = bibtex::read(source.text, source.file, language);
                catalogue.literature = works;
                findings.extend(found);
            }
            What::Exhibitions => {
                let record = record::many(source, &EXHIBITION, exhibition);
                findings.extend(record.findings);
                catalogue.redacted.texts.extend(record.texts);
                for (key, exhibition, public) in record.value {
                    catalogue
                        .redacted
                        .exhibitions
                        .extend(public.map(|public| (key.clone(), public)));
                    catalogue.exhibitions.insert(key, exhibition);
                }
            }
            What::Terms(list) => {
                let record = record::many(source, &TERM, |fields, _| term(fields));
                findings.extend(record.findings);
                let terms = catalogue.vocabularies.0.entry(*list).or_default();
                for (key, term, public) in record.value {
                    // Terms are published with every page that uses one: what of a term is private
                    // is not even kept.
                    terms.insert(key, public.unwrap_or(term));
                }
            }
            What::Page(key) => {
                let (page, found) = note::page(key.clone(), source.file, source.text);
                findings.extend(found);
                catalogue.pages.insert(key.clone(), page);
            }
            _ => {}
        }
    }
}
