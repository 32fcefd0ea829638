//! The reasons for one sheet, in words.

use super::{ReasonWording, in_mm, paper_in_words, part_word};
use crate::audit::wording;
use crate::model::impression::{Impression, Status};
use crate::model::key::ImpressionKey;
use crate::study::same_sheet::reason::{Evidence, Tie};

impl ReasonWording<'_> {
    /// A fact that both records state.
    pub(super) fn shared(&self, tie: &Tie) -> String {
        match tie {
            Tie::Number {
                is_roman,
                number,
                of,
            } => {
                let of = of.map(|of| format!(" of {of}")).unwrap_or_default();
                let script = if *is_roman { " in roman numerals" } else { "" };
                format!("both are numbered {number}{of}{script}")
            }
            Tie::Accession { holder, number } => {
                format!("both have the number {number} with {}", self.holder(holder))
            }
            Tie::Collector { whose, mark } => match whose {
                Some(whose) => format!("both bear the collector's mark of {}", self.holder(whose)),
                None => format!(
                    "both bear the collector's mark \"{}\"",
                    self.mark_text().as_ref().unwrap_or(mark)
                ),
            },
            Tie::Inscription(text) => format!(
                "both are inscribed \"{}\"",
                self.mark_text().as_ref().unwrap_or(text)
            ),
            Tie::Lot { agent, date, lot } => {
                format!("both were lot {lot} at {}, {date}", self.name(agent))
            }
            Tie::Sale { agent, date } => {
                format!("both were at {}, {date}", self.name(agent))
            }
            Tie::Exhibit { exhibition, at } => {
                format!("both were no. {at} in \"{}\"", self.exhibition(exhibition))
            }
            Tie::Page { cite, at } => {
                let short = wording::cited(self.catalogue, cite);
                format!("both sightings are reported in {short}, {at}")
            }
            Tie::Owner(who) => format!("both belonged to {}", self.name(who)),
            Tie::Holder(holder) => {
                let holder = self.holder(holder);
                format!("both are with {holder}, and only one of them has a number there")
            }
        }
    }

    /// The last known fact about a lost sheet, which is in the history of the other too.
    pub(super) fn last_known(&self, tie: &Tie) -> String {
        let [lost, other] = self.lost_first();
        match tie {
            Tie::Sale { agent, date } => format!(
                "{lost} was last heard of at {}, {date}, and {other} was there too",
                self.name(agent)
            ),
            Tie::Owner(who) => format!(
                "{} is the last who is known to have had {lost}, and had {other}",
                self.name(who)
            ),
            _ => self.shared(tie),
        }
    }

    /// A fact that agrees, stated differently by the two records.
    pub(super) fn agrees(&self, evidence: &Evidence) -> String {
        match evidence {
            Evidence::Follows { ends, begins } => {
                let [lost, other] = self.lost_first();
                format!(
                    "{lost} is last heard of in {}, {other} first in {}",
                    ends.year, begins.year
                )
            }
            Evidence::SheetAlike { sizes, alone } => {
                let alone = if *alone { ", as no third does" } else { "" };
                format!("the sheets measure {}{alone}", in_mm(sizes))
            }
            Evidence::MatrixAlike(part, sizes) => {
                format!("the {} measures {}", part_word(*part), in_mm(sizes))
            }
            Evidence::SameState(state) => {
                let state = wording::state(self.studies, self.design, state);
                format!("both are taken to be {state}")
            }
            Evidence::SamePrinting(printing) => {
                format!("both are taken to be of {}", wording::printing(printing))
            }
            Evidence::SamePaper(paper) => format!("both are on `{paper}`"),
            Evidence::PaperAlike(measure, values) => paper_in_words(*measure, values),
            Evidence::SeenAlike(points) => {
                let points: Vec<String> = points.iter().map(|p| format!("`{p}`")).collect();
                format!("the same was seen at {}", points.join(", "))
            }
            _ => String::new(),
        }
    }

    /// The two records, the lost sheet first; where both are lost, in their order.
    fn lost_first(&self) -> [String; 2] {
        let [one, other] = self.numbers();
        let is_located = |key: &ImpressionKey| {
            let record: Option<&Impression> = self.catalogue.impression(key);
            record.is_some_and(|record| record.status.value == Status::Located)
        };
        if is_located(&self.records[0]) {
            [other, one]
        } else {
            [one, other]
        }
    }
}
