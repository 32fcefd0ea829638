//! The page of an impression: where the sheet is, its identification with the reasons, observations,
//! the sheet itself, its history, and other records of the same sheet.

use std::collections::BTreeSet;

use serde::Serialize;

use super::apparatus;
use super::diligence::{self, Diligence};
use super::evidence::{self, SheetEvidence};
use super::observed::{self, ObservedTable};
use super::opinions;
use super::provenance::{self, Provenance};
use crate::model::design::Design;
use crate::model::impression::{Identification, Impression, OtherSheet, Status};
use crate::model::key::{ImpressionKey, PictureKey};
use crate::model::link::Target;
use crate::model::occurrence::{MentionRole, RecordId};
use crate::model::provenance::Sighting;
use crate::model::vocabulary::List;
use crate::page::comparison::links;
use crate::page::lists::facts::Fact;
use crate::page::lists::mentions;
use crate::page::phrases::claims;
use crate::page::phrases::dates;
use crate::page::phrases::readings;
use crate::page::phrases::standing_note;
use crate::page::phrases::venues::exhibition_in_full;
use crate::page::plates::figures;
use crate::page::setting::book::Here;
use crate::page::setting::html::{CleanHtml, as_sentences, capitalised};
use crate::page::setting::leaf::Leaf;
use crate::page::setting::number_size::number_class;
use crate::page::setting::pictures::{Plate, Setting};
use crate::page::texts::markdown;

#[derive(Serialize)]
struct View {
    number: String,
    number_class: &'static str,
    design: CleanHtml,
    title: String,
    brief: CleanHtml,
    standing: Vec<CleanHtml>,
    plate: Option<Plate>,
    facts: Vec<Fact>,
    identification: Option<ReadingView>,
    opinions: Vec<CleanHtml>,
    observed: Option<ObservedTable>,
    /// The evidence from the observations.
    evidence: Option<SheetEvidence>,
    pictures: Vec<Plate>,
    provenance: Option<Provenance>,
    /// Its owners from 1933 to 1945.
    years: Option<Diligence>,
    sightings: Vec<CleanHtml>,
    exhibited: Vec<CleanHtml>,
    literature: Vec<CleanHtml>,
    others: Vec<CleanHtml>,
    comparisons: Vec<CleanHtml>,
    /// The link to the comparison that the reader chooses.
    compare: Option<String>,
    notes: Option<CleanHtml>,
    mentioned: Vec<CleanHtml>,
}

/// A reading with its grounds, and its alternatives.
#[derive(Serialize)]
struct ReadingView {
    text: CleanHtml,
    or: Vec<CleanHtml>,
}

pub(crate) fn page(here: &Here<'_>, design: &Design, impression: &Impression) -> Leaf {
    let key = here.sheet_number(&impression.key);
    let leading = figures::leading_picture(here, impression);
    let view = View {
        number_class: number_class(&key),
        number: key.clone(),
        design: here.design(&design.key),
        title: capital(&here.whereabouts(impression)),
        brief: brief(here, design, impression),
        standing: standings(here, design, impression),
        plate: leading
            .as_ref()
            .and_then(|key| figures::plate(here, key, None, Setting::Leading)),
        facts: apparatus::facts(here, design, impression),
        identification: impression
            .identified
            .as_ref()
            .map(|reading| reading_view(here, design, reading)),
        opinions: opinions::all(here, design, impression),
        observed: observed::table(here, design, impression),
        evidence: evidence::of_sheet(here, design, impression),
        pictures: other_pictures(here, impression, leading.as_ref()),
        provenance: provenance::of_sheet(here, impression),
        years: diligence::of_sheet(here, impression),
        sightings: sightings(here, impression),
        exhibited: exhibited(here, impression),
        literature: impression
            .literature
            .iter()
            .map(|c| claims::citation(here, c))
            .collect(),
        others: other_records(here, impression),
        comparisons: links::with_sheet(here, design, impression),
        compare: links::chosen_href(here, design, Some(impression)),
        notes: markdown::note(here, impression.note.as_ref()),
        mentioned: mentions::in_texts(here, &Target::Impression(impression.key.clone())),
    };
    let title = format!(
        "{key}. {}, {}",
        here.design_title(design).plain(),
        here.whereabouts(impression)
    );
    let described = format!("{title}. {}", view.brief.plain());
    let siglum = &here.public().settings.siglum.value;
    Leaf::new(here.address, title, "pages/impression.html", &view)
        .described(described)
        .cited_as(format!("{siglum} {key}"))
}

fn capital(text: &str) -> String {
    capitalised(&CleanHtml::text(text)).plain()
}

/// "Inventory 1962.44. State *iii*/iv. Printed by the artist."
fn brief(here: &Here<'_>, design: &Design, impression: &Impression) -> CleanHtml {
    let number = impression
        .accession
        .as_ref()
        .map_or_else(CleanHtml::empty, |number| {
            let number = CleanHtml::span("accession", &CleanHtml::text(number));
            here.words().html("inventory", None, &[("number", &number)])
        });
    let reading = impression
        .identified
        .as_ref()
        .map_or_else(CleanHtml::empty, |r| {
            readings::qualified(
                here,
                design,
                impression,
                r,
                &readings::full(here, design, r),
            )
        });
    // The kind is given only where it is not a sheet of the edition.
    let kind = impression
        .kind
        .own()
        .filter(|kind| kind.as_str() != "edition");
    let kind = kind.map_or_else(CleanHtml::empty, |kind| {
        CleanHtml::text(&here.term(List::Kinds, kind.as_str()))
    });
    let numbering = impression
        .numbering
        .as_ref()
        .map_or_else(CleanHtml::empty, |n| CleanHtml::text(n));
    as_sentences(&[number, reading, CleanHtml::join([&kind, &numbering], ", ")])
}

/// Notes on the standing of design and record, on other records of the same sheet, and on theft.
fn standings(here: &Here<'_>, design: &Design, impression: &Impression) -> Vec<CleanHtml> {
    let stands = [&design.standing, &impression.standing];
    let notes = stands.map(|stands| standing_note::note(here, stands));
    let mut notes: Vec<_> = notes.into_iter().flatten().collect();
    if impression.status.value == Status::Stolen {
        notes.push(CleanHtml::text(here.words().word("stolen-caution")));
    }
    for other in same_sheet(here, impression) {
        notes.push(here.words().html(
            "is-the-same-sheet",
            None,
            &[("other", &here.impression(&other))],
        ));
    }
    notes
}

/// The other records of the same sheet in the same design, whichever record states it.
fn same_sheet(here: &Here<'_>, impression: &Impression) -> Vec<ImpressionKey> {
    let others = here.book.studies.groups.others_of(&impression.key);
    others
        .filter(|other| other.design == impression.key.design)
        .cloned()
        .collect()
}

fn reading_view(here: &Here<'_>, design: &Design, reading: &Identification) -> ReadingView {
    ReadingView {
        text: argued(here, design, reading),
        or: reading
            .or
            .iter()
            .map(|other| argued(here, design, other))
            .collect(),
    }
}

/// A reading with certainty, basis and reasons.
fn argued(here: &Here<'_>, design: &Design, reading: &Identification) -> CleanHtml {
    let what = readings::full(here, design, reading);
    let certainty = CleanHtml::text(claims::certainty(here, reading.claim.certainty()));
    let ground = claims::ground(here, &reading.claim);
    let sure = CleanHtml::join([&certainty, &ground], ", ");
    as_sentences(&[
        what.then(": ").and(&sure),
        CleanHtml::text(reading.why.as_deref().unwrap_or_default()),
    ])
}

fn other_pictures(
    here: &Here<'_>,
    impression: &Impression,
    leading: Option<&PictureKey>,
) -> Vec<Plate> {
    impression
        .pictures
        .iter()
        .map(|picture| figures::key_of(impression, &picture.name))
        .filter(|key| Some(key) != leading)
        .filter_map(|key| figures::plate(here, &key, None, Setting::Gallery))
        .collect()
}

fn sightings(here: &Here<'_>, impression: &Impression) -> Vec<CleanHtml> {
    impression
        .sightings
        .iter()
        .map(|sighting| sighting_line(here, sighting))
        .collect()
}

fn sighting_line(here: &Here<'_>, sighting: &Sighting) -> CleanHtml {
    let words = here.words();
    let date = dates::once_html(&sighting.date.value, words);
    let by = sighting.by.as_ref().map_or_else(CleanHtml::empty, |by| {
        words.html("by-person", None, &[("person", &here.party(by))])
    });
    let basis = sighting.basis.as_ref().map_or_else(CleanHtml::empty, |b| {
        CleanHtml::text(words.listed("basis", b.value))
    });
    let cite = sighting.cite.as_ref().map_or_else(CleanHtml::empty, |c| {
        here.work(&c.value, sighting.at.as_deref())
    });
    CleanHtml::join([&capitalised(&date), &by, &basis, &cite], ", ")
}

fn exhibited(here: &Here<'_>, impression: &Impression) -> Vec<CleanHtml> {
    impression
        .exhibited
        .iter()
        .map(|shown| {
            let key = &shown.exhibition.value;
            let exhibition = here.public().exhibitions.get(key);
            let line = exhibition_in_full(here, key, exhibition);
            match &shown.at {
                Some(at) => line.then(", ").then(at),
                None => line,
            }
        })
        .collect()
}

/// Other records that are or may be this sheet, or belong to it, whichever record states it.
fn other_records(here: &Here<'_>, impression: &Impression) -> Vec<CleanHtml> {
    let mut lines = Vec::new();
    let mut told: BTreeSet<(&str, ImpressionKey)> = BTreeSet::new();
    let mut tell = |id: &'static str, other: &ImpressionKey, why: Option<&str>| {
        if *other == impression.key || !told.insert((id, other.clone())) {
            return;
        }
        let line = here
            .words()
            .html(id, None, &[("other", &here.impression(other))]);
        lines.push(as_sentences(&[match why {
            Some(why) => line.then(": ").then(why),
            None => line,
        }]));
    };
    let kinds: [(&'static str, &[OtherSheet]); 3] = [
        ("same-sheet-as", &impression.same_as),
        ("maybe-same-sheet-as", &impression.maybe_same_as),
        ("other-sheet-than", &impression.not_same_as),
    ];
    for (id, others) in kinds {
        for other in others {
            tell(id, &other.impression.value, other.why.as_deref());
        }
    }
    for other in &impression.shares_sheet {
        tell("shares-sheet-with", &other.value, None);
    }
    for other in &impression.goes_with {
        tell("goes-with", &other.value, None);
    }
    let mentions = here
        .book
        .studies
        .back_links
        .impressions
        .get(&impression.key);
    for mention in mentions.into_iter().flatten() {
        let RecordId::Impression(from) = &mention.from else {
            continue;
        };
        let id = match mention.role {
            MentionRole::SameSheet => "same-sheet-as",
            MentionRole::MaybeSameSheet => "maybe-same-sheet-as",
            MentionRole::OtherSheet => "other-sheet-than",
            MentionRole::SharesSheet => "shares-sheet-with",
            MentionRole::GoesWith => "goes-with",
            MentionRole::TakenFrom => "counterproof-taken",
            _ => continue,
        };
        let stated = here.public().impression(from).and_then(|other| {
            let list = match mention.role {
                MentionRole::SameSheet => &other.same_as,
                MentionRole::MaybeSameSheet => &other.maybe_same_as,
                MentionRole::OtherSheet => &other.not_same_as,
                _ => return None,
            };
            let said = list.iter().find(|o| o.impression.value == impression.key)?;
            said.why.as_deref()
        });
        tell(id, from, stated);
    }
    lines
}
