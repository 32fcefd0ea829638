//! Reads pages as a browser's tokenizer does, as far as the program's pages need it: tags with their
//! attributes, and the text between them (HTML, "Tokenization").

/// A start tag.
#[derive(Debug)]
pub struct Tag {
    pub name: String,
    /// Names in small letters, values with their references resolved.
    pub attributes: Vec<(String, String)>,
}

impl Tag {
    /// The value of an attribute, where the tag has it.
    pub fn value(&self, name: &str) -> Option<&str> {
        let attribute = self.attributes.iter().find(|(known, _)| known == name)?;
        Some(&attribute.1)
    }
}

/// Every start tag of a page, and all its text.
pub fn tags(html: &str) -> (Vec<Tag>, String) {
    let mut tags = Vec::new();
    let mut text = String::new();
    let mut rest = html;
    while let Some(open) = rest.find('<') {
        text.push_str(&unescaped(&rest[..open]));
        rest = &rest[open + 1..];
        if let Some(comment) = rest.strip_prefix("!--") {
            rest = comment.split_once("-->").map_or("", |(_, after)| after);
        } else if rest.starts_with(|c: char| c.is_ascii_alphabetic()) {
            let (tag, after) = start_tag(rest);
            tags.push(tag);
            rest = after;
        } else if rest.starts_with(['/', '!', '?']) {
            rest = rest.split_once('>').map_or("", |(_, after)| after);
        } else {
            text.push('<');
        }
    }
    text.push_str(&unescaped(rest));
    (tags, text)
}

/// The tag that begins at its name, and what follows it.
fn start_tag(html: &str) -> (Tag, &str) {
    let ends_name = |c: char| c.is_ascii_whitespace() || c == '>' || c == '/';
    let end = html.find(ends_name).unwrap_or(html.len());
    let mut tag = Tag {
        name: html[..end].to_ascii_lowercase(),
        attributes: Vec::new(),
    };
    let mut rest = &html[end..];
    loop {
        rest = rest.trim_start_matches(|c: char| c.is_ascii_whitespace() || c == '/');
        if rest.is_empty() {
            return (tag, rest);
        }
        if let Some(after) = rest.strip_prefix('>') {
            return (tag, after);
        }
        let end = rest
            .find(|c: char| ends_name(c) || c == '=')
            .unwrap_or(rest.len())
            .max(1);
        let name = rest[..end].to_ascii_lowercase();
        rest = rest[end..].trim_start_matches(|c: char| c.is_ascii_whitespace());
        let mut value = "";
        if let Some(after) = rest.strip_prefix('=') {
            let after = after.trim_start_matches(|c: char| c.is_ascii_whitespace());
            let quote = after.chars().next().filter(|c| matches!(c, '"' | '\''));
            (value, rest) = match quote {
                Some(quote) => after[1..].split_once(quote).unwrap_or((&after[1..], "")),
                None => after.split_at(
                    after
                        .find(|c: char| c.is_ascii_whitespace() || c == '>')
                        .unwrap_or(after.len()),
                ),
            };
        }
        tag.attributes.push((name, unescaped(value)));
    }
}

/// Text, with the character references resolved that the program's pages use.
fn unescaped(text: &str) -> String {
    text.replace("&lt;", "<")
        .replace("&gt;", ">")
        .replace("&quot;", "\"")
        .replace("&#39;", "'")
        .replace("&#x27;", "'")
        .replace("&#x2F;", "/")
        .replace("&amp;", "&")
}

#[test]
fn a_tag_is_read_as_a_browser_reads_it() {
    let (tags, text) = tags("a &lt;b&gt; <A HREF='x&amp;y' onclick=z checked><!-- <i> --></a>< c");
    assert_eq!(text, "a <b> < c");
    assert_eq!(tags.len(), 1);
    assert_eq!(tags[0].name, "a");
    let attribute = |n: usize| {
        let (name, value) = &tags[0].attributes[n];
        (name.as_str(), value.as_str())
    };
    assert_eq!(attribute(0), ("href", "x&y"));
    assert_eq!(attribute(1), ("onclick", "z"));
    assert_eq!(attribute(2), ("checked", ""));
}
