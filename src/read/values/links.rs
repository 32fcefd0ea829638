//! Links to records, as Markdown and `see` write them: where one leads, and the finding about one that
//! leads nowhere.
//!
//! Not here: whether the record is there (`references::resolve`).

use crate::model::codes::Code;
use crate::model::finding::Finding;
use crate::model::link::Target;
use crate::model::place::Place;
use crate::read::values::near::nearest;

/// Where a link leads.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum LinkTarget {
    /// To a record.
    Record(Target),
    /// Out of the catalogue: `https`, `http`, `mailto`.
    Outside,
    /// To something that would run in a reader's browser; pages leave it out.
    Running,
    /// To nothing that is understood.
    Nowhere,
}

impl LinkTarget {
    /// Where a destination of Markdown leads.
    pub(crate) fn of(destination: &str) -> LinkTarget {
        if let Ok(target) = destination.parse() {
            return LinkTarget::Record(target);
        }
        // Browsers ignore blanks and control characters in a scheme; so does this.
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

/// The finding about a link that names no record, as it is written.
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
