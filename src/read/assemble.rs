//! Assembles a catalogue from the files of a folder.

use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;

use rayon::prelude::*;

use crate::model::catalogue::Catalogue;
use crate::model::finding::Finding;
use crate::model::former::FormerKeys;
use crate::model::key::Key;
use crate::model::occurrence::RecordId;
use crate::model::place::{Place, Sources};
use crate::model::redacted::{PrivateText, Redacted};
use crate::model::settings::Settings;
use crate::read::bibtex;
use crate::read::files::inputs::Inputs;
use crate::read::files::kind::{FileKind, Location};
use crate::read::files::load::Loaded;
use crate::read::former::former_keys;
use crate::read::records::designs::{self, DesignFiles, ReadDesign};
use crate::read::records::documents;
use crate::read::records::exhibitions::exhibition;
use crate::read::records::marks;
use crate::read::records::parties;
use crate::read::records::register;
use crate::read::records::settings::{blank, settings};
use crate::read::records::terms::term;
use crate::read::records::vocabulary;
use crate::read::records::{record, series, unpublished};
use crate::read::reference::Words;
use crate::read::references::echoes::Unread;
use crate::read::references::note;
use crate::read::references::occurrences;
use crate::read::references::occurrences::RecordOccurrences;
use crate::read::references::renewed::Renewal;
use crate::read::references::resolve;
use crate::read::rights;
use crate::read::shape::{CATALOGUE, EXHIBITION, PAGE, TERM};
use crate::read::stray::stray_files;
use crate::read::theme::{own_themes, theme};

/// A catalogue as it was read, with the findings of reading.
#[derive(Debug)]
pub struct Reading {
    /// Everything that could be read.
    pub catalogue: Catalogue,
    /// The findings, in no particular order (see `model::finding::sort`).
    pub findings: Vec<Finding>,
}

/// Reads the catalogue in `dir`. Never fails: a folder without a catalogue gives an empty one and a
/// finding.
#[must_use]
pub fn read(dir: &Path) -> Reading {
    read_inputs(dir, &Inputs::of(dir))
}

/// Reads the catalogue in `dir` from its files as they were when `inputs` was made.
#[must_use]
pub fn read_inputs(dir: &Path, inputs: &Inputs) -> Reading {
    let Inputs {
        locations, loaded, ..
    } = inputs;
    let mut findings = inputs.findings.clone();
    let (former, of_former) = former_keys(loaded);
    findings.extend(of_former);
    let withheld = unpublished::documents(loaded);
    let (settings, of_settings) =
        read_settings(loaded, of_catalogue(&former, &withheld), &mut findings);
    let mut catalogue = Catalogue {
        sources: Sources::default(),
        settings,
        designs: BTreeMap::new(),
        holders: BTreeMap::new(),
        people: BTreeMap::new(),
        literature: BTreeMap::new(),
        exhibitions: BTreeMap::new(),
        marks: BTreeMap::new(),
        documents: BTreeMap::new(),
        series: BTreeMap::new(),
        vocabularies: vocabulary::built_in(),
        pages: BTreeMap::new(),
        occurrences: BTreeMap::new(),
        contents: BTreeMap::new(),
        register: None,
        unpublished: BTreeMap::new(),
        former,
        settled: Vec::new(),
        redacted: Redacted::default(),
    };
    if let Some((public, texts, occurrences)) = of_settings {
        catalogue.redacted.settings = public;
        catalogue.redacted.texts.extend(texts);
        occurrences.add_to(&mut catalogue, RecordId::Catalogue);
    }
    let mut unread = read_designs(loaded, locations, &mut catalogue, &mut findings);
    parties::holders(loaded, &mut catalogue, &mut findings);
    parties::people(loaded, &mut catalogue, &mut findings);
    marks::marks(loaded, &mut catalogue, &mut findings);
    series::all(loaded, &mut catalogue, &mut findings);
    unread.pictures_of_documents =
        documents::documents(loaded, locations, &mut catalogue, &mut findings);
    read_the_rest(dir, loaded, &mut catalogue, &mut findings);
    catalogue.sources = inputs.sources.clone();
    unread.add_unread(loaded, &catalogue.sources);
    stray_files(loaded, &catalogue, &unread, &mut findings);
    findings.extend(rights::unstated(&catalogue, &findings));
    unread.add_faulty(loaded, &catalogue.sources, &findings);
    let references = resolve::resolve(&catalogue, &own_themes(dir), &findings).into_iter();
    findings.extend(references.filter(|finding| !unread.explains(finding, &catalogue.sources)));
    Reading {
        catalogue,
        findings,
    }
}

/// The settings without their private fields, where they have any; the private texts; the texts and
/// references of the settings.
type OfSettings = (Option<Settings>, Vec<PrivateText>, RecordOccurrences);

fn read_settings(
    loaded: &[Loaded],
    renewal: Renewal<'_>,
    findings: &mut Vec<Finding>,
) -> (Settings, Option<OfSettings>) {
    let own = loaded.iter().find(|file| file.kind == FileKind::Settings);
    let place = own.map_or(Place::default(), |file| Place::start_of(file.file));
    let record = own
        .and_then(Loaded::source)
        .map(|source| record::one(source, &CATALOGUE, renewal, settings));
    match record {
        Some(record) => {
            findings.extend(record.findings);
            let rest = (record.public, record.texts, record.occurrences);
            (record.value, Some(rest))
        }
        None => (blank(place), None),
    }
}

/// Records that belong to no design.
fn of_catalogue<'r>(former: &'r FormerKeys, withheld: &'r BTreeSet<Key>) -> Renewal<'r> {
    Renewal {
        former,
        design: None,
        withheld,
    }
}

fn read_designs(
    loaded: &[Loaded],
    locations: &BTreeMap<String, Location>,
    catalogue: &mut Catalogue,
    findings: &mut Vec<Finding>,
) -> Unread {
    let mut folders: BTreeMap<Key, DesignFiles<'_>> = BTreeMap::new();
    for file in loaded {
        let design = match &file.kind {
            FileKind::Design(key) | FileKind::Commentary(key) => key,
            FileKind::Impression(key) | FileKind::ImpressionNote(key) => &key.design,
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
        match &file.kind {
            FileKind::Design(_) => {
                folder.place = Place::start_of(file.file);
                folder.record = file.source();
            }
            FileKind::Commentary(_) => folder.commentary = file.note(),
            FileKind::Impression(key) => {
                if let Some(source) = file.source() {
                    folder.impressions.insert(key.number, source);
                }
            }
            FileKind::ImpressionNote(key) => {
                folder
                    .notes
                    .extend(file.note().map(|note| (key.number, note)));
            }
            _ => {}
        }
    }
    let folders: Vec<_> = folders.into_iter().collect();
    let former = &catalogue.former;
    let withheld = unpublished::documents(loaded);
    let read: Vec<ReadDesign> = folders
        .par_iter()
        .map(|(key, files)| designs::read(key, files, locations, (former, &withheld)))
        .collect();
    let mut unread = Unread::default();
    for read in read {
        let key = read.design.key.clone();
        findings.extend(read.findings);
        for (record, occurrences) in read.occurrences {
            occurrences.add_to(catalogue, record);
        }
        let redacted = &mut catalogue.redacted;
        redacted.texts.extend(read.texts);
        redacted.impressions.extend(read.public_impressions);
        if let Some(public) = read.public {
            redacted.designs.insert(key.clone(), public);
        }
        if read.lacks_pictures {
            unread.pictures.insert(key.clone());
        }
        unread.parts.insert(key.clone(), read.unjudged);
        catalogue.designs.insert(key, read.design);
    }
    unread
}

/// Literature, exhibitions, pages and terms.
fn read_the_rest(
    dir: &Path,
    loaded: &[Loaded],
    catalogue: &mut Catalogue,
    findings: &mut Vec<Finding>,
) {
    let former = catalogue.former.clone();
    let withheld = unpublished::documents(loaded);
    let renewal = of_catalogue(&former, &withheld);
    for file in loaded {
        let Some(source) = file.source() else {
            continue;
        };
        match &file.kind {
            FileKind::Literature => {
                // References are set for readers, so they follow what the settings publish.
                let settings = catalogue.published_settings();
                let (theme, _) = theme(dir, &settings.theme);
                let words = Words::new(&theme, &settings.language.value);
                let (works, found) = bibtex::read(source.text, source.file, &words);
                findings.extend(found);
                for (key, work) in &works {
                    let occurrences = occurrences::of_work(work);
                    let record = RecordId::Work(key.clone());
                    catalogue.occurrences.insert(record, occurrences);
                }
                catalogue.literature = works;
            }
            FileKind::Exhibitions => {
                let records = record::many(source, &EXHIBITION, renewal, exhibition);
                findings.extend(records.findings);
                catalogue.redacted.texts.extend(records.texts);
                for one in records.all {
                    if let Some(public) = one.public {
                        let redacted = &mut catalogue.redacted.exhibitions;
                        redacted.insert(one.key.clone(), public);
                    }
                    let record = RecordId::Exhibition(one.key.clone());
                    one.occurrences.add_to(catalogue, record);
                    catalogue.exhibitions.insert(one.key, one.value);
                }
            }
            FileKind::Terms(list) => {
                let records = record::many(source, &TERM, renewal, |fields, _| term(fields));
                findings.extend(records.findings);
                for one in records.all {
                    let record = RecordId::Term(*list, one.key.clone());
                    one.occurrences.add_to(catalogue, record);
                    // Every page that uses a term shows it, so a term is kept without its private
                    // fields.
                    let terms = catalogue.vocabularies.0.entry(*list).or_default();
                    terms.insert(one.key, one.public.unwrap_or(one.value));
                }
            }
            FileKind::Register => {
                let (register, found) = register::register(source);
                findings.extend(found);
                catalogue.register = Some(register);
            }
            FileKind::Page(key) => {
                let (page, found) = note::page(key.clone(), source.file, source.text);
                findings.extend(found);
                let (occurrences, found) = note::read(&page.note, &former);
                findings.extend(found);
                let record = RecordId::Page(key.clone());
                catalogue.occurrences.insert(record, occurrences);
                catalogue.pages.insert(key.clone(), page);
            }
            FileKind::PageRecord(key) => {
                // Its former keys are all that it says, and `former` has read them.
                let record = record::one(source, &PAGE, renewal, |_| ());
                findings.extend(record.findings);
                catalogue.redacted.texts.extend(record.texts);
                // The page itself was read before: its path is earlier.
                let id = RecordId::Page(key.clone());
                if let Some(page) = catalogue.occurrences.remove(&id) {
                    let mut occurrences = record.occurrences;
                    occurrences.extend(page);
                    occurrences.add_to(catalogue, id);
                }
            }
            _ => {}
        }
    }
}
