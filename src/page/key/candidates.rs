//! The candidates of a design: what a sheet of it can be, and their names (`docs/definitions.md`,
//! "Candidates").

use crate::model::design::Design;
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

/// "state *iii*/v (Printed by the artist)", with links.
pub(crate) fn candidate_name(here: &Here<'_>, design: &Design, row: &CandidateRow) -> CleanHtml {
    let state = here.state_of(&design.key, &row.state);
    let state = if design.standing_states().count() == 1 {
        state
    } else {
        here.words()
            .html("state-reading", None, &[("state", &state)])
    };
    match &row.printing {
        None => state,
        Some(key) => {
            let address = Address::Design(design.key.clone());
            let to = here.href_part(&address, Fragment::Printing(key));
            let name = CleanHtml::text(&here.printing_name(design, key));
            state.then(" (").and(&CleanHtml::link(&to, &name)).then(")")
        }
    }
}

/// "consistent with state *i*/v (Printed by the artist) or state *ii*/v (…)".
pub(crate) fn consistent_with(here: &Here<'_>, names: &[CleanHtml]) -> CleanHtml {
    let either = enumeration::either(here, names);
    here.words()
        .html("consistent-with", None, &[("candidates", &either)])
}
