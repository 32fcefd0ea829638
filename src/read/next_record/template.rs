//! Fills a template of `keyblock start`: comments out every key but those that are given a value.
//!
//! In: the text of a template, in which a line that begins with `# ` explains, one that begins with `#` and no space is a key
//! that may be used, and the first line may name a schema. Out: the text of a record.

use super::planned::Given;

/// The column in which the comment of a key begins.
const COMMENT_AT: usize = 38;

/// What stands above the first key, in place of the head of the template.
pub(super) struct Head {
    /// Whether the line that names the schema stays.
    pub has_schema: bool,
    /// The lines.
    pub lines: Vec<String>,
}

/// A table of the template that is changed.
pub(super) struct Part {
    /// Its name.
    pub table: &'static str,
    /// Whether its keys were given, so that its header stands.
    pub is_given: bool,
    /// Comments to add below its header.
    pub notes: Vec<String>,
    /// Values to show as examples in place of the template's; a key without one is left out.
    pub examples: Vec<(&'static str, Option<String>)>,
    /// The lines that replace all its keys, where they do.
    pub keys: Option<Vec<String>>,
}

/// The text of a record.
pub(super) fn filled(template: &str, head: &Head, given: &[Given], parts: &[Part]) -> String {
    let mut lines = template.lines().peekable();
    let mut out: Vec<String> = Vec::new();
    let schema = lines.next_if(|line| line.starts_with("#:schema"));
    out.extend(schema.filter(|_| head.has_schema).map(str::to_owned));
    out.extend(head.lines.iter().cloned());
    while lines.next_if(|line| !line.is_empty()).is_some() {}
    let mut given: Vec<&Given> = given.iter().collect();
    let mut part: Option<&Part> = None;
    let mut is_root = true;
    while let Some(line) = lines.next() {
        let bare = line.strip_prefix('#').unwrap_or(line);
        if let Some(table) = table_of(bare) {
            is_root = false;
            part = parts.iter().find(|part| part.table == table);
            out.push(match part {
                Some(part) if part.is_given => bare.to_owned(),
                _ => format!("#{bare}"),
            });
            if let Some(part) = part {
                out.extend(part.notes.iter().cloned());
                out.extend(part.keys.iter().flatten().cloned());
            }
            continue;
        }
        let Some(key) = key_of(bare) else {
            out.push(line.to_owned());
            continue;
        };
        let mut statement = vec![line.to_owned()];
        let mut depth = open_brackets(bare);
        while let Some(next) = lines.next_if(|_| depth > 0) {
            depth += open_brackets(next);
            statement.push(next.to_owned());
        }
        if part.is_some_and(|part| part.keys.is_some()) {
            continue;
        }
        let (_, comment) = split_comment(bare);
        let at = given.iter().position(|given| is_root && given.key == key);
        let example = part.and_then(|part| part.examples.iter().find(|(name, _)| *name == key));
        match (at.map(|at| given.remove(at)), example) {
            (Some(given), _) => {
                out.push(with_comment(&format!("{key} = {}", given.value), comment));
            }
            (None, Some((_, Some(value)))) => {
                out.push(with_comment(&format!("#{key} = {value}"), comment));
            }
            (None, Some((_, None))) => {}
            (None, None) => out.extend(statement.into_iter().map(commented_out)),
        }
    }
    debug_assert!(given.is_empty(), "the template lacks {given:?}");
    let mut text = out.join("\n");
    text.push('\n');
    text
}

/// The name of the table whose header the line is.
fn table_of(line: &str) -> Option<&str> {
    let rest = line.strip_prefix("[[").or_else(|| line.strip_prefix('['))?;
    let (name, _) = rest.split_once(']')?;
    is_key(name).then_some(name)
}

/// The key that the line gives a value.
fn key_of(line: &str) -> Option<&str> {
    let (key, _) = line.split_once(" = ")?;
    is_key(key).then_some(key)
}

fn is_key(text: &str) -> bool {
    let is_letter = |c: char| c.is_ascii_lowercase() || c.is_ascii_digit() || "_-.".contains(c);
    !text.is_empty() && text.chars().all(is_letter)
}

fn commented_out(line: String) -> String {
    if line.trim_start().starts_with('#') {
        line
    } else {
        format!("#{line}")
    }
}

/// A statement with its comment in the column of comments.
pub(super) fn with_comment(statement: &str, comment: Option<&str>) -> String {
    match comment {
        Some(comment) => {
            let gap = COMMENT_AT.saturating_sub(statement.chars().count()).max(1);
            format!("{statement}{}{comment}", " ".repeat(gap))
        }
        None => statement.to_owned(),
    }
}

/// A line and its comment, which begins with `#` outside of quotes.
fn split_comment(line: &str) -> (&str, Option<&str>) {
    let mut quote = None;
    for (at, c) in line.char_indices() {
        match (quote, c) {
            (None, '"' | '\'') => quote = Some(c),
            (Some(open), c) if c == open => quote = None,
            (None, '#') => {
                let (statement, comment) = line.split_at(at);
                return (statement, Some(comment));
            }
            _ => {}
        }
    }
    (line, None)
}

/// How many brackets and braces a line opens and does not close. A line that is commented out opens none.
fn open_brackets(line: &str) -> i32 {
    let mut quote = None;
    let mut open = 0;
    let (statement, _) = split_comment(line);
    for c in statement.chars() {
        match (quote, c) {
            (None, '"' | '\'') => quote = Some(c),
            (Some(closing), c) if c == closing => quote = None,
            (None, '[' | '{') => open += 1,
            (None, ']' | '}') => open -= 1,
            _ => {}
        }
    }
    open
}

#[cfg(test)]
mod tests {
    use super::*;

    const TEMPLATE: &str = r#"#:schema ../x.json
# About the record.

number = "1"                          # the number
titles = [
  { text = "The Weathercock", lang = "en" },   # one
  #{ text = "Wind", kind = "former" },
]
#was = ["a # b"]                      # former keys

# What was seen.
[observed]
bird = "present"
#crack = "short"

[sheet]
size = [232, 170]                     # mm
"#;

    #[test]
    fn every_key_but_the_given_is_commented_out() {
        let head = Head {
            has_schema: true,
            lines: vec!["# Ours.".to_owned()],
        };
        let part = Part {
            table: "observed",
            is_given: false,
            notes: Vec::new(),
            examples: Vec::new(),
            keys: Some(vec!["#moon = \"present\"".to_owned()]),
        };
        let given = [Given::texts("was", ["b"])];
        let text = filled(TEMPLATE, &head, &given, &[part]);
        insta::assert_snapshot!(text, @r##"
        #:schema ../x.json
        # Ours.

        #number = "1"                          # the number
        #titles = [
        #  { text = "The Weathercock", lang = "en" },   # one
          #{ text = "Wind", kind = "former" },
        #]
        was = ["b"]                           # former keys

        # What was seen.
        #[observed]
        #moon = "present"

        #[sheet]
        #size = [232, 170]                     # mm
        "##);
    }
}
