//! What was understood of a cell or a row, in the words of the records.
//!
//! In: the readings of the grammars (`reading`), or what an editor wrote in `values.toml`. Out: [`Facts`]. The facts of a
//! row are those of its cells together ([`Facts::add`]); where two cells say different things, the earlier stays and the
//! difference is told.
//!
//! | file | subject |
//! |---|---|
//! | `fact` | one thing that a cell says |
//! | `texts` | the texts of cells that no grammar reads |
//! | `adding` | the facts of several cells together, and what contradicts |

mod adding;
mod fact;
mod texts;

pub use adding::Contradiction;
pub use fact::Fact;
pub use texts::HeldTexts;

use std::sync::Arc;

use super::reading::credit::Credit;
use super::reading::dates::{Act, When};
use super::reading::sizes::{Length, Measured};
use super::reading::states::CatalogueSaid;
use crate::model::certainty::Basis;
use crate::model::edtf::Date;
use crate::model::key::Key;
use crate::model::size::{Mm, Size};

/// What was understood. What a value says is shared by the rows that have it.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Facts {
    /// The title.
    pub title: Option<Arc<GivenTitle>>,
    /// Dates with what happened then, in the order of the cells.
    pub dates: Vec<Arc<DatedAct>>,
    /// Sizes, in the order of the cells.
    pub sizes: Vec<Arc<GivenSize>>,
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
    pub makers: Vec<Arc<GivenMaker>>,
    /// How the holder acquired it, from whom, through whom, when ([`Facts::credit`]).
    pub credit: Option<Arc<Credit>>,
    /// Numbers and states in earlier catalogues.
    pub references: Vec<Arc<CatalogueSaid>>,
    /// The design, state and printing in this catalogue, as the cells name them.
    pub own: OwnNames,
    /// Who keeps it.
    pub holder: Option<Key>,
    /// The series to which it belongs.
    pub series: Option<Key>,
    /// When the sheet was seen.
    pub seen: Option<Arc<Date>>,
    /// Who saw it: a person or holder.
    pub seen_by: Option<Key>,
    /// How it was seen.
    pub basis: Option<Basis>,
    /// The holder's own page: an address on the web.
    pub web: Option<String>,
    /// The rights in the picture: an identifier, or the address of a statement.
    pub rights: Option<String>,
    /// What the cells of other columns say, as they say it.
    pub texts: HeldTexts,
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
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
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

/// Things that rows may share.
pub fn shared<T>(things: impl IntoIterator<Item = T>) -> Vec<Arc<T>> {
    things.into_iter().map(Arc::new).collect()
}

/// An acquisition that rows may share; `None` where nothing is told of it.
pub fn shared_credit(credit: Credit) -> Option<Arc<Credit>> {
    (credit != Credit::default()).then(|| Arc::new(credit))
}

impl Facts {
    /// Gives back the memory that lists hold beside their items: a file may have 50,000 rows.
    pub fn shrink(&mut self) {
        self.dates.shrink_to_fit();
        self.sizes.shrink_to_fit();
        self.techniques.shrink_to_fit();
        self.papers.shrink_to_fit();
        self.makers.shrink_to_fit();
        self.references.shrink_to_fit();
        self.texts.shrink();
    }

    /// How the holder acquired it; nothing where nothing is told.
    #[must_use]
    pub fn credit(&self) -> &Credit {
        static NOTHING: Credit = Credit {
            how: None,
            from: None,
            through: None,
            year: None,
            is_joint: false,
        };
        self.credit.as_deref().unwrap_or(&NOTHING)
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
        sizes.next().is_none().then_some(&**first)
    }
}
