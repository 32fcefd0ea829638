//! `holders/KEY.toml`.

use crate::model::holder::{Consent, FormerName, Holder, HolderKind, Successor};
use crate::model::key::Key;
use crate::model::place::Placed;
use crate::read::records::as_found;
use crate::read::records::pictures::picture_defaults;
use crate::read::shape::consent_covers;
use crate::read::table::fields::Fields;
use crate::read::values;

/// Reads a holder, without its text.
pub(crate) fn holder(fields: &mut Fields<'_, '_>, key: &Key) -> Holder {
    let name = fields.text("name");
    let name = name.unwrap_or(Placed::new(String::new(), fields.at));
    let kind = fields.word("kind");
    // A holder whose kind cannot be read may be a private one, so it is treated as private.
    let kind = kind.map_or(HolderKind::Private, |kind: Placed<HolderKind>| kind.value);
    Holder {
        key: key.clone(),
        name,
        kind,
        town: fields.text("place"),
        country: fields.one("country", values::country),
        isil: fields.one("isil", values::isil),
        web: fields.one("web", values::web),
        ids: as_found::ids(fields),
        credit: fields.words("credit"),
        pictures: fields
            .table("pictures", picture_defaults)
            .unwrap_or_default(),
        formerly: formerly(fields),
        successor: successor(fields),
        consent: consent(fields),
        note: None,
        place: fields.at,
    }
}

fn formerly(fields: &mut Fields<'_, '_>) -> Vec<FormerName> {
    fields.tables("formerly", |fields| {
        let name = fields.text("name");
        let until = fields.date("until");
        Some(FormerName { name: name?, until })
    })
}

fn successor(fields: &mut Fields<'_, '_>) -> Option<Successor> {
    fields.table("successor", |fields| {
        let holder = fields.key("holder");
        let date = fields.date("date");
        Some(Successor {
            holder: holder?,
            date,
        })
    })?
}

fn consent(fields: &mut Fields<'_, '_>) -> Option<Consent> {
    fields.table("consent", |fields| Consent {
        date: fields.date("date"),
        covers: fields.several("covers", values::word_of(consent_covers)),
        withdrawn: fields.date("withdrawn"),
    })
}
