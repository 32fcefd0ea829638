//! The site map (<https://www.sitemaps.org/protocol.html>, 0.9): the addresses of all pages, for search engines.
//!
//! One file, or several and an index of them where there are more addresses than one may hold. Left out are pages that
//! only lead to another or ask not to be listed. The date of each page is that of the edition, where that is a day, month
//! or year: a compile does not know when a page last changed. A catalogue at the root of its host also gets a
//! `robots.txt` that names the site map; elsewhere nobody would read one.

use url::Url;

use super::format::WholeFormat;
use super::xml::Xml;
use crate::model::settings::Settings;
use crate::page::{Book, Take, listed_pages};

pub(super) const FORMAT: WholeFormat = WholeFormat {
    name: "sitemap",
    paths: &[FILE, "sitemap-….xml", ROBOTS],
    each,
};

const FILE: &str = "sitemap.xml";

/// The file in which search engines look for site maps (RFC 9309). They look at the root of a host alone.
const ROBOTS: &str = "robots.txt";

/// The namespace of site maps and their indexes.
const NAMESPACE: &str = "http://www.sitemaps.org/schemas/sitemap/0.9";

/// The most addresses of a file. The standard allows no more, and 50 MiB, which this many do not reach: an address is
/// shorter than a hundred characters unless keys are very long, and then [`MOST_BYTES`] ends the file.
const MOST_ADDRESSES: usize = 50_000;

/// The most bytes of addresses in a file, with room for its head and its end.
const MOST_BYTES: usize = 50 * 1024 * 1024 - 1000;

fn each(book: &Book<'_>, take: &Take<'_>) {
    let settings = &book.public.settings;
    let base = settings.address.value.trim_end_matches('/');
    let modified = modified(settings);
    let entries = listed_pages(book)
        .into_iter()
        .map(|address| entry("url", &address.absolute(base), modified));
    if Url::parse(base).is_ok_and(|url| url.path() == "/") {
        let robots = format!("User-agent: *\nAllow: /\n\nSitemap: {base}/{FILE}\n");
        take(ROBOTS.to_owned(), robots.into_bytes());
    }
    let files = files(entries);
    if let [only] = &files[..] {
        take(FILE.to_owned(), document("urlset", only));
        return;
    }
    let mut index = Vec::new();
    for (file, place) in files.iter().zip(1..) {
        let name = format!("sitemap-{place}.xml");
        let address = format!("{base}/{name}");
        index.extend(entry("sitemap", &address, modified));
        take(name, document("urlset", file));
    }
    take(FILE.to_owned(), document("sitemapindex", &index));
}

/// The entries of each file, in their order.
fn files(entries: impl Iterator<Item = Vec<u8>>) -> Vec<Vec<u8>> {
    let mut files = vec![Vec::new()];
    let mut in_last = 0;
    for entry in entries {
        let size = files.last().map_or(0, Vec::len) + entry.len();
        if in_last == MOST_ADDRESSES || size > MOST_BYTES {
            files.push(Vec::new());
            in_last = 0;
        }
        if let Some(last) = files.last_mut() {
            last.extend(entry);
        }
        in_last += 1;
    }
    files
}

fn entry(name: &str, address: &str, modified: Option<&str>) -> Vec<u8> {
    let mut xml = Xml::part();
    xml.element(name, &[], |xml| {
        xml.text("loc", &[], address);
        xml.some_text("lastmod", &[], modified.unwrap_or_default());
    });
    xml.line();
    xml.bytes()
}

fn document(root: &str, entries: &[u8]) -> Vec<u8> {
    let mut xml = Xml::document();
    xml.element(root, &[("xmlns", NAMESPACE)], |xml| {
        xml.line();
        xml.add(entries);
    });
    xml.line();
    xml.bytes()
}

/// The date of the edition, if it is one that the standard allows: a year, a month or a day.
fn modified(settings: &Settings) -> Option<&str> {
    let date = settings.dated.as_ref()?.as_str();
    let mut parts = date.split('-');
    let is_digits =
        |part: &str, count| part.len() == count && part.bytes().all(|b| b.is_ascii_digit());
    let is_plain =
        parts.next().is_some_and(|year| is_digits(year, 4)) && parts.all(|part| is_digits(part, 2));
    is_plain.then_some(date)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_file_holds_no_more_than_the_standard_allows() {
        let entry = || vec![b'x'; 10];
        let sizes = |count: usize| -> Vec<usize> {
            let files = files(std::iter::repeat_with(entry).take(count));
            files.iter().map(|file| file.len() / 10).collect()
        };
        assert_eq!(sizes(50_000), [50_000]);
        assert_eq!(sizes(100_001), [50_000, 50_000, 1]);
        let long = || vec![b'x'; 30 * 1024 * 1024];
        assert_eq!(files(std::iter::repeat_with(long).take(3)).len(), 3);
    }
}
