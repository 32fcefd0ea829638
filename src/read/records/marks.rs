//! `marks/KEY.toml` and `marks/KEY.md`: marks that several sheets share.

use crate::model::catalogue::Catalogue;
use crate::model::finding::Finding;
use crate::model::key::Key;
use crate::model::mark::{MarkCondition, MarkRecord, RecordedUser};
use crate::model::occurrence::RecordId;
use crate::read::files::kind::FileKind;
use crate::read::files::load::Loaded;
use crate::read::records::citations;
use crate::read::records::parties::Kind;
use crate::read::shape::MARK_RECORD;
use crate::read::table::fields::Fields;
use crate::read::values;

/// Reads `marks/*.toml` and `marks/*.md`.
pub(crate) fn marks(loaded: &[Loaded], catalogue: &mut Catalogue, findings: &mut Vec<Finding>) {
    let files = Kind {
        shape: &MARK_RECORD,
        is_record: |what| match what {
            FileKind::Mark(key) => Some(key),
            _ => None,
        },
        is_note: |what| match what {
            FileKind::MarkNote(key) => Some(key),
            _ => None,
        },
        read: &mark,
        add_note: |mark, note| mark.note = note,
    };
    let read = files.read(loaded, &catalogue.former);
    findings.extend(read.findings);
    catalogue.redacted.texts.extend(read.texts);
    catalogue.redacted.marks.extend(read.public);
    catalogue.marks.extend(read.all);
    for (key, occurrences) in read.occurrences {
        occurrences.add_to(catalogue, RecordId::Mark(key));
    }
}

fn mark(fields: &mut Fields<'_, '_>, key: &Key) -> MarkRecord {
    MarkRecord {
        kind: fields.word("kind"),
        text: fields.text("text"),
        picture: fields.one("picture", values::picture_key),
        size: fields.statements("size", values::size),
        colour: fields.words("colour"),
        reference: citations::numbered(fields, "reference"),
        users: users(fields),
        conditions: conditions(fields),
        note: None,
        place: fields.at,
        key: key.clone(),
    }
}

fn users(fields: &mut Fields<'_, '_>) -> Vec<RecordedUser> {
    fields.tables("users", |fields| {
        let person = fields.key("person");
        let user = RecordedUser {
            from: fields.date("from"),
            to: fields.date("to"),
            claim: fields.claim(),
            person: person?,
        };
        Some(user)
    })
}

fn conditions(fields: &mut Fields<'_, '_>) -> Vec<MarkCondition> {
    let read = fields.keyed("conditions", |fields, key| {
        let condition = MarkCondition {
            summary: fields.words("summary"),
            from: fields.date("from"),
            to: fields.date("to"),
            key: key?,
        };
        Some(condition)
    });
    read.all
}
