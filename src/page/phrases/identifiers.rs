//! Identifiers under which a record is known elsewhere.

use crate::model::as_found::OtherId;
use crate::page::setting::html::CleanHtml;

/// A line for each: "Union list of prints: 4071". An identifier that is an address is a link.
pub(crate) fn lines(ids: &[OtherId]) -> Vec<CleanHtml> {
    let line = |other: &OtherId| {
        let id = match other.address() {
            Some(address) => CleanHtml::web_address(address),
            None => CleanHtml::text(&other.id),
        };
        CleanHtml::text(&other.scheme).then(": ").and(&id)
    };
    ids.iter().map(line).collect()
}

/// What is searched of them: each identifier, as it is written.
pub(crate) fn searched(ids: &[OtherId]) -> impl Iterator<Item = &str> {
    ids.iter().map(|other| other.id.as_str())
}
