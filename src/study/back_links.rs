//! Who is mentioned where: the links of the records, turned round.
//!
//! In: the structured fields of every published record. Out: for each holder, person, work,
//! exhibition, design and impression, the records that name it, and as what.
//! Not here: links in Markdown, which `page` adds when it has parsed the text.
//!
//! Only what may be published is indexed: fields listed as `private` and impressions with
//! `publish = false` mention nobody.

use std::collections::BTreeMap;

use crate::model::catalogue::Catalogue;
use crate::model::certainty::{Claim, Statements};
use crate::model::design::Design;
use crate::model::exhibition::{Exhibition, Venue};
use crate::model::holder::Holder;
use crate::model::impression::{Identification, Impression};
use crate::model::key::{ImpressionKey, Key, PictureOwner};
use crate::model::literature::Citation;
use crate::model::picture::Picture;
use crate::model::provenance::{Party, PartyRole};

use super::census::readings;
use super::order::Order;

/// A record that mentions another.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Source {
    /// The catalogue's settings.
    Catalogue,
    /// A design; mentions by its states, printings and matrices are the design's.
    Design(Key),
    /// An impression.
    Impression(ImpressionKey),
    /// A holder.
    Holder(Key),
    /// An exhibition.
    Exhibition(Key),
}

/// As what a record is mentioned.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Part {
    /// The artist of the catalogue.
    Artist,
    /// An editor of the catalogue.
    Editor,
    /// Made the design, or a state of it.
    Maker,
    /// Printed a printing.
    Printer,
    /// Published a printing.
    Publisher,
    /// Has a matrix.
    MatrixHolder,
    /// Keeps the impression.
    Holder,
    /// Owns or owned it.
    Owner,
    /// Handled it: a dealer or auction house.
    Agent,
    /// Kept it for its owner.
    Keeper,
    /// Had it under a former number.
    FormerHolder,
    /// Their name is on it.
    Mark,
    /// Put a mark on it.
    AppliedMark,
    /// Saw or reported it.
    Sighting,
    /// Said something about it: a reading, an opinion, an observation, another claim.
    Said,
    /// A work that is cited.
    Cited,
    /// An exhibition in which the impression was shown, or where the exhibition was.
    Exhibited,
    /// A holder that another became.
    Successor,
    /// A related design.
    Related,
    /// Shown side by side.
    Compared,
    /// The reference picture of the design is of it.
    Reference,
    /// A counterproof was taken from it.
    TakenFrom,
    /// The same sheet.
    SameSheet,
    /// Perhaps the same sheet.
    MaybeSameSheet,
    /// Another sheet.
    OtherSheet,
    /// On the same paper.
    SharesSheet,
    /// Of the same set.
    GoesWith,
    /// To be seen instead of a record that does not stand.
    See,
}

/// One mention.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Mention {
    /// The record that mentions it.
    pub from: Source,
    /// As what.
    pub part: Part,
    /// Where in a work, or in an exhibition.
    pub at: Option<String>,
}

/// Every mention, by what is mentioned; by record in the readers' order, then by part.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct BackLinks {
    /// Of holders.
    pub holders: BTreeMap<Key, Vec<Mention>>,
    /// Of people.
    pub people: BTreeMap<Key, Vec<Mention>>,
    /// Of works of the literature.
    pub works: BTreeMap<Key, Vec<Mention>>,
    /// Of exhibitions.
    pub exhibitions: BTreeMap<Key, Vec<Mention>>,
    /// Of designs.
    pub designs: BTreeMap<Key, Vec<Mention>>,
    /// Of impressions.
    pub impressions: BTreeMap<ImpressionKey, Vec<Mention>>,
}

impl BackLinks {
    /// The mentions in a catalogue.
    #[must_use]
    pub fn of(catalogue: &Catalogue, order: &Order) -> BackLinks {
        let mut collected = Collected {
            catalogue,
            from: Source::Catalogue,
            links: BackLinks::default(),
        };
        collected.settings();
        for design in catalogue.designs.values() {
            collected.from = Source::Design(design.key.clone());
            collected.design(catalogue.published_design(design));
            for impression in design.impressions.values().filter(|i| i.publish) {
                collected.from = Source::Impression(impression.key.clone());
                collected.impression(catalogue.published_impression(impression));
            }
        }
        for key in catalogue.holders.keys() {
            if let Some(holder) = catalogue.published_holder(key) {
                collected.from = Source::Holder(key.clone());
                collected.holder(holder);
            }
        }
        for key in catalogue.exhibitions.keys() {
            if let Some(exhibition) = catalogue.published_exhibition(key) {
                collected.from = Source::Exhibition(key.clone());
                collected.exhibition(exhibition);
            }
        }
        let mut links = collected.links;
        links.put_in_order(order);
        links
    }

    fn put_in_order(&mut self, order: &Order) {
        let lists = self
            .holders
            .values_mut()
            .chain(self.people.values_mut())
            .chain(self.works.values_mut())
            .chain(self.exhibitions.values_mut())
            .chain(self.designs.values_mut())
            .chain(self.impressions.values_mut());
        for mentions in lists {
            mentions.sort_by_cached_key(|m| {
                let rank = match &m.from {
                    Source::Catalogue => (0, 0, 0),
                    Source::Design(design) => (1, order.rank(design), 0),
                    Source::Impression(key) => (1, order.rank(&key.design), key.number),
                    Source::Holder(_) => (2, 0, 0),
                    Source::Exhibition(_) => (3, 0, 0),
                };
                (rank, m.from.clone(), m.part, m.at.clone())
            });
            mentions.dedup();
        }
    }
}

/// The links found so far, and the record that is being read.
struct Collected<'a> {
    catalogue: &'a Catalogue,
    from: Source,
    links: BackLinks,
}

impl Collected<'_> {
    fn mention(&self, part: Part, at: Option<&String>) -> Mention {
        Mention {
            from: self.from.clone(),
            part,
            at: at.cloned(),
        }
    }

    fn person(&mut self, key: &Key, part: Part) {
        let mention = self.mention(part, None);
        let people = self.links.people.entry(key.clone()).or_default();
        people.push(mention);
    }

    fn holder_named(&mut self, key: &Key, part: Part) {
        let mention = self.mention(part, None);
        let holders = self.links.holders.entry(key.clone()).or_default();
        holders.push(mention);
    }

    /// A key that may be a person's or a holder's.
    fn somebody(&mut self, key: &Key, part: Part) {
        if self.catalogue.people.contains_key(key) {
            self.person(key, part);
        } else {
            self.holder_named(key, part);
        }
    }

    fn party(&mut self, party: &Party, part: Part) {
        if let Party::Record(key) = party {
            self.somebody(&key.value, part);
        }
    }

    fn work(&mut self, key: &Key, at: Option<&String>) {
        let mention = self.mention(Part::Cited, at);
        let works = self.links.works.entry(key.clone()).or_default();
        works.push(mention);
    }

    fn design_named(&mut self, key: &Key, part: Part) {
        let mention = self.mention(part, None);
        let designs = self.links.designs.entry(key.clone()).or_default();
        designs.push(mention);
    }

    fn sheet(&mut self, key: &ImpressionKey, part: Part) {
        let mention = self.mention(part, None);
        let sheets = self.links.impressions.entry(key.clone()).or_default();
        sheets.push(mention);
    }

    fn claim(&mut self, claim: &Claim) {
        if let Some(by) = &claim.by {
            self.somebody(&by.value, Part::Said);
        }
        if let Some(cite) = &claim.cite {
            self.work(&cite.value, claim.at.as_ref());
        }
    }

    fn claims<T>(&mut self, statements: &Statements<T>) {
        for statement in &statements.0 {
            self.claim(&statement.claim);
        }
    }

    fn literature(&mut self, literature: &[Citation]) {
        for citation in literature {
            self.work(&citation.cite.value, citation.at.as_ref());
        }
    }

    fn pictures(&mut self, pictures: &[Picture]) {
        for picture in pictures.iter().filter(|p| p.publish) {
            if let Some(cite) = &picture.cite {
                self.work(&cite.value, picture.at.as_ref());
            }
        }
    }

    /// What `see` names: a record as links name it (`design:14`, `impression:14.7`), or a bare key.
    fn see(&mut self, target: &str) {
        let bare = target
            .strip_prefix("design:")
            .or_else(|| target.strip_prefix("impression:"))
            .unwrap_or(target);
        if let Ok(key) = bare.parse::<ImpressionKey>() {
            self.sheet(&key, Part::See);
        } else if let Ok(key) = bare.parse::<Key>() {
            // A bare key may be that of a state or printing of the design itself.
            if self.catalogue.designs.contains_key(&key) {
                self.design_named(&key, Part::See);
            }
        }
    }

    fn settings(&mut self) {
        let settings = &self.catalogue.settings;
        if let Some(artist) = &settings.artist {
            self.person(&artist.value, Part::Artist);
        }
        for editor in &settings.editors {
            self.person(&editor.value, Part::Editor);
        }
    }

    fn design(&mut self, design: &Design) {
        self.claims(&design.date);
        self.claims(&design.image);
        self.claims(&design.matrix_size);
        for title in &design.titles {
            self.claim(&title.claim);
        }
        for maker in &design.makers {
            self.person(&maker.person.value, Part::Maker);
            self.claim(&maker.claim);
        }
        for related in &design.related {
            self.design_named(&related.design.value, Part::Related);
        }
        self.literature(&design.known_from);
        self.literature(&design.literature);
        for matrix in &design.matrices {
            if let Some(holder) = matrix.now.as_ref().and_then(|now| now.holder.as_ref()) {
                self.somebody(&holder.value, Part::MatrixHolder);
            }
        }
        for state in &design.states {
            self.claims(&state.date);
            if let Some(by) = &state.by {
                self.somebody(&by.value, Part::Maker);
            }
            self.literature(&state.literature);
        }
        for printing in &design.printings {
            for printer in &printing.printer.0 {
                self.somebody(&printer.is.value, Part::Printer);
            }
            for publisher in &printing.publisher.0 {
                self.somebody(&publisher.is.value, Part::Publisher);
            }
            self.claims(&printing.printer);
            self.claims(&printing.publisher);
            self.claims(&printing.kind);
            self.claims(&printing.date);
            self.claims(&printing.edition);
            self.literature(&printing.literature);
        }
        self.pictures(&design.pictures);
        if let Some(reference) = &design.reference_picture
            && let PictureOwner::Impression(key) = &reference.value.owner
        {
            self.sheet(key, Part::Reference);
        }
        for comparison in &design.comparisons {
            for of in &comparison.of {
                self.sheet(&of.value, Part::Compared);
            }
        }
        for see in &design.standing.see {
            self.see(&see.value);
        }
    }

    fn impression(&mut self, impression: &Impression) {
        if let Some(holder) = &impression.holder {
            self.holder_named(&holder.value, Part::Holder);
        }
        if let Some(owner) = &impression.owner {
            self.party(owner, Part::Owner);
        }
        for former in &impression.former_accessions {
            if let Some(holder) = &former.holder {
                self.holder_named(&holder.value, Part::FormerHolder);
            }
        }
        self.claims(&impression.kind);
        if let Some(identified) = &impression.identified {
            self.reading(identified);
        }
        for opinion in &impression.opinions {
            self.reading(&opinion.reading);
            if let Some(after) = &opinion.after {
                self.work(&after.value, None);
            }
        }
        for observation in &impression.observed {
            self.claim(&observation.claim);
        }
        self.sheet_of_paper(impression);
        self.history(impression);
        self.other_sheets(impression);
        for see in &impression.standing.see {
            self.see(&see.value);
        }
    }

    fn reading(&mut self, identified: &Identification) {
        for reading in readings(identified) {
            self.claim(&reading.claim);
        }
    }

    fn sheet_of_paper(&mut self, impression: &Impression) {
        let sheet = &impression.sheet;
        self.claims(&sheet.size);
        self.claims(&sheet.image);
        self.claims(&sheet.platemark);
        self.claims(&sheet.date);
        for mark in &impression.marks {
            if let Some(whose) = &mark.whose {
                self.somebody(&whose.value, Part::Mark);
            }
            if let Some(by) = &mark.applied_by {
                self.somebody(&by.value, Part::AppliedMark);
            }
            self.claim(&mark.claim);
        }
        self.pictures(&impression.pictures);
    }

    fn history(&mut self, impression: &Impression) {
        for entry in &impression.provenance {
            let part = match entry.role {
                PartyRole::Owner => Part::Owner,
                PartyRole::Agent => Part::Agent,
                PartyRole::Keeper => Part::Keeper,
            };
            self.party(&entry.party, part);
            self.claim(&entry.claim);
        }
        for sighting in &impression.sightings {
            if let Some(by) = &sighting.by {
                self.party(by, Part::Sighting);
            }
            if let Some(cite) = &sighting.cite {
                self.work(&cite.value, sighting.at.as_ref());
            }
        }
        for shown in &impression.exhibited {
            let mention = self.mention(Part::Exhibited, shown.at.as_ref());
            let key = shown.exhibition.value.clone();
            self.links.exhibitions.entry(key).or_default().push(mention);
        }
        self.literature(&impression.literature);
    }

    fn other_sheets(&mut self, impression: &Impression) {
        if let Some(from) = &impression.taken_from {
            self.sheet(&from.value, Part::TakenFrom);
        }
        let links = [
            (&impression.same_as, Part::SameSheet),
            (&impression.maybe_same_as, Part::MaybeSameSheet),
            (&impression.not_same_as, Part::OtherSheet),
        ];
        for (others, part) in links {
            for other in others {
                self.sheet(&other.impression.value, part);
            }
        }
        for other in &impression.shares_sheet {
            self.sheet(&other.value, Part::SharesSheet);
        }
        for other in &impression.goes_with {
            self.sheet(&other.value, Part::GoesWith);
        }
    }

    fn holder(&mut self, holder: &Holder) {
        if let Some(successor) = &holder.successor {
            self.holder_named(&successor.holder.value, Part::Successor);
        }
    }

    fn exhibition(&mut self, exhibition: &Exhibition) {
        if let Some(Venue::Holder(key)) = &exhibition.venue {
            self.holder_named(&key.value, Part::Exhibited);
        }
        if let Some(cite) = &exhibition.cite {
            self.work(&cite.value, None);
        }
    }
}
