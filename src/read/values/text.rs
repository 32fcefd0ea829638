//! Text, and words of closed lists.

use toml::de::DeValue;

use super::near::nearest;
use crate::model::codes::Code;
use crate::model::finding::Finding;
use crate::model::place::Placed;
use crate::model::words::ClosedList;
use crate::read::faults::{Faults, Node};
use crate::read::shape;

/// Text, which may be blank.
pub(crate) fn text<'t>(faults: &mut Faults<'t>, node: &'t Node<'t>) -> Option<Placed<String>> {
    str_in(faults, node, "text in quotes").map(|text| text.map(str::to_owned))
}

/// Text that must not be blank. Blank text is reported, and still returned, so that reading the record
/// can continue.
pub(crate) fn telling_text<'t>(
    faults: &mut Faults<'t>,
    node: &'t Node<'t>,
) -> Option<Placed<String>> {
    let text = text(faults, node)?;
    if text.value.trim().is_empty() {
        let message = format!("`{}` is empty", faults.key);
        let finding = Finding::new(Code::ValueEmpty, text.place, message);
        faults.push(finding.help("write something, or remove the key"));
    }
    Some(text)
}

pub(crate) fn str_in<'t>(
    faults: &mut Faults<'t>,
    node: &'t Node<'t>,
    takes: &str,
) -> Option<Placed<&'t str>> {
    if let DeValue::String(text) = node.get_ref() {
        Some(Placed::new(text.as_ref(), faults.of(node)))
    } else {
        faults.wrong_type(node, takes);
        None
    }
}

/// A word of a closed list.
pub(crate) fn word<'t, T: ClosedList>(
    faults: &mut Faults<'t>,
    node: &'t Node<'t>,
) -> Option<Placed<T>> {
    let text = str_in(faults, node, "a word in quotes")?;
    let value = T::from_word(text.value);
    if value.is_none() {
        unknown_word(faults, &text, &shape::words::<T>());
    }
    value.map(|value| Placed::new(value, text.place))
}

/// Reports a word that is not among `words`.
fn unknown_word(faults: &mut Faults<'_>, text: &Placed<&str>, words: &[&str]) {
    let message = format!("`{}` cannot be \"{}\"", faults.key, text.value);
    let finding = Finding::new(Code::ValueUnknown, text.place, message);
    let all = words.join(", ");
    let help = match nearest(text.value, words.iter().copied()) {
        Some(near) => format!("did you mean \"{near}\"? it takes {all}"),
        None => format!("it takes {all}"),
    };
    faults.push(finding.help(help));
}

/// A word of a list that has no type of its own.
pub(crate) fn word_of<'t>(
    words: fn() -> Vec<&'static str>,
) -> impl Fn(&mut Faults<'t>, &'t Node<'t>) -> Option<Placed<String>> {
    move |faults, node| {
        let text = str_in(faults, node, "a word in quotes")?;
        let words = words();
        if !words.contains(&text.value) {
            unknown_word(faults, &text, &words);
            return None;
        }
        Some(text.map(str::to_owned))
    }
}
