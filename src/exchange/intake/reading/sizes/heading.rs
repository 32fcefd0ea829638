//! What a heading says of the sizes below it: the unit, what was measured, which length is first.

use super::labels::{MEASURED, ORDERS, UNITS};
use super::measurement::{Assumed, Measured, Unit};
use crate::exchange::intake::reading::words::Words;

/// What a heading such as "Blattgrösse in cm (B x H)", or a cell with a unit alone, says of sizes.
///
/// ```
/// # use keyblock::exchange::intake::reading::sizes::{assumed_by, Measured, Order, Unit};
/// let assumed = assumed_by("Blattgrösse in cm (B x H)");
/// assert_eq!(assumed.unit, Some(Unit::Centimetre));
/// assert_eq!(assumed.of, Some(Measured::Sheet));
/// assert_eq!(assumed.order, Some(Order::WidthFirst));
/// ```
#[must_use]
pub fn assumed_by(heading: &str) -> Assumed {
    let words = Words::of(heading);
    let mut assumed = Assumed::default();
    let mut at = 0;
    while at < words.len() {
        if let Some(order) = ORDERS.at(&words, at) {
            assumed.order.get_or_insert(order.is);
            at = order.end;
        } else if let Some(unit) = UNITS.at(&words, at) {
            // "in" before a unit is the word, alone or at the end the unit; "m" alone may be anything.
            let is_word = unit.is == Unit::Inch
                && unit.end < words.len()
                && words.word(at) == Some("in")
                && words.word(unit.end).is_some();
            let is_letter = words.word(at) == Some("m")
                && words.len() > 1
                && !words.is_mark(at + 1, &[")", "]"]);
            if !is_word && !is_letter {
                assumed.unit.get_or_insert(unit.is);
            }
            at = unit.end;
        } else if let Some(measured) = MEASURED.at(&words, at) {
            if measured.is != Measured::Unsaid {
                assumed.of.get_or_insert(measured.is);
            }
            at = measured.end;
        } else {
            at += 1;
        }
    }
    assumed
}
