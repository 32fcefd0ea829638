//! The apparatus of an impression: holder, numbers, kind, its marks, its condition. The sheet itself: [`super::paper`].

use super::marks;
use super::paper;
use crate::model::design::Design;
use crate::model::impression::{BlockPrinted, Impression};
use crate::model::key::Key;
use crate::model::place::Placed;
use crate::model::vocabulary::List;
use crate::page::lists::facts::{Fact, FactsPlace};
use crate::page::phrases::claims;
use crate::page::phrases::dates;
use crate::page::phrases::enumeration;
use crate::page::phrases::holding;
use crate::page::phrases::identifiers;
use crate::page::phrases::issued_readings;
use crate::page::phrases::matrices;
use crate::page::phrases::papers;
use crate::page::setting::book::Here;
use crate::page::setting::html::{CleanHtml, capitalised};

/// The facts of a sheet. Below the title they do not repeat its number and holder.
pub(super) fn facts(
    here: &Here<'_>,
    design: &Design,
    impression: &Impression,
    place: FactsPlace,
) -> Vec<Fact> {
    let words = here.words();
    let siglum = &here.public().settings.siglum.value;
    let cited = format!("{siglum} {}", design.sheet_number(impression));
    let cited = Fact::one(words.word("cited-as"), CleanHtml::text(&cited));
    let mut facts = vec![cited.filter(|_| place == FactsPlace::Apart)];
    facts.push(Fact::of_lines(
        words.word("formerly-identified"),
        issued_readings::former_readings(here, &impression.key),
    ));
    let holder = impression
        .holder
        .as_ref()
        .map_or_else(CleanHtml::empty, |h| here.holder_and_city(&h.value));
    let is_apart = place == FactsPlace::Apart;
    let holder = Some(holder).filter(|_| is_apart);
    let holder = holder.unwrap_or_else(CleanHtml::empty);
    facts.push(Fact::one(
        words.word("holder"),
        CleanHtml::join([&holder, &holding::page_of_holder(here, impression)], "; "),
    ));
    let owners = impression.owners.iter().map(|owner| here.party(owner));
    let owners: Vec<CleanHtml> = owners.collect();
    let owner = if owners.len() > 1 {
        "joint-owners"
    } else {
        "owner"
    };
    facts.push(Fact::of_lines(words.word(owner), owners));
    facts.push(numbers(here, impression));
    facts.push(Fact::one(
        words.word("credit-line"),
        CleanHtml::text(impression.credit.as_deref().unwrap_or_default()),
    ));
    facts.push(Fact::one(
        words.word("status"),
        capitalised(&CleanHtml::text(here.status(impression.status.value))),
    ));
    facts.push(Fact::stated(
        words.word("kind"),
        claims::stated(here, &impression.kind, |kind| {
            capitalised(&CleanHtml::text(&here.term(List::Kinds, kind.as_str())))
        }),
    ));
    let taken_from = impression
        .taken_from
        .as_ref()
        .map_or_else(CleanHtml::empty, |key| here.impression(&key.value));
    facts.push(Fact::one(words.word("taken-from"), taken_from));
    facts.push(Fact::one(
        words.word("number"),
        CleanHtml::text(
            impression
                .numbering
                .as_ref()
                .map_or("", |n| n.value.as_str()),
        ),
    ));
    facts.push(technique(here, design, impression));
    facts.extend(paper::facts(here, impression));
    facts.push(Fact::one(
        words.word("blocks-printed"),
        capitalised(&blocks_printed(here, design, impression)),
    ));
    facts.push(marks_fact(here, impression));
    facts.push(Fact::of_lines(
        words.word("condition"),
        papers::condition(here, impression),
    ));
    facts.push(Fact::of_lines(
        words.word("identifiers"),
        identifiers::lines(&impression.ids),
    ));
    facts.into_iter().flatten().collect()
}

/// The blocks printed: "All five", "All but the lamp block"; block by block where not every block of the design was
/// recorded, or where one could not be seen.
fn blocks_printed(here: &Here<'_>, design: &Design, impression: &Impression) -> CleanHtml {
    let words = here.words();
    let name = |matrix: &Key| CleanHtml::text(&matrices::matrix_name(here, design, matrix));
    let count = impression.blocks.len();
    let is_whole = count > 1 && count == design.matrices.len();
    let is_seen = |printed: BlockPrinted| printed != BlockPrinted::NotVisible;
    let lacking: Vec<_> = impression
        .blocks
        .iter()
        .filter(|(_, printed)| printed.value == BlockPrinted::NotPrinted)
        .map(|(matrix, _)| name(&matrix.value))
        .collect();
    if is_whole
        && impression
            .blocks
            .iter()
            .all(|(_, printed)| is_seen(printed.value))
    {
        if lacking.is_empty() {
            return words.html("blocks-all", Some(count), &[]);
        }
        if lacking.len() < count {
            let all = enumeration::together(here, &lacking);
            return words.html("blocks-all-but", None, &[("matrices", &all)]);
        }
    }
    let blocks: Vec<_> = impression
        .blocks
        .iter()
        .map(|(matrix, printed)| {
            name(&matrix.value)
                .then(" ")
                .then(words.listed("block", printed.value))
        })
        .collect();
    CleanHtml::join(&blocks, "; ")
}

/// How the sheet was made, where it is described otherwise than the design, and below that the technique of the design.
fn technique(here: &Here<'_>, design: &Design, impression: &Impression) -> Option<Fact> {
    if impression.technique.is_empty() {
        return None;
    }
    let words = here.words();
    let named = |keys: &[Placed<Key>]| {
        let terms = keys.iter();
        let terms = terms.map(|key| CleanHtml::text(&here.term(List::Techniques, key.as_str())));
        enumeration::together(here, &terms.collect::<Vec<_>>())
    };
    let mut lines = vec![capitalised(&named(&impression.technique))];
    if !design.technique.is_empty() {
        let of_design = named(&design.technique);
        lines.push(words.html("technique-of-design", None, &[("technique", &of_design)]));
    }
    Fact::of_lines(words.word("technique"), lines)
}

/// The accession number and former numbers.
fn numbers(here: &Here<'_>, impression: &Impression) -> Option<Fact> {
    let words = here.words();
    let number = |text: &str| CleanHtml::span("accession", &CleanHtml::text(text));
    let mut lines = Vec::new();
    lines.extend(holding::accession_leading_out(here, impression));
    let former = impression.former_accessions.iter().map(|former| {
        let holder = former
            .holder
            .as_ref()
            .map_or_else(CleanHtml::empty, |h| here.holder(&h.value));
        let until = former.until.as_ref().map_or_else(CleanHtml::empty, |d| {
            words.html(
                "date-until",
                None,
                &[("date", &dates::once_html(&d.value, words))],
            )
        });
        let said = CleanHtml::join([&number(&former.number), &holder, &until], ", ");
        words.html("formerly", None, &[("what", &said)])
    });
    lines.extend(former);
    Fact::of_lines(words.word("accession"), lines)
}

/// The marks, and the marks that were looked for and not found.
fn marks_fact(here: &Here<'_>, impression: &Impression) -> Option<Fact> {
    let words = here.words();
    let mut lines: Vec<CleanHtml> = impression
        .marks
        .iter()
        .map(|mark| marks::line(here, mark))
        .collect();
    let without: Vec<_> = impression
        .without
        .iter()
        .map(|w| CleanHtml::text(words.listed("without", w.value)))
        .collect();
    if !without.is_empty() {
        let any = enumeration::either(here, &without);
        lines.push(words.html("looked-for", None, &[("what", &any)]));
    }
    Fact::of_lines(words.word("marks"), lines)
}
