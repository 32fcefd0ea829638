//! The editions of a design on its census: declared size and number printed, each with its source, the known impressions
//! of the printing, and the numbers recorded on them (`docs/definitions.md`, "Declared editions").

use std::collections::BTreeSet;

use serde::Serialize;

use super::census_figures;
use super::declared_editions::is_uncertain;
use super::firmness;
use super::sheet_records;
use crate::model::certainty::{Claim, Statement};
use crate::model::design::Design;
use crate::model::key::ImpressionKey;
use crate::model::printing::Printing;
use crate::model::vocabulary::CountingClass;
use crate::page::phrases::claims;
use crate::page::setting::address::Address;
use crate::page::setting::book::Here;
use crate::page::setting::html::CleanHtml;
use crate::page::setting::words::Argument;
use crate::study::DesignStudy;
use crate::study::editions::{EditionStudy, MetNumber};

/// A printing with a declared size, a number printed, or numbers on its sheets.
#[derive(Serialize)]
pub(super) struct Edition {
    id: String,
    heading: CleanHtml,
    /// How many sheets are known, of how many declared or printed.
    known: Vec<CleanHtml>,
    /// How many numbers are recorded.
    said: String,
    /// Who declares the size, where that is recorded.
    source: CleanHtml,
    /// Other declared sizes, with their sources.
    others: Vec<CleanHtml>,
    /// Other numbers of sheets printed, with their sources.
    printed_others: Vec<CleanHtml>,
    /// Sizes in numberings that no source declares, with the sheets.
    of_other_size: Vec<CleanHtml>,
    repeated: Vec<CleanHtml>,
    above: Vec<CleanHtml>,
    numbers: Vec<Number>,
}

#[derive(Serialize)]
struct Number {
    text: String,
    href: Option<String>,
}

/// For an edition larger than this, only the numbers recorded are listed.
const NUMBERS_SHOWN: u32 = 500;

/// The editions of a design, in the order of its printings.
pub(super) fn editions(here: &Here<'_>, design: &Design, study: &DesignStudy) -> Vec<Edition> {
    let editions = study.editions.iter();
    editions
        .map(|of| edition(here, design, study, of))
        .collect()
}

fn edition(
    here: &Here<'_>,
    design: &Design,
    of_design: &DesignStudy,
    study: &EditionStudy,
) -> Edition {
    let words = here.words();
    let printing = design.printing(&study.printing);
    let own = printing.and_then(|p| p.edition.0.first());
    let is_perhaps = own.is_some_and(|own| is_uncertain(&own.claim));
    let is_unnumbered = printing.is_some_and(|p| p.numbered == Some(false));
    let said = match study.declared {
        _ if is_unnumbered && study.located.is_empty() => {
            words.word("edition-unnumbered").to_owned()
        }
        Some(declared) => words.with(
            if is_perhaps {
                "edition-met-of-perhaps"
            } else {
                "edition-met-of"
            },
            &[
                ("n", Argument::Count(study.within().count())),
                ("declared", Argument::Text(&declared.to_string())),
            ],
        ),
        None if study.located.is_empty() => String::new(),
        None => words.count("edition-met", study.located.len()),
    };
    let others = |of: &[Statement<u32>]| -> Vec<CleanHtml> {
        let other = |claim: &Statement<u32>| {
            let size = CleanHtml::text(&claim.is.value.to_string());
            CleanHtml::join([&size, &claims::remark(here, &claim.claim)], ", ")
        };
        of.iter().map(other).collect()
    };
    let of_other_size = study.of_other_size.iter().filter_map(|(of, keys)| {
        let is_published = |key: &&ImpressionKey| here.public().impression(key).is_some();
        let handles = here.handles(keys.iter().filter(is_published));
        (!handles.is_empty()).then(|| CleanHtml::text(&format!("{of}: ")).and(&handles))
    });
    let with_sheets = |number: u32| {
        let sheets = sheets_with(here, study, number);
        let number = CleanHtml::text(&number.to_string());
        number.then(": ").and(&here.handles(sheets))
    };
    Edition {
        id: format!("edition-{}", study.printing),
        heading: heading(here, design, study, own),
        known: known_of(here, design, of_design, study),
        said,
        source: own.map_or_else(CleanHtml::empty, |size| source(here, &size.claim)),
        others: printing.map_or_else(Vec::new, |p| others(p.edition.others())),
        printed_others: printing.map_or_else(Vec::new, |p| others(p.printed.others())),
        of_other_size: of_other_size.collect(),
        repeated: study.repeated.iter().copied().map(with_sheets).collect(),
        above: study.above().map(with_sheets).collect(),
        numbers: numbers(here, study),
    }
}

/// "Printed by the artist: 30 declared"; "Rope Walk Press: perhaps 100 declared (Sool 1978)" of a size that is uncertain.
fn heading(
    here: &Here<'_>,
    design: &Design,
    study: &EditionStudy,
    declared: Option<&Statement<u32>>,
) -> CleanHtml {
    let name = CleanHtml::text(&here.printing_name(design, &study.printing));
    let Some(declared) = declared else {
        return name;
    };
    let n = usize::try_from(declared.is.value).ok();
    let given = [("printing", &name)];
    if !is_uncertain(&declared.claim) {
        return here.words().html("edition-declared", n, &given);
    }
    let heading = here.words().html("edition-perhaps-declared", n, &given);
    match &declared.claim.cite {
        Some(cite) => heading
            .then(" (")
            .and(&here.cited(&cite.value, None))
            .then(")"),
        None => heading,
    }
}

/// "report, Sool 1978, p. 110 (possible)": the source of a declared size; empty where none is recorded.
fn source(here: &Here<'_>, claim: &Claim) -> CleanHtml {
    let ground = claims::ground(here, claim);
    if ground.is_empty() {
        claims::remark(here, claim)
    } else {
        claims::doubted(here, ground, claim)
    }
}

/// "Known: 12–13 (proofs included; 1 not certain) of 34 printed (the ledger, leaf 4)." The number declared and the
/// number printed each make a line; where neither is recorded, the sheets stand alone. What stands in brackets after the
/// known sheets is said in the first line.
fn known_of(
    here: &Here<'_>,
    design: &Design,
    of_design: &DesignStudy,
    study: &EditionStudy,
) -> Vec<CleanHtml> {
    let words = here.words();
    let rows = &of_design.census.by.printing;
    let figure = census_figures::total(here, design, "printing", rows, Some(&study.printing));
    let figure = if figure.is_empty() {
        CleanHtml::text("0")
    } else {
        figure
    };
    let about = about_known(here, of_design, study);
    let mut known = if about.is_empty() {
        figure.clone()
    } else {
        figure.clone().then(" (").then(&about).then(")")
    };
    let line = |id: &str, n: Option<u32>, known: &CleanHtml| {
        let n = n.and_then(|n| usize::try_from(n).ok());
        words.html(id, n, &[("known", known)])
    };
    let mut lines = Vec::new();
    let printing: Option<&Printing> = design.printing(&study.printing);
    if let Some(declared) = printing.and_then(|p| p.edition.0.first()) {
        let id = if is_uncertain(&declared.claim) {
            "known-of-perhaps-declared"
        } else {
            "known-of-declared"
        };
        lines.push(line(id, Some(declared.is.value), &known).then("."));
        known = figure;
    }
    if let Some(printed) = printing.and_then(|p| p.printed.0.first()) {
        let of = line("known-of-printed", Some(printed.is.value), &known);
        lines.push(claims::with_source(here, of, &printed.claim).then("."));
    }
    if lines.is_empty() {
        lines.push(line("known-of-printing", None, &known).then("."));
    }
    lines
}

/// "proofs included; one numbered above it; 1 not certain, 1 contradicted": what the known sheets of a printing are; may be empty.
fn about_known(here: &Here<'_>, of_design: &DesignStudy, study: &EditionStudy) -> String {
    let by = &of_design.census.by;
    let mut printings = by.printing.iter();
    let Some(row) = printings.find(|row| row.key.as_ref() == Some(&study.printing)) else {
        return String::new();
    };
    let proofs = by.class.iter();
    let proofs = proofs.filter(|row| row.key == Some(CountingClass::Proof));
    let proofs: BTreeSet<&ImpressionKey> = proofs.flat_map(|row| &row.allowing).collect();
    let proofs = if row.allowing.iter().any(|sheet| proofs.contains(sheet)) {
        here.words().word("proofs-included")
    } else {
        ""
    };
    let above = match study.outside.len() {
        0 => String::new(),
        n => here.words().count("numbered-above", n),
    };
    let not_firm = firmness::in_words(here, of_design, &row.allowing);
    let sheets: Vec<&ImpressionKey> = row.allowing.iter().collect();
    let doubtful = sheet_records::not_accepted(here, &sheets).plain();
    let parts = [proofs, &above, &not_firm, &doubtful]
        .into_iter()
        .filter(|part| !part.is_empty());
    parts.collect::<Vec<&str>>().join("; ")
}

/// The published records with a number, arabic or roman.
fn sheets_with<'s>(
    here: &Here<'_>,
    study: &'s EditionStudy,
    number: u32,
) -> impl Iterator<Item = &'s ImpressionKey> {
    let public = here.public();
    [false, true]
        .into_iter()
        .filter_map(move |is_roman| study.met.get(&MetNumber { is_roman, number }))
        .flatten()
        .filter(move |key| public.impression(key).is_some())
}

/// The numbers of an edition up to its size; those recorded are links to their sheets.
fn numbers(here: &Here<'_>, study: &EditionStudy) -> Vec<Number> {
    let href = |number: u32| {
        sheets_with(here, study, number)
            .next()
            .map(|key| here.href(&Address::Impression(key.clone())))
    };
    let declared = study
        .declared
        .filter(|declared| *declared <= NUMBERS_SHOWN && !study.located.is_empty());
    let mut shown: Vec<u32> = match declared {
        Some(declared) => (1..=declared).collect(),
        None => Vec::new(),
    };
    if declared.is_none() {
        shown.extend(study.within());
    }
    shown
        .into_iter()
        .map(|number| Number {
            text: number.to_string(),
            href: href(number),
        })
        .collect()
}
