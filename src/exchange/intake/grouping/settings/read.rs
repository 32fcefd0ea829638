//! Reads `designs.toml`.
//!
//! In: the text. Out: the settings and every fault with its place. What can be read is read: a fault in one design leaves the
//! others as they are.

use std::ops::Range;

use toml::Spanned;
use toml::de::{DeTable, DeValue};

use super::design_settings::{DesignSettings, SettledDesign, SettledIs};
use super::settled_sheets::{NamedImpression, SettledSheet};
use super::sheet_name::Written;
use crate::exchange::intake::settings::SettingFault;
use crate::model::key::{ImpressionKey, Key};
use crate::read::too_deep;

/// The largest file that is read, in bytes: 50,000 sheets take some 2 MB.
const LARGEST: usize = 16 * 1024 * 1024;

/// The keys that tell an editor something and are not read.
const TOLD: [&str; 7] = [
    "key", "why", "splits", "doubts", "added", "about", "unplaced",
];

/// The key of a sheet that tells an editor something and is not read.
const TOLD_OF_SHEET: &str = "may_be";

/// Reads the settings.
#[must_use]
pub fn read(text: &str) -> (DesignSettings, Vec<SettingFault>) {
    let ends = text.match_indices('\n').map(|(end, _)| end + 1);
    let mut reader = Reader {
        text,
        lines: std::iter::once(0).chain(ends).collect(),
        faults: Vec::new(),
    };
    let settings = reader.settings();
    reader.faults.sort();
    (settings, reader.faults)
}

struct Reader<'t> {
    text: &'t str,
    /// The first byte of each line.
    lines: Vec<usize>,
    faults: Vec<SettingFault>,
}

impl Reader<'_> {
    fn settings(&mut self) -> DesignSettings {
        let mut settings = DesignSettings::default();
        if self.text.len() > LARGEST {
            self.fault(
                0..0,
                "the file is larger than 16 MB",
                "make it anew from the file that was handed in",
            );
            return settings;
        }
        if let Some(deep) = too_deep(self.text) {
            self.fault(
                deep,
                "lists and tables lie too deep in each other",
                "write as the other designs are written",
            );
            return settings;
        }
        let (tree, errors) = DeTable::parse_recoverable(self.text);
        for error in errors {
            let span = error.span().unwrap_or(0..0);
            self.fault(
                span,
                error.message(),
                "write it as TOML: text in quotes, lists in brackets",
            );
        }
        for (key, value) in tree.get_ref() {
            match key.get_ref().as_ref() {
                "leave_out" => settings.leave_out = self.texts(value),
                list @ ("designs" | "sheets") => {
                    let Some(tables) = value.get_ref().as_array() else {
                        self.fault(
                            value.span(),
                            &format!("`{list}` is no list of tables"),
                            &format!("write [[{list}]] above each"),
                        );
                        continue;
                    };
                    for table in tables {
                        if list == "designs" {
                            settings.designs.extend(self.design(table));
                        } else {
                            settings.sheets.extend(self.sheet(table));
                        }
                    }
                }
                told if TOLD.contains(&told) => {}
                other => self.unknown_key(key.span(), other, "designs, sheets, leave_out"),
            }
        }
        settings
    }

    /// What is said of a sheet; `None` where it is not said of which.
    fn sheet(&mut self, value: &Spanned<DeValue<'_>>) -> Option<SettledSheet> {
        let Some(table) = value.get_ref().as_table() else {
            self.fault(
                value.span(),
                "a sheet is no table",
                "write [[sheets]] above each",
            );
            return None;
        };
        let (mut sheet, mut is, mut is_not, mut why) = (None, None, Vec::new(), None);
        for (key, value) in table {
            match key.get_ref().as_ref() {
                "sheet" => sheet = self.text_of(value),
                "is" if value.get_ref().as_array().is_some() => self.fault(
                    value.span(),
                    "a sheet is one impression, not several",
                    "write the one that it is, as in is = \"14.7\"; those that it is not go into is_not",
                ),
                "is" => is = self.text_of(value).and_then(|text| self.impression(text)),
                "is_not" => {
                    let texts = self.texts(value).into_iter();
                    is_not = texts.filter_map(|text| self.impression(text)).collect();
                }
                "why" => why = self.text_of(value).map(|written| written.text),
                TOLD_OF_SHEET => {}
                other => self.unknown_key(key.span(), other, "sheet, is, is_not, why"),
            }
        }
        if sheet.is_none() {
            self.fault(
                value.span(),
                "it is not said which sheet it is",
                "write sheet = \"1962.44\", or sheet = \"row 7\"",
            );
        }
        Some(SettledSheet {
            sheet: sheet?,
            is,
            is_not,
            why,
        })
    }

    fn impression(&mut self, at: Written) -> Option<NamedImpression> {
        let key: Option<ImpressionKey> = at.text.trim().parse().ok();
        let Some(key) = key else {
            self.faults.push(SettingFault {
                line: at.line,
                column: at.column,
                message: format!("\"{}\" is no key of an impression", at.text),
                help: Some("write the key of its design and its number, as in \"14.7\"".to_owned()),
                is_error: true,
            });
            return None;
        };
        Some(NamedImpression { key, at })
    }

    fn design(&mut self, value: &Spanned<DeValue<'_>>) -> Option<SettledDesign> {
        let Some(table) = value.get_ref().as_table() else {
            self.fault(
                value.span(),
                "a design is no table",
                "write [[designs]] above each",
            );
            return None;
        };
        let mut design = SettledDesign {
            is: SettledIs::New,
            at: self.written(String::new(), value.span()),
            number: None,
            title: None,
            sheets: Vec::new(),
            is_settled: false,
        };
        let mut has_is = false;
        let (mut settled, mut digest) = (None, None);
        for (key, value) in table {
            match key.get_ref().as_ref() {
                "is" => {
                    has_is = true;
                    design.at = self.written(String::new(), value.span());
                    design.is = self.which(value);
                }
                "number" => design.number = self.text_of(value).map(|written| written.text),
                "title" => design.title = self.text_of(value).map(|written| written.text),
                "sheets" => design.sheets = self.texts(value),
                "settled" => match value.get_ref().as_bool() {
                    Some(is_settled) => settled = Some(is_settled),
                    None => self.fault(
                        value.span(),
                        "`settled` is neither true nor false",
                        "write settled = true",
                    ),
                },
                "digest" => digest = self.text_of(value).map(|written| written.text),
                told if TOLD.contains(&told) => {}
                other => self.unknown_key(key.span(), other, "is, number, title, sheets, settled"),
            }
        }
        if !has_is {
            let span = value.span();
            self.fault(
                span,
                "it is not said which design it is",
                "write is = \"new\", or the key of a design",
            );
        }
        let is_changed = digest.is_none_or(|digest| digest != design.mark());
        design.is_settled = settled.unwrap_or(is_changed);
        Some(design)
    }

    fn which(&mut self, value: &Spanned<DeValue<'_>>) -> SettledIs {
        if value.get_ref().as_array().is_some() {
            let texts = self.texts(value);
            let keys: Vec<Key> = texts.iter().filter_map(|text| self.key(text)).collect();
            return match &keys[..] {
                [] => SettledIs::New,
                [one] => SettledIs::Recorded(one.clone()),
                _ => SettledIs::OneOf(keys),
            };
        }
        match self.text_of(value) {
            Some(written) if written.text == "new" => SettledIs::New,
            Some(written) => self
                .key(&written)
                .map_or(SettledIs::New, SettledIs::Recorded),
            None => SettledIs::New,
        }
    }

    fn key(&mut self, written: &Written) -> Option<Key> {
        let key = written.text.trim().parse().ok();
        if key.is_none() {
            self.faults.push(SettingFault {
                line: written.line,
                column: written.column,
                message: format!("\"{}\" is no key of a design", written.text),
                help: Some("write the name of the folder of the design, or \"new\"".to_owned()),
                is_error: true,
            });
        }
        key
    }

    /// A list of texts; one text is a list of one.
    fn texts(&mut self, value: &Spanned<DeValue<'_>>) -> Vec<Written> {
        let Some(items) = value.get_ref().as_array() else {
            return self.text_of(value).into_iter().collect();
        };
        items.iter().filter_map(|item| self.text_of(item)).collect()
    }

    /// A text. A number without quotes is told and taken as it is written, because accession numbers look like numbers.
    fn text_of(&mut self, value: &Spanned<DeValue<'_>>) -> Option<Written> {
        if let Some(text) = value.get_ref().as_str() {
            return Some(self.written(text.to_owned(), value.span()));
        }
        let raw = self.text.get(value.span()).unwrap_or_default().to_owned();
        self.fault(
            value.span(),
            &format!("{raw} is no text"),
            "write it in quotes, as in \"1962.44\"",
        );
        let is_number = matches!(value.get_ref(), DeValue::Integer(_) | DeValue::Float(_));
        is_number.then(|| self.written(raw, value.span()))
    }

    fn written(&self, text: String, span: Range<usize>) -> Written {
        let (line, column) = self.position(span.start);
        Written { text, line, column }
    }

    fn position(&self, at: usize) -> (usize, usize) {
        let line = self.lines.partition_point(|start| *start <= at).max(1);
        let start = self.lines.get(line - 1).copied().unwrap_or_default();
        let before = self.text.get(start..at).unwrap_or_default();
        (line, before.chars().count() + 1)
    }

    fn unknown_key(&mut self, span: Range<usize>, key: &str, known: &str) {
        self.fault(
            span,
            &format!("`{key}` is no key here"),
            &format!("write one of: {known}"),
        );
    }

    fn fault(&mut self, span: Range<usize>, message: &str, help: &str) {
        let (line, column) = self.position(span.start);
        self.faults.push(SettingFault {
            line,
            column,
            message: message.to_owned(),
            help: Some(help.to_owned()),
            is_error: true,
        });
    }
}
