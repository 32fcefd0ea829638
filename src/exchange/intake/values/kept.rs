//! A reading as it is kept of each distinct value.
//!
//! [`Facts`] have a place for everything that a row can say, some 700 bytes; a value says one thing or two of it. What a
//! value says is kept as a list, and made into facts again where it is asked for.

use crate::exchange::intake::cell::CellReading;
use crate::exchange::intake::columns::Holds;
use crate::exchange::intake::facts::{
    DatedAct, Facts, GivenMaker, GivenSize, GivenTitle, OwnNames,
};
use crate::exchange::intake::reading::Doubt;
use crate::exchange::intake::reading::credit::Credit;
use crate::exchange::intake::reading::states::CatalogueSaid;
use crate::model::certainty::{Basis, Certainty};
use crate::model::edtf::Date;
use crate::model::key::Key;

/// A reading as it is kept.
#[derive(Clone, Debug)]
pub(super) struct KeptReading {
    facts: Box<[Fact]>,
    left: Box<[Box<str>]>,
    doubts: Box<[Doubt]>,
    sure: Option<Certainty>,
}

/// One thing that a value says. What is large and rare lies elsewhere.
#[derive(Clone, Debug)]
enum Fact {
    Title(GivenTitle),
    Dated(Box<DatedAct>),
    Size(Box<GivenSize>),
    Technique(Key),
    Paper(Key),
    Colours(u32),
    Matrices(u32),
    Numbering(String),
    Edition(u32),
    Kind(Key),
    Maker(GivenMaker),
    Credit(Box<Credit>),
    Reference(Box<CatalogueSaid>),
    Own(Box<OwnNames>),
    Holder(Key),
    Series(Key),
    Seen(Box<Date>),
    SeenBy(Key),
    Basis(Basis),
    Web(String),
    Rights(String),
    Text(Holds, String),
}

impl KeptReading {
    /// The reading to keep.
    pub fn of(reading: CellReading) -> KeptReading {
        let CellReading {
            facts,
            left,
            doubts,
            sure,
        } = reading;
        KeptReading {
            facts: said(facts).into_boxed_slice(),
            left: left.into_iter().map(String::into_boxed_str).collect(),
            doubts: doubts.into_boxed_slice(),
            sure,
        }
    }

    /// The reading.
    pub fn reading(&self) -> CellReading {
        CellReading {
            facts: facts(&self.facts),
            left: self
                .left
                .iter()
                .map(|words| words.clone().into_string())
                .collect(),
            doubts: self.doubts.to_vec(),
            sure: self.sure,
        }
    }

    /// How sure it is.
    pub fn sure(&self) -> Option<Certainty> {
        self.sure
    }
}

/// What facts say, thing by thing, in the order of their fields.
fn said(facts: Facts) -> Vec<Fact> {
    let Facts {
        title,
        dates,
        sizes,
        techniques,
        papers,
        colours,
        matrices,
        numbering,
        edition,
        kind,
        makers,
        credit,
        references,
        own,
        holder,
        series,
        seen,
        seen_by,
        basis,
        web,
        rights,
        texts,
    } = facts;
    let mut said = Vec::new();
    said.extend(title.map(Fact::Title));
    said.extend(dates.into_iter().map(|dated| Fact::Dated(Box::new(dated))));
    said.extend(sizes.into_iter().map(|size| Fact::Size(Box::new(size))));
    said.extend(techniques.into_iter().map(Fact::Technique));
    said.extend(papers.into_iter().map(Fact::Paper));
    said.extend(colours.map(Fact::Colours));
    said.extend(matrices.map(Fact::Matrices));
    said.extend(numbering.map(Fact::Numbering));
    said.extend(edition.map(Fact::Edition));
    said.extend(kind.map(Fact::Kind));
    said.extend(makers.into_iter().map(Fact::Maker));
    if credit != Credit::default() {
        said.push(Fact::Credit(Box::new(credit)));
    }
    let references = references.into_iter();
    said.extend(references.map(|reference| Fact::Reference(Box::new(reference))));
    if own != OwnNames::default() {
        said.push(Fact::Own(Box::new(own)));
    }
    said.extend(holder.map(Fact::Holder));
    said.extend(series.map(Fact::Series));
    said.extend(seen.map(|date| Fact::Seen(Box::new(date))));
    said.extend(seen_by.map(Fact::SeenBy));
    said.extend(basis.map(Fact::Basis));
    said.extend(web.map(Fact::Web));
    said.extend(rights.map(Fact::Rights));
    let texts = texts.into_iter();
    said.extend(texts.map(|(holds, text)| Fact::Text(holds, text)));
    said
}

/// The facts that say these things.
fn facts(said: &[Fact]) -> Facts {
    let mut facts = Facts::default();
    for fact in said.iter().cloned() {
        match fact {
            Fact::Title(title) => facts.title = Some(title),
            Fact::Dated(dated) => facts.dates.push(*dated),
            Fact::Size(size) => facts.sizes.push(*size),
            Fact::Technique(key) => facts.techniques.push(key),
            Fact::Paper(key) => facts.papers.push(key),
            Fact::Colours(number) => facts.colours = Some(number),
            Fact::Matrices(number) => facts.matrices = Some(number),
            Fact::Numbering(text) => facts.numbering = Some(text),
            Fact::Edition(number) => facts.edition = Some(number),
            Fact::Kind(key) => facts.kind = Some(key),
            Fact::Maker(maker) => facts.makers.push(maker),
            Fact::Credit(credit) => facts.credit = *credit,
            Fact::Reference(reference) => facts.references.push(*reference),
            Fact::Own(own) => facts.own = *own,
            Fact::Holder(key) => facts.holder = Some(key),
            Fact::Series(key) => facts.series = Some(key),
            Fact::Seen(date) => facts.seen = Some(*date),
            Fact::SeenBy(key) => facts.seen_by = Some(key),
            Fact::Basis(basis) => facts.basis = Some(basis),
            Fact::Web(address) => facts.web = Some(address),
            Fact::Rights(rights) => facts.rights = Some(rights),
            Fact::Text(holds, text) => {
                facts.texts.insert(holds, text);
            }
        }
    }
    facts
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::exchange::intake::reading::dates::{Act, When};
    use crate::exchange::intake::reading::sizes::{Length, Measured};
    use crate::exchange::intake::reading::states::SaidState;

    #[test]
    fn everything_that_a_value_can_say_is_kept() {
        let key = |key: &str| key.parse::<Key>().unwrap();
        let text = |text: &str| Some(text.to_owned());
        let date = |date| Date::parse(date).unwrap();
        let dated = |act, when| DatedAct { act, when };
        let length = |mm| Length {
            mm,
            tolerance_mm: 0.5,
        };
        let size = |of| GivenSize {
            of,
            height: length(241.3),
            width: length(178.0),
            is_sight: true,
            said: "9 1/2 x 7 in.".to_owned(),
        };
        let facts = Facts {
            title: Some(GivenTitle {
                text: "The Lock".to_owned(),
                is_supplied: true,
            }),
            dates: vec![
                dated(Act::Printed, When::Later),
                dated(Act::Created, When::Date(date("1912~"))),
            ],
            sizes: vec![size(Measured::Sheet), size(Measured::Image)],
            techniques: vec![key("etching"), key("drypoint")],
            papers: vec![key("laid-paper")],
            colours: Some(3),
            matrices: Some(5),
            numbering: text("12/50"),
            edition: Some(50),
            kind: Some(key("proof")),
            makers: vec![GivenMaker {
                name: "C. Mill".to_owned(),
                role: key("engraver"),
            }],
            credit: Credit {
                how: Some(key("gift")),
                from: text("A. Brook"),
                through: text("D. Lock"),
                year: Some(1925),
                is_joint: true,
            },
            references: vec![CatalogueSaid {
                author: text("Brook"),
                number: text("12"),
                state: Some(SaidState {
                    states: vec![2, 3],
                    ..SaidState::default()
                }),
                is_not_in: true,
            }],
            own: OwnNames {
                design: text("14"),
                state: text("ii"),
                printing: text("own"),
            },
            holder: Some(key("hafenmuseum")),
            series: Some(key("views")),
            seen: Some(date("2025-04")),
            seen_by: Some(key("a-brook")),
            basis: Some(Basis::Report),
            web: text("https://example.org/1"),
            rights: text("CC0-1.0"),
            texts: [(Holds::Condition, "good".to_owned())].into(),
        };
        let reading = CellReading {
            facts,
            left: vec!["by Brook".to_owned()],
            doubts: vec![Doubt::MonthOrSpan],
            sure: Some(Certainty::Possible),
        };
        assert_eq!(KeptReading::of(reading.clone()).reading(), reading);
    }
}
