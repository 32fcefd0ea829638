//! How an object was acquired, as the grammar of credit lines reads it.
//!
//! An acquisition by whoever owns or keeps the object now, or by nobody named, is in `changed_ownership_through`; one by
//! somebody else in `changed_ownership_through[by another]`. What these cells say is said again in the columns of their
//! parts.

use super::concepts::{self, label_shown};
use super::production::date_shown;
use crate::exchange::intake::records::json::address;
use crate::exchange::intake::records::node::Node;
use crate::exchange::intake::records::row::Row;

/// Reads the acquisitions of an object.
pub(super) fn read(object: &Node, row: &mut Row) {
    let owners = object
        .all("current_owner")
        .chain(object.all("current_custodian"));
    let owners: Vec<(&str, &str)> = owners
        .map(|owner| (address(owner), label_shown(owner)))
        .collect();
    for acquisition in object.all("changed_ownership_through") {
        let to: Vec<&Node> = acquisition.all("transferred_title_to").collect();
        let from: Vec<&Node> = acquisition.all("transferred_title_from").collect();
        let is_own = |actor: &&Node| {
            let named = (address(actor), label_shown(actor));
            let same =
                |own: &(&str, &str)| (!named.0.is_empty() && own.0 == named.0) || own.1 == named.1;
            owners.iter().any(same)
        };
        let kinds = acquisition
            .all("classified_as")
            .chain(acquisition.all("technique"));
        let how: Vec<&str> = kinds
            .map(|kind| concepts::known(kind).unwrap_or_else(|| label_shown(kind)))
            .collect();
        let names = |actors: &[&Node]| {
            let names = actors.iter().map(|actor| label_shown(actor));
            names.collect::<Vec<_>>().join(" and ")
        };
        let from = match from.as_slice() {
            [] => String::new(),
            from => format!("from {}", names(from)),
        };
        let said = format!("{} {from}", how.join(" "));
        let said = said.trim().to_owned();
        let date = acquisition.all("timespan").map(date_shown);
        let date = date
            .filter(|date| !date.is_empty())
            .collect::<Vec<_>>()
            .join("; ");
        let by_another = !to.is_empty() && !to.iter().any(is_own);
        let by = if by_another {
            names(&to)
        } else {
            String::new()
        };
        let parts = [by, said, date];
        let parts: Vec<&str> = parts
            .iter()
            .map(String::as_str)
            .filter(|part| !part.is_empty())
            .collect();
        let path = if by_another {
            "changed_ownership_through[by another]"
        } else {
            "changed_ownership_through"
        };
        row.add(path, &parts.join(", "));
    }
}
