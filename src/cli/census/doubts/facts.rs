//! What two records state, row by row, as recorded, private fields included.

use serde::Serialize;

use crate::model::catalogue::Catalogue;
use crate::model::certainty::{Certainty, Claim, Statements};
use crate::model::impression::{Impression, StateReading};
use crate::model::key::Key;
use crate::model::literature::Cited;
use crate::model::mark::Mark;
use crate::model::place::Placed;
use crate::model::provenance::{Party, PartyRole, ProvenanceEntry, Sighting};
use crate::model::sheet::{ConditionNote, Sheet, Watermark};
use crate::model::size::Size;

/// One subject, and what each of the two records states of it.
#[derive(Debug, Serialize)]
pub(super) struct Row {
    label: &'static str,
    /// What the first record states, in lines; empty where it states nothing.
    one: Vec<String>,
    other: Vec<String>,
    /// Whether both state the same.
    is_same: bool,
}

/// Everything by which two records can be compared. Rows of which neither record states anything are left
/// out.
pub(super) fn rows(catalogue: &Catalogue, one: &Impression, other: &Impression) -> Vec<Row> {
    let facts = facts(catalogue, one)
        .into_iter()
        .zip(facts(catalogue, other));
    facts
        .filter(|((_, one), (_, other))| !one.is_empty() || !other.is_empty())
        .map(|((label, one), (_, other))| Row {
            label,
            is_same: one == other,
            one,
            other,
        })
        .collect()
}

fn facts(catalogue: &Catalogue, impression: &Impression) -> Vec<(&'static str, Vec<String>)> {
    let names = Names(catalogue);
    let sheet = &impression.sheet;
    let text = |text: Option<&String>| text.cloned().into_iter().collect::<Vec<_>>();
    vec![
        ("status", vec![impression.status.value.to_string()]),
        (
            "holder",
            impression
                .holder
                .iter()
                .map(|k| names.of(&k.value))
                .collect(),
        ),
        (
            "owner",
            impression.owners.iter().map(|p| names.party(p)).collect(),
        ),
        (
            "number there",
            impression.accession_and_part().into_iter().collect(),
        ),
        (
            "numbers before",
            impression
                .former_accessions
                .iter()
                .map(|former| {
                    let holder = former.holder.as_ref().map(|k| names.of(&k.value));
                    joined([Some(former.number.clone()), holder])
                })
                .collect(),
        ),
        ("kind", statements(&impression.kind, Key::to_string)),
        (
            "numbering",
            text(impression.numbering.as_ref().map(|n| &n.value)),
        ),
        ("taken to be", taken_to_be(impression)),
        ("sheet", statements(&sheet.size, in_mm)),
        ("image", statements(&sheet.image, in_mm)),
        ("platemark", statements(&sheet.platemark, in_mm)),
        ("size, part not stated", statements(&sheet.unsaid, in_mm)),
        ("secondary support", statements(&sheet.support, in_mm)),
        ("mount", statements(&sheet.mount, in_mm)),
        ("frame", statements(&sheet.frame, in_mm)),
        ("measured", names.measuring(sheet)),
        (
            "paper",
            sheet.paper.iter().map(|k| k.value.to_string()).collect(),
        ),
        ("colour of the paper", text(sheet.colour.as_ref())),
        (
            "chain lines",
            number(sheet.chain_lines.as_ref(), "mm apart"),
        ),
        (
            "laid lines",
            number(sheet.laid_lines.as_ref(), "to the centimetre"),
        ),
        ("thickness", number(sheet.thickness.as_ref(), "mm")),
        (
            "inks",
            sheet.inks.iter().map(|ink| ink.value.clone()).collect(),
        ),
        (
            "watermark",
            sheet.watermark.iter().map(|w| names.watermark(w)).collect(),
        ),
        ("margins", text(sheet.margins.as_ref())),
        ("laid down on", text(sheet.mounted_on.as_ref())),
        (
            "marks",
            impression
                .marks
                .iter()
                .map(|mark| names.mark(mark))
                .collect(),
        ),
        (
            "looked for, not found",
            impression
                .without
                .iter()
                .map(|w| w.value.to_string())
                .collect(),
        ),
        (
            "condition",
            impression
                .condition
                .iter()
                .map(|note| names.condition(note))
                .collect(),
        ),
        (
            "provenance",
            impression
                .provenance
                .iter()
                .map(|e| names.entry(e))
                .collect(),
        ),
        (
            "seen",
            impression
                .sightings
                .iter()
                .map(|s| names.sighting(s))
                .collect(),
        ),
        (
            "exhibited",
            impression
                .exhibited
                .iter()
                .map(|shown| {
                    let key = &shown.exhibition.value;
                    let exhibition = catalogue.exhibitions.get(key);
                    let title =
                        exhibition.map_or_else(|| key.to_string(), |e| e.title.value.clone());
                    let date = exhibition
                        .and_then(|e| e.date.as_ref())
                        .map(|d| d.value.to_string());
                    let certainty = shown.this_sheet.as_ref();
                    let certainty = certainty.filter(|said| said.value != Certainty::Certain);
                    let certainty = certainty.map(|said| format!("{} this sheet", said.value));
                    joined([Some(title), date, shown.at.clone(), certainty])
                })
                .collect(),
        ),
    ]
}

fn in_mm(size: &Size) -> String {
    format!("{size} mm")
}

fn number(value: Option<&Placed<f64>>, unit: &str) -> Vec<String> {
    value
        .iter()
        .map(|value| format!("{} {unit}", value.value))
        .collect()
}

fn statements<T>(all: &Statements<T>, word: impl Fn(&T) -> String) -> Vec<String> {
    all.iter()
        .map(|statement| format!("{}{}", word(&statement.is.value), doubt(&statement.claim)))
        .collect()
}

/// " (probable)", where something is not certain.
fn doubt(claim: &Claim) -> String {
    match claim.certainty() {
        Certainty::Certain => String::new(),
        certainty => format!(" ({certainty})"),
    }
}

fn taken_to_be(impression: &Impression) -> Vec<String> {
    let Some(identified) = &impression.identified else {
        return Vec::new();
    };
    let keys = |keys: Vec<&Key>| {
        let keys: Vec<&str> = keys.iter().map(|key| key.as_str()).collect();
        (!keys.is_empty()).then(|| keys.join(" or "))
    };
    let state = identified.state.as_ref().and_then(|state| match state {
        StateReading::OneOf(states) => keys(states.iter().map(|s| &s.value).collect()),
        StateReading::ByMatrix(_) => Some("blocks in different conditions".to_owned()),
    });
    let printing = keys(identified.printing.iter().map(|p| &p.value).collect());
    let state = state.map(|state| format!("state {state}"));
    let printing = printing.map(|printing| format!("printing {printing}"));
    let reading = joined([state, printing]) + &doubt(&identified.claim);
    [Some(reading), identified.why.clone()]
        .into_iter()
        .flatten()
        .collect()
}

/// The texts that are present, joined by commas.
fn joined<const N: usize>(texts: [Option<String>; N]) -> String {
    let texts: Vec<String> = texts
        .into_iter()
        .flatten()
        .filter(|s| !s.is_empty())
        .collect();
    texts.join(", ")
}

/// Gives names as they are recorded, private or not: the page is for editors.
struct Names<'a>(&'a Catalogue);

impl Names<'_> {
    fn of(&self, key: &Key) -> String {
        let person = self.0.people.get(key).map(|person| &person.name.value);
        let holder = || self.0.holders.get(key).map(|holder| &holder.name.value);
        person
            .or_else(holder)
            .map_or_else(|| key.to_string(), |name| format!("{name} ({key})"))
    }

    fn party(&self, party: &Party) -> String {
        match party {
            Party::Record(key) => self.of(&key.value),
            Party::Named(name) => name.value.clone(),
            Party::Undisclosed => "someone undisclosed".to_owned(),
        }
    }

    fn measuring(&self, sheet: &Sheet) -> Vec<String> {
        let measuring = &sheet.measuring;
        let by = measuring.by.as_ref().map(|by| self.of(&by.value));
        let date = measuring.date.as_ref().map(|date| date.value.to_string());
        let sight = measuring
            .sight
            .then(|| "within a mount or frame".to_owned());
        let said = measuring.said.as_ref().map(|said| format!("“{said}”"));
        let how = joined([by, date, measuring.how.clone(), sight, said]);
        (!how.is_empty()).then_some(how).into_iter().collect()
    }

    fn watermark(&self, watermark: &Watermark) -> String {
        let cited = watermark.reference.iter().map(|citation| {
            let short = self.cited(&citation.cite);
            joined([Some(short), citation.at.clone(), citation.number.clone()])
        });
        let cited = cited.collect::<Vec<_>>().join("; ");
        joined([watermark.text.clone(), watermark.at.clone(), Some(cited)])
    }

    fn condition(&self, note: &ConditionNote) -> String {
        let by = note.by.as_ref().map(|by| self.of(&by.value));
        let date = note.date.as_ref().map(|date| date.value.to_string());
        joined([
            Some(note.what.clone()),
            note.at.clone(),
            note.how.clone(),
            by,
            date,
        ])
    }

    fn cited(&self, cite: &Placed<Cited>) -> String {
        let work = cite.work().and_then(|key| self.0.literature.get(key));
        work.map_or_else(|| cite.value.to_string(), |work| work.short.clone())
    }

    fn mark(&self, mark: &Mark) -> String {
        let mark = self.0.described_mark(mark);
        let kind = mark.kind.as_ref().map(|kind| kind.value.to_string());
        let text = mark.text.as_ref().map(|text| format!("“{text}”"));
        let whose = mark.whose.as_ref().map(|key| self.of(&key.value));
        let side = mark.side.map(|side| side.to_string());
        let place = mark.at.clone();
        let medium = mark.medium.clone();
        joined([kind, text, whose, medium, place, side, mark.number.clone()]) + &doubt(&mark.claim)
    }

    fn entry(&self, entry: &ProvenanceEntry) -> String {
        let who = self.party(&entry.party);
        let who = match entry.role {
            PartyRole::Owner => who,
            PartyRole::Agent => format!("{who}, agent"),
            PartyRole::Keeper => format!("{who}, keeper"),
        };
        let date = |date: &Option<crate::model::place::Placed<crate::model::edtf::Date>>| {
            date.as_ref().map(|date| date.value.to_string())
        };
        let when = match (date(&entry.from), date(&entry.to)) {
            (Some(from), Some(to)) => Some(format!("{from} to {to}")),
            (Some(from), None) => Some(format!("from {from}")),
            (None, Some(to)) => Some(format!("until {to}")),
            (None, None) => None,
        };
        let lot = entry.lot.as_ref().map(|lot| format!("lot {lot}"));
        let how = entry.how.as_ref().map(|how| how.value.to_string());
        let perhaps = entry
            .this_sheet
            .as_ref()
            .filter(|c| c.value != Certainty::Certain)
            .map(|c| format!("{} this sheet", c.value));
        joined([Some(who), when, how, entry.at_place.clone(), lot, perhaps]) + &doubt(&entry.claim)
    }

    fn sighting(&self, sighting: &Sighting) -> String {
        let by = sighting.by.as_ref().map(|by| self.party(by));
        let basis = sighting.basis.as_ref().map(|basis| basis.value.to_string());
        let cite = sighting.cite.as_ref().map(|cite| self.cited(cite));
        let date = Some(sighting.date.value.to_string());
        joined([date, by, basis, cite, sighting.at.clone()])
    }
}
