//! What to write instead of a date that is none: the ways in which people write dates, in EDTF.

/// What to do about a text that should be a date.
pub(crate) fn help(text: &str) -> String {
    match in_edtf(text) {
        Some(edtf) => format!("write \"{edtf}\""),
        None => "write \"1927\", \"1927-03\", \"1927~\" (about), \"1927?\" (uncertain), \"192X\" (the 1920s), \
                 \"1927/1931\" (from, to)"
            .to_owned(),
    }
}

/// The EDTF of a few common ways to write dates; `None` where it is not plain what is meant.
fn in_edtf(text: &str) -> Option<String> {
    let text = text.trim().to_lowercase();
    let year = |text: &str| {
        let text = text.trim();
        (text.len() == 4 && text.bytes().all(|b| b.is_ascii_digit())).then(|| text.to_owned())
    };
    let after = |prefixes: &[&str]| {
        let rest = prefixes
            .iter()
            .find_map(|prefix| text.strip_prefix(prefix))?;
        year(rest.trim_start_matches('.'))
    };
    if let Some(about) = after(&["circa", "about", "ca", "c"]) {
        return Some(format!("{about}~"));
    }
    if let Some(end) = after(&["before", "until"]) {
        return Some(format!("../{end}"));
    }
    if let Some(start) = after(&["after", "since", "from"]) {
        return Some(format!("{start}/.."));
    }
    if let Some(decade) = text
        .strip_suffix('s')
        .and_then(|text| year(text.trim_end_matches('\'')))
    {
        let tens = decade.strip_suffix('0')?;
        return Some(format!("{tens}X"));
    }
    if let Some((from, to)) = text.split_once(['-', '–', '—']) {
        let (from, to) = (year(from)?, to.trim());
        return match year(to) {
            Some(to) => Some(format!("{from}/{to}")),
            None if to.len() == 2 && to.bytes().all(|b| b.is_ascii_digit()) => {
                Some(format!("{from}/{}{to}", from.get(..2)?))
            }
            None => None,
        };
    }
    let parts: Vec<&str> = text
        .split(['.', '/', ' '])
        .filter(|p| !p.is_empty())
        .collect();
    if let [day, month, last] = parts.as_slice() {
        let in_two = |part: &str, most: u8| {
            let number = part.parse::<u8>().ok().filter(|n| (1..=most).contains(n))?;
            Some(format!("{number:02}"))
        };
        // Day before month, as most of the world writes it; where both are 12 or less it may be
        // either, and a wrong suggestion is worse than none.
        let either = day.parse::<u8>().is_ok_and(|day| day <= 12);
        if text.contains('/') && either {
            return None;
        }
        return Some(format!(
            "{}-{}-{}",
            year(last)?,
            in_two(month, 12)?,
            in_two(day, 31)?
        ));
    }
    None
}

#[cfg(test)]
mod tests {
    use super::in_edtf;
    use crate::model::edtf::Date;

    #[test]
    fn ok_common_ways_to_write_dates_are_put_into_edtf() {
        for (written, edtf) in [
            ("c. 1927", "1927~"),
            ("ca. 1927", "1927~"),
            ("about 1927", "1927~"),
            ("1920s", "192X"),
            ("1920's", "192X"),
            ("1927-1931", "1927/1931"),
            ("1927–31", "1927/1931"),
            ("before 1927", "../1927"),
            ("after 1927", "1927/.."),
            ("3.11.1971", "1971-11-03"),
            ("13/11/1971", "1971-11-13"),
        ] {
            assert_eq!(in_edtf(written).as_deref(), Some(edtf), "{written}");
            assert!(Date::parse(edtf).is_ok(), "{edtf}");
        }
    }

    #[test]
    fn err_what_is_not_plain_gets_no_suggestion() {
        for written in ["", "spring", "3/11/1971", "1927-", "19270", "1925s", "c. ü"] {
            assert_eq!(in_edtf(written), None, "{written}");
        }
    }
}
