//! `design.toml`: titles, makers, sizes, matrices. [`super::points`] reads points; [`super::states`]
//! reads states, printings and variants.

use std::collections::{BTreeMap, BTreeSet};

use crate::model::codes::Code;
use crate::model::design::{
    Comparison, Design, Maker, Matrix, MatrixNow, Related, Title, TitleKind,
};
use crate::model::finding::Finding;
use crate::model::key::Key;
use crate::model::printing::StatesPrinted;
use crate::model::state::State;
use crate::read::limits::{MOST_ANSWERS, MOST_CANDIDATES};
use crate::read::records::as_found;
use crate::read::records::citations;
use crate::read::records::pictures::{self, Folder, Pictures};
use crate::read::records::points::{Points, points};
use crate::read::records::series_places::series_places;
use crate::read::records::sizes::sizes;
use crate::read::records::states::{printings, states, variants};
use crate::read::table::fields::Fields;
use crate::read::table::keyed::Keyed;
use crate::read::values;

/// A design's record as it was read.
pub(crate) struct DesignRecord {
    /// The design, without commentary and impressions.
    pub(crate) design: Design,
    /// Its points, for checking the answers to them.
    pub(crate) points: Points,
    /// References that cannot be checked because the key of some part is faulty, as the codes that would
    /// report them.
    pub(crate) unjudged: BTreeSet<Code>,
    /// Whether some picture could not be read.
    pub(crate) lacks_pictures: bool,
}

/// Reads a design's record.
pub(crate) fn design(fields: &mut Fields<'_, '_>, key: &Key, folder: &Folder<'_>) -> DesignRecord {
    let mut design = Design::blank(key, fields.at);
    if let Some(number) = fields.text("number") {
        design.number = number.value;
        design.number_place = number.place;
    }
    design.sort = fields.words("sort");
    design.titles = titles(fields);
    design.date = fields.statements("date", values::date);
    design.makers = makers(fields);
    design.technique = fields.terms("technique");
    design.support = fields.terms("support");
    design.series = series_places(fields);
    design.subjects = fields.several("subjects", values::telling_text);
    design.related = related(fields);
    design.known_from = citations::plain(fields, "known_from");
    design.size = sizes(fields);
    let mut unjudged = BTreeSet::new();
    let mut note = |all_known: bool, code: Code| {
        if !all_known {
            unjudged.insert(code);
        }
    };
    let matrices = matrices(fields);
    note(matrices.all_known, Code::MatrixUnknown);
    design.matrices = matrices.all;
    design.literature = citations::numbered(fields, "literature");
    let (all_points, mut points) = points(fields, &design.number);
    design.points = all_points;
    let states = states(fields, &points);
    note(states.all_known, Code::StateUnknown);
    design.states = states.all;
    points.states = design.states.iter().map(|s| s.key.value.clone()).collect();
    let has_states = design.standing_states().next().is_some() || !states.all_known;
    let printings = printings(fields, &points, has_states);
    note(printings.all_known, Code::PrintingUnknown);
    design.printings = printings.all;
    let variants = variants(fields, &points);
    note(variants.all_known, Code::VariantUnknown);
    design.variants = variants.all;
    if let Some(finding) = too_large(&design) {
        fields.faults.push(finding);
        // Judged by themselves above; what compares them all with each other gets none.
        (design.points, design.states) = (Vec::new(), Vec::new());
        (design.printings, design.variants) = (Vec::new(), Vec::new());
        for code in [
            Code::StateUnknown,
            Code::PrintingUnknown,
            Code::VariantUnknown,
        ] {
            note(false, code);
        }
    }
    let pictures = own_pictures(fields, folder);
    design.pictures = pictures.all;
    design.reference_picture = fields.one("reference_picture", values::picture_key);
    design.comparisons = comparisons(fields);
    design.ids = as_found::ids(fields);
    design.standing = fields.stands();
    DesignRecord {
        design,
        points,
        unjudged,
        lacks_pictures: pictures.lacks_some,
    }
}

/// The error on a design with more candidates or answers than [`MOST_CANDIDATES`] and [`MOST_ANSWERS`].
fn too_large(design: &Design) -> Option<Finding> {
    let mut printings_of_all = 0;
    let mut printings_of: BTreeMap<&Key, usize> = BTreeMap::new();
    for printing in &design.printings {
        match &printing.states {
            StatesPrinted::All => printings_of_all += 1,
            StatesPrinted::Some(named) => {
                let named: BTreeSet<&Key> = named.iter().map(|state| &state.value).collect();
                for state in named {
                    *printings_of.entry(state).or_default() += 1;
                }
            }
        }
    }
    let of_state = |state: &State| {
        let named = printings_of.get(&state.key.value).copied();
        (printings_of_all + named.unwrap_or(0)).max(1)
    };
    let candidates: usize = design.states.iter().map(of_state).sum();
    let points = design.points.len();
    let unread = "so its states, printings, variants and points are not read";
    if candidates > MOST_CANDIDATES {
        let message = format!(
            "the design has {candidates} states, each counted once for every printing that contains it, more than \
             {MOST_CANDIDATES}, {unread}"
        );
        let place = design.printings.first().map(|printing| printing.place);
        let place = place.or(design.states.first().map(|state| state.place))?;
        let help =
            "name in `states` of each printing only those that it contains, or divide the design";
        return Some(Finding::new(Code::DesignTooLarge, place, message).help(help));
    }
    if candidates * points > MOST_ANSWERS {
        let message = format!(
            "the design has {points} points for {candidates} states, each counted once for every printing that \
             contains it: more than {MOST_ANSWERS} answers, {unread}"
        );
        let place = design.points.first()?.key.place;
        let help = "leave out points at which few states differ, or divide the design";
        return Some(Finding::new(Code::DesignTooLarge, place, message).help(help));
    }
    None
}

/// Reads `titles`.
pub(crate) fn titles(fields: &mut Fields<'_, '_>) -> Vec<Title> {
    let titles = fields.tables("titles", |fields| {
        let text = fields.text("text");
        let title = Title {
            lang: fields.one("lang", values::language),
            kind: fields
                .word("kind")
                .map_or(TitleKind::Usual, |kind| kind.value),
            supplied: fields.flag("supplied").unwrap_or(false),
            claim: fields.claim(),
            text: text?,
        };
        Some(title)
    });
    // `titles = []` has the key but no title.
    let holds_nothing = |node: &crate::read::faults::Node<'_>| {
        node.get_ref()
            .as_array()
            .is_some_and(|list| list.is_empty())
    };
    if let Some(node) = fields.take("titles").filter(|node| holds_nothing(node)) {
        let finding = Finding::new(
            Code::ValueEmpty,
            fields.faults.of(node),
            "`titles` is empty",
        );
        fields.faults.push(finding.help(
            "name one; where the design has none, supply one: { text = \"Ship at a quay\", supplied = true }",
        ));
    }
    titles
}

fn makers(fields: &mut Fields<'_, '_>) -> Vec<Maker> {
    fields.tables("makers", |fields| {
        let person = fields.key("person");
        let maker = Maker {
            role: fields.term("role"),
            claim: fields.claim(),
            person: person?,
        };
        Some(maker)
    })
}

fn related(fields: &mut Fields<'_, '_>) -> Vec<Related> {
    fields.tables("related", |fields| {
        let design = fields.key("design");
        let how = fields.term("how");
        Some(Related {
            design: design?,
            how,
        })
    })
}

fn matrices(fields: &mut Fields<'_, '_>) -> Keyed<Matrix> {
    fields.keyed("matrices", |fields, key| {
        let matrix = Matrix {
            kind: fields.word("kind").map(|kind| kind.value),
            material: fields.words("material"),
            carries: fields.words("carries"),
            colour: fields.words("colour"),
            size: fields.statements("size", values::size),
            accession: fields.text("accession"),
            only_in: fields.keys("only_in"),
            now: now(fields),
            place: fields.at,
            key: key?,
        };
        Some(matrix)
    })
}

fn now(fields: &mut Fields<'_, '_>) -> Option<MatrixNow> {
    fields.table("now", |fields| {
        let state = fields.word("state");
        let now = MatrixNow {
            holder: fields.key("holder"),
            date: fields.date("date"),
            state: state?,
        };
        Some(now)
    })?
}

fn own_pictures(fields: &mut Fields<'_, '_>, folder: &Folder<'_>) -> Pictures {
    pictures::pictures(fields, |fields| {
        let of = fields.word("of").map(|of| of.value);
        let cite = fields.cite();
        let at = fields.words("at");
        let mut picture = pictures::picture(fields, folder)?;
        picture.of = of;
        picture.cite = cite;
        picture.at = at;
        Some(picture)
    })
}

fn comparisons(fields: &mut Fields<'_, '_>) -> Vec<Comparison> {
    let mut comparisons = fields.tables("comparisons", |fields| {
        let of = fields.several("of", values::impression_key);
        let why = fields.words("why");
        let written = fields.take("of").map(|node| {
            let number = node.get_ref().as_array().map_or(1, |list| list.len());
            (fields.faults.of(node), number)
        });
        if let Some((place, 0 | 1)) = written {
            let finding = Finding::new(
                Code::ValueRange,
                place,
                "a comparison is of two impressions or more",
            );
            fields
                .faults
                .push(finding.help("name the impressions: [\"14.1\", \"14.2\"]"));
        }
        (of.len() > 1).then_some(Comparison {
            number: 0,
            of,
            why,
            place: fields.at,
        })
    });
    for (comparison, number) in comparisons.iter_mut().zip(1..) {
        comparison.number = number;
    }
    comparisons
}
