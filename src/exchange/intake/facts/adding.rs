//! The facts of several cells of a row together.
//!
//! What is certain of both is kept once; a further date, size, technique, paper, maker or reference is added. Where two
//! cells say different things, the earlier stays, and the [`Contradiction`] is told.

use std::sync::Arc;

use super::{DatedAct, Fact, Facts, GivenSize, OwnNames};
use crate::exchange::intake::reading::credit::Credit;
use crate::exchange::intake::reading::dates::Act;
use crate::exchange::intake::reading::sizes::Measured;
use crate::exchange::intake::reading::states::CatalogueSaid;

/// A fact of which two cells of one row say different things.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Contradiction {
    /// Two dates of one act.
    Date(Act),
    /// Two sizes of one thing.
    Size(Measured),
    /// Two numbers of the sheet.
    Numbering,
    /// Two sizes of the edition.
    Edition,
    /// Two kinds of impression.
    Kind,
    /// Two states by one catalogue.
    State,
    /// Two holders.
    Holder,
    /// Two series.
    Series,
    /// Two dates, people or ways of one sighting.
    Sighting,
    /// Two statements of the rights in the picture.
    Rights,
    /// Two ways, sources or years of an acquisition.
    Credit,
    /// Two numbers of colours or of blocks.
    Colours,
}

impl Facts {
    /// Adds the facts of a further cell, and says where it contradicts those that stand.
    pub fn add(&mut self, other: impl IntoIterator<Item = Fact>) -> Vec<Contradiction> {
        let mut found = Vec::new();
        for fact in other {
            self.add_fact(fact, &mut found);
        }
        found.sort_unstable();
        found.dedup();
        found
    }

    fn add_fact(&mut self, fact: Fact, found: &mut Vec<Contradiction>) {
        let (differs, of) = match fact {
            Fact::Dated(dated) => return found.extend(self.add_date(dated)),
            Fact::Size(size) => return found.extend(self.add_size(size)),
            Fact::Technique(key) => return add_new(&mut self.techniques, key),
            Fact::Paper(key) => return add_new(&mut self.papers, key),
            Fact::Maker(maker) => return add_new(&mut self.makers, maker),
            Fact::Text(holds, text) => return self.texts.add(holds, text),
            // Of two titles, two pages on the web and two names in this catalogue the first is taken.
            Fact::Title(title) => {
                keep(&mut self.title, title);
                return;
            }
            Fact::Web(web) => {
                keep(&mut self.web, web);
                return;
            }
            Fact::Own(own) => return self.add_own(*own),
            Fact::Colours(number) => (keep(&mut self.colours, number), Contradiction::Colours),
            Fact::Matrices(number) => (keep(&mut self.matrices, number), Contradiction::Colours),
            Fact::Numbering(text) => (keep(&mut self.numbering, text), Contradiction::Numbering),
            Fact::Edition(number) => (keep(&mut self.edition, number), Contradiction::Edition),
            Fact::Kind(key) => (keep(&mut self.kind, key), Contradiction::Kind),
            Fact::Credit(credit) => (self.add_credit(credit), Contradiction::Credit),
            Fact::Reference(said) => (self.add_reference(said), Contradiction::State),
            Fact::Holder(key) => (keep(&mut self.holder, key), Contradiction::Holder),
            Fact::Series(key) => (keep(&mut self.series, key), Contradiction::Series),
            Fact::Seen(date) => (keep(&mut self.seen, date), Contradiction::Sighting),
            Fact::SeenBy(key) => (keep(&mut self.seen_by, key), Contradiction::Sighting),
            Fact::Basis(basis) => (keep(&mut self.basis, basis), Contradiction::Sighting),
            Fact::Rights(rights) => (keep(&mut self.rights, rights), Contradiction::Rights),
        };
        found.extend(differs.then_some(of));
    }

    fn add_date(&mut self, dated: Arc<DatedAct>) -> Option<Contradiction> {
        let mut same = self.dates.iter().filter(|known| known.act == dated.act);
        let contradiction = match same.next() {
            None => None,
            Some(known) if known.when == dated.when => return None,
            Some(_) => Some(Contradiction::Date(dated.act)),
        };
        self.dates.push(dated);
        contradiction
    }

    fn add_size(&mut self, size: Arc<GivenSize>) -> Option<Contradiction> {
        let mut same = self.sizes.iter().filter(|known| known.of == size.of);
        let contradiction = match same.next() {
            None => None,
            Some(known) if known.agrees(&size) => return None,
            // Two sizes of which it is not said what was measured may be of two things.
            Some(_) if size.of == Measured::Unsaid => None,
            Some(_) => Some(Contradiction::Size(size.of)),
        };
        self.sizes.push(size);
        contradiction
    }

    /// Whether its state is another than that which stands of the same work.
    fn add_reference(&mut self, said: Arc<CatalogueSaid>) -> bool {
        let may_be_same = |known: &&mut Arc<CatalogueSaid>| {
            (known.author == said.author || known.author.is_none() || said.author.is_none())
                && (known.number == said.number || known.number.is_none() || said.number.is_none())
        };
        let Some(known) = self.references.iter_mut().find(may_be_same) else {
            self.references.push(said);
            return false;
        };
        let known = Arc::make_mut(known);
        keep_some(&mut known.author, said.author.clone());
        keep_some(&mut known.number, said.number.clone());
        known.is_not_in |= said.is_not_in;
        keep_some(&mut known.state, said.state.clone())
    }

    fn add_credit(&mut self, credit: Arc<Credit>) -> bool {
        let Some(known) = &mut self.credit else {
            self.credit = Some(credit);
            return false;
        };
        let known = Arc::make_mut(known);
        known.is_joint |= credit.is_joint;
        keep_some(&mut known.how, credit.how.clone())
            | keep_some(&mut known.from, credit.from.clone())
            | keep_some(&mut known.through, credit.through.clone())
            | keep_some(&mut known.year, credit.year)
    }

    fn add_own(&mut self, own: OwnNames) {
        keep_some(&mut self.own.design, own.design);
        keep_some(&mut self.own.state, own.state);
        keep_some(&mut self.own.printing, own.printing);
    }
}

/// Keeps the value that stands, or else takes the other. Gives whether another stands.
fn keep<T: PartialEq>(known: &mut Option<T>, other: T) -> bool {
    if let Some(known) = known {
        return *known != other;
    }
    *known = Some(other);
    false
}

fn keep_some<T: PartialEq>(known: &mut Option<T>, other: Option<T>) -> bool {
    other.is_some_and(|other| keep(known, other))
}

fn add_new<T: PartialEq>(known: &mut Vec<T>, other: T) {
    if !known.contains(&other) {
        known.push(other);
    }
}

#[cfg(test)]
mod tests {
    use super::super::When;
    use super::*;
    use crate::model::edtf::Date;

    fn date(act: Act, date: &str) -> Arc<DatedAct> {
        let when = When::Date(Date::parse(date).unwrap());
        Arc::new(DatedAct { act, when })
    }

    #[test]
    fn cells_of_a_row_are_taken_together_and_what_differs_is_told() {
        let mut row = Facts {
            numbering: Some("12/50".to_owned()),
            dates: vec![date(Act::Created, "1912")],
            ..Facts::default()
        };
        let found = row.add(
            Facts {
                edition: Some(50),
                numbering: Some("12/50".to_owned()),
                dates: vec![date(Act::Printed, "1925")],
                ..Facts::default()
            }
            .into_list(),
        );
        assert_eq!(found, []);
        assert_eq!((row.edition, row.dates.len()), (Some(50), 2));
        let found = row.add(
            Facts {
                numbering: Some("13/50".to_owned()),
                dates: vec![date(Act::Created, "1913")],
                ..Facts::default()
            }
            .into_list(),
        );
        assert_eq!(
            found,
            [Contradiction::Date(Act::Created), Contradiction::Numbering]
        );
        // The number that stood first stays; of the two dates none is chosen.
        assert_eq!(row.numbering.as_deref(), Some("12/50"));
        assert_eq!(row.date_of(Act::Created), None);
        assert!(row.date_of(Act::Printed).is_some());
    }
}
