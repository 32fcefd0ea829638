//! Which records may be one sheet, with what speaks for and against.
//!
//! One sheet may be met at an exhibition, in a sale, at a dealer's and in a museum, and each time may have
//! become a record of its own. This study joins no records; it says which pairs to look at, and why.
//!
//! **Suggested** are two records of one design where nothing excludes that they are one sheet and more
//! ties than contradictions speak for it; or, where nothing contradicts it, at least two reasons that
//! few sheets of the design share. What many sheets would show alike (state, paper, the size of an
//! edition) never suggests anything; it is told beside what does. The reasons and their bearing are common
//! practice, no source: `docs/trade.md, "Same sheet or two"`; exactly in
//! `docs/definitions.md, "Records that may be one sheet"`.
//!
//! In: the catalogue, private fields included. Out: [`RecordPair`]s, for editors only: no page is made from
//! them. Only records that share something telling (`ties`, and a size that no third has) are compared,
//! so that a design of hundreds of sheets costs little more than reading them.
//!
//! | file | subject |
//! |---|---|
//! | [`reason`] | what speaks for and against, as values; [`kind`] names each |
//! | `facts` | what holds for every design of the catalogue: public holders, makers, formulas |
//! | `days` | when a sheet is heard of |
//! | `texts` | texts made comparable |
//! | `possession` | who certainly had a sheet when |
//! | `ties` | what a record may share word for word with another |
//! | `record` | a record made ready for comparing |
//! | `tie_index`, `size_index` | which sheets of a design share a tie or a size |
//! | `compare` | the comparisons of two records, a file a subject |
//! | `pairs` | which records are compared, and which pairs are suggested |
//!
//! Not here: what is joined already (`census`), and the words (`audit::same_sheet`).
//!
//! ```
//! # mod literal { include!(concat!(env!("CARGO_MANIFEST_DIR"), "/tests/doc/catalogue.rs")); }
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
