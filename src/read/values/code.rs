//! Codes of standards: languages, countries, institutions, addresses on the web, colours.
//!
//! Their forms: `identifiers`.

use super::identifiers;
use super::text::str_in;
use crate::model::codes::Code;
use crate::model::finding::Finding;
use crate::model::place::{Place, Placed};
use crate::model::settings::Ink;
use crate::read::faults::{Faults, Node};

/// Reads a code: `check` gives its canonical form, or the message and the help.
fn code<'t, T>(
    faults: &mut Faults<'t>,
    node: &'t Node<'t>,
    fault: Code,
    check: impl FnOnce(&str) -> Result<T, identifiers::Malformed>,
) -> Option<Placed<T>> {
    let text = str_in(faults, node, "text in quotes")?;
    checked(faults, text.value, text.place, fault, check)
}

fn checked<T>(
    faults: &mut Faults<'_>,
    text: &str,
    place: Place,
    fault: Code,
    check: impl FnOnce(&str) -> Result<T, identifiers::Malformed>,
) -> Option<Placed<T>> {
    match check(text) {
        Ok(code) => Some(Placed::new(code, place)),
        Err(malformed) => {
            let message = format!("\"{text}\" {}", malformed.what);
            let finding = Finding::new(fault, place, message);
            faults.push(finding.help(malformed.help));
            None
        }
    }
}

/// A language tag from text at `place`.
pub(crate) fn language_from(faults: &mut Faults<'_>, text: &str, place: Place) -> Option<String> {
    let tag = checked(faults, text, place, Code::CodeSyntax, identifiers::language)?;
    Some(tag.value)
}

/// A language tag.
pub(crate) fn language<'t>(faults: &mut Faults<'t>, node: &'t Node<'t>) -> Option<Placed<String>> {
    code(faults, node, Code::CodeSyntax, identifiers::language)
}

/// A country.
pub(crate) fn country<'t>(faults: &mut Faults<'t>, node: &'t Node<'t>) -> Option<Placed<String>> {
    code(faults, node, Code::CodeSyntax, identifiers::country)
}

/// The code of a library or museum.
pub(crate) fn isil<'t>(faults: &mut Faults<'t>, node: &'t Node<'t>) -> Option<Placed<String>> {
    code(faults, node, Code::CodeSyntax, identifiers::isil)
}

/// An address on the web.
pub(crate) fn web<'t>(faults: &mut Faults<'t>, node: &'t Node<'t>) -> Option<Placed<String>> {
    code(faults, node, Code::AddressSyntax, identifiers::web)
}

/// A colour.
pub(crate) fn colour<'t>(faults: &mut Faults<'t>, node: &'t Node<'t>) -> Option<Placed<Ink>> {
    code(faults, node, Code::CodeSyntax, |text| {
        let digits = text.strip_prefix('#').unwrap_or_default();
        let is_hex = digits.bytes().all(|b| b.is_ascii_hexdigit());
        Ink::parse(text)
            .filter(|_| is_hex)
            .ok_or_else(|| identifiers::Malformed {
                what: "is not a colour",
                help: "write # and six digits 0 to f: \"#1f3a4d\"".to_owned(),
            })
    })
}
