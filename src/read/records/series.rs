//! `series/KEY.toml` and `series/KEY.md`.

use crate::model::catalogue::Catalogue;
use crate::model::certainty::Claim;
use crate::model::codes::Code;
use crate::model::design::{Title, TitleKind};
use crate::model::finding::Finding;
use crate::model::key::Key;
use crate::model::occurrence::RecordId;
use crate::model::series::SeriesRecord;
use crate::read::files::kind::FileKind;
use crate::read::files::load::Loaded;
use crate::read::records::design::titles;
use crate::read::records::parties::Kind;
use crate::read::shape::SERIES;
use crate::read::table::fields::Fields;
use crate::read::values;

/// Reads `series/*.toml` and `series/*.md`.
pub(crate) fn all(loaded: &[Loaded], catalogue: &mut Catalogue, findings: &mut Vec<Finding>) {
    let files = Kind {
        shape: &SERIES,
        is_record: |what| match what {
            FileKind::Series(key) => Some(key),
            _ => None,
        },
        is_note: |what| match what {
            FileKind::SeriesNote(key) => Some(key),
            _ => None,
        },
        read: &series,
        add_note: |series, note| series.note = note,
    };
    let read = files.read(loaded, &catalogue.former);
    findings.extend(read.findings);
    catalogue.redacted.texts.extend(read.texts);
    catalogue.redacted.series.extend(read.public);
    catalogue.series.extend(read.all);
    for (key, occurrences) in read.occurrences {
        occurrences.add_to(catalogue, RecordId::Series(key));
    }
}

fn series(fields: &mut Fields<'_, '_>, key: &Key) -> SeriesRecord {
    SeriesRecord {
        titles: title_or_titles(fields),
        publisher: fields.statements("publisher", values::key),
        date: fields.statements("date", values::date),
        issued: fields.word("issued"),
        number: fields.statements("number", values::whole(1, 10_000)),
        remark: fields.words("note"),
        standing: fields.stands(),
        note: None,
        place: fields.at,
        key: key.clone(),
    }
}

/// `title`, or `titles` in its place.
fn title_or_titles(fields: &mut Fields<'_, '_>) -> Vec<Title> {
    if let (Some(one), Some(several)) = (fields.key_place("title"), fields.key_place("titles")) {
        let finding = Finding::new(
            Code::KeyTwice,
            several,
            "the series has both `title` and `titles`",
        );
        fields.faults.push(
            finding
                .beside(one, "the one title")
                .help("move the title into `titles`: { text = \"…\" }"),
        );
    }
    let title = fields.text("title").map(|text| Title {
        text,
        lang: None,
        kind: TitleKind::Usual,
        supplied: false,
        claim: Claim::default(),
    });
    let titles = titles(fields);
    if titles.is_empty() {
        title.into_iter().collect()
    } else {
        titles
    }
}
