//! Single values of a record: text, numbers, dates, sizes, boxes, keys, codes.
//!
//! In: a value of the tree. Out: the value with its place, or `None` and a finding. All readers here
//! have the same signature, so that `table::fields` can read one value, several, or statements with any
//! of them.

mod code;
mod date;
pub(crate) mod date_help;
pub(crate) mod dimensions;
pub(crate) mod identifiers;
mod key;
pub(crate) mod links;
mod measure;
pub(crate) mod names;
pub(crate) mod near;
mod number;
pub(crate) mod numbered;
mod text;

use toml::de::DeValue;

use crate::read::faults::{Faults, Node, is_unread};

pub(crate) use code::{colour, country, isil, language, language_from, web};
pub(crate) use date::date;
pub(crate) use key::{
    cited, evidence_target, impression_key, key, key_from, key_help, link, picture_key, term,
};
pub(crate) use measure::{four_percent, percent_box, size};
pub(crate) use number::{above_0, flag, fraction, plain_number, whole};
pub(crate) use text::{str_in, telling_text, text, word, word_of};

/// One value, or a list of several.
pub(crate) fn several<'t, T>(
    faults: &mut Faults<'t>,
    node: &'t Node<'t>,
    read: impl Fn(&mut Faults<'t>, &'t Node<'t>) -> Option<T>,
) -> Vec<T> {
    match node.get_ref() {
        DeValue::Array(list) => {
            let parsed = list.iter().filter(|node| !is_unread(node));
            parsed.filter_map(|node| read(faults, node)).collect()
        }
        _ => read(faults, node).into_iter().collect(),
    }
}
