//! Answers browsers: the files of the proof, and the status of the newest reading.
//!
//! In: a [`Request`] and what is served now. Out: a [`Response`].
//!
//! Only requests to a loopback name are answered, so that a page of another site cannot read a proof
//! through the browser, even where its own name leads to this machine (DNS rebinding). A request that a page of
//! another site or port made is refused, and every response tells the browser to let no other site embed or read it.

use super::http::{Client, Request, Response};
use super::latest::Latest;
use super::media_type::{CSS, JAVASCRIPT, JSON};
use super::site_file::{self, OWN};
use super::status::ProofStatus;

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
        return site_file::file(&latest.get(), &request.path);
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
        Ok(body) => Response::ok(JSON, body).not_stored(),
        Err(_) => Response::bare("500 Internal Server Error"),
    }
}

/// Whether a host, with or without a port, is a loopback name.
fn is_loopback(host: &str) -> bool {
    let name = match host.rsplit_once(':') {
        Some((name, port)) if port.bytes().all(|byte| byte.is_ascii_digit()) => name,
        _ => host,
    };
    matches!(name, "127.0.0.1" | "[::1]") || name.eq_ignore_ascii_case("localhost")
}

#[cfg(test)]
mod tests {
    use super::super::http;
    use super::super::served::{PagesServed, PictureFiles, Revision, Served};
    use super::*;
    use crate::model::codes::Code;
    use crate::model::finding::Finding;
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
