//! The reasons against one sheet, in words.

use super::{ReasonWording, in_mm, paper_in_words, part_word};
use crate::audit::wording;
use crate::model::provenance::PartyRole;
use crate::study::same_sheet::reason::Evidence;

impl ReasonWording<'_> {
    /// A fact that differs.
    pub(super) fn differs(&self, evidence: &Evidence) -> String {
        let [one, other] = &self.numbers();
        match evidence {
            Evidence::MatrixNear(part, sizes) => format!(
                "the {} measures {}, no further apart than paper explains",
                part_word(*part),
                in_mm(sizes)
            ),
            Evidence::MatrixFar(part, sizes) => format!(
                "the {} measures {}, further apart than paper explains",
                part_word(*part),
                in_mm(sizes)
            ),
            Evidence::Grown { sizes, both_ways } => {
                let how = if *both_ways {
                    "in height and width"
                } else {
                    "in one of the two"
                };
                format!(
                    "the sheets measure {}, the one measured later larger {how}",
                    in_mm(sizes)
                )
            }
            Evidence::OtherState(states) => {
                let [here, there] = states.each_ref().map(|states| {
                    let states = states.iter();
                    wording::either(states.map(|s| wording::state(self.studies, self.design, s)))
                });
                format!("{one} is taken to be {here}, {other} {there}")
            }
            Evidence::OtherPrinting(printings) => {
                let [here, there] = printings
                    .each_ref()
                    .map(|printings| wording::either(printings.iter().map(wording::printing)));
                format!("{one} is taken to be of {here}, {other} of {there}")
            }
            Evidence::OtherKind(kinds) => {
                format!(
                    "{one} is recorded as `{}`, {other} as `{}`",
                    kinds[0], kinds[1]
                )
            }
            Evidence::OtherPaper(papers) => {
                format!("{one} is on `{}`, {other} on `{}`", papers[0], papers[1])
            }
            Evidence::PaperApart(measure, values) => format!(
                "{}, further apart than one paper explains",
                paper_in_words(*measure, values)
            ),
            Evidence::SeenApart { point, values } => {
                let seen = values
                    .each_ref()
                    .map(|values| match self.design.point(point) {
                        Some(point) => wording::values(point, values.iter()),
                        None => String::new(),
                    });
                format!(
                    "at `{point}` {} was seen on {one}, {} on {other}",
                    seen[0], seen[1]
                )
            }
            Evidence::OtherNumber(numbers) => {
                format!("{one} is numbered {}, {other} {}", numbers[0], numbers[1])
            }
            Evidence::NumberGone(number) => {
                format!("one is numbered {number}, and the other, looked at later, is not")
            }
            Evidence::MarkGone { kind, text } => {
                let text = text
                    .as_ref()
                    .map(|t| format!(" \"{t}\""))
                    .unwrap_or_default();
                let kind = if kind.to_string() == "collector" {
                    "collector's mark".to_owned()
                } else {
                    kind.to_string()
                };
                format!("one bears the {kind}{text}, and the other, looked at later, does not")
            }
            Evidence::OtherAccession { holder, numbers } => format!(
                "{} has them under two numbers, {} and {}",
                self.holder(holder),
                numbers[0],
                numbers[1]
            ),
            Evidence::OtherLot { agent, date, lots } => format!(
                "they were lots {} and {} at {}, {date}",
                lots[0],
                lots[1],
                self.name(agent)
            ),
            Evidence::OtherExhibit { exhibition, at } => format!(
                "they were nos. {} and {} in \"{}\"",
                at[0],
                at[1],
                self.exhibition(exhibition)
            ),
            Evidence::TwoPlaces(shows) => format!(
                "they were shown at the same time in \"{}\" and in \"{}\"",
                self.exhibition(&shows[0]),
                self.exhibition(&shows[1])
            ),
            Evidence::TwoHands { role, who } => {
                let verb = match role {
                    PartyRole::Keeper => "with",
                    PartyRole::Owner | PartyRole::Agent => "owned by",
                };
                format!(
                    "{one} was {verb} {} while {other} was {verb} {}",
                    self.name(&who[0]),
                    self.name(&who[1])
                )
            }
            Evidence::Destroyed => "one of them is destroyed, the other is not".to_owned(),
            Evidence::SaidBeside => "the records speak of them as two".to_owned(),
            _ => String::new(),
        }
    }
}
