//! The texts of a file as its readers and other programs see them.
//!
//! In: the path of a file of the site, and its bytes. Out: each text in it, whole: of a page or drawing without
//! its tags, with entities resolved, and the values of attributes; of JSON every string and key; of anything
//! else that is text, the file itself; of a workbook each of its parts, unpacked; and the path.

use std::convert::Infallible;
use std::io::Read as _;

use flate2::read::DeflateDecoder;
use html5gum::emitters::callback::{CallbackEmitter, CallbackEvent};
use html5gum::{Span, Tokenizer};
use percent_encoding::percent_decode;
use serde_json::Value;

/// Calls `each` with every text of the file `path`, the path among them.
pub(super) fn texts(path: &str, bytes: &[u8], each: &mut dyn FnMut(&str)) {
    each(path);
    let ending = path.rsplit_once('.').map_or("", |(_, ending)| ending);
    match ending {
        "html" | "svg" | "xml" => markup(bytes, each),
        "xlsx" => workbook(bytes, each),
        "json" | "jsonld" if json(bytes, each) => {}
        _ => {
            // Pictures and fonts are not text. Photographs are published without their metadata.
            if let Ok(text) = std::str::from_utf8(bytes) {
                each(text);
            }
        }
    }
}

/// The most that a part of a workbook is unpacked to, in bytes. Those of a site are its own and far smaller.
const PART_BYTES: u64 = 256 << 20;

/// The texts of the parts of a workbook, one after the other as they lie in the archive (APPNOTE 4.3.7, PKWARE).
fn workbook(bytes: &[u8], each: &mut dyn FnMut(&str)) {
    let mut rest = bytes;
    while let Some((header, behind)) = rest.split_at_checked(30)
        && header.starts_with(b"PK\x03\x04")
    {
        let short = |at: usize| usize::from(u16::from_le_bytes([header[at], header[at + 1]]));
        let packed = usize::try_from(u32::from_le_bytes([
            header[18], header[19], header[20], header[21],
        ]));
        let named = short(26) + short(28);
        let part = packed
            .ok()
            .and_then(|packed| behind.get(named..named + packed));
        let Some(part) = part else { return };
        if short(8) == 0 {
            markup(part, each);
        } else {
            let mut unpacked = Vec::new();
            // A part that is damaged has the text before the damage.
            let _ = DeflateDecoder::new(part)
                .take(PART_BYTES)
                .read_to_end(&mut unpacked);
            markup(&unpacked, each);
        }
        rest = &behind[named + part.len()..];
    }
}

/// Tags that do not interrupt a line of text.
const INLINE: [&[u8]; 25] = [
    b"a", b"abbr", b"b", b"bdi", b"bdo", b"cite", b"code", b"del", b"dfn", b"em", b"i", b"ins",
    b"kbd", b"mark", b"q", b"s", b"samp", b"small", b"span", b"strong", b"sub", b"sup", b"tspan",
    b"u", b"wbr",
];

/// The texts of HTML or XML.
pub(super) fn markup(bytes: &[u8], each: &mut dyn FnMut(&str)) {
    let mut line = Vec::new();
    let mut tag = Vec::new();
    let mut is_script = false;
    {
        let emit = |event: CallbackEvent<'_>, _: Span<()>| -> Option<Infallible> {
            match event {
                CallbackEvent::OpenStartTag { name } => {
                    tag.clear();
                    tag.extend_from_slice(name);
                    if !INLINE.contains(&name) {
                        end_line(&mut line, is_script, each);
                    }
                }
                CallbackEvent::CloseStartTag { .. } => is_script = tag == b"script",
                CallbackEvent::EndTag { name } => {
                    if !INLINE.contains(&name) {
                        end_line(&mut line, is_script, each);
                    }
                    is_script = false;
                }
                CallbackEvent::AttributeValue { value } if has_letters(value) => {
                    attribute(value, each);
                }
                CallbackEvent::String { value } => line.extend_from_slice(value),
                CallbackEvent::Comment { value } => each(&String::from_utf8_lossy(value)),
                CallbackEvent::AttributeName { .. }
                | CallbackEvent::AttributeValue { .. }
                | CallbackEvent::Doctype { .. }
                | CallbackEvent::Error(_) => {}
            }
            None
        };
        let mut emitter = CallbackEmitter::new(emit);
        emitter.naively_switch_states(true);
        let Ok(()) = Tokenizer::new_with_emitter(bytes, emitter).finish();
    }
    end_line(&mut line, false, each);
}

/// Hands out the text gathered since the last tag that interrupts a line.
fn end_line(line: &mut Vec<u8>, is_script: bool, each: &mut dyn FnMut(&str)) {
    let is_read = line.is_empty() || (is_script && json(line, each));
    if !is_read {
        each(&String::from_utf8_lossy(line));
    }
    line.clear();
}

/// The value of an attribute; an address also as it reads without its percent signs.
fn attribute(value: &[u8], each: &mut dyn FnMut(&str)) {
    let text = String::from_utf8_lossy(value);
    if value.contains(&b'%') {
        each(&percent_decode(value).decode_utf8_lossy());
    }
    each(&text);
}

fn has_letters(value: &[u8]) -> bool {
    value
        .iter()
        .any(|byte| byte.is_ascii_alphabetic() || !byte.is_ascii())
}

/// Every string and key of a JSON document; whether it is one.
fn json(bytes: &[u8], each: &mut dyn FnMut(&str)) -> bool {
    match serde_json::from_slice::<Value>(bytes) {
        Ok(value) => {
            strings(&value, each);
            true
        }
        Err(_) => false,
    }
}

fn strings(value: &Value, each: &mut dyn FnMut(&str)) {
    match value {
        Value::String(text) => {
            if text.contains(['<', '&']) {
                markup(text.as_bytes(), each);
            }
            if text.contains('%') {
                each(&percent_decode(text.as_bytes()).decode_utf8_lossy());
            }
            each(text);
        }
        Value::Array(list) => list.iter().for_each(|value| strings(value, each)),
        Value::Object(table) => {
            for (key, value) in table {
                each(key);
                strings(value, each);
            }
        }
        Value::Null | Value::Bool(_) | Value::Number(_) => {}
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn all(path: &str, text: &str) -> Vec<String> {
        let mut all = Vec::new();
        texts(path, text.as_bytes(), &mut |text| all.push(text.to_owned()));
        all
    }

    #[test]
    fn a_page_is_read_as_its_readers_see_it() {
        let page = "<!doctype html><title>A &amp; B</title><p>&#81;uer<b>lin</b>&nbsp;<a href=\"/x%20y\">Z&shy;a</a>\
                    <!--be--><p>next<br>line";
        assert_eq!(
            all("index.html", page),
            [
                "index.html",
                "A & B",
                "/x y",
                "/x%20y",
                "be",
                "Querlin\u{a0}Z\u{ad}a",
                "next",
                "line"
            ]
        );
    }

    #[test]
    fn a_data_block_is_read_as_json() {
        let page = r#"<script type="application/json">{"k\u0065y": "<i>Z\u0061</i>"}</script>"#;
        let all = all("index.html", page);
        assert!(
            all.contains(&"key".to_owned()) && all.contains(&"Za".to_owned()),
            "{all:?}"
        );
    }

    /// The first entry is stored, the second deflated in one stored block (RFC 1951, 3.2.4).
    #[test]
    fn every_part_of_a_workbook_is_read() {
        let mut file = Vec::new();
        let mut deflated = vec![1, 9, 0, 0xf6, 0xff];
        deflated.extend_from_slice(b"<t>b</t>\n");
        for (method, part) in [(0, b"<t>a&amp;c</t>".to_vec()), (8, deflated)] {
            file.extend_from_slice(b"PK\x03\x04\x14\0\0\0");
            file.extend_from_slice(&[method, 0, 0, 0, 0, 0, 0, 0, 0, 0]);
            file.extend_from_slice(&u32::try_from(part.len()).unwrap().to_le_bytes());
            file.extend_from_slice(&[0, 0, 0, 0, 1, 0, 0, 0, b'n']);
            file.extend_from_slice(&part);
        }
        let mut all = Vec::new();
        texts("a.xlsx", &file, &mut |text| all.push(text.to_owned()));
        assert_eq!(all, ["a.xlsx", "a&c", "b", "\n"]);
    }

    #[test]
    fn json_and_plain_text_are_read_whole() {
        assert_eq!(
            all("a.json", r#"{"a": ["b\u0063", 1]}"#),
            ["a.json", "a", "bc"]
        );
        assert_eq!(all("a.csv", "x,\"y\"\n"), ["a.csv", "x,\"y\"\n"]);
        assert_eq!(all("a.json", "not JSON"), ["a.json", "not JSON"]);
    }
}
