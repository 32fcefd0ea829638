//! Findings as entries: the place, and beside labels in a margin what is wrong, the line that shows it, the places
//! it clashes with, what to do, and the code. Several findings of one code are one entry with several places.

use std::fmt::Write as _;

use anstyle::{AnsiColor, Style};

use super::quotation::{Quotation, visible};
use crate::model::bulk::{CodeGroup, Fault, Others};
use crate::model::codes::Code;
use crate::model::finding::{Finding, Label, Severity};
use crate::model::place::Sources;

/// The margin that holds the labels, in columns; the longest of them is "Compare".
const MARGIN: usize = 11;

/// How entries are coloured. Every fact stands in words too.
#[derive(Clone, Copy)]
pub(super) struct Colours {
    is_coloured: bool,
}

impl Colours {
    pub(super) fn new(is_coloured: bool) -> Colours {
        Colours { is_coloured }
    }

    fn paint(self, style: Style, text: &str) -> String {
        if self.is_coloured {
            format!("{style}{text}{style:#}")
        } else {
            text.to_owned()
        }
    }

    pub(super) fn of_severity(self, severity: Severity, text: &str) -> String {
        let colour = match severity {
            Severity::Error => AnsiColor::Red,
            Severity::Doubt => AnsiColor::Yellow,
            Severity::Hint => AnsiColor::Cyan,
        };
        self.paint(Style::new().bold().fg_color(Some(colour.into())), text)
    }
}

/// The entry of a group, its last line ended. Of the values at fault at most `most_faults` are given. What is to be done
/// about all findings of the group alike is said once.
pub(super) fn entry(
    group: &CodeGroup<'_>,
    sources: &Sources,
    most_faults: usize,
    colours: Colours,
) -> String {
    let mut entry = Entry {
        text: String::new(),
        colours,
    };
    let helps = group.listed.iter().map(|finding| finding.help.as_deref());
    let mut helps = helps.collect::<Vec<_>>();
    helps.dedup();
    let shared = match helps.as_slice() {
        [help] => Some(*help),
        _ => None,
    };
    for finding in &group.listed {
        entry.finding(finding, sources);
        if shared.is_none() {
            entry.help(finding.help.as_deref());
        }
    }
    let code = group.listed.first().map(|finding| finding.code);
    if let (Some(others), Some(code)) = (&group.others, code) {
        entry.others(others, code, most_faults);
    }
    entry.help(shared.flatten());
    if let Some(code) = code {
        entry.labelled("Code", code.as_str());
    }
    entry.text
}

struct Entry {
    text: String,
    colours: Colours,
}

impl Entry {
    /// The place of a finding, what is wrong, and the places that it clashes with.
    fn finding(&mut self, finding: &Finding, sources: &Sources) {
        let severity = finding.severity();
        self.text.push_str(&reference(&finding.at, sources));
        self.text.push('\n');
        let label = match severity {
            Severity::Error => "Error",
            Severity::Doubt => "Doubt",
            Severity::Hint => "Hint",
        };
        let message = self
            .colours
            .paint(Style::new().bold(), &quoted(&finding.message));
        let painted = self.colours.of_severity(severity, label);
        self.line(&painted, label.len(), &message);
        self.quotation(&finding.at, sources, Some(severity));
        for other in &finding.also {
            self.labelled("Compare", &reference(other, sources));
            self.quotation(other, sources, None);
        }
    }

    fn help(&mut self, help: Option<&str>) {
        if let Some(help) = help {
            self.labelled("Do", &quoted(help));
        }
    }

    /// How many findings of the code are not listed, and what is at fault in all of them.
    fn others(&mut self, others: &Others, code: Code, most_faults: usize) {
        let more = format!(
            "{} more of this code; “--code {} --all” lists them",
            others.count,
            code.as_str()
        );
        self.labelled("More", &more);
        let shown = others.faults.iter().take(most_faults);
        let most = others.faults.iter().map(|fault| fault.count).max();
        let width = most.unwrap_or_default().to_string().len();
        let mut lines: Vec<String> = shown
            .map(
                |Fault {
                     count,
                     text,
                     is_value,
                 }| {
                    let text = if *is_value {
                        visible(text)
                    } else {
                        quoted(text)
                    };
                    format!("{count:>width$} × {text}")
                },
            )
            .collect();
        match others.faults.len().saturating_sub(most_faults) {
            0 => {}
            1 => lines.push("and 1 other value".to_owned()),
            n => lines.push(format!("and {n} other values")),
        }
        self.labelled("Found", &lines.join("\n"));
    }

    fn labelled(&mut self, label: &str, text: &str) {
        self.line(label, label.len(), text);
    }

    /// A line with a label of `width` columns in the margin.
    fn line(&mut self, label: &str, width: usize, text: &str) {
        let gap = " ".repeat(MARGIN.saturating_sub(2 + width));
        // Continued lines of a message stand under its first.
        let text = text.replace('\n', &format!("\n{}", " ".repeat(MARGIN)));
        let line = format!("  {label}{gap}{text}");
        let _ = writeln!(self.text, "{}", line.trim_end());
    }

    /// The line at a place, with a mark below the value; nothing for a file without text.
    fn quotation(&mut self, label: &Label, sources: &Sources, severity: Option<Severity>) {
        let Some(quotation) = Quotation::of(label.place, sources) else {
            return;
        };
        let mark = match severity {
            Some(severity) => self.colours.of_severity(severity, &quotation.mark()),
            None => quotation.mark(),
        };
        let words = quoted(&label.text);
        self.labelled("", &quotation.line);
        let indent = " ".repeat(quotation.indent);
        self.labelled("", format!("{indent}{mark} {words}").trim_end());
    }
}

/// A place as editors open it: `records/designs/14/design.toml:34:7`; of a file without text, its path.
fn reference(label: &Label, sources: &Sources) -> String {
    let path = visible(sources.path(label.place.file));
    if sources.text(label.place.file).is_empty() {
        return path;
    }
    let at = sources.position(label.place);
    format!("{path}:{}:{}", at.line, at.column)
}

/// A message for people. Findings mark what is typed with backticks, as Markdown does; a person reads quotation marks.
pub(in crate::cli) fn quoted(message: &str) -> String {
    let mut is_open = false;
    let with_marks = message.chars().map(|c| {
        if c != '`' {
            return c;
        }
        is_open = !is_open;
        if is_open { '“' } else { '”' }
    });
    visible(&with_marks.collect::<String>())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_typed_stands_in_quotation_marks() {
        assert_eq!(
            quoted("design 14 has no point `lamp`, only `lamps`"),
            "design 14 has no point “lamp”, only “lamps”"
        );
    }
}
