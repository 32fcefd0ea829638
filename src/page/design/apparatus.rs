//! The apparatus of a design: key, former titles, date, makers, technique, sizes, series, matrices,
//! subjects.

use super::sizes;
use crate::model::design::{Design, Matrix, MatrixKind};
use crate::model::vocabulary::List;
use crate::page::lists::facts::{Fact, FactsPlace, Line};
use crate::page::phrases::claims;
use crate::page::phrases::dates;
use crate::page::phrases::enumeration;
use crate::page::phrases::formerly;
use crate::page::phrases::identifiers;
use crate::page::phrases::matrices;
use crate::page::phrases::series_names;
use crate::page::phrases::sizes::size as size_in_mm;
use crate::page::setting::address::Fragment;
use crate::page::setting::book::Here;
use crate::page::setting::html::{CleanHtml, as_sentences, capitalised, sentence_start};

/// The facts of a design. Below the title they do not repeat its number.
pub(super) fn facts(here: &Here<'_>, design: &Design, place: FactsPlace) -> Vec<Fact> {
    let words = here.words();
    let siglum = &here.public().settings.siglum.value;
    let former: Vec<CleanHtml> = design
        .titles
        .iter()
        .filter(|t| t.kind == crate::model::design::TitleKind::Former)
        .map(|t| claims::with_claim(here, here.title(t), &t.claim))
        .collect();
    let techniques: Vec<_> = design
        .technique
        .iter()
        .map(|t| here.technique(&t.value))
        .collect();
    let supports: Vec<_> = design
        .support
        .iter()
        .map(|s| CleanHtml::text(&here.term(List::Papers, s.value.as_str())))
        .collect();
    let technique = enumeration::together(here, &techniques);
    let support = enumeration::either(here, &supports);
    // A support alone is no technique: it has a line of its own.
    let (technique, support) = match (technique.is_empty(), support.is_empty()) {
        (false, false) => {
            let on = words.html("on-paper", None, &[("papers", &support)]);
            (technique.then(", ").and(&on), CleanHtml::empty())
        }
        _ => (technique, support),
    };
    let subjects: Vec<_> = design
        .subjects
        .iter()
        .map(|s| here.subject(&s.value))
        .collect();
    let mut facts: Vec<Option<Fact>> = vec![
        Fact::one(
            words.word("cited-as"),
            CleanHtml::text(&format!("{siglum} {}", design.number)),
        )
        .filter(|_| place == FactsPlace::Apart),
        Fact::one(
            words.word("formerly-numbered"),
            formerly::numbers(here, design),
        ),
        Fact::one(
            words.word("formerly-titled"),
            CleanHtml::join(&former, "; "),
        ),
        Fact::stated(
            words.word("date"),
            claims::stated(here, &design.date, |d| dates::once_html(d, words)),
        ),
        Fact::one(words.word("makers"), makers(here, design)),
        Fact::one(words.word("technique"), sentence_start(&technique)),
        Fact::one(words.word("support"), capitalised(&support)),
        sizes::fact(here, design),
        Fact::of_lines(
            words.word("series-one"),
            design
                .series
                .iter()
                .map(|place| series_names::place(here, place))
                .collect(),
        ),
    ];
    facts.push(matrices(here, design));
    facts.push(Fact::one(
        words.word("subjects"),
        CleanHtml::join(&subjects, ", "),
    ));
    facts.push(Fact::of_lines(
        words.word("identifiers"),
        identifiers::lines(&design.ids),
    ));
    facts.into_iter().flatten().collect()
}

/// "The Artist (designer, carver); another (printer)".
fn makers(here: &Here<'_>, design: &Design) -> CleanHtml {
    let mut people: Vec<(&crate::model::key::Key, Vec<CleanHtml>)> = Vec::new();
    for maker in &design.makers {
        let role = maker.role.as_ref().map_or_else(CleanHtml::empty, |role| {
            CleanHtml::text(&here.term(List::Roles, role.value.as_str()))
        });
        let remark = claims::remark(here, &maker.claim);
        let said = CleanHtml::join([&role, &remark], ", ");
        match people
            .iter_mut()
            .find(|(key, _)| **key == maker.person.value)
        {
            Some((_, roles)) => roles.push(said),
            None => people.push((&maker.person.value, vec![said])),
        }
    }
    let lines: Vec<_> = people
        .iter()
        .map(|(key, roles)| {
            let roles = CleanHtml::join(roles, ", ");
            if roles.is_empty() {
                here.person_or_holder(key)
            } else {
                here.person_or_holder(key).then(" (").and(&roles).then(")")
            }
        })
        .collect();
    CleanHtml::join(&lines, "; ")
}

fn matrices(here: &Here<'_>, design: &Design) -> Option<Fact> {
    let term = match matrices::one_kind(&design.matrices) {
        Some(MatrixKind::Block) => "blocks",
        Some(MatrixKind::Plate) => "plates-of-metal",
        Some(MatrixKind::Stone) => "stones",
        Some(MatrixKind::Screen) => "screens",
        None => "matrices",
    };
    let lines: Vec<Line> = design
        .matrices
        .iter()
        .map(|matrix| Line {
            id: Fragment::Matrix(&matrix.key.value).to_string(),
            text: matrix_line(here, design, matrix),
        })
        .collect();
    (!lines.is_empty()).then(|| Fact {
        term: CleanHtml::text(here.words().word(term)),
        lines,
        others: Vec::new(),
    })
}

/// "Key block, pear: the lines, blue-black. Extant, Harbour Museum, Northport."
fn matrix_line(here: &Here<'_>, design: &Design, matrix: &Matrix) -> CleanHtml {
    let words = here.words();
    let optional = |text: &Option<String>| {
        text.as_ref()
            .map_or_else(CleanHtml::empty, |text| CleanHtml::text(text))
    };
    let name = CleanHtml::text(&matrices::matrix_name(here, design, &matrix.key.value));
    let name = CleanHtml::join([&name, &optional(&matrix.material)], ", ");
    let does = CleanHtml::join(
        [&optional(&matrix.carries), &optional(&matrix.colour)],
        ", ",
    );
    let first = CleanHtml::join([&name, &does], ": ");
    let sizes = claims::stated(here, &matrix.size, size_in_mm);
    let sizes = sizes.map_or_else(CleanHtml::empty, |stated| {
        CleanHtml::join(std::iter::once(&stated.value).chain(&stated.others), "; ")
    });
    let only: Vec<_> = matrix
        .only_in
        .iter()
        .map(|v| {
            CleanHtml::link(
                &format!("#{}", Fragment::Variant(&v.value)),
                &CleanHtml::text(&v.value.as_str().replace('-', " ")),
            )
        })
        .collect();
    let only = if only.is_empty() {
        CleanHtml::empty()
    } else {
        let all = enumeration::together(here, &only);
        words.html("only-in-variant", None, &[("variants", &all)])
    };
    let accession = matrix.accession.as_ref();
    let accession = accession.map_or_else(CleanHtml::empty, |number| {
        CleanHtml::span("accession", &CleanHtml::text(number))
    });
    let now = matrix.now.as_ref().map_or_else(
        || accession.clone(),
        |now| {
            let holder = now
                .holder
                .as_ref()
                .map_or_else(CleanHtml::empty, |h| here.person_or_holder(&h.value));
            let date = now
                .date
                .as_ref()
                .map_or_else(CleanHtml::empty, |d| dates::once_html(&d.value, words));
            let fate = CleanHtml::text(words.listed("matrix-now", now.state.value));
            CleanHtml::join([&fate, &holder, &accession, &date], ", ")
        },
    );
    as_sentences(&[first, sizes, only, now])
}
