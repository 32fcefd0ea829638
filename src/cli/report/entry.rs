//! One finding as an entry: the place, and beside labels in a margin what is wrong, the line that shows it, the places
//! it clashes with, what to do, and the code.

use std::fmt::Write as _;

use anstyle::{AnsiColor, Style};

use super::quotation::{Quotation, visible};
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

    fn of_severity(self, severity: Severity, text: &str) -> String {
        let colour = match severity {
            Severity::Error => AnsiColor::Red,
            Severity::Doubt => AnsiColor::Yellow,
            Severity::Hint => AnsiColor::Cyan,
        };
        self.paint(Style::new().bold().fg_color(Some(colour.into())), text)
    }
}

/// The entry of a finding, its last line ended.
pub(super) fn entry(finding: &Finding, sources: &Sources, colours: Colours) -> String {
    let severity = finding.severity();
    let mut entry = Entry {
        text: reference(&finding.at, sources) + "\n",
        colours,
    };
    let label = match severity {
        Severity::Error => "Error",
        Severity::Doubt => "Doubt",
        Severity::Hint => "Hint",
    };
    let message = quoted(&finding.message);
    entry.line(
        &colours.of_severity(severity, label),
        label.len(),
        &colours.paint(Style::new().bold(), &message),
    );
    entry.quotation(&finding.at, sources, Some(severity));
    for other in &finding.also {
        entry.labelled("Compare", &reference(other, sources));
        entry.quotation(other, sources, None);
    }
    if let Some(help) = &finding.help {
        entry.labelled("Do", &quoted(help));
    }
    entry.labelled("Code", finding.code.as_str());
    entry.text
}

struct Entry {
    text: String,
    colours: Colours,
}

impl Entry {
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
