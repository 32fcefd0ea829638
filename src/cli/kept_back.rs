//! Tells people that a command used more than pages show: it works on everything recorded, also on what is private or
//! not published.
//!
//! In: the catalogue, and what the command looked at. Out: one sentence, where something private or unpublished was
//! among it. Programs get no such sentence (`--json`); the help of each command says it.

use std::io::{self, Write};

use crate::model::catalogue::Catalogue;
use crate::model::design::Design;
use crate::model::impression::Impression;
use crate::model::key::{Key, PictureOwner};

/// What a command did with everything recorded: "Everything recorded was counted, …".
#[derive(Clone, Copy, Debug)]
pub(super) enum Work {
    /// It counted sheets.
    Counted,
    /// It looked for what is wrong or doubtful.
    Judged,
    /// It used the records otherwise.
    Used,
}

/// Says so of a command that looked at these designs.
pub(super) fn say_of_designs<'a>(
    catalogue: &Catalogue,
    designs: impl IntoIterator<Item = &'a Design>,
    work: Work,
    out: &mut impl Write,
) -> io::Result<()> {
    let mut designs = designs.into_iter();
    let is_told = designs.any(|design| keeps_back(catalogue, design));
    if is_told { say(work, out) } else { Ok(()) }
}

/// Says so of a command that looked at every record.
pub(super) fn say_of_everything(
    catalogue: &Catalogue,
    work: Work,
    out: &mut impl Write,
) -> io::Result<()> {
    let is_told = !catalogue.redacted.is_empty()
        || catalogue
            .holders
            .keys()
            .any(|key| is_private(catalogue, key))
        || catalogue
            .designs
            .values()
            .any(|design| keeps_back(catalogue, design));
    if is_told { say(work, out) } else { Ok(()) }
}

fn say(work: Work, out: &mut impl Write) -> io::Result<()> {
    let done = match work {
        Work::Counted => "counted",
        Work::Judged => "judged",
        Work::Used => "used",
    };
    writeln!(
        out,
        "\nEverything recorded was {done}, including what is private or not published; the pages leave that out."
    )
}

/// Whether a design or one of its impressions keeps something from readers.
fn keeps_back(catalogue: &Catalogue, design: &Design) -> bool {
    let is_kept_back = |impression: &Impression| {
        let holder = impression.holder.as_ref();
        !impression.publish
            || has_withheld(catalogue, &PictureOwner::Impression(impression.key.clone()))
            || catalogue.redacted.impressions.contains_key(&impression.key)
            || holder.is_some_and(|holder| is_private(catalogue, &holder.value))
    };
    catalogue.redacted.designs.contains_key(&design.key)
        || has_withheld(catalogue, &PictureOwner::Design(design.key.clone()))
        || design.impressions.values().any(is_kept_back)
}

/// Whether a record has a picture that is not published, by its own word or by a default.
fn has_withheld(catalogue: &Catalogue, owner: &PictureOwner) -> bool {
    let pictures = catalogue.pictures_of(owner).iter();
    let mut terms = pictures.map(|picture| catalogue.picture_terms(owner, picture));
    terms.any(|terms| !terms.publish)
}

/// Whether a holder keeps something from readers.
fn is_private(catalogue: &Catalogue, holder: &Key) -> bool {
    let may_publish = |field: &str| {
        let recorded = catalogue.holders.get(holder);
        recorded.is_none_or(|holder| holder.may_publish(field))
    };
    catalogue.redacted.holders.contains_key(holder) || !may_publish("name") || !may_publish("place")
}
