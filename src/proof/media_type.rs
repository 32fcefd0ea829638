//! The media types of what a proof serves.

use std::path::Path;

pub(super) const HTML: &str = "text/html; charset=utf-8";
pub(super) const JAVASCRIPT: &str = "text/javascript; charset=utf-8";
pub(super) const CSS: &str = "text/css; charset=utf-8";
pub(super) const JSON: &str = "application/json";

/// The media type of a file of the site, by the end of its path.
pub(super) fn media_type(path: &str) -> &'static str {
    match Path::new(path).extension().and_then(|e| e.to_str()) {
        Some("css") => CSS,
        Some("js") => JAVASCRIPT,
        Some("json") => JSON,
        Some("xml") => "application/xml",
        Some("svg") => "image/svg+xml",
        Some("woff2") => "font/woff2",
        Some("xlsx") => "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet",
        Some("csv") => "text/csv; charset=utf-8",
        Some("jpg") => "image/jpeg",
        Some("png") => "image/png",
        Some("txt" | "bib") => "text/plain; charset=utf-8",
        _ => "application/octet-stream",
    }
}
