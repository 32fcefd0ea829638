//! What holds for pictures: the rights, the credit line and the leave to publish, by their own records and by defaults.
//!
//! A holder's record and the catalogue's settings may each have `[pictures]`. A picture takes each of the three from its
//! own record, else from its holder's, else from the catalogue's. No default makes a picture of a sheet in private hands
//! public (docs/definitions.md, "Pictures that say nothing of their own").
//!
//! In: a catalogue as it was read. Out: what holds for each picture, by all that is recorded and by what readers may
//! know.

use std::collections::{BTreeMap, BTreeSet};

use super::catalogue::Catalogue;
use super::document::Document;
use super::holder::{Holder, HolderKind};
use super::impression::Impression;
use super::key::{ImpressionKey, Key, PictureKey, PictureOwner};
use super::picture::Picture;
use super::place::Placed;
use super::provenance::{Party, PartyRole};
use super::settings::Settings;

/// What holds for a picture, by its own record and by the defaults.
#[derive(Clone, Debug, PartialEq)]
pub struct PictureTerms<'a> {
    /// The rights; `None` where nothing states them.
    pub rights: Option<&'a Placed<String>>,
    /// The credit line.
    pub credit: Option<&'a str>,
    /// Whether it may be published.
    pub publish: bool,
}

impl Catalogue {
    /// What holds for a picture, by everything that is recorded.
    #[must_use]
    pub fn picture_terms<'a>(
        &'a self,
        owner: &PictureOwner,
        picture: &'a Picture,
    ) -> PictureTerms<'a> {
        View::Recorded(self).terms(owner, picture)
    }

    /// Whether a private party has the thing that the pictures of this owner show, so that the defaults of others do not
    /// reach them.
    #[must_use]
    pub fn is_in_private_hands(&self, owner: &PictureOwner) -> bool {
        matches!(View::Recorded(self).hands(owner), Hands::Private(_))
    }

    /// Whether a picture without its private fields is published: all that is recorded permits it, and readers may know
    /// the rights in it.
    pub(super) fn publishes(&self, owner: &PictureOwner, public: &Picture) -> bool {
        // Its name may be private, so it is known by its place.
        let mut recorded = self.pictures_of(owner).iter();
        let recorded = recorded.find(|picture| picture.place == public.place);
        let terms = View::Published(self).terms(owner, public);
        recorded.is_some_and(|picture| self.picture_terms(owner, picture).publish)
            && terms.publish
            && terms.rights.is_some()
    }
}

/// What readers may know of the terms of each picture, found while the private records are still there.
pub(super) struct PublishedTerms(BTreeMap<PictureKey, SettledTerms>);

struct SettledTerms {
    rights: Option<Placed<String>>,
    credit: Option<String>,
    publish: bool,
}

impl PublishedTerms {
    pub(super) fn of(catalogue: &Catalogue) -> PublishedTerms {
        let view = View::Published(catalogue);
        let mut settled = BTreeMap::new();
        let owners: BTreeSet<PictureOwner> =
            catalogue.pictures().map(|(key, _)| key.owner).collect();
        for owner in owners {
            for picture in view.pictures_of(&owner) {
                let terms = view.terms(&owner, picture);
                let key = PictureKey {
                    owner: owner.clone(),
                    name: picture.name.value.clone(),
                };
                let terms = SettledTerms {
                    rights: terms.rights.cloned(),
                    credit: terms.credit.map(str::to_owned),
                    publish: catalogue.publishes(&owner, picture),
                };
                settled.insert(key, terms);
            }
        }
        PublishedTerms(settled)
    }

    /// Gives each picture its terms.
    pub(super) fn settle(mut self, catalogue: &mut Catalogue) {
        let keys: Vec<PictureKey> = catalogue.pictures().map(|(key, _)| key).collect();
        for (key, picture) in keys.iter().zip(catalogue.pictures_mut()) {
            match self.0.remove(key) {
                Some(terms) => {
                    picture.rights = terms.rights;
                    picture.credit = terms.credit;
                    picture.publish = Some(terms.publish);
                }
                None => picture.publish = Some(false),
            }
        }
    }
}

/// In whose hands the thing is that a picture shows.
#[derive(Clone, Copy, Debug)]
enum Hands<'a> {
    /// Nobody's who needs to be asked; with the record of the holder.
    Public(Option<&'a Holder>),
    /// A private party's; with its record where that party alone has the sheet, and consents to pictures on the terms of
    /// its own record.
    Private(Option<&'a Holder>),
}

/// Which records are looked at.
#[derive(Clone, Copy)]
enum View<'a> {
    /// All, as they were read.
    Recorded(&'a Catalogue),
    /// The same without their private fields.
    Published(&'a Catalogue),
}

impl<'a> View<'a> {
    fn terms(self, owner: &PictureOwner, picture: &'a Picture) -> PictureTerms<'a> {
        let hands = self.hands(owner);
        let (holder, catalogue) = match hands {
            Hands::Public(holder) => (holder, Some(&self.settings().pictures)),
            Hands::Private(holder) => (holder, None),
        };
        let of_holder = holder.map(|holder| &holder.pictures);
        let by_default = match hands {
            Hands::Public(_) => {
                let mut said = [of_holder, catalogue].into_iter().flatten();
                let said = said.find_map(|pictures| pictures.publish.as_ref());
                said.is_none_or(|publish| publish.value)
            }
            // The word of the party itself stands above that of others, of whom only a refusal counts.
            Hands::Private(_) => {
                let own = of_holder.and_then(|pictures| pictures.publish.as_ref());
                own.map_or_else(|| !self.is_refused(owner), |publish| publish.value)
            }
        };
        let defaults = || [of_holder, catalogue].into_iter().flatten();
        // The credit line of a holder whose name readers may not know names it.
        let may_name = holder.is_none_or(|holder| self.may_name(holder));
        let credits = [of_holder.filter(|_| may_name), catalogue];
        let mut credits = credits.into_iter().flatten();
        PictureTerms {
            rights: picture
                .rights
                .as_ref()
                .or_else(|| defaults().find_map(|pictures| pictures.rights.as_ref())),
            credit: picture.credit.as_deref().or_else(|| {
                let credit = credits.find_map(|pictures| pictures.credit.as_ref());
                credit.map(|credit| credit.value.as_str())
            }),
            publish: picture.publish.unwrap_or(by_default),
        }
    }

    /// Whether somebody who has the thing, or the catalogue, refuses publication by default.
    fn is_refused(self, owner: &PictureOwner) -> bool {
        let parties = self.parties_to(owner).into_iter();
        let mut records = parties.filter_map(|key| self.holder(key));
        self.settings().pictures.refuses() || records.any(|holder| holder.pictures.refuses())
    }

    fn hands(self, owner: &PictureOwner) -> Hands<'a> {
        let parties = self.parties_to(owner);
        // The kind may be private itself, so both records are asked.
        let is_private = |key: &&Key| {
            let views = [View::Recorded(self.catalogue()), self];
            let mut records = views.into_iter().filter_map(|view| view.holder(key));
            records.any(|holder| holder.kind == HolderKind::Private)
        };
        let private: Vec<&Key> = parties.iter().copied().filter(is_private).collect();
        if private.is_empty() && !self.keeps_back_who_has(owner) {
            return Hands::Public(self.keeper_of(owner).and_then(|key| self.holder(key)));
        }
        Hands::Private(match (parties.as_slice(), private.as_slice()) {
            ([_], [own]) => self
                .holder(own)
                .filter(|holder| holder.may_publish("pictures")),
            _ => None,
        })
    }

    fn keeper_of(self, owner: &PictureOwner) -> Option<&'a Key> {
        let holder = match owner {
            PictureOwner::Design(_) => None,
            PictureOwner::Impression(key) => self.impression(key)?.holder.as_ref(),
            PictureOwner::Document(key) => self.document(key)?.holder.as_ref(),
        };
        holder.map(|holder| &holder.value)
    }

    /// Who keeps and who owns a thing now, by the keys of their records, each once.
    fn parties_to(self, owner: &PictureOwner) -> Vec<&'a Key> {
        let sheet = match owner {
            PictureOwner::Impression(key) => self.impression(key),
            PictureOwner::Design(_) | PictureOwner::Document(_) => None,
        };
        let owners = sheet.into_iter().flat_map(owners_now);
        let mut parties: Vec<&Key> = self.keeper_of(owner).into_iter().chain(owners).collect();
        parties.sort();
        parties.dedup();
        parties
    }

    /// Whether the record of a thing does not tell readers who has it.
    fn keeps_back_who_has(self, owner: &PictureOwner) -> bool {
        let catalogue = self.catalogue();
        let (recorded, published) = (View::Recorded(catalogue), View::Published(catalogue));
        match owner {
            PictureOwner::Design(_) => false,
            PictureOwner::Impression(key) => recorded
                .impression(key)
                .zip(published.impression(key))
                .is_some_and(|(a, b)| a.holder != b.holder || a.owners != b.owners),
            PictureOwner::Document(key) => recorded
                .document(key)
                .zip(published.document(key))
                .is_some_and(|(a, b)| a.holder != b.holder),
        }
    }

    fn may_name(self, holder: &Holder) -> bool {
        let recorded = self.catalogue().holders.get(&holder.key);
        !holder.name.is_empty()
            && holder.may_publish("name")
            && recorded.is_none_or(|recorded| recorded.may_publish("name"))
    }

    fn catalogue(self) -> &'a Catalogue {
        match self {
            View::Recorded(catalogue) | View::Published(catalogue) => catalogue,
        }
    }

    fn settings(self) -> &'a Settings {
        match self {
            View::Recorded(catalogue) => &catalogue.settings,
            View::Published(catalogue) => catalogue.published_settings(),
        }
    }

    fn holder(self, key: &Key) -> Option<&'a Holder> {
        match self {
            View::Recorded(catalogue) => catalogue.holders.get(key),
            View::Published(catalogue) => catalogue.published_holder(key),
        }
    }

    fn impression(self, key: &ImpressionKey) -> Option<&'a Impression> {
        let recorded = self.catalogue().impression(key)?;
        Some(match self {
            View::Recorded(_) => recorded,
            View::Published(catalogue) => catalogue.published_impression(recorded),
        })
    }

    fn document(self, key: &Key) -> Option<&'a Document> {
        match self {
            View::Recorded(catalogue) => catalogue.documents.get(key),
            View::Published(catalogue) => {
                let redacted = catalogue.redacted.documents.get(key);
                redacted.or_else(|| catalogue.documents.get(key))
            }
        }
    }

    fn pictures_of(self, owner: &PictureOwner) -> &'a [Picture] {
        let pictures = match owner {
            PictureOwner::Impression(key) => self.impression(key).map(|sheet| &sheet.pictures),
            PictureOwner::Document(key) => self.document(key).map(|document| &document.pictures),
            PictureOwner::Design(key) => {
                let catalogue = self.catalogue();
                let redacted = match self {
                    View::Recorded(_) => None,
                    View::Published(_) => catalogue.redacted.designs.get(key),
                };
                let design = redacted.or_else(|| catalogue.designs.get(key));
                design.map(|design| &design.pictures)
            }
        };
        pictures.map_or(&[], Vec::as_slice)
    }
}

/// The records of those who own a sheet; where the record names neither owner nor holder, of the last owner.
fn owners_now(sheet: &Impression) -> Vec<&Key> {
    fn record(party: &Party) -> Option<&Key> {
        match party {
            Party::Record(key) => Some(&key.value),
            Party::Named(_) | Party::Undisclosed => None,
        }
    }
    if sheet.holder.is_some() || !sheet.owners.is_empty() {
        return sheet.owners.iter().filter_map(record).collect();
    }
    let mut entries = sheet.provenance.iter().rev();
    let last = entries.find(|entry| entry.role == PartyRole::Owner);
    last.and_then(|entry| record(&entry.party))
        .into_iter()
        .collect()
}
