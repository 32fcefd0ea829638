//! What editions issued of sheets and pictures, so that a file for other programs stays where it was when what it lists
//! is gone.
//!
//! In: the register, without what is not published any more. Out: [`IssuedSheets`], by present keys, and
//! [`was_issued`].

use std::collections::BTreeSet;

use crate::model::former::Named;
use crate::model::issued_address::IssuedAddress;
use crate::model::key::{ImpressionKey, Key, PictureOwner};
use crate::model::link::Target;
use crate::model::public::Public;
use crate::model::register::{Aspect, Said};

/// What editions issued of sheets and pictures.
#[derive(Debug, Default)]
pub(super) struct IssuedSheets {
    /// The designs with a picture, or with a sheet that had one.
    pub pictured_designs: BTreeSet<Key>,
    /// Whether a document had a picture.
    pub has_pictured_documents: bool,
    /// The holders that had a sheet in some edition.
    pub holders: BTreeSet<Key>,
    /// Those of them that had a sheet with a picture.
    pub pictured_holders: BTreeSet<Key>,
}

impl IssuedSheets {
    /// What the editions of a catalogue issued; nothing before the first.
    pub fn of(public: &Public) -> IssuedSheets {
        let mut issued = IssuedSheets::default();
        let entries = || {
            public
                .register
                .iter()
                .flat_map(|register| &register.entries)
        };
        let now =
            |address: &IssuedAddress| public.leads(address).unwrap_or_else(|| address.clone());
        let mut pictured = BTreeSet::new();
        for (address, _) in entries() {
            if let IssuedAddress::Record(Target::Picture(picture)) = now(address) {
                match picture.owner {
                    PictureOwner::Design(design) => {
                        issued.pictured_designs.insert(design);
                    }
                    PictureOwner::Document(_) => issued.has_pictured_documents = true,
                    PictureOwner::Impression(sheet) => {
                        issued.pictured_designs.insert(sheet.design.clone());
                        pictured.insert(sheet);
                    }
                }
            }
        }
        let holder_now = |key: &str| -> Option<Key> {
            let address = IssuedAddress::Record(Target::Holder(key.parse().ok()?));
            match now(&address) {
                IssuedAddress::Record(Target::Holder(key)) => Some(key),
                _ => None,
            }
        };
        for (address, entry) in entries() {
            let IssuedAddress::Record(Target::Impression(sheet)) = now(address) else {
                continue;
            };
            let holders = entry.said.get(&Aspect::Holder).into_iter();
            let holders = holders.flat_map(Said::iter);
            for holder in holders.filter_map(|(_, key)| holder_now(key)) {
                if pictured.contains(&sheet) {
                    issued.pictured_holders.insert(holder.clone());
                }
                issued.holders.insert(holder);
            }
        }
        issued
    }
}

/// Whether an edition issued a sheet, under the present key of its design or a former one.
pub(super) fn was_issued(public: &Public, sheet: &ImpressionKey) -> bool {
    let Some(register) = &public.register else {
        return false;
    };
    let design = Named::Record(Target::Design(sheet.design.clone()));
    let former = public.former.public_of(&design).iter();
    let mut designs = std::iter::once(&sheet.design).chain(former);
    designs.any(|design| {
        let key = ImpressionKey {
            design: design.clone(),
            number: sheet.number,
        };
        let address = IssuedAddress::Record(Target::Impression(key));
        register.entry(&address).is_some()
    })
}
