//! Computes results from the records of a catalogue: order, numerals, agreement, counts, concordance.
//!
//! Pure functions over the model: no disk, no clock, and the same result at every run and for any
//! number of threads. Exact definitions of all that is computed: `docs/definitions.md`.
//!
//! In: a catalogue. Out: [`Studies`] of all that is in it. The audit and the commands study everything recorded. Pages
//! and exports get [`PublishedStudies`], which are computed from the catalogue in which everything private acts as
//! absent ([`Concealed`]).
//!
//! | subject | file or folder |
//! |---|---|
//! | order and names | [`order`] readers' order · [`numerals`] of states · [`filing`] of bare names |
//! | identification of a sheet | [`identification`]: candidates, table, next point, separability, agreement, couplets |
//! | how many sheets | [`census`]: groups, counts, crossings, firmness, editions, occasions, survival |
//! | the history of sheets | [`history`]: printing, ownership, 1933 to 1945, shared marks |
//! | the order of printing | [`printing_order`]: from wear, states and dates |
//! | which records are one sheet | [`same_sheet`]; [`joined`] records and their page |
//! | measurements | [`sizes`] of states and printings, [`tolerance`], [`size_slip`]: exchanged sides, wrong units |
//! | what readers type to find a record | [`search`]: folding, words, the index and its shards |
//! | what editions issued, and what each changed | [`issued`] |
//! | what a reference means | [`resolve`]: names, numbers and keys, and the readings of a reference |
//! | the records listed another way | [`concordance`], [`opinions`], [`chronology`], [`back_links`], [`tellings`] of documents, [`series`], [`term_uses`] |

use std::collections::BTreeMap;

use rayon::prelude::*;

use keyblock_model::catalogue::Catalogue;
use keyblock_model::design::Design;
use keyblock_model::key::{ImpressionKey, Key};
use keyblock_model::public::Concealed;
use keyblock_model::series_place::SeriesRef;

pub mod back_links;
pub mod census;
pub mod chronology;
pub mod concordance;
pub mod filing;
pub mod history;
pub mod identification;
pub mod index;
pub mod issued;
pub mod joined;
pub mod numerals;
pub mod opinions;
pub mod order;
pub mod printing_order;
pub mod resolve;
pub mod same_sheet;
pub mod search;
pub mod series;
pub mod size_slip;
pub mod sizes;
pub mod tellings;
pub mod term_uses;
pub mod tolerance;

pub use census::{clique_cover, crossing, editions, firmness, linked, occasions, survival};
pub use history::{dealings, diligence, marks, ownership, printing_date};
pub use identification::{
    agree, allowed, assumptions, candidates, changes, couplets, evidence, grades, identify,
    next_point, printing_record, remaining, scale, separate, settle, table,
};

use agree::Contradiction;
use back_links::BackLinks;
use census::{Census, DesignScope, Groups};
use changes::StateChanges;
use chronology::Event;
use concordance::Concordance;
use diligence::DiligenceYears;
use editions::EditionStudy;
use firmness::FirmnessOfSheets;
use joined::JoinedSheets;
use linked::ImpressionGroup;
use marks::SharedMark;
use numerals::Numeral;
use occasions::OccasionsByDecade;
use order::Order;
use printing_order::{PrintingOrder, UnlikeWear};
use separate::Separability;
use series::SeriesStudy;
use survival::Survival;
use table::DiagnosticTable;
use tellings::Tellings;

/// Everything that is computed from a catalogue.
///
/// ```
/// # mod literal { include!(concat!(env!("CARGO_MANIFEST_DIR"), "/../../tests/doc/catalogue.rs")); }
/// # use literal::{catalogue, key};
/// # use keyblock::study::Studies;
/// let catalogue = catalogue(r#"
/// -- records/designs/1/design.toml
/// titles = [{ text = "The Ferry" }]
/// states = [{ key = "dark" }, { key = "moonlit" }]
/// "#);
/// let studies = Studies::of(&catalogue);
/// let numeral = studies.numeral(&key("1"), &"moonlit".parse().unwrap());
/// assert_eq!(numeral.unwrap().to_string(), "ii/ii");
/// ```
#[derive(Clone, Debug)]
pub struct Studies {
    /// The designs in readers' order.
    pub order: Order,
    /// The study of each design.
    pub designs: BTreeMap<Key, DesignStudy>,
    /// Which records are one sheet.
    pub groups: Groups,
    /// The page of each sheet that has several records.
    pub joined: JoinedSheets,
    /// The census of all designs, rejected and withdrawn ones included.
    pub census: Census,
    /// The census of the designs that are neither rejected nor withdrawn.
    pub accepted: Census,
    /// Each series: its designs, what is missing, its sheets.
    pub series: BTreeMap<SeriesRef, SeriesStudy>,
    /// When the sheets of the accepted designs were met.
    pub met: OccasionsByDecade,
    /// Impressions on one sheet of paper.
    pub papers: Vec<ImpressionGroup>,
    /// Sheets of one set.
    pub sets: Vec<ImpressionGroup>,
    /// The concordance with earlier literature.
    pub concordance: Concordance,
    /// The records that mention each record.
    pub back_links: BackLinks,
    /// What documents tell, by what they tell it of.
    pub tellings: Tellings,
    /// The dated events, in order.
    pub chronology: Vec<Event>,
    /// The marks that several people used.
    pub shared_marks: Vec<SharedMark>,
    /// The recorded owners from 1933 to 1945 of each sheet that may have existed then.
    pub diligence: BTreeMap<ImpressionKey, DiligenceYears>,
}

/// The results computed from one design.
#[derive(Clone, Debug, PartialEq)]
pub struct DesignStudy {
    /// The numeral of each state that is not withdrawn.
    pub numerals: BTreeMap<Key, Numeral>,
    /// How each state that is not withdrawn differs from those it follows.
    pub changes: BTreeMap<Key, Vec<StateChanges>>,
    /// The candidates, and what each allows at each point.
    pub table: DiagnosticTable,
    /// Which candidates the points separate.
    pub separability: Separability,
    /// The order of printing, from wear, states and dates.
    pub printing_order: PrintingOrder,
    /// The sheets of one number and unlike wear.
    pub unlike_wear: Vec<UnlikeWear>,
    /// The impressions, by number, whose observations contradict their identification.
    pub contradictions: BTreeMap<u32, Contradiction>,
    /// The census.
    pub census: Census,
    /// Which sheets are not identified firmly.
    pub firmness: FirmnessOfSheets,
    /// How many sheets could have been met.
    pub survival: Survival,
    /// When its sheets were met.
    pub met: OccasionsByDecade,
    /// The declared editions, by printing in the record's order.
    pub editions: Vec<EditionStudy>,
}

impl Studies {
    /// Computes everything.
    #[must_use]
    pub fn of(catalogue: &Catalogue) -> Studies {
        let order = Order::of(catalogue);
        let groups = Groups::of(catalogue);
        let all: Vec<&Design> = catalogue.designs.values().collect();
        let of_design = |design: &&Design| {
            let study = DesignStudy::of(catalogue, &groups, design);
            (design.key.clone(), study)
        };
        // These are independent of each other and run in parallel.
        let ((designs, ([census, accepted], series)), (links, diligence)) = rayon::join(
            || {
                rayon::join(
                    || all.par_iter().map(of_design).collect(),
                    || {
                        rayon::join(
                            || {
                                [DesignScope::All, DesignScope::Accepted].map(|designs| {
                                    census::of_everything(catalogue, &groups, designs)
                                })
                            },
                            || series::all(catalogue, &groups, &order),
                        )
                    },
                )
            },
            || {
                rayon::join(
                    || BackLinks::of(catalogue, &order),
                    || diligence::of_catalogue(catalogue, &groups),
                )
            },
        );
        let met = census::counted_together(catalogue, DesignScope::Accepted);
        let met = met.flat_map(|design| occasions::by_sheet(catalogue, &groups, design));
        Studies {
            census,
            accepted,
            series,
            met: occasions::over_time(&met.collect::<Vec<_>>()),
            papers: linked::on_one_paper(catalogue),
            sets: linked::sets(catalogue),
            concordance: Concordance::of(catalogue, &order),
            back_links: links,
            tellings: Tellings::of(catalogue),
            chronology: chronology::chronology(catalogue, &order),
            shared_marks: marks::shared(catalogue),
            diligence,
            designs,
            joined: JoinedSheets::of(catalogue, &groups),
            groups,
            order,
        }
    }

    /// The numeral of a state.
    #[must_use]
    pub fn numeral(&self, design: &Key, state: &Key) -> Option<Numeral> {
        self.designs.get(design)?.numerals.get(state).copied()
    }
}

/// The studies of what may be published: all that pages and exports get.
#[derive(Clone, Debug)]
pub struct PublishedStudies(Studies);

impl PublishedStudies {
    /// Computes everything from a concealed catalogue. `of_everything` are the studies of the same catalogue
    /// before it was concealed; where nothing was concealed the two are the same, and nothing is computed.
    #[must_use]
    pub fn of(concealed: &Concealed, of_everything: Studies) -> PublishedStudies {
        if concealed.is_whole() {
            PublishedStudies(of_everything)
        } else {
            PublishedStudies(Studies::of(concealed))
        }
    }
}

impl std::ops::Deref for PublishedStudies {
    type Target = Studies;

    fn deref(&self) -> &Studies {
        &self.0
    }
}

impl DesignStudy {
    /// Computes everything of one design.
    #[must_use]
    pub fn of(catalogue: &Catalogue, groups: &Groups, design: &Design) -> DesignStudy {
        let table = DiagnosticTable::of(design);
        let census = census::of_design(catalogue, groups, design);
        let met = occasions::by_sheet(catalogue, groups, design);
        let contradictions = design.impressions.iter();
        let contradictions: BTreeMap<u32, Contradiction> = contradictions
            .filter_map(|(n, i)| Some((*n, agree::contradiction(design, i)?)))
            .collect();
        let is_contradicted = |number| contradictions.contains_key(&number);
        DesignStudy {
            firmness: FirmnessOfSheets::of(groups, design, is_contradicted),
            separability: separate::separability(&table),
            table,
            printing_order: printing_order::printing_order(groups, design),
            unlike_wear: printing_order::unlike_wear(groups, design),
            numerals: numerals::numerals(design),
            changes: design
                .standing_states()
                .map(|s| (s.key.value.clone(), changes::changes(design, s)))
                .collect(),
            contradictions,
            survival: Survival::of(design, census.sheets, &met),
            met: occasions::over_time(&met),
            editions: editions::editions(groups, design, &census),
            census,
        }
    }
}
