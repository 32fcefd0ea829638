//! What was understood of a cell or a row, in the words of the records.
//!
//! In: the readings of the grammars (`reading`), or what an editor wrote in `values.toml`. Out: [`Facts`]. The facts of a
//! row are those of its cells together ([`Facts::add`]); where two cells say different things, the earlier stays and the
//! difference is told.

use std::collections::BTreeMap;

use super::columns::Holds;
use super::reading::credit::Credit;
use super::reading::dates::{Act, When};
use super::reading::sizes::{Length, Measured};
use super::reading::states::CatalogueSaid;
use crate::model::certainty::Basis;
use crate::model::edtf::Date;
use crate::model::key::Key;
use crate::model::size::{Mm, Size};

/// What was understood.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Facts {
    /// The title.
    pub title: Option<GivenTitle>,
    /// Dates with what happened then, in the order of the cells.
    pub dates: Vec<DatedAct>,
    /// Sizes, in the order of the cells.
    pub sizes: Vec<GivenSize>,
    /// Techniques, each once.
    pub techniques: Vec<Key>,
    /// Papers, the one printed on first.
    pub papers: Vec<Key>,
    /// In how many colours it is printed.
    pub colours: Option<u32>,
    /// From how many blocks, plates, stones or screens.
    pub matrices: Option<u32>,
    /// The number as records have it: `12/50`.
    pub numbering: Option<String>,
    /// The declared size of the edition.
    pub edition: Option<u32>,
    /// The kind of impression.
    pub kind: Option<Key>,
    /// People with their roles.
    pub makers: Vec<GivenMaker>,
    /// How the holder acquired it, from whom, through whom, when.
    pub credit: Credit,
    /// Numbers and states in earlier catalogues.
    pub references: Vec<CatalogueSaid>,
    /// The design, state and printing in this catalogue, as the cells name them.
    pub own: OwnNames,
    /// Who keeps it.
    pub holder: Option<Key>,
    /// The series to which it belongs.
    pub series: Option<Key>,
    /// When the sheet was seen.
    pub seen: Option<Date>,
    /// Who saw it: a person or holder.
    pub seen_by: Option<Key>,
    /// How it was seen.
    pub basis: Option<Basis>,
    /// The holder's own page: an address on the web.
    pub web: Option<String>,
    /// The rights in the picture: an identifier, or the address of a statement.
    pub rights: Option<String>,
    /// What the cells of other columns say, as they say it.
    pub texts: BTreeMap<Holds, String>,
}

/// A title.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct GivenTitle {
    /// Its text.
    pub text: String,
    /// Whether a cataloguer supplied it.
    pub is_supplied: bool,
}

/// What happened, and when.
#[derive(Clone, Debug, PartialEq)]
pub struct DatedAct {
    /// What happened.
    pub act: Act,
    /// When.
    pub when: When,
}

/// A size of something.
#[derive(Clone, Debug, PartialEq)]
pub struct GivenSize {
    /// What was measured.
    pub of: Measured,
    /// The height.
    pub height: Length,
    /// The width.
    pub width: Length,
    /// Whether it was measured within a mount or frame.
    pub is_sight: bool,
    /// The words it was taken from.
    pub said: String,
}

impl GivenSize {
    /// The size as records have it; `None` where a length is none of a print.
    #[must_use]
    pub fn size(&self) -> Option<Size> {
        Some(Size {
            height: Mm::new(self.height.mm)?,
            width: Mm::new(self.width.mm)?,
        })
    }

    /// Whether two sizes may be one, within their rounding.
    #[must_use]
    pub fn agrees(&self, other: &GivenSize) -> bool {
        self.height.agrees(other.height) && self.width.agrees(other.width)
    }
}

/// A person with a role.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct GivenMaker {
    /// The name as written, without dates of life.
    pub name: String,
    /// The role: a key of the vocabulary.
    pub role: Key,
}

/// Names in this catalogue, as cells write them: numbers, numerals, names or keys.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct OwnNames {
    /// The design.
    pub design: Option<String>,
    /// The state.
    pub state: Option<String>,
    /// The printing.
    pub printing: Option<String>,
}

/// A fact of which two cells of one row say different things.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Contradiction {
    /// Two dates of one act.
    Date(Act),
    /// Two sizes of one thing.
    Size(Measured),
    /// Two numbers of the sheet.
    Numbering,
    /// Two sizes of the edition.
    Edition,
    /// Two kinds of impression.
    Kind,
    /// Two states by one catalogue.
    State,
    /// Two holders.
    Holder,
    /// Two series.
    Series,
    /// Two dates, people or ways of one sighting.
    Sighting,
    /// Two statements of the rights in the picture.
    Rights,
    /// Two ways, sources or years of an acquisition.
    Credit,
    /// Two numbers of colours or of blocks.
    Colours,
}

impl Facts {
    /// Adds the facts of a further cell, and says where it contradicts those that stand. What is certain of both is kept
    /// once; a further date, size, technique, paper, maker or reference is added.
    pub fn add(&mut self, other: Facts) -> Vec<Contradiction> {
        let mut found = Vec::new();
        if self.title.is_none() {
            self.title = other.title;
        }
        self.add_dates(other.dates, &mut found);
        self.add_sizes(other.sizes, &mut found);
        add_each(&mut self.techniques, other.techniques);
        add_each(&mut self.papers, other.papers);
        let mut first = |is_contradiction, what| {
            if is_contradiction {
                found.push(what);
            }
        };
        first(
            keep(&mut self.colours, other.colours) | keep(&mut self.matrices, other.matrices),
            Contradiction::Colours,
        );
        first(
            keep(&mut self.numbering, other.numbering),
            Contradiction::Numbering,
        );
        first(
            keep(&mut self.edition, other.edition),
            Contradiction::Edition,
        );
        first(keep(&mut self.kind, other.kind), Contradiction::Kind);
        first(keep(&mut self.holder, other.holder), Contradiction::Holder);
        first(keep(&mut self.series, other.series), Contradiction::Series);
        first(
            keep(&mut self.seen, other.seen)
                | keep(&mut self.seen_by, other.seen_by)
                | keep(&mut self.basis, other.basis),
            Contradiction::Sighting,
        );
        first(keep(&mut self.rights, other.rights), Contradiction::Rights);
        first(
            add_credit(&mut self.credit, other.credit),
            Contradiction::Credit,
        );
        add_each(&mut self.makers, other.makers);
        self.add_references(other.references, &mut found);
        // A holder may have two pages of one sheet; the first is taken.
        keep(&mut self.web, other.web);
        keep(&mut self.own.design, other.own.design);
        keep(&mut self.own.state, other.own.state);
        keep(&mut self.own.printing, other.own.printing);
        for (holds, text) in other.texts {
            let texts = self.texts.entry(holds).or_default();
            if !texts.is_empty() {
                texts.push_str("; ");
            }
            texts.push_str(&text);
        }
        found.sort_unstable();
        found.dedup();
        found
    }

    fn add_dates(&mut self, dates: Vec<DatedAct>, found: &mut Vec<Contradiction>) {
        for dated in dates {
            let mut same = self.dates.iter().filter(|known| known.act == dated.act);
            match same.next() {
                None => self.dates.push(dated),
                Some(known) if known.when == dated.when => {}
                Some(_) => {
                    found.push(Contradiction::Date(dated.act));
                    self.dates.push(dated);
                }
            }
        }
    }

    fn add_sizes(&mut self, sizes: Vec<GivenSize>, found: &mut Vec<Contradiction>) {
        for size in sizes {
            let mut same = self.sizes.iter().filter(|known| known.of == size.of);
            match same.next() {
                None => self.sizes.push(size),
                Some(known) if known.agrees(&size) => {}
                Some(_) => {
                    // Two sizes of which it is not said what was measured may be of two things.
                    if size.of != Measured::Unsaid {
                        found.push(Contradiction::Size(size.of));
                    }
                    self.sizes.push(size);
                }
            }
        }
    }

    fn add_references(&mut self, references: Vec<CatalogueSaid>, found: &mut Vec<Contradiction>) {
        for said in references {
            let is_same_work = |known: &&mut CatalogueSaid| {
                (known.author == said.author || known.author.is_none() || said.author.is_none())
                    && (known.number == said.number
                        || known.number.is_none()
                        || said.number.is_none())
            };
            match self.references.iter_mut().find(is_same_work) {
                None => self.references.push(said),
                Some(known) => {
                    keep(&mut known.author, said.author);
                    keep(&mut known.number, said.number);
                    if keep(&mut known.state, said.state) {
                        found.push(Contradiction::State);
                    }
                    known.is_not_in |= said.is_not_in;
                }
            }
        }
    }

    /// Gives back the memory that lists hold beside their items: a file may have 50,000 rows.
    pub fn shrink(&mut self) {
        self.dates.shrink_to_fit();
        self.sizes.shrink_to_fit();
        self.techniques.shrink_to_fit();
        self.papers.shrink_to_fit();
        self.makers.shrink_to_fit();
        self.references.shrink_to_fit();
    }

    /// The date of the design, where exactly one is told.
    #[must_use]
    pub fn date_of(&self, act: Act) -> Option<&When> {
        let mut dates = self.dates.iter().filter(|dated| dated.act == act);
        let first = dates.next()?;
        dates.next().is_none().then_some(&first.when)
    }

    /// The size of one thing, where exactly one is told.
    #[must_use]
    pub fn size_of(&self, of: Measured) -> Option<&GivenSize> {
        let mut sizes = self.sizes.iter().filter(|size| size.of == of);
        let first = sizes.next()?;
        sizes.next().is_none().then_some(first)
    }
}

/// Keeps the value that stands, or else takes the other. Gives whether both are there and differ.
fn keep<T: PartialEq>(known: &mut Option<T>, other: Option<T>) -> bool {
    match (&known, other) {
        (Some(known), Some(other)) => *known != other,
        (None, other) => {
            *known = other;
            false
        }
        (Some(_), None) => false,
    }
}

fn add_each<T: PartialEq>(known: &mut Vec<T>, others: Vec<T>) {
    for other in others {
        if !known.contains(&other) {
            known.push(other);
        }
    }
}

fn add_credit(known: &mut Credit, other: Credit) -> bool {
    known.is_joint |= other.is_joint;
    keep(&mut known.how, other.how)
        | keep(&mut known.from, other.from)
        | keep(&mut known.through, other.through)
        | keep(&mut known.year, other.year)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::model::edtf::Date;

    fn date(act: Act, date: &str) -> DatedAct {
        DatedAct {
            act,
            when: When::Date(Date::parse(date).unwrap()),
        }
    }

    #[test]
    fn cells_of_a_row_are_taken_together_and_what_differs_is_told() {
        let mut row = Facts {
            numbering: Some("12/50".to_owned()),
            dates: vec![date(Act::Created, "1912")],
            ..Facts::default()
        };
        let found = row.add(Facts {
            edition: Some(50),
            numbering: Some("12/50".to_owned()),
            dates: vec![date(Act::Printed, "1925")],
            ..Facts::default()
        });
        assert_eq!(found, []);
        assert_eq!((row.edition, row.dates.len()), (Some(50), 2));
        let found = row.add(Facts {
            numbering: Some("13/50".to_owned()),
            dates: vec![date(Act::Created, "1913")],
            ..Facts::default()
        });
        assert_eq!(
            found,
            [Contradiction::Date(Act::Created), Contradiction::Numbering]
        );
        // The number that stood first stays; of the two dates none is chosen.
        assert_eq!(row.numbering.as_deref(), Some("12/50"));
        assert_eq!(row.date_of(Act::Created), None);
        assert!(row.date_of(Act::Printed).is_some());
    }
}
