//! The records to choose from where a withdrawn record leads to several: each with a small plate and what tells it from
//! the others.

use serde::Serialize;

use crate::model::design::Design;
use crate::model::impression::Impression;
use crate::model::link::Target;
use crate::model::standing::RecordStanding;
use crate::page::phrases::{readings, standing_note};
use crate::page::plates::figures;
use crate::page::setting::address::Address;
use crate::page::setting::book::Here;
use crate::page::setting::html::{CleanHtml, as_sentences};
use crate::page::setting::pictures::SmallImage;

/// One record to choose.
#[derive(Serialize)]
pub(crate) struct Choice {
    number: String,
    href: String,
    title: CleanHtml,
    original: Option<CleanHtml>,
    about: CleanHtml,
    standing: Option<CleanHtml>,
    image: Option<SmallImage>,
}

/// The records to which a withdrawn record leads; empty where it leads to one only, which its note names.
pub(crate) fn choices(here: &Here<'_>, stands: &RecordStanding) -> Vec<Choice> {
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

fn choice(here: &Here<'_>, target: &Target) -> Option<Choice> {
    let public = here.public();
    match target {
        Target::Design(key) => Some(of_design(here, public.designs.get(key)?)),
        Target::Impression(key) => {
            let design = public.designs.get(&key.design)?;
            Some(of_impression(here, design, public.impression(key)?))
        }
        other => {
            let (address, name) = here.target(other)?;
            Some(Choice {
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

fn of_design(here: &Here<'_>, design: &Design) -> Choice {
    Choice {
        number: design.number.clone(),
        href: here.href(&Address::Design(design.key.clone())),
        title: here.design_title(design),
        original: None,
        about: CleanHtml::text(&here.design_date(design)),
        standing: standing_note::note(here, &design.standing),
        image: figures::design_picture(here, design).and_then(|key| figures::small(here, &key)),
    }
}

fn of_impression(here: &Here<'_>, design: &Design, impression: &Impression) -> Choice {
    let reading = readings::short(here, design, impression);
    let numbering = impression.numbering.as_ref();
    let numbering = CleanHtml::text(numbering.map_or("", |numbering| numbering.as_str()));
    Choice {
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
