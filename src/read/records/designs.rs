//! A design's folder: its record, its impressions, its pictures.

use std::collections::{BTreeMap, BTreeSet};

use rayon::prelude::*;

use crate::model::codes::Code;
use crate::model::design::Design;
use crate::model::finding::Finding;
use crate::model::former::FormerKeys;
use crate::model::impression::Impression;
use crate::model::key::{ImpressionKey, Key};
use crate::model::note::Note;
use crate::model::occurrence::RecordId;
use crate::model::place::Place;
use crate::model::redacted::PrivateText;
use crate::read::files::kind::Location;
use crate::read::files::load::Source;
use crate::read::records::design::{DesignRecord, design};
use crate::read::records::impression::impression;
use crate::read::records::pictures::Folder;
use crate::read::records::points::Points;
use crate::read::records::record::{self, Record, SecondReading};
use crate::read::references::echoes::PARTS;
use crate::read::references::note;
use crate::read::references::occurrences::RecordOccurrences;
use crate::read::references::renewed::Renewal;
use crate::read::shape::{DESIGN, IMPRESSION};

/// The files of one design.
pub(crate) struct DesignFiles<'t> {
    /// The start of the record, which may be missing on disk.
    pub(crate) place: Place,
    /// The record, if it can be read.
    pub(crate) record: Option<Source<'t>>,
    /// The commentary.
    pub(crate) commentary: Option<Note>,
    /// The impressions.
    pub(crate) impressions: BTreeMap<u32, Source<'t>>,
    /// Their notes.
    pub(crate) notes: BTreeMap<u32, Note>,
}

/// A design as it was read.
pub(crate) struct ReadDesign {
    /// The design with its impressions.
    pub(crate) design: Design,
    /// The design without its private fields, where it has any; without impressions.
    pub(crate) public: Option<Design>,
    /// The impressions as they may be published, where that may differ: those with private fields, and all where
    /// the design keeps a point or a part of one private.
    pub(crate) public_impressions: Vec<(ImpressionKey, Impression)>,
    /// The texts and references of the design and of each impression.
    pub(crate) occurrences: Vec<(RecordId, RecordOccurrences)>,
    /// The private texts.
    pub(crate) texts: Vec<PrivateText>,
    /// The findings.
    pub(crate) findings: Vec<Finding>,
    /// References to its parts that cannot be checked, as the codes that would report them: some of
    /// those parts could not be read.
    pub(crate) unjudged: BTreeSet<Code>,
    /// Whether some picture, or some record in the folder, could not be read, or only in part.
    pub(crate) lacks_pictures: bool,
}

/// Reads a design's folder. `withheld`: the documents that are not published.
pub(crate) fn read(
    key: &Key,
    files: &DesignFiles<'_>,
    all_files: &BTreeMap<String, Location>,
    (former, withheld): (&FormerKeys, &BTreeSet<Key>),
) -> ReadDesign {
    let renewal = Renewal {
        former,
        design: Some(key),
        withheld,
    };
    let folder = Folder {
        path: format!("records/designs/{key}"),
        files: all_files,
    };
    let record = files.record.map(|source| {
        record::one(source, &DESIGN, renewal, |fields| {
            design(fields, key, &folder)
        })
    });
    let nothing = || Record {
        value: DesignRecord {
            design: Design::blank(key, files.place),
            points: Points::default(),
            unjudged: BTreeSet::new(),
            lacks_pictures: true,
        },
        public: None,
        occurrences: RecordOccurrences::default(),
        texts: Vec::new(),
        findings: Vec::new(),
        broken: true,
    };
    let mut record = record.unwrap_or_else(nothing);
    if let Some(commentary) = &files.commentary {
        let (occurrences, findings) = note::read(commentary, former);
        record.occurrences.extend(occurrences);
        record.findings.extend(findings);
    }
    let with_commentary = |mut design: Design| {
        design.commentary.clone_from(&files.commentary);
        design
    };
    let DesignRecord {
        design,
        points,
        mut unjudged,
        lacks_pictures,
    } = record.value;
    if record.broken {
        unjudged.extend(PARTS);
    }
    // Observations are answers to points, so they are read against the points that may be published.
    let (public, public_points) = record.public.map(|p| (p.design, p.points)).unzip();
    let public_points = public_points.filter(|public| *public != points);
    let again = match public_points {
        Some(_) => SecondReading::Always,
        None => SecondReading::WherePrivate,
    };
    let mut read = ReadDesign {
        design: with_commentary(design),
        public: public.map(with_commentary),
        public_impressions: Vec::new(),
        occurrences: vec![(RecordId::Design(key.clone()), record.occurrences)],
        texts: record.texts,
        findings: record.findings,
        unjudged,
        lacks_pictures: lacks_pictures || record.broken,
    };
    let sources: Vec<_> = files.impressions.iter().collect();
    let impressions: Vec<_> = sources
        .into_par_iter()
        .map(|(number, source)| {
            let key = ImpressionKey {
                design: key.clone(),
                number: *number,
            };
            let mut record = record::one_again(*source, &IMPRESSION, renewal, again, |fields| {
                let public_points = public_points.as_ref().filter(|_| fields.faults.redacted);
                let points = public_points.unwrap_or(&points);
                impression(fields, &key, points, &folder)
            });
            if let Some(note) = files.notes.get(number) {
                let (occurrences, findings) = note::read(note, former);
                record.occurrences.extend(occurrences);
                record.findings.extend(findings);
            }
            (key, record)
        })
        .collect();
    for (key, record) in impressions {
        let note = files.notes.get(&key.number);
        let mut impression = record.value.impression;
        impression.note = note.cloned();
        read.design.impressions.insert(key.number, impression);
        if let Some(mut public) = record.public.map(|public| public.impression) {
            public.note = note.cloned();
            read.public_impressions.push((key.clone(), public));
        }
        let id = RecordId::Impression(key.clone());
        read.occurrences.push((id, record.occurrences));
        read.texts.extend(record.texts);
        read.findings.extend(record.findings);
        read.lacks_pictures |= record.value.lacks_pictures || record.broken;
    }
    read
}
