//! The redirects of a site as rules for servers, so that those who can answer with 301 (moved permanently, RFC 9110,
//! section 15.4.2): with it, programs follow and fragments stay. Without any of these files the pages at the former
//! addresses lead on. Not a format of the table, because the files belong to no page.
//!
//! | file | read by |
//! |---|---|
//! | `_redirects` | hosts of static sites: a line for each rule, with `:splat` for what `*` stood for |
//! | `redirects/apache.conf` | the Apache HTTP server: `Include` in the configuration of the site, or copied into an `.htaccess` of one's own (mod_alias) |
//! | `redirects/nginx.conf` | nginx: included in the `http` block; the site then says `if ($keyblock_moved) { return 301 $keyblock_moved; }` |
//! | `redirects/redirects.json` | anything else: `address` of the catalogue, and `redirects` in the order in which they are to be tried, each `{ from, to, folder }`; `folder`: what is below the address moves with it |
//!
//! No `.htaccess` is written: a server that does not allow redirects there would refuse every page, and the folder may
//! hold one of the museum's own.
//!
//! The rules hold keys and the path of the catalogue's address alone. Where that path has a character that a form could
//! read as something else, only `redirects.json` is written.

use std::fmt::Write as _;

use serde::Serialize;
use url::Url;

use super::format::WholeFormat;
use crate::page::{Book, Extent, Redirect, Take};

/// The rules for servers.
pub(super) const FORMAT: WholeFormat = WholeFormat {
    name: "redirect-rules",
    paths: &[
        "_redirects",
        "redirects/apache.conf",
        "redirects/nginx.conf",
        "redirects/redirects.json",
    ],
    each,
};

/// Makes the files, and passes each to `take`. A catalogue without redirects has none.
fn each(book: &Book<'_>, take: &Take<'_>) {
    if book.redirects.is_empty() {
        return;
    }
    let redirects: Vec<&Redirect> = book.redirects.iter().collect();
    let address = &book.public.settings.address.value;
    take(
        "redirects/redirects.json".to_owned(),
        json(address, &redirects),
    );
    if let Some(base) = base(address) {
        let rules = |write: fn(&str, &Redirect) -> String| -> String {
            redirects.iter().map(|r| write(&base, r)).collect()
        };
        take("_redirects".to_owned(), rules(line).into_bytes());
        let apache = APACHE.to_owned() + &rules(apache);
        take("redirects/apache.conf".to_owned(), apache.into_bytes());
        let nginx = format!("{NGINX}{}}}\n", rules(nginx));
        take("redirects/nginx.conf".to_owned(), nginx.into_bytes());
    }
}

const APACHE: &str =
    "# The former addresses of this catalogue, for the Apache HTTP server (mod_alias).\n";

const NGINX: &str = "# The former addresses of this catalogue, for nginx. Include it in the http block, and in the server block of\n\
    # the site write: if ($keyblock_moved) { return 301 $keyblock_moved; }\n\
    map $uri $keyblock_moved {\n";

/// The path of the catalogue's address with a slash at both ends; `None` where it has characters other than letters,
/// digits and `-._~/`, which mean themselves in every form.
fn base(address: &str) -> Option<String> {
    let url = Url::parse(address).ok()?;
    let is_plain = |c: char| c.is_ascii_alphanumeric() || "-._~/".contains(c);
    let path = url.path().trim_end_matches('/');
    path.chars().all(is_plain).then(|| format!("{path}/"))
}

fn line(base: &str, redirect: &Redirect) -> String {
    let Redirect { from, to, extent } = redirect;
    match extent {
        Extent::Page => format!("{base}{from} {base}{to} 301\n"),
        Extent::Folder => format!("{base}{from}* {base}{to}:splat 301\n"),
    }
}

fn apache(base: &str, redirect: &Redirect) -> String {
    let Redirect { from, to, extent } = redirect;
    let from = pattern(base, from);
    match extent {
        Extent::Page => format!("RedirectMatch 301 \"^{from}(index\\.html)?$\" \"{base}{to}\"\n"),
        Extent::Folder => format!("RedirectMatch 301 \"^{from}(.*)$\" \"{base}{to}$1\"\n"),
    }
}

fn nginx(base: &str, redirect: &Redirect) -> String {
    let Redirect { from, to, extent } = redirect;
    let from = pattern(base, from);
    match extent {
        Extent::Page => format!("    \"~^{from}(index\\.html)?$\" \"{base}{to}\";\n"),
        Extent::Folder => format!("    \"~^{from}(.*)$\" \"{base}{to}$1\";\n"),
    }
}

/// An address as a regular expression. The full stop is the only character of keys and paths that has a meaning there.
fn pattern(base: &str, address: &str) -> String {
    let mut out = String::new();
    for c in base.chars().chain(address.chars()) {
        let _ = if c == '.' {
            out.write_str("\\.")
        } else {
            out.write_char(c)
        };
    }
    out
}

#[derive(Serialize)]
struct Document<'a> {
    address: &'a str,
    redirects: Vec<Rule<'a>>,
}

#[derive(Serialize)]
struct Rule<'a> {
    from: &'a str,
    to: &'a str,
    folder: bool,
}

fn json(address: &str, redirects: &[&Redirect]) -> Vec<u8> {
    let rules = redirects.iter().map(|redirect| Rule {
        from: &redirect.from,
        to: &redirect.to,
        folder: redirect.extent == Extent::Folder,
    });
    let document = Document {
        address: address.trim_end_matches('/'),
        redirects: rules.collect(),
    };
    let mut bytes = serde_json::to_vec(&document).unwrap_or_default();
    bytes.push(b'\n');
    bytes
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn each_form_writes_what_it_means_and_nothing_else() {
        let folder = Redirect {
            from: "impression/mill.7/".to_owned(),
            to: "impression/14.7/".to_owned(),
            extent: Extent::Folder,
        };
        let page = Redirect {
            extent: Extent::Page,
            ..folder.clone()
        };
        assert_eq!(
            line("/c/", &folder),
            "/c/impression/mill.7/* /c/impression/14.7/:splat 301\n"
        );
        assert_eq!(
            line("/", &page),
            "/impression/mill.7/ /impression/14.7/ 301\n"
        );
        assert_eq!(
            apache("/c.d/", &folder),
            "RedirectMatch 301 \"^/c\\.d/impression/mill\\.7/(.*)$\" \"/c.d/impression/14.7/$1\"\n"
        );
        assert_eq!(
            nginx("/", &page),
            "    \"~^/impression/mill\\.7/(index\\.html)?$\" \"/impression/14.7/\";\n"
        );
    }

    #[test]
    fn a_path_that_a_rule_could_misread_has_no_rules() {
        for (address, path) in [
            ("https://prints.example.org", Some("/")),
            ("https://prints.example.org/a/b-1.2/", Some("/a/b-1.2/")),
            ("https://prints.example.org/$1/", None),
            ("https://prints.example.org/a b/", None),
            ("https://prints.example.org/(a)*/", None),
            ("no address", None),
        ] {
            assert_eq!(base(address).as_deref(), path, "{address}");
        }
    }
}
