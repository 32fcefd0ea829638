//! One thing that a cell says, and facts as a list of such things.
//!
//! A list takes the room of what is said; [`Facts`] has a place for everything that can be.

use std::sync::Arc;

use super::{DatedAct, Facts, GivenMaker, GivenSize, GivenTitle, OwnNames};
use crate::exchange::intake::columns::Holds;
use crate::exchange::intake::reading::credit::Credit;
use crate::exchange::intake::reading::states::CatalogueSaid;
use crate::model::certainty::Basis;
use crate::model::edtf::Date;
use crate::model::key::Key;

/// One thing that a cell says. What is large is shared by the rows that have it.
#[derive(Clone, Debug, PartialEq)]
pub enum Fact {
    /// The title.
    Title(Arc<GivenTitle>),
    /// What happened, and when.
    Dated(Arc<DatedAct>),
    /// A size.
    Size(Arc<GivenSize>),
    /// A technique.
    Technique(Key),
    /// A paper.
    Paper(Key),
    /// In how many colours it is printed.
    Colours(u32),
    /// From how many blocks, plates, stones or screens.
    Matrices(u32),
    /// The number.
    Numbering(String),
    /// The declared size of the edition.
    Edition(u32),
    /// The kind of impression.
    Kind(Key),
    /// A person with a role.
    Maker(Arc<GivenMaker>),
    /// How the holder acquired it.
    Credit(Arc<Credit>),
    /// A number or state in an earlier catalogue.
    Reference(Arc<CatalogueSaid>),
    /// The design, state and printing in this catalogue.
    Own(Box<OwnNames>),
    /// Who keeps it.
    Holder(Key),
    /// Its series.
    Series(Key),
    /// When the sheet was seen.
    Seen(Arc<Date>),
    /// Who saw it.
    SeenBy(Key),
    /// How it was seen.
    Basis(Basis),
    /// The holder's own page.
    Web(String),
    /// The rights in the picture.
    Rights(String),
    /// What a cell of another column says.
    Text(Holds, Arc<str>),
}

impl Facts {
    /// What they say, thing by thing, in the order of the fields.
    #[must_use]
    pub fn into_list(self) -> Vec<Fact> {
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
        } = self;
        let mut said = Vec::new();
        said.extend(title.map(Fact::Title));
        said.extend(dates.into_iter().map(Fact::Dated));
        said.extend(sizes.into_iter().map(Fact::Size));
        said.extend(techniques.into_iter().map(Fact::Technique));
        said.extend(papers.into_iter().map(Fact::Paper));
        said.extend(colours.map(Fact::Colours));
        said.extend(matrices.map(Fact::Matrices));
        said.extend(numbering.map(Fact::Numbering));
        said.extend(edition.map(Fact::Edition));
        said.extend(kind.map(Fact::Kind));
        said.extend(makers.into_iter().map(Fact::Maker));
        said.extend(credit.map(Fact::Credit));
        said.extend(references.into_iter().map(Fact::Reference));
        if own != OwnNames::default() {
            said.push(Fact::Own(Box::new(own)));
        }
        said.extend(holder.map(Fact::Holder));
        said.extend(series.map(Fact::Series));
        said.extend(seen.map(Fact::Seen));
        said.extend(seen_by.map(Fact::SeenBy));
        said.extend(basis.map(Fact::Basis));
        said.extend(web.map(Fact::Web));
        said.extend(rights.map(Fact::Rights));
        let texts = texts.into_iter();
        said.extend(texts.map(|(holds, text)| Fact::Text(holds, text)));
        said
    }

    /// The facts that say these things, as they are.
    #[must_use]
    pub fn of_list(list: impl IntoIterator<Item = Fact>) -> Facts {
        let mut facts = Facts::default();
        for fact in list {
            match fact {
                Fact::Title(title) => facts.title = Some(title),
                Fact::Dated(dated) => facts.dates.push(dated),
                Fact::Size(size) => facts.sizes.push(size),
                Fact::Technique(key) => facts.techniques.push(key),
                Fact::Paper(key) => facts.papers.push(key),
                Fact::Colours(number) => facts.colours = Some(number),
                Fact::Matrices(number) => facts.matrices = Some(number),
                Fact::Numbering(text) => facts.numbering = Some(text),
                Fact::Edition(number) => facts.edition = Some(number),
                Fact::Kind(key) => facts.kind = Some(key),
                Fact::Maker(maker) => facts.makers.push(maker),
                Fact::Credit(credit) => facts.credit = Some(credit),
                Fact::Reference(reference) => facts.references.push(reference),
                Fact::Own(own) => facts.own = *own,
                Fact::Holder(key) => facts.holder = Some(key),
                Fact::Series(key) => facts.series = Some(key),
                Fact::Seen(date) => facts.seen = Some(date),
                Fact::SeenBy(key) => facts.seen_by = Some(key),
                Fact::Basis(basis) => facts.basis = Some(basis),
                Fact::Web(address) => facts.web = Some(address),
                Fact::Rights(rights) => facts.rights = Some(rights),
                Fact::Text(holds, text) => facts.texts.add(holds, text),
            }
        }
        facts
    }
}
