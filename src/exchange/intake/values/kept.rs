//! A reading as it is kept of each distinct value.
//!
//! [`Facts`] have a place for everything that a row can say, some 700 bytes; a value says one thing or two of it. What a
//! value says is kept as a list, and made into facts again where it is asked for.

use crate::exchange::intake::cell::CellReading;
use crate::exchange::intake::facts::{Fact, Facts};
use crate::exchange::intake::reading::Doubt;
use crate::model::certainty::Certainty;

/// A reading as it is kept.
#[derive(Clone, Debug)]
pub struct KeptReading {
    /// What was understood.
    pub facts: Box<[Fact]>,
    /// The words left over, as the cell writes them.
    pub left: Box<[Box<str>]>,
    /// What is doubtful.
    pub doubts: Box<[Doubt]>,
    /// How sure the reading is; `None` where nothing was understood.
    pub sure: Option<Certainty>,
}

impl KeptReading {
    /// The reading to keep.
    #[must_use]
    pub fn of(reading: CellReading) -> KeptReading {
        let CellReading {
            facts,
            left,
            doubts,
            sure,
        } = reading;
        KeptReading {
            facts: facts.into_list().into_boxed_slice(),
            left: left.into_iter().map(String::into_boxed_str).collect(),
            doubts: doubts.into_boxed_slice(),
            sure,
        }
    }

    /// The reading.
    #[must_use]
    pub fn reading(&self) -> CellReading {
        let left = self.left.iter();
        CellReading {
            facts: Facts::of_list(self.facts.iter().cloned()),
            left: left.map(|words| words.clone().into_string()).collect(),
            doubts: self.doubts.to_vec(),
            sure: self.sure,
        }
    }
}

#[cfg(test)]
mod tests {
    use std::sync::Arc;

    use super::*;
    use crate::exchange::intake::columns::Holds;
    use crate::exchange::intake::facts::{
        DatedAct, GivenMaker, GivenSize, GivenTitle, OwnNames, shared, shared_credit,
    };
    use crate::exchange::intake::reading::credit::Credit;
    use crate::exchange::intake::reading::dates::{Act, When};
    use crate::exchange::intake::reading::sizes::{Length, Measured};
    use crate::exchange::intake::reading::states::CatalogueSaid;
    use crate::exchange::intake::reading::states::SaidState;
    use crate::model::certainty::Basis;
    use crate::model::edtf::Date;
    use crate::model::key::Key;

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
            title: Some(Arc::new(GivenTitle {
                text: "The Lock".to_owned(),
                is_supplied: true,
            })),
            dates: shared([
                dated(Act::Printed, When::Later),
                dated(Act::Created, When::Date(date("1912~"))),
            ]),
            sizes: shared([size(Measured::Sheet), size(Measured::Image)]),
            techniques: vec![key("etching"), key("drypoint")],
            papers: vec![key("laid-paper")],
            colours: Some(3),
            matrices: Some(5),
            numbering: text("12/50"),
            edition: Some(50),
            kind: Some(key("proof")),
            makers: shared([GivenMaker {
                name: "C. Mill".to_owned(),
                role: key("engraver"),
            }]),
            credit: shared_credit(Credit {
                how: Some(key("gift")),
                from: text("A. Brook"),
                through: text("D. Lock"),
                year: Some(1925),
                is_joint: true,
            }),
            references: shared([CatalogueSaid {
                author: text("Brook"),
                number: text("12"),
                state: Some(SaidState {
                    states: vec![2, 3],
                    ..SaidState::default()
                }),
                is_not_in: true,
            }]),
            own: OwnNames {
                design: text("14"),
                state: text("ii"),
                printing: text("own"),
            },
            holder: Some(key("hafenmuseum")),
            series: Some(key("views")),
            seen: Some(Arc::new(date("2025-04"))),
            seen_by: Some(key("a-brook")),
            basis: Some(Basis::Report),
            web: text("https://example.org/1"),
            rights: text("CC0-1.0"),
            texts: [(Holds::Condition, "good".into())].into_iter().collect(),
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
