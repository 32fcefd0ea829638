//! A settings file cut at its headers, each part read alone.
//!
//! `values.toml` has a part for every distinct value, hundreds of thousands in all: parsed as one tree it would take
//! hundreds of megabytes. Cut, one part after the other is in memory, and a fault of syntax in one costs no other.
//!
//! A header is a line of its own that has nothing but a name in brackets. In a text over several lines such a line would be
//! taken for one; no value of these files needs such a text.

use super::fault::SettingFault;
use crate::read::alone;
use crate::read::shape::Shape;
use crate::read::table::fields::Fields;
use crate::read::values::near::nearest;

/// A header, and what stands below it up to the next.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Part<'t> {
    /// The header as written; empty above the first.
    pub header: &'t str,
    /// What stands below.
    pub body: &'t str,
    /// The line on which the body begins, from 1.
    pub first_line: usize,
}

/// The parts of a file, in order. The first has no header.
pub(super) fn parts(text: &str) -> Vec<Part<'_>> {
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    let mut all = Vec::new();
    let mut part = Part {
        header: "",
        body: "",
        first_line: 1,
    };
    let (mut start, mut at) = (0, 0);
    for (line, number) in text.split_inclusive('\n').zip(1..) {
        if let Some(header) = header(line) {
            part.body = &text[start..at];
            all.push(part);
            start = at + line.len();
            part = Part {
                header,
                body: "",
                first_line: number + 1,
            };
        }
        at += line.len();
    }
    part.body = &text[start..];
    all.push(part);
    all
}

/// The header that a line is.
fn header(line: &str) -> Option<&str> {
    let line = line.trim();
    if !line.starts_with('[') {
        return None;
    }
    let line = line.split('#').next().unwrap_or_default().trim_end();
    let name = line.trim_start_matches('[').strip_suffix(']')?;
    let name = name.trim_end_matches(']');
    let is_name = name.contains(|c: char| c.is_ascii_alphabetic())
        && name
            .chars()
            .all(|c| c.is_ascii_alphanumeric() || matches!(c, '_' | '-' | '.' | ' '));
    is_name.then_some(line)
}

impl Part<'_> {
    /// Reads the part as a table.
    pub fn read<T>(
        &self,
        shape: &'static Shape,
        faults: &mut Vec<SettingFault>,
        read: impl for<'a, 't> FnOnce(&mut Fields<'a, 't>) -> T,
    ) -> T {
        let (value, findings) = alone(self.body, shape, read);
        let told = findings.into_iter();
        faults.extend(told.map(|finding| SettingFault::of(finding, self.body, self.first_line)));
        value
    }

    /// The fault of the first key above the first header, in a file that has none there.
    pub fn keys_above_headers(&self, first: &str) -> Option<SettingFault> {
        let mut lines = self.body.lines().zip(self.first_line..);
        let (_, line) = lines.find(|(line, _)| {
            let line = line.trim();
            !line.is_empty() && !line.starts_with('#')
        })?;
        Some(SettingFault {
            line,
            column: 1,
            message: format!("this stands above the first {first}"),
            help: Some("move it below the header to which it belongs".to_owned()),
            is_error: true,
        })
    }

    /// The fault of a header that a file does not take, and of everything below it.
    pub fn unknown_header(&self, takes: &[&str]) -> SettingFault {
        let near = nearest(self.header, takes.iter().copied()).or(takes.first().copied());
        SettingFault {
            line: self.first_line - 1,
            column: 1,
            message: format!("`{}` is no header of this file", self.header),
            help: near.map(|near| format!("write {near}; what stands below it was not read")),
            is_error: true,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_file_is_cut_at_its_headers_alone() {
        let text = "a = 1\n[[columns]] # first\nb = [\n[\"x\"],\n[1, 2]\n]\n  [[columns.values]]\nc = 3\n[[columns]]";
        let cut: Vec<(&str, &str, usize)> = parts(text)
            .iter()
            .map(|part| (part.header, part.body, part.first_line))
            .collect();
        assert_eq!(
            cut,
            [
                ("", "a = 1\n", 1),
                ("[[columns]]", "b = [\n[\"x\"],\n[1, 2]\n]\n", 3),
                ("[[columns.values]]", "c = 3\n", 8),
                ("[[columns]]", "", 10),
            ]
        );
    }
}
