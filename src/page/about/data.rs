//! The data: what can be taken from the catalogue, for whom, in which form, and on what terms.

use serde::Serialize;

use super::catalogue_notes::contact;
use crate::page::phrases::rights;
use crate::page::setting::address::{Address, Overview};
use crate::page::setting::book::Here;
use crate::page::setting::exports::TableNotes;
use crate::page::setting::html::CleanHtml;
use crate::page::setting::leaf::Leaf;
use crate::page::setting::words::{Argument, Words};
use crate::page::texts::catalogue_pages;
use crate::page::texts::long_text::TextPart;
use crate::page::texts::markdown::{self, Placement};

#[derive(Serialize)]
struct View {
    title: String,
    brief: Option<String>,
    /// The catalogue's own text, before the theme's.
    text: Option<CleanHtml>,
    /// What there is.
    offers: TextPart,
    tables: Vec<TableLine>,
    /// The address of the description of all tables.
    package: String,
    /// The page of all columns.
    fields: String,
    parts: Vec<TextPart>,
}

/// A table, as a line of the list of tables.
#[derive(Serialize)]
struct TableLine {
    name: CleanHtml,
    about: String,
    rows: usize,
    csv: FileLink,
    json: FileLink,
}

#[derive(Serialize)]
struct FileLink {
    href: String,
    size: String,
}

/// What a column of a table holds, in words: those for the column of this table, else for every column of that
/// name, else for names that end alike.
pub(crate) fn column_meaning(words: &Words, table: &str, column: &str) -> String {
    let name = column.replace('_', "-");
    let own = words.find(&format!("field-{table}-{name}"));
    if let Some(found) = own.or_else(|| words.find(&format!("field-{name}"))) {
        return found.to_owned();
    }
    match column.rsplit_once('_') {
        Some((of, ending)) => {
            let id = format!("field-ends-{ending}");
            words.with(&id, &[("of", Argument::Text(&of.replace('_', " ")))])
        }
        None => column.to_owned(),
    }
}

pub(crate) fn page(here: &Here<'_>) -> Leaf {
    let words = here.words();
    let overview = Overview::Data;
    let title = catalogue_pages::title(here.public(), words, overview).to_owned();
    let own = catalogue_pages::opening(here.public(), overview);
    let view = View {
        title: title.clone(),
        brief: words
            .find("data-brief")
            .filter(|_| own.is_none())
            .map(str::to_owned),
        text: own.map(|page| markdown::html(&page.note.text, here, Placement::Page)),
        offers: listed(here, "data-offers"),
        tables: tables(here),
        package: here.href_file("data/datapackage.json"),
        fields: here.href(&Address::FieldNotes),
        parts: parts(here),
    };
    Leaf::new(here.address, title, "pages/data.html", &view)
}

fn tables(here: &Here<'_>) -> Vec<TableLine> {
    let fields = here.href(&Address::FieldNotes);
    let tables = here.book.exports.tables.iter();
    tables
        .map(|table| {
            let word = |id: String| here.words().word(&id).to_owned();
            let name = word(format!("table-{}", table.name));
            let href = format!("{fields}#{}", fragment(table));
            TableLine {
                name: CleanHtml::link(&href, &CleanHtml::text(&name)),
                about: word(format!("table-{}-about", table.name)),
                rows: table.rows,
                csv: file(here, table, "csv", table.csv_bytes),
                json: file(here, table, "json", table.json_bytes),
            }
        })
        .collect()
}

fn file(here: &Here<'_>, table: &TableNotes, ending: &str, bytes: usize) -> FileLink {
    FileLink {
        href: here.href_file(&format!("data/{}.{ending}", table.name)),
        size: size(here.words(), bytes),
    }
}

/// "12 kB"; from ten thousand on, "12 MB".
fn size(words: &Words, bytes: usize) -> String {
    let kilobytes = bytes.div_ceil(1000);
    if kilobytes < 10_000 {
        words.count("size-kilobytes", kilobytes)
    } else {
        words.count("size-megabytes", kilobytes.div_ceil(1000))
    }
}

/// The id of a table on the page of its columns.
pub(super) fn fragment(table: &TableNotes) -> String {
    format!("table-{}", table.name)
}

/// A part with the texts `HEADING-1`, `HEADING-2` … as a list.
fn listed(here: &Here<'_>, heading: &str) -> TextPart {
    let words = here.words();
    let mut part = TextPart::of_word(here, heading);
    part.items = (1..)
        .map_while(|n| words.find(&format!("{heading}-{n}")))
        .map(CleanHtml::text)
        .collect();
    part
}

/// The files beside the pages, format by format.
fn beside(here: &Here<'_>) -> TextPart {
    let mut part = TextPart::new(here, "data-beside", &CleanHtml::empty());
    part.items = here.exports_described();
    part
}

fn parts(here: &Here<'_>) -> Vec<TextPart> {
    let words = here.words();
    let settings = &here.public().settings;
    let site = settings.address.value.trim_end_matches('/');
    let quoted =
        |path: &str| CleanHtml::span("address", &CleanHtml::text(&format!("{site}{path}")));
    let get = match contact(here) {
        Some(contact) => words.html("data-get-text", None, &[("contact", &contact)]),
        None => CleanHtml::text(words.word("data-get-no-contact")),
    };
    let addresses = [
        ("design", &quoted("/design/…/")),
        ("impression", &quoted("/impression/…/")),
        ("holder", &quoted("/holder/…/")),
    ];
    let addresses = words.html("data-addresses-text", None, &addresses);
    let machines = [("package", &quoted("/data/datapackage.json"))];
    let machines = words.html("data-machines-text", None, &machines);
    vec![
        TextPart::of_word(here, "data-reading"),
        listed(here, "data-museum"),
        beside(here),
        TextPart::new(here, "data-addresses", &addresses),
        TextPart::new(here, "data-machines", &machines),
        TextPart::of_word(here, "data-records"),
        TextPart::new(here, "data-get", &get),
        licence(here),
    ]
}

/// On what terms text and data, pictures, works and facts may be used.
fn licence(here: &Here<'_>) -> TextPart {
    let words = here.words();
    let settings = &here.public().settings;
    let own = match &settings.licence {
        Some(licence) => {
            let name = CleanHtml::text(&rights::in_words(licence));
            let name = match rights::uri(licence) {
                Some(address) => CleanHtml::link(&address.replacen("http:", "https:", 1), &name),
                None => name,
            };
            words.html("data-licence-text", None, &[("licence", &name)])
        }
        None => CleanHtml::text(words.word("data-no-licence")),
    };
    let mut part = TextPart::new(here, "data-licence", &own);
    let more = [
        "data-licence-pictures",
        "data-licence-works",
        "data-licence-facts",
    ];
    for id in more {
        part.paragraphs.push(CleanHtml::text(words.word(id)));
        if id == "data-licence-works" {
            let works = settings.work_rights.as_deref().map(CleanHtml::text);
            part.paragraphs.extend(works);
        }
    }
    part
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::read;

    #[test]
    fn the_words_of_a_column_are_those_of_its_table_first() {
        let words = Words::new(&read::theme::built_in(), "en").unwrap();
        let meaning = |table, column| column_meaning(&words, table, column);
        assert_ne!(meaning("points", "kind"), meaning("matrices", "kind"));
        assert_eq!(
            meaning("provenance", "from_earliest"),
            "The first day that from can mean."
        );
    }

    #[test]
    fn sizes_are_rounded_up() {
        let words = Words::new(&read::theme::built_in(), "en").unwrap();
        assert_eq!(size(&words, 1), "1 kB");
        assert_eq!(size(&words, 9_999_000), "9999 kB");
        assert_eq!(size(&words, 12_000_001), "13 MB");
    }
}
