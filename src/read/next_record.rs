//! Plans the next record: its path and its text, made from the template of its kind. Nothing is written here.
//!
//! In: the files of a catalogue, what to add ([`NewRecord`]) and what is known of it ([`Given`]). Out: a [`RecordPlan`], or why
//! there is none. The text is the template of `keyblock start` in which every key is commented out but those that were
//! given; for an impression the points, states, printings and blocks are those of its design. The catalogue is read with it,
//! so a record with an error is refused.
//!
//! [`planned`] has the types; [`keys`] finds the key; [`template`] fills the template; [`of_design`] makes the parts that
//! depend on the design, and [`series`] that of a design's series.

mod keys;
mod of_design;
mod planned;
mod series;
mod template;

use std::collections::BTreeMap;
use std::path::Path;

pub use self::keys::{FreeDesignKeys, FreeImpressionKeys};
pub use self::planned::{Given, NewRecord, RecordPlan};
pub use self::planned::{IN_SERIES, POSITION};
use crate::model::finding::Severity;
use crate::model::impression::Status;
use crate::model::link::Target;
use crate::model::words::ClosedList as _;
use crate::read::assemble::read_inputs;
use crate::read::files::inputs::Inputs;
use crate::read::refusal::Refusal;
use crate::read::start::start_files;

/// Plans to add a record to the catalogue in `dir`, whose files are `inputs`.
///
/// # Errors
/// [`Refusal`] where the key is or was that of another record, where the design is unknown, and where the record would have
/// an error.
pub fn plan(
    dir: &Path,
    inputs: &Inputs,
    new: &NewRecord,
    given: &[Given],
) -> Result<RecordPlan, Refusal> {
    let catalogue = read_inputs(dir, inputs).catalogue;
    let mut given = given.to_vec();
    let target = keys::target(&catalogue, inputs, new, &mut given)?;
    add_what_is_needed(new, &mut given);
    let path = planned::path_of(&target);
    let mut parts = match &target {
        Target::Impression(key) => catalogue
            .designs
            .get(&key.design)
            .map(of_design::parts)
            .unwrap_or_default(),
        _ => Vec::new(),
    };
    let given_as = |key: &str| given.iter().find(|given| given.key == key);
    let position = given_as(POSITION).map(|position| position.value.as_str());
    let in_series =
        given_as(IN_SERIES).map(|name| series::place(&catalogue, &name.value, position));
    let in_series = in_series.transpose()?;
    let (part, remark) = in_series.map(|place| (place.part, place.remark)).unzip();
    parts.extend(part);
    let has_schemas = dir.join("schema").is_dir();
    let head = head(&target, has_schemas);
    let at_root: Vec<Given> = given.iter().filter(|g| g.is_at_root()).cloned().collect();
    let text = template::filled(&template_of(&target), &head, &at_root, &parts);
    check_result(dir, inputs, &path, &text)?;
    Ok(RecordPlan {
        target,
        path,
        text,
        is_filled: given.iter().map(|given| given.key).collect(),
        remark: remark.flatten(),
    })
}

/// Adds what every such record must have, where it was not given.
fn add_what_is_needed(new: &NewRecord, given: &mut Vec<Given>) {
    let has = |given: &[Given], key: &str| given.iter().any(|given| given.key == key);
    match new {
        NewRecord::Impression { .. } if !has(given, "status") => {
            let status = if has(given, "holder") {
                Status::Located
            } else {
                Status::Untraced
            };
            given.push(Given::text("status", status.word()));
        }
        NewRecord::Design { .. } if !has(given, "titles") => {
            given.push(Given::written(
                "titles",
                "[{ text = \"Untitled\", supplied = true }]".to_owned(),
            ));
        }
        NewRecord::Holder { .. } if !has(given, "kind") => {
            given.push(Given::text("kind", "unknown"));
        }
        _ => {}
    }
}

/// The template of the kind of a record.
fn template_of(target: &Target) -> String {
    let path = match target {
        Target::Design(_) => "records/designs/1/design.toml",
        Target::Impression(_) => "records/designs/1/impressions/1.toml",
        Target::Holder(_) => "records/holders/town-museum.toml",
        Target::Person(_) => "records/people/artist.toml",
        Target::Mark(_) => "records/marks/studio-seal.toml",
        Target::Series(_) => "records/series/roofs.toml",
        _ => "records/documents/publishers-letter.toml",
    };
    let files = start_files();
    let template = files.into_iter().find(|(at, _)| at == path);
    let bytes = template.map(|(_, bytes)| bytes).unwrap_or_default();
    String::from_utf8(bytes).unwrap_or_default()
}

/// The lines above the first key.
fn head(target: &Target, has_schemas: bool) -> template::Head {
    let name = match target {
        Target::Impression(key) => format!("Impression {key}."),
        Target::Design(key) => format!("Design {key}."),
        other => format!("{}:{}", other.kind(), other.key()),
    };
    template::Head {
        has_schema: has_schemas,
        lines: vec![
            format!(
                "# {name} A line that begins with \"#\" and no space is a key that you may use: remove the \"#\" and"
            ),
            "# write your own value; the values are examples. Delete what you do not need."
                .to_owned(),
        ],
    }
}

/// Reads the catalogue with the record, and refuses a record that has an error.
fn check_result(dir: &Path, inputs: &Inputs, path: &str, text: &str) -> Result<(), Refusal> {
    let added = BTreeMap::from([(path.to_owned(), text.as_bytes().to_vec())]);
    let reading = read_inputs(dir, &inputs.with(&added));
    let sources = &reading.catalogue.sources;
    let fault = reading.findings.iter().find(|finding| {
        finding.severity() == Severity::Error && sources.path(finding.at.place.file) == path
    });
    match fault {
        None => Ok(()),
        Some(finding) => Err(Refusal::usage(
            finding.message.clone(),
            finding.help.clone().unwrap_or_default(),
        )),
    }
}
