//! The printings and variants of a design on its page.

use serde::Serialize;

use super::point_table::PointTable;
use crate::model::design::Design;
use crate::model::document::EvidenceTarget;
use crate::model::point::Point;
use crate::model::printing::{Printing, StatesPrinted};
use crate::model::state::Variant;
use crate::model::vocabulary::List;
use crate::page::phrases::claims::{self, Stated};
use crate::page::phrases::dates;
use crate::page::phrases::document_names::told_of;
use crate::page::phrases::earlier_numbers::{self, NumberedPart};
use crate::page::phrases::enumeration;
use crate::page::phrases::matrices;
use crate::page::phrases::series_names;
use crate::page::phrases::standing_note;
use crate::page::phrases::values;
use crate::page::setting::address::{Address, Fragment};
use crate::page::setting::book::Here;
use crate::page::setting::html::{CleanHtml, as_sentences};
use crate::study::allowed::shown_values;

/// A printing in the list.
#[derive(Serialize)]
pub(crate) struct PrintingLine {
    id: String,
    name: String,
    text: CleanHtml,
    others: Vec<OtherView>,
    /// What documents tell of it.
    documents: Vec<CleanHtml>,
    standing: Option<CleanHtml>,
}

/// A statement of another source: "declared edition: 24 (Dreyloft 1936, p. 15)".
#[derive(Serialize)]
struct OtherView {
    of: String,
    view: CleanHtml,
}

/// A variant in the list.
#[derive(Serialize)]
pub(crate) struct VariantLine {
    id: String,
    text: CleanHtml,
    standing: Option<CleanHtml>,
}

/// The printings in the record's order; those withdrawn come last.
pub(crate) fn lines(here: &Here<'_>, design: &Design) -> Vec<PrintingLine> {
    let withdrawn = design
        .printings
        .iter()
        .filter(|p| p.standing.is_withdrawn());
    design
        .standing_printings()
        .chain(withdrawn)
        .map(|printing| line(here, design, printing))
        .collect()
}

/// Whether one and the same is said, with the same certainty, to have printed and published it, and nobody else is.
fn is_one_house(printing: &Printing) -> bool {
    match (&*printing.printer.0, &*printing.publisher.0) {
        ([printer], [publisher]) => printer == publisher,
        _ => false,
    }
}

fn line(here: &Here<'_>, design: &Design, printing: &Printing) -> PrintingLine {
    let words = here.words();
    let name = here.printing_name(design, &printing.key.value);
    let kind = claims::stated(here, &printing.kind, |k| {
        CleanHtml::text(words.listed("printing", *k))
    });
    let printer = claims::stated(here, &printing.printer, |k| here.person_or_holder(k));
    let publisher = claims::stated(here, &printing.publisher, |k| here.person_or_holder(k));
    let date = claims::stated(here, &printing.date, |d| dates::once_html(d, words));
    let edition = claims::stated(here, &printing.edition, |n| CleanHtml::text(&n.to_string()));

    let mut sentences: Vec<CleanHtml> = Vec::new();
    let say = |id: &str, given: &str, html: &CleanHtml| words.html(id, None, &[(given, html)]);
    let value = |stated: Option<&Stated>| stated.map(|s| s.value.clone()).unwrap_or_default();
    let kind_word = value(kind.as_ref());
    if !kind_word.is_empty()
        && !name
            .to_lowercase()
            .contains(&kind_word.plain().to_lowercase())
    {
        sentences.push(kind_word);
    }
    let (printed, published) = if is_one_house(printing) {
        let both = some(printer.as_ref(), |p| {
            say("printed-and-published-by", "who", p)
        });
        (both, CleanHtml::empty())
    } else {
        (
            some(printer.as_ref(), |p| say("printed-by", "printer", p)),
            some(publisher.as_ref(), |p| say("published-by", "publisher", p)),
        )
    };
    let made = CleanHtml::join(
        [
            &printed,
            &published,
            &value(date.as_ref()),
            &states_printed(here, design, printing),
        ],
        ", ",
    );
    sentences.push(made);
    sentences.push(some(edition.as_ref(), |n| say("declared-edition", "n", n)));
    let printed = claims::stated_with_source(here, &printing.printed, |n| {
        CleanHtml::text(&words.count("count-printed", count(*n)))
    });
    sentences.push(value(printed.as_ref()));
    if let Some(numbered) = printing.numbered {
        let id = if numbered { "numbered" } else { "not-numbered" };
        sentences.push(CleanHtml::text(words.word(id)));
    }
    let papers: Vec<_> = printing
        .paper
        .iter()
        .map(|p| CleanHtml::text(&here.term(List::Papers, p.value.as_str())))
        .collect();
    if !papers.is_empty() {
        sentences.push(say(
            "on-paper",
            "papers",
            &enumeration::either(here, &papers),
        ));
    }
    let inks: Vec<_> = printing
        .inks
        .iter()
        .map(|ink| CleanHtml::text(&ink.value))
        .collect();
    if !inks.is_empty() {
        sentences.push(say("in-inks", "inks", &enumeration::together(here, &inks)));
    }
    if let Some(pressed) = printing.pressed {
        sentences.push(CleanHtml::text(words.listed("pressed", pressed)));
    }
    let matrices: Vec<_> = printing
        .matrices
        .iter()
        .map(|m| CleanHtml::text(&matrices::matrix_name(here, design, &m.value)))
        .collect();
    // The matrices used are named only where some were not used.
    if !matrices.is_empty() && matrices.len() < design.matrices.len() {
        sentences.push(say(
            "from-matrices",
            "matrices",
            &enumeration::together(here, &matrices),
        ));
    }
    if !printing.series.is_empty() {
        let places = printing
            .series
            .iter()
            .map(|place| series_names::place(here, place));
        let places = CleanHtml::join(&places.collect::<Vec<_>>(), "; ");
        sentences.push(say("came-out-in", "series", &places));
    }
    sentences.extend(
        printing
            .literature
            .iter()
            .map(|c| earlier_numbers::citation(here, c, NumberedPart::Printing)),
    );

    let mut others = Vec::new();
    for (of, stated) in [
        ("of-kind", kind),
        ("of-printer", printer),
        ("of-publisher", publisher),
        ("of-date", date),
        ("of-edition", edition),
        ("of-printed", printed),
    ] {
        others.extend(
            stated
                .into_iter()
                .flat_map(|s| s.others)
                .map(|view| OtherView {
                    of: words.word(of).to_owned(),
                    view,
                }),
        );
    }
    PrintingLine {
        id: Fragment::Printing(&printing.key.value).to_string(),
        name,
        text: as_sentences(&sentences),
        others,
        documents: told_of(
            here,
            &EvidenceTarget::Printing(design.key.clone(), printing.key.value.clone()),
        ),
        standing: standing_note::note(here, &printing.standing),
    }
}

fn some(stated: Option<&Stated>, say: impl Fn(&CleanHtml) -> CleanHtml) -> CleanHtml {
    stated.map_or_else(CleanHtml::empty, |s| say(&s.value))
}

fn count(n: u32) -> usize {
    usize::try_from(n).unwrap_or(usize::MAX)
}

/// "states *i* and *ii*"; "all states"; empty where the design has only one.
fn states_printed(here: &Here<'_>, design: &Design, printing: &Printing) -> CleanHtml {
    let words = here.words();
    if design.standing_states().count() <= 1 {
        return CleanHtml::empty();
    }
    match &printing.states {
        StatesPrinted::All => CleanHtml::text(words.word("all-states")),
        StatesPrinted::Some(states) => {
            let names: Vec<_> = states
                .iter()
                .map(|s| {
                    CleanHtml::link(
                        &format!("#{}", Fragment::State(&s.value)),
                        &here.numeral(&design.key, &s.value),
                    )
                })
                .collect();
            let all = enumeration::together(here, &names);
            words.html("in-states", Some(names.len()), &[("states", &all)])
        }
    }
}

/// The table of the values that the printings show at `points`; `None` where they record none.
pub(crate) fn table(here: &Here<'_>, design: &Design, points: &[Point]) -> Option<PointTable> {
    let printings: Vec<&Printing> = design.standing_printings().collect();
    let page = Address::Design(design.key.clone());
    let columns: Vec<(String, String)> = printings
        .iter()
        .map(|p| {
            (
                here.href_part(&page, Fragment::Printing(&p.key.value)),
                here.printing_name(design, &p.key.value),
            )
        })
        .collect();
    PointTable::plain(here, design, points, &columns, |at, point| {
        shown_values(&printings.get(at)?.shows, point)
    })
}

/// The variants.
pub(crate) fn variants(here: &Here<'_>, design: &Design) -> Vec<VariantLine> {
    design
        .variants
        .iter()
        .map(|variant| VariantLine {
            id: Fragment::Variant(&variant.key.value).to_string(),
            text: variant_text(here, design, variant),
            standing: standing_note::note(here, &variant.standing),
        })
        .collect()
}

fn variant_text(here: &Here<'_>, design: &Design, variant: &Variant) -> CleanHtml {
    let words = here.words();
    let name = variant.key.value.as_str().replace('-', " ");
    let summary = variant.summary.clone().unwrap_or(name);
    let states: Vec<_> = variant
        .states
        .iter()
        .map(|s| here.numeral(&design.key, &s.value))
        .collect();
    let states = if states.is_empty() || design.standing_states().count() <= 1 {
        CleanHtml::empty()
    } else {
        let all = enumeration::together(here, &states);
        words.html("in-states", Some(states.len()), &[("states", &all)])
    };
    let printings: Vec<_> = variant
        .printings
        .iter()
        .map(|p| CleanHtml::text(&here.printing_name(design, &p.value)))
        .collect();
    let shown: Vec<_> = variant
        .shows
        .0
        .iter()
        .filter_map(|shown| {
            let point = design.point(&shown.point.value)?;
            let values = shown.values.iter().map(|v| &v.value);
            Some(CleanHtml::text(&format!(
                "{} {}",
                point.ask.value,
                values::any_of(here, point, values)
            )))
        })
        .collect();
    let mut sentences = vec![
        CleanHtml::text(&summary),
        CleanHtml::join([&states, &enumeration::together(here, &printings)], ", "),
    ];
    sentences.extend(shown);
    as_sentences(&sentences)
}
