//! From the files of a folder to a catalogue.

use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;
use std::sync::Arc;

use rayon::prelude::*;

use super::designs::{self, DesignFiles, ReadDesign};
use super::exhibitions::exhibition;
use super::holder::holder;
use super::near::nearest;
use super::person::person;
use super::pictures::Leads;
use super::record::{self, Source};
use super::settings::{BUILT_IN_THEME, blank, settings};
use super::shape::{CATALOGUE, EXHIBITION, HOLDER, PERSON, TERM};
use super::terms::term;
use super::theme::own_themes;
use super::values::key_help;
use super::walk::{File, Text, Wanted, What, read_text, walk};
use super::{bibtex, note, resolve, vocabulary};
use crate::model::catalogue::{Catalogue, Redacted};
use crate::model::codes::Code;
use crate::model::finding::Finding;
use crate::model::key::Key;
use crate::model::note::Note;
use crate::model::place::{FileId, Place, Sources};
use crate::model::settings::Settings;
use crate::model::vocabulary::List;
use crate::model::words::ClosedList;

/// A catalogue as it was read, and what is wrong with it.
#[derive(Debug)]
pub struct Reading {
    /// Everything that could be read.
    pub catalogue: Catalogue,
    /// What is wrong, in no particular order (see `model::finding::sort`).
    pub findings: Vec<Finding>,
}

/// A file with its text.
struct Loaded {
    what: What,
    file: FileId,
    text: Arc<str>,
    mangled: bool,
    /// Whether there is a text to be read.
    readable: bool,
}

impl Loaded {
    fn source(&self) -> Option<Source<'_>> {
        self.readable.then_some(Source {
            file: self.file,
            text: &self.text,
            mangled: self.mangled,
        })
    }

    fn note(&self) -> Option<Note> {
        self.readable.then(|| Note {
            file: self.file,
            text: self.text.to_string(),
        })
    }
}

/// Reads the catalogue in `dir`. Never fails: a folder without a catalogue gives an empty one and a
/// finding.
#[must_use]
pub fn read(dir: &Path) -> Reading {
    let mut findings = Vec::new();
    let mut sources = Sources::default();
    let files = with_missing(dir, walk(dir));
    let leads: BTreeMap<String, Leads> = files
        .iter()
        .map(|file| {
            let out = file.what == What::LeadsOut;
            (
                file.path.clone(),
                if out { Leads::Out } else { Leads::Inside },
            )
        })
        .collect();
    let loaded = load(files, &mut sources, &mut findings);
    let (settings, mut redacted) = read_settings(dir, &loaded, &mut findings);

    let (designs, broken) = read_designs(&loaded, &leads, &mut redacted, &mut findings);
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
    read_holders(&loaded, &mut catalogue, &mut findings);
    read_people(&loaded, &mut catalogue, &mut findings);
    read_the_rest(&loaded, &mut catalogue, &mut findings);
    catalogue.sources = sources;
    stray_files(&loaded, &catalogue, &broken, &mut findings);
    let unread = unread_parts(&loaded, &catalogue.sources, &broken, &findings);
    let references = resolve::resolve(&catalogue).into_iter();
    findings.extend(references.filter(|finding| !unread.explains(finding, &catalogue.sources)));
    Reading {
        catalogue,
        findings,
    }
}

/// The files, with those that should be there and are not.
fn with_missing(dir: &Path, mut files: Vec<File>) -> Vec<File> {
    let has_settings = files.iter().any(|file| file.path == "catalogue.toml");
    let mut designs: BTreeMap<Key, bool> = BTreeMap::new();
    for file in &files {
        let (design, is_record) = match &file.what {
            What::Design(key) => (key, true),
            What::Commentary(key) | What::OfDesign { design: key, .. } => (key, false),
            What::Impression(key) | What::ImpressionNote(key) => (&key.design, false),
            _ => continue,
        };
        *designs.entry(design.clone()).or_default() |= is_record;
    }
    let mut add = |path: String, what| {
        let full = dir.join(&path);
        files.push(File { path, full, what });
    };
    if !has_settings {
        add("catalogue.toml".to_owned(), What::Settings);
    }
    for (key, _) in designs.into_iter().filter(|(_, has_record)| !has_record) {
        add(
            format!("records/designs/{key}/design.toml"),
            What::Design(key),
        );
    }
    files.sort_by(|a, b| a.path.cmp(&b.path));
    files.dedup_by(|later, earlier| later.path == earlier.path);
    files
}

/// Reads the texts and gives every file its id, in the order of their paths.
fn load(files: Vec<File>, sources: &mut Sources, findings: &mut Vec<Finding>) -> Vec<Loaded> {
    let texts: Vec<Option<Text>> = files
        .par_iter()
        .map(|file| file.what.is_text().then(|| read_text(&file.full)))
        .collect();
    let mut all = Vec::with_capacity(files.len());
    for (file, text) in files.into_iter().zip(texts) {
        let (text, fault): (Arc<str>, _) = match text {
            None => (Arc::default(), None),
            Some(Text::Whole(text)) => (text.into(), None),
            Some(Text::Mangled { text, from }) => (text.into(), Some(Fault::Mangled(from))),
            Some(Text::TooLarge(size)) => (Arc::default(), Some(Fault::TooLarge(size))),
            Some(Text::Absent) => (Arc::default(), Some(Fault::Absent)),
            Some(Text::Unreadable(why)) => (Arc::default(), Some(Fault::Unreadable(why))),
        };
        let id = sources.add(file.path.clone(), text.clone());
        let mangled = matches!(fault, Some(Fault::Mangled(_)));
        let readable = fault.is_none() || mangled;
        if let Some(fault) = fault {
            findings.push(fault.finding(id, &file));
        }
        all.push(Loaded {
            what: file.what,
            file: id,
            text,
            mangled,
            readable,
        });
    }
    all
}

/// Why a file cannot be read, or not whole.
enum Fault {
    Mangled(usize),
    TooLarge(u64),
    Absent,
    Unreadable(String),
}

impl Fault {
    fn finding(&self, id: FileId, file: &File) -> Finding {
        let start = Place::start_of(id);
        match self {
            Fault::Mangled(from) => Finding::new(
                Code::TextNotUtf8,
                Place::new(id, *from..*from),
                "from here on the file is not UTF-8",
            )
            .help("save the file as UTF-8"),
            Fault::TooLarge(size) => Finding::new(
                Code::FileTooLarge,
                start,
                format!("the file has {} MB, more than any record", size / 1_000_000),
            )
            .help("keep pictures and data in files of their own"),
            Fault::Absent if file.what == What::Settings => {
                Finding::new(Code::FileMissing, start, "there is no catalogue.toml here")
                    .help("name the folder of a catalogue, or begin one with `keyblock start`")
            }
            Fault::Absent => Finding::new(
                Code::FileMissing,
                start,
                format!("there is no {}", file.path),
            )
            .help("write the design's record, or remove its folder"),
            Fault::Unreadable(why) => Finding::new(
                Code::FileUnreadable,
                start,
                format!("the file cannot be read: {why}"),
            )
            .help("check the file's permissions"),
        }
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

/// Which designs could be read only in part: their own record, or any record in their folder.
#[derive(Default)]
struct Broken {
    any: BTreeSet<Key>,
    record: BTreeSet<Key>,
}

fn read_designs(
    loaded: &[Loaded],
    leads: &BTreeMap<String, Leads>,
    redacted: &mut Redacted,
    findings: &mut Vec<Finding>,
) -> (BTreeMap<Key, crate::model::design::Design>, Broken) {
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
    let mut broken = Broken::default();
    for read in read {
        let key = read.design.key.clone();
        findings.extend(read.findings);
        redacted.texts.extend(read.texts);
        redacted.impressions.extend(read.public_impressions);
        if let Some(public) = read.public {
            redacted.designs.insert(key.clone(), public);
        }
        if read.any_broken {
            broken.any.insert(key.clone());
        }
        if read.record_broken {
            broken.record.insert(key.clone());
        }
        designs.insert(key, read.design);
    }
    (designs, broken)
}

fn read_holders(loaded: &[Loaded], catalogue: &mut Catalogue, findings: &mut Vec<Finding>) {
    let files: Vec<_> = loaded
        .iter()
        .filter_map(|file| match &file.what {
            What::Holder(key) => Some((key, file.source()?)),
            _ => None,
        })
        .collect();
    let records: Vec<_> = files
        .into_par_iter()
        .map(|(key, source)| {
            (
                key,
                record::one(source, &HOLDER, |fields| holder(fields, key)),
            )
        })
        .collect();
    let mut isils: BTreeMap<String, Place> = BTreeMap::new();
    for (key, record) in records {
        findings.extend(record.findings);
        catalogue.redacted.texts.extend(record.texts);
        if let Some(public) = record.public {
            catalogue.redacted.holders.insert(key.clone(), public);
        }
        if let Some(isil) = &record.value.isil {
            // Unique without regard to case (ISO 15511).
            match isils.entry(isil.value.to_ascii_lowercase()) {
                std::collections::btree_map::Entry::Vacant(first) => {
                    first.insert(isil.place);
                }
                std::collections::btree_map::Entry::Occupied(first) => findings.push(
                    Finding::new(
                        Code::KeyTwice,
                        isil.place,
                        format!("two holders have the ISIL {}", isil.value),
                    )
                    .beside(*first.get(), "the first")
                    .help("an ISIL belongs to one institution: correct one of the two"),
                ),
            }
        }
        catalogue.holders.insert(key.clone(), record.value);
    }
    for file in loaded {
        if let What::HolderNote(key) = &file.what {
            let note = file.note();
            if let Some(holder) = catalogue.holders.get_mut(key) {
                holder.note.clone_from(&note);
            }
            if let Some(public) = catalogue.redacted.holders.get_mut(key) {
                public.note = note;
            }
        }
    }
}

fn read_people(loaded: &[Loaded], catalogue: &mut Catalogue, findings: &mut Vec<Finding>) {
    let files: Vec<_> = loaded
        .iter()
        .filter_map(|file| match &file.what {
            What::Person(key) => Some((key, file.source()?)),
            _ => None,
        })
        .collect();
    let records: Vec<_> = files
        .into_par_iter()
        .map(|(key, source)| {
            (
                key,
                record::one(source, &PERSON, |fields| person(fields, key)),
            )
        })
        .collect();
    for (key, record) in records {
        findings.extend(record.findings);
        catalogue.redacted.texts.extend(record.texts);
        if let Some(public) = record.public {
            catalogue.redacted.people.insert(key.clone(), public);
        }
        catalogue.people.insert(key.clone(), record.value);
    }
    for file in loaded {
        if let What::PersonNote(key) = &file.what {
            let note = file.note();
            if let Some(person) = catalogue.people.get_mut(key) {
                person.note.clone_from(&note);
            }
            if let Some(public) = catalogue.redacted.people.get_mut(key) {
                public.note = note;
            }
        }
    }
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

/// Files of which some was not read: what is named there may be there after all.
struct Unread<'b> {
    broken: &'b Broken,
    literature: bool,
    exhibitions: bool,
    /// Lists of terms.
    terms: bool,
    /// Records that could not be read at all.
    holders: bool,
    people: bool,
}

fn unread_parts<'b>(
    loaded: &[Loaded],
    sources: &Sources,
    broken: &'b Broken,
    findings: &[Finding],
) -> Unread<'b> {
    let faulty: BTreeSet<&str> = findings
        .iter()
        .filter(|finding| {
            matches!(
                finding.code,
                Code::TomlSyntax
                    | Code::BibtexSyntax
                    | Code::TextNotUtf8
                    | Code::FileTooLarge
                    | Code::FileUnreadable
                    | Code::KeyForm
            )
        })
        .map(|finding| sources.path(finding.at.place.file))
        .collect();
    let any = |is: &dyn Fn(&str) -> bool| {
        loaded.iter().any(|file| {
            let path = sources.path(file.file);
            is(path) && faulty.contains(path)
        })
    };
    Unread {
        broken,
        literature: any(&|path| path == "records/literature.bib"),
        exhibitions: any(&|path| path == "records/exhibitions.toml"),
        terms: any(&|path| path.starts_with("records/vocabulary/")),
        holders: loaded.iter().any(|file| {
            let path = sources.path(file.file);
            !file.readable && path.starts_with("records/holders/")
        }),
        people: loaded.iter().any(|file| {
            let path = sources.path(file.file);
            !file.readable && path.starts_with("records/people/")
        }),
    }
}

impl Unread<'_> {
    /// Whether a reference to nothing may lead to something that was not read. Its fault is told
    /// already; this would only be its echo.
    fn explains(&self, finding: &Finding, sources: &Sources) -> bool {
        let in_broken_design = || {
            folder_of(sources.path(finding.at.place.file))
                .is_some_and(|design| self.broken.record.contains(&design))
        };
        match finding.code {
            Code::MatrixUnknown
            | Code::StateUnknown
            | Code::PrintingUnknown
            | Code::VariantUnknown
            | Code::PointUnknown => in_broken_design(),
            Code::PictureUnknown => !self.broken.any.is_empty(),
            Code::LiteratureUnknown => self.literature,
            Code::ExhibitionUnknown => self.exhibitions,
            Code::TermUnknown => self.terms,
            Code::HolderUnknown => self.holders,
            Code::PersonUnknown => self.people,
            Code::PartyUnknown => self.holders || self.people,
            _ => false,
        }
    }
}

/// Reports files that are no records, or that no record names.
fn stray_files(
    loaded: &[Loaded],
    catalogue: &Catalogue,
    broken: &Broken,
    findings: &mut Vec<Finding>,
) {
    let used: BTreeSet<&str> = catalogue
        .designs
        .values()
        .flat_map(|design| {
            let of_sheets = design.impressions.values().flat_map(|i| &i.pictures);
            design.pictures.iter().chain(of_sheets)
        })
        .map(|picture| picture.path.as_str())
        .collect();
    let told_to_leave: BTreeSet<Key> = findings
        .iter()
        .filter(|finding| finding.code == Code::PathLeaves)
        .filter_map(|finding| folder_of(catalogue.sources.path(finding.at.place.file)))
        .collect();
    for file in loaded {
        let path = catalogue.sources.path(file.file);
        let here = Place::start_of(file.file);
        let unexpected = |help: &str| {
            Finding::new(
                Code::FileUnexpected,
                here,
                format!("no record is looked for at {path}"),
            )
            .help(help.to_owned())
        };
        let finding = match &file.what {
            What::Unexpected => unexpected(&expected_near(path)),
            What::OfDesign {
                is_picture: false, ..
            } if !used.contains(path) => unexpected(
                "a design's folder holds design.toml, design.md, impressions/ and pictures/",
            ),
            What::OfDesign {
                design,
                is_picture: true,
            } if !used.contains(path) && !broken.any.contains(design) => {
                let name = path.rsplit('/').next().unwrap_or(path);
                Finding::new(
                    Code::PictureOrphan,
                    here,
                    format!("no record of design {design} names the picture {name}"),
                )
                .help("name it in the record of what it shows, or take it out of the folder")
            }
            What::NoKey { name, wanted } => no_key(name, *wanted, here),
            What::LeadsOut if folder_of(path).is_none_or(|d| !told_to_leave.contains(&d)) => {
                Finding::new(
                    Code::PathLeaves,
                    here,
                    format!("{path} is a link that leads out of the catalogue"),
                )
                .help("put the file itself here")
            }
            What::Unreadable(why) => Finding::new(
                Code::FileUnreadable,
                here,
                format!("the folder {path} cannot be looked into: {why}"),
            )
            .help("check its permissions"),
            What::ImpressionNote(key) if catalogue.impression(key).is_none() => lonely(here, path),
            What::HolderNote(key) if !catalogue.holders.contains_key(key) => lonely(here, path),
            What::PersonNote(key) if !catalogue.people.contains_key(key) => lonely(here, path),
            _ => continue,
        };
        findings.push(finding);
    }
}

/// The design in whose folder a file lies.
fn folder_of(path: &str) -> Option<Key> {
    let below = path.strip_prefix("records/designs/")?;
    below.split('/').next()?.parse().ok()
}

fn lonely(here: Place, path: &str) -> Finding {
    let record = path.replace(".md", ".toml");
    Finding::new(
        Code::FileUnexpected,
        here,
        format!("this text belongs to no record: there is no {record}"),
    )
    .help("write the record beside it, or take the text away")
}

fn no_key(name: &str, wanted: Wanted, here: Place) -> Finding {
    let finding = Finding::new(
        Code::KeyForm,
        here,
        match wanted {
            Wanted::Key => format!("\"{name}\" is no key, so this is no record"),
            Wanted::Number => {
                format!("\"{name}\" is no number of an impression, so this is no record")
            }
        },
    );
    finding.help(match wanted {
        Wanted::Key => format!("rename it; {}", key_help(name)),
        Wanted::Number => {
            "impressions are numbered from 1 in the order of recording, without leading zeros: 7.toml".to_owned()
        }
    })
}

/// What is looked for in the folder of a file.
fn expected_near(path: &str) -> String {
    let folder = path
        .strip_prefix("records/")
        .and_then(|p| p.split('/').next());
    match folder {
        Some("vocabulary") => {
            let lists: Vec<_> = List::ALL.iter().map(|list| format!("{}.toml", list.word())).collect();
            format!("the vocabularies are {}", lists.join(", "))
        }
        Some("pages") => "pages are Markdown files: records/pages/introduction.md".to_owned(),
        Some("holders") => "holders are records/holders/KEY.toml".to_owned(),
        Some("people") => "people are records/people/KEY.toml".to_owned(),
        Some("designs") => "designs are records/designs/KEY/design.toml".to_owned(),
        _ => "records/ holds designs, holders, people, pages, vocabulary, literature.bib and exhibitions.toml"
            .to_owned(),
    }
}
