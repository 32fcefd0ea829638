//! Links to records, as written in Markdown and in `see`: the target of a link, and the finding on a
//! link that leads nowhere.
//!
//! Not here: whether the record exists (`references::resolve`).

use crate::model::codes::Code;
use crate::model::finding::Finding;
use crate::model::link::Target;
use crate::model::place::Place;
use crate::read::values::near::nearest;

/// The target of a link.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum LinkTarget {
    /// A record.
    Record(Target),
    /// An address outside the catalogue: `https`, `http`, `mailto`.
    Outside,
    /// An address that would run code in a reader's browser; pages leave it out.
    Running,
    /// Anything else.
    Nowhere,
}

impl LinkTarget {
    /// The target of a destination in Markdown.
    pub(crate) fn of(destination: &str) -> LinkTarget {
        if let Ok(target) = destination.parse() {
            return LinkTarget::Record(target);
        }
        // Browsers ignore blanks and control characters in a scheme, so they are removed here.
        let plain: String = destination
            .chars()
            .filter(|c| !c.is_whitespace() && !c.is_control())
            .flat_map(char::to_lowercase)
            .collect();
        let has_scheme = |schemes: &[&str]| schemes.iter().any(|scheme| plain.starts_with(scheme));
        if has_scheme(&["https://", "http://", "mailto:"]) {
            LinkTarget::Outside
        } else if has_scheme(&["javascript:", "vbscript:", "data:"]) {
            LinkTarget::Running
        } else {
            LinkTarget::Nowhere
        }
    }
}

/// The finding on a link that names no record. `written`: the link as written.
pub(crate) fn nowhere(written: &str, place: Place) -> Finding {
    let message = if written.is_empty() {
        "a link has no target".to_owned()
    } else {
        format!("`{written}` names no record of the catalogue and no address on the web")
    };
    let kinds = || {
        format!(
            "a link is one of {}: or an https address",
            Target::KINDS.join(":, ")
        )
    };
    let help = match written.split_once(':') {
        Some((kind, key)) => match nearest(kind, Target::KINDS.iter().copied()) {
            Some(near) => format!("write `{near}:{key}`"),
            None if Target::KINDS.contains(&kind) => match kind {
                "impression" => "write the design and the number: impression:14.7".to_owned(),
                "picture" => {
                    "write the record and the picture's name: picture:14.7/recto".to_owned()
                }
                _ => "keys are lower-case letters and digits joined by hyphens".to_owned(),
            },
            None => kinds(),
        },
        None => kinds(),
    };
    Finding::new(Code::LinkUnknown, place, message).help(help)
}
