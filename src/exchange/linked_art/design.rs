//! Designs, and their parts that have no page of their own: states, printings, matrices.

use std::collections::BTreeSet;

use super::concepts::{
    self, DESCRIPTION, EDITION, MATERIALS, NOTE, PRINTING, PRINTING_BLOCK, PRINTING_PLATE,
    PRINTING_SURFACE, PRODUCTION,
};
use super::evidence;
use super::identifiers;
use super::ids;
use super::node::Node;
use super::parts::{self, NameKind, statement};
use crate::model::certainty::Statements;
use crate::model::design::{Design, Maker, Matrix, MatrixFate, MatrixKind, MatrixNow, TitleKind};
use crate::model::document::EvidenceTarget;
use crate::model::edtf::Date;
use crate::model::key::Key;
use crate::model::printing::Printing;
use crate::model::series_place::SeriesRef;
use crate::model::standing::RecordStanding;
use crate::model::state::State;
use crate::model::vocabulary::List;
use crate::page::earlier_numbers::NumberedPart;
use crate::page::html::CleanHtml;
use crate::page::{Address, DesignPart, Here, claims, dates, standing_note};
use crate::study::numerals::predecessors;

/// The record of a design.
pub(super) fn design(here: &Here<'_>, design: &Design) -> Node {
    let page = Address::Design(design.key.clone());
    let (numbers, notes) = parts::earlier_numbers(here, &design.literature, NumberedPart::Design);
    let makers = design.makers.iter();
    let (certain, doubted): (Vec<&Maker>, Vec<&Maker>) =
        makers.partition(|maker| parts::is_certain(&maker.claim));
    let evidence = evidence::about(here, EvidenceTarget::Design(design.key.clone()));
    let technique: Vec<String> = design
        .technique
        .iter()
        .map(|technique| here.term(List::Techniques, technique.as_str()))
        .collect();
    let statements = [
        statement(MATERIALS, technique.join(", ")),
        dates_in_words(here, &design.date),
        parts::dimensions_in_words(here, &design.size.image, "of-image"),
        stands(here, &design.standing),
    ];
    Node {
        identified_by: titles(here, design)
            .into_iter()
            .chain([parts::number(here, &design.number)])
            .chain(numbers)
            .chain(identifiers::nodes(&design.ids))
            .collect(),
        equivalent: identifiers::equivalents("VisualItem", &design.ids),
        referred_to_by: statements.into_iter().flatten().chain(notes).collect(),
        represents_instance_of_type: shown_things(here, design),
        created_by: creation(here, &design.date, makers_once(here, &certain), Vec::new()),
        attributed_by: doubted
            .into_iter()
            .filter_map(|maker| doubted_maker(here, maker))
            .chain(evidence.attributed_by)
            .collect(),
        dimension: parts::dimensions(here, &design.size.image, ("image", "of-image")),
        member_of: series(here, design),
        subject_of: parts::subject_of(here, &page, None)
            .into_iter()
            .chain(evidence.subject_of)
            .collect(),
        ..ids::design(here, design)
    }
}

/// The titles: the usual one is the primary name.
fn titles(here: &Here<'_>, design: &Design) -> Vec<Node> {
    let usual = design.title();
    if design.titles.is_empty() {
        return vec![parts::primary_name(here.design_title(design).plain())];
    }
    let titles = design.titles.iter();
    titles
        .map(|title| {
            let kind = match title.kind {
                _ if usual.is_some_and(|usual| std::ptr::eq(usual, title)) => NameKind::Primary,
                TitleKind::Former => NameKind::Former,
                _ => NameKind::Alternate,
            };
            let language = title.lang.as_ref().map(|lang| lang.value.as_str());
            parts::name_in(title.text.value.as_str(), kind, language)
        })
        .collect()
}

/// The subjects that the thesaurus has. Free words are on the page.
fn shown_things(here: &Here<'_>, design: &Design) -> Vec<Node> {
    let vocabularies = &here.public().vocabularies;
    let subjects = design.subjects.iter().map(|subject| &subject.value);
    subjects
        .filter(|subject| {
            let term = vocabularies.term(List::Subjects, subject);
            term.is_some_and(|term| term.aat.is_some())
        })
        .map(|subject| concepts::term(here, "Type", List::Subjects, subject))
        .collect()
}

/// The series to which a design belongs, or in which printings of it came out, each once.
fn series(here: &Here<'_>, design: &Design) -> Vec<Node> {
    let of_printings = design.standing_printings().flat_map(|p| &p.series);
    let places = design.series.iter().chain(of_printings);
    let named: BTreeSet<&SeriesRef> = places.map(|place| &place.of.value).collect();
    named
        .into_iter()
        .filter_map(|of| ids::series(here, of))
        .collect()
}

/// The makers, each once.
fn makers_once(here: &Here<'_>, makers: &[&Maker]) -> Vec<Node> {
    let mut once: Vec<Node> = Vec::new();
    let people = makers.iter();
    for person in people.filter_map(|maker| ids::agent(here, &maker.person.value)) {
        if !once.contains(&person) {
            once.push(person);
        }
    }
    once
}

fn doubted_maker(here: &Here<'_>, maker: &Maker) -> Option<Node> {
    let role = maker.role.as_ref();
    let role = role.map(|role| here.term(List::Roles, role.as_str()));
    let certainty = claims::certainty(here, maker.claim.certainty()).to_owned();
    let said = [role, Some(certainty)].into_iter().flatten();
    Some(Node {
        identified_by: vec![parts::display(said.collect::<Vec<_>>().join(": "))],
        assigned: vec![ids::agent(here, &maker.person.value)?],
        ..Node::new("AttributeAssignment")
    })
}

/// How a visual work came to be: when, where the date is certain, by whom, and from which others.
fn creation(
    here: &Here<'_>,
    date: &Statements<Date>,
    by: Vec<Node>,
    from: Vec<Node>,
) -> Option<Box<Node>> {
    let when = certain_time(here, date);
    if when.is_none() && by.is_empty() && from.is_empty() {
        return None;
    }
    Node {
        timespan: when,
        carried_out_by: by,
        influenced_by: from,
        ..Node::new("Creation")
    }
    .boxed()
}

/// The time that the catalogue itself gives, where it is certain of it.
pub(super) fn certain_time(here: &Here<'_>, date: &Statements<Date>) -> Option<Box<Node>> {
    let own = date.iter().next();
    let own = own.filter(|own| parts::is_certain(&own.claim));
    own.and_then(|own| parts::timespan(here, &own.is.value))
}

/// The dates in words, where there are several or the catalogue is not certain of its own.
pub(super) fn dates_in_words(here: &Here<'_>, date: &Statements<Date>) -> Option<Node> {
    let is_plain = date.others().is_empty() && date.iter().all(|d| parts::is_certain(&d.claim));
    let said = date.iter().map(|date| {
        let words = CleanHtml::text(&dates::once(&date.is.value, here.words()));
        claims::with_claim(here, words, &date.claim).plain()
    });
    let said = said.collect::<Vec<_>>().join("; ");
    statement(PRODUCTION, said).filter(|_| !is_plain)
}

/// What the record says of its standing, where it is not accepted.
pub(super) fn stands(here: &Here<'_>, standing: &RecordStanding) -> Option<Node> {
    statement(NOTE, standing_note::note(here, standing)?.plain())
}

/// The record of a state.
pub(super) fn state(here: &Here<'_>, design: &Design, state: &State) -> Node {
    let key = &state.key.value;
    let record = ids::state(here, design, key);
    let title = format!(
        "{}, {}",
        here.design_title(design).plain(),
        record.label.as_deref().unwrap_or_default()
    );
    let (numbers, notes) = parts::earlier_numbers(here, &state.literature, NumberedPart::State);
    let before = predecessors(design, state);
    let before = before.into_iter();
    let before = before.map(|state| ids::state(here, design, &state.key.value));
    let told = EvidenceTarget::State(design.key.clone(), key.clone());
    let evidence = evidence::about(here, told);
    let by = state.by.as_ref();
    let by = by.and_then(|by| ids::agent(here, &by.value));
    let statements = [
        statement(DESCRIPTION, state.summary.as_deref().unwrap_or_default()),
        dates_in_words(here, &state.date),
        parts::dimensions_in_words(here, &state.size.image, "of-image"),
        stands(here, &state.standing),
    ];
    Node {
        identified_by: std::iter::once(parts::primary_name(title))
            .chain(numbers)
            .collect(),
        referred_to_by: statements.into_iter().flatten().chain(notes).collect(),
        created_by: creation(
            here,
            &state.date,
            by.into_iter().collect(),
            before.collect(),
        ),
        dimension: parts::dimensions(here, &state.size.image, ("image", "of-image")),
        part_of: vec![ids::design(here, design)],
        attributed_by: evidence.attributed_by,
        subject_of: on_page(here, design, &DesignPart::State(key.clone()))
            .into_iter()
            .chain(evidence.subject_of)
            .collect(),
        ..record
    }
}

/// The record of a printing: an edition, or whatever else was printed at one time.
pub(super) fn printing(here: &Here<'_>, design: &Design, printing: &Printing) -> Node {
    let key = &printing.key.value;
    let words = here.words();
    let record = ids::printing(here, design, key);
    let title = format!(
        "{}, {}",
        here.design_title(design).plain(),
        record.label.as_deref().unwrap_or_default()
    );
    let (numbers, notes) =
        parts::earlier_numbers(here, &printing.literature, NumberedPart::Printing);
    let told = EvidenceTarget::Printing(design.key.clone(), key.clone());
    let evidence = evidence::about(here, told);
    let kind = printing.kind.own();
    let kind = kind.map_or("", |kind| words.listed("printing", *kind));
    let statements = [
        statement(EDITION, kind),
        statement(EDITION, sizes_of_edition(here, printing)),
        dates_in_words(here, &printing.date),
        stands(here, &printing.standing),
    ];
    let certain_agent = |agents: &Statements<Key>| {
        let own = agents.iter().next();
        let own = own.filter(|own| parts::is_certain(&own.claim));
        own.and_then(|own| ids::agent(here, &own.is.value))
    };
    Node {
        classified_as: vec![PRINTING.node()],
        identified_by: std::iter::once(parts::primary_name(title))
            .chain(numbers)
            .collect(),
        referred_to_by: statements.into_iter().flatten().chain(notes).collect(),
        timespan: certain_time(here, &printing.date),
        carried_out_by: certain_agent(&printing.printer).into_iter().collect(),
        participant: certain_agent(&printing.publisher).into_iter().collect(),
        used_specific_object: printing
            .matrices
            .iter()
            .map(|matrix| ids::matrix(here, design, &matrix.value))
            .collect(),
        attributed_by: evidence.attributed_by,
        subject_of: on_page(here, design, &DesignPart::Printing(key.clone()))
            .into_iter()
            .chain(evidence.subject_of)
            .collect(),
        ..record
    }
}

/// How many sheets the edition was declared to have, and how many were printed, each with its sources.
fn sizes_of_edition(here: &Here<'_>, printing: &Printing) -> String {
    let words = here.words();
    let said = |sizes: &Statements<u32>, say: &dyn Fn(u32) -> CleanHtml| {
        let each = sizes.iter().map(|size| {
            let size_in_words = say(size.is.value);
            claims::with_claim(here, size_in_words, &size.claim).plain()
        });
        each.collect::<Vec<_>>()
    };
    let mut all = said(&printing.edition, &|n| {
        let n = CleanHtml::text(&n.to_string());
        words.html("declared-edition", None, &[("n", &n)])
    });
    all.extend(said(&printing.printed, &|n| {
        let n = usize::try_from(n).unwrap_or(usize::MAX);
        CleanHtml::text(&words.count("count-printed", n))
    }));
    all.join("; ")
}

/// The record of a block, plate, stone or screen.
pub(super) fn matrix(here: &Here<'_>, design: &Design, matrix: &Matrix) -> Node {
    let key = &matrix.key.value;
    let record = ids::matrix(here, design, key);
    let title = format!(
        "{}, {}",
        here.design_title(design).plain(),
        record.label.as_deref().unwrap_or_default()
    );
    let kind = match matrix.kind {
        Some(MatrixKind::Block) => PRINTING_BLOCK,
        Some(MatrixKind::Plate) => PRINTING_PLATE,
        Some(MatrixKind::Stone | MatrixKind::Screen) | None => PRINTING_SURFACE,
    };
    let now = matrix.now.as_ref();
    let fate = now.filter(|now| now.state.value != MatrixFate::Extant);
    let fate = fate.map_or("", |now| here.words().listed("matrix-now", now.state.value));
    let statements = [
        statement(MATERIALS, matrix.material.as_deref().unwrap_or_default()),
        statement(DESCRIPTION, matrix.carries.as_deref().unwrap_or_default()),
        statement(NOTE, matrix.colour.as_deref().unwrap_or_default()),
        statement(NOTE, fate),
    ];
    let keeper = now.and_then(|now| now.holder.as_ref());
    let keeper = keeper.and_then(|holder| ids::agent(here, &holder.value));
    Node {
        classified_as: vec![kind.node()],
        identified_by: vec![parts::primary_name(title)],
        referred_to_by: statements.into_iter().flatten().collect(),
        shows: vec![ids::design(here, design)],
        current_custodian: keeper.into_iter().collect(),
        destroyed_by: now.and_then(|now| destruction(here, now)),
        subject_of: on_page(here, design, &DesignPart::Matrix(key.clone())),
        ..record
    }
}

fn destruction(here: &Here<'_>, now: &MatrixNow) -> Option<Box<Node>> {
    if now.state.value != MatrixFate::Destroyed {
        return None;
    }
    Node {
        timespan: now
            .date
            .as_ref()
            .and_then(|date| parts::timespan(here, &date.value)),
        ..Node::new("Destruction")
    }
    .boxed()
}

/// The place of a part on the page of its design.
fn on_page(here: &Here<'_>, design: &Design, part: &DesignPart) -> Vec<Node> {
    let page = Address::Design(design.key.clone());
    parts::subject_of(here, &page, Some(&part.to_string()))
}
