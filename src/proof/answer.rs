//! Answers browsers: the pages as compiled, the pictures, and the status of the newest reading.
//!
//! In: a [`Request`] and what is served now. Out: a [`Response`]. Every page has one more script than the
//! compiled page; the script requests the status and reloads the page when it is out of date.
//!
//! Only requests to a loopback name are answered, so that a page of another site cannot read a proof
//! through the browser, even where its own name leads to this machine (DNS rebinding). A path is looked up
//! among the files of the site and never reaches the disk. A request that a page of another site or port made is
//! refused, and every response tells the browser to let no other site embed or read it.

use std::fmt::Write as _;
use std::path::Path;

use serde::Serialize;

use super::finding_page;
use super::http::{Client, Request, Response};
use super::latest::Latest;
use super::served::Served;
use crate::model::bulk::{self, CodeGroup, Extent};
use crate::model::finding::{Finding, Severity};

/// Where the proof's own addresses begin; no record can have it, because keys have no dot.
const OWN: &str = "/.proof";

const HTML: &str = "text/html; charset=utf-8";
const JAVASCRIPT: &str = "text/javascript; charset=utf-8";
const CSS: &str = "text/css; charset=utf-8";
const JSON: &str = "application/json";

/// Answers one request. A request for a later status waits until there is one.
pub(super) fn answer(latest: &Latest, request: &Request, client: &Client<'_>) -> Response {
    let is_own = is_loopback(&request.host) && !request.is_cross_site;
    let response = if is_own {
        of_the_proof(latest, request, client)
    } else {
        Response::bare("403 Forbidden")
    };
    response.for_this_site_alone()
}

fn of_the_proof(latest: &Latest, request: &Request, client: &Client<'_>) -> Response {
    let Some(own) = request.path.strip_prefix(OWN) else {
        return file(&latest.get(), &request.path);
    };
    match own {
        "/follow.js" => Response::ok(JAVASCRIPT, include_bytes!("follow.js").as_slice()),
        "/follow.css" => Response::ok(CSS, include_bytes!("follow.css").as_slice()),
        _ => {
            // The number, then the address of the page that asks.
            let asked = own.strip_prefix("/after/").unwrap_or_default();
            let (number, page) = match asked.find('/') {
                Some(at) => asked.split_at(at),
                None => (asked, "/"),
            };
            match number.parse() {
                Ok(number) => status_after(latest, number, page, client),
                Err(_) => Response::bare("404 Not Found"),
            }
        }
    }
}

/// The status of the newest reading for the page at an address, once its number is above `number`.
fn status_after(latest: &Latest, number: u64, page: &str, client: &Client<'_>) -> Response {
    let Some(served) = latest.after(number, || client.is_gone()) else {
        return Response::bare("410 Gone");
    };
    match serde_json::to_vec(&ProofStatus::of(&served, page)) {
        Ok(body) => not_stored(Response::ok(JSON, body)),
        Err(_) => Response::bare("500 Internal Server Error"),
    }
}

/// A page, an asset or a picture.
fn file(served: &Served, path: &str) -> Response {
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
        Some(bytes) => not_stored(Response::ok(media_type(&index), bytes.clone())),
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

/// Tells the browser to keep no copy, because the next reading may change the content.
fn not_stored(response: Response) -> Response {
    response.with("Cache-Control", "no-store")
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
    not_stored(Response::ok(HTML, html.into_bytes()))
}

/// Whether a host, with or without a port, is a loopback name.
fn is_loopback(host: &str) -> bool {
    let name = match host.rsplit_once(':') {
        Some((name, port)) if port.bytes().all(|byte| byte.is_ascii_digit()) => name,
        _ => host,
    };
    matches!(name, "127.0.0.1" | "[::1]") || name.eq_ignore_ascii_case("localhost")
}

fn media_type(path: &str) -> &'static str {
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

/// The status of the newest reading, which an open page requests as JSON.
#[derive(Serialize)]
struct ProofStatus {
    /// The newest reading, counted from 1.
    number: u64,
    /// The reading that the pages were made in: an earlier one where the newest gave none; 0 where there
    /// are no pages yet.
    good: u64,
    /// Why no pages could be made.
    fault: Option<String>,
    /// How many findings of each severity there are.
    counts: Vec<(&'static str, usize)>,
    /// How many findings are about the record of the page that asks.
    here: usize,
    /// Those that are listed: first those about that record, then the others, in both at most three of a code that has
    /// more than ten.
    findings: Vec<FindingStatus>,
}

#[derive(Serialize)]
struct FindingStatus {
    severity: &'static str,
    /// Whether it is about the record of the page that asks.
    here: bool,
    place: String,
    /// The address of the page of its record, at the part that it is about.
    page: Option<String>,
    message: String,
    help: Option<String>,
    /// Those of its code that are not listed, where it is the last that is.
    others: Option<OthersStatus>,
}

#[derive(Serialize)]
struct OthersStatus {
    code: &'static str,
    count: usize,
    /// What is at fault in the findings of the code, and in how many, the most frequent first.
    faults: Vec<(String, usize)>,
    /// How many further faults there are.
    more_faults: usize,
}

/// The most faults of one code that are listed.
const MOST_FAULTS: usize = 5;

impl ProofStatus {
    /// The status for the page at the address `page`.
    fn of(served: &Served, page: &str) -> ProofStatus {
        let report = &served.newest.report;
        let is_here = |finding: &&Finding| {
            let path = report.sources.path(finding.at.place.file);
            finding_page::is_shown_at(path, page)
        };
        let (here, elsewhere): (Vec<&Finding>, Vec<&Finding>) =
            report.findings.iter().partition(is_here);
        let of_this_page = here.len();
        let mut findings = Vec::new();
        for (part, is_here) in [(here, true), (elsewhere, false)] {
            for group in bulk::groups(part, &report.sources, Extent::Short) {
                findings.extend(of_group(served, &group, is_here));
            }
        }
        let tally = report.tally();
        ProofStatus {
            number: served.number,
            good: served.good,
            fault: served.newest.fault.clone(),
            counts: vec![
                (Severity::Error.word(), tally.errors),
                (Severity::Doubt.word(), tally.doubts),
                (Severity::Hint.word(), tally.hints),
            ],
            here: of_this_page,
            findings,
        }
    }
}

/// The listed findings of a group; the last says how many others there are.
fn of_group(served: &Served, group: &CodeGroup<'_>, here: bool) -> Vec<FindingStatus> {
    let sources = &served.newest.report.sources;
    let status = |finding: &&Finding| {
        let position = sources.position(finding.at.place);
        let path = sources.path(finding.at.place.file);
        let text = sources.text(finding.at.place.file);
        FindingStatus {
            severity: finding.severity().word(),
            here,
            place: format!("{path}:{}:{}", position.line, position.column),
            page: finding_page::address(&served.site, path, text, position.line),
            message: finding.message.clone(),
            help: finding.help.clone(),
            others: None,
        }
    };
    let mut listed: Vec<FindingStatus> = group.listed.iter().map(status).collect();
    if let (Some(last), Some(first), Some(others)) =
        (listed.last_mut(), group.listed.first(), &group.others)
    {
        let faults = others.faults.iter().take(MOST_FAULTS);
        last.others = Some(OthersStatus {
            code: first.code.as_str(),
            count: others.count,
            faults: faults.map(|f| (f.text.clone(), f.count)).collect(),
            more_faults: others.faults.len().saturating_sub(MOST_FAULTS),
        });
    }
    listed
}

#[cfg(test)]
mod tests {
    use super::super::http;
    use super::super::served::{PagesServed, PictureFiles, Revision};
    use super::*;
    use crate::model::codes::Code;
    use crate::model::place::Place;
    use crate::page::Site;
    use crate::press::Report;
    use std::io::{Read as _, Write as _};
    use std::net::{SocketAddr, TcpListener, TcpStream};
    use std::sync::Arc;
    use std::thread;
    use std::time::{Duration, Instant};

    /// What is served after the reading `number`, which was good.
    fn reading(number: u64) -> Served {
        let page = |text: &str| {
            let policy = "<meta content=\"default-src 'none'; img-src 'self'\">";
            format!("<html><head>{policy}</head><body>{text}</body></html>").into_bytes()
        };
        let mut site = Site::default();
        let files = [
            ("index.html", page("home")),
            ("design/14/index.html", page("design 14")),
            ("assets/ink.css", b"p {}".to_vec()),
        ];
        for (path, bytes) in files {
            site.files.insert(path.to_owned(), bytes);
        }
        Served {
            number,
            good: number,
            site: Arc::new(site),
            pictures: Arc::new(PictureFiles::default()),
            newest: Revision {
                report: Report::default(),
                fault: None,
                pages: PagesServed::Newest,
                took: Duration::ZERO,
            },
        }
    }

    /// A running proof, and its address.
    fn proof() -> (Arc<Latest>, SocketAddr) {
        let listener = TcpListener::bind(("127.0.0.1", 0)).unwrap();
        let address = listener.local_addr().unwrap();
        let latest = Arc::new(Latest::new(reading(1)));
        let served = Arc::clone(&latest);
        thread::spawn(move || {
            http::serve(&listener, http::PATIENCE, move |request, client| {
                answer(&served, request, client)
            })
        });
        (latest, address)
    }

    fn send(address: SocketAddr, path: &str, host: &str) -> TcpStream {
        let mut stream = TcpStream::connect(address).unwrap();
        let request = format!("GET {path} HTTP/1.1\r\nHost: {host}\r\nConnection: close\r\n\r\n");
        stream.write_all(request.as_bytes()).unwrap();
        stream
    }

    fn received(mut stream: TcpStream) -> String {
        let mut text = String::new();
        stream.read_to_string(&mut text).unwrap();
        text
    }

    fn get(address: SocketAddr, path: &str) -> String {
        received(send(address, path, "localhost:7414"))
    }

    #[test]
    fn a_page_is_served_with_the_script_that_follows_the_records() {
        let (_, address) = proof();
        let text = get(address, "/design/14/?q");
        assert!(text.starts_with("HTTP/1.1 200 OK\r\n"), "{text}");
        assert!(text.contains("\r\nContent-Type: text/html; charset=utf-8\r\n"));
        assert!(text.contains("\r\nCache-Control: no-store\r\n"));
        assert!(text.contains("default-src 'none'; connect-src 'self'; img-src 'self'"));
        assert!(text.contains("design 14<link "), "{text}");
        assert!(
            text.contains("/.proof/follow.js\" data-number=\"1\""),
            "{text}"
        );
        let script = get(address, "/.proof/follow.js");
        assert!(script.contains("text/javascript"));
        assert!(script.ends_with(include_str!("follow.js")));
        assert!(get(address, "/assets/ink.css").ends_with("\r\n\r\np {}"));
    }

    #[test]
    fn a_folder_without_its_slash_is_redirected_and_what_is_not_there_is_said() {
        let (_, address) = proof();
        let text = get(address, "/design/14");
        assert!(text.starts_with("HTTP/1.1 307 "), "{text}");
        assert!(text.contains("\r\nLocation: /design/14/\r\n"), "{text}");
        for path in [
            "/design/15/",
            "/../Cargo.toml",
            "/%2e%2e/Cargo.toml",
            "//etc/passwd",
            "/.proof/",
            "/.proof/after/x",
        ] {
            let text = get(address, path);
            assert!(text.starts_with("HTTP/1.1 404 "), "{path}: {text}");
        }
        let text = get(address, "/design/15/");
        assert!(text.contains("There is no such page in this proof."));
        assert!(text.contains("/.proof/follow.js"));
    }

    #[test]
    fn only_loopback_names_are_answered() {
        let (_, address) = proof();
        let is_answered = |host: &str| {
            let paths = ["/", "/.proof/after/0", "/.proof/follow.js"];
            let answers = paths.map(|path| received(send(address, path, host)));
            let counts = ["200", "403"].map(|status| {
                let begin = format!("HTTP/1.1 {status} ");
                answers.iter().filter(|a| a.starts_with(&begin)).count()
            });
            match counts {
                [3, 0] => true,
                [0, 3] => false,
                _ => panic!("{host}: {answers:?}"),
            }
        };
        for host in [
            "127.0.0.1:7414",
            "localhost",
            "LocalHost:1",
            "[::1]:7414",
            "[::1]",
        ] {
            assert!(is_answered(host), "{host}");
        }
        for host in [
            "prints.example.org",
            "127.0.0.1.example.org:7414",
            "localhost.example.org",
            "127.0.0.1:x",
            "",
        ] {
            assert!(!is_answered(host), "{host}");
        }
    }

    #[test]
    fn no_other_site_reads_or_embeds_a_proof() {
        let (_, address) = proof();
        for path in [
            "/",
            "/none",
            "/.proof/follow.js",
            "/.proof/after/0",
            "/assets/ink.css",
        ] {
            let text = get(address, path);
            for field in [
                "Cross-Origin-Resource-Policy: same-origin",
                "X-Frame-Options: DENY",
                "X-Content-Type-Options: nosniff",
            ] {
                assert!(text.contains(&format!("\r\n{field}\r\n")), "{path}: {text}");
            }
            let mut stream = TcpStream::connect(address).unwrap();
            let request = format!(
                "GET {path} HTTP/1.1\r\nHost: localhost\r\nSec-Fetch-Site: cross-site\r\nConnection: close\r\n\r\n"
            );
            stream.write_all(request.as_bytes()).unwrap();
            assert!(received(stream).starts_with("HTTP/1.1 403 "), "{path}");
        }
        for method in ["POST", "PUT", "DELETE", "OPTIONS", "TRACE"] {
            let mut stream = TcpStream::connect(address).unwrap();
            let request = format!("{method} / HTTP/1.1\r\nHost: localhost\r\n\r\n");
            stream.write_all(request.as_bytes()).unwrap();
            assert!(received(stream).starts_with("HTTP/1.1 405 "), "{method}");
        }
    }

    #[test]
    fn pages_that_wait_hold_up_no_other_and_all_hear_of_the_next_reading() {
        let (latest, address) = proof();
        let now = get(address, "/.proof/after/0");
        assert!(
            now.contains("\"number\":1,\"good\":1,\"fault\":null"),
            "{now}"
        );
        let waiting: Vec<TcpStream> = (0..40)
            .map(|_| send(address, "/.proof/after/1", "localhost"))
            .collect();
        assert!(get(address, "/").starts_with("HTTP/1.1 200 "));
        for stream in &waiting {
            stream.set_nonblocking(true).unwrap();
            assert!(stream.peek(&mut [0]).is_err(), "answered too early");
            stream.set_nonblocking(false).unwrap();
        }
        latest.replace(reading(2));
        for stream in waiting {
            let text = received(stream);
            assert!(text.contains("\"number\":2"), "{text}");
        }
    }

    #[test]
    fn a_page_is_told_of_its_own_record_first_and_of_many_findings_in_short() {
        let (latest, address) = proof();
        let mut next = reading(2);
        let report = &mut next.newest.report;
        for n in 1..=1_200 {
            let path = format!("records/designs/{n}/design.toml");
            let file = report.sources.add(path, "date = \"winter\"\n");
            let place = Place::new(file, 7..15);
            let finding = Finding::new(Code::DateSyntax, place, format!("wrong {n}"));
            report.findings.push(finding.help("write the year"));
        }
        latest.replace(next);
        let text = get(address, "/.proof/after/1/design/14/");
        let (_, body) = text.split_once("\r\n\r\n").unwrap();
        assert!(body.len() < 2_000, "{body}");
        let status: serde_json::Value = serde_json::from_str(body).unwrap();
        assert_eq!(status["here"], 1);
        assert_eq!(status["counts"][0], serde_json::json!(["error", 1_200]));
        let findings = status["findings"].as_array().unwrap();
        let told: Vec<_> = findings
            .iter()
            .map(|f| (f["here"].as_bool(), f["message"].as_str()))
            .collect();
        assert_eq!(
            told,
            [
                (Some(true), Some("wrong 14")),
                (Some(false), Some("wrong 1")),
                (Some(false), Some("wrong 2")),
                (Some(false), Some("wrong 3")),
            ]
        );
        assert_eq!(
            findings[3]["others"],
            serde_json::json!({ "code": "date-syntax", "count": 1_196, "faults": [["\"winter\"", 1_199]], "more_faults": 0 })
        );
        assert!(findings[0]["others"].is_null());
    }

    #[test]
    fn pages_that_were_left_give_their_places_back() {
        let (_latest, address) = proof();
        let left: Vec<TcpStream> = (0..http::CONNECTION_LIMIT)
            .map(|_| send(address, "/.proof/after/1", "localhost"))
            .collect();
        assert!(get(address, "/").starts_with("HTTP/1.1 503 "));
        drop(left);
        let begun = Instant::now();
        while !get(address, "/").starts_with("HTTP/1.1 200 ") {
            assert!(begun.elapsed() < Duration::from_secs(30));
            thread::sleep(Duration::from_millis(50));
        }
    }
}
