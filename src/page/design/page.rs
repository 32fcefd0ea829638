//! The page of a design. Its template sets the order: the plate, the facts in the order of an entry of a print
//! catalogue (`docs/trade.md`, "Order of an entry"), the commentary, states, printings, impressions with the gallery of
//! their photographs, census; then the rest. In a printed entry the commentary comes last; on a screen that is
//! fifteen screens below the plate it is about.

use serde::Serialize;

use super::apparatus;
use super::brief::brief;
use super::descent;
use super::holdings::{self, Group};
use super::point_table::{self, PointLine, PointTable};
use super::printing_order::{self, OrderView};
use super::printings::{self, PrintingLine, VariantLine};
use super::sources::{self, Concordance};
use super::states::{self, StateLine};
use super::told_apart;
use crate::model::design::Design;
use crate::model::document::EvidenceTarget;
use crate::model::impression::{Impression, Status};
use crate::model::key::{PictureKey, PictureOwner};
use crate::model::link::Target;
use crate::page::census::crossing::{self, Crossing, FigureTarget};
use crate::page::comparison::links;
use crate::page::drawings::diagram::Diagram;
use crate::page::key::candidates;
use crate::page::lists::choices::choices;
use crate::page::lists::entry::Entry;
use crate::page::lists::facts::{Fact, FactsPlace};
use crate::page::lists::mentions;
use crate::page::phrases::citations;
use crate::page::phrases::document_names::told_of;
use crate::page::phrases::sheet_counts;
use crate::page::phrases::standing_note;
use crate::page::plates::figures;
use crate::page::plates::gallery::{self, Gallery};
use crate::page::plates::strips::{self, Strip};
use crate::page::setting::address::{Address, Overview};
use crate::page::setting::book::Here;
use crate::page::setting::export_links::ExportLink;
use crate::page::setting::forms;
use crate::page::setting::html::CleanHtml;
use crate::page::setting::leaf::Leaf;
use crate::page::setting::number_size::number_class;
use crate::page::setting::pictures::{Plate, Setting};
use crate::page::setting::reading_order;
use crate::page::texts::markdown;
use crate::study::census::Row;

#[derive(Serialize)]
struct View {
    number: String,
    number_class: &'static str,
    title: CleanHtml,
    also: Vec<CleanHtml>,
    brief: CleanHtml,
    standing: Option<CleanHtml>,
    /// The records to choose from, where it was withdrawn in favour of several.
    choices: Vec<Entry>,
    plate: Option<Plate>,
    facts: Vec<Fact>,
    states: Vec<StateLine>,
    only_state: bool,
    state_table: Option<PointTable>,
    /// The strips: the points that separate most, each cut from every aligned photograph.
    strips: Vec<Strip>,
    /// Whether other points have details too, on their own pages.
    more_strips: bool,
    strip_credits: Vec<CleanHtml>,
    /// The photographed sheets that are in no strip, with the reasons.
    not_aligned: Vec<CleanHtml>,
    /// The points that separate the candidates, and the candidates that none separates.
    told_apart: Vec<CleanHtml>,
    /// The descent of the states, where it branches.
    descent: Option<Diagram>,
    /// The order of printing, with the reason of each step.
    order: Option<OrderView>,
    /// The link to the identification key.
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
    /// The forms for sheets of the design.
    report: Option<CleanHtml>,
    /// The records of its sheets for other programs.
    files: Vec<ExportLink>,
    /// The link to the comparison that the reader chooses.
    compare: Option<String>,
    pictures: Vec<Plate>,
    related: Vec<CleanHtml>,
    literature: Vec<CleanHtml>,
    concordance: Option<Concordance>,
    exhibitions: Vec<CleanHtml>,
    /// What documents tell of the design as a whole.
    documents: Vec<CleanHtml>,
    commentary: Option<CleanHtml>,
    mentioned: Vec<CleanHtml>,
}

pub(crate) fn page(here: &Here<'_>, design: &Design) -> Leaf {
    let sheets = reading_order::listed(here, design);
    let leading = figures::design_picture(here, design);
    let state_table = states::table(here, design, &design.points);
    let taken = state_table
        .as_ref()
        .map(PointTable::row_ids)
        .unwrap_or_default();
    let printing_table =
        printings::table(here, design, &design.points).map(|table| table.without_ids(&taken));
    let mut placed = taken;
    placed.extend(printing_table.iter().flat_map(PointTable::row_ids));
    let gallery = gallery::gallery(here, design, &sheets);
    let plate = leading
        .as_ref()
        .and_then(|key| figures::plate(here, key, None, Setting::Leading));
    let strips = strips::of_design(here, design);
    let view = View {
        number: design.number.clone(),
        number_class: number_class(&design.number),
        title: here.design_title(design),
        also: other_titles(here, design),
        brief: brief(here, design),
        standing: standing_note::note(here, &design.standing),
        choices: choices(here, &design.standing),
        facts: apparatus::facts(here, design, FactsPlace::after(plate.as_ref())),
        plate,
        states: states::lines(here, design),
        only_state: design.standing_states().count() == 1,
        state_table,
        strip_credits: strips::credits_of_design(here, design),
        more_strips: strips::has_more(here, design, strips.len()),
        not_aligned: if strips.is_empty() {
            Vec::new()
        } else {
            strips::not_shown(here, design, None)
        },
        strips,
        told_apart: told_apart::summary(here, design),
        descent: descent::diagram(here, design),
        order: printing_order::view(here, design),
        key: candidates::has_key(design)
            .then(|| here.href(&Address::IdentificationKey(design.key.clone()))),
        printings: printings::lines(here, design),
        variants: printings::variants(here, design),
        printing_table,
        other_points: point_table::other_points(here, design, &placed),
        groups: holdings::groups(here, design),
        crossing: crossing::table(here, design, FigureTarget::Gallery(gallery.as_ref())),
        gallery,
        census: census(here, design, &sheets),
        census_page: here
            .book
            .overviews
            .contains(&Overview::Census)
            .then(|| here.href(&Address::DesignCensus(design.key.clone()))),
        comparisons: links::recorded(here, design),
        files: here.export_links_of(&["lido"]),
        report: forms::report(here, design),
        compare: links::chosen_href(here, design, None),
        pictures: own_pictures(here, design, leading.as_ref()),
        related: sources::related(here, design),
        literature: sources::literature(here, design, &sheets),
        concordance: sources::concordance(here, design),
        exhibitions: sources::exhibitions(here, design, &sheets),
        documents: told_of(here, &EvidenceTarget::Design(design.key.clone())),
        commentary: markdown::note(here, design.commentary.as_ref()),
        mentioned: mentions::in_texts(here, &Target::Design(design.key.clone())),
    };
    let title = format!("{}. {}", design.number, view.title.plain());
    let described = format!("{title}. {}", view.brief.plain());
    let siglum = &here.public().settings.siglum.value;
    let parts = citations::of_design(here, design).into_iter().skip(1);
    let parts = parts.map(|part| format!("{}, {}", part.short, part.url));
    Leaf::new(here.address, title, "pages/design.html", &view)
        .described(described)
        .cited_as(format!("{siglum} {}", design.number))
        .with_cited_parts(parts.collect())
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
            here.element_in_language("span", &text, language)
        })
        .collect()
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
    let mut out = CleanHtml::text(&sheet_counts::known(here, study.census.sheets));
    let located = study
        .census
        .by
        .status
        .iter()
        .find(|row| row.key == Some(Status::Located));
    let is_all = |row: &Row<Status>| {
        row.sheets.is_certain() && row.sheets.at_most == study.census.sheets.at_most
    };
    if located.is_some_and(is_all) {
        // Of an only sheet the list above says where it is.
        if study.census.sheets.at_most > 1 {
            out = out.then("; ").then(words.word("all-located"));
        }
    } else if let Some(row) = located {
        let figure = CleanHtml::text(&sheet_counts::figure(row.sheets));
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
