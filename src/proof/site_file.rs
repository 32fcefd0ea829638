//! The files of a proof: pages, assets and pictures.
//!
//! In: a path, and what is served now. Out: a [`Response`]. Every page has one more script than the compiled page; the
//! script requests the status and reloads the page when it is out of date. A path is looked up among the files of
//! the site and never reaches the disk.

use std::fmt::Write as _;

use super::http::Response;
use super::media_type::{HTML, media_type};
use super::served::Served;

/// Where the proof's own addresses begin; no record can have it, because keys have no dot.
pub(super) const OWN: &str = "/.proof";

/// A page, an asset or a picture.
pub(super) fn file(served: &Served, path: &str) -> Response {
    let path = path.trim_start_matches('/');
    if let Some(read) = served.pictures.read(path) {
        return match read {
            Ok(bytes) => Response::ok("image/jpeg", bytes),
            Err(_) => Response::bare("404 Not Found"),
        };
    }
    let index = if path.is_empty() || path.ends_with('/') {
        format!("{path}index.html")
    } else {
        path.to_owned()
    };
    let files = &served.site.files;
    match files.get(&index) {
        Some(bytes) if index.ends_with(".html") => page(bytes, served.good),
        Some(bytes) => Response::ok(media_type(&index), bytes.clone()).not_stored(),
        None if files.contains_key(&format!("{index}/index.html")) => {
            Response::redirect(format!("/{index}/"))
        }
        None => {
            let message = if files.is_empty() {
                "No proof can be pulled yet."
            } else {
                "There is no such page in this proof."
            };
            page(&message_page(message), served.good).status("404 Not Found")
        }
    }
}

/// A page with one message. Like all pages it has the script that follows the records, so it is reloaded
/// once the fault is mended or the missing record is back.
fn message_page(message: &str) -> Vec<u8> {
    format!(
        "<!doctype html><html lang=\"en\"><head><meta charset=\"utf-8\"><title>Proof</title>\
         <meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\
         <meta name=\"color-scheme\" content=\"light dark\"><link rel=\"icon\" href=\"data:,\">\
         </head><body><p>{message}</p></body></html>"
    )
    .into_bytes()
}

/// A page made in reading `good`, with the script that follows the records. The page's
/// Content-Security-Policy is widened, where it must be, so that the script may send requests to this server.
fn page(bytes: &[u8], good: u64) -> Response {
    let html = String::from_utf8_lossy(bytes);
    let mut follow = String::new();
    let _ = write!(
        follow,
        "<link rel=\"stylesheet\" href=\"{OWN}/follow.css\">\
         <script src=\"{OWN}/follow.js\" data-number=\"{good}\" defer></script></body>"
    );
    // A theme of the catalogue's own may have a frame whose policy lets no script load anything.
    let own = if html.contains("connect-src 'self'") {
        "default-src 'none'"
    } else {
        "default-src 'none'; connect-src 'self'"
    };
    let html = html
        .replacen("default-src 'none'", own, 1)
        .replacen("</body>", &follow, 1);
    Response::ok(HTML, html.into_bytes()).not_stored()
}
