//! `impressions/N.toml`: one sheet, its observations, its identification.

use toml::de::DeValue;

use crate::model::codes::Code;
use crate::model::finding::Finding;
use crate::model::impression::{
    BlockPrinted, Exhibited, FormerAccession, Identification, Impression, Opinion, OtherSheet,
    StateReading, Status,
};
use crate::model::key::{ImpressionKey, Key};
use crate::model::mark::Mark;
use crate::model::place::Placed;
use crate::model::words::ClosedList;
use crate::read::faults::{Faults, Node};
use crate::read::records::as_found;
use crate::read::records::citations;
use crate::read::records::pictures::{self, Folder};
use crate::read::records::points::{Points, observed};
use crate::read::records::provenance::{party, provenance, sightings};
use crate::read::records::sheet;
use crate::read::table::fields::{Fields, in_order};
use crate::read::values;
use crate::read::values::numbered::state_by_number;

/// An impression's record as it was read.
pub(crate) struct ImpressionRecord {
    /// The impression, without its notes.
    pub(crate) impression: Impression,
    /// Whether some picture could not be read.
    pub(crate) lacks_pictures: bool,
}

/// Reads an impression's record.
pub(crate) fn impression(
    fields: &mut Fields<'_, '_>,
    key: &ImpressionKey,
    points: &Points,
    folder: &Folder<'_>,
) -> ImpressionRecord {
    let pictures = pictures::pictures(fields, |fields| pictures::picture(fields, folder));
    // An impression whose status cannot be read is taken to be located, because it is recorded.
    let status = fields.word("status");
    let status = status.unwrap_or(Placed::new(Status::Located, fields.at));
    let impression = Impression {
        key: key.clone(),
        holder: fields.key("holder"),
        owners: fields.several("owner", party),
        accession: fields.text("accession"),
        part: part(fields),
        former_accessions: former_accessions(fields),
        credit: fields.words("credit"),
        web: fields.one("web", values::web),
        ids: as_found::ids(fields),
        status,
        kind: fields.statements("kind", values::term),
        taken_from: fields.one("taken_from", values::impression_key),
        numbering: fields.text("numbering"),
        technique: fields.keys("technique"),
        identified: fields.table("identified", |fields| identification(fields, points)),
        opinions: opinions(fields, points),
        observed: observed(fields, points),
        blocks: blocks(fields),
        without: fields.several("without", values::word),
        sheet: sheet::sheet(fields),
        marks: marks(fields),
        condition: sheet::condition(fields),
        as_given: as_found::as_given(fields),
        pictures: pictures.all,
        provenance: provenance(fields),
        provenance_line: fields.text("provenance_line"),
        sightings: sightings(fields),
        exhibited: exhibited(fields),
        literature: citations::of_sheet(fields, "literature"),
        same_as: other_sheets(fields, "same_as"),
        maybe_same_as: other_sheets(fields, "maybe_same_as"),
        not_same_as: other_sheets(fields, "not_same_as"),
        shares_sheet: fields.several("shares_sheet", values::impression_key),
        goes_with: fields.several("goes_with", values::impression_key),
        publish: fields.flag("publish").unwrap_or(true),
        standing: fields.stands(),
        note: None,
        place: fields.at,
    };
    ImpressionRecord {
        impression,
        lacks_pictures: pictures.lacks_some,
    }
}

/// The part of the accession number, which means nothing without the number.
fn part(fields: &mut Fields<'_, '_>) -> Option<Placed<String>> {
    let part = fields.text("part");
    if part.is_some() && !fields.has("accession") {
        fields.missing(
            &["accession"],
            "`accession` beside `part`",
            "add the number that several sheets have, or remove `part`",
        );
    }
    part
}

fn former_accessions(fields: &mut Fields<'_, '_>) -> Vec<FormerAccession> {
    fields.tables("former_accessions", |fields| {
        let number = fields.words("number");
        let former = FormerAccession {
            holder: fields.key("holder"),
            until: fields.date("until"),
            number: number?,
        };
        Some(former)
    })
}

/// Reads a table of identification: `[identified]`, or one of `or`.
fn identification(fields: &mut Fields<'_, '_>, points: &Points) -> Identification {
    Identification {
        state: fields.one("state", |faults, node| {
            state_reading(faults, node, &points.states)
        }),
        printing: fields.keys("printing"),
        variant: fields.key("variant"),
        kind: fields.term("kind"),
        why: fields.words("why"),
        claim: fields.claim(),
        or: fields.tables("or", |fields| Some(identification(fields, points))),
        place: fields.at,
    }
}

fn opinions(fields: &mut Fields<'_, '_>, points: &Points) -> Vec<Opinion> {
    fields.tables("opinions", |fields| {
        let opinion = Opinion {
            said: fields.words("said"),
            after: fields.key("after"),
            reading: identification(fields, points),
        };
        Some(opinion)
    })
}

/// One state, several, or a table of matrix and state. `known`: the states of the design.
fn state_reading<'t>(
    faults: &mut Faults<'t>,
    node: &'t Node<'t>,
    known: &[Key],
) -> Option<StateReading> {
    let DeValue::Table(table) = node.get_ref() else {
        let states = values::several(faults, node, |faults, node| state(faults, node, known));
        return (!states.is_empty()).then_some(StateReading::OneOf(states));
    };
    let pairs: Vec<_> = in_order(table)
        .into_iter()
        .filter_map(|(matrix, node)| {
            let place = faults.place(matrix.span());
            let matrix = values::key_from(faults, matrix.get_ref(), place);
            let state = state(faults, node, known);
            Some((matrix?, state?))
        })
        .collect();
    (!pairs.is_empty()).then_some(StateReading::ByMatrix(pairs))
}

/// The key of a state. A number is no key: which state it counts is computed, and differs once a state is inserted.
fn state<'t>(faults: &mut Faults<'t>, node: &'t Node<'t>, known: &[Key]) -> Option<Placed<Key>> {
    let DeValue::Integer(number) = node.get_ref() else {
        return values::key(faults, node);
    };
    let number = usize::from_str_radix(number.as_str(), number.radix()).ok();
    let known = known.iter().map(Key::as_str);
    let message = "`state` takes the key of a state in quotes, not a number";
    let finding = Finding::new(Code::ValueType, faults.of(node), message);
    faults.push(finding.help(state_by_number(number, known)));
    None
}

fn blocks(fields: &mut Fields<'_, '_>) -> Vec<(Placed<Key>, Placed<BlockPrinted>)> {
    fields.map("blocks", |faults, header, entry| {
        let is_word = entry
            .node
            .get_ref()
            .as_str()
            .and_then(BlockPrinted::from_word)
            .is_some();
        if !is_word && faults.swallowed(entry.key, header, false) {
            return None;
        }
        let matrix = entry.read_key(faults);
        let printed = values::word(faults, entry.node);
        Some((matrix?, printed?))
    })
}

fn marks(fields: &mut Fields<'_, '_>) -> Vec<Mark> {
    fields.tables("marks", |fields| {
        let mark = Mark {
            record: fields.key("mark"),
            condition: fields.key("condition"),
            kind: fields.word("kind"),
            medium: fields.words("medium"),
            text: fields.words("text"),
            at: fields.words("place"),
            side: fields.word("side").map(|side| side.value),
            whose: fields.key("whose"),
            applied_by: fields.key("applied_by"),
            applied: fields.date("applied"),
            colour: fields.words("colour"),
            number: fields.words("number"),
            note: fields.words("note"),
            claim: fields.claim(),
            place: fields.at,
        };
        Some(mark)
    })
}

fn exhibited(fields: &mut Fields<'_, '_>) -> Vec<Exhibited> {
    fields.tables("exhibited", |fields| {
        let exhibition = fields.key("exhibition");
        let at = fields.words("at");
        let this_sheet = fields.word("this_sheet");
        let illustrated = fields.flag("illustrated");
        Some(Exhibited {
            exhibition: exhibition?,
            at,
            this_sheet,
            illustrated,
        })
    })
}

fn other_sheets(fields: &mut Fields<'_, '_>, name: &'static str) -> Vec<OtherSheet> {
    fields.tables(name, |fields| {
        let impression = fields.one("impression", values::impression_key);
        let why = fields.words("why");
        Some(OtherSheet {
            impression: impression?,
            why,
        })
    })
}
