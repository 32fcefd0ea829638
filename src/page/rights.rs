//! Rights as readers know them.

/// `CC-BY-4.0` is "CC BY 4.0", `CC0-1.0` is "CC0 1.0" (SPDX identifiers); anything else stays as it
/// is written.
pub(super) fn in_words(rights: &str) -> String {
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
pub(super) fn statement_code(rights: &str) -> Option<&str> {
    let rest = rights
        .strip_prefix("http://rightsstatements.org/")
        .or_else(|| rights.strip_prefix("https://rightsstatements.org/"))?;
    let rest = rest
        .strip_prefix("vocab/")
        .or_else(|| rest.strip_prefix("page/"))?;
    rest.split('/').next().filter(|code| !code.is_empty())
}

#[cfg(test)]
mod tests {
    use super::*;

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
