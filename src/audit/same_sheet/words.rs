//! Reasons for and against one sheet, in words.

use super::private;
use crate::audit::wording;
use crate::model::catalogue::Catalogue;
use crate::model::design::Design;
use crate::model::impression::{Impression, Status};
use crate::model::key::{ImpressionKey, Key};
use crate::model::place::Place;
use crate::model::provenance::PartyRole;
use crate::model::size::Size;
use crate::study::Studies;
use crate::study::same_sheet::reason::{Evidence, Part, Reason, Somebody, Tie};

/// A reason as a phrase that stands alone. What a record keeps private is not told, only what kind of
/// thing it is.
#[must_use]
pub fn reason(
    catalogue: &Catalogue,
    studies: &Studies,
    records: &[ImpressionKey; 2],
    reason: &Reason,
) -> String {
    if reason.is_private {
        return format!("{} kept private", private::what(&reason.evidence));
    }
    let words = in_words(catalogue, studies, records, reason, Told::Public);
    private::left_out(catalogue, &words)
}

/// A reason as a phrase that stands alone, private or not: for editors.
#[must_use]
pub fn reason_in_full(
    catalogue: &Catalogue,
    studies: &Studies,
    records: &[ImpressionKey; 2],
    reason: &Reason,
) -> String {
    in_words(catalogue, studies, records, reason, Told::All)
}

/// How much of the records is told.
#[derive(Clone, Copy, PartialEq)]
enum Told {
    All,
    Public,
}

fn in_words(
    catalogue: &Catalogue,
    studies: &Studies,
    records: &[ImpressionKey; 2],
    reason: &Reason,
    told: Told,
) -> String {
    let Some(design) = catalogue.designs.get(&records[0].design) else {
        return String::new();
    };
    let said = Said {
        catalogue,
        studies,
        design,
        records,
        places: reason.places,
        told,
    };
    match &reason.evidence {
        Evidence::Shared(tie) => said.shared(tie),
        Evidence::LastKnown(tie) => said.last_known(tie),
        evidence if reason.bearing.is_for() => said.agrees(evidence),
        evidence => said.differs(evidence),
    }
}

struct Said<'a> {
    catalogue: &'a Catalogue,
    studies: &'a Studies,
    design: &'a Design,
    records: &'a [ImpressionKey; 2],
    places: [Place; 2],
    told: Told,
}

impl Said<'_> {
    fn shared(&self, tie: &Tie) -> String {
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
                    self.mark_text().unwrap_or(mark)
                ),
            },
            Tie::Inscription(text) => format!(
                "both are inscribed \"{}\"",
                self.mark_text().unwrap_or(text)
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
                let work = self.catalogue.literature.get(cite);
                let short = work.map_or(cite.as_str(), |work| &work.short);
                format!("both sightings are reported in {short}, {at}")
            }
            Tie::Owner(who) => format!("both belonged to {}", self.name(who)),
            Tie::Holder(holder) => {
                let holder = self.holder(holder);
                format!("both are with {holder}, and only one of them has a number there")
            }
        }
    }

    fn last_known(&self, tie: &Tie) -> String {
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

    fn agrees(&self, evidence: &Evidence) -> String {
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
            Evidence::SeenAlike(points) => {
                let points: Vec<String> = points.iter().map(|p| format!("`{p}`")).collect();
                format!("the same was seen at {}", points.join(", "))
            }
            _ => String::new(),
        }
    }

    fn differs(&self, evidence: &Evidence) -> String {
        let [one, other] = self.records;
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

    /// The lost record first; where both are, in their order.
    fn lost_first(&self) -> [&ImpressionKey; 2] {
        let [one, other] = self.records;
        let is_located = |key| {
            let record: Option<&Impression> = self.catalogue.impression(key);
            record.is_some_and(|record| record.status.value == Status::Located)
        };
        if is_located(one) {
            [other, one]
        } else {
            [one, other]
        }
    }

    /// What the mark says that a reason speaks of, as written, in whichever record of the sheet.
    fn mark_text(&self) -> Option<&str> {
        let records = self.design.impressions.values();
        let mut marks = records.flat_map(|record| match self.told {
            Told::All => &record.marks,
            Told::Public => &self.catalogue.published_impression(record).marks,
        });
        let mark = marks.find(|mark| mark.place == self.places[0])?;
        mark.text.as_deref()
    }

    fn exhibition<'a>(&'a self, key: &'a Key) -> &'a str {
        let exhibition = match self.told {
            Told::All => self.catalogue.exhibitions.get(key),
            Told::Public => self.catalogue.published_exhibition(key),
        };
        let title = exhibition.map_or(key.as_str(), |exhibition| exhibition.title.value.as_str());
        if title.is_empty() {
            private::LEFT_OUT
        } else {
            title
        }
    }

    fn holder(&self, key: &Key) -> String {
        let is_hidden = private::has_hidden_name(self.catalogue, key);
        if self.told == Told::Public && is_hidden {
            return private::LEFT_OUT.to_owned();
        }
        wording::somebody(self.catalogue, key)
    }

    fn name(&self, who: &Somebody) -> String {
        match who {
            Somebody::Record(key) => self.holder(key),
            Somebody::Named(name) => name.clone(),
        }
    }
}

fn in_mm([one, other]: &[Size; 2]) -> String {
    if one == other {
        format!("{one} mm on both")
    } else {
        format!("{one} and {other} mm")
    }
}

fn part_word(part: Part) -> &'static str {
    match part {
        Part::Image => "image",
        Part::Platemark => "platemark",
    }
}
