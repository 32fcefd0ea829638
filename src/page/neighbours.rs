//! The pages beside a page: the designs before and after a design, the impressions before and after one of its design.

use serde::Serialize;

use crate::model::design::Design;
use crate::model::impression::Impression;
use crate::page::setting::address::Address;
use crate::page::setting::book::Here;

/// The links to the pages beside a page.
#[derive(Serialize)]
pub(super) struct Neighbours {
    /// What they are, for readers of a screen reader: "Neighbouring prints".
    label: String,
    before: Option<Neighbour>,
    after: Option<Neighbour>,
}

#[derive(Serialize)]
struct Neighbour {
    href: String,
    /// "6", "7.4".
    number: String,
    /// The title of a design, the place of an impression.
    title: String,
}

/// The neighbours of the page; `None` where it is neither a design nor an impression, or has no neighbour.
pub(super) fn of_page(here: &Here<'_>) -> Option<Neighbours> {
    let (label, before, after) = match here.address {
        Address::Design(key) => {
            let (before, after) = here.book.studies.order.neighbours(key);
            let designs = &here.public().designs;
            let shown = |key: Option<&_>| Some(of_design(here, designs.get(key?)?));
            ("neighbouring-designs", shown(before), shown(after))
        }
        Address::Impression(key) => {
            let impressions = &here.public().designs.get(&key.design)?.impressions;
            // A record that is no longer published has a page and no neighbours.
            impressions.get(&key.number)?;
            let is_shown = |impression: &&Impression| {
                !impression.standing.is_withdrawn() && here.joined().has_page(&impression.key)
            };
            let before = impressions.range(..key.number).rev();
            let after = impressions.range(key.number.saturating_add(1)..);
            let shown = |impression: &Impression| of_impression(here, impression);
            (
                "neighbouring-impressions",
                before.map(|(_, i)| i).find(is_shown).map(shown),
                after.map(|(_, i)| i).find(is_shown).map(shown),
            )
        }
        _ => return None,
    };
    (before.is_some() || after.is_some()).then(|| Neighbours {
        label: here.words().word(label).to_owned(),
        before,
        after,
    })
}

fn of_design(here: &Here<'_>, design: &Design) -> Neighbour {
    Neighbour {
        href: here.href(&Address::Design(design.key.clone())),
        number: design.number.clone(),
        title: here.design_title(design).plain(),
    }
}

fn of_impression(here: &Here<'_>, impression: &Impression) -> Neighbour {
    Neighbour {
        href: here.href(&Address::Impression(impression.key.clone())),
        number: here.sheet_number(&impression.key),
        title: here.whereabouts(impression),
    }
}
