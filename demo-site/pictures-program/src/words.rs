//! Free text of a record, read word by word.
//!
//! A record tells a sheet's condition and the places of its marks in a cataloguer's words. They are
//! compared as whole words, never as runs of letters: "unfaded" is not "faded", "untoned" is not
//! "toned".

/// The words of a text in lower case, clause by clause. A hyphen parts words: "tide-line" is "tide"
/// and "line".
pub struct Words(Vec<Vec<String>>);

impl Words {
    /// Reads a text. A semicolon or a full stop ends a clause.
    pub fn of(text: &str) -> Self {
        let clauses = text.split([';', '.']);
        Self(clauses.map(|clause| words(clause).collect()).collect())
    }

    /// Reads the condition of a sheet, without what it says is not there on the face of the sheet:
    /// without the rest of a clause after "no", "not", "never" or "without", and without clauses
    /// about the verso or about the tissue laid over a print ("foxing on the tissue only").
    pub fn of_condition(text: &str) -> Self {
        let mut read = Self::of(text);
        read.0
            .retain(|clause| !follows(clause, "the", &["verso", "tissue"]));
        for clause in &mut read.0 {
            let negation = clause.iter().position(|word| is_one_of(word, NEGATIONS));
            clause.truncate(negation.unwrap_or(clause.len()));
        }
        read
    }

    /// Whether one of the words stands in the text.
    pub fn has(&self, any_of: &[&str]) -> bool {
        let mut words = self.0.iter().flatten();
        words.any(|word| is_one_of(word, any_of))
    }

    /// Whether one of the words directly follows `first` in a clause.
    pub fn has_after(&self, first: &str, any_of: &[&str]) -> bool {
        self.0.iter().any(|clause| follows(clause, first, any_of))
    }
}

/// Words after which a clause says what is not so.
const NEGATIONS: &[&str] = &["no", "not", "never", "without"];

fn words(clause: &str) -> impl Iterator<Item = String> {
    let words = clause.split(|c: char| !c.is_alphanumeric());
    words.filter(|w| !w.is_empty()).map(str::to_lowercase)
}

fn is_one_of(word: &str, list: &[&str]) -> bool {
    list.contains(&word)
}

fn follows(clause: &[String], first: &str, any_of: &[&str]) -> bool {
    let mut pairs = clause.windows(2);
    pairs.any(|pair| pair[0] == first && is_one_of(&pair[1], any_of))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_word_is_not_found_inside_another() {
        let framed = Words::of_condition("Framed; unfaded.");
        assert!(framed.has(&["framed"]));
        assert!(!framed.has(&["faded"]));
        assert!(!Words::of_condition("Very good; the margins untoned.").has(&["toned"]));
        assert!(!Words::of("the mica still bright").has(&["right"]));
    }

    #[test]
    fn what_a_clause_denies_is_not_read() {
        let denied = [
            "Good; never mounted.",
            "No mount, no stains.",
            "Clean, without mount.",
        ];
        for condition in denied {
            assert!(!Words::of_condition(condition).has(&["mount", "mounted", "stains"]));
        }
        assert!(Words::of_condition("Never framed; toned.").has(&["toned"]));
        assert!(Words::of_condition("Toned, not foxed.").has(&["toned"]));
    }

    #[test]
    fn the_verso_and_the_tissue_are_not_the_face_of_the_sheet() {
        let elsewhere = [
            "Complete, in its tissue; foxing on the tissue only.",
            "Complete, in its tissue; slight offset of the tissue's fold.",
            "Good; a stain on the verso that does not show through.",
        ];
        for condition in elsewhere {
            assert!(!Words::of_condition(condition).has(&["foxing", "fold", "stain"]));
        }
        assert!(Words::of_condition("A short tear, closed with tissue.").has(&["tear"]));
    }

    #[test]
    fn a_hyphen_parts_words() {
        let condition = Words::of_condition("Mount-stained; light-struck.");
        assert!(condition.has(&["mount"]) && condition.has(&["stained"]));
        assert!(condition.has_after("light", &["struck"]));
        let across_clauses = condition.has_after("stained", &["light"]);
        assert!(!across_clauses);
    }
}
