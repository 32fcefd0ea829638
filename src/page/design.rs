//! The page of a design, in the order of a good print catalogue (TRADE.md section 6): number,
//! titles, date, technique, size, series, matrices; states; printings; impressions; census;
//! comparisons; related designs; literature and concordance; exhibitions; commentary.

use serde::Serialize;

use super::address::{Address, Fragment, Overview};
use super::book::Here;
use super::census_words;
use super::claims::{self, Stated};
use super::crossing::{self, Crossing};
use super::dates;
use super::descent;
use super::design_sources::{self, Concordance};
use super::diagram::Diagram;
use super::figures;
use super::frame::Leaf;
use super::gallery::{self, Gallery};
use super::holdings::{self, Group};
use super::html::CleanHtml;
use super::key;
use super::markdown::{self, Standing};
use super::mentioned;
use super::pictures::{Plate, Setting};
use super::printings::{self, PrintingLine, VariantLine};
use super::readings;
use super::sizes;
use super::standing;
use super::states::{self, PointLine, PointTable, StateLine};
use super::told_apart;
use super::values;
use super::worn::{self, Worn};
use crate::model::design::{Design, Matrix, MatrixKind};
use crate::model::impression::{Impression, Status};
use crate::model::key::{PictureKey, PictureOwner};
use crate::model::link::Target;
use crate::model::vocabulary::List;

#[derive(Serialize)]
struct View {
    number: String,
    number_class: &'static str,
    title: CleanHtml,
    also: Vec<CleanHtml>,
    brief: CleanHtml,
    standing: Option<CleanHtml>,
    plate: Option<Plate>,
    facts: Vec<Fact>,
    states: Vec<StateLine>,
    only_state: bool,
    state_table: Option<PointTable>,
    /// What tells apart all that can be told, and what nothing separates.
    told_apart: Vec<CleanHtml>,
    /// The descent of the states, where it branches.
    descent: Option<Diagram>,
    /// What wear tells of the order of pulling.
    wear: Vec<Worn>,
    /// Where the identification key stands.
    key: Option<String>,
    printings: Vec<PrintingLine>,
    variants: Vec<VariantLine>,
    printing_table: Option<PointTable>,
    other_points: Vec<PointLine>,
    groups: Vec<Group>,
    gallery: Option<Gallery>,
    crossing: Option<Crossing>,
    census: CleanHtml,
    census_page: Option<String>,
    comparisons: Vec<CleanHtml>,
    pictures: Vec<Plate>,
    related: Vec<CleanHtml>,
    literature: Vec<CleanHtml>,
    concordance: Option<Concordance>,
    exhibitions: Vec<CleanHtml>,
    commentary: Option<CleanHtml>,
    mentioned: Vec<CleanHtml>,
}

/// One line of the apparatus: what it is, what is known of it, what others say.
#[derive(Serialize)]
pub(super) struct Fact {
    /// What it is, in the margin.
    pub term: String,
    /// What is known, one line each.
    pub lines: Vec<Line>,
    /// What others say.
    pub others: Vec<CleanHtml>,
}

/// A line of a fact, which may be led to.
#[derive(Serialize)]
pub(super) struct Line {
    /// Its fragment; empty where nothing leads to it.
    pub id: String,
    /// What it says.
    pub text: CleanHtml,
}

impl Fact {
    /// A fact of one line; nothing where there is nothing to say.
    pub fn one(term: &str, text: CleanHtml) -> Option<Fact> {
        text.some().map(|text| Fact {
            term: term.to_owned(),
            lines: vec![Line {
                id: String::new(),
                text,
            }],
            others: Vec::new(),
        })
    }

    /// A fact as it is stated.
    pub fn stated(term: &str, stated: Option<Stated>) -> Option<Fact> {
        stated.map(|stated| Fact {
            term: term.to_owned(),
            lines: vec![Line {
                id: String::new(),
                text: stated.value,
            }],
            others: stated.others,
        })
    }
}

pub(super) fn page(here: &Here<'_>, design: &Design) -> Leaf {
    let sheets = holdings::listed(here, design);
    let leading = figures::design_picture(here, design);
    let state_table = states::table(here, design);
    let taken = state_table
        .as_ref()
        .map(PointTable::row_ids)
        .unwrap_or_default();
    let printing_table = printings::table(here, design).map(|table| table.without_ids(&taken));
    let mut placed = taken;
    placed.extend(printing_table.iter().flat_map(PointTable::row_ids));
    let gallery = gallery::gallery(here, design, &sheets);
    let view = View {
        number: design.number.clone(),
        number_class: number_class(&design.number),
        title: here.design_title(design),
        also: other_titles(here, design),
        brief: brief(here, design),
        standing: standing::note(here, &design.standing),
        plate: leading
            .as_ref()
            .and_then(|key| figures::plate(here, key, None, Setting::Leading)),
        facts: facts(here, design),
        states: states::lines(here, design),
        only_state: design.standing_states().count() == 1,
        state_table,
        told_apart: told_apart::summary(here, design),
        descent: descent::diagram(here, design),
        wear: worn::all(here, design),
        key: key::has_key(design)
            .then(|| here.href(&Address::IdentificationKey(design.key.clone()))),
        printings: printings::lines(here, design),
        variants: printings::variants(here, design),
        printing_table,
        other_points: states::other_points(here, design, &placed),
        groups: holdings::groups(here, design),
        crossing: crossing::table(here, design, gallery.as_ref()),
        gallery,
        census: census(here, design, &sheets),
        census_page: here
            .book
            .overviews
            .contains(&Overview::Census)
            .then(|| here.href(&Address::DesignCensus(design.key.clone()))),
        comparisons: comparisons(here, design),
        pictures: own_pictures(here, design, leading.as_ref()),
        related: design_sources::related(here, design),
        literature: design_sources::literature(here, design, &sheets),
        concordance: design_sources::concordance(here, design),
        exhibitions: design_sources::exhibitions(here, &sheets),
        commentary: design
            .commentary
            .as_ref()
            .and_then(|note| markdown::html(&note.text, here, Standing::Part).some()),
        mentioned: mentioned::in_texts(here, &Target::Design(design.key.clone())),
    };
    let title = format!("{}. {}", design.number, view.title.plain());
    let described = format!("{title}. {}", view.brief.plain());
    let siglum = &here.public().settings.siglum.value;
    Leaf::new(here.address, title, "pages/design.html", &view)
        .described(described)
        .cited_as(format!("{siglum} {}", design.number))
}

/// The class that makes a long number smaller.
pub(super) fn number_class(number: &str) -> &'static str {
    match number.chars().count() {
        0..=3 => "number",
        4..=6 => "number long",
        _ => "number longer",
    }
}

fn other_titles(here: &Here<'_>, design: &Design) -> Vec<CleanHtml> {
    let first = design.title().map(std::ptr::from_ref);
    design
        .titles
        .iter()
        .filter(|title| Some(std::ptr::from_ref(*title)) != first)
        .filter(|title| title.kind != crate::model::design::TitleKind::Former)
        .map(|title| {
            let language = title.lang.as_ref().map(|l| l.value.as_str());
            let text = if title.supplied {
                CleanHtml::text("[").then(&title.text).then("]")
            } else {
                CleanHtml::text(&title.text)
            };
            match language {
                Some(language) => here.in_language("span", &text, Some(language)),
                None => text,
            }
        })
        .map(|title| {
            if title.as_str().starts_with("<span") {
                title
            } else {
                CleanHtml::element("span", &[], &title)
            }
        })
        .collect()
}

/// "1927. Colour woodcut from two blocks."
pub(super) fn brief(here: &Here<'_>, design: &Design) -> CleanHtml {
    let words = here.words();
    let date = design
        .date
        .own()
        .map_or_else(CleanHtml::empty, |d| dates::once_html(d, words));
    let techniques: Vec<_> = design
        .technique
        .iter()
        .map(|t| CleanHtml::text(&here.term(List::Techniques, t.value.as_str())))
        .collect();
    let technique = readings::together(here, &techniques);
    let technique = match (technique.is_empty(), design.matrices.len()) {
        (true, _) => CleanHtml::empty(),
        (false, 0) => technique,
        (false, n) => {
            let id = match one_kind(&design.matrices) {
                Some(MatrixKind::Block) => "from-blocks",
                Some(MatrixKind::Plate) => "from-plates",
                Some(MatrixKind::Stone) => "from-stones",
                Some(MatrixKind::Screen) => "from-screens",
                None => "from-some-matrices",
            };
            words.html(id, Some(n), &[("technique", &technique)])
        }
    };
    super::html::as_sentences(&[date, technique])
}

fn one_kind(matrices: &[Matrix]) -> Option<MatrixKind> {
    let first = matrices.first()?.kind?;
    matrices
        .iter()
        .all(|m| m.kind == Some(first))
        .then_some(first)
}

fn facts(here: &Here<'_>, design: &Design) -> Vec<Fact> {
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
    let technique = readings::together(here, &techniques);
    let support = readings::either(here, &supports);
    let technique = match (technique.is_empty(), support.is_empty()) {
        (_, true) => technique,
        (true, false) => support,
        (false, false) => {
            technique
                .then(", ")
                .and(&words.html("on-paper", None, &[("papers", &support)]))
        }
    };
    let subjects: Vec<_> = design
        .subjects
        .iter()
        .map(|s| here.subject(&s.value))
        .collect();
    let mut facts: Vec<Option<Fact>> = vec![
        Fact::one(
            words.word("key"),
            CleanHtml::text(&format!("{siglum} {}", design.key)),
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
        Fact::one(
            words.word("technique"),
            super::html::capitalised(&technique),
        ),
        size_fact(here, design),
        Fact::one(words.word("series-one"), series(here, design)),
    ];
    facts.push(matrices(here, design));
    facts.push(Fact::one(
        words.word("subjects"),
        CleanHtml::join(&subjects, ", "),
    ));
    facts.into_iter().flatten().collect()
}

/// Image and matrix, each on its line, with what others measured.
fn size_fact(here: &Here<'_>, design: &Design) -> Option<Fact> {
    let of_matrix = match one_kind(&design.matrices) {
        Some(MatrixKind::Block) => "of-block",
        Some(MatrixKind::Plate) => "of-plate",
        Some(MatrixKind::Stone) => "of-stone",
        Some(MatrixKind::Screen) => "of-screen",
        None => "of-matrix",
    };
    let image = sizes::stated(here, &design.image, "of-image");
    let matrix = sizes::stated(here, &design.matrix_size, of_matrix);
    let mut lines = Vec::new();
    let mut others = Vec::new();
    for stated in [image, matrix].into_iter().flatten() {
        lines.push(Line {
            id: String::new(),
            text: stated.value,
        });
        others.extend(stated.others);
    }
    (!lines.is_empty()).then(|| Fact {
        term: here.words().word("size").to_owned(),
        lines,
        others,
    })
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

/// "*Crossings*, no. 1".
fn series(here: &Here<'_>, design: &Design) -> CleanHtml {
    let Some(series) = &design.series else {
        return CleanHtml::empty();
    };
    let name = CleanHtml::element(
        "i",
        &[],
        &here.gathered(Overview::Series, &series.name, &series.name),
    );
    match &series.position {
        Some(position) => here.words().html(
            "place-in-series",
            None,
            &[("series", &name), ("position", &CleanHtml::text(position))],
        ),
        None => name,
    }
}

fn matrices(here: &Here<'_>, design: &Design) -> Option<Fact> {
    let term = match one_kind(&design.matrices) {
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
        term: here.words().word(term).to_owned(),
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
    let name = CleanHtml::text(&values::matrix_name(here, design, &matrix.key.value));
    let name = CleanHtml::join([&name, &optional(&matrix.material)], ", ");
    let does = CleanHtml::join(
        [&optional(&matrix.carries), &optional(&matrix.colour)],
        ", ",
    );
    let first = CleanHtml::join([&name, &does], ": ");
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
        let all = readings::together(here, &only);
        words.html("only-in-variant", None, &[("variants", &all)])
    };
    let now = matrix.now.as_ref().map_or_else(CleanHtml::empty, |now| {
        let holder = now
            .holder
            .as_ref()
            .map_or_else(CleanHtml::empty, |h| here.person_or_holder(&h.value));
        let date = now
            .date
            .as_ref()
            .map_or_else(CleanHtml::empty, |d| dates::once_html(&d.value, words));
        let fate = CleanHtml::text(words.listed("matrix-now", now.state.value));
        CleanHtml::join([&fate, &holder, &date], ", ")
    });
    super::html::as_sentences(&[first, only, now])
}

/// "14 impressions known, 11 of them located."
fn census(here: &Here<'_>, design: &Design, sheets: &[&Impression]) -> CleanHtml {
    let Some(study) = here.book.studies.designs.get(&design.key) else {
        return CleanHtml::empty();
    };
    if study.census.sheets.at_most == 0 {
        return CleanHtml::empty();
    }
    let words = here.words();
    let mut out = CleanHtml::text(&census_words::known(here, study.census.sheets));
    let located = study
        .census
        .by
        .status
        .iter()
        .find(|row| row.key == Some(Status::Located));
    if let Some(row) = located {
        let figure = CleanHtml::text(&census_words::figure(row.sheets));
        out = out
            .then("; ")
            .and(&words.html("of-which-located", None, &[("figure", &figure)]));
    }
    out.push_text(".");
    for impression in sheets {
        for other in &impression.maybe_same_as {
            let pair = words.html(
                "may-be-one-sheet",
                None,
                &[
                    ("one", &here.impression(&impression.key)),
                    ("other", &here.impression(&other.impression.value)),
                ],
            );
            out = out.then(" ").and(&pair);
        }
    }
    out
}

fn comparisons(here: &Here<'_>, design: &Design) -> Vec<CleanHtml> {
    design
        .comparisons
        .iter()
        .zip(1..)
        .map(|(comparison, place)| {
            let names: Vec<_> = comparison
                .of
                .iter()
                .map(|key| CleanHtml::span("handle", &CleanHtml::text(&key.value.to_string())))
                .collect();
            let all = readings::together(here, &names);
            let address = Address::Comparison(design.key.clone(), place);
            let link = CleanHtml::link(&here.href(&address), &all);
            match &comparison.why {
                Some(why) => link.then(": ").then(why),
                None => link,
            }
        })
        .collect()
}

fn own_pictures(here: &Here<'_>, design: &Design, leading: Option<&PictureKey>) -> Vec<Plate> {
    design
        .pictures
        .iter()
        .map(|picture| PictureKey {
            owner: PictureOwner::Design(design.key.clone()),
            name: picture.name.value.clone(),
        })
        .filter(|key| Some(key) != leading)
        .filter_map(|key| figures::plate(here, &key, None, Setting::Gallery))
        .collect()
}
