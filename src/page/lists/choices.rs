//! The records to choose from where a withdrawn record leads to several: each with a small plate and what tells it from
//! the others.

use crate::model::design::Design;
use crate::model::impression::Impression;
use crate::model::link::Target;
use crate::model::standing::RecordStanding;
use crate::page::lists::entry::Entry;
use crate::page::phrases::{readings, standing_note};
use crate::page::plates::figures;
use crate::page::setting::address::Address;
use crate::page::setting::book::Here;
use crate::page::setting::html::{CleanHtml, as_sentences};

/// The records to which a withdrawn record leads; empty where it leads to one only, which its note names.
pub(crate) fn choices(here: &Here<'_>, stands: &RecordStanding) -> Vec<Entry> {
    if !stands.is_withdrawn() {
        return Vec::new();
    }
    let targets = here.public().to_see_instead(stands);
    if targets.len() < 2 {
        return Vec::new();
    }
    let one = |target: &Target| choice(here, target);
    targets.iter().filter_map(one).collect()
}

fn choice(here: &Here<'_>, target: &Target) -> Option<Entry> {
    let public = here.public();
    match target {
        Target::Design(key) => {
            let design = public.designs.get(key)?;
            let date = CleanHtml::text(&here.design_date(design));
            Some(Entry::of_design(here, design, date))
        }
        Target::Impression(key) => {
            let design = public.designs.get(&key.design)?;
            Some(of_impression(here, design, public.impression(key)?))
        }
        other => {
            let (address, name) = here.target(other)?;
            Some(Entry {
                number: String::new(),
                href: here.href(&address),
                title: CleanHtml::text(&name.plain()),
                original: None,
                about: CleanHtml::empty(),
                standing: None,
                image: None,
            })
        }
    }
}

fn of_impression(here: &Here<'_>, design: &Design, impression: &Impression) -> Entry {
    let reading = readings::short(here, design, impression);
    let numbering = impression.numbering.as_ref();
    let numbering = CleanHtml::text(numbering.map_or("", |numbering| numbering.as_str()));
    Entry {
        number: here.sheet_number(&impression.key),
        href: here.href(&Address::Impression(impression.key.clone())),
        // It is a link itself, so the holder is not one.
        title: CleanHtml::text(&figures::holder_and_number(here, impression).plain()),
        original: None,
        about: as_sentences(&[reading, numbering]),
        standing: standing_note::note(here, &impression.standing),
        image: figures::leading_picture(here, impression)
            .and_then(|key| figures::small(here, &key)),
    }
}
