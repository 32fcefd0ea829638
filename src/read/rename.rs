//! Plans the change of a key through every record: which places to edit and which files to rename. Nothing is written here.
//!
//! In: the files of a catalogue, a thing with a key ([`Named`]), and its new key. Out: a [`RenamePlan`], or why there is none.
//! References are found as references by former keys are ([`references::renewed`](super::references::renewed)): by the walk
//! along the declared keys, as if the new key stood already and named the old one in `was`. Only the bytes of each key
//! are replaced, so that comments, order and spacing stay.
//!
//! [`planned`] has the types of the result; [`own`] changes the key where it is defined, and adds it to `was`; [`things`] finds
//! what a key names.

mod own;
mod planned;
mod things;

use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;

pub use self::planned::RenamePlan;
pub use self::things::{KINDS, named};
use crate::model::finding::{Finding, Severity};
use crate::model::former::{FormerKey, FormerKeys, Named};
use crate::model::key::Key;
use crate::model::link::Target;
use crate::model::place::{Place, Placed};
use crate::read::assemble::read_inputs;
use crate::read::bibtex;
use crate::read::edits::Edits;
use crate::read::files::inputs::Inputs;
use crate::read::files::kind::FileKind;
use crate::read::files::load::Loaded;
use crate::read::records::record;
use crate::read::references::note;
use crate::read::references::renewed::{Renewal, Renewed, renewed, renewed_in_each};
pub use crate::read::refusal::Refusal;
use crate::read::shape::{
    CATALOGUE, DESIGN, DOCUMENT, EXHIBITION, HOLDER, IMPRESSION, MARK_RECORD, PERSON, SERIES,
    Shape, TERM,
};

/// Plans to give `thing` the key `new` in the catalogue in `dir`, whose files are `inputs`.
///
/// # Errors
/// [`Refusal`] where there is no such thing, where the new key is or was that of another, where a place cannot be edited,
/// and where the catalogue would have errors that it does not have now.
pub fn plan(dir: &Path, inputs: &Inputs, thing: &Named, new: &Key) -> Result<RenamePlan, Refusal> {
    let before = read_inputs(dir, inputs);
    things::check(&before.catalogue, thing, new)?;
    let former = FormerKeys::new(vec![FormerKey {
        of: thing.with_key(new),
        was: Placed::new(thing.key().clone(), Place::default()),
        is_public: true,
    }]);
    let mut plan = RenamePlan::default();
    for file in &inputs.loaded {
        let Some(source) = file.source() else {
            continue;
        };
        let path = inputs.sources.path(file.file);
        let mut edits = Edits::of(source.text);
        for reference in references(file, &former) {
            edits.key(path, reference.place, &reference.was, &reference.now)?;
        }
        own::edit(&mut edits, path, source.text, file, thing, new)?;
        if edits.is_empty() {
            continue;
        }
        plan.places.insert(path.to_owned(), edits.len());
        plan.texts.insert(path.to_owned(), edits.done());
    }
    own::moves(&mut plan, inputs, thing, new);
    check_result(dir, inputs, &plan, &before.findings)?;
    Ok(plan)
}

/// The references of a file to the thing.
fn references(file: &Loaded, former: &FormerKeys) -> Vec<Renewed> {
    let Some(source) = file.source() else {
        return Vec::new();
    };
    // References are changed in all records, published or not.
    let none_withheld = BTreeSet::new();
    let one = |shape: &'static Shape, design: Option<&Key>| {
        let renewal = Renewal {
            former,
            design,
            withheld: &none_withheld,
        };
        record::tree_alone(source, |tree| {
            Some(renewed(tree, shape, source.file, renewal)?.1)
        })
    };
    let many = |shape: &'static Shape| {
        let renewal = Renewal {
            former,
            design: None,
            withheld: &none_withheld,
        };
        record::tree_alone(source, |tree| {
            Some(renewed_in_each(tree, shape, source.file, renewal)?.1)
        })
    };
    let found = match &file.kind {
        FileKind::Settings => one(&CATALOGUE, None),
        FileKind::Design(key) => one(&DESIGN, Some(key)),
        FileKind::Impression(key) => one(&IMPRESSION, Some(&key.design)),
        FileKind::Holder(_) => one(&HOLDER, None),
        FileKind::Person(_) => one(&PERSON, None),
        FileKind::Mark(_) => one(&MARK_RECORD, None),
        FileKind::Document(_) => one(&DOCUMENT, None),
        FileKind::Series(_) => one(&SERIES, None),
        FileKind::Exhibitions => many(&EXHIBITION),
        FileKind::Terms(_) => many(&TERM),
        FileKind::Commentary(_)
        | FileKind::ImpressionNote(_)
        | FileKind::HolderNote(_)
        | FileKind::PersonNote(_)
        | FileKind::MarkNote(_)
        | FileKind::DocumentNote(_)
        | FileKind::SeriesNote(_)
        | FileKind::Transcription(_)
        | FileKind::Translation(..)
        | FileKind::Page(_) => {
            let links = file.note().map(|text| note::renewed(&text, former));
            return links.unwrap_or_default();
        }
        FileKind::Literature => {
            let all = bibtex::references(source.text, source.file).into_iter();
            return all
                .filter_map(|reference| {
                    let target = Target::Work(reference.value.clone());
                    let now = former.record(&target)?.key().to_string();
                    Some(Renewed {
                        place: reference.place,
                        was: reference.value.to_string(),
                        now,
                    })
                })
                .collect();
        }
        _ => None,
    };
    found.unwrap_or_default()
}

/// Reads the catalogue as it would be, and refuses what would give it an error that it does not have now.
fn check_result(
    dir: &Path,
    inputs: &Inputs,
    plan: &RenamePlan,
    before: &[Finding],
) -> Result<(), Refusal> {
    let mut bytes: BTreeMap<String, Vec<u8>> = BTreeMap::new();
    let texts: BTreeMap<&str, &str> = inputs
        .sources
        .paths()
        .map(|(file, path)| (path, inputs.sources.text(file)))
        .collect();
    for path in inputs.locations.keys() {
        let text = plan.texts.get(path).map(String::as_str);
        let text = text.or_else(|| texts.get(path.as_str()).copied());
        let content = text.unwrap_or_default().as_bytes().to_vec();
        bytes.insert(moved(plan, path), content);
    }
    for (path, text) in &plan.texts {
        bytes.insert(moved(plan, path), text.clone().into_bytes());
    }
    let after = read_inputs(dir, &Inputs::of_bytes(&bytes));
    let errors = |findings: &[Finding]| {
        let mut errors: BTreeMap<&'static str, usize> = BTreeMap::new();
        let all = findings.iter().filter(|f| f.severity() == Severity::Error);
        for finding in all {
            *errors.entry(finding.code.as_str()).or_default() += 1;
        }
        errors
    };
    let known = errors(before);
    let is_new = |finding: &&Finding| {
        let code = finding.code.as_str();
        let count = errors(&after.findings).get(code).copied();
        finding.severity() == Severity::Error && count > known.get(code).copied()
    };
    let Some(finding) = after.findings.iter().find(is_new) else {
        return Ok(());
    };
    let at = after.catalogue.sources.position(finding.at.place);
    let path = after.catalogue.sources.path(finding.at.place.file);
    Err(Refusal::of_records(
        format!(
            "the catalogue would then have an error: {path}:{}: {}",
            at.line, finding.message
        ),
        "change this place by hand first",
    ))
}

/// A path as it is after the moves of a plan.
fn moved(plan: &RenamePlan, path: &str) -> String {
    for (from, to) in &plan.moves {
        if path == from {
            return to.clone();
        }
        if let Some(rest) = path
            .strip_prefix(from.as_str())
            .filter(|r| r.starts_with('/'))
        {
            return format!("{to}{rest}");
        }
    }
    path.to_owned()
}
