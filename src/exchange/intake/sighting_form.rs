//! Forms that come in a mail: lines "Label: value" in English or German.
//!
//! In: the text of a mail. Out: a table with a row for each form, the labels as headings, so that columns are read as those
//! of any table; `None` where the text is no such form. What mails do to a text is undone: marks of quotation before lines,
//! lines that were broken, a signature below. Several forms follow each other: a label that a form has already begins the
//! next. Nothing is lost: what stands beside the forms is in the last column; lines that begin with `#` are the
//! instructions of the form itself and are passed over.

use std::sync::LazyLock;

use super::columns::Holds;
use super::reading::phrases::Phrases;
use super::reading::words::Words;
use super::table::{Table, of_rows};

/// The heading of the column for what stands beside the forms.
const BESIDE: &str = "…";

/// How many labels make a text a form.
const FEWEST_LABELS: usize = 4;

/// A form that is being read.
#[derive(Default)]
struct Form<'t> {
    /// The labels as written, what each stands for, and what was filled in.
    lines: Vec<(Label<'t>, String)>,
    /// What stands above and below.
    beside: Vec<String>,
}

/// A label of a form.
#[derive(Clone, Copy)]
struct Label<'t> {
    /// As written.
    text: &'t str,
    /// What it stands for: the label in English.
    is: &'static str,
    holds: Holds,
}

/// The table of the forms in a text; `None` where the text is none.
///
/// ```
/// # use keyblock::exchange::intake::sighting_form::sighting_forms;
/// let mail = "Dear editors,\r\n\r\n> Number in this catalogue: 14\r\n> Seen on: 1971\r\n> Seen by:\r\n> Holder: Harbour\r\n> Museum\r\n";
/// let table = sighting_forms(mail).unwrap();
/// let row = table.rows().next().unwrap();
/// assert_eq!(row.cell(0), "14");
/// assert_eq!(row.cell(3), "Harbour Museum");
/// assert!(sighting_forms("Title: only this").is_none());
/// ```
#[must_use]
pub fn sighting_forms(text: &str) -> Option<Table> {
    let forms = forms(text);
    let own = [
        Holds::Design,
        Holds::OwnState,
        Holds::Printing,
        Holds::Seen,
        Holds::SeenBy,
        Holds::Basis,
    ];
    let is_form = |form: &&Form<'_>| {
        let lines = &form.lines;
        // A list with a title and a date may be anything; our own columns are in forms alone.
        lines.len() >= FEWEST_LABELS && lines.iter().any(|(label, _)| own.contains(&label.holds))
    };
    forms.iter().find(is_form)?;
    // The headings: every label that some form has, in the order of the first that has it.
    let mut labels: Vec<Label<'_>> = Vec::new();
    for (label, _) in forms.iter().flat_map(|form| &form.lines) {
        if !labels.iter().any(|known| known.is == label.is) {
            labels.push(*label);
        }
    }
    let has_beside = forms.iter().any(|form| !form.beside.is_empty());
    let mut rows: Vec<Vec<String>> = Vec::new();
    rows.push(labels.iter().map(|label| label.text.to_owned()).collect());
    for form in &forms {
        let of_label = |wanted: &Label<'_>| {
            let mut lines = form.lines.iter();
            let line = lines.find(|(label, _)| label.is == wanted.is);
            line.map_or_else(String::new, |(_, value)| value.clone())
        };
        let mut row: Vec<String> = labels.iter().map(of_label).collect();
        if has_beside {
            row.push(form.beside.join("\n"));
        }
        rows.push(row);
    }
    if let (true, Some(heading)) = (has_beside, rows.first_mut()) {
        heading.push(BESIDE.to_owned());
    }
    of_rows(&rows).ok()
}

/// The forms of a text. What stands above the first belongs to it.
fn forms(text: &str) -> Vec<Form<'_>> {
    let mut forms: Vec<Form<'_>> = vec![Form::default()];
    // Whether the next line may go on with the value of the last.
    let mut goes_on = false;
    let mut is_signature = false;
    for line in text.lines() {
        let line = unquoted(line);
        let labelled = label(line);
        if line.starts_with('#') {
            goes_on = false;
            continue;
        }
        if line == "--" {
            is_signature = true;
        }
        if let Some((label, value)) = labelled {
            is_signature = false;
            let is_next = forms
                .last()
                .is_some_and(|form| form.lines.iter().any(|(known, _)| known.is == label.is));
            if is_next {
                forms.push(Form::default());
            }
            if let Some(form) = forms.last_mut() {
                form.lines.push((label, value.to_owned()));
            }
            goes_on = true;
        } else if line.is_empty() {
            goes_on = false;
        } else if let Some(form) = forms.last_mut() {
            match form.lines.last_mut() {
                Some((_, value)) if goes_on && !is_signature => {
                    if !value.is_empty() {
                        value.push(' ');
                    }
                    value.push_str(line);
                }
                _ => form.beside.push(line.to_owned()),
            }
        }
    }
    without_strays(&mut forms);
    // A form that was copied and not filled in says nothing.
    forms.retain(|form| {
        let is_filled = form.lines.iter().any(|(_, value)| !value.is_empty());
        is_filled || !form.beside.is_empty()
    });
    forms
}

/// A form of one label is none, but a line that begins like one: it belongs to the form before.
fn without_strays(forms: &mut Vec<Form<'_>>) {
    let mut at = 1;
    while at < forms.len() {
        if let [(label, value)] = forms[at].lines.as_slice() {
            let line = format!("{}: {value}", label.text);
            let stray = forms.remove(at);
            let before = &mut forms[at - 1].beside;
            before.push(line);
            before.extend(stray.beside);
        } else {
            at += 1;
        }
    }
}

/// A line without the marks that mail programs put before what they quote.
fn unquoted(line: &str) -> &str {
    let is_mark = |c: char| c == '>' || c == '|' || c.is_whitespace();
    line.trim_start_matches(is_mark).trim_end()
}

/// The label at the head of a line, and what stands behind its colon or question mark.
fn label(line: &str) -> Option<(Label<'_>, &str)> {
    let at = line.find([':', '：', '?', '？'])?;
    let sign = line[at..].chars().next()?;
    let (text, value) = line.split_at(at + sign.len_utf8());
    let text = text.trim_end_matches([':', '：']);
    // A question may have a colon too.
    let value = value.trim_start_matches([':', '：']).trim();
    // "Image (mm, height × width)": what stands in brackets explains.
    let head = text.split('(').next()?;
    let words = Words::of(head);
    let found = LABELS.at(&words, 0)?;
    let is_whole = (found.end..words.len()).all(|at| words.word(at).is_none());
    let (is, holds) = found.is;
    let text = text.trim();
    is_whole.then_some((Label { text, is, holds }, value))
}

/// The labels: those of the form (`exchange/forms/sighting.rs`) in English and German.
static LABELS: LazyLock<Phrases<(&str, Holds)>> = LazyLock::new(|| {
    let labels = [
        (
            "number in this catalogue|nummer in diesem verzeichnis",
            Holds::Design,
        ),
        ("title|titel", Holds::Title),
        ("seen on|gesehen am", Holds::Seen),
        ("seen by|gesehen von", Holds::SeenBy),
        ("how seen|wie gesehen", Holds::Basis),
        ("holder|standort", Holds::Holder),
        ("accession number|inventarnummer", Holds::Accession),
        (
            "state in this catalogue|zustand in diesem verzeichnis",
            Holds::OwnState,
        ),
        (
            "printing in this catalogue|druck in diesem verzeichnis",
            Holds::Printing,
        ),
        ("kind of impression|art des abzugs", Holds::Kind),
        ("number in edition|nummer in der auflage", Holds::Numbering),
        ("image|darstellung", Holds::Dimensions),
        ("sheet|blatt", Holds::Dimensions),
        ("paper|papier", Holds::Paper),
        ("watermark|wasserzeichen", Holds::Watermark),
        ("signature|signatur", Holds::Signature),
        ("inscriptions|aufschriften", Holds::Inscription),
        (
            "stamps and collectors' marks|stempel und sammlermarken",
            Holds::Marks,
        ),
        ("provenance|provenienz", Holds::Provenance),
        ("photograph|fotografie", Holds::Photograph),
        (
            "may the photograph be shown|darf die fotografie gezeigt werden",
            Holds::Publish,
        ),
        ("remarks|bemerkungen", Holds::Remarks),
    ];
    let rows = labels.map(|(phrases, holds)| {
        let is = phrases.split('|').next().unwrap_or(phrases);
        ((is, holds), phrases)
    });
    Phrases::of(&rows)
});

#[cfg(test)]
mod tests {
    use super::*;
    use crate::exchange::intake::columns::columns;
    use crate::exchange::intake::reading::lexicon::samples::lexicon;

    fn rows(text: &str) -> Vec<Vec<(String, String)>> {
        let table = sighting_forms(text).unwrap();
        let heading: Vec<String> = table.heading().map(str::to_owned).collect();
        let rows = table.rows().map(|row| {
            let cells = heading.iter().cloned().zip(0..);
            let cells = cells.map(|(heading, at)| (heading, row.cell(at).to_owned()));
            cells.filter(|(_, cell)| !cell.is_empty()).collect()
        });
        rows.collect()
    }

    fn cell<'r>(row: &'r [(String, String)], heading: &str) -> &'r str {
        let found = row.iter().find(|(name, _)| name == heading);
        found.map_or("", |(_, cell)| cell.as_str())
    }

    /// What mail programs do: format=flowed and quoted lines (RFC 3676), a signature below "-- " (section 4.3 there).
    #[test]
    fn a_form_survives_the_mail() {
        let mail = "Dear editors,\r\n\
            here is what I saw.\r\n\
            \r\n\
            On 3 May you wrote:\r\n\
            >> Report of a sheet\r\n\
            >> \r\n\
            >> Number in this catalogue: 14\r\n\
            > > Title: The old lock,\r\n\
            > > in rain\r\n\
            >> Seen on:  2026-03-14 \r\n\
            >> Seen by:\r\n\
            >> How seen: at first hand\r\n\
            >> Holder: Harbour Museum: annexe\r\n\
            >> Image (mm, height \u{d7} width): 166 x 243\r\n\
            >> May the photograph be shown?: no\r\n\
            >> Remarks: trimmed; see https://museum.example.org/1\r\n\
            >>\r\n\
            \r\n\
            With regards\r\n\
            -- \r\n\
            A. Reader\r\n\
            Title of nobility: none\r\n";
        let rows = rows(mail);
        assert_eq!(rows.len(), 1);
        let row = &rows[0];
        for (heading, value) in [
            ("Number in this catalogue", "14"),
            ("Title", "The old lock, in rain"),
            ("Seen on", "2026-03-14"),
            ("Seen by", ""),
            ("How seen", "at first hand"),
            ("Holder", "Harbour Museum: annexe"),
            ("Image (mm, height × width)", "166 x 243"),
            ("May the photograph be shown?", "no"),
            ("Remarks", "trimmed; see https://museum.example.org/1"),
        ] {
            assert_eq!(cell(row, heading), value, "{heading}");
        }
        let beside = cell(row, BESIDE);
        for kept in [
            "Dear editors,",
            "With regards",
            "A. Reader",
            "Title of nobility: none",
        ] {
            assert!(beside.contains(kept), "{kept}");
        }
    }

    #[test]
    fn several_forms_in_two_languages_are_several_rows() {
        let mail = "Nummer in diesem Verzeichnis: 14\nGesehen am: 1971\nStandort: Hafenmuseum\nInventarnummer: K. 7\n\
            \nNumber in this catalogue: 15\nSeen on: 1972\nRemarks: second\n\n\
            Number in this catalogue:\nSeen on:\nRemarks:\n";
        let rows = rows(mail);
        assert_eq!(rows.len(), 2, "the third is not filled in");
        assert_eq!(cell(&rows[0], "Nummer in diesem Verzeichnis"), "14");
        assert_eq!(cell(&rows[1], "Nummer in diesem Verzeichnis"), "15");
        assert_eq!(cell(&rows[1], "Remarks"), "second");
    }

    #[test]
    fn a_line_that_begins_like_a_label_begins_no_form() {
        let mail = "Number in this catalogue: 14\nSeen on: 1971\nTitle: Lock\n# not read: ever\nRemarks: as follows\n\
            Title: as on the mount\n";
        let rows = rows(mail);
        assert_eq!(rows.len(), 1);
        assert_eq!(cell(&rows[0], "Title"), "Lock");
        assert_eq!(cell(&rows[0], BESIDE), "Title: as on the mount");
    }

    #[test]
    fn columns_of_a_form_are_certain() {
        let mail = "Nummer in diesem Verzeichnis: 14\nGesehen am: 1971\nGesehen von: A. Leser\nBlatt (mm, Höhe × Breite): 212 x 301\n";
        let table = sighting_forms(mail).unwrap();
        let read = columns(&table, &lexicon());
        let holds: Vec<Holds> = read.columns.iter().map(|column| column.holds).collect();
        assert_eq!(
            holds,
            [Holds::Design, Holds::Seen, Holds::SeenBy, Holds::Dimensions]
        );
        assert!(
            read.columns
                .iter()
                .all(|column| column.sure == crate::model::certainty::Certainty::Certain)
        );
    }

    #[test]
    fn other_texts_are_no_form() {
        for text in [
            "",
            "Accession number,Title,Date,Medium\n1,2,3,4\n",
            "Title: a\nSheet: b\nPaper: c\nRemarks: d\n",
            "Seen on: Monday\nRemarks: nothing\n",
            ":::\n",
        ] {
            assert!(sighting_forms(text).is_none(), "{text:?}");
        }
    }
}
