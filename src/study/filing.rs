//! The word under which a name is filed in an index, where only the name is recorded.
//!
//! In: a name as written. Out: the text it is filed under ([`filed_under`], with an example).
//! Method: persons are filed under their last name, "Dr Anna Weiss" under W, institutions as they are
//! written (common practice, no source; `docs/trade.md, "Names in an index"`). A name alone does not show
//! which of the two it is, so the rule uses its form: up to the first comma, two to six words, each with
//! a capital (particles such as "van der" aside), and none of them a word for an institution.
//!
//! Limits: a firm named by two plain words ("Gannet Stow") is taken for a person, and so is a name that has
//! the family's before the given name; the last word of a double family name without a hyphen counts alone.
//! Where this files a name wrongly, a record with its own `sort` corrects it.

/// Words before a name that are not part of it, without full stops.
const TITLES: &str = "\
    abbé admiral baron baroness baronin captain capt col colonel comte comtesse consul count \
    countess dame dipl don doña dr duc duchess duke frau fräulein freifrau freiherr fürst fürstin \
    gen general graf gräfin herr herzog herzogin hofrat hon ing konsul lady lord madame major \
    marquess marquis marquise miss mlle mme monsieur mr mrs ms prince princess princesse prinz \
    prinzessin prof professor rev reverend ritter sir vicomte viscount";

/// Words after a name that are not part of it, without full stops.
const SUFFIXES: &str = "\
    jr jun junior sr sen senior ii iii iv";

/// Words within a name that are written without a capital.
const PARTICLES: &str = "\
    af av d da de degli dei del della den der des di do dos du la le ten ter van vom von zu";

/// Words, or ends of compounds, by which a name is taken for an institution's or a firm's: English, German,
/// French.
const INSTITUTIONS: &str = "\
    academy akademie amt antiquariat archiv archive archives association auctions bank bequest \
    bibliothek bibliothèque board cabinet church club collection college committee company erben \
    estate fondation fonds foundation fund galerie gallery gesellschaft gmbh guild heirs institut \
    institute institution kabinett kirche kunsthandel kunsthandlung librairie library ltd maison \
    ministerium ministry musée museum nachlass office press sammlung school schule society stiftung \
    société trust university universität verein verlag";

/// The text under which a name is filed: "Weiss, Anna" for "Dr Anna Weiss", the name itself where it is
/// not a person's.
///
/// ```
/// # use keyblock::study::filing::filed_under;
/// assert_eq!(filed_under("Dr Anna Weiss, Traunegg"), "Weiss, Anna, Traunegg");
/// assert_eq!(filed_under("Pellmouth Literary Institute"), "Pellmouth Literary Institute");
/// ```
#[must_use]
pub fn filed_under(name: &str) -> String {
    let name = name.trim();
    let (person, rest) = name.split_once(',').unwrap_or((name, ""));
    let words: Vec<&str> = person.split_whitespace().collect();
    let mut own: &[&str] = &words;
    while let [others @ .., last] = own
        && !others.is_empty()
        && is_one_of(last, SUFFIXES)
    {
        own = others;
    }
    if !is_shaped_like_a_person(own) {
        return name.to_owned();
    }
    while let [first, others @ ..] = own
        && !others.is_empty()
        && is_one_of(first, TITLES)
    {
        own = others;
    }
    let Some((last, given)) = own.split_last() else {
        return name.to_owned();
    };
    let parts = [*last, &given.join(" "), rest.trim()];
    let parts: Vec<&str> = parts.into_iter().filter(|part| !part.is_empty()).collect();
    parts.join(", ")
}

fn is_shaped_like_a_person(words: &[&str]) -> bool {
    let is_capital = |word: &str| word.chars().next().is_some_and(char::is_uppercase);
    let is_of_a_name = |word: &&str| is_capital(word) || is_one_of(word, PARTICLES);
    let ends_in_a_name = words.last().is_some_and(|word| is_capital(word));
    // "Anna Weiss's Gift": a possessive names a thing, not a person.
    let is_owning = |word: &&str| word.ends_with("'s") || word.ends_with("’s");
    (2..=6).contains(&words.len())
        && ends_in_a_name
        && words.iter().all(is_of_a_name)
        && !words.iter().any(is_owning)
        && !words.iter().any(|word| is_institution(word))
}

fn is_one_of(word: &str, words: &str) -> bool {
    let word = plain(word);
    words.split(' ').any(|known| known == word)
}

/// German compounds have the deciding word at their end: "Kunstverein".
fn is_institution(word: &str) -> bool {
    let word = plain(word);
    // A short word ends many personal names too.
    let is_at_the_end = |end: &str| word == end || end.len() > 4 && word.ends_with(end);
    INSTITUTIONS.split(' ').any(is_at_the_end)
}

/// A word in lower case without full stops at its end.
fn plain(word: &str) -> String {
    word.trim_matches(|c: char| !c.is_alphanumeric())
        .to_lowercase()
}

#[cfg(test)]
mod tests {
    use super::filed_under;

    #[test]
    fn persons_stand_under_their_last_name_whatever_title_they_bear() {
        for (name, filed) in [
            ("Dr Anna Weiss", "Weiss, Anna"),
            ("Prof. Dr. Anna Weiss", "Weiss, Anna"),
            ("Graf Montequil", "Montequil"),
            ("Admiral J. Winch", "Winch, J."),
            (
                "Edgar Ferncombe, shipping agent",
                "Ferncombe, Edgar, shipping agent",
            ),
            ("Jurriaan Hoekwater-Pels", "Hoekwater-Pels, Jurriaan"),
            ("Edda van der Meer", "Meer, Edda van der"),
            ("Ole Brandt jun.", "Brandt, Ole"),
            ("Baron von Orle", "Orle, von"),
            ("Éloïse Ürdal", "Ürdal, Éloïse"),
        ] {
            assert_eq!(filed_under(name), filed, "{name}");
        }
    }

    #[test]
    fn institutions_and_descriptions_stand_as_they_are_written() {
        for name in [
            "Pellmouth Literary Institute",
            "Harbour Board Collection",
            "Kunstverein Hafenau",
            "Galerie Nord",
            "Gannet & Stow",
            "Charity sale for the Widows' Fund",
            "The artist's mother",
            "Anna Weiss's Gift",
            "a schoolmaster in Traunegg",
            "Weiss",
            "",
            "織山",
        ] {
            assert_eq!(filed_under(name), name);
        }
    }

    /// A known wrong answer: a firm named by two plain words is filed like a person, since its form is the
    /// same.
    #[test]
    fn a_firm_of_plain_names_is_taken_for_a_person() {
        assert_eq!(filed_under("Gannet Stow"), "Stow, Gannet");
    }
}
