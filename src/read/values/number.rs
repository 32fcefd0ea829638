//! Numbers, and yes or no.

use toml::de::DeValue;

use crate::model::codes::Code;
use crate::model::finding::Finding;
use crate::model::place::Placed;
use crate::read::faults::{Faults, Node};

/// `true` or `false`.
pub(crate) fn flag<'t>(faults: &mut Faults<'t>, node: &'t Node<'t>) -> Option<Placed<bool>> {
    if let DeValue::Boolean(flag) = node.get_ref() {
        Some(Placed::new(*flag, faults.of(node)))
    } else {
        faults.wrong_type(node, "true or false");
        None
    }
}

/// A whole number from `least` to `most`.
pub(crate) fn whole<'t>(
    least: u32,
    most: u32,
) -> impl Fn(&mut Faults<'t>, &'t Node<'t>) -> Option<Placed<u32>> {
    move |faults, node| {
        let DeValue::Integer(number) = node.get_ref() else {
            faults.wrong_type(node, "a whole number");
            return None;
        };
        let number = i128::from_str_radix(number.as_str(), number.radix()).ok();
        let within = number
            .and_then(|n| u32::try_from(n).ok())
            .filter(|n| (least..=most).contains(n));
        if within.is_none() {
            let message = match most {
                u32::MAX => format!("`{}` is {least} or more", faults.key),
                _ => format!("`{}` lies between {least} and {most}", faults.key),
            };
            let place = faults.of(node);
            faults.push(Finding::new(Code::ValueRange, place, message).help("check the number"));
        }
        within.map(|n| Placed::new(n, faults.of(node)))
    }
}

/// A finite number, whole or not; `None` without a finding for anything else.
pub(crate) fn plain_number(node: &Node<'_>) -> Option<f64> {
    let number = match node.get_ref() {
        DeValue::Integer(number) => {
            let whole = i64::from_str_radix(number.as_str(), number.radix()).ok()?;
            // Every measurement and count fits 32 bits.
            i32::try_from(whole).ok().map(f64::from)?
        }
        DeValue::Float(number) => number.as_str().parse().ok()?,
        _ => return None,
    };
    number.is_finite().then_some(number)
}

/// A number above 0.
pub(crate) fn above_0<'t>(faults: &mut Faults<'t>, node: &'t Node<'t>) -> Option<Placed<f64>> {
    number_where(faults, node, "above 0", |n| n > 0.0)
}

/// A number above 0 and at most `most`.
pub(crate) fn fraction<'t>(
    faults: &mut Faults<'t>,
    node: &'t Node<'t>,
    most: f64,
) -> Option<Placed<f64>> {
    let what = format!("above 0 and at most {most}");
    number_where(faults, node, &what, |n| n > 0.0 && n <= most)
}

fn number_where<'t>(
    faults: &mut Faults<'t>,
    node: &'t Node<'t>,
    what: &str,
    is_so: impl Fn(f64) -> bool,
) -> Option<Placed<f64>> {
    if !matches!(node.get_ref(), DeValue::Integer(_) | DeValue::Float(_)) {
        faults.wrong_type(node, "a number");
        return None;
    }
    let number = plain_number(node).filter(|n| is_so(*n));
    if number.is_none() {
        let message = format!("`{}` is {what}", faults.key);
        let place = faults.of(node);
        faults.push(Finding::new(Code::ValueRange, place, message).help("check the number"));
    }
    number.map(|n| Placed::new(n, faults.of(node)))
}
