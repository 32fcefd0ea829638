//! Statements of rights in words and as addresses.

/// `CC-BY-4.0` is "CC BY 4.0", `CC0-1.0` is "CC0 1.0" (SPDX identifiers); anything else stays as it
/// is written.
pub(crate) fn in_words(rights: &str) -> String {
    let is_licence =
        (rights.starts_with("CC-") || rights.starts_with("CC0-")) && !rights.contains(' ');
    if !is_licence {
        return rights.to_owned();
    }
    let Some((name, version)) = rights.rsplit_once('-') else {
        return rights.to_owned();
    };
    match name.strip_prefix("CC-") {
        Some(kind) => format!("CC {kind} {version}"),
        None => format!("{name} {version}"),
    }
}

/// The code of a statement of rightsstatements.org: `InC` of
/// `http://rightsstatements.org/vocab/InC/1.0/`.
pub(crate) fn statement_code(rights: &str) -> Option<&str> {
    let rest = rights
        .strip_prefix("http://rightsstatements.org/")
        .or_else(|| rights.strip_prefix("https://rightsstatements.org/"))?;
    let rest = rest
        .strip_prefix("vocab/")
        .or_else(|| rest.strip_prefix("page/"))?;
    rest.split('/').next().filter(|code| !code.is_empty())
}

/// The URI of a licence of Creative Commons or a statement of RightsStatements.org, in the form that
/// programs compare (with `http:`); `None` for anything else.
pub(crate) fn uri(rights: &str) -> Option<String> {
    if let Some(code) = statement_code(rights) {
        return Some(format!("http://rightsstatements.org/vocab/{code}/1.0/"));
    }
    let (name, version) = rights.rsplit_once('-')?;
    let path = match (name, version) {
        ("CC0", "1.0") => "publicdomain/zero/1.0".to_owned(),
        ("CC-PDM", "1.0") => "publicdomain/mark/1.0".to_owned(),
        _ => {
            const KINDS: [&str; 6] = ["BY", "BY-SA", "BY-NC", "BY-ND", "BY-NC-SA", "BY-NC-ND"];
            let kind = name.strip_prefix("CC-").filter(|k| KINDS.contains(k))?;
            if !["1.0", "2.0", "2.5", "3.0", "4.0"].contains(&version) {
                return None;
            }
            format!("licenses/{}/{version}", kind.to_ascii_lowercase())
        }
    };
    Some(format!("http://creativecommons.org/{path}/"))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The addresses are those of the licences themselves and of IIIF Presentation API 3.0, section
    /// 3.1, `rights`.
    #[test]
    fn rights_that_have_an_address_are_given_by_it() {
        let by = uri("CC-BY-4.0");
        assert_eq!(
            by.as_deref(),
            Some("http://creativecommons.org/licenses/by/4.0/")
        );
        let zero = uri("CC0-1.0");
        assert_eq!(
            zero.as_deref(),
            Some("http://creativecommons.org/publicdomain/zero/1.0/")
        );
        let statement = uri("https://rightsstatements.org/page/InC/1.0/?language=en");
        assert_eq!(
            statement.as_deref(),
            Some("http://rightsstatements.org/vocab/InC/1.0/")
        );
        for words in ["All rights reserved", "CC-BY", "CC-BY-9.0", "MIT-1.0", "-"] {
            assert_eq!(uri(words), None, "{words}");
        }
    }

    #[test]
    fn licences_are_read_as_they_are_spoken() {
        assert_eq!(in_words("CC-BY-NC-4.0"), "CC BY-NC 4.0");
        assert_eq!(in_words("CC0-1.0"), "CC0 1.0");
        assert_eq!(in_words("All rights reserved"), "All rights reserved");
        assert_eq!(
            statement_code("http://rightsstatements.org/vocab/InC/1.0/"),
            Some("InC")
        );
    }
}
