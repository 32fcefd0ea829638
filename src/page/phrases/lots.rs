//! Numbers of sales: "lot 212", of a dealer's list "no. 44".

use crate::model::impression::Party;
use crate::model::provenance::ProvenanceEntry;
use crate::page::setting::book::Here;
use crate::page::setting::words::Argument;

/// The number under which a sheet was offered; empty where none is recorded.
pub(crate) fn number(here: &Here<'_>, entry: &ProvenanceEntry) -> String {
    let word = if is_dealer(here, &entry.party) {
        "dealer-number"
    } else {
        "lot"
    };
    entry.lot.as_ref().map_or_else(String::new, |lot| {
        here.words().with(word, &[("lot", Argument::Text(lot))])
    })
}

/// Whether a party is recorded as a dealer and not as an auctioneer, so that its numbers are those of a list.
fn is_dealer(here: &Here<'_>, party: &Party) -> bool {
    let Party::Record(key) = party else {
        return false;
    };
    let person = here.public().people.get(&key.value);
    let has = |role: &str| person.is_some_and(|p| p.roles.iter().any(|r| r.value.as_str() == role));
    has("dealer") && !has("auctioneer")
}
