//! The report on a terminal: a line for each column, the counts of rows and designs, what to do next.

use std::fmt::Write as _;

use super::account::{Account, ColumnAccount};
use super::reported::Reported;
use super::row::without_column;
use super::words::{self, counted, grouped};
use crate::exchange::intake::columns::Holds;
use crate::model::words::ClosedList as _;

/// The widest that a heading or a value is shown, in characters.
const WIDEST: usize = 28;

/// The most columns that are shown.
const COLUMNS: usize = 200;

/// How many unread values of a column are shown.
const SHOWN: usize = 3;

/// The report. `heading` sets off the heads of its parts.
#[must_use]
pub fn text(
    reported: &Reported<'_>,
    account: &Account,
    heading: &dyn Fn(&str) -> String,
) -> String {
    let mut text = format!(
        "{}\n\n",
        heading(&format!(
            "{}: {}, {}",
            reported.file,
            counted(account.rows.all, "row", "rows"),
            counted(account.columns.len(), "column", "columns")
        ))
    );
    columns(account, heading, &mut text);
    let mut told = reported.notes();
    if reported.has_no_holder() {
        told.push("nothing says who keeps the sheets: write `holder` in columns.toml".to_owned());
    }
    if !told.is_empty() {
        let _ = writeln!(text, "\n{}", heading("To look at"));
        for told in told {
            let _ = writeln!(text, "  {told}");
        }
    }
    let absent = without_column(reported);
    if !absent.is_empty() {
        let _ = writeln!(text, "\nNo column tells: {}", absent.join(", "));
    }
    let _ = writeln!(text, "\nRows     {}", rows(account));
    let _ = writeln!(text, "Designs  {}", designs(account));
    text
}

fn rows(account: &Account) -> String {
    let rows = account.rows;
    let mut parts = Vec::new();
    let mut part = |n: usize, what: &str| {
        if n > 0 {
            parts.push(format!("{} {what}", grouped(n)));
        }
    };
    part(rows.new, "new");
    part(rows.corrected, "corrected");
    part(rows.unchanged, "unchanged");
    part(rows.nothing, "with nothing to record");
    part(rows.left_out, "left out");
    if parts.is_empty() {
        return "none".to_owned();
    }
    let doubtful = match rows.doubtful {
        0 => String::new(),
        n => format!("; {} doubtful", grouped(n)),
    };
    format!("{}{doubtful}", parts.join(", "))
}

fn designs(account: &Account) -> String {
    let designs = account.designs;
    let mut parts = Vec::new();
    let mut part = |n: usize, what: &str| {
        if n > 0 {
            parts.push(format!("{} {what}", grouped(n)));
        }
    };
    part(designs.recorded, "in the catalogue");
    part(designs.new, "not in it");
    part(designs.to_settle, "to settle");
    let without = match designs.rows_without {
        0 => String::new(),
        n => format!("; {} without one", counted(n, "row", "rows")),
    };
    if parts.is_empty() {
        parts.push("none".to_owned());
    }
    format!("{}{without}", parts.join(", "))
}

fn columns(account: &Account, heading: &dyn Fn(&str) -> String, text: &mut String) {
    const HEADS: [&str; 9] = [
        "Column",
        "Holds",
        "Sure",
        "Whole",
        "Part",
        "Unread",
        "Empty",
        "Against",
        "Unread most often",
    ];
    let mut lines: Vec<[String; 9]> = vec![HEADS.map(str::to_owned)];
    lines.extend(account.columns.iter().take(COLUMNS).map(line));
    let widths: Vec<usize> = (0..8)
        .map(|at| lines.iter().map(|line| width(&line[at])).max().unwrap_or(0))
        .collect();
    for (number, line) in lines.iter().enumerate() {
        let mut shown = String::new();
        for (at, cell) in line.iter().enumerate() {
            let Some(wide) = widths.get(at) else {
                shown.push_str(cell);
                continue;
            };
            let room = " ".repeat(wide.saturating_sub(width(cell)));
            // Numbers stand to the right.
            let is_number = (3..8).contains(&at);
            let (before, after) = if is_number {
                (room.as_str(), "")
            } else {
                ("", room.as_str())
            };
            let _ = write!(shown, "{before}{cell}{after}  ");
        }
        let shown = shown.trim_end();
        let shown = if number == 0 {
            heading(shown)
        } else {
            shown.to_owned()
        };
        let _ = writeln!(text, "{shown}");
    }
    if account.columns.len() > COLUMNS {
        let more = grouped(account.columns.len() - COLUMNS);
        let _ = writeln!(text, "and {more} more; columns.toml has all");
    }
}

fn line(column: &ColumnAccount) -> [String; 9] {
    let number = |n: usize| if n == 0 { "–".to_owned() } else { grouped(n) };
    let unread: Vec<String> = column
        .commonest
        .iter()
        .take(SHOWN)
        .map(|unread| match unread.rows {
            1 => format!("“{}”", cut(&unread.text)),
            rows => format!("“{}” {}", cut(&unread.text), grouped(rows)),
        })
        .collect();
    [
        cut(&column.name),
        words::holds(column.holds).to_owned(),
        match column.holds {
            // That a column is not known is not sure or unsure.
            Holds::Unknown => "–".to_owned(),
            _ => column.sure.word().to_owned(),
        },
        number(column.whole),
        number(column.part),
        number(column.unread),
        number(column.empty),
        number(column.contradictory),
        unread.join(", "),
    ]
}

/// A text on one line and not too long, without characters that steer a terminal.
fn cut(text: &str) -> String {
    let plain: String = text
        .chars()
        .map(|c| {
            if c.is_control() || c.is_whitespace() {
                ' '
            } else {
                c
            }
        })
        .collect();
    if plain.chars().count() <= WIDEST {
        return plain;
    }
    let begin: String = plain.chars().take(WIDEST - 1).collect();
    format!("{}…", begin.trim_end())
}

/// How many columns of a terminal a text takes: letters of Chinese, Japanese and Korean take two.
fn width(text: &str) -> usize {
    let wide = |c: char| matches!(u32::from(c), 0x1100..=0x115f | 0x2e80..=0xa4cf | 0xac00..=0xd7a3 | 0xf900..=0xfaff | 0xfe30..=0xfe6f | 0xff00..=0xff60 | 0xffe0..=0xffe6);
    text.chars().map(|c| 1 + usize::from(wide(c))).sum()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_value_is_cut_and_steers_no_terminal() {
        assert_eq!(cut("a\u{1b}[31m\nb"), "a [31m b");
        assert_eq!(cut(&"x".repeat(40)).chars().count(), WIDEST);
        assert_eq!(width("画寸 a"), 6);
    }
}
