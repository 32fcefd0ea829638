//! Edits of a text: bytes to be replaced, done at once, so that the places of all stay those of the text as it was.

use std::ops::Range;

use crate::model::place::Place;
use crate::read::refusal::Refusal;

/// The edits of one text.
pub(crate) struct Edits<'t> {
    text: &'t str,
    all: Vec<(Range<usize>, String)>,
}

impl<'t> Edits<'t> {
    pub(crate) fn of(text: &'t str) -> Edits<'t> {
        Edits {
            text,
            all: Vec::new(),
        }
    }

    pub(crate) fn is_empty(&self) -> bool {
        self.all.is_empty()
    }

    /// In how many places the text changes.
    pub(crate) fn len(&self) -> usize {
        self.all.len()
    }

    /// Replaces `was`, which stands at `place` with or without quotes, by `now`.
    ///
    /// # Errors
    /// [`Refusal`] where the file writes it otherwise, with escapes.
    pub(crate) fn key(
        &mut self,
        path: &str,
        place: Place,
        was: &str,
        now: &str,
    ) -> Result<(), Refusal> {
        let span = place.span();
        let written = self.text.get(span.clone()).unwrap_or_default();
        let Some(at) = written.find(was) else {
            let line = 1 + self
                .text
                .get(..span.start)
                .unwrap_or_default()
                .matches('\n')
                .count();
            return Err(Refusal::of_records(
                format!("`{was}` is written with escapes in {path}, line {line}"),
                format!("write `{was}` there as it is, and rename it then"),
            ));
        };
        let start = span.start + at;
        self.replace(start..start + was.len(), now.to_owned());
        Ok(())
    }

    /// Replaces the bytes `span` by `now`.
    pub(crate) fn replace(&mut self, span: Range<usize>, now: String) {
        self.all.push((span, now));
    }

    /// Inserts `text` at a byte.
    pub(crate) fn insert(&mut self, at: usize, text: String) {
        self.all.push((at..at, text));
    }

    /// Inserts a line of its own below the line that holds the byte `at`.
    pub(crate) fn insert_below(&mut self, at: usize, line: &str) {
        let rest = self.text.get(at..).unwrap_or_default();
        let end = rest.find('\n').unwrap_or(rest.len());
        let end = rest
            .get(..end)
            .unwrap_or_default()
            .trim_end_matches('\r')
            .len();
        self.insert(at + end, format!("\n{line}"));
    }

    /// The text with every edit.
    pub(crate) fn done(mut self) -> String {
        self.all.sort_by_key(|(span, _)| (span.start, span.end));
        let mut out = String::with_capacity(self.text.len() + 64);
        let mut from = 0;
        for (span, now) in &self.all {
            out.push_str(self.text.get(from..span.start).unwrap_or_default());
            out.push_str(now);
            from = span.end.max(from);
        }
        out.push_str(self.text.get(from..).unwrap_or_default());
        out
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::model::place::FileId;

    #[test]
    fn edits_change_nothing_around_them() {
        let text = "key = \"mill\"  # the mill\r\nwas = ['a']\n";
        let mut edits = Edits::of(text);
        let place = Place::new(FileId::default(), 6..12);
        edits.key("a.toml", place, "mill", "lock").unwrap();
        edits.insert_below(12, "was = [\"mill\"]");
        assert_eq!(
            edits.done(),
            "key = \"lock\"  # the mill\nwas = [\"mill\"]\r\nwas = ['a']\n"
        );
        let mut escaped = Edits::of("\"m\\u0069ll\"");
        let place = Place::new(FileId::default(), 0..11);
        assert!(escaped.key("a.toml", place, "mill", "lock").is_err());
    }
}
