//! An impression as keys and tables, in the order of the template (`content/start`).

use super::draft::Withheld;
use super::parts::{Entry, Part, Sections};
use super::tables;
use super::values::{self, Keys, date, list, one_or_list, party, size, statements, word};
use crate::exchange::intake::toml_text::{key_text, text_value};
use crate::model::as_found::AsGiven;
use crate::model::impression::{Identification, Impression, StateReading};
use crate::model::point::{Observation, ObservedValue, Value};
use crate::model::sheet::{ConditionNote, Sheet, Watermark};
use crate::model::words::Standing;

/// The keys and tables of an impression.
#[must_use]
pub fn sections(impression: &Impression, withheld: &Withheld) -> Sections {
    let mut parts = Vec::new();
    let mut table = |name, entries: Vec<Entry>| {
        if !entries.is_empty() {
            parts.push(Part::Table(name, entries));
        }
    };
    if let Some(identified) = &impression.identified {
        table("identified", identification(identified));
    }
    let opinions = impression.opinions.iter().map(|opinion| {
        let mut keys = Keys::default();
        keys.text("said", opinion.said.as_deref());
        keys.word("after", opinion.after.as_ref());
        keys.0.extend(identification(&opinion.reading));
        keys.0
    });
    let opinions = opinions.collect();
    let mut later = Vec::new();
    let observed = impression.observed.iter().map(observation).collect();
    let blocks = impression.blocks.iter();
    let blocks = blocks
        .map(|(matrix, printed)| Entry::new(matrix.as_str(), word(&printed.value)))
        .collect();
    later.push(Part::Table("observed", observed));
    later.push(Part::Table("blocks", blocks));
    later.push(Part::Table("sheet", sheet(&impression.sheet)));
    if let Some(given) = &impression.as_given {
        later.push(Part::Table("as_given", as_given(given, withheld)));
    }
    let lists: [(&'static str, Vec<Vec<Entry>>); 4] = [
        ("marks", tables::marks(&impression.marks, withheld)),
        ("pictures", tables::pictures(&impression.pictures)),
        ("provenance", tables::provenance(&impression.provenance)),
        (
            "sightings",
            tables::sightings(&impression.sightings, withheld),
        ),
    ];
    parts.push(Part::List("opinions", opinions));
    parts.extend(later);
    parts.extend(lists.map(|(name, tables)| Part::List(name, tables)));
    parts.retain(|part| match part {
        Part::Table(name, entries) => *name == "as_given" || !entries.is_empty(),
        Part::List(_, tables) => !tables.is_empty(),
    });
    Sections {
        root: root(impression, withheld),
        parts,
    }
}

fn root(impression: &Impression, withheld: &Withheld) -> Vec<Entry> {
    let mut keys = Keys::default();
    keys.word("holder", impression.holder.as_ref());
    let owners = impression.owners.iter().map(|owner| party(owner, false));
    keys.several("owner", owners.collect());
    keys.placed("accession", impression.accession.as_ref());
    keys.placed("part", impression.part.as_ref());
    keys.tables(
        "former_accessions",
        &tables::former_accessions(&impression.former_accessions),
    );
    keys.text("credit", impression.credit.as_deref());
    keys.placed("web", impression.web.as_ref());
    keys.tables("ids", &tables::ids(&impression.ids));
    keys.word("status", Some(&impression.status));
    keys.add("kind", statements(&impression.kind, word));
    keys.word("taken_from", impression.taken_from.as_ref());
    keys.placed("numbering", impression.numbering.as_ref());
    keys.words("technique", &impression.technique);
    keys.words("without", &impression.without);
    keys.add("condition", condition(&impression.condition));
    keys.placed("provenance_line", impression.provenance_line.as_ref());
    keys.tables("exhibited", &tables::exhibited(&impression.exhibited));
    keys.tables("literature", &tables::citations(&impression.literature));
    keys.tables("same_as", &tables::other_sheets(&impression.same_as));
    keys.tables(
        "maybe_same_as",
        &tables::other_sheets(&impression.maybe_same_as),
    );
    keys.tables(
        "not_same_as",
        &tables::other_sheets(&impression.not_same_as),
    );
    keys.words("shares_sheet", &impression.shares_sheet);
    keys.words("goes_with", &impression.goes_with);
    keys.flag("publish", (!impression.publish).then_some(false));
    let standing = &impression.standing;
    if standing.standing != Standing::Accepted {
        keys.add("standing", Some(word(&standing.standing)));
    }
    keys.words("see", &standing.see);
    keys.text("why", standing.why.as_deref());
    let private = withheld.keys.iter().map(word);
    keys.add(
        "private",
        (!withheld.keys.is_empty()).then(|| list(private)),
    );
    keys.0
}

fn identification(reading: &Identification) -> Vec<Entry> {
    let Identification {
        state,
        printing,
        variant,
        kind,
        why,
        claim,
        or,
        place: _,
    } = reading;
    let mut keys = Keys::default();
    keys.add(
        "state",
        state.as_ref().map(|state| match state {
            StateReading::OneOf(states) => {
                one_or_list(states.iter().map(|state| word(&state.value)).collect())
            }
            StateReading::ByMatrix(pairs) => {
                let pairs: Vec<Entry> = pairs
                    .iter()
                    .map(|(matrix, state)| Entry::new(matrix.as_str(), word(&state.value)))
                    .collect();
                values::inline(&pairs)
            }
        }),
    );
    let printing = printing.iter().map(|printing| word(&printing.value));
    keys.several("printing", printing.collect());
    keys.word("variant", variant.as_ref());
    keys.word("kind", kind.as_ref());
    keys.0.extend(values::claim(claim));
    keys.text("why", why.as_deref());
    let or: Vec<Vec<Entry>> = or.iter().map(identification).collect();
    keys.tables("or", &or);
    keys.0
}

fn observation(observation: &Observation) -> Entry {
    let answers = |values: &[crate::model::place::Placed<Value>]| {
        one_or_list(values.iter().map(|value| answer(&value.value)).collect())
    };
    let (key, value) = match &observation.seen {
        ObservedValue::OneOf(values) => ("is", answers(values)),
        ObservedValue::NoneOf(values) => ("not", answers(values)),
        ObservedValue::NotVisible => ("is", word(&"not-visible")),
        ObservedValue::NotApplicable => ("is", word(&"not-applicable")),
    };
    let claim = values::claim(&observation.claim);
    let value = if key == "is" && claim.is_empty() {
        value
    } else {
        let mut entries = vec![Entry::new(key, value)];
        entries.extend(claim);
        values::inline(&entries)
    };
    Entry::new(observation.point.as_str(), value)
}

/// An answer. A measure keeps its point, since a whole number is a count.
fn answer(value: &Value) -> String {
    match value {
        Value::Word(key) => word(key),
        Value::Count(count) => count.to_string(),
        Value::Measure(measure) => format!("{measure:?}"),
    }
}

fn sheet(sheet: &Sheet) -> Vec<Entry> {
    let mut keys = Keys::default();
    for (key, sizes) in [
        ("size", &sheet.size),
        ("image", &sheet.image),
        ("platemark", &sheet.platemark),
        ("unsaid", &sheet.unsaid),
        ("support", &sheet.support),
        ("mount", &sheet.mount),
        ("frame", &sheet.frame),
    ] {
        keys.add(key, statements(sizes, size));
    }
    let measuring = &sheet.measuring;
    keys.word("by", measuring.by.as_ref());
    keys.date("measured", measuring.date.as_ref());
    keys.text("how", measuring.how.as_deref());
    keys.flag("sight", measuring.sight.then_some(true));
    keys.text("said", measuring.said.as_deref());
    keys.add("side", sheet.side.as_ref().map(word));
    keys.word("paper", sheet.paper.as_ref());
    keys.text("colour", sheet.colour.as_deref());
    for (key, number) in [
        ("chain_lines", &sheet.chain_lines),
        ("laid_lines", &sheet.laid_lines),
        ("thickness", &sheet.thickness),
    ] {
        let number = number.as_ref();
        keys.add(key, number.map(|number| values::number(number.value)));
    }
    keys.words("inks", &sheet.inks);
    keys.date("paper_date", sheet.paper_date.as_ref());
    keys.several("watermark", sheet.watermark.iter().map(watermark).collect());
    keys.text("margins", sheet.margins.as_deref());
    keys.text("mounted_on", sheet.mounted_on.as_deref());
    keys.add("date", statements(&sheet.date, date));
    keys.0
}

fn watermark(watermark: &Watermark) -> String {
    let mut keys = Keys::default();
    keys.text("text", watermark.text.as_deref());
    keys.tables("reference", &tables::citations(&watermark.reference));
    keys.text("place", watermark.at.as_deref());
    match (&watermark.text, keys.0.len()) {
        (Some(text), 1) => text_value(text),
        _ => values::inline(&keys.0),
    }
}

fn condition(notes: &[ConditionNote]) -> Option<String> {
    let notes = notes.iter().map(|note| {
        let mut keys = Keys::default();
        keys.text("what", Some(&note.what));
        keys.text("where", note.at.as_deref());
        keys.text("how", note.how.as_deref());
        keys.word("by", note.by.as_ref());
        keys.date("date", note.date.as_ref());
        match keys.0.len() {
            1 => text_value(&note.what),
            _ => values::inline(&keys.0),
        }
    });
    let notes: Vec<String> = notes.collect();
    (!notes.is_empty()).then(|| one_or_list(notes))
}

fn as_given(given: &AsGiven, withheld: &Withheld) -> Vec<Entry> {
    let mut keys = Keys::default();
    keys.date("seen", given.seen.as_ref());
    keys.placed("source", given.source.as_ref());
    keys.placed("lang", given.lang.as_ref());
    let private = withheld.given.iter().map(word);
    keys.add(
        "private",
        (!withheld.given.is_empty()).then(|| list(private)),
    );
    for field in &given.fields {
        keys.text(&field.name, Some(&field.text));
    }
    keys.0
}

/// The name of a key below a table, as TOML writes it: `sheet.image`, `as_given."Inv. No."`.
#[must_use]
pub fn dotted(table: &str, key: &str) -> String {
    format!("{table}.{}", key_text(key))
}
