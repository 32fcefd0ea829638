//! Codes that standards define: languages, countries, libraries, addresses on the web.
//!
//! The form of a code is checked; for countries also the list of assigned codes. Whether other codes
//! were ever assigned is not checked, because compiling uses no network.

use unic_langid::LanguageIdentifier;

/// Why a text is not such a code, and what to do.
#[derive(Debug, PartialEq)]
pub(crate) struct Malformed {
    /// The fault, to follow the text in the message: "is not a country".
    pub(crate) what: &'static str,
    /// What to do.
    pub(crate) help: String,
}

/// A language tag, in its usual spelling (`uk-Latn`).
///
/// BCP 47 (RFC 5646) also has forms without a language or with extensions, which no catalogue needs.
/// Primary tags of four letters are reserved and longer ones were never registered (section 2.2.1), so
/// both are refused. A language's name is therefore not taken for its tag.
pub(crate) fn language(text: &str) -> Result<String, Malformed> {
    let primary = text.split('-').next().unwrap_or_default();
    let is_tag = (2..=3).contains(&primary.len()) && !text.contains('_');
    match text.parse::<LanguageIdentifier>() {
        Ok(tag) if is_tag => Ok(tag.to_string()),
        _ => Err(Malformed {
            what: "is not a language tag",
            help: "write a tag of BCP 47: \"en\", \"de\", \"uk-Latn\" (Ukrainian in Latin letters)"
                .to_owned(),
        }),
    }
}

/// A country, ISO 3166-1 alpha-2.
pub(crate) fn country(text: &str) -> Result<String, Malformed> {
    if is_country(text) {
        return Ok(text.to_owned());
    }
    let upper = text.to_uppercase();
    let help = if is_country(&upper) {
        format!("write it in capitals: \"{upper}\"")
    } else if upper == "UK" {
        "the United Kingdom is \"GB\"".to_owned()
    } else {
        "write the two capital letters of ISO 3166-1: \"NO\", \"CH\", \"JP\"".to_owned()
    };
    Err(Malformed {
        what: "is not a country",
        help,
    })
}

fn is_country(text: &str) -> bool {
    text.len() == 2 && COUNTRIES.split_ascii_whitespace().any(|code| code == text)
}

/// The 249 officially assigned codes of ISO 3166-1 alpha-2.
const COUNTRIES: &str = "\
    AD AE AF AG AI AL AM AO AQ AR AS AT AU AW AX AZ BA BB BD BE BF BG BH BI BJ BL BM BN BO BQ BR BS \
    BT BV BW BY BZ CA CC CD CF CG CH CI CK CL CM CN CO CR CU CV CW CX CY CZ DE DJ DK DM DO DZ EC EE \
    EG EH ER ES ET FI FJ FK FM FO FR GA GB GD GE GF GG GH GI GL GM GN GP GQ GR GS GT GU GW GY HK HM \
    HN HR HT HU ID IE IL IM IN IO IQ IR IS IT JE JM JO JP KE KG KH KI KM KN KP KR KW KY KZ LA LB LC \
    LI LK LR LS LT LU LV LY MA MC MD ME MF MG MH MK ML MM MN MO MP MQ MR MS MT MU MV MW MX MY MZ NA \
    NC NE NF NG NI NL NO NP NR NU NZ OM PA PE PF PG PH PK PL PM PN PR PS PT PW PY QA RE RO RS RU RW \
    SA SB SC SD SE SG SH SI SJ SK SL SM SN SO SR SS ST SV SX SY SZ TC TD TF TG TH TJ TK TL TM TN TO \
    TR TT TV TW TZ UA UG UM US UY UZ VA VC VE VG VI VN VU WF WS YE YT ZA ZM ZW";

/// The code of a library, archive or museum: ISIL, ISO 15511.
///
/// At most 16 characters, ASCII letters and digits, solidus, hyphen, colon; a prefix of two capital
/// letters, or of one, three or four letters or digits; a hyphen; a unit identifier. Source of the
/// structure: the ISIL registration authority, biblstandard.dk/isil/structure.
pub(crate) fn isil(text: &str) -> Result<String, Malformed> {
    let is_isil = || {
        let (prefix, unit) = text.split_once('-')?;
        let of_prefix = match prefix.len() {
            2 => prefix.bytes().all(|b| b.is_ascii_uppercase()),
            1 | 3 | 4 => prefix.bytes().all(|b| b.is_ascii_alphanumeric()),
            _ => false,
        };
        let in_unit = |b: u8| b.is_ascii_alphanumeric() || matches!(b, b'/' | b'-' | b':');
        let of_unit = !unit.is_empty() && unit.bytes().all(in_unit);
        Some(of_prefix && of_unit && text.len() <= 16)
    };
    if is_isil() == Some(true) {
        Ok(text.to_owned())
    } else {
        Err(Malformed {
            what: "is no ISIL",
            help: "an ISIL is a country or other prefix, a hyphen and letters or digits, at most 16 in all: \
                   \"NO-0000001\""
                .to_owned(),
        })
    }
}

/// An address on the web, `http` or `https` with a host.
pub(crate) fn web(text: &str) -> Result<String, Malformed> {
    let is_web = || {
        let lower = text.to_ascii_lowercase();
        let rest = lower
            .strip_prefix("https://")
            .or_else(|| lower.strip_prefix("http://"))?;
        let authority = rest.split(['/', '?', '#']).next()?;
        // User names and passwords in addresses can mislead readers about the target of a link
        // (RFC 3986, section 7.6).
        let sound = !authority.is_empty()
            && !authority.contains('@')
            && !text.contains(|c: char| {
                c.is_whitespace() || c.is_control() || "\"<>\\^`{|}".contains(c)
            });
        (sound && url::Url::parse(text).is_ok_and(|url| url.has_host())).then_some(())
    };
    if is_web().is_some() {
        return Ok(text.to_owned());
    }
    let help = if text.starts_with("www.") {
        format!("write \"https://{text}\"")
    } else {
        "write an address that begins with https:// or http://".to_owned()
    };
    Err(Malformed {
        what: "is not a web address",
        help,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Source: tests/checks/isil.csv, from the structure that the registration authority states.
    #[test]
    fn isil_codes_are_judged_as_the_registration_authority_does() {
        let table = include_str!("../../../tests/checks/isil.csv");
        let mut rows = 0;
        for row in table.lines().filter(|line| !line.starts_with('#')).skip(1) {
            let mut cells = row.split(',');
            let (code, status) = (cells.next().unwrap(), cells.next().unwrap());
            assert_eq!(isil(code).is_ok(), status == "valid", "{row}");
            rows += 1;
        }
        assert_eq!(rows, 18);
    }

    /// Source: RFC 5646, section 2.2.1 and appendix A.
    #[test]
    fn a_language_is_told_from_its_name() {
        for tag in [
            "en",
            "uk-Latn",
            "zh-Hant",
            "de-CH-1901",
            "sr-Latn-RS",
            "cmn",
        ] {
            assert_eq!(language(tag).as_deref(), Ok(tag));
        }
        for no in [
            "", "english", "German", "en_GB", "e", "en-", "-en", "d\u{e9}",
        ] {
            assert!(language(no).is_err(), "{no:?}");
        }
    }

    /// ISO 3166-1 has 249 officially assigned codes.
    #[test]
    fn countries_are_those_of_the_standard() {
        let mut codes: Vec<_> = COUNTRIES.split_ascii_whitespace().collect();
        assert_eq!(codes.len(), 249);
        codes.dedup();
        assert_eq!(codes.len(), 249);
        assert!(codes.is_sorted());
        assert!(country("NO").is_ok());
        for no in ["UK", "no", "XX", "EU", "N", "NOR", ""] {
            assert!(country(no).is_err(), "{no}");
        }
    }

    #[test]
    fn an_address_has_a_scheme_of_the_web_and_a_host() {
        for yes in ["https://museum.example.org", "http://example.org/a?b=c#d"] {
            assert!(web(yes).is_ok(), "{yes}");
        }
        for no in [
            "museum.example.org",
            "javascript:alert(1)",
            "https://",
            "https:///a",
            "https://a b",
            "ftp://example.org",
            "https://bank.example@example.org",
            "https://example.org/\"onload=",
        ] {
            assert!(web(no).is_err(), "{no}");
        }
    }
}
