//! States, printings and variants of a design.

use crate::model::certainty::Statements;
use crate::model::place::Placed;
use crate::model::printing::{Printing, PrintingKind, StatesPrinted};
use crate::model::state::{State, Variant};
use crate::read::faults::{Faults, Node};
use crate::read::records::citations;
use crate::read::records::points::{Points, shows};
use crate::read::records::series_places::series_places;
use crate::read::records::sizes::sizes;
use crate::read::table::fields::Fields;
use crate::read::table::keyed::Keyed;
use crate::read::values;

/// Reads `[[states]]`.
pub(crate) fn states(fields: &mut Fields<'_, '_>, points: &Points) -> Keyed<State> {
    fields.keyed("states", |fields, key| {
        let follows = fields.has("follows").then(|| fields.keys("follows"));
        if follows.is_none() {
            fields.take("follows");
        }
        let state = State {
            date: fields.statements("date", values::date),
            by: fields.key("by"),
            summary: fields.words("summary"),
            size: sizes(fields),
            shows: shows(fields, points),
            follows,
            described: fields.date("described"),
            split_from: fields.key("split_from"),
            literature: citations::numbered(fields, "literature"),
            standing: fields.stands(),
            place: fields.at,
            key: key?,
        };
        Some(state)
    })
}

/// Reads `[[printings]]`. Where states of the design stand, a printing of its own matrices says which it contains.
pub(crate) fn printings(
    fields: &mut Fields<'_, '_>,
    points: &Points,
    has_states: bool,
) -> Keyed<Printing> {
    fields.keyed("printings", |fields, key| {
        let kind: Statements<PrintingKind> = fields.statements("kind", values::word);
        let is_of_matrices = kind.own().is_none_or(|kind| kind.is_counted());
        if has_states && is_of_matrices && !fields.has("states") {
            fields.lacks(
                "states",
                "the states it contains, a list of keys or \"all\"",
            );
        }
        let printing = Printing {
            name: fields.words("name"),
            kind,
            printer: fields.statements("printer", values::key),
            publisher: fields.statements("publisher", values::key),
            date: fields.statements("date", values::date),
            edition: fields.statements("edition", values::whole(1, 1_000_000)),
            numbered: fields.flag("numbered"),
            printed: fields.statements("printed", values::whole(0, 1_000_000)),
            states: fields
                .one("states", states_printed)
                .unwrap_or(StatesPrinted::Some(Vec::new())),
            matrices: fields.keys("matrices"),
            paper: fields.terms("paper"),
            size: sizes(fields),
            inks: fields.several("inks", values::telling_text),
            pressed: fields.word("pressed").map(|pressed| pressed.value),
            series: series_places(fields),
            shows: shows(fields, points),
            literature: citations::numbered(fields, "literature"),
            standing: fields.stands(),
            place: fields.at,
            key: key?,
        };
        Some(printing)
    })
}

/// `"all"`, or the keys of states.
#[allow(
    clippy::unnecessary_wraps,
    reason = "readers of values have one shape, and most can fail"
)]
fn states_printed<'t>(faults: &mut Faults<'t>, node: &'t Node<'t>) -> Option<StatesPrinted> {
    if node.get_ref().as_str() == Some("all") {
        return Some(StatesPrinted::All);
    }
    let keys: Vec<Placed<_>> = values::several(faults, node, values::key);
    Some(StatesPrinted::Some(keys))
}

/// Reads `[[variants]]`.
pub(crate) fn variants(fields: &mut Fields<'_, '_>, points: &Points) -> Keyed<Variant> {
    fields.keyed("variants", |fields, key| {
        let variant = Variant {
            summary: fields.words("summary"),
            states: fields.keys("states"),
            printings: fields.keys("printings"),
            shows: shows(fields, points),
            standing: fields.stands(),
            place: fields.at,
            key: key?,
        };
        Some(variant)
    })
}
