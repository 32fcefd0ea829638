//! Identifiers of a record elsewhere: an address is the same thing in another database, anything else an identifier
//! that its scheme assigned.

use super::concepts::LOCAL_NUMBER;
use super::node::Node;
use super::parts::identifier;
use crate::model::as_found::OtherId;

/// The things of a class that the addresses among some identifiers name.
pub(super) fn equivalents<'i>(
    class: &'static str,
    ids: impl IntoIterator<Item = &'i OtherId>,
) -> Vec<Node> {
    let addresses = ids.into_iter().filter_map(OtherId::address);
    let same = addresses.map(|address| Node {
        id: Some(address.to_owned()),
        ..Node::new(class)
    });
    same.collect()
}

/// The identifiers that are no addresses.
pub(super) fn nodes(ids: &[OtherId]) -> impl Iterator<Item = Node> {
    let plain = ids.iter().filter(|other| other.address().is_none());
    plain.map(|other| {
        let assigned = Node {
            label: Some(other.scheme.value.clone()),
            ..Node::new("AttributeAssignment")
        };
        Node {
            assigned_by: vec![assigned],
            ..identifier(other.id.value.as_str(), LOCAL_NUMBER)
        }
    })
}
