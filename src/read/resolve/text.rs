//! Links: those of long text, and those that name what to see instead of a record.

use super::Names;
use crate::model::codes::Code;
use crate::model::finding::Finding;
use crate::model::link::Target;
use crate::model::note::Note;
use crate::model::place::{Place, Placed};
use crate::read::near::nearest;
use crate::read::note::{self, Leads, Link};

/// The links of every text of the catalogue.
pub(super) fn resolve(names: &mut Names) {
    let catalogue = names.catalogue;
    let of_designs = catalogue.designs.values().flat_map(|design| {
        let of_sheets = design.impressions.values().filter_map(|i| i.note.as_ref());
        design.commentary.iter().chain(of_sheets)
    });
    let of_holders = catalogue
        .holders
        .values()
        .filter_map(|holder| holder.note.as_ref());
    let of_people = catalogue
        .people
        .values()
        .filter_map(|person| person.note.as_ref());
    let of_works = catalogue
        .literature
        .values()
        .filter_map(|work| work.note.as_ref());
    let pages = catalogue.pages.values().map(|page| &page.note);
    let notes: Vec<&Note> = of_designs
        .chain(of_holders)
        .chain(of_people)
        .chain(of_works)
        .chain(pages)
        .collect();
    for note in notes {
        for link in note::links(note) {
            follow(names, &link);
        }
        names.findings.extend(note::cleaned(note));
    }
}

fn follow(names: &mut Names, link: &Link) {
    match &link.leads {
        Leads::Record(Target::Picture(key)) => names.picture(&Placed::new(key.clone(), link.place)),
        Leads::Record(_) | Leads::Outside if link.is_picture => {
            let message = "a picture in a text must be one of the catalogue's own";
            names.push(Finding::new(Code::LinkUnknown, link.place, message).help(
                "record the picture with its design or impression, and write picture:14.1/recto",
            ));
        }
        Leads::Record(record) => target(names, record, link.place),
        Leads::Nowhere(destination) => no_target(names, destination, link.place),
        // Running links are told as cleaned away.
        Leads::Outside | Leads::Running => {}
    }
}

/// Tells of a target that the catalogue does not have.
pub(super) fn target(names: &mut Names, target: &Target, place: Place) {
    match target {
        Target::Design(key) => names.design(&Placed::new(key.clone(), place)),
        Target::Impression(key) => names.impression(&Placed::new(key.clone(), place)),
        Target::Holder(key) => names.holder(&Placed::new(key.clone(), place)),
        Target::Person(key) => names.person(&Placed::new(key.clone(), place)),
        Target::Work(key) => names.work(&Placed::new(key.clone(), place)),
        Target::Exhibition(key) => names.exhibition(&Placed::new(key.clone(), place)),
        Target::Page(key) => names.page(&Placed::new(key.clone(), place)),
        Target::Picture(key) => names.picture(&Placed::new(key.clone(), place)),
    }
}

/// Tells of a target that is none.
pub(super) fn no_target(names: &mut Names, written: &str, place: Place) {
    let message = if written.is_empty() {
        "a link has no target".to_owned()
    } else {
        format!("`{written}` names no record of the catalogue and no address on the web")
    };
    let kinds = || {
        format!(
            "a link is one of {}: or an https address",
            Target::KINDS.join(":, ")
        )
    };
    let help = match written.split_once(':') {
        Some((kind, key)) => match nearest(kind, Target::KINDS.iter().copied()) {
            Some(near) => format!("write `{near}:{key}`"),
            None if Target::KINDS.contains(&kind) => match kind {
                "impression" => "write the design and the number: impression:14.7".to_owned(),
                "picture" => {
                    "write the record and the picture's name: picture:14.7/recto".to_owned()
                }
                _ => "keys are lower-case letters and digits joined by hyphens".to_owned(),
            },
            None => kinds(),
        },
        None => kinds(),
    };
    names.push(Finding::new(Code::LinkUnknown, place, message).help(help));
}
