//! Which records may be one sheet, with the reasons for and against.
//!
//! One sheet may have been seen at an exhibition, in a sale, at a dealer's and in a museum, and each time
//! have been given a record of its own. This study joins no records; it says which pairs to look at, and
//! why.
//!
//! A pair of records of one design is **suggested** where nothing excludes that they are one sheet and
//! there are more ties than contradictions; or, where nothing contradicts it, where there are at least two
//! reasons that few sheets of the design share. Features that many sheets share (state, paper, the size of
//! an edition) never suggest a pair; they are listed beside the reasons that do. The reasons and their
//! bearing are common practice, no source: `docs/trade.md, "Same sheet or two"`; exactly in
//! `docs/definitions.md, "Records that may be one sheet"`.
//!
//! In: the catalogue, private fields included. Out: [`RecordPair`]s, for editors only: no page is made from
//! them. Only records that share a distinctive fact (`ties`, and a size that no third has) are compared,
//! so that a design of hundreds of sheets costs little more than reading them.
//!
//! | file | subject |
//! |---|---|
//! | [`reason`] | the reasons for and against, as values; [`kind`] names each |
//! | `facts` | facts that hold for every design of the catalogue: public holders, makers, formulas |
//! | `days` | the first and last days on which a sheet is known |
//! | `texts` | texts made comparable |
//! | `possession` | who certainly had a sheet when |
//! | `ties` | the facts that two records may share word for word |
//! | `record` | a record made ready for comparing |
//! | `tie_index`, `size_index` | which sheets of a design share a tie or a size |
//! | `compare` | the comparisons of two records, one file for each subject |
//! | [`joined`] | joined records that contradict each other |
//! | `pairs` | which records are compared, and which pairs are suggested |
//!
//! Not here: which records are joined (`census`), and the words (`audit::same_sheet`).
//!
//! ```
//! # mod literal { include!(concat!(env!("CARGO_MANIFEST_DIR"), "/../../tests/doc/catalogue.rs")); }
//! # use literal::{catalogue, key};
//! # use keyblock::study::{census::Groups, same_sheet::{pairs, reason::Bearing}};
//! let catalogue = catalogue(r#"
//! -- records/designs/1/design.toml
//! titles = [{ text = "The Ferry" }]
//! states = [{ key = "only" }]
//! printings = [{ key = "late", kind = "posthumous", states = "all", edition = 50 }]
//! -- records/designs/1/impressions/1.toml
//! status = "located"
//! identified = { printing = "late" }
//! numbering = "12/50"
//! -- records/designs/1/impressions/2.toml
//! status = "untraced"
//! identified = { printing = "late" }
//! numbering = "12/50"
//! "#);
//! let pairs = pairs(&catalogue, &Groups::of(&catalogue));
//! let [pair] = &pairs[&key("1")][..] else { panic!("one pair") };
//! assert!(pair.is_suggested());
//! assert_eq!(pair.with(Bearing::Proves).count(), 1);
//! ```

mod compare;
mod days;
mod facts;
pub mod joined;
pub mod kind;
mod pairs;
mod possession;
pub mod reason;
mod record;
mod size_index;
mod texts;
mod tie_index;
mod ties;

pub use pairs::{RecordPair, pairs};
