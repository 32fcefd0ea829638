//! The page of an impression: where the sheet is, its identification with the reasons, observations,
//! the sheet itself, its history, and other records of the same sheet.

use std::collections::BTreeSet;

use serde::Serialize;

use super::apparatus;
use super::as_given::{self, AsGivenView};
use super::diligence::{self, Diligence};
use super::evidence::{self, SheetEvidence};
use super::observed::{self, ObservedTable};
use super::opinions;
use super::provenance::{self, Provenance};
use super::reading::{ReadingView, reading_view};
use super::records::{self, DatedLine, RecordPart};
use super::told;
use crate::model::certainty::Certainty;
use crate::model::design::Design;
use crate::model::impression::{Impression, OtherSheet, Status};
use crate::model::key::{ImpressionKey, PictureKey};
use crate::model::link::Target;
use crate::model::occurrence::{MentionRole, RecordId};
use crate::model::provenance::Sighting;
use crate::model::vocabulary::List;
use crate::page::comparison::links;
use crate::page::lists::choices::choices;
use crate::page::lists::entry::Entry;
use crate::page::lists::facts::{Fact, FactsPlace};
use crate::page::lists::mentions;
use crate::page::phrases::claims;
use crate::page::phrases::dates;
use crate::page::phrases::earlier_numbers::{self, NumberedPart};
use crate::page::phrases::enumeration;
use crate::page::phrases::holding;
use crate::page::phrases::readings;
use crate::page::phrases::standing_note;
use crate::page::phrases::venues::exhibition_in_full;
use crate::page::plates::figures;
use crate::page::setting::book::Here;
use crate::page::setting::html::{CleanHtml, as_sentences, capitalised, sentence_start};
use crate::page::setting::leaf::Leaf;
use crate::page::setting::number_size::number_class;
use crate::page::setting::pictures::{Plate, Setting};
use crate::page::texts::markdown;

#[derive(Serialize)]
struct View {
    number: String,
    number_class: &'static str,
    design: CleanHtml,
    title: CleanHtml,
    brief: CleanHtml,
    standing: Vec<CleanHtml>,
    /// The records to choose from, where it was withdrawn in favour of several.
    choices: Vec<Entry>,
    plate: Option<Plate>,
    facts: Vec<Fact>,
    as_given: Option<AsGivenView>,
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
    /// What documents tell of it, beside the evidence.
    documents: Vec<CleanHtml>,
    others: Vec<CleanHtml>,
    /// What the other records of the sheet say of it.
    records: Vec<RecordPart>,
    comparisons: Vec<CleanHtml>,
    /// The link to the comparison that the reader chooses.
    compare: Option<String>,
    notes: Option<CleanHtml>,
    mentioned: Vec<CleanHtml>,
}

pub(crate) fn page(here: &Here<'_>, design: &Design, impression: &Impression) -> Leaf {
    let key = here.sheet_number(&impression.key);
    let leading = figures::leading_picture(here, impression);
    let all = here.joined().on_page(design, impression);
    let evidence = evidence::of_sheet(here, design, impression);
    let shown = evidence
        .as_ref()
        .map_or_else(Vec::new, SheetEvidence::documents);
    let plate = leading
        .as_ref()
        .and_then(|key| figures::plate(here, key, None, Setting::Leading));
    let place = FactsPlace::after(plate.as_ref());
    let view = View {
        number_class: number_class(&key),
        number: key.clone(),
        design: here.design(&design.key),
        title: if plate.is_some() {
            CleanHtml::text(&capital(&here.whereabouts(impression)))
        } else {
            linked_whereabouts(here, impression)
        },
        brief: brief(here, design, impression, place),
        standing: standings(here, design, impression),
        choices: choices(here, &impression.standing),
        facts: apparatus::facts(here, design, impression, place),
        plate,
        as_given: as_given::of_record(here, impression),
        identification: impression
            .identified
            .as_ref()
            .map(|reading| reading_view(here, design, reading)),
        opinions: opinions::all(here, design, impression),
        observed: observed::table(here, design, impression),
        documents: told::of_sheet(here, &all, &shown),
        evidence,
        pictures: other_pictures(here, &all, leading.as_ref()),
        provenance: provenance::of_sheet(here, &all),
        years: diligence::of_sheet(here, impression),
        sightings: records::united(here, &all, |record| sightings(here, record)),
        exhibited: records::united(here, &all, |record| exhibited(here, record)),
        literature: records::united(here, &all, |record| literature(here, record)),
        others: other_records(here, &all),
        records: records::others(here, design, &all),
        comparisons: all
            .iter()
            .flat_map(|record| links::with_sheet(here, design, record))
            .collect(),
        compare: links::chosen_href(here, design, Some(impression)),
        notes: markdown::note(here, impression.note.as_ref()),
        mentioned: mentions::in_texts(here, &Target::Impression(impression.key.clone())),
    };
    let title = format!(
        "{key}. {}, {}",
        here.design_title(design).plain(),
        here.whereabouts(impression)
    );
    let brief = brief(here, design, impression, FactsPlace::Apart);
    let described = format!("{title}. {}", brief.plain());
    let siglum = &here.public().settings.siglum.value;
    Leaf::new(here.address, title, "pages/impression.html", &view)
        .described(described)
        .cited_as(format!("{siglum} {key}"))
}

fn capital(text: &str) -> String {
    capitalised(&CleanHtml::text(text)).plain()
}

/// "Northport, Harbour Museum", with the name as a link.
fn linked_whereabouts(here: &Here<'_>, impression: &Impression) -> CleanHtml {
    let whole = here.whereabouts(impression);
    let holder = impression.holder.as_ref();
    let holder = holder.map_or_else(CleanHtml::empty, |key| here.holder(&key.value));
    match whole.strip_suffix(&holder.plain()) {
        Some(town) => CleanHtml::text(&capital(town)).and(&holder),
        None => CleanHtml::text(&capital(&whole)),
    }
}

/// "Accession no. 1962.44. State *iii*/iv. Printed by the artist."; the reading alone where the facts follow at once.
fn brief(
    here: &Here<'_>,
    design: &Design,
    impression: &Impression,
    place: FactsPlace,
) -> CleanHtml {
    let number = holding::accession_leading_out(here, impression);
    let number = number.map_or_else(CleanHtml::empty, |number| {
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
                &sentence_start(&readings::full(here, design, r)),
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
    match place {
        FactsPlace::Apart => {
            as_sentences(&[number, reading, CleanHtml::join([&kind, &numbering], ", ")])
        }
        FactsPlace::BelowTitle => as_sentences(&[reading]),
    }
}

/// Notes on the standing of design and record, on other records of the same sheet, and on theft.
fn standings(here: &Here<'_>, design: &Design, impression: &Impression) -> Vec<CleanHtml> {
    let stands = [&design.standing, &impression.standing];
    let notes = stands.map(|stands| standing_note::note(here, stands));
    let mut notes: Vec<_> = notes.into_iter().flatten().collect();
    if impression.status.value == Status::Stolen {
        notes.push(CleanHtml::text(here.words().word("stolen-caution")));
    }
    let joined = here.joined();
    let records = joined.others_on(&impression.key);
    if !records.is_empty() {
        let all = std::iter::once(&impression.key).chain(records);
        let names: Vec<CleanHtml> = all.map(|key| here.record(key)).collect();
        let all = enumeration::together(here, &names);
        notes.push(
            here.words()
                .html("one-sheet-of-records", None, &[("records", &all)]),
        );
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

/// The other records of the same sheet in the same design that keep a page of their own.
fn same_sheet(here: &Here<'_>, impression: &Impression) -> Vec<ImpressionKey> {
    let joined = here.joined();
    let others = here.book.studies.groups.others_of(&impression.key);
    others
        .filter(|other| other.design == impression.key.design)
        .filter(|other| joined.page_of(other) != joined.page_of(&impression.key))
        .cloned()
        .collect()
}

fn other_pictures(
    here: &Here<'_>,
    records: &[&Impression],
    leading: Option<&PictureKey>,
) -> Vec<Plate> {
    let keys = records.iter().flat_map(|record| {
        let pictures = record.pictures.iter();
        pictures.map(|picture| figures::key_of(record, &picture.name))
    });
    keys.filter(|key| Some(key) != leading)
        .filter_map(|key| figures::plate(here, &key, None, Setting::Gallery))
        .collect()
}

fn sightings(here: &Here<'_>, impression: &Impression) -> Vec<DatedLine> {
    impression
        .sightings
        .iter()
        .map(|sighting| DatedLine {
            day: sighting.date.value.first_named(),
            line: sighting_line(here, sighting),
        })
        .collect()
}

fn literature(here: &Here<'_>, impression: &Impression) -> Vec<DatedLine> {
    let citations = impression.literature.iter();
    citations
        .map(|citation| DatedLine {
            day: None,
            line: CleanHtml::join(
                [
                    &earlier_numbers::citation(here, citation, NumberedPart::Design),
                    &illustrated(here, citation.illustrated),
                    &this_sheet(here, citation.certainty()),
                ],
                ", ",
            ),
        })
        .collect()
}

/// Whether the sheet is illustrated there; nothing where that is not said.
fn illustrated(here: &Here<'_>, illustrated: Option<bool>) -> CleanHtml {
    illustrated.map_or_else(CleanHtml::empty, |is| {
        let word = if is { "illustrated" } else { "not-illustrated" };
        CleanHtml::text(here.words().word(word))
    })
}

/// That it may concern another sheet; nothing where it certainly concerns this one.
fn this_sheet(here: &Here<'_>, certainty: Certainty) -> CleanHtml {
    CleanHtml::text(claims::this_sheet(here, certainty).unwrap_or_default())
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
        here.cited(&c.value, sighting.at.as_deref())
    });
    CleanHtml::join([&capitalised(&date), &by, &basis, &cite], ", ")
}

fn exhibited(here: &Here<'_>, impression: &Impression) -> Vec<DatedLine> {
    impression
        .exhibited
        .iter()
        .map(|shown| {
            let key = &shown.exhibition.value;
            let exhibition = here.public().exhibitions.get(key);
            let date = exhibition.and_then(|exhibition| exhibition.date.as_ref());
            let line = exhibition_in_full(here, key, exhibition);
            DatedLine {
                day: date.and_then(|date| date.value.first_named()),
                line: CleanHtml::join(
                    [
                        &line,
                        &CleanHtml::text(shown.at.as_deref().unwrap_or_default()),
                        &illustrated(here, shown.illustrated),
                        &this_sheet(here, shown.certainty()),
                    ],
                    ", ",
                ),
            }
        })
        .collect()
}

/// Other records that are or may be this sheet, or belong to it, whichever record states it, and the reasons for which
/// the records on this page were joined.
fn other_records(here: &Here<'_>, records: &[&Impression]) -> Vec<CleanHtml> {
    let mut lines = Vec::new();
    let mut told: BTreeSet<(&str, ImpressionKey)> = BTreeSet::new();
    for record in records {
        related_records(here, records, record, &mut |id, other, why| {
            let is_joined = records.iter().any(|known| known.key == *other);
            // Records of this page are one sheet, which is the only thing to say of them here.
            if *other == record.key || is_joined && id != "same-sheet-as" {
                return;
            }
            let page = here.joined().page_of(other).clone();
            let known = if is_joined { other.clone() } else { page };
            if is_joined && why.is_none() || !told.insert((id, known)) {
                return;
            }
            let name = if is_joined {
                here.record(other)
            } else {
                here.impression(other)
            };
            let line = here.words().html(id, None, &[("other", &name)]);
            lines.push(as_sentences(&[match why {
                Some(why) => line.then(": ").then(why),
                None => line,
            }]));
        });
    }
    lines
}

/// Calls `tell` for each relation that `record` has with another, or another with it: the word for it, the other record
/// and the reason. `records` are those of its sheet.
fn related_records(
    here: &Here<'_>,
    records: &[&Impression],
    record: &Impression,
    tell: &mut dyn FnMut(&'static str, &ImpressionKey, Option<&str>),
) {
    let is_page = records.first().is_some_and(|page| page.key == record.key);
    let kinds: [(&'static str, &[OtherSheet]); 3] = [
        ("same-sheet-as", &record.same_as),
        ("maybe-same-sheet-as", &record.maybe_same_as),
        ("other-sheet-than", &record.not_same_as),
    ];
    for (id, others) in kinds {
        for other in others {
            // "The same impression as 14.9" is said once, from the record whose page this is where it is one of the two.
            let other_key = &other.impression.value;
            let is_of_page = records.first().is_some_and(|page| page.key == *other_key);
            let named = if id == "same-sheet-as" && !is_page && is_of_page {
                &record.key
            } else {
                other_key
            };
            tell(id, named, other.why.as_deref());
        }
    }
    for other in &record.shares_sheet {
        tell("shares-sheet-with", &other.value, None);
    }
    for other in &record.goes_with {
        tell("goes-with", &other.value, None);
    }
    let mentions = here.book.studies.back_links.impressions.get(&record.key);
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
            let said = list.iter().find(|o| o.impression.value == record.key)?;
            said.why.as_deref()
        });
        tell(id, from, stated);
    }
}
