//! Single values of a record: text, numbers, dates, sizes, boxes, keys, codes.
//!
//! In: a value of the tree. Out: the value with its place, or `None` and a finding. All readers here
//! have the same signature, so that `table::fields` can read one value, several, or statements with any
//! of them.

pub(crate) mod date_help;
pub(crate) mod dimensions;
pub(crate) mod identifiers;
pub(crate) mod links;
pub(crate) mod names;
pub(crate) mod near;
pub(crate) mod numbered;

use std::str::FromStr;

use toml::de::DeValue;

use crate::model::boxes::{NotABox, PercentBox};
use crate::model::codes::Code;
use crate::model::document::EvidenceTarget;
use crate::model::edtf::Date;
use crate::model::finding::Finding;
use crate::model::key::{ImpressionKey, Key, PictureKey};
use crate::model::link::Target;
use crate::model::literature::Cited;
use crate::model::place::{Place, Placed};
use crate::model::settings::Ink;
use crate::model::size::{Mm, Size};
use crate::model::words::ClosedList;
use crate::read::faults::{Faults, Node, is_unread};
use crate::read::shape;
use crate::read::values::near::nearest;

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

/// A record, named as in links. A text that is not such a name is reported, and still returned.
pub(crate) fn link<'t>(faults: &mut Faults<'t>, node: &'t Node<'t>) -> Option<Placed<String>> {
    let text = telling_text(faults, node)?;
    if text.value.parse::<Target>().is_err() {
        faults.push(links::nowhere(&text.value, text.place));
    }
    Some(text)
}

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
            crate::read::faults::type_name(node)
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

/// A key.
pub(crate) fn key<'t>(faults: &mut Faults<'t>, node: &'t Node<'t>) -> Option<Placed<Key>> {
    let text = str_in(faults, node, "a key in quotes")?;
    key_from(faults, text.value, text.place)
}

/// The key of a term. Words in its place are reported together with unknown terms, once the terms of the catalogue are
/// known (`references::resolve`).
pub(crate) fn term<'t>(faults: &mut Faults<'t>, node: &'t Node<'t>) -> Option<Placed<Key>> {
    let text = str_in(faults, node, "a key in quotes")?;
    let key = text.value.parse().ok()?;
    Some(Placed::new(key, text.place))
}

/// A work of the literature by its key, or a document as `document:KEY`.
pub(crate) fn cited<'t>(faults: &mut Faults<'t>, node: &'t Node<'t>) -> Option<Placed<Cited>> {
    let text = str_in(faults, node, "a key in quotes")?;
    match text.value.split_once(':') {
        None => {
            let key = key_from(faults, text.value, text.place)?;
            Some(Placed::new(Cited::Work(key.value), key.place))
        }
        Some(("document", key)) => {
            let key = key_from(faults, key, text.place)?;
            Some(Placed::new(Cited::Document(key.value), key.place))
        }
        Some((kind, key)) => {
            let message = format!("\"{}\" is no key of the literature", text.value);
            let help = if kind == "lit" {
                format!("write \"{key}\"")
            } else {
                "write the key of an entry of the literature, or document: and the key of a document"
                    .to_owned()
            };
            faults.push(Finding::new(Code::KeyForm, text.place, message).help(help));
            None
        }
    }
}

/// What a document tells something of: a record or a part of a design.
pub(crate) fn evidence_target<'t>(
    faults: &mut Faults<'t>,
    node: &'t Node<'t>,
) -> Option<Placed<EvidenceTarget>> {
    let text = str_in(faults, node, "a record in quotes")?;
    let target = text.value.parse().ok();
    if target.is_none() {
        let message = format!(
            "\"{}\" names nothing of which a document can tell",
            text.value
        );
        let kind = text.value.split_once(':').map(|(kind, _)| kind);
        let near = kind.and_then(|kind| near::nearest(kind, EvidenceTarget::KINDS.iter().copied()));
        let help = match (kind, near) {
            (Some("state"), _) => {
                "write the design and the state: \"state:14/cut-down\"".to_owned()
            }
            (Some("printing"), _) => {
                "write the design and the printing: \"printing:14/own\"".to_owned()
            }
            (Some("impression"), _) => {
                "write the design and the number: \"impression:14.7\"".to_owned()
            }
            (Some(kind), Some(near)) if kind != near => {
                format!("write \"{}\"", text.value.replacen(kind, near, 1))
            }
            _ => format!(
                "write one of {}: and its key",
                EvidenceTarget::KINDS.join(":, ")
            ),
        };
        faults.push(Finding::new(Code::LinkUnknown, text.place, message).help(help));
    }
    target.map(|target| Placed::new(target, text.place))
}

/// A key from text at `place`.
pub(crate) fn key_from(faults: &mut Faults<'_>, text: &str, place: Place) -> Option<Placed<Key>> {
    if let Ok(key) = text.parse() {
        Some(Placed::new(key, place))
    } else {
        let finding = Finding::new(Code::KeyForm, place, format!("\"{text}\" is not a key"));
        faults.push(finding.help(key_help(text)));
        None
    }
}

/// How to turn a text into a key.
pub(crate) fn key_help(text: &str) -> String {
    let rule = "keys are lower-case letters and digits, joined by single hyphens";
    match Key::nearest_form(text) {
        Some(near) => format!("{rule}: `{near}`"),
        None => rule.to_owned(),
    }
}

/// The key of an impression: `14.7`.
pub(crate) fn impression_key<'t>(
    faults: &mut Faults<'t>,
    node: &'t Node<'t>,
) -> Option<Placed<ImpressionKey>> {
    compound_key(
        faults,
        node,
        "impression",
        "a design's key, a point and a number from 1: \"14.7\"",
    )
}

/// The key of a picture: `14.7/recto`.
pub(crate) fn picture_key<'t>(
    faults: &mut Faults<'t>,
    node: &'t Node<'t>,
) -> Option<Placed<PictureKey>> {
    compound_key(
        faults,
        node,
        "picture",
        "an impression's or design's key, a stroke and the picture's name: \"14.7/recto\"; of a document's picture \"document/\" stands before: \"document/ledger/leaf-3\"",
    )
}

fn compound_key<'t, T: FromStr>(
    faults: &mut Faults<'t>,
    node: &'t Node<'t>,
    what: &str,
    help: &str,
) -> Option<Placed<T>> {
    let text = str_in(faults, node, "a key in quotes")?;
    let key = text.value.parse().ok();
    if key.is_none() {
        let finding = Finding::new(
            Code::KeyForm,
            text.place,
            format!("\"{}\" is not a key of an {what}", text.value)
                .replace("an picture", "a picture"),
        );
        faults.push(finding.help(format!("write {help}")));
    }
    key.map(|key| Placed::new(key, text.place))
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
pub(crate) fn unknown_word(faults: &mut Faults<'_>, text: &Placed<&str>, words: &[&str]) {
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
