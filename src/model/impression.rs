//! Impressions: single sheets, each with its holder, its observations and its identification.

use super::as_found::{AsGiven, OtherId};
use super::certainty::{Certainty, Claim, Statements};
use super::edtf::Date;
use super::key::{ImpressionKey, Key};
use super::literature::Citation;
use super::mark::Mark;
use super::note::Note;
use super::picture::Picture;
use super::place::{Place, Placed};
use super::point::Observation;
use super::provenance::{ProvenanceEntry, Sighting};
use super::sheet::{ConditionNote, Sheet};
use super::standing::RecordStanding;
use super::words::closed_list;

closed_list! {
    /// Whether a sheet exists, and whether its place is known.
    Status {
        /// Its place is known.
        Located = "located",
        /// It existed; its present place is not known.
        Untraced = "untraced",
        /// It no longer exists.
        Destroyed = "destroyed",
        /// Stolen and not recovered.
        Stolen = "stolen",
    }
}

closed_list! {
    /// Whether a matrix was printed on a sheet.
    BlockPrinted {
        /// It was.
        Printed = "printed",
        /// It was not.
        NotPrinted = "not-printed",
        /// It cannot be seen.
        NotVisible = "not-visible",
    }
}

closed_list! {
    /// A feature that was looked for and not found.
    Without {
        /// A signature.
        Signature = "signature",
        /// A stamp.
        Stamp = "stamp",
        /// A seal.
        Seal = "seal",
        /// A collector's mark.
        Collector = "collector",
        /// An inscription.
        Inscription = "inscription",
        /// A watermark.
        Watermark = "watermark",
        /// A number.
        Numbering = "numbering",
    }
}

/// A recorded impression.
#[derive(Clone, Debug, PartialEq)]
pub struct Impression {
    /// Its key.
    pub key: ImpressionKey,
    /// The holder that keeps it.
    pub holder: Option<Placed<Key>>,
    /// The owner, where that is not the holder; several own it jointly.
    pub owners: Vec<Party>,
    /// Its number with that holder.
    pub accession: Option<Placed<String>>,
    /// Which part of that number it is, where several sheets have one.
    pub part: Option<Placed<String>>,
    /// Numbers it had before.
    pub former_accessions: Vec<FormerAccession>,
    /// The exact credit line.
    pub credit: Option<String>,
    /// The holder's own page of the sheet.
    pub web: Option<Placed<String>>,
    /// Its identifiers elsewhere.
    pub ids: Vec<OtherId>,
    /// Whether it exists and is located.
    pub status: Placed<Status>,
    /// Its kind, a key of the vocabulary, the catalogue's own view first.
    pub kind: Statements<Key>,
    /// The impression a counterproof was taken from.
    pub taken_from: Option<Placed<ImpressionKey>>,
    /// Its number, as written: "12/50".
    pub numbering: Option<Placed<String>>,
    /// How it was made, where it is described otherwise than the design: keys of the vocabulary of techniques.
    pub technique: Vec<Placed<Key>>,
    /// The catalogue's own identification.
    pub identified: Option<Identification>,
    /// Identifications by others.
    pub opinions: Vec<Opinion>,
    /// The observations at the design's points.
    pub observed: Vec<Observation>,
    /// Which matrices were printed on it.
    pub blocks: Vec<(Placed<Key>, Placed<BlockPrinted>)>,
    /// Features that were looked for and not found.
    pub without: Vec<Placed<Without>>,
    /// The sheet itself.
    pub sheet: Sheet,
    /// The marks put on it.
    pub marks: Vec<Mark>,
    /// Its condition: each thing that was noted of it.
    pub condition: Vec<ConditionNote>,
    /// The holder's own description.
    pub as_given: Option<AsGiven>,
    /// Its pictures.
    pub pictures: Vec<Picture>,
    /// Where it was, earliest first.
    pub provenance: Vec<ProvenanceEntry>,
    /// The same as a line written by hand, to be kept as it is.
    pub provenance_line: Option<Placed<String>>,
    /// When it was seen.
    pub sightings: Vec<Sighting>,
    /// Where it was exhibited.
    pub exhibited: Vec<Exhibited>,
    /// Where this sheet is discussed or illustrated.
    pub literature: Vec<Citation>,
    /// Records found to be the same sheet.
    pub same_as: Vec<OtherSheet>,
    /// Records that may be the same sheet.
    pub maybe_same_as: Vec<OtherSheet>,
    /// Records that are certainly another sheet.
    pub not_same_as: Vec<OtherSheet>,
    /// Other impressions on the same paper.
    pub shares_sheet: Vec<Placed<ImpressionKey>>,
    /// Other sheets of one set.
    pub goes_with: Vec<Placed<ImpressionKey>>,
    /// Whether its page is published; it is counted in either case.
    pub publish: bool,
    /// Whether it is accepted, doubtful, rejected or withdrawn.
    pub standing: RecordStanding,
    /// Notes on it.
    pub note: Option<Note>,
    /// Where it is recorded.
    pub place: Place,
}

impl Impression {
    /// An impression of which nothing is recorded but its key; it is untraced.
    #[must_use]
    pub fn blank(key: ImpressionKey) -> Impression {
        Impression {
            key,
            holder: None,
            owners: Vec::new(),
            accession: None,
            part: None,
            former_accessions: Vec::new(),
            credit: None,
            web: None,
            ids: Vec::new(),
            status: Placed::new(Status::Untraced, Place::default()),
            kind: Statements::default(),
            taken_from: None,
            numbering: None,
            technique: Vec::new(),
            identified: None,
            opinions: Vec::new(),
            observed: Vec::new(),
            blocks: Vec::new(),
            without: Vec::new(),
            sheet: Sheet::default(),
            marks: Vec::new(),
            condition: Vec::new(),
            as_given: None,
            pictures: Vec::new(),
            provenance: Vec::new(),
            provenance_line: None,
            sightings: Vec::new(),
            exhibited: Vec::new(),
            literature: Vec::new(),
            same_as: Vec::new(),
            maybe_same_as: Vec::new(),
            not_same_as: Vec::new(),
            shares_sheet: Vec::new(),
            goes_with: Vec::new(),
            publish: true,
            standing: RecordStanding::default(),
            note: None,
            place: Place::default(),
        }
    }

    /// Its accession number, with the part of it where several sheets have one number: "1962.44, sheet 2".
    #[must_use]
    pub fn accession_and_part(&self) -> Option<String> {
        let number = &self.accession.as_ref()?.value;
        Some(match &self.part {
            Some(part) => format!("{number}, {}", part.value),
            None => number.clone(),
        })
    }
}

/// A sheet that is counted and not shown: what readers may know of an impression with `publish = false`
/// ([`super::public`]). It counts one sheet, of a state, a printing and a kind.
#[derive(Clone, Debug, PartialEq)]
pub struct CountedSheet {
    /// The key of the impression. No page names it.
    pub key: ImpressionKey,
    /// Its kind, in the catalogue's own view.
    pub kind: Option<Key>,
    /// Its state and printing, and its kind where the reading turns on it, without reasons and sources.
    pub identified: Option<Identification>,
}

pub use super::provenance::Party;

/// A number a sheet had with an earlier holder, or before renumbering.
#[derive(Clone, Debug, PartialEq)]
pub struct FormerAccession {
    /// With whom.
    pub holder: Option<Placed<Key>>,
    /// The number.
    pub number: String,
    /// Until when.
    pub until: Option<Placed<Date>>,
}

/// An identification of a sheet: its state, printing and variant.
#[derive(Clone, Debug, PartialEq)]
pub struct Identification {
    /// Which state.
    pub state: Option<StateReading>,
    /// Which printing: one, or any of several.
    pub printing: Vec<Placed<Key>>,
    /// Which variant.
    pub variant: Option<Placed<Key>>,
    /// Which kind of impression, where the reading turns on it.
    pub kind: Option<Placed<Key>>,
    /// Why.
    pub why: Option<String>,
    /// The source and certainty of the statement.
    pub claim: Claim,
    /// Other readings that are possible.
    pub or: Vec<Identification>,
    /// Where it is recorded.
    pub place: Place,
}

/// Which state a sheet is in.
#[derive(Clone, Debug, PartialEq)]
pub enum StateReading {
    /// One of these.
    OneOf(Vec<Placed<Key>>),
    /// Its blocks are in different conditions: matrix and state.
    ByMatrix(Vec<(Placed<Key>, Placed<Key>)>),
}

/// An identification by somebody else.
#[derive(Clone, Debug, PartialEq)]
pub struct Opinion {
    /// In their own words: "III".
    pub said: Option<String>,
    /// After which catalogue, where `said` is its numbering.
    pub after: Option<Placed<Key>>,
    /// The same in the terms of this catalogue.
    pub reading: Identification,
}

/// An exhibition a sheet was shown in.
#[derive(Clone, Debug, PartialEq)]
pub struct Exhibited {
    /// Which.
    pub exhibition: Placed<Key>,
    /// Its number or place there.
    pub at: Option<String>,
    /// The certainty that it was this sheet.
    pub this_sheet: Option<Placed<Certainty>>,
    /// Whether the sheet is illustrated in the catalogue of the exhibition; `None`: not said.
    pub illustrated: Option<bool>,
}

impl Exhibited {
    /// The certainty that it was this sheet that was shown.
    #[must_use]
    pub fn certainty(&self) -> Certainty {
        let this_sheet = self.this_sheet.as_ref();
        this_sheet.map_or(Certainty::Certain, |said| said.value)
    }

    /// Whether it was certainly this sheet.
    #[must_use]
    pub fn is_certain(&self) -> bool {
        self.certainty() == Certainty::Certain
    }
}

/// Another record, and why it is or is not the same sheet.
#[derive(Clone, Debug, PartialEq)]
pub struct OtherSheet {
    /// The other record.
    pub impression: Placed<ImpressionKey>,
    /// Why.
    pub why: Option<String>,
}
