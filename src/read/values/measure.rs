//! Sizes in millimetres, and places on a picture in percent.

use toml::de::DeValue;

use super::dimensions;
use super::number::plain_number;
use crate::model::boxes::{NotABox, PercentBox};
use crate::model::codes::Code;
use crate::model::finding::Finding;
use crate::model::place::Placed;
use crate::model::size::{Mm, Size};
use crate::read::faults::{Faults, Node, is_unread, type_name};

/// `[height, width]` in millimetres.
pub(crate) fn size<'t>(faults: &mut Faults<'t>, node: &'t Node<'t>) -> Option<Placed<Size>> {
    let fault = |faults: &mut Faults<'t>, node: &Node<'t>, message: String| {
        let finding = Finding::new(Code::SizeSyntax, faults.of(node), message);
        faults.push(finding.help(size_help(node)));
    };
    let DeValue::Array(list) = node.get_ref() else {
        let message = format!(
            "`{}` takes [height, width], not {}",
            faults.key,
            type_name(node)
        );
        fault(faults, node, message);
        return None;
    };
    let [height, width] = list.as_ref() else {
        let message = format!("`{}` takes two numbers, not {}", faults.key, list.len());
        fault(faults, node, message);
        return None;
    };
    let mut length = |node: &'t Node<'t>, what: &str| {
        let mm = plain_number(node).and_then(Mm::new);
        if mm.is_none() && !is_unread(node) {
            let message = format!("the {what} is not a length in millimetres");
            fault(faults, node, message);
        }
        mm
    };
    let (height, width) = (length(height, "height"), length(width, "width"));
    let size = Size {
        height: height?,
        width: width?,
    };
    Some(Placed::new(size, faults.of(node)))
}

/// How to write the size that stands in a value as text, "230 x 290", or any size.
fn size_help(node: &Node<'_>) -> String {
    let text = match node.get_ref() {
        DeValue::Array(list) => match list.as_ref() {
            [only] => only.get_ref().as_str(),
            _ => None,
        },
        value => value.as_str(),
    };
    match text.and_then(dimensions::numbers).as_deref() {
        Some([height, width]) => {
            format!("write [{height}, {width}]: millimetres without quotes, height first")
        }
        _ => "write [height, width] in millimetres, height first: [212, 301]".to_owned(),
    }
}

/// `[left, top, width, height]` in percent of a picture.
pub(crate) fn percent_box<'t>(
    faults: &mut Faults<'t>,
    node: &'t Node<'t>,
) -> Option<Placed<PercentBox>> {
    let read = || {
        let DeValue::Array(list) = node.get_ref() else {
            return Err("is four numbers");
        };
        let numbers: Option<Vec<f64>> = list.iter().map(plain_number).collect();
        let Some([left, top, width, height]) = numbers.as_deref() else {
            return Err("is four numbers");
        };
        PercentBox::new(*left, *top, *width, *height).map_err(|fault| match fault {
            NotABox::Empty => "has a width and a height above 0",
            NotABox::Outside => "lies inside its picture: nothing below 0, nothing beyond 100",
        })
    };
    match read() {
        Ok(area) => Some(Placed::new(area, faults.of(node))),
        Err(what) => {
            let message = format!("`{}` {what}", faults.key);
            let finding = Finding::new(Code::BoxSyntax, faults.of(node), message);
            faults.push(finding.help(
                "write [left, top, width, height] in percent of the picture: [62.0, 8.5, 12.0, 16.0]",
            ));
            None
        }
    }
}

/// Four numbers in percent, for ties.
pub(crate) fn four_percent<'t>(
    faults: &mut Faults<'t>,
    node: &'t Node<'t>,
) -> Option<Placed<[f64; 4]>> {
    let four = match node.get_ref() {
        DeValue::Array(list) => {
            let numbers: Option<Vec<f64>> = list.iter().map(plain_number).collect();
            numbers.and_then(|numbers| <[f64; 4]>::try_from(numbers).ok())
        }
        _ => None,
    };
    let inside = four.filter(|four| four.iter().all(|n| (0.0..=100.0).contains(n)));
    if inside.is_none() {
        let finding = Finding::new(
            Code::BoxSyntax,
            faults.of(node),
            "a tie is four numbers between 0 and 100",
        );
        faults.push(finding.help(
            "write [x, y, x, y]: percent of this picture, then percent of the reference picture",
        ));
    }
    inside.map(|four| Placed::new(four, faults.of(node)))
}
