//! A change in words, as pages and the feed say it. Links lead to the entries as they are now.

use crate::model::holder::Holder;
use crate::model::issued_address::{IssuedAddress, IssuedKind};
use crate::model::issued_reading::IssuedReadings;
use crate::model::key::{ImpressionKey, Key};
use crate::model::link::Target;
use crate::model::occurrence::DesignPart;
use crate::model::register::{IssuedEdition, Register, Subject};
use crate::model::words::{ClosedList as _, Standing};
use crate::page::phrases::dates;
use crate::page::phrases::enumeration;
use crate::page::phrases::issued_readings::{numeral_text, reading, state_name};
use crate::page::setting::address::Address;
use crate::page::setting::book::Here;
use crate::page::setting::html::{CleanHtml, as_sentences};
use crate::page::setting::words::{Argument, Words};
use crate::study::issued::account::EditionAccount;
use crate::study::issued::account::changes::{
    DesignAccount, DesignChange, HolderChange, HolderChangeKind, PartChange, RecordAccount,
    RecordChange, SheetAccount, SheetChange,
};

/// The register in which changes are told, and the edition that made them.
#[derive(Clone, Copy)]
pub(crate) struct Told<'r> {
    /// The register: for what changed since the last edition, the one that would be written now.
    pub register: &'r Register,
    /// The place of the edition.
    pub edition: usize,
}

/// "edition 2, 15 October 2026".
pub(crate) fn edition_and_date(words: &Words, edition: &IssuedEdition) -> String {
    let name = edition_name(words, edition);
    format!("{name}, {}", dates::once(&edition.dated.value, words))
}

/// "edition 2".
pub(crate) fn edition_name(words: &Words, edition: &IssuedEdition) -> String {
    words.with(
        "edition",
        &[("edition", Argument::Text(&edition.edition.value))],
    )
}

/// The changes of a design's own entry, a sentence each.
pub(crate) fn of_design(here: &Here<'_>, told: Told<'_>, account: &DesignAccount) -> CleanHtml {
    let words = here.words();
    let mut sentences = Vec::new();
    let mut numerals = Vec::new();
    let mut last = None;
    for change in &account.changes {
        match change {
            DesignChange::New => {
                sentences.push(CleanHtml::text(
                    &words.count("change-entry-new", account.sheets.len()),
                ));
            }
            DesignChange::Moved { was } => {
                let was = CleanHtml::text(was);
                sentences.push(words.html("change-moved", None, &[("was", &was)]));
            }
            DesignChange::Number { was, now } => {
                let (was, now) = (CleanHtml::text(was), CleanHtml::text(now));
                sentences.push(words.html("change-number", None, &[("was", &was), ("now", &now)]));
            }
            DesignChange::Standing(standing) => {
                sentences.push(standing_of(here, standing.as_deref()));
            }
            DesignChange::Part(part, key, change) => match change {
                PartChange::Numeral { was, now } => numerals.extend(moved_numeral(here, was, now)),
                change => {
                    sentences.push(of_part(here, told, &account.design, (*part, key), change));
                }
            },
            DesignChange::Revised(subjects) => last = Some(revised(here, subjects)),
        }
    }
    if !numerals.is_empty() {
        let moved = enumeration::together(here, &numerals);
        sentences.push(words.html("change-numerals", None, &[("moved", &moved)]));
    }
    sentences.extend(last);
    as_sentences(&sentences)
}

/// "ii/iii is iii/iv"; `None` where only the total is another.
fn moved_numeral(here: &Here<'_>, was: &str, now: &str) -> Option<CleanHtml> {
    let place = |numeral: &str| numeral.split('/').next().map(str::to_owned);
    if was.is_empty() || now.is_empty() || place(was) == place(now) {
        return None;
    }
    let (was, now) = (numeral_text(here, was), numeral_text(here, now));
    Some(
        here.words()
            .html("change-numeral", None, &[("was", &was), ("now", &now)]),
    )
}

fn of_part(
    here: &Here<'_>,
    told: Told<'_>,
    design: &Key,
    (part, key): (DesignPart, &Key),
    change: &PartChange,
) -> CleanHtml {
    let words = here.words();
    let name = part_name(here, told, design, part, key);
    match change {
        PartChange::New => words.html("change-part-new", None, &[("part", &name)]),
        PartChange::Moved { was } => {
            let was = was.rsplit('/').next().unwrap_or_default().replace('-', " ");
            let was = CleanHtml::text(&was);
            words.html("change-part-moved", None, &[("part", &name), ("was", &was)])
        }
        PartChange::Standing(standing) => {
            let standing = standing_of(here, standing.as_deref());
            words.html(
                "change-part-standing",
                None,
                &[("part", &name), ("standing", &standing)],
            )
        }
        PartChange::Numeral { .. } => CleanHtml::empty(),
    }
}

/// "state iii/iv", "printing: Memorial edition", "block: key block".
fn part_name(
    here: &Here<'_>,
    told: Told<'_>,
    design: &Key,
    part: DesignPart,
    key: &Key,
) -> CleanHtml {
    let words = here.words();
    let record = here.public().designs.get(design);
    let in_words = CleanHtml::text(&key.as_str().replace('-', " "));
    match part {
        DesignPart::State => state_name(here, told.register, told.edition, design, key),
        DesignPart::Printing => {
            let name = record.map_or(in_words, |d| CleanHtml::text(&here.printing_name(d, key)));
            words.html("part-printing", None, &[("name", &name)])
        }
        DesignPart::Variant => words.html("part-variant", None, &[("name", &in_words)]),
        DesignPart::Matrix => words.html("part-matrix", None, &[("name", &in_words)]),
    }
}

/// "withdrawn", "accepted again".
fn standing_of(here: &Here<'_>, standing: Option<&str>) -> CleanHtml {
    let words = here.words();
    let text = match standing.and_then(Standing::from_word) {
        Some(standing) if standing != Standing::Accepted => words.listed("stands", standing),
        _ => words.word("change-accepted-again"),
    };
    CleanHtml::text(text)
}

/// "revised: titles and literature".
fn revised(here: &Here<'_>, subjects: &[Subject]) -> CleanHtml {
    let words = here.words();
    if subjects.is_empty() {
        return CleanHtml::text(words.word("change-revised-somehow"));
    }
    let names = subjects.iter();
    let names = names.map(|subject| CleanHtml::text(words.listed("subject", *subject)));
    let names: Vec<CleanHtml> = names.collect();
    let all = enumeration::together(here, &names);
    words.html("change-revised", None, &[("subjects", &all)])
}

/// The changes of the sheets of a design: a sentence for those that are new, then one for each other sheet.
pub(crate) fn of_sheets(
    here: &Here<'_>,
    told: Told<'_>,
    account: &DesignAccount,
) -> Vec<CleanHtml> {
    let is_new = |sheet: &&SheetAccount| sheet.changes.contains(&SheetChange::New);
    let new: Vec<CleanHtml> = account
        .sheets
        .iter()
        .filter(is_new)
        .map(|account| sheet_link(here, &account.sheet))
        .collect();
    let mut lines = Vec::new();
    if !new.is_empty() && !account.is_new() {
        let all = CleanHtml::join(&new, ", ");
        let line = here
            .words()
            .html("change-sheets-new", Some(new.len()), &[("sheets", &all)]);
        lines.push(line);
    }
    // Sheets of which the same is said stand together: a new state often concerns several.
    let mut others: Vec<(CleanHtml, Vec<CleanHtml>)> = Vec::new();
    for account in account.sheets.iter().filter(|sheet| !is_new(sheet)) {
        let changes = account.changes.iter();
        let changes: Vec<CleanHtml> = changes
            .map(|change| of_sheet(here, told, &account.sheet, change))
            .collect();
        let changes = CleanHtml::join(&changes, "; ");
        let link = sheet_link(here, &account.sheet);
        match others.iter_mut().find(|(said, _)| *said == changes) {
            Some((_, sheets)) => sheets.push(link),
            None => others.push((changes, vec![link])),
        }
    }
    lines.extend(others.into_iter().map(|(changes, sheets)| {
        let sheets = CleanHtml::join(&sheets, ", ");
        sheets.then(": ").and(&changes).then(".")
    }));
    lines
}

/// A sheet by its number, as a link where its page is there.
pub(crate) fn sheet_link(here: &Here<'_>, key: &ImpressionKey) -> CleanHtml {
    if here.public().impression(key).is_some() {
        // The number of its own record, though the page is that of another.
        if here.joined().has_page(key) {
            here.impression(key)
        } else {
            here.record(key)
        }
    } else {
        CleanHtml::span("handle", &CleanHtml::text(&here.public().sheet_number(key)))
    }
}

fn of_sheet(
    here: &Here<'_>,
    told: Told<'_>,
    sheet: &ImpressionKey,
    change: &SheetChange,
) -> CleanHtml {
    let words = here.words();
    match change {
        SheetChange::New => CleanHtml::text(words.word("change-sheet-new")),
        SheetChange::Identified { was, now } => {
            let before = told.edition.saturating_sub(1);
            let (was, now) = IssuedReadings::differing(was, now);
            let was = reading(here, told.register, before, &sheet.design, &was);
            let now = reading(here, told.register, told.edition, &sheet.design, &now);
            words.html("change-identified", None, &[("was", &was), ("now", &now)])
        }
        SheetChange::Holder { was, now } => {
            let (was, now) = (holder(here, was), holder(here, now));
            words.html("change-holder", None, &[("was", &was), ("now", &now)])
        }
        SheetChange::Sheet(Some(page)) => {
            let page = sheet_link(here, page);
            words.html("change-sheet-joined", None, &[("sheet", &page)])
        }
        SheetChange::Sheet(None) => CleanHtml::text(words.word("change-sheet-parted")),
        SheetChange::Standing(standing) => standing_of(here, standing.as_deref()),
        SheetChange::Revised(subjects) => revised(here, subjects),
    }
}

fn holder(here: &Here<'_>, key: &str) -> CleanHtml {
    match key.parse::<Key>() {
        Ok(key) => holder_name(here, &key),
        Err(_) => CleanHtml::text(here.words().word("change-no-holder")),
    }
}

/// The holder that a key names in the register, as it is now.
pub(crate) fn present_holder<'h>(here: &Here<'h>, key: &Key) -> Option<&'h Holder> {
    let holders = &here.public().holders;
    let address = IssuedAddress::Record(Target::Holder(key.clone()));
    match here.public().leads(&address) {
        Some(IssuedAddress::Record(Target::Holder(present))) => holders.get(&present),
        _ => holders.get(key),
    }
}

/// A holder as a link; the key in words of one that is no longer recorded.
pub(crate) fn holder_name(here: &Here<'_>, key: &Key) -> CleanHtml {
    match present_holder(here, key) {
        Some(holder) => here.holder(&holder.key),
        None => CleanHtml::text(&key.as_str().replace('-', " ")),
    }
}

/// What changed of the sheets of a holder: "New: 14.7, 14.8. Identified differently: 3.2."
pub(crate) fn holder_line(here: &Here<'_>, changes: &[HolderChange]) -> CleanHtml {
    let kinds = [
        (HolderChangeKind::New, "holder-change-new"),
        (HolderChangeKind::Came, "holder-change-came"),
        (HolderChangeKind::Left, "holder-change-left"),
        (HolderChangeKind::Identified, "holder-change-identified"),
        (HolderChangeKind::Standing, "holder-change-standing"),
        (HolderChangeKind::Revised, "holder-change-revised"),
    ];
    let mut sentences = Vec::new();
    for (kind, word) in kinds {
        let mut sheets: Vec<_> = changes
            .iter()
            .filter(|change| change.kind == kind)
            .collect();
        sheets.sort_by_key(|change| here.book.studies.order.impression_rank(&change.sheet));
        let links: Vec<CleanHtml> = sheets
            .into_iter()
            .map(|change| sheet_link(here, &change.sheet))
            .collect();
        if !links.is_empty() {
            let all = CleanHtml::join(&links, ", ");
            sentences.push(here.words().html(word, None, &[("sheets", &all)]));
        }
    }
    CleanHtml::join(&sentences, " ")
}

/// A record other than a design or a sheet, as a link; its key in words where it is no longer there.
pub(crate) fn record_name(here: &Here<'_>, address: &IssuedAddress) -> CleanHtml {
    let IssuedAddress::Record(target) = address else {
        return CleanHtml::text(&address.key());
    };
    let present = match here.public().leads(address) {
        Some(IssuedAddress::Record(present)) => present,
        _ => target.clone(),
    };
    match here.target(&present).filter(|_| {
        here.public()
            .has_address(&IssuedAddress::Record(present.clone()))
    }) {
        Some((address, name)) => here.link(&address, &name),
        None => CleanHtml::text(&target.key().to_string().replace('-', " ")),
    }
}

/// A record other than a design or a sheet that is not new, with what changed of it.
pub(crate) fn of_record(here: &Here<'_>, record: &RecordAccount) -> CleanHtml {
    let words = here.words();
    let mut said = Vec::new();
    for change in &record.changes {
        said.push(match change {
            RecordChange::New => CleanHtml::text(words.word("change-sheet-new")),
            RecordChange::Leads(to) => {
                let was = CleanHtml::text(&record.address.key().replace('-', " "));
                let now = record_name(here, to);
                let both = [("was", &was), ("now", &now)];
                return words.html("change-record-leads", None, &both);
            }
            RecordChange::TakenOver(Some(by)) => {
                let by = holder_name(here, by);
                words.html("change-taken-over", None, &[("successor", &by)])
            }
            RecordChange::TakenOver(None) => CleanHtml::text(words.word("change-on-its-own")),
            RecordChange::Revised(subjects) => revised(here, subjects),
        });
    }
    let name = record_name(here, &record.address);
    let said = CleanHtml::join(&said, "; ");
    name.then(": ").and(&said).then(".")
}

/// The place of a record other than a design on the page of an edition, after the id of the account: "record-holder-KEY".
pub(crate) fn record_place(address: &IssuedAddress) -> String {
    format!("record-{}-{}", address.kind(), address.key())
}

/// The name of a design with its number: a link where it is there, else its key in words.
pub(crate) fn design_name(here: &Here<'_>, key: &Key) -> (String, CleanHtml) {
    match here.public().designs.get(key) {
        Some(design) => {
            let to = Address::Design(key.clone());
            (
                design.number.clone(),
                here.link(&to, &here.design_title(design)),
            )
        }
        None => (key.to_string(), CleanHtml::empty()),
    }
}

/// "12 designs, 80 impressions and 9 holders": what an edition added, in a line.
pub(crate) fn added(here: &Here<'_>, account: &EditionAccount) -> CleanHtml {
    let kinds = [
        (IssuedKind::Design, "count-designs"),
        (IssuedKind::Impression, "count-impressions"),
        (IssuedKind::Holder, "count-holders"),
        (IssuedKind::Work, "count-works"),
    ];
    let counts: Vec<CleanHtml> = kinds
        .iter()
        .filter_map(|(kind, word)| {
            let count = account
                .added
                .get(kind)
                .copied()
                .filter(|count| *count > 0)?;
            Some(CleanHtml::text(&here.words().count(word, count)))
        })
        .collect();
    enumeration::together(here, &counts)
}
