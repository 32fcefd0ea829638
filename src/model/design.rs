//! Designs: the compositions, each with its matrices, states, printings and impressions.

use std::collections::BTreeMap;

use super::as_found::OtherId;
use super::certainty::{Claim, Statements};
use super::edtf::Date;
use super::impression::{CountedSheet, Impression};
use super::key::{ImpressionKey, Key, PictureKey};
use super::literature::Citation;
use super::note::Note;
use super::picture::Picture;
use super::place::{Place, Placed};
use super::point::Point;
use super::printing::Printing;
use super::series_place::SeriesPlace;
use super::size::{Size, Sizes};
use super::standing::RecordStanding;
use super::state::{State, Variant};
use super::words::closed_list;

closed_list! {
    /// The kind of a title.
    TitleKind {
        /// The title in use; the default.
        Usual = "usual",
        /// In the original script.
        Original = "original",
        /// Romanised.
        Romanised = "romanised",
        /// Translated.
        Translated = "translated",
        /// No longer used.
        Former = "former",
    }
}

closed_list! {
    /// The kind of a matrix.
    MatrixKind {
        /// A block of wood or linoleum.
        Block = "block",
        /// A metal plate.
        Plate = "plate",
        /// A lithographic stone.
        Stone = "stone",
        /// A screen or stencil.
        Screen = "screen",
    }
}

closed_list! {
    /// The fate of a matrix.
    MatrixFate {
        /// It exists.
        Extant = "extant",
        /// Defaced so that it cannot be printed honestly.
        Cancelled = "cancelled",
        /// Destroyed.
        Destroyed = "destroyed",
        /// Not known.
        Unknown = "unknown",
    }
}

/// A design with everything recorded under it.
#[derive(Clone, Debug, PartialEq)]
pub struct Design {
    /// Its key: its folder's name.
    pub key: Key,
    /// The number readers see, as text.
    pub number: String,
    /// Where its number is recorded; the record where it has none of its own.
    pub number_place: Place,
    /// The text it is sorted by in place of the number.
    pub sort: Option<String>,
    /// Its titles; at least one in a sound record.
    pub titles: Vec<Title>,
    /// The date of the design.
    pub date: Statements<Date>,
    /// The people who made it, each with a role.
    pub makers: Vec<Maker>,
    /// Keys of the vocabulary of techniques.
    pub technique: Vec<Placed<Key>>,
    /// Keys of the vocabulary of papers.
    pub support: Vec<Placed<Key>>,
    /// The series it belongs to, the one that it is cited by first.
    pub series: Vec<SeriesPlace>,
    /// Subjects: keys of the vocabulary or free words.
    pub subjects: Vec<Placed<String>>,
    /// Related designs.
    pub related: Vec<Related>,
    /// The sources that mention it, where no impression is known.
    pub known_from: Vec<Citation>,
    /// The sizes of image and matrix in every state and printing that records none of its own.
    pub size: Sizes,
    /// The matrices.
    pub matrices: Vec<Matrix>,
    /// Citations of earlier literature, with its numbers for it.
    pub literature: Vec<Citation>,
    /// The points that distinguish its states and printings.
    pub points: Vec<Point>,
    /// The states, in order.
    pub states: Vec<State>,
    /// The printings, in order.
    pub printings: Vec<Printing>,
    /// The variants.
    pub variants: Vec<Variant>,
    /// Drawings, blocks, illustrations.
    pub pictures: Vec<Picture>,
    /// The photograph that others are aligned to.
    pub reference_picture: Option<Placed<PictureKey>>,
    /// Pairs or groups of impressions to show together.
    pub comparisons: Vec<Comparison>,
    /// Its identifiers elsewhere.
    pub ids: Vec<OtherId>,
    /// Whether it is accepted, doubtful, rejected or withdrawn.
    pub standing: RecordStanding,
    /// The commentary.
    pub commentary: Option<Note>,
    /// Its impressions, by number.
    pub impressions: BTreeMap<u32, Impression>,
    /// The sheets that are counted and not shown, in place of its unpublished impressions. Only
    /// [`super::public`] makes them; a design as it was read has none.
    pub counted_only: Vec<CountedSheet>,
    /// Where it is recorded.
    pub place: Place,
}

impl Design {
    /// A design of which nothing is recorded but its key, at `place`.
    #[must_use]
    pub fn blank(key: &Key, place: Place) -> Design {
        Design {
            key: key.clone(),
            number: key.to_string(),
            number_place: place,
            sort: None,
            titles: Vec::new(),
            date: Statements::default(),
            makers: Vec::new(),
            technique: Vec::new(),
            support: Vec::new(),
            series: Vec::new(),
            subjects: Vec::new(),
            related: Vec::new(),
            known_from: Vec::new(),
            size: Sizes::default(),
            matrices: Vec::new(),
            literature: Vec::new(),
            points: Vec::new(),
            states: Vec::new(),
            printings: Vec::new(),
            variants: Vec::new(),
            pictures: Vec::new(),
            reference_picture: None,
            comparisons: Vec::new(),
            ids: Vec::new(),
            standing: RecordStanding::default(),
            commentary: None,
            impressions: BTreeMap::new(),
            counted_only: Vec::new(),
            place,
        }
    }

    /// The number of a sheet as readers cite it, with the design's own: "R 1.2".
    #[must_use]
    pub fn sheet_number(&self, sheet: &Impression) -> String {
        format!("{}.{}", self.number, sheet.key.number)
    }

    /// How a sheet of it was made: as its own record says, else as that of the design.
    #[must_use]
    pub fn technique_of<'a>(&'a self, sheet: &'a Impression) -> &'a [Placed<Key>] {
        if sheet.technique.is_empty() {
            &self.technique
        } else {
            &sheet.technique
        }
    }

    /// A point, by key.
    #[must_use]
    pub fn point(&self, key: &Key) -> Option<&Point> {
        self.points.iter().find(|p| p.key.value == *key)
    }

    /// A comparison, by its place in the record.
    #[must_use]
    pub fn comparison(&self, number: usize) -> Option<&Comparison> {
        self.comparisons.iter().find(|c| c.number == number)
    }

    /// A state, by key.
    #[must_use]
    pub fn state(&self, key: &Key) -> Option<&State> {
        self.states.iter().find(|s| s.key.value == *key)
    }

    /// A printing, by key.
    #[must_use]
    pub fn printing(&self, key: &Key) -> Option<&Printing> {
        self.printings.iter().find(|p| p.key.value == *key)
    }

    /// A variant, by key.
    #[must_use]
    pub fn variant(&self, key: &Key) -> Option<&Variant> {
        self.variants.iter().find(|v| v.key.value == *key)
    }

    /// A matrix, by key.
    #[must_use]
    pub fn matrix(&self, key: &Key) -> Option<&Matrix> {
        self.matrices.iter().find(|m| m.key.value == *key)
    }

    /// The title readers see first: the usual one, else the first.
    #[must_use]
    pub fn title(&self) -> Option<&Title> {
        self.titles
            .iter()
            .find(|t| t.kind == TitleKind::Usual)
            .or_else(|| self.titles.first())
    }

    /// The states that are not withdrawn, in order.
    pub fn standing_states(&self) -> impl Iterator<Item = &State> {
        self.states.iter().filter(|s| !s.standing.is_withdrawn())
    }

    /// The printings that are not withdrawn, in order.
    pub fn standing_printings(&self) -> impl Iterator<Item = &Printing> {
        self.printings.iter().filter(|p| !p.standing.is_withdrawn())
    }

    /// Whether a sheet of it can be identified: there are states or printings to choose from.
    #[must_use]
    pub fn has_choice(&self) -> bool {
        self.standing_states().next().is_some() || self.standing_printings().next().is_some()
    }
}

/// A title.
#[derive(Clone, Debug, PartialEq)]
pub struct Title {
    /// Its text.
    pub text: Placed<String>,
    /// Its language and script, BCP 47.
    pub lang: Option<Placed<String>>,
    /// Its kind.
    pub kind: TitleKind,
    /// Supplied by the catalogue; printed in brackets.
    pub supplied: bool,
    /// Where it comes from.
    pub claim: Claim,
}

/// Somebody who made the design or a matrix.
#[derive(Clone, Debug, PartialEq)]
pub struct Maker {
    /// The person's key.
    pub person: Placed<Key>,
    /// In which role.
    pub role: Option<Placed<Key>>,
    /// The source and certainty of the statement.
    pub claim: Claim,
}

/// A related design.
#[derive(Clone, Debug, PartialEq)]
pub struct Related {
    /// Which.
    pub design: Placed<Key>,
    /// The relation: a key of the vocabulary of relations.
    pub how: Option<Placed<Key>>,
}

/// A block, plate, stone or screen.
#[derive(Clone, Debug, PartialEq)]
pub struct Matrix {
    /// Its key.
    pub key: Placed<Key>,
    /// Its kind.
    pub kind: Option<MatrixKind>,
    /// Its material.
    pub material: Option<String>,
    /// The parts of the image it prints: "the sky and the water".
    pub carries: Option<String>,
    /// The colour it is printed in.
    pub colour: Option<String>,
    /// The size of the block, plate, stone or screen itself.
    pub size: Statements<Size>,
    /// Its number with the holder that has it.
    pub accession: Option<Placed<String>>,
    /// The only variants it is used in; empty: it is used in all.
    pub only_in: Vec<Placed<Key>>,
    /// Its fate and present place.
    pub now: Option<MatrixNow>,
    /// Where it is recorded.
    pub place: Place,
}

/// The fate of a matrix, and its present holder.
#[derive(Clone, Debug, PartialEq)]
pub struct MatrixNow {
    /// Its fate.
    pub state: Placed<MatrixFate>,
    /// The holder that has it.
    pub holder: Option<Placed<Key>>,
    /// When that happened (when it was destroyed or cancelled).
    pub date: Option<Placed<Date>>,
}

/// Impressions to show together.
#[derive(Clone, Debug, PartialEq)]
pub struct Comparison {
    /// Its place in the record, from 1, which is part of its address. A comparison that is not published keeps the
    /// places of the others as they are.
    pub number: usize,
    /// The impressions; two to four.
    pub of: Vec<Placed<ImpressionKey>>,
    /// Why.
    pub why: Option<String>,
    /// Where it is recorded.
    pub place: Place,
}
