//! Citations in the RIS format: one tag a line, `TY` first and `ER` last (from memory; read back in
//! tests/reference by an independent library).

use super::item::{CitedItem, Name, items};
use super::{FOLDERS, RELATION, subjects};
use crate::exchange::format::Format;
use crate::page::{Here, Subject};

pub(in crate::exchange) const FORMAT: Format = Format {
    name: "ris",
    file: "citation.ris",
    folders: FOLDERS,
    media_type: "application/x-research-info-systems",
    relation: RELATION,
    subjects,
    write,
};

fn write(here: &Here<'_>, subject: &Subject) -> Option<Vec<u8>> {
    let records: String = items(here, subject).iter().map(record).collect();
    (!records.is_empty()).then(|| records.into_bytes())
}

fn record(item: &CitedItem) -> String {
    let mut lines = vec![
        ("TY", "ENCYC".to_owned()),
        ("ID", item.id.clone()),
        ("TI", item.title.clone()),
        ("ST", item.short.clone()),
        ("T2", item.catalogue.clone()),
    ];
    lines.extend(item.editors.iter().map(|name| match name {
        Name::Parts { family, given } => ("A2", format!("{family}, {given}")),
        Name::Whole(name) => ("A2", name.clone()),
    }));
    lines.extend(item.edition.iter().map(|edition| ("ET", edition.clone())));
    lines.extend(item.revised.iter().map(|note| ("N1", note.clone())));
    if let [year, rest @ ..] = &item.date[..] {
        lines.push(("PY", format!("{year:04}")));
        let part = |at: usize| rest.get(at).map_or_else(String::new, |n| format!("{n:02}"));
        lines.push(("DA", format!("{year:04}/{}/{}/", part(0), part(1))));
    }
    lines.push(("LA", item.language.clone()));
    lines.push(("UR", item.url.clone()));
    lines.push(("ER", String::new()));
    lines
        .into_iter()
        .map(|(tag, value)| format!("{tag}  - {}\r\n", in_one_line(&value)))
        .chain(["\r\n".to_owned()])
        .collect()
}

/// A text without line breaks, which would end the value.
fn in_one_line(text: &str) -> String {
    text.split(['\r', '\n'])
        .map(str::trim)
        .collect::<Vec<_>>()
        .join(" ")
}
