//! Answering browsers.
//!
//! Pages are served as compiled, with one script more, which asks what the newest reading says and
//! loads the page again when it is behind. Only names of this machine are answered, so that a page
//! elsewhere cannot read a proof through the browser.

use std::fmt::Write as _;
use std::net::TcpListener;
use std::path::Path;
use std::sync::Arc;

use axum::Router;
use axum::body::Body;
use axum::extract::{Request, State};
use axum::http::{HeaderMap, StatusCode, header};
use axum::response::{IntoResponse, Redirect, Response};
use axum::routing::get;
use serde::Serialize;
use tokio::sync::watch::Receiver;

use super::Served;

/// Where the proof's own addresses begin; no record can have it, because keys have no dot.
const OWN: &str = "/.proof";

type Newest = Receiver<Arc<Served>>;

/// Answers on `listener` until the process is stopped.
pub(super) async fn serve(listener: TcpListener, newest: Newest) -> std::io::Result<()> {
    listener.set_nonblocking(true)?;
    let listener = tokio::net::TcpListener::from_std(listener)?;
    let router = Router::new()
        .route(
            &format!("{OWN}/follow.js"),
            get(|| async { script(include_str!("follow.js")) }),
        )
        .route(
            &format!("{OWN}/follow.css"),
            get(|| async { style(include_str!("follow.css")) }),
        )
        .route(&format!("{OWN}/after/{{number}}"), get(after))
        .fallback(file)
        .with_state(newest);
    axum::serve(listener, router).await
}

fn script(text: &'static str) -> impl IntoResponse {
    (
        [(header::CONTENT_TYPE, "text/javascript; charset=utf-8")],
        text,
    )
}

fn style(text: &'static str) -> impl IntoResponse {
    ([(header::CONTENT_TYPE, "text/css; charset=utf-8")], text)
}

/// What the newest reading says, once it is newer than `number`.
async fn after(
    axum::extract::Path(number): axum::extract::Path<u64>,
    State(mut newest): State<Newest>,
    headers: HeaderMap,
) -> Response {
    if !is_this_machine(&headers) {
        return StatusCode::FORBIDDEN.into_response();
    }
    let shown = match newest.wait_for(|shown| shown.number > number).await {
        Ok(shown) => Arc::clone(&shown),
        Err(_) => return StatusCode::GONE.into_response(),
    };
    let body = serde_json::to_string(&Told::of(&shown)).unwrap_or_default();
    (
        [
            (header::CONTENT_TYPE, "application/json"),
            (header::CACHE_CONTROL, "no-store"),
        ],
        body,
    )
        .into_response()
}

/// A page, an asset or a picture.
async fn file(State(newest): State<Newest>, request: Request) -> Response {
    if !is_this_machine(request.headers()) {
        return StatusCode::FORBIDDEN.into_response();
    }
    let shown = Arc::clone(&newest.borrow());
    let asked = request.uri().path().trim_start_matches('/');
    if let Some(read) = shown.pictures.read(asked) {
        return match read {
            Ok(bytes) => ([(header::CONTENT_TYPE, "image/jpeg")], bytes).into_response(),
            Err(_) => StatusCode::NOT_FOUND.into_response(),
        };
    }
    let index = if asked.is_empty() || asked.ends_with('/') {
        format!("{asked}index.html")
    } else {
        asked.to_owned()
    };
    match shown.site.files.get(&index) {
        Some(bytes) if index.ends_with(".html") => page(bytes, shown.good),
        Some(bytes) => {
            let kind = [
                (header::CONTENT_TYPE, content_type(&index)),
                (header::CACHE_CONTROL, "no-store"),
            ];
            (kind, bytes.clone()).into_response()
        }
        None if shown
            .site
            .files
            .contains_key(&format!("{index}/index.html")) =>
        {
            Redirect::temporary(&format!("/{index}/")).into_response()
        }
        None => {
            let said = if shown.site.files.is_empty() {
                "No proof can be pulled yet."
            } else {
                "There is no such page in this proof."
            };
            let page = page(&bare(said), shown.good);
            (StatusCode::NOT_FOUND, page).into_response()
        }
    }
}

/// A page that says one thing. It follows the records as all do, so that a record mended or put
/// back brings its page.
fn bare(said: &str) -> Vec<u8> {
    format!(
        "<!doctype html><html lang=\"en\"><head><meta charset=\"utf-8\"><title>Proof</title>\
         <meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\
         <meta name=\"color-scheme\" content=\"light dark\"><link rel=\"icon\" href=\"data:,\">\
         </head><body><p>{said}</p></body></html>"
    )
    .into_bytes()
}

/// A page of reading `good`, with the script that follows the records and leave to ask for news.
fn page(bytes: &[u8], good: u64) -> Response {
    let html = String::from_utf8_lossy(bytes);
    let mut follow = String::new();
    let _ = write!(
        follow,
        "<link rel=\"stylesheet\" href=\"{OWN}/follow.css\">\
         <script src=\"{OWN}/follow.js\" data-number=\"{good}\" defer></script></body>"
    );
    let html = html
        .replacen(
            "default-src 'none'",
            "default-src 'none'; connect-src 'self'",
            1,
        )
        .replacen("</body>", &follow, 1);
    (
        [
            (header::CONTENT_TYPE, "text/html; charset=utf-8"),
            (header::CACHE_CONTROL, "no-store"),
        ],
        Body::from(html),
    )
        .into_response()
}

/// Whether the browser asked this machine by one of its own names.
fn is_this_machine(headers: &HeaderMap) -> bool {
    let host = headers
        .get(header::HOST)
        .and_then(|h| h.to_str().ok())
        .unwrap_or_default();
    let name = host.rsplit_once(':').map_or(host, |(name, _)| name);
    matches!(name, "127.0.0.1" | "localhost" | "[::1]")
}

fn content_type(path: &str) -> &'static str {
    match Path::new(path).extension().and_then(|e| e.to_str()) {
        Some("css") => "text/css; charset=utf-8",
        Some("js") => "text/javascript; charset=utf-8",
        Some("json") => "application/json",
        Some("xml") => "application/xml",
        Some("svg") => "image/svg+xml",
        Some("csv") => "text/csv; charset=utf-8",
        Some("jpg") => "image/jpeg",
        Some("png") => "image/png",
        Some("txt" | "bib") => "text/plain; charset=utf-8",
        _ => "application/octet-stream",
    }
}

/// What an open page is told.
#[derive(Serialize)]
struct Told {
    /// The newest reading, counted from 1.
    number: u64,
    /// The reading that the pages are of: an earlier one where none came of the newest; 0 where
    /// none came of any.
    good: u64,
    fault: Option<String>,
    findings: Vec<ToldFinding>,
}

#[derive(Serialize)]
struct ToldFinding {
    severity: &'static str,
    place: String,
    message: String,
    help: Option<String>,
}

impl Told {
    fn of(shown: &Served) -> Told {
        let sources = &shown.newest.report.sources;
        let findings = shown.newest.report.findings.iter().map(|finding| {
            let position = sources.position(finding.at.place);
            let path = sources.path(finding.at.place.file);
            ToldFinding {
                severity: finding.severity().word(),
                place: format!("{path}:{}:{}", position.line, position.column),
                message: finding.message.clone(),
                help: finding.help.clone(),
            }
        });
        Told {
            number: shown.number,
            good: shown.good,
            fault: shown.newest.fault.clone(),
            findings: findings.collect(),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_names_of_this_machine_are_answered() {
        let asked_by = |host: &'static str| {
            let mut headers = HeaderMap::new();
            headers.insert(header::HOST, header::HeaderValue::from_static(host));
            is_this_machine(&headers)
        };
        assert!(asked_by("127.0.0.1:7414"));
        assert!(asked_by("localhost"));
        assert!(asked_by("[::1]:7414"));
        assert!(!asked_by("prints.example.org"));
        assert!(!asked_by("127.0.0.1.example.org:7414"));
    }
}
