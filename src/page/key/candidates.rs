//! The candidates of a design: what a sheet of it can be, and their names (`docs/definitions.md`,
//! "Candidates").

use crate::model::design::Design;
use crate::model::key::Key;
use crate::page::phrases::enumeration;
use crate::page::setting::address::{Address, Fragment};
use crate::page::setting::book::Here;
use crate::page::setting::html::CleanHtml;
use crate::study::candidates::candidates;
use crate::study::table::{CandidateRow, DiagnosticTable};

/// Whether a design has a key: at least one candidate and one point.
pub(crate) fn has_key(design: &Design) -> bool {
    !design.points.is_empty() && !candidates(design).is_empty()
}

/// The diagnostic table of a design.
pub(crate) fn table<'b>(here: &Here<'b>, design: &Design) -> Option<&'b DiagnosticTable> {
    let study = here.book.studies.designs.get(&design.key)?;
    Some(&study.table)
}

/// "*iii*/v", linked; "no state of this design" for a recut or a reproduction.
pub(crate) fn state_name(here: &Here<'_>, design: &Design, key: Option<&Key>) -> CleanHtml {
    key.map_or_else(
        || CleanHtml::text(here.words().word("no-state-of-this")),
        |key| here.state_of(&design.key, key),
    )
}

/// "Printed by the artist", linked; "no recorded printing".
pub(crate) fn printing_name(here: &Here<'_>, design: &Design, key: Option<&Key>) -> CleanHtml {
    let Some(key) = key else {
        return CleanHtml::text(here.words().word("no-recorded-printing"));
    };
    let address = Address::Design(design.key.clone());
    let to = here.href_part(&address, Fragment::Printing(key));
    CleanHtml::link(&to, &CleanHtml::text(&here.printing_name(design, key)))
}

/// "state *iii*/v (Printed by the artist)", with links; the printing alone where it has no state.
pub(crate) fn candidate_name(here: &Here<'_>, design: &Design, row: &CandidateRow) -> CleanHtml {
    let state = row.state.as_ref().map(|key| {
        let state = here.state_of(&design.key, key);
        if design.standing_states().count() == 1 {
            return state;
        }
        here.words()
            .html("state-reading", None, &[("state", &state)])
    });
    let printing = row.printing.as_ref();
    let printing = printing.map(|key| printing_name(here, design, Some(key)));
    match (state, printing) {
        (Some(state), Some(printing)) => state.then(" (").and(&printing).then(")"),
        (state, printing) => state.or(printing).unwrap_or_default(),
    }
}

/// "consistent with state *i*/v (Printed by the artist) or state *ii*/v (…)".
pub(crate) fn consistent_with(here: &Here<'_>, names: &[CleanHtml]) -> CleanHtml {
    let either = enumeration::either(here, names);
    here.words()
        .html("consistent-with", None, &[("candidates", &either)])
}
