//! A cell read as what its column holds.
//!
//! In: what the column holds, the cell, and what the column says of it ([`CellContext`]). Out: a [`CellReading`]: the
//! facts, the words left over, what is doubtful. Cells of columns that no grammar reads (condition, provenance, remarks)
//! are texts, kept as they are.

use std::sync::Arc;

use super::columns::Holds;
use super::facts::{DatedAct, Facts, GivenMaker, GivenSize, GivenTitle, shared, shared_credit};
use super::reading::credit::Credit;
use super::reading::dates::{Act, DateStatement};
use super::reading::makers::NamedMaker;
use super::reading::media::Medium;
use super::reading::numbering::Numbering;
use super::reading::sizes::{Assumed, Length, Measured, Measurement};
use super::reading::states::CatalogueSaid;
use super::reading::titles::TitleSaid;
use super::reading::words::Words;
use super::reading::{
    Doubt, Lexicon, Reading, choices, credit, dates, makers, media, numbering, sightings, sizes,
    states, titles,
};
use crate::model::certainty::Certainty;
use crate::model::edtf::Date;
use crate::model::vocabulary::List;
use crate::read::values::identifiers;

/// What the column says of its cells.
#[derive(Clone, Copy, Debug)]
pub struct CellContext<'c> {
    /// What sizes in the column need not say.
    pub assumed: Assumed,
    /// The terms of the vocabularies.
    pub lexicon: &'c Lexicon,
}

/// What a cell says.
#[derive(Clone, Debug, PartialEq)]
pub struct CellReading {
    /// What was understood.
    pub facts: Facts,
    /// The words left over, as the cell writes them.
    pub left: Vec<String>,
    /// What is doubtful.
    pub doubts: Vec<Doubt>,
    /// How sure the reading is; `None` where nothing was understood.
    pub sure: Option<Certainty>,
}

impl CellReading {
    /// How much of the cell was understood.
    #[must_use]
    pub fn extent(&self) -> Extent {
        match (self.sure, self.left.is_empty()) {
            (None, _) => Extent::Unread,
            (Some(_), true) => Extent::Whole,
            (Some(_), false) => Extent::Part,
        }
    }
}

/// How much of a cell was understood.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Extent {
    /// Every word.
    Whole,
    /// Some words; others are left over.
    Part,
    /// Nothing.
    Unread,
}

/// Whether the cells of such a column are read, by a grammar or as the name of a record; those of others are kept as they
/// are.
#[must_use]
pub fn is_read_by_grammar(holds: Holds) -> bool {
    matches!(
        holds,
        Holds::Title
            | Holds::Maker
            | Holds::Date
            | Holds::Medium
            | Holds::Paper
            | Holds::Dimensions
            | Holds::Credit
            | Holds::Acquisition
            | Holds::State
            | Holds::CatalogueNumber
            | Holds::Numbering
            | Holds::Kind
            | Holds::Holder
            | Holds::Series
            | Holds::Seen
            | Holds::SeenBy
            | Holds::Basis
            | Holds::Web
            | Holds::Rights
    )
}

/// Reads a cell. Heights and widths, which need their neighbours, are read with the row, not here.
#[must_use]
pub fn cell(holds: Holds, text: &str, context: CellContext<'_>) -> CellReading {
    let CellContext { assumed, lexicon } = context;
    match holds {
        Holds::Title => told(text, titles::title(text, lexicon), title_facts),
        Holds::Maker => told(text, makers::makers(text, lexicon), |named| Facts {
            makers: shared(makers_of(named)),
            ..Facts::default()
        }),
        Holds::Date => told(text, dates::dates(text), |statements| Facts {
            dates: shared(dates_of(statements)),
            ..Facts::default()
        }),
        Holds::Medium | Holds::Paper => told(text, media::medium(text, lexicon), |medium| {
            medium_facts(&medium)
        }),
        Holds::Dimensions => told(text, sizes::sizes(text, assumed), |found| Facts {
            sizes: shared(together(
                found
                    .iter()
                    .flat_map(|measurement| sizes_of(measurement, text)),
                |size| size.of,
            )),
            ..Facts::default()
        }),
        Holds::Credit => told(text, credit::credit(text, lexicon), |credit| Facts {
            credit: shared_credit(credit),
            ..Facts::default()
        }),
        Holds::Acquisition => named(text, |facts| {
            let words = Words::of(text);
            let term = lexicon.at(List::Transfers, &words, 0);
            let whole = term.filter(|term| term.end == words.len());
            facts.credit = shared_credit(Credit {
                how: whole.map(|term| term.is.key),
                ..Credit::default()
            });
        }),
        Holds::Numbering | Holds::Kind => told(text, numbering::numbering(text, lexicon), |said| {
            numbering_facts(&said)
        }),
        Holds::State | Holds::CatalogueNumber => {
            let reading = if holds == Holds::State {
                states::states(text)
            } else {
                states::catalogue_numbers(text)
            };
            told(text, reading, |references| Facts {
                references: shared(references),
                ..Facts::default()
            })
        }
        Holds::Holder => named(text, |facts| {
            facts.holder = lexicon.names.holders.named(text);
        }),
        Holds::Series => named(text, |facts| {
            facts.series = lexicon.names.series.named(text);
        }),
        Holds::SeenBy => named(text, |facts| {
            let names = &lexicon.names;
            let person = names.people.named(text);
            facts.seen_by = person.or_else(|| names.holders.named(text));
        }),
        Holds::Seen => {
            let reading = dates::dates(text);
            if let Some(seen) = one_date(&reading.is) {
                told(text, reading, |_| Facts {
                    seen: Some(Arc::new(seen)),
                    ..Facts::default()
                })
            } else {
                named(text, |_| {})
            }
        }
        Holds::Basis => named(text, |facts| facts.basis = sightings::basis(text)),
        Holds::Web => named(text, |facts| {
            facts.web = identifiers::web(text.trim()).ok();
        }),
        Holds::Rights => named(text, |facts| facts.rights = sightings::rights(text)),
        _ => as_text(holds, text),
    }
}

/// A cell that is one name or word: it is read whole or not at all.
fn named(text: &str, find: impl FnOnce(&mut Facts)) -> CellReading {
    let mut facts = Facts::default();
    find(&mut facts);
    let is_found = facts != Facts::default();
    CellReading {
        facts,
        left: if is_found || text.trim().is_empty() {
            Vec::new()
        } else {
            vec![text.trim().to_owned()]
        },
        doubts: Vec::new(),
        sure: is_found.then_some(Certainty::Certain),
    }
}

/// The date of a cell that tells one, without a word for what happened.
fn one_date(statements: &[DateStatement]) -> Option<Date> {
    match statements {
        [only] if only.act == Act::Created => only.when.date().cloned(),
        _ => None,
    }
}

/// The dates, those of one act together.
fn dates_of(statements: Vec<DateStatement>) -> Vec<DatedAct> {
    let dated = statements.into_iter().map(|said| DatedAct {
        act: said.act,
        when: said.when,
    });
    together(dated, |dated| dated.act)
}

/// The items with those of one kind behind the first of it. Records and `values.toml` name a kind once.
fn together<T, K: PartialEq>(items: impl Iterator<Item = T>, kind: impl Fn(&T) -> K) -> Vec<T> {
    let mut all: Vec<T> = Vec::new();
    for item in items {
        let last = all.iter().rposition(|other| kind(other) == kind(&item));
        all.insert(last.map_or(all.len(), |last| last + 1), item);
    }
    all
}

/// A cell kept as it is.
fn as_text(holds: Holds, text: &str) -> CellReading {
    let mut facts = Facts::default();
    match holds {
        // "14 – The Old Lock": what stands behind the number is there to read.
        Holds::Design => facts.own.design = Some(choices::design(text).to_owned()),
        Holds::OwnState => facts.own.state = Some(text.to_owned()),
        Holds::Printing => facts.own.printing = Some(text.to_owned()),
        _ => facts.texts.add(holds, Arc::from(text)),
    }
    CellReading {
        facts,
        left: Vec::new(),
        doubts: Vec::new(),
        sure: Some(Certainty::Certain),
    }
}

fn told<T>(text: &str, reading: Reading<T>, facts: impl FnOnce(T) -> Facts) -> CellReading {
    let mut left: Vec<String> = reading
        .left_over(text)
        .into_iter()
        .map(str::to_owned)
        .collect();
    let certainty = reading.certainty();
    let doubts = reading.doubts;
    let facts = facts(reading.is);
    let is_nothing = facts == Facts::default();
    // A size without a unit was read word by word and says nothing.
    if is_nothing && left.is_empty() && !doubts.is_empty() {
        left.push(text.trim().to_owned());
    }
    CellReading {
        sure: (!is_nothing || left.is_empty()).then_some(certainty),
        facts,
        left,
        doubts,
    }
}

fn makers_of(named: Vec<NamedMaker>) -> Vec<GivenMaker> {
    let makers = named.into_iter().map(|maker| GivenMaker {
        name: maker.name,
        role: maker.role,
    });
    makers.collect()
}

fn title_facts(said: TitleSaid) -> Facts {
    let references = said.state.map(|state| CatalogueSaid {
        state: Some(state),
        ..CatalogueSaid::default()
    });
    Facts {
        title: (!said.title.is_empty()).then(|| {
            Arc::new(GivenTitle {
                text: said.title,
                is_supplied: said.is_supplied,
            })
        }),
        makers: shared(makers_of(said.makers)),
        kind: said.kind,
        references: shared(references),
        ..Facts::default()
    }
}

fn medium_facts(medium: &Medium) -> Facts {
    Facts {
        techniques: medium.techniques.clone(),
        papers: medium.papers.clone(),
        colours: medium.colours,
        matrices: medium.matrices,
        ..Facts::default()
    }
}

fn numbering_facts(said: &Numbering) -> Facts {
    Facts {
        numbering: said.as_recorded(),
        edition: said.edition,
        kind: said.kind.clone(),
        ..Facts::default()
    }
}

/// One size for each thing that a measurement is said to be of.
fn sizes_of(measurement: &Measurement, text: &str) -> Vec<GivenSize> {
    let (Some(height), Some(width)) = (measurement.height, measurement.width) else {
        return Vec::new();
    };
    let unsaid = [Measured::Unsaid];
    let of: &[Measured] = if measurement.of.is_empty() {
        &unsaid
    } else {
        &measurement.of
    };
    let said = said_of(measurement, text);
    let sizes = of.iter().map(|of| GivenSize {
        of: *of,
        height,
        width,
        is_sight: measurement.is_sight,
        said: said.clone(),
    });
    sizes.collect()
}

/// The words that a measurement was taken from. Its place is that of the lengths, which says the unit too.
fn said_of(measurement: &Measurement, text: &str) -> String {
    let said = text.get(measurement.at.clone()).unwrap_or(text);
    said.trim().to_owned()
}

/// A size from a column of heights and a column of widths.
#[must_use]
pub fn size_of_columns(
    of: Option<Measured>,
    height: Length,
    width: Length,
    said: String,
) -> GivenSize {
    GivenSize {
        of: of.unwrap_or(Measured::Unsaid),
        height,
        width,
        is_sight: false,
        said,
    }
}
