//! Dates.
//!
//! What is wrong with a text that is none, and how to write it: `date_help`.

use super::date_help;
use super::text::str_in;
use crate::model::codes::Code;
use crate::model::edtf::Date;
use crate::model::finding::Finding;
use crate::model::place::{Place, Placed};
use crate::read::faults::{Faults, Node};

/// A date. A time of day is accepted, and reported as a hint.
pub(crate) fn date<'t>(faults: &mut Faults<'t>, node: &'t Node<'t>) -> Option<Placed<Date>> {
    let text = str_in(faults, node, "a date in quotes")?;
    match Date::parse(text.value) {
        Ok(date) => {
            if date.has_time() {
                let finding = Finding::new(
                    Code::DateTime,
                    text.place,
                    format!("`{}` carries a time of day", text.value),
                );
                let help = match text.value.split_once('T') {
                    Some((day, _)) => format!("the day is enough: \"{day}\""),
                    None => "the day is enough".to_owned(),
                };
                faults.push(finding.help(help));
            }
            Some(Placed::new(date, text.place))
        }
        Err(fault) => {
            let place = within(faults, node, text.value, fault.offset);
            let finding = Finding::new(
                Code::DateSyntax,
                place,
                format!(
                    "\"{}\" is not a date: {}",
                    text.value,
                    date_help::reason(fault.reason)
                ),
            );
            faults.push(finding.help(date_help::help(text.value)));
            None
        }
    }
}

/// The place in the file of `text` from byte `offset` on; the place of the whole value where the text is
/// written with escapes or over several lines, because its bytes then differ from those of the file.
fn within(faults: &Faults<'_>, node: &Node<'_>, text: &str, offset: usize) -> Place {
    let span = node.span();
    let written = faults.written(node);
    let plain = written.len() == text.len() + 2 && written.get(1..=text.len()) == Some(text);
    if plain && offset < text.len() {
        faults.place(span.start + 1 + offset..span.end - 1)
    } else {
        faults.place(span)
    }
}
